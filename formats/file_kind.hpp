#pragma once
// What a file is by its first bytes, so that a reader can say what it was given instead of text.

#include <string_view>

namespace keydrift {

enum class FileKind {
  empty,
  text,  // anything not recognised as something else
  json,  // an object or a list in braces or brackets
  xml,
  html,
  zip,                  // of no known content
  word_2007,            // zip: a word-processor manuscript (ISO/IEC 29500)
  sheet_2007,           // zip: a spreadsheet (ISO/IEC 29500)
  open_document,        // zip: ISO/IEC 26300
  darwin_core_archive,  // zip with a meta.xml
  old_office,           // compound file: word-processor or spreadsheet of before 2007
  rich_text,
  pdf,
  gzip,
  compressed,  // bzip2, xz, Zstandard, 7z
  tape,        // tar
  picture,
  database,  // SQLite
  binary,    // holds NUL bytes and is not UTF-16
};

// `bytes`: the whole file or its first few kilobytes (64 are plenty).
[[nodiscard]] FileKind file_kind(std::string_view bytes);

// "a PDF", "a gzip-compressed file": what a message calls it, with its article.
[[nodiscard]] char const* to_phrase(FileKind kind);

// What to do to get plain text out of it, as a remedy; "" where there is nothing to say.
[[nodiscard]] char const* way_to_text(FileKind kind);

}  // namespace keydrift

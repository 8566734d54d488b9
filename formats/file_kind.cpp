#include "keydrift/formats/file_kind.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace keydrift {
namespace {

using namespace std::string_view_literals;

struct KindSignature {
  std::string_view bytes;
  FileKind kind;
};

// First bytes, each from its own format's specification.
constexpr std::array kKindSignatures{
    KindSignature{"\x1F\x8B"sv, FileKind::gzip},
    KindSignature{"%PDF-"sv, FileKind::pdf},
    KindSignature{"{\\rtf"sv, FileKind::rich_text},
    KindSignature{"\xD0\xCF\x11\xE0"sv, FileKind::old_office},
    KindSignature{"\x89PNG"sv, FileKind::picture},
    KindSignature{"\xFF\xD8\xFF"sv, FileKind::picture},
    KindSignature{"GIF8"sv, FileKind::picture},
    KindSignature{"II*\0"sv, FileKind::picture},
    KindSignature{"MM\0*"sv, FileKind::picture},
    KindSignature{"BZh"sv, FileKind::compressed},
    KindSignature{"\xFD"
                  "7zXZ\0"sv,
                  FileKind::compressed},
    KindSignature{"\x28\xB5\x2F\xFD"sv, FileKind::compressed},
    KindSignature{"7z\xBC\xAF\x27\x1C"sv, FileKind::compressed},
    KindSignature{"SQLite format 3\0"sv, FileKind::database},
};

constexpr std::string_view kBlanksBeforeText = " \t\r\n\f\v";
constexpr std::size_t kKindSample = std::size_t{64} << 10;  // where NULs and zip entries are sought

bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

bool starts_with_ignoring_case(std::string_view text, std::string_view lower_case_start) {
  if (text.size() < lower_case_start.size()) return false;
  return std::equal(
      lower_case_start.begin(), lower_case_start.end(), text.begin(), [](char want, char got) {
        return want == (got >= 'A' && got <= 'Z' ? static_cast<char>(got | 0x20) : got);
      });
}

// Names of entries stand uncompressed in a zip's local headers.
FileKind kind_of_zip(std::string_view bytes) {
  if (contains(bytes, "mimetypeapplication/vnd.oasis.opendocument"sv)) {
    return FileKind::open_document;
  }
  if (contains(bytes, "word/"sv)) return FileKind::word_2007;
  if (contains(bytes, "xl/"sv)) return FileKind::sheet_2007;
  if (contains(bytes, "meta.xml"sv)) return FileKind::darwin_core_archive;
  return FileKind::zip;
}

bool looks_like_utf_16(std::string_view sample) {
  if (sample.substr(0, 2) == "\xFF\xFE"sv || sample.substr(0, 2) == "\xFE\xFF"sv ||
      sample.substr(0, 4) == "\0\0\xFE\xFF"sv) {
    return true;
  }
  std::array<std::size_t, 2> nuls{};
  for (std::size_t i = 0; i < sample.size(); ++i) {
    if (sample[i] == '\0') ++nuls[i % 2];
  }
  return (nuls[0] == 0 || nuls[1] == 0) && (nuls[0] + nuls[1]) * 10 > sample.size() / 2 * 7;
}

// A brace or bracket opens JSON only when a name, a value or the end follows: printed keys use
// brackets too.
bool looks_like_json(std::string_view text) {
  if (text.empty() || (text.front() != '{' && text.front() != '[')) return false;
  bool const object = text.front() == '{';
  auto const next = text.find_first_not_of(kBlanksBeforeText, 1);
  if (next == std::string_view::npos) return true;
  char const c = text[next];
  return object ? c == '"' || c == '}' : c == '"' || c == '{' || c == ']';
}

// "<!DOCTYPE", "<!-- … -->", or the root element of a form of XML that is read somewhere.
bool looks_like_xml(std::string_view text) {
  if (text.empty() || text.front() != '<') return false;
  if (text.substr(0, 4) == "<!--"sv || starts_with_ignoring_case(text, "<!doctype"sv)) return true;
  auto name = text.substr(1, text.find_first_of(" \t\r\n/>", 1) - 1);
  if (auto const colon = name.find(':'); colon != std::string_view::npos) {
    name.remove_prefix(colon + 1);
  }
  return name == "article"sv || name == "book"sv || name == "book-part"sv || name == "Datasets"sv ||
         name == "archive"sv;
}

}  // namespace

FileKind file_kind(std::string_view bytes) {
  if (bytes.empty()) return FileKind::empty;
  for (auto const& signature : kKindSignatures) {
    if (bytes.substr(0, signature.bytes.size()) == signature.bytes) return signature.kind;
  }
  auto const sample = bytes.substr(0, kKindSample);
  // The magic of a header block (POSIX.1-1988, ustar; offset from memory).
  constexpr std::size_t kTapeMagic = 257;
  if (bytes.size() > kTapeMagic && bytes.substr(kTapeMagic, 5) == "ustar"sv) return FileKind::tape;
  if (bytes.substr(0, 4) == "PK\x03\x04"sv || bytes.substr(0, 4) == "PK\x05\x06"sv) {
    return kind_of_zip(sample);
  }
  if (contains(sample, "\0"sv)) {
    return looks_like_utf_16(sample) ? FileKind::text : FileKind::binary;
  }
  auto text = sample;
  if (text.substr(0, 3) == "\xEF\xBB\xBF"sv) text.remove_prefix(3);
  text.remove_prefix(std::min(text.find_first_not_of(kBlanksBeforeText), text.size()));
  if (starts_with_ignoring_case(text, "<!doctype html"sv) ||
      starts_with_ignoring_case(text, "<html"sv)) {
    return FileKind::html;
  }
  if (starts_with_ignoring_case(text, "<?xml"sv)) {
    return contains(text.substr(0, 1024), "<html"sv) ? FileKind::html : FileKind::xml;
  }
  if (looks_like_xml(text)) return FileKind::xml;
  if (looks_like_json(text)) return FileKind::json;
  return FileKind::text;
}

char const* to_phrase(FileKind kind) {
  switch (kind) {
    case FileKind::empty:
      return "an empty file";
    case FileKind::text:
      return "a text file";
    case FileKind::json:
      return "a JSON file";
    case FileKind::xml:
      return "an XML file";
    case FileKind::html:
      return "a web page (HTML)";
    case FileKind::zip:
      return "a zip file";
    case FileKind::word_2007:
      return "a word-processor manuscript (.docx)";
    case FileKind::sheet_2007:
      return "a spreadsheet (.xlsx)";
    case FileKind::open_document:
      return "an OpenDocument file";
    case FileKind::darwin_core_archive:
      return "a zip file with a meta.xml (a Darwin Core archive)";
    case FileKind::old_office:
      return "an old word-processor or spreadsheet file (.doc, .xls)";
    case FileKind::rich_text:
      return "a rich-text file (.rtf)";
    case FileKind::pdf:
      return "a PDF";
    case FileKind::gzip:
      return "a gzip-compressed file";
    case FileKind::compressed:
      return "a compressed file";
    case FileKind::tape:
      return "a tar archive";
    case FileKind::picture:
      return "a picture";
    case FileKind::database:
      return "a database file";
    case FileKind::binary:
      return "a binary file (it holds NUL bytes)";
  }
  return "a file";
}

char const* way_to_text(FileKind kind) {
  switch (kind) {
    case FileKind::word_2007:
    case FileKind::open_document:
    case FileKind::old_office:
    case FileKind::rich_text:
      return "open it in the program that made it, save it as plain text (UTF-8) and load that "
             "file";
    case FileKind::sheet_2007:
      return "save the sheet as CSV (UTF-8) and load that file";
    case FileKind::darwin_core_archive:
      return "unpack it and load the occurrence table inside";
    case FileKind::zip:
    case FileKind::gzip:
    case FileKind::compressed:
      return "unpack it and load the file inside";
    case FileKind::tape:
      return "unpack it and load the file inside; of a Darwin Core archive name the folder";
    case FileKind::pdf:
    case FileKind::html:
      return "copy its text into a plain text file (UTF-8) and load that file";
    case FileKind::xml:
      return "of XML, articles and books (JATS, TaxPub, BITS) and SDD 1.1 are read; convert it to "
             "one of these, or "
             "to plain text, and load that file";
    case FileKind::picture:
      return "have its text recognised, check it, and load it as plain text (UTF-8)";
    case FileKind::database:
      return "export the table as CSV (UTF-8) and load that file";
    case FileKind::binary:
      return "check that this is the right file";
    case FileKind::empty:
      return "check that this is the right file and that it was saved";
    case FileKind::text:
    case FileKind::json:
      return "";
  }
  return "";
}

}  // namespace keydrift

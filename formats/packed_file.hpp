#pragma once
// The entries of a zip file: manuscripts are such files (held in memory), archives of tables too
// (read from the disk).  Inner header of formats.
//
// Nothing is ever written to disk, and entries that are archives themselves stay packed, so that a
// nest of archives costs no more than its outermost.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

struct PackedEntry {
  std::string name;  // "word/document.xml": UTF-8, '/' between folders, never out of the archive
  std::uint64_t packed_bytes{};
  std::uint64_t unpacked_bytes{};  // as the archive says; unpacking holds it to that
};

class PackedFile {
 public:
  // Reads the list of entries; folders are left out.  Borrows source.bytes for its whole life.
  // Codes (errors; nothing is opened): damaged-archive (no list of entries: cut short, or no zip
  // file at all; several parts; entries that overlap; two entries of one name), too-large (more
  // entries than allowed, those of archives stored inside it included), unsafe-archive (names that
  // lead out of it: "..", from the root, with a drive letter), encrypted-archive.
  [[nodiscard]] static Loaded<PackedFile> open(Source source, ReadLimits const& limits);

  // The same of a file on the disk, which is read as it is wanted: memory does not grow with it.
  [[nodiscard]] static Loaded<PackedFile> open_file(std::string const& path,
                                                    ReadLimits const& limits);

  PackedFile(PackedFile&&) noexcept;
  PackedFile& operator=(PackedFile&&) noexcept;
  ~PackedFile();

  // In the order of the archive's list.
  [[nodiscard]] std::vector<PackedEntry> const& entries() const;

  // The index of the entry of that name; failing that, of the first whose name differs in the case
  // of ASCII letters only (names in manuscripts have no case: ISO/IEC 29500-2, clause on the
  // equivalence of part names).
  [[nodiscard]] std::optional<std::size_t> find(std::string_view name) const;

  // An entry as a stream, for tables that need no place in memory.  Several may be open at once; a
  // stream must not outlive the file.  failure(): damaged-archive (its checksum or its size is
  // wrong, its data cannot be unpacked), too-large (all streams together, or the expansion of this
  // one), unsupported-archive (packed in a way that is not known).
  [[nodiscard]] std::unique_ptr<ByteStream> stream(std::size_t entry) const;

  // A whole entry.  Findings as those of a stream; never a part of an entry.
  [[nodiscard]] Loaded<std::string> read(std::size_t entry) const;

 private:
  struct Archive;
  [[nodiscard]] static Loaded<PackedFile> checked(std::unique_ptr<Archive> archive,
                                                  std::uint64_t size,
                                                  std::vector<Finding> findings);
  explicit PackedFile(std::unique_ptr<Archive> archive);
  std::unique_ptr<Archive> archive_;
};

}  // namespace keydrift

#pragma once
// Bytes of an unknown encoding to UTF-8: told by marks, by where NULs stand, by what is
// well-formed, by what somebody says, and by which letters stand within words.  Inner header of
// formats.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/text.hpp"

namespace keydrift::encodings {

// Who said what the bytes are in.
enum class Told : std::uint8_t { by_bytes, by_declaration, by_user };

struct Converted {
  std::string text{};
  Encoding encoding{Encoding::utf_8};
  // Lines (1-based) of a UTF-8 file that are not UTF-8; they were read as Windows-1252.
  std::vector<std::uint32_t> other_lines{};
  Told told{Told::by_bytes};
  // Bytes that are not of the encoding that somebody said; each is U+FFFD in the text.
  std::size_t damage{};
  bool unknown_label{false};  // what the file declares is not known
  // What somebody said, and this system has no conversion of.
  std::optional<Encoding> unavailable{};
};

// Drops a byte order mark.  The line ends stay as they are.  `asked`: what the user says;
// `declared`: the label by which the file says it, which may be empty.
[[nodiscard]] Converted convert(std::string_view bytes, std::optional<Encoding> asked,
                                std::string_view declared);

}  // namespace keydrift::encodings

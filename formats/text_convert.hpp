#pragma once
// Bytes of an unknown encoding to UTF-8: told by marks, by where NULs stand, by what is
// well-formed, and by which letters stand within words.  Inner header of formats.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/text.hpp"

namespace keydrift::encodings {

struct Converted {
  std::string text;
  Encoding encoding{Encoding::utf_8};
  // Lines (1-based) of a UTF-8 file that are not UTF-8; they were read as Windows-1252.
  std::vector<std::uint32_t> other_lines;
};

// Drops a byte order mark.  The line ends stay as they are.
[[nodiscard]] Converted convert(std::string_view bytes);

}  // namespace keydrift::encodings

#pragma once
// The encoding that a page says it is in.  Inner header of formats.

#include <string_view>

namespace keydrift::encodings {

// The label in <meta charset="…">, in the content of <meta http-equiv="Content-Type" …>, or in an
// XML declaration, as it is written; empty without one (HTML Standard, "prescan a byte stream to
// determine its encoding").  Looks at the first 64 KiB, not only 1,024 bytes: pages of word
// processors put long comments and styles first.  Bytes of any encoding that has ASCII's
// characters in their places.
[[nodiscard]] std::string_view declared_charset(std::string_view bytes);

}  // namespace keydrift::encodings

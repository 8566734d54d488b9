#pragma once
// Characters that a manuscript takes from symbol fonts, in Unicode.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace keydrift::docx {

// Stands for symbols that cannot be told, as print shows a missing character.
inline constexpr char32_t kUnknownSymbol = U'□';

// The character at a font's place: `code` as in w:sym, or U+F020 to U+F0FF of running text
// (ISO/IEC 29500-1, 17.3.3.30).  nullopt: a symbol font that is not known, or a place of it.
// Codes outside of the private use area stand for themselves.
[[nodiscard]] std::optional<char32_t> symbol(std::string_view font, char32_t code);

struct FontText {
  std::string text;  // UTF-8; unknown symbols are kUnknownSymbol
  bool sound{true};  // no unknown symbol
};
// Running text in that font ("": unknown).
[[nodiscard]] FontText in_font(std::string_view text, std::string_view font);

}  // namespace keydrift::docx

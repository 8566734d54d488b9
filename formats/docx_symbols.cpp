#include "keydrift/formats/docx_symbols.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/text_encodings.hpp"

namespace keydrift::docx {
namespace {

constexpr std::string_view kSymbolFont = "Symbol";

using Mapping = std::pair<unsigned char, char32_t>;

// Greek letters in the places of Latin ones, A to Z and a to z (Adobe's Symbol encoding, from
// memory, as all of these tables).
constexpr std::u32string_view kGreekUpper = U"ΑΒΧΔΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ";
constexpr std::u32string_view kGreekLower = U"αβχδεφγηιϕκλμνοπθρστυϖωξψζ";

constexpr std::array kSymbol{
    Mapping{0x2D, U'−'}, Mapping{0xA2, U'′'}, Mapping{0xA3, U'≤'}, Mapping{0xA5, U'∞'},
    Mapping{0xAB, U'↔'}, Mapping{0xAC, U'←'}, Mapping{0xAD, U'↑'}, Mapping{0xAE, U'→'},
    Mapping{0xAF, U'↓'}, Mapping{0xB0, U'°'}, Mapping{0xB1, U'±'}, Mapping{0xB2, U'″'},
    Mapping{0xB3, U'≥'}, Mapping{0xB4, U'×'}, Mapping{0xB7, U'•'}, Mapping{0xB8, U'÷'},
    Mapping{0xB9, U'≠'}, Mapping{0xBB, U'≈'}, Mapping{0xBC, U'…'}, Mapping{0xD7, U'·'}};

constexpr std::array kWingdings{Mapping{0x6C, U'●'}, Mapping{0x6E, U'■'}, Mapping{0xA7, U'▪'},
                                Mapping{0xD8, U'➢'}, Mapping{0xDF, U'←'}, Mapping{0xE0, U'→'},
                                Mapping{0xE8, U'➔'}, Mapping{0xF0, U'⇨'}, Mapping{0xFC, U'✓'}};

template <class Table>
std::optional<char32_t> look_up(Table const& table, unsigned char code) {
  for (auto const& [place, meant] : table) {
    if (place == code) return meant;
  }
  return std::nullopt;
}

std::optional<char32_t> in_symbol_font(unsigned char code) {
  if (code >= 'A' && code <= 'Z') return kGreekUpper[code - 'A'];
  if (code >= 'a' && code <= 'z') return kGreekLower[code - 'a'];
  if (auto const meant = look_up(kSymbol, code)) return meant;
  constexpr std::string_view kSame = " !#%&()+,./0123456789:;<=>?[]_{|}";
  if (kSame.find(static_cast<char>(code)) != std::string_view::npos) return code;
  return std::nullopt;
}

bool is_private(char32_t code) { return code >= 0xF000 && code <= 0xF0FF; }

}  // namespace

std::optional<char32_t> symbol(std::string_view font, char32_t code) {
  bool const symbols = font == kSymbolFont;
  if (!is_private(code) && !(symbols && code < 0x80)) return code;
  auto const place = static_cast<unsigned char>(code & 0xFFU);
  if (symbols) {
    auto const meant = in_symbol_font(place);
    return meant || is_private(code) ? meant : code;
  }
  if (font == "Wingdings") return look_up(kWingdings, place);
  if (place == 0xB7) return U'•';  // bullets keep it whatever their font
  return std::nullopt;
}

FontText in_font(std::string_view text, std::string_view font) {
  bool const plain = font != kSymbolFont && text.find('\xEF') == std::string_view::npos;
  if (plain) return {std::string{text}, true};
  FontText read;
  while (!text.empty()) {
    auto const length = std::max<std::size_t>(encodings::sequence_length(text), 1);
    auto const meant = symbol(font, printed::code_point_at(text, 0).value);
    read.sound = read.sound && meant;
    encodings::append_code_point(read.text, meant.value_or(kUnknownSymbol));
    text.remove_prefix(length);
  }
  return read;
}

}  // namespace keydrift::docx

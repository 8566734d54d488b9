// "1Wings clear2", "–Wings darkAus bus": a table of three columns that was copied as text without
// what parted them (common practice of programs that flatten markup).  Where the words end and the
// destination begins is seen from what touches there.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLostLines = 4;        // lines that make it a habit
constexpr std::size_t kMostDigitsTouching = 3;     // of a couplet's number
constexpr std::size_t kShortestTouchingWord = 4;   // letters; "mm2" is a measure, "R4" a vein
constexpr std::size_t kLongestTouchingName = 120;  // bytes
constexpr std::size_t kFewestWordsBefore = 2;

// May words end before byte `at`, which something touches?
bool ends_words(std::string_view text, std::size_t at) {
  auto const last = code_point_before(text, at);
  // ".....2" stands behind leaders.
  if (last.value == '.' && at > 1) return is_letter(code_point_before(text, at - 1).value);
  return is_lower(last.value) || last.value == ')' || last.value == ']' || last.value == '%';
}

// "busa" of "Wings clear Ausella busa1": the sign of a footnote touches a name.
bool closes_name(std::string_view text) {
  auto const begin = last_word_begin(text);
  auto const before = trim_right(text.substr(0, begin));
  auto const genus = before.substr(last_word_begin(before));
  return is_epithet(text.substr(begin)) && (is_capitalised(genus) || is_abbreviated(genus));
}

// "2" of "Wings clear2"; the text's size where no number touches.
std::size_t number_touching(std::string_view text) {
  std::size_t begin = text.size();
  while (begin > 0 && is_digit(code_point_at(text, begin - 1).value)) --begin;
  auto const digits = text.size() - begin;
  if (digits == 0 || text[begin] == '0' || digits > kMostDigitsTouching || begin == 0 ||
      !ends_words(text, begin)) {
    return text.size();
  }
  auto const word = text.substr(last_word_begin(text.substr(0, begin)));
  auto const letters = word.substr(0, word.size() - digits);
  bool const word_before = letters.size() >= kShortestTouchingWord || letters.ends_with('.');
  return word_before && !closes_name(text.substr(0, begin)) ? begin : text.size();
}

// "(L.)Roe", "A.Roe": authors that print sets without a blank.
bool closes_author(std::string_view text) {
  if (text.ends_with(')')) {
    auto const open = text.rfind('(');
    if (open == std::string_view::npos) return false;
    auto const inside = text.substr(open + 1);
    return is_upper(code_point_at(inside, 0).value) && fold(start_of(inside, 3)) != "fig";
  }
  return text.ends_with('.') && is_upper(code_point_at(text, last_word_begin(text)).value);
}

// "Aus bus Roe" of "Wings darkAus bus Roe"; the text's size where no name touches.
std::size_t name_touching(std::string_view text) {
  auto const from = text.size() > kLongestTouchingName ? text.size() - kLongestTouchingName : 1;
  for (auto at = from; at + 2 < text.size(); ++at) {
    if (!is_upper(static_cast<unsigned char>(text[at])) || text[at - 1] == ' ') continue;
    if (!ends_words(text, at) || closes_author(text.substr(0, at))) continue;
    auto const name = text.substr(at);
    auto const words = words_of(name);
    bool const genus = words.size() == 1 && has_strict_latin_ending(fold(name));
    if (genus || (words.size() > 1 && is_latin_name(name))) return at;
  }
  return text.size();
}

// "3" of "… article 13" below couplet 2: of two numbers that touch, the second is the next one.
std::size_t next_number_touching(std::string_view text, std::uint32_t couplet) {
  auto const next = std::to_string(couplet + 1);
  auto const word = text.substr(last_word_begin(text));
  bool const digits =
      std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
  bool const ends = digits && word.size() > next.size() && word.ends_with(next);
  return ends ? text.size() - next.size() : text.size();
}

std::size_t begin_of_touching(std::string_view text) {
  // What leaders stand before is parted.
  if (has_row_of_dots(text)) return text.size();
  auto const number = number_touching(text);
  auto const begin = number < text.size() ? number : name_touching(text);
  return words_of(text.substr(0, begin)).size() >= kFewestWordsBefore ? begin : text.size();
}

}  // namespace

void mark_lost_columns(std::vector<SourceLine>& lines) {
  struct Border {
    std::size_t line{};
    std::size_t begin{};
  };
  std::vector<Border> borders;
  std::size_t labelled = 0;
  std::size_t sure = 0;
  std::uint32_t couplet = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& text = lines[i].text;
    auto const label = read_label(text);
    if (!label) continue;
    ++labelled;
    if (label->family == LabelFamily::digits) couplet = label->number;
    if (auto const begin = begin_of_touching(text); begin < text.size()) {
      borders.push_back({i, begin});
      ++sure;
    } else if (auto const next = next_number_touching(text, couplet); next < text.size()) {
      borders.push_back({i, next});
    }
  }
  if (sure < kFewestLostLines || sure * 4 < labelled) return;
  for (auto const& border : borders) {
    lines[border.line].markup.destination_begin = lines[border.line].begin + border.begin;
  }
}

}  // namespace keydrift::printed

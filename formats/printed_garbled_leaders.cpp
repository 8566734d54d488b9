#include "keydrift/formats/printed_garbled_leaders.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestGarbledDots = 3;
constexpr std::size_t kLongestGarbledWord = 8;  // bytes of garbled dots

// Of letters and figures that dots come out as.
bool may_be_dots(std::string_view word) {
  constexpr std::string_view kSeen = "ceonstar0123456789.,-:";
  return word.size() <= kLongestGarbledWord &&
         word.find_first_not_of(kSeen) == std::string_view::npos;
}

// No word, and no number of a couplet either: "eee", "cece", "20000-", "005.", "0.".
bool is_dots(std::string_view word) {
  constexpr std::array<std::string_view, 6> kRows{"eee", "ccc", "cec", "ece", "cee", "000"};
  bool const row = std::any_of(kRows.begin(), kRows.end(), [word](std::string_view one) {
    return word.find(one) != std::string_view::npos;
  });
  return row || word.starts_with('0');
}

// Nothing but what a lead leads to: a number, an abbreviated or a whole name.
bool is_sound_end(std::string_view text) {
  text = without_full_stop(text);
  constexpr std::size_t kMostDigits = 3;
  bool const number =
      !text.empty() && text.size() <= kMostDigits && text[0] != '0' && only_figures(text);
  return number || (starts_with_upper(text) && is_latin_name(text));
}

// "Dees" before "ee eee ee": a row of dots whose first ones came out as a capital.
bool opens_row(std::string_view word) {
  return word.size() > 2 && is_upper(code_point_at(word, 0).value) &&
         word.substr(1).find_first_not_of("eosc") == std::string_view::npos;
}

// Bytes [begin, end) of the line are garbled dots.
struct Garbled {
  std::size_t begin{};
  std::size_t end{};
};

Garbled garbled_in(std::string_view line) {
  // Behind the first row of dots, for what stands between rows is garbled as well.
  auto const row = line.find(std::string(kFewestGarbledDots, '.'));
  if (row == std::string_view::npos) return {};
  auto const begin = std::min(line.find_first_not_of('.', row), line.size());
  // Three dots alone may be of the words.
  auto const dots = begin - row;
  std::size_t fewest = dots > kFewestGarbledDots ? 1 : 2;
  std::size_t garbled = 0;
  for (auto at = begin; at < line.size();) {
    auto const word_at = skip_blanks(line, at);
    auto const rest = line.substr(word_at);
    if (garbled >= fewest && (is_sound_end(rest) || epithet_behind_number(rest))) {
      return {begin, word_at};
    }
    auto const end = std::min(line.find_first_of(" \t", word_at), line.size());
    auto const word = line.substr(word_at, end - word_at);
    bool const first = word_at == skip_blanks(line, begin);
    if (word.empty() || end == line.size() || !(may_be_dots(word) || (first && opens_row(word)))) {
      return {};
    }
    if (is_dots(word)) ++garbled;
    at = end;
  }
  return {};
}

// Where the one dot stands that is left of a row between a comma and an epithet with its author,
// "reddish testaceous, .rufipes Roe (p. 13)"; the line's end without one.
std::size_t dot_before_epithet(std::string_view line) {
  auto const comma = line.rfind(", .");
  if (comma == std::string_view::npos) return line.size();
  auto const dot = comma + 2;
  auto const words = words_of(line.substr(dot + 1), 4);
  bool const named = words.size() > 1 && is_epithet(without_end(words[0])) &&
                     has_epithet_ending(without_end(words[0])) &&
                     (is_authorish(words[1]) || words[1] == "new" || words[1] == "n.");
  return named ? dot : line.size();
}

}  // namespace

std::size_t clear_garbled_leaders(std::string& text) {
  std::size_t lines = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const line = trim_right(std::string_view{text}.substr(begin, end - begin));
    constexpr std::size_t kLongestLine = 1000;
    auto const garbled = line.size() < kLongestLine ? garbled_in(line) : Garbled{};
    for (auto at = begin + garbled.begin; at < begin + garbled.end; ++at) {
      if (text[at] != ' ' && text[at] != '\t') text[at] = '.';
    }
    if (garbled.end > garbled.begin) ++lines;
    if (auto const dot = dot_before_epithet(line); dot < line.size()) {
      // With the comma and the blank before it, so that columns stay.
      for (auto at = begin + dot - 2; at < begin + dot; ++at) text[at] = '.';
      ++lines;
    }
    begin = end + 1;
  }
  return lines;
}

}  // namespace keydrift::printed

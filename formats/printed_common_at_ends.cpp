// "… corky wings. Burnwood (Evonella atrovirens), p. 88.": handbooks for schools end their leads in
// the common name, with the Latin one in brackets behind it, and no leaders before (common
// practice).

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestCommonEnds = 4;       // ends that make a habit
constexpr std::size_t kMostWordsOfCommonName = 4;  // of a common name
constexpr std::size_t kLongestBracketAtEnd = 60;   // bytes
constexpr std::size_t kLongestCommonName = 60;     // bytes of a common name

struct CommonEnd {
  std::size_t line{};  // where the common name begins
  std::size_t at{};    // byte of the line's text
  std::size_t last{};  // line with the bracket
};

// "(Ausella busa)", "(A. busa)", "(Ausella)" with its page or without, at the end of the text: the
// byte of its bracket.
std::optional<std::size_t> bracketed_latin_at_end(std::string_view text) {
  auto const open = text.rfind('(');
  auto const close = open == std::string_view::npos ? open : text.find(')', open);
  if (close == std::string_view::npos || close - open > kLongestBracketAtEnd || open == 0) {
    return std::nullopt;
  }
  auto behind = trim(text.substr(close + 1));
  if (behind.starts_with(',')) behind = trim(behind.substr(1));
  auto const words = words_of(behind, 3);
  bool const page = words.size() == 2 && is_page(words[0], words[1]);
  if (!page && !behind.empty() && behind != ".") return std::nullopt;
  auto const inside = text.substr(open + 1, close - open - 1);
  auto const name = words_of(inside, 4);
  bool const genus =
      name.size() == 1 && is_capitalised(name[0]) && has_strict_latin_ending(name[0]);
  bool const species = name.size() > 1 && name.size() < 4 &&
                       (is_abbreviated(name[0]) || is_capitalised(name[0])) &&
                       is_epithet(name[1]) && is_latin_name(inside);
  return genus || species ? std::optional{open} : std::nullopt;
}

// Where the capitalised words begin that close the text behind a full stop or at its start; the
// text's size where they do not.
std::size_t common_name_at_end(std::string_view text) {
  auto const closed = trim_right(text);
  auto begin = closed.size();
  std::size_t words = 0;
  while (begin > 0) {
    auto const before = trim_right(closed.substr(0, begin));
    auto const at = last_word_begin(before);
    auto const word = before.substr(at);
    if (words > 0 && (word.ends_with('.') || word.ends_with(';'))) return begin;
    bool const name = is_upper(code_point_at(word, 0).value) && is_plain_word(word);
    if (!name || ++words > kMostWordsOfCommonName) return text.size();
    begin = at;
  }
  return words > 0 && closed.size() <= kLongestCommonName ? 0 : text.size();
}

std::optional<CommonEnd> common_end(std::vector<SourceLine> const& lines, std::size_t i) {
  auto const text = lines[i].text;
  // What stands behind leaders is told by them.
  if (has_row_of_dots(text) || (i > 0 && has_row_of_dots(lines[i - 1].text))) return std::nullopt;
  auto const open = bracketed_latin_at_end(text);
  bool const alone =
      !open && text.starts_with('(') && bracketed_latin_at_end("x " + std::string{text});
  if (!open && !alone) return std::nullopt;
  auto const before = alone ? std::string_view{} : text.substr(0, *open);
  auto const at = common_name_at_end(before);
  if (!alone && at == before.size()) return std::nullopt;
  if (!alone && at > 0) return CommonEnd{i, at, i};
  // The name begins on the line above, or stands at the front of this one.
  if (i == 0 || lines[i - 1].text.empty()) return std::nullopt;
  auto const above = lines[i - 1].text;
  if (!alone && (above.ends_with('.') || above.ends_with(';'))) return CommonEnd{i, 0, i};
  auto const begun = common_name_at_end(above);
  if (begun == above.size() || begun == 0) return std::nullopt;
  return CommonEnd{i - 1, begun, i};
}

}  // namespace

void mark_common_names(std::vector<SourceLine>& lines) {
  std::vector<CommonEnd> ends;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].text.find('(') == std::string_view::npos) continue;
    if (lines[i].markup.destination_begin != kNotTold) continue;
    if (auto const end = common_end(lines, i)) ends.push_back(*end);
  }
  if (ends.size() < kFewestCommonEnds) return;
  for (auto const& end : ends) {
    mark_end_over_lines(lines, end.line, end.at, end.last);
    if (end.at == 0) lines[end.line].is_no_lead = true;
  }
}

}  // namespace keydrift::printed

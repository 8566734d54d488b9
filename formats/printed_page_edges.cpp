#include "keydrift/formats/printed_page_edges.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"

namespace keydrift::printed {
namespace {

// "Roe: Marshes      17/29", "Marshes      17 of 29": the line without the count of all pages.
std::string_view without_page_count(std::string_view line) {
  constexpr std::string_view kOf = " of ";
  if (auto const of = line.rfind(kOf); of != std::string_view::npos && of > 0) {
    auto const count = line.substr(of + kOf.size());
    bool const pages = !count.empty() && count.size() <= kLongestPageNumber &&
                       only_figures(count) && is_digit(static_cast<unsigned char>(line[of - 1]));
    if (pages) return line.substr(0, of);
  }
  auto const last = line.find_last_not_of("0123456789");
  bool const counted = last != std::string_view::npos && last > 0 && last + 1 < line.size() &&
                       line[last] == '/' && is_digit(static_cast<unsigned char>(line[last - 1]));
  return counted ? line.substr(0, last) : line;
}

}  // namespace

std::string_view without_page_number(std::string_view line) {
  constexpr std::size_t kYear = 4;  // digits
  std::size_t front = 0;
  while (front < line.size() && line[front] >= '0' && line[front] <= '9') ++front;
  if (front > 0 && front <= kLongestPageNumber && is_blank(code_point_at(line, front).value)) {
    auto const words = trim(line.substr(front));
    if (front != kYear) return words;
    auto const inner = without_page_number(words);
    return inner.empty() ? words : inner;
  }
  std::size_t back = line.size();
  while (back > 0 && line[back - 1] >= '0' && line[back - 1] <= '9') --back;
  auto const digits = line.size() - back;
  if (digits > 0 && digits <= kLongestPageNumber && back > 0 &&
      is_blank(code_point_before(line, back).value)) {
    return trim(line.substr(0, back));
  }
  return {};
}

bool mostly_capitals(std::string_view text) {
  std::size_t upper = 0;
  std::size_t lower = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    if (is_upper(c.value)) ++upper;
    if (is_lower(c.value)) ++lower;
    at += c.length;
  }
  return upper >= 4 && upper > lower * 2;
}

bool is_head_in_capitals(std::string_view text) {
  constexpr std::size_t kFewestWords = 4;
  return mostly_capitals(text) && words_of(text, kFewestWords).size() == kFewestWords;
}

bool may_be_running_head(std::string_view text) {
  constexpr std::size_t kLongest = 120;  // bytes
  constexpr std::size_t kWidest = 250;   // with all blanks
  if (text.size() <= kLongest) return true;
  if (text.size() > kWidest) return false;
  std::size_t blanks = 0;  // behind other blanks
  for (std::size_t at = 1; at < text.size(); ++at) {
    if (text[at] == ' ' && text[at - 1] == ' ') ++blanks;
  }
  return text.size() - blanks <= kLongest;
}

std::optional<EdgeNumber> number_at_edge(SourceLine const& line) {
  auto const text = without_page_count(line.text);
  if (!may_be_running_head(text)) return std::nullopt;
  auto const words = without_page_number(text);
  if (words.size() < 4 || words.find("..") != std::string_view::npos) return std::nullopt;
  bool const front = words.data() != text.data();
  auto const digits = front ? text.substr(0, leading_figures(text))
                            : text.substr(text.find_last_not_of("0123456789") + 1);
  auto const number = number_of(digits);
  auto const gap = text.size() - words.size() - digits.size();
  auto const between = front ? text.substr(digits.size(), gap) : text.substr(words.size(), gap);
  bool const tab = between.find('\t') != std::string_view::npos;
  // "222 – Agaricales", "52 · Marsh News"
  auto const sign = code_point_at(words, 0).value;
  bool const dash = front && (is_dash(sign) || sign == 0xB7 || sign == 0x2022 || sign == '|');
  return EdgeNumber{number, words, tab ? kTabBlanks : dash ? std::max(gap, kGapBlanks) : gap};
}

bool is_head_with_page(SourceLine const& line) {
  constexpr std::uint32_t kLeastPage = 10;
  auto const edge = number_at_edge(line);
  return edge && edge->number >= kLeastPage && mostly_capitals(edge->words);
}

bool names_a_volume(std::string_view words) {
  if (words.find("\u00A9") != std::string_view::npos) return true;
  for (auto open = words.find('('); open != std::string_view::npos;
       open = words.find('(', open + 1)) {
    auto const close = words.find(')', open);
    if (close == std::string_view::npos) return false;
    auto const inside = words.substr(open + 1, close - open - 1);
    auto const before = trim_right(words.substr(0, open));
    bool const issue = !inside.empty() && inside.size() <= 5 &&
                       inside.find_first_not_of("0123456789-") == std::string_view::npos;
    if (issue && !before.empty() && is_digit(static_cast<unsigned char>(before.back())))
      return true;
  }
  return false;
}

bool names_volume_and_pages(std::string_view words) {
  for (auto colon = words.find(": "); colon != std::string_view::npos && colon > 0;
       colon = words.find(": ", colon + 1)) {
    auto const volume = code_point_before(words, colon).value;
    if (!is_digit(volume) && volume != ')') continue;
    auto pages = words.substr(colon + 2);
    auto const first = leading_figures(pages);
    if (first == 0 || first == pages.size()) continue;
    auto const dash = code_point_at(pages, first);
    auto const last = first + dash.length;
    if (is_dash(dash.value) && last < pages.size() && is_digit(code_point_at(pages, last).value)) {
      return true;
    }
  }
  return false;
}

bool is_set_in_capitals(std::vector<SourceLine> const& lines) {
  auto const capitals = std::count_if(lines.begin(), lines.end(), [](SourceLine const& line) {
    return mostly_capitals(line.text);
  });
  return static_cast<std::size_t>(capitals) * 3 > lines.size();
}

std::uint32_t largest_of_key(Numbering const& numbering) {
  constexpr std::uint32_t kClose = 4;
  std::uint32_t largest = 0;
  for (auto const number : numbering.numbers) {
    if (number <= largest + kClose) largest = number;
  }
  return largest;
}

bool is_of_key(std::uint32_t number, Numbering const& numbering) {
  if (number <= 1) return numbering.has_number(number);
  bool const before = numbering.has_number(number - 1);
  // 11 between 10 and 12, where "ll." was printed.
  return numbering.has_number(number) ? before || numbering.has_number(number + 1)
                                      : before && numbering.has_number(number + 1);
}

}  // namespace keydrift::printed

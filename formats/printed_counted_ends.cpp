// "… reaching front of eye. maculosus. 1.": keys of fishes of about 1900 print the epithets at the
// ends of their leads with the numbers of the species behind them, which count up through the key.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestCountedEnds = 4;  // ends that make a count

// "maculosus. 1." at the end of a line.
struct CountedEnd {
  std::size_t line{};
  std::size_t name{};      // byte of the line's text where it begins
  std::size_t name_end{};  // and ends
  std::string_view number;
  bool stop{false};  // a full stop stands before it, and no comma
};

std::optional<CountedEnd> counted_end(std::string_view text, std::size_t line) {
  constexpr std::size_t kShortestName = 4;
  constexpr std::size_t kLongestNumber = 4;
  auto const number_at = last_word_begin(text);
  if (number_at == 0) return std::nullopt;
  auto number = text.substr(number_at);
  if (number.ends_with('.') || number.ends_with(',')) number.remove_suffix(1);
  if (number.empty() || number.size() > kLongestNumber) return std::nullopt;
  if (!is_number_only(number) && !misread_number(number)) return std::nullopt;
  auto const before = trim_right(text.substr(0, number_at));
  if (before.empty() || (before.back() != '.' && before.back() != ',')) return std::nullopt;
  auto const name_at = last_word_begin(before);
  auto const name = before.substr(name_at, before.size() - 1 - name_at);
  if (name.size() < kShortestName) return std::nullopt;
  if (!is_epithet(name) && !is_in_capitals(name)) return std::nullopt;
  CountedEnd end{line, name_at, before.size() - 1, number, before.back() == '.'};
  // "O. maculosus. 1."
  auto const genus = trim_right(text.substr(0, name_at));
  auto const genus_at = last_word_begin(genus);
  if (is_abbreviated(genus.substr(genus_at))) end.name = genus_at;
  return end;
}

bool may_say(std::string_view printed, std::uint32_t number) {
  return figures_of(number, printed) == printed.size();
}

// The ends from the first one on that count up, one number or two at a time.
std::vector<CountedEnd> ends_counting_from(std::span<CountedEnd const> ends, std::uint32_t first) {
  std::vector<CountedEnd> found;
  auto next = first;
  for (auto const& end : ends) {
    bool const skipped = !may_say(end.number, next) && may_say(end.number, next + 1);
    if (!skipped && !may_say(end.number, next)) continue;
    found.push_back(end);
    next += skipped ? 2 : 1;
  }
  return found;
}

// The longest count that one of the first ends begins, a running head before it or not.
std::vector<CountedEnd> longest_count(std::vector<CountedEnd> const& ends) {
  constexpr std::size_t kMostBefore = 3;
  std::vector<CountedEnd> longest;
  for (std::size_t i = 0; i < std::min(ends.size(), kMostBefore); ++i) {
    auto const number = misread_number(ends[i].number);
    auto found = ends_counting_from(std::span{ends}.subspan(i),
                                    number ? *number : number_of(ends[i].number));
    if (found.size() > longest.size()) longest = std::move(found);
  }
  return longest;
}

}  // namespace

void mark_counted_ends(std::vector<SourceLine>& lines) {
  std::vector<CountedEnd> ends;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].markup.destination_begin != kNotTold || lines[i].is_no_lead) continue;
    if (auto const end = counted_end(lines[i].text, i)) ends.push_back(*end);
  }
  if (ends.size() < kFewestCountedEnds) return;
  auto const found = longest_count(ends);
  auto const latin = static_cast<std::size_t>(
      std::count_if(found.begin(), found.end(), [&lines](CountedEnd const& end) {
        auto const words = lines[end.line].text.substr(end.name, end.name_end - end.name);
        auto const epithet = words.substr(last_word_begin(words));
        return is_in_capitals(epithet) || has_latin_ending(epithet);
      }));
  if (found.size() < kFewestCountedEnds || found.size() * 4 < ends.size() * 3) return;
  if (latin * 3 < found.size() * 2) return;
  // Behind commas the numbers are known for what they are.
  auto const stops =
      std::count_if(found.begin(), found.end(), [](CountedEnd const& end) { return end.stop; });
  if (stops * 2 < std::ssize(found)) return;
  // Where leads lead to couplets by number, none leads to 1.
  auto const numbering = decide_numbering(lines);
  bool const one = may_say(found.front().number, 1);
  if (numbering.family == LabelFamily::digits && !one) return;
  for (auto const& end : found) {
    auto& line = lines[end.line];
    line.markup.destination_begin = line.begin + end.name;
    line.markup.destination_end = line.begin + end.name_end;
  }
}

}  // namespace keydrift::printed

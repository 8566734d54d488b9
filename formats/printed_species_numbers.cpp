#include "keydrift/formats/printed_species_numbers.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestSpeciesNumber = 3;  // bytes
constexpr std::size_t kFewestSpeciesNumbers = 3;  // ends with numbers that make a habit

// Of the epithet or the name: "2. busa", "2. A. busa", "BUSA, 2."
enum class Side : std::uint8_t { before, before_initial, behind };

// What stands where a line's end has the number of its species.
struct End {
  std::size_t at{};      // of the number
  std::size_t length{};  // without its full stop
  std::optional<std::uint32_t> number;
};

bool may_be_number(std::string_view word) {
  return !word.empty() && word.size() <= kLongestSpeciesNumber &&
         word.find_first_of(".,;:()[]- ") == std::string_view::npos;
}

std::optional<End> numbered_end_of(std::string_view text, std::string_view line, Side side) {
  auto const trimmed = trim_right(line);
  auto const last_at = last_word_begin(trimmed);
  if (last_at < 2) return std::nullopt;
  auto const last = trimmed.substr(last_at);
  auto head = trim_right(trimmed.substr(0, last_at));
  auto before_at = last_word_begin(head);
  bool const initial = side == Side::before_initial;
  if (initial) {
    if (!is_abbreviated(head.substr(before_at))) return std::nullopt;
    head = trim_right(head.substr(0, before_at));
    before_at = last_word_begin(head);
  }
  auto const before = head.substr(before_at);
  auto const number = side == Side::behind ? last : before;
  if (!number.ends_with('.') || (side == Side::before && before_at == 0)) return std::nullopt;
  auto const bare = number.substr(0, number.size() - 1);
  auto const epithet = without_closing_marks(last);
  bool const named = side == Side::behind
                         ? before.ends_with(',') && is_in_capitals(without_closing_marks(before))
                         : is_epithet(epithet) || (is_capitalised(epithet) &&
                                                   (initial || has_strict_latin_ending(epithet)));
  if (!named || !may_be_number(bare)) return std::nullopt;
  End end{static_cast<std::size_t>(number.data() - text.data()), bare.size(), std::nullopt};
  if (only_figures(bare)) end.number = number_of(bare);
  return end;
}

std::vector<End> ends_in(std::string_view text, Side side) {
  std::vector<End> ends;
  for (std::size_t begin = 0; begin < text.size();) {
    auto const stop = std::min(text.find('\n', begin), text.size());
    if (auto const end = numbered_end_of(text, text.substr(begin, stop - begin), side)) {
      ends.push_back(*end);
    }
    begin = stop + 1;
  }
  return ends;
}

std::size_t restore_numbers(std::string& text, Side side) {
  auto const ends = ends_in(text, side);
  auto const numbered = std::count_if(ends.begin(), ends.end(),
                                      [](End const& end) { return end.number.has_value(); });
  if (numbered < static_cast<std::ptrdiff_t>(kFewestSpeciesNumbers)) return 0;
  std::size_t lines = 0;
  std::string mended;
  std::size_t done = 0;  // bytes of the text
  for (std::size_t i = 0; i < ends.size(); ++i) {
    auto const& end = ends[i];
    bool const first = i == 0;
    bool const called_for =
        !end.number && i + 1 < ends.size() && ends[i + 1].number && (first || ends[i - 1].number);
    if (!called_for) continue;
    auto const number = first ? 1 : *ends[i - 1].number + 1;
    if (*ends[i + 1].number != number + 1) continue;
    auto const seen = std::string_view{text}.substr(end.at, end.length);
    if (figures_of(number, seen) != seen.size()) continue;
    mended.append(text, done, end.at - done).append(std::to_string(number));
    done = end.at + end.length;
    ++lines;
  }
  if (lines == 0) return 0;
  mended.append(text, done);
  text = std::move(mended);
  return lines;
}

}  // namespace

std::size_t restore_numbers_at_ends(std::string& text) {
  return restore_numbers(text, Side::before) + restore_numbers(text, Side::before_initial) +
         restore_numbers(text, Side::behind);
}

}  // namespace keydrift::printed

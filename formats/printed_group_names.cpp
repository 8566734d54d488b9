#include "keydrift/formats/printed_group_names.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestGroupNames = 3;     // names that make a count
constexpr std::size_t kFewestBehindLeaders = 2;  // of these, behind leaders

struct GroupName {
  std::size_t line{};
  std::uint32_t number{};
  std::string_view printed;  // without the full stop that ends it
  bool alone{false};         // on its line
};

bool names_tribe(std::string_view word) {
  constexpr std::size_t kShortest = 6;  // bytes
  auto const folded = fold(word);
  return word.size() >= kShortest && is_capitalised(word) &&
         (folded.ends_with("eae") || folded.ends_with("inae") || folded.ends_with("ini") ||
          has_higher_ending(folded));
}

// The last two words, where they are a numeral and a tribe.
std::string_view group_at_end(std::string_view text) {
  auto const name = last_word_begin(text);
  if (name == 0) return {};
  auto const begin = last_word_begin(trim_right(text.substr(0, name)));
  return is_numbered_group(text.substr(begin)) ? text.substr(begin) : std::string_view{};
}

std::optional<GroupName> group_of(SourceLine const& line, std::size_t at) {
  if (line.is_no_lead || line.markup.destination_begin != kNotTold) return std::nullopt;
  auto const printed = group_at_end(line.text);
  if (printed.empty()) return std::nullopt;
  auto const before = line.text.substr(0, line.text.size() - printed.size());
  if (!before.empty() && !has_row_of_dots(before)) return std::nullopt;
  auto const number = roman_number(printed.substr(0, printed.find('.')));
  return GroupName{at, number, without_full_stop(printed), before.empty()};
}

// "10. Ausella" at the end of "… bald . . . . 10. Ausella." and at the front of "10. Ausella Roe.";
// empty where no genus bears a number.
std::string numbered_genus(std::string_view number, std::string_view genus) {
  genus = without_closing_marks(genus);
  bool const named = is_species_number(number) && is_capitalised(genus) && has_latin_ending(genus);
  return named ? std::string{number} + ' ' + std::string{genus} : std::string{};
}

}  // namespace

bool is_numbered_group(std::string_view text) {
  auto const words = words_of(text, 3);
  if (words.size() != 2 || !words[0].ends_with('.')) return false;
  return roman_number(without_full_stop(words[0])) > 0 && is_upper(code_point_at(text, 0).value) &&
         names_tribe(without_full_stop(words[1]));
}

void mark_group_names(std::vector<SourceLine>& lines) {
  std::vector<GroupName> count;
  std::vector<GroupName> others;
  std::size_t behind = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const group = group_of(lines[i], i);
    if (!group) continue;
    if (group->number != count.size() + 1) {
      others.push_back(*group);
      continue;
    }
    count.push_back(*group);
    if (!group->alone) ++behind;
  }
  if (count.size() < kFewestGroupNames || behind < kFewestBehindLeaders) return;
  std::unordered_set<std::string_view> names;
  for (auto const& group : count) {
    names.insert(group.printed);
    if (!group.alone) continue;
    auto& line = lines[group.line];
    line.is_no_lead = true;
    line.markup.destination_begin = line.begin;
  }
  std::optional<std::size_t> titled;  // the first title behind the key
  for (auto const& group : others) {
    if (group.line < count.back().line || !group.alone || !names.contains(group.printed)) continue;
    lines[group.line].is_title = lines[group.line].is_no_lead = true;
    if (!titled) titled = group.line;
  }
  if (!titled) return;
  std::unordered_set<std::string> genera;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i < *titled) {
      auto const text = lines[i].text;
      auto const name = last_word_begin(text);
      auto const before = trim_right(text.substr(0, name));
      auto genus = numbered_genus(before.substr(last_word_begin(before)), text.substr(name));
      if (!genus.empty()) genera.insert(std::move(genus));
      continue;
    }
    auto const words = words_of(lines[i].text, 2);
    if (words.size() < 2) continue;
    if (genera.contains(numbered_genus(words[0], words[1]))) lines[i].is_no_lead = true;
  }
}

}  // namespace keydrift::printed

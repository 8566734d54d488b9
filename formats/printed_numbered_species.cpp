#include "keydrift/formats/printed_numbered_species.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {

std::uint32_t species_number_at(std::string_view end) {
  auto const number_of = [](std::string_view digits) -> std::uint32_t {
    auto const number = read_reference(without_closing_marks(digits));
    bool const plain = number && number->letter.empty() && number->family == LabelFamily::digits;
    return plain ? number->number : 0;
  };
  auto const words = words_of(end);
  if (words.size() < 2) return 0;
  if (words.front().ends_with('.') && is_digit(code_point_at(words.front(), 0).value)) {
    return number_of(words.front());
  }
  bool const behind = words[words.size() - 2].ends_with(',');
  return behind && is_digit(code_point_at(words.back(), 0).value) ? number_of(words.back()) : 0;
}

NumberedSpecies::NumberedSpecies(KeyText const& key, SortedLines const& sorted) {
  for (std::size_t i = 0; i < key.lines.size() && i < sorted.accounts.size(); ++i) {
    if (!is_of_lead(sorted.accounts[i])) look_at(key.lines[i]);
  }
}

ListedSpecies const* NumberedSpecies::find(std::uint32_t number) const {
  auto const found = listed_.find(number);
  return found == listed_.end() ? nullptr : &found->second;
}

// A list may have several columns.
void NumberedSpecies::look_at(SourceLine const& line) {
  auto rest = line.text;
  while (true) {
    auto const label = read_label(rest);
    if (!label || label->family != LabelFamily::digits || label->end != LabelEnd::dot) return;
    auto const words = rest.substr(label->text_at);
    auto const gap = std::min(words.find("  "), words.size());
    add(label->number, words.substr(0, gap), line.number);
    if (gap == words.size()) return;
    rest = trim_left(words.substr(gap));
  }
}

void NumberedSpecies::add(std::uint32_t number, std::string_view printed, std::uint32_t line) {
  auto const words = words_of(printed, 2);
  if (words.size() < 2) return;
  auto const epithet = without_closing_marks(words[1]);
  bool const capitals = is_in_capitals(words[0], 3) && is_in_capitals(epithet, 3);
  bool const genus = is_abbreviated(words[0]) || is_capitalised(words[0]);
  if (!genus || !(capitals || is_epithet(epithet))) return;
  auto name = (capitals ? full_genus(words[0]) : std::string{words[0]}) + " " +
              (capitals ? fold(epithet) : std::string{epithet});
  if (is_latin_name(name)) listed_.emplace(number, ListedSpecies{std::move(name), line});
}

}  // namespace keydrift::printed

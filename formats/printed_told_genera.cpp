#include "keydrift/formats/printed_told_genera.hpp"

#include <algorithm>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShortestToldGenus = 4;    // bytes
constexpr std::size_t kLongestAbbreviation = 5;  // with the full stop
constexpr std::size_t kShortestBracketed = 3;    // "(A.)" is a subgenus as often

bool is_abbreviation(std::string_view word) {
  return word.size() <= kLongestAbbreviation && is_abbreviated(word);
}

// The genus in "Ausella", "Ausella;", "Ausella."; empty for any other word.
std::string_view genus_in(std::string_view word) {
  auto const bare = without_closing_marks(word);
  bool const genus =
      bare.size() >= kShortestToldGenus && has_latin_ending(bare) && is_capitalised(bare) &&
      is_plain_word(bare) &&
      std::all_of(bare.begin() + 1, bare.end(), [](char c) { return c < 'A' || c > 'Z'; });
  return genus ? bare : std::string_view{};
}

// "Ae." of "(Ae.)", "(Ae.),"; empty for any other word.
std::string_view in_brackets(std::string_view word) {
  while (word.ends_with(',') || word.ends_with(';')) word.remove_suffix(1);
  if (!word.starts_with('(') || !word.ends_with(".)")) return {};
  auto const inside = word.substr(1, word.size() - 2);
  return inside.size() >= kShortestBracketed && is_abbreviation(inside) ? inside
                                                                        : std::string_view{};
}

}  // namespace

std::unordered_map<std::string, std::string> told_genera(std::vector<SourceLine> const& lines) {
  std::unordered_map<std::string, std::string> told;
  auto const tell = [&told](std::string_view abbreviation, std::string_view word) {
    auto const genus = genus_in(word);
    if (genus.empty() || genus.front() != abbreviation.front()) return;
    told.emplace(abbreviation.substr(0, abbreviation.size() - 1), genus);
  };
  std::string_view before;         // the word before
  std::string_view before_before;  // and that before it
  for (auto const& line : lines) {
    auto const text = line.text;
    bool const may_tell = before == "=" || text.find('=') != std::string_view::npos ||
                          text.find(".)") != std::string_view::npos;
    // Of other lines only the last words matter.
    auto const last = last_word_begin(text);
    auto const from = may_tell || last == 0 ? 0 : last_word_begin(trim_right(text.substr(0, last)));
    for (auto const word : words_of(text.substr(from))) {
      if (before == "=" && is_abbreviation(before_before)) tell(before_before, word);
      if (auto const inside = in_brackets(word); !inside.empty()) tell(inside, before);
      before_before = before;
      before = word;
    }
  }
  return told;
}

}  // namespace keydrift::printed

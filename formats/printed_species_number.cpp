#include "keydrift/formats/printed_species_number.hpp"

#include <unordered_map>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

void skip_digits(std::string_view& word) {
  while (!word.empty() && is_digit(static_cast<unsigned char>(word.front()))) {
    word.remove_prefix(1);
  }
}

std::optional<Label> label_of_number(std::string_view text) {
  auto const label = read_label(text);
  return label && label->family == LabelFamily::digits ? label : std::nullopt;
}

}  // namespace

bool is_group_numeral(std::string_view word, std::string_view name) {
  if (word.size() < 2 || word.back() != '.' || !is_upper(code_point_at(word, 0).value))
    return false;
  word.remove_suffix(1);
  auto const group = without_closing_marks(name.substr(0, name.find(' ')));
  return is_capitalised(group) && has_higher_ending(fold(group)) && is_in_capitals(word, 1) &&
         roman_number(word, kLargestGroupNumeral) > 0;
}

bool is_species_number(std::string_view word) {
  return word.size() > 1 && word.find_first_not_of("0123456789"sv) + 1 == word.size() &&
         word.back() == '.';
}

std::string_view genus_of_numbered_species(std::string_view line) {
  constexpr std::size_t kLongest = 80;  // bytes
  if (line.size() > kLongest || !is_digit(code_point_at(line, 0).value)) return {};
  auto const words = words_of(line, 4);
  bool const species = words.size() >= 3 && is_species_number(words[0]) &&
                       is_capitalised(words[1]) && has_strict_latin_ending(words[1]) &&
                       is_epithet(without_closing_marks(words[2])) &&
                       has_epithet_ending(without_closing_marks(words[2]));
  return species ? words[1] : std::string_view{};
}

std::unordered_set<std::string_view> genera_of_numbered_species(
    std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 3;
  std::unordered_map<std::string_view, std::size_t> counts;
  std::unordered_set<std::string_view> genera;
  for (auto const& line : lines) {
    auto const genus = genus_of_numbered_species(line.text);
    if (!genus.empty() && ++counts[genus] == kFewest) genera.insert(genus);
  }
  return genera;
}

namespace {

// "mesoscutum.-------7. Ausella": a row of hyphens for leaders.
bool ends_in_hyphens(std::string_view text, std::size_t at) {
  constexpr std::string_view kRow = "---";
  return at > kRow.size() && text.substr(0, at).ends_with(kRow);
}

}  // namespace

std::size_t numbered_end(std::string_view text, std::size_t longest,
                         bool (*is_numbered)(std::string_view)) {
  auto at = text.size() > longest ? text.find(' ', text.size() - longest) : 0;
  for (; at < text.size(); ++at) {
    bool const begins =
        is_digit(static_cast<unsigned char>(text[at])) &&
        (at == 0 || text[at - 1] == ' ' || text[at - 1] == '\t' || ends_in_hyphens(text, at));
    if (begins && is_numbered(text.substr(at))) return at;
  }
  return text.size();
}

std::optional<std::size_t> epithet_behind_number(std::string_view text) {
  auto const label = label_of_number(text);
  bool const named = label && is_epithet_or_name(text.substr(label->text_at));
  return named ? std::optional{label->text_at} : std::nullopt;
}

bool is_numbered_epithet(std::string_view text) {
  if (!is_digit(code_point_at(text, 0).value)) return false;
  auto const label = label_of_number(text);
  if (!label || label->end != LabelEnd::dot || !label->letter.empty()) return false;
  auto const name = text.substr(label->text_at);
  return is_bare_epithet(name) || is_genusless_name(name);
}

bool is_lettered_rank(std::span<std::string_view const> words) {
  if (words.size() < 3 || words[0].size() != 2) return false;
  bool const letter = is_lower(static_cast<unsigned char>(words[0][0])) &&
                      (words[0][1] == '.' || words[0][1] == ')');
  auto const rank = in_small_letters(words[1]);
  return letter && rank.size() > 2 && is_rank(fold(rank)) && is_epithet(without_end(words[2]));
}

bool is_lettered_rank(std::string_view text) { return is_lettered_rank(words_of(text, 3)); }

bool begin_with_species_number(std::span<std::string_view const> words) {
  if (words.size() < 2 || words[0].empty()) return false;
  if (is_lettered_rank(words) || is_group_numeral(words[0], words[1])) return true;
  auto number = words[0];
  // "l2. A. bus"
  bool const digits = number.find_first_of("0123456789"sv) != std::string_view::npos;
  if (digits && number.ends_with('.') && misread_number(number)) return true;
  // "G. A. bus"
  bool const misread = number.size() == 2 && number.back() == '.' &&
                       "BGIOSZ"sv.find(number.front()) != std::string_view::npos;
  if (misread && words.size() > 2 && is_abbreviated(words[1]) && words[1] != number &&
      is_epithet(without_closing_marks(words[2]))) {
    return true;
  }
  if (number.size() > 2 && (number.front() == '(' || number.front() == '[')) {
    number.remove_prefix(1);
  }
  if (!is_digit(static_cast<unsigned char>(number[0]))) return false;
  skip_digits(number);
  while (number.size() > 1 && number.front() == '.' &&
         is_digit(static_cast<unsigned char>(number[1]))) {
    number.remove_prefix(1);  // "6.3.1."
    skip_digits(number);
  }
  if (number.size() > 1 && number.front() == '/') number.remove_prefix(1);  // "4220/b."
  if (auto const letter = code_point_at(number, 0); is_lower(letter.value)) {
    number.remove_prefix(letter.length);
  }
  // "17.–19.", "(11-13)."
  auto range = number;
  if (range.starts_with('.')) range.remove_prefix(1);
  auto const dash = code_point_at(range, 0);
  if (is_dash(dash.value) && is_digit(code_point_at(range, dash.length).value)) {
    number = range.substr(dash.length);
    skip_digits(number);
  }
  while (!number.empty() && ".)],"sv.find(number.front()) != std::string_view::npos) {
    number.remove_prefix(1);
  }
  return number.size() <= 1;
}

bool is_numbered_taxon(std::string_view line) {
  constexpr std::size_t kMost = 8;  // words, with authors and a page
  auto const words = words_of(start_of(line, 120), kMost + 1);
  if (words.size() < 2 || words.size() > kMost || line.find(';') != std::string_view::npos) {
    return false;
  }
  auto digits = words[0];
  skip_digits(digits);
  if (digits != "." || digits.size() == words[0].size()) return false;
  auto const name = line.substr(static_cast<std::size_t>(words[1].data() - line.data()));
  if (is_bare_epithet(name) || is_genusless_name(name)) return true;
  auto const first = without_end(words[1]);
  bool const fresh = words.size() > 2 && ends_item(words[1]) &&
                     (words[2] == "new" || words[2] == "n." || words[2] == "sp.");
  if (is_epithet(first)) return fresh;
  if (words.size() > 2 && is_latin_genus(first) && has_strict_latin_ending(first) &&
      is_epithet(words[2])) {
    // "1. Sepala acuta, petalis longiora" are words of a lead in Latin.
    bool const goes_on = words.size() > 4 && ends_item(words[2]) && is_epithet(words[3]) &&
                         has_epithet_ending(without_closing_marks(words[3]));
    return !goes_on && is_latin_name(name);
  }
  bool const ends = words.size() == 2 || is_authorish(words[2]) || words[2].front() == '(';
  return is_latin_genus(first) && has_strict_latin_ending(first) && ends;
}

}  // namespace keydrift::printed

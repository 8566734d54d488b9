// "5. gerardini Roe" on a line of its own beneath a lead: the number of the species, which counts
// on from the ends of other leads, "… rufous . . 4. opacus Roe", and is no couplet's.  The same of
// genera, "10. Ausella", behind nothing but a blank as well, and of "(12) repens".

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestNumberedEnds = 5;   // ends that make a count
constexpr std::size_t kFewestSmallSpecies = 3;   // beside one with a capital
constexpr std::size_t kFewestBehindWords = 2;    // of these, behind the words of leads
constexpr std::size_t kMostUncountedBefore = 3;  // ends that may belong to no count, before it
constexpr std::size_t kLongestNumberedEnd = 60;  // bytes
constexpr std::uint32_t kFartherIn = 8;          // columns further in than the line above

struct NumberedEnd {
  std::size_t line{};
  std::uint32_t number{};
  std::size_t at{};      // byte of the line's text
  bool doubtful{false};  // of an epithet that ends as none does: only where its number is due
};

// "5. gerardini Roe", "5. Gerardini Roe": no genus stands before the epithet.
bool is_numbered_epithet_with_author(std::string_view text) {
  constexpr std::size_t kMostWords = 6;
  auto const words = words_of(text, kMostWords + 1);
  if (words.size() < 2 || words.size() > kMostWords || !is_species_number(words[0])) return false;
  auto const epithet = without_closing_marks(words[1]);
  bool const honours = is_capitalised(epithet) && has_epithet_ending(fold(epithet)) &&
                       (epithet.ends_with('i') || epithet.ends_with("ae"));
  bool const plain = is_epithet(epithet) && has_epithet_ending(epithet);
  if (!plain && !honours) return false;
  if (words.size() == 2) return plain;
  auto const next = words[2];
  return is_authorish(next) || next.starts_with('(') || next == "n." || next == "sp." ||
         next == "new" || next == "p.";
}

// "9. maculipcs Puysson.", of which a letter was misread.
bool is_numbered_word_with_author(std::string_view text) {
  constexpr std::size_t kShortest = 5;  // bytes
  auto const words = words_of(text, 4);
  return words.size() == 3 && is_species_number(words[0]) && words[1].size() >= kShortest &&
         is_epithet(words[1]) && is_capitalised(without_closing_marks(words[2])) &&
         is_authorish(words[2]);
}

// "10. Q. candida.", "10. Q. Candida Roe": the latter as older works print it.
enum class ShortSpecies : std::uint8_t { none, small, capital };
ShortSpecies short_species(std::string_view text) {
  constexpr std::size_t kMostWords = 5;   // with an author
  constexpr std::size_t kShortGenus = 3;  // bytes; "1. Gen. Ausella" is one
  auto const words = words_of(text, kMostWords + 1);
  bool const named = words.size() >= 3 && words.size() <= kMostWords &&
                     is_species_number(words[0]) && is_abbreviated(words[1]) &&
                     words[1].size() <= kShortGenus &&
                     (words.size() == 3 || is_authorish(words[3]));
  if (!named) return ShortSpecies::none;
  auto const epithet = without_closing_marks(words[2]);
  if (is_epithet(epithet) && has_epithet_ending(epithet)) return ShortSpecies::small;
  bool const capital = is_capitalised(epithet) && is_plain_word(epithet) &&
                       !is_in_capitals(epithet) && has_epithet_ending(fold(epithet));
  return capital ? ShortSpecies::capital : ShortSpecies::none;
}

bool is_short_species(std::string_view text) { return short_species(text) != ShortSpecies::none; }

// "10. Ausella", "10. Ausella Roe.", "10. Ausella Roe (p. 188)", "10. Ausella, new genus (p. 188)"
bool is_numbered_genus(std::string_view text) {
  constexpr std::size_t kMostWords = 4;  // with an author
  for (auto const remark : {std::string_view{" (p. "}, std::string_view{" (in part)"}}) {
    auto const open = text.ends_with(')') ? text.rfind(remark) : std::string_view::npos;
    if (open != std::string_view::npos) text = trim_right(text.substr(0, open));
  }
  if (text.ends_with(", new genus")) text = text.substr(0, text.rfind(','));
  auto const words = words_of(text, kMostWords + 1);
  if (words.size() < 2 || words.size() > kMostWords || !is_species_number(words[0])) return false;
  auto const genus = without_closing_marks(words[1]);
  constexpr std::size_t kShortest = 4;  // bytes
  if (genus.size() < kShortest || !is_capitalised(genus) || !has_latin_ending(genus)) return false;
  return words.size() == 2 || (!ends_item(words[1]) && is_authorish(words[2]));
}

// "5. gerardini (p. 9) et 6. opacus (p. 11)"
bool are_numbered_epithets(std::string_view text) {
  auto const taxa = read_taxa(text).taxa;
  return taxa.size() > 1 && std::all_of(taxa.begin(), taxa.end(), [](TaxonReading const& taxon) {
           return taxon.genusless && has_epithet_ending(taxon.name);
         });
}

bool is_numbered_end(std::string_view text) {
  return is_numbered_epithet_with_author(text) || is_numbered_genus(text) ||
         are_numbered_epithets(text);
}

// "… ringförmig 10. Ausella", "… ringförmig. 10. Ausella", and not ". . 10. Ausella" nor "9.
// Busella, 10. Ausella", which are read without marks, as epithets are.
bool is_genus_behind_blank(std::string_view text, std::size_t at) {
  auto before = trim_right(text.substr(0, at));
  // A stop, and one that is left of a row of them.
  for (int dots = 0; dots < 2 && before.ends_with('.'); ++dots) before.remove_suffix(1);
  return is_numbered_genus(text.substr(at)) &&
         is_letter(code_point_before(before, before.size()).value);
}

std::uint32_t number_before(std::string_view text) {
  return number_of(text.substr(0, leading_figures(text)));
}

// The ends that count up from the first of them, one or two at a time.
std::vector<NumberedEnd> numbered_ends_counting_from(std::vector<NumberedEnd> const& ends,
                                                     std::size_t first) {
  std::vector<NumberedEnd> found{ends[first]};
  for (auto i = first + 1; i < ends.size(); ++i) {
    auto const ahead = ends[i].number - found.back().number;
    if (ends[i].doubtful && ahead != 1) continue;
    if (ends[i].number > found.back().number && ahead <= 2) found.push_back(ends[i]);
  }
  return found;
}

// "(12) repens." at the end of a line: byte of its bracket.
std::optional<std::size_t> number_in_brackets_before_epithet(std::string_view text) {
  auto const bare = without_closing_marks(trim_right(text));
  auto const begin = last_word_begin(bare);
  auto const epithet = bare.substr(begin);
  auto const number = trim_right(bare.substr(0, begin));
  auto const open = number.rfind('(');
  bool const closed = open != std::string_view::npos && number.ends_with(')') &&
                      number.find(' ', open) == std::string_view::npos;
  if (!closed || !is_epithet(epithet) || !has_epithet_ending(epithet)) return std::nullopt;
  return open;
}

// "(12) repens.", behind leaders, blanks or specks: the numbers of the species count up.
void mark_bracketed_ends(std::vector<SourceLine>& lines) {
  std::vector<NumberedEnd> ends;
  std::size_t counted = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.is_no_lead || line.markup.destination_begin != kNotTold) continue;
    auto const at = number_in_brackets_before_epithet(line.text);
    if (!at) continue;
    auto const printed = line.text.substr(*at + 1, line.text.find(')', *at) - *at - 1);
    auto const next = static_cast<std::uint32_t>(ends.size() + 1);
    if (figures_of(next, printed) == printed.size()) ++counted;
    ends.push_back({i, next, *at});
  }
  if (ends.size() < kFewestNumberedEnds || counted * 5 < ends.size() * 4) return;
  for (auto const& end : ends) {
    auto& line = lines[end.line];
    line.markup.destination_begin = line.begin + end.at;
  }
}

// The longest count, whose first end may be one of the first few.
std::vector<NumberedEnd> longest_count_of_ends(std::vector<NumberedEnd> const& ends) {
  std::vector<NumberedEnd> longest;
  for (std::size_t first = 0; first < ends.size() && first <= kMostUncountedBefore; ++first) {
    auto found = numbered_ends_counting_from(ends, first);
    if (found.size() > longest.size()) longest = std::move(found);
  }
  return longest;
}

// "10. Q. Candida." between "9. Q. viscida." and "11. Q. alata.": those in small letters are read
// without marks, and tell where the count is and whose initial it has.
void mark_capital_epithets(std::vector<SourceLine>& lines) {
  std::vector<NumberedEnd> ends;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.is_no_lead || line.markup.destination_begin != kNotTold) continue;
    auto const at = numbered_end(line.text, kLongestNumberedEnd, is_short_species);
    if (at == 0 || at >= line.text.size()) continue;  // at the front it heads an account
    auto const end = line.text.substr(at);
    bool const capital = short_species(end) == ShortSpecies::capital;
    ends.push_back({i, number_before(end), at, capital});
  }
  auto const longest = longest_count_of_ends(ends);
  std::map<std::string_view, std::size_t> small;  // by the genus cut short
  auto const genus_of = [&lines](NumberedEnd const& end) {
    return words_of(lines[end.line].text.substr(end.at), 2)[1];
  };
  for (auto const& end : longest) small[genus_of(end)] += end.doubtful ? 0 : 1;
  for (auto const& end : longest) {
    if (!end.doubtful || small[genus_of(end)] < kFewestSmallSpecies) continue;
    auto& line = lines[end.line];
    line.markup.destination_begin = line.begin + end.at;
  }
}

}  // namespace

void mark_numbered_ends(std::vector<SourceLine>& lines) {
  mark_bracketed_ends(lines);
  mark_capital_epithets(lines);
  std::vector<NumberedEnd> ends;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.empty() || lines[i].is_no_lead) continue;
    auto at = numbered_end(text, kLongestNumberedEnd, is_numbered_end);
    bool const doubtful = at == text.size();
    if (doubtful) at = numbered_end(text, kLongestNumberedEnd, is_numbered_word_with_author);
    if (at < text.size()) ends.push_back({i, number_before(text.substr(at)), at, doubtful});
  }
  auto const longest = longest_count_of_ends(ends);
  std::size_t behind = 0;
  for (auto const& end : longest) behind += end.at > 0 ? 1 : 0;
  if (longest.size() < kFewestNumberedEnds || behind < kFewestBehindWords) return;
  // Beneath letters numbers are taken for those of species anyway.
  bool const digits = decide_numbering(lines).family == LabelFamily::digits;
  for (auto const& end : longest) {
    auto& line = lines[end.line];
    // Its place tells what it is.
    bool const far_in = end.line > 0 && line.indent >= lines[end.line - 1].indent + kFartherIn;
    bool const told = far_in || !(digits || is_numbered_genus(line.text));
    if (end.at == 0 ? told : !end.doubtful && !is_genus_behind_blank(line.text, end.at)) continue;
    if (end.at == 0) line.is_no_lead = true;
    line.markup.destination_begin = line.begin + end.at;
  }
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_group_head.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestGroupHead = 160;  // bytes that are looked at
constexpr std::size_t kMostWordsOfGroupHead = 12;

// "612.", "XIV.", "3a."
bool is_head_number(std::string_view word) {
  if (word.size() < 2 || !word.ends_with('.')) return false;
  auto const inner = word.substr(0, word.size() - 1);
  if (roman_number(inner, kLargestGroupNumeral) > 0) return true;
  auto const digits = inner.find_first_not_of("0123456789");
  return digits != 0 && (digits == std::string_view::npos || digits + 1 == inner.size());
}

std::string_view without_marks(std::string_view word) {
  return word.substr(0, word.find_first_of(",.;:([)"));
}

// "EYES AND LEGS", "MEDIAE OF MALES": words between nouns are no author.
bool may_be_author_word(std::string_view word) {
  auto const folded = fold(word);
  return is_authorish(word) && !is_separator(folded) && !is_title_word(folded);
}

// "The Marshworts." and nothing behind.
bool says_common_name(std::vector<std::string_view> const& words, std::size_t at) {
  return words.size() == at + 2 && words[at] == "The" && words[at + 1].ends_with('.') &&
         is_capitalised(words[at + 1]);
}

// Nothing of a name but its author, the place of publication or words in brackets.
bool goes_on_as_head(std::vector<std::string_view> const& words, std::size_t next, bool capitals,
                     bool numbered) {
  if (next >= words.size()) return capitals;
  auto const word = words[next];
  if (word.front() == '(') return capitals || numbered;
  bool const author = may_be_author_word(word) && !is_digit(code_point_at(word, 0).value);
  if (!author) return false;
  // "Aus Roe, 1890", "10. Aus Roe in Ann. Marsh."
  auto const dated = std::any_of(words.begin() + static_cast<std::ptrdiff_t>(next), words.end(),
                                 [](std::string_view one) { return is_year(without_end(one)); });
  return capitals || numbered || dated;
}

// "3. Sumpstjerne, Ausaster Rosk.": behind the common name a genus and its author, and no more.
std::optional<std::string> genus_behind_common_name(std::vector<std::string_view> const& words,
                                                    std::size_t at) {
  constexpr std::size_t kMostCommon = 3;  // words of the common name
  auto comma = at;
  while (comma < words.size() && comma < at + kMostCommon && !words[comma].ends_with(',')) ++comma;
  if (comma + 3 != words.size() || comma >= at + kMostCommon) return std::nullopt;
  auto const common = words[comma].substr(0, words[comma].size() - 1);
  auto const genus = words[comma + 1];
  bool const head = is_plain_word(common) && is_capitalised(without_end(words[at])) &&
                    !has_strict_latin_ending(common) && is_capitalised(genus) &&
                    has_epithet_ending(genus) && is_authorish(words[comma + 2]);
  return head ? std::optional{std::string{genus}} : std::nullopt;
}

std::optional<GroupHead> read_plain_head(std::string_view line) {
  auto const words = words_of(line, kMostWordsOfGroupHead);
  std::size_t at = 0;
  // "G. 6. — AUS ROE, 1856": French faunas shorten "genre" so (common practice).
  bool const shortened =
      words.size() > 3 && words[0] == "G." && is_head_number(words[1]) && is_lone_dash(words[2]);
  if (shortened) at = 3;
  bool const numbered = shortened || (words.size() > 1 && is_head_number(words[0]));
  if (numbered && !shortened) ++at;
  bool announced = shortened;
  bool higher = false;
  if (at + 1 < words.size() && is_capitalised(without_marks(words[at])) &&
      (is_rank_noun(fold(words[at])) || says_genus(fold(without_marks(words[at]))))) {
    announced = says_genus(fold(without_marks(words[at])));
    higher = !announced;
    ++at;
    if (at + 1 < words.size() && is_head_number(words[at])) ++at;
  }
  if (numbered && !announced && !higher) {
    if (auto genus = genus_behind_common_name(words, at)) return GroupHead{std::move(*genus), true};
  }
  if (is_common_before_genus(words, at)) {
    return GroupHead{full_genus(words[at + 1]), true};
  }
  if (at >= words.size()) return std::nullopt;
  auto const name = without_marks(words[at]);
  if (name.size() < 3 || !is_capitalised(name) || !is_plain_word(name)) return std::nullopt;
  auto const genus = full_genus(name);
  auto const folded = fold(genus);
  if (is_title_word(folded)) return std::nullopt;
  bool const capitals = genus != name;
  if (higher || has_higher_ending(folded)) {
    bool const head = higher || numbered || capitals;
    return head ? std::optional{GroupHead{}} : std::nullopt;
  }
  // "TRANS. MARSH ENT. SOC.": a journal.
  auto const cut_short = std::count_if(words.begin() + static_cast<std::ptrdiff_t>(at), words.end(),
                                       is_cut_short_in_capitals);
  bool const journal = words[at].ends_with('.') && cut_short > 1;
  if (capitals && journal) return std::nullopt;
  // "26 AUSELLA." is the head of a page.
  bool const page_before = numbered && !announced && words[0].find('.') == std::string_view::npos;
  bool const alone = numbered && capitals && !page_before && at + 1 == words.size();
  // "4. Auson ROE. 1851"
  constexpr std::size_t kMostOfDated = 4;  // words: two authors
  bool const dated = numbered && words.size() > at + 2 && words.size() <= at + kMostOfDated &&
                     is_year(without_end(words.back())) && may_be_author_word(words[at + 1]);
  bool const latin =
      announced || alone || dated ? has_latin_ending(folded) : has_strict_latin_ending(folded);
  bool const page = words.size() > at + 1 && !is_year(words.back()) &&
                    is_digit(code_point_at(words.back(), 0).value) && words.size() <= at + 2;
  if (!latin || page) return std::nullopt;
  bool const ends = name.size() + 1 < words[at].size();  // "AUS, BUS", "Aus:"
  if (ends && !announced) return std::nullopt;
  // "3. AUSELLA. The Marshworts."
  bool const common =
      numbered && capitals && words[at].ends_with('.') && says_common_name(words, at + 1);
  if (!announced && !common && !goes_on_as_head(words, at + 1, capitals, numbered)) {
    return std::nullopt;
  }
  bool const authored = capitals && at + 1 < words.size() && may_be_author_word(words[at + 1]);
  return GroupHead{genus, numbered || announced || authored};
}

}  // namespace

std::optional<GroupHead> read_group_head(std::string_view line) {
  line = start_of(line, kLongestGroupHead);
  return may_have_stress(line) ? read_plain_head(without_stress(line)) : read_plain_head(line);
}

bool titles_group(std::string_view words) {
  constexpr std::size_t kLongest = 80;  // bytes
  if (words.size() > kLongest) return false;
  auto const all = words_of(words, 3);
  if (all.empty()) return false;
  auto const colon = all[0].ends_with(':');
  if (colon) return is_rank_noun(fold(all[0].substr(0, all[0].size() - 1)));
  constexpr std::size_t kShortest = 5;  // letters of the name
  auto name = all[0];
  if (name.ends_with('.')) name.remove_suffix(1);
  bool const page = all.size() == 2 && is_digit(code_point_at(all[1], 0).value);
  // "AUSELLA. The Marshworts."
  bool const common = words.ends_with(all.back()) && says_common_name(all, 1);
  return (all.size() == 1 || page || common) && all[0].ends_with('.') &&
         is_in_capitals(name, kShortest) && has_strict_latin_ending(fold(name));  // not "TREES."
}

bool titles_group(std::vector<SourceLine> const& lines, std::size_t at, std::size_t words_at) {
  constexpr std::size_t kFar = 400;  // lines
  auto const text = lines[at].text;
  auto const words = text.substr(words_at);
  if (!titles_group(words)) return false;
  // "1. PUPAE." and "1. LARVAE." are rivals; "9. AUSELLA." above, "9. AUSELLA. 217" on a page.
  auto const name = words.substr(0, words.find(' '));
  for (auto i = at - std::min(at, kFar); i < std::min(lines.size(), at + kFar); ++i) {
    auto const other = lines[i].text;
    if (other.size() <= words_at || other.substr(0, words_at) != text.substr(0, words_at)) continue;
    auto const others = other.substr(words_at);
    if (!others.starts_with(name) && titles_group(others)) return false;
  }
  return true;
}

std::optional<GroupHead> group_head_above(std::vector<SourceLine> const& lines, std::size_t at,
                                          std::size_t from) {
  constexpr std::size_t kMostLines = 120;
  auto const last = std::max(from, at - std::min(at, kMostLines));
  std::optional<GroupHead> nearest;  // "Aus Roe, Proc. Marsh 1863" is a synonym's line as often
  while (at-- > last) {
    if (lines[at].text.empty()) continue;
    auto head = read_group_head(lines[at].text);
    if (!head) continue;
    if (head->sure || head->genus.empty()) return head;
    if (!nearest) nearest = std::move(head);
  }
  return nearest;
}

bool is_genus_alone(std::string_view text) {
  constexpr std::size_t kFewestLetters = 4;
  auto const name = text.substr(0, text.find(' '));
  auto const bare = without_closing_marks(name);
  if (!is_in_capitals(bare, kFewestLetters) || !has_strict_latin_ending(fold(bare))) return false;
  auto const behind = text.substr(skip_blanks(text, name.size()));
  return behind.empty() || (behind[0] == '(' && behind.find(')') + 2 >= behind.size());
}

bool is_numbered_genus_alone(std::string_view text) {
  auto const figures = leading_figures(text);
  return figures > 0 && text.substr(figures).starts_with(". ") &&
         is_genus_alone(text.substr(figures + 2));
}

bool is_genus_before_gap(std::string_view words, TailSplit const& split) {
  if (split.kind != LeaderKind::gap || split.destination_begin >= words.size()) return false;
  auto const head = words_of(words.substr(0, split.words_end));
  auto const behind = code_point_at(words, split.destination_begin).value;
  return head.size() >= 2 && is_in_capitals(head[0]) && !is_digit(behind) &&
         std::all_of(head.begin() + 1, head.end(), [](std::string_view word) {
           return is_authorish(word) || is_particle(without_end(word));
         });
}

}  // namespace keydrift::printed

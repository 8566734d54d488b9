// Names at the ends of leads that print no leaders.

#include <algorithm>
#include <array>
#include <span>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_hybrids.hpp"
#include "keydrift/formats/printed_name_remarks.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_slips.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// "R." of "Aus bus R. subsp. cus" and "Roe" of "A. bus Roe f. cus": the rank goes on with the
// species that this is the author of.
bool is_author_before_rank(std::vector<std::string_view> const& words, std::size_t w) {
  if (w < 2 || w + 2 >= words.size()) return false;
  if (!is_abbreviated(words[w]) && !is_capitalised(words[w])) return false;
  auto const species = words[w - 2];
  bool const genus = is_abbreviated(species) || is_latin_genus(species);
  bool const epithet = is_epithet(words[w - 1]) && has_epithet_ending(words[w - 1]) &&
                       !ends_item(words[w - 1]) && (genus || is_lower_rank(species));
  if (!epithet) return false;
  if (is_lower_rank(words[w + 1])) return is_epithet(words[w + 2]);
  // "A. bus R. sp. nov."
  return is_abbreviated(species) && words[w + 1] == "sp." &&
         (words[w + 2].starts_with("nov") || words[w + 2] == "n.");
}

// Is word w the epithet of "Aus bus", "A. bus", "Aus (Cus) bus" or "Aus bus bus"?
bool follows_genus(std::vector<std::string_view> const& words, std::size_t w) {
  constexpr std::size_t kMost = 3;  // words between
  for (std::size_t back = 1; back <= std::min(w, kMost); ++back) {
    auto word = words[w - back];
    word.remove_prefix(signs_before_name(word));
    if (is_capitalised(word) || is_abbreviated(word) || word == "×") return true;
    bool const within = is_epithet(word) || is_rank(word) || word.front() == '(';
    if (!within || word.ends_with(',') || word.ends_with(';')) return false;
  }
  return false;
}

// "… A. bus Roe, A. cus Dorn": where the list begins whose last name begins at word w; w where
// there is none.  Only a genus cut short, the same one, an author or a year tells a name from
// words.
std::size_t list_begin(std::vector<std::string_view> const& words, std::size_t w,
                       std::string_view text) {
  constexpr std::size_t kLongestName = 8;  // words, with subgenus and authors
  auto const tail = [&](std::size_t at) {
    return text.substr(static_cast<std::size_t>(words[at].data() - text.data()));
  };
  auto listed = read_taxa(tail(w)).taxa.size();
  auto begin = w;
  for (std::size_t at = w; at-- > 1 && begin - at <= kLongestName;) {
    // "13. A. bus & 14. A. cus"
    if (begin > 1 && is_species_number(words[begin - 1]) && is_separator(words[begin - 2])) {
      --begin;
      continue;
    }
    // "A. bus or A. cus", "A. bus, A. cus"
    bool const joined = is_separator(words[begin - 1]);
    if (!ends_item(words[begin - 1]) && !joined) break;
    bool const abbreviated = is_abbreviated(words[at]);
    if (!abbreviated && !is_capitalised(words[at])) continue;
    if (is_comparing(fold(words[at - 1]))) continue;
    auto const taxa = read_taxa(tail(at));
    if (taxa.taxa.size() != listed + 1 || !taxa.before.empty()) continue;
    auto const& first = taxa.taxa.front();
    bool const species = words_of(first.name).size() >= 2;
    // "Ausella busa / A. cusa"
    bool const again =
        joined && is_abbreviated(words[begin]) && initial_of(words[begin]) == initial_of(words[at]);
    bool const name = abbreviated || words[at] == words[w] || !first.authorship.empty() || again;
    // "Ausella Roe 1847, Busella Dorn 1858"
    bool const genera = is_dated_genus(trim_right(without_end(
        tail(at).substr(0, static_cast<std::size_t>(words[begin].data() - words[at].data()) - 1))));
    if (!genera && !(species && name)) continue;
    begin = at;
    listed = taxa.taxa.size();
  }
  return begin;
}

// "subsp. cus", "Roe, var. cus nov.": behind an epithet, and nothing else.
bool goes_on_with_rank(std::span<std::string_view const> words) {
  auto const rank = std::find_if(words.begin(), words.end(), is_rank);
  auto const before = std::all_of(words.begin(), rank, [](std::string_view word) {
    return is_authorish(word) || is_particle(word);
  });
  if (!before || rank == words.end() || rank + 1 == words.end()) return false;
  if (!is_epithet(without_end(*(rank + 1)))) return false;
  return std::all_of(rank + 2, words.end(), [](std::string_view word) {
    return is_authorish(word) || is_particle(word) || word == "nov." || word == "n.";
  });
}

// Where "1. bus", "7a. bus subsp. cus" or "(11-13). bus group" at the end of the text begins.
std::optional<std::size_t> numbered_epithet(std::vector<std::string_view> const& words,
                                            std::string_view text) {
  constexpr std::size_t kMostBehind = 5;  // words of the name behind its epithet
  for (std::size_t behind = 0; behind <= kMostBehind && behind + 2 < words.size(); ++behind) {
    auto const w = words.size() - 2 - behind;
    auto number = words[w];
    if (!number.ends_with('.') || w == 0) continue;
    number.remove_suffix(1);
    while (number.starts_with('.')) number.remove_prefix(1);  // ". .13. bus"
    if (number.starts_with('(') && number.ends_with(')')) {
      number = number.substr(1, number.size() - 2);
    }
    auto const digits = number.find_first_not_of("0123456789–-"sv);
    bool const counts = !number.empty() && is_digit(code_point_at(number, 0).value) &&
                        (digits == std::string_view::npos || digits + 1 == number.size());
    auto epithet = words[w + 1];
    if (behind == 0 && epithet.ends_with('.')) epithet.remove_suffix(1);
    // "11. bus, p. 178."
    bool const paged = behind == 2 && epithet.ends_with(',') && is_page(words[w + 2], words[w + 3]);
    if (paged) epithet = without_end(epithet);
    constexpr std::size_t kShortest = 5;  // bytes: "12. Juni Alpen" is a date
    bool const genitive =
        is_capitalised(epithet) && epithet.size() >= kShortest && epithet.ends_with('i');
    bool const person =
        (genitive || is_epithet_of_person(epithet)) && behind == 1 && is_authorish(words[w + 2]);
    if (!counts || ends_item(epithet)) continue;
    if (person) return static_cast<std::size_t>(words[w].data() - text.data());
    if (!is_epithet(epithet) || !has_epithet_ending(epithet)) continue;
    auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
    auto const name = text.substr(static_cast<std::size_t>(words[w + 1].data() - text.data()));
    bool const ranked = goes_on_with_rank(std::span{words}.subspan(w + 2));
    bool const whole = behind == 0 || ranked || is_bare_epithet(name) || is_genusless_name(name);
    if (whole) return begin;
  }
  return std::nullopt;
}

// Where "bus, n. sp.", "bus cus, n. var." or "bus Roe" at the end of "…, entirely black, bus Roe."
// begins.
std::optional<std::size_t> epithet_behind_comma(std::string_view text) {
  static constexpr std::array kMarks{"n."sv, "sp."sv, "nov."sv, "new"sv};
  constexpr int kMostCommas = 3;
  auto comma = text.rfind(", ");
  for (int tried = 0; tried < kMostCommas && comma != std::string_view::npos; ++tried) {
    auto const tail = text.substr(comma + 2);
    auto const words = words_of(tail, 5);
    bool const authored = words.size() == 2 && is_latin_epithet(words[0]) && text.ends_with('.') &&
                          is_genusless_name(tail);
    if (authored) return comma + 2;
    std::size_t w = 0;  // the last epithet
    while (w < 2 && w < words.size() && !ends_item(words[w])) ++w;
    bool const marked =
        w + 2 < words.size() && w < 2 && (w == 0 || is_latin_epithet(words[0])) &&
        words.size() <= w + 3 && is_one_of(kMarks, words[w + 1]) &&
        std::all_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(w) + 1,
                    [](std::string_view word) { return is_epithet(without_end(word)); });
    if (marked) return comma + 2;
    comma = comma == 0 ? std::string_view::npos : text.rfind(", ", comma - 1);
  }
  return std::nullopt;
}

// Where "bus, new species (p. 31)" at the end of "Elytra with a mark bus, new species (p. 31)"
// begins: what follows the epithet says that nobody has named it before.
std::optional<std::size_t> new_epithet(std::vector<std::string_view> const& words,
                                       std::string_view text) {
  constexpr std::size_t kMarks = 2;  // words of the mark
  auto end = words.size();
  if (end > kMarks && is_page(words[end - 2], words[end - 1])) end -= 2;
  if (end < kMarks + 2) return std::nullopt;
  auto const first = words[end - 2];
  auto const last = without_end(words[end - 1]);
  // "nigriceps, new species."
  auto const second = first == "new" ? without_closing_marks(last) : last;
  bool const marked =
      (first == "new" && (second == "species" || second == "name" || second == "combination" ||
                          may_be_misread(second, "species"))) ||
      (first == "n." && second.starts_with("sp")) ||
      (first == "sp." && (second.starts_with("nov") || second == "n." || second == "n")) ||
      (first == "nov." && second.starts_with("sp"));
  auto at = end - kMarks - 1;
  // "basalis Roe, n. sp."
  bool const authored =
      at > 1 && words[at].ends_with(',') && is_authorish(words[at]) && is_epithet(words[at - 1]);
  if (authored) --at;
  auto const epithet = words[at];
  // "dentifemur, sp. n.": no word of a lead has the mark behind its comma.
  bool const sure = !authored && epithet.ends_with(',') && first != "new";
  if (!marked || !is_epithet(without_end(epithet)) ||
      !(sure || has_epithet_ending(without_end(epithet)))) {
    return std::nullopt;
  }
  // "Ausella bus", "Ausella (Busella) bus", "A. cf. bus", "Ausella bus cus": the genus goes with
  // it.
  constexpr std::size_t kMostBetween = 3;
  for (auto w = at; w-- > 0 && w + kMostBetween + 1 >= at;) {
    auto const word = words[w];
    if (is_capitalised(without_end(word)) || is_abbreviated(word)) return std::nullopt;
    bool const subgenus = word.starts_with('(') && word.ends_with(')');
    if (!subgenus && !is_rank(word) && !is_latin_epithet(word)) break;
  }
  return static_cast<std::size_t>(epithet.data() - text.data());
}

// "(=" of "A. bus (= A. cus Roe)": the bracket tells of the name before it.
bool is_bracketed_remark(std::string_view word) {
  static constexpr std::array kWords{"="sv,     "syn."sv, "incl."sv, "inkl."sv, "including"sv,
                                     "excl."sv, "non"sv,  "nec"sv,   "vgl."sv,  "cf."sv};
  if (!word.starts_with('(') && !word.starts_with('[')) return false;
  return is_one_of(kWords, fold(word.substr(1)));
}

// "im Moos." closes a sentence.
bool is_noun_at(std::string_view sentence) {
  constexpr std::size_t kShortest = 4;  // bytes, with the full stop
  auto const words = words_of(sentence);
  return words.size() >= 2 && words.back().size() >= kShortest &&
         stands_before_noun(words[words.size() - 2]);
}

// "Smithi n. sp.": an epithet with its capital, for nobody is its author yet.
bool is_new_epithet_of_person(std::string_view text) {
  auto const words = words_of(start_of(text, 80));
  if (words.size() != 3 || !is_capitalised(words[0])) return false;
  bool const marked = (words[1] == "n." && words[2].starts_with("sp")) ||
                      (words[1] == "sp." && (words[2] == "n." || words[2].starts_with("nov")));
  constexpr std::size_t kShortest = 5;  // bytes
  bool const genitive = words[0].size() >= kShortest && words[0].ends_with('i');
  return marked && (genitive || is_epithet_of_person(words[0]));
}

enum class NamesBefore : std::uint8_t { looked_for, left };

std::optional<std::size_t> find_trailing_name(std::string_view text, NamesBefore names);

std::optional<std::size_t> authored_at_end(std::string_view text) {
  text = trim_right(text);
  auto const begin = find_trailing_name(text, NamesBefore::left);
  if (!begin || *begin == 0) return std::nullopt;
  auto const reading = read_taxa(text.substr(*begin));
  bool const whole = reading.remark.empty() && !reading.taxa.back().authorship.empty() &&
                     words_of(reading.taxa.back().name).size() >= 2;
  return whole ? begin : std::nullopt;
}

// "A. bus Roe (Syn.: A. cus Dorn)", "A. bus Roe [A. cus auct.]": the name before the bracket that
// closes the text.
std::optional<std::size_t> name_before_bracket(std::string_view text) {
  constexpr std::size_t kLongest = 80;  // bytes of the bracket
  if (text.ends_with('.')) text.remove_suffix(1);
  if (!text.ends_with(')') && !text.ends_with(']')) return std::nullopt;
  std::size_t closed = 0;
  for (auto at = text.size(); at-- > 0 && at + kLongest >= text.size();) {
    if (text[at] == ')' || text[at] == ']') ++closed;
    if ((text[at] == '(' || text[at] == '[') && --closed == 0) {
      bool const apart = at > 1 && text[at - 1] == ' ';
      return apart ? authored_at_end(text.substr(0, at)) : std::nullopt;
    }
  }
  return std::nullopt;
}

// "A. bus Roe – Ausella azzurra", "A. bus Roe Blauwe ausella": the name before the common one that
// begins at `at`.  Without a dash only a genus cut short tells it from a host that is spoken of.
std::optional<std::size_t> name_before_common(std::string_view text, std::size_t at) {
  auto const behind = text.substr(at);
  bool const common = !is_abbreviated(words_of(behind, 1).front()) &&
                      read_taxa(behind).taxa.front().authorship.empty();
  if (!common) return std::nullopt;
  auto const front = trim_right(text.substr(0, at));
  auto const last = code_point_before(front, front.size());
  if (is_dash(last.value)) {
    auto const before = front.substr(0, front.size() - last.length);
    bool const apart = !before.empty() && is_blank(code_point_before(before, before.size()).value);
    return apart ? authored_at_end(before) : std::nullopt;
  }
  auto const begin = authored_at_end(front);
  bool const cut_short = begin && is_abbreviated(words_of(front.substr(*begin), 1).front());
  return cut_short ? begin : std::nullopt;
}

// "A. bus Roe — Велютина голая", "A. bus Roe – Alpen, bis 2200 m": words behind a dash that closes
// the authors.
bool is_explained_behind_dash(std::string_view name) {
  constexpr std::size_t kMost = 5;  // words
  for (auto blank = name.find(' '); blank != std::string_view::npos;
       blank = name.find(' ', blank + 1)) {
    auto const dash = code_point_at(name, blank + 1);
    auto const behind = blank + 1 + dash.length;
    if (!is_dash(dash.value) || !is_blank(code_point_at(name, behind).value)) continue;
    auto const words = words_of(name.substr(behind), kMost + 1);
    auto const reading = read_taxa(name.substr(0, blank));
    return !words.empty() && words.size() <= kMost &&
           is_letter(code_point_at(words.front(), 0).value) && reading.remark.empty() &&
           !reading.taxa.back().authorship.empty();
  }
  return false;
}

std::optional<std::size_t> find_trailing_name(std::string_view text, NamesBefore names) {
  constexpr std::size_t kLongestRemark = 20;    // bytes behind the name: "in part"
  constexpr std::size_t kLongestBracket = 60;   // the same
  constexpr std::size_t kLongestFigures = 100;  // the same, of months and heights
  text = without_note_sign(text);
  if (names == NamesBefore::looked_for) {
    if (auto const explained = name_before_bracket(text)) return explained;
  }
  auto const from = text.size() > kLongestTrailingName ? text.size() - kLongestTrailingName : 0;
  auto const blank = from == 0 ? 0 : text.find(' ', from);
  if (blank == std::string_view::npos) return std::nullopt;
  auto const words = words_of(text.substr(blank));
  if (words.size() >= 3) {
    auto const begin = static_cast<std::size_t>(words[words.size() - 2].data() - text.data());
    bool const capital = is_upper(code_point_at(text, begin).value);
    if (capital && names_a_key(text.substr(begin))) return begin;
  }
  // "… near each eye. bus Roe.": a sentence begins with a capital, an epithet with its author not.
  auto stop = text.size() > 2 ? text.rfind(". ", text.size() - 2) : std::string_view::npos;
  for (int tried = 0; tried < 3 && stop != std::string_view::npos && stop >= from; ++tried) {
    auto const begin = skip_blanks(text, stop + 1);
    auto const before = words_of(text.substr(from, stop + 1 - from)).back();
    bool const short_word = is_rank(before) || (is_abbreviated(before) &&
                                                !is_noun_at(text.substr(from, stop + 1 - from)));
    // "… blancs. 2. bus Roe"
    if (stop > 2 && is_species_number(before) && is_genusless_name(text.substr(begin))) {
      auto const number = last_word_begin(text.substr(0, stop));
      if (number > 0) return number;
    }
    if (!short_word &&
        (is_genusless_name(text.substr(begin)) || is_new_epithet_of_person(text.substr(begin)))) {
      return begin;
    }
    stop = stop == 0 ? std::string_view::npos : text.rfind(". ", stop - 1);  // "n. sp."
  }
  if (auto const begin = epithet_behind_comma(text)) return begin;
  if (auto const begin = new_epithet(words, text)) return begin;
  // "Petals long 1. bus", "Bracts free (11-13). cus group": an epithet with the species' number.
  if (auto const begin = numbered_epithet(words, text)) return begin;
  std::optional<std::size_t> paged;  // where nothing tells a name but its page
  bool const ends_in_page =
      is_digit(code_point_before(text, text.find_last_not_of(".)"sv) + 1).value);
  // The name that begins last: "Spots two. A. bus" names one species.  Words have to stand before
  // it.
  for (std::size_t w = words.size(); w-- > 1;) {
    auto word = words[w];
    if (w > 0 && (is_comparing(fold(words[w - 1])) || is_bracketed_remark(words[w - 1]))) continue;
    word.remove_prefix(signs_before_name(word));
    auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
    auto const name = text.substr(static_cast<std::size_t>(word.data() - text.data()));
    // "AUSIDAE", "BUS, 214"
    bool const numbered = w + 2 == words.size() && word.ends_with(',') &&
                          words.back().find_first_not_of("0123456789."sv) == std::string_view::npos;
    bool const last = w + 1 == words.size() || numbered;
    auto const bare = numbered || last ? without_closing_marks(word) : word;
    // Behind a full stop no word of a sentence is set so.
    bool const epithet_in_capitals =
        numbered && is_in_capitals(bare, 4) &&
        (has_epithet_ending(fold(bare)) || (bare.size() > 4 && words[w - 1].ends_with('.')));
    if (last && w >= 2 && (is_name_in_capitals(bare) || epithet_in_capitals) &&
        !is_name_in_capitals(words[w - 1])) {
      // "… leaves rufous beneath.. 2. A. BUS"
      auto first = w;
      if (first > 1 && is_abbreviated(words[first - 1]) && words[first - 1].size() == 2) --first;
      if (first < w && first > 1 && is_species_number(words[first - 1])) --first;
      return static_cast<std::size_t>(words[first].data() - text.data());
    }
    // "Elytra black bus Roe, 1900": the year tells an epithet from a word.
    if (w + 2 < words.size() && is_year(words.back()) && is_epithet(word) &&
        has_strict_latin_ending(word) && !follows_genus(words, w) && is_genusless_name(name)) {
      return begin;
    }
    // "… in old individuals bus (p. 31)"
    bool const page = w + 3 == words.size() && is_page(words[w + 1], words[w + 2]) &&
                      words[w + 1].starts_with('(');
    if (page && is_latin_epithet(word) && !follows_genus(words, w) &&
        !is_latin_epithet(words[w - 1])) {
      return begin;
    }
    // "A. bus Roe (p. 4)"; but "Stem glabrous Ausaceae, p. 52"
    bool const english = words[w - 1].ends_with("ous") && is_latin_genus(word);
    // "… a pair of setulae AUSELLA Roe (p. 14)"
    bool const capitals = w + 2 < words.size() && is_name_in_capitals(word) &&
                          has_strict_latin_ending(fold(word)) && is_capitalised(words[w + 1]) &&
                          !is_in_capitals(words[w + 1], 2);
    bool const author = is_latin_epithet(words[w - 1]) && !english && !capitals;
    // "… plate distinguishable Aus (p. 77)"
    bool const better =
        !paged || !is_epithet(word) || (has_strict_latin_ending(word) && !word.ends_with("ous"));
    if (ends_in_page && !author && better && is_name_with_page(name)) paged = begin;
    // "Zech." of "P. radicans Zech. f. radicans" is an author.
    constexpr std::size_t kShortAuthor = 3;  // bytes
    if (is_abbreviated(word) && word.size() > kShortAuthor && follows_genus(words, w)) continue;
    // "Ausella, new genus"
    bool const new_genus = word.ends_with(',') && is_genus_with_remark(name);
    if (!is_capitalised(word) && !is_abbreviated(word) && !new_genus) continue;
    if (is_author_before_rank(words, w)) continue;
    // "Body black. Legs yellow." is a sentence as well as a name; with an author it is none.
    bool const sentence = words[w - 1].ends_with('.') && text.ends_with('.');
    bool const fresh =
        words.size() > w + 2 && is_one_of(std::array{"nov."sv, "n."sv, "indet."sv}, words.back());
    if (sentence && !is_abbreviated(word) && !fresh &&
        read_taxa(name).taxa.front().authorship.empty()) {
      continue;
    }
    // "an der Waldgrenze alba": a noun.
    if (!is_abbreviated(word) && !is_unnamed_species(name) && stands_before_noun(words[w - 1])) {
      continue;
    }
    // "A. busa Contini Roe, 1900" ends in authors.
    bool const genus = (is_dated_genus(name) || is_genus_with_remark(name)) &&
                       (is_latin_genus(word) || !follows_genus(words, w));
    // "(whether distinct from A. cus?)" closes with the text.
    bool const bracket = text.ends_with(')') || (genus && text.ends_with(']'));
    auto const longest = bracket ? kLongestBracket : kLongestRemark;
    bool const named = is_latin_name(name) || is_unnamed_species(name) || genus;
    auto const remark = named ? read_taxa(name).remark.size() : 0;
    // "… leaves bald. A. bus Roe 5–8; 0,2–0,5 m; fens; rare"
    bool const figures = named && remark > longest && remark <= kLongestFigures &&
                         words[w - 1].ends_with('.') && is_name_with_figures(name);
    bool const explains = named && remark > longest && is_explained_behind_dash(name);
    bool const latin = named && (remark <= longest || figures || explains);
    if (!latin && !(is_abbreviated(word) && is_short_name(name))) continue;
    if (names == NamesBefore::looked_for) {
      if (auto const explained = name_before_common(text, begin)) return explained;
    }
    auto first = list_begin(words, begin_with_cross(words, w), text);
    bool const sign = first > 1 && words[first - 1].size() <= 3 &&
                      signs_before_name(std::string{words[first - 1]} + "a") > 0;
    if (sign) --first;  // "* Aus bus"
    // "… and stones. 5. A. bus Roe", "fruits 3 cm. long 13. A. sp. 2"
    bool const counted = first > 1 && is_species_number(words[first - 1]) &&
                         (words[first - 2].ends_with('.') || is_abbreviated(words[first]));
    if (counted) --first;
    return static_cast<std::size_t>(words[first].data() - text.data());
  }
  return paged;
}

}  // namespace

std::size_t with_rank_before(std::string_view text, std::size_t begin) {
  auto const before = trim_right(text.substr(0, begin));
  auto const at = last_word_begin(before);
  if (at == 0) return begin;
  auto const printed = before.substr(at);
  bool const group = printed == "gr." || printed == "subgenus" || printed == "grp." ||
                     is_infrageneric_rank(fold(printed)) ||
                     (is_capitalised(printed) && is_rank_noun(fold(printed)));
  return group || is_group_numeral(printed, text.substr(begin)) ? at : begin;
}

namespace {

// "… elsewhere another race (ssp. bus Roe).": the bracket speaks of a name.
bool is_spoken_of(std::string_view text, std::size_t name) {
  auto const whole = without_full_stop(trim_right(text));
  auto const open = whole.substr(0, name).rfind('(');
  if (!whole.ends_with(')') || open == std::string_view::npos || open + 1 >= name) return false;
  bool const closes = whole.find(')', open) + 1 == whole.size();
  return closes && is_lower(code_point_at(whole, open + 1).value);
}

}  // namespace

namespace {

// "… stipes brown, woolly 7. AUSELLA.": where the number of a genus in capitals begins.
std::optional<std::size_t> numbered_genus_at_end(std::string_view text) {
  auto const genus = last_word_begin(text);
  if (genus == 0 || !is_genus_alone(text.substr(genus))) return std::nullopt;
  auto const before = trim_right(text.substr(0, genus));
  auto const number = last_word_begin(before);
  if (number == 0 || !is_species_number(before.substr(number))) return std::nullopt;
  auto const words = trim_right(text.substr(0, number));
  return is_lower(code_point_before(words, words.size()).value) || words.ends_with('.')
             ? std::optional{number}
             : std::nullopt;
}

}  // namespace

std::optional<std::size_t> trailing_name(std::string_view text) {
  if (auto const genus = numbered_genus_at_end(text)) return genus;
  auto begin = find_trailing_name(text, NamesBefore::looked_for);
  if (!begin || *begin == 0) return begin;
  if (is_spoken_of(text, *begin)) return std::nullopt;
  if (auto const at = with_rank_before(text, *begin); at < *begin) return at;
  // "… scales bus var. cus Roe": the variety's species goes with it.
  auto const rank = last_word_begin(trim_right(text.substr(0, *begin)));
  if (rank == 0 || !is_lower_rank(trim_right(text.substr(rank, *begin - rank)))) return begin;
  auto epithet = last_word_begin(trim_right(text.substr(0, rank)));
  // "… scales bus Dorn, var. cus Roe"
  bool const authored =
      epithet > 0 && is_authorish(trim_right(text.substr(epithet, rank - epithet)));
  auto const end = authored ? trim_right(text.substr(0, epithet)).size()
                            : trim_right(text.substr(0, rank)).size();
  if (authored) epithet = last_word_begin(text.substr(0, end));
  bool const species = epithet > 0 && is_latin_epithet(text.substr(epithet, end - epithet));
  if (!species) return *begin;
  auto const number = last_word_begin(trim_right(text.substr(0, epithet)));
  return number > 0 && is_species_number(trim_right(text.substr(number, epithet - number)))
             ? number
             : epithet;
}

std::optional<std::size_t> authored_name_at_end(std::string_view text) {
  return authored_at_end(text);
}

bool has_certain_name_behind(std::string_view text) {
  auto const later = trailing_name(text);
  return later && *later > 0 && is_certain_name(text.substr(*later)) && !is_certain_name(text);
}

}  // namespace keydrift::printed

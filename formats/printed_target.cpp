#include "keydrift/formats/printed_target.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// The words in the brackets that close the text.
std::string_view without_brackets(std::string_view text) {
  bool const round = text.size() > 2 && text.front() == '(' && text.back() == ')';
  bool const square = text.size() > 2 && text.front() == '[' && text.back() == ']';
  return round || square ? trim(text.substr(1, text.size() - 2)) : text;
}

// "Aus group, 6", "Aus (5 species) 6": the name before the couplet's number.
struct GroupBefore {
  std::string_view group;
  Reference reference;
};
std::optional<GroupBefore> group_before_number(std::string_view text) {
  auto const found = trailing_reference(text);
  if (!found) return std::nullopt;
  auto group = trim_right(text.substr(0, found->words_end));
  while (!group.empty() && (group.back() == ',' || group.back() == ':' || group.back() == ';' ||
                            is_dash(code_point_before(group, group.size()).value))) {
    group =
        trim_right(group.substr(0, group.size() - code_point_before(group, group.size()).length));
  }
  bool const letters = std::any_of(group.begin(), group.end(), [](char c) {
    return is_letter(static_cast<unsigned char>(c)) || static_cast<unsigned char>(c) >= 0x80;
  });
  // "bus (1)": the sign of a footnote.
  bool const footnote = text.ends_with(')') && is_epithet(group);
  if (!letters || footnote) return std::nullopt;
  return GroupBefore{group, found->reference};
}

// "Key C" of "Key C, p. 19" and "Key C (page 19)"; a pointer into another work keeps its page.
std::string_view without_page(std::string_view text) {
  if (!names_a_key(text)) return text;
  for (auto const sign : {", p. "sv, ", page "sv, ", pp. "sv, " (p. "sv, " (page "sv, " p. "sv,
                          ", S. "sv, " (S. "sv, ", pág. "sv}) {
    auto const found = text.rfind(sign);
    if (found == std::string_view::npos || found == 0) continue;
    auto const rest = text.substr(found + sign.size());
    bool const number =
        !rest.empty() && rest.find_first_not_of("0123456789-–)."sv) == std::string_view::npos;
    if (number) return trim_right(text.substr(0, found));
  }
  return text;
}

// Is word w the epithet of "Aus bus", "A. bus", "Aus (Cus) bus" or "Aus bus bus"?
bool follows_genus(std::vector<std::string_view> const& words, std::size_t w) {
  constexpr std::size_t kMost = 3;  // words between
  for (std::size_t back = 1; back <= std::min(w, kMost); ++back) {
    auto const word = words[w - back];
    if (is_capitalised(word) || is_abbreviated(word) || word == "×") return true;
    bool const within = is_epithet(word) || is_rank(word) || word.front() == '(';
    if (!within || word.ends_with(',') || word.ends_with(';')) return false;
  }
  return false;
}

// "AUSIDAE", "AUS": a genus or a higher name set in capitals.
bool is_name_in_capitals(std::string_view word) {
  constexpr std::size_t kShortest = 4;  // bytes; shorter ones are signs
  return word.size() >= kShortest && is_in_capitals(word) && has_latin_ending(fold(word));
}

// "… A. bus Roe, A. cus Dorn": where the list begins whose last name begins at word w; w where
// there is none.  Only a genus cut short, the same one, or an author tells a name from words.
std::size_t list_begin(std::vector<std::string_view> const& words, std::size_t w,
                       std::string_view text) {
  constexpr std::size_t kLongestName = 8;  // words, with subgenus and authors
  auto const tail = [&](std::size_t at) {
    return text.substr(static_cast<std::size_t>(words[at].data() - text.data()));
  };
  auto listed = read_taxa(tail(w)).taxa.size();
  auto begin = w;
  for (std::size_t at = w; at-- > 1 && begin - at <= kLongestName;) {
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
    bool const name = abbreviated || words[at] == words[w] || !first.authorship.empty();
    if (!species || !name) continue;
    begin = at;
    listed = taxa.taxa.size();
  }
  return begin;
}

// Where "1. bus", "7a. bus subsp. cus" or "(11-13). bus group" at the end of the text begins.
std::optional<std::size_t> numbered_epithet(std::vector<std::string_view> const& words,
                                            std::string_view text) {
  constexpr std::size_t kMostBehind = 3;  // words of the name behind its epithet
  for (std::size_t behind = 0; behind <= kMostBehind && behind + 2 < words.size(); ++behind) {
    auto const w = words.size() - 2 - behind;
    auto number = words[w];
    if (!number.ends_with('.') || w == 0) continue;
    number.remove_suffix(1);
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
    bool const genitive = is_capitalised(epithet) && epithet.ends_with('i');
    bool const person =
        (genitive || is_epithet_of_person(epithet)) && behind == 1 && is_authorish(words[w + 2]);
    if (!counts || ends_item(epithet)) continue;
    if (person) return static_cast<std::size_t>(words[w].data() - text.data());
    if (!is_epithet(epithet) || !has_epithet_ending(epithet)) continue;
    auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
    auto const name = text.substr(static_cast<std::size_t>(words[w + 1].data() - text.data()));
    bool const whole = behind == 0 || is_bare_epithet(name) || is_genusless_name(name);
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
    bool const authored = words.size() == 2 && !ends_item(words[0]) && is_genusless_name(tail);
    if (authored) return comma + 2;
    std::size_t w = 0;  // the last epithet
    while (w < 2 && w < words.size() && !ends_item(words[w])) ++w;
    bool const marked =
        w + 2 < words.size() && w < 2 && words.size() <= w + 3 &&
        std::find(kMarks.begin(), kMarks.end(), words[w + 1]) != kMarks.end() &&
        std::all_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(w) + 1,
                    [](std::string_view word) { return is_epithet(without_end(word)); });
    if (marked) return comma + 2;
    comma = comma == 0 ? std::string_view::npos : text.rfind(", ", comma - 1);
  }
  return std::nullopt;
}

}  // namespace

bool says_group(std::string_view folded) {
  static constexpr std::array kWords{"group"sv,   "gruppe"sv,  "groupe"sv, "grupo"sv, "gruppo"sv,
                                     "groep"sv,   "section"sv, "sect."sv,  "subg"sv,  "series"sv,
                                     "complex"sv, "agg."sv,    "genus"sv,  "tribe"sv};
  return std::any_of(kWords.begin(), kWords.end(), [folded](std::string_view word) {
    return folded.find(word) != std::string_view::npos;
  });
}

bool names_species_group(std::string_view text) {
  auto const words = words_of(text);
  return words.size() == 2 && is_epithet(words[0]) && has_strict_latin_ending(words[0]) &&
         says_group(fold(text));
}

std::optional<std::size_t> trailing_name(std::string_view text) {
  constexpr std::size_t kLongestRemark = 20;  // bytes behind the name: "in part"
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
    bool const short_word = is_rank(before) || is_abbreviated(before);
    if (!short_word && is_genusless_name(text.substr(begin))) return begin;
    stop = stop == 0 ? std::string_view::npos : text.rfind(". ", stop - 1);  // "n. sp."
  }
  if (auto const begin = epithet_behind_comma(text)) return begin;
  // "Petals long 1. bus", "Bracts free (11-13). cus group": an epithet with the species' number.
  if (auto const begin = numbered_epithet(words, text)) return begin;
  std::optional<std::size_t> paged;  // where nothing tells a name but its page
  bool const ends_in_page =
      is_digit(code_point_before(text, text.find_last_not_of(".)"sv) + 1).value);
  // The name that begins last: "Spots two. A. bus" names one species.  Words have to stand before
  // it.
  for (std::size_t w = words.size(); w-- > 1;) {
    auto word = words[w];
    if (w > 0 && is_comparing(fold(words[w - 1]))) continue;
    word.remove_prefix(signs_before_name(word));
    auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
    auto const name = text.substr(static_cast<std::size_t>(word.data() - text.data()));
    // "AUSIDAE", "BUS, 214"
    bool const numbered = w + 2 == words.size() && word.ends_with(',') &&
                          words.back().find_first_not_of("0123456789."sv) == std::string_view::npos;
    bool const last = w + 1 == words.size() || numbered;
    auto const bare = numbered || last ? without_closing_marks(word) : word;
    bool const epithet_in_capitals =
        numbered && is_in_capitals(bare, 4) && has_epithet_ending(fold(bare));
    if (last && w >= 2 && (is_name_in_capitals(bare) || epithet_in_capitals) &&
        !is_name_in_capitals(words[w - 1])) {
      return begin;
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
    bool const author = is_latin_epithet(words[w - 1]);  // "A. bus Roe (p. 4)"
    if (ends_in_page && !author && is_name_with_page(name)) paged = begin;
    if (!is_capitalised(word) && !is_abbreviated(word)) continue;
    // "Body black. Legs yellow." is a sentence as well as a name; with an author it is none.
    bool const sentence = words[w - 1].ends_with('.') && text.ends_with('.');
    if (sentence && !is_abbreviated(word) && read_taxa(name).taxa.front().authorship.empty()) {
      continue;
    }
    bool const latin = (is_latin_name(name) || is_unnamed_species(name) || is_dated_genus(name)) &&
                       read_taxa(name).remark.size() <= kLongestRemark;
    if (!latin && !(is_abbreviated(word) && is_short_name(name))) continue;
    auto first = list_begin(words, w, text);
    bool const sign = first > 1 && words[first - 1].size() <= 3 &&
                      signs_before_name(std::string{words[first - 1]} + "a") > 0;
    if (sign) --first;  // "* Aus bus"
    // "… and stones. 5. A. bus Roe"
    if (first > 2 && is_species_number(words[first - 1]) && words[first - 2].ends_with('.'))
      --first;
    return static_cast<std::size_t>(words[first].data() - text.data());
  }
  return paged;
}

bool is_numbered_name(std::string_view line) {
  constexpr std::size_t kLongest = 80;  // bytes
  if (line.size() > kLongest || !is_digit(code_point_at(line, 0).value)) return false;
  auto const words = words_of(line);
  if (words.size() < 3) return false;
  // "2841 — A. bus Roe"
  bool const dash = words[1].size() <= 3 && is_dash(code_point_at(words[1], 0).value) &&
                    words[0].find_first_not_of("0123456789"sv) == std::string_view::npos;
  auto const genus = words[dash ? 2 : 1];
  if ((!dash && !words[0].ends_with('.')) || !is_abbreviated(genus)) return false;
  auto const name = line.substr(static_cast<std::size_t>(genus.data() - line.data()));
  return is_latin_name(name) && read_taxa(name).remark.empty();
}

bool has_numbered_name_within(std::string_view text) {
  auto const words = words_of(text);
  for (std::size_t w = 1; w + 2 < words.size(); ++w) {
    bool const name = is_abbreviated(words[w + 1]) && is_epithet(words[w + 2]);
    if (name && is_species_number(words[w])) return true;
  }
  return false;
}

bool is_named_in_capitals(std::string_view text) {
  constexpr std::size_t kMost = 5;  // words in capitals
  auto const words = words_of(start_of(text, kLongestTrailingName));
  std::size_t capitals = 0;
  while (capitals < words.size() && words[capitals].size() >= 2 &&
         fold(words[capitals]) != words[capitals] &&
         std::none_of(words[capitals].begin(), words[capitals].end(),
                      [](char c) { return c >= 'a' && c <= 'z'; })) {
    ++capitals;
  }
  if (capitals == 0 || capitals > kMost || capitals + 1 >= words.size()) return false;
  auto const genus = words[capitals];
  auto const epithet = words[capitals + 1];
  bool const short_genus = is_abbreviated(genus);
  return (short_genus || (is_capitalised(genus) && has_latin_ending(genus))) &&
         is_epithet(epithet) && has_epithet_ending(without_end(epithet));
}

bool titles_account(std::string_view text) {
  constexpr std::size_t kLookedAt = 5;
  auto const words = words_of(start_of(text, kLongestTrailingName), kLookedAt);
  if (words.size() < 2) return false;
  // "6. 绒苣属 Aus Roe": a genus or a family.
  bool const marked = words[0].ends_with("属") || words[0].ends_with("屬") ||
                      words[0].ends_with("科") || words[0].ends_with("族");
  if (marked && is_capitalised(words[1])) return true;
  // "ELYTRA black": only an author has a capital behind a genus in capitals.
  if (is_name_in_capitals(words[0])) {
    auto author = without_end(words[1]);
    if (author.ends_with('.')) author.remove_suffix(1);  // "AUS R., Ann. 3: 112"
    return is_authorish(words[1]) && !is_name_in_capitals(author) && is_capitalised(author);
  }
  if (words.size() < 3) return false;
  // "A. BUS, Roe": words that begin with an initial do not go on in capitals.
  auto const second = without_end(words[1]);
  bool const species_in_capitals = is_abbreviated(words[0]) && second.size() > 3 &&
                                   is_plain_word(second) && is_in_capitals(second) &&
                                   has_epithet_ending(fold(second));
  if (species_in_capitals && is_authorish(words[2])) return true;
  bool const genus = is_capitalised(words[0]) && has_strict_latin_ending(words[0]);
  if (!genus && !is_abbreviated(words[0])) return false;
  bool const species = is_epithet(words[1]) && !ends_item(words[1]) &&
                       (has_strict_latin_ending(words[1]) || words[1].ends_with("ns"));
  // "Aus bus var. cus Roe"
  bool const lower = species && words.size() > 3 && is_rank(words[2]) && words[2].size() > 2 &&
                     is_epithet(words[3]) && has_epithet_ending(words[3]);
  if (lower) return words.size() == 4 || is_authorish(words[4]);
  // "Thallus alba Aus bus"
  if (words.size() > 3 && is_epithet(words[3]) && !ends_item(words[2])) return false;
  if (!is_authorish(words[2]) || is_digit(code_point_at(words[2], 0).value)) return false;
  // "T. Roei Dorn", as older works print it
  if (is_abbreviated(words[0]) && is_epithet_of_person(words[1])) return true;
  return species && read_taxa(text).taxa.front().authorship.size() > 2;
}

bool is_certain_name(std::string_view name) {
  if (is_numbered_epithet(name)) return true;  // "11. bus, p. 178."
  if (names_a_key(name) || is_genusless_name(name) || is_name_with_page(name)) return true;
  if (is_dated_genus(name)) return true;
  if (auto const few = words_of(name, 4); few.size() == 3 && is_page(few[1], few[2])) {
    return is_latin_epithet(few[0]);  // "bus (p. 31)"
  }
  auto const taxa = read_taxa(name);
  auto const& first = taxa.taxa.front();
  auto const words = words_of(first.name);
  constexpr std::size_t kLongestMark = 8;  // bytes: "in part", "sp. n."
  if (taxa.remark.size() > kLongestMark) return false;
  return !first.authorship.empty() || (!words.empty() && is_abbreviated(words.front()));
}

std::optional<CoupletNumber> couplet_number(std::string_view text, Numbering const& numbering) {
  auto const fits = [&numbering](std::optional<Reference> const& reference) {
    return reference &&
           (reference->family == LabelFamily::digits || reference->family == numbering.family);
  };
  if (auto const whole = numbering.read(text)) {
    if (!fits(whole)) return std::nullopt;
    return CoupletNumber{*whole, {}};
  }
  auto const end = text.find_first_of(" ,(["sv);
  if (end == std::string_view::npos || end == 0) return std::nullopt;
  auto number = text.substr(0, end);
  if (number.size() > 1 && number.back() == ':') number.remove_suffix(1);
  auto const reference = numbering.read(number);
  if (!fits(reference) || reference->family != LabelFamily::digits) return std::nullopt;
  auto rest = trim(text.substr(end));
  bool const bracketed = !rest.empty() && (rest.front() == '(' || rest.front() == '[') &&
                         (rest.back() == ')' || rest.back() == ']');
  if (bracketed) {
    auto const inside = rest.substr(1);
    bool const page = starts_with_page(inside) || fold(start_of(inside, 3)) == "fig";
    if (!page && !numbering.has_number(reference->number)) return std::nullopt;
    return CoupletNumber{*reference, page ? std::string_view{} : without_brackets(rest)};
  }
  // "8, Aus group", "8 – Aus"; "8 Aus bus" is a species with its number.
  auto const sign = code_point_at(rest, 0);
  bool const parted = sign.value == ',' || number.size() < end || is_dash(sign.value);
  if (!parted || !numbering.has_number(reference->number)) return std::nullopt;
  if (number.size() == end) rest = trim(rest.substr(sign.length));
  bool const name = is_upper(code_point_at(rest, 0).value) || says_group(fold(start_of(rest, 80)));
  if (!name) return std::nullopt;
  return CoupletNumber{*reference, rest};
}

constexpr std::size_t kLongestKeyName = 24;    // bytes, behind a group's name
constexpr std::size_t kLongestKeyTitle = 120;  // bytes, behind "see"

namespace {

// Begin of the name in "(p. 219) Aus"; 0 where no page stands before it.
std::size_t behind_page(std::string_view text) {
  constexpr std::size_t kLongestPage = 12;  // bytes
  auto const close = text.find(')');
  if (!text.starts_with('(') || close == std::string_view::npos || close > kLongestPage) return 0;
  auto const inside = text.substr(1, close - 1);
  auto const name = skip_blanks(text, close + 1);
  return starts_with_page(inside) && name < text.size() ? name : 0;
}

// Begin of the name in "[p. 208. bus, Roe", where the page that closes the line stands before the
// name that the next one begins with; 0 where none does.
std::size_t behind_open_page(std::string_view text) {
  if (!is_open_page(text.substr(0, text.find(' ', text.find(' ') + 1)))) return 0;
  auto const words = words_of(text, 3);
  return words.size() == 3 ? static_cast<std::size_t>(words[2].data() - text.data()) : 0;
}

// Begin of the name in "G. Ausella", where the sign says that it is a genus; else 0.
std::size_t behind_genus_sign(std::string_view text) {
  auto const words = words_of(text, 3);
  bool const sign = words.size() == 2 && words[0] == "G." &&
                    is_latin_genus(without_closing_marks(words[1])) &&
                    !is_epithet_of_person(without_closing_marks(words[1]));
  return sign ? static_cast<std::size_t>(words[1].data() - text.data()) : 0;
}

}  // namespace

bool begins_with_page(std::string_view text) { return behind_page(text) > 0; }

DestinationReading read_destination(std::string const& printed, Numbering const& numbering) {
  DestinationReading reading;
  std::string_view rest = printed;
  // "This is the marsh scale (Aus bus)."
  if (rest.size() > 4 && rest.front() == '(' && rest.ends_with(").") &&
      rest.find(')') + 2 == rest.size()) {
    rest = trim(rest.substr(1, rest.size() - 3));
  }
  std::vector<std::string> figures;
  if (auto const name = behind_page(rest); name > 0) {
    reading.remark = squeeze(rest.substr(1, rest.find(')') - 1));
    rest.remove_prefix(name);
  }
  if (auto const name = behind_open_page(rest); name > 0) {
    reading.remark = squeeze(rest.substr(1, name - 1));
    rest.remove_prefix(name);
  }
  rest.remove_prefix(behind_genus_sign(rest));
  take_brackets(rest, reading.remark, figures);
  auto const stripped = strip_pointer(rest);
  if (auto const found = couplet_number(stripped, numbering)) {
    reading.form = DestinationForm::couplet;
    reading.couplet = key_of(found->reference);
    reading.number = std::string{found->reference.printed};
    if (!found->remark.empty()) reading.remark = squeeze(found->remark);
    reading.taxa.figures = std::move(figures);
    return reading;
  }
  if (names_a_key(stripped) || points_into_other_work(stripped)) {
    reading.form = DestinationForm::key;
    auto const title = explicit_key_title(stripped);
    reading.key_name = std::string{title.empty() ? without_page(stripped) : title};
    reading.taxa.figures = std::move(figures);
    return reading;
  }
  // "Ausidae (Key 2)": the group is keyed on there.  A species would be an end.
  if (auto const open = printed.rfind('('); open != std::string::npos && printed.ends_with(')')) {
    std::string_view const whole = printed;
    auto const named =
        without_page(strip_pointer(trim(whole.substr(open + 1, whole.size() - open - 2))));
    auto const before = trim(whole.substr(0, open));
    auto const group = read_taxa(before);
    // "sect. Ausae (Key A, p. 18)"
    bool const one = group.taxa.size() == 1 && (words_of(group.taxa[0].name).size() == 1 ||
                                                says_group(fold(group.taxa[0].name)));
    if (one && named.size() <= kLongestKeyName && names_a_key(named)) {
      reading.form = DestinationForm::key;
      reading.key_name = std::string{named};
      reading.remark = squeeze(before);
      reading.taxa.figures = std::move(figures);
      return reading;
    }
  }
  if (auto const comma = stripped.find(", "); comma != std::string_view::npos) {
    // "Leafless shrubs, Key 9, p. 112"
    auto const named = strip_pointer(stripped.substr(comma + 2));
    bool const bracketed = stripped.substr(0, comma).find('(') != std::string_view::npos;
    // "Aus bus group, see Key to the Aus bus group"
    bool const pointed = named.size() < stripped.size() - comma - 2;
    auto const longest = pointed ? kLongestKeyTitle : kLongestKeyName;
    if (!bracketed && names_a_key(named) && without_page(named).size() <= longest &&
        without_page(named).find(',') == std::string_view::npos) {
      reading.form = DestinationForm::key;
      reading.key_name = std::string{without_page(named)};
      reading.remark = squeeze(stripped.substr(0, comma));
      reading.taxa.figures = std::move(figures);
      return reading;
    }
  }
  bool const numbered = numbering.family == LabelFamily::digits;
  if (auto const group = group_before_number(rest); group && numbered && rest.back() != '"') {
    auto const taxa = read_taxa(group->group);
    // A species with a number behind it ("Aus bus 44") is a species; a group is led on.
    bool const whole_name = taxa.taxa.size() == 1 && words_of(taxa.taxa[0].name).size() <= 1;
    bool const named_group =
        says_group(fold(group->group)) ||
        (group->group.find('(') != std::string_view::npos && taxa.taxa[0].authorship.empty());
    if (numbering.has_number(group->reference.number) &&
        (whole_name || named_group || (taxa.taxa.size() > 1 && taxa.remark.empty()))) {
      reading.taxa.figures = std::move(figures);
      reading.form = DestinationForm::couplet;
      reading.couplet = key_of(group->reference);
      reading.number = std::string{group->reference.printed};
      reading.remark = squeeze(group->group);
      return reading;
    }
  }
  reading.form = DestinationForm::taxa;
  reading.taxa = read_taxa(rest);
  reading.taxa.figures.insert(reading.taxa.figures.end(), figures.begin(), figures.end());
  auto const& before = reading.taxa.before;
  if (!before.empty()) {
    auto& remark = reading.taxa.remark;
    remark = remark.empty() ? before : before + "; " + remark;
  }
  if (reading.remark.empty()) {
    reading.remark = reading.taxa.remark;
  } else if (!reading.taxa.remark.empty()) {
    reading.remark = reading.taxa.remark + "; " + reading.remark;
  }
  return reading;
}

}  // namespace keydrift::printed

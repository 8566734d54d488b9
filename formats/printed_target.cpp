#include "keydrift/formats/printed_target.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_key_pointers.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_references.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_unnamed_species.hpp"

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
  bool const unnamed = !text.ends_with(')') && is_undescribed(group);
  if (!letters || footnote || unnamed) return std::nullopt;
  return GroupBefore{group, found->reference};
}

// "Aus spp."
bool names_all_species(std::string_view name) {
  auto const words = words_of(name);
  return words.size() == 2 && (words[1] == "spp." || words[1] == "spp");
}

// "Key A" of "Key A, below", "Key A (unten)" and "clé A, ci-dessous"; not "key below", which has no
// other name.
std::string_view without_side_of_key(std::string_view text) {
  static constexpr std::array kSides{
      "further below"sv, "further above"sv, "below"sv,       "above"sv,     "beneath"sv,
      "weiter unten"sv,  "weiter oben"sv,   "unten"sv,       "oben"sv,      "ci-dessous"sv,
      "ci-dessus"sv,     "plus bas"sv,      "plus haut"sv,   "más abajo"sv, "más arriba"sv,
      "abajo"sv,         "arriba"sv,        "mais abaixo"sv, "abaixo"sv,    "acima"sv,
      "sotto"sv,         "sopra"sv,         "hieronder"sv,   "hierboven"sv};
  auto rest = trim_right(text);
  if (rest.ends_with('.')) rest = trim_right(rest.substr(0, rest.size() - 1));
  bool const bracketed = rest.ends_with(')');
  if (bracketed) rest = trim_right(rest.substr(0, rest.size() - 1));
  // Longer ones stand before those that they end in.
  for (auto const side : kSides) {
    if (rest.size() <= side.size() || fold(rest.substr(rest.size() - side.size())) != side)
      continue;
    auto named = rest.substr(0, rest.size() - side.size());
    if (bracketed ? !named.ends_with('(') : !named.ends_with(' ')) return text;
    if (bracketed) named.remove_suffix(1);
    named = trim_right(named);
    if (named.ends_with(',')) named = trim_right(named.substr(0, named.size() - 1));
    return words_of(named).size() > 1 && names_a_key(named) ? named : text;
  }
  return text;
}

// "Key C" of "Key C, p. 19" and "Key C (page 19)"; a pointer into another work keeps its page.
std::string_view without_page_of_key(std::string_view text) {
  if (!names_a_key(text)) return text;
  text = without_side_of_key(text);
  for (auto const sign :
       {", p. "sv, ", page "sv, ", pp. "sv, " (p. "sv, " (page "sv, " p. "sv, ", S. "sv, " (S. "sv,
        ", pág. "sv, " (Chapter "sv, " (chapter "sv, " (ch. "sv, " (Kapitel "sv, " (chapitre "sv}) {
    auto const found = text.rfind(sign);
    if (found == std::string_view::npos || found == 0) continue;
    auto const rest = text.substr(found + sign.size());
    bool const number =
        !rest.empty() && rest.find_first_not_of("0123456789-–)."sv) == std::string_view::npos;
    if (number) return trim_right(text.substr(0, found));
  }
  return text;
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

namespace {

constexpr std::size_t kLongestNumbered = 80;  // bytes of a line

// "3. A. bus n. sp."
bool may_follow_name(std::string_view remark) {
  auto const words = words_of(remark, 3);
  bool const page = words.size() == 2 && is_page(words[0], words[1]);  // "p. 75."
  return page || remark.empty() || remark == "n. sp." || remark == "sp. n." || remark == "sp. nov.";
}

// "key to the grey woods)" and "… woods.)", whose bracket opened before the pointer.
std::string_view without_open_bracket(std::string_view text) {
  auto const closed = trim_right(without_full_stop(text));
  if (!closed.ends_with(')') || closed.find('(') != std::string_view::npos) return text;
  return trim_right(without_full_stop(closed.substr(0, closed.size() - 1)));
}

}  // namespace

namespace {

// "Terryana", "Olmeyi." behind "8. K.": older works honour persons with a capital.
bool is_capital_epithet_of_person(std::string_view word) {
  static constexpr std::array kEndings{"i"sv, "ae"sv, "ana"sv, "anus"sv, "anum"sv};
  constexpr std::size_t kShortest = 5;  // bytes
  auto const epithet = without_closing_marks(word);
  return epithet.size() >= kShortest && is_capitalised(epithet) &&
         std::any_of(kEndings.begin(), kEndings.end(),
                     [epithet](std::string_view ending) { return epithet.ends_with(ending); });
}

}  // namespace

bool is_numbered_name(std::string_view line) {
  if (line.size() > kLongestNumbered || !is_digit(code_point_at(line, 0).value)) return false;
  auto const words = words_of(line);
  if (words.size() < 3) return false;
  // "2841 — A. bus Roe", "2841. — A. bus Roe"
  bool const figures = words[0].find_first_not_of("0123456789"sv) == std::string_view::npos;
  bool const dash = words[1].size() <= 3 && is_dash(code_point_at(words[1], 0).value) &&
                    (figures || is_species_number(words[0]));
  auto const genus = words[dash ? 2 : 1];
  // "(fig." / "4). A. bus"
  bool const bracket = words[0].find(')') != std::string_view::npos;
  // "10 B. laciniata.", "5a B. ovalis var. laciniata.", and not "5 Fi. gialli"
  constexpr std::size_t kInitial = 2;  // bytes
  auto const rest = words[0].find_first_not_of("0123456789"sv);
  bool const lettered =
      rest + 1 == words[0].size() && words[0][rest] >= 'a' && words[0][rest] <= 'e';
  bool const bare = genus.size() == kInitial && (figures || lettered);
  if ((!dash && !bare && !words[0].ends_with('.')) || bracket || !is_abbreviated(genus)) {
    return false;
  }
  auto const name = line.substr(static_cast<std::size_t>(genus.data() - line.data()));
  if (words.size() == (dash ? 4 : 3) && is_capital_epithet_of_person(words.back())) return true;
  return is_latin_name(name) && may_follow_name(read_taxa(name).remark);
}

bool is_numbered_name_in_full(std::string_view line) {
  constexpr std::size_t kMostWords = 8;
  if (line.size() > kLongestNumbered || !is_digit(code_point_at(line, 0).value)) return false;
  auto const words = words_of(line, kMostWords + 1);
  if (words.size() < 4 || words.size() > kMostWords || !is_species_number(words[0])) return false;
  // "5. Capillitium septate  bus Roe": a lead and what it leads to
  bool const apart = line.find('\t') != std::string_view::npos ||
                     line.find("  ", words[0].size() + 2) != std::string_view::npos;
  if (apart || !is_capitalised(words[1]) || !has_strict_latin_ending(words[1])) return false;
  if (!is_epithet(words[2]) || is_epithet(words[3])) return false;
  auto const name = line.substr(static_cast<std::size_t>(words[1].data() - line.data()));
  if (!is_latin_name(name)) return false;
  auto const remark = read_taxa(name).remark;
  return may_follow_name(remark) && (!remark.empty() || is_certain_name(name));
}

bool is_species_alone(std::string_view text) {
  constexpr std::size_t kMostWords = 6;  // with two authors and the year
  auto const words = words_of(text, kMostWords + 1);
  bool const binomial = words.size() >= 2 && words.size() <= kMostWords &&
                        is_capitalised(words[0]) && has_strict_latin_ending(words[0]) &&
                        is_epithet(without_closing_marks(words[1])) && is_latin_name(text);
  // "Inflorescentiae axillares 6." leads on; "Folia ovata" has no author.
  if (!binomial || trailing_reference(text, nullptr)) return false;
  return is_certain_name(text) ||
         (words.size() == 2 && has_strict_latin_ending(without_closing_marks(words[1])));
}

bool is_short_species_alone(std::string_view text) {
  auto const words = words_of(text, 3);
  return words.size() == 2 && is_abbreviated(words[0]) &&
         is_latin_epithet(without_closing_marks(words[1]));
}

bool has_numbered_name_within(std::string_view text) {
  auto const words = words_of(text);
  for (std::size_t w = 1; w + 1 < words.size(); ++w) {
    if (!is_species_number(words[w])) continue;
    bool const last = w + 2 == words.size();
    if (!last && is_abbreviated(words[w + 1]) && is_epithet(words[w + 2])) return true;
    // "Alpes, Corse 3. busus (p. 150)"
    auto const epithet = without_closing_marks(words[w + 1]);
    bool const ends = last || words[w + 2].starts_with('(');
    if (ends && is_epithet(epithet) && has_epithet_ending(epithet)) return true;
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
    // "AUS BUS Roe. foliis obovatis"
    auto const epithet = without_end(words[1]);
    bool const species = words.size() > 2 && is_in_capitals(epithet) &&
                         has_epithet_ending(fold(epithet)) && is_authorish(words[2]) &&
                         is_capitalised(without_closing_marks(words[2]));
    if (species) return true;
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
  // "Ausella Roei Dorn, 1866"
  if (words.size() > 3 && is_capital_epithet_of_person(words[1]) && !ends_item(words[1]) &&
      is_authorish(words[2]) && is_year(without_end(words[3]))) {
    return true;
  }
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

bool are_epithets_with_pages(std::string_view text) {
  auto const words = words_of(text, 3);
  bool const paged =
      words.size() == 3 && is_page(words[1], words[2]) && ends_in_page(without_full_stop(text));
  if (!paged) return false;
  auto const taxa = read_taxa(text).taxa;
  return taxa.size() > 1 && std::all_of(taxa.begin(), taxa.end(), [](TaxonReading const& taxon) {
           return taxon.genusless && has_epithet_ending(taxon.name);
         });
}

bool is_certain_name(std::string_view name) {
  if (is_numbered_genus_alone(name)) return true;
  if (is_numbered_epithet(name)) return true;  // "11. bus, p. 178."
  if (names_a_key(name) || is_genusless_name(name) || is_name_with_page(name)) return true;
  if (is_dated_genus(name) || is_genus_with_remark(name)) return true;
  if (auto const few = words_of(name, 4); few.size() == 3 && is_page(few[1], few[2])) {
    return is_latin_epithet(few[0]);  // "bus (p. 31)"
  }
  if (are_epithets_with_pages(name)) return true;
  auto const taxa = read_taxa(name);
  auto const& first = taxa.taxa.front();
  auto const words = words_of(first.name);
  constexpr std::size_t kLongestMark = 8;      // bytes: "in part", "sp. n."
  constexpr std::size_t kLongestBracket = 60;  // "(whether distinct from A. cus?)"
  if (taxa.remark.size() > (name.ends_with(')') ? kLongestBracket : kLongestMark)) return false;
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
  // "8 Fig. 3": the figures of what is keyed on there.
  if (starts_caption(rest) && figures_in(rest).size() == 1 &&
      numbering.has_number(reference->number)) {
    return CoupletNumber{*reference, rest};
  }
  // "8 | 134": the page, in a cell of its own, larger than any couplet's number.  "1 2" may be a 12
  // that was parted.
  constexpr std::size_t kLongestPage = 4;  // digits
  bool const page = rest.size() >= 2 && rest.size() <= kLongestPage &&
                    rest.find_first_not_of("0123456789"sv) == std::string_view::npos;
  if (page && numbering.has_number(reference->number) &&
      number_of(rest) > numbering.numbers.back()) {
    return CoupletNumber{*reference, rest};
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
  if (auto const name = begin_behind_page(rest); name > 0) {
    reading.remark = squeeze(rest.substr(0, name));
    rest.remove_prefix(name);
  }
  if (auto const named = without_open_page(rest); named.size() < rest.size()) {
    reading.remark = squeeze(rest.substr(rest.rfind('[') + 1));
    rest = named;
  }
  if (auto const name = behind_open_page(rest); name > 0) {
    reading.remark = squeeze(rest.substr(1, name - 1));
    rest.remove_prefix(name);
  }
  rest.remove_prefix(behind_genus_sign(rest));
  // "[A. busa].": of another area
  auto const closed = rest.ends_with("].") ? rest.substr(0, rest.size() - 1) : rest;
  if (closed.starts_with('[') && is_latin_name(without_brackets(closed))) {
    rest = without_brackets(closed);
  }
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
  // "→ S. 15", "chapter 8": what is keyed there has no name here
  bool const part = is_numbered_part(stripped, stripped.size() < rest.size());
  if (part || is_page_alone(rest) || is_chapter_alone(rest)) {
    reading.form = DestinationForm::key;
    reading.key_name = std::string{part ? stripped : rest};
    reading.taxa.figures = std::move(figures);
    return reading;
  }
  if (auto const group = pointed_group(rest); !group.empty()) {
    reading.form = DestinationForm::key;
    reading.key_name = std::string{group};
    reading.taxa.figures = std::move(figures);
    return reading;
  }
  auto const of_words = pointed_key(rest);
  auto const key = of_words.empty() ? stripped : of_words;
  if (names_a_key(key) || points_into_other_work(stripped) || points_to_species_of(rest)) {
    reading.form = DestinationForm::key;
    auto const title = explicit_key_title(key);
    auto const named = without_open_bracket(key);
    reading.key_name = std::string{title.empty() ? without_page_of_key(named) : title};
    reading.taxa.figures = std::move(figures);
    return reading;
  }
  // "Pea clams: go to the key to small clams"
  if (auto const colon = rest.find(": "); colon != std::string_view::npos && colon > 0) {
    auto const there = pointed_key(rest.substr(colon + 2));
    bool const taxon = is_latin_name(rest.substr(0, colon));
    if (!there.empty() && !taxon) {
      reading.form = DestinationForm::key;
      reading.key_name = std::string{without_page_of_key(there)};
      reading.remark = squeeze(rest.substr(0, colon));
      reading.taxa.figures = std::move(figures);
      return reading;
    }
  }
  // "Marsh snails, see key on page 52": the key there has no name but the group's.
  if (auto const see = rest.find(", see key"); see != std::string_view::npos && see > 0 &&
                                               !names_a_key(strip_pointer(rest.substr(see + 2)))) {
    auto const group = rest.substr(0, see);
    bool const within = group.find('(') != std::string_view::npos;  // "Aus (7 spp., see key B)"
    if (!within && !is_latin_name(group) && !has_strict_latin_ending(fold(group))) {
      reading.form = DestinationForm::key;
      reading.key_name = squeeze(group);
      reading.remark = squeeze(rest.substr(see + 2));
      reading.taxa.figures = std::move(figures);
      return reading;
    }
  }
  // "Ausidae (Key 2)": the group is keyed on there.  A species would be an end.
  if (auto const open = printed.rfind('('); open != std::string::npos && printed.ends_with(')')) {
    std::string_view const whole = printed;
    auto const inside = trim(whole.substr(open + 1, whole.size() - open - 2));
    auto const named = without_page_of_key(strip_pointer(inside));
    // "Aus (see Key to the species of Aus)"
    bool const pointed = strip_pointer(inside).size() < inside.size() && words_of(named).size() > 2;
    auto const longest = pointed ? kLongestKeyTitle : kLongestKeyName;
    auto const before = trim(whole.substr(0, open));
    auto const group = read_taxa(before);
    // "sect. Ausae (Key A, p. 18)", "Aus spp. (see Key to Aus)"
    bool const one = group.taxa.size() == 1 && (words_of(group.taxa[0].name).size() == 1 ||
                                                names_all_species(group.taxa[0].name) ||
                                                says_group(fold(group.taxa[0].name)));
    if (one && named.size() <= longest && names_a_key(named)) {
      reading.form = DestinationForm::key;
      reading.key_name = std::string{named};
      reading.remark = squeeze(before);
      reading.taxa.figures = std::move(figures);
      return reading;
    }
  }
  // "Leafless shrubs, Key 9, p. 112", "Aus: see Key B", "Ausidae → Key B"
  static constexpr std::array kSigns{", "sv, ": "sv, " → "sv, " – "sv, " — "sv};
  for (auto const sign : kSigns) {
    auto const at = stripped.find(sign);
    if (at == std::string_view::npos || at == 0) continue;
    auto const behind = stripped.substr(at + sign.size());
    auto const named = strip_pointer(behind);
    bool const bracketed = stripped.substr(0, at).find('(') != std::string_view::npos;
    // "Aus bus group, see Key to the Aus bus group"
    auto const longest = named.size() < behind.size() ? kLongestKeyTitle : kLongestKeyName;
    if (!bracketed && names_a_key(named) && without_page_of_key(named).size() <= longest &&
        without_page_of_key(named).find(',') == std::string_view::npos) {
      reading.form = DestinationForm::key;
      reading.key_name = std::string{without_page_of_key(named)};
      reading.remark = squeeze(stripped.substr(0, at));
      reading.taxa.figures = std::move(figures);
      return reading;
    }
  }
  if (leads_to_no_name(printed)) {
    reading.form = DestinationForm::nowhere;
    return reading;
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

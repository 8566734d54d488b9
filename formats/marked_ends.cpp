#include "keydrift/formats/marked_ends.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "keydrift/formats/marked_common_names.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::marked {
namespace {

using namespace printed;
using namespace std::string_view_literals;
using xml::FlowText;
using xml::InlineKind;
using xml::InlineMark;

constexpr std::size_t kLongestAfterName = 80;    // bytes of author, year and figures behind a name
constexpr std::size_t kLongestRemarkAtEnd = 20;  // bytes of "in part", "p. 44"
constexpr std::size_t kMostNameWords = 6;

// "as in Aus bus": the name is compared with.
bool compares(std::string_view before) {
  static constexpr std::array kComparing{
      "in"sv,  "of"sv,  "than"sv, "as"sv,        "like"sv,       "from"sv,   "with"sv, "except"sv,
      "for"sv, "cf."sv, "by"sv,   "on"sv,        "de"sv,         "bei"sv,    "von"sv,  "que"sv,
      "à"sv,   "em"sv,  "to"sv,   "resembles"sv, "resembling"sv, "unlike"sv, "see"sv};
  static constexpr std::array kOnwards{"on"sv, "an"sv};
  auto const words = words_of(trim_right(before));
  if (words.empty()) return true;  // nothing but the name
  auto const last = words.back();
  // "pointed from ring 8 on": no host is meant.
  bool const onwards = words.size() > 1 && is_one_of(kOnwards, fold(last)) &&
                       is_digit(code_point_at(words[words.size() - 2], 0).value);
  if (onwards) return false;
  return last.back() == '(' || last.back() == '[' || last.front() == '(' ||
         is_one_of(kComparing, fold(last));
}

// Set in italics, a name needs no Latin endings.
bool is_name_in_italics(std::string_view text) {
  auto const words = words_of(text);
  if (words.empty() || words.size() > kMostNameWords) return false;
  if (!is_capitalised(words[0]) && !is_abbreviated(words[0])) return false;
  if (words.size() == 1) return !is_abbreviated(words[0]);
  // "Aus sp. 1", "Aus sp. B": a number or a capital behind "sp."
  auto end = words.end();
  if (words.size() > 2 && words.back().size() <= 2 && words[words.size() - 2].ends_with('.')) --end;
  return std::all_of(words.begin() + 1, end, [](std::string_view word) {
    return word.front() == '(' || is_lower(code_point_at(word, 0).value);
  });
}

// "4. Aus", "8a. Aus bus", "(12) Aus": bytes of the number that the taxon has in its book, with the
// blanks behind it; 0 without one.
std::size_t book_number_length(std::string_view text) {
  constexpr std::size_t kMostDigits = 4;
  std::size_t at = text.starts_with('(') ? 1 : 0;
  auto const begin = at;
  while (at < text.size() && is_digit(static_cast<unsigned char>(text[at]))) ++at;
  if (at == begin || at - begin > kMostDigits) return 0;
  if (at < text.size() && text[at] >= 'a' && text[at] <= 'z') ++at;
  if (at == text.size() || (text[at] != '.' && text[at] != ')')) return 0;
  return skip_blanks(text, at + 1);
}

// A number in front leaves no doubt that a capitalised word behind it is a name.
bool is_name(InlineMark const& mark, std::string_view inside) {
  if (mark.kind == InlineKind::name) return true;
  auto const number = book_number_length(inside);
  auto const words = squeeze(inside.substr(number));
  bool const marked = mark.kind == InlineKind::italic || number > 0;
  return is_latin_name(words) || (marked && is_name_in_italics(words));
}

// "(Fig. <xref>12</xref>)", "Figs 3–<b>12</b>.", "(n = <b>12</b>)": the words before the mark have
// its number for their own.
bool is_number_of_words(std::string_view text, std::size_t mark_begin) {
  auto const before = text.substr(0, mark_begin);
  if (leaves_bracket_open(before)) return true;
  auto const last = code_point_before(before, before.size());
  if (is_dash(last.value)) {
    return is_digit(code_point_before(before, before.size() - last.length).value);
  }
  return starts_caption(text.substr(last_word_begin(trim_right(before))));
}

// "<b>8a.</b> <i>Aus bus</i>": where the destination begins whose name begins at `begin`.
std::size_t with_book_number(FlowText const& line, std::size_t begin) {
  for (auto mark = line.marks.rbegin(); mark != line.marks.rend(); ++mark) {
    if (mark->end > begin) continue;
    auto const number = std::string_view{line.text}.substr(mark->begin, begin - mark->begin);
    bool const book =
        book_number_length(number) == number.size() && !is_number_of_words(line.text, mark->begin);
    return book ? mark->begin : begin;
  }
  return begin;
}

// "(two species; not treated)"
bool is_bracketed(std::string_view after) {
  auto const rest = without_full_stop(trim(after));
  return rest.starts_with('(') && rest.find(')') == rest.size() - 1;
}

// Does the bracket that `at` stands in close the text?
bool closes_bracket(std::string_view text, std::size_t at) {
  auto const from = text.size() - std::min(text.size(), kLongestAfterName);
  auto const end = text.substr(from);
  auto const open = at < from ? std::string_view::npos : end.rfind('(', at - from);
  return open != std::string_view::npos && is_bracketed(end.substr(open));
}

// Behind a name: author, year, figures, "(part)"; no further words of the lead.
bool may_follow_name(std::string_view after) {
  static constexpr std::array kFollowing{
      "in"sv,    "part"sv, "partim"sv, "pars"sv,    "p.p."sv,  "sp."sv,   "sp"sv,
      "spp."sv,  "ssp."sv, "var."sv,   "f."sv,      "de"sv,    "van"sv,   "von"sv,
      "et"sv,    "ex"sv,   "nov."sv,   "n."sv,      "comb."sv, "stat."sv, "gen."sv,
      "group"sv, "agg."sv, "s."sv,     "sensu"sv,   "auct."sv, "p."sv,    "fig."sv,
      "figs"sv,  "pl."sv,  "males"sv,  "females"sv, "and"sv,   "or"sv,    "species"sv};
  if (after.size() > kLongestAfterName) return false;
  if (is_bracketed(after)) return true;
  if (after.find(';') != std::string_view::npos) return false;
  auto const words = words_of(after);
  if (words.empty()) return true;
  return !is_lower(code_point_at(words[0], 0).value) || is_one_of(kFollowing, fold(words[0]));
}

// "<b>6. A. bus</b> <i>Roe</i> [hills]": the italics are the author's.
bool is_author_behind_name(FlowText const& line,
                           std::vector<InlineMark>::const_reverse_iterator mark) {
  if (mark->kind != InlineKind::italic || mark + 1 == line.marks.rend()) return false;
  std::string_view const text = line.text;
  auto const inside = text.substr(mark->begin, mark->end - mark->begin);
  auto const& before = *(mark + 1);
  if (before.end > mark->begin || words_of(inside).size() != 1) return false;
  auto const between = trim(text.substr(before.end, mark->begin - before.end));
  auto const named = text.substr(before.begin, before.end - before.begin);
  return (between.empty() || between == "(") && before.kind != InlineKind::italic &&
         starts_with_upper(inside) && is_name(before, named) &&
         is_latin_name(squeeze(named.substr(book_number_length(named))));
}

}  // namespace

bool is_number(std::string_view text) {
  auto const reference = read_reference(strip_pointer(trim(text)));
  return reference && reference->family == LabelFamily::digits;
}

bool joins_names(std::string_view between) {
  static constexpr std::array kJoints{""sv,     ","sv,   "or"sv, "and"sv, "&"sv, "/"sv, ", or"sv,
                                      "oder"sv, "und"sv, "ou"sv, "et"sv,  "o"sv, "y"sv, "e"sv};
  return is_one_of(kJoints, fold(trim(between)));
}

std::size_t marked_destination(FlowText const& line) {
  std::string_view const text = line.text;
  auto const label = read_label(text);
  auto const words_begin = label ? label->text_at : 0;
  std::size_t begin = kNotTold;
  std::size_t end = text.size();
  for (auto mark = line.marks.rbegin(); mark != line.marks.rend(); ++mark) {
    auto const inside = text.substr(mark->begin, mark->end - mark->begin);
    if (mark->end > end || mark->begin < words_begin || trim(inside).empty()) continue;
    auto const after = text.substr(mark->end, end - mark->end);
    if (begin == kNotTold && is_author_behind_name(line, mark)) continue;
    bool const name = is_name(*mark, inside);
    // "<b><i>Aus</i> (two species)</b>": what is marked within tells.
    bool const frame =
        !name && std::any_of(mark + 1, line.marks.rend(), [&](InlineMark const& one) {
          return one.begin == mark->begin && one.end < mark->end;
        });
    if (frame && begin == kNotTold) continue;
    if (begin == kNotTold) {
      auto const rest = trim(after);
      bool const number = mark->kind != InlineKind::name && is_number(inside) &&
                          !is_number_of_words(text, mark->begin);
      bool const ends = number ? rest.empty() || rest == "." : name && may_follow_name(after);
      if (!ends ||
          (name && !is_bracketed(after) &&
           read_taxa(squeeze(text.substr(mark->begin))).remark.size() > kLongestRemarkAtEnd)) {
        // "<i>Aus bus</i> (<b>protected</b>, do not touch)"
        if (closes_bracket(text, mark->begin)) continue;
        // An author, "(Fig. 3)" or the "cus" of "Aus bus var. cus" may be marked up too; look
        // further to the front.
        auto const before = words_of(text.substr(words_begin, mark->begin - words_begin));
        bool const ranked = !before.empty() && is_rank(before.back());
        if (ranked || may_follow_name(text.substr(mark->begin))) continue;
        break;
      }
    } else if (!joins_names(after) || !(name || mark->kind == InlineKind::italic)) {
      break;
    }
    auto const before = text.substr(words_begin, mark->begin - words_begin);
    // "<i>Aus</i> (see also <i>Bus</i>)"
    if (begin == kNotTold && leaves_bracket_open(before)) continue;
    if (compares(before)) break;
    begin = mark->begin;
    end = mark->begin;
  }
  return begin == kNotTold ? begin : with_book_number(line, begin);
}

std::size_t name_with_remark(FlowText const& line) {
  std::string_view const text = line.text;
  auto const begin = skip_blanks(text, 0);
  auto const name = std::find_if(line.marks.begin(), line.marks.end(), [&](InlineMark const& one) {
    bool const italic = one.kind == InlineKind::italic || one.kind == InlineKind::name;
    return italic && one.begin <= begin && one.end > begin &&
           is_name(one, text.substr(begin, one.end - begin));
  });
  if (name == line.marks.end()) return kNotTold;
  auto const rest = trim(text.substr(name->end));
  if (rest.empty() || rest.size() > kLongestAfterName || rest.find(';') != rest.npos) {
    return kNotTold;
  }
  static constexpr std::array kUnnamed{"sp."sv, "spp."sv, "spec."sv};
  bool const unnamed = is_one_of(kUnnamed, without_end(words_of(rest)[0]));
  return unnamed || is_bracketed(rest) ? begin : kNotTold;
}

bool is_taxon_title(FlowText const& title) {
  std::string_view const text = title.text;
  auto const number = book_number_length(text);
  return std::any_of(title.marks.begin(), title.marks.end(), [&](InlineMark const& mark) {
    if (mark.begin > number) return false;
    auto const inside = squeeze(text.substr(number, mark.end - std::min(mark.end, number)));
    return mark.kind == InlineKind::name || is_latin_name(inside) || is_name_in_italics(inside);
  });
}

bool shows_destination(std::string_view words) {
  auto const split = split_at_leader(words, Numbering{});
  if (split.kind == LeaderKind::dots || split.kind == LeaderKind::arrow) return true;
  auto const found = trailing_reference(words);
  return found && found->pointed;
}

std::size_t told_destination(FlowText const& line) {
  if (shows_destination(line.text)) return kNotTold;
  auto const begin = marked_destination(line);
  return begin == kNotTold ? common_name_or_key(line) : with_common_name(line, begin);
}

void keep_marks_within(FlowText& line) {
  auto const size = line.text.size();
  std::erase_if(line.marks, [size](InlineMark const& mark) { return mark.begin >= size; });
  for (auto& mark : line.marks) mark.end = std::min(mark.end, size);
}

bool begins_lead_or_end(std::string_view text) {
  auto const first = code_point_at(text, 0).value;
  return is_upper(first) || is_digit(first) || is_dash(first);
}

bool is_only_leaders(std::string_view text) {
  return !text.empty() && text.find_first_not_of(". _\t") == std::string_view::npos;
}

void drop_leaders(FlowText& destination) {
  auto const split = split_at_leader(destination.text, Numbering{});
  bool const leaders =
      split.words_end == 0 && (split.kind == LeaderKind::dots || split.kind == LeaderKind::arrow);
  if (leaders) destination.drop_front(split.destination_begin);
  if (is_only_leaders(destination.text)) destination = {};
}

}  // namespace keydrift::marked

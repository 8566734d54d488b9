#include "keydrift/formats/printed_lead_begins.hpp"

#include <algorithm>
#include <cstdint>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_second_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kNeverSetIn = 24;  // columns further in than the line above
constexpr std::uint32_t kLabelSlack = 2;   // columns that a label's indentation may vary by

// "– Group of A. bus –": a heading between dashes.
bool is_framed(std::string_view text) {
  auto const last = code_point_before(text, text.size());
  auto const before = code_point_before(text, text.size() - last.length);
  return is_dash(last.value) && is_blank(before.value);
}

bool ends_sentence(std::string_view text) {
  return text.ends_with('.') || text.ends_with(')') || text.ends_with(']');
}

// A species with its author and a year or a number behind, and no words before.
bool is_cited_species(std::string_view text) {
  auto const words = words_of(text);
  constexpr std::size_t kFewest = 4;  // words
  if (words.size() < kFewest || !is_latin_genus(words[0]) || !is_epithet(words[1])) return false;
  bool const number = is_digit(static_cast<unsigned char>(words.back().front()));
  // "Ausella busa Roe (1907, p. 63); ♂, ♀."
  bool const dated = std::any_of(words.begin() + 3, words.end(), [](std::string_view word) {
    return is_year(without_closing_marks(word.starts_with('(') ? word.substr(1) : word));
  });
  bool const sure = dated || (number && is_latin_epithet(words[1]));
  return sure && is_authorish(words[2]) && !is_digit(static_cast<unsigned char>(words[2].front()));
}

bool has_bars(std::string_view text) {
  auto const first = text.find(" | ");
  return first != std::string_view::npos && text.find(" | ", first + 1) != std::string_view::npos;
}

bool ends_in_pointer(std::string_view text) {
  auto const reference = trailing_reference(text);
  return reference && reference->pointed;
}

}  // namespace

bool LeadBegins::has_odd_case(std::string_view words) const {
  return numbering_.words_start_upper && is_lower(code_point_at(words, 0).value);
}

std::optional<BeginningLabel> LeadBegins::label_of_lead(LineAtHand here) const {
  if (auto const& told = lines_[here.at].told) {
    // "1 Wings" before "2(1) Legs": nothing leads to couplet 1 that it could name.
    bool const bare_first = numbering_.first_is_bare && told->number == 1 && told->back.empty();
    return BeginningLabel{*told, !lines_[here.at].told_as_printed && !bare_first};
  }
  auto const label = ahead_.label_at(here.at);
  auto const text = lines_[here.at].text;
  auto const back = label ? label->back : std::string_view{};
  bool const letters = back.find_first_not_of("0123456789 ,") != std::string_view::npos;
  bool const bare =
      letters || (label && back.empty() && text.substr(label->text_at).starts_with('('));
  if ((!label || bare) && numbering_.serial && !lines_[here.at].is_no_lead && !numbering_.exact) {
    auto const damaged = read_damaged_back_reference(text, leads_.number() + 1);
    if (damaged) return BeginningLabel{*damaged, true};
  }
  // "1O." reads as couplet 1 with a letter: what comes next in the count is likelier.
  bool const strange = !label || (!label->letter.empty() && !leads_.follows(*label));
  if (strange && !numbering_.exact) {
    if (auto const misprint = misprinted_label(here)) return BeginningLabel{*misprint, true};
  }
  if (label && begins_labelled_lead(here, *label)) return BeginningLabel{*label, false};
  return std::nullopt;
}

bool LeadBegins::begins_labelled_lead(LineAtHand here, Label const& label) const {
  if (numbering_.exact) return !label.is_dash() || !leads_.empty();
  return label.is_dash() ? begins_at_dash(here, label) : begins_at_number(here, label);
}

bool LeadBegins::begins_at_dash(LineAtHand here, Label const& label) const {
  auto const& line = lines_[here.at];
  auto const words = line.text.substr(label.text_at);
  if (leads_.empty() && numbering_.extent == Extent::whole) return false;
  if (numbering_.serial) return false;  // "— Everywhere, common"
  bool const star = !is_dash(code_point_at(label.printed, 0).value);
  if (!leads_.are_complete() && starts_measure(words)) return false;
  // "6' Pronotum bald." / "— In hollow oaks. busus Roe": dashes part what is said of a species.
  if (!leads_.are_complete() && numbering_.marked && leads_.last().label.marks == 1) return false;
  if (is_framed(line.text) && here.gap && ahead_.gap_after(here.at)) return false;
  // "* J. Roe & E. Dorn" behind a key: a footnote.
  bool const apart = star && here.gap && ahead_.usually_led() && !leads_.usually_apart();
  if (apart && leads_.are_complete() && !ahead_.ends_in_destination(here.at)) return false;
  bool const odd_case = has_odd_case(words);
  if (leads_.are_complete()) return !star || !odd_case;
  // "… (Hills" / "– Marsh; fens 5)"
  if (!here.gap && leaves_bracket_open(leads_.last_line())) return false;
  // Within a lead: a dash that was wrapped to the front of a line, or the next lead?
  if (odd_case || line.indent > numbering_.dash_indent + kLabelSlack) return false;
  return !words.empty() || here.gap;
}

bool LeadBegins::begins_at_number(LineAtHand here, Label const& label) const {
  auto const& line = lines_[here.at];
  auto const words = line.text.substr(label.text_at);
  if (words.empty()) {
    return leads_.are_complete() && (label.end != LabelEnd::none || label.style() % 2 == 1);
  }
  bool const odd_case = has_odd_case(words);
  bool const bare = label.style() % 16 == 0;
  // "8. Ausella Roe. One species." behind "22(21). Legs red": a serial key counts on.
  bool const behind = numbering_.serial && here.gap && label.back.empty() && label.number > 1 &&
                      label.number < leads_.number();
  if (behind) return false;
  // "AUSACEAE" / "4. Ausella" at the head of a page, between couplets 7 and 8
  bool const below_head = here.at > 0 && mostly_capitals(lines_[here.at - 1].text);
  if (below_head && label.number < leads_.number() && words.find(' ') == std::string_view::npos &&
      is_latin_genus(words)) {
    return false;
  }
  // "O. busa, sp. nov. Elongate" behind a key of letters
  bool const description = here.gap && odd_case && label.family == LabelFamily::upper &&
                           leads_.are_complete() && describes_species(words);
  if (description) return false;
  if (leads_.are_complete()) {
    // "Antennæ 2- or" / "2- eller 3-leddet": a hyphen behind a count.
    bool const hyphen = odd_case && label.end == LabelEnd::dash;
    if (!bare && !hyphen) return true;
    if (odd_case) return false;
    // A bare number far off is a year, a count or a street number.
    return leads_.follows(label) || label.number < 1000;
  }
  // Within a lead, a line set deeper than labels goes on with it.
  if (odd_case) return false;
  // "… before tergite" / "3 ..... Aus bus": a lead has words.
  auto const split = split_at_leader(words, numbering_);
  if (split.kind != LeaderKind::none && split.words_end == 0) return false;
  // "… stamens 5 or" / "8. Rocks up to 2000 m": a count of the words, far from all couplets.
  bool const broken_off =
      !here.gap &&
      is_letter(code_point_before(lines_[here.at - 1].text, lines_[here.at - 1].text.size()).value);
  if (broken_off && !bare && label.letter.empty() && !leads_.follows(label) &&
      is_far_from_couplets(label.number)) {
    return false;
  }
  // "… as far as" / "45° North"
  if (label.end == LabelEnd::degree && !leads_.follows(label)) return false;
  if (line.indent > numbering_.label_indent + kLabelSlack) {
    return leads_.is_nested_label(here.at, label);
  }
  // "… gnathopod" / "2 palm oblique": a count of the words.
  bool const lower = is_lower(code_point_at(words, 0).value);
  if (bare && lower && leads_.begins_upper()) return false;
  return leads_.follows(label) || (!bare && !lower);
}

bool LeadBegins::is_far_from_couplets(std::uint32_t number) const {
  bool const whole = numbering_.extent == Extent::whole && numbering_.numbers.size() > 1;
  return whole && !numbering_.has_number(number - 1) && !numbering_.has_number(number + 1);
}

// "10. Stems rough." / "1l. Sheaths red ... A. bus" / "11. Sheaths brown.": where leads go on with
// the couplets beneath them, the count misses this one.
std::optional<Label> LeadBegins::misprinted_beneath(LineAtHand here) const {
  auto const next = leads_.largest() + 1;
  bool const sentence = leads_.progress() == Progress::open && leads_.last_line().ends_with('.');
  if (!sentence || numbering_.serial || remarks_.is_open() || ahead_.leads_have_ends() ||
      !ahead_.lacks_rival(next)) {
    return std::nullopt;
  }
  auto const misprint = read_misprinted_label(lines_[here.at].text, next, false);
  bool const begins =
      misprint && is_upper(code_point_at(lines_[here.at].text, misprint->text_at).value);
  return begins ? misprint : std::nullopt;
}

std::optional<Label> LeadBegins::misprinted_rival(LineAtHand here) const {
  constexpr std::size_t kMostLines = 8;  // of a lead
  auto const& line = lines_[here.at];
  auto const number = leads_.open_couplet();
  if (numbering_.serial || number == 0 || number == leads_.number()) return std::nullopt;
  // "I. Roe records it from dunes." is a note, "I. Annuals of the coast" a heading.
  if (line.indent > numbering_.label_indent) return std::nullopt;
  auto const misprint = read_misprinted_label(line.text, number, false);
  if (!misprint) return std::nullopt;
  for (auto at = here.at; at < std::min(lines_.size(), here.at + kMostLines); ++at) {
    bool const next = at > here.at && ahead_.label_at(at).has_value();
    if (next) {
      bool const above = lines_[at].indent > line.indent || lines_[at - 1].text.ends_with(':');
      return above ? misprint : std::nullopt;
    }
    if (lines_[at].text.empty()) return std::nullopt;
    if (ahead_.ends_in_destination(at)) return misprint;
  }
  return std::nullopt;
}

bool LeadBegins::is_usual_letter(std::string_view line) const {
  constexpr std::size_t kFewest = 3;
  auto const letter = line.substr(0, 2);
  if (letter.size() < 2 || letter[1] != '.' || letter[0] < 'A' || letter[0] > 'Z') return false;
  if (letter[0] == 'I' || letter[0] == 'O') return false;
  if (letters_.empty()) {
    letters_.resize('Z' - 'A' + 1);
    for (auto const& one : lines_) {
      bool const upper = one.text.size() > 1 && one.text[0] >= 'A' && one.text[0] <= 'Z';
      if (upper && one.text[1] == '.') ++letters_[static_cast<std::size_t>(one.text[0] - 'A')];
    }
  }
  return letters_[static_cast<std::size_t>(letter[0] - 'A')] >= kFewest;
}

// "1. Petals red" behind "k. Stem tall … l.": the letter l is due.
std::optional<Label> LeadBegins::misread_l(std::string_view line) const {
  constexpr std::uint32_t kL = 12;
  bool const due = leads_.are_complete() && leads_.number() + 1 == kL;
  if (!due || !line.starts_with("1. ") || is_numbered_name(line)) return std::nullopt;
  Label label;
  label.family = LabelFamily::lower;
  label.end = LabelEnd::dot;
  label.number = kL;
  label.printed = line.substr(0, 1);
  label.text_at = skip_blanks(line, 2);
  bool const words = is_upper(code_point_at(line, label.text_at).value);
  return words ? std::optional{label} : std::nullopt;
}

std::optional<Label> LeadBegins::misprinted_label(LineAtHand here) const {
  auto const& line = lines_[here.at];
  if (line.is_no_lead) return std::nullopt;
  if (numbering_.family == LabelFamily::lower) return misread_l(line.text);
  if (numbering_.family != LabelFamily::digits) return std::nullopt;
  if (!leads_.are_complete()) return misprinted_beneath(here);
  if (numbering_.numbers.size() < 2 && leads_.empty()) return std::nullopt;  // letters
  bool const bare_allowed = ahead_.ends_in_leaders(here.at);
  auto misprint = read_misprinted_label(line.text, leads_.number() + 1, bare_allowed);
  if (!misprint && leads_.number() > 0) {
    misprint = read_misprinted_label(line.text, leads_.number(), bare_allowed);
    // "I. Subgen. Ausella" behind both leads of couplet 1: a heading, for it leads nowhere.
    bool const third = misprint && leads_.of_couplet() > 1;
    if (third && !ahead_.ends_in_destination(here.at)) misprint.reset();
  }
  // "Key to Species" / "l. Wings …": the next key begins.
  if (!misprint && remarks_.has_heading() && leads_.number() > 1) {
    misprint = read_misprinted_label(line.text, 1, bare_allowed);
    if (misprint && !ahead_.opens_key(here.at)) misprint.reset();
  }
  // "I. Leaves opposite": the rival of couplet 1, far above.
  if (!misprint) misprint = misprinted_rival(here);
  if (!misprint || is_usual_letter(line.text)) return std::nullopt;
  auto const words = line.text.substr(misprint->text_at);
  if (ahead_.titles_numbered_account(*misprint, words)) return std::nullopt;
  if (has_odd_case(words)) return std::nullopt;
  // "I." before the first lead is more often a heading's.
  if (leads_.progress() == Progress::none && !ahead_.opens_key(here.at)) return std::nullopt;
  return misprint;
}

bool LeadBegins::begins_second_lead(LineAtHand here) const {
  auto const& line = lines_[here.at];
  if (numbering_.exact || numbering_.serial || line.is_no_lead || titles_genus(line.text)) {
    return false;
  }
  if (is_cited_species(line.text)) return false;
  if (ahead_.is_set_in(here.at, kNeverSetIn)) return false;
  if (!ahead_.second_leads_unlabelled() || leads_.progress() == Progress::leaders ||
      remarks_.is_caption()) {
    return false;
  }
  if (leads_.last().label.is_dash()) return false;
  auto const answers = [&] {
    auto const& last = leads_.last();
    auto const above = lines_[last.line].text;
    return !here.gap &&
           answers_in_words(line.text, above.substr(std::min(last.label.text_at, above.size())),
                            leads_.last_line());
  };
  if (!leads_.are_complete() && !answers()) return false;
  if (!is_upper(code_point_at(line.text, 0).value) || starts_note(line.text) ||
      starts_caption(line.text) || starts_footnote(line.text) || names_a_key(line.text)) {
    return false;
  }
  if (is_head_in_capitals(line.text) && !mostly_capitals(leads_.last_line())) return false;
  if (remarks_.is_open() && !ends_sentence(lines_[here.at - 1].text)) return false;
  if (!remarks_.is_open() && !here.gap && leads_.progress() != Progress::soft &&
      leads_.hangs_open() && !answers()) {
    return false;
  }
  if (!here.gap && leads_.continues_with_author(here.at)) return false;
  return here.gap && !here.page ? ahead_.ends_in_leaders(here.at)
                                : ahead_.ends_in_destination(here.at);
}

bool LeadBegins::begins_first_couplet(LineAtHand here) const {
  auto const& line = lines_[here.at];
  bool const whole = numbering_.family == LabelFamily::digits && numbering_.extent == Extent::whole;
  if (!whole || plan_ != nullptr || numbering_.exact || line.is_no_lead) return false;
  if (!is_upper(code_point_at(line.text, 0).value)) return false;
  bool const led = split_at_leader(line.text, numbering_).kind != LeaderKind::none;
  if (mentions_key(line.text) && !led) return false;
  auto const destination = [this](std::size_t i) {
    if (i >= lines_.size() || ahead_.label_at(i)) return std::string_view{};
    auto const split = split_at_leader(lines_[i].text, numbering_);
    return split.kind == LeaderKind::dots ? lines_[i].text.substr(split.destination_begin)
                                          : std::string_view{};
  };
  constexpr std::size_t kMostLines = 4;  // of the lead
  auto last = here.at;
  while (last < here.at + kMostLines && destination(last).empty() && !ahead_.gap_after(last) &&
         !ahead_.label_follows(last)) {
    ++last;
  }
  auto const to = destination(last);
  if (to.empty()) return false;
  // "Plants in fruit ..... KEY A" / "Plants with leaves only ..... KEY B"
  if (names_a_key(to)) return names_a_key(destination(last + 1));
  auto const number = numbering_.read(strip_pointer(to));
  return !numbering_.has_number(1) && numbering_.has_number(2) && number && number->number == 2;
}

bool LeadBegins::has_blank_between(std::size_t first, std::size_t end) const {
  if (blanks_before_.empty()) {
    blanks_before_.reserve(lines_.size() + 1);
    std::uint32_t blanks = 0;
    for (auto const& line : lines_) {
      blanks_before_.push_back(blanks);
      if (line.text.empty()) ++blanks;
    }
    blanks_before_.push_back(blanks);
  }
  return blanks_before_[end] > blanks_before_[first];
}

bool LeadBegins::begins_unlabelled_lead(LineAtHand here) const {
  auto const& line = lines_[here.at];
  bool const told_otherwise = plan_ != nullptr || numbering_.exact;
  if (told_otherwise || numbering_.serial || line.is_no_lead || titles_genus(line.text)) {
    return false;
  }
  if (ahead_.is_set_in(here.at, kNeverSetIn)) return false;
  // "Couplet 4 is to be replaced by:"; "Home | Keys | Glossary".
  if (line.text.ends_with(':') || has_bars(line.text)) return false;
  // "Open Marsh | https://… 11 / 47": the foot of a page.
  if (line.text.find("://") != std::string_view::npos) return false;
  // "1 . A. busus Roe. 1809 [cusus Dorn]. — Black": the account of the first species.
  auto const number = read_label(line.text);
  if (number && number->family == LabelFamily::digits &&
      titles_account(std::string_view{line.text}.substr(number->text_at))) {
    return false;
  }
  // Blank lines end a key, unless they stand between all its leads.
  bool const apart =
      here.gap || (!leads_.empty() && !here.page && has_blank_between(leads_.last().line, here.at));
  bool const behind_key = apart && !leads_.usually_apart();
  bool const behind_heading = remarks_.has_heading();
  if (behind_key || behind_heading) return false;
  bool const upper = is_upper(code_point_at(line.text, 0).value);
  bool const within_remark =
      remarks_.is_open() && !(upper && ends_sentence(lines_[here.at - 1].text));
  auto const split = split_at_leader(line.text, numbering_);
  bool const dotted = split.kind == LeaderKind::dots;
  // "Ausella busa Roe, Prodr. 1786, 80.": a synonym in an account.
  if (split.kind == LeaderKind::none && is_cited_species(line.text)) return false;
  // "6.4   PRESERVING SPECIMENS": the number of a section.
  auto const words = line.text.substr(0, split.words_end);
  if (split.kind == LeaderKind::gap && words.find_first_not_of("0123456789. ") == words.npos) {
    return false;
  }
  bool const within_sentence = has_odd_case(line.text) && !dotted;
  if (within_remark || within_sentence) return false;
  // "Head as long as wide..." in a remark: leaders to nothing.
  bool const trails_off = remarks_.is_open() && ahead_.trails_off(here.at);
  return !trails_off && (ahead_.ends_in_leaders(here.at) || ends_in_pointer(line.text));
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_leads_so_far.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/formats/written_day.hpp"

namespace keydrift::printed {
namespace {

// "Go to couplet", whose number is on the next line.
bool is_pointer(std::string_view text) {
  constexpr std::size_t kLongest = 24;  // bytes
  return text.size() <= kLongest && strip_pointer(std::string{text} + " 1").size() == 1;
}

// "Roe & Dorn, 1913", "(Roe, 1900)", "Roe 1900 (hardly to be told)": authors with the year, and a
// remark in brackets at most.
bool is_dated_authorship(std::string_view text) {
  constexpr std::size_t kMost = 8;  // words
  auto const remark = text.ends_with(')') ? text.rfind(" (") : std::string_view::npos;
  if (remark != std::string_view::npos && remark > 0) text = text.substr(0, remark);
  auto const words = words_of(text);
  if (words.size() < 2 || words.size() > kMost || !is_year(words.back())) return false;
  return std::all_of(words.begin(), words.end(), [](std::string_view word) {
    while (!word.empty() && word.front() == '(') word.remove_prefix(1);
    auto const bare = without_end(word);
    return is_authorish(bare) || is_particle(bare);
  });
}

// "June, 1917": the month of the issue at the foot of a page.
bool is_month_of_issue(std::string_view text) {
  auto const words = words_of(text, 3);
  if (words.size() != 2 || !is_year(words[1])) return false;
  return !read_day(std::string{without_end(words[0])} + " " + std::string{words[1]}).iso.empty();
}

// The next printed line is told to be a destination.
bool told_destination_below(std::vector<SourceLine> const& lines, std::size_t at) {
  auto const below = std::find_if(lines.begin() + static_cast<std::ptrdiff_t>(at) + 1, lines.end(),
                                  [](SourceLine const& line) { return !line.text.empty(); });
  return below != lines.end() && below->is_told_destination();
}

}  // namespace

bool LeadsSoFar::are_complete() const {
  return progress_ == Progress::none || progress_ == Progress::soft ||
         progress_ == Progress::named || progress_ == Progress::done;
}

void LeadsSoFar::begin(RawLead lead, std::size_t at, bool after_blank) {
  if (after_blank) ++after_blank_;
  lead.line = static_cast<std::uint32_t>(at);
  lead.first_piece = static_cast<std::uint32_t>(pieces_.size());
  bool const same = lead.label.is_dash() || lead.label.number == number_;
  of_couplet_ = same ? of_couplet_ + 1 : 1;
  if (!same) number_ = lead.label.number;
  largest_ = std::max(largest_, number_);
  if (!open_.empty() && (lead.label.is_dash() || open_.back() == number_)) {
    open_.pop_back();
  } else if (!lead.label.is_dash()) {
    open_.push_back(number_);
  }
  leads_.push_back(lead);
  progress_ = Progress::open;
}

void LeadsSoFar::add_piece(std::size_t at, std::size_t from) {
  auto const& line = lines_[at];
  auto const text = line.text.substr(from);
  ++leads_.back().piece_count;
  leads_.back().destination_told = false;
  pieces_.push_back(
      {line.begin + from, line.begin + line.text.size(), static_cast<std::uint32_t>(at)});
  // What stands behind a destination in small type or cells of its own ends the lead for good.
  bool const closed = line.markup.destination_end != kNotTold;
  if (closed || (progress_ == Progress::leaders && plausible_destination(text, numbering_))) {
    progress_ = Progress::done;
    return;
  }
  auto const split = split_at_leader(text, numbering_);
  if (split.kind != LeaderKind::none && is_open_page(trim(text.substr(split.destination_begin)))) {
    progress_ = Progress::leaders;  // the name stands on the next line
    return;
  }
  if (split.kind == LeaderKind::none) {
    if (progress_ != Progress::done) {
      // Where leaders are the rule, a name at a line's end may be one of the words.
      bool const told = line.markup.destination_begin != kNotTold || goes_on_with_told_name(line);
      bool const name = told || ahead_.ends_in_name(text) || ends_broken_name(text);
      bool const doubtful = !told && ahead_.usually_led() && !ahead_.second_leads_unlabelled();
      // "… on sterile shoots. I0"
      auto const figure = ahead_.second_leads_unlabelled() ? figure_at_end(text) : 0;
      bool const number = trailing_reference(text, &numbering_).has_value() ||
                          (figure > 1 && numbering_.has_number(figure));
      progress_ = (number && !told) || (name && doubtful) ? Progress::soft
                  : name                                  ? Progress::named
                                                          : Progress::open;
      // "… styles 2" / "3", where each destination has a line of its own.
      bool const below = progress_ == Progress::soft && ahead_.ends_stand_alone();
      if (below && ahead_.is_end_alone(at + 1)) progress_ = Progress::open;
      // "… Busa;" / "ROE.": the author is told to stand on the next line.
      if (told && at + 1 < lines_.size() && lines_[at + 1].goes_on) progress_ = Progress::open;
    }
  } else if (split.kind == LeaderKind::dash) {
    // It may be one of the words, unless the file sets destinations so.
    bool const habit = numbering_.ends.dash || numbering_.ends.colon;
    if (told_destination_below(lines_, at)) {  // "— Corse." / "16. busus (p. 158)"
      progress_ = Progress::open;
    } else if (progress_ != Progress::done) {
      progress_ = habit ? Progress::done : Progress::soft;
    }
  } else if (split.destination_begin == text.size() ||
             is_pointer(text.substr(split.destination_begin))) {
    progress_ = Progress::leaders;
  } else {
    progress_ = Progress::done;
  }
}

// "centula." beneath "… Vires-", told to begin there.
bool LeadsSoFar::goes_on_with_told_name(SourceLine const& line) const {
  if (!line.goes_on || leads_.back().piece_count < 2) return false;
  auto const& above = pieces_[pieces_.size() - 2];
  return lines_[above.line].markup.destination_begin != kNotTold;
}

// "folia Roe." beneath "… 415. A. distanti-", "bus" beneath "… A.", "Roe" beneath "… A. bus": the
// name began on the line before.
bool LeadsSoFar::ends_broken_name(std::string_view text) const {
  constexpr std::size_t kMostWords = 4;  // of the name on this line
  auto const& lead = leads_.back();
  auto const words = words_of(text);
  if (lead.piece_count < 2 || words.empty() || words.size() > kMostWords) return false;
  auto const& piece = pieces_[pieces_.size() - 2];
  auto const& line = lines_[piece.line];
  auto const before = line.text.substr(piece.begin - line.begin);
  if (before.ends_with('-')) {
    return ahead_.ends_in_name(std::string{before.substr(0, before.size() - 1)} +
                               std::string{text});
  }
  auto const last = before.substr(last_word_begin(before));
  // "pusa)" beneath "… ridges. Dwarf Bat (Ausella"
  bool const bracketed = words.size() == 1 && last.starts_with('(') &&
                         is_capitalised(last.substr(1)) && words[0].ends_with(')') &&
                         is_epithet(words[0].substr(0, words[0].size() - 1));
  if (bracketed) return true;
  bool const genus = is_abbreviated(last) && is_epithet(without_end(words[0]));
  // "Roe" beneath "… 415. A. busa"
  auto const front = trim_right(before.substr(0, before.size() - last.size()));
  bool const author = words.size() == 1 && is_authorish(words[0]) && is_epithet(last) &&
                      is_abbreviated(front.substr(last_word_begin(front)));
  return (genus || author) && ahead_.ends_in_name(std::string{before} + ' ' + std::string{text});
}

void LeadsSoFar::hand_over(SortedLines& sorted) && {
  sorted.leads = std::move(leads_);
  sorted.pieces = std::move(pieces_);
}

bool LeadsSoFar::follows(Label const& label) const {
  if (label.is_dash()) return !leads_.empty();
  if (leads_.empty()) return label.number == 1;
  return label.number == number_ || label.number == number_ + 1 || label.number == largest_ + 1;
}

bool LeadsSoFar::is_nested_label(std::size_t at, Label const& label) const {
  auto const& line = lines_[at];
  if (!is_upper(code_point_at(line.text, label.text_at).value)) return false;
  bool const next = follows(label);
  bool const closed = label.end != LabelEnd::none;
  // Letters that tell the level, "F.", may come again behind a "G." further in.
  bool const answered = ahead_.is_answered(at) && line.indent > lines_[leads_.back().line].indent;
  if (answered && (next || closed)) return true;
  // "8. Spines in rows" / "8. Spines scattered": rivals that are set in alike.
  bool const rival = closed && label.number == number() && label.letter.empty() &&
                     line.indent == lines_[leads_.back().line].indent;
  if (rival) return true;
  if (!next || !closed) return false;
  auto const& lead = leads_.back();
  auto const& first = lines_[lead.line];
  auto const words = pieces_[lead.first_piece].begin - first.begin;
  auto const column = first.indent + count_code_points(first.text.substr(0, words));
  auto const& last = lines_[pieces_[lead.first_piece + lead.piece_count - 1].line];
  bool const wrapped = lead.piece_count > 1 && line.indent == last.indent;
  // As deep as the words of the lead above, which a sentence closes.
  bool const words_column = line.indent == column && !last.text.ends_with('.');
  return line.indent > first.indent && !words_column && !wrapped;
}

bool LeadsSoFar::usually_apart() const {
  return after_blank_ * 3 > leads_.size() * 2;  // couplets apart make it a half
}

std::string_view LeadsSoFar::last_line() const {
  auto const& lead = leads_.back();
  return lines_[pieces_[lead.first_piece + lead.piece_count - 1].line].text;
}

bool LeadsSoFar::end_directly_above(std::size_t at) const {
  if (leads_.empty()) return false;
  auto const& lead = leads_.back();
  return pieces_[lead.first_piece + lead.piece_count - 1].line + 1 == at;
}

namespace {

// "Ausella busa busa (p. 4)": where the page begins; npos without.
std::size_t page_behind_name(std::string_view text) {
  auto const open = text.find(" (");
  bool const page = open != std::string_view::npos && starts_with_page(text.substr(open + 2));
  return page && is_latin_name(text.substr(0, open)) ? open : std::string_view::npos;
}

// "8b. A. busa var. cusa"
bool is_numbered_with_letter(std::string_view text) {
  auto const words = words_of(text, 3);
  auto const digits = text.find_first_not_of("0123456789");
  bool const lettered = digits != 0 && digits != std::string_view::npos && words.size() == 3 &&
                        words[0].size() == digits + 2 && words[0].ends_with('.') &&
                        is_lower(static_cast<unsigned char>(text[digits]));
  return lettered && is_abbreviated(words[1]) && is_epithet(words[2]) &&
         is_latin_name(text.substr(words[0].size() + 1));
}

}  // namespace

bool LeadsSoFar::goes_on_with_taxon(std::string_view text) const {
  if (progress_ != Progress::done) return false;
  auto const above = last_line();
  if (page_behind_name(text) != std::string_view::npos) {
    return page_behind_name(above) != std::string_view::npos;
  }
  if (!is_numbered_with_letter(text)) return false;
  // Of the same number: "8." above "8b."
  auto const number = text.substr(0, leading_figures(text));
  auto const at = above.rfind(std::string{" "}.append(number));
  return at != std::string_view::npos && at + 1 + number.size() < above.size() &&
         !is_digit(static_cast<unsigned char>(above[at + 1 + number.size()])) &&
         has_numbered_name_within(above);
}

bool LeadsSoFar::ends_in_species_number() const {
  auto const before = last_line();
  auto const begin = last_word_begin(before);
  return begin > 0 && is_species_number(before.substr(begin));
}

bool LeadsSoFar::ends_in_epithet_alone() const {
  auto const& lead = leads_.back();
  if (lead.piece_count < 2 || !is_genusless_name(last_line())) return false;
  auto const& above = pieces_[lead.first_piece + lead.piece_count - 2];
  return lines_[above.line].text.ends_with('.');
}

bool LeadsSoFar::hangs_open() const {
  auto const before = last_line();
  auto const last_blank = before.find_last_of(' ');
  auto const word_at = last_blank == std::string_view::npos ? 0 : last_blank + 1;
  auto const folded = fold(before.substr(word_at));
  // "..... Genus" and nothing else
  if (is_rank_noun(folded)) {
    return split_at_leader(before, numbering_).destination_begin == word_at;
  }
  return before.back() == ',' || before.back() == '&' || before.back() == '-' || folded == "or" ||
         folded == "and" || folded == "oder" || folded == "und" || folded == "ou" ||
         folded == "et" || folded == "o" || folded == "e" || folded == "y" || folded == "ex" ||
         (folded == "sp." && !before.ends_with("n. sp.") && !before.ends_with("nov. sp."));
}

bool LeadsSoFar::resumes_leaders(SourceLine const& line) const {
  if (leads_.empty() || line.text.front() != '.') return false;
  auto const here = split_at_leader(line.text, numbering_);
  if (here.kind != LeaderKind::dots || here.words_end > 0 ||
      here.destination_begin >= line.text.size()) {
    return false;
  }
  auto const before = last_line();
  auto const there = split_at_leader(before, numbering_);
  return there.kind == LeaderKind::dots && there.destination_begin >= before.size();
}

bool LeadsSoFar::begins_upper() const {
  if (leads_.empty()) return false;
  auto const& lead = leads_.back();
  auto const& line = lines_[lead.line];
  return is_upper(code_point_at(line.text, pieces_[lead.first_piece].begin - line.begin).value);
}

// "…... 7." / "A. bus", "…... Lesser" / "Bat, Aus bus": a number or words that a name follows.
bool LeadsSoFar::names_what_is_open(SourceLine const& line) const {
  constexpr std::size_t kMost = 8;  // words of a name with what stands before it
  auto const split = split_at_leader(last_line(), numbering_);
  if (split.kind != LeaderKind::dots && split.kind != LeaderKind::gap) return false;
  auto const begun = last_line().substr(split.destination_begin);
  auto const words = words_of(line.text);
  if (words.empty() || words.size() > kMost || line.text.ends_with(';')) return false;
  // "…... Marsh Thrush" / "(Ausella busa) with all town birds"
  auto const close = line.text.find(')');
  if (line.text.starts_with('(') && close != std::string_view::npos && !begun.empty()) {
    auto const named = line.text.substr(1, close - 1);
    bool const common = is_capitalised(words_of(begun).front()) && !is_latin_name(begun) &&
                        !has_strict_latin_ending(fold(words_of(begun).front()));
    return common && words_of(named).size() >= 2 && is_latin_name(named);
  }
  bool const numbered = begun.ends_with('.') && is_number_only(begun);
  if (numbered) {
    return is_latin_name(line.text) || is_short_name(line.text);
  }
  // "…... YELLOW" / "BOGBEAR, Aus bus"
  auto const capitals = words_of(begun);
  bool const common = !begun.empty() &&
                      std::all_of(capitals.begin(), capitals.end(),
                                  [](auto word) {
                                    auto const folded = fold(word);
                                    return is_in_capitals(word) && !has_higher_ending(folded) &&
                                           !has_strict_latin_ending(folded);
                                  }) &&
                      is_named_in_capitals(line.text);
  if (common) return true;
  bool const vernacular =
      words_of(begun).size() <= 2 && is_capitalised(begun) && !has_strict_latin_ending(begun);
  if (!vernacular || line.indent <= lines_[leads_.back().line].indent) return false;
  auto const taxa = read_taxa(line.text);
  return !taxa.before.empty() && words_of(taxa.taxa.front().name).size() >= 2;
}

bool LeadsSoFar::continues_name_in_capitals(SourceLine const& line) const {
  constexpr std::size_t kMost = 3;      // words, with an author or a remark
  constexpr std::size_t kShortest = 4;  // letters
  auto const words = words_of(start_of(line.text, 80));
  if (words.empty() || words.size() > kMost) return false;
  auto const epithet = without_end(words[0]);
  if (!is_in_capitals(epithet, kShortest) || !has_epithet_ending(fold(epithet))) return false;
  auto const before = last_line();
  auto const split = split_at_leader(before, numbering_);
  if (split.kind == LeaderKind::none) return false;
  auto const begun = words_of(before.substr(split.destination_begin));
  return begun.size() == 1 && is_in_capitals(begun[0], kShortest) &&
         has_latin_ending(fold(begun[0])) && !has_higher_ending(fold(begun[0]));
}

// "… A. bus" / "Roe and A. cus Dorn": the author of one species, and another species.
bool LeadsSoFar::is_author_of_list(std::string_view text) {
  constexpr std::size_t kMostOfAuthor = 4;  // words
  auto const words = words_of(text);
  std::size_t w = 0;
  while (w < words.size() && is_authorish(words[w])) ++w;
  return w > 0 && w <= kMostOfAuthor && w + 2 < words.size() && is_separator(words[w]) &&
         is_abbreviated(words[w + 1]) && is_epithet(words[w + 2]);
}

bool LeadsSoFar::continues_with_author(std::size_t at) const {
  bool const named = progress_ == Progress::done || progress_ == Progress::named;
  return named && names_.is_author_above_lead(names_.at_end_of(last_line()), at);
}

bool LeadsSoFar::continues_with_number(std::size_t at) const {
  return progress_ == Progress::done && names_.go_on_with_number(names_.at_end_of(last_line()), at);
}

bool LeadsSoFar::continues_destination(std::size_t at) const {
  auto const& line = lines_[at];
  auto const& lead = leads_.back();
  bool const gap = at + 1 == lines_.size() || lines_[at + 1].text.empty();
  if (starts_note(line.text) || (gap && is_month_of_issue(line.text))) return false;
  if (split_at_leader(line.text, numbering_).kind != LeaderKind::none) return false;
  // "… → 6" above "notch": what a picture shows.
  auto const arrow = last_line().rfind("\u2192");
  if (arrow != std::string_view::npos && numbering_.read(trim(last_line().substr(arrow + 3)))) {
    return false;
  }
  if (hangs_open() || names_what_is_open(line) || is_author_of_list(line.text)) return true;
  // "…... 3" / "Aus Roe, 1888", "…... A. bus Roe, 1911" / "bus group": a heading.
  auto const destination = names_.at_end_of(last_line());
  // "(Roe, 1911)" / "Dorn, 1920" may be two authors of one name.
  bool const two = destination.ends_with(')') && !is_dated_genus(line.text);
  bool const whole = !two && is_whole_destination(destination);
  bool const group = is_limit_word(line.text.substr(last_word_begin(line.text))) &&
                     line.text.find(' ') != std::string_view::npos;
  if (whole && (is_dated_authorship(line.text) || group)) return false;
  if (is_dated_authorship(line.text) || names_.go_on(destination, at)) return true;
  // "… → Cherry pea scale" / "(Globolecan cerasinum)"
  if (line.text.starts_with('(') &&
      closes_common_name(std::string{destination} + " " + std::string{line.text})) {
    return true;
  }
  if (leaves_bracket_open(last_line())) return true;
  // "… smooth ..... 4" above "long spines     Fig. 1": what a picture shows.
  auto const figures = figures_in(line.text);
  bool const caption = !figures.empty() && line.text.ends_with(figures.back());
  if (caption && numbering_.read(strip_pointer(destination))) return false;
  auto const first = code_point_at(line.text, 0).value;
  bool const deeper = line.indent > lines_[lead.line].indent;
  if (is_lower(first) && !starts_note(line.text)) {
    return deeper || progress_ == Progress::named || words_of(line.text).size() <= 4;
  }
  // An author and a year on the next line.
  auto const words = words_of(start_of(line.text, 60));
  bool const sentence = std::any_of(words.begin(), words.end(), [](std::string_view word) {
    return is_lower(code_point_at(word, 0).value) && !is_particle(without_end(word));
  });
  bool const year =
      line.text.size() < 60 && !sentence && line.text.find(", 1") != std::string_view::npos;
  return deeper && year && (first == '(' || is_upper(first));
}

}  // namespace keydrift::printed

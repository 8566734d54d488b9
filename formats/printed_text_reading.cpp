#include "keydrift/formats/printed_text_reading.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/formats/long_lines.hpp"
#include "keydrift/formats/printed_accounts.hpp"
#include "keydrift/formats/printed_accounts_behind.hpp"
#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_bis_labels.hpp"
#include "keydrift/formats/printed_braces.hpp"
#include "keydrift/formats/printed_cell_quotes.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_columns.hpp"
#include "keydrift/formats/printed_counted_leads.hpp"
#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_dashed_numbers.hpp"
#include "keydrift/formats/printed_dashed_seconds.hpp"
#include "keydrift/formats/printed_edition.hpp"
#include "keydrift/formats/printed_emphasis.hpp"
#include "keydrift/formats/printed_exact.hpp"
#include "keydrift/formats/printed_figure_labels.hpp"
#include "keydrift/formats/printed_full_width.hpp"
#include "keydrift/formats/printed_garbled_leaders.hpp"
#include "keydrift/formats/printed_group_names.hpp"
#include "keydrift/formats/printed_key_findings.hpp"
#include "keydrift/formats/printed_keys_before.hpp"
#include "keydrift/formats/printed_keys_behind.hpp"
#include "keydrift/formats/printed_label_signs.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lettered_references.hpp"
#include "keydrift/formats/printed_lettered_steps.hpp"
#include "keydrift/formats/printed_level_pointers.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_lines_of_pages.hpp"
#include "keydrift/formats/printed_links.hpp"
#include "keydrift/formats/printed_lost_numbers.hpp"
#include "keydrift/formats/printed_misread_pages.hpp"
#include "keydrift/formats/printed_names_above_remarks.hpp"
#include "keydrift/formats/printed_names_in_front.hpp"
#include "keydrift/formats/printed_numbered_lists.hpp"
#include "keydrift/formats/printed_numbered_titles.hpp"
#include "keydrift/formats/printed_numbers_above.hpp"
#include "keydrift/formats/printed_numbers_led_to.hpp"
#include "keydrift/formats/printed_odd_initials.hpp"
#include "keydrift/formats/printed_overrun_pages.hpp"
#include "keydrift/formats/printed_paragraphs.hpp"
#include "keydrift/formats/printed_prose_numbers.hpp"
#include "keydrift/formats/printed_repairs.hpp"
#include "keydrift/formats/printed_repeated_notes.hpp"
#include "keydrift/formats/printed_restored_labels.hpp"
#include "keydrift/formats/printed_result_column.hpp"
#include "keydrift/formats/printed_run_on.hpp"
#include "keydrift/formats/printed_scan_signs.hpp"
#include "keydrift/formats/printed_scan_words.hpp"
#include "keydrift/formats/printed_sentence_genera.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/formats/printed_spaced_words.hpp"
#include "keydrift/formats/printed_spacing.hpp"
#include "keydrift/formats/printed_species_numbers.hpp"
#include "keydrift/formats/printed_specks.hpp"
#include "keydrift/formats/printed_touching_signs.hpp"
#include "keydrift/formats/printed_underlining.hpp"
#include "keydrift/formats/printed_whole_couplets.hpp"

namespace keydrift::printed {
namespace {

// What scanning made others of, in the order in which it is mended.
struct Mend {
  std::size_t (*restore)(std::string& text);
  char const* code;
  char const* one;  // behind "1"
  char const* many;
};

constexpr std::array kMends{
    Mend{close_double_blanks, "misread-signs",
         " line was read with one blank between its words instead of two",
         " lines were read with one blank between their words instead of two"},
    Mend{close_spaced_words, "spaced-letters",
         " word set with blanks between its letters was read as a word",
         " words set with blanks between their letters were read as words"},
    Mend{clear_squares_before_dashes, "misread-signs",
         " line that begins with a square and a dash was read as if with the dash",
         " lines that begin with a square and a dash were read as if with the dash"},
    Mend{clear_dashes_before_numbers, "dashed-numbers",
         " couplet's number was read without the dash before it",
         " couplets' numbers were read without the dashes before them"},
    Mend{close_indexed_labels, "misread-signs",
         " label such as \"a 1 .\" was read without the blanks in it",
         " labels such as \"a 1 .\" were read without the blanks in them"},
    Mend{restore_raised_labels, "misread-signs",
         " label such as \"c-.\" or \"6^.\" was read as a letter with a raised index",
         " labels such as \"c-.\" and \"6^.\" were read as letters with raised indices"},
    Mend{restore_capital_indices, "misread-signs",
         " label such as \"H'.\" was read as a letter with its number",
         " labels such as \"H'.\" and \"H?.\" were read as letters with their numbers"},
    Mend{restore_marked_numbers, "misread-signs",
         " label such as \"ll'\" was read as the number of the lead above",
         " labels such as \"ll'\" were read as the numbers of the leads above"},
    Mend{restore_fused_primes, "misread-signs",
         " label \"V\" was read as the number and the prime that are missing",
         " labels \"V\" were read as the numbers and the primes that are missing"},
    Mend{restore_stroked_primes, "misread-signs",
         " label such as \"c\\\" was read with the prime that others have",
         " labels such as \"c\\\" were read with the primes that others have"},
    Mend{close_stops_of_labels, "misread-signs",
         " label such as \"f .\" was read without the blank before its full stop",
         " labels such as \"f .\" were read without the blanks before their full stops"},
    Mend{close_commas, "misread-signs", " comma was read without the blank before it",
         " commas were read without the blanks before them"},
    Mend{part_initials, "misread-signs",
         " name such as \"P.alba\" was read with a blank behind the initial, as others have it",
         " names such as \"P.alba\" were read with a blank behind the initial, as others have it"},
    Mend{restore_pages, "misread-signs",
         " page at the end of a line such as \"p. l5\" was read with figures for its letters",
         " pages at the ends of lines such as \"p. l5\" were read with figures for their letters"},
    Mend{part_pages, "misread-signs",
         " page that touches a comma was read with a blank before it, as others have it",
         " pages that touch commas were read with blanks before them, as others have them"},
    Mend{part_epithets_from_stops, "misread-signs",
         " epithet that touches a full stop was read with a blank before it, as others have it",
         " epithets that touch full stops were read with blanks before them, as others have them"},
    Mend{part_numbers_from_signs, "misread-signs",
         " number at the end of a line such as \".6\" was read as the couplet that no other leads "
         "to",
         " numbers at the ends of lines such as \".6\" were read as couplets that no others lead "
         "to"},
    Mend{restore_numbers_led_to, "misread-signs",
         " number at the end of a line such as \"l2\" was read as the couplet that no other leads "
         "to",
         " numbers at the ends of lines such as \"l2\" were read as couplets that no others lead "
         "to"},
    Mend{restore_doubled_letters, "misread-signs",
         " label such as \"DI).\" or \"CC\" was read as the letter twice, with a full stop",
         " labels such as \"DI).\" and \"CC\" were read as the letter twice, with a full stop"},
    Mend{restore_parted_letters, "misread-signs",
         " label such as \"cl'.\" or \"d!\".\" was read with the letter or the prime that others "
         "call for",
         " labels such as \"cl'.\" and \"d!\".\" were read with the letters or the primes that "
         "others "
         "call for"},
    Mend{restore_letters_of_pairs, "misread-signs",
         " label such as \"li.\" was read as the letter that its rival has",
         " labels such as \"li.\" were read as the letters that their rivals have"},
    Mend{restore_colons_of_labels, "misread-signs",
         " label such as \"5;\" was read with the colon that others have",
         " labels such as \"5;\" were read with the colon that others have"},
    Mend{part_low_lines, "misread-signs",
         " line was read with leaders where a low line is left of them",
         " lines were read with leaders where low lines are left of them"},
    Mend{clear_underlining, "underlined-words",
         " line was read without the low lines that underline",
         " lines were read without the low lines that underline"},
    Mend{restore_daggers, "misread-signs",
         " line that begins with \"t\", \"tt\" or the like was read as if with daggers",
         " lines that begin with \"t\", \"tt\" and the like were read as if with daggers"},
    Mend{restore_crosses, "misread-signs",
         " line that begins with \"-|-\", \"-h\", \"X\" or the like was read as if with crosses",
         " lines that begin with \"-|-\", \"-h\", \"X\" and the like were read as if with crosses"},
    Mend{restore_rings, "misread-signs",
         " line that begins with \"©\" or \"0\" was read as if with the ring that others have",
         " lines that begin with \"©\" or \"0\" were read as if with the rings that others have"},
    Mend{restore_stars, "misread-signs",
         " line that begins with \"*♦\" or the like was read as if with stars",
         " lines that begin with \"*♦\" and the like were read as if with stars"},
    Mend{restore_greek_labels, "misread-signs",
         " label such as \"a\" and \"ß\" was read as the Greek letter alpha or beta",
         " labels such as \"a\" and \"ß\" were read as the Greek letters alpha and beta"},
    Mend{clear_garbled_leaders, "misread-signs",
         " row of leaders such as \"eee eee\" or \"000\" was read as dots",
         " rows of leaders such as \"eee eee\" and \"000\" were read as dots"},
    Mend{clear_specks, "misread-signs",
         " line was read without the specks among its leaders or beside what these lead to",
         " lines were read without the specks among their leaders or beside what these lead to"},
    Mend{close_full_stops, "misread-signs",
         " full stop at the end of a line was read without the blank before it",
         " full stops at ends of lines were read without the blanks before them"},
    Mend{restore_initials, "misread-signs",
         " name behind leaders was read with the full stop that its genus has elsewhere",
         " names behind leaders were read with the full stop that their genus has elsewhere"},
    Mend{restore_odd_initials, "misread-signs",
         " initial of a genus was read as the one that the other species have",
         " initials of genera were read as those that the other species have"},
    Mend{shorten_abbreviations, "shortened-abbreviations",
         " abbreviation of a genus such as \"Pl.\", which says \"plate\" as well, was read as its "
         "initial",
         " abbreviations of genera such as \"Pl.\", which says \"plate\" as well, were read as "
         "their initials"},
    Mend{restore_initial_o, "misread-signs",
         " initial \"0\" of a genus was read as O, as other species have it",
         " initials \"0\" of a genus were read as O, as other species have it"},
    Mend{restore_species_numbers, "misread-signs",
         " number of a species behind leaders was read as others have them",
         " numbers of species behind leaders were read as others have them"},
    Mend{
        restore_numbers_at_ends, "misread-signs",
        " number of a species at the end of a lead was read as those before and behind it call for",
        " numbers of species at ends of leads were read as those before and behind them call for"},
    Mend{restore_marks_of_new, "misread-signs",
         " mark of a new species such as \"n, sp.\" was read as \"n. sp.\"",
         " marks of new species such as \"n, sp.\" were read as \"n. sp.\""},
    Mend{restore_soft_hyphens, "misread-signs",
         " sign \"¬\" at the end of a line was read as a hyphen",
         " signs \"¬\" at ends of lines were read as hyphens"},
    Mend{restore_lettered_references, "misread-signs",
         " back-reference such as \"(lb)\" was read as \"(1b)\", as a lead is called",
         " back-references such as \"(lb)\" were read as \"(1b)\", as leads are called"},
    Mend{restore_first_l, "misread-signs",
         " \"I\" or \"1\" before an epithet's letters was read as l",
         " \"I\" or \"1\" before epithets' letters were read as l"},
    Mend{clear_low_lines, "misread-signs",
         " low line before the end of a line was read as what is left of leaders",
         " low lines before ends of lines were read as what is left of leaders"},
    Mend{restore_bowls, "misread-signs",
         " bracket within a word was read with the letter before it as p or b",
         " brackets within words were read with the letters before them as p or b"},
    Mend{part_authors_from_epithets, "misread-signs",
         " epithet was read with a blank behind its comma, as others have it",
         " epithets were read with blanks behind their commas, as others have them"},
    Mend{restore_letters, "misread-signs",
         " figure within a word was read as a letter, \"1\" as l or \"0\" as o",
         " figures within words were read as letters, \"1\" as l and \"0\" as o"},
    Mend{restore_capital_letters, "misread-signs", " \"0\" within a word in capitals was read as O",
         " \"0\" within words in capitals were read as O"},
    Mend{restore_small_l, "misread-signs", " capital I within a word was read as l",
         " capitals I within words were read as l"},
};

// Whether anything was to be mended, and the text is another one.
bool mend_scan(DecodedText& text, std::vector<Finding>& findings) {
  // Nothing is amiss with these.
  bool changed = take_pages_for_remarks(text.text) > 0;
  changed = take_off_cell_quotes(text.text) > 0 || changed;
  for (auto const& mend : kMends) {
    auto const count = mend.restore(text.text);
    if (count == 0) continue;
    changed = true;
    findings.push_back(scan_mended(text.name, count, mend.code, count == 1 ? mend.one : mend.many));
  }
  return changed;
}

// Each pass passes over the lines that those before it marked.
void mark_what_begins_no_lead(std::vector<SourceLine>& lines) {
  mark_numbered_prose(lines);
  mark_figure_labels(lines);
  mark_numbered_titles(lines);
  mark_accounts_behind(lines);
  mark_numbered_lists(lines);
  mark_repeated_notes(lines);
}

// Two leads of three have a rival and a destination.
bool hangs_together(Attempt const& attempt) {
  return !attempt.refused && attempt.judgement.leads > 0 && attempt.judgement.hangs_together();
}

// Reads the lines as `others` have them, if there are any, where they hang together better so.
void take_if_clearly_better(DecodedText const& text,
                            std::optional<std::vector<SourceLine>>&& others,
                            std::vector<SourceLine>& lines, Attempt& attempt) {
  if (!others) return;
  auto other = choose_reading(text, *others);
  if (!hangs_together(other)) return;
  // Of a key of two couplets, too, where each paragraph was read as one lead.
  auto const& now = other.judgement;
  bool const twice = now.is_faultless() && now.leads >= attempt.judgement.leads * 2 &&
                     now.points() > attempt.judgement.points();
  if (!(attempt.refused || twice || is_clearly_better(other, attempt))) return;
  lines = *std::move(others);
  attempt = std::move(other);
}

void take_if_as_good(DecodedText const& text, std::vector<SourceLine>&& others,
                     std::vector<SourceLine>& lines, Attempt& attempt) {
  auto other = choose_reading(text, others);
  auto const ahead = other.judgement.points() - attempt.judgement.points();
  if (!hangs_together(other) || (!attempt.refused && ahead < 0)) return;
  lines = std::move(others);
  attempt = std::move(other);
}

// Text layers of scans set blank lines between the blocks of a page, within leads as well.
void read_without_stray_blanks(DecodedText const& text, TextReading& reading) {
  for (auto const which : {StrayBlanks::before_small_letters, StrayBlanks::before_unnumbered}) {
    // Names alone between blank lines look like accounts beneath leads.
    bool const accounts = !reading.attempt.read->sorted.names.empty();
    if (reading.attempt.judgement.is_faultless() && !accounts) return;
    auto closer = without_stray_blanks(reading.lines, which);
    if (!closer) return;
    auto other = choose_reading(text, closer->lines);
    auto const ahead = other.judgement.points() - reading.attempt.judgement.points();
    if (!hangs_together(other) || !(reading.attempt.refused || ahead > 0)) continue;
    reading.lines = std::move(closer->lines);
    reading.between.insert(reading.between.end(), closer->taken.begin(), closer->taken.end());
    reading.attempt = std::move(other);
  }
}

// Where text without markup of its own tells by habits where destinations begin.  A line that one
// of them has marked is not the next one's.
void mark_ends_of_text(std::vector<SourceLine>& lines) {
  mark_remarks_behind(lines);
  mark_names_above_remarks(lines);
  mark_counted_ends(lines);
  mark_numbered_ends(lines);
  mark_epithets_before_authors(lines);
  mark_common_names(lines);
  mark_genera_behind_sentences(lines);
  mark_group_names(lines);
  mark_wrapped_lines(lines);
}

}  // namespace

TextReading read_text(DecodedText& text, std::span<LineMarkup const> markup) {
  TextReading reading;
  reading.lines = split_lines(text.text);
  auto& lines = reading.lines;
  bool const declared = declared_layout(lines).has_value();
  if (markup.empty() && !declared && mend_scan(text, reading.findings)) {
    lines = split_lines(text.text);
  }
  for (std::size_t i = 0; i < std::min(lines.size(), markup.size()); ++i) {
    lines[i].markup = markup[i];
  }
  auto& between = reading.between;
  if (!declared) {
    if (markup.empty()) between = take_out_double_spacing(lines);
    take_off_quotation_marks(lines);
    take_off_list_signs(lines);
    take_off_dashes_behind_colons(lines);
    take_off_line_numbers(lines);
    if (markup.empty()) reading.taken_out = take_out_lines_of_pages(lines);
    take_dashes_for_depth(lines);
    tell_spaced_letters(lines);
    tell_dashed_seconds(lines);
    tell_counted_leads(lines);
    tell_lettered_steps(lines);
    if (markup.empty()) tell_serial_labels(lines);
    if (markup.empty()) {
      tell_bis_labels(lines);
      tell_doubled_numbers(lines);
      tell_lost_numbers(lines);
    }
    if (markup.empty()) carry_overrun_pages(lines);
    take_off_level_pointers(lines);
    if (markup.empty()) mark_lost_columns(lines);
    mark_cells_behind(lines);
  }
  auto columns = declared ? std::nullopt : part_columns(lines);
  if (!declared && markup.empty()) {
    mark_ends_of_text(lines);
    // What goes on below is told by the ends of the column's own lines.
    if (columns) mark_ends_of_text(*columns);
  }
  if (!declared) {
    lines = part_run_on_lines(std::move(lines));
    mark_what_begins_no_lead(lines);
  }
  reading.attempt = choose_reading(text, lines);
  auto& attempt = reading.attempt;
  if (columns) {
    // Across the columns words of both make up leads that hang together by accident.
    *columns = part_run_on_lines(*std::move(columns));
    mark_what_begins_no_lead(*columns);
    auto other = choose_reading(text, *columns);
    if (hangs_together(other) && (attempt.refused || !is_clearly_better(attempt, other))) {
      lines = *std::move(columns);
      attempt = std::move(other);
    }
  }
  if (!declared && markup.empty()) {
    if (auto parted = part_result_column(lines)) {
      take_if_as_good(text, *std::move(parted), lines, attempt);
    }
  }
  if (!declared && markup.empty() && !attempt.judgement.is_faultless()) {
    // An outline below lists and addresses: its own leads bear no numbers.
    if (auto marked = with_all_above_title_marked(lines)) {
      auto other = choose_reading(text, *marked);
      bool const better =
          other.judgement.is_faultless() && other.judgement.points() > attempt.judgement.points();
      if (hangs_together(other) &&
          (attempt.refused || better || is_clearly_better(other, attempt))) {
        lines = *std::move(marked);
        attempt = std::move(other);
      }
    }
  }
  if (!declared && markup.empty()) {
    if (auto restored = restore_labels(lines)) {
      auto other = choose_reading(text, restored->lines);
      auto const ahead = other.judgement.points() - attempt.judgement.points();
      bool const parallel = other.grouping.layout == Layout::parallel && hangs_together(other);
      if (parallel && (attempt.refused || ahead > 0 || (ahead == 0 && restored->shown))) {
        lines = std::move(restored->lines);
        attempt = std::move(other);
      }
    }
  }
  if (!declared && markup.empty() && !attempt.judgement.is_faultless()) {
    if (auto led = put_destinations_behind_leads(lines)) {
      auto other = choose_reading(text, *led);
      if (hangs_together(other) &&
          (attempt.refused || other.judgement.points() > attempt.judgement.points())) {
        lines = *std::move(led);
        attempt = std::move(other);
        reading.findings.push_back(column_of_destinations(text.name));
      }
    }
  }
  if (!declared && markup.empty() && !attempt.judgement.is_faultless()) {
    take_if_clearly_better(text, put_names_behind_words(lines), lines, attempt);
  }
  if (!declared) {
    if (auto parted = part_whole_couplets(lines)) {
      mark_what_begins_no_lead(parted->lines);
      // Labels within the paragraphs tell by themselves that leads begin there.
      if (parted->labelled) {
        take_if_as_good(text, std::move(parted->lines), lines, attempt);
      } else {
        take_if_clearly_better(text, std::move(parted->lines), lines, attempt);
      }
    }
  }
  auto const& numbers = attempt.read->numbering.numbers;
  bool const begins_late = !numbers.empty() && numbers.front() > 1;
  if (!declared && (begins_late || !attempt.judgement.is_faultless())) {
    take_if_clearly_better(text, tell_numbers_above(lines), lines, attempt);
  }
  if (!declared && markup.empty() && !attempt.judgement.is_beyond_doubt()) {
    take_if_clearly_better(text, part_paragraphs(lines), lines, attempt);
  }
  if (!declared && (!attempt.judgement.is_faultless() || shows_braces(lines))) {
    if (auto braced = find_braces(lines)) {
      auto other = read_as_planned(text, braced->lines, std::move(braced->found));
      // Every lead that the braces explain better counts; they are no words.
      auto const ahead = other.judgement.points() - attempt.judgement.points();
      if (hangs_together(other) &&
          (attempt.refused || ahead > 0 || (ahead == 0 && braced->signs))) {
        reading.findings.push_back(braces_taken(text.name, braced->couplets));
        lines = std::move(braced->lines);
        attempt = std::move(other);
      }
    }
  }
  if (!declared && markup.empty()) read_without_stray_blanks(text, reading);
  if (!attempt.refused) {
    take_key_before(text, lines, attempt);
    take_keys_behind(text, lines, attempt);
  }
  return reading;
}

}  // namespace keydrift::printed

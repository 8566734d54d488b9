#include "keydrift/formats/printed_key.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/formats/long_lines.hpp"
#include "keydrift/formats/printed_accounts.hpp"
#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_braces.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_columns.hpp"
#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_edition.hpp"
#include "keydrift/formats/printed_emphasis.hpp"
#include "keydrift/formats/printed_exact.hpp"
#include "keydrift/formats/printed_full_width.hpp"
#include "keydrift/formats/printed_keys_behind.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_paragraphs.hpp"
#include "keydrift/formats/printed_repairs.hpp"
#include "keydrift/formats/printed_run_on.hpp"
#include "keydrift/formats/printed_scan_signs.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift {
namespace {

using namespace printed;

constexpr std::size_t kMostLoneShown = 20;  // leads without rivals that a refusal shows

constexpr char const* kExample =
    "write couplets as in \"1. Leaves opposite ..... 2\" and, on the next line, \"– Leaves "
    "alternate ..... Aus bus\"";

Finding refusal(std::string_view file, std::string code, std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = Severity::error;
  finding.file = std::string{file};
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

Finding emphasis_taken_off(std::string_view file, std::size_t passages) {
  auto finding = refusal(file, "emphasis-marks",
                         std::to_string(passages) +
                             " passages between \"*\" or \"_\" were taken for emphasised words; "
                             "the signs were left out",
                         "take the signs out of the text if columns have to be exact");
  finding.severity = Severity::information;
  return finding;
}

Finding full_width_narrowed(std::string_view file, std::size_t characters) {
  auto finding = refusal(
      file, "full-width",
      std::to_string(characters) + " full-width digits, letters and signs were read as plain ones",
      "write plain ones if the words have to be exact");
  finding.severity = Severity::information;
  return finding;
}

void mend_scan(DecodedText& text, std::vector<Finding>& findings) {
  auto const say = [&](std::size_t count, char const* code, char const* message) {
    if (count == 0) return;
    auto finding = refusal(text.name, code, std::to_string(count) + message,
                           "see with --explain whether the lines are taken for what they are");
    finding.severity = Severity::information;
    findings.push_back(std::move(finding));
  };
  say(close_spaced_words(text.text), "spaced-letters",
      " words set with blanks between their letters were read as words");
  say(restore_daggers(text.text), "misread-signs",
      " lines that begin with \"t\", \"tt\" and the like were read as if with daggers");
  say(restore_greek_labels(text.text), "misread-signs",
      " labels such as \"a\" and \"ß\" were read as the Greek letters alpha and beta");
}

std::string quoted_start(std::string_view line) {
  constexpr std::size_t kShown = 60;
  auto const shown = start_of(line, kShown);
  return std::string{shown} + (shown.size() < line.size() ? "…" : "");
}

Finding indentation_lost(std::string_view file, SourceLine const& first) {
  auto finding = refusal(file, "indentation-lost",
                         "no labels and no indentation tell which leads are rivals; behind a lead "
                         "with its destination the innermost lead without rival was taken to be "
                         "answered, or one that begins with the same word",
                         "compare each couplet with the print, or indent the leads as it does");
  finding.severity = Severity::warning;
  finding.place = place_in(first, first.begin, first.begin + first.text.size());
  finding.printed = quoted_start(first.text);
  return finding;
}

Finding column_of_destinations(std::string_view file) {
  auto finding = refusal(file, "destination-column",
                         "destinations stood in a column of their own behind leads without one; "
                         "they were put behind these leads in printed order",
                         "see with --explain whether each lead has its own");
  finding.severity = Severity::warning;
  return finding;
}

Finding braces_taken(std::string_view file, std::size_t couplets) {
  auto finding = refusal(
      file, "braces",
      std::to_string(couplets) +
          " couplets were read from braces at the margin; what stands for the braces was left out",
      "see with --explain whether each lead begins where it should");
  finding.severity = Severity::information;
  return finding;
}

// Two leads of three have a rival and a destination.
bool hangs_together(Attempt const& attempt) {
  return !attempt.refused && attempt.judgement.leads > 0 && attempt.judgement.hangs_together();
}

// The leads that are alone in their couplet, in printed order.
std::vector<std::uint32_t> lone_leads(Grouping const& grouping) {
  std::vector<std::uint32_t> lone;
  for (auto const& couplet : grouping.couplets) {
    if (couplet.member_count == 1) lone.push_back(grouping.members[couplet.first_member]);
  }
  std::sort(lone.begin(), lone.end());
  return lone;
}

// No lead has a rival, or none leads anywhere: says where pairing fails first.
Finding no_couplets(DecodedText const& decoded, std::vector<SourceLine> const& lines,
                    SortedLines const& sorted, Grouping const& grouping, bool leads_nowhere) {
  auto finding = refusal(decoded.name, "no-couplets", "no couplet was found", kExample);
  if (sorted.leads.empty()) {
    auto const first = std::find_if(lines.begin(), lines.end(),
                                    [](SourceLine const& line) { return !line.text.empty(); });
    if (first != lines.end()) {
      finding.place = place_in(*first, first->begin, first->begin + first->text.size());
      finding.printed = quoted_start(first->text);
    }
    finding.message += ": no line begins with a couplet's number";
    return finding;
  }
  auto const lone = leads_nowhere ? std::vector<std::uint32_t>{} : lone_leads(grouping);
  auto const first_lone = lone.empty() ? 0U : lone.front();
  auto const& lead = sorted.leads[first_lone];
  auto const& line = lines[lead.line];
  finding.place = place_in(line, line.begin, line.begin + line.text.size());
  finding.printed = quoted_start(line.text);
  if (lone.empty()) {
    finding.message += leads_nowhere ? ": no lead ends in a couplet's number or a name"
                                     : ": too few leads have a rival and lead somewhere";
    return finding;
  }
  finding.message += ": \"" + std::string{lead.label.printed} + "\" has no second lead";
  if (first_lone + 1 < sorted.leads.size()) {
    auto const& next = sorted.leads[first_lone + 1];
    finding.message += "; line " + std::to_string(lines[next.line].number) + " begins with \"" +
                       std::string{next.label.printed} + "\"";
  }
  for (std::size_t i = 1; i < std::min(lone.size(), kMostLoneShown + 1); ++i) {
    auto const& other = sorted.leads[lone[i]];
    auto const& other_line = lines[other.line];
    finding.related.push_back(
        {place_in(other_line, other_line.begin, other_line.begin + other_line.text.size()),
         "\"" + std::string{other.label.printed} + "\" has no second lead either"});
  }
  return finding;
}

std::string describe_layout(Grouping const& grouping, SortedLines const& sorted,
                            std::vector<ReadLead> const& reads) {
  std::string note;
  switch (grouping.layout) {
    case Layout::parallel:
      note = "parallel layout";
      break;
    case Layout::indented:
      note = "indented layout";
      break;
    case Layout::serial:
      note = "serial layout";
      break;
    case Layout::outline:
      note = "outline, rivals told by their labels";
      break;
    case Layout::by_indentation:
      note = "outline, rivals told by their indentation";
      break;
    case Layout::by_order:
      note = "outline without labels or indentation, rivals told by their order and first words";
      break;
  }
  // The labels of the first couplet with two leads show the numbering.
  for (auto const& couplet : grouping.couplets) {
    if (couplet.member_count < 2) continue;
    auto const shown = [&](std::uint32_t member) {
      auto const& label = sorted.leads[grouping.members[couplet.first_member + member]].label;
      return label.printed.empty() ? std::string{"no label"} : squeeze(label.printed);
    };
    bool const none = shown(0) == shown(1) && shown(0) == "no label";
    if (!none) note += ", leads marked " + shown(0) + " and " + shown(1);
    break;
  }
  std::size_t dots = 0;
  std::size_t cells = 0;
  std::size_t other = 0;
  for (auto const& read : reads) {
    if (read.leaders == LeaderKind::dots) {
      ++dots;
    } else if (read.leaders == LeaderKind::cell) {
      ++cells;
    } else if (read.leaders != LeaderKind::none) {
      ++other;
    }
  }
  if (cells > dots + other) {
    note += ", destinations in cells of their own";
  } else {
    note += dots >= other + cells ? ", destinations after dot leaders"
                                  : ", destinations without dot leaders";
  }
  if (grouping.numbered_here) note += "; the couplets' numbers are not printed but counted";
  if (!sorted.names.empty()) note += "; accounts beneath leads are where they lead to";
  if (grouping.goes_on) note += "; a lead without destination goes on with the next lead";
  if (grouping.parts.size() > 1) note += "; " + std::to_string(grouping.parts.size()) + " keys";
  return note;
}

}  // namespace

Loaded<PrintedReading> read_printed_key(Source source, ReadLimits const& limits,
                                        std::span<LineMarkup const> markup) {
  if (auto refused = too_long_at_sight(source, limits)) {
    return {std::nullopt, {*std::move(refused)}};
  }
  auto decoded = decode_text(source, {.maximum_bytes = limits.bytes});
  Loaded<PrintedReading> loaded;
  loaded.findings = std::move(decoded.findings);
  if (!decoded) return loaded;
  auto& text = *decoded.value;
  if (auto refused = too_long_line(text.name, text.text, limits)) {
    loaded.findings.push_back(std::move(*refused));
    return loaded;
  }
  auto const full_width = markup.empty() ? narrow_full_width(text.text) : 0;
  if (full_width > 0) loaded.findings.push_back(full_width_narrowed(text.name, full_width));
  auto const emphasised = markup.empty() ? take_off_emphasis(text.text) : 0;
  auto lines = split_lines(text.text);
  if (markup.empty() && !declared_layout(lines)) {
    mend_scan(text, loaded.findings);
    lines = split_lines(text.text);
  }
  for (std::size_t i = 0; i < std::min(lines.size(), markup.size()); ++i) {
    lines[i].markup = markup[i];
  }
  bool const declared = declared_layout(lines).has_value();
  if (emphasised > 0) loaded.findings.push_back(emphasis_taken_off(text.name, emphasised));
  std::vector<std::uint32_t> between;  // blank lines of double spacing
  if (!declared) {
    if (markup.empty()) between = take_out_double_spacing(lines);
    take_off_quotation_marks(lines);
    take_off_dashes_behind_colons(lines);
    take_off_line_numbers(lines);
    take_dashes_for_depth(lines);
    if (markup.empty()) mark_lost_columns(lines);
  }
  auto columns = declared ? std::nullopt : part_columns(lines);
  if (!declared) lines = part_run_on_lines(std::move(lines));
  auto attempt = choose_reading(text, lines);
  if (columns) {
    // Across the columns words of both make up leads that hang together by accident.
    *columns = part_run_on_lines(*std::move(columns));
    auto other = choose_reading(text, *columns);
    if (hangs_together(other) && (attempt.refused || !is_clearly_better(attempt, other))) {
      lines = *std::move(columns);
      attempt = std::move(other);
    }
  }
  if (!declared && markup.empty() && !attempt.judgement.is_faultless()) {
    if (auto led = put_destinations_behind_leads(lines)) {
      auto other = choose_reading(text, *led);
      if (hangs_together(other) &&
          (attempt.refused || other.judgement.points() > attempt.judgement.points())) {
        lines = *std::move(led);
        attempt = std::move(other);
        loaded.findings.push_back(column_of_destinations(text.name));
      }
    }
  }
  if (!declared && markup.empty() && !attempt.judgement.is_beyond_doubt()) {
    if (auto parted = part_paragraphs(lines)) {
      auto other = choose_reading(text, *parted);
      if (hangs_together(other) && (attempt.refused || is_clearly_better(other, attempt))) {
        lines = *std::move(parted);
        attempt = std::move(other);
      }
    }
  }
  if (!declared && (!attempt.judgement.is_faultless() || shows_braces(lines))) {
    if (auto braced = find_braces(lines)) {
      auto other = read_as_planned(text, braced->lines, std::move(braced->found));
      // Every lead that the braces explain better counts; they are no words.
      auto const ahead = other.judgement.points() - attempt.judgement.points();
      if (hangs_together(other) &&
          (attempt.refused || ahead > 0 || (ahead == 0 && braced->signs))) {
        loaded.findings.push_back(braces_taken(text.name, braced->couplets));
        lines = std::move(braced->lines);
        attempt = std::move(other);
      }
    }
  }
  if (!attempt.refused) take_keys_behind(text, lines, attempt);
  auto& read = *attempt.read;
  if (!attempt.refused && attempt.grouping.layout == Layout::by_order) {
    loaded.findings.push_back(indentation_lost(text.name, lines[read.sorted.leads.front().line]));
  }
  auto& sorted = read.sorted;
  auto const& grouping = attempt.grouping;
  auto& reads = read.reads;
  loaded.findings.insert(loaded.findings.end(), read.findings.begin(), read.findings.end());
  PrintedReading reading;
  reading.edition = std::move(read.edition);
  KeyText const key{text.name, text.text, lines, read.numbering};
  bool const paired = std::any_of(grouping.couplets.begin(), grouping.couplets.end(),
                                  [](RawCouplet const& one) { return one.member_count >= 2; });
  bool const leads_somewhere = std::any_of(reads.begin(), reads.end(), [](ReadLead const& one) {
    return one.to.form != DestinationForm::none;
  });
  if (!paired || !leads_somewhere || attempt.refused) {
    loaded.findings.push_back(
        no_couplets(text, lines, sorted, grouping, paired && !leads_somewhere));
    sort_findings(loaded.findings);
    return loaded;
  }
  repair_destinations(key, grouping, reads, loaded.findings);
  reading.source.layout_note = describe_layout(grouping, sorted, reads);
  report_text_that_breaks_off(key, sorted, grouping, reads, loaded.findings);
  build_edition(key, sorted, grouping, std::move(reads), reading.edition, loaded.findings);
  for (auto const number : between) {
    sorted.accounts.push_back({number, LineKind::blank, "double spacing"});
  }
  keep_one_account_a_line(sorted.accounts);
  report_skipped_lines(key, sorted.accounts, loaded.findings);
  reading.source.lines = std::move(sorted.accounts);
  sort_findings(loaded.findings);
  reading.source.text = std::move(text.text);
  loaded.value = std::move(reading);
  return loaded;
}

}  // namespace keydrift

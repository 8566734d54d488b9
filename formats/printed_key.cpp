#include "keydrift/formats/printed_key.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/long_lines.hpp"
#include "keydrift/formats/printed_accounts.hpp"
#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_course_reading.hpp"
#include "keydrift/formats/printed_edition.hpp"
#include "keydrift/formats/printed_emphasis.hpp"
#include "keydrift/formats/printed_exact.hpp"
#include "keydrift/formats/printed_full_width.hpp"
#include "keydrift/formats/printed_key_findings.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_links.hpp"
#include "keydrift/formats/printed_prefixed_labels.hpp"
#include "keydrift/formats/printed_repairs.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/formats/printed_text_reading.hpp"

namespace keydrift {
namespace printed {
namespace {

// Everything refers to the text as printed then.
void tell_of_labels(Relabelled const& relabelled, DecodedText const& text, Edition& edition,
                    std::vector<Finding>& findings) {
  refer_to_text_before(relabelled, text.text, edition, findings);
  findings.insert(findings.end(), relabelled.findings.begin(), relabelled.findings.end());
}

}  // namespace
}  // namespace printed

Loaded<PrintedReading> read_printed_key(Source source, ReadLimits const& limits,
                                        std::span<LineMarkup const> markup, ToldNames const& told) {
  using namespace printed;
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
  auto const taken = markup.empty() ? take_off_links(text.text) : LinksTaken{};
  if (taken.links > 0) loaded.findings.push_back(links_taken_off(text.name, taken.links));
  auto const emphasised = markup.empty() ? take_off_emphasis(text.text, taken.saved_page) : 0;
  if (emphasised > 0) loaded.findings.push_back(emphasis_taken_off(text.name, emphasised));
  auto const prefixed = number_prefixed_labels(text.text);
  // The text with its labels put right, if that is what was read.
  std::optional<Relabelled> relabelled;
  auto chosen = read_text(text, markup);
  bool const may_be_damaged =
      markup.empty() && !declared_layout(chosen.lines) &&
      (chosen.attempt.refused || !chosen.attempt.judgement.is_faultless() || hides_labels(chosen));
  if (may_be_damaged) {
    if (auto other = read_by_label_course(text, chosen, relabelled)) {
      chosen = *std::move(other);
      take_back_dashes(*relabelled, chosen);
    }
  }
  auto& lines = chosen.lines;
  auto& attempt = chosen.attempt;
  loaded.findings.insert(loaded.findings.end(), chosen.findings.begin(), chosen.findings.end());
  auto& read = *attempt.read;
  if (!attempt.refused && attempt.grouping.layout == Layout::by_order) {
    loaded.findings.push_back(indentation_lost(text.name, lines[read.sorted.leads.front().line]));
  }
  auto& sorted = read.sorted;
  auto const& grouping = attempt.grouping;
  if (!attempt.refused && !grouping.set_otherwise.empty()) {
    loaded.findings.push_back(indentation_uneven(text.name, lines, sorted, grouping));
  }
  auto& reads = read.reads;
  loaded.findings.insert(loaded.findings.end(), read.findings.begin(), read.findings.end());
  PrintedReading reading;
  reading.edition = std::move(read.edition);
  auto const& read_as = relabelled ? relabelled->text : text;
  KeyText const key{text.name, read_as.text, lines, read.numbering, &told};
  bool const paired = std::any_of(grouping.couplets.begin(), grouping.couplets.end(),
                                  [](RawCouplet const& one) { return one.member_count >= 2; });
  bool const leads_somewhere = std::any_of(reads.begin(), reads.end(), [](ReadLead const& one) {
    return one.to.form != DestinationForm::none;
  });
  if (!paired || !leads_somewhere || attempt.refused) {
    loaded.findings.push_back(
        no_couplets(read_as, lines, sorted, grouping, paired && !leads_somewhere));
    if (relabelled) tell_of_labels(*relabelled, text, reading.edition, loaded.findings);
    sort_findings(loaded.findings);
    return loaded;
  }
  repair_destinations(key, sorted, grouping, reads, loaded.findings,
                      relabelled ? relabelled->findings.size() : 0);
  reading.source.layout_note = describe_layout(
      grouping, sorted, reads, !markup.empty() || key.text.find('\t') != std::string_view::npos);
  report_text_that_breaks_off(key, sorted, grouping, reads, loaded.findings);
  build_edition(key, sorted, grouping, std::move(reads), reading.edition, loaded.findings);
  if (auto invisible = invisible_in_names(key, reading.edition)) {
    loaded.findings.push_back(*std::move(invisible));
  }
  for (auto const number : chosen.between) {
    sorted.accounts.push_back({number, LineKind::blank, "parts nothing"});
  }
  for (auto const& one : chosen.taken_out) sorted.accounts.push_back(one.account);
  keep_one_account_a_line(sorted.accounts);
  report_skipped_lines(key, sorted.accounts, chosen.taken_out, loaded.findings);
  reading.source.lines = std::move(sorted.accounts);
  if (relabelled) tell_of_labels(*relabelled, text, reading.edition, loaded.findings);
  if (prefixed) {
    restore_prefixed_labels(*prefixed, text.text, reading.edition, reading.source.layout_note);
  }
  sort_findings(loaded.findings);
  reading.source.text = std::move(text.text);
  loaded.value = std::move(reading);
  return loaded;
}

}  // namespace keydrift

#include "keydrift/formats/printed_accounts.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/related_places.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kAccountBytesShown = 60;  // bytes of the source that a finding quotes

bool is_skipped(LineAccount const& account) {
  return account.kind == LineKind::skipped || account.kind == LineKind::page_number ||
         account.kind == LineKind::running_head;
}

using tables::counted;

}  // namespace

void keep_one_account_a_line(std::vector<LineAccount>& accounts) {
  auto const same_line = [](LineAccount const& a, LineAccount const& b) {
    return a.line == b.line;
  };
  // Of the columns of a page, the one with the lead tells what a line is.
  auto const weight = [](LineAccount const& account) {
    return account.kind == LineKind::lead ? 0 : account.kind == LineKind::blank ? 2 : 1;
  };
  std::stable_sort(accounts.begin(), accounts.end(),
                   [&weight](LineAccount const& a, LineAccount const& b) {
                     return a.line != b.line ? a.line < b.line : weight(a) < weight(b);
                   });
  accounts.erase(std::unique(accounts.begin(), accounts.end(), same_line), accounts.end());
}

void report_skipped_lines(KeyText const& key, std::vector<LineAccount> const& accounts,
                          std::vector<TakenLine> const& taken_out, std::vector<Finding>& findings) {
  std::size_t pages = 0;
  std::size_t heads = 0;
  std::size_t others = 0;
  Finding finding;
  finding.code = "skipped-lines";
  finding.severity = Severity::information;
  finding.file = std::string{key.name};
  std::vector<SourceLine const*> by_number(accounts.empty() ? 0 : accounts.back().line + 1);
  for (auto const& line : key.lines) {
    if (line.number >= by_number.size()) continue;
    auto const*& found = by_number[line.number];
    if (found == nullptr || found->text.empty()) found = &line;
  }
  for (auto const& taken : taken_out) by_number[taken.line.number] = &taken.line;
  for (auto const& account : accounts) {
    if (!is_skipped(account)) continue;
    ++(account.kind == LineKind::page_number    ? pages
       : account.kind == LineKind::running_head ? heads
                                                : others);
    auto const& skipped = *by_number[account.line];
    auto const place = place_in(skipped, skipped.begin, skipped.begin + skipped.text.size());
    if (pages + heads + others == 1) {
      finding.place = place;
      finding.printed = std::string{start_of(skipped.text, kAccountBytesShown)};
    } else if (finding.related.size() < kMaximumRelatedPlaces) {
      finding.related.push_back({place, "kept nowhere either: " + std::string{account.reason}});
    }
  }
  auto const all = pages + heads + others;
  if (all == 0) return;
  std::string kinds;
  for (auto const& [number, word] :
       {std::pair{pages, "page number"}, std::pair{heads, "running head"},
        std::pair{others, "ruled line"}}) {
    if (number > 0)
      kinds += (kinds.empty() ? "" : ", ") + counted(number, word, std::string{word} + "s");
  }
  finding.message = counted(all, "line was", "lines were") + " kept nowhere: " + kinds;
  finding.remedy = "if one of them belongs to the key, print it on a line with its lead";
  findings.push_back(std::move(finding));
}

void report_text_that_breaks_off(KeyText const& key, SortedLines const& sorted,
                                 Grouping const& grouping, std::vector<ReadLead> const& reads,
                                 std::vector<Finding>& findings) {
  if (reads.empty() || grouping.goes_on) return;
  auto const& read = reads.back();
  if (read.to.form != DestinationForm::none) return;
  // Text behind the lead shows that it was not cut off there.
  auto const last = static_cast<std::uint32_t>(reads.size() - 1);
  bool const followed = std::any_of(sorted.remarks.begin(), sorted.remarks.end(),
                                    [last](Remark const& remark) { return remark.lead == last; });
  if (followed) return;
  auto const& label = sorted.leads.back().label.printed;
  Finding finding;
  finding.code = "text-breaks-off";
  finding.severity = Severity::warning;
  finding.file = std::string{key.name};
  finding.place = read.lead.place;
  finding.printed = std::string{label};
  if (!read.lead.text.empty()) {
    finding.printed +=
        (label.empty() ? "" : " ") + std::string{start_of(read.lead.text, kAccountBytesShown)};
  }
  finding.message =
      std::string{"the text ends within this lead: "} +
      (read.lead.text.empty() ? "its words and destination are" : "its destination is") +
      " missing";
  finding.remedy = "add what the source prints after it";
  findings.push_back(std::move(finding));
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_unread_leads.hpp"

#include <algorithm>
#include <cstddef>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/related_places.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShownOfLine = 80;  // bytes

bool is_beside_leads(LineKind kind) {
  return kind == LineKind::note || kind == LineKind::heading || kind == LineKind::skipped;
}

// "4. Barbels 2 ....... Ausella busa"
bool looks_like_lead(std::string_view text, Numbering const& numbering) {
  if (!has_row_of_dots(text) || starts_note(text)) return false;
  auto const split = split_at_leader(text, numbering);
  return split.kind == LeaderKind::dots && split.words_end > 0 &&
         plausible_destination(text.substr(split.destination_begin), numbering);
}

// "0 Wings absent ... A. busa" and its rival directly above couplet 1: nothing counts from nought.
std::size_t first_beside_leads(KeyText const& key, std::size_t first) {
  auto from = first;
  for (auto i = first; i-- > 0;) {
    auto const& text = key.lines[i].text;
    if (text.empty()) continue;
    auto const label = code_point_at(text, 0).value;
    if (!looks_like_lead(text, key.numbering) || !(label == '0' || is_dash(label))) break;
    from = i;
    if (label == '0' && i > 0 && key.lines[i - 1].text.empty()) break;
  }
  return from;
}

}  // namespace

void report_unread_leads(KeyText const& key, SortedLines const& sorted,
                         std::vector<Finding>& findings) {
  if (sorted.leads.empty()) return;
  std::vector<SourceLine const*> found;
  // Behind a blank line or a heading below the last lead stand lists, tables and references.
  auto end = static_cast<std::size_t>(sorted.leads.back().line);
  auto const all = std::min(key.lines.size(), sorted.accounts.size());
  while (end < all && !key.lines[end].text.empty() &&
         sorted.accounts[end].kind != LineKind::heading) {
    ++end;
  }
  for (auto i = first_beside_leads(key, sorted.leads.front().line); i < end; ++i) {
    auto const& line = key.lines[i];
    bool const told = line.markup.role != LineRole::told_by_text;
    if (!told && is_beside_leads(sorted.accounts[i].kind) &&
        looks_like_lead(line.text, key.numbering)) {
      found.push_back(&line);
    }
  }
  if (found.empty()) return;
  auto const& first = *found.front();
  auto const place = [](SourceLine const& line) {
    return place_in(line, line.begin, line.begin + line.text.size());
  };
  Finding finding;
  finding.code = "unread-lead";
  finding.severity = Severity::warning;
  finding.file = std::string{key.name};
  finding.place = place(first);
  finding.printed = std::string{start_of(first.text, kShownOfLine)};
  finding.message = "this line leads somewhere as leads do, but was read as none";
  if (found.size() > 1) {
    finding.message += std::string{found.size() == 2 ? ", and so was " : ", and so were "} +
                       tables::counted(found.size() - 1, "further line", "further lines");
  }
  bool const nought = first.text.starts_with('0');
  finding.remedy = nought ? "number couplets from 1 on: a couplet 0 is not counted"
                          : "label it as the other leads are, or leave out the row of dots";
  for (std::size_t i = 1; i < std::min(found.size(), kMaximumRelatedPlaces + 1); ++i) {
    finding.related.push_back({place(*found[i]), "was read as no lead either"});
  }
  findings.push_back(std::move(finding));
}

}  // namespace keydrift::printed

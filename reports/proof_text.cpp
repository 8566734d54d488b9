// The proof of one edition, for a terminal.
#include <fmt/format.h>

#include <algorithm>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/wording_proof.hpp"

namespace keydrift {

using namespace reports;
namespace {

// Places named for each kind of remark on style.
constexpr std::size_t kStylePlaces = 12;

// A count and the lines for each kind: who wants the words finds them there or in the JSON.
void set_style(Page& page, std::span<Finding const> findings) {
  bool first = true;
  for (auto const& kind : style_finding_kinds()) {
    std::vector<std::string> lines;
    std::size_t count = 0;
    for (auto const& finding : findings) {
      if (finding.code != kind.code) continue;
      ++count;
      auto line = grouped(finding.place.line);
      if (lines.empty() || lines.back() != line) lines.push_back(std::move(line));
    }
    if (count == 0) continue;
    if (first) page.heading("Style");
    if (!first) page.blank();
    first = false;
    page.leader(fmt::format("{} [{}]", kind.title, kind.code), grouped(count), 2);
    auto const all = lines.size();
    if (all > kStylePlaces) lines.resize(kStylePlaces);
    page.paragraph(
        fmt::format(
            "{} {}{}", all == 1 ? "line" : "lines",
            all > lines.size() ? fmt::format("{}", fmt::join(lines, ", ")) : enumerated(lines),
            all > lines.size() ? fmt::format(" and {} more", grouped(all - lines.size()))
                               : std::string{}),
        4, 2);
  }
}

void set_figures(Page& page, Edition const& edition, EditionProof const& proof) {
  for (auto const& group : proof_figures(edition, proof)) {
    page.heading(group.heading);
    for (auto const& text : group.before) page.paragraph(text, 2);
    if (!group.before.empty() && !group.figures.empty()) page.blank();
    for (auto const& figure : group.figures) {
      page.leader(figure.what, figure.number, 2 + 2 * figure.level);
    }
    if (!group.after.empty()) {
      page.blank();
      page.paragraph(group.after, 2);
    }
  }
}

}  // namespace

std::string proof_text(Edition const& edition, EditionProof const& proof, TerminalStyle style) {
  Page page{style};
  std::span<Finding const> const findings{proof.findings};
  auto const label = short_label(edition);
  page.title(edition.front.title.empty() ? "Proof of " + label
                                         : fmt::format("{} ({})", edition.front.title, label));
  page.paragraph("Proof of " + edition.name);
  if (auto const text = scope_in_words(edition); !text.empty()) page.paragraph(capitalised(text));
  page.blank();
  page.paragraph(finding_counts(findings));
  for (auto const& group : finding_groups()) {
    bool first = true;
    for (auto const* finding : of_severity(findings, group.severity)) {
      if (first) page.heading(group.heading);
      if (!first) page.blank();
      first = false;
      set_finding(page, *finding);
    }
  }
  set_style(page, findings);
  set_figures(page, edition, proof);
  page.blank();
  page.paragraph(sentence(capitalised(coverage_in_words(proof.coverage))), 2);
  return page.take();
}

}  // namespace keydrift

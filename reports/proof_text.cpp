// The proof of one edition, for a terminal.
#include <fmt/format.h>

#include <array>

#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {

using namespace reports;
namespace {

struct Group {
  Severity severity;
  std::string_view heading;
  std::string_view singular;
  std::string_view plural;
};
constexpr std::array kGroups{
    Group{Severity::error, "Errors", "error", "errors"},
    Group{Severity::warning, "Warnings", "warning", "warnings"},
    Group{Severity::information, "For information", "remark for information",
          "remarks for information"},
};

std::size_t count_of(std::span<Finding const> findings, Severity severity) {
  std::size_t count = 0;
  for (auto const& finding : findings) count += finding.severity == severity ? 1 : 0;
  return count;
}

std::string subtitle(Edition const& edition) {
  std::vector<std::string> parts;
  auto const& front = edition.front;
  auto const add = [&parts](std::string_view label, std::string_view text) {
    if (!text.empty()) parts.push_back(fmt::format("{}{}", label, text));
  };
  if (!front.authors.empty()) add("by ", enumerated(front.authors));
  add("region ", front.scope.region);
  add("life stage ", front.scope.life_stage);
  add("sex ", front.scope.sex);
  add("material ", front.scope.material);
  return fmt::format("{}", fmt::join(parts, "; "));
}

void set_numbers(Page& page, KeyNumbers const& n) {
  page.heading("The key in numbers");
  auto const say = [&page](std::string const& text) { page.paragraph(sentence(text), 2); };
  std::string polytomies;
  if (n.polytomies == 1) polytomies = ", one of three or more leads";
  if (n.polytomies > 1) polytomies = fmt::format(", {} of three or more leads", n.polytomies);
  say(fmt::format("{}{}, with {} in all, key out {}", counted(n.couplets, "couplet"), polytomies,
                  counted(n.leads, "lead"), counted(n.terminals, "taxon", "taxa")) +
      (n.terminal_ends > n.terminals
           ? fmt::format(" at {} ends, so that some key out in more than one place",
                         grouped(n.terminal_ends))
           : std::string{}));
  if (n.reticulations > 0) {
    say(fmt::format("Ways run together again {}", n.reticulations == 1
                                                      ? std::string{"once"}
                                                      : grouped(n.reticulations) + " times"));
  }
  page.blank();
  auto const figure = [&page](std::string_view left, std::string const& right,
                              std::size_t indent = 2) { page.leader(left, right, indent); };
  figure("Couplets answered on the shortest way", grouped(n.shortest_route));
  figure("on the longest", grouped(n.longest_route), 4);
  figure("on the average, all taxa being equally frequent", fmt::format("{:.2f}", n.mean_route), 4);
  figure("least average of any key of two leads (Huffman)", fmt::format("{:.2f}", n.huffman_bound),
         4);
  figure("least average by entropy (Shannon), couplets as wide as here",
         fmt::format("{:.2f}", n.entropy_bound), 4);
  figure("Evenness: 1 where every couplet halves its taxa, 0 for a comb",
         fmt::format("{:.2f}", n.evenness));
  figure("Imbalance (Colless): 0 even, 1 a comb", fmt::format("{:.2f}", n.colless));
  figure("Taxa on the smaller side of the first couplet",
         fmt::format("{:.0f} %", 100.0 * n.root_share));
  figure("Couplets that take off a single taxon",
         fmt::format("{} of {}", grouped(n.comb_couplets), grouped(n.couplets)));
  figure("Couplets whose leads rest on one statement each",
         fmt::format("{} of {}", grouped(n.single_statement_couplets), grouped(n.couplets)));
}

}  // namespace

std::string proof_text(Edition const& edition, std::span<Finding const> findings,
                       std::optional<KeyNumbers> const& numbers, Coverage const& coverage,
                       TerminalStyle style) {
  Page page{style};
  auto const label = short_label(edition);
  page.title(edition.front.title.empty() ? "Proof of " + label
                                         : fmt::format("{} ({})", edition.front.title, label));
  page.paragraph("Proof of " + edition.name);
  if (auto const text = subtitle(edition); !text.empty()) page.paragraph(capitalised(text));
  page.blank();
  if (findings.empty()) {
    page.paragraph("Nothing was found wrong.");
  } else {
    std::vector<std::string> counts;
    for (auto const& group : kGroups) {
      auto const count = count_of(findings, group.severity);
      if (count > 0) counts.push_back(counted(count, group.singular, group.plural));
    }
    page.paragraph(sentence(enumerated(counts)));
  }
  for (auto const& group : kGroups) {
    bool first = true;
    for (auto const& finding : findings) {
      if (finding.severity != group.severity) continue;
      if (first) page.heading(group.heading);
      if (!first) page.blank();
      first = false;
      set_finding(page, finding);
    }
  }
  if (numbers) {
    set_numbers(page, *numbers);
  } else {
    page.heading("The key in numbers");
    page.paragraph("There are none: no taxon can be reached from the first couplet.", 2);
  }
  page.blank();
  page.paragraph(sentence(capitalised(coverage_in_words(coverage))), 2);
  return page.take();
}

}  // namespace keydrift

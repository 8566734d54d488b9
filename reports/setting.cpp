#include "keydrift/reports/setting.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "keydrift/reports/wording.hpp"

namespace keydrift::reports {
namespace {

constexpr std::size_t kFindingLabel = 9;

std::string place_in_words(std::string_view file, Place const& place) {
  if (file.empty()) return fmt::format("line {}, column {}", place.line, place.column);
  return fmt::format("{}:{}:{}", file, place.line, place.column);
}

}  // namespace

LeadSetting lead_setting(Edition const& edition, LeadId id, std::size_t label_width,
                         std::span<std::uint32_t const> stressed) {
  auto const& lead = edition[id];
  LeadSetting setting{.label = {{lead_name(edition, id), Face::plain}},
                      .label_width = label_width,
                      .text = {},
                      .destination = {{printed_destination(edition, lead), Face::plain}}};
  std::size_t at = 0;
  for (std::uint32_t i = 0; i < lead.statements.size(); ++i) {
    auto const& statement = lead.statements[i];
    if (std::find(stressed.begin(), stressed.end(), i) == stressed.end()) continue;
    // Statements are verbatim slices of the lead; anything else is set plain.
    if (statement.text_begin < at || statement.text_begin > lead.text.size() ||
        lead.text.compare(statement.text_begin, statement.text.size(), statement.text) != 0) {
      continue;
    }
    setting.text.push_back({lead.text.substr(at, statement.text_begin - at), Face::plain});
    setting.text.push_back({statement.text, Face::underlined});
    at = statement.text_begin + statement.text.size();
  }
  setting.text.push_back({lead.text.substr(at), Face::plain});
  return setting;
}

std::size_t label_width(Edition const& edition, CoupletId couplet) {
  std::size_t width = 0;
  for (std::uint32_t i = 0; i < edition[couplet].leads.size(); ++i) {
    width = std::max(width, display_width(lead_name(edition, LeadId{couplet, i})));
  }
  return width + 2;
}

std::string coverage_in_words(Coverage const& coverage) {
  if (coverage.statements == 0) return "no statements were read";
  std::vector<std::string> parts;
  auto const add = [&](std::size_t count, std::string_view how) {
    if (count > 0) parts.push_back(fmt::format("{} {}", grouped(count), how));
  };
  add(coverage.by_mark, "by marks");
  add(coverage.by_lexicon,
      coverage.drafted ? "by a lexicon drafted from the editions themselves" : "by the lexicon");
  add(coverage.by_number, "as plain numbers");
  auto text = counted(coverage.statements, "statement");
  auto const understood = coverage.statements - std::min(coverage.opaque, coverage.statements);
  if (understood > 0) {
    text += fmt::format(", {} understood ({})", share(understood, coverage.statements),
                        enumerated(parts));
  }
  if (coverage.opaque > 0) {
    text +=
        fmt::format("; {} {} known by {} own words only", grouped(coverage.opaque),
                    coverage.opaque == 1 ? "is" : "are", coverage.opaque == 1 ? "its" : "their");
  }
  return text;
}

void set_finding(Page& page, Finding const& finding) {
  page.paragraph(Words{{place_in_words(finding.file, finding.place), Face::bold},
                       {fmt::format(" [{}]", finding.code), Face::dim}},
                 2, 2);
  if (!finding.printed.empty()) {
    page.item("printed", in_curly_quotes(finding.printed), 4, kFindingLabel);
  }
  page.item("finding", finding.message, 4, kFindingLabel);
  if (!finding.remedy.empty()) page.item("remedy", finding.remedy, 4, kFindingLabel);
  for (auto const& related : finding.related) {
    page.item("see",
              fmt::format("{}: {}", place_in_words(finding.file, related.place), related.message),
              4, kFindingLabel);
  }
}

}  // namespace keydrift::reports

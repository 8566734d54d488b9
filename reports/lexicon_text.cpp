#include "keydrift/reports/lexicon_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "keydrift/reports/json_parts.hpp"
#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/wording_proof.hpp"

namespace keydrift {

using namespace reports;
namespace {

constexpr std::size_t kWorstShown = 12;

std::size_t understood(Coverage const& coverage) {
  return coverage.statements - std::min(coverage.opaque, coverage.statements);
}

void set_coverage(Page& page, std::span<Edition const* const> editions, LexiconUse const& use) {
  page.heading("Statements understood");
  std::size_t all = 0;
  std::size_t known = 0;
  for (std::size_t e = 0; e < editions.size(); ++e) {
    auto const& coverage = use.coverage[e];
    all += coverage.statements;
    known += understood(coverage);
    page.paragraph(
        sentence(fmt::format("{}: {}", short_label(*editions[e]), coverage_in_words(coverage))), 2,
        2);
  }
  if (editions.size() > 1 && all > 0) {
    page.blank();
    page.leader("Together",
                fmt::format("{} of {}  {}", grouped(known), grouped(all), share(known, all)), 2);
  }
}

void set_worst(Page& page, std::span<Edition const* const> editions, LexiconUse const& use) {
  if (use.worst.empty()) return;
  page.heading("Couplets not understood in full, the worst first");
  for (std::size_t i = 0; i < std::min(use.worst.size(), kWorstShown); ++i) {
    auto const& couplet = use.worst[i];
    auto const& edition = *editions[couplet.edition];
    page.leader(
        fmt::format("couplet {} of {}", edition[couplet.couplet].label, short_label(edition)),
        fmt::format("{} of {} not understood", couplet.opaque.size(), couplet.statements), 2);
    for (auto const& statement : couplet.opaque) {
      page.paragraph(fmt::format("{}  {}", lead_name(edition, statement.lead),
                                 reports::in_curly_quotes(statement_words(
                                     edition, StatementId{statement.lead, statement.statement}))),
                     4, 4);
    }
  }
  if (use.worst.size() > kWorstShown) {
    page.paragraph(fmt::format("and {} more", grouped(use.worst.size() - kWorstShown)), 2);
  }
}

}  // namespace

std::string lexicon_use_text(Lexicon const& lexicon, std::span<Edition const* const> editions,
                             LexiconUse const& use, TerminalStyle style) {
  Page page{style};
  page.title("Check of a lexicon");
  page.paragraph(
      fmt::format("{}: {}, {} of which no lead speaks; {}, {} that no lead names.", lexicon.name,
                  counted(use.characters, "character"), grouped(use.unused_characters),
                  counted(use.states, "state"), grouped(use.unused_states)),
      2);
  set_coverage(page, editions, use);
  set_worst(page, editions, use);
  page.heading("Findings");
  page.paragraph(finding_counts(use.findings), 2);
  for (auto const severity : {Severity::error, Severity::warning}) {
    for (auto const* finding : of_severity(use.findings, severity)) {
      page.blank();
      set_finding(page, *finding);
    }
  }
  // What is of no use does no harm: a line each.
  bool first = true;
  for (auto const* finding : of_severity(use.findings, Severity::information)) {
    if (first) page.heading("Of no use for these editions");
    first = false;
    page.paragraph(fmt::format("line {}: {}", finding->place.line, finding->message), 2, 4);
  }
  return page.take();
}

std::string lexicon_use_json(Lexicon const& lexicon, std::span<Edition const* const> editions,
                             LexiconUse const& use) {
  using json_parts::Json;
  auto json = json_parts::begin("lexicon-check");
  json["lexicon"] = lexicon.name;
  json["characters"] = use.characters;
  json["unusedCharacters"] = use.unused_characters;
  json["states"] = use.states;
  json["unusedStates"] = use.unused_states;
  auto list = Json::array();
  for (std::size_t e = 0; e < editions.size(); ++e) {
    Json each;
    each["edition"] = json_parts::heading_of(*editions[e]);
    each["coverage"] = json_parts::of(use.coverage[e]);
    list.push_back(std::move(each));
  }
  json["editions"] = std::move(list);
  auto worst = Json::array();
  for (auto const& couplet : use.worst) {
    auto const& edition = *editions[couplet.edition];
    auto each = json_parts::of(edition, couplet.couplet);
    each["edition"] = couplet.edition;
    each["statements"] = couplet.statements;
    auto opaque = Json::array();
    for (auto const& statement : couplet.opaque) {
      opaque.push_back(json_parts::of(edition, StatementId{statement.lead, statement.statement}));
    }
    each["opaque"] = std::move(opaque);
    worst.push_back(std::move(each));
  }
  json["uncoveredCouplets"] = std::move(worst);
  json["findings"] = json_parts::of(std::span<Finding const>{use.findings});
  return json_parts::finish(json);
}

std::string lexicon_draft_text(Lexicon const& draft, std::span<Edition const* const> editions,
                               LexiconUse const& use, TerminalStyle style) {
  Page page{style};
  page.title("Draft of a lexicon");
  page.paragraph(fmt::format("{} with {}.", counted(draft.characters.size(), "character"),
                             counted(use.states, "state")),
                 2);
  page.heading("States and numbers by confidence");
  struct Level {
    std::string_view name;
    std::string_view meaning;
  };
  constexpr std::array kLevels{
      Level{"high", "contrasted in two couplets or more"},
      Level{"medium", "contrasted in one couplet, or the structure told by place only"},
      Level{"low", "contrasted with nothing: look at these first"}};
  for (auto const& level : kLevels) {
    std::size_t count = 0;
    for (auto const& character : draft.characters) {
      if (character.support.confidence == level.name) ++count;
      for (auto const& state : character.states) {
        if (state.support.confidence == level.name) ++count;
      }
    }
    page.leader(fmt::format("{}: {}", level.name, level.meaning), grouped(count), 2);
  }
  std::size_t open = 0;
  for (auto const& character : draft.characters) {
    for (auto const& state : character.states) open += state.not_told_from.empty() ? 0 : 1;
  }
  page.leader("states not told apart from others: the same thing, or seen together?", grouped(open),
              2);
  set_coverage(page, editions, use);
  set_worst(page, editions, use);
  return page.take();
}

}  // namespace keydrift

#include "keydrift/redetermination/keyout.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "keydrift/redetermination/keying.hpp"
#include "keydrift/redetermination/terminals.hpp"
#include "keydrift/redetermination/walk.hpp"

namespace keydrift {

KeyOut key_out(CompiledKey const& key, Box const& evidence, Reading reading) {
  KeyOut out;
  auto const& space = *key.space;
  auto ways = walk(key, evidence, reading);
  out.complete = ways.complete;
  Box known = evidence;
  if (!space.settle(known)) return out;

  // Visits in the order a person would meet them: from the start, down each followed lead.
  std::map<CoupletId, std::uint64_t> followed;
  for (auto const& visit : ways.followed) followed.emplace(visit.couplet, visit.leads);
  std::set<CoupletId> seen;
  std::vector<std::pair<CoupletId, std::uint32_t>> stack;
  if (followed.contains(key.start)) stack.emplace_back(key.start, 0U);
  while (!stack.empty()) {
    auto const [couplet, level] = stack.back();
    stack.pop_back();
    if (!seen.insert(couplet).second) continue;
    CoupletVisit visit{.couplet = couplet, .level = level, .leads = {}};
    auto const& leads = key.couplets[couplet.index];
    for (auto const& lead : leads) {
      LeadAssessment assessment{.lead = lead.id, .fit = fit_of(key, lead, known), .statements = {}};
      assessment.followed = ((followed[couplet] >> (lead.id.ordinal % 64)) & 1U) != 0;
      for (auto const& statement : lead.statements) {
        assessment.statements.push_back({.statement = statement.ordinal,
                                         .truth = truth_of(statement, space, known),
                                         .known = known_words(statement, space, known)});
      }
      visit.leads.push_back(std::move(assessment));
    }
    for (std::size_t l = leads.size(); l-- > 0;) {
      if (visit.leads[l].followed && leads[l].next) stack.emplace_back(*leads[l].next, level + 1);
    }
    out.visits.push_back(std::move(visit));
  }

  TerminalGatherer gatherer{key};
  std::set<std::string> open;
  for (auto const& leaf : ways.leaves) {
    gatherer.add(leaf.taxon, leaf.route, leaf.through_exception, known, leaf.box);
  }
  out.terminals = std::move(gatherer).take();
  for (auto const& terminal : out.terminals) {
    open.insert(terminal.rests_on.begin(), terminal.rests_on.end());
  }
  if (out.terminals.size() > 1) out.open_characters.assign(open.begin(), open.end());
  // Where a name is possible, completions that strand say no more than that not all is recorded.
  if (!out.terminals.empty()) return out;
  std::set<CoupletId> strands;
  for (auto const& strand : ways.strands) strands.insert(strand.couplet);
  out.strands_at.assign(strands.begin(), strands.end());
  return out;
}

}  // namespace keydrift

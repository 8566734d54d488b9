#include "keydrift/redetermination/terminals.hpp"

#include <algorithm>
#include <utility>

namespace keydrift {
namespace {

// Does the evidence grant every lead of the route without assuming anything?
bool certain(CompiledKey const& key, Route const& route, Box const& evidence) {
  return std::all_of(route.begin(), route.end(), [&](LeadId step) {
    auto const fit = fit_of(key, key.couplets[step.couplet.index][step.ordinal], evidence);
    return fit == LeadFit::fits || fit == LeadFit::through_exception;
  });
}

}  // namespace

void TerminalGatherer::add(TaxonId taxon, Route const& route, bool through_exception,
                           Box const& evidence, Box const& box) {
  auto const& space = *key_.space;
  PossibleTerminal terminal{
      .taxon = taxon, .arrival = Arrival::fits, .route = route, .rests_on = {}};
  if (!certain(key_, route, evidence)) {
    terminal.arrival = Arrival::open;
  } else if (through_exception) {
    terminal.arrival = Arrival::through_exception;
  }
  for (std::uint32_t c = 0; c < space.size(); ++c) {
    CharacterIndex const character{c};
    if (!is_subset(space.part(evidence, character), space.part(box, character))) {
      terminal.rests_on.push_back(space[character].id);
    }
  }
  auto const rank = [](PossibleTerminal const& t) {
    return std::pair{t.arrival, t.rests_on.size()};
  };
  auto const [at, fresh] = best_.try_emplace(taxon, terminal);
  if (!fresh && rank(terminal) < rank(at->second)) at->second = std::move(terminal);
}

std::vector<PossibleTerminal> TerminalGatherer::take() && {
  std::vector<PossibleTerminal> all;
  all.reserve(best_.size());
  for (auto& [taxon, terminal] : best_) all.push_back(std::move(terminal));
  return all;
}

}  // namespace keydrift

#include "keydrift/redetermination/evidence.hpp"

#include <algorithm>
#include <utility>

namespace keydrift {

RecordedEvidence read_evidence(CharacterSpace const& space, Specimen const& specimen) {
  RecordedEvidence evidence;
  evidence.box = space.anything();
  for (std::size_t i = 0; i < specimen.observations.size(); ++i) {
    auto const& observation = specimen.observations[i];
    auto const character = space.find_column(observation.character);
    if (!character) continue;
    auto observed = space.observe(*character, observation.value, observation.unit);
    if (!observed.problem.empty()) {
      evidence.unusable.push_back({i, std::move(observed.problem)});
      continue;
    }
    if (observed.cells.empty()) continue;
    auto const& domain = space[*character];
    auto const cells = space.part(evidence.box, *character);
    if (!domain.condition && has_cell(observed.cells, domain.inapplicable())) {
      // Recorded as inapplicable where nothing says when it applies: taken at its word.
      std::copy(observed.cells.begin(), observed.cells.end(), cells.begin());
    } else {
      intersect(cells, observed.cells);
    }
    evidence.any = true;
    if (is_empty(cells)) evidence.contradictory = true;
  }
  for (auto const& [kind, value] :
       {std::pair{LimitKind::sex, &specimen.sex},
        std::pair{LimitKind::life_stage, &specimen.life_stage},
        std::pair{LimitKind::material, &specimen.reproductive_condition}}) {
    auto const observed = space.observe_limit(kind, *value);
    if (observed.cells.empty()) continue;
    intersect(space.part(evidence.box, *space.limit_character(kind)), observed.cells);
  }
  if (evidence.any && !evidence.contradictory && !space.settle(evidence.box)) {
    evidence.contradictory = true;
  }
  return evidence;
}

void add_to_evidence(RecordedEvidence& evidence, CharacterSpace const& space,
                     CharacterIndex character, Cells const& seen) {
  auto const& domain = space[character];
  auto const cells = space.part(evidence.box, character);
  evidence.any = true;
  if (!domain.condition && has_cell(seen, domain.inapplicable()) &&
      count_cells(cells) == domain.inapplicable()) {
    // Seen to be inapplicable where nothing says when it applies: taken at its word, as in a
    // record.
    std::copy(seen.begin(), seen.end(), cells.begin());
  } else {
    intersect(cells, seen);
  }
  if (is_empty(cells) || !space.settle(evidence.box)) evidence.contradictory = true;
}

}  // namespace keydrift

#include "keydrift/redetermination/evidence.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/redetermination/evidence_memo.hpp"

namespace keydrift {
namespace {

// Words kept; beyond that all are forgotten and understood anew.
constexpr std::size_t kReadingsKept = 20'000;

void add_cells(RecordedEvidence& evidence, CharacterSpace const& space, CharacterIndex character,
               Cells const& observed) {
  auto const& domain = space[character];
  auto const cells = space.part(evidence.box, character);
  if (!domain.condition && has_cell(observed, domain.inapplicable())) {
    // Recorded as inapplicable where nothing says when it applies: taken at its word.
    std::copy(observed.begin(), observed.end(), cells.begin());
  } else {
    intersect(cells, observed);
  }
  evidence.any = true;
  if (is_empty(cells)) evidence.contradictory = true;
}

}  // namespace

EvidenceMemo::Column const& EvidenceMemo::column(Observation const& observation,
                                                 std::size_t place) {
  if (place >= places_.size()) places_.resize(place + 1);
  auto& words = places_[place];
  if (words.character != observation.character || words.unit != observation.unit) {
    words.character = observation.character;
    words.unit = observation.unit;
    words.by_value.clear();
    words.last_column = nullptr;
  }
  if (words.last_column != nullptr && words.last == observation.value) return *words.last_column;
  auto found = words.by_value.find(observation.value);
  if (found == words.by_value.end()) {
    if (words.by_value.size() >= kReadingsKept) words.by_value.clear();
    Column column;
    column.character = space_.find_column(observation.character);
    if (column.character) {
      column.observed = space_.observe(*column.character, observation.value, observation.unit);
    }
    found = words.by_value.emplace(observation.value, std::move(column)).first;
  }
  words.last = observation.value;
  words.last_column = &found->second;
  return found->second;
}

ObservedCells const& EvidenceMemo::limit(LimitKind kind, std::string const& value) {
  key_.assign(1, static_cast<char>('0' + static_cast<int>(kind)));
  key_ += value;
  if (auto const found = limits_.find(key_); found != limits_.end()) return found->second;
  if (limits_.size() >= kReadingsKept) limits_.clear();
  return limits_.emplace(key_, space_.observe_limit(kind, value)).first->second;
}

void EvidenceMemo::read(Specimen const& specimen, RecordedEvidence& evidence) {
  evidence.box = space_.anything();
  evidence.any = false;
  evidence.contradictory = false;
  evidence.unusable.clear();
  for (std::size_t i = 0; i < specimen.observations.size(); ++i) {
    auto const& known = column(specimen.observations[i], i);
    if (!known.character) continue;
    if (!known.observed.problem.empty()) {
      evidence.unusable.push_back({i, known.observed.problem});
      continue;
    }
    if (!known.observed.cells.empty()) {
      add_cells(evidence, space_, *known.character, known.observed.cells);
    }
  }
  for (auto const& [kind, value] :
       {std::pair{LimitKind::sex, &specimen.sex},
        std::pair{LimitKind::life_stage, &specimen.life_stage},
        std::pair{LimitKind::material, &specimen.reproductive_condition}}) {
    auto const& observed = limit(kind, *value);
    if (observed.cells.empty()) continue;
    intersect(space_.part(evidence.box, *space_.limit_character(kind)), observed.cells);
  }
  if (evidence.any && !evidence.contradictory && !space_.settle(evidence.box)) {
    evidence.contradictory = true;
  }
}

RecordedEvidence read_evidence(CharacterSpace const& space, Specimen const& specimen) {
  RecordedEvidence evidence;
  EvidenceMemo{space}.read(specimen, evidence);
  return evidence;
}

void add_to_evidence(RecordedEvidence& evidence, CharacterSpace const& space,
                     CharacterIndex character, Cells const& seen) {
  // Seen to be inapplicable where something else is recorded: the two exclude each other.
  bool const untouched =
      count_cells(space.part(evidence.box, character)) == space[character].inapplicable();
  if (untouched) {
    add_cells(evidence, space, character, seen);
  } else {
    intersect(space.part(evidence.box, character), seen);
    evidence.any = true;
    if (is_empty(space.part(evidence.box, character))) evidence.contradictory = true;
  }
  if (!evidence.contradictory && !space.settle(evidence.box)) evidence.contradictory = true;
}

}  // namespace keydrift

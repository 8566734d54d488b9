// Names that another edition than the old one gave: editions_used.hpp says what follows from that.
#include <set>
#include <utility>

#include "keydrift/redetermination/judge.hpp"
#include "keydrift/redetermination/terminals.hpp"

namespace keydrift {
namespace {

// What the record alone may come out as in the new edition.
Possibilities by_record(CompiledKey const& new_key, Box const& recorded, Reading reading) {
  Possibilities found;
  auto ways = walk(new_key, recorded, reading);
  take_ways_of_record(found, recorded, std::move(ways.leaves));
  found.strands = std::move(ways.strands);
  found.new_followed = std::move(ways.followed);
  found.complete = ways.complete;
  return found;
}

}  // namespace

Verdict Judge::judge_named_by_new(Determination const& determination, Box const& recorded,
                                  bool any_recorded, Reading reading) const {
  auto const& new_key = *sides_.new_key;
  auto const& named = determination.in_new.taxa;
  auto const outcome_of_ways = [&](Walk const& ways) {
    if (!ways.leaves.empty()) return Outcome::stands;
    return any_recorded ? Outcome::doubtful : Outcome::not_keyed;
  };
  auto const ways = walk(new_key, recorded, reading, &named);
  Verdict verdict;
  verdict.outcome = outcome_of_ways(ways);
  for (std::size_t i = 0; i < kReadings; ++i) {
    auto const one = static_cast<Reading>(i);
    verdict.by_reading[i] =
        one == reading ? verdict.outcome : outcome_of_ways(walk(new_key, recorded, one, &named));
  }
  if (verdict.outcome != Outcome::stands) {
    auto const found = by_record(new_key, recorded, reading);
    verdict.why = any_recorded
                      ? "the recorded characters contradict every route of the new edition to the "
                        "name that was given by it"
                      : "the new edition's own leads leave no way to the recorded name";
    verdict.terminals = terminals(found, recorded);
    if (any_recorded) verdict.partly = partial_fits(found, recorded);
    verdict.footing = footing_of(sides_, found);
    verdict.complete = ways.complete && found.complete;
    return verdict;
  }
  verdict.why = "determined with the new edition already";
  verdict.complete = ways.complete;
  // Whoever keyed it by these leads saw what they ask for: the ways are known, not assumed.
  TerminalGatherer gatherer{new_key};
  Possibilities found;
  found.old_named = false;
  std::set<PossiblePair> pairs;
  for (auto const& leaf : ways.leaves) {
    gatherer.add(leaf.taxon, leaf.route, leaf.through_exception, leaf.box, leaf.box);
    pairs.insert({std::nullopt, leaf.taxon});
    found.hypotheses.push_back({.new_taxon = leaf.taxon, .box = leaf.box, .route = leaf.route});
  }
  verdict.terminals = std::move(gatherer).take();
  verdict.pairs.assign(pairs.begin(), pairs.end());
  verdict.footing = footing_of(sides_, found);
  return verdict;
}

Verdict Judge::judge_named_elsewhere(Determination const& determination, Box const& recorded,
                                     bool any_recorded, Reading reading,
                                     std::string const& edition) const {
  auto const with = edition.empty() ? "determined before the old edition was published"
                                    : "determined with " + edition;
  Verdict verdict;
  if (!any_recorded) {
    verdict.why = with + ", and nothing but the name is recorded";
    verdict.by_reading.fill(Outcome::not_keyed);
    return verdict;
  }
  // Only the name can be compared: as the old edition's terminal where it is one, so that the same
  // taxon under a new name is told for that.
  auto const judged = [&](Possibilities& found) {
    std::vector<Hypothesis const*> all;
    for (auto& hypothesis : found.hypotheses) {
      if (determination.in_old.kind == PlacementKind::exact) {
        hypothesis.old_taxon = determination.in_old.taxa.front();
      }
      all.push_back(&hypothesis);
    }
    return outcome_of(determination, all);
  };
  auto found = by_record(*sides_.new_key, recorded, reading);
  bool const unknown_name = determination.named &&
                            determination.in_old.kind == PlacementKind::none &&
                            determination.in_new.kind == PlacementKind::none;
  verdict.complete = found.complete;
  verdict.footing = footing_of(sides_, found);
  verdict.partly = partial_fits(found, recorded);
  verdict.terminals = terminals(found, recorded);
  if (unknown_name) {
    verdict.why = "the recorded name is in neither edition";
    verdict.by_reading.fill(Outcome::not_keyed);
    return verdict;
  }
  verdict.outcome = judged(found);
  for (std::size_t i = 0; i < kReadings; ++i) {
    auto const one = static_cast<Reading>(i);
    if (one == reading) {
      verdict.by_reading[i] = verdict.outcome;
      continue;
    }
    auto otherwise = by_record(*sides_.new_key, recorded, one);
    verdict.by_reading[i] = judged(otherwise);
  }
  std::set<PossiblePair> pairs;
  for (auto const& hypothesis : found.hypotheses) {
    pairs.insert({hypothesis.old_taxon, hypothesis.new_taxon});
  }
  verdict.may_strand = !found.strands.empty();
  Strand const* deepest = nullptr;
  for (auto const& strand : found.strands) {
    if (deepest == nullptr || strand.depth > deepest->depth) deepest = &strand;
  }
  if (verdict.outcome == Outcome::stranded) {
    pairs.insert({std::nullopt, std::nullopt});
    if (deepest != nullptr) verdict.strands_at = deepest->couplet;
  }
  verdict.pairs.assign(pairs.begin(), pairs.end());
  if (verdict.terminals.size() > 1) verdict.questions = questions(determination, found);
  if (verdict.outcome != Outcome::open || verdict.questions.empty()) {
    verdict.why = with + ", and so keyed by its record alone";
  }
  return verdict;
}

}  // namespace keydrift

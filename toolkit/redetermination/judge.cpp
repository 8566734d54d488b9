#include "keydrift/redetermination/judge.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "keydrift/redetermination/terminals.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {
namespace {

bool contains(std::vector<TaxonId> const& taxa, TaxonId taxon) {
  return std::find(taxa.begin(), taxa.end(), taxon) != taxa.end();
}

}  // namespace

void find_partial_fits(CompiledKey const& key, std::vector<Followed> const& followed,
                       Box const& box, bool in_new, std::vector<PartialFit>& out) {
  for (auto const& visit : followed) {
    for (auto const& lead : key.couplets[visit.couplet.index]) {
      if (fit_of(key, lead, box) != LeadFit::conflict) continue;
      PartialFit partial{.in_new = in_new, .lead = lead.id, .holds = {}, .fails = {}};
      for (auto const& statement : lead.statements) {
        auto const truth = truth_of(statement, *key.space, box);
        if (truth == Truth::holds) partial.holds.push_back(statement.ordinal);
        if (truth == Truth::fails) partial.fails.push_back(statement.ordinal);
      }
      out.push_back(std::move(partial));
    }
  }
}

void take_ways_of_record(Possibilities& found, Box const& recorded, std::vector<Leaf>&& ways) {
  found.old_named = false;
  found.implied = false;
  found.old_leaves = {{.taxon = {}, .box = recorded, .route = {}}};
  for (auto& leaf : ways) {
    found.hypotheses.push_back({.old_taxon = std::nullopt,
                                .new_taxon = leaf.taxon,
                                .box = std::move(leaf.box),
                                .route = std::move(leaf.route),
                                .through_exception = leaf.through_exception});
  }
}

Kinship Judge::kinship(Determination const& determination, std::optional<TaxonId> old_taxon,
                       TaxonId new_taxon) const {
  auto const& in_new = determination.in_new;
  auto const old_kind = determination.in_old.kind;
  // A name coarser or finer than the old terminals is judged as the name it is: it stands where
  // the new edition's terminal still belongs to it.
  bool const judged_by_name = determination.named && old_kind != PlacementKind::exact;
  if (judged_by_name && in_new.kind != PlacementKind::none && contains(in_new.taxa, new_taxon)) {
    return Kinship::same;
  }
  if (!old_taxon) {
    return contains(in_new.taxa, new_taxon) ? Kinship::same : Kinship::other;
  }
  auto const* match = sides_.collation->taxa_matching.find(*old_taxon, new_taxon);
  if (match == nullptr) return Kinship::other;
  // A name that the old edition knows as a synonym is judged as it stands on the label.
  auto const labelled_as = [&](std::string const& key) {
    return (determination.key.empty() ? name_key(determination.name) : determination.key) == key;
  };
  bool const as_labelled =
      !determination.named || labelled_as(sides_.old_key->name_keys[old_taxon->index])
          ? match->same_name
          : labelled_as(sides_.new_key->name_keys[new_taxon.index]);
  bool const same_name = as_labelled && !judged_by_name;
  switch (match->relation) {
    case Relation::congruent:
    case Relation::included_in:
      return same_name ? Kinship::same : Kinship::renamed;
    case Relation::includes:
    case Relation::overlaps:
      return same_name ? Kinship::part_same_name : Kinship::part;
    case Relation::disjoint:
      return Kinship::other;
  }
  return Kinship::other;
}

Outcome Judge::outcome_of(Determination const& determination,
                          std::vector<Hypothesis const*> const& hypotheses) const {
  bool same = false;
  bool renamed = false;
  bool other = false;
  bool part_same_name = false;
  std::set<TaxonId> parts;
  for (auto const* hypothesis : hypotheses) {
    switch (kinship(determination, hypothesis->old_taxon, hypothesis->new_taxon)) {
      case Kinship::same:
        same = true;
        break;
      case Kinship::renamed:
        renamed = true;
        break;
      case Kinship::other:
        other = true;
        break;
      case Kinship::part:
        parts.insert(hypothesis->new_taxon);
        break;
      case Kinship::part_same_name:
        part_same_name = true;
        parts.insert(hypothesis->new_taxon);
        break;
    }
  }
  int const kinds = (same ? 1 : 0) + (renamed ? 1 : 0) + (other ? 1 : 0) + (parts.empty() ? 0 : 1);
  if (kinds == 0) return Outcome::stranded;
  if (kinds > 1) return Outcome::open;
  if (same) return Outcome::stands;
  if (renamed) return Outcome::renamed;
  if (other) return Outcome::changes;
  if (parts.size() > 1) return Outcome::narrowed;
  return part_same_name ? Outcome::stands : Outcome::changes;
}

Possibilities Judge::explore(Determination const& determination, Box const& recorded,
                             bool any_recorded, Reading reading) const {
  Possibilities found;
  auto const& old_key = *sides_.old_key;
  if (!determination.in_old.taxa.empty()) {
    auto ways = walk(old_key, recorded, reading, &determination.in_old.taxa);
    found.complete = ways.complete;
    found.implied = true;
    found.old_leaves = std::move(ways.leaves);
    found.old_followed = std::move(ways.followed);
  } else {
    found.old_named = false;
    if (!determination.named && any_recorded) {
      auto ways = walk(old_key, recorded, reading);
      found.complete = ways.complete;
      found.old_leaves = std::move(ways.leaves);
      found.old_followed = std::move(ways.followed);
      found.old_named = !found.old_leaves.empty();
    }
    if (found.old_leaves.empty()) {
      found.old_leaves.push_back({.taxon = {}, .box = recorded, .route = {}});
    }
  }
  std::set<Followed> followed;
  for (std::size_t i = 0; i < found.old_leaves.size(); ++i) {
    auto const& old_leaf = found.old_leaves[i];
    auto ways = walk(*sides_.new_key, old_leaf.box, reading);
    found.complete = found.complete && ways.complete;
    for (auto& leaf : ways.leaves) {
      found.hypotheses.push_back(
          {.old_taxon = found.old_named ? std::optional{old_leaf.taxon} : std::nullopt,
           .new_taxon = leaf.taxon,
           .box = std::move(leaf.box),
           .old_leaf = i,
           .route = std::move(leaf.route),
           .through_exception = leaf.through_exception});
    }
    found.strands.insert(found.strands.end(), ways.strands.begin(), ways.strands.end());
    followed.insert(ways.followed.begin(), ways.followed.end());
  }
  std::map<CoupletId, std::uint64_t> merged;
  for (auto const& visit : followed) merged[visit.couplet] |= visit.leads;
  for (auto const& [couplet, leads] : merged) found.new_followed.push_back({couplet, leads});
  return found;
}

std::vector<PossibleTerminal> Judge::terminals(Possibilities const& possibilities,
                                               Box const& recorded) const {
  TerminalGatherer gatherer{*sides_.new_key};
  for (auto const& hypothesis : possibilities.hypotheses) {
    gatherer.add(
        hypothesis.new_taxon, hypothesis.route, hypothesis.through_exception,
        possibilities.implied ? possibilities.old_leaves[hypothesis.old_leaf].box : recorded,
        hypothesis.box);
  }
  return std::move(gatherer).take();
}

std::vector<PartialFit> Judge::partial_fits(Possibilities const& possibilities,
                                            Box const& recorded) const {
  std::vector<PartialFit> partly;
  find_partial_fits(*sides_.old_key, possibilities.old_followed, recorded, false, partly);
  find_partial_fits(*sides_.new_key, possibilities.new_followed, recorded, true, partly);
  return partly;
}

Outcome Judge::outcome_of(Determination const& determination, Possibilities const& found,
                          bool any_recorded) const {
  if (!determination.in_old.taxa.empty() && found.old_leaves.empty()) {
    return any_recorded ? Outcome::doubtful : Outcome::not_keyed;
  }
  std::vector<Hypothesis const*> all;
  for (auto const& hypothesis : found.hypotheses) all.push_back(&hypothesis);
  return outcome_of(determination, all);
}

Outcome Judge::outcome_under(Reading other, Determination const& determination, Box const& recorded,
                             bool any_recorded, Possibilities const& found, Outcome outcome) const {
  if (outcome == Outcome::not_keyed) return outcome;
  if (found.hypotheses.empty() || outcome == Outcome::doubtful) {
    // The reading at hand has no name to give: the other one may.  A name alone implies its leads
    // as a whole, so there is nothing on which readings could part.
    if (!any_recorded) return outcome;
    return outcome_of(determination, explore(determination, recorded, any_recorded, other),
                      any_recorded);
  }
  // The same completions, read in the other way.  Those that the reading at hand cannot key are
  // left aside here as there, or every open statement would count as a difference.
  std::vector<Hypothesis> otherwise;
  std::set<std::pair<std::optional<TaxonId>, TaxonId>> known;
  for (auto const& hypothesis : found.hypotheses) {
    if (surely_takes(*sides_.new_key, hypothesis.box, hypothesis.route)) {
      if (known.insert({hypothesis.old_taxon, hypothesis.new_taxon}).second) {
        otherwise.push_back({.old_taxon = hypothesis.old_taxon, .new_taxon = hypothesis.new_taxon});
      }
      continue;
    }
    auto ways = walk(*sides_.new_key, hypothesis.box, other, nullptr, {.seek_strands = false});
    for (auto const& leaf : ways.leaves) {
      if (!known.insert({hypothesis.old_taxon, leaf.taxon}).second) continue;
      otherwise.push_back({.old_taxon = hypothesis.old_taxon, .new_taxon = leaf.taxon});
    }
  }
  std::vector<Hypothesis const*> all;
  for (auto const& hypothesis : otherwise) all.push_back(&hypothesis);
  return outcome_of(determination, all);
}

void Judge::take_name(Verdict& verdict, Determination const& determination, TaxonId named) const {
  std::set<PossiblePair> pairs;
  for (auto const& pair : verdict.pairs) {
    if (pair.new_taxon == named) pairs.insert(pair);
  }
  if (pairs.empty()) {
    // No way led there; the person's eyes outrank the leads.
    for (auto const taxon : determination.in_old.taxa) pairs.insert({taxon, named});
    if (pairs.empty()) pairs.insert({std::nullopt, named});
  }
  std::vector<Hypothesis> hypotheses;
  for (auto const& pair : pairs) {
    hypotheses.push_back({.old_taxon = pair.old_taxon, .new_taxon = named});
  }
  std::vector<Hypothesis const*> all;
  for (auto const& hypothesis : hypotheses) all.push_back(&hypothesis);
  verdict.outcome = outcome_of(determination, all);
  verdict.by_reading.fill(verdict.outcome);
  std::erase_if(verdict.terminals,
                [&](PossibleTerminal const& terminal) { return terminal.taxon != named; });
  if (verdict.terminals.empty()) {
    verdict.terminals.push_back(
        {.taxon = named, .arrival = Arrival::open, .route = {}, .rests_on = {}});
  }
  verdict.pairs.assign(pairs.begin(), pairs.end());
  verdict.why = "named by somebody who looked at it";
  verdict.questions.clear();
  verdict.strands_at.reset();
  verdict.may_strand = false;
  if (verdict.outcome == Outcome::stands || verdict.outcome == Outcome::renamed) {
    verdict.parting.reset();
  }
}

Verdict Judge::judge(Determination const& determination, Box const& recorded, bool any_recorded,
                     Reading reading) const {
  Verdict verdict;
  verdict.old_taxa = determination.in_old.taxa;
  auto const unplaced = [](Placement const& placement) {
    return placement.kind == PlacementKind::none;
  };
  bool const unknown_name =
      determination.named && unplaced(determination.in_old) && unplaced(determination.in_new);
  if (!determination.named && !any_recorded) {
    verdict.why = "neither a name nor a usable character is recorded";
    verdict.by_reading.fill(Outcome::not_keyed);
    return verdict;
  }

  auto found = explore(determination, recorded, any_recorded, reading);
  verdict.footing = footing_of(sides_, found);
  verdict.outcome =
      unknown_name ? Outcome::not_keyed : outcome_of(determination, found, any_recorded);
  for (std::size_t i = 0; i < kReadings; ++i) {
    auto const one = static_cast<Reading>(i);
    verdict.by_reading[i] = one == reading ? verdict.outcome
                                           : outcome_under(one, determination, recorded,
                                                           any_recorded, found, verdict.outcome);
  }
  verdict.partly = any_recorded ? partial_fits(found, recorded) : std::vector<PartialFit>{};

  if (verdict.outcome == Outcome::doubtful || (found.old_leaves.empty() && !unknown_name)) {
    verdict.why = verdict.outcome == Outcome::doubtful
                      ? "the recorded characters contradict every route to the recorded name"
                      : "the old edition's own leads leave no way to the recorded name";
    // Where the record alone leads in the new edition is still worth knowing.
    auto ways = walk(*sides_.new_key, recorded, reading);
    take_ways_of_record(found, recorded, std::move(ways.leaves));
    verdict.terminals = terminals(found, recorded);
    verdict.complete = found.complete && ways.complete;
    return verdict;
  }
  if (unknown_name) {
    verdict.why = "the recorded name is in neither edition";
    auto const& how = determination.in_old.how;
    if (!how.empty()) verdict.why += ": " + how;
    if (any_recorded) verdict.terminals = terminals(found, recorded);
    return verdict;
  }

  verdict.complete = found.complete;
  verdict.terminals = terminals(found, recorded);
  std::set<PossiblePair> pairs;
  for (auto const& hypothesis : found.hypotheses) {
    pairs.insert({hypothesis.old_taxon, hypothesis.new_taxon});
  }
  verdict.may_strand = !found.strands.empty();
  if (verdict.outcome == Outcome::stranded) {
    for (auto const& leaf : found.old_leaves) {
      pairs.insert({found.old_named ? std::optional{leaf.taxon} : std::nullopt, std::nullopt});
    }
    // The deepest couplet is where a person would be left without a lead.
    Strand const* deepest = nullptr;
    for (auto const& strand : found.strands) {
      if (deepest == nullptr || strand.depth > deepest->depth) deepest = &strand;
    }
    if (deepest != nullptr) verdict.strands_at = deepest->couplet;
  }
  verdict.pairs.assign(pairs.begin(), pairs.end());
  if (verdict.outcome != Outcome::stands && verdict.outcome != Outcome::renamed) {
    verdict.parting = parting(determination, found, verdict.strands_at, recorded);
  }
  bool const several = verdict.terminals.size() > 1;
  if (verdict.outcome == Outcome::open || verdict.outcome == Outcome::narrowed ||
      (verdict.outcome == Outcome::changes && several) ||
      (verdict.outcome == Outcome::renamed && several)) {
    verdict.questions = questions(determination, found);
  }
  return verdict;
}

}  // namespace keydrift

#include <algorithm>
#include <future>
#include <iterator>
#include <utility>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/ground.hpp"
#include "keydrift/key/proof.hpp"

namespace keydrift {
namespace {

std::vector<Finding> proof(collating::Side const& side, collating::Of of,
                           collating::Exceptions const& exceptions, Lexicon const& lexicon) {
  auto findings = proof_structure(*side.edition, *side.graph);
  auto contrast = proof_contrast(*side.edition, *side.graph,
                                 {.lexicon = &lexicon, .members = [&](std::string_view group) {
                                    return exceptions.members(of, group);
                                  }});
  findings.insert(findings.end(), std::make_move_iterator(contrast.begin()),
                  std::make_move_iterator(contrast.end()));
  sort_findings(findings);
  return findings;
}

bool changes_meaning(TaxonChange const& change) {
  return std::any_of(change.events.begin(), change.events.end(),
                     [](TaxonEvent event) { return event != TaxonEvent::same_route; });
}

}  // namespace

CoupletPair const* Alignment::of_old(CoupletId couplet) const {
  auto const found =
      std::lower_bound(pairs.begin(), pairs.end(), couplet,
                       [](CoupletPair const& pair, CoupletId id) { return pair.old_couplet < id; });
  return found != pairs.end() && found->old_couplet == couplet ? &*found : nullptr;
}

CoupletPair const* Alignment::of_new(CoupletId couplet) const {
  if (!pair_of_new.empty()) {
    if (couplet.index >= pair_of_new.size()) return nullptr;
    auto const pair = pair_of_new[couplet.index];
    return pair < pairs.size() ? &pairs[pair] : nullptr;
  }
  auto const found = std::find_if(pairs.begin(), pairs.end(), [&](CoupletPair const& pair) {
    return pair.new_couplet == couplet;
  });
  return found == pairs.end() ? nullptr : &*found;
}

Collation collate(Edition const& old_edition, KeyGraph const& old_graph, Edition const& new_edition,
                  KeyGraph const& new_graph, Lexicon const& lexicon, ConceptMap const* map,
                  ParentTable const& parents) {
  using namespace collating;
  Collation result;
  result.taxa_matching = match_taxa(old_edition, new_edition, map);
  auto const old_side = make_side(old_edition, old_graph);
  auto const new_side = make_side(new_edition, new_graph);
  Exceptions const exceptions{old_side, new_side, result.taxa_matching, parents};
  // Proofreading the editions takes as long as comparing them, and neither needs the other.
  auto proofs = std::async(std::launch::async, [&] {
    return std::pair{proof(old_side, Of::old_edition, exceptions, lexicon),
                     proof(new_side, Of::new_edition, exceptions, lexicon)};
  });
  Comparison const comparison{old_side, new_side, result.taxa_matching};
  result.alignment = align(comparison);
  auto found = counterparts(comparison, result.alignment);
  auto divisions = find_divisions(comparison, result.alignment, found);
  prefer_upper_parts(comparison, result.alignment, divisions);
  found = counterparts(comparison, result.alignment);
  auto const lead_changes = compare_aligned_leads(old_side, new_side, found, exceptions);
  Ground const ground{.old_side = old_side,
                      .new_side = new_side,
                      .comparison = comparison,
                      .matching = result.taxa_matching,
                      .alignment = result.alignment,
                      .counterparts = found,
                      .exceptions = exceptions,
                      .divisions = divisions,
                      .lead_changes = lead_changes};

  result.couplets = couplet_changes(ground);
  result.taxa = taxon_changes(ground);
  result.roles = role_changes(ground);
  result.characters = character_uses(old_edition, new_edition, lexicon);
  auto [old_findings, new_findings] = proofs.get();
  auto findings = finding_changes(ground, std::move(old_findings), std::move(new_findings));
  result.mended = std::move(findings.mended);
  result.introduced = std::move(findings.introduced);
  result.lasting = std::move(findings.lasting);
  result.scope_changes = scope_changes(old_edition, new_edition);
  result.old_coverage = coverage(old_edition);
  result.new_coverage = coverage(new_edition);
  result.changes_meaning =
      !result.scope_changes.empty() ||
      std::any_of(result.couplets.begin(), result.couplets.end(),
                  [](CoupletChange const& change) { return change.changes_meaning; }) ||
      std::any_of(result.taxa.begin(), result.taxa.end(),
                  [](TaxonChange const& change) { return changes_meaning(change); });
  return result;
}

}  // namespace keydrift

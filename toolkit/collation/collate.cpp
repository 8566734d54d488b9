#include <algorithm>
#include <array>
#include <future>
#include <iterator>
#include <utility>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/collation/ground.hpp"
#include "keydrift/collation/parts_apart.hpp"
#include "keydrift/key/proof.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift {
namespace {

std::vector<Finding> proof_characters(collating::Side const& side, collating::Of of,
                                      collating::Exceptions const& exceptions,
                                      Lexicon const& lexicon) {
  return proof_contrast(*side.edition, *side.graph,
                        {.lexicon = &lexicon, .members = [&](std::string_view group) {
                           return exceptions.members(of, group);
                         }});
}

std::vector<Finding> joined_findings(std::vector<Finding> structure,
                                     std::vector<Finding> contrast) {
  structure.insert(structure.end(), std::make_move_iterator(contrast.begin()),
                   std::make_move_iterator(contrast.end()));
  sort_findings(structure);
  return structure;
}

bool taxon_changes_meaning(TaxonChange const& change) {
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
  return collate(old_edition, old_graph, new_edition, new_graph, lexicon,
                 match_taxa(old_edition, new_edition, map), parents);
}

Collation collate(Edition const& old_edition, KeyGraph const& old_graph, Edition const& new_edition,
                  KeyGraph const& new_graph, Lexicon const& lexicon, TaxonMatching matching,
                  ParentTable const& parents) {
  using namespace collating;
  Collation result;
  result.taxa_matching = std::move(matching);
  std::array<Side, 2> sides;
  std::array<std::vector<SaidLead>, 2> sayings;
  CharacterNumbers numbers;
  side_by_side({
      [&] {
        numbers = CharacterNumbers{old_edition, new_edition};
      },
      [&] { sides[0] = make_side(old_edition, old_graph); },
      [&] { sides[1] = make_side(new_edition, new_graph); },
      [&] { sayings[0] = read_sayings(old_edition); },
      [&] { sayings[1] = read_sayings(new_edition); },
  });
  auto const& old_side = sides[0];
  auto const& new_side = sides[1];
  Exceptions const exceptions{old_side, new_side, result.taxa_matching, parents};

  // What needs no alignment waits for nothing: a core that is free takes the next of these.
  std::array<std::vector<Finding>, 2> structure;
  std::array<std::vector<Finding>, 2> contrast;
  auto aside = std::async(std::launch::async, [&] {
    side_by_side({
        [&] { contrast[0] = proof_characters(old_side, Of::old_edition, exceptions, lexicon); },
        [&] { contrast[1] = proof_characters(new_side, Of::new_edition, exceptions, lexicon); },
        [&] { structure[0] = proof_structure(old_edition, old_graph); },
        [&] { structure[1] = proof_structure(new_edition, new_graph); },
        [&] { result.characters = character_uses(old_edition, new_edition, lexicon); },
        [&] { result.scope_changes = scope_changes(old_edition, new_edition); },
        [&] { result.old_coverage = coverage(old_edition); },
        [&] { result.new_coverage = coverage(new_edition); },
    });
  });

  Comparison const comparison{old_side, new_side, result.taxa_matching, std::move(sayings)};
  result.alignment = align(comparison);
  auto found = counterparts(comparison, result.alignment);
  auto divisions = find_divisions(comparison, result.alignment, found);
  prefer_upper_parts(comparison, result.alignment, divisions);
  find_parts_apart(comparison, result.alignment, divisions);
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
                      .lead_changes = lead_changes,
                      .numbers = numbers};
  side_by_side({
      [&] { result.taxa = taxon_changes(ground); },
      [&] { result.couplets = couplet_changes(ground); },
      [&] { result.roles = role_changes(ground); },
  });
  aside.get();
  auto findings =
      finding_changes(ground, joined_findings(std::move(structure[0]), std::move(contrast[0])),
                      joined_findings(std::move(structure[1]), std::move(contrast[1])));
  result.mended = std::move(findings.mended);
  result.introduced = std::move(findings.introduced);
  result.lasting = std::move(findings.lasting);
  result.changes_meaning =
      !result.scope_changes.empty() ||
      std::any_of(result.couplets.begin(), result.couplets.end(),
                  [](CoupletChange const& change) { return change.changes_meaning; }) ||
      std::any_of(result.taxa.begin(), result.taxa.end(),
                  [](TaxonChange const& change) { return taxon_changes_meaning(change); });
  return result;
}

}  // namespace keydrift

#include "keydrift/collation/ways.hpp"

#include <algorithm>
#include <span>

namespace keydrift::collating {

CharacterNumbers::CharacterNumbers(Edition const& old_edition, Edition const& new_edition) {
  for (auto const* edition : {&old_edition, &new_edition}) {
    for (auto const& couplet : edition->couplets) {
      for (auto const& lead : couplet.leads) {
        for (auto const& statement : lead.statements) {
          for (auto const& atom : statement.any_of) {
            if (number_.try_emplace(atom.character, 0U).second)
              characters_.push_back(atom.character);
          }
        }
      }
    }
  }
  std::sort(characters_.begin(), characters_.end());
  for (std::uint32_t i = 0; i < characters_.size(); ++i) number_[characters_[i]] = i;
}

std::uint32_t CharacterNumbers::number(std::string_view character) const {
  return number_.at(character);
}

Ways::Ways(Side const& side, Of of, Exceptions const& exceptions, CharacterNumbers const& numbers)
    : side_{side},
      excepting_(side.edition->taxa.size()),
      couplet_seen_(side.couplet_count(), 0),
      character_seen_(numbers.size(), 0) {
  first_character_.reserve(side.leads.size() + 1);
  for (std::uint32_t row = 0; row < side.leads.size(); ++row) {
    first_character_.push_back(static_cast<std::uint32_t>(characters_.size()));
    for (auto const& statement : side.lead(row).statements) {
      if (statement.strength == Strength::firm || statement.strength == Strength::excepted) {
        for (auto const& atom : statement.any_of) {
          characters_.push_back(numbers.number(atom.character));
        }
      }
      if (statement.strength != Strength::excepted) continue;
      for (auto const& group : statement.except) {
        for (auto const taxon : exceptions.members(of, group)) {
          auto& rows = excepting_[taxon.index];
          if (rows.empty() || rows.back() != row) rows.push_back(row);
        }
      }
    }
  }
  first_character_.push_back(static_cast<std::uint32_t>(characters_.size()));
}

// Visits the row of every lead on a way from the start to the taxon, leads of `without` left out.
template <class Visit>
void Ways::walk_back(TaxonId taxon, std::vector<std::uint32_t> const& without, Visit const& visit) {
  ++stamp_;
  auto const take = [&](std::span<LeadId const> leads) {
    for (auto const lead : leads) {
      auto const row = side_.row(lead);
      if (!without.empty() && std::binary_search(without.begin(), without.end(), row)) continue;
      if (!side_.graph->reachable(lead.couplet)) continue;
      visit(row);
      if (couplet_seen_[lead.couplet.index] == stamp_) continue;
      couplet_seen_[lead.couplet.index] = stamp_;
      waiting_.push_back(lead.couplet.index);
    }
  };
  take(side_.graph->leads_to(taxon));
  while (!waiting_.empty()) {
    auto const couplet = waiting_.back();
    waiting_.pop_back();
    take(side_.graph->leads_to(CoupletId{couplet}));
  }
}

std::vector<std::uint32_t> Ways::characters(TaxonId taxon) {
  std::vector<std::uint32_t> found;
  walk_back(taxon, {}, [&](std::uint32_t row) {
    for (auto const character : characters_of(row)) {
      auto& seen = character_seen_[character];
      if (seen == stamp_) continue;
      seen = stamp_;
      found.push_back(character);
    }
  });
  return found;
}

bool Ways::only_by_exception(TaxonId taxon) {
  auto const& rows = excepting_[taxon.index];
  if (rows.empty() || side_.edition->parts.empty()) return false;
  auto const start = side_.edition->parts.front().start;
  auto const reaches_start = [&](std::vector<std::uint32_t> const& without) {
    bool found = false;
    walk_back(taxon, without,
              [&](std::uint32_t row) { found = found || side_.leads[row].couplet == start; });
    return found;
  };
  return reaches_start({}) && !reaches_start(rows);
}

}  // namespace keydrift::collating

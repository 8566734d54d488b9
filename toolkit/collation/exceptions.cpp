#include "keydrift/collation/exceptions.hpp"

#include <algorithm>

#include "keydrift/taxa/names.hpp"

namespace keydrift::collating {

Exceptions::Exceptions(Side const& old_side, Side const& new_side, TaxonMatching const& matching,
                       ParentTable const& parents)
    : editions_{old_side.edition, new_side.edition} {
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    auto const& edition = *(of == Of::old_edition ? old_side : new_side).edition;
    auto& members = members_[index_of(of)];
    for (auto const& couplet : edition.couplets) {
      for (auto const& lead : couplet.leads) {
        for (auto const& statement : lead.statements) {
          for (auto const& group : statement.except) members.try_emplace(group);
        }
      }
    }
    counterparts_[index_of(of)].resize(edition.taxa.size());
    if (members.empty()) continue;
    NameIndex const index{edition, parents};
    for (auto& [group, taxa] : members) {
      taxa = index.members(group);
      std::sort(taxa.begin(), taxa.end());
    }
  }
  for (auto const& match : matching.matches) {
    if (match.relation == Relation::disjoint) continue;
    counterparts_[0][match.old_taxon.index].push_back(match.new_taxon);
    counterparts_[1][match.new_taxon.index].push_back(match.old_taxon);
  }
}

std::vector<TaxonId> const& Exceptions::members(Of of, std::string_view group) const {
  auto const& members = members_[index_of(of)];
  auto const found = members.find(group);
  return found == members.end() ? nobody_ : found->second;
}

std::vector<std::string> Exceptions::not_covered(Of of, std::vector<std::string> const& named,
                                                 std::vector<std::string> const& others) const {
  auto const other = of == Of::old_edition ? Of::new_edition : Of::old_edition;
  std::vector<TaxonId> covered;
  for (auto const& group : others) {
    auto const& taxa = members(other, group);
    covered.insert(covered.end(), taxa.begin(), taxa.end());
  }
  std::sort(covered.begin(), covered.end());
  std::vector<std::string> result;
  for (auto const& group : named) {
    auto const key = name_key(group);
    if (std::any_of(others.begin(), others.end(),
                    [&](std::string const& name) { return name_key(name) == key; })) {
      continue;
    }
    // By their members: "except in Aus" and "except in A. bus and A. cus" may be the same.  A
    // member that the other edition lacks cannot be asked about.
    bool any = false;
    std::vector<TaxonId> left;
    for (auto const taxon : members(of, group)) {
      auto const& same = counterparts_[index_of(of)][taxon.index];
      if (same.empty()) continue;
      if (std::any_of(same.begin(), same.end(), [&](TaxonId t) {
            return std::binary_search(covered.begin(), covered.end(), t);
          })) {
        any = true;
      } else {
        left.push_back(taxon);
      }
    }
    if (any && left.empty()) continue;
    if (!any) {
      result.push_back(group);
      continue;
    }
    // Of a group that is covered in part the members that are not.
    auto const& edition = *editions_[index_of(of)];
    for (auto const taxon : left) {
      if (std::find(result.begin(), result.end(), edition[taxon].name) == result.end()) {
        result.push_back(edition[taxon].name);
      }
    }
  }
  return result;
}

}  // namespace keydrift::collating

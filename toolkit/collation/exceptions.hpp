#pragma once
// The groups that exceptions name, resolved to terminals, and compared across editions.

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/collation/sides.hpp"
#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift::collating {

class Exceptions {
 public:
  // Resolves every group named in either edition, once.  Borrows the editions.
  Exceptions(Side const& old_side, Side const& new_side, TaxonMatching const& matching,
             ParentTable const& parents);

  // Terminals of the edition that belong to the group, ascending; empty when it names none.
  [[nodiscard]] std::vector<TaxonId> const& members(Of of, std::string_view group) const;

  // Groups of `named` (in edition `of`) that the other edition's `others` do not cover: neither by
  // name nor by the counterparts of all their members.  Of a group that is covered in part the
  // members that are not, by name.
  [[nodiscard]] std::vector<std::string> not_covered(Of of, std::vector<std::string> const& named,
                                                     std::vector<std::string> const& others) const;

 private:
  using Members = std::map<std::string, std::vector<TaxonId>, std::less<>>;
  std::array<Edition const*, 2> editions_;
  std::array<Members, 2> members_;
  std::array<std::vector<std::vector<TaxonId>>, 2> counterparts_;  // by taxon, ascending
  std::vector<TaxonId> nobody_;
};

}  // namespace keydrift::collating

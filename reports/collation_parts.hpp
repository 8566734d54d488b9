#pragma once
// The sections of collation_text(), one source each.  Internal to reports.

#include <string>
#include <vector>

#include "keydrift/collation/collation.hpp"
#include "keydrift/reports/page.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift::reports {

// What every section needs.  Borrows everything.
struct CollationView {
  Edition const& old_edition;
  Edition const& new_edition;
  Collation const& collation;
  EditionNames called;
  CharacterLabels label;
};

// Role changes by the couplet they stand in, as indexes into Collation::roles.
struct RolesByCouplet {
  std::vector<std::vector<std::size_t>> of_old;
  std::vector<std::vector<std::size_t>> of_new;
  explicit RolesByCouplet(CollationView const& view);
};

// The names of the two editions over the two columns.
void set_column_heads(Page& page, CollationView const& view);

void set_roles(Page& page, CollationView const& view);
void set_taxa(Page& page, CollationView const& view);
void set_couplets(Page& page, CollationView const& view, bool every_couplet);

// Does the taxon key out by other couplets, elsewhere, or in another extent (so that it deserves a
// block of its own)?
[[nodiscard]] bool changes_couplet(TaxonChange const& taxon);
[[nodiscard]] bool has_event(TaxonChange const& taxon, TaxonEvent event);
[[nodiscard]] bool has_event(CoupletChange const& couplet, CoupletEvent event);
// Different old taxa that were divided; different new taxa that unite old ones.  A taxon has a row
// for each of its counterparts.
[[nodiscard]] std::size_t taxa_divided(Collation const& collation);
[[nodiscard]] std::size_t taxa_united(Collation const& collation);

}  // namespace keydrift::reports

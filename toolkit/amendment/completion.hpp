#pragma once
// From a draft to a complete edition.  Inner header of the folder.

#include <cstdint>
#include <vector>

#include "keydrift/amendment/application.hpp"
#include "keydrift/amendment/draft.hpp"

namespace keydrift::amending {

// Names of the couplets that lead to each couplet, told anew where the edition prints them and the
// leads to it are not those of `original`.  Couplets whose own back-references a piece prints keep
// them.  Records a deed for each couplet that nothing else was done to.
void tell_back_references(Draft& draft, Edition const& original, std::size_t piece,
                          std::vector<OpenDeed>& deeds);

// The draft's couplets in printed order without those removed; taxa in order of first naming.
// `rows`: by row of the draft, the couplet's id in the result.
struct Completed {
  Edition edition;
  std::vector<CoupletId> rows;
};
[[nodiscard]] Completed complete(Draft&& draft);

// Places that are of a piece become the end of the couplet before, in the edition amended.
void settle_places(Edition& edition);

}  // namespace keydrift::amending

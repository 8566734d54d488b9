#pragma once
// In what a key that was read back differs from the one that was written.  Inner header of formats.

#include <cstddef>
#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

struct Difference {
  std::string what;     // "couplet \"7\"", "the title", "the taxon \"Aus bus\""
  std::string happens;  // "lead 7b would lead to couplet \"8\" instead of couplet \"9\""
};

// The first `most` differences in content (same_content), each thing once, in printed order.
// Empty iff the contents are the same.
[[nodiscard]] std::vector<Difference> differences(Edition const& wanted, Edition const& got,
                                                  std::size_t most);

}  // namespace keydrift::printed

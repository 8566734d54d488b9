#pragma once
// Which of the known names somebody may have meant.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/near.hpp"

namespace keydrift::reading {

// At most three of the candidates, nearest first, ties in alphabetical order.  Near means: the same
// after folding and dropping hyphens and blanks, at most a third of the letters mistyped (swapped
// neighbours count once), or one contained in the other.
[[nodiscard]] std::vector<std::string> near_names(std::string_view name,
                                                  std::vector<std::string> const& candidates);

}  // namespace keydrift::reading

#pragma once
// The words for sexes and life stages as collections write them.

#include <string>
#include <string_view>

#include "keydrift/key/statement.hpp"

namespace keydrift {

// "male", "female", "adult", … for the usual ways to write them; other words normalised; "" for
// "unknown", "undetermined" and the like.
[[nodiscard]] std::string canonical_limit(LimitKind kind, std::string_view value);

// Does the statement hold measurements of both sexes, "(♂: 3–4 mm; ♀: 5–6 mm)", one beside the
// other?  Then its numbers are no range of either.
[[nodiscard]] bool measures_both_sexes(Statement const& statement);

}  // namespace keydrift

#pragma once
// The words for sexes and life stages as collections write them.

#include <string>
#include <string_view>

#include "keydrift/key/statement.hpp"

namespace keydrift {

// "male", "female", "adult", … for the usual ways to write them; other words normalised; "" for
// "unknown", "undetermined" and the like.
[[nodiscard]] std::string canonical_limit(LimitKind kind, std::string_view value);

}  // namespace keydrift

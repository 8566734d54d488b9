#pragma once
// An amendment in short, to be compared as text.

#include <string>
#include <string_view>

#include "keydrift/key/amendment.hpp"

namespace keydrift::test {

// One line for each instruction: "replace 12-14: 12 13", "insert after 15: 15a", "remove 9",
// "by number: 7a", "new by number: 8", "renumber 8-13 as 9-14", "add to 5: [2 leads]", "redirect
// 7b: 15a", "change 8b: {9} {10}".
[[nodiscard]] std::string in_short(Amendment const& amendment);
// Reads the text and tells it in short; findings of severity warning or worse follow, a line each.
[[nodiscard]] std::string amendment_in_short(std::string_view text);

}  // namespace keydrift::test

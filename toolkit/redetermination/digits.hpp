#pragma once
// Digits of numbers and years as people write them.

namespace keydrift {

[[nodiscard]] inline bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace keydrift

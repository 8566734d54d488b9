#pragma once
// Back-references with letters of which scanning made others, "7b (lb). Wings".  Inner header of
// formats.

#include <cstddef>
#include <string>

namespace keydrift::printed {

// "7b (lb). Wings" as "7b (1b). Wings" where other labels name leads so, and one of
// them is or names 1b.  Returns how many.
std::size_t restore_lettered_references(std::string& text);

}  // namespace keydrift::printed

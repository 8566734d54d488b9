#pragma once
// Months in Roman figures, as floras print the time of flowering.  Inner header of formats.

#include <string_view>

namespace keydrift::printed {

// "VI", "V–VII", "XI/XII": months, and no author or genus.  "V." is an initial.
[[nodiscard]] bool is_months(std::string_view word);

}  // namespace keydrift::printed

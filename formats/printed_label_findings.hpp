#pragma once
// What is said of labels that were read in spite of a misprint.  Inner header of formats.

#include <string_view>

#include "keydrift/formats/printed_label.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// `label`: as it was read.  `told`: by the couplets around it, whatever is printed.
[[nodiscard]] Finding label_misprinted(std::string_view file, Lead const& lead, Label const& label,
                                       bool told);

}  // namespace keydrift::printed

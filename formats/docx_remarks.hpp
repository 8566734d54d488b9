#pragma once
// What is said about a manuscript besides its text.  Inner header of formats.

#include <string_view>
#include <vector>

#include "keydrift/formats/docx_lines.hpp"
#include "keydrift/formats/docx_package.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::docx {

// One finding for each kind of mark, further places in `related`; the codes are those of docx.hpp.
[[nodiscard]] std::vector<Finding> remarks_on(std::string_view file, Package const& package,
                                              std::vector<Marked> const& marks,
                                              Numbering const& numbering);

}  // namespace keydrift::docx

#pragma once
// Lines that title the account of a species behind a key whose leads name it.  Inner header of
// formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// By line: "1. A. bus Roe. Herbs …" behind a blank line, "1. Aus bus." between blank lines, "1.
// bus, Roe. Lvs. …" where a lead above leads to bus.  No lead begins there.
[[nodiscard]] std::vector<bool> find_account_titles(std::vector<SourceLine> const& lines,
                                                    Numbering const& numbering);

}  // namespace keydrift::printed

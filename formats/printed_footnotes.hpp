#pragma once
// Footnotes at the foot of a page within a key.  Inner header of formats.

#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

enum class FootnoteLine : std::uint8_t { none, first, further };

// By line: "1 Female unknown." or "* Female unknown." between the leads of a key, or within one: a
// sentence without a destination behind a number that labels no leads, or whose couplet is
// complete, or behind a star where other signs mark second leads.  None in keys whose leads bear no
// destinations as a rule.
[[nodiscard]] std::vector<FootnoteLine> find_footnotes(std::vector<SourceLine> const& lines,
                                                       Numbering const& numbering,
                                                       LinesAhead const& ahead);

}  // namespace keydrift::printed

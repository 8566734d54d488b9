#pragma once
// What an amendment did to an edition, for a terminal or a printer.

#include <span>
#include <string>
#include <utility>

#include "keydrift/amendment/amend.hpp"
#include "keydrift/key/amendment.hpp"
#include "keydrift/reports/page.hpp"

namespace keydrift {

struct AmendmentTextOptions {
  TerminalStyle style;
  std::string written;  // where the result went; empty: nowhere
  // Old and new numbers, where the couplets were counted anew; the report has the old ones.
  std::span<std::pair<std::string, std::string> const> renumbered{};
};

// Summary; what was done, couplet by couplet, with the words before and after; what could not be
// placed, and remarks; faults that the pieces make and mend.  `reading`: findings of the readers of
// the pieces.
[[nodiscard]] std::string amendment_text(Edition const& edition, std::span<Amendment const> pieces,
                                         Amended const& amended, std::span<Finding const> reading,
                                         AmendmentTextOptions const& options);

}  // namespace keydrift

#pragma once
// Parts that several terminal reports set alike.  Internal to reports.

#include <span>
#include <string>
#include <vector>

#include "keydrift/characters/reading.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/reports/page.hpp"

namespace keydrift::reports {

// A lead as printed: its name, its words, its destination.  Statements whose ordinals are in
// `stressed` are underlined.  `label_width` as in LeadSetting.
[[nodiscard]] LeadSetting lead_setting(Edition const& edition, LeadId lead, std::size_t label_width,
                                       std::span<std::uint32_t const> stressed = {});

// Cells that the widest lead name of the couplet takes, and two blanks.
[[nodiscard]] std::size_t label_width(Edition const& edition, CoupletId couplet);

// "31 statements read: 20 by the lexicon, …; 3 (9.7 %) were not understood …".
[[nodiscard]] std::string coverage_in_words(Coverage const& coverage);

// file:line:column, the printed words, message and remedy, and further places.
void set_finding(Page& page, Finding const& finding);

}  // namespace keydrift::reports

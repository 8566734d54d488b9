#pragma once
// Lines of tables, lists and captions around a key that were taken for leads.  Inner header of
// formats.

#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_attempts.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

// Leads behind the last destination.  One that answers a single lead, or whose couplet some lead
// leads to, was cut off from its end; all others answer nothing.  And the items of lists before,
// between and behind keys: no rivals, and none leads anywhere.  Ascending.
[[nodiscard]] std::vector<std::uint32_t> strays_around(Attempt const& attempt,
                                                       std::vector<SourceLine> const& lines);

// The same of an outline, whose labels name no couplets that are led to: those behind the last
// destination of which no lead leads anywhere, with text between that belongs to no lead.
// Ascending.
[[nodiscard]] std::vector<std::uint32_t> strays_behind_text(Attempt const& attempt,
                                                            std::vector<SourceLine> const& lines);

// Takes the starts out of the plan whose lines are no leads.
void take_out(LeadPlan& plan, std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed

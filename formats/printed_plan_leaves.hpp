#pragma once
// Leads without labels beneath labelled ones.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

// "                    3. bus, Roe, p. 218." beneath "a. Wings clear.": a species with its number,
// set far to the right of where the line before begins, for the lead had no room for it.
[[nodiscard]] bool is_name_set_apart(SourceLine const& line, std::uint32_t indent_before);

// "1. bus, p. 170." beneath "… ventrals 201-214 ..": the line before leads to it.
[[nodiscard]] bool answers_leaders(std::vector<SourceLine> const& lines, std::size_t i);

// Puts the leads without labels that stand beneath those of the plan into it.  False where there
// are too few of them to be a habit; the plan is as it was then.
[[nodiscard]] bool add_leaves(std::vector<SourceLine> const& lines, Numbering const& numbering,
                              LeadPlan& plan);

}  // namespace keydrift::printed

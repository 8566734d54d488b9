#pragma once
// Inline marks: {character: state}, {character: state | state}, {character: not state},
// {character: 3-5 mm}.

#include <optional>
#include <string_view>

#include "keydrift/characters/reading/lead_reader.hpp"

namespace keydrift::reading {

// `mark` with its braces, which begins at byte `at` of the lead.  nullopt and a complaint when the
// mark cannot be used.  Without a lexicon a mark defines its character: the id is its normalised
// name with hyphens.
[[nodiscard]] std::optional<Atom> read_mark(std::string_view mark, std::uint32_t at,
                                            std::string_view language, ReadingRules const& rules,
                                            std::vector<Complaint>& complaints);

// Lets every mark of the text take the place of the draft that it stands in.
void apply_marks(LeadText const& text, ReadingRules const& rules, LeadReading& reading);

}  // namespace keydrift::reading

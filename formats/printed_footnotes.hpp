#pragma once
// Footnotes at the foot of a page within a key.  Inner header of formats.

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

enum class FootnoteLine : std::uint8_t { none, first, further };

// By line: "1 Female unknown." or "* Female unknown." between the leads of a key, or within one: a
// sentence without a destination behind a number that labels no leads, or whose couplet is
// complete, or behind a star where other signs mark second leads.  None in keys whose leads bear no
// destinations as a rule.
[[nodiscard]] std::vector<FootnoteLine> find_footnotes(std::vector<SourceLine> const& lines,
                                                       Numbering const& numbering,
                                                       LinesAhead const& ahead);

// The sign that the text begins with as a footnote does: "*" of "* Female unknown.", "2" of "2)
// Known from one specimen."  Empty without one.
[[nodiscard]] std::string_view sign_of_footnote(std::string_view text);

// Makes the footnote a note of the one lead among `leads` whose words ("Scales cycloid*") or name
// ("Aus bus²") bear its sign, which is taken off.  False where none does, or several do: a star
// may stand for what many names have in common.
[[nodiscard]] bool put_footnote_to_lead(Edition& edition, std::span<LeadId const> leads,
                                        std::string_view text);

}  // namespace keydrift::printed

#pragma once
// Genera whose abbreviations the text tells.  Inner header of formats.

#include <string>
#include <unordered_map>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Genera by their abbreviations without the full stop, of "abbreviated as follows: An. = Ausanops;
// Cs. = Busaculista" and "Ausanops (An.), Busaculista (Cs.)"; a pair may go over the end of a line.
// The first genus that an abbreviation is told for counts.
[[nodiscard]] std::unordered_map<std::string, std::string> told_genera(
    std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed

#pragma once
// Genera that end leads behind a full stop and a blank, where a file does so again and again. Inner
// header of formats.

#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Marks where the genera begin that lines end in, "… zweigliederig. Ausella Roe." and, behind the
// sentence on the line above, "Ausella Roe.": either authors come back behind other genera, or the
// genera stand alone and none of them twice, in a text without leaders.
void mark_genera_behind_sentences(std::vector<SourceLine>& lines);

}  // namespace keydrift::printed

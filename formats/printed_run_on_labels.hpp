#pragma once
// Leads that run on in a paragraph, told by their labels alone.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Where leads begin in `text`, the first at 0 apart: behind the end of a sentence, with a label
// that carries the count on or answers one before it, and a capital.  Empty unless there are
// enough of them for the labels to be beyond doubt.
[[nodiscard]] std::vector<std::size_t> label_cuts(std::string_view text);

// Where leads begin in a paragraph that prints neither leaders nor full stops: "1 Wings clear 2 –
// Wings dark Aus bus 2 Legs pale …", every label behind what a lead may lead to.  The first one is
// where couplet 1 begins, a title before it or not, or at 0 the couplet behind `counted`: that of
// the paragraph cut last, 0 at first; set to the last one of this paragraph.
[[nodiscard]] std::vector<std::size_t> count_cuts(std::string_view text, std::uint32_t& counted);

// Ends the text in a couplet's number, "IO." for 10 too, or in a name?
[[nodiscard]] bool leads_somewhere(std::string_view text);

// Keys that print both leads of a couplet in one line: "1. Wings clear 2. – Wings dark A. bus.".
// For each line where its second lead begins, 0 where none does; empty where that is not the habit.
[[nodiscard]] std::vector<std::size_t> rival_cuts(std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed

#pragma once
// The reading of a text with its damaged labels put right.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_text_reading.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// A text with its labels put right, as it was read.
struct Relabelled {
  DecodedText text;
  std::vector<Finding> findings;  // one for each of these labels, in the text before
  // Numbers of the lines that got a dash only to be read: the key prints none for second leads.
  std::set<std::uint32_t> dashes;
};

// A lead begins with signs that may be what is left of a label, or a line among the leads does that
// is none:
// "'b. Wings", "c : Legs".
[[nodiscard]] bool hides_labels(TextReading const& reading);

// The reading of the text with its labels put right (printed_label_course.hpp), if it hangs
// together better than `reading`; `relabelled` is then what was read.  nullopt, and nothing there,
// if it does not.
[[nodiscard]] std::optional<TextReading> read_by_label_course(
    DecodedText const& text, TextReading const& reading, std::optional<Relabelled>& relabelled);

// Takes these dashes back from the leads that were read.
void take_back_dashes(Relabelled const& relabelled, TextReading& reading);

// Moves all places from the relabelled text to the one before, which users see.  Of a label that
// was put right they are those of what is printed there.
void refer_to_text_before(Relabelled const& relabelled, std::string_view before, Edition& edition,
                          std::vector<Finding>& findings);

}  // namespace keydrift::printed

#pragma once
// Couplets that are numbered with the letter or the numeral of their key: "A1", "A2", "II/1". Inner
// header of formats.

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

struct PrefixedLabels {
  struct Change {
    std::uint32_t line{};  // of the text, 0-based
    bool at_end{false};    // of the line, else where it begins
    std::string printed;   // "A1"
    std::string put;       // " 7": as long
  };
  std::vector<Change> changes;
  std::map<std::uint32_t, std::string> printed;  // by the number that stands for it
};

// "A1. Wings clear ..... A2" becomes " 8. Wings clear .....  9", counted on behind the plain
// numbers of the text, so that no place in the text moves.  nullopt, and nothing changed, unless
// labels of a letter, or of a roman numeral with a sign behind it, count up from 1, leads end in
// most of the others, and numbers are no longer than what they stand for and end no lead.  Linear
// in the text.
[[nodiscard]] std::optional<PrefixedLabels> number_prefixed_labels(std::string& text);

// What is printed, back in the text, in the labels and destinations of the edition, and in the note
// on the layout ("leads marked 8 and 8'").  `text` has the lines of the text that was changed.
void restore_prefixed_labels(PrefixedLabels const& labels, std::string& text, Edition& edition,
                             std::string& layout_note);

}  // namespace keydrift::printed

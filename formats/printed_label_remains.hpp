#pragma once
// What damage leaves of a label that is known to be missing: "4·", "'4.", "s.", "4 '.".  Inner
// header of formats.

#include <cstdint>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {

// The label that the count misses, as the other labels of the key are printed.
struct MissingLabel {
  std::uint32_t number{};
  char letter{};                // 'b' of 4b; 0 without
  bool marked{false};           // 4'
  bool back{false};             // other labels name the couplets that lead to them in brackets
  bool upper{true};             // words begin with a capital
  LabelEnd end{LabelEnd::dot};  // of the other labels
};

// The label, printed nowhere: its words begin at byte `words_at` of the line.
[[nodiscard]] Label unprinted_label(std::string_view line, std::size_t words_at,
                                    MissingLabel const& missing);

// The label with its sign lost or another one ("4 Legs", "4· Legs", "4] Legs"), specks before it
// ("'4. Legs", "■ 4. Legs"), letters for its digits ("s. Legs" for 5), a damaged bracket behind it
// ("4(l). Legs") or a damaged mark or letter ("4 '. Legs", "4a, Legs", "4h. Legs").  Its
// `printed` has all of that.
[[nodiscard]] std::optional<Label> remains_of_label(std::string_view line,
                                                    MissingLabel const& missing);

// "_ Legs", "~ Legs", "-, Legs", ". - Legs": signs for the dash of a further lead, or beside it.
[[nodiscard]] std::optional<Label> remains_of_dash(std::string_view line);

}  // namespace keydrift::printed

#pragma once
// "Couplets 12–14 are replaced by the following": words that say how a key is to be changed.
// Inner header of formats.

#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/key/amendment.hpp"

namespace keydrift::printed {

// What some words say; the couplets that follow them are not yet in the step.
struct InstructionReading {
  AmendmentStep step;
  // "Couplet 8:" alone: says where the instructions after it act, and nothing else.
  std::optional<AmendmentTarget> heading;
  // One sentence of several that asks for a change and was not understood: no step.
  bool unread{false};
};

// Reads the words, which may hold several instructions parted by ";", full stops or "and".
// `around`: where instructions act that do not say so themselves.  Empty when the words are none,
// or not yet whole ("change 'pale' to").
[[nodiscard]] std::vector<InstructionReading> read_instructions(std::string_view text,
                                                                AmendmentTarget const& around);

// Do the words speak of changing a couplet, or of words to be changed, although read_instructions
// makes nothing of them?
[[nodiscard]] bool seems_to_instruct(std::string_view text);

// Can an instruction begin so: "for", "delete", "couplet", "in 4", a quotation?
[[nodiscard]] bool may_begin_instruction(std::string_view text);

}  // namespace keydrift::printed

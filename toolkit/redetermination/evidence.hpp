#pragma once
// What a record says of a specimen's characters, as a box of a character space.

#include <string>
#include <vector>

#include "keydrift/characters/space.hpp"
#include "keydrift/characters/specimen.hpp"

namespace keydrift {

// An observation that cannot be used, and why (with a remedy behind "; ").
struct UnusableObservation {
  std::size_t observation{};  // index into Specimen::observations
  std::string problem;
};

struct RecordedEvidence {
  Box box;                    // CharacterSpace::anything() where nothing is said
  bool any{false};            // at least one usable character
  bool contradictory{false};  // recorded characters exclude each other; `box` is then of no use
  std::vector<UnusableObservation> unusable;
};

// Observations of characters that the space does not have are passed over: an archive may record
// more than a key asks.
[[nodiscard]] RecordedEvidence read_evidence(CharacterSpace const& space, Specimen const& specimen);

// Adds what was seen of one character besides.
void add_to_evidence(RecordedEvidence& evidence, CharacterSpace const& space,
                     CharacterIndex character, Cells const& seen);

}  // namespace keydrift

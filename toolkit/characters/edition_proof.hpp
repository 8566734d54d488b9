#pragma once
// The proof of one edition as reports take it: findings, numbers, how much was understood.

#include <optional>
#include <vector>

#include "keydrift/characters/difficulty.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/numbers.hpp"

namespace keydrift {

struct EditionProof {
  std::vector<Finding> findings;  // of all checks and of the readers, in order of place
  std::optional<KeyNumbers> numbers;
  std::optional<FrequencyNumbers> frequencies;    // when frequencies were given
  std::optional<DifficultyNumbers> difficulties;  // when there is a lexicon
  std::optional<ExpectedRight> right;             // when error rates were stated
  Coverage coverage;
};

}  // namespace keydrift

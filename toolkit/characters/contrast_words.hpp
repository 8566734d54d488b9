#pragma once
// Words of statements as the checks of wording take them.  Inner header of contrast.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/contrast_parts.hpp"

namespace keydrift::contrast {

[[nodiscard]] inline bool decides(Statement const& statement) {
  return statement.strength != Strength::noted && !statement.any_of.empty();
}

// normalised_words() of the statement without its hedge, one by one.
[[nodiscard]] std::vector<std::string> words_of(Statement const& statement);

// "spike" and "spikes": the same, or the one with up to two letters more.
[[nodiscard]] bool same_stem(std::string_view a, std::string_view b);

}  // namespace keydrift::contrast

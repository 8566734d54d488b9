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

// No lexicon and no mark says what it means.
[[nodiscard]] inline bool is_guessed(Statement const& statement) {
  return statement.origin == Origin::opaque || statement.origin == Origin::number;
}

// normalised_words() of the statement without its hedge, one by one.
[[nodiscard]] std::vector<std::string> words_of(Statement const& statement);

// Not numbers and signs alone.
[[nodiscard]] bool has_words(Statement const& statement);

// "Siehe auch Zahl 3", "♀ seule connue", "males unknown": of the key or of what is known, and not
// of the taxon.
[[nodiscard]] bool tells_of_knowledge(Statement const& statement);

// "without metallic sheen" denies "with metallic green sheen".
[[nodiscard]] bool denies(Statement const& denying, Statement const& said);

// "spike" and "spikes": the same, or the one with up to two letters more.
[[nodiscard]] bool same_stem(std::string_view a, std::string_view b);

// Both cite figures, and not the same ones: "as in Figs 12, 13", "as in Figs 14, 15".
[[nodiscard]] bool cite_other_figures(Statement const& a, Statement const& b);
[[nodiscard]] bool cite_other_figures(Lead const& a, Lead const& b);

}  // namespace keydrift::contrast

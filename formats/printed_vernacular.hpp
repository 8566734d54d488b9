#pragma once
// What stands before a name in Latin: vernacular names, words for ranks.  Inner header of formats.

#include <cstddef>
#include <span>
#include <string_view>

namespace keydrift::printed {

// How many of the words, which begin with words[0], stand before the first name in Latin: "Fool's
// Marshwort (Aus bus)", "Dwarf Mouse Aus bus", "Sumpf-W. – A. bus", "Marshwort, Aus bus", "Family
// Ausidae".  0 where the words begin with the name, or no name follows.  Bounded work.
[[nodiscard]] std::size_t words_before_name(std::span<std::string_view const> words);

// "House finch and tree finch, Aus bus / Aus cus (hardly to be told)": common names, and a species
// behind them.
[[nodiscard]] bool is_name_behind_common_one(std::string_view text);

// "COMMON BITTERLEAF (Aus bus). Photo 2.", "Common Delver (Aus bus)": how many words with capitals
// stand before the Latin name in brackets; more stands behind it only where all are in capitals.
[[nodiscard]] std::size_t words_before_bracketed_binomial(std::span<std::string_view const> words);

// "Cherry pea scale (Globolecan cerasinum)": a common name, and the Latin one in brackets, whose
// genus need not end as most do.
[[nodiscard]] bool closes_common_name(std::string_view text);

// "family", "Untergattung", "subgen.": a rank that is no part of the name behind it.  `folded`: the
// case-folded word.
[[nodiscard]] bool is_rank_noun(std::string_view folded);

// "der", "the", "in": an article or a preposition, which no Latin name stands behind.
[[nodiscard]] bool stands_before_noun(std::string_view word);

}  // namespace keydrift::printed

#pragma once
// Names of hybrids: the sign of the cross close to a word, and formulas of two parents.  Inner
// header of formats.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace keydrift::printed {

// "alba" of "×alba" and "Ausella" of "×Ausella", as the rules for plants want the sign set; any
// other word as it is.
[[nodiscard]] std::string_view without_cross(std::string_view word);

// "×", or the letter that stands for it, between two names.
[[nodiscard]] bool is_cross(std::string_view word);

// Where the name begins to which the cross directly before words[name] belongs: the first parent of
// "A. bus Roe × A. cus", the sign of "× Ausella cusa"; `name` where no such sign stands before it.
[[nodiscard]] std::size_t begin_with_cross(std::span<std::string_view const> words,
                                           std::size_t name);

// "Aus bus × Aus cus" for "Aus bus × A. cus"; any other name as it is, its blanks squeezed.
[[nodiscard]] std::string with_parents_in_full(std::string_view name);

}  // namespace keydrift::printed

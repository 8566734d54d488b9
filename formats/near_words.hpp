#pragma once
// Comparing words as people mistype them: for column names and the fixed words of a format.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

// Folded (keydrift/key/fold.hpp), without blanks, hyphens and underscores: "Applicable if",
// "applicable_if" and "applicableIf" are one column.
[[nodiscard]] std::string column_key(std::string_view name);

// The word of `known` that is nearest to `word`, or "" when none is near: at most one slip (a
// letter wrong, missing, surplus or two swapped) in three letters, or one word (of three letters
// or more) begins the other; case aside.
[[nodiscard]] std::string nearest_word(std::string_view word,
                                       std::span<std::string_view const> known);

// `did you mean "X"` for the nearest word, else `otherwise`.
[[nodiscard]] std::string did_you_mean(std::string_view word,
                                       std::span<std::string_view const> known,
                                       std::string_view otherwise);

// "a, b and c", each in quotation marks.
[[nodiscard]] std::string quoted_list(std::span<std::string_view const> words);
[[nodiscard]] std::string quoted_list(std::span<std::string const> words);

}  // namespace keydrift

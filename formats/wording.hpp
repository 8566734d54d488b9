#pragma once
// Words of messages and names of columns.  Inner header of formats.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace keydrift::tables {

// Folded (keydrift/key/fold.hpp), without blanks, hyphens and underscores: "Applicable if",
// "applicable_if" and "applicableIf" are one column.
[[nodiscard]] std::string column_key(std::string_view name);

// The word of `known` that is nearest to `word` (keydrift/key/near.hpp), or "" when none is near.
[[nodiscard]] std::string nearest_word(std::string_view word,
                                       std::span<std::string_view const> known);

// `did you mean "X"?` for the nearest word, else `otherwise`.
[[nodiscard]] std::string suggestion(std::string_view word, std::span<std::string_view const> known,
                                     std::string_view otherwise);

// "a, b and c", each in quotation marks.
[[nodiscard]] std::string quoted_list(std::span<std::string_view const> words);
[[nodiscard]] std::string quoted_list(std::span<std::string const> words);

// "1 tag", "12 tags".
[[nodiscard]] std::string counted(std::size_t number, std::string_view one,
                                  std::string_view several);

}  // namespace keydrift::tables

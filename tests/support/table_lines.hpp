#pragma once
// Tables and the specimens in them as lines to compare: read row by row, and in blocks.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/csv.hpp"

namespace keydrift::test {

using Lines = std::vector<std::string>;

// A line for each row and reject, in order, and the remarks behind them.  The stream hands out
// `chunk` bytes at a time.
[[nodiscard]] Lines rows_one_by_one(std::string_view bytes, CsvOptions const& options,
                                    std::size_t chunk);
[[nodiscard]] Lines rows_in_blocks(std::string_view bytes, CsvOptions const& options,
                                   std::size_t chunk, std::size_t block_bytes);

// A line for each specimen and reject of a table of occurrences with the characters "margin" and
// "spike length", in order, and the counts and findings behind them.  Empty where there is no
// table.
[[nodiscard]] Lines specimens_one_by_one(std::string_view bytes, std::size_t chunk);

struct BlocksRead {
  Lines lines{};
  std::size_t coded{};  // rows that were read as numbers of words
  Lines otherwise{};    // of these, what they say where that is not what they say in words
};
// The blocks go to the workers in turn.
[[nodiscard]] BlocksRead specimens_in_blocks(std::string_view bytes, std::size_t chunk,
                                             std::size_t block_bytes, std::size_t workers);

}  // namespace keydrift::test

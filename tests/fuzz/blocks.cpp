// A table of occurrences read in blocks by two workers gives what it gives row by row, whatever its
// bytes are and however it is cut.

#include "checks.hpp"
#include "table_lines.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  constexpr std::size_t kChunk = 41;  // so that rows, quotes and code points fall on borders
  auto const bytes = fuzz::as_text(data, size);
  CsvOptions const options{.separator = ',', .maximum_row_bytes = 200, .block_bytes = kChunk};
  auto const rows = test::rows_one_by_one(bytes, options, kChunk);
  auto const specimens = test::specimens_one_by_one(bytes, kChunk);
  for (std::size_t const block_bytes : {std::size_t{1}, std::size_t{90}, std::size_t{1} << 20}) {
    fuzz::expect(test::rows_in_blocks(bytes, options, kChunk, block_bytes) == rows,
                 "blocks hold the rows of the table");
    auto const read = test::specimens_in_blocks(bytes, kChunk, block_bytes, 2);
    fuzz::expect(read.lines == specimens, "blocks hold the specimens of the table");
    fuzz::expect(read.otherwise.empty(), "a row as numbers of words says what it says in words");
  }
  return 0;
}

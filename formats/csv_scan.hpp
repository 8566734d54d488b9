#pragma once
// Finds the cells of one record in a block of bytes.  Inner header of formats: the one place that
// looks at every byte of an archive, kept apart so that it can be made faster by itself.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/csv.hpp"

namespace keydrift::csv {

// Bytes of a cell's content: without the enclosing quotes, doubled quotes still doubled.
struct RawCell {
  std::uint32_t begin{};  // offsets from the start of the record
  std::uint32_t end{};
  std::uint32_t outer_begin{};  // with quotes and the blanks around them
  std::uint32_t outer_end{};
  bool doubled{false};  // holds "" (or stray quotes) and must be rewritten
};

enum class Outcome {
  complete,        // size and next are set
  more,            // the block ends within the record
  unclosed_quote,  // a quoted cell does not close as it should
  too_many_cells,  // of a record of several lines, more than expected: a quote is to blame
};

struct Record {
  Outcome outcome{Outcome::more};
  std::size_t size{};  // bytes of the record without its line end
  std::size_t next{};  // offset of the next record
  bool several_lines{false};
  bool stray_quote{false};
};

struct Dialect {
  char separator{','};
  char quote{'"'};               // NUL: cells are never enclosed
  std::size_t expected_cells{};  // 0: not known
  std::size_t maximum_cells{};
};

enum class Quotes {
  may_span_lines,
  within_line,  // a quote that does not close before the line's end is an ordinary character
};

// Reads the record at the front of `bytes` into `cells` (cleared first).  `final`: nothing follows
// these bytes.  Precondition: bytes is not empty and shorter than 4 GiB.
[[nodiscard]] Record scan_record(std::string_view bytes, bool final, Dialect const& dialect,
                                 Quotes quotes, std::vector<RawCell>& cells);

// Reads the records at the front that have nothing unusual about them into `block` (its cells and
// rows, offsets from `base`; not its bytes nor the lines): as many cells as expected, on one line,
// without a NUL byte, quoted cells closed and without quotes inside.  Stops before the first record
// that is otherwise or not complete, and after some `wanted` bytes.  Returns the bytes read.
// Precondition: dialect.expected_cells is known.
[[nodiscard]] std::size_t scan_plain_rows(std::string_view bytes, std::size_t wanted,
                                          Dialect const& dialect, std::size_t maximum_row_bytes,
                                          std::uint32_t base, CsvBlock& block);

// Offset of the first line feed or carriage return, or npos.
[[nodiscard]] std::size_t find_line_end(std::string_view bytes);

}  // namespace keydrift::csv

#pragma once
// Separated text: a streaming reader of RFC 4180 files as they are met, and a writer.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// A row that could not be used, set aside.  Borrows from the reader that gave it: valid until its
// next call.
struct Reject {
  std::uint64_t line{};   // of its first byte, 1-based
  std::string_view code;  // too-many-cells, unclosed-quote, row-too-long, nul-byte, …
  std::string_view message;
  std::string_view raw;  // the bytes of the row without its line end; cut after 64 KiB
};

// A row as it stands.  Borrows from the reader: valid until its next call.
struct CsvRow {
  std::uint64_t line{};                         // of its first byte, 1-based
  std::uint64_t offset{};                       // of its first byte in the stream
  std::string_view raw;                         // its bytes without the line end
  std::span<std::string_view const> cells;      // without quotes, "" made one quote; not trimmed
  std::span<std::string_view const> raw_cells;  // slices of `raw`, quotes included
};

// Where a cell stands; columns count code points.  Linear in the length of the row.
[[nodiscard]] Place place_of(CsvRow const& row, std::size_t cell);

// Many rows at once, with a memory of their own: what one thread reads and another one uses.
struct CsvBlock {
  struct Cell {
    std::uint32_t begin{}, end{};  // of its content in `bytes`
  };
  struct Row {
    std::uint64_t line{};          // of its first byte, 1-based
    std::uint32_t begin{}, end{};  // its bytes without the line end
    std::uint32_t first_cell{}, cell_count{};
    bool rejected{false};  // then first_cell is its place in `rejects`
  };
  struct Rejected {
    std::string code, message;
  };
  // At least so many bytes may be read from the begin of any cell.
  static constexpr std::size_t kReadable = 16;

  std::string bytes{};  // kReadable of them stand behind the last row
  std::vector<Cell> cells{};
  std::vector<Row> rows{};
  std::vector<Rejected> rejects{};

  [[nodiscard]] std::string_view text(Cell cell) const {
    return std::string_view{bytes}.substr(cell.begin, cell.end - cell.begin);
  }
  [[nodiscard]] std::string_view raw(Row const& row) const {
    return std::string_view{bytes}.substr(row.begin, row.end - row.begin);
  }
  void clear() {
    bytes.clear();
    cells.clear();
    rows.clear();
    rejects.clear();
  }
};

struct CsvOptions {
  char separator{'\0'};        // NUL: found out from the first row among , ; tab |
  char quote{'"'};             // NUL: cells are never enclosed
  std::uint64_t skip_lines{};  // lines of text before the first row, whatever they hold
  // Names that the first row may hold; the separator that yields most of them is taken.  May be
  // empty: then the separator that yields most cells is.
  std::function<bool(std::string_view)> known_column{};
  std::size_t maximum_row_bytes{std::size_t{1} << 20};
  std::size_t maximum_columns{10'000};
  std::size_t least_columns{};  // that a row may have, whatever the first row has
  std::size_t block_bytes{std::size_t{256} << 10};  // how much is asked of the stream at a time
};

// What was put up with; lines are those of the first case.
struct CsvCounts {
  std::uint64_t rows{};  // given out, the header included
  std::uint64_t rejects{};
  std::uint64_t blank_rows{};                      // nothing but separators and blanks: passed over
  std::uint64_t short_rows{}, first_short_line{};  // fewer cells than the header has
  std::uint64_t stray_quotes{}, first_stray_line{};  // rows with a quote that RFC 4180 forbids
};

// Reads rows one at a time in bounded memory (a block and the longest row).
//
// Tolerated: a byte order mark; a first line "sep=;"; lines ended by LF, CRLF or CR; blanks around
// a quoted cell; a quote inside an unquoted cell; a quote inside a quoted cell that no separator
// follows; cells missing or empty cells too many at a row's end.  A quoted cell may hold line
// breaks; one that never closes costs only the line in which it opens.
//
// Rejected, and reading goes on with the next line: too-many-cells, unclosed-quote, row-too-long,
// nul-byte.
class CsvReader {
 public:
  explicit CsvReader(ByteStream& stream, CsvOptions options = {});
  ~CsvReader();
  CsvReader(CsvReader const&) = delete;
  CsvReader& operator=(CsvReader const&) = delete;

  enum class Next { row, reject, end };
  // The first row given out is taken for the header: its number of cells is what further rows are
  // held against.  After `end`, look at the stream's failure().
  [[nodiscard]] Next next();
  // Overwrites `block` with further rows and rejects, some `bytes` of them; false: there are none.
  // What next() gives and in the same order, but faster.  The header is no row of them where next()
  // was asked for it before.
  [[nodiscard]] bool next_block(CsvBlock& block, std::size_t bytes = std::size_t{1} << 20);
  [[nodiscard]] CsvRow const& row() const;     // after Next::row
  [[nodiscard]] Reject const& reject() const;  // after Next::reject
  [[nodiscard]] char separator() const;        // after the first next()
  [[nodiscard]] CsvCounts const& counts() const;
  // What was put up with, as findings of the file `name`: short-rows, stray-quotes (information).
  [[nodiscard]] std::vector<Finding> remarks(std::string_view name) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

enum class LineEnd { lf, crlf };
struct CsvWriteOptions {
  char separator{','};
  LineEnd line_end{LineEnd::lf};  // RFC 4180 has CRLF; LF is what most tools write
  bool guard_formulas{true};      // see guarded()
};

// Appends one row with its line end.  Cells are quoted where RFC 4180 asks for it.
void append_csv_row(std::string& out, std::span<std::string const> cells,
                    CsvWriteOptions const& options = {});
void append_csv_row(std::string& out, std::span<std::string_view const> cells,
                    CsvWriteOptions const& options = {});

// A cell that a spreadsheet would run as a formula gets a leading apostrophe: one that begins with
// = + - @, tab, CR or LF, unless it is a plain number such as -3.5 (rule: OWASP, "CSV Injection",
// from memory; the exemption of numbers is our own).  A cell that begins with apostrophes and then
// one of those gets one more, so that unguarded() gives back every cell.
[[nodiscard]] std::string guarded(std::string_view cell);
// Takes one such apostrophe off again.
[[nodiscard]] std::string_view unguarded(std::string_view cell);

}  // namespace keydrift

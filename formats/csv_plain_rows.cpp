// The rows of which archives mostly consist: scanned 64 bytes at a time.
//
// A bit for each byte that may end a cell or a row (or is a quote or NUL) is made with a few vector
// instructions, and only these bytes are looked at one by one.  Method: Langdale & Lemire 2019,
// "Parsing gigabytes of JSON per second", VLDB Journal 28, from memory.

#include <algorithm>
#include <bit>
#include <cstring>

#include "keydrift/formats/csv_scan.hpp"

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace keydrift::csv {
namespace {

constexpr std::size_t kStep = 64;

// Bit i: byte i is one.
struct Found {
  std::uint64_t separators{};
  std::uint64_t others{};  // quotes, line ends, NUL
};

class SpecialBytes {
 public:
  SpecialBytes(char separator, char quote)
      : separator_{separator}, others_{quote, '\n', '\r', '\0'} {}

  [[nodiscard]] Found in(char const* at) const {
    Found found;
#if defined(__SSE2__)
    auto const bits = [](__m128i hits, std::size_t part) {
      return static_cast<std::uint64_t>(static_cast<std::uint16_t>(_mm_movemask_epi8(hits)))
             << (16 * part);
    };
    for (std::size_t part = 0; part < 4; ++part) {
      auto const bytes = _mm_loadu_si128(reinterpret_cast<__m128i const*>(at + 16 * part));
      auto hits = _mm_cmpeq_epi8(bytes, _mm_set1_epi8(others_[0]));
      for (std::size_t i = 1; i < 4; ++i) {
        hits = _mm_or_si128(hits, _mm_cmpeq_epi8(bytes, _mm_set1_epi8(others_[i])));
      }
      found.others |= bits(hits, part);
      found.separators |= bits(_mm_cmpeq_epi8(bytes, _mm_set1_epi8(separator_)), part);
    }
#else
    for (std::size_t i = 0; i < kStep; ++i) {
      auto const bit = std::uint64_t{1} << i;
      if (at[i] == separator_) found.separators |= bit;
      if (std::find(others_, others_ + 4, at[i]) != others_ + 4) found.others |= bit;
    }
#endif
    found.others &= ~found.separators;
    return found;
  }

 private:
  char separator_;
  char others_[4];
};

bool is_blank_row(std::string_view row, char separator) {
  char const ignorable[] = {' ', '\t', '"', '\n', '\r', separator};
  return row.find_first_not_of(std::string_view{ignorable, sizeof ignorable}) ==
         std::string_view::npos;
}

class PlainRows {
 public:
  PlainRows(std::string_view bytes, Dialect const& dialect, std::size_t maximum_row_bytes,
            std::uint32_t base, CsvBlock& block)
      : bytes_{bytes},
        separator_{dialect.separator},
        // Where nothing is enclosed, the separator stands in for the quote and is taken as such.
        quote_{dialect.quote == '\0' ? dialect.separator : dialect.quote},
        expected_{dialect.expected_cells},
        maximum_row_bytes_{maximum_row_bytes},
        base_{base},
        block_{block},
        first_cell_{block.cells.size()},
        cells_{block.cells.size()} {}

  std::size_t scan(std::size_t wanted) {
    SpecialBytes const special{separator_, quote_};
    char rest[kStep] = {};
    for (std::size_t from = 0; from < bytes_.size() && row_ < wanted; from += kStep) {
      auto const* at = bytes_.data() + from;
      auto valid = ~std::uint64_t{};
      if (bytes_.size() - from < kStep) {
        auto const left = bytes_.size() - from;
        std::memcpy(rest, at, left);
        at = rest;
        valid = (std::uint64_t{1} << left) - 1;
      }
      auto found = special.in(at);
      found.separators &= valid;
      found.others &= valid;
      if (!take_all(from, found)) return stop();
    }
    return stop();
  }

 private:
  // False: the row at hand is to be read by somebody else.
  bool take_all(std::size_t from, Found found) {
    make_room();
    for (;;) {
      auto const other = found.others & (~found.others + 1);
      if (!in_quotes_ && !closed_) {
        end_cells(from, found.separators & (other - 1));
        found.separators &= ~(other - 1);
      }
      auto const next = found.separators | found.others;
      if (next == 0) return cells_ - first_cell_ < expected_;
      auto const bit = next & (~next + 1);
      found.separators &= ~bit;
      found.others &= ~bit;
      if (!take(from + static_cast<std::size_t>(std::countr_zero(bit)))) return false;
    }
  }

  // So many cells may end within a step.
  void make_room() {
    if (block_.cells.size() < cells_ + kStep) {
      block_.cells.resize(std::max(2 * block_.cells.size(), cells_ + kStep));
    }
  }

  // Cells without quotes, ended by these separators.
  void end_cells(std::size_t from, std::uint64_t separators) {
    auto* cell = block_.cells.data() + cells_;
    auto begin = base_ + static_cast<std::uint32_t>(cell_);
    auto const base = base_ + static_cast<std::uint32_t>(from);
    for (; separators != 0; separators &= separators - 1) {
      auto const end = base + static_cast<std::uint32_t>(std::countr_zero(separators));
      *cell++ = {begin, end};
      begin = end + 1;
    }
    cells_ = static_cast<std::size_t>(cell - block_.cells.data());
    cell_ = begin - base_;
  }

  bool take(std::size_t at) {
    char const byte = bytes_[at];
    if (at < cell_) return true;  // the line feed of a CRLF
    if (in_quotes_) return byte == separator_ || (byte == quote_ && close(at));
    if (byte == separator_) {
      end_cell(at);
      cell_ = at + 1;
      return true;
    }
    if (byte == quote_) return open(at);
    if (byte == '\0') return false;
    return end_row(at);
  }

  bool open(std::size_t at) {
    if (closed_) return false;
    if (at == cell_) {
      in_quotes_ = true;
      return true;
    }
    // Behind blanks it would still enclose the cell.
    auto const before = bytes_.substr(cell_, at - cell_);
    return before.find_first_not_of(" \t") != std::string_view::npos;
  }

  bool close(std::size_t at) {
    if (at + 1 == bytes_.size()) return false;
    char const next = bytes_[at + 1];
    if (next != separator_ && next != '\n' && next != '\r') return false;
    in_quotes_ = false;
    closed_ = true;
    return true;
  }

  void end_cell(std::size_t at) {
    auto const quote = static_cast<std::size_t>(closed_ ? 1 : 0);
    block_.cells[cells_++] = {base_ + static_cast<std::uint32_t>(cell_ + quote),
                              base_ + static_cast<std::uint32_t>(at - quote)};
    closed_ = false;
  }

  bool end_row(std::size_t at) {
    end_cell(at);
    auto next = at + 1;
    if (bytes_[at] == '\r') {
      if (next == bytes_.size()) return false;
      if (bytes_[next] == '\n') ++next;
    }
    if (cells_ - first_cell_ != expected_ || at - row_ > maximum_row_bytes_ ||
        is_blank_row(bytes_.substr(row_, at - row_), separator_)) {
      return false;
    }
    CsvBlock::Row row;
    row.begin = base_ + static_cast<std::uint32_t>(row_);
    row.end = base_ + static_cast<std::uint32_t>(at);
    row.first_cell = static_cast<std::uint32_t>(first_cell_);
    row.cell_count = static_cast<std::uint32_t>(expected_);
    block_.rows.push_back(row);
    first_cell_ = cells_;
    row_ = cell_ = next;
    return true;
  }

  std::size_t stop() {
    block_.cells.resize(first_cell_);
    return row_;
  }

  std::string_view bytes_;
  char separator_;
  char quote_;
  std::size_t expected_;
  std::size_t maximum_row_bytes_;
  std::uint32_t base_;
  CsvBlock& block_;
  std::size_t first_cell_;  // of the row at hand
  std::size_t cells_;       // so many are set; room may be made for more
  std::size_t row_{};       // its begin
  std::size_t cell_{};      // begin of the cell at hand
  bool in_quotes_{false};
  bool closed_{false};
};

}  // namespace

std::size_t scan_plain_rows(std::string_view bytes, std::size_t wanted, Dialect const& dialect,
                            std::size_t maximum_row_bytes, std::uint32_t base, CsvBlock& block) {
  return PlainRows{bytes, dialect, maximum_row_bytes, base, block}.scan(wanted);
}

}  // namespace keydrift::csv

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

class SpecialBytes {
 public:
  SpecialBytes(char separator, char quote) : bytes_{separator, quote, '\n', '\r', '\0'} {}

  // Bit i: byte i is special.
  [[nodiscard]] std::uint64_t in(char const* at) const {
    std::uint64_t bits = 0;
#if defined(__SSE2__)
    for (std::size_t part = 0; part < 4; ++part) {
      auto const bytes = _mm_loadu_si128(reinterpret_cast<__m128i const*>(at + 16 * part));
      auto hits = _mm_cmpeq_epi8(bytes, _mm_set1_epi8(bytes_[0]));
      for (std::size_t i = 1; i < 5; ++i) {
        hits = _mm_or_si128(hits, _mm_cmpeq_epi8(bytes, _mm_set1_epi8(bytes_[i])));
      }
      bits |= static_cast<std::uint64_t>(static_cast<std::uint16_t>(_mm_movemask_epi8(hits)))
              << (16 * part);
    }
#else
    for (std::size_t i = 0; i < kStep; ++i) {
      bool const special = std::find(bytes_, bytes_ + 5, at[i]) != bytes_ + 5;
      bits |= static_cast<std::uint64_t>(special) << i;
    }
#endif
    return bits;
  }

 private:
  char bytes_[5];
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
        // Where nothing is enclosed, the separator stands in for the quote and is found first.
        quote_{dialect.quote == '\0' ? dialect.separator : dialect.quote},
        expected_{dialect.expected_cells},
        maximum_row_bytes_{maximum_row_bytes},
        base_{base},
        block_{block},
        first_cell_{block.cells.size()} {}

  std::size_t scan(std::size_t wanted) {
    SpecialBytes const special{separator_, quote_};
    char rest[kStep] = {};
    for (std::size_t from = 0; from < bytes_.size() && row_ < wanted; from += kStep) {
      auto const* at = bytes_.data() + from;
      auto bits = ~std::uint64_t{};
      if (bytes_.size() - from < kStep) {
        auto const left = bytes_.size() - from;
        std::memcpy(rest, at, left);
        at = rest;
        bits = (std::uint64_t{1} << left) - 1;
      }
      for (bits &= special.in(at); bits != 0; bits &= bits - 1) {
        if (!take(from + static_cast<std::size_t>(std::countr_zero(bits)))) return stop();
      }
    }
    return stop();
  }

 private:
  // False: the row is to be read by somebody else.
  bool take(std::size_t at) {
    char const byte = bytes_[at];
    if (at < cell_) return true;  // the line feed of a CRLF
    if (in_quotes_) return byte == separator_ || (byte == quote_ && close(at));
    if (byte == separator_) {
      end_cell(at);
      cell_ = at + 1;
      return block_.cells.size() - first_cell_ < expected_;
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
    block_.cells.push_back({base_ + static_cast<std::uint32_t>(cell_ + quote),
                            base_ + static_cast<std::uint32_t>(at - quote)});
    closed_ = false;
  }

  bool end_row(std::size_t at) {
    end_cell(at);
    auto next = at + 1;
    if (bytes_[at] == '\r') {
      if (next == bytes_.size()) return false;
      if (bytes_[next] == '\n') ++next;
    }
    if (block_.cells.size() - first_cell_ != expected_ || at - row_ > maximum_row_bytes_ ||
        is_blank_row(bytes_.substr(row_, at - row_), separator_)) {
      return false;
    }
    CsvBlock::Row row;
    row.begin = base_ + static_cast<std::uint32_t>(row_);
    row.end = base_ + static_cast<std::uint32_t>(at);
    row.first_cell = static_cast<std::uint32_t>(first_cell_);
    row.cell_count = static_cast<std::uint32_t>(expected_);
    block_.rows.push_back(row);
    first_cell_ = block_.cells.size();
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

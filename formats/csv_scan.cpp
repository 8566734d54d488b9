#include "keydrift/formats/csv_scan.hpp"

#include <algorithm>
#include <bit>
#include <cstring>

namespace keydrift::csv {
namespace {

constexpr auto npos = std::string_view::npos;

constexpr std::uint64_t kOnes = 0x0101010101010101U;
constexpr std::uint64_t kHighs = 0x8080808080808080U;

// Not zero iff some byte of `word` is zero (its lowest set bit then marks the first one).
constexpr std::uint64_t zero_bytes(std::uint64_t word) { return (word - kOnes) & ~word & kHighs; }

constexpr std::uint64_t repeated(char c) { return kOnes * static_cast<unsigned char>(c); }

// First of three bytes, eight at a time: this loop and memchr see nearly every byte of an archive.
std::size_t find_any(std::string_view bytes, std::size_t from, char a, char b, char c) {
  auto const pattern_a = repeated(a);
  auto const pattern_b = repeated(b);
  auto const pattern_c = repeated(c);
  std::size_t at = from;
  for (; at + 8 <= bytes.size(); at += 8) {
    std::uint64_t word = 0;
    std::memcpy(&word, bytes.data() + at, 8);
    auto const hits =
        zero_bytes(word ^ pattern_a) | zero_bytes(word ^ pattern_b) | zero_bytes(word ^ pattern_c);
    if (hits == 0) continue;
    if constexpr (std::endian::native == std::endian::little) {
      return at + static_cast<std::size_t>(std::countr_zero(hits)) / 8;
    }
    break;
  }
  for (; at < bytes.size(); ++at) {
    char const byte = bytes[at];
    if (byte == a || byte == b || byte == c) return at;
  }
  return npos;
}

bool is_line_end(char c) { return c == '\n' || c == '\r'; }

std::size_t skip_blanks(std::string_view bytes, std::size_t at, char separator) {
  while (at < bytes.size() && (bytes[at] == ' ' || (bytes[at] == '\t' && separator != '\t'))) {
    ++at;
  }
  return at;
}

enum class Close { closed, more, broken };
struct QuotedCell {
  Close close{Close::more};
  std::size_t end{};    // of the content; where scanning stopped when broken
  std::size_t after{};  // at the separator, the line end or the end of the bytes
  bool spans_lines{false};
  bool doubled{false};
  bool stray{false};
};

// `open`: offset of the opening quote.  `limit`: no closing quote is sought at or behind it.
QuotedCell scan_quoted(std::string_view bytes, std::size_t open, std::size_t limit, bool final,
                       char separator, char mark) {
  QuotedCell cell;
  std::size_t from = open + 1;
  std::size_t unseen = from;  // line ends are sought from here
  auto const stop = [&](Close close, std::size_t end) {
    cell.close = close;
    cell.end = end;
    return cell;
  };
  for (;;) {
    auto const quote = bytes.substr(0, limit).find(mark, from);
    if (quote == npos) {
      return stop(limit == bytes.size() && !final ? Close::more : Close::broken, limit);
    }
    if (!cell.spans_lines) {
      cell.spans_lines = find_line_end(bytes.substr(unseen, quote - unseen)) != npos;
      unseen = quote;
    }
    auto const behind = quote + 1;
    if (behind < bytes.size() && bytes[behind] == mark) {
      cell.doubled = true;
      from = behind + 1;
      continue;
    }
    auto const next = skip_blanks(bytes, behind, separator);
    if (next == bytes.size() && !final) return stop(Close::more, next);
    if (next == bytes.size() || bytes[next] == separator || is_line_end(bytes[next])) {
      // A quote that should not be there and then a line break: the cell never closed, and this
      // quote belongs to a later row.
      if (cell.stray && cell.spans_lines) return stop(Close::broken, next);
      cell.after = next;
      return stop(Close::closed, quote);
    }
    if (cell.spans_lines) return stop(Close::broken, next);
    cell.stray = true;
    cell.doubled = true;
    from = behind;
  }
}

RawCell raw_cell(std::size_t begin, std::size_t end, std::size_t outer_begin, std::size_t outer_end,
                 bool doubled) {
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end),
          static_cast<std::uint32_t>(outer_begin), static_cast<std::uint32_t>(outer_end), doubled};
}

}  // namespace

std::size_t find_line_end(std::string_view bytes) { return find_any(bytes, 0, '\n', '\r', '\n'); }

Record scan_record(std::string_view bytes, bool final, Dialect const& dialect, Quotes quotes,
                   std::vector<RawCell>& cells) {
  cells.clear();
  Record record;
  char const separator = dialect.separator;
  auto const stop = [&record](Outcome outcome, std::size_t size) {
    record.outcome = outcome;
    record.size = size;
    return record;
  };
  std::size_t limit = bytes.size();
  if (quotes == Quotes::within_line) {
    limit = find_line_end(bytes);
    if (limit == npos && !final) return stop(Outcome::more, bytes.size());
    limit = std::min(limit, bytes.size());
  }
  std::size_t at = 0;
  for (;;) {
    std::size_t const start = at;
    auto const first = skip_blanks(bytes, start, separator);
    if (first == bytes.size() && !final) return stop(Outcome::more, first);
    bool quoted = first < bytes.size() && dialect.quote != '\0' && bytes[first] == dialect.quote;
    RawCell cell;
    if (quoted) {
      auto const inside = scan_quoted(bytes, first, limit, final, separator, dialect.quote);
      if (inside.close == Close::more) return stop(Outcome::more, bytes.size());
      if (inside.close == Close::broken) {
        if (quotes == Quotes::may_span_lines) return stop(Outcome::unclosed_quote, inside.end);
        quoted = false;
        record.stray_quote = true;
      } else {
        cell = raw_cell(first + 1, inside.end, start, inside.after, inside.doubled);
        record.several_lines = record.several_lines || inside.spans_lines;
        record.stray_quote = record.stray_quote || inside.stray;
        at = inside.after;
      }
    }
    if (!quoted) {
      at = find_any(bytes, start, separator, '\n', '\r');
      if (at == npos) {
        if (!final) return stop(Outcome::more, bytes.size());
        at = bytes.size();
      }
      cell = raw_cell(start, at, start, at, false);
    }
    if (cells.size() <= dialect.maximum_cells) cells.push_back(cell);
    if (record.several_lines && dialect.expected_cells != 0 &&
        cells.size() > dialect.expected_cells) {
      return stop(Outcome::too_many_cells, at);
    }
    if (at == bytes.size()) {
      record.next = at;
      return stop(Outcome::complete, at);
    }
    if (bytes[at] == separator) {
      ++at;
      continue;
    }
    record.next = at + 1;
    if (bytes[at] == '\r') {
      if (record.next == bytes.size() && !final) return stop(Outcome::more, bytes.size());
      if (record.next < bytes.size() && bytes[record.next] == '\n') ++record.next;
    }
    return stop(Outcome::complete, at);
  }
}

}  // namespace keydrift::csv

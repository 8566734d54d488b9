#include <algorithm>
#include <array>
#include <cstring>
#include <optional>
#include <utility>

#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/csv_scan.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kRejectedBytesShown = std::size_t{64} << 10;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
// Reading lines again after a quote that never closed may cost this many bytes, and four times
// what was read: a made-up file must not make reading slower than linear.
constexpr std::size_t kFreeRescan = std::size_t{8} << 20;

std::uint64_t count_line_ends(std::string_view bytes) {
  std::uint64_t count = 0;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (bytes[i] == '\n' || (bytes[i] == '\r' && (i + 1 == bytes.size() || bytes[i + 1] != '\n'))) {
      ++count;
    }
  }
  return count;
}

bool is_blank_text(std::string_view cell) {
  return cell.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

std::string plural_rows(std::uint64_t count, char const* one, char const* many) {
  return count == 1 ? std::string{"1 row "} + one : std::to_string(count) + " rows " + many;
}

}  // namespace

struct CsvReader::State {
  State(ByteStream& from, CsvOptions&& given) : stream{from}, options{std::move(given)} {
    options.maximum_row_bytes =
        std::clamp<std::size_t>(options.maximum_row_bytes, 1, std::size_t{1} << 31);
    options.block_bytes = std::max<std::size_t>(options.block_bytes, 1);
    dialect.maximum_cells = options.maximum_columns;
    dialect.quote = options.quote;
  }

  std::string_view rest() const { return {buffer.data() + begin, end - begin}; }

  // Makes room, asks the stream for another block.
  void fill() {
    if (begin > 0) {
      std::memmove(buffer.data(), buffer.data() + begin, end - begin);
      end -= begin;
      begin = 0;
    }
    if (buffer.size() - end < options.block_bytes) {
      buffer.resize(std::max(buffer.size() * 2, end + options.block_bytes));
    }
    // Streams may hand out little at a time; a row is scanned anew after each block.
    auto const wanted = end + options.block_bytes;
    while (end < wanted && !final) {
      auto const got = stream.read(std::span{buffer}.subspan(end, wanted - end));
      end += got;
      final = got == 0;
    }
  }

  void consume(std::size_t bytes, std::uint64_t lines) {
    begin += bytes;
    offset += bytes;
    line += lines;
  }

  // Leaves `rest` at the first line that holds something; takes "sep=;" and the separator from it.
  void start() {
    started = true;
    while (!final && rest().size() < kByteOrderMark.size()) fill();
    if (rest().substr(0, kByteOrderMark.size()) == kByteOrderMark) {
      consume(kByteOrderMark.size(), 0);
    }
    auto first = first_line();
    for (auto skip = options.skip_lines; skip > 0 && first; --skip) {
      consume_line(*first);
      first = first_line();
    }
    while (first && is_blank_text(rest().substr(0, *first))) {
      consume_line(*first);
      first = first_line();
    }
    dialect.separator = options.separator;
    if (!first) return;
    auto const hint = rest().substr(0, *first);
    if (hint.size() == 5 && hint.substr(0, 4) == "sep=") {
      if (options.separator == '\0') dialect.separator = hint[4];
      consume_line(*first);
      (void)first_line();
    }
    if (dialect.separator == '\0') dialect.separator = likely_separator();
  }

  // Size of the line at the front without its end; nullopt when nothing is left.  A line longer
  // than a row may be counts as far as it was read.
  std::optional<std::size_t> first_line() {
    for (;;) {
      auto const at = csv::find_line_end(rest());
      bool const cut = at != std::string_view::npos && at + 1 == rest().size() && !final;
      if (at != std::string_view::npos && !cut) return at;
      if (final) return rest().empty() ? std::nullopt : std::optional{rest().size()};
      if (!cut && rest().size() > options.maximum_row_bytes) return rest().size();
      fill();
    }
  }
  void consume_line(std::size_t size) {
    auto const behind = rest().substr(size);
    std::size_t const ending = behind.substr(0, 2) == "\r\n" ? 2 : behind.empty() ? 0 : 1;
    consume(size + ending, 1);
  }

  char likely_separator() {
    constexpr std::array kCandidates{',', ';', '\t', '|'};
    char best = kCandidates.front();
    std::pair<std::size_t, std::size_t> most{0, 0};
    for (char const candidate : kCandidates) {
      csv::Dialect const trial{candidate, options.quote, 0, options.maximum_columns};
      auto found = csv::scan_record(rest(), final, trial, csv::Quotes::within_line, cells);
      if (found.outcome != csv::Outcome::complete) continue;
      std::size_t known = 0;
      if (options.known_column) {
        for (auto const& cell : cells) {
          auto const name = rest().substr(cell.begin, cell.end - cell.begin);
          if (options.known_column(name)) ++known;
        }
      }
      std::pair const score{known, cells.size()};
      if (score > most) {
        most = score;
        best = candidate;
      }
    }
    return best;
  }

  Next refuse(std::string_view code, std::string text, std::size_t size) {
    message = std::move(text);
    rejected = {.line = line,
                .code = code,
                .message = message,
                .raw = rest().substr(0, std::min(size, kRejectedBytesShown))};
    ++counts.rejects;
    return Next::reject;
  }

  // The record at the front is longer than a row may be: if that is so only because a quote joins
  // several lines, its first line is tried alone.
  std::optional<Next> refuse_as_too_long(csv::Quotes& quotes) {
    auto const line_end = std::min(csv::find_line_end(rest()), rest().size());
    if (quotes == csv::Quotes::may_span_lines && line_end < rest().size() &&
        line_end <= options.maximum_row_bytes) {
      return read_first_line_again(rest().size(), quotes);
    }
    skip_line = true;
    return refuse("row-too-long",
                  "the row is longer than the limit of " +
                      std::to_string(options.maximum_row_bytes) + " bytes",
                  std::min(line_end, options.maximum_row_bytes));
  }

  // Everything consumed at the last call stays in place until the next one, so that views hold.
  void settle() {
    consume(std::exchange(pending_bytes, 0), std::exchange(pending_lines, 0));
    if (std::exchange(skip_line, false)) skip_to_line_end();
  }
  void skip_to_line_end() {
    for (;;) {
      auto const at = csv::find_line_end(rest());
      bool const cut = at != std::string_view::npos && at + 1 == rest().size() && !final;
      if (at != std::string_view::npos && !cut) return consume_line(at);
      if (final) return consume(rest().size(), 1);
      consume(cut ? at : rest().size(), 0);
      fill();
    }
  }

  void give_out(csv::Record const& record) {
    auto const bytes = rest();
    row.line = line;
    row.offset = offset;
    row.raw = bytes.substr(0, record.size);
    scratch.clear();
    scratch.reserve(record.size);  // views into it must not move
    values.clear();
    outer.clear();
    for (auto const& cell : cells) {
      auto const content = bytes.substr(cell.begin, cell.end - cell.begin);
      outer.push_back(bytes.substr(cell.outer_begin, cell.outer_end - cell.outer_begin));
      values.push_back(cell.doubled ? without_doubled_quotes(content) : content);
    }
    row.cells = values;
    row.raw_cells = outer;
    pending_bytes = record.next;
    pending_lines = 1 + (record.several_lines ? count_line_ends(row.raw) : 0);
  }
  std::string_view without_doubled_quotes(std::string_view content) {
    auto const from = scratch.size();
    for (std::size_t i = 0; i < content.size(); ++i) {
      scratch.push_back(content[i]);
      if (content[i] == dialect.quote && i + 1 < content.size() &&
          content[i + 1] == dialect.quote) {
        ++i;
      }
    }
    return std::string_view{scratch}.substr(from);
  }

  Next next() {
    if (!started) start();
    settle();
    auto quotes = csv::Quotes::may_span_lines;
    for (;;) {
      if (rest().empty()) {
        if (final) return Next::end;
        fill();
        continue;
      }
      auto const record = csv::scan_record(rest(), final, dialect, quotes, cells);
      switch (record.outcome) {
        case csv::Outcome::more:
          // Two bytes tell whether a row of just that length ends there.
          if (rest().size() <= options.maximum_row_bytes + 2) {
            fill();
          } else if (auto const refused = refuse_as_too_long(quotes)) {
            return *refused;
          }
          break;
        case csv::Outcome::unclosed_quote:
        case csv::Outcome::too_many_cells:
          if (auto const refused = read_first_line_again(record.size, quotes)) return *refused;
          break;
        case csv::Outcome::complete:
          if (record.size > options.maximum_row_bytes) {
            if (auto const refused = refuse_as_too_long(quotes)) return *refused;
            break;
          }
          if (auto const done = judge(record, quotes)) return *done;
          quotes = csv::Quotes::may_span_lines;
          break;
      }
    }
  }

  bool next_block(CsvBlock& block, std::size_t wanted) {
    block.clear();
    settle();
    while (block.bytes.size() < wanted) {
      if (dialect.expected_cells != 0 && !rest().empty())
        take_plain_rows(block, wanted - block.bytes.size());
      if (block.bytes.size() >= wanted) break;
      auto const one = next();
      if (one == Next::end) break;
      append(block, one == Next::reject);
      settle();
    }
    bool const any = !block.rows.empty();
    block.bytes.append(CsvBlock::kReadable, '\0');
    return any;
  }

  // The rows at the front that have nothing unusual about them.
  void take_plain_rows(CsvBlock& block, std::size_t wanted) {
    auto const base = static_cast<std::uint32_t>(block.bytes.size());
    auto const first = block.rows.size();
    auto const taken =
        csv::scan_plain_rows(rest().substr(0, wanted + options.maximum_row_bytes), wanted, dialect,
                             options.maximum_row_bytes, base, block);
    for (auto i = first; i < block.rows.size(); ++i) block.rows[i].line = line + (i - first);
    block.bytes.append(rest().substr(0, taken));
    counts.rows += block.rows.size() - first;
    consume(taken, block.rows.size() - first);
  }

  // The row or reject at hand.
  void append(CsvBlock& block, bool is_reject) const {
    auto const raw = is_reject ? rejected.raw : row.raw;
    CsvBlock::Row added;
    added.line = is_reject ? rejected.line : row.line;
    added.begin = static_cast<std::uint32_t>(block.bytes.size());
    block.bytes += raw;
    added.end = static_cast<std::uint32_t>(block.bytes.size());
    added.rejected = is_reject;
    if (is_reject) {
      added.first_cell = static_cast<std::uint32_t>(block.rejects.size());
      block.rejects.push_back({std::string{rejected.code}, std::string{rejected.message}});
    } else {
      added.first_cell = static_cast<std::uint32_t>(block.cells.size());
      added.cell_count = static_cast<std::uint32_t>(row.cells.size());
      for (auto const cell : row.cells) {
        auto content = static_cast<std::size_t>(added.begin) +
                       static_cast<std::size_t>(cell.data() - raw.data());
        if (cell.data() < raw.data() || cell.data() + cell.size() > raw.data() + raw.size()) {
          // Rewritten, since it holds quotes.
          content = block.bytes.size();
          block.bytes += cell;
        }
        block.cells.push_back({static_cast<std::uint32_t>(content),
                               static_cast<std::uint32_t>(content + cell.size())});
      }
    }
    block.rows.push_back(added);
  }

  // A quote did not close as it should: its first line is tried with the quote as an ordinary
  // character.  Where too much was read twice already, all that was looked at is rejected.
  std::optional<Next> read_first_line_again(std::size_t scanned, csv::Quotes& quotes) {
    rescanned += scanned;
    if (rescanned > kFreeRescan + 4 * offset) {
      pending_lines = count_line_ends(rest().substr(0, scanned));
      pending_bytes = scanned;
      skip_line = true;
      return refuse("unclosed-quote", "a quoted cell that begins in this row does not close",
                    scanned);
    }
    quotes = csv::Quotes::within_line;
    return std::nullopt;
  }

  // nullopt: the row is blank and was passed over.
  std::optional<Next> judge(csv::Record const& record, csv::Quotes quotes) {
    auto const raw = rest().substr(0, record.size);
    auto const expected = dialect.expected_cells;
    char const ignorable[] = {' ', '\t', '"', '\n', '\r', dialect.separator};
    if (raw.find_first_not_of(std::string_view{ignorable, sizeof ignorable}) ==
        std::string_view::npos) {
      ++counts.blank_rows;
      consume(record.next, 1 + (record.several_lines ? count_line_ends(raw) : 0));
      return std::nullopt;
    }
    give_out(record);
    if (raw.find('\0') != std::string_view::npos) {
      return refuse("nul-byte", "the row holds a NUL byte", record.size);
    }
    if (expected == 0) {
      dialect.expected_cells = std::max(cells.size(), options.least_columns);
    } else if (quotes == csv::Quotes::within_line && record.stray_quote &&
               cells.size() != expected) {
      return refuse("unclosed-quote", "a quoted cell that begins in this row does not close",
                    record.size);
    } else if (cells.size() > expected) {
      if (cells.size() > options.maximum_columns ||
          !std::all_of(values.begin() + static_cast<std::ptrdiff_t>(expected), values.end(),
                       is_blank_text)) {
        return refuse("too-many-cells",
                      "the row has " + std::to_string(cells.size()) +
                          " cells where the header has " + std::to_string(expected),
                      record.size);
      }
      row.cells = row.cells.first(expected);
      row.raw_cells = row.raw_cells.first(expected);
    } else if (cells.size() < expected && counts.short_rows++ == 0) {
      counts.first_short_line = line;
    }
    if (record.stray_quote && counts.stray_quotes++ == 0) counts.first_stray_line = line;
    ++counts.rows;
    return Next::row;
  }

  ByteStream& stream;
  CsvOptions options;
  csv::Dialect dialect;
  std::vector<char> buffer;
  std::size_t begin{};  // of what is not consumed yet
  std::size_t end{};    // of what was read
  bool final{false};    // the stream has ended
  bool started{false};
  std::uint64_t offset{};  // of `begin` in the stream
  std::uint64_t line{1};   // of `begin`
  std::size_t pending_bytes{};
  std::uint64_t pending_lines{};
  bool skip_line{false};
  std::uint64_t rescanned{};
  std::vector<csv::RawCell> cells;
  std::vector<std::string_view> values;
  std::vector<std::string_view> outer;
  std::string scratch;
  std::string message;
  CsvRow row;
  Reject rejected;
  CsvCounts counts;
};

CsvReader::CsvReader(ByteStream& stream, CsvOptions options)
    : state_{std::make_unique<State>(stream, std::move(options))} {}
CsvReader::~CsvReader() = default;

CsvReader::Next CsvReader::next() { return state_->next(); }
bool CsvReader::next_block(CsvBlock& block, std::size_t bytes) {
  return state_->next_block(block, bytes);
}
CsvRow const& CsvReader::row() const { return state_->row; }
Reject const& CsvReader::reject() const { return state_->rejected; }
char CsvReader::separator() const { return state_->dialect.separator; }
CsvCounts const& CsvReader::counts() const { return state_->counts; }

std::vector<Finding> CsvReader::remarks(std::string_view name) const {
  std::vector<Finding> findings;
  auto const remark = [&](std::string code, std::uint64_t line, std::string message,
                          std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = Severity::information;
    finding.file = std::string{name};
    finding.place.line = static_cast<std::uint32_t>(line);
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    findings.push_back(std::move(finding));
  };
  auto const& counts = state_->counts;
  if (counts.short_rows > 0) {
    remark("short-rows", counts.first_short_line,
           plural_rows(counts.short_rows, "has", "have") +
               " fewer cells than the header; the missing ones were taken as empty",
           "check whether a line break or a separator is missing there");
  }
  if (counts.stray_quotes > 0) {
    remark("stray-quotes", counts.first_stray_line,
           plural_rows(counts.stray_quotes, "holds", "hold") +
               " a quotation mark where none should be; it was kept as it stands",
           "double the quotation marks inside quoted cells");
  }
  return findings;
}

Place place_of(CsvRow const& row, std::size_t cell) {
  std::size_t begin = row.raw.size();
  std::size_t size = 0;
  if (cell < row.raw_cells.size()) {
    begin = static_cast<std::size_t>(row.raw_cells[cell].data() - row.raw.data());
    size = row.raw_cells[cell].size();
  }
  auto const before = row.raw.substr(0, begin);
  auto const line_end = before.find_last_of("\r\n");
  auto const in_line = line_end == std::string_view::npos ? before : before.substr(line_end + 1);
  return {.line = static_cast<std::uint32_t>(row.line + count_line_ends(before)),
          .column = count_code_points(in_line) + 1,
          .begin = row.offset + begin,
          .end = row.offset + begin + size};
}

}  // namespace keydrift

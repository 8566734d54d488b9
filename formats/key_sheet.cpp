#include "keydrift/formats/key_sheet.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "keydrift/formats/csv_scan.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kFewestColumns = 3;
constexpr std::size_t kMostColumns = 8;

// The rows of a text, one after the other.
class SheetRows {
 public:
  SheetRows(std::string_view text, char separator)
      : text_{text}, dialect_{.separator = separator, .maximum_cells = kMostColumns} {}

  // False at the end, and where a quote does not close.
  bool next() {
    if (next_ >= text_.size()) return false;
    begin_ = next_;
    auto const record =
        csv::scan_record(text_.substr(begin_), true, dialect_, csv::Quotes::may_span_lines, cells_);
    sound_ = record.outcome == csv::Outcome::complete;
    next_ += record.next;
    return sound_;
  }
  [[nodiscard]] bool sound() const { return sound_; }

  [[nodiscard]] std::vector<csv::RawCell> const& cells() const { return cells_; }
  [[nodiscard]] std::size_t begin() const { return begin_; }  // the cells' offsets start there
  [[nodiscard]] std::string_view words(csv::RawCell const& cell) const {
    return text_.substr(begin_ + cell.begin, cell.end - cell.begin);
  }
  [[nodiscard]] bool is_blank() const {
    return std::all_of(cells_.begin(), cells_.end(), [this](csv::RawCell const& cell) {
      return words(cell).find_first_not_of(" \t\r") == std::string_view::npos;
    });
  }

 private:
  std::string_view text_;
  csv::Dialect dialect_;
  std::vector<csv::RawCell> cells_;
  std::size_t begin_{};
  std::size_t next_{};
  bool sound_{true};
};

// What a quoted cell says; its line breaks stay, so that places are those of the file.
std::string unquoted(std::string_view words) {
  std::string plain;
  for (std::size_t i = 0; i < words.size(); ++i) {
    plain += words[i];
    if (words[i] == '"' && i + 1 < words.size() && words[i + 1] == '"') ++i;
  }
  return plain;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// "12", "12a", "12(3)", "12.": a lead of a couplet that is numbered so.
bool is_number_cell(std::string_view words) {
  constexpr std::size_t kLongest = 12;
  return !words.empty() && words.size() <= kLongest && is_digit(words.front()) &&
         words.find(' ') == std::string_view::npos && words.find(',') == std::string_view::npos;
}

// "–", "-", "'" or nothing: the lead after it.
bool is_second_cell(std::string_view words) {
  return words.empty() || words == "-" || words == "–" || words == "—" || words == "'" ||
         words == "*" || words == "\x96" || words == "\x97";
}

// Every row has the same columns, three at least, and the first one bears the numbers.  Prose has
// a blank behind its commas, and no two rows of it have as many of them.
bool is_sheet(std::string_view text, char separator) {
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::size_t numbers = 0;
  std::size_t leads_on = 0;  // rows that end in a number
  SheetRows sheet{text, separator};
  while (sheet.next()) {
    if (sheet.is_blank()) continue;
    auto const& cells = sheet.cells();
    if (columns == 0) columns = cells.size();
    if (cells.size() != columns || columns < kFewestColumns || columns > kMostColumns) return false;
    auto const first = sheet.words(cells.front());
    bool const number = is_number_cell(first);
    // The names of the columns may stand above.
    if (!number && !(rows > 0 && is_second_cell(first)) && rows + numbers > 0) return false;
    if (!number && rows == 0 && is_second_cell(first)) return false;
    if (sheet.words(cells[1]).starts_with(' ')) return false;
    numbers += number ? 1U : 0U;
    rows += number || numbers > 0 ? 1U : 0U;
    auto last = cells.rbegin();
    while (last != cells.rend() && sheet.words(*last).empty()) ++last;
    leads_on += last != cells.rend() && is_number_cell(sheet.words(*last)) ? 1U : 0U;
  }
  return sheet.sound() && numbers > 0 && rows > 1 && leads_on > 0;
}

}  // namespace

std::optional<std::string> sheet_in_columns(std::string_view text) {
  constexpr std::string_view kMark = "\xEF\xBB\xBF";
  auto const begin = text.starts_with(kMark) ? kMark.size() : 0;
  auto const rows = text.substr(begin);
  // The bytes of a record are counted so.
  if (rows.size() >= std::numeric_limits<std::uint32_t>::max()) return std::nullopt;
  char separator = 0;
  for (char const one : {',', ';'}) {
    if (separator == 0 && is_sheet(rows, one)) separator = one;
  }
  if (separator == 0) return std::nullopt;
  std::string columns{text};
  auto const put = [&](std::size_t at, char c) { columns[begin + at] = c; };
  SheetRows sheet{rows, separator};
  while (sheet.next()) {
    for (auto const& cell : sheet.cells()) {
      auto const outer = sheet.begin() + cell.outer_begin;
      if (cell.outer_begin > 0) put(outer - 1, '\t');
      if (cell.begin == cell.outer_begin) continue;
      auto const plain = unquoted(sheet.words(cell));
      for (auto k = outer; k < sheet.begin() + cell.outer_end; ++k) put(k, ' ');
      for (std::size_t k = 0; k < plain.size(); ++k) put(sheet.begin() + cell.begin + k, plain[k]);
    }
  }
  return columns;
}

}  // namespace keydrift

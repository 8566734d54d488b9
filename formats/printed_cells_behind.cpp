// "1 | Wings clear | Aus bus | Plain beetle" / "– | Wings dark | 2 |": a column behind that of the
// destinations, with common names, authors, pages or figures.  The last gap of a line would be
// taken for the one before the destination.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestRows = 4;
constexpr std::size_t kMostCells = 6;

struct Row {
  std::size_t line{};
  std::size_t count{};                               // of its cells
  std::array<std::string_view, kMostCells> cells{};  // behind the label's, if that has one
};

// "Wings clear", "Aus bus", "Plain beetle" of a line whose cells are parted by tabs.
std::optional<Row> row_of(SourceLine const& line, std::size_t at) {
  if (line.text.find('\t') == std::string_view::npos) return std::nullopt;
  Row row{.line = at, .count = 0, .cells = {}};
  auto rest = line.text;
  auto const label = read_label(rest.substr(0, rest.find('\t')));
  if (label && label->text_at >= trim_right(rest.substr(0, rest.find('\t'))).size()) {
    rest.remove_prefix(rest.find('\t') + 1);
  }
  for (;;) {
    if (row.count == kMostCells) return std::nullopt;
    auto const tab = rest.find('\t');
    row.cells[row.count++] = trim(rest.substr(0, tab));
    if (tab == std::string_view::npos) break;
    rest.remove_prefix(tab + 1);
  }
  return row;
}

// How many rows have a couplet's number, or a name, in the column.
struct Tally {
  std::size_t numbers{};
  std::size_t names{};
};

Tally tally_of(std::vector<Row> const& rows, std::size_t column) {
  Tally tally;
  for (auto const& row : rows) {
    auto const cell = column < row.count ? row.cells[column] : std::string_view{};
    auto const number = read_reference(strip_pointer(cell));
    if (number && number->family == LabelFamily::digits && number->number <= rows.size()) {
      ++tally.numbers;
    } else if (!cell.empty() && is_latin_name(cell)) {
      ++tally.names;
    }
  }
  return tally;
}

// The first column in which every row but a few has one or the other, and some have each.
std::optional<std::size_t> column_of_destinations(std::vector<Row> const& rows) {
  for (std::size_t column = 1; column + 1 < kMostCells; ++column) {
    auto const tally = tally_of(rows, column);
    if (tally.numbers > 0 && tally.names > 1 &&
        (tally.numbers + tally.names) * 10 >= rows.size() * 9) {
      return column;
    }
  }
  return std::nullopt;
}

}  // namespace

void mark_cells_behind(std::vector<SourceLine>& lines) {
  std::vector<Row> rows;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].markup.destination_begin != kNotTold) continue;
    if (auto const row = row_of(lines[i], i); row && row->count > 1) rows.push_back(*row);
  }
  if (rows.size() < kFewestRows) return;
  auto const column = column_of_destinations(rows);
  if (!column) return;
  for (auto const& row : rows) {
    bool const behind = std::any_of(row.cells.begin() + static_cast<std::ptrdiff_t>(*column) + 1,
                                    row.cells.end(), [](auto cell) { return !cell.empty(); });
    if (!behind || row.cells[*column].empty()) continue;
    auto& line = lines[row.line];
    line.markup.destination_begin =
        line.begin + static_cast<std::size_t>(row.cells[*column].data() - line.text.data());
  }
}

}  // namespace keydrift::printed

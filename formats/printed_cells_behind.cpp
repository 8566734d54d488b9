// "1 | Wings clear | Aus bus | Plain beetle" / "– | Wings dark | 2 |": a column behind that of the
// destinations, with common names, authors, pages or figures.  The last gap of a line would be
// taken for the one before the destination.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestRows = 4;
constexpr std::size_t kMostCells = 6;
constexpr std::size_t kMostLinesBetweenRows = 2;  // lines within a table that are no rows

struct CellRow {
  std::size_t line{};
  std::size_t count{};                               // of its cells
  std::array<std::string_view, kMostCells> cells{};  // behind the label's, if that has one
};

// "Wings clear", "Aus bus", "Plain beetle" of a line whose cells are parted by tabs.
std::optional<CellRow> row_of(SourceLine const& line, std::size_t at) {
  if (line.text.find('\t') == std::string_view::npos) return std::nullopt;
  CellRow row{.line = at, .count = 0, .cells = {}};
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

// "Aus bus Roe", "Ausella ♦", "Key B".
bool names_taxon_or_key(std::string_view cell) {
  auto const words = words_of(cell);
  constexpr std::size_t kMostWords = 3;  // of a genus with its author or a sign
  bool const genus = words.size() <= kMostWords && is_latin_genus(without_end(words.front()));
  return genus || is_latin_name(cell) || names_a_key(cell);
}

enum class CellKind : std::uint8_t { other, number, name };

// Whether the cell has a couplet's number or a name, in a table of so many rows.
CellKind kind_of(std::string_view cell, std::size_t rows) {
  auto const number = read_reference(strip_pointer(cell));
  if (number && number->family == LabelFamily::digits && number->number <= rows) {
    return CellKind::number;
  }
  return !cell.empty() && names_taxon_or_key(cell) ? CellKind::name : CellKind::other;
}

// How many rows have a couplet's number, or a name, in the column.
struct CellTally {
  std::size_t numbers{};
  std::size_t names{};
};

CellTally tally_of(std::vector<CellRow> const& rows, std::size_t column) {
  CellTally tally;
  for (auto const& row : rows) {
    auto const kind = kind_of(row.cells[column], rows.size());
    tally.numbers += kind == CellKind::number ? 1U : 0U;
    tally.names += kind == CellKind::name ? 1U : 0U;
  }
  return tally;
}

// The first column in which every row but a few has one or the other, and some have each.
std::optional<std::size_t> destination_column(std::vector<CellRow> const& rows) {
  for (std::size_t column = 1; column + 1 < kMostCells; ++column) {
    auto const tally = tally_of(rows, column);
    if (tally.numbers > 0 && tally.names > 1 &&
        (tally.numbers + tally.names) * 10 >= rows.size() * 9) {
      return column;
    }
  }
  return std::nullopt;
}

// "2a", "3, 4", "—", "Fig. 7".
bool is_figure_number(std::string_view cell) {
  bool const digit = std::any_of(cell.begin(), cell.end(),
                                 [](char c) { return is_digit(static_cast<unsigned char>(c)); });
  auto const words = words_of(cell);
  auto const plain = [](std::string_view word) {
    constexpr std::size_t kLongest = 5;  // "12a–c"
    return word.size() <= kLongest && !is_upper(code_point_at(word, 0).value);
  };
  bool const dash = is_dash(code_point_at(cell, 0).value) && words.size() == 1;
  return dash || (digit &&
                  (figures_in(cell).size() == 1 || std::all_of(words.begin(), words.end(), plain)));
}

// Nothing but numbers of figures stand in the columns behind the destinations; what stands over the
// columns ("Result | Code | Fig.") has no destination before it.
bool numbers_figures(std::vector<CellRow> const& rows, std::size_t destinations) {
  std::size_t figures = 0;
  std::size_t others = 0;
  for (auto const& row : rows) {
    if (kind_of(row.cells[destinations], rows.size()) == CellKind::other) continue;
    for (auto c = destinations + 1; c < row.count; ++c) {
      if (row.cells[c].empty()) continue;
      ++(is_figure_number(row.cells[c]) ? figures : others);
    }
  }
  constexpr std::size_t kMostOthers = 2;
  return figures >= kFewestRows && others <= kMostOthers;
}

// Marks the destinations in the rows of a table that have cells behind them.
void mark_rows(std::vector<CellRow> const& rows, std::vector<SourceLine>& lines) {
  if (rows.size() < kFewestRows) return;
  auto const column = destination_column(rows);
  if (!column) return;
  bool const figures = numbers_figures(rows, *column);
  for (auto const& row : rows) {
    bool const behind = std::any_of(row.cells.begin() + static_cast<std::ptrdiff_t>(*column) + 1,
                                    row.cells.end(), [](auto cell) { return !cell.empty(); });
    if (!behind || row.cells[*column].empty()) continue;
    auto& line = lines[row.line];
    auto const place_of = [&line](std::string_view cell) {
      return line.begin + static_cast<std::size_t>(cell.data() - line.text.data());
    };
    line.markup.destination_begin = place_of(row.cells[*column]);
    if (figures)
      line.markup.destination_end = place_of(row.cells[*column]) + row.cells[*column].size();
  }
}

}  // namespace

void mark_cells_behind(std::vector<SourceLine>& lines) {
  std::vector<CellRow> table;
  std::size_t others = 0;  // lines of text behind its last row
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].markup.destination_begin != kNotTold) continue;
    if (auto const row = row_of(lines[i], i); row && row->count > 1) {
      table.push_back(*row);
      others = 0;
    } else if (lines[i].markup.role == LineRole::heading ||
               (!lines[i].text.empty() && ++others > kMostLinesBetweenRows)) {
      mark_rows(table, lines);
      table.clear();
    }
  }
  mark_rows(table, lines);
}

}  // namespace keydrift::printed

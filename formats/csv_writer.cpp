#include <algorithm>

#include "keydrift/formats/csv.hpp"

namespace keydrift {
namespace {

constexpr std::string_view kFormulaStarts = "=+-@\t\r\n";

// Digits with at most one decimal point or comma, a sign, an exponent: "-3.5", "+2e3".
bool is_plain_number(std::string_view cell) {
  auto const digits = [&cell] {
    std::size_t count = 0;
    while (!cell.empty() && cell.front() >= '0' && cell.front() <= '9') {
      cell.remove_prefix(1);
      ++count;
    }
    return count;
  };
  auto const sign = [&cell] {
    if (!cell.empty() && (cell.front() == '-' || cell.front() == '+')) cell.remove_prefix(1);
  };
  sign();
  if (digits() == 0) return false;
  if (!cell.empty() && (cell.front() == '.' || cell.front() == ',')) {
    cell.remove_prefix(1);
    if (digits() == 0) return false;
  }
  if (!cell.empty() && (cell.front() == 'e' || cell.front() == 'E')) {
    cell.remove_prefix(1);
    sign();
    if (digits() == 0) return false;
  }
  return cell.empty();
}

// Apostrophes (possibly none) and then the start of a formula.
bool starts_like_a_formula(std::string_view cell) {
  auto const first = cell.find_first_not_of('\'');
  return first != std::string_view::npos &&
         kFormulaStarts.find(cell[first]) != std::string_view::npos;
}

template <class Cell>
void append_row(std::string& out, std::span<Cell const> cells, CsvWriteOptions const& options) {
  char const special[] = {options.separator, '"', '\r', '\n'};
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) out.push_back(options.separator);
    std::string_view cell = cells[i];
    std::string safe;
    if (options.guard_formulas && starts_like_a_formula(cell)) {
      safe = guarded(cell);
      cell = safe;
    }
    // A lone empty cell would be a blank line, which readers pass over.
    bool const quote =
        cell.find_first_of(std::string_view{special, sizeof special}) != std::string_view::npos ||
        (cell.empty() && cells.size() == 1);
    if (quote) out.push_back('"');
    for (char const c : cell) {
      if (c == '"') out.push_back('"');
      out.push_back(c);
    }
    if (quote) out.push_back('"');
  }
  out += options.line_end == LineEnd::crlf ? "\r\n" : "\n";
}

}  // namespace

void append_csv_row(std::string& out, std::span<std::string const> cells,
                    CsvWriteOptions const& options) {
  append_row(out, cells, options);
}

void append_csv_row(std::string& out, std::span<std::string_view const> cells,
                    CsvWriteOptions const& options) {
  append_row(out, cells, options);
}

std::string guarded(std::string_view cell) {
  std::string out;
  if (starts_like_a_formula(cell) && !is_plain_number(cell)) out.push_back('\'');
  out.append(cell);
  return out;
}

std::string_view unguarded(std::string_view cell) {
  if (!cell.empty() && cell.front() == '\'' && starts_like_a_formula(cell)) cell.remove_prefix(1);
  return cell;
}

}  // namespace keydrift

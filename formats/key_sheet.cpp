#include "keydrift/formats/key_sheet.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace keydrift {
namespace {

struct SheetCell {
  std::size_t begin{};  // half open, quotes included
  std::size_t end{};
};

// The cells of the row that begins at `at`, which is moved to the next one.
std::vector<SheetCell> cells_of_row(std::string_view text, std::size_t& at, char separator) {
  std::vector<SheetCell> cells{{.begin = at, .end = at}};
  bool quoted = false;
  for (; at < text.size(); ++at) {
    char const c = text[at];
    if (c == '"') {
      bool const opens = at == cells.back().begin;
      bool const doubled = quoted && at + 1 < text.size() && text[at + 1] == '"';
      if (doubled) {
        ++at;  // a quote that the cell says
      } else if (opens || quoted) {
        quoted = !quoted;
      }
    } else if (!quoted && c == separator) {
      cells.back().end = at;
      cells.push_back({.begin = at + 1, .end = at + 1});
    } else if (!quoted && c == '\n') {
      break;
    }
  }
  cells.back().end = at;
  if (at < text.size()) ++at;
  auto& last = cells.back();
  if (last.end > last.begin && text[last.end - 1] == '\r') --last.end;
  return cells;
}

std::string_view words_in(std::string_view text, SheetCell const& cell) {
  auto words = text.substr(cell.begin, cell.end - cell.begin);
  if (words.size() > 1 && words.front() == '"' && words.back() == '"') {
    words = words.substr(1, words.size() - 2);
  }
  return words;
}

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

bool is_blank_row(std::string_view text, std::vector<SheetCell> const& cells) {
  return std::all_of(cells.begin(), cells.end(), [&](SheetCell const& cell) {
    return words_in(text, cell).find_first_not_of(" \t\r") == std::string_view::npos;
  });
}

// Every row has the same columns, three at least, and the first one bears the numbers.  Prose has
// a blank behind its commas, and no two rows of it have as many of them.
bool is_sheet(std::string_view text, char separator) {
  constexpr std::size_t kFewest = 3;
  constexpr std::size_t kMost = 8;
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::size_t numbers = 0;
  std::size_t leads_on = 0;  // rows that end in a number
  for (std::size_t at = 0; at < text.size();) {
    auto const cells = cells_of_row(text, at, separator);
    if (is_blank_row(text, cells)) continue;
    if (columns == 0) columns = cells.size();
    if (cells.size() != columns || columns < kFewest || columns > kMost) return false;
    auto const first = words_in(text, cells.front());
    bool const number = is_number_cell(first);
    // The names of the columns may stand above.
    if (!number && !(rows > 0 && is_second_cell(first)) && rows + numbers > 0) return false;
    if (!number && rows == 0 && is_second_cell(first)) return false;
    auto const words = words_in(text, cells[1]);
    if (words.starts_with(' ')) return false;
    numbers += number ? 1U : 0U;
    rows += number || numbers > 0 ? 1U : 0U;
    auto last = cells.rbegin();
    while (last != cells.rend() && words_in(text, *last).empty()) ++last;
    leads_on += last != cells.rend() && is_number_cell(words_in(text, *last)) ? 1U : 0U;
  }
  return numbers > 0 && rows > 1 && leads_on > 0;
}

}  // namespace

std::optional<std::string> sheet_in_columns(std::string_view text) {
  constexpr std::string_view kMark = "\xEF\xBB\xBF";
  auto const begin = text.starts_with(kMark) ? kMark.size() : 0;
  auto const rows = text.substr(begin);
  char separator = 0;
  for (char const one : {',', ';'}) {
    if (separator == 0 && is_sheet(rows, one)) separator = one;
  }
  if (separator == 0) return std::nullopt;
  std::string columns{text};
  auto const put = [&](std::size_t at, char c) { columns[begin + at] = c; };
  for (std::size_t at = 0; at < rows.size();) {
    auto const cells = cells_of_row(rows, at, separator);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      auto const& cell = cells[i];
      if (i > 0) put(cell.begin - 1, '\t');
      auto const words = words_in(rows, cell);
      if (words.size() + 2 != cell.end - cell.begin) continue;
      auto const plain = unquoted(words);
      for (auto k = cell.begin; k < cell.end; ++k) put(k, ' ');
      for (std::size_t k = 0; k < plain.size(); ++k) put(cell.begin + 1 + k, plain[k]);
    }
  }
  return columns;
}

}  // namespace keydrift

#include "keydrift/formats/printed_cell_quotes.hpp"

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestQuotedCells = 2;

// A cell with a mark at both ends, and none within but doubled ones.
bool is_quoted(std::string_view cell) {
  if (cell.size() < 3 || cell.front() != '"' || cell.back() != '"') return false;
  for (std::size_t at = 1; at + 1 < cell.size(); ++at) {
    if (cell[at] != '"') continue;
    if (at + 2 >= cell.size() || cell[at + 1] != '"') return false;
    ++at;
  }
  return true;
}

}  // namespace

std::size_t take_off_cell_quotes(std::string& text) {
  if (text.find("\t\"") == std::string::npos && text.find("\"\t") == std::string::npos) return 0;
  std::vector<std::pair<std::size_t, std::size_t>> cells;  // bytes of the text
  std::size_t quoted_lines = 0;
  for (auto const& [begin, line] : lines_of(text)) {
    if (line.find('\t') == std::string_view::npos) continue;
    auto const before = cells.size();
    for (std::size_t at = 0; at <= line.size();) {
      auto const tab = std::min(line.find('\t', at), line.size());
      auto cell = line.substr(at, tab - at);
      if (cell.ends_with('\r')) cell.remove_suffix(1);
      if (is_quoted(cell)) cells.emplace_back(begin + at, begin + at + cell.size());
      at = tab + 1;
    }
    if (cells.size() > before) ++quoted_lines;
  }
  if (quoted_lines < kFewestQuotedCells) return 0;
  for (auto const& [begin, end] : cells) {
    for (auto at = begin + 1; at + 1 < end; ++at) {
      if (text[at] == '"') text[++at] = ' ';
    }
    text[begin] = text[end - 1] = ' ';
  }
  return cells.size();
}

}  // namespace keydrift::printed

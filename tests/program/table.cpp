#include "table.hpp"

#include "golden.hpp"

namespace keydrift::test {

std::vector<Row> read_table(std::string const& text) {
  std::vector<std::vector<std::string>> rows(1);
  rows.back().emplace_back();
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char const c = text[i];
    if (quoted) {
      if (c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
        rows.back().back() += '"';
        ++i;
      } else if (c == '"') {
        quoted = false;
      } else {
        rows.back().back() += c;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\n') {
      rows.emplace_back().emplace_back();
    } else if (c != '\r') {
      rows.back().back() += c;
    }
  }
  if (rows.back().size() == 1 && rows.back().front().empty()) rows.pop_back();
  std::vector<Row> table;
  for (std::size_t r = 1; r < rows.size(); ++r) {
    Row row;
    for (std::size_t c = 0; c < rows.front().size() && c < rows[r].size(); ++c) {
      row[rows.front()[c]] = rows[r][c];
    }
    table.push_back(std::move(row));
  }
  return table;
}

std::vector<Row> read_table_file(std::string const& path) { return read_table(slurp(path)); }

}  // namespace keydrift::test

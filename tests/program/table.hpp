#pragma once
// Reading back CSV written by the program or kept as a fixture, independently of the formats.

#include <map>
#include <string>
#include <vector>

namespace keydrift::test {

using Row = std::map<std::string, std::string>;  // column -> cell

// RFC 4180; the first row names the columns.
[[nodiscard]] std::vector<Row> read_table(std::string const& text);
[[nodiscard]] std::vector<Row> read_table_file(std::string const& path);

}  // namespace keydrift::test

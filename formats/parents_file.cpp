#include "keydrift/formats/parents_file.hpp"

#include <array>
#include <map>
#include <utility>
#include <vector>

#include "keydrift/formats/side_table.hpp"

namespace keydrift {

using namespace tables;

namespace {

enum ParentColumn : std::size_t { kTaxon, kParent };
constexpr std::array kParentColumns{WantedColumn{"taxon", true}, WantedColumn{"parent", true}};

using RowOf = std::map<std::string_view, std::size_t>;  // taxon -> its row

// Every row that closes a circle, found by walking up once from each taxon.
std::vector<std::size_t> rows_closing_circles(std::vector<ParentRow> const& rows,
                                              RowOf const& row_of) {
  enum class Mark : char { unseen, on_way, done };
  std::vector<Mark> marks(rows.size(), Mark::unseen);
  std::vector<std::size_t> closing;
  for (std::size_t start = 0; start < rows.size(); ++start) {
    std::vector<std::size_t> way;
    std::size_t at = start;
    while (marks[at] == Mark::unseen) {
      marks[at] = Mark::on_way;
      way.push_back(at);
      auto const above = row_of.find(rows[at].parent);
      if (above == row_of.end()) break;
      if (marks[above->second] == Mark::on_way) closing.push_back(at);
      at = above->second;
    }
    for (auto const row : way) marks[row] = Mark::done;
  }
  return closing;
}

}  // namespace

Loaded<ParentTable> read_parents(Source source) {
  Loaded<ParentTable> loaded;
  auto table = read_side_table(source, "parent table", kParentColumns);
  loaded.findings = std::move(table.findings);
  if (!table) return loaded;
  ParentTable parents;
  parents.name = std::string{source.name};
  auto const add = [&](std::string code, Severity severity, Place place, std::string message,
                       std::string remedy) -> Finding& {
    loaded.findings.push_back({std::move(code),
                               severity,
                               parents.name,
                               place,
                               "",
                               std::move(message),
                               std::move(remedy),
                               {}});
    return loaded.findings.back();
  };
  parents.rows.reserve(table.value->rows.size());  // row_of borrows the names
  RowOf row_of;
  for (auto const& row : table.value->rows) {
    auto const& taxon = row.cells[kTaxon];
    auto const& parent = row.cells[kParent];
    if (taxon.empty() || parent.empty()) {
      auto const column = taxon.empty() ? kTaxon : kParent;
      add("missing-name", Severity::error, row.places[column],
          std::string{"the row has no name in the column \""} +
              std::string{kParentColumns[column].name} + "\"",
          "give a taxon and its parent in every row");
      continue;
    }
    if (taxon == parent) {
      add("own-parent", Severity::error, row.places[kParent],
          "\"" + taxon + "\" is said to be its own parent", "name the next higher taxon");
      continue;
    }
    auto const known = row_of.find(taxon);
    if (known != row_of.end()) {
      auto const& earlier = parents.rows[known->second];
      bool const agree = earlier.parent == parent;
      auto& finding =
          agree ? add("repeated-row", Severity::information, row.place,
                      "\"" + taxon + "\" stands in an earlier row with the same parent",
                      "remove one of the two rows")
                : add("two-parents", Severity::error, row.places[kParent],
                      "\"" + taxon + "\" has the parent \"" + parent + "\" here and \"" +
                          earlier.parent + "\" in line " + std::to_string(earlier.place.line),
                      "keep the row that is right");
      finding.related.push_back({earlier.place, "the earlier row"});
      continue;
    }
    parents.rows.push_back({taxon, parent, row.place});
    row_of.emplace(parents.rows.back().taxon, parents.rows.size() - 1);
  }
  for (auto const row : rows_closing_circles(parents.rows, row_of)) {
    auto const& closing = parents.rows[row];
    add("parent-cycle", Severity::error, closing.place,
        "\"" + closing.taxon + "\" is below \"" + closing.parent + "\", which is below \"" +
            closing.taxon + "\"",
        "remove the row that is wrong");
  }
  sort_findings(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = std::move(parents);
  return loaded;
}

}  // namespace keydrift

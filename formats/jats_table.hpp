#pragma once
// A table of article XML as a grid, and what its columns hold.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <pugixml.hpp>
#include <string_view>
#include <vector>

#include "keydrift/formats/xml_document.hpp"
#include "keydrift/formats/xml_text.hpp"

namespace keydrift::jats {

struct Cell {
  std::size_t column{};  // 0-based, with the cells that reach down from rows above counted in
  std::size_t span{1};   // columns
  xml::FlowText flow;    // all of it
  std::vector<xml::FlowText> lines;  // as its paragraphs and breaks part it
};

struct Row {
  std::vector<Cell> cells;  // also the empty ones
  std::size_t width{};      // columns that the row reaches over
  bool is_head{false};      // stands in a `thead`
};

enum class ColumnKind : std::uint8_t { label, words, destination };

// Labels in front, words in the next column, destinations in those behind it.  Figures in a column
// between the two belong to the words.
struct Columns {
  std::size_t count{};   // of the grid
  std::size_t used{};    // in which anything stands
  std::size_t labels{};  // the first of them
  std::size_t words{};   // the last column of the words; empty ones may stand before it
  bool has_destination{false};

  [[nodiscard]] ColumnKind kind_of(Cell const& cell) const;
};

struct Table {
  std::vector<Row> rows;
  Columns columns;
  std::vector<xml::FlowText> footnotes;
};

[[nodiscard]] Table read_table(xml::Document const& document, pugi::xml_node table);

// "7", "7a.", "2 (1)", "–": nothing but the label of a lead.
[[nodiscard]] bool is_label_cell(std::string_view text);

}  // namespace keydrift::jats

#include "keydrift/formats/jats_table.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::jats {
namespace {

constexpr std::size_t kMostColumns = 64;  // a key has three or four

std::size_t number_of(pugi::xml_attribute attribute) {
  return std::clamp<std::size_t>(attribute.as_uint(1), 1, kMostColumns);
}

bool is_row(pugi::xml_node node) {
  auto const name = xml::local_name(node);
  return name == "tr" || name == "row";
}
bool is_cell(pugi::xml_node node) {
  auto const name = xml::local_name(node);
  return name == "td" || name == "th" || name == "entry";
}

// "Fig. 3", "(Figs 4, 5)".
bool is_figure_cell(std::string_view text) {
  while (!text.empty() && (text.front() == '(' || text.front() == '[')) text.remove_prefix(1);
  constexpr std::size_t kLongest = 40;  // bytes; longer ones are captions
  return text.size() <= kLongest && printed::starts_caption(text);
}

class GridReader {
 public:
  explicit GridReader(xml::Document const& document) : document_{document} {}

  Table read(pugi::xml_node top) && {
    // Rows in document order; those of tables within cells are part of the cells.
    auto node = top.first_child();
    while (node) {
      if (is_row(node)) {
        read_row(node);
      } else if (node.first_child()) {
        node = node.first_child();
        continue;
      }
      while (node != top && !node.next_sibling()) node = node.parent();
      node = node == top ? pugi::xml_node{} : node.next_sibling();
    }
    decide_columns();
    return std::move(table_);
  }

 private:
  void read_row(pugi::xml_node element) {
    Row row;
    row.is_head = xml::local_name(element.parent()) == "thead";
    std::vector<std::size_t> reaching(kMostColumns + 1, 0);  // rows below that a cell takes
    std::size_t column = 0;
    auto const skip_taken = [&] {
      while (column < kMostColumns && column < below_.size() && below_[column] > 0) ++column;
    };
    for (auto node : element.children()) {
      if (!is_cell(node)) continue;
      skip_taken();
      if (column >= kMostColumns) column = kMostColumns - 1;  // keep the words of all cells
      Cell cell;
      cell.column = column;
      cell.span = std::min(number_of(node.attribute("colspan")), kMostColumns - column);
      auto flow = xml::read_flow(document_, node);
      // What converters fill empty cells with: "<td>&#160;</td>".
      std::erase_if(flow.lines, [](auto const& line) { return printed::trim(line.text).empty(); });
      cell.flow = flow.joined();
      cell.lines = std::move(flow.lines);
      for (auto& footnote : flow.footnotes) table_.footnotes.push_back(std::move(footnote));
      auto down = number_of(node.attribute("rowspan"));
      if (auto const more = node.attribute("morerows")) down = 1 + number_of(more);
      for (std::size_t c = column; c < column + cell.span; ++c) reaching[c] = down - 1;
      column += cell.span;
      row.cells.push_back(std::move(cell));
    }
    skip_taken();
    row.width = column;
    below_.resize(kMostColumns + 1, 0);
    for (std::size_t c = 0; c <= kMostColumns; ++c) {
      below_[c] = reaching[c] > 0 ? reaching[c] : below_[c] > 0 ? below_[c] - 1 : 0;
    }
    table_.rows.push_back(std::move(row));
  }

  void decide_columns() {
    struct Tally {
      std::size_t filled{};
      std::size_t labels{};
      std::size_t figures{};
    };
    std::vector<Tally> tallies(kMostColumns);
    auto& columns = table_.columns;
    for (auto const& row : table_.rows) {
      columns.count = std::max(columns.count, row.width);
      if (row.is_head) continue;
      for (auto const& cell : row.cells) {
        if (cell.flow.empty() || cell.span > 1 || row.cells.size() < 2) continue;
        ++tallies[cell.column].filled;
        bool const labels =
            std::all_of(cell.lines.begin(), cell.lines.end(),
                        [](xml::FlowText const& line) { return is_label_cell(line.text); });
        if (labels) ++tallies[cell.column].labels;
        if (is_figure_cell(cell.flow.text)) ++tallies[cell.column].figures;
      }
    }
    bool words = false;
    std::size_t figures_behind_words = 0;  // the column of them, 0: none
    for (std::size_t c = 0; c < columns.count; ++c) {
      auto const& tally = tallies[c];
      if (tally.filled == 0) continue;
      ++columns.used;
      if (!words && tally.labels * 5 >= tally.filled * 3) {
        columns.labels = c + 1;
      } else if (!words) {
        words = true;
        columns.words = c;
      } else if (!columns.has_destination && tally.figures == tally.filled) {
        figures_behind_words = c;
      } else {
        // "Wings clear | Fig. 3 | Aus bus": the figures are said of the words.
        if (!columns.has_destination) columns.words = std::max(columns.words, figures_behind_words);
        columns.has_destination = true;
      }
    }
    columns.has_destination = columns.has_destination || figures_behind_words > 0;
    if (!words) columns.words = columns.labels;
  }

  xml::Document const& document_;
  Table table_;
  std::vector<std::size_t> below_;
};

}  // namespace

ColumnKind Columns::kind_of(Cell const& cell) const {
  auto const end = cell.column + cell.span;
  if (end <= labels) return ColumnKind::label;
  if (cell.column <= words) return ColumnKind::words;
  return ColumnKind::destination;
}

Table read_table(xml::Document const& document, pugi::xml_node table) {
  return GridReader{document}.read(table);
}

bool is_label_cell(std::string_view text) {
  auto const label = printed::label_alone(text);
  return label && !label->decimal;
}

}  // namespace keydrift::jats

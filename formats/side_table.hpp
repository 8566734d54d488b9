#pragma once
// Small CSV tables with a header, read whole: lexicon, concept map, parents.  Inner header of
// formats.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::tables {

struct WantedColumn {
  std::string_view name;
  bool required{false};
};

// Cells stand in the order of the wanted columns; "" where the file lacks the column or the cell.
// They are trimmed, and an apostrophe that keeps a spreadsheet from running them is taken off.
struct SideRow {
  Place place;  // of the row
  std::vector<std::string> cells;
  std::vector<Place> places;
};

struct SideTable {
  std::vector<SideRow> rows;
  std::vector<bool> present;  // of the wanted columns
};

// `what` names the table in messages: "concept map".  Column names are matched by column_key().
// Errors: those of decode_text(); not-a-table (JSON); missing-column, duplicate-column and every
// row that the CSV reader rejects (nothing is read by halves).  unknown-column: a warning where the
// name is near a wanted one, else information.
[[nodiscard]] Loaded<SideTable> read_side_table(Source source, std::string_view what,
                                                std::span<WantedColumn const> wanted);

// True when some finding is an error.
[[nodiscard]] bool has_error(std::span<Finding const> findings);

// Blanks taken off both ends (also no-break spaces).
[[nodiscard]] std::string_view trimmed(std::string_view text);

}  // namespace keydrift::tables

#pragma once
// A worklist that was filled in, as a spreadsheet saved it.

#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

#include "keydrift/characters/filled_row.hpp"
#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/written_day.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

struct FilledWorklist {
  std::vector<FilledRow> rows{};    // those in which something was written
  std::uint64_t blank{};            // rows that nobody filled in
  std::uint64_t dates_rewritten{};  // dates that a spreadsheet or a person wrote in another form
  char separator{','};              // as found
};

// Columns are those of the worklist (reports/csv.hpp), in any order and letter case; wanted are
// catalogNumber or occurrenceID, and at least one of answer and newName; all others may be missing.
// Whatever a spreadsheet makes of the file is put up with: another separator, a byte order mark,
// UTF-16 or Windows-1252, another order of the columns, apostrophes that guard formulas, dates in
// another form.  The order of day and month is taken from `order`, failing that from the dates of
// the file that show it, if all of these agree.
//
// Information: no-row-check (the column rowCheck, or one of those it was made of, is missing, so
// that rows come without it).  Warnings: unknown-column, duplicate-column and missing-column (by,
// date), where something that was filled in may be lost.  Errors (nothing is read): missing-column,
// empty-file, and what stopped the stream.  Rows that the CSV reader cannot use go to `on_reject`.
[[nodiscard]] Loaded<FilledWorklist> read_filled_worklist(
    ByteStream& stream, std::string_view name, DayOrder order,
    std::function<void(Reject const&)> const& on_reject);

}  // namespace keydrift

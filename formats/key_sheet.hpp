#pragma once
// A key in the columns of a spreadsheet, saved as CSV: number, lead, where it leads.

#include <optional>
#include <string>
#include <string_view>

namespace keydrift {

// The text with tabs between its columns, as a table is pasted, where it is such a sheet: with
// commas or, as spreadsheets of many countries write it, semicolons.  As many bytes as before, each
// cell where it was, so that places stay what they are.  nullopt for any other text.
[[nodiscard]] std::optional<std::string> sheet_in_columns(std::string_view text);

}  // namespace keydrift

#pragma once
// The rows of a table whose first row names its columns.  Inner header of formats.

#include "keydrift/formats/csv.hpp"

namespace keydrift::tables {

enum class HeadedRows {
  read,       // to the end
  no_header,  // there is no row at all
  refused,    // by on_header, and nothing after it was read
};

// Calls on_header(row), which says whether to go on, then on_row(row) for every further row, and
// on_reject(reject) for what is no row, before the header too.
template <typename OnHeader, typename OnRow, typename OnReject>
[[nodiscard]] HeadedRows read_headed_rows(CsvReader& reader, OnHeader on_header, OnRow on_row,
                                          OnReject on_reject) {
  auto state = HeadedRows::no_header;
  for (auto next = reader.next(); next != CsvReader::Next::end; next = reader.next()) {
    if (next == CsvReader::Next::reject) {
      on_reject(reader.reject());
    } else if (state == HeadedRows::read) {
      on_row(reader.row());
    } else if (on_header(reader.row())) {
      state = HeadedRows::read;
    } else {
      return HeadedRows::refused;
    }
  }
  return state;
}

}  // namespace keydrift::tables

#pragma once
// Cells of streamed tables to clean text.  Inner header of formats.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/finding.hpp"

namespace keydrift::tables {

// Is the cell printable ASCII throughout?  Then only blanks around it are no part of it.
[[nodiscard]] bool is_plain_cell(std::string_view cell);

// Trims; takes NULL and \N (database exports) for empty; makes line breaks and other control
// characters blanks; reads what is not UTF-8 as Windows-1252; composes (NFC).  Most cells are plain
// and are handed back as they are.
class CellCleaner {
 public:
  // Valid until the next call.  `line` is kept for remarks().
  [[nodiscard]] std::string_view clean(std::string_view cell, std::uint64_t line);
  // The same without a trace in remarks(): for text shown in messages.
  [[nodiscard]] static std::string cleaned_copy(std::string_view cell);
  // Would clean() leave a trace?
  [[nodiscard]] static bool is_sound(std::string_view cell);

  // Takes in what another one met.
  void absorb(CellCleaner const& other);
  // encoding (information): cells that are not UTF-8.
  [[nodiscard]] std::vector<Finding> remarks(std::string_view file) const;

 private:
  std::string scratch_;
  std::uint64_t converted_{};
  std::uint64_t first_converted_line_{};
};

}  // namespace keydrift::tables

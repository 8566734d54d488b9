#pragma once
// Which column of an occurrence table goes where.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::tables {

// What to do with a cell of one column.
struct OccurrenceTarget {
  enum class Kind { text, place, places, voucher, institution, collection, observation };
  Kind kind{Kind::text};
  std::size_t column{};
  std::string Specimen::*member{};      // text only
  std::size_t rank{};                   // places: from wide to narrow
  std::optional<std::size_t> region{};  // country, stateProvince, county: 0, 1, 2
  CharacterHeader character;            // observation only
};

class OccurrenceColumns {
 public:
  // Borrows the options.
  OccurrenceColumns(std::string_view table, OccurrenceOptions const& options);

  [[nodiscard]] bool is_known(std::string_view header) const;

  // Finds out the targets and reports on the columns.  False: nothing holds the name.
  [[nodiscard]] bool read_header(CsvRow const& row, std::vector<Finding>& findings);

  // In the order in which cells are to be read: places from wide to narrow.
  [[nodiscard]] std::vector<OccurrenceTarget> const& targets() const { return targets_; }

 private:
  [[nodiscard]] std::string key_of(std::string_view header) const;
  bool use_column(CsvRow const& row, std::size_t column, std::vector<Finding>& findings);
  void report_missing_name(CsvRow const& row, std::vector<std::string> const& columns,
                           std::vector<Finding>& findings) const;
  void report_unused(CsvRow const& row, std::vector<std::size_t> const& unused,
                     std::vector<Finding>& findings) const;

  std::string table_;
  OccurrenceOptions const& options_;
  CharacterColumns characters_;
  std::vector<OccurrenceTarget> targets_;
};

}  // namespace keydrift::tables

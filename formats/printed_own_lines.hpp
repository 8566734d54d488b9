#pragma once
// Destinations without leaders on the last line of a lead.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_joins.hpp"
#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// The words of a file that it prints before an epithet, or in the title of a key: "Ausella busa
// Roe".  Borrows the lines.
class GeneraInLines {
 public:
  explicit GeneraInLines(std::vector<SourceLine> const& lines) : lines_{lines} {}

  [[nodiscard]] bool has(std::string_view word) const;

  // Is "Aus." short for one of them?
  [[nodiscard]] bool has_short(std::string_view abbreviation) const;

 private:
  void look() const;

  std::vector<SourceLine> const& lines_;
  mutable std::optional<std::set<std::string_view>> words_;  // looked for once asked for
};

// Where the destination begins in the joined text, if the last line of several holds nothing but a
// number or a name: "… with long hairs" / "Aus bus Roe".
[[nodiscard]] std::optional<std::size_t> own_line_destination(KeyText const& key,
                                                              JoinedText const& joined,
                                                              GeneraInLines const& genera);

}  // namespace keydrift::printed

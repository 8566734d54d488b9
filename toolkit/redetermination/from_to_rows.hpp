#pragma once
// From which name to which, summed up in bounded memory.  Inner header of redetermination.

#include <map>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/key/spill/spill_sort.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

class FromToRows {
 public:
  FromToRows();
  void add(std::string const& from, std::string const& to, Outcome outcome,
           std::uint64_t specimens);
  // Appends the rows, most specimens first, then by name.  To be called once.
  [[nodiscard]] std::optional<Finding> finish(StoredList<FromTo>& rows);

 private:
  void settle();
  std::map<std::pair<std::string, std::string>, FromTo> rows_;  // met lately
  SpillSort sorted_;                                            // by their names
};

}  // namespace keydrift

#pragma once
// With which editions the specimens were determined, in words.  Inner header of reports.

#include <cstdint>
#include <string>
#include <vector>

#include "keydrift/redetermination/outcome.hpp"

namespace keydrift::reports {

struct EditionLine {
  std::string what;
  std::uint64_t specimens{};
};

struct EditionWords {
  std::vector<EditionLine> lines;
  std::vector<EditionLine> unnamed_works;  // a few of them
  std::uint64_t more_works{};              // that are not among them
  std::string advice;                      // full sentences; "" where there is nothing to advise
};

[[nodiscard]] EditionWords editions_in_words(EditionCounts const& editions,
                                             std::string const& old_name,
                                             std::string const& new_name);

}  // namespace keydrift::reports

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

// How the names were chosen among the determinations of specimens that have a history: lines for
// rules that applied.
[[nodiscard]] std::vector<EditionLine> choices_in_words(DeterminationCounts const& history);

// "urn:x:7: sheets.txt, lines 12 and 40".
[[nodiscard]] std::string repeat_in_words(RepeatedId const& repeat);

}  // namespace keydrift::reports

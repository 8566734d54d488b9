#pragma once
// What was met while an archive was read, beside its specimens.  formats/ counts it, reports show
// it.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keydrift {

// How the current determination of specimens with a history was found; the rules are those of
// keydrift/formats/darwin_archive.hpp.
struct DeterminationCounts {
  std::uint64_t accepted{};  // rule 1: it says of itself that it is
  std::uint64_t by_core{};   // rule 2: the core's own name
  std::uint64_t latest{};    // rule 3: the latest by date
  std::uint64_t several{};   // of these specimens, those with more than one in their history
};

// A row whose id an earlier one has.
struct RepeatedId {
  std::string id{};
  std::string first_file{};
  std::uint64_t first_line{};
  std::string file{};
  std::uint64_t line{};
};

struct ArchiveCounts {
  std::optional<DeterminationCounts> history{};  // where the archive has one
  std::uint64_t repeated_ids{};                  // rows whose id an earlier row has
  std::vector<RepeatedId> repeats{};             // the first of them, by their rows
};

}  // namespace keydrift

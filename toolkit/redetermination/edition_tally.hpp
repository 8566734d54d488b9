#pragma once
// Counting with which editions specimens were determined.  Inner header of redetermination.

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

class EditionTally {
 public:
  // `references`: the works that the specimen cites.
  void add(EditionUse const& use, std::string_view references, std::uint64_t specimens = 1);
  void absorb(EditionTally const& other);
  // Precondition: the uses came from `editions`.
  [[nodiscard]] EditionCounts counts(EditionsUsed const& editions) const;

 private:
  void add_work(std::string_view references, std::uint64_t specimens);
  std::map<std::pair<std::size_t, EditionBasis>, std::uint64_t> by_edition_;
  std::map<std::string, std::uint64_t, std::less<>> unnamed_works_;
  std::uint64_t unnamed_{};
};

}  // namespace keydrift

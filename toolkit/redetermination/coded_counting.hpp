#pragma once
// Counting specimens whose words are known by number.  Inner header of redetermination.
//
// What each word means is found out once for each column.  A specimen then costs the intersection
// of its characters' cells, a walk down the tree of evidence paths, and a handful of sums.  Sums
// are kept by number and told by word at the end.

#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/coded_specimen.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {

class CodedCounting {
 public:
  // Borrows all; `words` are those of every specimen that will be counted.
  CodedCounting(RedeterminationGround const& ground, Redeterminer::Counts& counts,
                CodedWords const& words);
  ~CodedCounting();

  // As Redeterminer::count().
  [[nodiscard]] std::optional<Redeterminer::Counted> count(CodedSpecimen const& specimen,
                                                           std::uint64_t place);
  // Adds the sums kept by number to those by word.
  void settle_accounts();
  // Tells the table how many specimens its verdicts have, and forgets their indexes.
  void settle_verdicts();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace keydrift

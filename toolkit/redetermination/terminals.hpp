#pragma once
// Possible terminals gathered over the ways that lead to them: the surest way is kept.

#include <map>
#include <vector>

#include "keydrift/redetermination/compiled_key.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {

class TerminalGatherer {
 public:
  explicit TerminalGatherer(CompiledKey const& key) : key_{key} {}

  // A way to `taxon` that starts from `evidence` and, by what it assumes, ends with `box`.
  void add(TaxonId taxon, Route const& route, bool through_exception, Box const& evidence,
           Box const& box);

  [[nodiscard]] std::vector<PossibleTerminal> take() &&;  // by taxon

 private:
  CompiledKey const& key_;
  std::map<TaxonId, PossibleTerminal> best_;
};

}  // namespace keydrift

#pragma once
// Evidence that settles every couplet it comes to.  Inner header of redetermination.
//
// A verdict depends on the characters of the couplets that some reading comes to, and on no others.
// Where each of these characters is known to a single cell, the cells in the order in which they
// are met stand for the whole record: records that differ elsewhere share the verdict.

#include <string>
#include <vector>

#include "keydrift/redetermination/compiled_key.hpp"

namespace keydrift {

class KnownPath {
 public:
  // Borrows both keys, which are over one space.
  KnownPath(CompiledKey const& old_key, CompiledKey const& new_key);

  // Appends the cells to `out`; false: some character on the way is not known to a single cell, and
  // `out` is of no use.  Every couplet is visited that the walk visits under any reading, and
  // perhaps more.
  [[nodiscard]] bool append(Box const& box, std::string& out);

 private:
  [[nodiscard]] bool follow(CompiledKey const& key, Box const& box, std::string& out);

  CompiledKey const& old_key_;
  CompiledKey const& new_key_;
  std::vector<std::uint32_t> met_;      // by character: the record in which it was met last
  std::vector<std::uint32_t> visited_;  // by couplet, likewise
  std::uint32_t record_{};
  std::vector<CoupletId> stack_;
};

}  // namespace keydrift

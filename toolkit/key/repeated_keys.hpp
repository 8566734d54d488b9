#pragma once
// A key that stands in its file a second time, as when it was pasted twice.

#include <cstdint>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

struct RepeatedKey {
  std::size_t part{};  // rows of Edition::parts
  std::size_t of{};    // the first that says the same
  CoupletId begin{};   // the couplets of the repetition, half open
  CoupletId end{};
};

// Couplet by couplet the same labels, words and ends; in the order of the file.
[[nodiscard]] std::vector<RepeatedKey> repeated_keys(Edition const& edition);

// What is said of a key need not be said of its repetition once more.
void leave_out_repetitions(Edition const& edition, std::vector<RepeatedKey> const& repeated,
                           std::vector<Finding>& findings);

}  // namespace keydrift

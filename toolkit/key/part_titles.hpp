#pragma once
// Finds the part of a file that a lead such as "Key B" leads to.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/key/edition.hpp"

namespace keydrift {

// Titles are compared folded (fold.hpp).  A title may go on after the words that leads use for it:
// "Key B" finds "Key B. Species with a beaked utricle", unless two titles begin so.
class PartTitles {
 public:
  explicit PartTitles(Edition const& edition);
  // Row in Edition::parts of the first part so titled.
  [[nodiscard]] std::optional<std::size_t> find(std::string_view title) const;

 private:
  std::vector<std::pair<std::string, std::size_t>> titles_;  // folded; sorted
};

}  // namespace keydrift

#pragma once
// An edition's front matter as the "Name: value" lines that printed text has.

#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"

namespace keydrift {

struct FrontLine {
  std::string name{};   // "Title", "Life stage", … or as the edition's own
  std::string value{};  // lists joined by "; "; never empty but for the edition's own names
};

// In the order in which they are printed; what the edition does not say is left out.
[[nodiscard]] std::vector<FrontLine> front_lines(FrontMatter const& front);

}  // namespace keydrift

#include "keydrift/formats/printed_answered.hpp"

#include <cstddef>
#include <cstdint>

namespace keydrift::printed {

std::vector<bool> find_answered(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  struct Open {
    std::size_t line{};
    std::uint32_t indent{};
    std::uint32_t number{};
  };
  std::vector<bool> answered(lines.size(), false);
  std::vector<Open> above;  // each set in further than the one before it
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].is_no_lead) continue;
    auto const label = numbering.label_of(lines[i]);
    if (!label) continue;
    auto const indent = lines[i].indent;
    while (!above.empty() && above.back().indent > indent) above.pop_back();
    if (above.empty() || above.back().indent < indent) {
      above.push_back({i, indent, label->number});
      continue;
    }
    auto& rival = above.back();
    if (label->is_dash() || label->number == rival.number) {
      answered[i] = answered[rival.line] = true;
    } else {
      rival.number = label->number;
    }
    rival.line = i;
  }
  return answered;
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_answered.hpp"

#include <cstddef>

namespace keydrift::printed {

std::vector<bool> find_answered(std::vector<SourceLine> const& lines, LabelKinds const& kinds) {
  struct Open {
    std::size_t line{};
    std::uint32_t indent{};
    std::uint32_t kind{};
  };
  std::vector<bool> answered(lines.size(), false);
  std::vector<Open> above;  // each set in further than the one before it
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!kinds[i]) continue;
    auto const indent = lines[i].indent;
    while (!above.empty() && above.back().indent > indent) above.pop_back();
    if (above.empty() || above.back().indent < indent) {
      above.push_back({i, indent, *kinds[i]});
      continue;
    }
    auto& rival = above.back();
    if (*kinds[i] == kAnswersAll || *kinds[i] == rival.kind) {
      answered[i] = answered[rival.line] = true;
    } else {
      rival.kind = *kinds[i];
    }
    rival.line = i;
  }
  return answered;
}

std::vector<bool> find_answered(std::vector<SourceLine> const& lines, Numbering const& numbering) {
  LabelKinds kinds(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].is_no_lead) continue;
    auto const label = numbering.label_of(lines[i]);
    if (label) kinds[i] = label->is_dash() ? kAnswersAll : label->number;
  }
  return find_answered(lines, kinds);
}

}  // namespace keydrift::printed

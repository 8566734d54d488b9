#pragma once
// A finding as one line, for whole-message assertions.

#include <string>
#include <vector>

#include "keydrift/key/finding.hpp"

namespace keydrift::test {

// "name:line:column: severity: message [code] (remedy)"
inline std::string one_line(Finding const& finding) {
  std::string text = finding.file + ":" + std::to_string(finding.place.line) + ":" +
                     std::to_string(finding.place.column) + ": " + to_word(finding.severity) +
                     ": " + finding.message + " [" + finding.code + "]";
  if (!finding.remedy.empty()) text += " (" + finding.remedy + ")";
  return text;
}

inline std::vector<std::string> one_line_each(std::vector<Finding> const& findings) {
  std::vector<std::string> lines;
  lines.reserve(findings.size());
  for (auto const& finding : findings) lines.push_back(one_line(finding));
  return lines;
}

}  // namespace keydrift::test

// "> 1. Wings clear": keys that came in answers to letters, each line quoted with a mark.

#include <algorithm>
#include <cstddef>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestQuoted = 6;        // quoted lines
constexpr std::size_t kFewestQuotedLabels = 3;  // numbered leads among them
constexpr std::size_t kDeepestAnswer = 8;       // answers to answers

// Bytes of the marks in front, without the blanks behind the last one.
std::size_t marks_length(std::string_view line) {
  std::size_t end = 0;
  std::size_t at = 0;
  for (std::size_t marks = 0; marks < kDeepestAnswer && at < line.size() && line[at] == '>';
       ++marks) {
    end = at + 1;
    at = skip_blanks(line, end);
  }
  return end;
}

}  // namespace

void take_off_quotation_marks(std::vector<SourceLine>& lines) {
  std::size_t filled = 0;
  std::size_t quoted = 0;
  std::size_t labels = 0;
  for (auto const& line : lines) {
    if (line.text.empty()) continue;
    ++filled;
    auto const marks = marks_length(line.text);
    if (marks == 0) continue;
    ++quoted;
    // Leads may be marked by signs themselves: then no number stands behind one.
    auto const label = read_label(line.text.substr(skip_blanks(line.text, marks)));
    if (label && label->family == LabelFamily::digits) ++labels;
  }
  if (quoted < kFewestQuoted || quoted * 3 < filled || labels < kFewestQuotedLabels) return;
  for (auto& line : lines) {
    auto const marks = marks_length(line.text);
    if (marks == 0) continue;
    auto const words = skip_blanks(line.text, marks);
    // The blank behind the mark belongs to it: what is set in further is indented.
    auto const columns = count_code_points(line.text.substr(marks, words - marks));
    line.text.remove_prefix(words);
    line.begin += words;
    line.blanks += static_cast<std::uint32_t>(marks) + columns;
    line.indent += columns > 0 ? columns - 1 : 0;
  }
}

}  // namespace keydrift::printed

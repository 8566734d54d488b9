#include "keydrift/formats/printed_bis_labels.hpp"

#include <cstddef>
#include <optional>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {

void tell_bis_labels(std::vector<SourceLine>& lines) {
  constexpr std::size_t kFewest = 2;  // rivals that make a habit
  std::vector<std::pair<std::size_t, Label>> told;
  std::size_t firsts = 0;   // "1 Wings clear"
  std::size_t seconds = 0;  // "1bis Wings dark", the next label behind it
  std::size_t others = 0;   // dashes, and "bis" where no first lead stands before it
  std::optional<Label> before;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto label = read_label(lines[i].text);
    if (!label || label->decimal || label->text_at >= lines[i].text.size()) continue;
    if (!starts_with_upper(lines[i].text.substr(label->text_at))) continue;
    if (label->family != LabelFamily::digits) {
      if (label->is_dash()) ++others;
      continue;
    }
    bool const rival = before && before->number == label->number;
    if (label->letter == "bis") {
      ++(rival && before->letter.empty() && before->marks == label->marks ? seconds : others);
    } else if (label->letter == "ter") {
      if (!rival || before->letter != "bis") ++others;
    } else {
      ++firsts;
    }
    before = label;
    if (label->letter.size() < 2) continue;
    label->letter = label->letter == "bis" ? "b" : "c";
    told.emplace_back(i, *label);
  }
  if (seconds < kFewest || seconds * 4 < firsts * 3 || others * 4 > seconds) return;
  for (auto const& [line, label] : told) {
    lines[line].told = label;
    lines[line].told_as_printed = true;
  }
}

}  // namespace keydrift::printed

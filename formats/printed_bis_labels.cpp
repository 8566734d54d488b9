#include "keydrift/formats/printed_bis_labels.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestBisRivals = 2;  // rivals that make a habit

// The number of "7.7"; nothing of "7.1".
std::optional<std::uint32_t> number_twice(std::string_view printed) {
  auto const stop = printed.find('.');
  if (stop == std::string_view::npos || printed.substr(0, stop) != printed.substr(stop + 1)) {
    return std::nullopt;
  }
  return number_of(printed.substr(0, stop));
}

}  // namespace

void tell_bis_labels(std::vector<SourceLine>& lines) {
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
  if (seconds < kFewestBisRivals || seconds * 4 < firsts * 3 || others * 4 > seconds) return;
  tell_labels(lines, told);
}

void tell_doubled_numbers(std::vector<SourceLine>& lines) {
  std::vector<std::pair<std::size_t, Label>> told;
  std::unordered_set<std::uint32_t> open;  // first leads without a rival so far
  std::size_t firsts = 0;
  std::size_t firsts_of_key = 0;  // those before the last rival, behind which accounts may stand
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto label = read_label(lines[i].text);
    if (!label || label->family != LabelFamily::digits) continue;
    if (!starts_with_upper(lines[i].text.substr(label->text_at))) continue;
    if (!label->decimal) {
      if (open.insert(label->number).second) ++firsts;
      continue;
    }
    auto const number = number_twice(label->printed);
    if (!number) return;
    if (open.erase(*number) == 0) continue;
    label->number = *number;
    label->decimal = false;
    told.emplace_back(i, *label);
    firsts_of_key = firsts;
  }
  if (told.size() < kFewestBisRivals || told.size() * 4 < firsts_of_key * 3) return;
  tell_labels(lines, told);
}

}  // namespace keydrift::printed

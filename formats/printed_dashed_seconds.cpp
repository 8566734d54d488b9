#include "keydrift/formats/printed_dashed_seconds.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestDashedSeconds = 2;

// "1. Wings": a number of its own before a capital, or before a small letter behind its stop.
std::optional<Label> numbered_front(std::string_view line) {
  if (line.empty() || !is_digit(static_cast<unsigned char>(line.front()))) return std::nullopt;
  auto label = read_label(line);
  bool const plain = label && label->family == LabelFamily::digits && !label->decimal &&
                     label->letter.empty() && label->marks == 0 && label->number <= kMostCouplets;
  if (!plain || label->text_at >= line.size()) return std::nullopt;
  auto const first = code_point_at(line, label->text_at).value;
  bool const words = is_upper(first) || (is_lower(first) && label->end != LabelEnd::none);
  return words ? label : std::nullopt;
}

// "–1. Wings", "-1 Wings", "*1 Wings": the number's label, from the sign on.  Behind a blank,
// "– 1. Vein long", the number belongs to the words.
std::optional<Label> dashed_front(std::string_view line) {
  auto const dash = code_point_at(line, 0);
  if (!is_dash(dash.value) && dash.value != '*' && dash.value != '+') return std::nullopt;
  auto const at = dash.length;
  auto label = numbered_front(line.substr(at));
  if (!label) return std::nullopt;
  label->printed = line.substr(0, at + label->printed.size());
  label->text_at += at;
  return label;
}

bool is_dash_before_words(std::string_view line) {
  auto const label = read_label(line);
  return label && label->is_dash() && label->text_at < line.size() &&
         is_dash(code_point_at(line, 0).value) &&
         is_upper(code_point_at(line, label->text_at).value);
}

}  // namespace

void tell_dashed_seconds(std::vector<SourceLine>& lines) {
  std::vector<std::pair<std::size_t, Label>> seconds;
  std::map<std::uint32_t, std::uint8_t> leads;  // of the key at hand, by couplet
  std::size_t couplets = 0;
  std::size_t answered = 0;
  std::size_t strays = 0;  // that answer no couplet: words, or slips
  std::size_t dashes = 0;  // without a number
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.text.empty() || line.markup.role != LineRole::told_by_text) continue;
    if (auto label = dashed_front(line.text)) {
      auto const couplet = leads.find(label->number);
      // "–2. Antennal segment long" beneath another couplet's first lead: words.
      if (couplet == leads.end()) {
        ++strays;
        continue;
      }
      if (couplet->second == 1) ++answered;
      label->marks = couplet->second++;
      seconds.emplace_back(i, *label);
    } else if (auto const first = numbered_front(line.text)) {
      if (first->number == 1) leads.clear();
      leads[first->number] = 1;
      ++couplets;
    } else if (is_dash_before_words(line.text)) {
      ++dashes;
    }
  }
  bool const usual = answered * 2 >= couplets && dashes * 4 <= answered && strays * 4 <= answered;
  if (!usual || answered < std::min(couplets, kFewestDashedSeconds)) return;
  tell_labels(lines, seconds);
}

}  // namespace keydrift::printed

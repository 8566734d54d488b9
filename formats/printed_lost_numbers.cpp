#include "keydrift/formats/printed_lost_numbers.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLost = 4;           // couplets
constexpr std::size_t kMostLinesOfLostLead = 8;  // of a lead

bool is_labelled(std::string_view text) {
  auto const label = read_label(text);
  return label && !label->is_dash() && label->text_at < text.size() &&
         starts_with_upper(text.substr(label->text_at));
}

bool is_second(std::string_view text) {
  auto const label = read_label(text);
  return label && label->is_dash() && label->text_at < text.size();
}

// The first line of the lead without label that the second lead in line `second` answers; blank
// lines part couplets.
std::optional<std::size_t> first_lead_above(std::vector<SourceLine> const& lines,
                                            std::size_t second) {
  auto begin = second;
  while (begin > 0 && second - begin < kMostLinesOfLostLead && !lines[begin - 1].text.empty()) {
    --begin;
  }
  if (begin == second || !starts_with_upper(lines[begin].text)) return std::nullopt;
  if (begin > 0 && !lines[begin - 1].text.empty()) return std::nullopt;  // a longer text
  for (auto i = begin; i < second; ++i) {
    if (lines[i].is_no_lead || read_label(lines[i].text)) return std::nullopt;
  }
  return begin;
}

// The number that ends the lead whose last line is `text`.
std::uint32_t number_led_to(std::string_view text) {
  auto const reference = trailing_reference(text);
  if (!reference || reference->reference.family != LabelFamily::digits) return 0;
  return reference->reference.letter.empty() ? reference->reference.number : 0;
}

}  // namespace

void tell_lost_numbers(std::vector<SourceLine>& lines) {
  std::vector<std::size_t> firsts;
  std::vector<std::uint32_t> led_to;
  std::size_t seconds = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.empty()) continue;
    if (is_labelled(text)) return;
    if (!is_second(text)) continue;
    ++seconds;
    auto const first = first_lead_above(lines, i);
    if (!first) continue;
    firsts.push_back(*first);
    if (auto const number = number_led_to(lines[i - 1].text)) led_to.push_back(number);
    auto last = i;
    while (last + 1 < lines.size() && last - i < kMostLinesOfLostLead &&
           !lines[last + 1].text.empty() && !is_second(lines[last + 1].text)) {
      ++last;
    }
    if (auto const number = number_led_to(lines[last].text)) led_to.push_back(number);
  }
  if (firsts.size() < kFewestLost || firsts.size() * 10 < seconds * 9) return;
  std::vector<std::size_t> ways(firsts.size() + 1);  // that lead to a number
  std::size_t beyond = 0;
  for (auto const number : led_to) {
    if (number >= 2 && number < ways.size()) {
      ++ways[number];
    } else {
      ++beyond;
    }
  }
  std::size_t once = 0;
  for (std::size_t number = 2; number < ways.size(); ++number) once += ways[number] == 1 ? 1 : 0;
  if (once * 10 < (firsts.size() - 1) * 9 || beyond * 10 > firsts.size()) return;
  for (std::size_t n = 0; n < firsts.size(); ++n) {
    auto& line = lines[firsts[n]];
    Label label;
    label.number = static_cast<std::uint32_t>(n + 1);
    label.end = LabelEnd::dot;
    label.printed = line.text.substr(0, 0);
    line.told = label;
    line.told_as_printed = true;
  }
}

}  // namespace keydrift::printed

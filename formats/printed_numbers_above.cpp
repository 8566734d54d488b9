#include "keydrift/formats/printed_numbers_above.hpp"

#include <cstddef>
#include <cstdint>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewest = 3;  // couplets of a key

// "3", "3." above words; 0 for other lines.
std::uint32_t number_above(std::vector<SourceLine> const& lines, std::size_t i) {
  auto const text = lines[i].text;
  if (lines[i].is_no_lead || !is_number_only(text)) return 0;
  if (i + 1 >= lines.size() || !starts_with_upper(lines[i + 1].text)) return 0;
  auto const number = number_of(without_full_stop(text));
  return number <= kMostCouplets ? number : 0;
}

}  // namespace

std::optional<std::vector<SourceLine>> tell_numbers_above(std::vector<SourceLine> const& lines) {
  std::vector<std::size_t> numbers;  // lines
  std::uint32_t count = 0;
  std::size_t labels = 0;  // before words
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const number = number_above(lines, i);
    // Another key begins to count anew.
    if (number > 0 && (number == count + 1 || number == 1)) {
      numbers.push_back(i);
      count = number;
      continue;
    }
    auto const label = read_label(lines[i].text);
    bool const words = label && label->text_at < lines[i].text.size();
    if (words && label->family == LabelFamily::digits && !label->decimal) ++labels;
  }
  if (numbers.size() < kFewest || labels * 3 > numbers.size()) return std::nullopt;
  auto told = lines;
  for (auto const i : numbers) {
    Label label;
    label.family = LabelFamily::digits;
    label.number = number_above(lines, i);
    label.printed = without_full_stop(lines[i].text);
    label.end = lines[i].text.ends_with('.') ? LabelEnd::dot : LabelEnd::none;
    label.text_at = lines[i].text.size();
    told[i].told = label;
    told[i].told_as_printed = true;
  }
  return told;
}

}  // namespace keydrift::printed

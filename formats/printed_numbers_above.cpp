#include "keydrift/formats/printed_numbers_above.hpp"

#include <cstddef>
#include <cstdint>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestBelowNumbers = 3;  // couplets of a key

// "3", "3." above words.
std::optional<Label> number_above(std::vector<SourceLine> const& lines, std::size_t i) {
  auto const text = lines[i].text;
  if (lines[i].is_no_lead || !is_number_only(text)) return std::nullopt;
  // A dash begins the rival of the lead that the number ends.
  bool const words = i + 1 < lines.size() && starts_with_upper(lines[i + 1].text) &&
                     !is_dash(code_point_at(lines[i + 1].text, 0).value);
  if (!words) return std::nullopt;
  auto label = label_alone(text);
  if (label) label->text_at = text.size();
  return label;
}

}  // namespace

std::optional<std::vector<SourceLine>> tell_numbers_above(std::vector<SourceLine> const& lines) {
  std::vector<std::pair<std::size_t, Label>> numbers;  // by line
  std::uint32_t count = 0;
  std::size_t labels = 0;          // before words
  std::uint32_t first_labelled{};  // the number of the first of these behind the numbers
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const above = number_above(lines, i);
    auto const number = above ? above->number : 0;
    // Another key begins to count anew.
    if (number > 0 && (number == count + 1 || number == 1)) {
      numbers.emplace_back(i, *above);
      count = number;
      continue;
    }
    auto const label = read_label(lines[i].text);
    bool const words = label && label->text_at < lines[i].text.size();
    if (!words || label->family != LabelFamily::digits || label->decimal) continue;
    if (first_labelled == 0 && count > 0) first_labelled = label->number;
    ++labels;
  }
  // "1" / "Wings clear" … "2" / "Legs red" … "3 Head black": large figures begin the page.
  bool const begins =
      !numbers.empty() && first_labelled == count + 1 && labels >= kFewestBelowNumbers;
  bool const all = numbers.size() >= kFewestBelowNumbers && labels * 3 <= numbers.size();
  if (!begins && !all) return std::nullopt;
  auto told = lines;
  tell_labels(told, numbers);
  return told;
}

}  // namespace keydrift::printed

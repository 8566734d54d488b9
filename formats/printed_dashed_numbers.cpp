#include "keydrift/formats/printed_dashed_numbers.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_take_out.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestDashed = 4;

// "1. Wings", "1. ♂ : wings": the label's number; 0 for anything else.
std::uint32_t labelled(std::string_view line) {
  if (line.empty() || !is_digit(static_cast<unsigned char>(line.front()))) return 0;
  auto const label = read_label(line);
  bool const plain = label && label->family == LabelFamily::digits && !label->decimal &&
                     label->end == LabelEnd::dot && label->text_at < line.size();
  bool const words = plain && !is_lower(code_point_at(line, label->text_at).value) &&
                     !is_digit(code_point_at(line, label->text_at).value);
  return words ? label->number : 0;
}

}  // namespace

std::size_t clear_dashes_before_numbers(std::string& text) {
  std::vector<Signs> marks;  // dashes and the blanks behind them
  std::uint32_t last = 0;    // number so marked
  bool counts = true;
  std::size_t bare = 0;    // numbers without a dash
  std::size_t dashes = 0;  // dashes before words
  for (auto const& [begin, line] : lines_of(text)) {
    auto const sign = code_point_at(line, 0);
    if (!is_dash(sign.value)) {
      if (labelled(line) > 0) ++bare;
      continue;
    }
    auto const behind = skip_blanks(line, sign.length);
    auto const number = behind > sign.length ? labelled(line.substr(behind)) : 0;
    if (number == 0) {
      ++dashes;
      continue;
    }
    counts = counts && number == last + 1;
    last = number;
    marks.push_back({begin, begin + behind});
  }
  // "– 2. Antennal segment long" is a lead of couplets that are numbered otherwise.
  if (!counts || marks.size() < kFewestDashed) return 0;
  if (bare * 4 > marks.size() || dashes * 2 < marks.size()) return 0;
  take_out(text, marks);
  return marks.size();
}

}  // namespace keydrift::printed

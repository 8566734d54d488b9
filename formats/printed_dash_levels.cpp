// "— Leaves entire" / "— — Petals red" / "— — — Fruit dry": as many dashes as the lead's couplet
// stands deep (common practice of some floras of the early 20th century).  They are taken for
// indentation.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestDeep = 3;       // lines with more than one dash
constexpr std::uint32_t kColumnsOfDash = 4;  // columns that a dash stands for
constexpr std::size_t kMostDashes = 12;

struct Dashes {
  std::size_t count{};
  std::size_t last{};  // where the last one begins
};

// Dashes with a blank between them at most, before a capital.
Dashes dashes_at(std::string_view text) {
  Dashes dashes;
  std::size_t at = 0;
  for (;;) {
    auto const c = code_point_at(text, at);
    if (!is_dash(c.value) || dashes.count > kMostDashes) break;
    ++dashes.count;
    dashes.last = at;
    at += c.length;
    if (is_blank(code_point_at(text, at).value) &&
        is_dash(code_point_at(text, skip_blanks(text, at)).value)) {
      at = skip_blanks(text, at);
    }
  }
  bool const words = dashes.count > 0 && is_blank(code_point_at(text, at).value) &&
                     is_upper(code_point_at(text, skip_blanks(text, at)).value);
  return words && dashes.count <= kMostDashes ? dashes : Dashes{};
}

}  // namespace

void take_dashes_for_depth(std::vector<SourceLine>& lines) {
  std::size_t shallow = 0;
  std::size_t deep = 0;
  std::size_t depth = 0;
  bool stepwise = true;  // no lead is set deeper than one level below the one before
  for (auto const& line : lines) {
    auto const dashes = dashes_at(line.text);
    if (dashes.count == 0) {
      // Numbers that dashes answer are another matter.
      auto const label = depth > 0 ? read_label(line.text) : std::nullopt;
      bool const numbered = label && label->family == LabelFamily::digits &&
                            label->text_at < line.text.size() && deep < kFewestDeep;
      if (numbered) return;
      continue;
    }
    if (depth == 0 && dashes.count > 1) return;
    stepwise = stepwise && dashes.count <= depth + 1;
    depth = dashes.count;
    ++(depth > 1 ? deep : shallow);
  }
  if (shallow < 2 || deep < kFewestDeep || !stepwise) return;
  std::uint32_t words = 0;  // where the words of the lead before begin
  for (auto& line : lines) {
    auto const dashes = dashes_at(line.text);
    if (dashes.count > 0) {
      auto const taken = count_code_points(line.text.substr(0, dashes.last));
      line.text.remove_prefix(dashes.last);
      line.begin += dashes.last;
      line.blanks += taken;
      line.indent = static_cast<std::uint32_t>(dashes.count - 1) * kColumnsOfDash;
      words = line.indent + kColumnsOfDash / 2;
    } else if (!line.text.empty() && words > 0) {
      line.indent = std::max(line.indent, words);
    } else {
      words = 0;
    }
  }
}

}  // namespace keydrift::printed

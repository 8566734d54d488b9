// Double-spaced typescripts: a blank line behind every line.

#include <algorithm>
#include <cstddef>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewest = 12;  // lines with a single blank one behind them
constexpr std::size_t kFewestWrapped = 3;

// "shaft directed basad", ".......... 2", "---- 2": no lead begins so.
bool goes_on(std::string_view text) {
  auto const first = code_point_at(text, 0).value;
  if (is_lower(first)) return true;
  bool const row = first == '.' || first == '-' || first == '_';
  return row && text.size() > 2 && text[1] == text[0] && text[2] == text[0];
}

}  // namespace

std::vector<std::uint32_t> take_out_double_spacing(std::vector<SourceLine>& lines) {
  std::vector<std::size_t> single;  // blank lines that stand alone
  std::size_t close = 0;            // lines directly behind others
  std::size_t wrapped = 0;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    bool const blank_before = lines[i - 1].text.empty();
    if (lines[i].text.empty()) {
      bool const alone = !blank_before && i + 1 < lines.size() && !lines[i + 1].text.empty();
      if (!alone || lines[i].starts_page || lines[i + 1].starts_page) continue;
      single.push_back(i);
      if (goes_on(lines[i + 1].text)) ++wrapped;
    } else if (!blank_before) {
      ++close;
    }
  }
  std::vector<std::uint32_t> taken;
  bool const doubled = single.size() >= kFewest && close * 12 <= single.size() &&
                       wrapped >= kFewestWrapped && wrapped * 8 >= single.size();
  if (!doubled) return taken;
  taken.reserve(single.size());
  std::size_t kept = 0;
  std::size_t next = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (next < single.size() && single[next] == i) {
      taken.push_back(lines[i].number);
      ++next;
      continue;
    }
    if (kept != i) lines[kept] = lines[i];
    ++kept;
  }
  lines.resize(kept);
  return taken;
}

}  // namespace keydrift::printed

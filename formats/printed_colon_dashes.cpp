// "Leaves opposite :—" above the leads beneath it, as the colonial floras of the 19th century print
// it (common practice there): the dash would otherwise be one before a destination.

#include <cstddef>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {
namespace {

// Bytes of the text without the dash behind its last colon; all of it where none stands there.
std::size_t length_without_dash(std::string_view text) {
  auto before = text;
  while (!before.empty()) {
    auto const last = code_point_before(before, before.size());
    if (!is_dash(last.value)) break;
    before = trim_right(before.substr(0, before.size() - last.length));
  }
  return before.size() < text.size() && before.ends_with(':') ? before.size() : text.size();
}

}  // namespace

void take_off_dashes_behind_colons(std::vector<SourceLine>& lines) {
  for (auto& line : lines) line.text = line.text.substr(0, length_without_dash(line.text));
}

}  // namespace keydrift::printed

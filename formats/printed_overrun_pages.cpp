#include "keydrift/formats/printed_overrun_pages.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "[p. 313."
bool is_bracketed_page(std::string_view text) {
  constexpr std::size_t kLongest = 12;
  if (text.size() > kLongest || !text.starts_with("[p")) return false;
  auto inside = trim_right(without_full_stop(text.substr(2)));
  if (inside.starts_with('.')) inside.remove_prefix(1);
  inside = trim_left(inside);
  return !inside.empty() && only_figures(inside);
}

// Where "[p. 313." begins that the text ends in, or is.
std::optional<std::size_t> overrun_at(std::string_view text) {
  auto const at = text.rfind('[');
  if (at == std::string_view::npos || !is_bracketed_page(text.substr(at))) return std::nullopt;
  if (at == 0) return at;
  return is_blank(code_point_before(text, at).value) ? std::optional{at} : std::nullopt;
}

std::string_view without_comma(std::string_view text) {
  if (text.ends_with(',')) text.remove_suffix(1);
  return text;
}

// "… ventrals 148-166 5. meridionalis,", "… at the sides busa, Roe,", "busa, sp. n.,": nothing of a
// name but its page may follow.
bool lacks_page(std::string_view text) {
  constexpr std::size_t kMostWords = 4;  // of the name, "busa, sp. n."
  if (!text.ends_with(',')) return false;
  text = without_comma(text);
  auto at = last_word_begin(text);
  if (is_bare_epithet(text.substr(at))) return true;
  for (std::size_t words = 1; words < kMostWords && at > 0; ++words) {
    at = last_word_begin(trim_right(text.substr(0, at)));
    auto const name = text.substr(at);
    if (is_genusless_name(name) || (at == 0 && is_latin_name(name))) return true;
  }
  return false;
}

// The line that the page at the end of line i is of: the one above, or the next below that lacks
// one.
std::optional<std::size_t> line_of_page(std::vector<SourceLine> const& lines, std::size_t i) {
  constexpr std::size_t kFarthestAbove = 2;  // lines, blank ones among them
  constexpr std::size_t kFarthest = 4;
  for (auto above = i; above-- > 0 && i - above <= kFarthestAbove;) {
    if (lines[above].text.empty()) continue;
    if (lacks_page(lines[above].text)) return above;
    break;
  }
  for (auto below = i + 1; below < lines.size() && below <= i + kFarthest; ++below) {
    if (lacks_page(lines[below].text)) return below;
  }
  return std::nullopt;
}

}  // namespace

void carry_overrun_pages(std::vector<SourceLine>& lines) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const at = overrun_at(lines[i].text);
    if (!at) continue;
    auto const before = trim_right(lines[i].text.substr(0, *at));
    auto const target = line_of_page(lines, i);
    if (!target || lacks_page(before)) continue;
    // Alone, it is of the name above that no leaders tell.
    if (*at == 0 && (*target > i || has_row_of_dots(lines[*target].text))) continue;
    auto page = part_of_line(lines[i], *at + 1, lines[i].text.size());
    if (*at == 0 && *target + 1 == i) {  // where it belongs
      page.goes_on = !is_genusless_name(without_comma(lines[*target].text));
      lines[i] = page;
      continue;
    }
    // A name on a line of its own is told by that line.
    page.goes_on = !is_genusless_name(without_comma(lines[*target].text));
    lines[i].text = before;
    lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(*target) + 1, page);
    if (*target < i) ++i;
  }
}

}  // namespace keydrift::printed

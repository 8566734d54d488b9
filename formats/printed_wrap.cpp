#include "keydrift/formats/printed_wrap.hpp"

#include <utf8proc.h>

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFrontLookedAt = 80;  // bytes; enough to recognise a label or a note

}  // namespace

bool misleads(std::string_view rest) {
  auto const start = start_of(rest, kFrontLookedAt);
  std::size_t text_at = 0;
  if (read_label(start) || starts_note(start) || starts_caption(start) || starts_footnote(start) ||
      starts_couplet_note(start, text_at)) {
    return true;
  }
  auto const c = code_point_at(start, 0).value;
  // Page numbers, brackets, leaders, misread ones.
  if (c == '(' || c == '[' || c == '.' || c == '|' || c == 0x2026 || is_digit(c)) return true;
  // "see 7", "go to couplet 7": a destination on a line of its own.
  std::size_t end = start.find(' ');
  for (int words = 0; words < 3 && end != std::string_view::npos; ++words) {
    end = start.find(' ', end + 1);
    if (read_reference(strip_pointer(start.substr(0, end)))) return true;
  }
  auto const folded = fold(start.substr(0, start.find(' ')));
  return folded == "p." || folded == "page" || folded == "s." || folded == "seite" ||
         folded == "pág." || folded == "página" || folded == "key" || folded == "group" ||
         folded.find_first_not_of("lio|0123456789.)") == std::string::npos;
}

namespace {

// A hyphen or a dash that would be taken for the break of a word.
bool hangs_by_dash(std::string_view word) {
  auto const last = code_point_before(word, word.size()).value;
  return is_dash(last) || last == 0xAD;
}

}  // namespace

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    columns += static_cast<std::size_t>(
        std::max(0, utf8proc_charwidth(static_cast<utf8proc_int32_t>(c.value))));
    at += c.length;
  }
  return columns;
}

std::vector<std::string> wrap(std::string_view text, std::size_t first, std::size_t width) {
  std::vector<std::string> lines;
  std::string line;
  std::size_t line_columns = 0;
  std::size_t room = first;
  std::size_t at = 0;
  while (at < text.size()) {
    // A word, and the words that must not part from it.
    std::size_t end = text.find(' ', at);
    if (end == std::string_view::npos) end = text.size();
    while (end < text.size() &&
           (misleads(text.substr(end + 1)) || hangs_by_dash(text.substr(at, end - at)))) {
      end = text.find(' ', end + 1);
      if (end == std::string_view::npos) end = text.size();
    }
    auto const unit = text.substr(at, end - at);
    auto const unit_columns = columns_of(unit);
    if (!line.empty() && line_columns + 1 + unit_columns > room) {
      lines.push_back(std::move(line));
      line.clear();
      line_columns = 0;
      room = width;
    }
    if (!line.empty()) {
      line += ' ';
      ++line_columns;
    }
    line += unit;
    line_columns += unit_columns;
    at = end + 1;
  }
  if (!line.empty() || lines.empty()) lines.push_back(std::move(line));
  return lines;
}

}  // namespace keydrift::printed

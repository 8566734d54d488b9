#include "keydrift/formats/printed_underlining.hpp"

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_take_out.hpp"

namespace keydrift::printed {
namespace {

// Of a word whose other side is open: a blank, an end of the line, a bracket or a stop.
bool marks_word(std::string_view text, std::size_t at) {
  auto const before = at == 0 ? U'\n' : code_point_before(text, at).value;
  auto const behind = at + 1 == text.size() ? U'\n' : code_point_at(text, at + 1).value;
  auto const is_open = [](char32_t c) {
    return c == '\n' || is_blank(c) || c == '(' || c == ')' || c == ',' || c == ';' || c == ':';
  };
  bool const begins = is_open(before) && is_letter(behind);
  bool const ends = (is_letter(before) || before == '.') && (is_open(behind) || behind == '.');
  return begins || ends;
}

}  // namespace

std::size_t clear_underlining(std::string& text) {
  constexpr std::size_t kFewest = 2;
  std::vector<Signs> marks;
  std::size_t lines = 0;
  for (auto at = text.find('_'); at != std::string::npos; at = text.find('_', at + 1)) {
    if (!marks_word(text, at)) continue;
    auto const last = marks.empty() ? 0 : marks.back().end;
    bool const same = !marks.empty() && text.find('\n', last) > at;
    if (!same) ++lines;
    marks.push_back({at, at + 1});
  }
  if (marks.size() < kFewest) return 0;
  take_out(text, marks);
  return lines;
}

}  // namespace keydrift::printed

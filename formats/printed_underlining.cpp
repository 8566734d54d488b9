#include "keydrift/formats/printed_underlining.hpp"

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"

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
  std::vector<std::size_t> marks;
  for (auto at = text.find('_'); at != std::string::npos; at = text.find('_', at + 1)) {
    if (marks_word(text, at)) marks.push_back(at);
  }
  if (marks.size() < kFewest) return 0;
  std::string cleared;
  std::size_t done = 0;
  std::size_t lines = 0;
  for (auto const at : marks) {
    auto const between = std::string_view{text}.substr(done, at - done);
    if (lines == 0 || between.find('\n') != std::string_view::npos) ++lines;
    cleared.append(between);
    done = at + 1;
  }
  cleared.append(text, done);
  text = std::move(cleared);
  return lines;
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_emphasis.hpp"

#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewest = 3;           // passages that make a habit
constexpr std::size_t kLongestPassage = 80;  // bytes of a name or a number

struct Passage {
  std::size_t open{};
  std::size_t close{};
  std::size_t signs{};  // on each side
};

bool is_word(char32_t c) { return is_letter(c) || is_digit(c); }

// Signs stand at the outside of words: behind a blank or a bracket, before a blank or a stop.
bool may_stand_before(char32_t c) {
  return c == 0 || is_blank(c) || c == '(' || c == '[' || c == '"';
}
bool may_stand_behind(char32_t c) {
  return c == 0 || is_blank(c) ||
         std::u32string_view{U".,;:)]\""}.find(c) != std::u32string_view::npos;
}

std::optional<Passage> passage_at(std::string_view line, std::size_t at) {
  char const sign = line[at];
  if (!may_stand_before(at == 0 ? 0 : code_point_before(line, at).value)) return std::nullopt;
  std::size_t signs = 1;
  while (at + signs < line.size() && line[at + signs] == sign) ++signs;
  auto const begin = at + signs;
  if (signs > 3 || !is_word(code_point_at(line, begin).value)) return std::nullopt;
  auto const close = line.find(sign, begin);
  if (close == std::string_view::npos || close - begin > kLongestPassage) return std::nullopt;
  for (std::size_t i = 0; i < signs; ++i) {
    if (close + i >= line.size() || line[close + i] != sign) return std::nullopt;
  }
  auto const last = code_point_before(line, close).value;
  if (!is_word(last) && last != '.' && last != ')') return std::nullopt;
  if (!may_stand_behind(code_point_at(line, close + signs).value)) return std::nullopt;
  return Passage{at, close, signs};
}

std::vector<Passage> passages_of(std::string_view line) {
  std::vector<Passage> passages;
  for (std::size_t at = 0; at < line.size(); ++at) {
    if (line[at] != '*' && line[at] != '_') continue;
    if (auto const passage = passage_at(line, at)) {
      passages.push_back(*passage);
      at = passage->close + passage->signs - 1;
    }
  }
  return passages;
}

template <class Take>
void for_each_line(std::string_view text, Take take) {
  for (std::size_t begin = 0; begin < text.size();) {
    auto end = text.find('\n', begin);
    if (end == std::string_view::npos) end = text.size();
    take(begin, text.substr(begin, end - begin));
    begin = end + 1;
  }
}

}  // namespace

std::size_t take_off_emphasis(std::string& text) {
  if (text.find('*') == std::string::npos && text.find('_') == std::string::npos) return 0;
  std::size_t found = 0;
  for_each_line(
      text, [&found](std::size_t, std::string_view line) { found += passages_of(line).size(); });
  if (found < kFewest) return 0;
  std::string plain;
  plain.reserve(text.size());
  for_each_line(text, [&](std::size_t begin, std::string_view line) {
    plain.resize(begin, '\n');
    std::size_t done = 0;
    std::size_t signs = 0;
    for (auto const& passage : passages_of(line)) {
      auto const words = passage.open + passage.signs;
      plain.append(line.substr(done, passage.open - done));
      plain.append(line.substr(words, passage.close - words));
      done = passage.close + passage.signs;
      signs += passage.signs * 2;
    }
    plain.append(line.substr(done)).append(signs, ' ');
  });
  plain.resize(text.size(), '\n');
  text = std::move(plain);
  return found;
}

}  // namespace keydrift::printed

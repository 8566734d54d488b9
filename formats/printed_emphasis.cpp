#include "keydrift/formats/printed_emphasis.hpp"

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_take_out.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestPassages = 3;   // passages that make a habit
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
  auto const first = code_point_at(line, begin);
  // "**–** Wings dark": the second lead's label.
  bool const dash = signs == 2 && is_dash(first.value);
  if (signs > 3 || !(dash || is_word(first.value))) return std::nullopt;
  auto const close = line.find(sign, begin);
  if (close == std::string_view::npos || close - begin > kLongestPassage) return std::nullopt;
  for (std::size_t i = 0; i < signs; ++i) {
    if (close + i >= line.size() || line[close + i] != sign) return std::nullopt;
  }
  auto const last = code_point_before(line, close).value;
  // "**1'.**", "**1’**"
  bool const marked = is_digit(first.value) && is_mark(last);
  bool const closed =
      dash ? close == begin + first.length : is_word(last) || last == '.' || last == ')' || marked;
  if (!closed) return std::nullopt;
  if (!may_stand_behind(code_point_at(line, close + signs).value)) return std::nullopt;
  return Passage{at, close, signs};
}

// "=Ausella busa=": volunteers' e-texts set bold type so.
bool is_emphasis_sign(char c, bool saved_page) {
  return c == '*' || c == '_' || c == '=' || (c == '/' && saved_page);
}

std::vector<Passage> passages_of(std::string_view line, bool saved_page) {
  std::vector<Passage> passages;
  for (std::size_t at = 0; at < line.size(); ++at) {
    if (!is_emphasis_sign(line[at], saved_page)) continue;
    if (auto const passage = passage_at(line, at)) {
      passages.push_back(*passage);
      at = passage->close + passage->signs - 1;
    }
  }
  return passages;
}

// "… never collected. =Sweet" / "    Aceron= (_A. busa_)": the sign that opens on the line, and
// byte of the next line with the one that closes.
std::optional<Passage> passage_over_break(std::string_view line, std::string_view next) {
  constexpr std::size_t kLongestEnd = 40;  // bytes on either line
  for (std::size_t at = line.size(); at-- > 0 && line.size() - at <= kLongestEnd;) {
    if (line[at] != '=' && line[at] != '_') continue;
    bool const opens = may_stand_before(at == 0 ? 0 : code_point_before(line, at).value) &&
                       at + 1 < line.size() && is_word(code_point_at(line, at + 1).value);
    if (!opens) return std::nullopt;
    auto const close = next.find(line[at]);
    if (close == std::string_view::npos || close == 0 || close > kLongestEnd) return std::nullopt;
    auto const last = code_point_before(next, close).value;
    bool const closes = is_word(last) && may_stand_behind(code_point_at(next, close + 1).value) &&
                        next.find_first_not_of(" \t") < close;
    return closes ? std::optional{Passage{at, close, 1}} : std::nullopt;
  }
  return std::nullopt;
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

std::size_t take_off_emphasis(std::string& text, bool saved_page) {
  if (text.find_first_of(saved_page ? "*_=/" : "*_=") == std::string::npos) return 0;
  std::vector<Signs> signs;
  for_each_line(text, [&signs, &text, saved_page](std::size_t begin, std::string_view line) {
    auto const below = begin + line.size() + 1;
    if (below < text.size()) {
      auto const next = std::string_view{text}.substr(below, text.find('\n', below) - below);
      if (auto const over = passage_over_break(line, next)) {
        signs.push_back({begin + over->open, begin + over->open + 1});
        signs.push_back({below + over->close, below + over->close + 1});
      }
    }
    for (auto const& passage : passages_of(line, saved_page)) {
      signs.push_back({begin + passage.open, begin + passage.open + passage.signs});
      signs.push_back({begin + passage.close, begin + passage.close + passage.signs});
    }
  });
  auto const found = signs.size() / 2;
  if (found < kFewestPassages) return 0;
  std::sort(signs.begin(), signs.end(),
            [](Signs const& a, Signs const& b) { return a.begin < b.begin; });
  take_out(text, signs);
  return found;
}

}  // namespace keydrift::printed

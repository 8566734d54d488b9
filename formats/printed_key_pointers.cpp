#include "keydrift/formats/printed_key_pointers.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {

using namespace std::string_view_literals;

std::optional<std::size_t> key_pointer_at_end(std::string_view text) {
  constexpr std::size_t kMostWords = 14;
  static constexpr std::array kPointers{
      "see key to "sv,   "see the key to "sv, "see key of "sv,   "siehe schlüssel der "sv,
      "voir clé des "sv, "ver clave de "sv,   "go to key to "sv, "go to the key to "sv};
  constexpr std::size_t kLongest = 120;  // bytes
  auto const from = text.size() > kLongest ? text.size() - kLongest : 0;
  for (auto at = from; at + 1 < text.size(); ++at) {
    bool const opens = text[at] == '(' || text[at] == '.' || text[at] == ';' || text[at] == ',';
    if (!opens || at == 0) continue;
    auto const begin = skip_blanks(text, at + 1);
    static constexpr auto kInitials = "sSvVgG"sv;
    if (begin >= text.size() || kInitials.find(text[begin]) == std::string_view::npos) continue;
    auto const folded = fold(text.substr(begin));
    bool const points = std::any_of(kPointers.begin(), kPointers.end(),
                                    [&](std::string_view one) { return folded.starts_with(one); });
    // Words behind a bracket that closes go on about something else.
    auto const close = text.find(')', begin);
    auto const rest = close == std::string_view::npos ? std::string_view{} : text.substr(close + 1);
    bool const last = rest.find_first_not_of(". ") == std::string_view::npos;
    if (points && last && words_of(text.substr(begin)).size() <= kMostWords) return begin;
  }
  return std::nullopt;
}

}  // namespace keydrift::printed

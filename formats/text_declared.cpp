#include "keydrift/formats/text_declared.hpp"

#include <algorithm>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/xml_scan.hpp"

namespace keydrift::encodings {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFront = std::size_t{64} << 10;  // bytes

bool same_letter(char a, char b) {
  return a == b || ((a | 0x20) == (b | 0x20) && (a | 0x20) >= 'a' && (a | 0x20) <= 'z');
}

std::size_t find_word(std::string_view text, std::string_view word, std::size_t from) {
  auto const found = std::search(text.begin() + static_cast<std::ptrdiff_t>(from), text.end(),
                                 word.begin(), word.end(), same_letter);
  return found == text.end() ? std::string_view::npos
                             : static_cast<std::size_t>(found - text.begin());
}

constexpr auto kBlanks = " \t\r\n\f"sv;

std::string_view without_blanks(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of(kBlanks), text.size()));
  return text;
}

// "text/html; charset=koi8-r", "text/html; charset = 'koi8-r'".
std::string_view charset_in(std::string_view content) {
  constexpr auto kWord = "charset"sv;
  for (auto at = find_word(content, kWord, 0); at != std::string_view::npos;
       at = find_word(content, kWord, at + kWord.size())) {
    auto rest = without_blanks(content.substr(at + kWord.size()));
    if (rest.empty() || rest.front() != '=') continue;
    rest = without_blanks(rest.substr(1));
    if (rest.empty()) return {};
    if (rest.front() == '"' || rest.front() == '\'') {
      auto const close = rest.find(rest.front(), 1);
      return close == std::string_view::npos ? std::string_view{} : rest.substr(1, close - 1);
    }
    return rest.substr(0, rest.find_first_of(" \t\r\n\f;\"'>"));
  }
  return {};
}

}  // namespace

std::string_view declared_charset(std::string_view bytes) {
  bytes = bytes.substr(0, kFront);
  std::size_t length = 0;
  for (auto at = bytes.find('<'); at != std::string_view::npos;
       at = bytes.find('<', at + std::max<std::size_t>(length, 1))) {
    auto const tag = hypertext::tag_at(bytes.substr(at));
    length = tag.length;
    if (length == 0 || tag.closes) continue;
    if (tag.name == "script" || tag.name == "style") {
      length = hypertext::closing_tag(bytes, at + length, tag.name) - at;
    } else if (tag.name == "meta") {
      // The attribute "charset" itself, or the word within "content"; with a name, the content is
      // what the page says to its readers.
      auto const written = bytes.substr(at, length);
      if (!hypertext::attribute_of(written, "name").empty()) continue;
      auto const label = charset_in(written);
      if (!label.empty()) return label;
    }
  }
  return xml::declared_encoding(bytes);
}

}  // namespace keydrift::encodings

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift {
namespace {

// Of words of ASCII letters and signs between them, without making tokens of it; nullopt: there is
// something else.
std::optional<std::string> of_plain_words(std::string_view text) {
  std::string words;
  words.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    auto const c = static_cast<unsigned char>(text[at]);
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
      auto const end = reading::plain_word_end(text, at);
      if (end == at) return std::nullopt;
      auto const before = words.size();
      if (before > 0) words += ' ';
      auto const begin = words.size();
      reading::append_plain_word(words, text.substr(at, end - at));
      if (reading::is_article(std::string_view{words}.substr(begin))) words.resize(before);
      at = end;
      continue;
    }
    if (c >= 0x80 || (c >= '0' && c <= '9') || c == '{') return std::nullopt;
    ++at;
  }
  return words;
}

}  // namespace

std::string normalised_words(std::string_view text) {
  if (auto words = of_plain_words(text)) return std::move(*words);
  std::string joined;
  joined.reserve(text.size());
  for (auto const& token : reading::tokenise(text)) {
    if (token.kind == reading::TokenKind::sign || token.kind == reading::TokenKind::mark) continue;
    if (token.kind == reading::TokenKind::word && reading::is_article(token.word)) continue;
    if (!joined.empty()) joined += ' ';
    joined += token.word;
  }
  return joined;
}

}  // namespace keydrift

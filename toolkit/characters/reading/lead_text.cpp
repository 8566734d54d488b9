#include "keydrift/characters/reading/lead_text.hpp"

namespace keydrift::reading {

LeadText::LeadText(std::string_view words, std::string_view language_tag)
    : text{words}, language{language_tag}, tokens{tokenise(words)}, roles(tokens.size()) {
  info.reserve(tokens.size());
  phrase_roots.reserve(tokens.size());
  for (auto const& token : tokens) phrase_roots.push_back(phrase_root(token));
  partner.assign(tokens.size(), kNone);
  enclosing.assign(tokens.size(), kNone);
  std::vector<std::uint32_t> round;
  std::vector<std::uint32_t> square;
  for (std::uint32_t i = 0; i < tokens.size(); ++i) {
    auto const& token = tokens[i];
    info.push_back(token.kind == TokenKind::word ? word_info(token.word, language) : WordInfo{});
    if (token.kind == TokenKind::mark) roles[i] = Role::mark;
    if (token.kind != TokenKind::sign) continue;
    auto& stack = token.sign == U'(' || token.sign == U')' ? round : square;
    if (token.sign == U'(' || token.sign == U'[') {
      stack.push_back(i);
    } else if ((token.sign == U')' || token.sign == U']') && !stack.empty()) {
      partner[i] = stack.back();
      partner[stack.back()] = i;
      stack.pop_back();
    }
  }
  drop_crossing_pairs();
  // Only parentheses that are closed count.
  std::vector<std::uint32_t> open;
  for (std::uint32_t i = 0; i < tokens.size(); ++i) {
    if (!open.empty() && partner[open.back()] == i) open.pop_back();
    if (!open.empty()) enclosing[i] = open.back();
    if (opens(i)) open.push_back(i);
  }
}

// "[5 (8] mm)": of two pairs of which each has one end within the other, the one that opens later
// is none.
void LeadText::drop_crossing_pairs() {
  std::vector<std::uint32_t> open;
  for (std::uint32_t i = 0; i < tokens.size(); ++i) {
    if (partner[i] == kNone) continue;
    if (partner[i] > i) {
      open.push_back(i);
      continue;
    }
    while (open.back() != partner[i]) {
      auto const crossing = open.back();
      partner[partner[crossing]] = kNone;
      partner[crossing] = kNone;
      open.pop_back();
    }
    open.pop_back();
  }
}

}  // namespace keydrift::reading

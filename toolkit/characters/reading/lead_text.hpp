#pragma once
// A lead's text cut into tokens, with what is known of each word and what has been read of it.

#include <boost/container/small_vector.hpp>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift::reading {

// What a token has been taken for.
enum class Role : std::uint8_t {
  open,       // nothing yet
  figure,     // part of a figure or plate reference
  note,       // inside a note in brackets
  exception,  // part of an exception
  limit,
  hedge,
  number,  // part of a measurement, count or ratio
  state,   // part of a state that the lexicon knows, or of its negation
  mark,
};

// Borrows the text.
struct LeadText {
  std::string_view text;
  std::string_view language;
  std::vector<Token> tokens;
  std::vector<WordInfo> info;
  std::vector<Role> roles;
  std::vector<std::uint32_t> phrase_roots;  // see phrase_root()
  // The other half of a pair of parentheses or brackets; kNone where it is missing, and elsewhere.
  // Of two pairs one stands within the other or outside of it.
  std::vector<std::uint32_t> partner;
  // The parenthesis that is open at a token, kNone outside of all.
  std::vector<std::uint32_t> enclosing;
  static constexpr std::uint32_t kNone = 0xFFFFFFFF;

  LeadText(std::string_view words, std::string_view language_tag);

  [[nodiscard]] std::uint32_t size() const { return static_cast<std::uint32_t>(tokens.size()); }
  [[nodiscard]] bool is_word(std::uint32_t at) const { return tokens[at].kind == TokenKind::word; }
  [[nodiscard]] bool is_word(std::uint32_t at, std::string_view word) const {
    return is_word(at) && tokens[at].word == word;
  }
  [[nodiscard]] bool is_sign(std::uint32_t at, char32_t sign) const {
    return tokens[at].kind == TokenKind::sign && tokens[at].sign == sign;
  }
  // A parenthesis that has its other half.
  [[nodiscard]] bool opens(std::uint32_t at) const {
    return is_sign(at, U'(') && partner[at] != kNone;
  }
  // With most words no qualifying phrase begins: see qualifiers_at().
  [[nodiscard]] bool may_qualify(std::uint32_t at) const { return phrase_roots[at] != kNoPhrase; }
  [[nodiscard]] bool is_open(std::uint32_t at) const { return roles[at] == Role::open; }
  // "deeply", "rather": how much, but not of what.
  [[nodiscard]] bool is_degree(std::uint32_t at) const {
    if (!is_word(at)) return false;
    auto const& word = tokens[at].word;
    return info[at].is(kDegree) || (word.size() > 4 && word.ends_with("ly"));
  }
  // What two measures or numbers make: "ratio", "index".
  [[nodiscard]] bool is_ratio_word(std::uint32_t at) const {
    return is_word(at, "ratio") || is_word(at, "index") || is_word(at, "indices") ||
           is_word(at, "quotient");
  }
  // Carries content: a word that is neither a function word nor read as something else.
  [[nodiscard]] bool is_content(std::uint32_t at) const {
    return is_open(at) && is_word(at) && !info[at].is(kFunction);
  }
  [[nodiscard]] std::string_view slice(std::uint32_t first, std::uint32_t last) const {
    return text.substr(tokens[first].begin, tokens[last].end - tokens[first].begin);
  }
  void give(std::uint32_t first, std::uint32_t end, Role role) {
    for (auto i = first; i < end; ++i) roles[i] = role;
  }

 private:
  void drop_crossing_pairs();
};

// Every qualifying phrase that begins at tokens[at] and ends before `stop`, shortest first.
// Articles and hyphens inside a phrase are passed over ("without the above", "more-or-less").
using Phrases = boost::container::small_vector<Phrased, 4>;
[[nodiscard]] Phrases qualifiers_at(LeadText const& text, std::uint32_t at, std::uint32_t stop);

}  // namespace keydrift::reading

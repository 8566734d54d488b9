#pragma once
// Lead text as words, numbers and signs, each with its place in the text.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::reading {

enum class TokenKind : std::uint8_t {
  word,    // letters, digits behind letters ("M1", "mm2"), inner apostrophes; ordinals ("3rd")
  number,  // 12  2.5  2,5  1/2  ½  1½
  sign,    // one character that is neither; all dashes are '-'
  mark,    // {character: state}, braces included
};

struct Token {
  std::uint32_t begin{};  // byte offsets in the text, half open
  std::uint32_t end{};
  TokenKind kind{TokenKind::sign};
  bool blank_before{false};  // a blank, or the beginning of the text, in front
  bool capital{false};       // words: begins with an upper-case letter
  bool is_fraction{false};   // numbers: printed with a fraction ("1/2", "2½")
  bool formula{false};       // part of "3-2-1" or its like: see mark_formulas()
  bool names_part{false};    // words that were numbers, "1" of "tergite 1": name_numbered_parts()
  char32_t sign{};           // signs only
  double value{};            // numbers only
  std::string word{};        // words: case-folded, NFC; numbers: in plain digits; signs of formulas
};

[[nodiscard]] std::vector<Token> tokenise(std::string_view text);

// The end of a word that begins with an ASCII letter at `at` and is nothing but ASCII letters and
// digits, as most are; `at` where it goes on with something else.
[[nodiscard]] std::size_t plain_word_end(std::string_view text, std::size_t at);
// Appends such a word, folded.
void append_plain_word(std::string& to, std::string_view word);

// Unicode case folding and NFC.  Text that is no UTF-8 has its ASCII letters folded.
[[nodiscard]] std::string fold(std::string_view text);

// "spikes" -> "spike", "leaves" -> "leaf", "antennae" -> "antenna": the simple plurals of English
// and the Latin ones that English keys use.  Takes and gives folded words.
[[nodiscard]] std::string singular(std::string_view word);

// Every word of them.
[[nodiscard]] std::string singular_words(std::string_view words);

// Has the look of a plural; "axis" and "glabrous" have not.
[[nodiscard]] bool looks_plural(std::string_view word);

// The words of the tokens: what "the same words" means (see normalised_words).
[[nodiscard]] std::string join_words(std::vector<std::string_view> const& words);

// Rounded to twelve significant digits, so that 1.1 cm and 11 mm are one number.
[[nodiscard]] double clean(double value);

}  // namespace keydrift::reading

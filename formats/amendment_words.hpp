#pragma once
// The words in which papers say how a key is to be changed, in six languages.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

enum class Sense : std::uint8_t {
  other,    // a word that says nothing of these
  couplet,  // "couplet", "Gabelpunkt", "dichotomie", "dilema", "passo", "numerus"
  replace,  // "replace", "ersetzen", …
  read,     // "should read", "lautet", "lire", …
  insert,
  add,
  remove,
  change,        // "change", "modified", "ändern", …
  modification,  // "modifications to"
  after,
  before,
  between,
  instead,   // "for … read", "statt … lies"
  becomes,   // what parts old words from new ones: "to", "by", "durch", "par"
  leads_to,  // "leads to", "führt zu"
  throughout,
  page,
  line,
  ordinal,  // "first", "zweite": Token::number is 1, 2 …
  onwards,  // "ff.", "et seq."
  through,  // between numbers: "12–14", "12 to 14"
  joins,    // "and", commas
  label,    // "7", "7a'"
  quote,    // words in quotation marks
  colon,
  stop,     // full stop, semicolon
  bracket,  // a parenthesis with all that it holds
};

struct Token {
  Sense sense{Sense::other};
  std::string_view text;  // of the text read; of a quotation, what stands within the marks
  std::size_t begin{};    // bytes of the text read, marks and brackets included
  std::size_t end{};
  std::uint32_t number{};  // of an ordinal
};

// Borrows the text.
[[nodiscard]] std::vector<Token> read_words(std::string_view text);

// Case-folded, without accents and the like: "Gabelpunkt über" is "gabelpunkt uber".
[[nodiscard]] std::string plain_words(std::string_view text);

}  // namespace keydrift::printed

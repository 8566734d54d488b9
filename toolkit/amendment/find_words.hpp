#pragma once
// Finds the words that an erratum speaks of.  Inner header of the folder.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::amending {

struct WordsAt {
  std::size_t begin{};  // bytes
  std::size_t end{};
};

// Where `words` stand in `text` as whole words.  Kinds of dashes, quotation marks and blanks do not
// matter; neither does case where nothing agrees in case as well.  Do not overlap; in order.
[[nodiscard]] std::vector<WordsAt> find_words(std::string_view text, std::string_view words);

// The same, where case agrees: "brown" is no author.
[[nodiscard]] std::vector<WordsAt> find_words_as_cased(std::string_view text,
                                                       std::string_view words);

// `to` with a capital where the words that it replaces begin with one and `from` does not.
[[nodiscard]] std::string in_case_of(std::string_view replaced, std::string_view from,
                                     std::string to);

}  // namespace keydrift::amending

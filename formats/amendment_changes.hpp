#pragma once
// "For 'pale' read 'dark'": words of a key and what they become.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/amendment_words.hpp"

namespace keydrift::printed {

struct TextSpan {
  std::size_t begin{};
  std::size_t end{};
};

// The two stand at from_at and to_at in the text; a span is empty where the words are not printed
// ("delete 'in part'").
struct WordChange {
  std::string from;
  std::string to;
  TextSpan from_at;
  TextSpan to_at;
};

// `placed`: a heading before the text says which couplet is meant, so that numbers alone ("change 9
// to 10") are the words.
[[nodiscard]] std::optional<WordChange> find_change(std::string_view text,
                                                    std::vector<Token> const& tokens, bool placed);

// Without blanks, commas, colons and one full stop at the end.
[[nodiscard]] std::string_view without_stop(std::string_view text);

}  // namespace keydrift::printed

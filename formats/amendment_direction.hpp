#pragma once
// "Read 'dark' and not 'pale'": which of two quoted wordings is the one to be changed.  Inner
// header of formats.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/formats/amendment_words.hpp"

namespace keydrift::printed {

enum class PairDirection : std::uint8_t {
  old_first,   // "'pale' should read 'dark'", "for 'pale' read 'dark'"
  new_first,   // "read 'dark', not 'pale'", "muss es „dark“ statt „pale“ heißen"
  unknown,     // the words do not say, and guessing would turn the key round
  other_words  // one of the two is not quoted: "in 'Wings pale', for pale read 'dark'"
};

// `first` and `second`: the only quotations among the tokens.
[[nodiscard]] PairDirection direction_of(std::vector<Token> const& tokens, std::size_t first,
                                         std::size_t second);

}  // namespace keydrift::printed

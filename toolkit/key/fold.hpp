#pragma once
// Comparing printed words without regard to case, compatibility forms and spacing.

#include <string>
#include <string_view>

namespace keydrift {

// Unicode NFKC with case folding (Unicode Standard Annex 15; Unicode Standard 3.13 D145), every
// run of white space made one blank, none at the ends.  Bytes that are not UTF-8 stay as they are.
[[nodiscard]] std::string fold_words(std::string_view text);

}  // namespace keydrift

#pragma once
// "Couplets 8–13 become 9–14": numbers that couplets of the key are to have.  Inner header of
// formats.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/amendment_words.hpp"
#include "keydrift/key/amendment.hpp"

namespace keydrift::printed {

struct RenumberingRead {
  RenumberCouplets step;
  std::string rest;  // of the sentence, without these words
};

// Empty where the words give no couplets other numbers, or do not say which.
[[nodiscard]] std::optional<RenumberingRead> find_renumbering(std::string_view text);

// "renumber", "umnummerieren" and the like, whether or not they are understood.
[[nodiscard]] bool speaks_of_renumbering(std::vector<Token> const& tokens);

}  // namespace keydrift::printed

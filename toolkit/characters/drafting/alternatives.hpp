#pragma once
// What a statement says of its structure, cut into alternatives.  Inner header of drafting.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/drafting/sayings.hpp"

namespace keydrift::drafting {

struct Cut {
  std::vector<Item> items;      // at least one
  std::string printed_subject;  // empty where the text does not hold it
};

// `words`: the statement, normalised; the first `subject` of them name the structure.  Commas and
// "or" part alternatives: "flat, channelled or inrolled".  Where the pieces do not add up to the
// words again, the whole is one item.
[[nodiscard]] Cut cut_alternatives(std::string_view text, std::string_view language,
                                   std::vector<std::string> const& words, std::size_t subject);

// The words behind the structure as they are printed, uncut.
[[nodiscard]] Item whole_item(std::string_view text, std::vector<std::string> const& words,
                              std::size_t subject);

// By word: a hyphen joins it to the next ("scale-like").
[[nodiscard]] std::vector<bool> hyphens_behind(std::string_view text,
                                               std::vector<std::string> const& words);

// Stands for itself beside an "or": one word that is no number ("brown"), or a phrase of its own
// ("with ribs").
[[nodiscard]] bool is_whole_alternative(Item const& item);

}  // namespace keydrift::drafting

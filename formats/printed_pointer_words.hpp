#pragma once
// Words that point to a couplet, and words whose numbers are no couplets'.  Inner header of
// formats.

#include <string_view>

namespace keydrift::printed {

// A word without the brackets before it and the brackets, full stops and commas behind it.
[[nodiscard]] std::string_view strip_word_marks(std::string_view word);

// "V." of "V. 9", "S." of "S. 9": no word that points is cut short to a capital.
[[nodiscard]] bool is_initial(std::string_view printed);

// "go", "siehe", "to": words that announce a couplet's number, or go along with such.
[[nodiscard]] bool is_pointer_word(std::string_view word);

// Of the words that point, folded, those that announce a number: "go", "siehe".
[[nodiscard]] bool is_strong_pointer(std::string_view folded);

// Of the words that point, folded, those that stand right before a number: "nr".
[[nodiscard]] bool is_number_word(std::string_view folded);

// Folded, a word whose number is no couplet's: "fig", "about".
[[nodiscard]] bool is_numbered_thing(std::string_view folded);

}  // namespace keydrift::printed

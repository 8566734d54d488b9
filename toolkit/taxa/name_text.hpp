#pragma once
// The letters of names: cleaning, folding, and how far two words are apart.
//
// What the rest of the folder builds its keys of; other folders want names.hpp.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::name_parts {

[[nodiscard]] bool ascii(std::string_view text);

// NFC; invalid bytes, daggers and invisible characters dropped; every kind of blank, dash, quote
// and multiplication sign made one kind; blanks squeezed and trimmed.
[[nodiscard]] std::string cleaned_name(std::string_view text);

// What the first letter or digit of a word is.
enum class Initial { none, capital, small, digit };
[[nodiscard]] Initial initial_of(std::string_view word);

// Two ways to write marked letters without marks; names agree when either way makes them equal.
enum class Marks {
  transcribed,  // ä -> ae, ö -> oe, ü -> ue, ø -> oe, å -> ao (ICN 60.7; ICZN 32.5.2 for umlauts)
  dropped,      // ä -> a, ö -> o …
};
// Case-folded letters and digits only; a diaeresis (ë, ï, a marked vowel after a vowel) is always
// just dropped, ligatures are two letters, hyphens, apostrophes and stops vanish, and a number
// before a hyphen is written out in Latin ("10-punctata": ICZN 32.5.2).
[[nodiscard]] std::string folded_word(std::string_view word, Marks marks);

// A folded epithet without its gender ending (ICZN 31.2, 34.2; ICN 23.5, 32.2; the table of forms
// is from memory).  Genitives (-i, -ae, -orum, -arum) and stems of one letter stay whole.
[[nodiscard]] std::string gender_stem(std::string_view folded);

// A folded word by the variant classes of ICZN art. 58, genitive doublets and Greek endings taken
// together: ae/oe/e, ei/i/y, i/j, u/v, c/k/ch, t/th, f/ph, ct/t, single/double consonants.
[[nodiscard]] std::string variant_stem(std::string_view folded, bool epithet);

// Edits (insert, drop, replace, exchange neighbours; each pair of letters once) that make b of a;
// nullopt when more than `limit`.  Cost: length x limit.
[[nodiscard]] std::optional<std::size_t> edit_distance(std::string_view a, std::string_view b,
                                                       std::size_t limit);

}  // namespace keydrift::name_parts

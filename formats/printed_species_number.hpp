#pragma once
// The number or letter of a taxon, printed before its name.  Inner header of formats.

#include <span>
#include <string_view>

namespace keydrift::printed {

// Is the first of the words the number of the taxon that the others name, and no couplet's: "3. Aus
// bus", "12) Aus", "6.3. A. bus", "3a. A. bus var. bus", "17.–19. Aus"; or its letter: "a. subsp.
// bus"?
[[nodiscard]] bool begin_with_species_number(std::span<std::string_view const> words);

// "a. subsp. bus", "b) var. cus": a taxon beneath a species with its letter.
[[nodiscard]] bool is_lettered_rank(std::span<std::string_view const> words);
[[nodiscard]] bool is_lettered_rank(std::string_view text);

}  // namespace keydrift::printed

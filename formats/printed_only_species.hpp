#pragma once
// Genera that are led to with the one species that they have there.  Inner header of formats.

#include <optional>
#include <string>
#include <string_view>

namespace keydrift::printed {

struct OnlySpecies {
  std::string species;  // its name, the genus in full where the text has it
  std::string before;   // what is printed before it, squeezed
};

// "Ausella, only A. bus Roe": the species that is meant.  What stands in brackets behind a genus,
// "Ausella Roe (one species: A. bus)", is a remark.  nullopt for any other text.
[[nodiscard]] std::optional<OnlySpecies> only_species(std::string_view text);

}  // namespace keydrift::printed

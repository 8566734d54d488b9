#pragma once
// The genus that running text names.  Inner header of formats.

#include <string>
#include <string_view>
#include <unordered_set>

namespace keydrift::printed {

// The genus with that initial that the text names with a species, as "Aus spp.", with its author or
// among others ("four genera: Aus, Bus and Cus"); `epithets`: what leads print behind a genus,
// short or in full.  Empty without one.
[[nodiscard]] std::string genus_in_passage(std::string_view text, std::string_view initial,
                                           std::unordered_set<std::string> const& epithets);

}  // namespace keydrift::printed

#pragma once
// Species without an epithet, as they stand behind a genus: "sp. 1", "sp. nov. A", "sp. nr bus";
// and genera without a name.
// Inner header of formats.

#include <cstddef>
#include <span>
#include <string_view>

namespace keydrift::printed {

// "sp.", "spp.", "spA", "sp1,": the word that stands for the epithet.
[[nodiscard]] bool is_unnamed(std::string_view word);

// "Genus A", "Genus 2": a genus that has no name yet, the first word as it was read for a name.
[[nodiscard]] bool is_unnamed_genus(std::string_view word, std::string_view code);

// "undescribed genus", "unnamed genus", "Morphospecies" and the like: a code is to follow.
[[nodiscard]] bool is_undescribed(std::string_view text);

// How many of the words, from the first on, name the unnamed species: 3 of "sp. nov. A, Tarn Hill",
// 2 of "type B"; 0 where the words name none.
[[nodiscard]] std::size_t words_of_unnamed_species(std::span<std::string_view const> words);

}  // namespace keydrift::printed

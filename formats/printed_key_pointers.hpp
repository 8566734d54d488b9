#pragma once
// Pointers to other keys at the ends of leads.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string_view>

namespace keydrift::printed {

// Where the pointer to another key begins that the text ends in behind a sentence or in a bracket,
// "… without pores. See key to the softwoods.", "… (hardwoods; see key to the species, p. 61)".
[[nodiscard]] std::optional<std::size_t> key_pointer_at_end(std::string_view text);

// "genus Ruvia" of "see genus Ruvia, p. 44", "Gattung Ruvia" of "s. Gattung Ruvia, S. 44": a group
// that is keyed elsewhere; empty for anything else.
[[nodiscard]] std::string_view pointed_group(std::string_view text);

}  // namespace keydrift::printed

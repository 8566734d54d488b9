#pragma once
// Subspecies, varieties and forms that a lead's end names behind their species.  Inner header of
// formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_destination_words.hpp"

namespace keydrift::printed {

// "var. cus" and "var. dus" of a bracket behind their species, and the place behind the words that
// say so.  No ranks where the bracket says anything else.
struct BracketedRanks {
  std::vector<std::string> ranks;
  std::size_t end{};
};
// "Aus bus (var. cus, var. dus)": each of two or more.
[[nodiscard]] BracketedRanks bracketed_ranks(DestinationWords const& words, std::size_t at);
// "Aus bus (a. subsp. cus)", "Aus bus (var. cus)": the bracket says which of the species.
[[nodiscard]] BracketedRanks bracketed_rank(DestinationWords const& words, std::size_t at);

// "var. cus Roe" at word `i`.
[[nodiscard]] bool names_lower_rank(DestinationWords const& words, std::size_t i);

// Does `name` go on with that rank, as "Aus bus subsp. cus" does with "var.": it has the rank not
// yet?
[[nodiscard]] bool may_go_on_with(std::string_view name, std::string_view rank);

// Of a name before "et var. dus" what belongs to both: "Aus bus" of "Aus bus var. cus" and "Aus bus
// subsp. cus", "Aus bus subsp. cus" of "Aus bus subsp. cus var. dus".  Empty for a name without
// such a rank: "Aus bus et var. cus" is the species with a variety of it.
[[nodiscard]] std::string_view shared_with_rank(std::string_view name, std::string_view rank);

}  // namespace keydrift::printed

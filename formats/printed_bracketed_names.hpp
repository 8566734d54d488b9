#pragma once
// Common names with the Latin ones in brackets behind them.  Inner header of formats.

#include <optional>
#include <string_view>

#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

// "Lake Bat or Common Bat (Aus bus, A. cus), hardly told apart" and "Lake Bat (Aus bus) or Common
// Bat (Aus cus)": the species of the brackets, with the common names as a remark before them.
// nullopt for one common name, for Latin ones before the bracket, and for all else.
[[nodiscard]] std::optional<TaxaReading> read_bracketed_names(std::string_view text);

}  // namespace keydrift::printed

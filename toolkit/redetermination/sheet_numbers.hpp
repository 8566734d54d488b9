#pragma once
// Numbers of sheets, and what a spreadsheet makes of them.

#include <string>
#include <string_view>

#include "keydrift/characters/specimen.hpp"

namespace keydrift {

// How lists call a sheet: by its catalogue number, else its occurrence id, else "line 7".
[[nodiscard]] std::string sheet_number(Specimen const& specimen);

// Equal for a number and what a spreadsheet leaves of it: blanks and apostrophes dropped, and of
// plain digits the leading zeros and a ".0" behind.
[[nodiscard]] std::string loose_number(std::string_view number);

// "1.23457E+11": digits are lost, so that no sheet can be told.
[[nodiscard]] bool looks_like_power_of_ten(std::string_view number);

}  // namespace keydrift

#pragma once
// Letters of taxa's names: capitals, ligatures, accents, and the scripts beside the Latin one.
// Inner header of formats.

#include <string>
#include <string_view>

namespace keydrift::printed {

// "1.黑绒苣C. bus": a Latin name directly behind a Chinese or Japanese one.
[[nodiscard]] bool has_name_behind_ideograph(std::string_view text);

// Without the accents that show how names are stressed; and "ae" for "æ": no name has either (ICZN
// Art. 32.5.2, ICN Art. 60.7).
[[nodiscard]] std::string without_stress(std::string_view words);
// Quick: false where without_stress() changes nothing.
[[nodiscard]] bool may_have_stress(std::string_view words);
[[nodiscard]] std::string without_ligatures(std::string_view words);

// The text as names are written: "AUS BUS" as "Aus bus", "A.bus" with its blank, ligatures taken
// apart.
[[nodiscard]] std::string in_plain_letters(std::string_view text);

}  // namespace keydrift::printed

#pragma once
// Titles of subgenera, sections and series, which leads and the keys beneath them print in several
// forms.  Inner header of formats.

#include <string>
#include <string_view>

namespace keydrift::printed {

// "subgenus albae" for "Subgen. Albae", "SUBG. ALBAE (spp. 1–4)" and "Untergattung Albae"; the
// words of other text case-folded.
[[nodiscard]] std::string in_common_form(std::string_view title);

}  // namespace keydrift::printed

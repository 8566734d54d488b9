#pragma once
// Lines that betray what they are by their look alone.  Inner header of formats.

#include <cstddef>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

[[nodiscard]] bool leaves_bracket_open(std::string_view line);  // "Legs red (see"

inline constexpr std::size_t kLongestHeading = 160;  // bytes; longer text is prose

[[nodiscard]] bool is_number_only(std::string_view line);  // "44", "44."
[[nodiscard]] bool is_page_number(std::string_view line);  // "- 44 -", "p. 44", "Page 44", "[44]"
[[nodiscard]] bool is_ruled(std::string_view line);        // "-----", "=====", "* * *"
// ",, dark fuscous", "„ „ grey", "\" black": words of the lead above are meant again.
[[nodiscard]] bool starts_with_ditto(std::string_view line);

[[nodiscard]] bool is_page_furniture(std::string_view line);  // one of these
// "2 AUSACEAE", "AUSIDAE 131", "Ausella] AUSACEAE 49": the head of a page in the account of a
// family.
[[nodiscard]] bool is_head_of_family(std::string_view line);
[[nodiscard]] bool starts_note(std::string_view line);      // "Note:", "N.B.", "Note on couplet 7:"
[[nodiscard]] bool starts_caption(std::string_view line);   // "Fig. 7. …", "Plate 3", "Abb. 2-4"
[[nodiscard]] bool starts_footnote(std::string_view line);  // "¹ …", "† …"
// "Note on couplet 7: …"; sets `label_end` behind the colon.
[[nodiscard]] bool starts_couplet_note(std::string_view line, std::size_t& text_at);

// "Long. 4 mm", "L. 3-5 mm", "Länge 5 mm": the size, which old works set behind a dash at a lead's
// end.
[[nodiscard]] bool starts_measure(std::string_view words);
[[nodiscard]] bool is_unit_of_length(std::string_view word);  // "mm", "µm"

// "A key to the shells", "Bestimmungsschlüssel der Larven": a title of a key.
[[nodiscard]] bool mentions_key(std::string_view heading);

}  // namespace keydrift::printed

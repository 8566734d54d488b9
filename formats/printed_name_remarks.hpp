#pragma once
// What is printed beside a taxon's name: signs of footnotes, remarks, figures.  Inner header of
// formats.

#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

// "Aus sp.[2]" as "Aus sp. [2]": the sign of a footnote is no part of the word before it.
[[nodiscard]] std::string with_notes_apart(std::string_view text);

// "Wings dark Aus bus" of "Wings dark Aus bus*)": without the footnote's sign at the end.
[[nodiscard]] std::string_view without_note_sign(std::string_view text);

// "part", "(p.p.", "Figs": such words begin what is said of a name.
[[nodiscard]] bool begins_remark(std::string_view word);

// bus of "bus" in quotation marks; empty for a word that stands in none.
[[nodiscard]] std::string_view without_quotation_marks(std::string_view word);

// "in part" of ", (in part)": what stands behind a name without its figures, brackets and signs.
[[nodiscard]] std::string remark_in(std::string rest, std::vector<std::string> const& figures);

}  // namespace keydrift::printed

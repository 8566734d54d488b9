#pragma once
// Words before the number of a page that a name or a couplet's number is printed with: "Aus bus,
// p. 12".  Inner header of formats.

#include <string_view>

namespace keydrift::printed {

// "p.", "pp", "Seite", "стр.": a word for pages, in small letters or capitals, cut short or not.
// Some are words of sentences as well.
[[nodiscard]] bool is_page_word(std::string_view word);

// The two words say a page: "p." and "12-14", "(p." and "xii)".
[[nodiscard]] bool is_page(std::string_view word, std::string_view number);

// "… outer ends projecting busa, p. 117."
[[nodiscard]] bool ends_in_page(std::string_view text);
// The same with a word that is cut short: "p. 12", and not "side 12".
[[nodiscard]] bool ends_in_page_cut_short(std::string_view text);

// The text begins with a page: "p. 12", "p.12, with figures".
[[nodiscard]] bool starts_with_page(std::string_view text);

// "[p. 208.": a page in a bracket that nothing closes, for the margin did.
[[nodiscard]] bool is_open_page(std::string_view text);
// "bus, Roe," of "bus, Roe, [p. 208."; the whole text where no such page ends it.
[[nodiscard]] std::string_view without_open_page(std::string_view text);

}  // namespace keydrift::printed

#pragma once
// Words that send the reader from a lead to a name or a page elsewhere.  Inner header of formats.

#include <cstddef>
#include <span>
#include <string_view>

namespace keydrift::printed {

// How many of the words, from the first on, send to the name behind them: 2 of "see also Ausella",
// 1 of "vgl. A. bus", "s. 5. A. bus"; 0 where they do not, or no name follows.
[[nodiscard]] std::size_t words_of_reference(std::span<std::string_view const> words);

// "S. 15", "p. 15", "see page 15": a page and nothing else.
[[nodiscard]] bool is_page_alone(std::string_view text);
// "chapter 8", "see Kapitel 4": the whole of a destination that names nothing else.
[[nodiscard]] bool is_chapter_alone(std::string_view text);
// "see Species of Ausella": the title of what tells them apart.
[[nodiscard]] bool points_to_species_of(std::string_view text);

// "Lab 7 (beetles)" of "go to Lab 7 (beetles)": a numbered part of the work that is no couplet and
// no figure; `pointed`: such words stand before it.
[[nodiscard]] bool is_numbered_part(std::string_view text, bool pointed);
// "refer to specialist", "not a caterpillar (fly maggot)", "nicht behandelt": the key has no name
// for what comes here.
[[nodiscard]] bool leads_to_no_name(std::string_view text);

// Begin of the name in "S. 123 A. bus Roe", "n° 12 Ausella": its page, or the number of its
// account, stands before it; 0 where none does.
[[nodiscard]] std::size_t begin_behind_page(std::string_view text);

}  // namespace keydrift::printed

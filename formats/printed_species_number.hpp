#pragma once
// The number or letter of a taxon, printed before its name.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Is the first of the words the number of the taxon that the others name, and no couplet's: "3. Aus
// bus", "12) Aus", "6.3. A. bus", "3a. A. bus var. bus", "17.–19. Aus"; or its letter: "a. subsp.
// bus"?
[[nodiscard]] bool begin_with_species_number(std::span<std::string_view const> words);

// "IV." before "Ausaceae": the number of a family or an order, which no genus cut short precedes.
[[nodiscard]] bool is_group_numeral(std::string_view word, std::string_view name);

// The genus of "3. Ausella busa" and of "3. Ausella busa Roe"; empty for any other line.
[[nodiscard]] std::string_view genus_of_numbered_species(std::string_view line);

// The genera that three lines at least name so; views of the lines' texts.
[[nodiscard]] std::unordered_set<std::string_view> genera_of_numbered_species(
    std::vector<SourceLine> const& lines);

// Where the number begins of "… 4. A. busa" or "… 4. busa", of whose tail `is_numbered` holds, in
// the last `longest` bytes of the text; the text's size without.
[[nodiscard]] std::size_t numbered_end(std::string_view text, std::size_t longest,
                                       bool (*is_numbered)(std::string_view));

// "5."
[[nodiscard]] bool is_species_number(std::string_view word);

// Where the name begins in "3. bus, Roe, p. 218.": an epithet without its genus, or a name with its
// page, behind the number of its species, which reads as the label of a couplet.  nullopt for any
// other text.
[[nodiscard]] std::optional<std::size_t> epithet_behind_number(std::string_view text);
// "17. bus", "17. bus Roe": an epithet behind digits and a full stop, and nothing else.
[[nodiscard]] bool is_numbered_epithet(std::string_view text);

// "a. subsp. bus", "b) var. cus": a taxon beneath a species with its letter.
[[nodiscard]] bool is_lettered_rank(std::span<std::string_view const> words);
[[nodiscard]] bool is_lettered_rank(std::string_view text);

// "10. maurum (Roe)", "14. laeve, new species", "1. Aus Roe (p. 36).": the whole line is a taxon
// with its number, genera in full or none.
[[nodiscard]] bool is_numbered_taxon(std::string_view line);

}  // namespace keydrift::printed

#pragma once
// The taxa that a lead ends in, as printed: names, authors, remarks.  Inner header of formats.

#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

struct TaxonReading {
  std::string name;        // "Aus bus", "A. bus", "bus": as printed, without the author
  std::string authorship;  // "(Smith, 1900)"
  bool literal{false};     // stood in quotation marks: not to be completed
  bool genusless{false};   // "cus" of "A. bus or cus", "cus (Smith)"
};

struct TaxaReading {
  std::vector<TaxonReading> taxa;    // one or more
  std::string remark;                // "in part", "p. 44", "rare form only"
  std::string before;                // "Dwarf Mouse" of "Dwarf Mouse Aus bus"
  std::vector<std::string> figures;  // "Fig. 7", "Figs 3–5"
};

// `text`: a destination without leaders, blanks squeezed, not empty.
[[nodiscard]] TaxaReading read_taxa(std::string_view text);

// The same of text whose signs, notes and stress have been taken off.
[[nodiscard]] TaxaReading read_plain_taxa(std::string_view text);

// Is the whole text one name in Latin form, of two parts or more, authors allowed: "Aus bus Smith"?
[[nodiscard]] bool is_latin_name(std::string_view text);

// "Aus sp. 2", "Aus sp. nov. A [sensu Roe]": a species that has no epithet yet.
[[nodiscard]] bool is_unnamed_species(std::string_view text);
// "Aus Roe & Dorn, 1900": a genus with its authors and year, and nothing else.
[[nodiscard]] bool is_dated_genus(std::string_view text);
// "Aus Roe, 1900 (6 species)", "Aus, new genus": the same with a remark behind it.
[[nodiscard]] bool is_genus_with_remark(std::string_view text);
// "Aus bus (Roe, 1900)": one name with its author and year, and nothing that a lead could say.
[[nodiscard]] bool is_dated_name(std::string_view text);

// "A. bus Roe 5–8; 0,2–0,5 m; fens": a species with its author, and figures that begin what is said
// of it: months, sizes, heights.
[[nodiscard]] bool is_name_with_figures(std::string_view text);

// "A. cochlear, n. sp.", "A. cochlear Roe": an abbreviated genus and whatever follows it with an
// author or a mark of names.
[[nodiscard]] bool is_short_name(std::string_view text);

// Is the whole text an epithet with its author, without genus: "cus (Smith)", "cus Roe, sp. nov."?
[[nodiscard]] bool is_genusless_name(std::string_view text);

// Is the whole text an epithet beyond doubt, without genus: "bus", "bus subsp. cus", "bus (in
// part)"?
[[nodiscard]] bool is_bare_epithet(std::string_view text);

// "Aus, p. 68", "Aus Roe (page 44)": one name with its page and nothing else, whatever its ending.
[[nodiscard]] bool is_name_with_page(std::string_view text);

// Is the whole text an epithet without its genus, "bus Roe", or a name with its page?
[[nodiscard]] bool is_epithet_or_name(std::string_view text);

// Bytes of the signs before a name, and the blanks behind them: "*Aus bus" is naturalised, "†Aus
// bus" extinct, "?Aus bus" doubtful.
[[nodiscard]] std::size_t signs_before_name(std::string_view text);

// Is the word one capitalised word with a Latin ending: "Aus", "Ausidae", "AUSELLA"?
[[nodiscard]] bool is_latin_genus(std::string_view word);

// "A." or "Au." in front of an epithet.
[[nodiscard]] bool is_abbreviated(std::string_view word);

// A genus or higher name: one capital, then small letters, or all capitals; two letters at least.
[[nodiscard]] bool is_capitalised(std::string_view word);

// "Fig. 7", "Figs 3-5", "Abb. 2a" and the like within the text, in printed order.
[[nodiscard]] std::vector<std::string> figures_in(std::string_view text);

// "busa, sp. nov. (mas.) Sat elongata", "busa, Roe. Elongate": what stands behind the genus, cut
// short, at the head of a description.
[[nodiscard]] bool describes_species(std::string_view words);

}  // namespace keydrift::printed

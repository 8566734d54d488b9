#pragma once
// The genus that a title speaks of.  Inner header of formats.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

struct TitleGenus {
  std::string name;  // "Aus", for "AUS" too
  int weight{};      // how much speaks for it: its ending, an author, words like "genus" before it
};

// The genera that a title may speak of, in printed order: "Key to the species of Aus", "KEY TO THE
// SPECIES OF AUS", "Die Aus-Arten".
[[nodiscard]] std::vector<TitleGenus> genera_in_title(std::string const& title);

// Is the line the title of a genus and nothing else: "Genus AUS Roe", "Gen. Ausella Roe, 1890",
// "Gattung Marschkraut, Ausella Roe"?
[[nodiscard]] bool titles_genus(std::string_view line);

// "Clavis specierum generis Ausella R.": the full stop is the author's and closes no sentence.
[[nodiscard]] bool ends_in_authored_genus(std::string_view title);

// "Genus", "gattung", case-folded and without their full stop: the word that a genus follows.
[[nodiscard]] bool says_genus(std::string_view folded);

// "sect", "subgenus", case-folded and without their full stop: what a name of a section follows.
[[nodiscard]] bool names_section(std::string_view folded);

// "key", "fauna", case-folded: words of titles that are no genus, whatever their ending.
[[nodiscard]] bool is_title_word(std::string_view folded);
// "india", case-folded: regions that end as genera do.
[[nodiscard]] bool is_region(std::string_view folded);

// "TRAGOPHYLLE. Ausella Roe", "MARSHWORT, Ausella Roe": word `at` is the common name of the genus
// behind it.
[[nodiscard]] bool is_common_before_genus(std::vector<std::string_view> const& words,
                                          std::size_t at);

// The first word if it is a genus written in full; "AUS" becomes "Aus".  Empty for any other.
[[nodiscard]] std::string full_genus(std::string_view name);

}  // namespace keydrift::printed

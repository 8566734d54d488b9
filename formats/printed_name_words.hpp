#pragma once
// Words of taxa's names: what may be an epithet, an author, a rank.  Inner header of formats.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::printed {

[[nodiscard]] bool is_separator(std::string_view word);  // "or", "&": between taxa of a list
// "subg.", "sect.", "ser.": a rank between genus and species, whose name bears a capital.
[[nodiscard]] bool is_infrageneric_rank(std::string_view word);
[[nodiscard]] bool is_rank(std::string_view word);  // "subsp.", "cf.", "×": before an epithet
[[nodiscard]] bool is_lower_rank(std::string_view word);  // of these "subsp.", "var." and the like
[[nodiscard]] bool is_particle(std::string_view word);    // "de", "&", "ex": within an author
// Of these "de", "van": a surname may begin so.
[[nodiscard]] bool is_surname_particle(std::string_view word);
[[nodiscard]] bool is_limit_word(std::string_view word);  // "agg.", "group": part of the name
// "group", "grupo", case-folded: before the names of its species.
[[nodiscard]] bool is_group_word(std::string_view folded);
// "than", "except", "see", case-folded: before a name that is spoken of and not led to.
[[nodiscard]] bool is_comparing(std::string_view folded);
// Case-folded words that stand in brackets behind a name and name no author: "female".
[[nodiscard]] bool is_no_author(std::string_view folded);

[[nodiscard]] std::string_view without_end(std::string_view word);  // without comma and semicolon
[[nodiscard]] bool ends_item(std::string_view word);                // has one
[[nodiscard]] std::string_view bare_name(
    std::string_view word);  // without brackets and signs around it
// Without the full stop, comma, colon or bracket that closes behind it.
[[nodiscard]] std::string_view without_closing_marks(std::string_view word);

// "sp.n.", "n.sp.", "sp.nov.": set as one word, they say that a taxon is new.
[[nodiscard]] bool is_mark_of_new(std::string_view word);

// "busa, new species" and "busa sp. n." without what says that the taxon is new.
[[nodiscard]] std::string_view without_mark_of_new(std::string_view name);

// Letters and inner hyphens only; at least two of them.
[[nodiscard]] bool is_plain_word(std::string_view word);
[[nodiscard]] bool is_epithet(std::string_view word);  // "alba"; "×alba" of a hybrid too
// Endings of Latin and Greek nouns in the nominative; tells "Aus Smith" from "Grey Warbler".
[[nodiscard]] bool has_latin_ending(std::string_view word);
// The same for epithets, genitives and participles among them.
[[nodiscard]] bool has_epithet_ending(std::string_view word);
// Of families, orders and the like: "ausidae", case-folded.
[[nodiscard]] bool has_higher_ending(std::string_view folded);
// Endings that hardly any word of a living language or author's name has.
[[nodiscard]] bool has_strict_latin_ending(std::string_view word);
// An epithet with such an ending that is no common word: "alba", and not "pale".
[[nodiscard]] bool is_latin_epithet(std::string_view word);
// "dorni", "royi": an epithet made from a person's name, as its ending has it.
[[nodiscard]] bool is_genitive(std::string_view word);
// "4-signata", "10-punctatus", as older works print it; not "4-jointed".
[[nodiscard]] bool is_counted_epithet(std::string_view word);
// "A", "Au", "Aus": the first letters of a genus, `most` at most, as it may be cut short.
[[nodiscard]] std::vector<std::string> beginnings_of(std::string_view genus, std::size_t most);
// The first letter, as long as it may be.
[[nodiscard]] std::string_view initial_of(std::string_view genus);
[[nodiscard]] bool is_year(std::string_view word);
[[nodiscard]] bool is_authorish(std::string_view word);  // a year, or what may be an author's name

// The full stop of a word that is no abbreviation: "bus.", "Smithson."
[[nodiscard]] bool closes_lead(std::string_view printed);

// "AUSIDAE", "AUS": a genus or a higher name set in capitals.
[[nodiscard]] bool is_name_in_capitals(std::string_view word);

// "AUSIDAE" as "Ausidae"; any other word as it is.
[[nodiscard]] std::string in_small_letters(std::string_view word);

// "major" and "(p. 3)" of "bus major (p. 3)": the page tells an epithet of a subspecies.
[[nodiscard]] bool is_paged_epithet(std::string_view word, std::string_view next);

// "SOOTY QUEEN Aus obscurus (p. 46)": how many words in capitals, two at least, name in common what
// the binomial behind them names in Latin; 0 where none do.
[[nodiscard]] std::size_t words_in_capitals_before_binomial(
    std::span<std::string_view const> words);

}  // namespace keydrift::printed

#pragma once
// What a printed destination says: a couplet, taxa, another key.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

// What kind of destination is printed; which couplet or taxon it is, is seen later.  `nowhere`: it
// says that nothing is named, "refer to specialist".
enum class DestinationForm : std::uint8_t { none, couplet, key, taxa, nowhere };

struct DestinationReading {
  DestinationForm form{DestinationForm::none};
  LabelKey couplet{};    // for form couplet
  std::string number;    // for form couplet: "8", as printed
  TaxaReading taxa;      // for form taxa; its figures for every form
  std::string key_name;  // for form key
  std::string remark;    // "Aus group" of "Aus group, 6", "in part" of "Aus bus, in part"
};

// `printed`: the destination without leaders, blanks squeezed.
[[nodiscard]] DestinationReading read_destination(std::string const& printed,
                                                  Numbering const& numbering);

// The number of a couplet and what is said beside it: "8", "8 (p. 3)", "8 (Aus)", "8, Aus group".
struct CoupletNumber {
  Reference reference;
  std::string_view remark;
};
[[nodiscard]] std::optional<CoupletNumber> couplet_number(std::string_view text,
                                                          Numbering const& numbering);

inline constexpr std::size_t kLongestTrailingName = 120;  // bytes; a name without leaders before it

// Begin of the name or the pointer to a key that ends the text after a single blank: "Wings dark
// Aus bus", "Wings dark AUSIDAE", "Wings dark Key B"; not one that is compared with.
[[nodiscard]] std::optional<std::size_t> trailing_name(std::string_view text);
// Begin of the name that ends the text with its author and nothing behind it: "Wings dark A. bus
// Roe".
[[nodiscard]] std::optional<std::size_t> authored_name_at_end(std::string_view text);
// "Hügellandes bis 800 m. A. bus Roe": what begins like a name ends in one beyond doubt.
[[nodiscard]] bool has_certain_name_behind(std::string_view text);

// Begin of "sect. Ausae", "gr. A. bus", "IV. Ausaceae" at the end of the text whose name begins at
// `begin`; else `begin`.
[[nodiscard]] std::size_t with_rank_before(std::string_view text, std::size_t begin);

// "4. A. bus", "4a. A. bus subsp. bus": a species with its number, and nothing else.
[[nodiscard]] bool is_numbered_name(std::string_view line);
// "4. Ausella busa Roe", "4. Ausella busa n. sp.": its genus in full, and an author or what says
// that it is new, for "4. Antennae longae" are words of a lead.
[[nodiscard]] bool is_numbered_name_in_full(std::string_view line);

// "Ausella busa", "Ausella busa Roe": one species with its genus in full, beyond doubt.
[[nodiscard]] bool is_species_alone(std::string_view text);
// "A. busa" and nothing else.
[[nodiscard]] bool is_short_species_alone(std::string_view text);

// "Wiesen unter Steinen. 5. A. bus Roe.": words stand before a species and its number.
[[nodiscard]] bool has_numbered_name_within(std::string_view text);

// "Aus bus (Roe) Dorn, Fl. 2: 19", "AUS Roe": the title of an account, numbered as couplets are.
[[nodiscard]] bool titles_account(std::string_view words);

// "group", "complex", "Gruppe": the case-folded words name a group of taxa.
[[nodiscard]] bool says_group(std::string_view folded);
// "bus group", the whole of the text.
[[nodiscard]] bool names_species_group(std::string_view text);

// "LESSER BAT Aus bus": common names in capitals before a name in Latin form.
[[nodiscard]] bool is_named_in_capitals(std::string_view text);

// Is the name more than two words in Latin form: a genus abbreviated, an author, a pointer to a
// key?
[[nodiscard]] bool is_certain_name(std::string_view name);
// "bus, p. 172, and cus, p. 173", "bus, p. 381; cus, p. 382"
[[nodiscard]] bool are_epithets_with_pages(std::string_view text);

// "(p. 36) Aus": the page of the account stands before the name.
[[nodiscard]] bool begins_with_page(std::string_view text);

}  // namespace keydrift::printed

#pragma once
// Scientific names: taking them apart and comparing them by the Codes' habits.
//
// Sources: ICZN 4th ed. arts 5, 6, 31, 32, 34, 51, 58; ICN (Shenzhen) arts 21-24, 46-50, 60, H.1-H.3.

#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

struct ParsedName {
  std::string genus;        // "Velunaca"; for a uninomial of any rank: that word
  std::string subgenus;     // from "Aus (Bus) cus"; not compared
  std::string species;      // empty for a uninomial
  std::string rank;         // canonical: "subspecies", "variety", "form", …; "" for a trinomen
  std::string infraspecies; // last infraspecific epithet
  std::string authorship;   // as printed
  std::string qualifier;    // "cf.", "aff.", "?", "sp. nr", …
  std::string sensu;        // "sensu …", "s. l.", "auct. non …"
  bool hybrid{false};
  bool genus_only{false};   // "Aus sp.", "Aus spp.", "Aus"
};

[[nodiscard]] ParsedName parse_name(std::string_view name);

// The name without authorship, qualifiers and sensu part, in the Codes' plain form:
// "Aus bus subsp. cus".
[[nodiscard]] std::string plain_name(std::string_view name);

// Equal keys = automatically the same name (tiers 1 to 3): diacritics, ligatures, hyphens, hybrid
// sign, rank-word synonyms, subgenus, case, gender endings of epithets.  Authorship is left out.
[[nodiscard]] std::string name_key(std::string_view name);
// The same without folding gender endings (tiers 1 and 2).
[[nodiscard]] std::string spelling_key(std::string_view name);

enum class NameLikeness {
  identical,      // plain names equal
  spelling,       // tier 2: marks, hyphens, subgenus …
  gender,         // tier 3
  variant,        // tier 4: art. 58 classes, -i / -ii
  recombination,  // tier 5: same epithet stem, another genus or rank
  misprint,       // tier 6: small edit distance
  different,
};
[[nodiscard]] char const* to_word(NameLikeness likeness);
[[nodiscard]] NameLikeness compare_names(std::string_view a, std::string_view b);

// Do two author strings agree (arts 51 / 46: basionym author, initials and "&" ignored, an empty
// one agrees with all)?
[[nodiscard]] bool same_authorship(std::string_view a, std::string_view b);

// The names of `known` most like `name`, best first, at most `maximum`; for "did you mean".
[[nodiscard]] std::vector<std::string> near_names(std::string_view name,
                                                  std::vector<std::string> const& known,
                                                  std::size_t maximum = 3);

}  // namespace keydrift

#pragma once
// Scientific names: taking them apart and comparing them by the Codes' habits.
//
// Sources: ICZN 4th ed. arts 5, 6, 31, 32, 34, 51, 58; ICN (Shenzhen) arts 21-24, 46-50, 60,
// H.1-H.3.

#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

struct ParsedName {
  std::string genus;         // "Velunaca"; for a uninomial of any rank: that word
  std::string subgenus;      // from "Aus (Bus) cus"; not compared
  std::string species;       // empty for a uninomial
  std::string rank;          // canonical: "subspecies", "variety", "form", …; "" for a trinomen
  std::string infraspecies;  // last infraspecific epithet
  std::string authorship;    // as printed
  std::string qualifier;     // "cf.", "aff.", "?", "sp. nr", …
  std::string sensu;         // "sensu …", "s. l.", "auct. non …"
  bool hybrid{false};
  bool genus_only{false};    // "Aus sp.", "Aus spp.", "Aus"
  bool hybrid_genus{false};  // the sign stands before the genus: "× Aus bus"
  std::string other_parent;  // of a formula "Aus bus × Aus cus": the rest, plain; "" for a name
};

[[nodiscard]] ParsedName parse_name(std::string_view name);

// The name without authorship, qualifiers and sensu part, in the Codes' plain form:
// "Aus bus subsp. cus".
[[nodiscard]] std::string plain_name(std::string_view name);
[[nodiscard]] std::string plain_name(ParsedName const& name);

// Equal keys = automatically the same name (tiers 1 to 3): diacritics, ligatures, hyphens, hybrid
// sign, rank-word synonyms, subgenus, case, gender endings of epithets.  Authorship is left out.
[[nodiscard]] std::string name_key(std::string_view name);
// The same without folding gender endings (tiers 1 and 2).
[[nodiscard]] std::string spelling_key(std::string_view name);

// Marked letters are written out in two ways ("mülleri": muelleri, mulleri).  The keys above hold
// the transcription; these hold both, the transcription first, without repeats.  Names are the
// same when any of their keys are equal.  Empty for a name without letters and digits.
[[nodiscard]] std::vector<std::string> name_keys(std::string_view name);
[[nodiscard]] std::vector<std::string> name_keys(ParsedName const& name);
[[nodiscard]] std::vector<std::string> spelling_keys(std::string_view name);
[[nodiscard]] std::vector<std::string> spelling_keys(ParsedName const& name);

enum class NameLikeness {
  identical,      // plain names equal, authors (where both are printed) agree
  spelling,       // tier 2: marks, hyphens, subgenus …
  gender,         // tier 3
  variant,        // tier 4: art. 58 classes, -i / -ii
  recombination,  // tier 5: same epithet stem, another genus or rank
  misprint,       // tier 6: small edit distance
  different,
};
[[nodiscard]] char const* to_word(NameLikeness likeness);
// Homonyms (equal names, authors that disagree) and names misapplied on one side only ("auct. non
// …") are `different`.
[[nodiscard]] NameLikeness compare_names(std::string_view a, std::string_view b);

// Do two author strings agree (arts 51 / 46: basionym author, initials and "&" ignored, an empty
// one agrees with all)?
[[nodiscard]] bool same_authorship(std::string_view a, std::string_view b);

// The names of `known` most like `name`, best first, at most `maximum`; for "did you mean".
[[nodiscard]] std::vector<std::string> near_names(std::string_view name,
                                                  std::vector<std::string> const& known,
                                                  std::size_t maximum = 3);

// The same for many questions: the known names are taken apart once.
class NearNames {
 public:
  explicit NearNames(std::vector<std::string> const& known);
  [[nodiscard]] std::vector<std::string> find(std::string_view name, std::size_t maximum = 3) const;

 private:
  struct Known {
    std::string name;
    std::string key;
    std::string stem;
  };
  std::vector<Known> known_;
};

}  // namespace keydrift

#pragma once
// Darwin Core terms as column names.  Inner header of formats.
//
// Source: Darwin Core list of terms, issue 2026-05-26, http://rs.tdwg.org/dwc/doc/list/ ;
// locationName: Latimer Core, http://rs.tdwg.org/ltc/terms/ .

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::tables {

// The local name that a column's header stands for, folded: "dwc:scientificName",
// "http://rs.tdwg.org/dwc/terms/scientificName", "Scientific Name" -> "scientificname".
[[nodiscard]] std::string term_key(std::string_view header);

// Types of measurements that tell where a specimen is kept, as term_key() gives them.
inline constexpr std::array<std::string_view, 3> kStorageTypes{"storagelocation", "locationname",
                                                               "hasstoragelocation"};

// Is it a term of Darwin Core (tests/oracles/darwin_core_terms.txt and those of geological
// context), whatever it is used for here?  Takes what term_key() gives.
[[nodiscard]] bool is_darwin_core_term(std::string_view key);

// A character's column: its id or label, perhaps with the unit of its numbers behind it.
struct CharacterHeader {
  std::string character;  // as printed, without the unit
  std::string unit;       // from "spike length (mm)" or "spike length [mm]"
};

// A header that is no term, taken for a character: its name without a unit in brackets.
[[nodiscard]] CharacterHeader character_header(std::string_view header);

// Tells which headers are characters.
class CharacterColumns {
 public:
  explicit CharacterColumns(std::vector<std::string> const& ids_and_labels);
  // Does `header` name a character, as it stands or without a unit in brackets?  False: `out` is
  // left as it was.
  [[nodiscard]] bool find(std::string_view header, CharacterHeader& out) const;
  // The id or label that is near to an unknown header; "" when none is.
  [[nodiscard]] std::string near(std::string_view header) const;

 private:
  [[nodiscard]] bool known(std::string_view name) const;
  std::vector<std::string> folded_;  // sorted
  std::vector<std::string> names_;   // as given
};

}  // namespace keydrift::tables

#pragma once
// Editions for the tests of collation: leads whose statements are written out in a small notation,
// so that no reader is needed.
//
// A lead's words are statements joined by "; ".  A statement is
//   character: state | state        height: 3..5 mm        height: (2..)3..5(..7) mm
//   height: < 5 mm   (also <= > >=)  usually lip: white     note lip: white
//   lip: white except Aus | Bus     male lip: white        not lip: white
//   lip: white or spire: high        other words {lip: white}
// and anything without a colon is opaque: its words are the state of the character "~words".

#include <cstdint>
#include <string>
#include <vector>

#include "edition_builder.hpp"
#include "keydrift/collation/collation.hpp"

namespace keydrift::test {

// make_edition() and the statements read from the notation.
[[nodiscard]] Edition sketched(std::string name, std::vector<CoupletSketch> const& couplets);

// Fills in Lead::statements from the notation.
void read_notation(Edition& edition);

// What collate() needs besides the editions.
struct Surroundings {
  Lexicon lexicon;
  std::vector<ConceptRow> rows;
  ParentTable parents;
};

[[nodiscard]] Collation collated(Edition const& old_edition, Edition const& new_edition,
                                 Surroundings const& surroundings = {});
[[nodiscard]] Collation collated(std::vector<CoupletSketch> const& old_sketch,
                                 std::vector<CoupletSketch> const& new_sketch,
                                 Surroundings const& surroundings = {});

// The key that most tests revise: seven snails in six couplets.
//   1 shell smooth: 2 spire high: 3 lip white: Aus bus / brown: Aus dus; low: Aus cus
//     shell ribbed: 4 height < 5 mm: Bus eus; >= 5 mm: 5 mouth round: 6 … ; oval: Bus gus
[[nodiscard]] std::vector<CoupletSketch> snails();

// "1-1 renumbered; 2-3,4 split" for all couplets by label, in the order of the collation.
[[nodiscard]] std::string told(Collation const& collation, Edition const& old_edition,
                               Edition const& new_edition);
// The events of the couplet with this label in the new (or the old) edition, joined by ", ".
[[nodiscard]] std::string events_of_new(Collation const& collation, Edition const& new_edition,
                                        std::string const& label);
[[nodiscard]] std::string events_of_old(Collation const& collation, Edition const& old_edition,
                                        std::string const& label);

// The change of a taxon by its name in the new edition, else in the old one; fails when there is
// none.
[[nodiscard]] TaxonChange taxon_named(Collation const& collation, Edition const& old_edition,
                                      Edition const& new_edition, std::string const& name);
[[nodiscard]] std::string words_of(std::vector<TaxonEvent> const& events);
// "1a=1a 2b~3b 4a- -5a": = the same, ~ restated, / another lead, - one side only.
[[nodiscard]] std::string steps_of(TaxonChange const& change, Edition const& old_edition,
                                   Edition const& new_edition);

// "lip: became an exception note 3a→3a (Aus)" for each role change, one a line.
[[nodiscard]] std::string roles_of(Collation const& collation, Edition const& old_edition,
                                   Edition const& new_edition);

}  // namespace keydrift::test

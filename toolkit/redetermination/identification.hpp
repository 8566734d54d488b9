#pragma once
// Rows for the history of determinations, as Darwin Core has them.  Inner header of
// redetermination.

#include <string>
#include <vector>

#include "keydrift/characters/filled_row.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/redetermination/taking_back.hpp"

namespace keydrift {

struct SeenWords {
  std::string label;  // of the character
  std::string words;  // what was seen, as the person wrote it
};

// Everything but the name.  Precondition: rows is not empty; they are about this specimen.
// Several persons are joined by " | ", as Darwin Core lists are; the day is the latest.
[[nodiscard]] NewIdentification make_identification(Specimen const& specimen,
                                                    Edition const& new_edition,
                                                    std::vector<FilledRow const*> const& rows,
                                                    std::vector<SeenWords> const& seen);

// Adds the leads of the way to the remarks: "by the key: 1a, 4b, 7b".
void add_way(NewIdentification& identification, Edition const& edition, Route const& route);

}  // namespace keydrift

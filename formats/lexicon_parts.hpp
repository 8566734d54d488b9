#pragma once
// What the two forms of a lexicon's file share.  Inner header of formats.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift::tables {

// Words that the formats know, each with a finding at `place` when it is not one of them.
[[nodiscard]] CharacterKind read_kind(std::string const& word, Place place, std::string_view file,
                                      std::vector<Finding>& findings);
[[nodiscard]] Difficulty read_difficulty(std::string const& word, Place place,
                                         std::string_view file, std::vector<Finding>& findings);

[[nodiscard]] Loaded<Lexicon> read_lexicon_json(DecodedText const& source);
[[nodiscard]] Loaded<Lexicon> read_lexicon_csv(Source source);

// The shortest digits that read back the same.
[[nodiscard]] std::string shortest_number(double number);

}  // namespace keydrift::tables

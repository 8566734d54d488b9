#pragma once
// The characters of an edition's statements as SDD's Characters.  Inner header of formats.

#include <map>
#include <pugixml.hpp>
#include <string>
#include <utility>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::sdd {

// Identifiers in the document.
struct CharacterIds {
  std::map<std::string, std::string> characters;                      // by character id
  std::map<std::pair<std::string, std::string>, std::string> states;  // by character and state
};

// Characters, with the states and units that the statements use, sorted by name; nothing for
// opaque ones, which are known by their words only.
CharacterIds write_characters(pugi::xml_node dataset, Edition const& edition);

// What the statement says of characters, as elements of our own at the lead's end.  False if it
// says nothing that SDD's characters can express.
bool add_condition(pugi::xml_node lead, Statement const& statement, CharacterIds const& ids);

}  // namespace keydrift::sdd

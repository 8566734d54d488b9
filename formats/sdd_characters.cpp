#include "keydrift/formats/sdd_characters.hpp"

#include <charconv>
#include <cmath>
#include <set>
#include <string_view>

#include "keydrift/formats/sdd_text.hpp"

namespace keydrift::sdd {
namespace {

struct Uses {
  std::set<std::string> states;
  bool numeric{false};
  std::string unit;
};

bool is_opaque(Atom const& atom) { return atom.character.empty() || atom.character[0] == '~'; }

std::string number(double value) {
  char buffer[32];
  auto const [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
  return error == std::errc{} ? std::string{buffer, end} : "0";
}

void add_limit(pugi::xml_node element, char const* name, double value) {
  if (std::isfinite(value)) element.append_attribute(name) = number(value).c_str();
}

void add_states(pugi::xml_node character, std::string const& id, std::string const& name,
                Uses const& uses, CharacterIds& ids) {
  auto states = character.append_child("States");
  std::size_t count = 0;
  for (auto const& state : uses.states) {
    auto const state_id = id + "s" + std::to_string(++count);
    auto definition = states.append_child("StateDefinition");
    definition.append_attribute("id") = state_id.c_str();
    add_representation(definition, state, "State");
    ids.states[{name, state}] = state_id;
  }
}

}  // namespace

CharacterIds write_characters(pugi::xml_node dataset, Edition const& edition) {
  std::map<std::string, Uses> uses;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      for (auto const& statement : lead.statements) {
        for (auto const& atom : statement.any_of) {
          if (is_opaque(atom)) continue;
          auto& use = uses[atom.character];
          use.states.insert(atom.states.begin(), atom.states.end());
          use.numeric = use.numeric || !atom.ranges.empty();
          if (use.unit.empty()) use.unit = atom.unit;
        }
      }
    }
  }
  CharacterIds ids;
  if (uses.empty()) return ids;
  auto characters = dataset.append_child("Characters");
  std::size_t count = 0;
  for (auto const& [name, use] : uses) {
    auto const id = "h" + std::to_string(++count);
    // A character has states or numbers; one that is read both ways keeps its states.
    bool const numeric = use.states.empty();
    auto character =
        characters.append_child(numeric ? "QuantitativeCharacter" : "CategoricalCharacter");
    character.append_attribute("id") = id.c_str();
    add_representation(character, name, "Character");
    if (!numeric) {
      add_states(character, id, name, use, ids);
    } else if (!clean(use.unit).empty() && use.unit != "1") {
      auto label = character.append_child("MeasurementUnit").append_child("Label");
      label.append_attribute("role") = "Abbrev";
      label.text().set(short_text(use.unit).c_str());
    }
    ids.characters[name] = id;
  }
  return ids;
}

bool add_condition(pugi::xml_node lead, Statement const& statement, CharacterIds const& ids) {
  bool any = false;
  for (auto const& atom : statement.any_of) {
    auto const character = ids.characters.find(atom.character);
    if (character == ids.characters.end()) continue;
    auto condition = lead.append_child("kd:condition");
    condition.append_attribute("character") = character->second.c_str();
    condition.append_attribute("strength") = to_word(statement.strength);
    if (atom.negated) condition.append_attribute("negated") = "true";
    if (statement.any_of.size() > 1) condition.append_attribute("alternative") = "true";
    std::string states;
    for (auto const& state : atom.states) {
      auto const id = ids.states.find({atom.character, state});
      if (id != ids.states.end()) states += (states.empty() ? "" : " ") + id->second;
    }
    add_attribute(condition, "states", states);
    for (auto const& range : atom.ranges) {
      auto element = condition.append_child("kd:range");
      add_limit(element, "low", range.extreme.low);
      add_limit(element, "usual-low", range.usual.low);
      add_limit(element, "usual-high", range.usual.high);
      add_limit(element, "high", range.extreme.high);
    }
    for (auto const& group : statement.except) add_own(condition, "except", group);
    any = true;
  }
  return any;
}

}  // namespace keydrift::sdd

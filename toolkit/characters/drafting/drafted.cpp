#include "keydrift/characters/drafting/drafted.hpp"

#include <algorithm>
#include <set>

#include "keydrift/characters/reading.hpp"

namespace keydrift::drafting {
namespace {

// What was read where the statement stood; nullptr when nothing overlaps it, or several do.
Statement const* statement_at(Lead const& lead, Statement const& original) {
  Statement const* found = nullptr;
  for (auto const& statement : lead.statements) {
    bool const overlaps = statement.text_begin < original.text_begin + original.text.size() &&
                          original.text_begin < statement.text_begin + statement.text.size();
    if (!overlaps) continue;
    if (found != nullptr) return nullptr;
    found = &statement;
  }
  return found;
}

bool is_as_meant(Statement const& read, Statement const& original, Expected const& expected) {
  if (read.any_of.size() != 1 || read.origin != Origin::lexicon) return false;
  auto const& atom = read.any_of[0];
  auto const& before = original.any_of[0];
  return atom.character == expected.character && atom.states == expected.states &&
         atom.negated == before.negated && atom.ranges == before.ranges &&
         read.strength == original.strength && read.except == original.except &&
         read.limits == original.limits;
}

}  // namespace

void leave_out_misread(Drafted& drafted, std::span<Edition const* const> editions) {
  auto& characters = drafted.lexicon.characters;
  std::set<std::string> gone;
  // Every round takes a character out, so there are no more rounds than characters.
  for (bool moved = true; moved && !characters.empty();) {
    moved = false;
    std::vector<Edition> copies;
    copies.reserve(editions.size());
    for (auto const* edition : editions) copies.push_back(*edition);
    std::vector<Edition*> read;
    for (auto& copy : copies) read.push_back(&copy);
    (void)read_statements(read, drafted.lexicon);
    std::set<std::string> misread;
    for (auto const& expected : drafted.expected) {
      auto const& original_lead =
          editions[expected.at.edition]->couplets[expected.at.couplet].leads[expected.at.lead];
      auto const& original = original_lead.statements[expected.at.statement];
      auto const& lead =
          copies[expected.at.edition].couplets[expected.at.couplet].leads[expected.at.lead];
      auto const* found = statement_at(lead, original);
      if (gone.contains(expected.character) || expected.mixed) {
        // Nobody should make something else of it.
        if (found == nullptr || found->origin != Origin::lexicon || expected.mixed) continue;
        for (auto const& atom : found->any_of) misread.insert(atom.character);
        continue;
      }
      if (found != nullptr && is_as_meant(*found, original, expected)) continue;
      misread.insert(expected.character);
    }
    for (auto const& id : misread) moved = gone.insert(id).second || moved;
    std::erase_if(characters, [&](LexiconCharacter const& c) { return gone.contains(c.id); });
    for (auto& character : characters) {
      if (character.applicable_if && gone.contains(character.applicable_if->character)) {
        character.applicable_if.reset();
      }
    }
  }
}

}  // namespace keydrift::drafting

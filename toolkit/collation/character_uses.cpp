#include <algorithm>
#include <deque>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "keydrift/collation/ground.hpp"

namespace keydrift::collating {
namespace {

// What to call a character that the lexicon does not know: "~leaves hairy" by its words, a number
// ("~n:spike length|mm") by what was measured.
std::string plain_label(std::string_view character) {
  if (character.starts_with("~n:")) {
    character.remove_prefix(3);
    return std::string{character.substr(0, character.rfind('|'))};
  }
  if (character.starts_with('~')) character.remove_prefix(1);
  return std::string{character};
}

}  // namespace

std::vector<CharacterUse> character_uses(Edition const& old_edition, Edition const& new_edition,
                                         Lexicon const& lexicon) {
  std::vector<CharacterUse> uses;
  std::unordered_map<std::string_view, std::size_t> row_of;
  std::deque<std::string> words;  // of statements without a character of their own
  auto const gather = [&](Edition const& edition, std::vector<StatementId> CharacterUse::*member) {
    auto const note = [&](std::string_view character, StatementId statement) {
      auto const [row, fresh] = row_of.try_emplace(character, uses.size());
      if (fresh) uses.emplace_back().character = character;
      auto& known = uses[row->second].*member;
      if (known.empty() || known.back() != statement) known.push_back(statement);
    };
    for (std::uint32_t i = 0; i < edition.couplets.size(); ++i) {
      auto const& leads = edition.couplets[i].leads;
      for (std::uint32_t j = 0; j < leads.size(); ++j) {
        for (std::uint32_t k = 0; k < leads[j].statements.size(); ++k) {
          auto const& statement = leads[j].statements[k];
          StatementId const id{{CoupletId{i}, j}, k};
          for (auto const& atom : statement.any_of) note(atom.character, id);
          if (!statement.any_of.empty()) continue;
          for (auto& character : characters_of(statement)) {
            note(words.emplace_back(std::move(character)), id);
          }
        }
      }
    }
  };
  gather(old_edition, &CharacterUse::old_uses);
  gather(new_edition, &CharacterUse::new_uses);

  std::unordered_map<std::string_view, LexiconCharacter const*> known;
  for (auto const& character : lexicon.characters) known.emplace(character.id, &character);
  for (auto& use : uses) {
    use.opaque = use.character.starts_with('~');
    use.label = plain_label(use.character);
    if (auto const found = known.find(use.character);
        found != known.end() && !found->second->label.empty()) {
      use.label = found->second->label;
    }
  }
  std::sort(uses.begin(), uses.end(), [](CharacterUse const& a, CharacterUse const& b) {
    return std::tie(a.label, a.character) < std::tie(b.label, b.character);
  });
  return uses;
}

}  // namespace keydrift::collating

#include "keydrift/characters/reading/lexicon_index.hpp"

#include <algorithm>
#include <array>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/units.hpp"

namespace keydrift::reading {
namespace {

std::string primary_subtag(std::string_view language) {
  return fold(language.substr(0, language.find('-')));
}

// Words by which a state says that its structure is there or not (common practice).
constexpr std::array<std::string_view, 9> kAbsent{
    "absent", "lacking", "none", "wanting", "missing", "fehlend", "ausente", "absente", "nullus"};
constexpr std::array<std::string_view, 5> kPresent{"present", "vorhanden", "présent", "presente",
                                                   "adest"};

template <std::size_t N>
bool is_one_of(std::array<std::string_view, N> const& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

std::vector<std::string> phrase_words(std::string_view phrase) {
  std::vector<std::string> words;
  for (auto& token : tokenise(phrase)) {
    if (token.kind == TokenKind::sign || token.kind == TokenKind::mark) continue;
    if (token.kind == TokenKind::word && word_info(token.word, "").is(kArticle)) continue;
    words.push_back(std::move(token.word));
  }
  return words;
}

LexiconIndex::LexiconIndex(Lexicon const& lexicon)
    : lexicon_{&lexicon}, facts_(lexicon.characters.size()) {
  for (std::uint32_t row = 0; row < lexicon.characters.size(); ++row) {
    add_states(row);
    add_subjects(row);
    add_facts(row);
    if (lexicon.characters[row].kind != CharacterKind::categorical) numeric_.push_back(row);
  }
}

void LexiconIndex::add_states(std::uint32_t row) {
  auto const& character = lexicon_->characters[row];
  if (character.kind != CharacterKind::categorical) return;
  for (std::uint32_t state = 0; state < character.states.size(); ++state) {
    auto const add = [&](std::string_view text, std::string_view language) {
      auto const words = phrase_words(text);
      if (words.empty()) return;
      auto& refs = states_.at(words);
      auto const same = [&](StateRef const& ref) {
        return ref.character == row && ref.state == state;
      };
      if (std::none_of(refs.begin(), refs.end(), same)) {
        refs.push_back({row, state, primary_subtag(language)});
      }
      if (words.size() == 1) {
        if (is_one_of(kAbsent, words[0])) facts_[row].absent = state;
        if (is_one_of(kPresent, words[0])) facts_[row].present = state;
      }
    };
    add(character.states[state].id, "");
    for (auto const& phrase : character.states[state].phrases) add(phrase.text, phrase.language);
  }
}

void LexiconIndex::add_subjects(std::uint32_t row) {
  for (auto const& subject : lexicon_->characters[row].subjects) {
    auto words = phrase_words(subject.text);
    if (words.empty()) continue;
    for (auto& word : words) word = singular(word);
    auto& refs = subjects_.at(words);
    auto const same = [&](SubjectRef const& ref) { return ref.character == row; };
    if (std::none_of(refs.begin(), refs.end(), same)) {
      refs.push_back({row, primary_subtag(subject.language)});
    }
  }
}

void LexiconIndex::add_facts(std::uint32_t row) {
  auto const& character = lexicon_->characters[row];
  auto& facts = facts_[row];
  auto const add = [&](std::string_view text) {
    for (auto const& word : phrase_words(text)) {
      facts.words.insert(singular(word));
      auto const dimension = word_info(word, "").dimension;
      if (!dimension.empty() && std::find(facts.dimensions.begin(), facts.dimensions.end(),
                                          dimension) == facts.dimensions.end()) {
        facts.dimensions.emplace_back(dimension);
      }
    }
  };
  add(character.property);
  add(character.label);
  add(character.id);
  add(character.structure);
  for (auto const& subject : character.subjects) add(subject.text);
  if (character.kind == CharacterKind::count) {
    facts.unit = std::string{"1"};
  } else if (character.kind == CharacterKind::measurement) {
    auto const unit = canonical_unit(character.unit);
    facts.unit = unit ? unit->unit : character.unit;
  }
}

std::optional<std::uint32_t> LexiconIndex::find_state(std::uint32_t row,
                                                      std::string_view printed) const {
  auto const wanted = normalised_words(printed);
  auto const& states = lexicon_->characters[row].states;
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    if (states[state].id == printed || normalised_words(states[state].id) == wanted) return state;
  }
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    auto const& phrases = states[state].phrases;
    if (std::any_of(phrases.begin(), phrases.end(), [&](Phrase const& phrase) {
          return normalised_words(phrase.text) == wanted;
        })) {
      return state;
    }
  }
  return std::nullopt;
}

std::optional<std::uint32_t> LexiconIndex::row_of(LexiconCharacter const* character) const {
  if (character == nullptr) return std::nullopt;
  return static_cast<std::uint32_t>(character - lexicon_->characters.data());
}

}  // namespace keydrift::reading

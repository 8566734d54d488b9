#include "keydrift/characters/reading/lexicon_index.hpp"

#include <algorithm>
#include <array>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/units.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::reading {
namespace {

std::string primary_subtag(std::string_view language) {
  return fold(language.substr(0, language.find('-')));
}

// Words by which a state says that its structure is there or not (common practice).
constexpr std::array<std::string_view, 9> kAbsent{
    "absent", "lacking", "none", "wanting", "missing", "fehlend", "ausente", "absente", "nullus"};
constexpr std::array<std::string_view, 5> kPresentStates{"present", "vorhanden", "présent",
                                                         "presente", "adest"};

}  // namespace

std::vector<std::string> phrase_words(std::string_view phrase) {
  std::vector<std::string> words;
  for (auto& token : tokenise(phrase)) {
    if (token.kind == TokenKind::sign || token.kind == TokenKind::mark) continue;
    if (token.kind == TokenKind::word && is_article(token.word)) continue;
    words.push_back(std::move(token.word));
  }
  return words;
}

namespace {

// As phrase_words(), all words of absence being one.
std::vector<std::string> state_words(std::string_view phrase, std::string_view language) {
  LeadText const text{phrase, language};
  std::vector<std::string> words;
  for (std::uint32_t i = 0; i < text.size();) {
    if (auto const end = absence_end(text, i, text.size()); end > i) {
      words.emplace_back(kWithout);
      i = end;
      continue;
    }
    auto const& token = text.tokens[i];
    bool const counts = token.kind == TokenKind::number ||
                        (token.kind == TokenKind::word && !text.info[i].is(kArticle));
    if (counts) words.push_back(token.word);
    ++i;
  }
  return words;
}

}  // namespace

std::uint32_t absence_end(LeadText const& text, std::uint32_t at, std::uint32_t stop) {
  auto end = at;
  for (auto const& phrase : qualifiers_at(text, at, stop)) {
    if (phrase.meaning.sense == Sense::without) end = phrase.end;
  }
  bool const english = text.language.empty() || text.language.substr(0, 2) == "en";
  if (end == at && english && text.is_word(at, "no") && at + 1 < stop && text.is_word(at + 1)) {
    return at + 1;
  }
  // Nothing is said to be absent.
  return end < stop ? end : at;
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
      auto words = state_words(text, language);
      if (words.empty()) return;
      add_state({row, state, primary_subtag(language)}, words);
      if (words.size() == 2 && words[0] == kWithout) {
        add_state({row, state, primary_subtag(language)}, {singular(words[1]) + "less"});
      }
      if (words.size() > 1 && word_info(words[0], language).is(kWith)) {
        auto denial = words;
        denial[0] = kWithout;
        add_state({row, state, primary_subtag(language), true}, denial);
      }
      if (words.size() == 1) {
        if (is_one_of(kAbsent, words[0])) facts_[row].absent = state;
        if (is_one_of(kPresentStates, words[0])) facts_[row].present = state;
      }
    };
    add(character.states[state].id, "");
    for (auto const& phrase : character.states[state].phrases) add(phrase.text, phrase.language);
  }
  // Whatever the lexicon calls it, absent is absent.
  if (auto const absent = facts_[row].absent) {
    for (std::string_view const word : {"absent", "lacking", "wanting", "missing", "none"}) {
      add_state({row, *absent, ""}, {std::string{word}});
    }
  }
}

void LexiconIndex::add_state(StateRef const& ref, std::vector<std::string> const& words) {
  auto& refs = states_.at(words);
  auto const of_it = [&](StateRef const& other) { return other.character == ref.character; };
  if (ref.denied) {
    // What a state of the character is called by says more than what another one is not.
    if (std::any_of(refs.begin(), refs.end(), of_it)) return;
  } else {
    std::erase_if(refs, [&](StateRef const& other) { return of_it(other) && other.denied; });
  }
  auto const same = [&](StateRef const& other) {
    return of_it(other) && other.state == ref.state &&
           (other.language.empty() || other.language == ref.language);
  };
  if (std::none_of(refs.begin(), refs.end(), same)) refs.push_back(ref);
}

std::optional<std::uint32_t> LexiconIndex::opposite_presence(std::uint32_t row,
                                                             std::uint32_t state) const {
  auto const& facts = facts_[row];
  if (!facts.present || !facts.absent || lexicon_->characters[row].states.size() != 2) {
    return std::nullopt;
  }
  if (state == *facts.present) return facts.absent;
  return facts.present;
}

void LexiconIndex::add_subjects(std::uint32_t row) {
  for (auto const& subject : lexicon_->characters[row].subjects) {
    auto words = phrase_words(subject.text);
    if (words.empty()) continue;
    for (auto& word : words) word = singular(word);
    auto& refs = subjects_.at(words);
    auto const same = [&](SubjectRef const& ref) {
      return ref.character == row &&
             (ref.language.empty() || ref.language == primary_subtag(subject.language));
    };
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

#include "keydrift/characters/drafting/record_tying.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <utility>

#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/characters/space_words.hpp"
#include "keydrift/characters/units.hpp"

namespace keydrift {
namespace {

using reading::word_info;
using Stems = std::vector<std::string>;

// Columns and values that say nothing of the key; beyond that all are forgotten and found again.
constexpr std::size_t kSilentKept = 100'000;

// What is a kind of what (common practice): a column may name the wider thing.
struct Kinds {
  std::string_view wider;
  std::string_view kinds;  // separated by blanks
};
constexpr std::array kKindsOfStructures{
    Kinds{"fruit",
          "achene nut nutlet capsule berry drupe pod legume silique pome follicle caryopsis "
          "grain"},
    Kinds{"inflorescence", "spike raceme panicle umbel cyme corymb head capitulum catkin"},
    Kinds{"habit", "plant herb shrub tree"},
    Kinds{"stem", "culm haulm shoot"},
};

bool lists(std::string_view list, std::string_view word) {
  while (!list.empty()) {
    auto const blank = list.find(' ');
    if (list.substr(0, blank) == word) return true;
    if (blank == std::string_view::npos) return false;
    list.remove_prefix(blank + 1);
  }
  return false;
}

// "strongly" and "strong", "nerved" and "nerve"; not "longer" and "long".
bool same_stem(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (a == b) return true;
  if (a.size() < 4 || !b.starts_with(a)) return false;
  return lists("d ed y ly s es", b.substr(a.size()));
}

bool has_stem(Stems const& words, std::string_view word) {
  return std::any_of(words.begin(), words.end(),
                     [&](std::string const& one) { return same_stem(one, word); });
}

bool all_in(Stems const& words, Stems const& a, Stems const& b) {
  return std::all_of(words.begin(), words.end(), [&](std::string const& word) {
    return has_stem(a, word) || has_stem(b, word);
  });
}

// Content words in the singular.  "leafMargin", "leaf_margin" and "leaf-margin" are two words.
Stems stems_of(std::string_view text) {
  std::string parted;
  for (std::size_t i = 0; i < text.size(); ++i) {
    auto const upper = [&](std::size_t at) { return text[at] >= 'A' && text[at] <= 'Z'; };
    bool const hump = i > 0 && upper(i) && text[i - 1] >= 'a' && text[i - 1] <= 'z';
    if (hump || text[i] == '_') parted += ' ';
    if (text[i] != '_') parted += text[i];
  }
  Stems stems;
  for (auto const& token : reading::tokenise(parted)) {
    if (token.kind != reading::TokenKind::word && token.kind != reading::TokenKind::number)
      continue;
    // "without a beak" must never be taken for "beak".
    if (lists("without not no never lacking non", token.word)) {
      stems.emplace_back("!");
      continue;
    }
    if (word_info(token.word, "").is(reading::kFunction)) continue;
    stems.push_back(reading::singular(token.word));
  }
  return stems;
}

// "beak" of "beak of utricle", "blade" of "leaf blade".
std::string head_of(std::string const& structure) {
  auto const of = structure.find(" of ");
  auto const front = structure.substr(0, of);
  auto const blank = front.rfind(' ');
  return blank == std::string::npos ? front : front.substr(blank + 1);
}

std::vector<std::string> states_in(std::string_view value) {
  std::vector<std::string> parts;
  for (auto const item : alternatives_in(value)) {
    if (item.find_first_not_of(' ') != std::string_view::npos) parts.emplace_back(item);
  }
  return parts;
}

bool records_unknown(std::string_view value) {
  static constexpr std::array<std::string_view, 9> kUnknown{
      "?", "-", "–", "NULL", "\\N", "unknown", "not recorded", "missing", "not seen"};
  return value.find_first_not_of(' ') == std::string_view::npos ||
         std::find(kUnknown.begin(), kUnknown.end(), value) != kUnknown.end();
}

bool records_inapplicable(std::string_view value) {
  return value == "inapplicable" || value == "not applicable" || value == "n/a" || value == "N/A";
}

}  // namespace

char const* to_word(TieConfidence confidence) {
  switch (confidence) {
    case TieConfidence::same_words:
      return "high";
    case TieConfidence::like_words:
      return "medium";
    case TieConfidence::kind_of:
      return "low";
  }
  return "low";
}

struct RecordTying::Words {
  struct State {
    std::string id;
    std::vector<Stems> phrases;
  };
  struct Character {
    std::string id;
    std::string label;
    std::string head;
    Stems structure;
    Stems property;
    std::string unit;
    bool numeric{false};
    std::vector<State> states;
  };
  std::vector<Character> characters;
  std::set<std::string> structures;  // every word of a structure
  Stems said;                        // every word of a state
  std::set<std::string> unnamed;     // ids of characters without a structure: they come from marks

  // How well the column names the structure: how many of its words, and whether all; nothing where
  // its own noun is not among them.
  struct Fit {
    std::size_t words{};
    TieConfidence confidence{TieConfidence::same_words};
  };
  [[nodiscard]] static std::optional<Fit> fit(Character const& character, Stems const& header) {
    Fit fit;
    for (auto const& word : character.structure) {
      if (has_stem(header, word)) ++fit.words;
    }
    if (has_stem(header, character.head)) {
      if (fit.words < character.structure.size()) fit.confidence = TieConfidence::like_words;
      return fit;
    }
    for (auto const& kinds : kKindsOfStructures) {
      if (!has_stem(header, kinds.wider) || !lists(kinds.kinds, character.head)) continue;
      fit.confidence = TieConfidence::kind_of;
      return fit;
    }
    return std::nullopt;
  }

  struct Candidate {
    Character const* character{};
    std::string state;
    std::size_t words{};  // of the structure that the column names
    TieConfidence confidence{};
  };

  void add_states(Character const& character, Fit const& fit, Stems const& header,
                  Stems const& value, std::vector<Candidate>& found) const {
    for (auto const& state : character.states) {
      for (auto const& phrase : state.phrases) {
        if (phrase.empty() || !all_in(value, phrase, {})) continue;
        // "scabrid" of "scabrid", "strong" under "nerves" of "strongly nerved"; else its first
        // word, or all of a word that says most: "hairs" of "fringe of hairs".
        bool const whole = all_in(phrase, value, header);
        auto const confidence =
            whole ? fit.confidence : std::max(fit.confidence, TieConfidence::like_words);
        found.push_back({&character, state.id, fit.words, confidence});
        break;
      }
    }
  }

  // The one candidate that fits best; nullptr when none does, or several do.
  [[nodiscard]] static Candidate const* best_of(std::vector<Candidate> const& found) {
    Candidate const* best = nullptr;
    bool several = false;
    auto const rank = [](Candidate const& c) {
      return std::pair{c.confidence, -static_cast<long>(c.words)};
    };
    for (auto const& candidate : found) {
      if (best == nullptr || rank(candidate) < rank(*best)) {
        best = &candidate;
        several = false;
      } else if (rank(candidate) == rank(*best)) {
        several = true;
      }
    }
    return several ? nullptr : best;
  }
};

RecordTying::RecordTying(Lexicon const& drafted) : words_{std::make_unique<Words>()} {
  for (auto const& character : drafted.characters) {
    if (character.structure.empty()) {
      words_->unnamed.insert(character.id);
      continue;
    }
    Words::Character entry{.id = character.id,
                           .label = character.label,
                           .head = head_of(character.structure),
                           .structure = stems_of(character.structure),
                           .property = {},
                           .unit = character.unit,
                           .numeric = character.kind != CharacterKind::categorical,
                           .states = {}};
    words_->structures.insert(entry.structure.begin(), entry.structure.end());
    if (entry.numeric) entry.property = stems_of(character.property);
    for (auto const& state : character.states) {
      Words::State words{.id = state.id, .phrases = {stems_of(state.id)}};
      for (auto const& phrase : state.phrases) words.phrases.push_back(stems_of(phrase.text));
      for (auto const& phrase : words.phrases) {
        words_->said.insert(words_->said.end(), phrase.begin(), phrase.end());
      }
      entry.states.push_back(std::move(words));
    }
    words_->characters.push_back(std::move(entry));
  }
  std::sort(words_->said.begin(), words_->said.end());
  words_->said.erase(std::unique(words_->said.begin(), words_->said.end()), words_->said.end());
}

RecordTying::~RecordTying() = default;

RecordTying::Result RecordTying::find(Observation const& observation) const {
  Result result{.tie = {.column = observation.character, .value = observation.value}};
  auto const header = stems_of(observation.character);
  auto const& words = *words_;
  bool const names_structure =
      std::any_of(header.begin(), header.end(), [&](std::string const& word) {
        if (words.structures.contains(word)) return true;
        return std::any_of(
            kKindsOfStructures.begin(), kKindsOfStructures.end(), [&](Kinds const& kinds) {
              return kinds.wider == word &&
                     std::any_of(words.structures.begin(), words.structures.end(),
                                 [&](auto const& one) { return lists(kinds.kinds, one); });
            });
      });
  auto const values = states_in(observation.value);
  bool const says_state = std::any_of(values.begin(), values.end(), [&](std::string const& value) {
    auto const stems = stems_of(value);
    return !stems.empty() && all_in(stems, words.said, {});
  });
  result.speaks_of_key = names_structure || says_state;
  if (!result.speaks_of_key) return result;

  auto const settle = [&](Words::Candidate const& best) {
    result.tie.character = best.character->id;
    result.tie.label = best.character->label;
    result.tie.confidence = std::max(result.tie.confidence, best.confidence);
  };
  auto const number = read_number(observation.value, observation.unit);
  if (number || records_inapplicable(observation.value)) {
    std::vector<Words::Candidate> found;
    for (auto const& character : words.characters) {
      if (number && !character.numeric) continue;
      // A count needs no more than its structure, a length must be called so.
      bool const named =
          character.unit == "1" || (number && all_in(character.property, header, {}));
      auto const fit = Words::fit(character, header);
      if (fit && (named || !number)) {
        found.push_back({&character, "", fit->words, fit->confidence});
      }
    }
    // Only what is a count may stand without the word for what is measured.
    bool const dimension = std::any_of(header.begin(), header.end(), [](std::string const& word) {
      return !word_info(word, "").dimension.empty();
    });
    std::erase_if(found, [&](auto const& one) {
      return number && (one.character->unit == "1") == dimension;
    });
    if (auto const* best = Words::best_of(found)) settle(*best);
    return result;
  }
  std::vector<std::string> states;
  for (auto const& value : values) {
    auto const stems = stems_of(value);
    std::vector<Words::Candidate> found;
    if (!stems.empty()) {
      for (auto const& character : words.characters) {
        if (character.numeric) continue;
        if (auto const fit = Words::fit(character, header)) {
          words.add_states(character, *fit, header, stems, found);
        }
      }
    }
    auto const* best = Words::best_of(found);
    bool const same =
        states.empty() || (best != nullptr && best->character->id == result.tie.character);
    if (best == nullptr || !same) {
      result.tie.character.clear();
      return result;
    }
    settle(*best);
    states.push_back(best->state);
  }
  for (auto const& state : states)
    result.tie.state += (result.tie.state.empty() ? "" : " | ") + state;
  if (states.empty()) result.tie.character.clear();
  return result;
}

void RecordTying::tie(Specimen& specimen) {
  std::vector<Observation> kept;
  for (auto& observation : specimen.observations) {
    if (records_unknown(observation.value)) continue;
    if (words_->unnamed.contains(observation.character)) {
      kept.push_back(std::move(observation));
      continue;
    }
    auto const key = observation.character + '\n' + observation.value + '\n' + observation.unit;
    if (silent_.contains(key)) continue;
    auto at = known_.find(key);
    if (at == known_.end()) {
      auto result = find(observation);
      if (!result.speaks_of_key) {
        if (silent_.size() >= kSilentKept) silent_.clear();
        silent_.insert(key);
        continue;
      }
      at = known_.emplace(key, std::move(result)).first;
    }
    auto& tie = at->second.tie;
    ++tie.records;
    if (tie.character.empty()) {
      specimen.untied.push_back(observation.character);
      continue;
    }
    if (tie.confidence == TieConfidence::kind_of) {
      specimen.loosely_tied.push_back(observation.character);
    }
    observation.character = tie.character;
    if (!tie.state.empty()) observation.value = tie.state;
    kept.push_back(std::move(observation));
  }
  specimen.observations = std::move(kept);
  for (auto* names : {&specimen.untied, &specimen.loosely_tied}) {
    std::sort(names->begin(), names->end());
    names->erase(std::unique(names->begin(), names->end()), names->end());
  }
}

void RecordTying::absorb(RecordTying const& other) {
  for (auto const& [key, result] : other.known_) {
    auto const [at, fresh] = known_.try_emplace(key, result);
    if (!fresh) at->second.tie.records += result.tie.records;
  }
}

std::vector<RecordTie> RecordTying::ties() const {
  // The numbers of a column are told together.
  std::map<std::pair<std::string, std::string>, RecordTie> ordered;
  for (auto const& [key, result] : known_) {
    auto tie = result.tie;
    if (!tie.character.empty() && tie.state.empty()) tie.value.clear();
    auto const [at, fresh] = ordered.try_emplace({tie.column, tie.value}, tie);
    if (!fresh) at->second.records += tie.records;
  }
  std::vector<RecordTie> ties;
  for (auto& [key, tie] : ordered) ties.push_back(std::move(tie));
  return ties;
}

}  // namespace keydrift

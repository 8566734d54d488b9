#include "keydrift/characters/drafting/draft_lexicon.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "keydrift/characters/drafting/drafted.hpp"
#include "keydrift/characters/drafting/evidence_words.hpp"
#include "keydrift/characters/drafting/grouping.hpp"
#include "keydrift/characters/drafting/naming.hpp"
#include "keydrift/characters/drafting/sayings.hpp"
#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"

namespace keydrift {

using namespace drafting;

namespace {

constexpr std::size_t kSubjectsKept = 4;  // ways of printing a structure

// The entries met most often first, equal ones in alphabetical order.
std::vector<std::string> by_count(std::map<std::string, std::size_t> const& counts) {
  std::vector<std::pair<std::string, std::size_t>> entries{counts.begin(), counts.end()};
  std::stable_sort(entries.begin(), entries.end(),
                   [](auto const& a, auto const& b) { return a.second > b.second; });
  std::vector<std::string> names;
  for (auto const& [name, count] : entries) names.push_back(name);
  return names;
}

class Drafter {
 public:
  explicit Drafter(std::span<Edition const* const> editions)
      : editions_{editions}, evidence_{editions} {
    std::set<std::string> languages;
    for (auto const* edition : editions) {
      auto const& tag = edition->front.language;
      languages.insert(tag.substr(0, tag.find('-')));
    }
    several_languages_ = languages.size() > 1;
  }

  Drafted run() {
    sayings_ = collect_sayings(editions_);
    grouping_ = group_wordings(sayings_, editions_);
    for (auto const& rows : grouping_.characters) draft_states(rows);
    draft_numbers();
    draft_marks();
    give_ids();
    condition_on_presence();
    expect();
    result_.lexicon.drafted = true;
    return std::move(result_);
  }

 private:
  std::vector<LexiconCharacter>& characters() { return result_.lexicon.characters; }

  [[nodiscard]] Phrase phrase(std::string text, std::set<std::string> const& languages) const {
    bool const one = several_languages_ && languages.size() == 1;
    return {std::move(text), one ? *languages.begin() : ""};
  }

  void draft_states(std::vector<std::size_t> rows) {
    auto const& wordings = grouping_.wordings;
    std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) {
      return wordings[a].said.size() > wordings[b].said.size();
    });
    LexiconCharacter character;
    character.structure = wordings[rows[0]].structure;
    std::map<std::string, std::size_t> subjects;
    std::set<std::string> languages;
    std::vector<std::string> states;
    std::string all_words = character.structure;
    for (auto const row : rows) {
      for (auto const& [printed, count] : wordings[row].subjects) subjects[printed] += count;
      languages.insert(wordings[row].languages.begin(), wordings[row].languages.end());
      states.push_back(wordings[row].words);
      // "like a bristle" needs no lens.
      if (wordings[row].words.find("like") == std::string::npos) {
        all_words += ' ' + wordings[row].words;
      }
    }
    if (subjects.empty()) subjects[character.structure] = 1;
    character.property = property_of(states);
    character.difficulty = difficulty_from_words(all_words);
    auto names = by_count(subjects);
    if (names.size() > kSubjectsKept) names.resize(kSubjectsKept);
    for (auto& name : names) character.subjects.push_back(phrase(std::move(name), languages));
    std::map<std::size_t, std::string> ids;
    for (auto const row : rows) ids[row] = by_count(wordings[row].printed).front();
    for (auto const row : rows) {
      LexiconState state{.id = ids[row],
                         .phrases = {phrase(ids[row], wordings[row].languages)},
                         .not_told_from = {},
                         .support = support_of(wordings[row], rows)};
      for (auto const other : rows) {
        if (other != row && !wordings[row].excludes.contains(other)) {
          state.not_told_from.push_back(ids[other]);
        }
      }
      character.states.push_back(std::move(state));
      state_of_[row] = {characters().size(), ids[row]};
    }
    characters().push_back(std::move(character));
  }

  [[nodiscard]] Support support_of(Wording const& wording,
                                   std::vector<std::size_t> const& rows) const {
    bool const contrasts = std::any_of(
        rows.begin(), rows.end(), [&](std::size_t row) { return wording.excludes.contains(row); });
    if (!contrasts || wording.contrasted.empty()) {
      return {"low", evidence_.words("said, and contrasted with nothing, in", wording.said)};
    }
    auto const tokens = reading::tokenise(wording.structure);
    bool const part = std::any_of(tokens.begin(), tokens.end(), [](reading::Token const& token) {
      return reading::word_info(token.word, "").is(reading::kPart);
    });
    char const* confidence = wording.contrasted.size() > 1 ? "high" : "medium";
    // What no list of parts knows is told to be a structure by its place alone.
    if (!part) confidence = wording.contrasted.size() > 1 ? "medium" : "low";
    return {confidence, evidence_.words("contrasted in", wording.contrasted)};
  }

  // --- measurements, counts, ratios -----------------------------------------------------------

  struct Number {
    std::string unit;
    std::set<CoupletSpot> said;
    std::set<CoupletSpot> contrasted;
    std::map<std::string, std::size_t> subjects;
    std::set<std::string> languages;
  };

  void draft_numbers() {
    std::map<std::string, Number> numbers;
    for (std::uint32_t e = 0; e < editions_.size(); ++e) {
      for (std::uint32_t c = 0; c < editions_[e]->couplets.size(); ++c) {
        std::map<std::string, std::set<std::uint32_t>> leads;
        auto const& couplet = editions_[e]->couplets[c];
        for (std::uint32_t l = 0; l < couplet.leads.size(); ++l) {
          for (auto const& statement : couplet.leads[l].statements) {
            if (statement.origin != Origin::number || statement.any_of.size() != 1) continue;
            auto const& atom = statement.any_of[0];
            auto& number = numbers[atom.character];
            number.unit = atom.unit;
            number.said.insert({e, c});
            leads[atom.character].insert(l);
            auto const& language = editions_[e]->front.language;
            number.languages.insert(language.substr(0, language.find('-')));
            if (auto subject = subject_in(statement.text, atom.character); !subject.empty()) {
              ++number.subjects[subject];
            }
          }
        }
        for (auto const& [id, where] : leads) {
          if (where.size() > 1) numbers[id].contrasted.insert({e, c});
        }
      }
    }
    for (auto const& [id, number] : numbers) draft_number(id, number);
  }

  // "female spike length" and "mm" of "~n:female spike length|mm".
  static std::string measured(std::string const& id) {
    auto const bar = id.rfind('|');
    return id.substr(3, bar - 3);
  }

  // Without the words for dimensions, and whether any were left out.
  static std::string structure_in(std::string const& words, std::string* property = nullptr) {
    std::string structure;
    for (auto const& token : reading::tokenise(words)) {
      // "tergite 2": which one is part of the name.
      if (token.kind != reading::TokenKind::word && token.kind != reading::TokenKind::number) {
        if (property != nullptr && token.sign == U'/') *property += '/';
        continue;
      }
      bool const dimension = reading::word_info(token.word, "").dimension == token.word;
      if (dimension && property != nullptr) {
        if (!property->empty() && property->back() != '/') *property += ' ';
        *property += token.word;
      }
      if (!dimension) structure += (structure.empty() ? "" : " ") + token.word;
    }
    return structure;
  }

  // The shortest front of the text that holds the words of the structure; "" when none does.
  static std::string subject_in(std::string const& text, std::string const& id) {
    auto words = measured(id);
    // "carapace length / chela length": the one that the statement begins with.
    std::vector<std::string> structures;
    for (auto at = words.find(" / "); at != std::string::npos; at = words.find(" / ")) {
      structures.push_back(structure_in(words.substr(0, at)));
      words.erase(0, at + 3);
    }
    structures.push_back(structure_in(words));
    auto const tokens = reading::tokenise(text);
    std::string said;
    for (auto const& token : tokens) {
      if (token.kind != reading::TokenKind::word && token.kind != reading::TokenKind::number) break;
      auto const info = reading::word_info(token.word, "");
      if (!info.is(reading::kFunction)) {
        said += (said.empty() ? "" : " ") + reading::singular(token.word);
      }
      if (std::find(structures.begin(), structures.end(), said) != structures.end()) {
        return reading::fold(text.substr(tokens[0].begin, token.end - tokens[0].begin));
      }
    }
    return {};
  }

  void draft_number(std::string const& id, Number const& number) {
    LexiconCharacter character;
    character.structure = structure_in(measured(id), &character.property);
    if (character.structure.empty()) return;
    bool const count = number.unit == "1";
    character.kind = count ? CharacterKind::count : CharacterKind::measurement;
    if (count) character.property = "number";
    character.unit = number.unit;
    character.difficulty = difficulty_from_words(character.structure);
    auto names = by_count(number.subjects);
    if (names.empty()) names = {character.structure};
    if (names.size() > kSubjectsKept) names.resize(kSubjectsKept);
    for (auto& name : names)
      character.subjects.push_back(phrase(std::move(name), number.languages));
    bool const contrasts = !number.contrasted.empty();
    character.support = {
        number.contrasted.size() > 1 ? "high" : (contrasts ? "medium" : "low"),
        evidence_.words(contrasts ? "contrasted in" : "said, and contrasted with nothing, in",
                        contrasts ? number.contrasted : number.said)};
    number_of_[id] = characters().size();
    characters().push_back(std::move(character));
  }

  // --- marks ----------------------------------------------------------------------------------

  void draft_marks() {
    struct Marked {
      std::set<std::string> states;
      std::optional<std::string> unit;
      std::set<CoupletSpot> said;
    };
    std::map<std::string, Marked> marks;
    for (std::uint32_t e = 0; e < editions_.size(); ++e) {
      for (std::uint32_t c = 0; c < editions_[e]->couplets.size(); ++c) {
        for (auto const& lead : editions_[e]->couplets[c].leads) {
          for (auto const& statement : lead.statements) {
            if (statement.origin != Origin::mark) continue;
            for (auto const& atom : statement.any_of) {
              if (atom.character.starts_with('~')) continue;
              auto& mark = marks[atom.character];
              mark.states.insert(atom.states.begin(), atom.states.end());
              if (!atom.ranges.empty()) mark.unit = atom.unit;
              mark.said.insert({e, c});
            }
          }
        }
      }
    }
    for (auto const& [id, mark] : marks) {
      LexiconCharacter character;
      character.id = id;
      if (mark.unit) {
        character.kind = *mark.unit == "1" ? CharacterKind::count : CharacterKind::measurement;
        character.unit = *mark.unit;
      }
      Support const support{"high", evidence_.words("marked in", mark.said)};
      if (mark.unit) character.support = support;
      for (auto const& state : mark.states) {
        if (!mark.unit)
          character.states.push_back({.id = state, .phrases = {}, .support = support});
      }
      characters().push_back(std::move(character));
    }
  }

  // --- ids ------------------------------------------------------------------------------------

  void give_ids() {
    std::set<std::string> taken;
    std::map<std::string, std::size_t> alike;  // characters of one structure and property
    for (auto const& character : characters()) {
      if (!character.id.empty()) taken.insert(character.id);
      ++alike[character.structure + '|' + character.property];
    }
    for (auto& character : characters()) {
      if (!character.id.empty()) continue;
      bool const twin = alike[character.structure + '|' + character.property] > 1;
      auto base = character.structure;
      if (!character.property.empty()) base += ' ' + character.property;
      if (character.kind == CharacterKind::categorical && (character.property.empty() || twin)) {
        base += ' ' + character.states[0].id;
      }
      auto id = id_from(base);
      if (id.empty()) id = "character";
      auto unique = id;
      for (std::size_t n = 2; !taken.insert(unique).second; ++n)
        unique = id + '-' + std::to_string(n);
      character.id = std::move(unique);
      character.label = label_of(character);
    }
    std::vector<std::size_t> order(characters().size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return characters()[a].id < characters()[b].id;
    });
    std::vector<LexiconCharacter> sorted;
    std::vector<std::size_t> place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
      place[order[i]] = i;
      sorted.push_back(std::move(characters()[order[i]]));
    }
    characters() = std::move(sorted);
    for (auto& [row, state] : state_of_) state.first = place[state.first];
    for (auto& [id, row] : number_of_) row = place[row];
  }

  static std::string label_of(LexiconCharacter const& character) {
    if (character.kind != CharacterKind::categorical) {
      return character.property.empty() ? character.structure
                                        : character.structure + ": " + character.property;
    }
    constexpr std::size_t kShown = 3;
    auto label = character.structure + ':';
    for (std::size_t i = 0; i < std::min(character.states.size(), kShown); ++i) {
      label += (i == 0 ? " " : " / ") + character.states[i].id;
    }
    return character.states.size() > kShown ? label + " / …" : label;
  }

  // --- applicability --------------------------------------------------------------------------

  // A structure that another character calls absent has its own characters only where it is there:
  // "ligule absent" and "ligule longer than wide", "utricles beakless" and "beak of utricle bifid".
  void condition_on_presence() {
    for (auto& character : characters()) {
      std::vector<Applicability> conditions;
      for (auto const& base : characters()) {
        if (&base == &character || base.kind != CharacterKind::categorical) continue;
        if (auto condition = condition_of(character, base)) conditions.push_back(*condition);
      }
      if (conditions.size() == 1) character.applicable_if = std::move(conditions[0]);
    }
    // Two structures cannot each hang on the other.
    for (auto& character : characters()) {
      if (!character.applicable_if) continue;
      auto const* base = result_.lexicon.find(character.applicable_if->character);
      if (base != nullptr && base->applicable_if) character.applicable_if.reset();
    }
  }

  static std::optional<Applicability> condition_of(LexiconCharacter const& character,
                                                   LexiconCharacter const& base) {
    bool const same = base.structure == character.structure;
    auto const first = character.structure.substr(0, character.structure.find(' '));
    Applicability condition{.character = base.id, .states = {}};
    bool absent = false;
    for (auto const& state : base.states) {
      bool const without = state.id == first + "less" || state.id == "without a " + first ||
                           state.id == "without an " + first || state.id == "without " + first;
      if ((same && says_absent(state.id)) || (!same && without)) {
        // What is not told from "absent" may be another word for it.
        if (!state.not_told_from.empty()) return std::nullopt;
        absent = true;
      } else {
        condition.states.push_back(state.id);
      }
    }
    // Where a character calls the structure absent itself, it speaks of that as well.
    bool const own = std::any_of(character.states.begin(), character.states.end(),
                                 [](LexiconState const& state) { return says_absent(state.id); });
    if (same && own) return std::nullopt;
    bool const part_of = same || character.structure.find(base.structure) != std::string::npos;
    if (!absent || condition.states.empty() || !part_of) return std::nullopt;
    return condition;
  }

  // --- what the reader ought to make of it ----------------------------------------------------

  void expect() {
    for (std::size_t s = 0; s < sayings_.all.size(); ++s) {
      auto const& saying = sayings_.all[s];
      if (saying.subject == 0) continue;
      Expected expected{.at = saying.at, .character = {}, .states = {}};
      for (auto const& item : saying.items) {
        auto const row = row_of(saying.structure(), item.words);
        auto const& [character, state] = state_of_.at(row);
        auto const& id = characters()[character].id;
        // Alternatives of two characters stay words.
        if (!expected.character.empty() && expected.character != id) expected.mixed = true;
        expected.character = id;
        expected.states.push_back(state);
      }
      std::sort(expected.states.begin(), expected.states.end());
      result_.expected.push_back(std::move(expected));
    }
    for (std::uint32_t e = 0; e < editions_.size(); ++e) {
      for (std::uint32_t c = 0; c < editions_[e]->couplets.size(); ++c) {
        auto const& couplet = editions_[e]->couplets[c];
        for (std::uint32_t l = 0; l < couplet.leads.size(); ++l) {
          for (std::uint32_t s = 0; s < couplet.leads[l].statements.size(); ++s) {
            auto const& statement = couplet.leads[l].statements[s];
            if (statement.origin != Origin::number || statement.any_of.size() != 1) continue;
            auto const found = number_of_.find(statement.any_of[0].character);
            if (found == number_of_.end()) continue;
            result_.expected.push_back(
                {.at = {e, c, l, s}, .character = characters()[found->second].id, .states = {}});
          }
        }
      }
    }
  }

  [[nodiscard]] std::size_t row_of(std::string const& structure, std::string const& words) const {
    auto const& wordings = grouping_.wordings;
    auto const found =
        std::lower_bound(wordings.begin(), wordings.end(), std::tie(structure, words),
                         [](Wording const& wording, auto const& key) {
                           return std::tie(wording.structure, wording.words) < key;
                         });
    return static_cast<std::size_t>(found - wordings.begin());
  }

  std::span<Edition const* const> editions_;
  EvidenceWords evidence_;
  bool several_languages_{false};
  Sayings sayings_;
  Grouping grouping_;
  Drafted result_;
  std::map<std::size_t, std::pair<std::size_t, std::string>> state_of_;  // wording -> entry
  std::map<std::string, std::size_t> number_of_;                         // "~n:…" -> character
};

}  // namespace

Lexicon draft_lexicon(std::span<Edition const* const> editions) {
  auto drafted = Drafter{editions}.run();
  leave_out_misread(drafted, editions);
  return std::move(drafted.lexicon);
}

}  // namespace keydrift

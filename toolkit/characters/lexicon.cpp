#include "keydrift/characters/lexicon.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <utility>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/reading/near.hpp"
#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/units.hpp"

namespace keydrift {
namespace {

using reading::fold;
using reading::near_names;

class Checker {
 public:
  explicit Checker(Lexicon const& lexicon) : lexicon_{lexicon} {
    for (auto const& character : lexicon.characters) by_id_.emplace(character.id, &character);
  }

  std::vector<Finding> run() {
    std::map<std::string, LexiconCharacter const*> ids;
    std::map<std::string, LexiconCharacter const*> labels;
    for (auto const& character : lexicon_.characters) {
      check_id(character, ids);
      check_label(character, labels);
      check_states(character);
      check_unit(character);
      check_applicability(character);
    }
    check_cycles();
    sort_findings(findings_);
    return std::move(findings_);
  }

 private:
  using Known = std::map<std::string, LexiconCharacter const*>;

  Finding& report(LexiconCharacter const& character, std::string code, Severity severity,
                  std::string printed, std::string message, std::string remedy) {
    findings_.push_back({.code = std::move(code),
                         .severity = severity,
                         .file = lexicon_.name,
                         .place = character.place,
                         .printed = std::move(printed),
                         .message = std::move(message),
                         .remedy = std::move(remedy),
                         .related = {}});
    return findings_.back();
  }

  static std::string quoted(std::string const& words) { return '"' + words + '"'; }

  void check_id(LexiconCharacter const& character, Known& ids) {
    bool const sound =
        !character.id.empty() && std::all_of(character.id.begin(), character.id.end(), [](char c) {
          return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
        });
    if (!sound) {
      report(character, "lexicon-character-id", Severity::error, character.id,
             "the character id " + quoted(character.id) +
                 " is not made of lower-case letters, digits and hyphens",
             "write an id like \"utricle-beak\" and put the words for people into the label");
    }
    auto const [first, fresh] = ids.emplace(character.id, &character);
    if (fresh) return;
    report(character, "lexicon-duplicate-character", Severity::error, character.id,
           "the character " + quoted(character.id) + " is defined twice",
           "give one of the two another id, or put their states into one character")
        .related.push_back({first->second->place, "first defined here"});
  }

  void check_label(LexiconCharacter const& character, Known& labels) {
    if (character.label.empty()) return;
    auto const [first, fresh] = labels.emplace(fold(character.label), &character);
    if (fresh || first->second->id == character.id) return;
    report(character, "lexicon-duplicate-label", Severity::warning, character.label,
           "the characters " + quoted(first->second->id) + " and " + quoted(character.id) +
               " bear the same label " + quoted(character.label),
           "give them labels that tell them apart")
        .related.push_back({first->second->place, "first used here"});
  }

  void check_states(LexiconCharacter const& character) {
    auto const name = quoted(character.id);
    if (character.kind != CharacterKind::categorical) {
      if (!character.states.empty()) {
        report(character, "lexicon-states-of-number", Severity::error, character.states[0].id,
               "the character " + name + " is a " + to_word(character.kind) + " and has states",
               "leave the states out, or make its kind \"categorical\"");
      }
      return;
    }
    if (character.states.empty()) {
      report(character, "lexicon-no-states", Severity::error, character.id,
             "the character " + name + " has no states",
             "list its states, or make its kind \"measurement\" or \"count\"");
    }
    std::set<std::string> ids;
    std::map<std::string, std::string> owners;  // normalised phrase -> state
    for (auto const& state : character.states) {
      if (!ids.insert(state.id).second) {
        report(character, "lexicon-duplicate-state", Severity::error, state.id,
               "the state " + quoted(state.id) + " of the character " + name + " is defined twice",
               "put the phrases of both into one state");
        continue;
      }
      std::vector<std::string> phrases{state.id};
      for (auto const& phrase : state.phrases) phrases.push_back(phrase.text);
      bool usable = false;
      for (auto const& phrase : phrases) {
        auto const words = normalised_words(phrase);
        if (words.empty()) continue;
        usable = true;
        auto const [owner, fresh] = owners.emplace(words, state.id);
        if (!fresh && owner->second != state.id) {
          report(character, "lexicon-phrase-of-two-states", Severity::error, phrase,
                 "the phrase " + quoted(phrase) + " stands for the states " +
                     quoted(owner->second) + " and " + quoted(state.id) + " of the character " +
                     name,
                 "keep it with one of the two");
        }
      }
      if (!usable) {
        report(character, "lexicon-state-without-words", Severity::error, state.id,
               "the state " + quoted(state.id) + " of the character " + name +
                   " has neither a name nor a phrase made of words",
               "write the words that express it in leads");
      }
    }
    check_overlaps(character, ids);
  }

  void check_overlaps(LexiconCharacter const& character, std::set<std::string> const& ids) {
    for (auto const& state : character.states) {
      for (auto const& other : state.not_told_from) {
        if (ids.contains(other) && other != state.id) continue;
        report(character, "lexicon-not-told-apart", Severity::error, other,
               "the state " + quoted(state.id) + " of the character " + quoted(character.id) +
                   " is said not to be told apart from " + quoted(other) +
                   (other == state.id ? ", which is itself" : ", which the character lacks"),
               other == state.id ? "name another state, or leave the cell empty"
                                 : did_you_mean(near_names(other, {ids.begin(), ids.end()})));
      }
    }
  }

  void check_unit(LexiconCharacter const& character) {
    auto const name = quoted(character.id);
    if (!(character.tolerance >= 0 && character.tolerance < 1)) {
      report(character, "lexicon-tolerance", Severity::error, character.id,
             "the tolerance of the character " + name + " is not between 0 and 1",
             "write the share of the limit by which \"ca.\" widens it, for example 0.1");
    }
    if (character.kind == CharacterKind::categorical || character.unit.empty()) return;
    if (!canonical_unit(character.unit)) {
      report(character, "lexicon-unit", Severity::error, character.unit,
             "the unit " + quoted(character.unit) + " of the character " + name + " is not known",
             "write mm, cm, m, µm, in, ft, mm2, ° or %, or leave the unit of a ratio empty");
    }
  }

  void check_applicability(LexiconCharacter const& character) {
    if (!character.applicable_if) return;
    auto const& rule = *character.applicable_if;
    auto const name = quoted(character.id);
    auto const found = by_id_.find(rule.character);
    if (found == by_id_.end()) {
      std::vector<std::string> ids;
      for (auto const& other : lexicon_.characters) ids.push_back(other.id);
      report(character, "lexicon-applicability-character", Severity::error, rule.character,
             "the character " + name + " depends on " + quoted(rule.character) +
                 ", which the lexicon lacks",
             did_you_mean(near_names(rule.character, ids)));
      return;
    }
    if (rule.states.empty()) {
      report(character, "lexicon-applicability-state", Severity::error, rule.character,
             "the character " + name + " depends on " + quoted(rule.character) +
                 " but on none of its states, so it could never apply",
             "name the states with which it applies");
    }
    for (auto const& state : rule.states) {
      auto const& known = found->second->states;
      if (std::any_of(known.begin(), known.end(), [&](auto const& s) { return s.id == state; })) {
        continue;
      }
      std::vector<std::string> ids;
      for (auto const& other : known) ids.push_back(other.id);
      report(character, "lexicon-applicability-state", Severity::error, state,
             "the character " + name + " depends on the state " + quoted(state) + " of " +
                 quoted(rule.character) + ", which has no such state",
             did_you_mean(near_names(state, ids)));
    }
  }

  // Every character depends on at most one other, so a walk along the chain finds every cycle.
  void check_cycles() {
    std::map<std::string, int> seen;  // 1: on the present walk, 2: done
    for (auto const& start : lexicon_.characters) {
      std::vector<LexiconCharacter const*> walk;
      auto const* at = &start;
      while (at != nullptr && seen[at->id] == 0) {
        seen[at->id] = 1;
        walk.push_back(at);
        auto const next =
            at->applicable_if ? by_id_.find(at->applicable_if->character) : by_id_.end();
        at = next == by_id_.end() ? nullptr : next->second;
      }
      if (at != nullptr && seen[at->id] == 1) {
        std::string chain;
        auto const first = std::find_if(walk.begin(), walk.end(),
                                        [&](auto const* on) { return on->id == at->id; });
        for (auto on = first; on != walk.end(); ++on) chain += quoted((*on)->id) + " on ";
        report(*at, "lexicon-applicability-cycle", Severity::error, at->id,
               "characters depend on each other in a circle: " + chain + quoted(at->id),
               "take out one \"applicable if\"");
      }
      for (auto const* on : walk) seen[on->id] = 2;
    }
  }

  Lexicon const& lexicon_;
  Known by_id_;
  std::vector<Finding> findings_;
};

}  // namespace

LexiconCharacter const* Lexicon::find(std::string_view id_or_label) const {
  if (id_or_label.empty()) return nullptr;
  auto const first_where = [&](auto const& matches) -> LexiconCharacter const* {
    auto const found = std::find_if(characters.begin(), characters.end(), matches);
    return found == characters.end() ? nullptr : &*found;
  };
  if (auto const* exact = first_where([&](auto const& c) { return c.id == id_or_label; })) {
    return exact;
  }
  if (auto const* exact = first_where([&](auto const& c) { return c.label == id_or_label; })) {
    return exact;
  }
  auto const folded = fold(id_or_label);
  return first_where(
      [&](auto const& c) { return fold(c.id) == folded || fold(c.label) == folded; });
}

std::vector<Finding> check_lexicon(Lexicon const& lexicon) { return Checker{lexicon}.run(); }

}  // namespace keydrift

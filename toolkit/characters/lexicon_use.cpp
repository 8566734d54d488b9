#include "keydrift/characters/lexicon_use.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "keydrift/characters/reading/tokens.hpp"
#include "keydrift/characters/units.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {
namespace {

constexpr std::array kLexiconUseKinds{
    FindingKind{
        "lexicon-ambiguous-phrase", Severity::warning, "A phrase of several characters",
        "Several characters of one structure know the same words as a state of theirs, so nothing\n"
        "but the sibling lead tells which is meant. Make the phrases longer, or give the "
        "characters\n"
        "subjects that tell them apart."},
    FindingKind{
        "lexicon-state-on-both-sides", Severity::warning, "One state on both sides of a couplet",
        "Two leads that are to exclude each other say different words that the lexicon takes for\n"
        "the same state. Mostly the phrases of two states were put into one."},
    FindingKind{
        "lexicon-uncovered-couplet", Severity::warning, "A couplet that the lexicon does not cover",
        "No statement of the couplet is understood: its words are compared as they stand. Add the\n"
        "character to the lexicon."},
    FindingKind{
        "lexicon-unit-disagrees", Severity::warning, "Leads measure in another kind of unit",
        "The lexicon's character has the structure that the leads measure, but its unit cannot be\n"
        "turned into theirs (a length against a count, say). Mend the unit or the kind."},
    FindingKind{
        "lexicon-unused-character", Severity::warning, "A character of which no lead speaks",
        "It does no harm. Mostly its subjects or phrases are not what the editions print, so that\n"
        "it was meant to cover something that stays uncovered."},
    FindingKind{"lexicon-unused-phrase", Severity::information, "A phrase that no lead prints",
                "It does no harm. It may be of use for records, or for another edition."},
    FindingKind{"lexicon-unused-state", Severity::information, "A state that no lead names",
                "It does no harm. It may be of use for records, or for another edition."},
};

class UseChecker {
 public:
  UseChecker(Lexicon const& lexicon, std::span<Edition* const> editions)
      : lexicon_{lexicon}, editions_{editions} {}

  LexiconUse run() {
    auto of_reading = read_statements(editions_, lexicon_);
    use_.characters = lexicon_.characters.size();
    collect();
    for (auto const& character : lexicon_.characters) check_character(character);
    check_ambiguity();
    check_units();
    sort_findings(use_.findings);
    auto of_editions = std::move(of_editions_);
    of_editions.insert(of_editions.end(), of_reading.begin(), of_reading.end());
    sort_findings(of_editions);
    use_.findings.insert(use_.findings.end(), of_editions.begin(), of_editions.end());
    std::stable_sort(use_.worst.begin(), use_.worst.end(), [](auto const& a, auto const& b) {
      // By the share that is not understood, then by how much that is.
      auto const left = a.opaque.size() * b.statements;
      auto const right = b.opaque.size() * a.statements;
      return std::tie(right, b.statements) < std::tie(left, a.statements);
    });
    return std::move(use_);
  }

 private:
  Finding& report(std::string code, Severity severity, LexiconCharacter const& character,
                  std::string printed, std::string message, std::string remedy) {
    use_.findings.push_back({.code = std::move(code),
                             .severity = severity,
                             .file = lexicon_.name,
                             .place = character.place,
                             .printed = std::move(printed),
                             .message = std::move(message),
                             .remedy = std::move(remedy),
                             .related = {}});
    return use_.findings.back();
  }

  void report_in(Edition const& edition, std::string code, Place const& place, std::string printed,
                 std::string message, std::string remedy) {
    of_editions_.push_back({.code = std::move(code),
                            .severity = Severity::warning,
                            .file = edition.name,
                            .place = place,
                            .printed = std::move(printed),
                            .message = std::move(message),
                            .remedy = std::move(remedy),
                            .related = {}});
  }

  void collect() {
    for (std::size_t e = 0; e < editions_.size(); ++e) {
      auto const& edition = *editions_[e];
      use_.coverage.push_back(coverage(edition));
      for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) collect(e, CoupletId{c});
    }
  }

  void collect(std::size_t e, CoupletId id) {
    auto const& edition = *editions_[e];
    auto const& couplet = edition[id];
    UncoveredCouplet uncovered{.edition = e, .couplet = id};
    for (std::uint32_t l = 0; l < couplet.leads.size(); ++l) {
      auto const& lead = couplet.leads[l];
      // As normalised words with blanks around, so that whole words are found.
      printed_ += ' ' + normalised_words(lead.text) + " \n";
      for (std::uint32_t s = 0; s < lead.statements.size(); ++s) {
        auto const& statement = lead.statements[s];
        ++uncovered.statements;
        if (statement.origin == Origin::opaque) {
          uncovered.opaque.push_back({.lead = {.couplet = id, .ordinal = l}, .statement = s});
        }
        for (auto const& atom : statement.any_of) {
          used_.insert(atom.character);
          for (auto const& state : atom.states) used_states_.emplace(atom.character, state);
          if (statement.origin == Origin::number) {
            numbers_.try_emplace(atom.character, &edition, &statement);
          }
        }
      }
      for (std::uint32_t other = 0; other < l; ++other) {
        compare(edition, id, couplet.leads[other], lead);
      }
    }
    if (uncovered.opaque.empty()) return;
    if (uncovered.opaque.size() == uncovered.statements) {
      report_in(edition, "lexicon-uncovered-couplet", couplet.leads[0].place, couplet.leads[0].text,
                "nothing that couplet " + in_quotes(couplet.label) + " says is in the lexicon",
                "add its characters, or put its words among the phrases of one that is there");
    }
    use_.worst.push_back(std::move(uncovered));
  }

  // Different words in opposed leads that are one and the same state.
  void compare(Edition const& edition, CoupletId id, Lead const& a, Lead const& b) {
    for (auto const& left : a.statements) {
      if (left.origin != Origin::lexicon || left.any_of.size() != 1) continue;
      for (auto const& right : b.statements) {
        if (right.origin != Origin::lexicon || right.any_of.size() != 1) continue;
        auto const& one = left.any_of[0];
        bool const alike = !one.states.empty() && one == right.any_of[0] &&
                           left.limits == right.limits && left.strength == right.strength &&
                           normalised_words(left.text) != normalised_words(right.text);
        if (!alike) continue;
        std::string states;
        for (auto const& state : one.states) states += (states.empty() ? "" : " or ") + state;
        report_in(edition, "lexicon-state-on-both-sides", right.place, right.text,
                  in_quotes(left.text) + " and " + in_quotes(right.text) + " of couplet " +
                      in_quotes(edition[id].label) + " are both the state " + in_quotes(states) +
                      " of " + in_quotes(one.character),
                  "part the state into two, each with its own phrases");
      }
    }
  }

  void check_character(LexiconCharacter const& character) {
    use_.states += character.states.size();
    if (!used_.contains(character.id)) {
      ++use_.unused_characters;
      use_.unused_states += character.states.size();
      report("lexicon-unused-character", Severity::warning, character, character.id,
             "no lead speaks of the character " + in_quotes(character.id),
             "see that its subjects and phrases are what the editions print, or take it out");
      return;
    }
    for (auto const& state : character.states) {
      if (!used_states_.contains({character.id, state.id})) {
        ++use_.unused_states;
        report("lexicon-unused-state", Severity::information, character, state.id,
               "no lead names the state " + in_quotes(state.id) + " of the character " +
                   in_quotes(character.id),
               "keep it for records, or take it out");
        continue;
      }
      for (auto const& phrase : state.phrases) {
        auto const words = normalised_words(phrase.text);
        if (words.empty() || printed_.find(' ' + words + ' ') != std::string::npos) continue;
        report("lexicon-unused-phrase", Severity::information, character, phrase.text,
               "no lead prints " + in_quotes(phrase.text) + " (state " + in_quotes(state.id) +
                   " of the character " + in_quotes(character.id) + ')',
               "keep it for records, or take it out");
      }
    }
  }

  static std::set<std::string> subjects_of(LexiconCharacter const& character) {
    std::set<std::string> subjects;
    for (auto const& subject : character.subjects) {
      subjects.insert(reading::singular_words(normalised_words(subject.text)));
    }
    return subjects;
  }

  void check_ambiguity() {
    struct Use {
      LexiconCharacter const* character;
      LexiconState const* state;
    };
    std::map<std::string, std::vector<Use>> phrases;
    for (auto const& character : lexicon_.characters) {
      for (auto const& state : character.states) {
        std::set<std::string> words{normalised_words(state.id)};
        for (auto const& phrase : state.phrases) words.insert(normalised_words(phrase.text));
        for (auto const& one : words) {
          if (!one.empty()) phrases[one].push_back({&character, &state});
        }
      }
    }
    for (auto const& [words, uses] : phrases) {
      for (std::size_t i = 0; i < uses.size(); ++i) {
        for (std::size_t j = i + 1; j < uses.size(); ++j) {
          auto const& a = *uses[i].character;
          auto const& b = *uses[j].character;
          if (&a == &b) continue;
          auto const subjects_a = subjects_of(a);
          auto const subjects_b = subjects_of(b);
          bool const shared = subjects_a.empty() || subjects_b.empty() ||
                              std::any_of(subjects_a.begin(), subjects_a.end(),
                                          [&](auto const& s) { return subjects_b.contains(s); });
          if (!shared) continue;
          report("lexicon-ambiguous-phrase", Severity::warning, b, words,
                 in_quotes(words) + " is a state of " + in_quotes(a.id) + " and of " +
                     in_quotes(b.id) + ", which share a subject",
                 "make the phrases longer, or the subjects different")
              .related.push_back({a.place, "the other character"});
        }
      }
    }
  }

  // A number of the leads that the lexicon would know but for its unit.
  void check_units() {
    for (auto const& [id, where] : numbers_) {
      auto const& [edition, statement] = where;
      auto const bar = id.rfind('|');
      if (!id.starts_with("~n:") || bar == std::string::npos) continue;
      auto const words = ' ' + id.substr(3, bar - 3) + ' ';
      auto const unit = id.substr(bar + 1);
      for (auto const& character : lexicon_.characters) {
        if (character.kind == CharacterKind::categorical) continue;
        auto const canonical = canonical_unit(character.unit);
        auto const own = character.kind == CharacterKind::count ? "1"
                         : canonical                            ? canonical->unit
                                                                : character.unit;
        if (own == unit) continue;
        auto const subjects = subjects_of(character);
        bool const named = std::any_of(subjects.begin(), subjects.end(), [&](auto const& subject) {
          return words.starts_with(' ' + subject + ' ');
        });
        auto const property = reading::singular_words(normalised_words(character.property));
        bool const same = named && (unit == "1" || own == "1" || property.empty() ||
                                    words.find(' ' + property + ' ') != std::string::npos);
        if (!same) continue;
        auto const in_words = [](std::string const& one) {
          return one == "1"    ? std::string{"a count"}
                 : one.empty() ? std::string{"a ratio"}
                               : "measured in " + one;
        };
        auto& finding =
            report("lexicon-unit-disagrees", Severity::warning, character, character.unit,
                   "the character " + in_quotes(character.id) + " is " + in_words(own) + ", but " +
                       in_quotes(statement->text) + " of " + short_label(*edition) + " is " +
                       in_words(unit),
                   "mend the unit or the kind, or add a character for what the leads measure");
        finding.related.push_back({statement->place, "in " + edition->name});
      }
    }
  }

  Lexicon const& lexicon_;
  std::span<Edition* const> editions_;
  LexiconUse use_;
  std::vector<Finding> of_editions_;
  std::string printed_;
  std::set<std::string> used_;
  std::set<std::pair<std::string, std::string>> used_states_;
  std::map<std::string, std::pair<Edition const*, Statement const*>> numbers_;
};

}  // namespace

LexiconUse check_lexicon_use(Lexicon const& lexicon, std::span<Edition* const> editions) {
  return UseChecker{lexicon, editions}.run();
}

std::span<FindingKind const> lexicon_use_finding_kinds() { return kLexiconUseKinds; }

}  // namespace keydrift

#pragma once
// Evidence of many records: every distinct word is understood once.  Inner header of
// redetermination.
//
// Archives repeat themselves: the same states, names, places and people stand in most of their
// rows. What a word means is kept, up to a bound; an archive in which all words differ is
// understood as well, more slowly, in the same memory.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/redetermination/evidence.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {

class EvidenceMemo {
 public:
  // Borrows the space.
  explicit EvidenceMemo(CharacterSpace const& space) : space_{space} {}

  // As read_evidence(); `evidence` is overwritten, its memory kept.
  void read(Specimen const& specimen, RecordedEvidence& evidence);

 private:
  struct Column {
    std::optional<CharacterIndex> character{};
    ObservedCells observed{};
  };
  [[nodiscard]] Column const& column(Observation const& observation, std::size_t place);
  [[nodiscard]] ObservedCells const& limit(LimitKind kind, std::string const& value);

  // Rows of a table have their characters in one order: each place keeps its words apart, and looks
  // first whether the word is the one of the row before.
  struct Words {
    std::string character{}, unit{};
    std::string last{};
    Column const* last_column{};
    std::unordered_map<std::string, Column> by_value{};
  };

  CharacterSpace const& space_;
  std::string key_;
  std::vector<Words> places_;  // by the ordinal of the observation
  std::unordered_map<std::string, ObservedCells> limits_;
};

// Does a scope cover specimens?  As covers(), word by word.  Borrows the scope.
class ScopeMemo {
 public:
  explicit ScopeMemo(Scope const& scope);
  [[nodiscard]] ScopeAnswer covers(Specimen const& specimen);

  // The same in parts.  False: whatever a specimen shows, the scope neither covers it nor leaves it
  // out.
  [[nodiscard]] bool asks() const;
  [[nodiscard]] ScopeAnswer sex(std::string const& shown);
  [[nodiscard]] ScopeAnswer life_stage(std::string const& shown);
  [[nodiscard]] bool lists(std::string const& place);
  [[nodiscard]] ScopeAnswer together(ScopeAnswer sex, ScopeAnswer life_stage, bool any_place,
                                     bool any_listed) const;

 private:
  [[nodiscard]] ScopeAnswer word(LimitKind kind, std::string const& wanted,
                                 std::string const& shown);
  Scope const& scope_;
  std::vector<std::string> places_;  // normalised
  std::unordered_map<std::string, bool> known_places_;
  std::unordered_map<std::string, ScopeAnswer> words_;
  std::string key_;
};

}  // namespace keydrift

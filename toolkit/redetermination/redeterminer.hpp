#pragma once
// Redetermining an archive: specimens go in one by one, the totals and lists come out.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/space.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/redetermination/judge.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

struct RedetermineOptions {
  Reading reading{Reading::strict};
  CitationTable const* citations{nullptr};  // borrowed for the constructor; see EditionsUsed
};

// What somebody who looked at a specimen found: evidence beside the record.
struct Looks {
  struct Seen {
    CharacterIndex character{};
    Cells cells{};
  };
  std::vector<Seen> seen{};
  std::optional<TaxonId> named{};  // the name that they gave it, a terminal of the new edition
  bool settled{false};             // whatever the outcome, it is not to be looked at again
};

class Redeterminer {
 public:
  // Everything passed by reference must outlive the redeterminer.  Precondition: read_statements()
  // was run on both editions together, and `collation` compares them.
  Redeterminer(Edition const& old_edition, KeyGraph const& old_graph, Edition const& new_edition,
               KeyGraph const& new_graph, Collation const& collation, Lexicon const& lexicon,
               ParentTable const& parents, RedetermineOptions options = {});
  ~Redeterminer();
  Redeterminer(Redeterminer const&) = delete;
  Redeterminer& operator=(Redeterminer const&) = delete;

  [[nodiscard]] CharacterSpace const& space() const { return space_; }
  [[nodiscard]] CompiledKey const& old_key() const { return old_key_; }
  [[nodiscard]] CompiledKey const& new_key() const { return new_key_; }

  // Judges one specimen and counts it.  The result holds the specimen without its observations.
  SpecimenOutcome add(Specimen const& specimen, Looks const& looks = {});
  // The same for who needs no copy of the specimen: the index of its verdict.
  std::size_t count(Specimen const& specimen, Looks const& looks = {});
  // Possible new names of a verdict that count() gave, joined by " | ".
  [[nodiscard]] std::string const& new_names(std::size_t verdict) const;
  // What the specimen would come to, without counting it.  `contradictory`: its record and what was
  // seen exclude each other.
  struct Weighed {
    std::size_t verdict{};  // index into Redetermination::verdicts
    bool contradictory{false};
  };
  [[nodiscard]] Weighed weigh(Specimen const& specimen, Looks const& looks = {});
  [[nodiscard]] Verdict const& verdict(std::size_t index) const { return result_.verdicts[index]; }
  [[nodiscard]] Edition const& new_edition() const { return new_edition_; }
  [[nodiscard]] Placement place_in_new(std::string_view name) const {
    return new_names_.place(name);
  }
  [[nodiscard]] Verdict const& verdict(SpecimenOutcome const& outcome) const {
    return result_.verdicts[outcome.verdict];
  }

  void add_look_alike(Specimen specimen);
  void count_rejected(std::uint64_t rows) { result_.rejected += rows; }

  // Ends the run; to be called once.
  [[nodiscard]] Redetermination finish() &&;

 private:
  struct Evidence;
  struct Memo;
  using Totals = std::array<std::uint64_t, kOutcomes>;
  // The evidence of one specimen, until the next call.  `note`: tell what of the record cannot be
  // used, once for each specimen.
  [[nodiscard]] Evidence const& evidence_of(Specimen const& specimen, Looks const& looks,
                                            bool note);
  [[nodiscard]] std::size_t verdict_for(Evidence const& evidence);
  void tally(Specimen const& specimen, std::size_t verdict, Evidence const& evidence, bool settled);
  // The place in the table of names from which and to which.
  [[nodiscard]] std::size_t from_to_row(Verdict const& verdict, std::string const& new_names,
                                        std::string const& name);
  void note_problem(Specimen const& specimen, Observation const& observation,
                    std::string const& problem);

  Edition const& old_edition_;
  Edition const& new_edition_;
  Collation const& collation_;
  RedetermineOptions options_;
  NameIndex old_names_;
  NameIndex new_names_;
  CharacterSpace space_;
  CompiledKey old_key_;
  CompiledKey new_key_;
  Judge judge_;
  Redetermination result_;
  std::unordered_map<std::string, std::size_t> verdict_by_evidence_;
  std::unordered_map<std::string, Determination> determinations_;
  std::unordered_map<std::string, std::size_t> from_to_;  // index into Redetermination::from_to
  std::unordered_map<std::string, Totals> by_storage_, by_decade_, by_person_;
  std::unique_ptr<Memo> memo_;
  std::unordered_map<std::uint32_t, std::uint64_t> reading_couplets_;
  // One finding per (character, value), with the number of specimens.
  std::unordered_map<std::string, std::pair<std::size_t, std::uint64_t>> problems_;
};

// Does a scope cover the specimen?  Unknown counts as covered: nothing recorded contradicts it.
enum class ScopeAnswer { covered, outside, unknown };
[[nodiscard]] ScopeAnswer covers(Scope const& scope, Specimen const& specimen);

// Groups of sheets to pull: by storage unit and by question, cheapest decisive question first,
// types on top, then vouchers.
[[nodiscard]] std::vector<WorkGroup> make_worklist(Redetermination const& result,
                                                   Edition const& new_edition);

}  // namespace keydrift

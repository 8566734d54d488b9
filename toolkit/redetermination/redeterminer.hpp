#pragma once
// Redetermining an archive: specimens go in one by one, the totals and lists come out.  Memory
// grows with storage units, people and regions, not with the number of specimens, nor with that of
// different verdicts: what is not met lately is on the disk (verdict_ledger.hpp).

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/coded_specimen.hpp"
#include "keydrift/characters/space.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/key/spill/fingerprint.hpp"
#include "keydrift/redetermination/judge.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

struct RedetermineOptions {
  Reading reading{Reading::strict};
  CitationTable const* citations{nullptr};  // borrowed for the constructor; see EditionsUsed
  // Specimens kept for each list of the result, the first in the order of the archive.  Counts know
  // no such bound.
  std::size_t to_look_at_kept{5'000};
  std::size_t to_relabel_kept{5'000};
  std::size_t expectations_kept{5'000};  // of those that key out and of those that do not
  // Verdicts, and groups of sheets, that each thread has at hand; some 200 bytes each.
  std::size_t verdicts_kept{50'000};
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

struct RedeterminationGround;
class VerdictLedger;

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

  [[nodiscard]] CharacterSpace const& space() const;
  [[nodiscard]] CompiledKey const& old_key() const;
  [[nodiscard]] CompiledKey const& new_key() const;

  // --- several threads ---
  //
  // Each thread counts with a redeterminer of its own and says where in the archive its specimens
  // stand; in the end one absorbs the others.  The result is that of counting all specimens in the
  // order of their places, whoever counted them: but each one must count in ascending order, and no
  // two specimens may have one place.
  [[nodiscard]] std::unique_ptr<Redeterminer> assistant() const;  // outlived by the ground of this
  void stand_at(std::uint64_t place) { place_ = place; }  // of the next specimen; then one further
  void absorb(Redeterminer& assistant);                   // leaves nothing behind in it

  // --- one specimen ---

  // What a specimen came to.
  struct Counted {
    std::size_t verdict{};  // until the next specimen is counted
    Fingerprint group{};    // of sheets to be looked at together, where `look`: WorkGroup::id
    bool look{false};       // somebody must look at it
    bool relabel{false};    // the record alone gives another name
    bool expected{false};   // a type or voucher
  };
  // Judges one specimen and counts it.
  Counted count(Specimen const& specimen, Looks const& looks = {});
  // The same for a specimen whose words are known by number, much faster.  Nothing: it has to be
  // counted as above (what it records cannot be used as it stands, and is to be told).  Only the
  // line of the specimen is known then: where keeps() says so, keep() must follow.
  [[nodiscard]] std::optional<Counted> count(CodedSpecimen const& specimen,
                                             CodedWords const& words);
  [[nodiscard]] bool keeps(Counted const& counted) const;
  void keep(Counted const& counted, Specimen const& specimen);
  // Possible new names of a verdict, joined by " | ".
  [[nodiscard]] std::string new_names(Verdict const& verdict) const;
  // What the specimen would come to, without counting it.  `contradictory`: its record and what was
  // seen exclude each other.
  struct Weighed {
    std::size_t verdict{};
    bool contradictory{false};
  };
  [[nodiscard]] Weighed weigh(Specimen const& specimen, Looks const& looks = {});
  // Of count() and weigh(), until the next specimen is counted; numbers of the result differ.
  [[nodiscard]] Verdict verdict(std::size_t index) const;
  // Grows when the numbers given until then have lost their meaning.
  [[nodiscard]] std::uint64_t forgotten() const;
  [[nodiscard]] Edition const& new_edition() const;
  [[nodiscard]] EditionsUsed const& editions() const;  // to be copied: of() remembers
  [[nodiscard]] Placement place_in_new(std::string_view name) const;

  void add_look_alike(Specimen specimen);
  void count_rejected(std::uint64_t rows);

  // Ends the run; to be called once.  Verdicts are numbered by their first specimens.
  [[nodiscard]] Redetermination finish() &&;

 private:
  struct Assistant {};
  explicit Redeterminer(std::shared_ptr<RedeterminationGround const> ground);
  Redeterminer(Redeterminer const& other, Assistant);
  struct Counts;
  friend class CodedCounting;

  std::shared_ptr<RedeterminationGround const> ground_;
  std::shared_ptr<VerdictLedger> ledger_;
  std::uint64_t place_{};
  std::unique_ptr<Counts> counts_;
};

// Does a scope cover the specimen?  Unknown counts as covered: nothing recorded contradicts it.
enum class ScopeAnswer { covered, outside, unknown };
[[nodiscard]] ScopeAnswer covers(Scope const& scope, Specimen const& specimen);

}  // namespace keydrift

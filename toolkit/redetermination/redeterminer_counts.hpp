#pragma once
// What a redeterminer counts.  Inner header of redetermination.

#include <array>
#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "keydrift/redetermination/coded_counting.hpp"
#include "keydrift/redetermination/edition_tally.hpp"
#include "keydrift/redetermination/evidence_memo.hpp"
#include "keydrift/redetermination/ground.hpp"
#include "keydrift/redetermination/redeterminer.hpp"
#include "keydrift/redetermination/verdict_table.hpp"

namespace keydrift {

using OutcomeTotals = std::array<std::uint64_t, kOutcomes>;
using TotalsByWord = std::unordered_map<std::string, OutcomeTotals>;

// "1990s" of an ISO 8601 date; "" where it does not begin with a year.
[[nodiscard]] std::string decade_of(std::string_view date);

struct Redeterminer::Counts {
  Counts(RedeterminationGround const& the_ground, std::shared_ptr<VerdictLedger> the_ledger)
      : ground{the_ground},
        memo{the_ground.space},
        in_old{the_ground.old_edition.front.scope},
        in_new{the_ground.new_edition.front.scope},
        editions{the_ground.editions},
        ledger{std::move(the_ledger)},
        verdicts{the_ground, ledger} {}

  struct Kept {
    std::uint64_t place{};
    Fingerprint group{};    // of sheets to look at
    Fingerprint verdict{};  // whose number is not known before the end
    std::string specimen;   // specimen_bytes.hpp
  };
  // Something recorded that cannot be used: told once, counted.
  struct Problem {
    std::uint64_t place{};  // of the first specimen
    std::uint64_t specimens{};
    Finding finding;
  };

  // The evidence of one specimen, until the next call.  `note`: tell what of the record cannot be
  // used, once for each specimen.
  [[nodiscard]] SpecimenEvidence const& evidence_of(Specimen const& specimen, Looks const& looks,
                                                    bool note, std::uint64_t place);
  void note_problem(Specimen const& specimen, Observation const& observation,
                    std::string const& problem, std::uint64_t place);
  void keep_few_problems();
  // Specimens of a verdict; `place`: of the first of them.
  void add(std::size_t verdict, std::uint64_t specimens, std::uint64_t place);
  // Before a specimen is counted: what was met is written into the ledger when it is too much.
  void make_room() {
    auto const most = ground.options.verdicts_kept;
    if (verdicts.size() >= most) settle_verdicts();
    if (groups.size() >= most) settle_groups();
  }
  void settle_verdicts();
  void settle_groups();
  // Among the types and vouchers, and among the sheets to look at: sets Counted::group.
  void enlist(Counted& counted, bool type, bool voucher, std::string_view storage,
              std::uint64_t place);
  [[nodiscard]] bool fails(std::size_t verdict) const;
  [[nodiscard]] bool keeps(Counted const& counted) const;
  void keep(Counted const& counted, Specimen const& specimen, std::uint64_t place);
  void absorb(Counts& other);

  RedeterminationGround const& ground;
  EvidenceMemo memo;
  ScopeMemo in_old, in_new;
  EditionsUsed editions;
  EditionTally used;
  std::shared_ptr<VerdictLedger> ledger;
  VerdictTable verdicts;
  std::uint64_t forgotten{};  // how often indexes of verdicts lost their meaning
  SpecimenEvidence current;
  std::unordered_map<std::string, std::string> names;  // as recorded -> as judged
  std::string key;

  std::uint64_t rejected{};
  std::uint64_t examined{};
  std::uint64_t sheets_to_look_at{}, sheets_to_relabel{}, expected{}, failed{};
  TotalsByWord by_storage, by_decade, by_person, by_collector, by_region;
  std::unordered_map<Fingerprint, CountedGroup> groups;
  std::vector<Kept> look, relabel, expectations, failures;  // each ascending by place
  std::vector<LookAlikeResult> look_alikes;
  std::map<std::string, Problem> problems;  // by character and value
  std::uint64_t problems_left_out{};        // specimens of those that are not kept
  std::unique_ptr<CodedCounting> coded;     // made when it is first needed
};

}  // namespace keydrift

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
  Counts(RedeterminationGround const& the_ground, std::shared_ptr<SharedVerdicts> shared)
      : ground{the_ground},
        memo{the_ground.space},
        in_old{the_ground.old_edition.front.scope},
        in_new{the_ground.new_edition.front.scope},
        editions{the_ground.editions},
        verdicts{the_ground, std::move(shared)} {}

  struct Kept {
    std::uint64_t place{};
    std::size_t group{};  // of sheets to look at
    SpecimenOutcome outcome;
  };
  // Sheets of one storage unit of which the same is asked.
  struct Group {
    std::string storage;
    std::string question;
    bool has_types{false};
    bool has_vouchers{false};
    std::uint64_t sheets{};
    // The sheet that is first on the worklist: types, then vouchers, then by place.
    std::pair<int, std::uint64_t> first{};
    std::size_t verdict{};  // of that sheet
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
  [[nodiscard]] std::size_t group_of(std::string_view storage, std::size_t verdict);
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
  VerdictTable verdicts;
  SpecimenEvidence current;
  std::unordered_map<std::string, std::string> names;  // recorded name and qualifier -> as judged
  std::string key;

  std::uint64_t rejected{};
  std::uint64_t examined{};
  std::uint64_t sheets_to_look_at{}, sheets_to_relabel{}, expected{}, failed{};
  TotalsByWord by_storage, by_decade, by_person, by_collector, by_region;
  std::vector<Group> groups;
  std::unordered_map<std::string, std::size_t> group_by_name;
  std::vector<Kept> look, relabel, expectations, failures;  // each ascending by place
  std::vector<LookAlikeResult> look_alikes;
  std::map<std::string, Problem> problems;  // by character and value
  std::uint64_t problems_left_out{};        // specimens of those that are not kept
  std::unique_ptr<CodedCounting> coded;     // made when it is first needed
};

}  // namespace keydrift

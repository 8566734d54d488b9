// The end of a run: sums and lists put in order.

#include <algorithm>
#include <set>
#include <unordered_map>
#include <utility>

#include "keydrift/key/spill/free_memory.hpp"
#include "keydrift/redetermination/from_to_rows.hpp"
#include "keydrift/redetermination/redeterminer_counts.hpp"
#include "keydrift/redetermination/specimen_bytes.hpp"
#include "keydrift/redetermination/work_groups.hpp"

namespace keydrift {
namespace {

std::pair<std::string, std::string> from_and_to(JudgedEvidence const& judged,
                                                Edition const& old_edition, std::string new_names) {
  auto const& verdict = judged.verdict;
  auto from =
      verdict.old_taxa.size() == 1 ? old_edition[verdict.old_taxa.front()].name : judged.name;
  switch (verdict.outcome) {
    case Outcome::stranded:
      return {std::move(from), "(stranded)"};
    case Outcome::not_keyed:
      return {std::move(from), "(not keyed)"};
    case Outcome::leaves_scope:
      return {std::move(from), "(out of scope)"};
    case Outcome::doubtful:
      return {std::move(from), "(doubtful)"};
    case Outcome::enters_scope:
      // The old edition did not cover these, so the recorded name means none of its terminals.
      return {"(outside the old scope)", "(newly covered)"};
    case Outcome::stands:
    case Outcome::renamed:
    case Outcome::changes:
    case Outcome::narrowed:
    case Outcome::open:
      break;
  }
  return {std::move(from), std::move(new_names)};
}

// The couplets of the new edition where the way of reading tells.
std::set<std::uint32_t> couplets_of_reading(Verdict const& verdict) {
  std::set<std::uint32_t> couplets;
  for (auto const& partial : verdict.partly) {
    if (partial.in_new) couplets.insert(partial.lead.couplet.index);
  }
  if (couplets.empty() && verdict.parting && verdict.parting->new_couplet) {
    couplets.insert(verdict.parting->new_couplet->index);
  }
  return couplets;
}

// Everything that hangs on the verdicts alone, from how many specimens each has.
class Sums {
 public:
  Sums(Redetermination& result, Edition const& old_edition, Edition const& new_edition)
      : result_{result}, old_edition_{old_edition}, new_edition_{new_edition} {}

  void add(JudgedEvidence const& judged, std::uint64_t count) {
    auto const& verdict = judged.verdict;
    auto const at = static_cast<std::size_t>(verdict.outcome);
    result_.read += count;
    result_.totals[at] += count;
    result_.by_footing[static_cast<std::size_t>(verdict.footing)][at] += count;
    if (judged.untied) result_.untied += count;
    (judged.any ? result_.with_characters : result_.name_only) += count;
    bool depends = false;
    for (std::size_t i = 0; i < kReadings; ++i) {
      result_.totals_by_reading[i][static_cast<std::size_t>(verdict.by_reading[i])] += count;
      depends = depends || verdict.by_reading[i] != verdict.by_reading[0];
    }
    if (depends) {
      result_.reading_dependent += count;
      for (auto const couplet : couplets_of_reading(verdict)) couplets_[couplet] += count;
    }
    auto const [from, to] = from_and_to(judged, old_edition_, new_names_of(verdict, new_edition_));
    rows_.add(from, to, verdict.outcome, count);
  }

  void finish() {
    result_.broken = rows_.finish(result_.from_to);
    for (auto const& [couplet, specimens] : couplets_) {
      result_.reading_couplets.push_back({CoupletId{couplet}, specimens});
    }
    std::stable_sort(result_.reading_couplets.begin(), result_.reading_couplets.end(),
                     [](ReadingDependence const& a, ReadingDependence const& b) {
                       return a.specimens > b.specimens;
                     });
  }

 private:
  Redetermination& result_;
  Edition const& old_edition_;
  Edition const& new_edition_;
  FromToRows rows_;
  std::map<std::uint32_t, std::uint64_t> couplets_;
};

}  // namespace

Redetermination Redeterminer::finish() && {
  auto& counts = *counts_;
  if (counts.coded) counts.coded->settle_accounts();
  counts.settle_verdicts();
  counts.settle_groups();
  counts.coded.reset();
  give_back_free_memory();
  Redetermination result;
  result.reading = ground_->options.reading;
  result.rejected = counts.rejected;
  result.examined = counts.examined;
  result.editions = counts.used.counts(ground_->editions);
  result.sheets_to_look_at = counts.sheets_to_look_at;
  result.sheets_to_relabel = counts.sheets_to_relabel;
  result.expected = counts.expected;
  result.failed = counts.failed;
  result.by_storage.insert(counts.by_storage.begin(), counts.by_storage.end());
  result.by_decade.insert(counts.by_decade.begin(), counts.by_decade.end());
  result.by_person.insert(counts.by_person.begin(), counts.by_person.end());
  result.by_collector.insert(counts.by_collector.begin(), counts.by_collector.end());
  result.by_region.insert(counts.by_region.begin(), counts.by_region.end());
  result.look_alikes = std::move(counts.look_alikes);

  // The numbers of the verdicts that the specimens kept have.
  struct Numbered {
    std::size_t number{};
    bool doubtful{false};
    std::string new_names;
  };
  std::unordered_map<Fingerprint, Numbered> numbered;
  for (auto const* list : {&counts.look, &counts.relabel, &counts.expectations, &counts.failures}) {
    for (auto const& kept : *list) numbered.try_emplace(kept.verdict);
  }
  result.verdicts = StoredList<Verdict>{ledger_->store()};
  Sums sums{result, ground_->old_edition, ground_->new_edition};
  ledger_->number_verdicts([&](CountedVerdict const& counted) {
    auto const judged = read_judged(*ledger_, counted.address);
    sums.add(judged, counted.specimens);
    if (auto const kept = numbered.find(counted.id); kept != numbered.end()) {
      kept->second = {.number = result.verdicts.size(),
                      .doubtful = judged.verdict.outcome == Outcome::doubtful,
                      .new_names = new_names_of(judged.verdict, ground_->new_edition)};
    }
    result.verdicts.push_stored(counted.address);
  });
  sums.finish();

  auto const told = [&](Counts::Kept& kept) {
    SpecimenOutcome outcome;
    ByteReader reader{kept.specimen};
    read_bytes(reader, outcome.specimen);
    kept.specimen = {};
    auto const& verdict = numbered.at(kept.verdict);
    outcome.verdict = verdict.number;
    outcome.new_names = verdict.new_names;
    return outcome;
  };
  SheetsOfGroups sheets;
  for (auto& kept : counts.look) {
    sheets[kept.group].push_back(result.to_look_at.size());
    result.to_look_at.push_back(told(kept));
  }
  for (auto& kept : counts.relabel) result.to_relabel.push_back(told(kept));
  for (auto& [id, specimens] : sheets) {
    // Types first within the group, then vouchers, else input order.
    auto const rank = [&](std::size_t i) {
      auto const& specimen = result.to_look_at[i].specimen;
      return !specimen.type_status.empty() ? 0 : specimen.voucher ? 1 : 2;
    };
    std::stable_sort(specimens.begin(), specimens.end(),
                     [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  }
  list_work_groups(*ledger_, ground_->new_edition, sheets, result);

  auto expected = counts.expectations.begin();
  for (auto failed = counts.failures.begin();
       expected != counts.expectations.end() || failed != counts.failures.end();) {
    bool const fails = expected == counts.expectations.end() ||
                       (failed != counts.failures.end() && failed->place < expected->place);
    auto& kept = fails ? *failed++ : *expected++;
    if (fails) {
      result.failures.push_back(
          {.specimen = result.expectations.size(), .in_new = !numbered.at(kept.verdict).doubtful});
    }
    result.expectations.push_back(told(kept));
  }

  std::vector<Counts::Problem> problems;
  for (auto& [name, problem] : counts.problems) problems.push_back(std::move(problem));
  std::stable_sort(problems.begin(), problems.end(),
                   [](auto const& a, auto const& b) { return a.place < b.place; });
  for (auto& problem : problems) {
    if (problem.specimens > 1) {
      problem.finding.message += " (" + std::to_string(problem.specimens) + " records)";
    }
    result.findings.push_back(std::move(problem.finding));
  }
  if (counts.problems_left_out > 0) {
    Finding more;
    more.code = "unusable-observation";
    more.severity = Severity::warning;
    more.message = std::to_string(counts.problems_left_out) +
                   " further records hold other values that cannot be used";
    more.remedy = "mend the values told here first, then run again";
    result.findings.push_back(std::move(more));
  }
  auto const& on_editions = ground_->editions.findings();
  result.findings.insert(result.findings.begin(), on_editions.begin(), on_editions.end());
  sort_findings(result.findings);
  if (!result.broken) result.broken = ledger_->failure();
  return result;
}

}  // namespace keydrift

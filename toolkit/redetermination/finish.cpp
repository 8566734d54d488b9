// The end of a run: sums and lists put in order.

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>
#include <utility>

#include "keydrift/redetermination/redeterminer_counts.hpp"

namespace keydrift {
namespace {

std::pair<std::string, std::string> from_and_to(JudgedEvidence const& judged,
                                                Edition const& old_edition) {
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
  return {std::move(from), judged.new_names};
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
  Sums(Redetermination& result, Edition const& old_edition)
      : result_{result}, old_edition_{old_edition} {}

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
    auto& row = rows_[from_and_to(judged, old_edition_)];
    row.by_outcome[at] += count;
    row.specimens += count;
  }

  void finish() {
    for (auto& [names, row] : rows_) {
      row.from = names.first;
      row.to = names.second;
      result_.from_to.push_back(std::move(row));
    }
    std::stable_sort(result_.from_to.begin(), result_.from_to.end(),
                     [](FromTo const& a, FromTo const& b) { return a.specimens > b.specimens; });
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
  std::map<std::pair<std::string, std::string>, FromTo> rows_;
  std::map<std::uint32_t, std::uint64_t> couplets_;
};

// "2" before "10": storage units sort the way their labels are read.
bool natural_less(std::string_view a, std::string_view b) {
  auto const digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.size() && j < b.size()) {
    if (digit(a[i]) && digit(b[j])) {
      while (i < a.size() && a[i] == '0') ++i;
      while (j < b.size() && b[j] == '0') ++j;
      auto const i0 = i;
      auto const j0 = j;
      while (i < a.size() && digit(a[i])) ++i;
      while (j < b.size() && digit(b[j])) ++j;
      if (i - i0 != j - j0) return i - i0 < j - j0;
      auto const order = a.substr(i0, i - i0).compare(b.substr(j0, j - j0));
      if (order != 0) return order < 0;
    } else {
      if (a[i] != b[j]) return a[i] < b[j];
      ++i;
      ++j;
    }
  }
  if ((a.size() - i) != (b.size() - j)) return (a.size() - i) < (b.size() - j);
  return a < b;
}

bool comes_before(WorkGroup const& a, WorkGroup const& b) {
  if (a.has_types != b.has_types) return a.has_types;
  if (a.has_vouchers != b.has_vouchers) return a.has_vouchers;
  if (a.storage != b.storage) return natural_less(a.storage, b.storage);
  return std::tie(a.cost, a.question) < std::tie(b.cost, b.question);
}

}  // namespace

Redetermination Redeterminer::finish() && {
  auto& counts = *counts_;
  if (counts.coded) counts.coded->settle_accounts();
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

  shared_->clear();
  // Verdicts by their first specimens; those that were only weighed are nobody's.
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < counts.verdicts.size(); ++i) {
    if (counts.verdicts.entry(i).specimens > 0) order.push_back(i);
  }
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return counts.verdicts.entry(a).first_place < counts.verdicts.entry(b).first_place;
  });
  result.verdicts.reserve(order.size());
  Sums sums{result, ground_->old_edition};
  std::vector<std::size_t> number(counts.verdicts.size());
  for (auto const index : order) {
    auto const& judged = counts.verdicts[index];
    sums.add(judged, counts.verdicts.entry(index).specimens);
    number[index] = result.verdicts.size();
    result.verdicts.push_back(judged.verdict);
    // Never all of them twice: of archives that record little, nearly every sheet has its own.
    counts.verdicts.drop(index);
  }
  sums.finish();

  auto const renumbered = [&](SpecimenOutcome outcome) {
    outcome.verdict = number[outcome.verdict];
    return outcome;
  };
  std::vector<WorkGroup> worklist;
  for (auto& group : counts.groups) {
    auto const verdict = number[group.verdict];
    auto const& questions = result.verdicts[verdict].questions;
    // A sheet without a question needs the whole specimen: as dear as a dissection.
    worklist.push_back(
        {.storage = std::move(group.storage),
         .question = std::move(group.question),
         .cost = cost_of(questions.empty() ? Difficulty::dissection : questions.front().difficulty),
         .has_types = group.has_types,
         .has_vouchers = group.has_vouchers,
         .specimens = {},
         .sheets = group.sheets,
         .verdict = verdict});
  }
  for (auto& kept : counts.look) {
    worklist[kept.group].specimens.push_back(result.to_look_at.size());
    result.to_look_at.push_back(renumbered(std::move(kept.outcome)));
  }
  for (auto& kept : counts.relabel) {
    result.to_relabel.push_back(renumbered(std::move(kept.outcome)));
  }
  for (auto& group : worklist) {
    // Types first within the group, then vouchers, else input order.
    auto const rank = [&](std::size_t i) {
      auto const& specimen = result.to_look_at[i].specimen;
      return !specimen.type_status.empty() ? 0 : specimen.voucher ? 1 : 2;
    };
    std::stable_sort(group.specimens.begin(), group.specimens.end(),
                     [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  }
  std::sort(worklist.begin(), worklist.end(), comes_before);
  result.worklist = std::move(worklist);

  auto expected = counts.expectations.begin();
  for (auto failed = counts.failures.begin();
       expected != counts.expectations.end() || failed != counts.failures.end();) {
    bool const fails = expected == counts.expectations.end() ||
                       (failed != counts.failures.end() && failed->place < expected->place);
    auto& kept = fails ? *failed++ : *expected++;
    auto outcome = renumbered(std::move(kept.outcome));
    if (fails) {
      result.failures.push_back(
          {.specimen = result.expectations.size(),
           .in_new = result.verdicts[outcome.verdict].outcome != Outcome::doubtful});
    }
    result.expectations.push_back(std::move(outcome));
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
  return result;
}

}  // namespace keydrift

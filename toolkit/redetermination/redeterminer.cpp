#include "keydrift/redetermination/redeterminer.hpp"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>
#include <vector>

#include "keydrift/redetermination/redeterminer_counts.hpp"
#include "keydrift/redetermination/specimen_bytes.hpp"
#include "keydrift/redetermination/walk.hpp"

namespace keydrift {
namespace {

// Names kept; beyond that all are forgotten and understood anew.
constexpr std::size_t kTaxonNamesKept = 200'000;

// Different values told that cannot be used; further ones are counted.
constexpr std::size_t kProblemsKept = 500;

std::string enumerated(std::vector<std::string> const& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += '"' + items[i] + '"';
  }
  return text;
}

}  // namespace

std::string decade_of(std::string_view date) {
  if (date.size() < 4 ||
      !std::all_of(date.begin(), date.begin() + 4, [](char c) { return c >= '0' && c <= '9'; })) {
    return "";
  }
  return std::string{date.substr(0, 3)} + "0s";
}

// --- counts ------------------------------------------------------------------------------------

void Redeterminer::Counts::note_problem(Specimen const& specimen, Observation const& observation,
                                        std::string const& problem, std::uint64_t place) {
  auto const [at, fresh] = problems.try_emplace(observation.character + '\n' + problem);
  auto& known = at->second;
  ++known.specimens;
  if (!fresh) return;
  keep_few_problems();
  if (problems.find(observation.character + '\n' + problem) == problems.end()) return;
  known.place = place;
  auto& finding = known.finding;
  finding.code = "unusable-observation";
  finding.severity = Severity::warning;
  finding.place.line =
      static_cast<std::uint32_t>(observation.line != 0 ? observation.line : specimen.line);
  finding.place.column = observation.column == 0 ? 1 : observation.column;
  finding.printed = observation.value;
  auto const semicolon = problem.find("; ");
  finding.message = observation.character + ": " + problem.substr(0, semicolon);
  finding.remedy = semicolon == std::string::npos ? "" : problem.substr(semicolon + 2);
}

void Redeterminer::Counts::keep_few_problems() {
  // The first by their words, whoever met them and in whatever order.
  while (problems.size() > kProblemsKept) {
    auto const last = std::prev(problems.end());
    problems_left_out += last->second.specimens;
    problems.erase(last);
  }
}

SpecimenEvidence const& Redeterminer::Counts::evidence_of(Specimen const& specimen,
                                                          Looks const& looks, bool note,
                                                          std::uint64_t place) {
  auto& recorded = current.recorded;
  memo.read(specimen, recorded);
  for (auto const& unusable : recorded.unusable) {
    if (!note) break;
    note_problem(specimen, specimen.observations[unusable.observation], unusable.problem, place);
  }
  for (auto const& seen : looks.seen) {
    add_to_evidence(recorded, ground.space, seen.character, seen.cells);
  }
  current.named = looks.named;
  key.assign(specimen.scientific_name);
  key += '\x1F';
  key += specimen.qualifier;
  key += '\x1F';
  key += specimen.authorship;
  auto known = names.find(key);
  if (known == names.end()) {
    if (names.size() >= kTaxonNamesKept) names.clear();
    known = names
                .emplace(key, judged_name(specimen.scientific_name, specimen.qualifier,
                                          specimen.authorship))
                .first;
  }
  current.name = known->second;
  current.use = editions.of(specimen.identification_references, specimen.date_identified);
  current.old_scope = in_old.covers(specimen);
  current.new_scope = in_new.covers(specimen);
  current.untied = enumerated(specimen.untied);
  current.loose = enumerated(specimen.loosely_tied);
  return current;
}

void Redeterminer::Counts::add(std::size_t verdict, std::uint64_t specimens, std::uint64_t place) {
  verdicts.count(verdict, specimens, place);
  if (verdicts[verdict].look) sheets_to_look_at += specimens;
  if (verdicts[verdict].relabel) sheets_to_relabel += specimens;
}

void Redeterminer::Counts::settle_verdicts() {
  if (coded) coded->settle_verdicts();
  verdicts.settle();
  ++forgotten;
}

void Redeterminer::Counts::settle_groups() {
  for (auto const& [id, group] : groups) ledger->add(group);
  groups.clear();
}

void Redeterminer::Counts::enlist(Counted& counted, bool type, bool voucher,
                                  std::string_view storage, std::uint64_t place) {
  if (counted.expected) {
    ++expected;
    if (fails(counted.verdict)) ++failed;
  }
  if (!counted.look) return;
  auto const& judged = verdicts[counted.verdict];
  counted.group = fingerprint_of(storage, judged.question);
  CountedGroup const sheet{.id = counted.group,
                           .sheets = 1,
                           .first = {type      ? 0U
                                     : voucher ? 1U
                                               : 2U,
                                     place},
                           .verdict = judged.id,
                           .has_types = type,
                           .has_vouchers = voucher};
  auto const [at, fresh] = groups.try_emplace(sheet.id, sheet);
  if (fresh) {
    at->second.storage = ledger->storage_number(storage);
  } else {
    at->second.take(sheet);
  }
}

bool Redeterminer::Counts::fails(std::size_t verdict) const {
  auto const outcome = verdicts[verdict].outcome;
  return outcome == Outcome::changes || outcome == Outcome::stranded ||
         outcome == Outcome::doubtful;
}

bool Redeterminer::Counts::keeps(Counted const& counted) const {
  auto const& options = ground.options;
  return (counted.look && look.size() < options.to_look_at_kept) ||
         (counted.relabel && relabel.size() < options.to_relabel_kept) ||
         (counted.expected &&
          (fails(counted.verdict) ? failures : expectations).size() < options.expectations_kept);
}

void Redeterminer::Counts::keep(Counted const& counted, Specimen const& specimen,
                                std::uint64_t place) {
  Kept kept{.place = place,
            .group = counted.group,
            .verdict = verdicts[counted.verdict].id,
            .specimen = {}};
  ByteWriter writer{kept.specimen};
  write_bytes(writer, specimen);
  kept.specimen.shrink_to_fit();
  auto const add_to = [&](std::vector<Kept>& list, bool wanted, std::size_t most) {
    if (wanted && list.size() < most) list.push_back(kept);
  };
  auto const& options = ground.options;
  add_to(look, counted.look, options.to_look_at_kept);
  add_to(relabel, counted.relabel, options.to_relabel_kept);
  add_to(fails(counted.verdict) ? failures : expectations, counted.expected,
         options.expectations_kept);
}

void Redeterminer::Counts::absorb(Counts& other) {
  if (other.coded) other.coded->settle_accounts();
  other.settle_verdicts();
  other.settle_groups();
  auto const merge = [&](std::vector<Kept>& list, std::vector<Kept>& more, std::size_t most) {
    auto const middle = static_cast<std::ptrdiff_t>(list.size());
    std::move(more.begin(), more.end(), std::back_inserter(list));
    std::inplace_merge(list.begin(), list.begin() + middle, list.end(),
                       [](Kept const& a, Kept const& b) { return a.place < b.place; });
    if (list.size() > most) list.resize(most);
    more.clear();
  };
  auto const& options = ground.options;
  merge(look, other.look, options.to_look_at_kept);
  merge(relabel, other.relabel, options.to_relabel_kept);
  merge(expectations, other.expectations, options.expectations_kept);
  merge(failures, other.failures, options.expectations_kept);
  for (auto& [name, problem] : other.problems) {
    auto const [at, fresh] = problems.try_emplace(name, problem);
    if (fresh) continue;
    auto const specimens = at->second.specimens + problem.specimens;
    if (problem.place < at->second.place) at->second = std::move(problem);
    at->second.specimens = specimens;
  }
  problems_left_out += other.problems_left_out;
  keep_few_problems();
  auto const add_all = [](TotalsByWord& to, TotalsByWord const& from) {
    for (auto const& [word, totals] : from) {
      auto& sums = to[word];
      for (std::size_t i = 0; i < kOutcomes; ++i) sums[i] += totals[i];
    }
  };
  add_all(by_storage, other.by_storage);
  add_all(by_decade, other.by_decade);
  add_all(by_person, other.by_person);
  add_all(by_collector, other.by_collector);
  add_all(by_region, other.by_region);
  rejected += other.rejected;
  examined += other.examined;
  used.absorb(other.used);
  sheets_to_look_at += other.sheets_to_look_at;
  sheets_to_relabel += other.sheets_to_relabel;
  expected += other.expected;
  failed += other.failed;
  std::move(other.look_alikes.begin(), other.look_alikes.end(), std::back_inserter(look_alikes));
}

// --- the redeterminer --------------------------------------------------------------------------

Redeterminer::Redeterminer(Edition const& old_edition, KeyGraph const& old_graph,
                           Edition const& new_edition, KeyGraph const& new_graph,
                           Collation const& collation, Lexicon const& lexicon,
                           ParentTable const& parents, RedetermineOptions options)
    : Redeterminer{std::make_shared<RedeterminationGround>(
          old_edition, old_graph, new_edition, new_graph, collation, lexicon, parents, options)} {}

Redeterminer::Redeterminer(std::shared_ptr<RedeterminationGround const> ground)
    : ground_{std::move(ground)},
      ledger_{std::make_shared<VerdictLedger>(ground_->options.verdicts_kept)},
      counts_{std::make_unique<Counts>(*ground_, ledger_)} {}

Redeterminer::Redeterminer(Redeterminer const& other, Assistant)
    : ground_{other.ground_},
      ledger_{other.ledger_},
      counts_{std::make_unique<Counts>(*ground_, ledger_)} {}

Redeterminer::~Redeterminer() = default;

std::unique_ptr<Redeterminer> Redeterminer::assistant() const {
  return std::unique_ptr<Redeterminer>{new Redeterminer{*this, Assistant{}}};
}

void Redeterminer::absorb(Redeterminer& assistant) {
  counts_->absorb(*assistant.counts_);
  assistant.counts_ = std::make_unique<Counts>(*ground_, assistant.ledger_);
}

CharacterSpace const& Redeterminer::space() const { return ground_->space; }
CompiledKey const& Redeterminer::old_key() const { return ground_->old_key; }
CompiledKey const& Redeterminer::new_key() const { return ground_->new_key; }
Edition const& Redeterminer::new_edition() const { return ground_->new_edition; }

EditionsUsed const& Redeterminer::editions() const { return ground_->editions; }

Placement Redeterminer::place_in_new(std::string_view name) const {
  return ground_->new_names.place(name);
}

Verdict Redeterminer::verdict(std::size_t index) const {
  return read_judged(*ledger_, counts_->verdicts[index].address).verdict;
}

std::string Redeterminer::new_names(Verdict const& verdict) const {
  return new_names_of(verdict, ground_->new_edition);
}

std::uint64_t Redeterminer::forgotten() const { return counts_->forgotten; }

Redeterminer::Weighed Redeterminer::weigh(Specimen const& specimen, Looks const& looks) {
  auto const& evidence = counts_->evidence_of(specimen, looks, false, place_);
  return {.verdict = counts_->verdicts.find(evidence),
          .contradictory = evidence.recorded.contradictory};
}

Redeterminer::Counted Redeterminer::count(Specimen const& specimen, Looks const& looks) {
  auto& counts = *counts_;
  counts.make_room();
  auto const place = place_++;
  auto const verdict = counts.verdicts.find(counts.evidence_of(specimen, looks, true, place));
  counts.add(verdict, 1, place);
  auto const& judged = counts.verdicts[verdict];
  auto const at = static_cast<std::size_t>(judged.outcome);
  counts.used.add(counts.current.use, specimen.identification_references);
  ++counts.by_storage[specimen.storage][at];
  ++counts.by_decade[decade_of(specimen.date_identified)][at];
  ++counts.by_person[specimen.identified_by][at];
  ++counts.by_collector[specimen.recorded_by][at];
  ++counts.by_region[specimen.region][at];
  if (!looks.seen.empty() || looks.named || looks.settled) ++counts.examined;

  bool const type = !specimen.type_status.empty();
  Counted counted{.verdict = verdict,
                  .look = judged.look,
                  .relabel = judged.relabel,
                  .expected = type || specimen.voucher};
  if (counted.look && looks.settled) {
    counted.look = false;
    counted.relabel = judged.outcome == Outcome::renamed || judged.outcome == Outcome::changes;
    --counts.sheets_to_look_at;
    if (counted.relabel) ++counts.sheets_to_relabel;
  }
  counts.enlist(counted, type, specimen.voucher, specimen.storage, place);
  if (counts.keeps(counted)) counts.keep(counted, specimen, place);
  return counted;
}

std::optional<Redeterminer::Counted> Redeterminer::count(CodedSpecimen const& specimen,
                                                         CodedWords const& words) {
  auto& coded = counts_->coded;
  if (!coded) coded = std::make_unique<CodedCounting>(*ground_, *counts_, words);
  auto const counted = coded->count(specimen, place_);
  if (counted) ++place_;
  return counted;
}

bool Redeterminer::keeps(Counted const& counted) const { return counts_->keeps(counted); }

void Redeterminer::keep(Counted const& counted, Specimen const& specimen) {
  counts_->keep(counted, specimen, place_ - 1);
}

void Redeterminer::count_rejected(std::uint64_t rows) { counts_->rejected += rows; }

void Redeterminer::add_look_alike(Specimen specimen) {
  auto const& evidence = counts_->evidence_of(specimen, {}, true, place_++);
  LookAlikeResult look_alike;
  auto const run = [&](CompiledKey const& key, std::vector<TaxonId>& taxa,
                       std::optional<CoupletId>& stop, bool in_new) {
    if (evidence.recorded.contradictory) return;
    auto const ways = walk(key, evidence.recorded.box, ground_->options.reading);
    std::set<TaxonId> names;
    for (auto const& leaf : ways.leaves) names.insert(leaf.taxon);
    taxa.assign(names.begin(), names.end());
    find_partial_fits(key, ways.followed, evidence.recorded.box, in_new, look_alike.partly);
    if (!names.empty()) return;
    Strand const* deepest = nullptr;
    for (auto const& strand : ways.strands) {
      if (deepest == nullptr || strand.depth > deepest->depth) deepest = &strand;
    }
    if (deepest != nullptr) stop = deepest->couplet;
  };
  run(ground_->old_key, look_alike.old_taxa, look_alike.old_stop, false);
  run(ground_->new_key, look_alike.new_taxa, look_alike.new_stop, true);
  look_alike.specimen = std::move(specimen);
  look_alike.specimen.observations.clear();
  counts_->look_alikes.push_back(std::move(look_alike));
}

}  // namespace keydrift

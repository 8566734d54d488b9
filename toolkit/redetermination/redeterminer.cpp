#include "keydrift/redetermination/redeterminer.hpp"

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

#include "keydrift/redetermination/edition_tally.hpp"
#include "keydrift/redetermination/evidence_memo.hpp"
#include "keydrift/redetermination/known_path.hpp"
#include "keydrift/redetermination/walk.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

// What one record is worth, before any keying.
struct Redeterminer::Evidence {
  RecordedEvidence recorded;     // its `any`: a character that can be used
  std::string const* name{};     // as judged (qualified ones one rank higher)
  std::optional<TaxonId> named;  // by somebody who looked
  std::string untied;            // "x and y": recorded, but of what character of the key?
  std::string loose;             // recorded, and tied to the key with low confidence
  EditionUse use;                // with which edition it was named
  ScopeAnswer old_scope{ScopeAnswer::unknown};
  ScopeAnswer new_scope{ScopeAnswer::unknown};
};

// What is kept from one specimen to the next.
struct Redeterminer::Memo {
  Memo(CompiledKey const& old_key, CompiledKey const& new_key, CitationTable const* citations)
      : editions{citations, old_key.edition->front, new_key.edition->front},
        evidence{*old_key.space},
        in_old{old_key.edition->front.scope},
        in_new{new_key.edition->front.scope},
        path{old_key, new_key} {}

  // What all specimens of a verdict share.
  struct OfVerdict {
    std::string new_names;
    std::size_t from_to{};
    bool depends{false};                  // on the reading
    std::vector<std::uint32_t> couplets;  // where it does
  };

  EditionsUsed editions;
  EditionTally used;
  EvidenceMemo evidence;
  ScopeMemo in_old, in_new;
  KnownPath path;
  std::unordered_map<std::string, std::string> names;  // recorded name and qualifier -> as judged
  std::vector<std::optional<OfVerdict>> verdicts;
  Evidence current;
  std::string key;
};

namespace {

// Names kept; beyond that all are forgotten and understood anew.
constexpr std::size_t kWordsKept = 200'000;

std::vector<Edition const*> both(Edition const& a, Edition const& b) { return {&a, &b}; }

// A name with "cf.", "aff." or "?" is certain only one rank higher (standard of the herbarium
// transfer format HISPID, read as a summary).
std::string judged_name(Specimen const& specimen) {
  if (specimen.scientific_name.find_first_not_of(" \t") == std::string::npos) return "";
  auto const parsed = parse_name(specimen.scientific_name);
  bool const doubted = !parsed.qualifier.empty() || !specimen.qualifier.empty();
  if ((doubted || parsed.genus_only) && !parsed.genus.empty()) return parsed.genus;
  // What is said of the name tells homonyms and misapplications from it.
  auto name = plain_name(specimen.scientific_name);
  for (auto const* part : {&parsed.authorship, &parsed.sensu}) {
    if (!part->empty()) name += ' ' + *part;
  }
  return name;
}

std::string decade_of(std::string const& date) {
  if (date.size() < 4 ||
      !std::all_of(date.begin(), date.begin() + 4, [](char c) { return c >= '0' && c <= '9'; })) {
    return "";
  }
  return date.substr(0, 3) + "0s";
}

std::string join_names(Edition const& edition, std::vector<TaxonId> const& taxa,
                       std::string_view with) {
  std::string text;
  for (auto const taxon : taxa) {
    if (!text.empty()) text += with;
    text += edition[taxon].name;
  }
  return text;
}

std::vector<TaxonId> new_taxa(Verdict const& verdict) {
  std::vector<TaxonId> taxa;
  for (auto const& terminal : verdict.terminals) taxa.push_back(terminal.taxon);
  return taxa;
}

std::string enumerated(std::vector<std::string> const& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += '"' + items[i] + '"';
  }
  return text;
}

// What the record says beside what could be used may refute any of the ways.
void leave_open(Verdict& verdict, std::string const& untied) {
  for (auto* outcome :
       {&verdict.by_reading[0], &verdict.by_reading[1], &verdict.by_reading[2], &verdict.outcome}) {
    switch (*outcome) {
      case Outcome::stands:
      case Outcome::renamed:
      case Outcome::changes:
      case Outcome::narrowed:
      case Outcome::stranded:
        *outcome = Outcome::open;
        break;
      case Outcome::open:
      case Outcome::leaves_scope:
      case Outcome::enters_scope:
      case Outcome::doubtful:
      case Outcome::not_keyed:
        break;
    }
  }
  if (verdict.outcome == Outcome::open) {
    verdict.why = "recorded " + untied + " could not be tied to the key's words";
  }
}

// Not the name is doubted where the record may have been taken for something else.
void doubt_the_tie(Verdict& verdict, std::string const& loose) {
  if (verdict.outcome != Outcome::doubtful) return;
  verdict.outcome = Outcome::open;
  for (auto& outcome : verdict.by_reading) {
    if (outcome == Outcome::doubtful) outcome = Outcome::open;
  }
  verdict.why = "the record contradicts the name, if recorded " + loose +
                " means what it was taken for with low confidence";
}

bool needs_look(Verdict const& verdict) {
  switch (verdict.outcome) {
    case Outcome::narrowed:
    case Outcome::open:
    case Outcome::stranded:
    case Outcome::doubtful:
      return true;
    case Outcome::changes:
    case Outcome::renamed:
      return verdict.terminals.size() > 1;
    case Outcome::stands:
    case Outcome::leaves_scope:
    case Outcome::enters_scope:
    case Outcome::not_keyed:
      return false;
  }
  return false;
}

}  // namespace

Redeterminer::Redeterminer(Edition const& old_edition, KeyGraph const& old_graph,
                           Edition const& new_edition, KeyGraph const& new_graph,
                           Collation const& collation, Lexicon const& lexicon,
                           ParentTable const& parents, RedetermineOptions options)
    : old_edition_{old_edition},
      new_edition_{new_edition},
      collation_{collation},
      options_{options},
      old_names_{old_edition, parents},
      new_names_{new_edition, parents},
      space_{both(old_edition, new_edition), lexicon},
      old_key_{old_edition, old_graph, old_names_, space_},
      new_key_{new_edition, new_graph, new_names_, space_},
      judge_{{.old_key = &old_key_, .new_key = &new_key_, .collation = &collation}},
      memo_{std::make_unique<Memo>(old_key_, new_key_, options.citations)} {
  result_.reading = options.reading;
  result_.findings = memo_->editions.findings();
}

Redeterminer::~Redeterminer() = default;

void Redeterminer::note_problem(Specimen const& specimen, Observation const& observation,
                                std::string const& problem) {
  auto const key = observation.character + '\n' + problem;
  auto const [at, fresh] = problems_.try_emplace(key, result_.findings.size(), 1);
  if (!fresh) {
    ++at->second.second;
    return;
  }
  Finding finding;
  finding.code = "unusable-observation";
  finding.severity = Severity::warning;
  finding.place.line =
      static_cast<std::uint32_t>(observation.line != 0 ? observation.line : specimen.line);
  finding.place.column = observation.column == 0 ? 1 : observation.column;
  finding.printed = observation.value;
  auto const semicolon = problem.find("; ");
  finding.message = observation.character + ": " + problem.substr(0, semicolon);
  finding.remedy = semicolon == std::string::npos ? "" : problem.substr(semicolon + 2);
  result_.findings.push_back(std::move(finding));
}

Redeterminer::Evidence const& Redeterminer::evidence_of(Specimen const& specimen,
                                                        Looks const& looks, bool note) {
  auto& evidence = memo_->current;
  auto& recorded = evidence.recorded;
  memo_->evidence.read(specimen, recorded);
  for (auto const& unusable : recorded.unusable) {
    if (note) note_problem(specimen, specimen.observations[unusable.observation], unusable.problem);
  }
  for (auto const& seen : looks.seen) add_to_evidence(recorded, space_, seen.character, seen.cells);
  evidence.named = looks.named;
  auto& key = memo_->key;
  key.assign(specimen.scientific_name);
  key += '\x1F';
  key += specimen.qualifier;
  auto known = memo_->names.find(key);
  if (known == memo_->names.end()) {
    if (memo_->names.size() >= kWordsKept) memo_->names.clear();
    known = memo_->names.emplace(key, judged_name(specimen)).first;
  }
  evidence.name = &known->second;
  evidence.use = memo_->editions.of(specimen.identification_references, specimen.date_identified);
  evidence.old_scope = memo_->in_old.covers(specimen);
  evidence.new_scope = memo_->in_new.covers(specimen);
  evidence.untied = enumerated(specimen.untied);
  evidence.loose = enumerated(specimen.loosely_tied);
  return evidence;
}

std::size_t Redeterminer::verdict_for(Evidence const& evidence) {
  auto& key = memo_->key;
  auto const& recorded = evidence.recorded;
  key.assign(*evidence.name);
  key += '\n';
  key += evidence.untied;
  key += '\n';
  key += evidence.loose;
  key += '\n';
  key += static_cast<char>('a' + static_cast<int>(evidence.old_scope) * 3 +
                           static_cast<int>(evidence.new_scope));
  key += static_cast<char>('a' + (recorded.any ? 1 : 0) + (recorded.contradictory ? 2 : 0));
  if (evidence.named) key += std::to_string(evidence.named->index);
  key += '\n';
  auto const role = memo_->editions.has_table() ? evidence.use.role : EditionRole::old_edition;
  if (role != EditionRole::old_edition) key += 'e' + std::to_string(evidence.use.edition);
  key += '\n';
  auto const before = key.size();
  key += 'p';
  bool const along_path = recorded.any && !recorded.contradictory && !evidence.named &&
                          memo_->path.append(recorded.box, key);
  if (!along_path) {
    key.resize(before);
    key += 'b';
    key.append(reinterpret_cast<char const*>(recorded.box.data()),
               recorded.box.size() * sizeof(std::uint64_t));
  }
  auto const [at, fresh] = verdict_by_evidence_.try_emplace(key, result_.verdicts.size());
  if (!fresh) return at->second;

  auto const [known, first] = determinations_.try_emplace(*evidence.name);
  auto& determination = known->second;
  if (first && !evidence.name->empty()) {
    determination.named = true;
    determination.name = *evidence.name;
    determination.in_old = old_names_.place(*evidence.name);
    determination.in_new = new_names_.place(*evidence.name);
  }

  Verdict verdict;
  if (recorded.contradictory) {
    verdict.outcome = Outcome::not_keyed;
    verdict.why = "the recorded characters exclude each other";
    verdict.old_taxa = determination.in_old.taxa;
    verdict.by_reading.fill(Outcome::not_keyed);
    result_.verdicts.push_back(std::move(verdict));
    return at->second;
  }
  bool const by_new = role == EditionRole::new_edition && !determination.in_new.taxa.empty();
  if (by_new) {
    verdict =
        judge_.judge_named_by_new(determination, recorded.box, recorded.any, options_.reading);
  } else if (role == EditionRole::other) {
    verdict =
        judge_.judge_named_elsewhere(determination, recorded.box, recorded.any, options_.reading,
                                     memo_->editions.labels()[evidence.use.edition]);
  } else {
    verdict = judge_.judge(determination, recorded.box, recorded.any, options_.reading);
  }
  if (!evidence.loose.empty()) doubt_the_tie(verdict, evidence.loose);
  if (!evidence.untied.empty()) leave_open(verdict, evidence.untied);
  if (evidence.named) {
    auto as_given = determination;
    if (by_new) as_given.in_old = {};
    judge_.take_name(verdict, as_given, *evidence.named);
  }

  auto const excluded = [&](Edition const& edition, NameIndex const& names,
                            std::vector<TaxonId> const& taxa, std::string const& name) {
    auto const& groups = edition.front.scope.excluded_taxa;
    if (groups.empty()) return false;
    std::set<TaxonId> members;
    for (auto const& group : groups) {
      if (!name.empty() && (name_key(group) == name_key(name) ||
                            name_key(group) == name_key(parse_name(name).genus))) {
        return true;
      }
      for (auto const taxon : names.members(group)) members.insert(taxon);
    }
    return !taxa.empty() && std::all_of(taxa.begin(), taxa.end(),
                                        [&](TaxonId taxon) { return members.contains(taxon); });
  };
  bool const old_outside = !by_new && (evidence.old_scope == ScopeAnswer::outside ||
                                       (determination.in_old.kind == PlacementKind::none &&
                                        excluded(old_edition_, old_names_, {}, *evidence.name)));
  bool const new_outside =
      evidence.new_scope == ScopeAnswer::outside ||
      (determination.in_new.kind == PlacementKind::none &&
       excluded(new_edition_, old_names_, determination.in_old.taxa, *evidence.name));
  auto const overrule = [&](Outcome outcome, char const* why) {
    verdict.outcome = outcome;
    verdict.why = why;
    verdict.by_reading.fill(outcome);
    verdict.footing = Footing::nothing;
    verdict.questions.clear();
    verdict.parting.reset();
    verdict.strands_at.reset();
  };
  if (old_outside && new_outside) {
    overrule(Outcome::not_keyed, "outside the scope of both editions");
  } else if (new_outside) {
    overrule(Outcome::leaves_scope, "the new edition does not cover it");
  } else if (old_outside) {
    overrule(Outcome::enters_scope, "the old edition did not cover it");
  }
  result_.verdicts.push_back(std::move(verdict));
  return at->second;
}

Redeterminer::Weighed Redeterminer::weigh(Specimen const& specimen, Looks const& looks) {
  auto const& evidence = evidence_of(specimen, looks, false);
  return {.verdict = verdict_for(evidence), .contradictory = evidence.recorded.contradictory};
}

std::size_t Redeterminer::count(Specimen const& specimen, Looks const& looks) {
  auto const& evidence = evidence_of(specimen, looks, true);
  auto const verdict = verdict_for(evidence);
  tally(specimen, verdict, evidence, looks.settled);
  if (!looks.seen.empty() || looks.named || looks.settled) ++result_.examined;
  return verdict;
}

SpecimenOutcome Redeterminer::add(Specimen const& specimen, Looks const& looks) {
  auto const verdict = count(specimen, looks);
  SpecimenOutcome outcome{
      .specimen = specimen, .verdict = verdict, .new_names = new_names(verdict)};
  outcome.specimen.observations.clear();
  return outcome;
}

std::string const& Redeterminer::new_names(std::size_t verdict) const {
  return memo_->verdicts[verdict]->new_names;
}

std::size_t Redeterminer::from_to_row(Verdict const& verdict, std::string const& names,
                                      std::string const& name) {
  auto from = join_names(old_edition_, verdict.old_taxa, " | ");
  if (verdict.old_taxa.size() != 1) from = name;
  auto to = names;
  if (verdict.outcome == Outcome::stranded) to = "(stranded)";
  if (verdict.outcome == Outcome::not_keyed) to = "(not keyed)";
  if (verdict.outcome == Outcome::leaves_scope) to = "(out of scope)";
  if (verdict.outcome == Outcome::doubtful) to = "(doubtful)";
  if (verdict.outcome == Outcome::enters_scope) {
    // The old edition did not cover these, so the recorded name means none of its terminals.
    from = "(outside the old scope)";
    to = "(newly covered)";
  }
  auto const [at, fresh] = from_to_.try_emplace(from + '\n' + to, result_.from_to.size());
  if (fresh) {
    result_.from_to.push_back(
        {.from = std::move(from), .to = std::move(to), .by_outcome = {}, .specimens = 0});
  }
  return at->second;
}

void Redeterminer::tally(Specimen const& specimen, std::size_t index, Evidence const& evidence,
                         bool settled) {
  auto const& verdict = result_.verdicts[index];
  auto const at = static_cast<std::size_t>(verdict.outcome);
  if (memo_->verdicts.size() <= index) memo_->verdicts.resize(result_.verdicts.size());
  auto& shared = memo_->verdicts[index];
  if (!shared) {
    shared.emplace();
    shared->new_names = join_names(new_edition_, new_taxa(verdict), " | ");
    shared->from_to = from_to_row(verdict, shared->new_names, *evidence.name);
    for (auto const one : verdict.by_reading) {
      shared->depends = shared->depends || one != verdict.by_reading[0];
    }
    std::set<std::uint32_t> couplets;
    for (auto const& partial : verdict.partly) {
      if (partial.in_new) couplets.insert(partial.lead.couplet.index);
    }
    if (couplets.empty() && verdict.parting && verdict.parting->new_couplet) {
      couplets.insert(verdict.parting->new_couplet->index);
    }
    shared->couplets.assign(couplets.begin(), couplets.end());
  }
  ++result_.read;
  ++result_.totals[at];
  ++result_.by_footing[static_cast<std::size_t>(verdict.footing)][at];
  if (!specimen.untied.empty()) ++result_.untied;
  for (std::size_t i = 0; i < kReadings; ++i) {
    ++result_.totals_by_reading[i][static_cast<std::size_t>(verdict.by_reading[i])];
  }
  if (shared->depends) {
    ++result_.reading_dependent;
    for (auto const couplet : shared->couplets) ++reading_couplets_[couplet];
  }
  ++(evidence.recorded.any ? result_.with_characters : result_.name_only);
  memo_->used.add(evidence.use, specimen.identification_references);
  bool const cited =
      evidence.use.role == EditionRole::old_edition && evidence.use.basis == EditionBasis::cited;
  ++(cited ? result_.edition_cited : result_.edition_presumed);
  ++by_storage_[specimen.storage][at];
  ++by_decade_[decade_of(specimen.date_identified)][at];
  ++by_person_[specimen.identified_by][at];
  auto& row = result_.from_to[shared->from_to];
  ++row.by_outcome[at];
  ++row.specimens;

  bool const look = !settled && needs_look(verdict);
  bool const relabel =
      !look && (verdict.outcome == Outcome::renamed || verdict.outcome == Outcome::changes);
  bool const expected = specimen.voucher || !specimen.type_status.empty();
  if (!look && !relabel && !expected) return;
  SpecimenOutcome outcome{.specimen = specimen, .verdict = index, .new_names = shared->new_names};
  outcome.specimen.observations = {};
  if (expected) {
    bool const fails = verdict.outcome == Outcome::changes ||
                       verdict.outcome == Outcome::stranded || verdict.outcome == Outcome::doubtful;
    if (fails) {
      result_.failures.push_back({.specimen = result_.expectations.size(),
                                  .in_new = verdict.outcome != Outcome::doubtful});
    }
    result_.expectations.push_back(outcome);
  }
  if (look) {
    result_.to_look_at.push_back(std::move(outcome));
  } else if (relabel) {
    result_.to_relabel.push_back(std::move(outcome));
  }
}

void Redeterminer::add_look_alike(Specimen specimen) {
  auto const& evidence = evidence_of(specimen, {}, true);
  LookAlikeResult look_alike;
  auto const run = [&](CompiledKey const& key, std::vector<TaxonId>& taxa,
                       std::optional<CoupletId>& stop, bool in_new) {
    if (evidence.recorded.contradictory) return;
    auto const ways = walk(key, evidence.recorded.box, options_.reading);
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
  run(old_key_, look_alike.old_taxa, look_alike.old_stop, false);
  run(new_key_, look_alike.new_taxa, look_alike.new_stop, true);
  look_alike.specimen = std::move(specimen);
  look_alike.specimen.observations.clear();
  result_.look_alikes.push_back(std::move(look_alike));
}

Redetermination Redeterminer::finish() && {
  result_.by_storage.insert(by_storage_.begin(), by_storage_.end());
  result_.by_decade.insert(by_decade_.begin(), by_decade_.end());
  result_.by_person.insert(by_person_.begin(), by_person_.end());
  std::sort(result_.from_to.begin(), result_.from_to.end(), [](FromTo const& a, FromTo const& b) {
    return std::tie(b.specimens, a.from, a.to) < std::tie(a.specimens, b.from, b.to);
  });
  for (auto const& [couplet, specimens] : reading_couplets_) {
    result_.reading_couplets.push_back({CoupletId{couplet}, specimens});
  }
  std::sort(result_.reading_couplets.begin(), result_.reading_couplets.end(),
            [](ReadingDependence const& a, ReadingDependence const& b) {
              return std::tie(b.specimens, a.couplet) < std::tie(a.specimens, b.couplet);
            });
  for (auto const& [key, counted] : problems_) {
    if (counted.second > 1) {
      result_.findings[counted.first].message +=
          " (" + std::to_string(counted.second) + " records)";
    }
  }
  sort_findings(result_.findings);
  result_.editions = memo_->used.counts(memo_->editions);
  result_.worklist = make_worklist(result_, new_edition_);
  return std::move(result_);
}

}  // namespace keydrift

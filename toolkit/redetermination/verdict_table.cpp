#include "keydrift/redetermination/verdict_table.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "keydrift/taxa/names.hpp"

namespace keydrift {

std::string judged_name(std::string_view scientific_name, std::string_view qualifier,
                        std::string_view authorship) {
  if (scientific_name.find_first_not_of(" \t") == std::string_view::npos) return "";
  auto parsed = parse_name(scientific_name);
  if (parsed.authorship.empty()) parsed.authorship = authorship;
  bool const doubted = !parsed.qualifier.empty() || !qualifier.empty();
  if ((doubted || parsed.genus_only) && !parsed.genus.empty()) return parsed.genus;
  // What is said of the name tells homonyms and misapplications from it.
  auto name = plain_name(scientific_name);
  for (auto const* part : {&parsed.authorship, &parsed.sensu}) {
    if (!part->empty()) name += ' ' + *part;
  }
  return name;
}

std::string new_names_of(Verdict const& verdict, Edition const& new_edition) {
  std::string text;
  for (auto const& terminal : verdict.terminals) {
    if (!text.empty()) text += " | ";
    text += new_edition[terminal.taxon].name;
  }
  return text;
}

std::string question_key(Verdict const& verdict, Edition const& new_edition) {
  std::string key = to_word(verdict.outcome);
  auto const add = [&key](std::string_view text) {
    key += '\n';
    key += text;
  };
  if (verdict.questions.empty()) {
    add(verdict.why);
    if (verdict.strands_at) add(new_edition[*verdict.strands_at].label);
    return key;
  }
  // The outcome itself is no part of the question.
  key = verdict.questions.front().label;
  for (auto const& answer : verdict.questions.front().answers) {
    add(answer.words);
    add(answer.next ? std::to_string(*answer.next) : to_word(answer.outcome));
    for (auto const taxon : answer.new_taxa) add(new_edition[taxon].name);
  }
  return key;
}

namespace {

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

// Is the name that of a group that the scope leaves out, or are all these taxa in such groups?
bool leaves_out(Scope const& scope, NameIndex const& names, std::vector<TaxonId> const& taxa,
                std::string const& name) {
  auto const& groups = scope.excluded_taxa;
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
}

}  // namespace

Determination const& VerdictTable::determination_of(std::string const& name) {
  auto const [known, first] = determinations_.try_emplace(name);
  auto& determination = known->second;
  if (first && !name.empty()) {
    determination.named = true;
    determination.name = name;
    determination.key = name_key(name);
    determination.in_old = ground_.old_names.place(name);
    determination.in_new = ground_.new_names.place(name);
  }
  return determination;
}

void VerdictTable::apply_scope(Verdict& verdict, SpecimenEvidence const& evidence,
                               Determination const& determination, bool by_new) const {
  auto const& old_scope = ground_.old_edition.front.scope;
  auto const& new_scope = ground_.new_edition.front.scope;
  bool const old_outside =
      !by_new && (evidence.old_scope == ScopeAnswer::outside ||
                  (determination.in_old.kind == PlacementKind::none &&
                   leaves_out(old_scope, ground_.old_names, {}, evidence.name)));
  bool const new_outside =
      evidence.new_scope == ScopeAnswer::outside ||
      (determination.in_new.kind == PlacementKind::none &&
       leaves_out(new_scope, ground_.old_names, determination.in_old.taxa, evidence.name));
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
}

EditionRole VerdictTable::role_of(SpecimenEvidence const& evidence) const {
  return ground_.editions.has_table() ? evidence.use.role : EditionRole::old_edition;
}

Verdict VerdictTable::judge(SpecimenEvidence const& evidence) {
  auto const& recorded = evidence.recorded;
  auto const& determination = determination_of(evidence.name);
  Verdict verdict;
  if (recorded.contradictory) {
    verdict.outcome = Outcome::not_keyed;
    verdict.why = "the recorded characters exclude each other";
    verdict.old_taxa = determination.in_old.taxa;
    verdict.by_reading.fill(Outcome::not_keyed);
    return verdict;
  }
  auto const& judge = ground_.judge;
  auto const reading = ground_.options.reading;
  auto const role = role_of(evidence);
  bool const by_new = role == EditionRole::new_edition && !determination.in_new.taxa.empty();
  if (by_new) {
    verdict = judge.judge_named_by_new(determination, recorded.box, recorded.any, reading);
  } else if (role == EditionRole::other) {
    verdict = judge.judge_named_elsewhere(determination, recorded.box, recorded.any, reading,
                                          ground_.editions.labels()[evidence.use.edition]);
  } else {
    verdict = judge.judge(determination, recorded.box, recorded.any, reading);
  }
  if (!evidence.loose.empty()) doubt_the_tie(verdict, evidence.loose);
  if (!evidence.untied.empty()) leave_open(verdict, evidence.untied);
  if (evidence.named) {
    auto as_given = determination;
    if (by_new) as_given.in_old = {};
    judge.take_name(verdict, as_given, *evidence.named);
  }
  apply_scope(verdict, evidence, determination, by_new);
  return verdict;
}

std::size_t VerdictTable::find(SpecimenEvidence const& evidence) {
  auto const& recorded = evidence.recorded;
  key_.assign(evidence.name);
  key_ += '\n';
  key_ += evidence.untied;
  key_ += '\n';
  key_ += evidence.loose;
  key_ += '\n';
  key_ += static_cast<char>('a' + static_cast<int>(evidence.old_scope) * 3 +
                            static_cast<int>(evidence.new_scope));
  key_ += static_cast<char>('a' + (recorded.any ? 1 : 0) + (recorded.contradictory ? 2 : 0));
  if (evidence.named) key_ += std::to_string(evidence.named->index);
  key_ += '\n';
  if (role_of(evidence) != EditionRole::old_edition) {
    key_ += 'e' + std::to_string(evidence.use.edition);
  }
  key_ += '\n';
  if (!recorded.contradictory) path_.append(recorded.box, key_);
  auto const id = fingerprint_of(key_);
  auto const [at, fresh] = by_id_.try_emplace(id, entries_.size());
  if (!fresh) return at->second;
  auto judged = ledger_->find(id);
  if (!judged) judged = judge_whole(evidence, id);
  entries_.push_back({.judged = *judged});
  return at->second;
}

JudgedSummary VerdictTable::judge_whole(SpecimenEvidence const& evidence, Fingerprint const& id) {
  JudgedEvidence const judged{.verdict = judge(evidence),
                              .name = evidence.name,
                              .any = evidence.recorded.any,
                              .untied = !evidence.untied.empty()};
  auto const outcome = judged.verdict.outcome;
  JudgedSummary summary{.id = id, .outcome = outcome, .look = needs_look(judged.verdict)};
  summary.relabel = !summary.look && (outcome == Outcome::renamed || outcome == Outcome::changes);
  if (summary.look) {
    summary.question = fingerprint_of(question_key(judged.verdict, ground_.new_edition));
  }
  return ledger_->keep(summary, stored_form(judged));
}

std::string stored_form(JudgedEvidence const& judged) {
  std::string bytes;
  ByteWriter writer{bytes};
  write_bytes(writer, judged.verdict);
  writer.text(judged.name);
  writer.number((judged.any ? 1U : 0U) | (judged.untied ? 2U : 0U));
  return bytes;
}

JudgedEvidence read_judged(VerdictLedger const& ledger, std::uint64_t address) {
  std::string bytes;
  ledger.read(address, bytes);
  ByteReader reader{bytes};
  JudgedEvidence judged;
  read_bytes(reader, judged.verdict);
  judged.name.assign(reader.text());
  auto const flags = reader.number();
  judged.any = (flags & 1U) != 0;
  judged.untied = (flags & 2U) != 0;
  return judged;
}

void VerdictTable::count(std::size_t index, std::uint64_t specimens, std::uint64_t place) {
  auto& entry = entries_[index];
  entry.first_place = entry.specimens == 0 ? place : std::min(entry.first_place, place);
  entry.specimens += specimens;
}

void VerdictTable::settle() {
  for (auto const& entry : entries_) {
    // What was only weighed and never counted is nobody's.
    if (entry.specimens == 0) continue;
    ledger_->add({.id = entry.judged.id,
                  .address = entry.judged.address,
                  .specimens = entry.specimens,
                  .first_place = entry.first_place});
  }
  entries_.clear();
  by_id_.clear();
}

}  // namespace keydrift

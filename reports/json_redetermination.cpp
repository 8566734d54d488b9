// A redetermination as JSON.
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/json_parts.hpp"
#include "keydrift/reports/json_stream.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {

using namespace reports;

namespace {

using json_parts::BothEditions;
using json_parts::Json;
using json_parts::list_of;
using json_parts::of;
using json_parts::put;

using Totals = std::array<std::uint64_t, kOutcomes>;

Json totals_of(Totals const& totals) {
  Json json;
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    json[to_word(static_cast<Outcome>(i))] = totals[i];
  }
  return json;
}

Json table_of(std::map<std::string, Totals> const& table) {
  auto json = Json::array();
  for (auto const& [name, totals] : table) {
    Json row;
    row["name"] = name;
    row["byOutcome"] = totals_of(totals);
    json.push_back(std::move(row));
  }
  return json;
}

Json json_of_parting(BothEditions const& sides, Parting const& parting) {
  Json json = Json::object();
  if (parting.old_lead) json["oldLead"] = of(sides.old_edition, *parting.old_lead);
  if (parting.new_couplet) json["newCouplet"] = of(sides.new_edition, *parting.new_couplet);
  if (parting.new_lead) json["newLead"] = of(sides.new_edition, *parting.new_lead);
  auto deciding = Json::array();
  for (auto const& each : parting.deciding) {
    Json statement;
    statement["inNew"] = each.in_new;
    statement["statement"] = of(sides.edition(each.in_new), StatementId{each.lead, each.statement});
    put(statement, "known", each.known);
    statement["recorded"] = each.recorded;
    deciding.push_back(std::move(statement));
  }
  json["deciding"] = std::move(deciding);
  return json;
}

Json partial_fits_of(BothEditions const& sides, std::vector<PartialFit> const& fits) {
  auto json = Json::array();
  for (auto const& fit : fits) {
    auto const& edition = sides.edition(fit.in_new);
    Json each;
    each["inNew"] = fit.in_new;
    each["lead"] = of(edition, fit.lead);
    auto const list = [&](std::vector<std::uint32_t> const& ordinals) {
      auto statements = Json::array();
      for (auto const ordinal : ordinals) {
        statements.push_back(of(edition, StatementId{fit.lead, ordinal}));
      }
      return statements;
    };
    each["holds"] = list(fit.holds);
    each["fails"] = list(fit.fails);
    json.push_back(std::move(each));
  }
  return json;
}

Json questions_of(BothEditions const& sides, std::vector<Question> const& questions) {
  auto json = Json::array();
  for (auto const& question : questions) {
    Json each;
    each["character"] = question.character;
    each["label"] = question.label;
    each["difficulty"] = to_word(question.difficulty);
    auto answers = Json::array();
    for (auto const& answer : question.answers) {
      Json follows;
      follows["words"] = answer.words;
      follows["outcome"] = to_word(answer.outcome);
      follows["newTaxa"] = list_of(sides.new_edition, std::span<TaxonId const>{answer.new_taxa});
      if (answer.next) follows["next"] = *answer.next;
      answers.push_back(std::move(follows));
    }
    each["answers"] = std::move(answers);
    json.push_back(std::move(each));
  }
  return json;
}

Json verdict_of(BothEditions const& sides, Verdict const& verdict) {
  Json json;
  json["outcome"] = to_word(verdict.outcome);
  json["reason"] = reason(verdict, sides.old_edition, sides.new_edition);
  put(json, "lookAt", look_at(verdict, sides.new_edition));
  put(json, "why", verdict.why);
  json["oldTaxa"] = list_of(sides.old_edition, std::span<TaxonId const>{verdict.old_taxa});
  auto terminals = Json::array();
  for (auto const& terminal : verdict.terminals) {
    terminals.push_back(of(sides.new_edition, terminal));
  }
  json["terminals"] = std::move(terminals);
  auto pairs = Json::array();
  for (auto const& pair : verdict.pairs) {
    Json each = Json::object();
    if (pair.old_taxon) each["old"] = of(sides.old_edition, *pair.old_taxon);
    if (pair.new_taxon) each["new"] = of(sides.new_edition, *pair.new_taxon);
    pairs.push_back(std::move(each));
  }
  json["pairs"] = std::move(pairs);
  json["mayStrand"] = verdict.may_strand;
  if (verdict.strands_at) json["strandsAt"] = of(sides.new_edition, *verdict.strands_at);
  if (verdict.parting) json["parting"] = json_of_parting(sides, *verdict.parting);
  put(json, "partly", partial_fits_of(sides, verdict.partly));
  put(json, "questions", questions_of(sides, verdict.questions));
  Json by_reading;
  for (std::size_t i = 0; i < kReadings; ++i) {
    by_reading[to_word(static_cast<Reading>(i))] = to_word(verdict.by_reading[i]);
  }
  json["byReading"] = std::move(by_reading);
  json["complete"] = verdict.complete;
  return json;
}

Json outcome_of(SpecimenOutcome const& outcome) {
  Json json;
  json["specimen"] = of(outcome.specimen);
  json["verdict"] = outcome.verdict;
  put(json, "newNames", outcome.new_names);
  return json;
}

Json row_of(FromTo const& row) {
  Json json;
  json["from"] = row.from;
  json["to"] = row.to;
  json["specimens"] = row.specimens;
  json["byOutcome"] = totals_of(row.by_outcome);
  return json;
}

Json group_of(BothEditions const& sides, Redetermination const& result, WorkGroup const& group) {
  Json json;
  json["storageLocation"] = group.storage;
  json["question"] = question_in_words(result.verdicts[group.verdict], sides.new_edition);
  json["cost"] = group.cost;
  json["hasTypes"] = group.has_types;
  json["sheets"] = group.sheets;
  json["specimens"] = group.specimens;
  return json;
}

Json look_alikes_of(BothEditions const& sides, std::vector<LookAlikeResult> const& look_alikes) {
  auto json = Json::array();
  for (auto const& look_alike : look_alikes) {
    Json each;
    each["specimen"] = of(look_alike.specimen);
    each["oldTaxa"] = list_of(sides.old_edition, std::span<TaxonId const>{look_alike.old_taxa});
    each["newTaxa"] = list_of(sides.new_edition, std::span<TaxonId const>{look_alike.new_taxa});
    if (look_alike.old_stop) each["oldStop"] = of(sides.old_edition, *look_alike.old_stop);
    if (look_alike.new_stop) each["newStop"] = of(sides.new_edition, *look_alike.new_stop);
    put(each, "partly", partial_fits_of(sides, look_alike.partly));
    json.push_back(std::move(each));
  }
  return json;
}

char const* word_of(EditionCount const& count) {
  if (count.role == EditionRole::new_edition) return "new";
  return count.role == EditionRole::other ? "other" : "old";
}

Json editions_of(EditionCounts const& editions) {
  Json json;
  json["decide"] = editions.decides;
  auto counts = Json::array();
  for (auto const& count : editions.counts) {
    Json each;
    each["edition"] = count.edition;
    each["role"] = word_of(count);
    each["basis"] = to_word(count.basis);
    each["specimens"] = count.specimens;
    counts.push_back(std::move(each));
  }
  json["counts"] = std::move(counts);
  json["citingUnnamedWorks"] = editions.unnamed;
  auto works = Json::array();
  for (auto const& [work, specimens] : editions.unnamed_works) {
    Json each;
    each["citation"] = work;
    each["specimens"] = specimens;
    works.push_back(std::move(each));
  }
  json["unnamedWorks"] = std::move(works);
  return json;
}

void add_archive(Json& json, ArchiveCounts const& archive) {
  if (archive.history) {
    Json history;
    history["accepted"] = archive.history->accepted;
    history["byCore"] = archive.history->by_core;
    history["latest"] = archive.history->latest;
    history["amongSeveral"] = archive.history->several;
    json["determinationHistory"] = std::move(history);
  }
  json["repeatedIds"] = archive.repeated_ids;
  auto repeats = Json::array();
  for (auto const& repeat : archive.repeats) {
    Json each;
    each["id"] = repeat.id;
    each["firstFile"] = repeat.first_file;
    each["firstLine"] = repeat.first_line;
    each["file"] = repeat.file;
    each["line"] = repeat.line;
    repeats.push_back(std::move(each));
  }
  json["repeats"] = std::move(repeats);
}

void add_footing(Json& json, Redetermination const& result) {
  Json footing;
  footing["understood"] =
      totals_of(result.by_footing[static_cast<std::size_t>(Footing::understood)]);
  footing["partly"] = totals_of(result.by_footing[static_cast<std::size_t>(Footing::partly)]);
  footing["wordsOnly"] =
      totals_of(result.by_footing[static_cast<std::size_t>(Footing::words_only)]);
  footing["nothing"] = totals_of(result.by_footing[static_cast<std::size_t>(Footing::nothing)]);
  json["totalsByFooting"] = std::move(footing);
}

// Records tied to the key by their words; there are none where a lexicon was given.
void add_ties(Json& json, Redetermination const& result) {
  if (result.ties.empty()) return;
  auto ties = Json::array();
  for (auto const& tie : result.ties) {
    Json each;
    each["column"] = tie.column;
    put(each, "value", tie.value);
    if (!tie.character.empty()) {
      each["character"] = tie.character;
      put(each, "states", tie.state);
      each["confidence"] = to_word(tie.confidence);
    }
    each["records"] = tie.records;
    ties.push_back(std::move(each));
  }
  json["ties"] = std::move(ties);
  json["specimensWithUntiedRecords"] = result.untied;
}

void add_reading(Json& json, BothEditions const& sides, Redetermination const& result) {
  json["reading"] = to_word(result.reading);
  json["totals"] = totals_of(result.totals);
  Json by_reading;
  for (std::size_t i = 0; i < kReadings; ++i) {
    by_reading[to_word(static_cast<Reading>(i))] = totals_of(result.totals_by_reading[i]);
  }
  json["totalsByReading"] = std::move(by_reading);
  json["readingDependent"] = result.reading_dependent;
  auto couplets = Json::array();
  for (auto const& dependence : result.reading_couplets) {
    auto each = of(sides.new_edition, dependence.couplet);
    each["specimens"] = dependence.specimens;
    couplets.push_back(std::move(each));
  }
  json["readingCouplets"] = std::move(couplets);
}

}  // namespace

void write_redetermination_json(Edition const& old_edition, Edition const& new_edition,
                                Collation const& collation, Redetermination const& redetermination,
                                TextSink const& sink) {
  BothEditions const sides{old_edition, new_edition};
  auto const& result = redetermination;
  json_parts::JsonStream stream{sink};
  auto json = json_parts::begin("redetermination");
  // What is long is passed on by itself, behind what was said before.
  auto const pass_on = [&] {
    stream.members(json);
    json = Json::object();
  };
  auto const outcomes = [&](char const* name, std::vector<SpecimenOutcome> const& list) {
    pass_on();
    stream.list(name, list, outcome_of);
  };
  json["old"] = json_parts::heading_of(old_edition);
  json["new"] = json_parts::heading_of(new_edition);
  json["caution"] = caution();
  json["specimensExamined"] = 0;
  json["read"] = result.read;
  json["rejected"] = result.rejected;
  add_reading(json, sides, result);
  json["withCharacters"] = result.with_characters;
  json["examined"] = result.examined;
  json["nameOnly"] = result.name_only;
  std::uint64_t cited = 0;
  for (auto const& count : result.editions.counts) {
    bool const by_citation =
        count.role == EditionRole::old_edition && count.basis == EditionBasis::cited;
    if (by_citation) cited += count.specimens;
  }
  json["editionCited"] = cited;
  json["editionPresumed"] = result.read - cited;
  json["editions"] = editions_of(result.editions);
  add_archive(json, result.archive);
  pass_on();
  stream.list("fromTo", result.from_to, row_of);
  json["byStorage"] = table_of(result.by_storage);
  json["byDecade"] = table_of(result.by_decade);
  json["byPerson"] = table_of(result.by_person);
  json["byCollector"] = table_of(result.by_collector);
  json["byRegion"] = table_of(result.by_region);
  pass_on();
  stream.list("verdicts", result.verdicts,
              [&](Verdict const& verdict) { return verdict_of(sides, verdict); });
  json["sheetsToLookAt"] = result.sheets_to_look_at;
  json["sheetsToRelabel"] = result.sheets_to_relabel;
  outcomes("toLookAt", result.to_look_at);
  outcomes("toRelabel", result.to_relabel);
  stream.list("worklist", result.worklist,
              [&](WorkGroup const& group) { return group_of(sides, result, group); });
  json["expected"] = result.expected;
  json["failed"] = result.failed;
  outcomes("expectations", result.expectations);
  auto failures = Json::array();
  for (auto const& failure : result.failures) {
    Json each;
    each["specimen"] = failure.specimen;
    each["inNew"] = failure.in_new;
    failures.push_back(std::move(each));
  }
  json["failures"] = std::move(failures);
  json["lookAlikes"] = look_alikes_of(sides, result.look_alikes);
  json["findings"] = of(std::span<Finding const>{result.findings});
  json["oldCoverage"] = of(collation.old_coverage);
  json["newCoverage"] = of(collation.new_coverage);
  add_footing(json, result);
  add_ties(json, result);
  pass_on();
  stream.finish();
}

}  // namespace keydrift

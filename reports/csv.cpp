#include "keydrift/reports/csv.hpp"

#include <fmt/format.h>

#include "keydrift/reports/csv_cell.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {

using namespace reports;
namespace {

constexpr std::string_view kBar = " | ";

std::string header(std::initializer_list<std::string_view> columns) {
  std::string out;
  CsvRowWriter row{out};
  for (auto const column : columns) row.cell(column);
  return out;
}

std::string joined_by_bars(std::vector<std::string> const& items) {
  return fmt::format("{}", fmt::join(items, kBar));
}

std::string strength_of(Edition const& edition, std::optional<StatementId> const& statement) {
  if (!statement) return {};
  auto const& statements = edition[statement->lead].statements;
  return statement->ordinal < statements.size()
             ? std::string{to_word(statements[statement->ordinal].strength)}
             : std::string{};
}

std::string route_in_words(Edition const& edition, std::vector<RouteStep> const& steps,
                           bool new_side) {
  std::vector<std::string> names;
  for (auto const& step : steps) {
    auto const& lead = new_side ? step.new_lead : step.old_lead;
    if (lead) names.push_back(lead_name(edition, *lead));
  }
  return fmt::format("{}", fmt::join(names, " "));
}

}  // namespace

std::string specimens_csv_header() {
  return header({"catalogNumber", "scientificName", "outcome", "newScientificName", "oldCouplet",
                 "newCouplet", "reason", "lookAt", "oldName", "possibleOutcomes", "typeOrVoucher",
                 "storageLocation", "determinedWith", "editionBasis"});
}

std::string edition_cells(EditionUse const& use, std::vector<std::string> const& labels) {
  std::string cells;
  append_csv_cell(cells, labels[use.edition]);
  cells += ',';
  cells += to_word(use.basis);
  return cells;
}

VerdictCells verdict_cells(Verdict const& verdict, Edition const& old_edition,
                           Edition const& new_edition) {
  VerdictCells cells{to_word(verdict.outcome), {}};
  auto const add = [&cells](std::string_view text, bool last = false) {
    append_csv_cell(cells.places, text);
    if (!last) cells.places += ',';
  };
  add(old_couplet_of(verdict, old_edition));
  add(new_couplet_of(verdict, new_edition));
  add(reason(verdict, old_edition, new_edition));
  add(look_at(verdict, new_edition));
  add(taxon_names(old_edition, verdict.old_taxa, kBar));
  add(possible_outcomes(verdict), true);
  return cells;
}

void append_specimen_row(std::string& out, Specimen const& specimen, std::string_view new_names,
                         VerdictCells const& cells, std::string_view edition) {
  append_csv_cell(
      out, specimen.catalog_number.empty() ? specimen.occurrence_id : specimen.catalog_number);
  out += ',';
  append_csv_cell(out, specimen.scientific_name);
  out += ',';
  out += cells.outcome;
  out += ',';
  append_csv_cell(out, new_names);
  out += ',';
  out += cells.places;
  out += ',';
  append_csv_cell(out, type_or_voucher(specimen));
  out += ',';
  append_csv_cell(out, specimen.storage);
  out += ',';
  out += edition;
  out += '\n';
}

std::string worklist_csv_header() {
  return header({"storageLocation", "catalogNumber", "scientificName", "typeOrVoucher", "question",
                 "answersAllowed", "possibleResults", "answer", "newName", "by", "date", "remarks",
                 "character", "occurrenceID", "rowCheck"});
}

WorkCells work_cells(Verdict const& verdict, Edition const& new_edition) {
  std::vector<std::string> answers;
  std::vector<std::string> results;
  auto const question = verdict.questions.empty() ? question_in_words(verdict, new_edition)
                                                  : look_at(verdict, new_edition);
  if (!verdict.questions.empty()) {
    for (auto const& answer : verdict.questions.front().answers) {
      answers.push_back(answer.words);
      results.push_back(
          fmt::format("{} → {}", answer.words, follows(verdict, answer, new_edition)));
    }
  }
  auto const character = verdict.questions.empty() ? "" : verdict.questions.front().character;
  WorkCells cells{{}, {}, RowCheck{question, character}};
  append_csv_cell(cells.question, question);
  cells.question += ',';
  append_csv_cell(cells.question, joined_by_bars(answers));
  cells.question += ',';
  append_csv_cell(cells.question, joined_by_bars(results));
  append_csv_cell(cells.character, character);
  return cells;
}

void append_work_row(std::string& out, Specimen const& specimen, WorkCells const& cells) {
  append_csv_cell(out, specimen.storage);
  out += ',';
  append_csv_cell(out, specimen_name(specimen));
  out += ',';
  append_csv_cell(out, specimen.scientific_name);
  out += ',';
  append_csv_cell(out, type_or_voucher(specimen));
  out += ',';
  out += cells.question;
  out += ",,,,,,";  // to be filled in
  out += cells.character;
  out += ',';
  append_csv_cell(out, specimen.occurrence_id);
  out += ',';
  out += cells.check.of(specimen_name(specimen), specimen.occurrence_id, specimen.scientific_name);
  out += '\n';
}

std::string taxa_csv(Edition const& old_edition, Edition const& new_edition,
                     Collation const& collation) {
  auto out =
      header({"oldName", "newName", "relation", "basis", "events", "oldEnds", "newEnds", "oldRoute",
              "newRoute", "partsAtOld", "partsAtNew", "charactersLost", "charactersGained"});
  CharacterLabels const label{collation.characters};
  auto const labels = [&](std::vector<std::string> const& ids, std::size_t others) {
    std::vector<std::string> names;
    for (auto const& id : ids) names.push_back(label(id));
    if (others > 0) names.push_back(counted(others, "other"));
    return joined_by_bars(names);
  };
  for (auto const& taxon : collation.taxa) {
    bool const related = !taxon.old_taxa.empty() && !taxon.new_taxa.empty();
    RouteStep parting;
    if (taxon.parting && *taxon.parting < taxon.steps.size()) {
      parting = taxon.steps[*taxon.parting];
    }
    std::vector<std::string> events;
    for (auto const event : taxon.events) events.emplace_back(to_word(event));
    CsvRowWriter{out}
        .cell(taxon_names(old_edition, taxon.old_taxa, kBar))
        .cell(taxon_names(new_edition, taxon.new_taxa, kBar))
        .cell(related ? to_word(taxon.relation) : "")
        .cell(related ? to_word(taxon.basis) : "")
        .cell(joined_by_bars(events))
        .cell(std::to_string(taxon.old_ends))
        .cell(std::to_string(taxon.new_ends))
        .cell(route_in_words(old_edition, taxon.steps, false))
        .cell(route_in_words(new_edition, taxon.steps, true))
        .cell(name_of(old_edition, parting.old_lead))
        .cell(name_of(new_edition, parting.new_lead))
        .cell(labels(taxon.characters_lost, taxon.others_lost))
        .cell(labels(taxon.characters_gained, taxon.others_gained));
  }
  return out;
}

std::string characters_csv(Edition const& old_edition, Edition const& new_edition,
                           Collation const& collation) {
  auto out = header({"character", "label", "transition", "oldLead", "newLead", "oldWords",
                     "newWords", "oldStrength", "newStrength", "exceptionsAdded",
                     "exceptionsRemoved", "numbers", "oldTaxa", "newTaxa"});
  CharacterLabels const label{collation.characters};
  for (auto const& role : collation.roles) {
    CsvRowWriter{out}
        .cell(role.character)
        .cell(label(role.character))
        .cell(to_word(role.transition))
        .cell(name_of(old_edition, role.old_lead))
        .cell(name_of(new_edition, role.new_lead))
        .cell(statement_words(old_edition, role.old_statement))
        .cell(statement_words(new_edition, role.new_statement))
        .cell(strength_of(old_edition, role.old_statement))
        .cell(strength_of(new_edition, role.new_statement))
        .cell(joined_by_bars(role.exceptions_added))
        .cell(joined_by_bars(role.exceptions_removed))
        .cell(role.numbers)
        .cell(taxon_names(old_edition, role.old_taxa.list(), kBar))
        .cell(taxon_names(new_edition, role.new_taxa.list(), kBar));
  }
  return out;
}

}  // namespace keydrift

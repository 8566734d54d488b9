#include "keydrift/reports/taken_back.hpp"

#include <fmt/format.h>

#include <map>

#include "keydrift/reports/csv_cell.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {

using namespace reports;
namespace {

constexpr std::size_t kRowsTold = 12;

std::string meaning_of_code(std::string const& code) {
  for (auto const& kind : refusal_kinds()) {
    if (code == kind.code) return std::string{kind.title};
  }
  return code;
}

void tell_file(Page& page, FilledFile const& file) {
  auto text = fmt::format("{}: {} filled in, {} left blank", file.name, counted(file.rows, "row"),
                          grouped(file.blank));
  if (file.separator != ',') {
    text += fmt::format("; cells parted by {}", file.separator == '\t'  ? "tabs"
                                                : file.separator == ';' ? "semicolons"
                                                                        : "bars");
  }
  if (file.dates_rewritten > 0) {
    text += fmt::format("; {} in another form than 2024-05-17, and understood",
                        counted(file.dates_rewritten, "date"));
  }
  page.paragraph(text, 2, 2);
}

std::uint64_t count_of(TakenBack const& taken, Taken kind) {
  return taken.counts[static_cast<std::size_t>(kind)];
}

}  // namespace

std::string examined_in_words(Redetermination const& result) {
  if (result.examined == 0) return std::string{not_examined()};
  return fmt::format(
      "{} examined by those who filled in the worklist; every other name is only updated after a "
      "revision. A name updated and a specimen examined are different statements.",
      result.examined == 1 ? "1 specimen was"
                           : fmt::format("{} specimens were", grouped(result.examined)));
}

std::string taken_back_text(std::span<FilledFile const> files, TakenBack const& taken,
                            TerminalStyle style) {
  Page page{style};
  page.heading("Worklist taken back");
  for (auto const& file : files) tell_file(page, file);
  page.blank();
  page.leader("Rows applied", grouped(count_of(taken, Taken::applied)), 2);
  page.leader("Rows that say nothing to apply", grouped(count_of(taken, Taken::noted)), 2);
  page.leader("Rows refused", grouped(count_of(taken, Taken::refused)), 2);
  page.leader("Sheets examined", grouped(taken.sheets), 2);
  page.leader("still asked for something", grouped(taken.still_asked), 4);
  page.leader("Determinations added to the history", grouped(taken.identifications.size()), 2);
  if (taken.numbers_mended > 0) {
    page.leader("Numbers changed by a spreadsheet and understood", grouped(taken.numbers_mended),
                2);
  }
  std::map<std::string, std::uint64_t> by_code;
  for (auto const& row : taken.rows) {
    if (!row.code.empty()) ++by_code[row.code];
  }
  if (by_code.empty()) return page.take();
  page.subheading("Not applied");
  for (auto const& [code, count] : by_code) {
    page.leader(fmt::format("{}: {}", code, meaning_of_code(code)), grouped(count), 2);
  }
  std::size_t told = 0;
  std::size_t refused = 0;
  for (auto const& row : taken.rows) {
    if (row.taken != Taken::refused) continue;
    ++refused;
    if (told == kRowsTold) continue;
    ++told;
    page.blank();
    page.paragraph(
        fmt::format("{}:{}{} {} [{}]", row.row.file, row.row.line,
                    row.column == 0 ? "" : fmt::format(":{}", row.column),
                    row.row.number.empty() ? row.row.occurrence_id : row.row.number, row.code),
        2, 2);
    page.paragraph(row.message, 6);
    if (!row.remedy.empty()) page.paragraph(row.remedy, 6);
  }
  if (refused > told) {
    page.blank();
    page.paragraph(fmt::format("And {} more: --take-back-log writes all of them.", refused - told),
                   2);
  }
  return page.take();
}

std::string taken_back_csv(TakenBack const& taken) {
  std::string out;
  {
    CsvRowWriter row{out};
    for (auto const* column :
         {"file", "line", "catalogNumber", "scientificName", "question", "answer", "newName", "by",
          "date", "remarks", "status", "code", "reason", "remedy", "outcome", "newScientificName",
          "identificationID"}) {
      row.cell(column);
    }
  }
  for (auto const& one : taken.rows) {
    auto const& row = one.row;
    bool const applied = one.taken == Taken::applied;
    CsvRowWriter{out}
        .cell(row.file)
        .cell(std::to_string(row.line))
        .cell(row.number.empty() ? row.occurrence_id : row.number)
        .cell(row.scientific_name)
        .cell(row.question)
        .cell(row.answer)
        .cell(row.new_name)
        .cell(row.by)
        .cell(row.date)
        .cell(row.remarks)
        .cell(to_word(one.taken))
        .cell(one.code)
        .cell(one.message)
        .cell(one.remedy)
        .cell(applied ? to_word(one.outcome) : "")
        .cell(applied ? one.new_names : "")
        .cell(one.identification_id);
  }
  return out;
}

std::string identifications_csv_header() {
  std::string out;
  CsvRowWriter row{out};
  for (auto const* term :
       {"occurrenceID", "catalogNumber", "identificationID", "verbatimIdentification",
        "scientificName", "scientificNameAuthorship", "identifiedBy", "dateIdentified",
        "identificationReferences", "nameAccordingTo", "identificationVerificationStatus",
        "identificationRemarks"}) {
    row.cell(term);
  }
  return out;
}

std::string identifications_csv_rows(std::span<NewIdentification const> rows) {
  std::string out;
  for (auto const& row : rows) {
    auto const with_author =
        row.authorship.empty() ? row.scientific_name : row.scientific_name + " " + row.authorship;
    CsvRowWriter{out}
        .cell(row.occurrence_id)
        .cell(row.catalog_number)
        .cell(row.identification_id)
        .cell(row.verbatim_identification)
        .cell(with_author)
        .cell(row.authorship)
        .cell(row.identified_by)
        .cell(row.date_identified)
        .cell(row.references)
        .cell(row.references)
        .cell(row.verification_status)
        .cell(row.remarks);
  }
  return out;
}

}  // namespace keydrift

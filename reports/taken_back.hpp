#pragma once
// What became of a filled-in worklist: for the terminal, as a log, and as rows for the history of
// determinations.

#include <span>
#include <string>
#include <vector>

#include "keydrift/redetermination/taking_back.hpp"
#include "keydrift/reports/page.hpp"

namespace keydrift {

// What one worklist file was like, beside the rows that could be read.
struct FilledFile {
  std::string name{};
  std::uint64_t rows{};   // with something written in them
  std::uint64_t blank{};  // that nobody filled in
  std::uint64_t dates_rewritten{};
  char separator{','};
};

// What was examined in this run, and what that says of names updated: in full sentences.
[[nodiscard]] std::string examined_in_words(Redetermination const& result);

[[nodiscard]] std::string taken_back_text(std::span<FilledFile const> files, TakenBack const& taken,
                                          TerminalStyle style);

// file,line,catalogNumber,scientificName,question,answer,newName,by,date,remarks (all as they
// stood), status,code,reason,remedy,outcome,newScientificName,identificationID.  One row for each
// row in which something was written, in the order of files and lines.
[[nodiscard]] std::string taken_back_csv(TakenBack const& taken);

// Darwin Core Identification rows (issue 2026-05-26), one a determination: occurrenceID,
// catalogNumber,identificationID,verbatimIdentification,scientificName,scientificNameAuthorship,
// identifiedBy,dateIdentified,identificationReferences,nameAccordingTo,
// identificationVerificationStatus,identificationRemarks.
[[nodiscard]] std::string identifications_csv_header();
[[nodiscard]] std::string identifications_csv_rows(std::span<NewIdentification const> rows);

}  // namespace keydrift

#pragma once
// Tables for spreadsheets: RFC 4180, UTF-8, a header row, line feeds; cells that a spreadsheet
// would run as a formula are neutralised (csv_cell.hpp).

#include <string>
#include <vector>

#include "keydrift/collation/collation.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/redetermination/row_check.hpp"

namespace keydrift {

// --- specimens: one row per record, in input order -------------------------------------------
//
// catalogNumber,scientificName,outcome,newScientificName,oldCouplet,newCouplet,reason,lookAt, then
// oldName (the terminals that the recorded name means), possibleOutcomes (what may follow once the
// questions are answered), typeOrVoucher, storageLocation, determinedWith (label of the edition
// that the determination was made with, as far as it is known or presumed) and editionBasis (cited,
// presumed by date, not known, citation and date contradict).

[[nodiscard]] std::string specimens_csv_header();

// The cells that all specimens of one verdict share, already in CSV.  Made once per verdict, so
// that writing a row costs four cells.
struct VerdictCells {
  std::string outcome;  // "open"
  std::string places;   // oldCouplet … lookAt,oldName,possibleOutcomes
};
[[nodiscard]] VerdictCells verdict_cells(Verdict const& verdict, Edition const& old_edition,
                                         Edition const& new_edition);

// determinedWith and editionBasis.
[[nodiscard]] std::string edition_cells(EditionUse const& use,
                                        std::vector<std::string> const& labels);

// Appends one row.  `new_names` as in SpecimenOutcome, `edition` as edition_cells() made it.
void append_specimen_row(std::string& out, Specimen const& specimen, std::string_view new_names,
                         VerdictCells const& cells, std::string_view edition);

// --- worklist: the specimens somebody must look at, in the order of the walk -----------------
//
// storageLocation,catalogNumber,scientificName,typeOrVoucher,question,answersAllowed,
// possibleResults, empty answer,newName,by,date,remarks to be filled in, and for the way back
// character (the id of what is asked for), occurrenceID and rowCheck (row_check.hpp).
[[nodiscard]] std::string worklist_csv_header();

// The cells that all sheets of one verdict share, already in CSV.
struct WorkCells {
  std::string question;  // question,answersAllowed,possibleResults
  std::string character;
  RowCheck check;
};
[[nodiscard]] WorkCells work_cells(Verdict const& verdict, Edition const& new_edition);

// Appends one row.
void append_work_row(std::string& out, Specimen const& specimen, WorkCells const& cells);

// --- collation -------------------------------------------------------------------------------

// One row per taxon (or group of related taxa), unchanged ones included:
// oldName,newName,relation,basis,events,oldEnds,newEnds,oldRoute,newRoute,partsAtOld,partsAtNew,
// charactersLost,charactersGained
[[nodiscard]] std::string taxa_csv(Edition const& old_edition, Edition const& new_edition,
                                   Collation const& collation);

// One row per change of a character's role, exception notes first:
// character,label,transition,oldLead,newLead,oldWords,newWords,oldStrength,newStrength,
// exceptionsAdded,exceptionsRemoved,numbers,oldTaxa,newTaxa
[[nodiscard]] std::string characters_csv(Edition const& old_edition, Edition const& new_edition,
                                         Collation const& collation);

}  // namespace keydrift

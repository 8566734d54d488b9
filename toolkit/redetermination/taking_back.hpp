#pragma once
// A filled-in worklist taken back: which row means which sheet, what of it can be believed, and
// what follows from it under the new edition.
//
// The archive is run over twice.  The first run finds the sheets that the rows name (a number may
// have lost its zeros, and may stand for several sheets); the second weighs the answers as evidence
// beside the record.  Memory grows with the filled-in rows, not with the archive.

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/filled_row.hpp"
#include "keydrift/key/finding_kinds.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {

enum class Taken {
  applied,  // counted as evidence or as a determination
  noted,    // says nothing that could be applied: remarks, "not visible"
  refused,  // cannot be believed as it stands; changes nothing
};
[[nodiscard]] char const* to_word(Taken taken);  // "applied", "noted", "refused"

// What became of one row.
struct TakenRow {
  FilledRow row{};
  Taken taken{Taken::refused};
  std::string code{};     // for noted and refused: see refusal_kinds()
  std::string message{};  // one sentence without final stop; for applied: what was mended, or ""
  std::string remedy{};
  std::uint32_t column{};  // of the cell that it is about, in its line; 0: the whole row
  // Applied rows: what the sheet came to, all rows about it taken together.
  Outcome outcome{Outcome::not_keyed};
  std::string new_names{};  // possible ones joined by " | "
  std::string
      identification_id{};  // of the row in TakenBack::identifications; "" when there is none
};

// A row to be added to the history of determinations; none is ever changed or taken away.
// Terms: Darwin Core list of terms, issue 2026-05-26, class Identification.
struct NewIdentification {
  std::string identification_id{};  // urn:uuid, version 5 (RFC 9562): the same again on every run
  std::string occurrence_id{};
  std::string catalog_number{};
  std::string verbatim_identification{};  // what the person wrote, where a name was written
  std::string scientific_name{};          // with author where the edition prints one
  std::string authorship{};
  std::string identified_by{};
  std::string date_identified{};
  std::string references{};  // the new edition, cited
  std::string
      verification_status{};  // "0": nobody has verified it since (scale of ABCD and HISPID)
  std::string remarks{};      // what was seen, the way in the key, the name before
};

struct TakenBack {
  std::vector<TakenRow> rows{};                      // in the order of files and lines
  std::vector<NewIdentification> identifications{};  // in the order of the archive
  std::array<std::uint64_t, 3> counts{};             // by Taken
  std::uint64_t sheets{};                            // with at least one applied row
  std::uint64_t still_asked{};                       // of these: something remains to be looked at
  std::uint64_t numbers_mended{};
};

// The codes of refused (warning) and noted (information) rows, with what they mean.
[[nodiscard]] std::span<FindingKind const> refusal_kinds();

class TakingBack {
 public:
  explicit TakingBack(std::vector<FilledRow> rows);

  // First run: every specimen in the order of the archive.
  void meet(Specimen const& specimen);
  // Ends the first run.
  void end_of_first_run();
  // Second run: the same specimens in the same order, instead of Redeterminer::count().
  Redeterminer::Counted count(Redeterminer& redeterminer, Specimen const& specimen);
  // Ends the second run; to be called once.
  [[nodiscard]] TakenBack finish() &&;

 private:
  // A sheet that a row may mean.
  struct Candidate {
    std::uint64_t ordinal{};  // in the archive
    bool by_id{false}, exact{false};
    std::string number, occurrence_id, name, storage;
  };
  struct Entry {
    TakenRow taken;
    std::vector<Candidate> candidates;
    std::uint64_t met{};  // sheets of that number, kept as candidates or not
    bool decided{false};
  };
  struct Reading;

  void offer(std::vector<std::size_t> const& entries, Specimen const& specimen, bool by_id,
             bool exact);
  void find_sheet(Entry& entry);
  void refuse(Entry& entry, std::string code, std::string message, std::string remedy);
  void note(Entry& entry, std::string code, std::string message);
  bool has_person_and_day(Entry& entry);
  void read_answer(Redeterminer const& redeterminer, Verdict const& verdict, Reading& reading);
  void refuse_contradictions(Redeterminer const& redeterminer, std::vector<Reading>& readings);
  void check_name(Redeterminer const& redeterminer, Verdict const& verdict, Reading& reading);
  void identify(Redeterminer const& redeterminer, Specimen const& specimen, Verdict const& verdict,
                std::vector<Reading> const& readings);

  std::vector<Entry> entries_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_id_, by_number_, by_loose_;
  std::unordered_map<std::uint64_t, std::vector<std::size_t>> by_ordinal_;
  std::vector<std::string> numbers_;  // of the archive, some of them, for "did you mean"
  std::uint64_t ordinal_{};
  TakenBack result_;
};

// "2024. Title. 3rd edition" with authors: how an edition is cited in identificationReferences.
[[nodiscard]] std::string citation_of(Edition const& edition);

}  // namespace keydrift

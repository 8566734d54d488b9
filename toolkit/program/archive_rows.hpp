#pragma once
// What is written of each specimen while an archive is read: rows of the specimens CSV, sheets of
// the worklist, rows set aside.

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/formats/csv.hpp"
#include "keydrift/key/spill/spill_sort.hpp"
#include "keydrift/program/comparison.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/redetermination/redeterminer.hpp"
#include "keydrift/reports/csv.hpp"

namespace keydrift::program {

// Which of them somebody wants.
struct RowsWanted {
  bool specimens{false};
  bool worklist{false};       // as CSV
  bool worklist_page{false};  // as HTML
  bool rejects{false};
  [[nodiscard]] bool sheets() const { return worklist || worklist_page; }
};

// Made of some rows, in their order.
struct RowTexts {
  std::string specimens;  // of the CSV
  std::string sheets;     // records for WorklistSheets
  std::string rejects;    // of the CSV
  std::uint64_t rows{};   // specimens and rejects
  void clear();
};

// Makes them; one for each redeterminer.  What all specimens of a verdict share is made once.
class RowWriter {
 public:
  // Borrows all.
  RowWriter(Comparison const& comparison, Redeterminer& redeterminer, RowsWanted wanted)
      : comparison_{comparison},
        redeterminer_{redeterminer},
        wanted_{wanted},
        editions_{redeterminer.editions()} {}

  // Must the specimen be there in words?
  [[nodiscard]] bool wants(Redeterminer::Counted const& counted) const {
    return wanted_.specimens || (counted.look && wanted_.sheets());
  }
  void write(Specimen const& specimen, Redeterminer::Counted const& counted, RowTexts& texts);
  void reject(Reject const& reject, RowTexts& texts);

 private:
  struct OfVerdict {
    std::string new_names;
    VerdictCells specimen;
    WorkCells sheet;
    std::string boxes;
    bool has_sheet{false};
  };
  [[nodiscard]] OfVerdict& cells_of(std::size_t verdict, bool look);

  Comparison const& comparison_;
  Redeterminer& redeterminer_;
  RowsWanted wanted_;
  EditionsUsed editions_;
  std::unordered_map<std::size_t, OfVerdict> cells_;  // of verdicts met lately
  std::size_t cell_bytes_{};
  std::uint64_t forgotten_{};
  std::map<std::pair<std::size_t, EditionBasis>, std::string> edition_cells_;
  std::string row_, line_;
};

// All sheets of the worklist, sorted on disk where memory does not hold them.
class WorklistSheets {
 public:
  // Records of specimens in their order.
  void add(std::string_view records);

  // Writes them in the order of the worklist, either of which may be missing.  Nothing: done.
  [[nodiscard]] std::optional<Finding> write(Comparison const& comparison,
                                             Redetermination const& result, OutputFile* csv,
                                             OutputFile* page);

 private:
  static constexpr std::size_t kMemory = std::size_t{4} << 20;
  SpillSort spool_{kMemory};  // by the upper half of their groups' ids
};

}  // namespace keydrift::program

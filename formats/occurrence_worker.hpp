#pragma once
// The inside of a worker.  Inner header of formats.

#include <array>
#include <optional>
#include <vector>

#include "keydrift/formats/cell_codes.hpp"
#include "keydrift/formats/occurrence_blocks.hpp"
#include "keydrift/formats/occurrence_rows.hpp"
#include "keydrift/formats/short_cells.hpp"

namespace keydrift {

struct OccurrenceWorker::State {
  State(OccurrenceOptions const& the_options, std::vector<tables::OccurrenceTarget> const& targets);

  // What is done with a cell.
  struct Column {
    enum class Kind {
      term,
      place,
      place_list,
      character,
      voucher,
      institution,
      collection,
      catalog_number,
      occurrence_id,
      text,  // only looked at for its encoding
    };
    Kind kind{Kind::text};
    std::size_t cell{};     // column of the table
    std::size_t ordinal{};  // among those of its kind; of a term, which
    tables::CellCodes codes{0};
    WordCode default_code{kNoWord};  // for empty cells
    std::string unnumbered;          // the word of the row at hand, where it has no number
  };

  // A column whose words have numbers.
  struct Numbered {
    std::size_t cell{};    // column of the table
    std::size_t column{};  // into columns
    WordCode* to{};        // where the number of the row at hand goes
    tables::ShortCells words{};
  };

  [[nodiscard]] CodedSpecimen const* coded(std::size_t row);
  [[nodiscard]] Specimen const* read(std::size_t row);
  [[nodiscard]] Specimen const& brief(std::size_t row);
  [[nodiscard]] std::uint64_t number();
  [[nodiscard]] std::string_view word(Column const& column, WordCode code) const {
    return code == kUnnumbered ? std::string_view{column.unnumbered} : column.codes.word(code);
  }
  // The words of the row's cell; "" where there is none.
  [[nodiscard]] std::string_view cell(CsvBlock::Row const& row, std::size_t column) const;

  // Where the number of a column's word goes; nullptr: its words have none.
  [[nodiscard]] WordCode* number_of(Column const& column);

  // False: the cell leaves a trace in remarks, so the row has to be read in words.
  [[nodiscard]] bool take(Column& column, std::string_view cell);
  [[nodiscard]] bool take_voucher(Column& column, std::string_view cell);
  [[nodiscard]] bool take_numbered(CsvBlock::Row const& row);
  [[nodiscard]] bool code(Numbered& numbered, std::string_view cell);
  [[nodiscard]] bool code(Column& column, std::string_view cell, WordCode& code);
  // The cell cleaned, into `to`; false as above.
  [[nodiscard]] static bool clean(std::string_view cell, std::string& to);

  OccurrenceOptions const& options;
  tables::OccurrenceRows rows;
  std::vector<Column> columns;
  std::vector<Numbered> numbered;   // those of kind term, place, place_list and character
  std::vector<std::size_t> others;  // into columns
  std::size_t cells_needed{};       // that a row must have for all that are numbered
  std::array<std::size_t, kCodedTerms> term_columns{};  // into columns; npos: there is none
  std::vector<std::size_t> place_columns, character_columns;
  std::vector<std::size_t> regions;       // into place_columns
  std::vector<std::size_t> number_cells;  // of the table: catalogue numbers, then ids
  std::vector<CodedCharacter> characters;
  std::size_t words{};  // numbered, in all columns

  OccurrenceBlock const* block{};
  CodedSpecimen specimen;
  std::vector<WordCode> place_codes, character_codes;
  std::string institution, collection, catalog_number, occurrence_id, key;
  std::vector<std::string_view> cells;
  Specimen brief_specimen;
  bool by_words{false};  // the row at hand was read()
  bool taken{false};     // the row at hand was counted
  std::uint64_t specimens{}, rejected{};
};

}  // namespace keydrift

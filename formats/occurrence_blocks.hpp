#pragma once
// An occurrence table read by several threads: one takes it apart into blocks of rows, others make
// specimens of the rows, each with a worker of its own.
//
// A worker numbers the words of the table (CodedSpecimen), so that most rows need no string at all.

#include <cstdint>
#include <memory>
#include <string>

#include "keydrift/characters/coded_specimen.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/csv.hpp"

namespace keydrift {

struct OccurrenceBlock {
  std::uint64_t first_place{};  // of its first row, among all rows of the table
  CsvBlock csv{};
};

class OccurrenceReader;

// A row with neither a name nor a number nor a character is rejected for this.
inline constexpr std::string_view kNothingUsable = "nothing-usable";
inline constexpr std::string_view kNothingUsableWords =
    "the row has neither a name nor a number nor a character";

// Made by OccurrenceReader::worker(), which must outlive it; to be given back to
// OccurrenceReader::absorb() when its last block is done.
class OccurrenceWorker final : public CodedWords {
 public:
  struct State;
  ~OccurrenceWorker() override;
  OccurrenceWorker(OccurrenceWorker const&) = delete;
  OccurrenceWorker& operator=(OccurrenceWorker const&) = delete;

  // The rows asked for from now on.  Borrows the block.
  void begin(OccurrenceBlock const& block);

  // A row as numbers of words; nullptr: read() has to be asked about it.  Valid until the next
  // call. Precondition: the row is not rejected.
  [[nodiscard]] CodedSpecimen const* coded(std::size_t row);
  // It was counted as that.
  void take_coded();
  // The row in words, as OccurrenceReader::specimen(); nullptr: it has neither a name nor a number
  // nor a character.  Counts it, unless take_coded() did.
  [[nodiscard]] Specimen const* read(std::size_t row);
  // Only what a row of a report says of it: the numbers, the name, type status, storage,
  // voucher, cited works and date.
  // Precondition: coded() gave the row.
  [[nodiscard]] Specimen const& brief(std::size_t row);
  // A fingerprint of the number of the row last asked for; 0: it has none.
  [[nodiscard]] std::uint64_t number();
  // That number as printed.
  [[nodiscard]] std::string printed_number(std::size_t row);

  [[nodiscard]] std::string_view term(CodedTerm which, WordCode code) const override;
  [[nodiscard]] std::vector<std::string> places(std::size_t column, WordCode code) const override;
  [[nodiscard]] std::span<std::size_t const> regions() const override;
  [[nodiscard]] std::string_view character(std::size_t column, WordCode code) const override;
  [[nodiscard]] std::span<CodedCharacter const> characters() const override;

 private:
  friend class OccurrenceReader;
  explicit OccurrenceWorker(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

}  // namespace keydrift

#pragma once
// Darwin Core occurrences as CSV or TSV: one specimen a row, in bounded memory.
//
// Columns are Darwin Core terms by local name (case, blanks, hyphens and underscores aside), with a
// prefix ("dwc:scientificName") or as full IRI:
//   catalogNumber, occurrenceID, scientificName, scientificNameAuthorship, identificationQualifier,
//   recordedBy, identifiedBy, dateIdentified, identificationReferences, typeStatus, sex, lifeStage,
//   reproductiveCondition, occurrenceRemarks, identificationRemarks; country, countryCode,
//   stateProvince, county, municipality, locality, island, waterBody, higherGeography (its items)
//   become places; storageLocation or locationName is where the specimen is kept; voucher is
//   true, yes, 1 or a cross.
// A column headed by a character's id or label holds that character; the unit of its numbers may
// follow in brackets: "spike length (mm)".  A header may be both a term and a character (sex).
//
// Look-alikes are read the same way.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/characters/archive_counts.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/measurements.hpp"
#include "keydrift/formats/occurrence_blocks.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// A table whose form is declared elsewhere (meta.xml) instead of by its first row.
struct TableForm {
  // Term of each column, "" for one without; behind the file's own columns those that have nothing
  // but a default.
  std::vector<std::string> columns{};
  std::vector<std::string> defaults{};  // of each of these, where the cell is missing or empty
  std::size_t file_columns{};           // how many of them the file has, at least
  char separator{','};
  char quote{'"'};  // NUL: nothing is enclosed
  std::uint64_t header_lines{};
};

// What other tables say of the specimen in a row.
class SpecimenJoin {
 public:
  virtual ~SpecimenJoin() = default;
  // Rows come ascending by Specimen::line; each at most once.
  virtual void add_to(Specimen& specimen) = 0;
};

struct OccurrenceOptions {
  std::vector<std::string> characters{};  // ids and labels that count as columns, case-folded
  // Columns that are neither characters nor terms of Darwin Core are characters as well, by their
  // own names: somebody else finds out what they mean.
  bool any_character{false};
  // Other column names: {column, term}, e.g. {"Art", "scientificName"}.
  std::vector<std::pair<std::string, std::string>> column_terms{};
  bool all_are_vouchers{false};
  MeasurementTable* measurements{nullptr};  // joined to each specimen; borrowed
  TableForm const* form{nullptr};           // borrowed; nullptr: the first row is the header
  SpecimenJoin* join{nullptr};              // borrowed
  std::size_t maximum_row_bytes{std::size_t{1} << 20};
  // Numbers that are looked up in memory (16 to 32 bytes each) for rows that repeat one; further
  // ones are sorted on the disk.
  std::size_t numbers_remembered{750'000};
};

// rows = specimens + rejected; blank rows are none.
struct OccurrenceCounts {
  std::uint64_t rows{};
  std::uint64_t specimens{};
  std::uint64_t rejected{};
  std::uint64_t without_name{};  // of the specimens
  std::uint64_t repeated_numbers{};
};

class OccurrenceReader {
 public:
  // Borrows the stream and the measurements.  `name` is what messages call the table.
  OccurrenceReader(ByteStream& stream, std::string_view name, OccurrenceOptions options = {});
  ~OccurrenceReader();
  OccurrenceReader(OccurrenceReader const&) = delete;
  OccurrenceReader& operator=(OccurrenceReader const&) = delete;

  enum class Next { specimen, reject, end, failed };
  // `failed`: nothing can be read (further); findings() say why.
  [[nodiscard]] Next next();
  // The same object each time, its strings reused: copy it to keep it.
  [[nodiscard]] Specimen const& specimen() const;  // after Next::specimen
  [[nodiscard]] Reject const& reject() const;      // after Next::reject
  // After `end` or `failed`, as the following.
  [[nodiscard]] OccurrenceCounts const& counts() const;
  // The first rows whose number (or id, where it has none) an earlier one has.
  [[nodiscard]] std::vector<RepeatedId> const& repeats() const;

  // --- by several threads (occurrence_blocks.hpp) ---
  //
  // Instead of next(): start(), a worker for each thread, blocks until there are none, and what the
  // workers met taken in.  Precondition: there are no measurements and no join.
  [[nodiscard]] bool start();  // false: failed
  [[nodiscard]] std::unique_ptr<OccurrenceWorker> worker() const;
  enum class NextBlock { block, end, failed };
  [[nodiscard]] NextBlock next_block(OccurrenceBlock& block, std::size_t bytes);
  // In the order of the rows: the worker's fingerprint of a number.  True: take_number() is to be
  // told how it is printed.
  [[nodiscard]] bool meet_number(std::uint64_t number, std::uint64_t line);
  void take_number(std::string const& number);
  void absorb(OccurrenceWorker const& worker);

  // After `end` or `failed`.  Errors: no-name-column, empty-file, what stopped the stream,
  // temporary-file (which may show at the end only).
  // With a form or a join a table without a name column is read all the same.
  // Warnings: unused-column (near to a character), duplicate-column, unclear-voucher,
  // no-specimens, unknown-id.  Information: unused-columns, no-name, repeated-number, short-rows,
  // stray-quotes, encoding.
  [[nodiscard]] std::vector<Finding> findings() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// Reads all of it.  No value when the table could not be read to its end; specimens given out until
// then must not be used.  Either function may be empty.
[[nodiscard]] Loaded<OccurrenceCounts> read_occurrences(
    ByteStream& stream, std::string_view name, OccurrenceOptions const& options,
    std::function<void(Specimen const&)> const& on_specimen,
    std::function<void(Reject const&)> const& on_reject);

}  // namespace keydrift

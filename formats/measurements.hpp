#pragma once
// Measurement rows beside an occurrence table: Darwin Core MeasurementOrFact as CSV or TSV.
//
//   occurrenceID or catalogNumber, measurementType, measurementValue, measurementUnit
//
// The rows of one specimen may stand anywhere in the file, so all of them are held in memory and
// joined by id: fine for what people keep beside an archive, not for millions of rows.

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// What is known of each specimen, by its occurrence id or catalogue number.
class MeasurementTable {
 public:
  // Appends the observations of the specimen's rows, in the file's order (those found by
  // occurrence id first), and fills its storage where it is empty.  Not for several threads.
  void add_to(Specimen& specimen);

  // unknown-id (warning): the rows that no specimen given to add_to() took.
  [[nodiscard]] std::vector<Finding> findings_on_unused() const;

  [[nodiscard]] std::size_t row_count() const { return rows_; }

 private:
  friend class MeasurementReader;
  struct Group {
    std::vector<Observation> observations;
    std::string storage;
    std::uint64_t first_line{};
    std::size_t rows{};
    bool used{false};
  };
  using Groups = std::unordered_map<std::string, Group>;
  std::string file_;
  Groups by_occurrence_;
  Groups by_number_;
  std::size_t rows_{};
};

struct MeasurementOptions {
  // Ids and labels of characters: other types are listed once (unknown-type, information) and not
  // kept.  Empty: every type is kept.
  std::vector<std::string> characters{};
};

// Rows whose measurementType is "storage location" (or storageLocation, locationName) tell where
// the specimen is kept.  Rejected rows (no-id, no-type, and those of the CSV reader) go to
// `on_reject`, which may be empty.  Errors: missing-column; what stops the stream.
[[nodiscard]] Loaded<MeasurementTable> read_measurements(
    ByteStream& stream, std::string_view name, MeasurementOptions const& options,
    std::function<void(Reject const&)> const& on_reject);

}  // namespace keydrift

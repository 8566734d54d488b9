#pragma once
// Darwin Core archives: a folder or a zip file with meta.xml, an Occurrence core, and extensions
// for the history of determinations and for measurements.
//
// Nothing is held in memory but one block of each table: members of a zip file are inflated as they
// are read, and the extensions are joined by sorting on disk (spill_sort.hpp).  The core is read
// twice where there are extensions: once for its ids, once for the specimens.  Cost: each row of an
// extension is written to temporary files and read back twice (by id, then by the core's order),
// each core id once; with 16 MiB for each of the three sorts, whatever the number of rows.
//
// The current determination among several, by these rules:
//   1. one that says of itself that it is (isAcceptedIdentification true); of several, the latest;
//   2. else the name in the core's own row, and the latest determination of that name tells by
//   whom,
//      when and from what work (the extension's published rule: the core repeats the current one);
//   3. else the latest by dateIdentified; an undated one is older than any, and of equal dates the
//      later row counts.
// Of a date that is a period its beginning counts.

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/archive_counts.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

class DarwinArchive {
 public:
  // Is it a folder, a zip file, or a meta.xml?  Otherwise it is a table by itself.
  [[nodiscard]] static bool is_archive(std::string const& path);

  // Errors: those of read_meta() and of PackedFile, no-meta, missing-table (a file that meta.xml
  // names is not there), not-occurrences (another core).
  // Of the limits those on entries and on expansion hold; a zip file may be of any size.
  [[nodiscard]] static Loaded<DarwinArchive> open(std::string const& path,
                                                  ReadLimits const& limits = {});

  DarwinArchive(DarwinArchive&&) noexcept;
  DarwinArchive& operator=(DarwinArchive&&) noexcept;
  ~DarwinArchive();

  // Reads all of it; as read_occurrences().  May be called again.  Further warnings: unknown-id
  // (rows of an extension that belong to no row of the core), repeated-occurrence (rows of the core
  // with one id: all are specimens, and the first gets what the extensions say; looked for where
  // there are extensions).
  [[nodiscard]] Loaded<OccurrenceCounts> read(
      OccurrenceOptions options, std::function<bool(Specimen const&)> const& on_specimen,
      std::function<void(Reject const&)> const& on_reject) const;

  // The table of specimens by itself, where nothing has to be joined to it and it is one file: it
  // can then be read like any other table.
  struct PlainCore {
    std::unique_ptr<ByteStream> stream;
    std::string name;  // for messages
    std::optional<TableForm> form;
  };
  [[nodiscard]] std::optional<Loaded<PlainCore>> plain_core() const;

  [[nodiscard]] ArchiveCounts const& counts() const;  // of the last read()

 private:
  struct State;
  explicit DarwinArchive(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

}  // namespace keydrift

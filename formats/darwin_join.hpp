#pragma once
// Extensions of a Darwin Core archive joined to its core.  Inner header of formats.

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/darwin_archive.hpp"
#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/darwin_meta.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/key/spill/spill_sort.hpp"

namespace keydrift::tables {

// A row of the core by its file and line: ascending in the order of reading.
[[nodiscard]] constexpr std::uint64_t core_key(std::size_t part, std::uint64_t line) {
  return (static_cast<std::uint64_t>(part) << 40U) | line;
}

class DarwinJoin final : public SpecimenJoin {
 public:
  // Characters as in OccurrenceOptions: which measurements are used.
  explicit DarwinJoin(std::vector<std::string> const& characters);

  // First the ids of the core and all extensions, in any order; `name` is what messages call the
  // file.  False: the stream failed, and findings() say why.
  bool add_core(ByteStream& stream, std::string const& name, MetaTable const& table,
                std::size_t part);
  bool add_extension(ByteStream& stream, std::string const& name, MetaTable const& table,
                     std::function<void(Reject const&)> const& on_reject);
  // Then the join; false as above.
  bool join();

  // Then the specimens, part by part.
  void begin_part(std::size_t part) { part_ = part; }
  void add_to(Specimen& specimen) override;

  [[nodiscard]] ArchiveCounts const& counts() const { return counts_; }
  // What was found, with what stopped the sorting.
  [[nodiscard]] std::vector<Finding> findings() const;

 private:
  struct Determination;
  bool check(SpillSort const& sort);
  void choose(Specimen& specimen, std::vector<Determination> const& history);
  void measure(Specimen& specimen, std::string_view payload);
  // A row of the core whose id that of the row `first` is.
  void note_repeat(std::string_view id, std::uint64_t first, std::uint64_t key);

  CharacterColumns characters_;
  bool any_type_;
  SpillSort core_, extensions_, joined_;
  SpillSort::Record at_;  // of joined_, not yet given out
  bool more_{false};
  std::size_t part_{};
  ArchiveCounts counts_;
  std::uint64_t orphans_{};
  std::string first_orphan_, first_orphan_file_;
  std::uint64_t first_orphan_line_{};
  std::vector<std::string> core_files_;          // by part
  std::map<std::uint64_t, RepeatedId> repeats_;  // the first of them, by their rows
  std::vector<std::string> files_;               // of the extensions; payloads have their index
  std::map<std::string, std::uint64_t, std::less<>> unknown_types_;
  std::vector<Finding> findings_;
};

}  // namespace keydrift::tables

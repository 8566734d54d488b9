#pragma once
// Reading archives: one pass over the rows, whatever their number.

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/archive_counts.hpp"
#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/program/archive_threads.hpp"
#include "keydrift/program/context.hpp"

namespace keydrift::program {

struct ArchiveRun {
  std::string path;
  std::string measurements;             // path; empty: none
  std::vector<std::string> characters;  // names that a column may have
  bool all_are_vouchers{false};
  bool any_character{false};  // columns and types of other names are characters, too
  std::function<void(Specimen const&)> on_specimen;
  std::function<void(Reject const&)> on_reject;
  std::function<bool()> stop;      // asked after each specimen; may be empty
  bool quiet{false};               // another run over the same archive tells what is to be told
  ArchiveCounts* counts{nullptr};  // to be filled in, unless nullptr
};

// Runs over the archive.  Warnings and errors are printed; false: what was handed out must not be
// used.
[[nodiscard]] bool run_archive(ArchiveRun const& run, Context& context);

// Counts the archive by several threads; the functions of `run` are not called.  Nothing: it cannot
// be read so (tables have to be joined), run_archive() has to be asked.
[[nodiscard]] std::optional<bool> count_archive(ArchiveRun const& run, ThreadedRun const& threads,
                                                Context& context);

// The specimen of that catalogue number; a printed message when there is none.
[[nodiscard]] std::optional<Specimen> find_specimen(std::string const& path,
                                                    std::string const& measurements,
                                                    std::string const& catalog_number,
                                                    std::vector<std::string> const& characters,
                                                    Context& context);

}  // namespace keydrift::program

#pragma once
// `redetermine --take-back`: filled-in worklists in, determinations and a log out.

#include <optional>
#include <string>
#include <vector>

#include "keydrift/formats/written_day.hpp"
#include "keydrift/program/context.hpp"
#include "keydrift/redetermination/taking_back.hpp"
#include "keydrift/reports/taken_back.hpp"

namespace CLI {
class App;
}

namespace keydrift::program {

struct TakeBackArguments {
  std::vector<std::string> worklists;  // all that came back so far
  std::string identifications;
  std::string log;
  DayOrder dates{DayOrder::unknown};
};
void add_take_back_options(CLI::App& command, TakeBackArguments& arguments);

struct FilledIn {
  std::vector<FilledFile> files;
  std::vector<FilledRow> rows;
  std::vector<TakenRow> unreadable;  // rows that are none: refused, with their bytes as remarks
};

// Reads all worklists; on failure the errors are printed and nothing is returned.
[[nodiscard]] std::optional<FilledIn> load_filled(TakeBackArguments const& arguments,
                                                  Context& context);

// Puts the unreadable rows among the others, in the order of files and lines.
void add_unreadable(TakenBack& taken, FilledIn&& filled);

// What the file of determinations is to hold: what it holds already, byte by byte, and the rows
// whose identificationID it does not have.  A file of other columns is refused (a printed finding).
struct HistoryFile {
  std::string text;
  std::uint64_t added{};
  std::uint64_t known{};  // in the file already
};
[[nodiscard]] std::optional<HistoryFile> with_history(std::string const& path,
                                                      TakenBack const& taken, Context& context);

}  // namespace keydrift::program

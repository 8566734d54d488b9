#include "keydrift/program/take_back.hpp"

#include <CLI/CLI.hpp>
#include <filesystem>
#include <map>
#include <ostream>
#include <set>

#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/filled_worklist.hpp"
#include "keydrift/program/inputs.hpp"

namespace keydrift::program {

void add_take_back_options(CLI::App& command, TakeBackArguments& arguments) {
  command
      .add_option("--take-back", arguments.worklists,
                  "A worklist that was filled in (CSV); give all that came back so far")
      ->allow_extra_args(false)
      ->type_name("FILE");
  command
      .add_option("--identifications", arguments.identifications,
                  "Add the determinations to this file (CSV of Darwin Core Identification rows)")
      ->type_name("FILE");
  command
      .add_option("--take-back-log", arguments.log,
                  "Write what became of every filled-in row (CSV)")
      ->type_name("FILE");
  std::map<std::string, DayOrder> const orders{{"day-first", DayOrder::day_first},
                                               {"month-first", DayOrder::month_first}};
  command
      .add_option("--dates", arguments.dates,
                  "How dates like 3/4/2024 were written: day-first, month-first")
      ->transform(CLI::CheckedTransformer(orders).description(""))
      ->type_name("ORDER");
}

std::optional<FilledIn> load_filled(TakeBackArguments const& arguments, Context& context) {
  FilledIn filled;
  bool sound = true;
  for (auto const& path : arguments.worklists) {
    auto stream = open_stream(path, stream_limits(context));
    auto const tell = [&](std::vector<Finding> const& findings) {
      for (auto const& finding : findings) print_finding(context, finding);
    };
    tell(stream.findings);
    if (!stream.value) {
      sound = false;
      continue;
    }
    auto loaded =
        read_filled_worklist(**stream.value, path, arguments.dates, [&](Reject const& reject) {
          TakenRow torn;
          torn.row.file = path;
          torn.row.line = reject.line;
          torn.row.remarks = std::string{reject.raw};
          torn.code = "unreadable-row";
          torn.message = std::string{reject.message};
          torn.remedy = "mend the row in the spreadsheet; its bytes are in the column remarks";
          filled.unreadable.push_back(std::move(torn));
        });
    tell(loaded.findings);
    if (!loaded.value) {
      sound = false;
      continue;
    }
    filled.files.push_back({.name = path,
                            .rows = loaded.value->rows.size(),
                            .blank = loaded.value->blank,
                            .dates_rewritten = loaded.value->dates_rewritten,
                            .separator = loaded.value->separator});
    filled.rows.insert(filled.rows.end(), std::make_move_iterator(loaded.value->rows.begin()),
                       std::make_move_iterator(loaded.value->rows.end()));
  }
  if (!sound) return std::nullopt;
  return filled;
}

void add_unreadable(TakenBack& taken, FilledIn&& filled) {
  if (filled.unreadable.empty()) return;
  taken.counts[static_cast<std::size_t>(Taken::refused)] += filled.unreadable.size();
  std::map<std::string, std::size_t> order;
  for (auto const& file : filled.files) order.emplace(file.name, order.size());
  taken.rows.insert(taken.rows.end(), std::make_move_iterator(filled.unreadable.begin()),
                    std::make_move_iterator(filled.unreadable.end()));
  std::stable_sort(taken.rows.begin(), taken.rows.end(), [&](TakenRow const& a, TakenRow const& b) {
    return std::pair{order.at(a.row.file), a.row.line} <
           std::pair{order.at(b.row.file), b.row.line};
  });
}

std::optional<HistoryFile> with_history(std::string const& path, TakenBack const& taken,
                                        Context& context) {
  HistoryFile history;
  auto const header = identifications_csv_header();
  std::error_code error;
  std::set<std::string> known;
  if (std::filesystem::exists(path, error)) {
    auto text = load_file(path, context);
    if (!text) return std::nullopt;
    history.text = std::move(*text);
  }
  if (history.text.empty()) {
    history.text = header;
  } else {
    auto const stream = stream_of(history.text);
    CsvReader reader{*stream, {.separator = ','}};
    bool first = true;
    std::size_t id = 0;
    for (auto next = reader.next(); next != CsvReader::Next::end; next = reader.next()) {
      if (next != CsvReader::Next::row) continue;
      auto const& row = reader.row();
      if (std::exchange(first, false)) {
        if (std::string{row.raw} + '\n' != header) {
          Finding finding;
          finding.code = "other-columns";
          finding.severity = Severity::error;
          finding.file = path;
          finding.place.line = static_cast<std::uint32_t>(row.line);
          finding.printed = std::string{row.raw.substr(0, 120)};
          finding.message =
              "the file has other columns than determinations are written with, so "
              "nothing was added to it";
          finding.remedy = "name another file; its rows can be put together with these";
          print_finding(context, finding);
          return std::nullopt;
        }
        constexpr std::string_view kBefore = "occurrenceID,catalogNumber,";
        id = static_cast<std::size_t>(std::count(kBefore.begin(), kBefore.end(), ','));
      } else if (id < row.cells.size()) {
        known.emplace(row.cells[id]);
      }
    }
    if (history.text.back() != '\n') history.text += '\n';
  }
  for (auto const& row : taken.identifications) {
    if (!known.insert(row.identification_id).second) {
      ++history.known;
      continue;
    }
    ++history.added;
    history.text += identifications_csv_rows({&row, 1});
  }
  return history;
}

}  // namespace keydrift::program

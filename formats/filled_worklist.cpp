#include "keydrift/formats/filled_worklist.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/cell_text.hpp"
#include "keydrift/formats/headed_rows.hpp"
#include "keydrift/formats/wording.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {

using namespace tables;

namespace {

struct WorklistColumn {
  std::string_view name;  // as the worklist heads it
  std::string FilledRow::*member;
};
constexpr std::array kWorklistColumns{
    WorklistColumn{"catalogNumber", &FilledRow::number},
    WorklistColumn{"occurrenceID", &FilledRow::occurrence_id},
    WorklistColumn{"storageLocation", &FilledRow::storage},
    WorklistColumn{"scientificName", &FilledRow::scientific_name},
    WorklistColumn{"character", &FilledRow::character},
    WorklistColumn{"question", &FilledRow::question},
    WorklistColumn{"answer", &FilledRow::answer},
    WorklistColumn{"newName", &FilledRow::new_name},
    WorklistColumn{"by", &FilledRow::by},
    WorklistColumn{"date", &FilledRow::date},
    WorklistColumn{"remarks", &FilledRow::remarks},
    WorklistColumn{"rowCheck", &FilledRow::check},
};
constexpr std::size_t kNumberColumn = 0;
constexpr std::size_t kOccurrenceColumn = 1;
constexpr std::size_t kAnswer = 6;
constexpr std::size_t kNewName = 7;
constexpr std::size_t kBy = 8;
constexpr std::size_t kDate = 9;
constexpr std::size_t kCheck = 11;
// What the letters of rowCheck were made of.
constexpr std::array<std::size_t, 5> kChecked{0, 1, 3, 4, 5};
// What the worklist tells whoever fills it in, and nobody reads again.
constexpr std::array<std::string_view, 3> kForPeople{"typeOrVoucher", "answersAllowed",
                                                     "possibleResults"};

std::size_t column_of(std::string_view header) {
  auto const key = column_key(header);
  return static_cast<std::size_t>(
      std::find_if(kWorklistColumns.begin(), kWorklistColumns.end(),
                   [&](WorklistColumn const& column) { return column_key(column.name) == key; }) -
      kWorklistColumns.begin());
}

class WorklistReader {
 public:
  WorklistReader(ByteStream& stream, std::string_view name,
                 std::function<void(Reject const&)> const& on_reject)
      : stream_{stream}, name_{name}, on_reject_{on_reject} {}

  Loaded<FilledWorklist> read(DayOrder order) {
    Loaded<FilledWorklist> loaded;
    CsvReader reader{stream_, {.known_column = [](std::string_view header) {
                       return column_of(CellCleaner::cleaned_copy(header)) <
                              kWorklistColumns.size();
                     }}};
    auto const rows = read_headed_rows(
        reader, [this](CsvRow const& row) { return read_header(row); },
        [this](CsvRow const& row) { read_row(row); },
        [this](Reject const& reject) {
          if (on_reject_) on_reject_(reject);
        });
    bool sound = rows == HeadedRows::read;
    if (auto failure = stream_.failure()) {
      findings_.push_back(std::move(*failure));
      sound = false;
    } else if (rows == HeadedRows::no_header) {
      add("empty-file", Severity::error, 1, "the file has no header row",
          "check that this is the right file and that it was saved");
    }
    if (sound) {
      read_dates(order);
      for (auto const& more : {reader.remarks(name_), cleaner_.remarks(name_)}) {
        findings_.insert(findings_.end(), more.begin(), more.end());
      }
      worklist_.separator = reader.separator();
      loaded.value = std::move(worklist_);
    }
    loaded.findings = std::move(findings_);
    return loaded;
  }

 private:
  void add(std::string code, Severity severity, std::uint64_t line, std::string message,
           std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = name_;
    finding.place.line = static_cast<std::uint32_t>(line);
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    findings_.push_back(std::move(finding));
  }

  // A column that is not read: is something lost?
  void tell_of_column(CsvRow const& row, std::size_t at, std::string const& header) {
    auto const key = column_key(header);
    bool const for_people =
        std::any_of(kForPeople.begin(), kForPeople.end(),
                    [&](std::string_view name) { return column_key(name) == key; });
    if (header.empty() || for_people) return;
    bool const twice = column_of(header) < kWorklistColumns.size();
    std::vector<std::string_view> names;
    for (auto const& column : kWorklistColumns) names.push_back(column.name);
    auto const near = nearest_word(header, names);
    add(twice ? "duplicate-column" : "unknown-column", Severity::warning, row.line,
        twice ? "the column " + in_quotes(header) + " stands twice; the first is read"
              : "the column " + in_quotes(header) + " is none of the worklist's and is not read",
        twice          ? "remove or rename one of them"
        : near.empty() ? "give back what it holds under the header that it came with"
                       : "if " + in_quotes(near) + " is meant, call it so");
    findings_.back().place = place_of(row, at);
  }

  bool read_header(CsvRow const& row) {
    std::vector<std::string> found;
    std::vector<std::size_t> unread;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      found.push_back(CellCleaner::cleaned_copy(row.cells[i]));
      auto const column = column_of(found.back());
      if (column < kWorklistColumns.size() && !at_[column]) {
        at_[column] = i;
      } else {
        unread.push_back(i);
      }
    }
    std::vector<std::string_view> missing;
    if (!at_[kNumberColumn] && !at_[kOccurrenceColumn]) {
      missing.emplace_back(kWorklistColumns[kNumberColumn].name);
    }
    if (!at_[kAnswer] && !at_[kNewName]) missing.emplace_back(kWorklistColumns[kAnswer].name);
    if (!missing.empty()) {
      add("missing-column", Severity::error, row.line,
          "the first row has no column " + quoted_list(missing) + "; it has " + quoted_list(found),
          "give the worklist back with the header that it came with");
      return false;
    }
    for (auto const i : unread) tell_of_column(row, i, found[i]);
    for (auto const column : {kBy, kDate}) {
      if (at_[column]) continue;
      add("missing-column", Severity::warning, row.line,
          "the first row has no column " + in_quotes(kWorklistColumns[column].name) +
              ", so no answer can be taken",
          "give the worklist back with the header that it came with");
    }
    look_for_check(row);
    return true;
  }

  // Without all columns that the letters were made of nothing can be said of them.
  void look_for_check(CsvRow const& row) {
    std::vector<std::string_view> missing;
    for (auto const column : kChecked) {
      if (!at_[column]) missing.emplace_back(kWorklistColumns[column].name);
    }
    checked_ = at_[kCheck] && missing.empty();
    if (checked_) return;
    add("no-row-check", Severity::information, row.line,
        !at_[kCheck]
            ? "the first row has no column \"rowCheck\", so nothing tells whether a column "
              "was sorted without the others"
            : "the column \"rowCheck\" cannot be used without " + quoted_list(missing) +
                  ", so nothing tells whether a column was sorted without the others",
        !at_[kCheck] ? "worklists that are written now have it; this one is taken as it is"
                     : "give the worklist back with all its columns; this one is taken as it is");
  }

  void read_row(CsvRow const& row) {
    FilledRow filled;
    filled.file = name_;
    filled.line = row.line;
    for (std::size_t column = 0; column < kWorklistColumns.size(); ++column) {
      if (!at_[column] || *at_[column] >= row.cells.size()) continue;
      filled.*kWorklistColumns[column].member =
          std::string{unguarded(cleaner_.clean(row.cells[*at_[column]], row.line))};
    }
    if (!checked_) filled.check.clear();
    if (!filled.check.empty()) filled.check_column = place_of(row, *at_[kCheck]).column;
    if (filled.blank()) {
      ++worklist_.blank;
    } else {
      worklist_.rows.push_back(std::move(filled));
    }
  }

  // Dates that can be told only by the order that others of the same file show.
  void read_dates(DayOrder order) {
    if (order == DayOrder::unknown) {
      std::optional<DayOrder> shown;
      bool agree = true;
      for (auto const& row : worklist_.rows) {
        auto const one = order_shown_by(row.date);
        agree = agree && (!one || !shown || *one == *shown);
        if (one) shown = one;
      }
      if (shown && agree) order = *shown;
    }
    for (auto& row : worklist_.rows) {
      if (row.date.empty()) continue;
      auto read = read_day(row.date, order);
      if (read.rewritten) ++worklist_.dates_rewritten;
      row.day = std::move(read.iso);
      row.date_problem = std::move(read.problem);
    }
  }

  ByteStream& stream_;
  std::string name_;
  std::function<void(Reject const&)> const& on_reject_;
  std::array<std::optional<std::size_t>, kWorklistColumns.size()> at_;
  bool checked_{false};  // by rowCheck
  CellCleaner cleaner_;
  FilledWorklist worklist_;
  std::vector<Finding> findings_;
};

}  // namespace

Loaded<FilledWorklist> read_filled_worklist(ByteStream& stream, std::string_view name,
                                            DayOrder order,
                                            std::function<void(Reject const&)> const& on_reject) {
  return WorklistReader{stream, name, on_reject}.read(order);
}

}  // namespace keydrift

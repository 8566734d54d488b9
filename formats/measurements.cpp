#include "keydrift/formats/measurements.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "keydrift/formats/cell_text.hpp"
#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/headed_rows.hpp"
#include "keydrift/formats/wording.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift {

using namespace tables;

namespace {

enum MeasurementColumn : std::size_t { kOccurrence, kNumber, kType, kValue, kUnit };
// As term_key() gives them.
constexpr std::array<std::string_view, 5> kRowTerms{
    "occurrenceid", "catalognumber", "measurementtype", "measurementvalue", "measurementunit"};
constexpr std::size_t kUnusedListed = 20;

std::size_t column_of_term(std::string_view header) {
  auto const key = term_key(header);
  return static_cast<std::size_t>(std::find(kRowTerms.begin(), kRowTerms.end(), key) -
                                  kRowTerms.begin());
}

}  // namespace

class MeasurementReader {
 public:
  MeasurementReader(ByteStream& stream, std::string_view name, MeasurementOptions const& options,
                    std::function<void(Reject const&)> const& on_reject)
      : stream_{stream},
        name_{name},
        characters_{options.characters},
        any_type_{options.characters.empty()},
        on_reject_{on_reject} {
    table_.file_ = name_;
  }

  Loaded<MeasurementTable> read() {
    Loaded<MeasurementTable> loaded;
    CsvReader reader{stream_, {.known_column = [](std::string_view header) {
                       return column_of_term(header) < kRowTerms.size();
                     }}};
    auto const rows = read_headed_rows(
        reader, [this](CsvRow const& row) { return read_header(row); },
        [this](CsvRow const& row) { read_row(row); },
        [this](Reject const& reject) {
          if (on_reject_) on_reject_(reject);
        });
    bool sound = rows == HeadedRows::read;
    if (auto failure = stream_.failure()) {
      add(std::move(*failure));
      sound = false;
    } else if (rows == HeadedRows::no_header) {
      add("empty-file", Severity::error, "the file has no header row",
          "check that this is the right file and that it was saved");
    }
    auto const take = [this](std::vector<Finding> findings) {
      for (auto& finding : findings) add(std::move(finding));
    };
    if (sound) {
      take(reader.remarks(name_));
      take(cleaner_.remarks(name_));
      report_unknown_types();
      loaded.value = std::move(table_);
    }
    loaded.findings = std::move(findings_);
    return loaded;
  }

 private:
  void add(Finding finding) { findings_.push_back(std::move(finding)); }
  void add(std::string code, Severity severity, std::string message, std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = name_;
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    add(std::move(finding));
  }

  bool read_header(CsvRow const& row) {
    std::vector<std::string> found;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      found.push_back(CellCleaner::cleaned_copy(row.cells[i]));
      auto const column = column_of_term(found.back());
      if (column < kRowTerms.size() && !columns_[column]) columns_[column] = i;
    }
    if ((columns_[kOccurrence] || columns_[kNumber]) && columns_[kType] && columns_[kValue]) {
      return true;
    }
    std::vector<std::string_view> missing;
    if (!columns_[kOccurrence] && !columns_[kNumber]) missing.emplace_back("occurrenceID");
    if (!columns_[kType]) missing.emplace_back("measurementType");
    if (!columns_[kValue]) missing.emplace_back("measurementValue");
    add("missing-column", Severity::error,
        "the first row has no column " + quoted_list(missing) + "; it has " + quoted_list(found),
        "measurement rows want the columns \"occurrenceID\" or \"catalogNumber\", "
        "\"measurementType\" and \"measurementValue\", and may have \"measurementUnit\"");
    return false;
  }

  std::string cell(CsvRow const& row, MeasurementColumn column) {
    if (!columns_[column] || *columns_[column] >= row.cells.size()) return {};
    return std::string{cleaner_.clean(row.cells[*columns_[column]], row.line)};
  }

  void reject(CsvRow const& row, std::string_view code, std::string_view message) {
    if (on_reject_) on_reject_({row.line, code, message, row.raw});
  }

  void read_row(CsvRow const& row) {
    auto const occurrence = cell(row, kOccurrence);
    auto const number = cell(row, kNumber);
    auto const type = cell(row, kType);
    auto value = cell(row, kValue);
    if (occurrence.empty() && number.empty()) {
      return reject(row, "no-id", "the row names no specimen");
    }
    if (type.empty()) return reject(row, "no-type", "the row does not say what was measured");
    auto& group =
        occurrence.empty() ? table_.by_number_[number] : table_.by_occurrence_[occurrence];
    if (group.first_line == 0) group.first_line = row.line;
    ++group.rows;
    ++table_.rows_;
    if (value.empty()) return;  // not recorded
    auto const key = term_key(type);
    if (is_one_of(kStorageTypes, key)) {
      if (group.storage.empty()) group.storage = std::move(value);
      return;
    }
    CharacterHeader header{type, ""};
    if (!any_type_ && !characters_.find(type, header)) {
      unknown_types_.emplace(type, row.line);
      return;
    }
    auto unit = cell(row, kUnit);
    if (unit.empty()) unit = header.unit;
    group.observations.push_back(
        {header.character, std::move(value), std::move(unit), row.line, 0});
  }

  void report_unknown_types() {
    if (unknown_types_.empty()) return;
    std::vector<std::string> types;
    for (auto const& [type, line] : unknown_types_) types.push_back(type);
    std::string remedy = "measurementType wants the id or label of a character of the lexicon";
    for (auto const& type : types) {
      if (auto const near = characters_.near(type); !near.empty()) {
        remedy = "did you mean \"" + near + "\" by \"" + type + "\"?";
        break;
      }
    }
    add("unknown-type", Severity::information,
        "these types are not characters of the lexicon and were not used: " + quoted_list(types),
        std::move(remedy));
  }

  ByteStream& stream_;
  std::string name_;
  CharacterColumns characters_;
  bool any_type_;
  std::function<void(Reject const&)> const& on_reject_;
  std::array<std::optional<std::size_t>, kRowTerms.size()> columns_;
  CellCleaner cleaner_;
  std::map<std::string, std::uint64_t> unknown_types_;
  std::vector<Finding> findings_;
  MeasurementTable table_;
};

void MeasurementTable::add_to(Specimen& specimen) {
  auto const take = [&specimen](Groups& groups, std::string const& id) {
    auto const found = id.empty() ? groups.end() : groups.find(id);
    if (found == groups.end()) return;
    auto& group = found->second;
    group.used = true;
    specimen.observations.insert(specimen.observations.end(), group.observations.begin(),
                                 group.observations.end());
    if (specimen.storage.empty()) specimen.storage = group.storage;
  };
  take(by_occurrence_, specimen.occurrence_id);
  take(by_number_, specimen.catalog_number);
}

std::vector<Finding> MeasurementTable::findings_on_unused() const {
  struct Unused {
    std::uint64_t line;
    std::string_view id;
    std::size_t rows;
  };
  std::vector<Unused> unused;
  for (auto const* groups : {&by_occurrence_, &by_number_}) {
    for (auto const& [id, group] : *groups) {
      if (!group.used) unused.push_back({group.first_line, id, group.rows});
    }
  }
  std::sort(unused.begin(), unused.end(),
            [](Unused const& a, Unused const& b) { return a.line < b.line; });
  std::vector<Finding> findings;
  std::size_t further = 0;
  for (auto const& item : unused) {
    if (findings.size() == kUnusedListed) {
      ++further;
      continue;
    }
    Finding finding;
    finding.code = "unknown-id";
    finding.severity = Severity::warning;
    finding.file = file_;
    finding.place.line = static_cast<std::uint32_t>(item.line);
    finding.printed = std::string{item.id};
    finding.message = "no specimen is called \"" + std::string{item.id} + "\"; its " +
                      (item.rows == 1 ? "row was" : std::to_string(item.rows) + " rows were") +
                      " not used";
    finding.remedy = "check the id against the table of specimens";
    findings.push_back(std::move(finding));
  }
  if (further > 0) {
    findings.back().message += ", nor were those of " + std::to_string(further) + " further ids";
  }
  return findings;
}

Loaded<MeasurementTable> read_measurements(ByteStream& stream, std::string_view name,
                                           MeasurementOptions const& options,
                                           std::function<void(Reject const&)> const& on_reject) {
  return MeasurementReader{stream, name, options, on_reject}.read();
}

}  // namespace keydrift

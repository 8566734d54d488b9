#include "keydrift/formats/side_table.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/headed_rows.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift::tables {
namespace {

constexpr std::size_t kPrintedBytes = 80;

std::vector<std::string_view> required_names(std::span<WantedColumn const> wanted) {
  std::vector<std::string_view> names;
  for (auto const& column : wanted) {
    if (column.required) names.push_back(column.name);
  }
  return names;
}

class TableReader {
 public:
  TableReader(std::string_view file, std::string_view what, std::span<WantedColumn const> wanted,
              std::vector<Finding>& findings)
      : file_{file}, what_{what}, wanted_{wanted}, findings_{findings} {
    for (auto const& column : wanted) names_.push_back(column.name);
  }

  SideTable read(std::string_view text) {
    auto const stream = stream_of(text);
    CsvReader reader{*stream, {.known_column = [this](std::string_view name) {
                       return wanted_of(column_key(name)) < wanted_.size();
                     }}};
    SideTable table;
    table.present.assign(wanted_.size(), false);
    auto const on_header = [&](CsvRow const& row) {
      read_header(row, table);
      return true;
    };
    // A table without a header has no rows, and no columns: who asked for it says so.
    (void)tables::read_headed_rows(
        reader, on_header, [&](CsvRow const& row) { table.rows.push_back(side_row(row)); },
        [this](Reject const& reject) { report(reject); });
    auto remarks = reader.remarks(file_);
    std::move(remarks.begin(), remarks.end(), std::back_inserter(findings_));
    return table;
  }

 private:
  std::size_t wanted_of(std::string const& key) const {
    auto const found =
        std::find_if(wanted_.begin(), wanted_.end(),
                     [&](WantedColumn const& column) { return column_key(column.name) == key; });
    return static_cast<std::size_t>(found - wanted_.begin());
  }

  Finding& add(std::string code, Severity severity, Place place, std::string message,
               std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = std::string{file_};
    finding.place = place;
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    findings_.push_back(std::move(finding));
    return findings_.back();
  }

  void report(Reject const& reject) {
    auto& finding =
        add(std::string{reject.code}, Severity::error,
            {.line = static_cast<std::uint32_t>(reject.line)}, std::string{reject.message},
            reject.code == "too-many-cells" ? "put cells that hold a separator in quotation marks"
                                            : "mend the row");
    finding.printed = std::string{reject.raw.substr(0, kPrintedBytes)};
  }

  void read_header(CsvRow const& row, SideTable& table) {
    column_.assign(wanted_.size(), row.cells.size());
    std::vector<std::string> found;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      auto const name = trimmed(row.cells[i]);
      found.emplace_back(name);
      if (name.empty()) continue;
      auto const wanted = wanted_of(column_key(name));
      if (wanted == wanted_.size()) {
        report_unknown(name, place_of(row, i));
      } else if (table.present[wanted]) {
        add("duplicate-column", Severity::error, place_of(row, i),
            "the column \"" + std::string{name} + "\" stands here a second time",
            "remove or rename one of the two");
      } else {
        table.present[wanted] = true;
        column_[wanted] = i;
      }
    }
    report_missing(row, table, found);
  }

  void report_unknown(std::string_view name, Place place) {
    auto const nearest = nearest_word(name, names_);
    add("unknown-column", nearest.empty() ? Severity::information : Severity::warning, place,
        "the column \"" + std::string{name} + "\" is not one of a " + std::string{what_} +
            "; it was not read",
        nearest.empty() ? "its columns are " + quoted_list(names_)
                        : "did you mean \"" + nearest + "\"?");
  }

  void report_missing(CsvRow const& row, SideTable const& table,
                      std::vector<std::string> const& found) {
    std::vector<std::string_view> missing;
    for (std::size_t i = 0; i < wanted_.size(); ++i) {
      if (wanted_[i].required && !table.present[i]) missing.push_back(wanted_[i].name);
    }
    if (missing.empty()) return;
    add("missing-column", Severity::error, place_of(row, 0),
        "the first row has no column " + quoted_list(missing) + "; it has " + quoted_list(found),
        "a " + std::string{what_} + " wants the columns " + quoted_list(required_names(wanted_)) +
            " named in its first row");
  }

  SideRow side_row(CsvRow const& row) const {
    SideRow out;
    out.place = place_of(row, 0);
    out.place.end = row.offset + row.raw.size();
    for (std::size_t const at : column_) {
      bool const there = at < row.cells.size();
      out.cells.emplace_back(there ? trimmed(unguarded(trimmed(row.cells[at]))) : "");
      out.places.push_back(there ? place_of(row, at) : out.place);
    }
    return out;
  }

  std::string_view file_;
  std::string_view what_;
  std::span<WantedColumn const> wanted_;
  std::vector<Finding>& findings_;
  std::vector<std::string_view> names_;
  std::vector<std::size_t> column_;  // of each wanted column; past the end when missing
};

Finding not_a_table(std::string_view file, std::string_view what,
                    std::span<WantedColumn const> wanted) {
  Finding finding;
  finding.code = "not-a-table";
  finding.file = std::string{file};
  finding.message = "this is a JSON file, not a " + std::string{what};
  finding.remedy = "a " + std::string{what} + " is a CSV file with the columns " +
                   quoted_list(required_names(wanted));
  return finding;
}

}  // namespace

Loaded<SideTable> read_side_table(Source source, std::string_view what,
                                  std::span<WantedColumn const> wanted) {
  Loaded<SideTable> loaded;
  auto decoded = decode_text(source);
  loaded.findings = std::move(decoded.findings);
  if (!decoded) return loaded;
  if (file_kind(source.bytes) == FileKind::json) {
    loaded.findings.push_back(not_a_table(source.name, what, wanted));
    return loaded;
  }
  TableReader reader{source.name, what, wanted, loaded.findings};
  auto table = reader.read(decoded.value->text);
  sort_findings(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = std::move(table);
  return loaded;
}

bool has_error(std::span<Finding const> findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](Finding const& finding) { return finding.severity == Severity::error; });
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kNoBreakSpace = "\xC2\xA0";
  constexpr std::string_view kBlanks = " \t\r\n\f\v";
  for (;;) {
    auto const before = text.size();
    text.remove_prefix(std::min(text.find_first_not_of(kBlanks), text.size()));
    if (text.substr(0, 2) == kNoBreakSpace) text.remove_prefix(2);
    while (!text.empty() && kBlanks.find(text.back()) != std::string_view::npos) {
      text.remove_suffix(1);
    }
    if (text.size() >= 2 && text.substr(text.size() - 2) == kNoBreakSpace) text.remove_suffix(2);
    if (text.size() == before) return text;
  }
}

}  // namespace keydrift::tables

#include "keydrift/formats/occurrences.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/occurrence_columns.hpp"
#include "keydrift/formats/occurrence_rows.hpp"
#include "keydrift/formats/occurrence_worker.hpp"
#include "keydrift/formats/repeated_numbers.hpp"
#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {

using namespace tables;

struct OccurrenceReader::State {
  State(ByteStream& from, std::string_view table, OccurrenceOptions&& given)
      : stream{from},
        name{table},
        options{std::move(given)},
        columns{table, options},
        csv{from,
            {.separator = options.form != nullptr ? options.form->separator : '\0',
             .quote = options.form != nullptr ? options.form->quote : '"',
             .skip_lines = options.form != nullptr && options.form->header_lines > 1
                               ? options.form->header_lines - 1
                               : 0,
             .known_column = [this](std::string_view header) { return columns.is_known(header); },
             .maximum_row_bytes = options.maximum_row_bytes,
             .least_columns = options.form != nullptr ? options.form->file_columns : 0}},
        numbers{options.numbers_remembered},
        rows{options, columns.targets()} {}

  // The columns as declared; a header row, if there is one, tells how many the file has.
  bool take_form() {
    std::vector<std::string_view> const names{options.form->columns.begin(),
                                              options.form->columns.end()};
    CsvRow declared;
    declared.line = 1;
    declared.cells = names;
    if (!columns.read_header(declared, found)) return false;
    if (options.form->header_lines > 0) (void)csv.next();
    return true;
  }

  // The first row; false: it is no header that will do.
  bool read_header() {
    if (options.form != nullptr) return take_form();
    for (;;) {
      auto const next = csv.next();
      if (next == CsvReader::Next::row) break;
      if (auto failure = stream.failure()) {
        found.push_back(std::move(*failure));
      } else if (next == CsvReader::Next::end) {
        found.push_back(finding_in(name, "empty-file", Severity::error, 1,
                                   "the file holds nothing but blanks",
                                   "check that this is the right file and that it was saved"));
      } else {
        found.push_back(finding_in(
            name, std::string{csv.reject().code}, Severity::error, csv.reject().line,
            "the header cannot be read: " + std::string{csv.reject().message},
            "check that this is a table with the names of its columns in the first row"));
      }
      return false;
    }
    return columns.read_header(csv.row(), found);
  }

  bool start() {
    if (started) return !failed;
    started = true;
    failed = !read_header();
    return !failed;
  }

  // True: the table was read to its end.
  bool ended() {
    if (auto failure = stream.failure()) {
      found.push_back(std::move(*failure));
      failed = true;
    }
    return !failed;
  }

  Next next() {
    if (!start()) return Next::failed;
    auto const step = csv.next();
    if (step == CsvReader::Next::end) return ended() ? Next::end : Next::failed;
    ++counts.rows;
    if (step == CsvReader::Next::reject) {
      ++counts.rejected;
      rejected = csv.reject();
      return Next::reject;
    }
    auto const& row = csv.row();
    specimen = &rows.read(row.cells, row.line);
    if (options.join != nullptr) options.join->add_to(*specimen);
    if (OccurrenceRows::is_void(*specimen)) {
      ++counts.rejected;
      rejected = {row.line, kNothingUsable, kNothingUsableWords, row.raw};
      return Next::reject;
    }
    ++counts.specimens;
    rows.count(*specimen);
    auto const& number = rows.number();
    if (!number.empty() && numbers.meet(RepeatedNumbers::fingerprint(number), specimen->line)) {
      numbers.take(specimen->catalog_number.empty() ? specimen->occurrence_id
                                                    : specimen->catalog_number);
    }
    if (options.measurements != nullptr) options.measurements->add_to(*specimen);
    return Next::specimen;
  }

  NextBlock next_block(OccurrenceBlock& block, std::size_t bytes) {
    if (!start()) return NextBlock::failed;
    block.first_place = counts.rows;
    if (!csv.next_block(block.csv, bytes)) return ended() ? NextBlock::end : NextBlock::failed;
    counts.rows += block.csv.rows.size();
    counts.rejected += block.csv.rejects.size();
    return NextBlock::block;
  }

  // When no further row comes.
  void end_numbers() {
    if (numbers_ended) return;
    numbers_ended = true;
    numbers_failed = numbers.finish();
    counts.repeated_numbers = numbers.count();
    for (auto const& [id, first_line, line] : numbers.first()) {
      repeated.push_back(
          {.id = id, .first_file = name, .first_line = first_line, .file = name, .line = line});
      found.push_back(finding_in(name, "repeated-number", Severity::information, line,
                                 "\"" + id + "\" stands in line " + std::to_string(first_line) +
                                     " already; both rows are used",
                                 "check whether it is one specimen"));
      found.back().printed = id;
    }
  }

  std::vector<Finding> all_findings() const {
    auto all = found;
    if (numbers_failed) {
      all.push_back(*numbers_failed);
      return all;
    }
    auto const append = [&all](std::vector<Finding> const& more) {
      all.insert(all.end(), more.begin(), more.end());
    };
    auto const remark = [&](std::string code, Severity severity, std::uint64_t line,
                            std::string message, std::string remedy) {
      all.push_back(
          finding_in(name, std::move(code), severity, line, std::move(message), std::move(remedy)));
    };
    if (failed) return all;
    append(csv.remarks(name));
    append(rows.remarks(name));
    if (counts.repeated_numbers > RepeatedNumbers::kListed) {
      remark("repeated-number", Severity::information, 1,
             std::to_string(counts.repeated_numbers - RepeatedNumbers::kListed) +
                 " further rows repeat a number",
             "");
    }
    if (started && counts.rows == 0) {
      remark("no-specimens", Severity::warning, 1, "the table has a header but no rows",
             "check that this is the right file");
    }
    if (options.measurements != nullptr) append(options.measurements->findings_on_unused());
    return all;
  }

  ByteStream& stream;
  std::string name;
  OccurrenceOptions options;
  OccurrenceColumns columns;
  CsvReader csv;
  RepeatedNumbers numbers;
  OccurrenceRows rows;
  bool started{false};
  bool failed{false};
  Specimen* specimen{};
  Reject rejected;
  OccurrenceCounts counts;
  bool numbers_ended{false};
  std::optional<Finding> numbers_failed;
  std::vector<RepeatedId> repeated;
  std::vector<Finding> found;
};

OccurrenceReader::OccurrenceReader(ByteStream& stream, std::string_view name,
                                   OccurrenceOptions options)
    : state_{std::make_unique<State>(stream, name, std::move(options))} {}
OccurrenceReader::~OccurrenceReader() = default;

OccurrenceReader::Next OccurrenceReader::next() { return state_->next(); }
Specimen const& OccurrenceReader::specimen() const { return *state_->specimen; }
Reject const& OccurrenceReader::reject() const { return state_->rejected; }
OccurrenceCounts const& OccurrenceReader::counts() const {
  state_->end_numbers();
  state_->counts.without_name = state_->rows.without_name();
  return state_->counts;
}

std::vector<RepeatedId> const& OccurrenceReader::repeats() const {
  state_->end_numbers();
  return state_->repeated;
}

bool OccurrenceReader::start() { return state_->start(); }
std::unique_ptr<OccurrenceWorker> OccurrenceReader::worker() const {
  return std::unique_ptr<OccurrenceWorker>{new OccurrenceWorker{
      std::make_unique<OccurrenceWorker::State>(state_->options, state_->columns.targets())}};
}
OccurrenceReader::NextBlock OccurrenceReader::next_block(OccurrenceBlock& block,
                                                         std::size_t bytes) {
  return state_->next_block(block, bytes);
}
bool OccurrenceReader::meet_number(std::uint64_t number, std::uint64_t line) {
  return state_->numbers.meet(number, line);
}
void OccurrenceReader::take_number(std::string const& number) { state_->numbers.take(number); }
void OccurrenceReader::absorb(OccurrenceWorker const& worker) {
  state_->rows.absorb(worker.state_->rows);
  state_->counts.specimens += worker.state_->specimens;
  state_->counts.rejected += worker.state_->rejected;
}
std::vector<Finding> OccurrenceReader::findings() const {
  state_->end_numbers();
  return state_->all_findings();
}

Loaded<OccurrenceCounts> read_occurrences(ByteStream& stream, std::string_view name,
                                          OccurrenceOptions const& options,
                                          std::function<void(Specimen const&)> const& on_specimen,
                                          std::function<void(Reject const&)> const& on_reject) {
  Loaded<OccurrenceCounts> loaded;
  OccurrenceReader reader{stream, name, options};
  for (;;) {
    switch (reader.next()) {
      case OccurrenceReader::Next::specimen:
        if (on_specimen) on_specimen(reader.specimen());
        break;
      case OccurrenceReader::Next::reject:
        if (on_reject) on_reject(reader.reject());
        break;
      case OccurrenceReader::Next::end:
        loaded.findings = reader.findings();
        if (!has_error(loaded.findings)) loaded.value = reader.counts();
        return loaded;
      case OccurrenceReader::Next::failed:
        loaded.findings = reader.findings();
        return loaded;
    }
  }
}

}  // namespace keydrift

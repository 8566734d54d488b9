#include "keydrift/formats/occurrences.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/cell_text.hpp"
#include "keydrift/formats/darwin_core.hpp"
#include "keydrift/formats/occurrence_columns.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {

using namespace tables;

namespace {

using Target = OccurrenceTarget;

constexpr std::string_view kItemSeparator = "|";  // Darwin Core lists: space, bar, space
constexpr std::size_t kRepeatsListed = 20;

enum class Answer { yes, no, unclear };
Answer read_answer(std::string_view cell) {
  constexpr std::array<std::string_view, 5> kYes{"true", "yes", "1", "y", "x"};
  constexpr std::array<std::string_view, 5> kNo{"", "false", "no", "0", "n"};
  auto const word = column_key(cell);
  if (std::find(kYes.begin(), kYes.end(), word) != kYes.end()) return Answer::yes;
  return std::find(kNo.begin(), kNo.end(), word) != kNo.end() ? Answer::no : Answer::unclear;
}

Finding finding_in(std::string const& table, std::string code, Severity severity,
                   std::uint64_t line, std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = table;
  finding.place.line = static_cast<std::uint32_t>(std::min<std::uint64_t>(line, UINT32_MAX));
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

}  // namespace

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
        seen{options.numbers_remembered} {}

  Next fail() {
    failed = true;
    return Next::failed;
  }

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

  Next next() {
    if (failed) return Next::failed;
    if (!started) {
      started = true;
      if (!read_header()) return fail();
    }
    auto const step = csv.next();
    if (step == CsvReader::Next::end) {
      if (auto failure = stream.failure()) {
        found.push_back(std::move(*failure));
        return fail();
      }
      return Next::end;
    }
    ++counts.rows;
    if (step == CsvReader::Next::reject) {
      ++counts.rejected;
      rejected = csv.reject();
      return Next::reject;
    }
    fill(csv.row());
    if (options.join != nullptr) options.join->add_to(specimen);
    if (is_void()) {
      ++counts.rejected;
      auto const& row = csv.row();
      rejected = {row.line, "nothing-usable",
                  "the row has neither a name nor a number nor a character", row.raw};
      return Next::reject;
    }
    ++counts.specimens;
    if (specimen.scientific_name.empty() && counts.without_name++ == 0) {
      first_nameless_line = specimen.line;
    }
    watch_number();
    if (options.measurements != nullptr) options.measurements->add_to(specimen);
    return Next::specimen;
  }

  bool is_void() const {
    return specimen.scientific_name.empty() && specimen.catalog_number.empty() &&
           specimen.occurrence_id.empty() && specimen.observations.empty();
  }

  void fill(CsvRow const& row) {
    specimen.line = row.line;
    specimen.voucher = options.all_are_vouchers;
    specimen.storage.clear();
    specimen.remarks.clear();
    if (options.join != nullptr) {
      // The row before may have had these from another table.
      for (auto const member :
           {&Specimen::scientific_name, &Specimen::authorship, &Specimen::qualifier,
            &Specimen::identified_by, &Specimen::date_identified,
            &Specimen::identification_references, &Specimen::type_status}) {
        (specimen.*member).clear();
      }
    }
    institution.clear();
    collection.clear();
    std::size_t places = 0;
    std::size_t observations = 0;
    for (auto const& target : columns.targets()) {
      auto cell = target.column < row.cells.size()
                      ? cleaner.clean(row.cells[target.column], row.line)
                      : std::string_view{};
      if (cell.empty() && options.form != nullptr) cell = options.form->defaults[target.column];
      switch (target.kind) {
        case Target::Kind::text:
          if (target.member == &Specimen::remarks) {
            add_remark(cell);
          } else {
            (specimen.*target.member).assign(cell);
          }
          break;
        case Target::Kind::place:
          if (!cell.empty()) slot(specimen.places, places++).assign(cell);
          break;
        case Target::Kind::places:
          for_each_item(
              cell, [&](std::string_view item) { slot(specimen.places, places++).assign(item); });
          break;
        case Target::Kind::voucher:
          read_voucher(cell, row.line);
          break;
        case Target::Kind::institution:
          institution.assign(cell);
          break;
        case Target::Kind::collection:
          collection.assign(cell);
          break;
        case Target::Kind::observation:
          if (cell.empty()) break;
          observe(slot(specimen.observations, observations++), target, cell, row.line);
          break;
      }
    }
    specimen.places.resize(places);
    specimen.observations.resize(observations);
  }

  // Elements are reused, so that their strings keep their memory.
  template <class Value>
  static Value& slot(std::vector<Value>& values, std::size_t at) {
    if (at == values.size()) values.emplace_back();
    return values[at];
  }

  static void observe(Observation& observation, Target const& target, std::string_view cell,
                      std::uint64_t line) {
    observation.character.assign(target.character.character);
    observation.value.assign(cell);
    observation.unit.assign(target.character.unit);
    observation.line = line;
    observation.column = static_cast<std::uint32_t>(target.column + 1);
  }

  void add_remark(std::string_view cell) {
    if (cell.empty()) return;
    if (!specimen.remarks.empty()) specimen.remarks += "; ";
    specimen.remarks += cell;
  }

  template <class Use>
  static void for_each_item(std::string_view list, Use use) {
    while (!list.empty()) {
      auto const bar = std::min(list.find(kItemSeparator), list.size());
      auto item = list.substr(0, bar);
      while (!item.empty() && item.front() == ' ') item.remove_prefix(1);
      while (!item.empty() && item.back() == ' ') item.remove_suffix(1);
      if (!item.empty()) use(item);
      list.remove_prefix(std::min(bar + 1, list.size()));
    }
  }

  void read_voucher(std::string_view cell, std::uint64_t line) {
    if (cell.empty()) return;
    auto const answer = read_answer(cell);
    if (answer == Answer::yes) specimen.voucher = true;
    if (answer == Answer::unclear && unclear_vouchers++ == 0) {
      first_unclear_line = line;
      first_unclear_word = std::string{cell};
    }
  }

  void watch_number() {
    number.assign(institution);
    number += '\x1F';
    number += collection;
    number += '\x1F';
    bool const numbered = !specimen.catalog_number.empty();
    auto const& id = numbered ? specimen.catalog_number : specimen.occurrence_id;
    if (id.empty()) return;
    number += numbered ? 'n' : 'o';
    number += id;
    auto const first = seen.line_of_first(number, specimen.line);
    if (first == 0) return;
    if (++counts.repeated_numbers > kRepeatsListed) return;
    found.push_back(finding_in(
        name, "repeated-number", Severity::information, specimen.line,
        "\"" + id + "\" stands in line " + std::to_string(first) + " already; both rows are used",
        "check whether it is one specimen"));
    found.back().printed = id;
  }

  std::vector<Finding> all_findings() const {
    auto all = found;
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
    append(cleaner.remarks(name));
    if (counts.repeated_numbers > kRepeatsListed) {
      remark("repeated-number", Severity::information, 1,
             std::to_string(counts.repeated_numbers - kRepeatsListed) +
                 " further rows repeat a number",
             "");
    }
    if (seen.overflowed()) {
      remark("repeated-number", Severity::information, 1,
             "only the first " + std::to_string(options.numbers_remembered) +
                 " numbers were watched for repeats",
             "");
    }
    if (counts.without_name > 0) {
      remark("no-name", Severity::information, first_nameless_line,
             std::to_string(counts.without_name) +
                 (counts.without_name == 1 ? " specimen has" : " specimens have") + " no name",
             "");
    }
    if (unclear_vouchers > 0) {
      remark("unclear-voucher", Severity::warning, first_unclear_line,
             "\"" + first_unclear_word + "\" does not say whether this is a voucher" +
                 (unclear_vouchers == 1
                      ? std::string{}
                      : ", nor do " + std::to_string(unclear_vouchers - 1) + " further cells"),
             "write true or false");
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
  SeenKeys seen;
  CellCleaner cleaner;
  bool started{false};
  bool failed{false};
  Specimen specimen;
  std::string institution;
  std::string collection;
  std::string number;
  Reject rejected;
  OccurrenceCounts counts;
  std::uint64_t first_nameless_line{};
  std::uint64_t unclear_vouchers{};
  std::uint64_t first_unclear_line{};
  std::string first_unclear_word;
  std::vector<Finding> found;
};

OccurrenceReader::OccurrenceReader(ByteStream& stream, std::string_view name,
                                   OccurrenceOptions options)
    : state_{std::make_unique<State>(stream, name, std::move(options))} {}
OccurrenceReader::~OccurrenceReader() = default;

OccurrenceReader::Next OccurrenceReader::next() { return state_->next(); }
Specimen const& OccurrenceReader::specimen() const { return state_->specimen; }
Reject const& OccurrenceReader::reject() const { return state_->rejected; }
OccurrenceCounts const& OccurrenceReader::counts() const { return state_->counts; }
std::vector<Finding> OccurrenceReader::findings() const { return state_->all_findings(); }

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
        loaded.value = reader.counts();
        [[fallthrough]];
      case OccurrenceReader::Next::failed:
        loaded.findings = reader.findings();
        return loaded;
    }
  }
}

}  // namespace keydrift

#include "keydrift/formats/darwin_join.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <utility>

#include "keydrift/formats/cell_text.hpp"
#include "keydrift/formats/wording.hpp"
#include "keydrift/formats/written_day.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::tables {
namespace {

constexpr char kBetween = '\x1F';  // cells are cleaned of control characters

constexpr std::array<std::string_view, 9> kIdentificationTerms{
    "scientificname", "scientificnameauthorship", "identificationqualifier",
    "identifiedby",   "dateidentified",           "identificationreferences",
    "typestatus",     "identificationremarks",    "isacceptedidentification"};
constexpr std::array<std::string_view, 3> kMeasurementTerms{"measurementtype", "measurementvalue",
                                                            "measurementunit"};

// FNV-1a, 64 bits (Fowler, Noll, Vo; offset and prime from memory): the same on every machine.
std::uint64_t hash_of(std::string_view id) {
  std::uint64_t hash = 0xCBF29CE484222325U;
  for (char const c : id) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3U;
  }
  return hash;
}

// Cuts off the front up to the next separator.
std::string_view take(std::string_view& rest) {
  auto const end = std::min(rest.find(kBetween), rest.size());
  auto const cell = rest.substr(0, end);
  rest.remove_prefix(std::min(end + 1, rest.size()));
  return cell;
}

std::uint64_t number_in(std::string_view text) {
  std::uint64_t value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

Finding finding_of_join(std::string file, std::string code, Severity severity, std::uint64_t line,
                        std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = std::move(file);
  finding.place.line = static_cast<std::uint32_t>(std::min<std::uint64_t>(line, UINT32_MAX));
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

std::size_t columns_of(MetaTable const& table) {
  std::size_t columns = table.id ? *table.id + 1 : 0;
  for (auto const& field : table.fields) {
    if (field.index) columns = std::max(columns, *field.index + 1);
  }
  return columns;
}

// The rows of a table whose form meta.xml declares.
class Rows {
 public:
  Rows(ByteStream& stream, MetaTable const& table)
      : stream_{stream},
        reader_{stream,
                {.separator = table.separator,
                 .quote = table.quote.value_or('\0'),
                 .skip_lines = table.header_lines > 1 ? table.header_lines - 1 : 0,
                 .least_columns = columns_of(table)}},
        header_{table.header_lines > 0} {}

  template <class Use, class Set>
  bool each(Use use, Set set_aside) {
    for (auto next = reader_.next(); next != CsvReader::Next::end; next = reader_.next()) {
      if (next == CsvReader::Next::reject) {
        set_aside(reader_.reject());
      } else if (!std::exchange(header_, false)) {
        use(reader_.row());
      }
    }
    return !stream_.failure().has_value();
  }

 private:
  ByteStream& stream_;
  CsvReader reader_;
  bool header_;
};

// "2013" and "2013-08" begin on the first day; "" where nothing is known.
std::string beginning_of(std::string_view date) {
  auto const first = date.substr(0, date.find('/'));
  auto iso = read_day(first).iso;
  if (iso.size() == 4) iso += "-01";
  if (iso.size() == 7) iso += "-01";
  return iso;
}

}  // namespace

struct DarwinJoin::Determination {
  std::array<std::string_view, kIdentificationTerms.size()> cells;
  [[nodiscard]] std::string_view name() const { return cells[0]; }
  [[nodiscard]] std::string_view date() const { return cells[4]; }
  [[nodiscard]] bool accepted() const { return cells[8] == "true" || cells[8] == "1"; }
};

DarwinJoin::DarwinJoin(std::vector<std::string> const& characters)
    : characters_{characters}, any_type_{characters.empty()} {}

bool DarwinJoin::add_core(ByteStream& stream, std::string const& name, MetaTable const& table,
                          std::size_t part) {
  CellCleaner cleaner;
  Rows rows{stream, table};
  bool const sound = rows.each(
      [&](CsvRow const& row) {
        if (*table.id >= row.cells.size()) return;
        auto const id = cleaner.clean(row.cells[*table.id], row.line);
        if (id.empty()) return;
        std::string payload = std::to_string(core_key(part, row.line));
        payload += kBetween;
        payload += id;
        core_.add(hash_of(id), payload);
      },
      [](Reject const&) {});
  if (!sound) findings_.push_back(*stream.failure());
  core_files_.resize(std::max(core_files_.size(), part + 1));
  core_files_[part] = name;
  return sound && check(core_);
}

bool DarwinJoin::add_extension(ByteStream& stream, std::string const& name, MetaTable const& table,
                               std::function<void(Reject const&)> const& on_reject) {
  bool const determinations = table.row_type == "Identification";
  if (determinations && !counts_.history) counts_.history.emplace();
  auto const column_of = [&](std::string_view term) -> MetaField const* {
    for (auto const& field : table.fields) {
      if (term_key(field.term) == term) return &field;
    }
    return nullptr;
  };
  std::vector<MetaField const*> wanted;
  if (determinations) {
    for (auto const term : kIdentificationTerms) wanted.push_back(column_of(term));
  } else {
    for (auto const term : kMeasurementTerms) wanted.push_back(column_of(term));
  }
  auto const file = std::to_string(files_.size());
  files_.push_back(name);
  CellCleaner cleaner;
  Rows rows{stream, table};
  std::string payload;
  bool const sound = rows.each(
      [&](CsvRow const& row) {
        auto const cell = [&](std::size_t column) {
          return column < row.cells.size() ? cleaner.clean(row.cells[column], row.line)
                                           : std::string_view{};
        };
        std::string const id{table.id ? cell(*table.id) : std::string_view{}};
        payload = id;
        payload += kBetween;
        payload += determinations ? 'I' : 'M';
        payload += file;
        payload += kBetween;
        payload += std::to_string(row.line);
        for (auto const* field : wanted) {
          payload += kBetween;
          if (field == nullptr) continue;
          auto const value = field->index ? cell(*field->index) : std::string_view{};
          payload += value.empty() ? std::string_view{field->default_value} : value;
        }
        extensions_.add(hash_of(id), payload);
      },
      [&](Reject const& reject) {
        if (on_reject) on_reject(reject);
      });
  if (!sound) findings_.push_back(*stream.failure());
  return sound && check(extensions_);
}

bool DarwinJoin::check(SpillSort const& sort) {
  auto failure = sort.failure();
  if (!failure) return true;
  if (findings_.empty() || findings_.back().code != failure->code) {
    findings_.push_back(std::move(*failure));
  }
  return false;
}

bool DarwinJoin::join() {
  core_.sort();
  extensions_.sort();
  if (!check(core_) || !check(extensions_)) return false;
  // Ids of one hash: nearly always a single one.
  struct Id {
    std::string id;
    std::uint64_t key;
  };
  std::vector<Id> ids;
  std::uint64_t hash_of_ids = 0;
  SpillSort::Record core;
  bool more_core = core_.next(core);
  // The next hash of the core.
  auto const gather = [&] {
    ids.clear();
    hash_of_ids = core.key;
    while (more_core && core.key == hash_of_ids) {
      auto rest = core.payload;
      auto const key = number_in(take(rest));
      auto const known =
          std::find_if(ids.begin(), ids.end(), [&](Id const& one) { return one.id == rest; });
      if (known == ids.end()) {
        ids.push_back({std::string{rest}, key});
      } else {
        note_repeat(rest, known->key, key);
      }
      more_core = core_.next(core);
    }
  };
  // The ids of this hash, or of a greater one.
  auto const gather_up_to = [&](std::uint64_t hash) {
    while (more_core && (ids.empty() || hash_of_ids < hash)) gather();
    if (!more_core && hash_of_ids < hash) ids.clear();
  };
  SpillSort::Record row;
  while (extensions_.next(row)) {
    gather_up_to(row.key);
    auto rest = row.payload;
    auto const id = take(rest);
    auto const found =
        std::find_if(ids.begin(), ids.end(), [&](Id const& one) { return one.id == id; });
    if (found != ids.end() && hash_of_ids == row.key) {
      joined_.add(found->key, rest);
      continue;
    }
    auto const file = number_in(take(rest).substr(1));
    auto const line = number_in(take(rest));
    if (orphans_++ == 0 ||
        std::pair{file, line} < std::pair<std::uint64_t, std::uint64_t>{
                                    number_in(first_orphan_file_), first_orphan_line_}) {
      first_orphan_ = std::string{id};
      first_orphan_file_ = std::to_string(file);
      first_orphan_line_ = line;
    }
  }
  while (more_core) gather();
  for (auto& [key, repeat] : repeats_) counts_.repeats.push_back(std::move(repeat));
  repeats_.clear();
  joined_.sort();
  if (!check(core_) || !check(extensions_) || !check(joined_)) return false;
  more_ = joined_.next(at_);
  core_ = SpillSort{};
  extensions_ = SpillSort{};
  return true;
}

void DarwinJoin::note_repeat(std::string_view id, std::uint64_t first, std::uint64_t key) {
  ++counts_.repeated_ids;
  constexpr std::size_t kTold = 20;
  auto const last = repeats_.empty() ? 0 : repeats_.rbegin()->first;
  if (repeats_.size() == kTold && key > last) return;
  constexpr std::uint64_t kLine = (std::uint64_t{1} << 40U) - 1;
  repeats_.emplace(key,
                   RepeatedId{.id = std::string{id},
                              .first_file = core_files_[static_cast<std::size_t>(first >> 40U)],
                              .first_line = first & kLine,
                              .file = core_files_[static_cast<std::size_t>(key >> 40U)],
                              .line = key & kLine});
  if (repeats_.size() > kTold) repeats_.erase(std::prev(repeats_.end()));
}

void DarwinJoin::add_to(Specimen& specimen) {
  auto const key = core_key(part_, specimen.line);
  while (more_ && at_.key < key) more_ = joined_.next(at_);
  std::vector<std::string> payloads;
  while (more_ && at_.key == key) {
    payloads.emplace_back(at_.payload);
    more_ = joined_.next(at_);
  }
  if (payloads.empty()) return;
  std::vector<Determination> history;
  for (auto const& payload : payloads) {
    std::string_view rest = payload;
    auto const kind = take(rest);
    if (kind.front() == 'M') {
      measure(specimen, rest);
      continue;
    }
    (void)take(rest);  // the line
    Determination one;
    for (auto& cell : one.cells) cell = take(rest);
    history.push_back(one);
  }
  if (!history.empty()) choose(specimen, history);
}

void DarwinJoin::choose(Specimen& specimen, std::vector<Determination> const& history) {
  if (history.size() > 1) ++counts_.history->several;
  Determination const* chosen = nullptr;
  std::string latest;
  auto const take_latest_of = [&](auto wanted) {
    chosen = nullptr;
    for (auto const& one : history) {
      if (one.name().empty() || !wanted(one)) continue;
      auto date = beginning_of(one.date());
      if (chosen != nullptr && date < latest) continue;
      chosen = &one;
      latest = std::move(date);
    }
    return chosen != nullptr;
  };
  auto const use = [&](Determination const& one) {
    specimen.scientific_name.assign(one.cells[0]);
    specimen.authorship.assign(one.cells[1]);
    specimen.qualifier.assign(one.cells[2]);
    specimen.identified_by.assign(one.cells[3]);
    specimen.date_identified.assign(one.cells[4]);
    specimen.identification_references.assign(one.cells[5]);
  };
  if (take_latest_of([](Determination const& one) { return one.accepted(); })) {
    ++counts_.history->accepted;
    use(*chosen);
  } else if (!specimen.scientific_name.empty()) {
    ++counts_.history->by_core;
    if (take_latest_of(
            [&](Determination const& one) { return one.name() == specimen.scientific_name; })) {
      auto const fill = [](std::string& into, std::string_view from) {
        if (into.empty()) into.assign(from);
      };
      fill(specimen.authorship, chosen->cells[1]);
      fill(specimen.qualifier, chosen->cells[2]);
      fill(specimen.identified_by, chosen->cells[3]);
      fill(specimen.date_identified, chosen->cells[4]);
      fill(specimen.identification_references, chosen->cells[5]);
    }
  } else if (take_latest_of([](Determination const&) { return true; })) {
    ++counts_.history->latest;
    use(*chosen);
  }
  for (auto const& one : history) {
    if (specimen.type_status.empty()) specimen.type_status.assign(one.cells[6]);
  }
}

void DarwinJoin::measure(Specimen& specimen, std::string_view rest) {
  auto const line = number_in(take(rest));
  auto const type = take(rest);
  auto const value = take(rest);
  auto const unit = take(rest);
  if (type.empty() || value.empty()) return;
  auto const key = term_key(type);
  if (is_one_of(kStorageTypes, key)) {
    if (specimen.storage.empty()) specimen.storage.assign(value);
    return;
  }
  CharacterHeader header{std::string{type}, ""};
  if (!any_type_ && !characters_.find(type, header)) {
    if (unknown_types_.size() < 1000) unknown_types_.emplace(type, line);
    return;
  }
  specimen.observations.push_back({.character = header.character,
                                   .value = std::string{value},
                                   .unit = unit.empty() ? header.unit : std::string{unit},
                                   .line = line,
                                   .column = 0});
}

std::vector<Finding> DarwinJoin::findings() const {
  auto all = findings_;
  if (auto failure = joined_.failure()) all.push_back(std::move(*failure));
  if (counts_.repeated_ids > 0 && !counts_.repeats.empty()) {
    auto const& one = counts_.repeats.front();
    auto const more = counts_.repeated_ids - 1;
    all.push_back(finding_of_join(
        one.file, "repeated-occurrence", Severity::warning, one.line,
        in_quotes(one.id) + " is the id of line " + std::to_string(one.first_line) +
            (one.first_file == one.file ? "" : " of " + one.first_file) + " already" +
            (more == 0   ? ""
             : more == 1 ? ", and 1 further row repeats an id"
                         : ", and " + std::to_string(more) + " further rows repeat ids") +
            "; all rows are used, and what extensions say goes to the first of an id",
        "check whether it is one specimen, and give each an id of its own"));
    all.back().printed = one.id;
  }
  if (orphans_ > 0) {
    all.push_back(
        finding_of_join(files_[static_cast<std::size_t>(number_in(first_orphan_file_))],
                        "unknown-id", Severity::warning, first_orphan_line_,
                        "the core has no row " + in_quotes(first_orphan_) +
                            (orphans_ == 1 ? ""
                                           : ", nor the ids of " + std::to_string(orphans_ - 1) +
                                                 " further rows of extensions") +
                            "; what they say was not used",
                        "check whether the core is complete"));
  }
  if (!unknown_types_.empty()) {
    std::vector<std::string> types;
    for (auto const& [type, line] : unknown_types_) types.push_back(type);
    if (types.size() > 20) types.resize(20);
    all.push_back(finding_of_join(
        files_.empty() ? "" : files_.back(), "unknown-type", Severity::information, 1,
        "these types are not characters of the lexicon and were not used: " + quoted_list(types),
        "measurementType wants the id or label of a character of the lexicon"));
  }
  return all;
}

}  // namespace keydrift::tables

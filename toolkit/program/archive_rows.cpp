#include "keydrift/program/archive_rows.hpp"

#include <cstring>

#include "keydrift/reports/worklist_html.hpp"

namespace keydrift::program {
namespace {

constexpr std::size_t kBlock = std::size_t{1} << 20;

// A sheet: its size in bytes, then this, then its CSV row and its line of the page.
struct SheetHead {
  std::uint32_t group{};  // a number of its redeterminer
  std::uint32_t rank{};   // types, vouchers, others
  std::uint32_t csv_bytes{};
};

template <class Value>
void append_bytes(std::string& out, Value const& value) {
  out.append(reinterpret_cast<char const*>(&value), sizeof value);
}

template <class Value>
Value take_bytes(std::string_view& bytes) {
  Value value;
  std::memcpy(&value, bytes.data(), sizeof value);
  bytes.remove_prefix(sizeof value);
  return value;
}

std::string group_key(std::string_view storage, std::string_view question) {
  std::string key{storage};
  key += '\x1F';
  key += question;
  return key;
}

// Text on its way into a file, or nowhere.
class Flow {
 public:
  explicit Flow(OutputFile* file) : file_{file} {}
  [[nodiscard]] std::string& text() { return text_; }
  void pass(bool all = false) {
    if (text_.size() < kBlock && !all) return;
    if (file_ != nullptr) file_->write(text_);
    text_.clear();
  }

 private:
  OutputFile* file_;
  std::string text_;
};

}  // namespace

void RowTexts::clear() {
  specimens.clear();
  sheets.clear();
  rejects.clear();
  rows = 0;
}

RowWriter::OfVerdict& RowWriter::cells_of(std::size_t verdict) {
  auto const [at, fresh] = cells_.try_emplace(verdict);
  if (fresh && wanted_.specimens) {
    at->second.specimen = verdict_cells(redeterminer_.verdict(verdict), comparison_.old_edition(),
                                        comparison_.new_edition());
  }
  return at->second;
}

void RowWriter::write(Specimen const& specimen, Redeterminer::Counted const& counted,
                      RowTexts& texts) {
  if (!wants(counted)) return;
  auto& cells = cells_of(counted.verdict);
  if (wanted_.specimens) {
    auto const& use = editions_.of(specimen.identification_references, specimen.date_identified);
    auto& edition = edition_cells_[{use.edition, use.basis}];
    if (edition.empty()) edition = edition_cells(use, editions_.labels());
    append_specimen_row(texts.specimens, specimen, redeterminer_.new_names(counted.verdict),
                        cells.specimen, edition);
  }
  if (!counted.look || !wanted_.sheets()) return;
  if (!cells.has_sheet) {
    auto const& verdict = redeterminer_.verdict(counted.verdict);
    cells.sheet = work_cells(verdict, comparison_.new_edition());
    cells.boxes = answer_boxes(verdict);
    cells.has_sheet = true;
  }
  row_.clear();
  line_.clear();
  if (wanted_.worklist) append_work_row(row_, specimen, cells.sheet);
  if (wanted_.worklist_page) append_work_line(line_, specimen, cells.boxes);
  SheetHead const head{.group = static_cast<std::uint32_t>(counted.group),
                       .rank = !specimen.type_status.empty() ? 0U
                               : specimen.voucher            ? 1U
                                                             : 2U,
                       .csv_bytes = static_cast<std::uint32_t>(row_.size())};
  append_bytes(texts.sheets, static_cast<std::uint32_t>(sizeof head + row_.size() + line_.size()));
  append_bytes(texts.sheets, head);
  texts.sheets += row_;
  texts.sheets += line_;
}

void RowWriter::reject(Reject const& reject, RowTexts& texts) {
  redeterminer_.count_rejected(1);
  if (!wanted_.rejects) return;
  auto const line = std::to_string(reject.line);
  std::array<std::string_view, 4> const cells{line, reject.code, reject.message, reject.raw};
  append_csv_row(texts.rejects, cells);
}

void WorklistSheets::add(std::string_view records, std::uint32_t source) {
  std::string payload;
  while (!records.empty()) {
    auto const size = take_bytes<std::uint32_t>(records);
    payload.clear();
    append_bytes(payload, source);
    payload += records.substr(0, size);
    spool_.add(records_++, payload);
    records.remove_prefix(size);
  }
}

void WorklistSheets::name_groups(std::uint32_t source, std::vector<Redeterminer::GroupName> names) {
  if (groups_.size() <= source) groups_.resize(source + 1);
  groups_[source] = std::move(names);
}

std::optional<Finding> WorklistSheets::write(Comparison const& comparison,
                                             Redetermination const& result, OutputFile* csv,
                                             OutputFile* page) {
  std::unordered_map<std::string, std::uint64_t> ordinals;
  for (auto const& group : result.worklist) {
    ordinals.emplace(group_key(group.storage, group.question), ordinals.size());
  }
  std::vector<std::vector<std::uint64_t>> ordinal_of(groups_.size());
  for (std::size_t source = 0; source < groups_.size(); ++source) {
    for (auto const& name : groups_[source]) {
      ordinal_of[source].push_back(ordinals.at(group_key(name.storage, name.question)));
    }
  }
  SpillSort sorted;
  spool_.sort();
  SpillSort::Record record;
  while (spool_.next(record)) {
    auto payload = record.payload;
    auto const source = take_bytes<std::uint32_t>(payload);
    SheetHead head;
    std::memcpy(&head, payload.data(), sizeof head);
    sorted.add(ordinal_of[source][head.group] << 2 | head.rank, payload);
  }
  if (auto failure = spool_.failure()) return failure;
  sorted.sort();

  Flow rows{csv};
  Flow lines{page};
  auto const& new_edition = comparison.new_edition();
  rows.text() += worklist_csv_header();
  lines.text() += worklist_html_begin(comparison.old_edition(), new_edition, result);
  std::optional<std::uint64_t> at;
  while (sorted.next(record)) {
    auto const ordinal = record.key >> 2;
    if (at != ordinal) {
      auto const& group = result.worklist[ordinal];
      if (at) append_group_end(lines.text());
      append_group_begin(lines.text(), new_edition, result, group,
                         !at || result.worklist[*at].storage != group.storage);
      at = ordinal;
    }
    auto payload = record.payload;
    auto const head = take_bytes<SheetHead>(payload);
    rows.text() += payload.substr(0, head.csv_bytes);
    lines.text() += payload.substr(head.csv_bytes);
    rows.pass();
    lines.pass();
  }
  if (auto failure = sorted.failure()) return failure;
  if (at) append_group_end(lines.text());
  lines.text() += worklist_html_end();
  rows.pass(true);
  lines.pass(true);
  return std::nullopt;
}

}  // namespace keydrift::program

#include "keydrift/program/archive_rows.hpp"

#include "keydrift/key/spill/bytes.hpp"
#include "keydrift/reports/worklist_html.hpp"

namespace keydrift::program {
namespace {

constexpr std::size_t kBlock = std::size_t{1} << 20;
constexpr std::size_t kCellBytesKept = std::size_t{3} << 20;

// A record of a sheet: this, then its CSV row and its line of the page.
struct SheetHead {
  Fingerprint group{};   // its id
  std::uint32_t rank{};  // types, vouchers, others
  std::uint32_t csv_bytes{};
};

SheetHead head_of(std::string_view record) { return ByteReader{record}.raw<SheetHead>(); }

// A group's place in the worklist.
struct GroupOrdinal {
  Fingerprint id{};
  std::uint64_t ordinal{};
};

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

RowWriter::OfVerdict& RowWriter::cells_of(std::size_t verdict, bool look) {
  // Numbers of verdicts may have lost their meaning, or there are too many to keep them all.
  if (cell_bytes_ > kCellBytesKept || forgotten_ != redeterminer_.forgotten()) {
    cells_.clear();
    cell_bytes_ = 0;
    forgotten_ = redeterminer_.forgotten();
  }
  auto const [at, fresh] = cells_.try_emplace(verdict);
  auto& cells = at->second;
  bool const wants_sheet = look && wanted_.sheets() && !cells.has_sheet;
  if (!fresh && !wants_sheet) return cells;
  auto const told = redeterminer_.verdict(verdict);
  auto const& new_edition = comparison_.new_edition();
  if (fresh && wanted_.specimens) {
    cells.new_names = redeterminer_.new_names(told);
    cells.specimen = verdict_cells(told, comparison_.old_edition(), new_edition);
  }
  if (wants_sheet) {
    cells.has_sheet = true;
    cells.sheet = work_cells(told, new_edition);
    cells.boxes = answer_boxes(told);
  }
  cell_bytes_ += sizeof cells + cells.new_names.size() + cells.specimen.places.size() +
                 cells.sheet.question.size() + cells.boxes.size();
  return cells;
}

void RowWriter::write(Specimen const& specimen, Redeterminer::Counted const& counted,
                      RowTexts& texts) {
  if (!wants(counted)) return;
  auto& cells = cells_of(counted.verdict, counted.look);
  if (wanted_.specimens) {
    auto const& use = editions_.of(specimen.identification_references, specimen.date_identified);
    auto& edition = edition_cells_[{use.edition, use.basis}];
    if (edition.empty()) edition = edition_cells(use, editions_.labels());
    append_specimen_row(texts.specimens, specimen, cells.new_names, cells.specimen, edition);
  }
  if (!counted.look || !wanted_.sheets()) return;
  row_.clear();
  line_.clear();
  if (wanted_.worklist) append_work_row(row_, specimen, cells.sheet);
  if (wanted_.worklist_page) append_work_line(line_, specimen, cells.boxes);
  SheetHead const head{.group = counted.group,
                       .rank = !specimen.type_status.empty() ? 0U
                               : specimen.voucher            ? 1U
                                                             : 2U,
                       .csv_bytes = static_cast<std::uint32_t>(row_.size())};
  ByteWriter writer{texts.sheets};
  writer.number(sizeof head + row_.size() + line_.size());
  writer.raw(head);
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

void WorklistSheets::add(std::string_view records) {
  ByteReader reader{records};
  while (!reader.rest().empty()) {
    auto const record = reader.text();
    spool_.add(head_of(record).group.high, record);
  }
}

std::optional<Finding> WorklistSheets::write(Comparison const& comparison,
                                             Redetermination const& result, OutputFile* csv,
                                             OutputFile* page) {
  SpillSort sorted{kMemory};  // by the places of their groups, then by rank
  SpillSort::Record record;
  {
    auto spool = std::move(spool_);  // gone when the sheets know their places
    SpillSort places{kMemory};
    std::uint64_t ordinal = 0;
    std::string place;
    for (auto const& group : result.worklist) {
      place.clear();
      ByteWriter{place}.raw(GroupOrdinal{group.id, ordinal++});
      places.add(group.id.high, place);
    }
    places.sort();
    spool.sort();
    std::vector<GroupOrdinal> met;  // groups of one upper half: nearly always one
    SpillSort::Record group;
    bool more = places.next(group);
    while (spool.next(record)) {
      while (more && group.key <= record.key) {
        auto const one = ByteReader{group.payload}.raw<GroupOrdinal>();
        if (!met.empty() && met.front().id.high != one.id.high) met.clear();
        met.push_back(one);
        more = places.next(group);
      }
      auto const head = head_of(record.payload);
      for (auto const& one : met) {
        if (one.id == head.group) sorted.add(one.ordinal << 2 | head.rank, record.payload);
      }
    }
    if (auto failure = spool.failure()) return failure;
    if (auto failure = places.failure()) return failure;
  }
  sorted.sort();

  Flow rows{csv};
  Flow lines{page};
  auto const& new_edition = comparison.new_edition();
  rows.text() += worklist_csv_header();
  lines.text() += worklist_html_begin(comparison.old_edition(), new_edition, result);
  std::optional<std::uint64_t> at;
  std::string storage;  // of the group at hand
  while (sorted.next(record)) {
    auto const ordinal = record.key >> 2;
    if (at != ordinal) {
      auto const group = result.worklist[ordinal];
      if (at) append_group_end(lines.text());
      append_group_begin(lines.text(), new_edition, result, group, !at || storage != group.storage);
      at = ordinal;
      storage = group.storage;
    }
    ByteReader reader{record.payload};
    auto const head = reader.raw<SheetHead>();
    rows.text() += reader.rest().substr(0, head.csv_bytes);
    lines.text() += reader.rest().substr(head.csv_bytes);
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

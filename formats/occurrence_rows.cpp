#include "keydrift/formats/occurrence_rows.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "keydrift/formats/wording.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::tables {
namespace {

using Target = OccurrenceTarget;

constexpr std::string_view kItemSeparator = "|";  // Darwin Core lists: space, bar, space

// Elements are reused, so that their strings keep their memory.
template <class Value>
Value& slot(std::vector<Value>& values, std::size_t at) {
  if (at == values.size()) values.emplace_back();
  return values[at];
}

void observe(Observation& observation, Target const& target, std::string_view cell,
             std::uint64_t line) {
  observation.character.assign(target.character.character);
  observation.value.assign(cell);
  observation.unit.assign(target.character.unit);
  observation.line = line;
  observation.column = static_cast<std::uint32_t>(target.column + 1);
}

template <class Use>
void for_each_item(std::string_view list, Use use) {
  while (!list.empty()) {
    auto const bar = std::min(list.find(kItemSeparator), list.size());
    auto item = list.substr(0, bar);
    while (!item.empty() && item.front() == ' ') item.remove_prefix(1);
    while (!item.empty() && item.back() == ' ') item.remove_suffix(1);
    if (!item.empty()) use(item);
    list.remove_prefix(std::min(bar + 1, list.size()));
  }
}

}  // namespace

VoucherAnswer voucher_answer(std::string_view cell) {
  constexpr std::array<std::string_view, 5> kYes{"true", "yes", "1", "y", "x"};
  constexpr std::array<std::string_view, 5> kNo{"", "false", "no", "0", "n"};
  auto const word = column_key(cell);
  if (is_one_of(kYes, word)) return VoucherAnswer::yes;
  return is_one_of(kNo, word) ? VoucherAnswer::no : VoucherAnswer::unclear;
}

std::vector<std::string> list_items(std::string_view list) {
  std::vector<std::string> items;
  for_each_item(list, [&](std::string_view item) { items.emplace_back(item); });
  return items;
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

void OccurrenceRows::Counted::add(std::uint64_t line, std::string_view word) {
  if (rows++ > 0) return;
  first_line = line;
  first_word.assign(word);
}

void OccurrenceRows::Counted::absorb(Counted const& other) {
  if (other.rows > 0 && (rows == 0 || other.first_line < first_line)) {
    first_line = other.first_line;
    first_word = other.first_word;
  }
  rows += other.rows;
}

Specimen& OccurrenceRows::read(std::span<std::string_view const> cells, std::uint64_t line) {
  specimen_.line = line;
  specimen_.voucher = options_.all_are_vouchers;
  specimen_.storage.clear();
  specimen_.region.clear();
  specimen_.remarks.clear();
  if (options_.join != nullptr) {
    // The row before may have had these from another table.
    for (auto const member :
         {&Specimen::scientific_name, &Specimen::authorship, &Specimen::qualifier,
          &Specimen::identified_by, &Specimen::date_identified,
          &Specimen::identification_references, &Specimen::type_status}) {
      (specimen_.*member).clear();
    }
  }
  institution_.clear();
  collection_.clear();
  std::size_t places = 0;
  std::size_t observations = 0;
  for (auto const& target : targets_) {
    auto cell = target.column < cells.size() ? cleaner_.clean(cells[target.column], line)
                                             : std::string_view{};
    if (cell.empty() && options_.form != nullptr) cell = options_.form->defaults[target.column];
    switch (target.kind) {
      case Target::Kind::text:
        if (target.member == &Specimen::remarks) {
          add_remark(cell);
        } else {
          (specimen_.*target.member).assign(cell);
        }
        break;
      case Target::Kind::place:
        if (cell.empty()) break;
        slot(specimen_.places, places++).assign(cell);
        if (target.region) {
          if (!specimen_.region.empty()) specimen_.region += kWithin;
          specimen_.region += cell;
        }
        break;
      case Target::Kind::places:
        for_each_item(
            cell, [&](std::string_view item) { slot(specimen_.places, places++).assign(item); });
        break;
      case Target::Kind::voucher:
        read_voucher(cell, line);
        break;
      case Target::Kind::institution:
        institution_.assign(cell);
        break;
      case Target::Kind::collection:
        collection_.assign(cell);
        break;
      case Target::Kind::observation:
        if (cell.empty()) break;
        observe(slot(specimen_.observations, observations++), target, cell, line);
        break;
    }
  }
  specimen_.places.resize(places);
  specimen_.observations.resize(observations);
  return specimen_;
}

bool OccurrenceRows::is_void(Specimen const& specimen) {
  return specimen.scientific_name.empty() && specimen.catalog_number.empty() &&
         specimen.occurrence_id.empty() && specimen.observations.empty();
}

std::string const& OccurrenceRows::number() {
  bool const numbered = !specimen_.catalog_number.empty();
  auto const& id = numbered ? specimen_.catalog_number : specimen_.occurrence_id;
  number_.clear();
  if (id.empty()) return number_;
  number_ += institution_;
  number_ += '\x1F';
  number_ += collection_;
  number_ += '\x1F';
  number_ += numbered ? 'n' : 'o';
  number_ += id;
  return number_;
}

void OccurrenceRows::count(Specimen const& specimen) {
  count_coded(!specimen.scientific_name.empty(), specimen.line);
}

void OccurrenceRows::count_coded(bool named, std::uint64_t line) {
  if (!named) without_name_.add(line);
}

void OccurrenceRows::add_remark(std::string_view cell) {
  if (cell.empty()) return;
  if (!specimen_.remarks.empty()) specimen_.remarks += "; ";
  specimen_.remarks += cell;
}

void OccurrenceRows::read_voucher(std::string_view cell, std::uint64_t line) {
  if (cell.empty()) return;
  auto const answer = voucher_answer(cell);
  if (answer == VoucherAnswer::yes) specimen_.voucher = true;
  if (answer == VoucherAnswer::unclear) unclear_vouchers_.add(line, cell);
}

void OccurrenceRows::absorb(OccurrenceRows const& other) {
  without_name_.absorb(other.without_name_);
  unclear_vouchers_.absorb(other.unclear_vouchers_);
  cleaner_.absorb(other.cleaner_);
}

std::vector<Finding> OccurrenceRows::remarks(std::string const& table) const {
  auto all = cleaner_.remarks(table);
  if (without_name_.rows > 0) {
    all.push_back(finding_in(table, "no-name", Severity::information, without_name_.first_line,
                             std::to_string(without_name_.rows) +
                                 (without_name_.rows == 1 ? " specimen has" : " specimens have") +
                                 " no name",
                             ""));
  }
  if (unclear_vouchers_.rows > 0) {
    all.push_back(finding_in(
        table, "unclear-voucher", Severity::warning, unclear_vouchers_.first_line,
        "\"" + unclear_vouchers_.first_word + "\" does not say whether this is a voucher" +
            (unclear_vouchers_.rows == 1
                 ? std::string{}
                 : ", nor do " + std::to_string(unclear_vouchers_.rows - 1) + " further cells"),
        "write true or false"));
  }
  return all;
}

}  // namespace keydrift::tables

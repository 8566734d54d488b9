#include "keydrift/redetermination/from_to_rows.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kRowsKept = 4096;
constexpr std::size_t kRowsSortMemory = std::size_t{4} << 20;

// The first bytes of a name as a number that sorts as they do.
std::uint64_t beginning_of(std::string_view name) {
  std::uint64_t number = 0;
  for (std::size_t i = 0; i < sizeof number; ++i) {
    number = number << 8 | (i < name.size() ? static_cast<unsigned char>(name[i]) : 0U);
  }
  return number;
}

std::string_view without_names(std::string_view payload) {
  payload.remove_prefix(payload.find('\0') + 1);
  payload.remove_prefix(payload.find('\0') + 1);
  return payload;
}

FromTo row_of(std::string_view payload) {
  FromTo row;
  auto const end = payload.find('\0');
  row.from = payload.substr(0, end);
  row.to = payload.substr(end + 1, payload.find('\0', end + 1) - end - 1);
  ByteReader reader{without_names(payload)};
  for (auto& count : row.by_outcome) count = reader.number();
  row.specimens = reader.number();
  return row;
}

// Both names, each with a zero behind it, so that bytes sort as the names do; then the counts.
std::string payload_of(FromTo const& row) {
  std::string payload = row.from;
  payload += '\0';
  payload += row.to;
  payload += '\0';
  ByteWriter writer{payload};
  for (auto const count : row.by_outcome) writer.number(count);
  writer.number(row.specimens);
  return payload;
}

}  // namespace

FromToRows::FromToRows() : sorted_{kRowsSortMemory, SpillOrder::key_then_payload} {}

void FromToRows::add(std::string const& from, std::string const& to, Outcome outcome,
                     std::uint64_t specimens) {
  auto& row = rows_[{from, to}];
  row.by_outcome[static_cast<std::size_t>(outcome)] += specimens;
  row.specimens += specimens;
  if (rows_.size() >= kRowsKept) settle();
}

void FromToRows::settle() {
  for (auto& [names, row] : rows_) {
    row.from = names.first;
    row.to = names.second;
    sorted_.add(beginning_of(row.from), payload_of(row));
  }
  rows_.clear();
}

std::optional<Finding> FromToRows::finish(StoredList<FromTo>& rows) {
  settle();
  sorted_.sort();
  SpillSort by_specimens{kRowsSortMemory};
  std::optional<FromTo> sum;
  auto const pass_on = [&] {
    if (sum) by_specimens.add(~sum->specimens, payload_of(*sum));
  };
  SpillSort::Record record;
  while (sorted_.next(record)) {
    auto row = row_of(record.payload);
    if (sum && sum->from == row.from && sum->to == row.to) {
      for (std::size_t i = 0; i < kOutcomes; ++i) sum->by_outcome[i] += row.by_outcome[i];
      sum->specimens += row.specimens;
      continue;
    }
    pass_on();
    sum = std::move(row);
  }
  pass_on();
  by_specimens.sort();
  while (by_specimens.next(record)) rows.push_back(row_of(record.payload));
  if (auto failure = sorted_.failure()) return failure;
  return by_specimens.failure();
}

}  // namespace keydrift

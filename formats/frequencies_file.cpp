#include "keydrift/formats/frequencies_file.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <utility>

#include "keydrift/formats/side_table.hpp"

namespace keydrift {

using namespace tables;

namespace {

enum FrequencyColumn : std::size_t { kCountedTaxon, kCount };
constexpr std::array kFrequencyColumns{WantedColumn{"taxon", true}, WantedColumn{"count", true}};

std::optional<double> count_in_cell(std::string_view cell) {
  double value = -1;
  auto const [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  bool const whole = error == std::errc{} && end == cell.data() + cell.size();
  return whole && std::isfinite(value) && value >= 0 ? std::optional{value} : std::nullopt;
}

}  // namespace

Loaded<FrequencyTable> read_frequencies(Source source) {
  Loaded<FrequencyTable> loaded;
  auto table = read_side_table(source, "table of frequencies", kFrequencyColumns);
  loaded.findings = std::move(table.findings);
  if (!table) return loaded;
  FrequencyTable frequencies{.name = std::string{source.name}, .rows = {}};
  auto const refuse = [&](std::string code, Place const& place, std::string printed,
                          std::string message, std::string remedy) {
    loaded.findings.push_back({.code = std::move(code),
                               .severity = Severity::error,
                               .file = frequencies.name,
                               .place = place,
                               .printed = std::move(printed),
                               .message = std::move(message),
                               .remedy = std::move(remedy),
                               .related = {}});
  };
  for (auto const& row : table.value->rows) {
    auto const& taxon = row.cells[kCountedTaxon];
    auto const& cell = row.cells[kCount];
    auto const count = count_in_cell(cell);
    if (taxon.empty()) {
      refuse("missing-name", row.places[kCountedTaxon], "",
             "the row has no name in the column \"taxon\"", "name the taxon that is counted");
    } else if (!count) {
      refuse("bad-count", row.places[kCount], cell,
             cell.empty() ? "the row of \"" + taxon + "\" has no count"
                          : "\"" + cell + "\" is no count",
             "write a number of 0 or more, with a point before decimals");
    } else {
      frequencies.rows.push_back({taxon, *count, row.place});
    }
  }
  sort_findings(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = std::move(frequencies);
  return loaded;
}

}  // namespace keydrift

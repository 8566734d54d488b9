#include "keydrift/reports/summaries_csv.hpp"

#include <numeric>

#include "keydrift/reports/csv_cell.hpp"

namespace keydrift {

using namespace reports;
namespace {

using Totals = std::array<std::uint64_t, kOutcomes>;

void add_row(std::string& out, std::string_view by, std::string_view from, std::string_view to,
             Totals const& totals) {
  CsvRowWriter row{out};
  row.cell(by).cell(from).cell(to).cell(
      std::to_string(std::accumulate(totals.begin(), totals.end(), std::uint64_t{0})));
  for (auto const count : totals) row.cell(std::to_string(count));
}

}  // namespace

void write_summaries_csv(Redetermination const& redetermination, TextSink const& sink) {
  std::string out;
  {
    CsvRowWriter row{out};
    row.cell("by").cell("from").cell("to").cell("specimens");
    for (std::size_t i = 0; i < kOutcomes; ++i) row.cell(to_word(static_cast<Outcome>(i)));
  }
  for (auto const& row : redetermination.from_to) {
    add_row(out, "name", row.from, row.to, row.by_outcome);
    constexpr std::size_t kPassedOn = std::size_t{256} << 10;
    if (out.size() < kPassedOn) continue;
    sink(out);
    out.clear();
  }
  for (auto const& [unit, totals] : redetermination.by_storage) {
    add_row(out, "storage", unit, "", totals);
  }
  for (auto const& [unit, totals] : redetermination.by_person) {
    add_row(out, "determiner", unit, "", totals);
  }
  for (auto const& [unit, totals] : redetermination.by_decade) {
    add_row(out, "decade", unit, "", totals);
  }
  for (auto const& [unit, totals] : redetermination.by_collector) {
    add_row(out, "collector", unit, "", totals);
  }
  for (auto const& [unit, totals] : redetermination.by_region) {
    add_row(out, "region", unit, "", totals);
  }
  sink(out);
}

}  // namespace keydrift

#include "keydrift/formats/printed_counts_behind.hpp"

#include <charconv>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

// "Aus" of "Aus (4)", read as a group that is keyed on at couplet 4.
std::optional<std::string_view> name_before_count(ReadLead const& read) {
  if (read.to.form != DestinationForm::couplet || read.to.remark.empty()) return std::nullopt;
  std::string_view const printed = read.lead.destination_printed;
  auto const count = "(" + read.to.number + ")";
  if (!printed.ends_with(count)) return std::nullopt;
  auto const name = trim_right(printed.substr(0, printed.size() - count.size()));
  if (name.empty() || name != read.to.remark) return std::nullopt;
  return name;
}

// 10 of "10a."; 0 where no digit stands first.
unsigned leading_number(std::string_view label) {
  unsigned number = 0;
  std::from_chars(label.data(), label.data() + label.size(), number);
  return number;
}

}  // namespace

void take_counts_behind(std::vector<ReadLead>& reads) {
  constexpr std::size_t kFewest = 2;
  constexpr std::size_t kOneIn = 4;  // of them, at the least, cannot be couplets
  std::vector<std::size_t> counted;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    if (name_before_count(reads[i])) counted.push_back(i);
  }
  std::size_t impossible = 0;
  for (auto const i : counted) {
    auto const own = leading_number(reads[i].lead.label);
    auto const to = leading_number(reads[i].to.number);
    if (to > 0 && to <= own) ++impossible;
  }
  if (impossible < kFewest || impossible * kOneIn < counted.size()) return;
  for (auto const i : counted) {
    auto& to = reads[i].to;
    auto figures = std::move(to.taxa.figures);
    to.taxa = read_taxa(*name_before_count(reads[i]));
    to.taxa.figures.insert(to.taxa.figures.end(), figures.begin(), figures.end());
    to.remark = to.taxa.remark.empty() ? to.number : to.taxa.remark + "; " + to.number;
    reads[i].lead.taxon_remark = to.remark;
    to.form = DestinationForm::taxa;
  }
}

}  // namespace keydrift::printed

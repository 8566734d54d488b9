#include "keydrift/taxa/frequencies.hpp"

#include <algorithm>

#include "keydrift/key/near.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kNamesShown = 5;

Finding finding_at(FrequencyTable const& table, FrequencyRow const& row, std::string code,
                   std::string message, std::string remedy) {
  return {.code = std::move(code),
          .severity = Severity::warning,
          .file = table.name,
          .place = row.place,
          .printed = row.taxon,
          .message = std::move(message),
          .remedy = std::move(remedy),
          .related = {}};
}

std::string named(Edition const& edition, std::vector<TaxonId> const& taxa) {
  std::vector<std::string> names;
  for (auto const taxon : taxa) names.push_back(in_quotes(edition[taxon].name));
  return in_prose(names, kNamesShown);
}

}  // namespace

TaxonWeights taxon_weights(Edition const& edition, NameIndex const& names,
                           FrequencyTable const& table) {
  TaxonWeights result;
  result.by_taxon.resize(edition.taxa.size());
  std::vector<char> spoken_of(edition.taxa.size(), 0);
  for (auto const& row : table.rows) {
    auto const placement = names.place(row.taxon);
    if (placement.taxa.size() == 1) {
      auto const taxon = placement.taxa.front();
      result.by_taxon[taxon.index] += row.count;
      spoken_of[taxon.index] = 1;
    } else if (placement.taxa.empty()) {
      auto remedy = did_you_mean(placement.near);
      if (remedy.empty()) remedy = "name the taxon as the key does, or leave the row out";
      result.findings.push_back(
          finding_at(table, row, "frequency-of-unknown-taxon",
                     in_quotes(row.taxon) + " does not key out, so its count is left aside",
                     std::move(remedy)));
    } else {
      result.findings.push_back(finding_at(
          table, row, "frequency-of-group",
          in_quotes(row.taxon) + " takes in " + std::to_string(placement.taxa.size()) +
              " taxa of the key, so its count is left aside: " + named(edition, placement.taxa),
          "give a count for each of them"));
    }
  }
  std::vector<TaxonId> without;
  for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
    if (spoken_of[t.index] == 0) without.push_back(t);
  }
  if (!without.empty()) {
    result.findings.push_back(
        {.code = "taxa-without-frequency",
         .severity = Severity::information,
         .file = table.name,
         .place = {},
         .printed = {},
         .message =
             (without.size() == 1
                  ? std::string{"one taxon of the key has no count and counts"}
                  : std::to_string(without.size()) + " taxa of the key have no count and count") +
             " as never met with: " + named(edition, without),
         .remedy = "add a row where that is not so",
         .related = {}});
  }
  return result;
}

}  // namespace keydrift

#include "edition_builder.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace keydrift::test {
namespace {

TaxonId taxon_of(Edition& edition, std::string const& name, Place const& place) {
  auto const found = std::find_if(edition.taxa.begin(), edition.taxa.end(),
                                  [&](Taxon const& taxon) { return taxon.name == name; });
  if (found != edition.taxa.end()) {
    return TaxonId{static_cast<std::uint32_t>(found - edition.taxa.begin())};
  }
  edition.taxa.push_back({.name = name, .authorship = "", .place = place});
  return TaxonId{static_cast<std::uint32_t>(edition.taxa.size() - 1)};
}

std::vector<std::string> split(std::string const& text) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  for (;;) {
    auto const bar = text.find(" | ", begin);
    parts.push_back(text.substr(begin, bar == std::string::npos ? bar : bar - begin));
    if (bar == std::string::npos) return parts;
    begin = bar + 3;
  }
}

}  // namespace

Edition make_edition(std::string name, std::vector<CoupletSketch> const& couplets) {
  Edition edition;
  edition.name = std::move(name);
  std::map<std::string, CoupletId> labels;
  for (std::uint32_t i = 0; i < couplets.size(); ++i) labels.emplace(couplets[i].label, CoupletId{i});
  std::uint32_t line = 0;
  for (auto const& sketch : couplets) {
    Couplet couplet;
    couplet.label = sketch.label;
    char letter = 'a';
    for (auto const& lead_sketch : sketch.leads) {
      Lead lead;
      Place const place{.line = ++line, .column = 1, .begin = 0, .end = 0};
      lead.label = sketch.label + letter++;
      lead.text = lead_sketch.text;
      lead.place = place;
      lead.runs = {{.text_begin = 0, .place = place}};
      lead.destination_printed = lead_sketch.to;
      lead.destination_place = place;
      if (auto const found = labels.find(lead_sketch.to); found != labels.end()) {
        lead.destination = ToCouplet{found->second};
      } else if (lead_sketch.to.empty()) {
        lead.destination = Unresolved{};
      } else {
        ToTaxa taxa;
        for (auto const& taxon : split(lead_sketch.to)) {
          taxa.taxa.push_back(taxon_of(edition, taxon, place));
        }
        lead.destination = taxa;
      }
      couplet.leads.push_back(std::move(lead));
    }
    couplet.place = couplet.leads.empty() ? Place{} : couplet.leads.front().place;
    edition.couplets.push_back(std::move(couplet));
  }
  if (!edition.couplets.empty()) {
    edition.parts.push_back({.title = "", .start = CoupletId{0}, .place = {}});
  }
  return edition;
}

}  // namespace keydrift::test

#include "checks.hpp"

#include <cstdio>
#include <cstdlib>
#include <variant>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/numbers.hpp"
#include "keydrift/key/proof.hpp"

namespace keydrift::fuzz {

void expect(bool holds, char const* promise) {
  if (holds) return;
  std::fprintf(stderr, "broken promise: %s\n", promise);
  std::abort();
}

void check_findings(std::vector<Finding> const& findings) {
  for (auto const& finding : findings) {
    expect(!finding.code.empty() && !finding.message.empty(), "a finding has a code and a message");
    expect(finding.place.line >= 1 && finding.place.column >= 1, "places are 1-based");
    expect(finding.place.begin <= finding.place.end, "places are half-open ranges");
    expect(!to_text(finding).empty(), "a finding can be shown");
  }
}

void check_edition(Edition const& edition) {
  for (auto const& part : edition.parts) {
    expect(part.start.index < edition.couplets.size(), "a part starts at one of the couplets");
  }
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
        expect(to->couplet.index < edition.couplets.size(), "a lead leads to one of the couplets");
      }
      if (auto const* to = std::get_if<ToTaxa>(&lead.destination)) {
        expect(!to->taxa.empty(), "a lead to taxa has one");
        for (auto const taxon : to->taxa) {
          expect(taxon.index < edition.taxa.size(), "a lead leads to one of the taxa");
        }
      }
    }
  }
  auto const json = write_key_json(edition);
  auto const back = read_key_json({.name = "again.json", .bytes = json});
  expect(back.value.has_value(), "the interchange form can be read back");
  expect(same_content(edition, *back.value), "the interchange form keeps the content");

  auto read = edition;
  check_findings(read_statements(read, Lexicon{}));
  KeyGraph const graph{read};
  check_findings(proof_structure(read, graph));
  check_findings(proof_contrast(read, graph));
  if (auto const numbers = key_numbers(read, graph)) {
    expect(!numbers->longest_route || numbers->shortest_route <= *numbers->longest_route,
           "routes have a length");
  }
}

}  // namespace keydrift::fuzz

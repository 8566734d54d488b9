#pragma once
// Two editions of an invented key to freshwater crustaceans, and results on them written by hand:
// what the reports are tried on.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/edition_proof.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/redetermination/keyout.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/reports/json.hpp"

namespace keydrift::test {

struct Sample {
  Edition old_edition;  // 1968
  Edition new_edition;  // 2003
  EditionProof proof;   // of the old edition
  Collation collation;
  Redetermination redetermination;
  Specimen specimen;
  KeyOut keyout;  // of the specimen, through the new edition
};

[[nodiscard]] Sample make_sample();

// The id of the taxon of that name.
[[nodiscard]] TaxonId taxon(Edition const& edition, std::string_view name);
[[nodiscard]] LeadId lead(std::uint32_t couplet, std::uint32_t ordinal);
[[nodiscard]] Finding finding(std::string code, Severity severity, std::string file,
                              std::uint32_t line, std::string printed, std::string message,
                              std::string remedy);

// Fills in the redetermination, the specimen and its way; the rest is there already.
void add_archive(Sample& sample);

// The whole of what a report passes on: whole_text([&](TextSink const& sink) { write_…(…, sink);
// }).
template <class Write>
[[nodiscard]] std::string whole_text(Write const& write) {
  std::string text;
  write([&text](std::string_view some) { text += some; });
  return text;
}
[[nodiscard]] inline std::string json_of_redetermination(Sample const& sample) {
  return whole_text([&](TextSink const& sink) {
    write_redetermination_json(sample.old_edition, sample.new_edition, sample.collation,
                               sample.redetermination, sink);
  });
}

}  // namespace keydrift::test

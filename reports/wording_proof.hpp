#pragma once
// The words of a proof that all media share.  Internal to reports.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/edition_proof.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::reports {

// One severity: "Errors", "error", "errors".
struct FindingGroup {
  Severity severity;
  std::string_view heading;
  std::string_view singular;
  std::string_view plural;
};
[[nodiscard]] std::span<FindingGroup const> finding_groups();  // errors first

// The findings of one severity, remarks on style aside.
[[nodiscard]] std::vector<Finding const*> of_severity(std::span<Finding const> findings,
                                                      Severity severity);
// "1 error, 2 warnings and 3 remarks on style.", "Nothing was found wrong."
[[nodiscard]] std::string finding_counts(std::span<Finding const> findings);

// "by A. Nomen; region Halvern Basin; life stage adult"
[[nodiscard]] std::string scope_in_words(Edition const& edition);

struct Figure {
  std::string what;
  std::string number;
  unsigned level{0};  // beneath the one of the level above
};
struct FigureGroup {
  std::string heading;
  std::vector<std::string> before;  // sentences
  std::vector<Figure> figures;
  std::string after;
};
// Where what a figure goes by was published.
struct FigureSource {
  std::string_view figure;     // its name in the JSON
  std::string_view reference;  // from memory, all of them: none was at hand
};
// Of the figures that the proof has.
[[nodiscard]] std::vector<FigureSource> figure_sources(EditionProof const& proof);

// What there is of them: the key in numbers, what must be seen, determinations that come out right.
[[nodiscard]] std::vector<FigureGroup> proof_figures(Edition const& edition,
                                                     EditionProof const& proof);

}  // namespace keydrift::reports

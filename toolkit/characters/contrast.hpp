#pragma once
// Proof findings that need characters: leads that do not contrast, ranges that overlap or gape,
// statements contradicted higher on the same route, exceptions for groups that do not key out
// below, words that leave a reader without an answer; on request, remarks on style.

#include <functional>
#include <span>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding_kinds.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift {

// Precondition: read_statements() was run on the edition.
[[nodiscard]] std::vector<Finding> proof_contrast(Edition const& edition, KeyGraph const& graph);
[[nodiscard]] std::span<FindingKind const> contrast_finding_kinds();
[[nodiscard]] std::span<FindingKind const> style_finding_kinds();

// What the checks can use beyond the edition.
struct ContrastOptions {
  // Labels for messages, and characters that the other lead's states make inapplicable; may be
  // nullptr.
  Lexicon const* lexicon{nullptr};
  // The terminals that a group named by an exception means (NameIndex::members).  When it is not
  // set, names are compared simply: genus and epithet, abbreviated genera allowed.
  std::function<std::vector<TaxonId>(std::string_view group)> members{};
  // Remarks on style as well (style_finding_kinds()): common practice that many good keys depart
  // from, all of them information.
  bool style{false};
};
// Cost grows with the size of the edition: exact where each couplet has one route, and where
// routes join never a false report.  The findings are in order of place.
[[nodiscard]] std::vector<Finding> proof_contrast(Edition const& edition, KeyGraph const& graph,
                                                  ContrastOptions const& options);

}  // namespace keydrift

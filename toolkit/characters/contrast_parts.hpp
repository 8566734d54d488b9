#pragma once
// The steps of proof_contrast; see contrast.hpp for what they add up to.

#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/contrast_values.hpp"

namespace keydrift::contrast {

struct ContrastContext {
  Edition const& edition;
  KeyGraph const& graph;
  ContrastOptions const& options;
  std::vector<Finding> findings{};
  std::unordered_map<std::string_view, LexiconCharacter const*> characters{};  // by id
  std::vector<char> dead_couplets{};  // by couplet: check_routes() found a dead lead in it

  // By id only: statements never name characters by label.  nullptr when the lexicon lacks it.
  [[nodiscard]] LexiconCharacter const* character(std::string_view id) const {
    auto const found = characters.find(id);
    return found == characters.end() ? nullptr : found->second;
  }
  [[nodiscard]] std::string lead(LeadId id) const { return lead_name(edition, id); }
  // The severity is that of contrast_finding_kinds() unless another one is given.
  Finding& report(std::string_view code, Severity severity, Statement const& statement,
                  std::string message, std::string remedy);
};

[[nodiscard]] inline std::string quoted(std::string_view words) {
  std::string result{'"'};
  result += words;
  result += '"';
  return result;
}

// Leads of one couplet against each other.
void check_couplet_contrasts(ContrastContext& context);
// Statements against those on the routes above them.
void check_routes(ContrastContext& context);
// Exceptions against the taxa below their leads.
void check_exceptions(ContrastContext& context);
// Units of one character against each other.
void check_units(ContrastContext& context);
// Couplets that ask what one above them has asked, those with a dead lead aside; after
// check_routes().
void check_repeats(ContrastContext& context);
// Comparisons with nothing, units that change within a couplet, statements about one sex or stage
// only, one thing under several names.
void check_wording(ContrastContext& context);
// Remarks on style: only where ContrastOptions::style asks for them.
void check_style(ContrastContext& context);

}  // namespace keydrift::contrast

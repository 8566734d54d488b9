#pragma once
// The steps of proof_contrast; see contrast.hpp for what they add up to.

#include <string>
#include <string_view>
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

}  // namespace keydrift::contrast

// The steps of proof_contrast in their order, and how they report.

#include <utility>

#include "keydrift/characters/contrast_parts.hpp"
#include "keydrift/key/repeated_keys.hpp"

namespace keydrift {
namespace contrast {

Finding& ContrastContext::report(std::string_view code, Severity severity,
                                 Statement const& statement, std::string message,
                                 std::string remedy) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.file = edition.name;
  finding.place = statement.place;
  finding.printed = statement.text;
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  findings.push_back(std::move(finding));
  return findings.back();
}

}  // namespace contrast

std::vector<Finding> proof_contrast(Edition const& edition, KeyGraph const& graph,
                                    ContrastOptions const& options) {
  using namespace contrast;
  ContrastContext context{.edition = edition, .graph = graph, .options = options};
  if (options.lexicon != nullptr) {
    for (auto const& character : options.lexicon->characters) {
      context.characters.emplace(character.id, &character);
    }
  }
  context.dead_couplets.resize(edition.couplets.size());
  check_couplet_contrasts(context);
  check_routes(context);
  check_exceptions(context);
  check_units(context);
  check_repeats(context);
  check_wording(context);
  if (options.style) check_style(context);
  leave_out_repetitions(edition, repeated_keys(edition), context.findings);
  sort_findings(context.findings);
  return std::move(context.findings);
}

std::vector<Finding> proof_contrast(Edition const& edition, KeyGraph const& graph) {
  return proof_contrast(edition, graph, {});
}

}  // namespace keydrift

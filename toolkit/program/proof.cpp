#include <CLI/CLI.hpp>
#include <algorithm>
#include <ostream>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/proof.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/terminal.hpp"

namespace keydrift::program {
namespace {

struct ProofArguments {
  std::string edition;
  std::string lexicon;
  std::string json;
  std::string fail_on{"error"};
  std::string explain;
};

ExitCode explain(std::string const& code, Context& context) {
  std::vector<FindingKind> kinds;
  for (auto const table : {structural_finding_kinds(), contrast_finding_kinds()}) {
    kinds.insert(kinds.end(), table.begin(), table.end());
  }
  std::sort(kinds.begin(), kinds.end(),
            [](auto const& a, auto const& b) { return a.code < b.code; });
  for (auto const& kind : kinds) {
    if (kind.code != code) continue;
    context.out << kind.code << " (" << to_word(kind.severity) << "): " << kind.title << "\n\n"
                << kind.explanation << '\n';
    return kNothingToReport;
  }
  context.err << "keydrift: no finding is called \"" << code << "\"; there are\n";
  for (auto const& kind : kinds) context.err << "  " << kind.code << '\n';
  return kBadUsage;
}

ExitCode proof(ProofArguments const& arguments, StyleOptions const& style, Context& context) {
  if (!arguments.explain.empty()) return explain(arguments.explain, context);
  auto input = load_edition(arguments.edition, context);
  if (!input) return kUnreadableInput;
  auto const lexicon = load_lexicon(arguments.lexicon, context);
  if (!lexicon) return kUnreadableInput;

  auto findings = std::move(input->findings);
  auto const add = [&](std::vector<Finding> more) {
    findings.insert(findings.end(), more.begin(), more.end());
  };
  add(read_statements(input->edition, *lexicon));
  KeyGraph const graph{input->edition};
  add(proof_structure(input->edition, graph));
  add(proof_contrast(input->edition, graph));
  sort_findings(findings);
  auto const numbers = key_numbers(input->edition, graph);
  auto const read = coverage(input->edition);

  if (!arguments.json.empty()) {
    Outputs outputs;
    outputs.add(arguments.json, proof_json(input->edition, findings, numbers, read));
    if (auto const failure = outputs.commit()) {
      print_finding(context, *failure);
      return kUnwritableOutput;
    }
  }
  context.out << proof_text(input->edition, findings, numbers, read, style.apply(context.style));

  auto const worst =
      std::max_element(findings.begin(), findings.end(),
                       [](Finding const& a, Finding const& b) { return a.severity < b.severity; });
  if (worst == findings.end()) return kNothingToReport;
  auto const limit = arguments.fail_on == "information" ? Severity::information
                     : arguments.fail_on == "warning"   ? Severity::warning
                                                        : Severity::error;
  return worst->severity >= limit ? kFindings : kNothingToReport;
}

}  // namespace

void add_proof(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand("proof", "Check one edition: its structure, its contrasts");
  auto arguments = std::make_shared<ProofArguments>();
  auto style = std::make_shared<StyleOptions>();
  auto* edition = command->add_option("EDITION", arguments->edition,
                                      "The edition: a file or REPO@REVISION:PATH");
  command->add_option("--lexicon", arguments->lexicon, "Lexicon (CSV or JSON)")->type_name("FILE");
  command->add_option("--json", arguments->json, "Write the findings and numbers as JSON")
      ->type_name("FILE");
  command
      ->add_option("--fail-on", arguments->fail_on,
                   "Lowest severity that gives exit status 1 (default: error)")
      ->check(CLI::IsMember({"error", "warning", "information"}).description(""))
      ->type_name("SEVERITY");
  auto* explained =
      command->add_option("--explain-finding", arguments->explain, "Tell what a finding means")
          ->type_name("CODE");
  edition->excludes(explained);
  add_style_options(*command, style);
  command->footer(
      "Examples:\n"
      "  keydrift proof key-2024.txt\n"
      "  keydrift proof flora@v1998:key.txt --lexicon lexicon.csv --fail-on warning\n"
      "  keydrift proof --explain-finding dangling-couplet");
  command->callback([arguments, style, &invocation] {
    if (arguments->edition.empty() && arguments->explain.empty()) {
      throw CLI::RequiredError("EDITION");
    }
    invocation.run = [arguments, style](Context& context) {
      return proof(*arguments, *style, context);
    };
  });
}

}  // namespace keydrift::program

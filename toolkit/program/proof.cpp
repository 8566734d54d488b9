#include <CLI/CLI.hpp>
#include <algorithm>
#include <iterator>
#include <ostream>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/edition_proof.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/proof.hpp"
#include "keydrift/program/error_rates.hpp"
#include "keydrift/program/explanations.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/reports/html.hpp"
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/taxa/frequencies.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift::program {
namespace {

struct ProofArguments {
  std::string edition;
  std::string lexicon;
  std::string parents;
  std::string frequencies;
  std::string json;
  std::string html;
  std::string fail_on{"error"};
  std::vector<std::string> error_rates;
  bool style{false};
  bool explain_lines{false};
  bool explain_finding{false};
  std::string finding_code;  // empty: list them all
};

Severity limit_of(std::string const& word) {
  if (word == "information") return Severity::information;
  return word == "warning" ? Severity::warning : Severity::error;
}

// What each line of the source was taken for; editions of fields have no lines to explain.
void explain_lines(std::string const& name, EditionInput const& input, StyleOptions const& style,
                   Context& context) {
  if (input.source) {
    context.out << reading_text(input.edition, *input.source, style.apply(context.style)) << '\n';
  } else {
    context.err << "keydrift: " << name
                << " says itself what each part of it is; there are no lines to explain\n";
  }
}

ExitCode proof(ProofArguments const& arguments, StyleOptions const& style, Context& context) {
  if (arguments.explain_finding) {
    return explain_finding(arguments.finding_code, style, context);
  }
  auto const rates = read_error_rates(arguments.error_rates, !arguments.lexicon.empty(), context);
  if (!rates) return kBadUsage;
  // All inputs are tried before giving up, so that one run shows everything that is wrong.
  auto input = load_edition(arguments.edition, context);
  auto const tables = load_side_tables(
      {.lexicon = arguments.lexicon, .concepts = "", .parents = arguments.parents}, context);
  std::optional<FrequencyTable> frequencies{FrequencyTable{}};
  if (!arguments.frequencies.empty()) {
    frequencies = load_frequencies(arguments.frequencies, context);
  }
  if (!input || !tables || !frequencies) return kUnreadableInput;
  auto& edition = input->edition;
  auto const& lexicon = tables->lexicon;

  EditionProof result;
  result.findings = std::move(input->findings);
  auto const add = [&](std::vector<Finding> more) {
    result.findings.insert(result.findings.end(), std::make_move_iterator(more.begin()),
                           std::make_move_iterator(more.end()));
  };
  add(read_statements(edition, lexicon));
  KeyGraph const graph{edition};
  NameIndex const names{edition, tables->parents};
  add(proof_structure(edition, graph));
  add(proof_contrast(edition, graph,
                     {.lexicon = &lexicon,
                      .members = [&names](auto group) { return names.members(group); },
                      .style = arguments.style}));
  result.numbers = key_numbers(edition, graph);
  result.coverage = coverage(edition);
  std::vector<double> weights;
  if (!arguments.frequencies.empty()) {
    auto given = taxon_weights(edition, names, *frequencies);
    add(std::move(given.findings));
    weights = std::move(given.by_taxon);
    result.frequencies = frequency_numbers(edition, graph, weights);
  }
  auto const difficulties = couplet_difficulties(edition, lexicon);
  if (!arguments.lexicon.empty()) {
    result.difficulties = difficulty_numbers(edition, graph, difficulties);
  }
  if (!arguments.error_rates.empty()) {
    result.right = expected_right(edition, graph, difficulties, *rates, weights);
  }
  sort_findings(result.findings);

  if (!arguments.json.empty() || !arguments.html.empty()) {
    Outputs outputs;
    if (!arguments.json.empty()) outputs.add(arguments.json, proof_json(edition, result));
    if (!arguments.html.empty()) outputs.add(arguments.html, proof_html(edition, result));
    if (auto const failure = outputs.commit()) {
      print_finding(context, *failure);
      return kUnwritableOutput;
    }
  }
  if (arguments.explain_lines) explain_lines(arguments.edition, *input, style, context);
  context.out << proof_text(edition, result, style.apply(context.style));

  auto const limit = limit_of(arguments.fail_on);
  bool const reached =
      std::any_of(result.findings.begin(), result.findings.end(),
                  [&](Finding const& finding) { return finding.severity >= limit; });
  return reached ? kFindings : kNothingToReport;
}

}  // namespace

void add_proof(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand("proof", "Check one edition: its structure, its contrasts");
  auto arguments = std::make_shared<ProofArguments>();
  auto style = std::make_shared<StyleOptions>();
  auto* edition = command->add_option("EDITION", arguments->edition,
                                      "The edition: a file or REPO@REVISION:PATH");
  command->add_option("--lexicon", arguments->lexicon, "Lexicon (CSV or JSON)")->type_name("FILE");
  command->add_option("--parents", arguments->parents, "Which taxon belongs to which group (CSV)")
      ->type_name("FILE");
  command->add_option("--json", arguments->json, "Write the findings and numbers as JSON")
      ->type_name("FILE");
  command
      ->add_option("--html", arguments->html,
                   "Write the couplets with the findings beside them as one HTML page")
      ->type_name("FILE");
  command
      ->add_option("--fail-on", arguments->fail_on,
                   "Lowest severity that gives exit status 1 (default: error)")
      ->check(CLI::IsMember({"error", "warning", "information"}).description(""))
      ->type_name("SEVERITY");
  command
      ->add_option("--frequencies", arguments->frequencies,
                   "How often each taxon is met with (CSV: taxon, count)")
      ->type_name("FILE");
  command
      ->add_option("--error-rate", arguments->error_rates,
                   "Share of wrong answers at a couplet, as in 0.02 or 2%, for the share of right "
                   "determinations; with --lexicon also by difficulty, as in microscope=10%; may "
                   "be repeated")
      ->type_name("RATE")
      ->allow_extra_args(false);
  command->add_flag("--style", arguments->style, "Add remarks on style");
  auto* explained = command
                        ->add_option("--explain-finding", arguments->finding_code,
                                     "Tell what a finding means; without a code, list them all")
                        ->expected(0, 1)
                        ->type_name("[CODE]");
  edition->excludes(explained);
  command
      ->add_flag("--explain", arguments->explain_lines,
                 "Tell first, line by line, what the source was taken for")
      ->excludes(explained);
  add_style_options(*command, style);
  command->footer(
      "Examples:\n"
      "  keydrift proof key-2024.txt\n"
      "  keydrift proof flora@v1998:key.txt --lexicon lexicon.csv --fail-on warning\n"
      "  keydrift proof key-2024.txt --frequencies counts.csv --error-rate 0.02 --style\n"
      "  keydrift proof key-2024.txt --explain\n"
      "  keydrift proof --explain-finding dangling-couplet");
  command->callback([arguments, style, explained, &invocation] {
    arguments->explain_finding = explained->count() > 0;
    if (arguments->edition.empty() && !arguments->explain_finding) {
      throw CLI::RequiredError("EDITION");
    }
    invocation.run = [arguments, style](Context& context) {
      return proof(*arguments, *style, context);
    };
  });
}

}  // namespace keydrift::program

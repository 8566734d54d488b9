#include <CLI/CLI.hpp>
#include <algorithm>
#include <ostream>

#include "keydrift/amendment/amend.hpp"
#include "keydrift/characters/contrast.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/amendment_reader.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/proof.hpp"
#include "keydrift/program/edition_forms.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/reports/amendment_text.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift::program {
namespace {

struct AmendArguments {
  std::string edition;
  std::vector<std::string> pieces;
  std::string output;
  std::string to;
  std::string lexicon;
  bool renumber{false};
};

struct Pieces {
  std::vector<Amendment> amendments;
  std::vector<Finding> findings;
};

// All pieces are tried before giving up, so that one run shows everything that is wrong.
std::optional<Pieces> load_pieces(std::vector<std::string> const& specs, Context& context) {
  Pieces pieces;
  bool sound = true;
  for (auto const& spec : specs) {
    auto source = load_within_limits(spec, context.limits);
    auto findings = std::move(source.findings);
    if (source.value) {
      auto loaded = read_amendment(
          {.name = source.value->name, .bytes = source.value->bytes, .encoding = context.encoding},
          context.limits);
      findings.insert(findings.end(), loaded.findings.begin(), loaded.findings.end());
      if (loaded) {
        pieces.amendments.push_back(std::move(*loaded.value));
        pieces.findings.insert(pieces.findings.end(), findings.begin(), findings.end());
        continue;
      }
    }
    print_findings(context, findings);
    sound = false;
  }
  return sound ? std::optional{std::move(pieces)} : std::nullopt;
}

Proof proof_with(Lexicon const& lexicon) {
  return [&lexicon](Edition edition) {
    auto findings = read_statements(edition, lexicon);
    KeyGraph const graph{edition};
    NameIndex const names{edition, {}};
    auto contrast = proof_contrast(
        edition, graph,
        {.lexicon = &lexicon, .members = [&names](auto group) { return names.members(group); }});
    for (auto more : {proof_structure(edition, graph), std::move(contrast)}) {
      findings.insert(findings.end(), more.begin(), more.end());
    }
    return findings;
  };
}

// Not all was done, or the result has errors, or faults that it did not have before.
bool is_clean(Amended const& amended) {
  auto const at_least = [](Severity least) {
    return [least](Finding const& finding) { return finding.severity >= least; };
  };
  return amended.unplaced.empty() && !has_error(amended.faults_lasting) &&
         std::none_of(amended.faults_made.begin(), amended.faults_made.end(),
                      at_least(Severity::warning));
}

// "new.docx" would hold plain text under a name that says otherwise; a name without an end says
// nothing.
bool ends_in_unknown_form(AmendArguments const& arguments) {
  auto const name = arguments.output.substr(arguments.output.find_last_of('/') + 1);
  bool const ends = name.find('.', 1) != std::string::npos;
  return ends && !edition_form(arguments.to, arguments.output);
}

ExitCode amend_command(AmendArguments const& arguments, StyleOptions const& style,
                       Context& context) {
  if (ends_in_unknown_form(arguments)) {
    context.err << "keydrift amend: " << kHowToSayForm << '\n';
    return kBadUsage;
  }
  auto const input = load_edition(arguments.edition, context);
  auto const pieces = load_pieces(arguments.pieces, context);
  auto const lexicon = load_lexicon(arguments.lexicon, context);
  if (!input || !pieces || !lexicon) return kUnreadableInput;

  auto amended = amend(input->edition, pieces->amendments, proof_with(*lexicon));
  std::vector<std::pair<std::string, std::string>> renumbered;
  auto result = amended.edition;
  if (arguments.renumber) renumbered = renumber(result);
  if (!arguments.output.empty()) {
    auto const form = edition_form(arguments.to, arguments.output).value_or(EditionForm::parallel);
    auto const text = write_edition(result, form, {}, *lexicon, {});
    // No other command shows what a form cannot hold.
    for (auto const& finding : text.findings) print_finding(context, finding);
    if (!text) return kUnwritableOutput;
    Outputs outputs;
    outputs.add(arguments.output, *text.value);
    if (auto const failure = outputs.commit()) {
      print_finding(context, *failure);
      return kUnwritableOutput;
    }
  }
  context.out << amendment_text(
      input->edition, pieces->amendments, amended, pieces->findings,
      {.style = style.apply(context.style), .written = arguments.output, .renumbered = renumbered});
  return is_clean(amended) ? kNothingToReport : kFindings;
}

}  // namespace

void add_amend(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand(
      "amend", "Apply couplets and errata that were published between two editions");
  auto arguments = std::make_shared<AmendArguments>();
  auto style = std::make_shared<StyleOptions>();
  command->add_option("EDITION", arguments->edition, "The edition that is amended")
      ->type_name("")
      ->required();
  command
      ->add_option("PIECE", arguments->pieces,
                   "What was published, in the order of publication: couplets, instructions, "
                   "errata")
      ->type_name("")
      ->required();
  command->add_option("-o,--output", arguments->output, "Write the amended edition (default: none)")
      ->type_name("FILE");
  command
      ->add_option("--to", arguments->to,
                   "As for convert (default: by the output's name, else parallel)")
      ->check(CLI::IsMember(edition_form_names()).description(""))
      ->type_name("FORM");
  command->add_flag("--renumber", arguments->renumber,
                    "Number the couplets of the amended edition from 1 on");
  command->add_option("--lexicon", arguments->lexicon, "Lexicon (CSV or JSON) for proofreading")
      ->type_name("FILE");
  add_style_options(*command, style);
  command->footer(
      "Exit status 0 means that everything was done and that the result has no error, and no\n"
      "fault that the edition did not have; 1 that something could not be done or is wrong.\n"
      "\n"
      "Examples:\n"
      "  keydrift amend key-1998.txt corrections-2003.txt -o key-2003.txt\n"
      "  keydrift amend key-1998.txt first.txt second.txt -o key.json --renumber");
  command->callback([arguments, style, &invocation] {
    invocation.run = [arguments, style](Context& context) {
      return amend_command(*arguments, *style, context);
    };
  });
}

}  // namespace keydrift::program

#include <CLI/CLI.hpp>
#include <ostream>

#include "keydrift/collation/reasons.hpp"
#include "keydrift/program/comparison.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/reports/csv.hpp"
#include "keydrift/reports/html.hpp"
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/terminal.hpp"

namespace keydrift::program {
namespace {

struct CollateArguments {
  std::string old_edition;
  std::string new_edition;
  SideTableOptions tables;
  std::string html;
  std::string json;
  std::string taxa;
  std::string characters;
  std::string why;
  bool every_couplet{false};
};

ExitCode collate_command(CollateArguments const& arguments, StyleOptions const& style,
                         Context& context) {
  auto const comparison =
      compare(arguments.old_edition, arguments.new_edition, arguments.tables, context);
  if (!comparison) return kUnreadableInput;
  auto const& old_edition = comparison->old_edition();
  auto const& new_edition = comparison->new_edition();
  auto const& collation = comparison->collation;

  std::vector<CoupletReasons> why;
  if (!arguments.why.empty()) {
    why = reasons_for(arguments.why, old_edition, *comparison->old_graph, new_edition,
                      *comparison->new_graph, collation);
    if (why.empty()) {
      context.err << "keydrift collate: --why " << arguments.why
                  << ": no couplet of either edition bears that number; give it as printed, "
                     "without the letter of a lead\n";
      return kBadUsage;
    }
  }

  Outputs outputs;
  if (!arguments.html.empty()) {
    outputs.add(arguments.html, collation_html(old_edition, new_edition, collation));
  }
  if (!arguments.json.empty()) {
    outputs.add(arguments.json, collation_json(old_edition, new_edition, collation, why));
  }
  if (!arguments.taxa.empty()) {
    outputs.add(arguments.taxa, taxa_csv(old_edition, new_edition, collation));
  }
  if (!arguments.characters.empty()) {
    outputs.add(arguments.characters, characters_csv(old_edition, new_edition, collation));
  }
  if (auto const failure = outputs.commit()) {
    print_finding(context, *failure);
    return kUnwritableOutput;
  }
  if (!why.empty()) {
    context.out << collation_why_text(old_edition, new_edition, collation, why,
                                      style.apply(context.style));
    return collation.changes_meaning ? kFindings : kNothingToReport;
  }
  context.out << collation_text(
      old_edition, new_edition, collation,
      {.style = style.apply(context.style), .every_couplet = arguments.every_couplet});
  return collation.changes_meaning ? kFindings : kNothingToReport;
}

}  // namespace

void add_collate(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand(
      "collate", "Compare two editions: couplets, taxa, characters, errors mended and made");
  auto arguments = std::make_shared<CollateArguments>();
  auto style = std::make_shared<StyleOptions>();
  command->add_option("OLD", arguments->old_edition, "The older edition")
      ->type_name("")
      ->required();
  command->add_option("NEW", arguments->new_edition, "The newer edition")
      ->type_name("")
      ->required();
  add_side_table_options(*command, arguments->tables);
  command->add_option("--html", arguments->html, "Write the report as one HTML file")
      ->type_name("FILE");
  command->add_option("--json", arguments->json, "Write the result as JSON")->type_name("FILE");
  command->add_option("--taxa", arguments->taxa, "Write what became of each taxon as CSV")
      ->type_name("FILE");
  command
      ->add_option("--characters", arguments->characters,
                   "Write the characters that changed their role as CSV")
      ->type_name("FILE");
  command->add_flag("--every-couplet", arguments->every_couplet,
                    "Show also the couplets whose meaning is unchanged");
  command
      ->add_option("--why", arguments->why,
                   "Show instead why this couplet has the counterpart it has, or none")
      ->type_name("COUPLET");
  add_style_options(*command, style);
  command->footer(
      "Exit status 0 means that no change touches the meaning (renumbering, layout and wording\n"
      "aside); 1 that some does.\n"
      "\n"
      "Examples:\n"
      "  keydrift collate key-1998.txt key-2024.txt\n"
      "  keydrift collate flora@v1998:key.txt flora@v2024:key.txt \\\n"
      "      --lexicon lexicon.csv --concepts concepts.csv --html report.html");
  command->callback([arguments, style, &invocation] {
    invocation.run = [arguments, style](Context& context) {
      return collate_command(*arguments, *style, context);
    };
  });
}

}  // namespace keydrift::program

#include <CLI/CLI.hpp>
#include <ostream>

#include "keydrift/program/edition_forms.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"

namespace keydrift::program {
namespace {

struct ConvertArguments {
  std::string edition;
  std::string to;
  std::string output;
  std::string lexicon;
  std::string leaders;
  std::string back_references;
  unsigned width{80};
  bool renumber{false};
};

PrintOptions print_options(ConvertArguments const& arguments) {
  PrintOptions options;
  options.width = arguments.width;
  options.leaders = arguments.leaders == "tab"    ? PrintLeaders::tab
                    : arguments.leaders == "none" ? PrintLeaders::none
                                                  : PrintLeaders::dots;
  options.back_references = arguments.back_references == "graph"  ? BackReferences::from_graph
                            : arguments.back_references == "none" ? BackReferences::none
                                                                  : BackReferences::as_printed;
  options.renumber = arguments.renumber;
  return options;
}

ExitCode convert(ConvertArguments const& arguments, Context& context) {
  auto const form = edition_form(arguments.to, arguments.output);
  if (!form) {
    context.err << "keydrift convert: " << kHowToSayForm << '\n';
    return kBadUsage;
  }
  auto input = load_edition(arguments.edition, context);
  if (!input) return kUnreadableInput;
  auto const lexicon = load_lexicon(arguments.lexicon, context);
  if (!lexicon) return kUnreadableInput;

  auto const result =
      write_edition(input->edition, *form, print_options(arguments), *lexicon, input->findings);
  print_findings(context, input->findings);
  // What the form does not hold is no matter of the file that was read.
  for (auto const& finding : result.findings) print_finding(context, finding);
  if (!result) return kUnwritableOutput;
  if (arguments.output.empty() || arguments.output == "-") {
    context.out << *result.value;
    return kNothingToReport;
  }
  Outputs outputs;
  outputs.add(arguments.output, *result.value);
  if (auto const failure = outputs.commit()) {
    print_finding(context, *failure);
    return kUnwritableOutput;
  }
  return kNothingToReport;
}

}  // namespace

void add_convert(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand("convert", "Write an edition in another form");
  auto arguments = std::make_shared<ConvertArguments>();
  command->add_option("EDITION", arguments->edition, "A file or REPO@REVISION:PATH")
      ->type_name("")
      ->required();
  command
      ->add_option(
          "--to", arguments->to,
          "parallel (or text), indented, serial: the printed key; json, sdd, html, markdown "
          "(default: by the output's name)")
      ->check(CLI::IsMember(edition_form_names()).description(""))
      ->type_name("FORM");
  command->add_option("-o,--output", arguments->output, "File to write (default: standard output)")
      ->type_name("FILE");
  command->add_option("--width", arguments->width, "Line width of the printed key")
      ->check(CLI::Range(40, 400).description(""))
      ->type_name("N");
  command
      ->add_option("--leaders", arguments->leaders,
                   "Between words and destination: dots (default), tab, or none (blanks)")
      ->check(CLI::IsMember({"dots", "tab", "none"}).description(""))
      ->type_name("KIND");
  command
      ->add_option("--back-references", arguments->back_references,
                   "as-printed (default), graph (of every lead that leads to a couplet), or none")
      ->check(CLI::IsMember({"as-printed", "graph", "none"}).description(""))
      ->type_name("WHICH");
  command->add_flag("--renumber", arguments->renumber,
                    "Number the couplets 1, 2, 3 … in printed order");
  command->add_option("--lexicon", arguments->lexicon, "Lexicon for the statements in JSON and SDD")
      ->type_name("FILE");
  command->footer(
      "Examples:\n"
      "  keydrift convert key-2024.txt -o key-2024.json\n"
      "  keydrift convert key-2024.json --to indented --width 72\n"
      "  keydrift convert key-2024.txt --to serial --leaders tab\n"
      "  keydrift convert key-2024.txt -o key-2024.html");
  command->callback([arguments, &invocation] {
    invocation.run = [arguments](Context& context) { return convert(*arguments, context); };
  });
}

}  // namespace keydrift::program

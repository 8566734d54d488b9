#include <CLI/CLI.hpp>
#include <ostream>

#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "keydrift/formats/sdd_write.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"

namespace keydrift::program {
namespace {

struct ConvertArguments {
  std::string edition;
  std::string to;
  std::string output;
  std::string lexicon;
  unsigned width{80};
};

ExitCode convert(ConvertArguments const& arguments, Context& context) {
  auto input = load_edition(arguments.edition, context);
  if (!input) return kUnreadableInput;
  auto const lexicon = load_lexicon(arguments.lexicon, context);
  if (!lexicon) return kUnreadableInput;

  std::string text;
  if (arguments.to == "json") {
    auto more = read_statements(input->edition, *lexicon);
    input->findings.insert(input->findings.end(), more.begin(), more.end());
    sort_findings(input->findings);
    text = write_key_json(input->edition, input->findings);
  } else if (arguments.to == "sdd") {
    // The characters of the statements become characters of the data set.
    auto more = read_statements(input->edition, *lexicon);
    input->findings.insert(input->findings.end(), more.begin(), more.end());
    auto written = write_sdd(input->edition);
    // What SDD cannot hold is no matter of the file that was read.
    for (auto const& finding : written.findings) print_finding(context, finding);
    text = std::move(written.text);
  } else {
    auto printed = print_key(input->edition, {.width = arguments.width});
    if (!printed) {
      for (auto const& finding : printed.findings) print_finding(context, finding);
      return kUnwritableOutput;
    }
    text = std::move(*printed.value);
  }
  print_findings(context, input->findings);
  if (arguments.output.empty() || arguments.output == "-") {
    context.out << text;
    return kNothingToReport;
  }
  Outputs outputs;
  outputs.add(arguments.output, text);
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
  command->add_option("--to", arguments->to, "json, sdd (SDD 1.1), or text (the printed key)")
      ->required()
      ->check(CLI::IsMember({"json", "sdd", "text"}).description(""))
      ->type_name("FORM");
  command->add_option("-o,--output", arguments->output, "File to write (default: standard output)")
      ->type_name("FILE");
  command->add_option("--lexicon", arguments->lexicon, "Lexicon for the statements in JSON and SDD")
      ->type_name("FILE");
  command->add_option("--width", arguments->width, "Line width of the printed key")
      ->check(CLI::Range(40, 400).description(""))
      ->type_name("N");
  command->footer(
      "Examples:\n"
      "  keydrift convert key-2024.txt --to json -o key-2024.json\n"
      "  keydrift convert key-2024.json --to text --width 72");
  command->callback([arguments, &invocation] {
    invocation.run = [arguments](Context& context) { return convert(*arguments, context); };
  });
}

}  // namespace keydrift::program

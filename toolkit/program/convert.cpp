#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <ostream>

#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "keydrift/formats/sdd_write.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/reports/key_pages.hpp"

namespace keydrift::program {
namespace {

using namespace std::string_view_literals;

enum class Form { parallel, indented, serial, json, sdd, html, markdown };

struct FormName {
  std::string_view name;
  Form form;
};
constexpr std::array kForms{
    FormName{"parallel"sv, Form::parallel}, FormName{"indented"sv, Form::indented},
    FormName{"serial"sv, Form::serial},     FormName{"json"sv, Form::json},
    FormName{"sdd"sv, Form::sdd},           FormName{"html"sv, Form::html},
    FormName{"markdown"sv, Form::markdown}, FormName{"text"sv, Form::parallel}};
// Forms that a file's name tells.
constexpr std::array kExtensions{
    FormName{".json"sv, Form::json},   FormName{".xml"sv, Form::sdd},
    FormName{".html"sv, Form::html},   FormName{".htm"sv, Form::html},
    FormName{".md"sv, Form::markdown}, FormName{".txt"sv, Form::parallel}};

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

std::optional<Form> form_asked(ConvertArguments const& arguments) {
  for (auto const& one : kForms) {
    if (arguments.to == one.name) return one.form;
  }
  for (auto const& one : kExtensions) {
    if (arguments.output.ends_with(one.name)) return one.form;
  }
  return std::nullopt;
}

PrintOptions print_options(ConvertArguments const& arguments, Form form) {
  PrintOptions options;
  options.layout = form == Form::indented ? PrintLayout::indented
                   : form == Form::serial ? PrintLayout::serial
                                          : PrintLayout::parallel;
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

// The edition in the form; no value when the form cannot hold it, which the findings explain.
Loaded<std::string> written(EditionInput& input, Form form, ConvertArguments const& arguments,
                            Lexicon const& lexicon) {
  auto const options = print_options(arguments, form);
  Loaded<std::string> loaded;
  switch (form) {
    case Form::json:
    case Form::sdd: {  // the statements' characters become characters of the data set
      auto edition = relabelled(input.edition, options);
      auto more = read_statements(edition, lexicon);
      input.findings.insert(input.findings.end(), more.begin(), more.end());
      sort_findings(input.findings);
      if (form == Form::json) {
        loaded.value = write_key_json(edition, input.findings);
        return loaded;
      }
      auto sdd = write_sdd(edition);
      loaded.findings = std::move(sdd.findings);
      loaded.value = std::move(sdd.text);
      return loaded;
    }
    case Form::html:
      loaded.value = key_html(relabelled(input.edition, options));
      return loaded;
    case Form::markdown:
      loaded.value = key_markdown(relabelled(input.edition, options));
      return loaded;
    case Form::parallel:
    case Form::indented:
    case Form::serial:
      break;
  }
  return print_key(input.edition, options);
}

ExitCode convert(ConvertArguments const& arguments, Context& context) {
  auto const form = form_asked(arguments);
  if (!form) {
    context.err << "keydrift convert: say the form with --to, or name an output that ends in "
                   ".txt, .json, .xml, .html or .md\n";
    return kBadUsage;
  }
  auto input = load_edition(arguments.edition, context);
  if (!input) return kUnreadableInput;
  auto const lexicon = load_lexicon(arguments.lexicon, context);
  if (!lexicon) return kUnreadableInput;

  auto const result = written(*input, *form, arguments, *lexicon);
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
  std::vector<std::string> forms;
  for (auto const& one : kForms) forms.emplace_back(one.name);
  command
      ->add_option(
          "--to", arguments->to,
          "parallel (or text), indented, serial: the printed key; json, sdd, html, markdown "
          "(default: by the output's name)")
      ->check(CLI::IsMember(forms).description(""))
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

#include <CLI/CLI.hpp>
#include <algorithm>
#include <ostream>

#include "keydrift/characters/drafting/draft_lexicon.hpp"
#include "keydrift/characters/lexicon_use.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/reports/lexicon_text.hpp"

namespace keydrift::program {
namespace {

struct DraftArguments {
  std::vector<std::string> editions;
  std::string output;
};

struct CheckArguments {
  std::string lexicon;
  std::vector<std::string> editions;
  std::string json;
};

// All of them, or nothing after the printed findings of all.
std::optional<std::vector<EditionInput>> load_editions(std::vector<std::string> const& specs,
                                                       Context& context) {
  std::vector<EditionInput> inputs;
  bool sound = true;
  for (auto const& spec : specs) {
    if (auto input = load_edition(spec, context)) {
      inputs.push_back(std::move(*input));
    } else {
      sound = false;
    }
  }
  if (!sound) return std::nullopt;
  return inputs;
}

std::vector<Edition*> editions_of(std::vector<EditionInput>& inputs) {
  std::vector<Edition*> editions;
  for (auto& input : inputs) editions.push_back(&input.edition);
  return editions;
}

ExitCode draft(DraftArguments const& arguments, StyleOptions const& style, Context& context) {
  auto inputs = load_editions(arguments.editions, context);
  if (!inputs) return kUnreadableInput;
  auto const editions = editions_of(*inputs);
  auto const findings = read_statements(editions, {});
  print_findings(context, findings);
  if (has_error(findings)) return kUnreadableInput;
  std::vector<Edition const*> const read{editions.begin(), editions.end()};
  auto const lexicon = draft_lexicon(read);
  bool const json = arguments.output.ends_with(".json");
  auto const text = json ? write_lexicon_json(lexicon) : write_lexicon_csv(lexicon);
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
  auto use = check_lexicon_use(lexicon, editions);
  for (auto& coverage : use.coverage) coverage.drafted = true;
  context.out << lexicon_draft_text(lexicon, read, use, style.apply(context.style));
  return kNothingToReport;
}

ExitCode check(CheckArguments const& arguments, StyleOptions const& style, Context& context) {
  auto const lexicon = load_lexicon(arguments.lexicon, context);
  auto inputs = load_editions(arguments.editions, context);
  if (!lexicon || !inputs) return kUnreadableInput;
  auto const editions = editions_of(*inputs);
  auto const use = check_lexicon_use(*lexicon, editions);
  std::vector<Edition const*> const read{editions.begin(), editions.end()};
  if (!arguments.json.empty()) {
    Outputs outputs;
    outputs.add(arguments.json, lexicon_use_json(*lexicon, read, use));
    if (auto const failure = outputs.commit()) {
      print_finding(context, *failure);
      return kUnwritableOutput;
    }
  }
  context.out << lexicon_use_text(*lexicon, read, use, style.apply(context.style));
  bool const doubtful =
      std::any_of(use.findings.begin(), use.findings.end(),
                  [](Finding const& finding) { return finding.severity >= Severity::warning; });
  return doubtful ? kFindings : kNothingToReport;
}

void add_draft(CLI::App& lexicon, Invocation& invocation) {
  auto* command = lexicon.add_subcommand(
      "draft", "Draft a lexicon: line up the contrasting statements of the couplets");
  auto arguments = std::make_shared<DraftArguments>();
  command
      ->add_option("EDITION", arguments->editions,
                   "The editions, in any order: files or REPO@REVISION:PATH")
      ->type_name("")
      ->required();
  command
      ->add_option("-o,--output", arguments->output,
                   "File to write: JSON if it ends in .json, else CSV")
      ->type_name("FILE");
  auto style = std::make_shared<StyleOptions>();
  add_style_options(*command, style);
  add_limit_option(*command, invocation.limits);
  add_encoding_option(*command, invocation.encoding);
  command->footer(
      "Statements that contrast within a couplet become states of one character. Nothing is\n"
      "guessed: states that no couplet contrasts are listed in \"not told apart from\"; put the\n"
      "words of one into the phrases of the other where they mean the same, or empty the cell\n"
      "where they exclude each other.\n"
      "\n"
      "Examples:\n"
      "  keydrift lexicon draft key-1998.txt key-2024.txt -o lexicon.csv\n"
      "  keydrift lexicon draft flora@v1998:key.txt -o lexicon.json");
  command->callback([arguments, style, &invocation] {
    invocation.run = [arguments, style](Context& context) {
      return draft(*arguments, *style, context);
    };
  });
}

void add_check(CLI::App& lexicon, Invocation& invocation) {
  auto* command = lexicon.add_subcommand(
      "check", "Tell what of a lexicon is unused, contradictory or missing for some editions");
  auto arguments = std::make_shared<CheckArguments>();
  command->add_option("LEXICON", arguments->lexicon, "The lexicon (CSV or JSON)")
      ->type_name("")
      ->required();
  command
      ->add_option("EDITION", arguments->editions,
                   "The editions that it is to read: files or REPO@REVISION:PATH")
      ->type_name("")
      ->required();
  command->add_option("--json", arguments->json, "Write the result as JSON")->type_name("FILE");
  auto style = std::make_shared<StyleOptions>();
  add_style_options(*command, style);
  add_limit_option(*command, invocation.limits);
  add_encoding_option(*command, invocation.encoding);
  command->footer(
      "Exit status 1 when there are warnings.\n"
      "\n"
      "Example:\n"
      "  keydrift lexicon check lexicon.csv key-1998.txt key-2024.txt");
  command->callback([arguments, style, &invocation] {
    invocation.run = [arguments, style](Context& context) {
      return check(*arguments, *style, context);
    };
  });
}

}  // namespace

void add_lexicon(CLI::App& app, Invocation& invocation) {
  auto* command = app.add_subcommand("lexicon", "Draft a lexicon from editions, or check one");
  command->require_subcommand(1);
  add_draft(*command, invocation);
  add_check(*command, invocation);
}

}  // namespace keydrift::program

#include <CLI/CLI.hpp>
#include <array>
#include <ostream>

#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/space.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/program/inputs.hpp"
#include "keydrift/program/output_file.hpp"
#include "keydrift/program/readings.hpp"
#include "keydrift/program/specimens.hpp"
#include "keydrift/redetermination/evidence.hpp"
#include "keydrift/redetermination/keying.hpp"
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift::program {
namespace {

struct KeyoutArguments {
  std::string edition;
  std::vector<std::string> shows;
  std::string specimens;
  std::string measurements;
  std::string catalog_number;
  std::string lexicon;
  std::string parents;
  std::string json;
  Reading reading{Reading::strict};
};

// "character=value" as given on the command line.
std::optional<Observation> read_show(std::string const& text, CharacterSpace const& space,
                                     Context& context) {
  auto const equals = text.find('=');
  Observation observation;
  observation.character = text.substr(0, equals);
  if (equals != std::string::npos) observation.value = text.substr(equals + 1);
  if (equals == std::string::npos || observation.value.empty()) {
    context.err << "keydrift: --show " << text
                << ": write it as CHARACTER=STATE, for example --show "
                << "\"beak=bifid\"\n";
    return std::nullopt;
  }
  auto const character = space.find_column(observation.character);
  if (!character) {
    context.err << "keydrift: no character of this key is called \"" << observation.character
                << "\"\n";
    auto const near = did_you_mean(near_names(observation.character, space.column_names()));
    if (!near.empty()) context.err << "  " << near << '\n';
    return std::nullopt;
  }
  auto const observed = space.observe(*character, observation.value, "");
  if (!observed.problem.empty()) {
    context.err << "keydrift: --show " << text << ": " << observed.problem << '\n';
    return std::nullopt;
  }
  return observation;
}

ExitCode keyout(KeyoutArguments const& arguments, StyleOptions const& style, Context& context) {
  auto input = load_edition(arguments.edition, context);
  auto const tables = load_side_tables(
      {.lexicon = arguments.lexicon, .concepts = "", .parents = arguments.parents}, context);
  if (!input || !tables) return kUnreadableInput;
  auto findings = read_statements(input->edition, tables->lexicon);
  print_findings(context, findings);
  auto const& edition = input->edition;
  KeyGraph const graph{edition};
  CharacterSpace const space{std::array<Edition const*, 1>{&edition}, tables->lexicon};
  NameIndex const names{edition, tables->parents};
  CompiledKey const key{edition, graph, names, space};

  Specimen specimen;
  if (!arguments.specimens.empty()) {
    auto found = find_specimen(arguments.specimens, arguments.measurements,
                               arguments.catalog_number, space.column_names(), context);
    if (!found) return kUnreadableInput;
    specimen = std::move(*found);
  }
  if (specimen.catalog_number.empty()) specimen.catalog_number = "The specimen described";
  for (auto const& show : arguments.shows) {
    auto observation = read_show(show, space, context);
    if (!observation) return kBadUsage;
    specimen.observations.push_back(std::move(*observation));
  }
  auto const evidence = read_evidence(space, specimen);
  for (auto const& unusable : evidence.unusable) {
    context.err << "keydrift: " << specimen.observations[unusable.observation].character << ": "
                << unusable.problem << '\n';
  }
  if (evidence.contradictory) {
    context.err << "keydrift: the characters given exclude each other; correct one of them\n";
    return kUnreadableInput;
  }
  auto const result = key_out(key, evidence.box, arguments.reading);
  if (!arguments.json.empty()) {
    Outputs outputs;
    outputs.add(arguments.json, keyout_json(edition, specimen, result));
    if (auto const failure = outputs.commit()) {
      print_finding(context, *failure);
      return kUnwritableOutput;
    }
  }
  context.out << keyout_text(edition, specimen, result, tables->lexicon,
                             style.apply(context.style));
  return kNothingToReport;
}

}  // namespace

void add_keyout(CLI::App& app, Invocation& invocation) {
  auto* command =
      app.add_subcommand("keyout", "Key one specimen out through one edition, showing the way");
  auto arguments = std::make_shared<KeyoutArguments>();
  auto style = std::make_shared<StyleOptions>();
  command->add_option("EDITION", arguments->edition, "A file or REPO@REVISION:PATH")
      ->type_name("")
      ->required();
  command
      ->add_option("--show", arguments->shows,
                   "A character that the specimen shows, as CHARACTER=STATE; may be repeated")
      ->type_name("C=S")
      ->allow_extra_args(false);
  auto* specimens = command
                        ->add_option("--specimens", arguments->specimens,
                                     "Archive to take the specimen from (Darwin Core CSV)")
                        ->type_name("FILE");
  auto* number = command
                     ->add_option("--number", arguments->catalog_number,
                                  "Catalogue number of the specimen in the archive")
                     ->type_name("NUMBER");
  specimens->needs(number);
  number->needs(specimens);
  command->add_option("--measurements", arguments->measurements, "Measurement rows beside it (CSV)")
      ->type_name("FILE")
      ->needs(specimens);
  command->add_option("--lexicon", arguments->lexicon, "Words tied to characters and states")
      ->type_name("FILE");
  command->add_option("--parents", arguments->parents, "Which taxon belongs to which group (CSV)")
      ->type_name("FILE");
  command->add_option("--json", arguments->json, "Write the way as JSON")->type_name("FILE");
  add_reading_option(*command, arguments->reading);
  add_style_options(*command, style);
  command->footer(
      "Examples:\n"
      "  keydrift keyout key-2024.txt --lexicon lexicon.csv \\\n"
      "      --show stigmas=3 --show culm=terete\n"
      "  keydrift keyout key-2024.txt --lexicon lexicon.csv --specimens sheets.csv \\\n"
      "      --number \"HLVN 00123\"");
  command->callback([arguments, style, &invocation] {
    invocation.run = [arguments, style](Context& context) {
      return keyout(*arguments, *style, context);
    };
  });
}

}  // namespace keydrift::program

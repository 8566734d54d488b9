#include <CLI/CLI.hpp>
#include <algorithm>
#include <ostream>
#include <sstream>

#include "keydrift/key/near.hpp"
#include "keydrift/program/context.hpp"
#include "keydrift/program/help.hpp"
#include "keydrift/program/inputs.hpp"

namespace keydrift::program {
namespace {

constexpr char kVersion[] = "keydrift " KEYDRIFT_VERSION;

constexpr char kAbout[] =
    "Reads editions of an identification key, compares them, and says which\n"
    "determined specimens would key out differently, why, and what to look at on\n"
    "each.";

constexpr char kFooter[] =
    "Wherever a command takes an EDITION, give a file or REPO@REVISION:PATH (a tag, branch or\n"
    "commit of a git repository; nothing is checked out).\n"
    "\n"
    "Exit status: 0 nothing to report; 1 findings, or a change in meaning; 2 the command line is\n"
    "not understood; 3 an input cannot be used; 4 an output cannot be written,\n"
    "or would not read back as the same edition.\n"
    "\n"
    "`keydrift COMMAND --help` shows a command's options and examples.";

// The word where a command should stand, with what it may have meant; "" where none stands there.
std::string unknown_command(CLI::App const& app, std::string const& parent,
                            std::vector<std::string> const& arguments, std::size_t at) {
  auto const commands = app.get_subcommands([](CLI::App const*) { return true; });
  if (commands.empty() || at >= arguments.size() || arguments[at].starts_with('-')) return {};
  std::vector<std::string> names;
  for (auto const* command : commands) names.push_back(command->get_name());
  auto const near = did_you_mean(near_words(arguments[at], names));
  return '"' + arguments[at] + "\" is no command" +
         (parent.empty() ? "" : " of \"" + parent + '"') + (near.empty() ? "" : "; " + near);
}

}  // namespace

ExitCode run(std::vector<std::string> const& arguments, Context& context) {
  CLI::App app{kAbout, "keydrift"};
  app.formatter(std::make_shared<HelpFormatter>());
  app.footer(kFooter);
  app.require_subcommand(1);
  app.set_version_flag("--version", kVersion, "Show the version");

  Invocation invocation;
  for (auto const add :
       {add_proof, add_collate, add_redetermine, add_keyout, add_amend, add_convert, add_lexicon}) {
    add(app, invocation);
  }
  for (auto* command : app.get_subcommands({})) {
    // Commands of two words have their options behind the second.
    if (!command->get_subcommands({}).empty()) continue;
    add_limit_option(*command, invocation.limits);
    add_encoding_option(*command, invocation.encoding);
  }

  // CLI11 takes the arguments from the back.
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  try {
    app.parse(reversed);
  } catch (CLI::ParseError const& error) {
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
      app.exit(error, context.out, context.err);
      return kNothingToReport;
    }
    std::string command;
    std::size_t words = 0;
    CLI::App const* at = &app;
    while (!at->get_subcommands().empty()) {
      at = at->get_subcommands().front();
      command += " " + at->get_name();
      ++words;
    }
    auto const unknown =
        unknown_command(*at, words == 0 ? std::string{} : at->get_name(), arguments, words);
    context.err << "keydrift: " << (unknown.empty() ? error.what() : unknown) << '\n';
    context.err << "  `keydrift" << command << " --help` shows what is possible\n";
    return kBadUsage;
  }
  context.limits = invocation.limits;
  context.encoding = invocation.encoding;
  return invocation.run(context);
}

}  // namespace keydrift::program

#pragma once
// What a command may touch: its streams, and what is known of the terminal behind them.

#include <functional>
#include <iosfwd>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text_labels.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/program/exit_code.hpp"
#include "keydrift/reports/page.hpp"

namespace CLI {
class App;
}

namespace keydrift::program {

struct Context {
  std::ostream& out;
  std::ostream& err;
  TerminalStyle style;                 // for reports on `out`
  bool show_progress{false};           // `err` is a terminal
  ReadLimits limits{};                 // for the editions to be loaded
  std::optional<Encoding> encoding{};  // of text files that are not UTF-8, as the user says
  // What a command made and its caller may leave to the system at the end of the process: taking
  // large editions apart takes as long as the report.
  std::vector<std::shared_ptr<void const>> kept{};
};

// Asks the terminals behind standard output and standard error.  NO_COLOR (any value that is not
// empty) and TERM=dumb turn faces off; without a terminal the width is 80 and faces are off.
[[nodiscard]] Context make_context(std::ostream& out, std::ostream& err);

// The command that the arguments ask for, once parsed.
struct Invocation {
  std::function<ExitCode(Context&)> run;
  ReadLimits limits;
  std::optional<Encoding> encoding;
};

// Each adds its subcommand to the app.
void add_proof(CLI::App& app, Invocation& invocation);
void add_collate(CLI::App& app, Invocation& invocation);
void add_redetermine(CLI::App& app, Invocation& invocation);
void add_amend(CLI::App& app, Invocation& invocation);
void add_keyout(CLI::App& app, Invocation& invocation);
void add_convert(CLI::App& app, Invocation& invocation);
void add_lexicon(CLI::App& app, Invocation& invocation);

// The whole program; arguments without the program's name.
[[nodiscard]] ExitCode run(std::vector<std::string> const& arguments, Context& context);

// --width and --ascii, as given to a command with a terminal report.
struct StyleOptions {
  unsigned width{0};  // 0: as the terminal is
  bool ascii{false};
  [[nodiscard]] TerminalStyle apply(TerminalStyle style) const;
};
void add_style_options(CLI::App& command, std::shared_ptr<StyleOptions> const& options);

// Prints findings on standard error: errors in full; warnings and information are counted in one
// line each that says how to see them.
void print_findings(Context& context, std::span<Finding const> findings);
void print_finding(Context& context, Finding const& finding);
[[nodiscard]] bool has_error(std::span<Finding const> findings);

}  // namespace keydrift::program

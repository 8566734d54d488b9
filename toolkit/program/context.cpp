#include "keydrift/program/context.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>
#include <map>
#include <ostream>
#include <string_view>

namespace keydrift::program {

Context make_context(std::ostream& out, std::ostream& err) {
  Context context{out, err, {}, ::isatty(STDERR_FILENO) != 0};
  if (::isatty(STDOUT_FILENO) != 0) {
    winsize size{};
    if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) {
      // Lines longer than 120 cells are hard to read, however wide the window is.
      context.style.width = std::clamp<unsigned>(size.ws_col, 40, 120);
    }
    auto const* no_colour = std::getenv("NO_COLOR");  // convention of no-color.org
    auto const* term = std::getenv("TERM");
    context.style.colour = (no_colour == nullptr || *no_colour == '\0') && term != nullptr &&
                           std::string_view{term} != "dumb";
  }
  return context;
}

TerminalStyle StyleOptions::apply(TerminalStyle style) const {
  if (width != 0) style.width = width;
  if (ascii) style.unicode = false;
  return style;
}

void add_style_options(CLI::App& command, std::shared_ptr<StyleOptions> const& options) {
  command.add_option("--width", options->width, "Width of the terminal report in columns")
      ->check(CLI::Range(40, 400).description(""))
      ->type_name("N");
  command.add_flag("--ascii", options->ascii, "Use ASCII characters only in the terminal report");
}

void print_finding(Context& context, Finding const& finding) { context.err << to_text(finding); }

void print_findings(Context& context, std::span<Finding const> findings) {
  struct Counts {
    std::size_t warnings{};
    std::size_t information{};
  };
  std::map<std::string, Counts> remarks;
  for (auto const& finding : findings) {
    switch (finding.severity) {
      case Severity::error:
        print_finding(context, finding);
        break;
      case Severity::warning:
        ++remarks[finding.file].warnings;
        break;
      case Severity::information:
        ++remarks[finding.file].information;
        break;
    }
  }
  for (auto const& [file, counts] : remarks) {
    if (counts.warnings == 0) continue;
    context.err << file << ": " << counts.warnings
                << (counts.warnings == 1 ? " doubtful point" : " doubtful points")
                << " while reading; `keydrift proof` shows them for a key\n";
  }
}

bool has_error(std::span<Finding const> findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](Finding const& f) { return f.severity == Severity::error; });
}

}  // namespace keydrift::program

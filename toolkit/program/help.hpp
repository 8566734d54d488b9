#pragma once
// How `--help` is set: nothing wider than 80 columns.

#include <CLI/CLI.hpp>
#include <string>

namespace keydrift::program {

// Breaks what options, commands and footers say at blanks.  In a footer indented lines (examples)
// stay as they are; the others are paragraphs, parted by empty lines.
class HelpFormatter : public CLI::Formatter {
 public:
  HelpFormatter() { column_width(26); }
  [[nodiscard]] std::string make_option_desc(CLI::Option const* option) const override;
  [[nodiscard]] std::string make_subcommand(CLI::App const* command) const override;
  [[nodiscard]] std::string make_footer(CLI::App const* app) const override;

 private:
  [[nodiscard]] std::string in_column(std::string const& text) const;
};

}  // namespace keydrift::program

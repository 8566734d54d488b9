#include "keydrift/program/help.hpp"

#include <sstream>

#include "keydrift/reports/page.hpp"

namespace keydrift::program {
namespace {

constexpr std::size_t kWidth = 80;

std::string wrapped(std::string const& text, std::size_t width) {
  std::string out;
  for (auto const& line : reports::wrap({{text, reports::Face::plain}}, width, 0, 0, true)) {
    if (!out.empty()) out += '\n';
    for (auto const& run : line.runs) out += run.text;
  }
  return out;
}

}  // namespace

std::string HelpFormatter::in_column(std::string const& text) const {
  return wrapped(text, kWidth - get_column_width());
}

std::string HelpFormatter::make_option_desc(CLI::Option const* option) const {
  return in_column(option->get_description());
}

std::string HelpFormatter::make_subcommand(CLI::App const* command) const {
  std::ostringstream out;
  CLI::detail::format_help(out, command->get_display_name(true),
                           in_column(command->get_description()), get_column_width());
  return out.str();
}

std::string HelpFormatter::make_footer(CLI::App const* app) const {
  std::istringstream lines{app->get_footer()};
  std::string out;
  std::string paragraph;
  auto const end_paragraph = [&] {
    if (!paragraph.empty()) out += wrapped(paragraph, kWidth) + '\n';
    paragraph.clear();
  };
  for (std::string line; std::getline(lines, line);) {
    if (!line.empty() && line.front() != ' ') {
      paragraph += paragraph.empty() ? line : ' ' + line;
      continue;
    }
    end_paragraph();
    out += line + '\n';
  }
  end_paragraph();
  return out;
}

}  // namespace keydrift::program

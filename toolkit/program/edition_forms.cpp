#include "keydrift/program/edition_forms.hpp"

#include <array>
#include <utility>

#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/sdd_write.hpp"
#include "keydrift/reports/key_pages.hpp"

namespace keydrift::program {
namespace {

using namespace std::string_view_literals;

struct FormName {
  std::string_view name;
  EditionForm form;
};
constexpr std::array kForms{
    FormName{"parallel"sv, EditionForm::parallel}, FormName{"indented"sv, EditionForm::indented},
    FormName{"serial"sv, EditionForm::serial},     FormName{"json"sv, EditionForm::json},
    FormName{"sdd"sv, EditionForm::sdd},           FormName{"html"sv, EditionForm::html},
    FormName{"markdown"sv, EditionForm::markdown}, FormName{"text"sv, EditionForm::parallel}};
constexpr std::array kExtensions{
    FormName{".json"sv, EditionForm::json},   FormName{".xml"sv, EditionForm::sdd},
    FormName{".html"sv, EditionForm::html},   FormName{".htm"sv, EditionForm::html},
    FormName{".md"sv, EditionForm::markdown}, FormName{".txt"sv, EditionForm::parallel}};

// With the statements that its words make.
Edition with_statements(Edition edition, Lexicon const& lexicon, std::vector<Finding>& findings) {
  auto const more = read_statements(edition, lexicon);
  findings.insert(findings.end(), more.begin(), more.end());
  sort_findings(findings);
  return edition;
}

}  // namespace

std::vector<std::string> edition_form_names() {
  std::vector<std::string> names;
  for (auto const& one : kForms) names.emplace_back(one.name);
  return names;
}

std::optional<EditionForm> edition_form(std::string_view name, std::string_view output) {
  for (auto const& one : kForms) {
    if (name == one.name) return one.form;
  }
  if (!name.empty()) return std::nullopt;
  for (auto const& one : kExtensions) {
    if (output.ends_with(one.name)) return one.form;
  }
  return std::nullopt;
}

Loaded<std::string> write_edition(Edition const& edition, EditionForm form, PrintOptions options,
                                  Lexicon const& lexicon, std::vector<Finding> const& findings) {
  Loaded<std::string> loaded;
  auto told = findings;
  switch (form) {
    case EditionForm::json: {
      auto const read = with_statements(relabelled(edition, options), lexicon, told);
      loaded.value = write_key_json(read, told);
      return loaded;
    }
    case EditionForm::sdd: {
      auto sdd = write_sdd(with_statements(relabelled(edition, options), lexicon, told));
      loaded.findings = std::move(sdd.findings);
      loaded.value = std::move(sdd.text);
      return loaded;
    }
    case EditionForm::html:
      loaded.value = key_html(relabelled(edition, options));
      return loaded;
    case EditionForm::markdown:
      loaded.value = key_markdown(relabelled(edition, options));
      return loaded;
    case EditionForm::parallel:
      options.layout = PrintLayout::parallel;
      break;
    case EditionForm::indented:
      options.layout = PrintLayout::indented;
      break;
    case EditionForm::serial:
      options.layout = PrintLayout::serial;
      break;
  }
  return print_key(edition, options);
}

}  // namespace keydrift::program

// The proof of one edition as an HTML page: couplets as printed, the findings beside them.
#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "keydrift/reports/html.hpp"
#include "keydrift/reports/html_parts.hpp"
#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/wording_proof.hpp"

namespace keydrift {

using namespace reports;
namespace {

std::string_view mark_of_severity(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "●";
    case Severity::warning:
      return "◐";
    case Severity::information:
      return "○";
  }
  return "";
}

std::string place_words(Place const& place) {
  return fmt::format("{}:{}", place.line, place.column);
}

// The findings beside the couplet that they stand in, by row of Edition::couplets; those of the
// front matter, of other files and of the whole key apart.
struct Beside {
  std::vector<std::vector<Finding const*>> couplet;
  std::vector<Finding const*> elsewhere;
};

Beside find_places(Edition const& edition, std::span<Finding const> findings) {
  // Couplets may be printed in parts, so each lead begins a stretch of its couplet.
  std::vector<std::tuple<std::uint32_t, std::uint32_t, std::uint32_t>> begins;
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    auto const add = [&](Place const& place) { begins.emplace_back(place.line, place.column, c); };
    add(edition.couplets[c].place);
    for (auto const& lead : edition.couplets[c].leads) add(lead.place);
  }
  std::sort(begins.begin(), begins.end());
  Beside beside;
  beside.couplet.resize(edition.couplets.size());
  for (auto const& finding : findings) {
    auto const after =
        std::upper_bound(begins.begin(), begins.end(),
                         std::tuple{finding.place.line, finding.place.column,
                                    static_cast<std::uint32_t>(edition.couplets.size())});
    if (finding.file != edition.name || after == begins.begin()) {
      beside.elsewhere.push_back(&finding);
    } else {
      beside.couplet[std::get<2>(*std::prev(after))].push_back(&finding);
    }
  }
  return beside;
}

void write_finding(HtmlWriter& html, Finding const& finding, bool with_file) {
  html.raw("<li><b>").text(mark_of_severity(finding.severity)).raw("</b> ");
  html.text(sentence(capitalised(finding.message))).raw(" <span class=\"small\">");
  if (with_file && !finding.printed.empty()) html.text(in_curly_quotes(finding.printed) + " ");
  if (!finding.remedy.empty()) html.text(sentence(capitalised(finding.remedy)) + " ");
  html.text(fmt::format("{}{} [{}]", with_file ? finding.file + ":" : std::string{},
                        place_words(finding.place), finding.code));
  for (auto const& related : finding.related) {
    html.text(fmt::format("; see {}: {}", place_words(related.place), related.message));
  }
  html.raw("</span></li>\n");
}

void write_list_of_findings(HtmlWriter& html, std::vector<Finding const*> const& findings,
                            bool with_file) {
  if (findings.empty()) return;
  html.raw("<ul class=\"plain\">\n");
  for (auto const* finding : findings) write_finding(html, *finding, with_file);
  html.raw("</ul>\n");
}

// The mark of the worst finding beside a couplet.
std::string_view worst_mark(std::vector<Finding const*> const& findings) {
  auto const worst = std::max_element(
      findings.begin(), findings.end(),
      [](Finding const* a, Finding const* b) { return a->severity < b->severity; });
  return worst == findings.end() ? std::string_view{} : mark_of_severity((*worst)->severity);
}

// "Errors: couplet 7, couplet 14", as links.
void write_jumps(HtmlWriter& html, Edition const& edition, Beside const& beside) {
  for (auto const& group : finding_groups()) {
    if (group.severity == Severity::information) continue;
    bool first = true;
    for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
      auto const& found = beside.couplet[c.index];
      bool const any = std::any_of(found.begin(), found.end(), [&](Finding const* finding) {
        return finding->severity == group.severity;
      });
      if (!any) continue;
      html.raw(first ? "<p>" : ", ");
      if (first)
        html.text(
            fmt::format("{} {} in couplets ", mark_of_severity(group.severity), group.heading));
      first = false;
      html.raw(fmt::format("<a href=\"#c{}\">", c.index)).text(edition[c].label).raw("</a>");
    }
    if (!first) html.raw("</p>\n");
  }
}

void write_figures(HtmlWriter& html, Edition const& edition, EditionProof const& proof) {
  for (auto const& group : proof_figures(edition, proof)) {
    html.element("h3", group.heading).raw("\n");
    for (auto const& text : group.before) html.element("p", text).raw("\n");
    html.raw("<div class=\"figures\">\n");
    for (auto const& figure : group.figures) {
      html.raw("<div>");
      for (unsigned level = 0; level < figure.level; ++level) html.raw("<span class=\"m\"></span>");
      html.raw("<span>").text(figure.what).raw("</span><span class=\"dots\"></span>");
      html.raw("<span class=\"n\">").text(figure.number).raw("</span></div>\n");
    }
    html.raw("</div>\n");
    if (!group.after.empty()) html.element("p", group.after, "class=\"small\"").raw("\n");
  }
}

}  // namespace

std::string proof_html(Edition const& edition, EditionProof const& proof) {
  HtmlWriter html;
  auto const label = short_label(edition);
  auto const title = edition.front.title.empty()
                         ? "Proof of " + label
                         : fmt::format("{} ({}): proof", edition.front.title, label);
  html.raw("<header>\n").element("h1", title).raw("\n");
  html.element("p", edition.name, "class=\"sub\"").raw("\n");
  if (auto const scope = scope_in_words(edition); !scope.empty()) {
    html.element("p", capitalised(scope), "class=\"sub\"").raw("\n");
  }
  html.raw("</header>\n");
  html.raw(
      "<nav>\n<a href=\"#numbers\">Numbers</a> <a href=\"#couplets\">Couplets</a>\n</nav>\n"
      "<div class=\"filter\"><label for=\"filter\">Show only what names</label>"
      "<input id=\"filter\" type=\"search\" autocomplete=\"off\" "
      "placeholder=\"a taxon, a word, a kind of finding\">"
      "<output id=\"told\" for=\"filter\"></output></div>\n");
  html.element("p", finding_counts(proof.findings)).raw("\n");
  auto const beside = find_places(edition, proof.findings);
  write_list_of_findings(html, beside.elsewhere, true);
  write_jumps(html, edition, beside);

  html.open_section("numbers", "Numbers");
  write_figures(html, edition, proof);
  html.element("p", sentence(capitalised(coverage_in_words(proof.coverage))), "class=\"small\"");
  html.close_section();

  html.open_section("couplets", "Couplets, and what was found in them");
  html.raw("<p class=\"small\">● error; ◐ warning; ○ for information</p>\n");
  for (CoupletId c; c.index < edition.couplets.size(); ++c.index) {
    auto const& found = beside.couplet[c.index];
    html.raw(fmt::format("<div class=\"pair\" id=\"c{}\" data-row><span class=\"mark\">", c.index));
    html.text(worst_mark(found));
    html.raw("</span><div>");
    for (std::uint32_t i = 0; i < edition[c].leads.size(); ++i) write_lead(html, edition, {c, i});
    if (edition[c].leads.empty()) html.element("p", edition[c].label, "class=\"none\"");
    html.raw("</div><div class=\"new\" data-edition=\"\">");
    write_list_of_findings(html, found, false);
    html.raw("</div></div>\n");
  }
  html.close_section();
  return html_page(title, std::move(html).take());
}

}  // namespace keydrift

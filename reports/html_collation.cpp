// The collation of two editions as sections of an HTML page.
#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "keydrift/reports/html_parts.hpp"
#include "keydrift/reports/setting.hpp"

namespace keydrift::reports {
namespace {

void figure(HtmlWriter& html, std::string_view mark, std::string_view left,
            std::string_view right) {
  html.raw("<div><span class=\"m\">").text(mark).raw("</span><span>").text(left);
  html.raw("</span><span class=\"dots\"></span><span class=\"n\">").text(right);
  html.raw("</span></div>\n");
}

void write_couplet(HtmlWriter& html, Edition const& edition, std::vector<CoupletId> const& couplets,
                   std::string_view absent) {
  if (couplets.empty()) {
    html.element("p", absent, "class=\"none\"");
    return;
  }
  for (auto const couplet : couplets) {
    for (std::uint32_t i = 0; i < edition[couplet].leads.size(); ++i) {
      write_lead(html, edition, {couplet, i});
    }
  }
}

void column_heads(HtmlWriter& html, CollationView const& view) {
  html.raw("<div class=\"pair colheads\"><span></span><span>").text(view.called.old_name);
  html.raw("</span><span>").text(view.called.new_name).raw("</span></div>\n");
}

void open_new_column(HtmlWriter& html, CollationView const& view) {
  html.raw("<div class=\"new\" data-edition=\"").text(view.called.new_name).raw("\">");
}

void write_wording(HtmlWriter& html, Edition const& edition,
                   std::optional<StatementId> const& statement, std::optional<LeadId> const& lead) {
  auto const at = lead ? lead : statement ? std::optional{statement->lead} : std::nullopt;
  auto const words = statement_words(edition, statement);
  html.raw("<div class=\"lead\"><span class=\"l\">").text(name_of(edition, at)).raw("</span>");
  if (!words.empty()) {
    html.raw("<span class=\"t\">").text(in_curly_quotes(words)).raw("</span>");
  } else {
    html.raw("<span class=\"t none\">").text(at ? "not stated" : "no such lead").raw("</span>");
  }
  html.raw("</div>");
}

void write_below(HtmlWriter& html, Edition const& edition, TaxonSet const& taxa) {
  if (taxa.empty()) return;
  html.raw("<div class=\"small\">");
  if (taxa.size() > 6) {
    html.text(counted(taxa.size(), "taxon", "taxa") + " below");
  } else {
    html.text("below: " + taxon_names(edition, taxa.list(), ", "));
  }
  html.raw("</div>");
}

void write_route_step(HtmlWriter& html, Edition const& edition, std::optional<LeadId> const& lead) {
  if (!lead) {
    html.raw("<p class=\"none\">no such step</p>");
    return;
  }
  write_lead(html, edition, *lead);
}

void write_taxon(HtmlWriter& html, CollationView const& view, TaxonChange const& taxon) {
  html.raw("<div data-row class=\"taxon\">\n<h3>");
  html.text(taxa_in_words(taxon, view.old_edition, view.new_edition)).raw("</h3>\n");
  html.element("p", sentence(capitalised(events_in_words(taxon.events))));
  auto const characters = [&](std::string_view said, std::vector<std::string> const& ids,
                              std::size_t others) {
    if (ids.empty()) return;
    std::vector<std::string> labels;
    for (auto const& id : ids) labels.push_back(view.label(id));
    if (others > 0) labels.push_back(counted(others, "other"));
    html.element("p", fmt::format("{} {}.", said, enumerated(labels)), "class=\"small\"");
  };
  characters("No longer on its way:", taxon.characters_lost, taxon.others_lost);
  characters("New on its way:", taxon.characters_gained, taxon.others_gained);
  if (!taxon.steps.empty()) {
    html.raw("<details class=\"route\"><summary>its way, step by step</summary>\n");
    for (auto const& step : taxon.steps) {
      html.raw("<div class=\"pair\"><span class=\"mark\">").text(mark_of(step));
      html.raw("</span><div>");
      write_route_step(html, view.old_edition, step.old_lead);
      html.raw("</div>");
      open_new_column(html, view);
      write_route_step(html, view.new_edition, step.new_lead);
      html.raw("</div></div>\n");
    }
    html.raw("</details>\n");
  }
  html.raw("</div>\n");
}

void write_role(HtmlWriter& html, CollationView const& view, RoleChange const& role) {
  auto told = capitalised(view.label(role.character));
  told += fmt::format(": {}", to_word(role.transition));
  if (!role.numbers.empty()) told += fmt::format(", {}", role.numbers);
  if (!role.limits.empty()) told += fmt::format(", {}", enumerated(role.limits));
  if (!role.exceptions_added.empty()) {
    told += fmt::format(", for {}", enumerated(role.exceptions_added));
  }
  if (!role.exceptions_removed.empty()) {
    told += fmt::format(", no longer for {}", enumerated(role.exceptions_removed));
  }
  html.raw("<div class=\"pair\" data-row><span class=\"mark\"></span><span class=\"told\">");
  html.text(told).raw("</span><span></span><div>");
  write_wording(html, view.old_edition, role.old_statement, role.old_lead);
  write_below(html, view.old_edition, role.old_taxa);
  html.raw("</div>");
  open_new_column(html, view);
  write_wording(html, view.new_edition, role.new_statement, role.new_lead);
  write_below(html, view.new_edition, role.new_taxa);
  html.raw("</div></div>\n");
}

void write_findings(HtmlWriter& html, std::string_view heading, std::vector<Finding> const& list) {
  if (list.empty()) return;
  html.element("h3", heading);
  html.raw("<ul class=\"plain\">\n");
  for (auto const& finding : list) {
    html.raw("<li data-row>");
    html.text(fmt::format("{}:{}:{}: {} ", finding.file, finding.place.line, finding.place.column,
                          to_word(finding.severity)));
    html.text(sentence(finding.message));
    if (!finding.printed.empty()) html.raw(" ").text(in_curly_quotes(finding.printed)).raw(" ");
    if (!finding.remedy.empty()) {
      html.raw(" <span class=\"small\">")
          .text(sentence(capitalised(finding.remedy)))
          .raw("</span>");
    }
    html.raw("</li>\n");
  }
  html.raw("</ul>\n");
}

}  // namespace

void write_lead(HtmlWriter& html, Edition const& edition, LeadId lead) {
  html.raw("<div class=\"lead\"><span class=\"l\">").text(lead_name(edition, lead));
  html.raw("</span><span class=\"t\">").text(edition[lead].text);
  html.raw("</span><span class=\"d\">").text(destination_words(edition, edition[lead]));
  html.raw("</span></div>");
}

void write_editions(HtmlWriter& html, CollationView const& view) {
  html.raw(
      "<table><thead><tr><th></th><th>old edition</th><th>new edition</th></tr></thead><tbody>\n");
  auto const row = [&](std::string_view what, auto const& get) {
    std::string const before = get(view.old_edition);
    std::string const after = get(view.new_edition);
    if (before.empty() && after.empty()) return;
    html.raw("<tr><td class=\"sub\">").text(what).raw("</td><td>").text(before);
    html.raw("</td><td>").text(after).raw("</td></tr>\n");
  };
  row("title", [](Edition const& e) { return e.front.title; });
  row("edition", [](Edition const& e) { return short_label(e); });
  row("authors", [](Edition const& e) { return enumerated(e.front.authors); });
  row("region", [](Edition const& e) { return e.front.scope.region; });
  row("taxa", [](Edition const& e) { return e.front.scope.taxa; });
  row("source", [](Edition const& e) { return e.name; });
  row("couplets", [](Edition const& e) { return grouped(e.couplets.size()); });
  row("taxa keyed", [](Edition const& e) { return grouped(e.taxa.size()); });
  html.raw("</tbody></table>\n");
}

void write_collation_summary(HtmlWriter& html, CollationView const& view) {
  auto const& collation = view.collation;
  html.open_section("changes", "What changed in the key");
  html.element("p", collation.changes_meaning
                        ? "The meaning of the key changes."
                        : "The meaning of the key does not change: at most numbers, layout and "
                          "words that say the same.");
  html.raw("<div class=\"figures\">\n");
  auto const count = [&](std::string_view mark, std::string_view left, std::size_t number) {
    if (number > 0) figure(html, mark, left, grouped(number));
  };
  auto const couplets = [&](CoupletEvent event) {
    auto const number = std::count_if(collation.couplets.begin(), collation.couplets.end(),
                                      [&](CoupletChange const& c) { return has_event(c, event); });
    return static_cast<std::size_t>(number);
  };
  for (auto const& [event, words] :
       {std::pair{CoupletEvent::inserted, "couplets inserted"},
        {CoupletEvent::removed, "couplets removed"},
        {CoupletEvent::lead_added, "couplets with a lead added"},
        {CoupletEvent::lead_dropped, "couplets with a lead dropped"},
        {CoupletEvent::restated, "couplets saying something else"},
        {CoupletEvent::redirected, "couplets leading elsewhere"},
        {CoupletEvent::moved, "couplets hanging elsewhere"},
        {CoupletEvent::split, "couplets divided"},
        {CoupletEvent::merged, "couplets united"},
        {CoupletEvent::renumbered, "couplets renumbered"},
        {CoupletEvent::leads_swapped, "couplets with their leads in another order"},
        {CoupletEvent::reworded, "couplets in other words that say the same"}}) {
    count(mark_of(event), words, couplets(event));
  }
  auto const taxa = [&](TaxonEvent event) {
    auto const number = std::count_if(collation.taxa.begin(), collation.taxa.end(),
                                      [&](TaxonChange const& t) { return has_event(t, event); });
    return static_cast<std::size_t>(number);
  };
  for (auto const& [event, words] :
       {std::pair{TaxonEvent::other_route, "taxa reached by another way"},
        {TaxonEvent::restated_route, "taxa reached by the same way, which says something else"},
        {TaxonEvent::renamed, "taxa renamed"},
        {TaxonEvent::overlapping, "taxa overlapping"},
        {TaxonEvent::entered, "taxa entered"},
        {TaxonEvent::left, "taxa left"},
        {TaxonEvent::more_ends, "taxa keying out in more places"},
        {TaxonEvent::fewer_ends, "taxa keying out in fewer places"},
        {TaxonEvent::only_by_exception, "taxa now reached only through an exception"}}) {
    count("", words, taxa(event));
  }
  count("", "taxa divided", taxa_divided(collation));
  count("", "taxa united", taxa_united(collation));
  auto const exceptions = static_cast<std::size_t>(std::count_if(
      collation.roles.begin(), collation.roles.end(),
      [](RoleChange const& role) { return role.transition == RoleTransition::became_exception; }));
  count("", "characters that became exception notes", exceptions);
  count("", "other changes in the role of a character", collation.roles.size() - exceptions);
  count("", "faults mended", collation.mended.size());
  count("", "faults introduced", collation.introduced.size());
  html.raw("</div>\n");
  for (auto const& change : collation.scope_changes) {
    html.element("p", "Scope: " + sentence(change));
  }
  html.close_section();
}

void write_taxa(HtmlWriter& html, CollationView const& view) {
  html.open_section("taxa", "Taxa that change couplet");
  bool any = false;
  for (auto const& taxon : view.collation.taxa) {
    if (!changes_couplet(taxon)) continue;
    any = true;
    write_taxon(html, view, taxon);
  }
  if (!any) html.element("p", "None.", "class=\"none\"");
  html.close_section();
}

void write_roles(HtmlWriter& html, CollationView const& view) {
  auto const& roles = view.collation.roles;
  html.open_section("characters", "Characters that change their role");
  auto const is_exception = [](RoleChange const& role) {
    return role.transition == RoleTransition::became_exception;
  };
  auto const group = [&](std::string_view heading, bool exceptions) {
    if (std::none_of(roles.begin(), roles.end(),
                     [&](RoleChange const& r) { return is_exception(r) == exceptions; })) {
      return;
    }
    html.element("h3", heading);
    column_heads(html, view);
    for (auto const& role : roles) {
      if (is_exception(role) == exceptions) write_role(html, view, role);
    }
  };
  group("Became exception notes", true);
  group("Other changes", false);
  if (roles.empty()) html.element("p", "None.", "class=\"none\"");
  html.close_section();
}

void write_couplets(HtmlWriter& html, CollationView const& view) {
  html.open_section("couplets", "Couplets side by side");
  html.raw("<p class=\"small\">");
  bool first = true;
  for (auto const& meaning : mark_legend()) {
    if (!first) html.raw("; ");
    first = false;
    html.text(fmt::format("{} {}", meaning.mark, meaning.meaning));
  }
  html.raw("</p>\n");
  auto const write = [&](CoupletChange const& change) {
    html.raw("<div class=\"pair\" data-row><span class=\"mark\">").text(marks_of(change));
    html.raw("</span><span class=\"told\">");
    html.text(fmt::format("{}: {}", couplets_in_words(change, view.old_edition, view.new_edition),
                          events_in_words(change.events)));
    html.raw("</span><span></span><div>");
    write_couplet(html, view.old_edition, change.old_couplets, "not in the old edition");
    html.raw("</div>");
    open_new_column(html, view);
    write_couplet(html, view.new_edition, change.new_couplets, "not in the new edition");
    html.raw("</div></div>\n");
  };
  column_heads(html, view);
  std::size_t unchanged = 0;
  for (auto const& change : view.collation.couplets) {
    if (change.changes_meaning) {
      write(change);
    } else {
      ++unchanged;
    }
  }
  if (unchanged > 0) {
    html.raw("<details><summary>");
    html.text(counted(unchanged, "couplet") + " whose meaning is unchanged");
    html.raw("</summary>\n");
    for (auto const& change : view.collation.couplets) {
      if (!change.changes_meaning) write(change);
    }
    html.raw("</details>\n");
  }
  html.close_section();
}

void write_faults(HtmlWriter& html, CollationView const& view) {
  auto const& collation = view.collation;
  html.open_section("faults", "Faults mended and made");
  write_findings(
      html, fmt::format("Faults of {} that {} mends", view.called.old_name, view.called.new_name),
      collation.mended);
  write_findings(html, fmt::format("Faults that {} introduces", view.called.new_name),
                 collation.introduced);
  write_findings(html, "Faults that last", collation.lasting);
  write_findings(html, "Remarks on the names", collation.taxa_matching.findings);
  if (collation.mended.empty() && collation.introduced.empty() && collation.lasting.empty() &&
      collation.taxa_matching.findings.empty()) {
    html.element("p", "None.", "class=\"none\"");
  }
  html.close_section();
}

void write_coverage(HtmlWriter& html, CollationView const& view) {
  html.open_section("understood", "How far the words were understood");
  html.element("p", sentence(fmt::format("{}: {}", view.called.old_name,
                                         coverage_in_words(view.collation.old_coverage))));
  html.element("p", sentence(fmt::format("{}: {}", view.called.new_name,
                                         coverage_in_words(view.collation.new_coverage))));
  html.close_section();
}

void write_contents(HtmlWriter& html, bool with_specimens) {
  html.raw("<nav>\n");
  if (with_specimens) {
    html.raw(
        "<a href=\"#outcomes\">Outcomes</a> <a href=\"#specimens\">Sheets to look at</a> "
        "<a href=\"#names\">Names to update</a> <a href=\"#tests\">Types and look-alikes</a>\n");
  }
  html.raw(
      "<a href=\"#changes\">What changed</a> <a href=\"#taxa\">Taxa</a> "
      "<a href=\"#characters\">Characters</a> <a href=\"#couplets\">Couplets</a> "
      "<a href=\"#faults\">Faults</a> <a href=\"#understood\">How far understood</a>\n</nav>\n");
  html.raw(
      "<div class=\"filter\"><label for=\"filter\">Show only what names</label>"
      "<input id=\"filter\" type=\"search\" autocomplete=\"off\" "
      "placeholder=\"a taxon, a character, a couplet, a sheet\">"
      "<output id=\"told\" for=\"filter\"></output></div>\n");
}

}  // namespace keydrift::reports

namespace keydrift {

using namespace reports;

std::string collation_html(Edition const& old_edition, Edition const& new_edition,
                           Collation const& collation) {
  CollationView const view{old_edition, new_edition, collation,
                           edition_names(old_edition, new_edition),
                           CharacterLabels{collation.characters}};
  HtmlWriter html;
  auto const title = fmt::format("{} and {} collated", view.called.old_name, view.called.new_name);
  html.raw("<header>\n").element("h1", title).raw("\n");
  html.element("p", new_edition.front.title, "class=\"sub\"");
  html.raw("</header>\n");
  write_contents(html, false);
  write_editions(html, view);
  write_collation_summary(html, view);
  write_taxa(html, view);
  write_roles(html, view);
  write_couplets(html, view);
  write_faults(html, view);
  write_coverage(html, view);
  return html_page(title, std::move(html).take());
}

}  // namespace keydrift

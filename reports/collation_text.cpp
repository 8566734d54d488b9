// The collation of two editions, for a terminal: the summary and the order of the sections.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <set>
#include <utility>

#include "keydrift/key/side_by_side.hpp"
#include "keydrift/reports/collation_parts.hpp"
#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/terminal.hpp"

namespace keydrift {
namespace reports {

bool has_event(TaxonChange const& taxon, TaxonEvent event) {
  return std::find(taxon.events.begin(), taxon.events.end(), event) != taxon.events.end();
}

bool has_event(CoupletChange const& couplet, CoupletEvent event) {
  return std::find(couplet.events.begin(), couplet.events.end(), event) != couplet.events.end();
}

std::size_t taxa_divided(Collation const& collation) {
  std::set<TaxonId> taxa;
  for (auto const& change : collation.taxa) {
    if (has_event(change, TaxonEvent::split)) {
      taxa.insert(change.old_taxa.begin(), change.old_taxa.end());
    }
  }
  return taxa.size();
}

std::size_t taxa_united(Collation const& collation) {
  std::set<TaxonId> taxa;
  for (auto const& change : collation.taxa) {
    if (has_event(change, TaxonEvent::lumped)) {
      taxa.insert(change.new_taxa.begin(), change.new_taxa.end());
    }
  }
  return taxa.size();
}

void set_column_heads(Page& page, CollationView const& view) {
  auto const heads = [&page](std::string const& name) {
    return wrap({{name, Face::bold}}, page.column_width(), 0, 0, page.unicode());
  };
  page.columns("", heads(view.called.old_name), heads(view.called.new_name));
}

}  // namespace reports

using namespace reports;
namespace {

template <class Range, class Predicate>
std::size_t count_if(Range const& range, Predicate predicate) {
  return static_cast<std::size_t>(std::count_if(range.begin(), range.end(), predicate));
}

void set_edition(Page& page, std::string_view side, Edition const& edition) {
  auto text = edition.name;
  if (!edition.front.title.empty()) text = fmt::format("{} ({})", edition.front.title, text);
  page.item(side, text, 2, 14);
}

void set_summary(Page& page, CollationView const& view) {
  auto const& collation = view.collation;
  page.heading("In short");
  page.paragraph(collation.changes_meaning
                     ? "The meaning of the key changes."
                     : "The meaning of the key does not change: at most numbers, layout and words "
                       "that say the same.",
                 2);
  page.blank();

  // The parts of a figure are set under it, behind their marks.
  auto const figure = [&page](std::string_view mark, std::string_view left, std::size_t count) {
    if (count == 0) return;
    page.entry({.label = {{std::string{mark}, Face::bold}},
                .label_width = 2,
                .text = {{std::string{left}, Face::plain}},
                .destination = {{grouped(count), Face::plain}}},
               4);
  };
  auto const& couplets = collation.couplets;
  page.leader(fmt::format("Couplets in {} and in {}", view.called.old_name, view.called.new_name),
              fmt::format("{} and {}", grouped(view.old_edition.couplets.size()),
                          grouped(view.new_edition.couplets.size())),
              2);
  auto const with = [&](auto... events) {
    return count_if(couplets,
                    [&](CoupletChange const& c) { return (has_event(c, events) || ...); });
  };
  figure("", "kept as they are", count_if(couplets, [](CoupletChange const& c) {
           return !c.changes_meaning && marks_of(c).empty();
         }));
  figure("·", "renumbered, reordered or reworded, and nothing else",
         count_if(couplets, [](CoupletChange const& c) { return marks_of(c) == "·"; }));
  figure("*", "inserted", with(CoupletEvent::inserted));
  figure("*", "with a lead added", with(CoupletEvent::lead_added));
  figure("†", "removed", with(CoupletEvent::removed));
  figure("†", "with a lead dropped", with(CoupletEvent::lead_dropped));
  figure("§", "saying something else", with(CoupletEvent::restated));
  figure("‡", "leading elsewhere", with(CoupletEvent::redirected));
  figure("‡", "hanging elsewhere", with(CoupletEvent::moved));
  figure("¶", "divided", with(CoupletEvent::split));
  figure("¶", "united", with(CoupletEvent::merged));

  auto const& roles = collation.roles;
  auto const exceptions = count_if(roles, [](RoleChange const& role) {
    return role.transition == RoleTransition::became_exception;
  });
  page.leader("Characters that became exception notes", grouped(exceptions), 2);
  page.leader("Other changes in the role of a character", grouped(roles.size() - exceptions), 2);

  page.leader(fmt::format("Taxa in {} and in {}", view.called.old_name, view.called.new_name),
              fmt::format("{} and {}", grouped(view.old_edition.taxa.size()),
                          grouped(view.new_edition.taxa.size())),
              2);
  auto const taxa = [&](TaxonEvent event) {
    return count_if(collation.taxa, [&](TaxonChange const& t) { return has_event(t, event); });
  };
  figure("", "reached by another way", taxa(TaxonEvent::other_route));
  figure("", "reached by the same way, which says something else",
         taxa(TaxonEvent::restated_route));
  figure("", "renamed", taxa(TaxonEvent::renamed));
  figure("", "divided", taxa_divided(collation));
  figure("", "united", taxa_united(collation));
  figure("", "overlapping", taxa(TaxonEvent::overlapping));
  figure("", "entered", taxa(TaxonEvent::entered));
  figure("", "left", taxa(TaxonEvent::left));
  figure("", "keying out in more places", taxa(TaxonEvent::more_ends));
  figure("", "keying out in fewer places", taxa(TaxonEvent::fewer_ends));
  figure("", "now reached only through an exception", taxa(TaxonEvent::only_by_exception));
  figure("", "no longer reached only through an exception",
         taxa(TaxonEvent::no_longer_by_exception));

  page.leader("Faults of the key mended, introduced, lasting",
              fmt::format("{}, {}, {}", grouped(collation.mended.size()),
                          grouped(collation.introduced.size()), grouped(collation.lasting.size())),
              2);
  if (!collation.scope_changes.empty()) {
    page.blank();
    bool first = true;
    for (auto const& change : collation.scope_changes) {
      page.item(first ? "Scope" : "", sentence(capitalised(change)), 2, 7);
      first = false;
    }
  }
  auto const presumed = count_if(collation.taxa_matching.matches, [](TaxonMatch const& match) {
    return match.relation == Relation::congruent && match.basis != MatchBasis::concept_map;
  });
  if (presumed > 0) {
    page.blank();
    page.paragraph(fmt::format("{} presumed to be the same in both editions because of {}; no "
                               "concept map says so.",
                               presumed == 1 ? "1 taxon is" : grouped(presumed) + " taxa are",
                               presumed == 1 ? "its name" : "their names"),
                   2);
  }
}

void set_findings(Page& page, std::string_view heading, std::span<Finding const> findings) {
  if (findings.empty()) return;
  page.heading(heading);
  bool first = true;
  for (auto const& finding : findings) {
    if (!first) page.blank();
    first = false;
    set_finding(page, finding);
  }
}

// What is behind the couplets.
void set_rest(Page& page, CollationView const& view) {
  auto const& collation = view.collation;
  set_findings(
      page, fmt::format("Faults of {} that {} mends", view.called.old_name, view.called.new_name),
      collation.mended);
  set_findings(page, fmt::format("Faults that {} introduces", view.called.new_name),
               collation.introduced);
  set_findings(page, "Remarks on the names", collation.taxa_matching.findings);
  page.heading("How far the words were understood");
  auto const understood = [&page](std::string_view name, Coverage const& coverage) {
    page.paragraph(sentence(fmt::format("{}: {}", name, coverage_in_words(coverage))), 2, 2);
  };
  understood(view.called.old_name, collation.old_coverage);
  understood(view.called.new_name, collation.new_coverage);
}

}  // namespace

std::string collation_text(Edition const& old_edition, Edition const& new_edition,
                           Collation const& collation, CollationTextOptions const& options) {
  CollationView const view{old_edition, new_edition, collation,
                           edition_names(old_edition, new_edition),
                           CharacterLabels{collation.characters}};
  Page page{options.style};
  page.title(fmt::format("{} and {} collated", view.called.old_name, view.called.new_name));
  set_edition(page, "Old edition", old_edition);
  set_edition(page, "New edition", new_edition);
  // The sections are set apart from each other and added in order.
  std::array<Page, 5> sections{page.further(), page.further(), page.further(), page.further(),
                               page.further()};
  auto& [summary, roles, taxa, couplets, rest] = sections;
  std::array<std::function<void()>, 5> const set{
      [&view, &to = summary] { set_summary(to, view); },
      [&view, &to = roles] { set_roles(to, view); }, [&view, &to = taxa] { set_taxa(to, view); },
      [&view, &to = couplets, &options] { set_couplets(to, view, options.every_couplet); },
      [&view, &to = rest] { set_rest(to, view); }};
  side_by_side({set.begin(), set.end()});
  for (auto& section : sections) page.add(std::move(section));
  return page.take();
}

}  // namespace keydrift

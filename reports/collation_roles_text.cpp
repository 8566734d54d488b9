// Characters that change their role, with both editions' words.
#include <fmt/format.h>

#include <algorithm>
#include <unordered_map>

#include "keydrift/reports/collation_parts.hpp"
#include "keydrift/reports/page_parts.hpp"

namespace keydrift::reports {
namespace {

// "7a  “utricle beak bifid”"; "7a  not stated" where the lead says nothing on it.
std::vector<Line> wording(Page const& page, Edition const& edition,
                          std::optional<StatementId> const& statement,
                          std::optional<LeadId> const& lead) {
  auto const at = lead ? lead : statement ? std::optional{statement->lead} : std::nullopt;
  auto const words = statement_words(edition, statement);
  auto const name = name_of(edition, at);
  LeadSetting const setting{.label = {{name, Face::plain}},
                            .label_width = name.empty() ? 0 : display_width(name) + 2,
                            .text = {{!words.empty() ? in_curly_quotes(words)
                                      : name.empty() ? "no such lead"
                                                     : "not stated",
                                      Face::plain}},
                            .destination = {}};
  return set_lead(setting, page.column_width(), page.unicode());
}

void set_role(Page& page, CollationView const& view, RoleChange const& role) {
  auto headline = capitalised(character_of(role, view.label, view.old_edition, view.new_edition));
  if (!role.numbers.empty()) headline += fmt::format(", {}", role.numbers);
  if (!role.limits.empty()) headline += fmt::format(", {}", enumerated(role.limits));
  if (!role.exceptions_added.empty()) {
    headline += fmt::format(", for {}", enumerated(role.exceptions_added));
  }
  if (!role.exceptions_removed.empty()) {
    headline += fmt::format(", no longer for {}", enumerated(role.exceptions_removed));
  }
  page.paragraph(Words{{headline, Face::bold}}, Page::kMargin, 2);
  page.columns("", wording(page, view.old_edition, role.old_statement, role.old_lead),
               wording(page, view.new_edition, role.new_statement, role.new_lead));
  auto const below = [&](Edition const& edition, TaxonSet const& taxa) {
    if (taxa.empty()) return std::string{};
    // A lead near the root has half the key below it: the number tells more than the list.
    if (taxa.size() > 6) return counted(taxa.size(), "taxon", "taxa") + " below";
    return "below: " + taxon_names(edition, taxa.list(), ", ");
  };
  auto const old_below = below(view.old_edition, role.old_taxa);
  auto const new_below = below(view.new_edition, role.new_taxa);
  if (old_below.empty() && new_below.empty()) return;
  auto const column = [&page](std::string const& text) {
    return wrap({{text, Face::dim}}, page.column_width(), text.empty() ? 0 : 4, 4, page.unicode());
  };
  page.columns("", column(old_below), column(new_below));
}

// A change that comes with a whole couplet or lead has no counterpart to be compared with; the
// couplet itself is set further down.
bool one_sided(RoleChange const& role) { return !role.old_lead || !role.new_lead; }

void set_one_sided(Page& page, CollationView const& view, RoleTransition transition,
                   bool others_before) {
  std::vector<std::pair<std::string, std::vector<std::string>>> characters;
  std::unordered_map<std::string, std::size_t> known;
  for (auto const& role : view.collation.roles) {
    if (role.transition != transition || !one_sided(role)) continue;
    auto name = character_of(role, view.label, view.old_edition, view.new_edition);
    auto lead = role.new_lead ? name_of(view.new_edition, role.new_lead)
                              : name_of(view.old_edition, role.old_lead);
    auto const [at, fresh] = known.try_emplace(name, characters.size());
    if (fresh) characters.push_back({std::move(name), {}});
    auto& leads = characters[at->second].second;
    if (std::find(leads.begin(), leads.end(), lead) == leads.end()) {
      leads.push_back(std::move(lead));
    }
  }
  if (characters.empty()) return;
  if (others_before) page.blank();
  std::vector<std::string> parts;
  for (auto const& [name, leads] : characters) {
    parts.push_back(fmt::format("{} (at {})", name, enumerated(leads)));
  }
  page.paragraph(fmt::format("With leads that have no counterpart: {}.", enumerated(parts)),
                 Page::kMargin, 2);
}

}  // namespace

void set_roles(Page& page, CollationView const& view) {
  auto const& roles = view.collation.roles;
  bool heads = false;
  for (auto const& role : roles) {
    if (role.transition != RoleTransition::became_exception) continue;
    if (!heads) {
      page.heading("Characters that became exception notes");
      set_column_heads(page, view);
    }
    heads = true;
    page.blank();
    set_role(page, view, role);
  }
  heads = false;
  std::vector<RoleTransition> told{RoleTransition::became_exception};
  for (auto const& first : roles) {
    auto const transition = first.transition;
    if (std::find(told.begin(), told.end(), transition) != told.end()) continue;
    told.push_back(transition);
    if (!heads) {
      page.heading("Other changes in the role of a character");
      set_column_heads(page, view);
    }
    heads = true;
    page.subheading(upper_case(to_word(transition)));
    std::vector<RoleChange const*> changes;
    for (auto const& role : roles) {
      if (role.transition == transition && !one_sided(role)) changes.push_back(&role);
    }
    set_in_parts(page, changes.size(), [&](Page& part, std::size_t i) {
      if (i > 0) part.blank();
      set_role(part, view, *changes[i]);
    });
    set_one_sided(page, view, transition, !changes.empty());
  }
}

}  // namespace keydrift::reports

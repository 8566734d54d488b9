// Couplets of two editions side by side, as printed keys.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "keydrift/reports/collation_parts.hpp"
#include "keydrift/reports/page_parts.hpp"
#include "keydrift/reports/setting.hpp"

namespace keydrift::reports {
namespace {

// Names of the leads that lead to each couplet, in printed order.
std::vector<std::vector<LeadId>> leads_to_couplets(Edition const& edition) {
  std::vector<std::vector<LeadId>> leads(edition.couplets.size());
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    for (std::uint32_t l = 0; l < edition.couplets[c].leads.size(); ++l) {
      if (auto const* to = std::get_if<ToCouplet>(&edition.couplets[c].leads[l].destination)) {
        leads[to->couplet.index].push_back({CoupletId{c}, l});
      }
    }
  }
  return leads;
}

std::string reached_from(Edition const& edition, std::vector<LeadId> const& leads) {
  if (leads.empty()) return "nowhere";
  std::vector<std::string> names;
  for (auto const lead : leads) names.push_back(lead_name(edition, lead));
  return enumerated(names);
}

// What setting a couplet asks of all others.
struct Around {
  explicit Around(CollationView const& view)
      : roles{view},
        old_parents{leads_to_couplets(view.old_edition)},
        new_parents{leads_to_couplets(view.new_edition)},
        counterparts(view.old_edition.couplets.size()) {
    for (auto const& pair : view.collation.alignment.pairs) {
      counterparts[pair.old_couplet.index] = pair.new_couplet;
    }
  }

  RolesByCouplet roles;
  std::vector<std::vector<LeadId>> old_parents;
  std::vector<std::vector<LeadId>> new_parents;
  std::vector<std::optional<CoupletId>> counterparts;  // by old couplet
};

class CoupletSetter {
 public:
  CoupletSetter(Page& page, CollationView const& view, Around const& around)
      : page_{page}, view_{view}, around_{around} {}

  void set(CoupletChange const& change) {
    page_.blank();
    headline(change);
    auto const best = best_pair(change);
    if (best) {
      set_pair(best->first, best->second, change.leads);
    }
    for (auto const couplet : change.old_couplets) {
      if (!best || couplet != best->first) set_one_sided(couplet, false);
    }
    for (auto const couplet : change.new_couplets) {
      if (!best || couplet != best->second) set_one_sided(couplet, true);
    }
    remarks(change, best);
  }

 private:
  using Pair = std::pair<CoupletId, CoupletId>;

  void headline(CoupletChange const& change) {
    page_.item(marks_of(change),
               Words{{capitalised(couplets_in_words(change, view_.old_edition, view_.new_edition)),
                      Face::bold},
                     {fmt::format(": {}", events_in_words(change.events)), Face::plain}},
               0, Page::kMargin);
  }

  // Of a split or a merger, the two couplets that the alignment ties.
  std::optional<Pair> best_pair(CoupletChange const& change) const {
    if (change.old_couplets.empty() || change.new_couplets.empty()) return std::nullopt;
    for (auto const couplet : change.old_couplets) {
      auto const tied = around_.counterparts[couplet.index];
      if (tied && std::find(change.new_couplets.begin(), change.new_couplets.end(), *tied) !=
                      change.new_couplets.end()) {
        return Pair{couplet, *tied};
      }
    }
    return Pair{change.old_couplets.front(), change.new_couplets.front()};
  }

  std::vector<Line> set_lead_of(bool new_side, std::optional<LeadId> const& id) {
    if (!id) return {};
    auto const& edition = new_side ? view_.new_edition : view_.old_edition;
    std::vector<std::uint32_t> stressed;
    for (auto const index :
         (new_side ? around_.roles.of_new : around_.roles.of_old)[id->couplet.index]) {
      auto const& role = view_.collation.roles[index];
      auto const& statement = new_side ? role.new_statement : role.old_statement;
      if (statement && statement->lead == *id) stressed.push_back(statement->ordinal);
    }
    return reports::set_lead(
        lead_setting(edition, *id, label_width(edition, id->couplet), stressed),
        page_.column_width(), page_.unicode());
  }

  bool restated(std::optional<LeadId> const& old_lead, std::optional<LeadId> const& new_lead) {
    auto const touches = [&](std::size_t index) {
      auto const& role = view_.collation.roles[index];
      return (old_lead && role.old_lead == old_lead) || (new_lead && role.new_lead == new_lead);
    };
    auto const any = [&](std::vector<std::size_t> const& indexes) {
      return std::any_of(indexes.begin(), indexes.end(), touches);
    };
    return (old_lead && any(around_.roles.of_old[old_lead->couplet.index])) ||
           (new_lead && any(around_.roles.of_new[new_lead->couplet.index]));
  }

  void set_pair(CoupletId old_couplet, CoupletId new_couplet, std::vector<LeadPair> const& leads) {
    for (auto const& pair : leads) {
      std::optional<LeadId> old_lead;
      std::optional<LeadId> new_lead;
      if (pair.old_lead) old_lead = LeadId{old_couplet, *pair.old_lead};
      if (pair.new_lead) new_lead = LeadId{new_couplet, *pair.new_lead};
      std::string_view mark;
      if (!old_lead)
        mark = "*";
      else if (!new_lead)
        mark = "†";
      else if (restated(old_lead, new_lead))
        mark = "§";
      else if (redirected(*old_lead, *new_lead))
        mark = "‡";
      page_.columns(mark, set_lead_of(false, old_lead), set_lead_of(true, new_lead));
    }
  }

  void set_one_sided(CoupletId couplet, bool new_side) {
    auto const& edition = new_side ? view_.new_edition : view_.old_edition;
    for (std::uint32_t i = 0; i < edition[couplet].leads.size(); ++i) {
      auto const lines = set_lead_of(new_side, LeadId{couplet, i});
      if (new_side) {
        page_.columns("*", {}, lines);
      } else {
        page_.columns("†", lines, {});
      }
    }
  }

  // A lead to a couplet that is not the counterpart of the one it led to.
  bool redirected(LeadId old_lead, LeadId new_lead) const {
    auto const* before = std::get_if<ToCouplet>(&view_.old_edition[old_lead].destination);
    auto const* after = std::get_if<ToCouplet>(&view_.new_edition[new_lead].destination);
    if (before == nullptr && after == nullptr) return false;
    if (before == nullptr || after == nullptr) return true;
    return around_.counterparts[before->couplet.index] != after->couplet;
  }

  void remark(std::string_view mark, std::string const& text) {
    page_.item(mark, sentence(text), Page::kMargin, 2);
  }

  void remarks(CoupletChange const& change, std::optional<Pair> const& best) {
    std::set<std::size_t> told;
    for (auto const couplet : change.old_couplets) {
      told.insert(around_.roles.of_old[couplet.index].begin(),
                  around_.roles.of_old[couplet.index].end());
    }
    for (auto const couplet : change.new_couplets) {
      told.insert(around_.roles.of_new[couplet.index].begin(),
                  around_.roles.of_new[couplet.index].end());
    }
    if (best) {
      for (auto const index : told) {
        auto const& role = view_.collation.roles[index];
        auto const at = role.new_lead ? lead_name(view_.new_edition, *role.new_lead)
                                      : name_of(view_.old_edition, role.old_lead);
        auto text = fmt::format(
            "{}: {} {}", at, character_of(role, view_.label, view_.old_edition, view_.new_edition),
            to_word(role.transition));
        if (!role.numbers.empty()) text += fmt::format(", {}", role.numbers);
        if (!role.limits.empty()) text += fmt::format(", {}", enumerated(role.limits));
        remark("§", text);
      }
      if (has_event(change, CoupletEvent::redirected)) redirections(*best, change.leads);
      if (has_event(change, CoupletEvent::moved)) {
        remark("‡",
               fmt::format("reached from {} in {}, from {} in {}",
                           reached_from(view_.old_edition, around_.old_parents[best->first.index]),
                           view_.called.old_name,
                           reached_from(view_.new_edition, around_.new_parents[best->second.index]),
                           view_.called.new_name));
      }
    }
  }

  void redirections(Pair const& best, std::vector<LeadPair> const& leads) {
    for (auto const& pair : leads) {
      if (!pair.old_lead || !pair.new_lead) continue;
      LeadId const old_lead{best.first, *pair.old_lead};
      LeadId const new_lead{best.second, *pair.new_lead};
      if (!redirected(old_lead, new_lead)) continue;
      auto const before = destination_words(view_.old_edition, view_.old_edition[old_lead]);
      auto const after = destination_words(view_.new_edition, view_.new_edition[new_lead]);
      std::string counterpart;
      if (auto const* to = std::get_if<ToCouplet>(&view_.old_edition[old_lead].destination)) {
        auto const tied = around_.counterparts[to->couplet.index];
        counterpart = !tied ? fmt::format(", which {} lacks", view_.called.new_name)
                            : fmt::format(", which is {} in {}", view_.new_edition[*tied].label,
                                          view_.called.new_name);
      }
      remark("‡",
             fmt::format("{} leads to {}; in {} to {}{}", lead_name(view_.new_edition, new_lead),
                         after, view_.called.old_name, before, counterpart));
    }
  }

  Page& page_;
  CollationView const& view_;
  Around const& around_;
};

void set_legend(Page& page) {
  std::string legend;
  for (auto const& entry : mark_legend()) {
    if (!legend.empty()) legend += ";  ";
    // No-break spaces keep each mark with its meaning.
    legend += fmt::format("{}\u00a0", entry.mark);
    for (auto const c : entry.meaning) {
      if (c == ' ')
        legend += "\u00a0";
      else
        legend += c;
    }
  }
  page.paragraph(legend + ".", 2);
}

}  // namespace

RolesByCouplet::RolesByCouplet(CollationView const& view)
    : of_old(view.old_edition.couplets.size()), of_new(view.new_edition.couplets.size()) {
  for (std::size_t i = 0; i < view.collation.roles.size(); ++i) {
    auto const& role = view.collation.roles[i];
    if (role.old_lead) of_old[role.old_lead->couplet.index].push_back(i);
    if (role.new_lead) of_new[role.new_lead->couplet.index].push_back(i);
  }
}

void set_couplets(Page& page, CollationView const& view, bool every_couplet) {
  auto const& couplets = view.collation.couplets;
  std::vector<CoupletChange const*> shown;
  for (auto const& change : couplets) {
    if (change.changes_meaning || every_couplet) shown.push_back(&change);
  }
  if (!shown.empty()) {
    page.heading("Couplets side by side");
    set_legend(page);
    page.blank();
    set_column_heads(page, view);
    Around const around{view};
    set_in_parts(page, shown.size(), [&](Page& part, std::size_t i) {
      CoupletSetter{part, view, around}.set(*shown[i]);
    });
  }
  if (every_couplet) return;

  // The others in lists: numbers only, by what happened to them.
  std::map<std::vector<CoupletEvent>, std::vector<std::string>> lists;
  for (auto const& change : couplets) {
    if (change.changes_meaning || change.new_couplets.empty() || change.old_couplets.empty()) {
      continue;
    }
    auto const& before = view.old_edition[change.old_couplets.front()].label;
    auto const& after = view.new_edition[change.new_couplets.front()].label;
    lists[change.events].push_back(before == after ? after
                                                   : fmt::format("{} (was {})", after, before));
  }
  if (lists.empty()) return;
  page.heading("Couplets that mean the same");
  for (auto const& [events, names] : lists) {
    page.paragraph(Words{{capitalised(events_in_words(events)), Face::bold},
                         {fmt::format(": {}.", enumerated(names)), Face::plain}},
                   2, 2);
  }
}

}  // namespace keydrift::reports

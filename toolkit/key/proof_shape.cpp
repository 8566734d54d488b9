// Can every couplet be reached, by ways that end, and does it ask something?

#include <algorithm>

#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

constexpr std::size_t kShownSteps = 12;  // of a cycle

void check_leads(ProofContext& context, CoupletId id) {
  auto const& couplet = context.edition[id];
  auto const name = "couplet " + in_quotes(couplet.label);
  if (couplet.leads.empty()) {
    context.report("couplet-without-leads", couplet.place, couplet.label, name + " has no leads",
                   "print its leads, or leave the number out");
  } else if (couplet.leads.size() == 1) {
    context.report("single-lead", couplet.place, printed_lead(couplet.leads.front()),
                   name + " has one lead only, so there is nothing to choose",
                   "print the contrasting lead, or join the words to the lead that leads here");
  } else if (couplet.leads.size() > 2) {
    context.report("polytomy", couplet.place, couplet.label,
                   name + " has " + std::to_string(couplet.leads.size()) + " leads",
                   "see that each lead is contrasted with every other");
  }
}

// The shortest way from the first couplet of the cycle back to it, as leads taken.  A breadth-first
// search backwards finds it; the cycle is strongly connected, so there is one.
Route way_round(ProofContext const& context, std::vector<CoupletId> const& cycle) {
  auto const home = cycle.front();
  auto const row = [&](CoupletId couplet) -> std::optional<std::size_t> {
    auto const found = std::lower_bound(cycle.begin(), cycle.end(), couplet);
    if (found == cycle.end() || *found != couplet) return std::nullopt;
    return static_cast<std::size_t>(found - cycle.begin());
  };
  struct Onward {
    LeadId lead;
    CoupletId to;
    bool known{false};
  };
  std::vector<Onward> onward(cycle.size());
  std::vector<CoupletId> queue{home};
  for (std::size_t i = 0; i < queue.size() && !onward.front().known; ++i) {
    for (auto const lead : context.graph.leads_to(queue[i])) {
      auto const from = row(lead.couplet);
      if (!from || onward[*from].known) continue;
      onward[*from] = {lead, queue[i], true};
      if (*from != 0) queue.push_back(lead.couplet);
    }
  }
  Route way;
  auto at = home;
  do {
    auto const& step = onward[*row(at)];
    way.push_back(step.lead);
    at = step.to;
  } while (at != home);
  return way;
}

void check_cycle(ProofContext& context, std::vector<CoupletId> const& cycle) {
  auto const way = way_round(context, cycle);
  auto const& closing = context.edition[way.back()];
  if (way.size() == 1) {
    context.report("cycle", closing.destination_place, printed_lead(closing),
                   "lead " + context.lead(way.back()) + " leads back to its own couplet",
                   "mend its destination");
    return;
  }
  std::vector<std::string> steps;
  for (auto const lead : way) steps.push_back(context.label(lead.couplet));
  auto const shown = std::min(steps.size(), kShownSteps);
  std::string route;
  for (std::size_t i = 0; i < shown; ++i) route += steps[i] + " → ";
  if (shown < steps.size()) route += "… → ";
  route += steps.front();
  auto message = "the leads go round in a circle: couplets " + route;
  if (cycle.size() > way.size()) {
    message += ", with " + std::to_string(cycle.size() - way.size()) + " more on circles with them";
  }
  auto& finding = context.report("cycle", closing.destination_place, printed_lead(closing),
                                 std::move(message), "mend the destination that leads back");
  for (std::size_t i = 0; i < shown; ++i) {
    auto const& lead = context.edition[way[i]];
    finding.related.push_back(
        {lead.destination_place,
         "lead " + context.lead(way[i]) + " leads to " + lead.destination_printed});
  }
}

// Couplets that no start leads to: one finding for each that nothing leads to, or for each circle
// that nothing leads into; what lies below is counted there, not reported again.
class UnreachableCheck {
 public:
  explicit UnreachableCheck(ProofContext& context)
      : context_{context}, taken_{context.reached}, again_(context.reached.size(), 0) {
    // A second couplet of the same label is reported as such; leads cannot mean it.
    for (CoupletId c; c.index < taken_.size(); ++c.index) {
      auto const first = context_.labels.find(context_.label(c), context_.labels.part_of(c));
      again_[c.index] = first && *first != c;
    }
  }

  void check() {
    for (CoupletId c; c.index < taken_.size(); ++c.index) {
      if (context_.reached[c.index] == 0 && context_.graph.leads_to(c).empty()) report(c, {});
    }
    for (auto const& cycle : context_.graph.cycles()) {
      if (taken_[cycle.front().index] == 0) report(cycle.front(), cycle);
    }
  }

 private:
  void report(CoupletId root, std::vector<CoupletId> const& cycle) {
    auto const below = take(root);
    if (again_[root.index] != 0) return;
    auto const& couplet = context_.edition[root];
    auto const name = "couplet " + in_quotes(couplet.label);
    auto message = cycle.size() > 1 ? "nothing leads from the start to " + name + " and its circle"
                                    : "no lead leads to " + name;
    if (below > 0) {
      message += ", nor so to the " +
                 (below == 1 ? "couplet" : std::to_string(below) + " couplets") + " below it";
    }
    std::string remedy = "mend the lead that should lead here, or leave the couplet out";
    if (!couplet.back_references.empty()) {
      remedy = "it says that it is reached from " +
               in_quotes(couplet.back_references.front().label) + ": mend the lead there";
    }
    context_.report("unreachable-couplet", couplet.place,
                    couplet.leads.empty() ? couplet.label : printed_lead(couplet.leads.front()),
                    std::move(message), std::move(remedy));
  }

  // Marks what lies below the root; counts what was not marked before, the root left out.
  std::size_t take(CoupletId root) {
    std::size_t count = 0;
    std::vector<CoupletId> pending{root};
    taken_[root.index] = 1;
    while (!pending.empty()) {
      auto const couplet = pending.back();
      pending.pop_back();
      for (auto const& lead : context_.edition[couplet].leads) {
        auto const* to = std::get_if<ToCouplet>(&lead.destination);
        if (to == nullptr || taken_[to->couplet.index] != 0) continue;
        taken_[to->couplet.index] = 1;
        ++count;
        pending.push_back(to->couplet);
      }
    }
    return count;
  }

  ProofContext& context_;
  std::vector<char> taken_;  // by couplet: reached, or below a couplet reported
  std::vector<char> again_;  // by couplet: not the first of its label
};

}  // namespace

void check_shape(ProofContext& context) {
  if (context.edition.couplets.empty()) {
    context.report("no-couplets", {}, {}, "this edition holds no couplets",
                   "see whether the text is a key, and whether the reader took its numbering");
    return;
  }
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) check_leads(context, c);
  for (auto const& cycle : context.graph.cycles()) check_cycle(context, cycle);
  UnreachableCheck{context}.check();
}

}  // namespace keydrift::proofing

#include "keydrift/collation/reasons.hpp"

#include <algorithm>

#include "keydrift/collation/alignment.hpp"
#include "keydrift/collation/candidates.hpp"
#include "keydrift/collation/neighbourhood.hpp"

namespace keydrift {
namespace {

using namespace collating;

class Reasoning {
 public:
  Reasoning(Side const& old_side, Side const& new_side, Collation const& collation)
      : sides_{&old_side, &new_side},
        collation_{collation},
        comparison_{old_side, new_side, collation.taxa_matching},
        neighbourhood_{comparison_} {
    for (auto const& pair : collation.alignment.pairs) {
      std::vector<std::uint32_t> pairing(old_side.lead_count(pair.old_couplet.index), none);
      for (auto const& leads : pair.leads) {
        if (leads.old_lead && leads.new_lead) pairing[*leads.old_lead] = *leads.new_lead;
      }
      neighbourhood_.set(pair.old_couplet.index, pair.new_couplet.index, pairing);
    }
    for (auto const& match : collation.taxa_matching.matches) {
      if (match.relation != Relation::disjoint)
        ties_.emplace_back(match.old_taxon, match.new_taxon);
    }
    std::sort(ties_.begin(), ties_.end());
  }

  CoupletReasons tell(Of of, CoupletId couplet) {
    CoupletReasons reasons;
    reasons.of_new = of == Of::new_edition;
    reasons.couplet = couplet;
    auto const* pair = pair_of(of, couplet);
    if (pair != nullptr) {
      reasons.counterpart = of == Of::old_edition ? pair->new_couplet : pair->old_couplet;
      reasons.similarity = pair->similarity;
      reasons.together_with = taken_together(*pair);
      tell_leads(*pair, reasons);
      tell_neighbours(*pair, reasons);
    } else {
      reasons.part_of = owner_of(of, couplet);
      reasons.part_apart = reasons.part_of && stands_apart(of, couplet);
    }
    tell_runners_up(of, couplet, reasons);
    return reasons;
  }

 private:
  [[nodiscard]] Side const& side(Of of) const { return *sides_[index_of(of)]; }

  [[nodiscard]] CoupletPair const* pair_of(Of of, CoupletId couplet) const {
    auto const& alignment = collation_.alignment;
    return of == Of::old_edition ? alignment.of_old(couplet) : alignment.of_new(couplet);
  }

  // The couplet of the other edition that a couplet without counterpart is a part of.
  [[nodiscard]] std::optional<CoupletId> owner_of(Of of, CoupletId couplet) const {
    for (auto const& change : collation_.couplets) {
      auto const& mine = of == Of::old_edition ? change.old_couplets : change.new_couplets;
      auto const& theirs = of == Of::old_edition ? change.new_couplets : change.old_couplets;
      if (theirs.empty() || std::find(mine.begin(), mine.end(), couplet) == mine.end()) continue;
      return theirs.front();
    }
    return std::nullopt;
  }

  // Does no lead join this part of a divided couplet to another part?
  [[nodiscard]] bool stands_apart(Of of, CoupletId part) const {
    auto const leads_to = [&](CoupletId from, CoupletId to) {
      for (auto row = side(of).first_lead[from.index]; row < side(of).end_lead(from.index); ++row) {
        if (side(of).behind[row] == to.index) return true;
      }
      return false;
    };
    for (auto const& change : collation_.couplets) {
      auto const& mine = of == Of::old_edition ? change.old_couplets : change.new_couplets;
      if (std::find(mine.begin(), mine.end(), part) == mine.end()) continue;
      return std::none_of(mine.begin(), mine.end(), [&](CoupletId mate) {
        return mate != part && (leads_to(mate, part) || leads_to(part, mate));
      });
    }
    return false;
  }

  // The couplet behind that one of the two was compared together with.
  [[nodiscard]] std::optional<CoupletId> taken_together(CoupletPair const& pair) const {
    auto const olds = side(Of::old_edition).lead_count(pair.old_couplet.index);
    auto const news = side(Of::new_edition).lead_count(pair.new_couplet.index);
    auto const few = olds < news ? Of::old_edition : Of::new_edition;
    auto const upper = olds < news ? pair.old_couplet.index : pair.new_couplet.index;
    auto const polytomy = olds < news ? pair.new_couplet.index : pair.old_couplet.index;
    auto const wanted = std::max(olds, news);
    if (olds == news || wanted > Comparison::most_leads_together) return std::nullopt;
    ShortList<Comparison::JoinedLead, 12> leads;
    for (auto joint = side(few).first_lead[upper]; joint < side(few).end_lead(upper); ++joint) {
      auto const next = side(few).behind[joint];
      if (next == none || next == upper ||
          side(few).lead_count(upper) - 1 + side(few).lead_count(next) != wanted) {
        continue;
      }
      auto const found = comparison_.compare_joined(few, upper, joint, next, polytomy, leads);
      if (to_share(found.taxa) == pair.similarity.taxa &&
          to_share(found.statements) == pair.similarity.statements) {
        return CoupletId{next};
      }
    }
    return std::nullopt;
  }

  void tell_leads(CoupletPair const& pair, CoupletReasons& reasons) const {
    for (auto const& leads : pair.leads) {
      LeadReasons told;
      if (leads.old_lead) told.old_lead = LeadId{pair.old_couplet, *leads.old_lead};
      if (leads.new_lead) told.new_lead = LeadId{pair.new_couplet, *leads.new_lead};
      if (told.old_lead && told.new_lead) {
        auto const old_row = side(Of::old_edition).row(*told.old_lead);
        auto const new_row = side(Of::new_edition).row(*told.new_lead);
        auto const& was = comparison_.saying(Of::old_edition, old_row);
        auto const& is = comparison_.saying(Of::new_edition, new_row);
        told.taxa = to_share(comparison_.taxa_agreement(old_row, new_row));
        told.statements = to_share(agreement(was, is));
        tell_taxa(told);
        tell_statements(was, is, told);
      }
      reasons.leads.push_back(std::move(told));
    }
  }

  void tell_taxa(LeadReasons& told) const {
    auto const& old_graph = *side(Of::old_edition).graph;
    auto const& new_graph = *side(Of::new_edition).graph;
    auto olds = old_graph.list(old_graph.taxa_below(*told.old_lead));
    auto news = new_graph.list(new_graph.taxa_below(*told.new_lead));
    std::sort(olds.begin(), olds.end());
    std::sort(news.begin(), news.end());
    auto const holds = [](std::vector<TaxonId> const& list, TaxonId taxon) {
      return std::binary_search(list.begin(), list.end(), taxon);
    };
    for (auto const& [was, is] : ties_) {
      bool const below_old = holds(olds, was);
      bool const below_new = holds(news, is);
      if (below_old && below_new) {
        told.below_both.push_back(is);
      } else if (below_old) {
        told.below_old_only.push_back(was);
      } else if (below_new) {
        told.below_new_only.push_back(is);
      }
    }
    for (auto* list : {&told.below_both, &told.below_old_only, &told.below_new_only}) {
      std::sort(list->begin(), list->end());
      list->erase(std::unique(list->begin(), list->end()), list->end());
    }
  }

  // Ordinals of the statements that a SaidLead holds: those with a predicate.
  [[nodiscard]] std::vector<std::uint32_t> ordinals(Of of, LeadId lead) const {
    std::vector<std::uint32_t> result;
    auto const& statements = (*side(of).edition)[lead].statements;
    for (std::uint32_t i = 0; i < statements.size(); ++i) {
      if (!statements[i].any_of.empty()) result.push_back(i);
    }
    return result;
  }

  void tell_statements(SaidLead const& was, SaidLead const& is, LeadReasons& told) const {
    auto const olds = ordinals(Of::old_edition, *told.old_lead);
    auto const news = ordinals(Of::new_edition, *told.new_lead);
    auto pairs = matched_statements(was, is);
    std::sort(pairs.begin(), pairs.end(),
              [](SaidPair const& x, SaidPair const& y) { return x.b < y.b; });
    std::vector<char> used(olds.size(), 0);
    auto next = pairs.begin();
    for (std::uint32_t j = 0; j < news.size(); ++j) {
      StatementReasons reason;
      reason.new_statement = StatementId{*told.new_lead, news[j]};
      if (next != pairs.end() && next->b == j) {
        reason.old_statement = StatementId{*told.old_lead, olds[next->a]};
        reason.agreement = to_share(next->grade);
        used[next->a] = 1;
        ++next;
      }
      told.compared.push_back(reason);
    }
    for (std::uint32_t i = 0; i < olds.size(); ++i) {
      if (used[i] != 0) continue;
      StatementReasons reason;
      reason.old_statement = StatementId{*told.old_lead, olds[i]};
      told.compared.push_back(reason);
    }
  }

  void tell_neighbours(CoupletPair const& pair, CoupletReasons& reasons) const {
    std::vector<std::uint32_t> pairing;
    static_cast<void>(comparison_.compare(pair.old_couplet.index, pair.new_couplet.index, pairing));
    for (auto const& slot :
         neighbourhood_.slots(pair.old_couplet.index, pair.new_couplet.index, pairing)) {
      NeighbourReasons told;
      if (slot.old_row != none) told.old_lead = side(Of::old_edition).leads[slot.old_row];
      if (slot.new_row != none) told.new_lead = side(Of::new_edition).leads[slot.new_row];
      told.place = slot.before                      ? NeighbourPlace::before
                   : told.old_lead || told.new_lead ? NeighbourPlace::behind
                                                    : NeighbourPlace::start;
      told.agreement = to_share(slot.grade);
      told.weight = slot.weight;
      reasons.neighbours.push_back(told);
    }
  }

  struct Met {
    std::uint32_t couplet{};
    Grade taxa{};
    Grade statements{};
    Grade neighbours{};
    Grade total{};
    [[nodiscard]] Similarity similarity() const {
      return {.taxa = to_share(taxa),
              .statements = to_share(statements),
              .neighbours = to_share(neighbours),
              .total = to_share(total)};
    }
  };

  void tell_runners_up(Of of, CoupletId couplet, CoupletReasons& reasons) {
    auto const other = of == Of::old_edition ? Of::new_edition : Of::old_edition;
    std::vector<Met> met;
    std::vector<std::uint32_t> pairing;
    for (std::uint32_t i = 0; i < side(other).couplet_count(); ++i) {
      if (reasons.counterpart && reasons.counterpart->index == i) continue;
      auto const was = of == Of::old_edition ? couplet.index : i;
      auto const is = of == Of::old_edition ? i : couplet.index;
      auto const result = comparison_.compare(was, is, pairing);
      Met one{i, result.taxa, result.statements, neighbourhood_.agreement(was, is, pairing), 0};
      one.total = total_grade(one.taxa, one.statements, one.neighbours);
      if (one.total > 0) met.push_back(one);
    }
    auto const count = std::min(most_runners_up, met.size());
    std::partial_sort(met.begin(), met.begin() + static_cast<std::ptrdiff_t>(count), met.end(),
                      [](Met const& a, Met const& b) {
                        return a.total != b.total ? a.total > b.total : a.couplet < b.couplet;
                      });
    met.resize(count);
    for (auto const& one : met) {
      RunnerUp runner_up;
      runner_up.couplet = CoupletId{one.couplet};
      runner_up.similarity = one.similarity();
      if (auto const* taken = pair_of(other, runner_up.couplet)) {
        runner_up.taken_by = of == Of::old_edition ? taken->old_couplet : taken->new_couplet;
        runner_up.taken_with = taken->similarity;
      }
      runner_up.why = why_not(other, one, runner_up, reasons);
      reasons.runners_up.push_back(runner_up);
    }
  }

  [[nodiscard]] WhyNot why_not(Of other, Met const& met, RunnerUp const& runner_up,
                               CoupletReasons const& reasons) const {
    if (!runner_up.taken_by && owner_of(other, runner_up.couplet) == reasons.couplet) {
      return WhyNot::part;
    }
    if (met.total <= floor_total || !credible(met.taxa, met.statements, met.neighbours)) {
      return WhyNot::too_unlike;
    }
    if (runner_up.taken_by) {
      return runner_up.taken_with.total >= to_share(met.total) ? WhyNot::better_taken
                                                               : WhyNot::worth_more_so;
    }
    return reasons.counterpart && reasons.similarity.total >= to_share(met.total)
               ? WhyNot::agrees_less
               : WhyNot::no_candidate;
  }

  std::array<Side const*, 2> sides_;
  Collation const& collation_;
  Comparison comparison_;
  Neighbourhood neighbourhood_;
  std::vector<std::pair<TaxonId, TaxonId>> ties_;  // old, new; sorted
};

}  // namespace

char const* to_word(NeighbourPlace place) {
  switch (place) {
    case NeighbourPlace::start:
      return "start";
    case NeighbourPlace::before:
      return "before";
    case NeighbourPlace::behind:
      return "behind";
  }
  return "behind";
}

char const* to_word(WhyNot why) {
  switch (why) {
    case WhyNot::too_unlike:
      return "too unlike";
    case WhyNot::better_taken:
      return "better taken";
    case WhyNot::worth_more_so:
      return "worth more so";
    case WhyNot::agrees_less:
      return "agrees less";
    case WhyNot::part:
      return "part";
    case WhyNot::no_candidate:
      return "no candidate";
  }
  return "too unlike";
}

LeastAgreement least_agreement() {
  return {.total = to_share(floor_total),
          .taxa = to_share(credible_taxa),
          .statements = to_share(credible_statements),
          .total_with_statements = to_share(spoken_total),
          .taxa_with_neighbours = to_share(passable_taxa),
          .neighbours = to_share(credible_neighbours),
          .statements_with_neighbours = to_share(placed_statements),
          .neighbours_with_statements = to_share(placed_neighbours),
          .taxa_with_statements = to_share(lesser_taxa),
          .statements_with_taxa = to_share(lesser_statements),
          .total_with_both = to_share(lesser_total)};
}

std::array<unsigned, 3> similarity_weights() {
  return {taxa_weight, statements_weight, neighbours_weight};
}

std::vector<CoupletReasons> reasons_for(std::string_view label, Edition const& old_edition,
                                        KeyGraph const& old_graph, Edition const& new_edition,
                                        KeyGraph const& new_graph, Collation const& collation) {
  std::vector<CoupletReasons> result;
  auto const bearing = [&](Edition const& edition) {
    std::vector<CoupletId> couplets;
    for (std::uint32_t i = 0; i < edition.couplets.size(); ++i) {
      if (edition.couplets[i].label == label) couplets.push_back(CoupletId{i});
    }
    return couplets;
  };
  auto const olds = bearing(old_edition);
  auto const news = bearing(new_edition);
  if (olds.empty() && news.empty()) return result;
  auto const old_side = make_side(old_edition, old_graph);
  auto const new_side = make_side(new_edition, new_graph);
  Reasoning reasoning{old_side, new_side, collation};
  for (auto const couplet : olds) result.push_back(reasoning.tell(Of::old_edition, couplet));
  for (auto const couplet : news) {
    auto const* pair = collation.alignment.of_new(couplet);
    if (pair != nullptr && std::find(olds.begin(), olds.end(), pair->old_couplet) != olds.end()) {
      continue;
    }
    result.push_back(reasoning.tell(Of::new_edition, couplet));
  }
  return result;
}

}  // namespace keydrift

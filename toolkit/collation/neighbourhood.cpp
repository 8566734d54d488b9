#include "keydrift/collation/neighbourhood.hpp"

#include <algorithm>

namespace keydrift::collating {
namespace {

// Of the leads that lead to one couplet no more than these are looked at: a couplet that more
// leads share is told by the rest of its surroundings.
constexpr std::size_t most_parents = 16;

std::span<LeadId const> parents_of(Side const& side, std::uint32_t couplet) {
  auto const leads = side.graph->leads_to(CoupletId{couplet});
  return leads.first(std::min(leads.size(), most_parents));
}

}  // namespace

Neighbourhood::Neighbourhood(Comparison const& comparison) : comparison_{comparison} {
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    auto const& side = comparison_.side(of);
    is_start_[index_of(of)].assign(side.couplet_count(), 0);
    for (auto const& part : side.edition->parts) {
      if (part.start.index < side.couplet_count()) is_start_[index_of(of)][part.start.index] = 1;
    }
  }
  clear();
}

void Neighbourhood::clear() {
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    couplet_[index_of(of)].assign(comparison_.side(of).couplet_count(), none);
    lead_[index_of(of)].assign(comparison_.side(of).leads.size(), none);
  }
}

void Neighbourhood::set(std::uint32_t old_couplet, std::uint32_t new_couplet,
                        std::span<std::uint32_t const> pairing) {
  couplet_[0][old_couplet] = new_couplet;
  couplet_[1][new_couplet] = old_couplet;
  auto const old_first = comparison_.side(Of::old_edition).first_lead[old_couplet];
  auto const new_first = comparison_.side(Of::new_edition).first_lead[new_couplet];
  for (std::uint32_t i = 0; i < pairing.size(); ++i) {
    if (pairing[i] == none) continue;
    lead_[0][old_first + i] = new_first + pairing[i];
    lead_[1][new_first + pairing[i]] = old_first + i;
  }
}

bool Neighbourhood::leads_to(Of of, std::uint32_t from, std::uint32_t to) const {
  auto const& side = comparison_.side(of);
  for (auto row = side.first_lead[from]; row < side.first_lead[from + 1]; ++row) {
    if (side.behind[row] == to) return true;
  }
  return false;
}

// Does the counterpart of `parent`, a lead of edition `of`, lead to the other's couplet `there`?
Grade Neighbourhood::before(Of of, LeadId parent, std::uint32_t there) const {
  auto const mine = index_of(of);
  auto const theirs = index_of(other(of));
  auto const& side = comparison_.side(of);
  auto const& other_side = comparison_.side(other(of));
  auto const counterpart = couplet_[mine][parent.couplet.index];
  if (counterpart != none) {
    auto const lead = lead_[mine][side.row(parent)];
    if (lead != none && other_side.behind[lead] == there) return whole;
    if (leads_to(other(of), counterpart, there)) return whole / 2;
    for (auto const between : parents_of(other_side, there)) {
      if (couplet_[theirs][between.couplet.index] == none &&
          leads_to(other(of), counterpart, between.couplet.index)) {
        return whole / 2;
      }
    }
    return 0;
  }
  for (auto const before : parents_of(side, parent.couplet.index)) {
    auto const grand = couplet_[mine][before.couplet.index];
    if (grand != none && leads_to(other(of), grand, there)) return whole / 2;
  }
  return 0;
}

// Does couplet `between` (of edition `of`, without counterpart) lead to what the other edition's
// lead `goal_row` leads to?
Grade Neighbourhood::across(Of of, std::uint32_t goal_row, std::uint32_t between) const {
  auto const mine = index_of(of);
  auto const theirs = index_of(other(of));
  if (couplet_[mine][between] != none) return 0;
  auto const goal = comparison_.side(other(of)).behind[goal_row];
  auto const& side = comparison_.side(of);
  for (auto row = side.first_lead[between]; row < side.first_lead[between + 1]; ++row) {
    auto const next = side.behind[row];
    if (goal != none) {
      if (next != none && couplet_[theirs][goal] == next) return whole / 2;
    } else if (next == none) {
      auto const grade = of == Of::old_edition ? comparison_.taxa_agreement(row, goal_row)
                                               : comparison_.taxa_agreement(goal_row, row);
      if (grade > 0) return whole / 2;
    }
  }
  return 0;
}

Grade Neighbourhood::behind(std::uint32_t old_row, std::uint32_t new_row) const {
  auto const old_goal = comparison_.side(Of::old_edition).behind[old_row];
  auto const new_goal = comparison_.side(Of::new_edition).behind[new_row];
  if (old_goal == none && new_goal == none) {
    return comparison_.taxa_agreement(old_row, new_row) > 0 ? whole : 0;
  }
  if (old_goal != none && new_goal != none && couplet_[0][old_goal] == new_goal) return whole;
  Grade grade = 0;
  if (new_goal != none) grade = across(Of::new_edition, old_row, new_goal);
  if (old_goal != none) grade = std::max(grade, across(Of::old_edition, new_row, old_goal));
  return grade;
}

template <class Visit>
void Neighbourhood::each_slot(std::uint32_t old_couplet, std::uint32_t new_couplet,
                              std::span<std::uint32_t const> pairing, Visit const& visit) const {
  auto const& old_side = comparison_.side(Of::old_edition);
  auto const& new_side = comparison_.side(Of::new_edition);
  bool const old_start = is_start_[0][old_couplet] != 0;
  bool const new_start = is_start_[1][new_couplet] != 0;
  if (old_start || new_start) {
    visit(NeighbourSlot{.grade = old_start && new_start ? whole : 0,
                        .weight = (old_start ? 1U : 0U) + (new_start ? 1U : 0U)});
  }
  for (auto const parent : parents_of(old_side, old_couplet)) {
    visit(NeighbourSlot{.old_row = old_side.row(parent),
                        .before = true,
                        .grade = before(Of::old_edition, parent, new_couplet)});
  }
  for (auto const parent : parents_of(new_side, new_couplet)) {
    visit(NeighbourSlot{.new_row = new_side.row(parent),
                        .before = true,
                        .grade = before(Of::new_edition, parent, old_couplet)});
  }
  auto const old_first = old_side.first_lead[old_couplet];
  auto const new_first = new_side.first_lead[new_couplet];
  auto unpaired = new_side.lead_count(new_couplet);
  for (std::uint32_t i = 0; i < pairing.size(); ++i) {
    NeighbourSlot slot{.old_row = old_first + i};
    if (pairing[i] != none) {
      slot.new_row = new_first + pairing[i];
      slot.grade = behind(slot.old_row, slot.new_row);
      slot.weight = 2;
      --unpaired;
    }
    visit(slot);
  }
  if (unpaired == 0) return;
  for (auto row = new_first; row < new_side.end_lead(new_couplet); ++row) {
    if (std::find(pairing.begin(), pairing.end(), row - new_first) == pairing.end()) {
      visit(NeighbourSlot{.new_row = row});
    }
  }
}

Grade Neighbourhood::agreement(std::uint32_t old_couplet, std::uint32_t new_couplet,
                               std::span<std::uint32_t const> pairing) const {
  std::uint64_t sum = 0;
  std::uint64_t weights = 0;
  each_slot(old_couplet, new_couplet, pairing, [&](NeighbourSlot const& slot) {
    sum += std::uint64_t{slot.weight} * slot.grade;
    weights += slot.weight;
  });
  return weights == 0 ? whole : static_cast<Grade>(sum / weights);
}

std::vector<NeighbourSlot> Neighbourhood::slots(std::uint32_t old_couplet,
                                                std::uint32_t new_couplet,
                                                std::span<std::uint32_t const> pairing) const {
  std::vector<NeighbourSlot> slots;
  each_slot(old_couplet, new_couplet, pairing,
            [&](NeighbourSlot const& slot) { slots.push_back(slot); });
  return slots;
}

}  // namespace keydrift::collating

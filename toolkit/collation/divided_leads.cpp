#include "keydrift/collation/divided_leads.hpp"

#include <algorithm>
#include <cstddef>
#include <tuple>

#include "keydrift/collation/parts_apart.hpp"

namespace keydrift::collating {
namespace {

// Leads that agree less do not answer to each other.
constexpr std::uint64_t least_worth_of_lead =
    std::uint64_t{taxa_weight + statements_weight} * whole * 3 / 10;

// Parts that are gone through from the first to a lead: of more the nearest are.
constexpr unsigned most_steps_off_way = 8;

bool share_a_character(Statement const& a, Statement const& b) {
  return std::any_of(a.any_of.begin(), a.any_of.end(), [&](Atom const& x) {
    return std::any_of(b.any_of.begin(), b.any_of.end(),
                       [&](Atom const& y) { return x.character == y.character; });
  });
}

}  // namespace

DividedLeads::DividedLeads(Ground const& ground)
    : ground_{ground}, lead_{ground.counterparts.lead} {
  // By pair: the couplets that are parts of either side of it, besides its own two.
  std::vector<std::array<std::vector<std::uint32_t>, 2>> parts(ground.alignment.pairs.size());
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    group_[index_of(of)].assign(ground.side(of).leads.size(), none);
    joint_[index_of(of)].assign(ground.side(of).leads.size(), none);
    auto const& owners = ground.divisions[index_of(of)];
    for (std::uint32_t part = 0; part < owners.size(); ++part) {
      if (owners[part] == none) continue;
      auto const* pair = of == Of::old_edition ? ground.alignment.of_new(CoupletId{owners[part]})
                                               : ground.alignment.of_old(CoupletId{owners[part]});
      if (pair == nullptr) continue;
      auto const at = static_cast<std::size_t>(pair - ground.alignment.pairs.data());
      parts[at][index_of(of)].push_back(part);
    }
  }
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i][0].empty() && parts[i][1].empty()) continue;
    parts[i][0].push_back(ground.alignment.pairs[i].old_couplet.index);
    parts[i][1].push_back(ground.alignment.pairs[i].new_couplet.index);
    auto const group = static_cast<std::uint32_t>(rows_.size());
    auto& rows = rows_.emplace_back();
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      auto const& side = ground.side(of);
      auto& couplets = parts[i][index_of(of)];
      std::sort(couplets.begin(), couplets.end());
      for (auto const couplet : couplets) {
        for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
          rows[index_of(of)].push_back(row);
          group_[index_of(of)][row] = group;
          lead_[index_of(of)][row] = none;
        }
      }
      for (auto const row : rows[index_of(of)]) {
        if (!is_joint(of, row)) continue;
        auto const behind = side.behind[row];
        for (auto lower = side.first_lead[behind]; lower < side.end_lead(behind); ++lower) {
          auto& joint = joint_[index_of(of)][lower];
          if (joint == none) joint = row;
        }
      }
    }
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      auto const& wholes = parts[i][index_of(other(of))];
      auto const& couplets = parts[i][index_of(of)];
      if (couplets.size() == 2 && wholes.size() == 1) {
        join(of, couplets.front(), couplets.back(), wholes.front());
      }
    }
    pair_leads(group);
  }
}

void DividedLeads::join(Of of, std::uint32_t one, std::uint32_t other_one,
                        std::uint32_t whole_couplet) {
  auto const& side = ground_.side(of);
  for (auto const couplet : {one, other_one}) {
    for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
      if (is_joint(of, row)) return;
    }
  }
  auto const joined = joining(ground_.comparison, of, one, other_one, whole_couplet);
  if (!joined) return;
  joins_[index_of(of)].push_back(joined->joint);
  for (auto row = side.first_lead[joined->lower]; row < side.end_lead(joined->lower); ++row) {
    joint_[index_of(of)][row] = joined->joint;
  }
}

SaidLead DividedLeads::said_on_the_way(Of of, std::uint32_t row) const {
  auto said = ground_.comparison.saying(of, row);
  auto joint = joint_[index_of(of)][row];
  for (unsigned step = 0; step < most_steps_off_way && joint != none; ++step) {
    said = both_said(ground_.comparison.saying(of, joint), said);
    joint = joint_[index_of(of)][joint];
  }
  return said;
}

bool DividedLeads::on_the_way(Of of, std::uint32_t upper, std::uint32_t lower) const {
  for (unsigned step = 0; step <= most_steps_off_way && lower != none; ++step) {
    if (lower == upper) return true;
    lower = joint_[index_of(of)][lower];
  }
  return false;
}

bool DividedLeads::is_joint(Of of, std::uint32_t row) const {
  auto const& side = ground_.side(of);
  auto const behind = side.behind[row];
  auto const& joins = joins_[index_of(of)];
  if (std::find(joins.begin(), joins.end(), row) != joins.end()) return true;
  return divided(of, row) && behind != none && side.lead_count(behind) > 0 &&
         group_[index_of(of)][side.first_lead[behind]] == group_[index_of(of)][row];
}

void DividedLeads::pair_leads(std::uint32_t group) {
  auto const& [olds, news] = rows_[group];
  struct Cell {
    bool same{false};  // in all they say
    std::uint64_t worth{};
    std::size_t i{};
    std::size_t j{};
  };
  std::vector<Cell> cells;
  std::array<std::vector<std::size_t>, 2> same_as{std::vector<std::size_t>(olds.size(), 0),
                                                  std::vector<std::size_t>(news.size(), 0)};
  std::array<std::vector<SaidLead>, 2> on_the_way;
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    for (auto const row : rows_[group][index_of(of)]) {
      on_the_way[index_of(of)].push_back(said_on_the_way(of, row));
    }
  }
  for (std::size_t i = 0; i < olds.size(); ++i) {
    for (std::size_t j = 0; j < news.size(); ++j) {
      if (is_joint(Of::old_edition, olds[i]) != is_joint(Of::new_edition, news[j])) continue;
      auto const taxa = ground_.comparison.taxa_agreement(olds[i], news[j]);
      auto const& was = ground_.comparison.saying(Of::old_edition, olds[i]);
      auto const& is = ground_.comparison.saying(Of::new_edition, news[j]);
      auto const& to_was = on_the_way[0][i];
      auto const& to_is = on_the_way[1][j];
      auto const words =
          std::max({agreement(was, is), agreement(to_was, is), agreement(was, to_is)});
      bool const same =
          std::max({agreement_of_statements(was, is), agreement_of_statements(to_was, is),
                    agreement_of_statements(was, to_is)}) == whole;
      same_as[0][i] += same ? 1U : 0U;
      same_as[1][j] += same ? 1U : 0U;
      auto const worth =
          std::uint64_t{taxa_weight} * taxa + std::uint64_t{statements_weight} * words;
      if (worth >= least_worth_of_lead) cells.push_back({same, worth, i, j});
    }
  }
  // Leads that no other says the same as belong together wherever they lead.
  for (auto& cell : cells) {
    cell.same = cell.same && same_as[0][cell.i] == 1 && same_as[1][cell.j] == 1;
  }
  // Ties: the first leads first, the same whichever edition is the old one.
  std::sort(cells.begin(), cells.end(), [](Cell const& a, Cell const& b) {
    auto const key = [](Cell const& c) {
      return std::tuple{!c.same, ~c.worth, c.i + c.j, std::max(c.i, c.j), c.i};
    };
    return key(a) < key(b);
  });
  for (auto const& cell : cells) {
    auto& there = lead_[0][olds[cell.i]];
    auto& back = lead_[1][news[cell.j]];
    if (there != none || back != none) continue;
    there = news[cell.j];
    back = olds[cell.i];
  }
}

DividedLeads::Said DividedLeads::said_there(Of of, std::uint32_t row,
                                            Statement const& statement) const {
  Said found;
  auto const group = group_[index_of(of)][row];
  if (group == none) return found;
  auto const of_there = other(of);
  auto const& there = ground_.side(of_there);
  auto const taxa = [&](Of edition, std::uint32_t lead_row) {
    auto const& side = ground_.side(edition);
    return side.graph->taxa_below(side.leads[lead_row]);
  };
  auto const answer = counterpart(of, row);
  auto const meets = [&](std::uint32_t other_row) {
    auto const back = counterpart(of_there, other_row);
    if ((answer != none && on_the_way(of_there, other_row, answer)) ||
        (back != none && on_the_way(of, row, back))) {
      return true;
    }
    if (ground_.comparison.below_lead(of, row).mass == 0 ||
        ground_.comparison.below_lead(of_there, other_row).mass == 0) {
      return true;
    }
    auto const old_row = of == Of::old_edition ? row : other_row;
    auto const new_row = of == Of::old_edition ? other_row : row;
    return ground_.comparison.shared().common(taxa(Of::old_edition, old_row),
                                              taxa(Of::new_edition, new_row)) > 0;
  };
  for (auto const other_row : rows_[group][index_of(of_there)]) {
    auto const& statements = there.lead(other_row).statements;
    for (std::uint32_t i = 0; i < statements.size(); ++i) {
      if (!share_a_character(statement, statements[i]) || !meets(other_row)) continue;
      bool const is_old = of == Of::old_edition;
      bool const same = same_statement(is_old ? statement : statements[i],
                                       is_old ? statements[i] : statement, ground_.exceptions);
      if (same || found.row == none) found = {other_row, i};
      if (same) return found;
    }
  }
  return found;
}

}  // namespace keydrift::collating

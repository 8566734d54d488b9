#include "keydrift/collation/comparison.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/key/sort_stably.hpp"

namespace keydrift::collating {
namespace {

struct Cell {
  std::uint32_t old_ordinal{};
  std::uint32_t new_ordinal{};
  Grade taxa{};
  Grade statements{};
  [[nodiscard]] std::uint64_t worth() const {
    return std::uint64_t{taxa_weight} * taxa + std::uint64_t{statements_weight} * statements;
  }
};

// Leads whose statements agree so much, and so little with those of the other leads, are the same
// leads wherever they lead: that two destinations were exchanged is seen in no other way.
constexpr Grade plainly_the_same = whole / 4 * 3;
constexpr Grade plainly_more = whole / 5;

// Where a couplet has three leads or more, leads that agree less than this do not answer to each
// other: one was dropped and one was added.
constexpr std::uint64_t least_worth_pairing =
    std::uint64_t{taxa_weight + statements_weight} * whole / 10;

}  // namespace

Comparison::Comparison(Side const& old_side, Side const& new_side, TaxonMatching const& matching)
    : Comparison{old_side,
                 new_side,
                 matching,
                 {read_sayings(*old_side.edition), read_sayings(*new_side.edition)}} {}

Comparison::Comparison(Side const& old_side, Side const& new_side, TaxonMatching const& matching,
                       std::array<std::vector<SaidLead>, 2> sayings)
    : sides_{&old_side, &new_side},
      shared_{matching, old_side, new_side},
      sayings_{std::move(sayings)} {
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    auto const index = index_of(of);
    auto const& graph = *sides_[index]->graph;
    for (auto const lead : sides_[index]->leads) {
      auto const runs = graph.taxa_below(lead);
      below_lead_[index].push_back({shared_.mass(of, runs), shared_.fingerprint(of, runs)});
    }
    for (std::uint32_t i = 0; i < sides_[index]->couplet_count(); ++i) {
      auto const runs = graph.taxa_below(CoupletId{i});
      below_couplet_[index].push_back({shared_.mass(of, runs), shared_.fingerprint(of, runs)});
    }
  }
}

Grade Comparison::taxa_agreement(std::uint32_t old_row, std::uint32_t new_row) const {
  auto const& a = below_lead_[0][old_row];
  auto const& b = below_lead_[1][new_row];
  if (a.mass == b.mass && a.fingerprint == b.fingerprint && a.mass > 0) return whole;
  auto const old_runs = sides_[0]->graph->taxa_below(sides_[0]->leads[old_row]);
  auto const new_runs = sides_[1]->graph->taxa_below(sides_[1]->leads[new_row]);
  if (a.mass == 0 || b.mass == 0) {
    return a.mass == b.mass && old_runs.empty() && new_runs.empty() ? whole : 0;
  }
  auto const common = shared_.common(old_runs, new_runs);
  return static_cast<Grade>(std::uint64_t{whole} * common / (a.mass + b.mass - common));
}

Comparison::Result Comparison::compare(std::uint32_t old_couplet, std::uint32_t new_couplet,
                                       std::vector<std::uint32_t>& pairing) const {
  auto const olds = sides_[0]->lead_count(old_couplet);
  auto const news = sides_[1]->lead_count(new_couplet);
  pairing.assign(olds, none);
  if (olds == 0 || news == 0) return olds == news ? Result{whole, whole} : Result{};

  auto const old_first = sides_[0]->first_lead[old_couplet];
  auto const new_first = sides_[1]->first_lead[new_couplet];
  ShortList<Cell, 9> cells;
  cells.reserve(std::size_t{olds} * news);
  // How plainly each lead says what each other one says, by old and new ordinal.
  ShortList<Grade, 9> plainly;
  for (std::uint32_t i = 0; i < olds; ++i) {
    for (std::uint32_t j = 0; j < news; ++j) {
      auto const& a = sayings_[0][old_first + i];
      auto const& b = sayings_[1][new_first + j];
      plainly.push_back(agreement_of_statements(a, b));
      cells.push_back(
          {i, j, taxa_agreement(old_first + i, new_first + j), agreement(a, b, plainly.back())});
    }
  }

  std::uint64_t taxa = 0;
  std::uint64_t statements = 0;
  auto const take = [&](Cell const& cell) {
    pairing[cell.old_ordinal] = cell.new_ordinal;
    taxa += cell.taxa;
    statements += cell.statements;
  };
  if (olds == 2 && news == 2) {
    bool const crossed = cells[1].worth() + cells[2].worth() > cells[0].worth() + cells[3].worth();
    take(cells[crossed ? 1 : 0]);
    take(cells[crossed ? 2 : 3]);
  } else {
    sort_stably(cells, [](Cell const& a, Cell const& b) {
      if (a.worth() != b.worth()) return a.worth() > b.worth();
      // Ties: the first leads first, the same whichever edition is the old one.
      if (a.old_ordinal + a.new_ordinal != b.old_ordinal + b.new_ordinal) {
        return a.old_ordinal + a.new_ordinal < b.old_ordinal + b.new_ordinal;
      }
      return std::max(a.old_ordinal, a.new_ordinal) < std::max(b.old_ordinal, b.new_ordinal);
    });
    ShortList<char, 16> used(news, 0);
    for (auto const& cell : cells) {
      if (cell.worth() < least_worth_pairing) break;
      if (pairing[cell.old_ordinal] != none || used[cell.new_ordinal] != 0) continue;
      used[cell.new_ordinal] = 1;
      take(cell);
    }
  }
  auto const leads = std::max(olds, news);
  Result best{static_cast<Grade>(taxa / leads), static_cast<Grade>(statements / leads)};
  if (olds != news) {
    auto const together = olds < news ? with_next(Of::old_edition, old_couplet, new_couplet)
                                      : with_next(Of::new_edition, new_couplet, old_couplet);
    if (together.worth() > best.worth()) best = together;
  }
  if (!pair_by_plain_statements({plainly.data(), plainly.size()}, news, pairing) ||
      best.taxa >= credible_taxa || best.statements >= credible_statements) {
    return best;
  }
  taxa = 0;
  statements = 0;
  for (auto const& cell : cells) {
    if (pairing[cell.old_ordinal] != cell.new_ordinal) continue;
    taxa += cell.taxa;
    statements += cell.statements;
  }
  Result const plain{static_cast<Grade>(taxa / leads), static_cast<Grade>(statements / leads)};
  return plain.statements >= credible_statements ? plain : best;
}

Comparison::Result Comparison::with_next(Of few, std::uint32_t couplet,
                                         std::uint32_t polytomy) const {
  auto const& side = this->side(few);
  auto const wanted =
      this->side(few == Of::old_edition ? Of::new_edition : Of::old_edition).lead_count(polytomy);
  Result best;
  if (wanted > most_leads_together) return best;
  ShortList<JoinedLead, 12> leads;
  for (auto joint = side.first_lead[couplet]; joint < side.end_lead(couplet); ++joint) {
    auto const next = side.behind[joint];
    if (next == none || next == couplet ||
        side.lead_count(couplet) - 1 + side.lead_count(next) != wanted) {
      continue;
    }
    auto const found = compare_joined(few, couplet, joint, next, polytomy, leads);
    if (found.worth() > best.worth()) best = found;
  }
  return best;
}

Comparison::Result Comparison::compare_joined(Of few, std::uint32_t upper, std::uint32_t joint,
                                              std::uint32_t lower, std::uint32_t polytomy,
                                              ShortList<JoinedLead, 12>& leads) const {
  auto const many = few == Of::old_edition ? Of::new_edition : Of::old_edition;
  auto const& side = this->side(few);
  auto const& other_side = this->side(many);
  auto const wanted = other_side.lead_count(polytomy);
  auto const first = other_side.first_lead[polytomy];
  leads.clear();
  ShortList<Cell, 16> cells;
  auto const add = [&](std::uint32_t row, SaidLead const* through) {
    auto const ordinal = static_cast<std::uint32_t>(leads.size());
    leads.push_back({.row = row, .answer = none, .taxa = 0, .words = 0});
    for (std::uint32_t j = 0; j < wanted; ++j) {
      auto const& there = saying(many, first + j);
      auto words = agreement(saying(few, row), there);
      if (through != nullptr) words = std::max(words, agreement(*through, there));
      cells.push_back(
          {ordinal, j,
           few == Of::old_edition ? taxa_agreement(row, first + j) : taxa_agreement(first + j, row),
           words});
    }
  };
  for (auto row = side.first_lead[upper]; row < side.end_lead(upper); ++row) {
    if (row != joint) add(row, nullptr);
  }
  for (auto row = side.first_lead[lower]; row < side.end_lead(lower); ++row) {
    auto const through = both_said(saying(few, joint), saying(few, row));
    add(row, &through);
  }
  sort_stably(cells, [](Cell const& a, Cell const& b) { return a.worth() > b.worth(); });
  ShortList<char, most_leads_together> taken(wanted, 0);
  std::uint64_t taxa = 0;
  std::uint64_t statements = 0;
  for (auto const& cell : cells) {
    auto& lead = leads[cell.old_ordinal];
    if (lead.answer != none || taken[cell.new_ordinal] != 0) continue;
    taken[cell.new_ordinal] = 1;
    lead.answer = first + cell.new_ordinal;
    lead.taxa = cell.taxa;
    lead.words = cell.statements;
    taxa += cell.taxa;
    statements += cell.statements;
  }
  return {static_cast<Grade>(taxa / wanted), static_cast<Grade>(statements / wanted)};
}

bool Comparison::pair_by_plain_statements(std::span<Grade const> grades, std::uint32_t news,
                                          std::vector<std::uint32_t>& pairing) {
  auto const olds = static_cast<std::uint32_t>(pairing.size());
  if (olds < 2 || news < 2) return false;
  auto const grade = [&](std::uint32_t i, std::uint32_t j) {
    return grades[std::size_t{i} * news + j];
  };
  auto const paired_plainly = [&](std::uint32_t i) {
    return pairing[i] != none && grade(i, pairing[i]) >= plainly_the_same;
  };
  // A lead without a like is in doubt on whichever side it stands.
  std::uint32_t plainly = 0;
  for (std::uint32_t i = 0; i < olds; ++i) plainly += paired_plainly(i) ? 1U : 0U;
  if (plainly == std::max(olds, news)) return false;
  auto const plain = [&](std::uint32_t i, std::uint32_t j) {
    auto const mine = grade(i, j);
    if (mine < plainly_the_same) return false;
    for (std::uint32_t k = 0; k < olds; ++k) {
      if (k != i && grade(k, j) + plainly_more > mine) return false;
    }
    for (std::uint32_t k = 0; k < news; ++k) {
      if (k != j && grade(i, k) + plainly_more > mine) return false;
    }
    return true;
  };
  bool changed = false;
  for (std::uint32_t i = 0; i < olds; ++i) {
    for (std::uint32_t j = 0; j < news; ++j) {
      if (pairing[i] == j || !plain(i, j)) continue;
      changed = true;
      // The two leads that lose their likes by that are left to each other.
      auto const loser = std::find(pairing.begin(), pairing.end(), j);
      if (loser != pairing.end()) *loser = pairing[i];
      pairing[i] = j;
    }
  }
  return changed;
}

}  // namespace keydrift::collating

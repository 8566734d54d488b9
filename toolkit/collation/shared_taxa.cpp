#include "keydrift/collation/shared_taxa.hpp"

#include <algorithm>
#include <bit>
#include <numeric>

namespace keydrift::collating {
namespace {

struct Tie {
  std::uint32_t old_position{};
  std::uint32_t new_position{};
  std::uint64_t weight{};
  std::uint64_t number{};  // by the two names, the same whichever edition is the old one
};

std::vector<Tie> make_ties(TaxonMatching const& matching, Side const& old_side,
                           Side const& new_side) {
  std::vector<std::uint32_t> old_degree(old_side.edition->taxa.size());
  std::vector<std::uint32_t> new_degree(new_side.edition->taxa.size());
  for (auto const& match : matching.matches) {
    if (match.relation == Relation::disjoint) continue;
    ++old_degree[match.old_taxon.index];
    ++new_degree[match.new_taxon.index];
  }
  std::vector<Tie> ties;
  ties.reserve(matching.matches.size());
  for (auto const& match : matching.matches) {
    if (match.relation == Relation::disjoint) continue;
    auto const parts =
        std::max(old_degree[match.old_taxon.index], new_degree[match.new_taxon.index]);
    auto const old_number = text_number((*old_side.edition)[match.old_taxon].name);
    auto const new_number = text_number((*new_side.edition)[match.new_taxon].name);
    ties.push_back(
        {.old_position = old_side.graph->position_of(match.old_taxon),
         .new_position = new_side.graph->position_of(match.new_taxon),
         .weight = std::max<std::uint64_t>(1, tie_weight / parts),
         .number = mix(std::min(old_number, new_number) ^ mix(std::max(old_number, new_number)))});
  }
  std::sort(ties.begin(), ties.end(), [](Tie const& a, Tie const& b) {
    return a.old_position != b.old_position ? a.old_position < b.old_position
                                            : a.new_position < b.new_position;
  });
  return ties;
}

}  // namespace

SharedTaxa::SharedTaxa(TaxonMatching const& matching, Side const& old_side, Side const& new_side) {
  auto const ties = make_ties(matching, old_side, new_side);
  tie_count_ = static_cast<std::uint32_t>(ties.size());

  std::array<std::size_t, 2> const taxa{old_side.edition->taxa.size(),
                                        new_side.edition->taxa.size()};
  for (std::size_t of = 0; of < 2; ++of) {
    auto& running = running_[of];
    running.mass.assign(taxa[of] + 1, 0);
    running.fingerprint.assign(taxa[of] + 1, 0);
    running.ties.assign(taxa[of] + 1, 0);
    for (auto const& tie : ties) {
      auto const at = std::size_t{of == 0 ? tie.old_position : tie.new_position} + 1;
      running.mass[at] += tie.weight;
      running.fingerprint[at] += tie.number;
      ++running.ties[at];
    }
    for (std::size_t i = 1; i <= taxa[of]; ++i) {
      running.mass[i] += running.mass[i - 1];
      running.fingerprint[i] += running.fingerprint[i - 1];
      running.ties[i] += running.ties[i - 1];
    }
  }

  // The wavelet matrix over the ties in order of old position, valued by new position.
  std::vector<std::uint32_t> order(ties.size());
  std::iota(order.begin(), order.end(), 0U);
  tie_mass_before_.assign(1, 0);
  for (auto const& tie : ties) {
    new_position_.push_back(tie.new_position);
    tie_mass_before_.push_back(tie_mass_before_.back() + tie.weight);
  }
  auto const bits = static_cast<unsigned>(std::bit_width(taxa[1]));
  std::vector<std::uint32_t> zeros;
  std::vector<std::uint32_t> ones;
  for (unsigned bit = bits; bit-- > 0;) {
    Level level;
    level.zeros_before.reserve(order.size() + 1);
    level.zeros_before.push_back(0);
    zeros.clear();
    ones.clear();
    for (auto const tie : order) {
      bool const one = ((ties[tie].new_position >> bit) & 1U) != 0;
      (one ? ones : zeros).push_back(tie);
      level.zeros_before.push_back(level.zeros_before.back() + (one ? 0U : 1U));
    }
    level.zeros = static_cast<std::uint32_t>(zeros.size());
    order = zeros;
    order.insert(order.end(), ones.begin(), ones.end());
    level.mass_before.reserve(order.size() + 1);
    level.mass_before.push_back(0);
    for (auto const tie : order) {
      level.mass_before.push_back(level.mass_before.back() + ties[tie].weight);
    }
    levels_.push_back(std::move(level));
  }

  std::vector<std::uint64_t> key(ties.size());
  std::vector<std::uint32_t> place(ties.size());
  for (unsigned shuffle = 0; shuffle < shuffles; ++shuffle) {
    for (std::size_t i = 0; i < ties.size(); ++i) key[i] = mix(ties[i].number + shuffle);
    auto& tie_at = tie_at_[shuffle];
    tie_at.resize(ties.size());
    std::iota(tie_at.begin(), tie_at.end(), 0U);
    std::sort(tie_at.begin(), tie_at.end(), [&](std::uint32_t a, std::uint32_t b) {
      return key[a] != key[b] ? key[a] < key[b] : a < b;
    });
    for (std::uint32_t i = 0; i < tie_at.size(); ++i) place[tie_at[i]] = i;
    for (std::size_t of = 0; of < 2; ++of) {
      auto& least = least_[of][shuffle];
      least.assign(1, std::vector<std::uint32_t>(taxa[of], none));
      for (std::size_t i = 0; i < ties.size(); ++i) {
        auto& best = least[0][of == 0 ? ties[i].old_position : ties[i].new_position];
        best = std::min(best, place[i]);
      }
      for (std::size_t width = 2; width <= taxa[of]; width *= 2) {
        auto const& half = least.back();
        std::vector<std::uint32_t> row(taxa[of] - width + 1);
        for (std::size_t i = 0; i < row.size(); ++i)
          row[i] = std::min(half[i], half[i + width / 2]);
        least.push_back(std::move(row));
      }
    }
  }
}

std::uint64_t SharedTaxa::mass(Of of, std::span<TaxonRun const> runs) const {
  auto const& before = running_[index_of(of)].mass;
  std::uint64_t sum = 0;
  for (auto const& run : runs) sum += before[run.end] - before[run.begin];
  return sum;
}

std::uint64_t SharedTaxa::fingerprint(Of of, std::span<TaxonRun const> runs) const {
  auto const& before = running_[index_of(of)].fingerprint;
  std::uint64_t sum = 0;
  for (auto const& run : runs) sum += before[run.end] - before[run.begin];
  return sum;
}

std::uint32_t SharedTaxa::least(Of of, unsigned shuffle, std::span<TaxonRun const> runs) const {
  auto const& order = least_[index_of(of)][shuffle];
  std::uint32_t best = none;
  for (auto const& run : runs) {
    if (run.begin >= run.end) continue;
    auto const width = run.end - run.begin;
    auto const step = static_cast<unsigned>(std::bit_width(width)) - 1U;
    best = std::min({best, order[step][run.begin], order[step][run.end - (1U << step)]});
  }
  return best == none ? none : tie_at_[shuffle][best];
}

std::uint64_t SharedTaxa::sum_below(std::uint32_t begin, std::uint32_t end,
                                    std::uint32_t bound) const {
  if (begin >= end) return 0;
  auto const bits = static_cast<unsigned>(levels_.size());
  if (std::uint64_t{bound} >= (std::uint64_t{1} << bits)) {
    return tie_mass_before_[end] - tie_mass_before_[begin];
  }
  std::uint64_t sum = 0;
  for (unsigned k = 0; k < bits && begin < end; ++k) {
    auto const& level = levels_[k];
    auto const zero_begin = level.zeros_before[begin];
    auto const zero_end = level.zeros_before[end];
    if (((bound >> (bits - 1 - k)) & 1U) != 0) {
      sum += level.mass_before[zero_end] - level.mass_before[zero_begin];
      begin = level.zeros + (begin - zero_begin);
      end = level.zeros + (end - zero_end);
    } else {
      begin = zero_begin;
      end = zero_end;
    }
  }
  return sum;
}

std::uint64_t SharedTaxa::common(std::span<TaxonRun const> old_runs,
                                 std::span<TaxonRun const> new_runs) const {
  auto const& before = running_[0].ties;
  std::uint64_t ties = 0;
  for (auto const& run : old_runs) ties += before[run.end] - before[run.begin];
  std::uint64_t sum = 0;
  if (ties <= std::uint64_t{2} * old_runs.size() * new_runs.size()) {
    // Fewer taxa than pairs of runs would cost (a much reticulate key, or a cherry): look at each.
    for (auto const& run : old_runs) {
      for (auto tie = before[run.begin]; tie < before[run.end]; ++tie) {
        auto const position = new_position_[tie];
        auto const after =
            std::upper_bound(new_runs.begin(), new_runs.end(), position,
                             [](std::uint32_t at, TaxonRun const& r) { return at < r.begin; });
        if (after != new_runs.begin() && position < std::prev(after)->end) {
          sum += tie_mass_before_[tie + 1] - tie_mass_before_[tie];
        }
      }
    }
    return sum;
  }
  for (auto const& old_run : old_runs) {
    auto const begin = before[old_run.begin];
    auto const end = before[old_run.end];
    for (auto const& new_run : new_runs) {
      sum += sum_below(begin, end, new_run.end) - sum_below(begin, end, new_run.begin);
    }
  }
  return sum;
}

}  // namespace keydrift::collating

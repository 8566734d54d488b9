#include "keydrift/collation/alignment.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include "keydrift/collation/assignment.hpp"
#include "keydrift/collation/candidates.hpp"
#include "keydrift/collation/neighbourhood.hpp"
#include "keydrift/key/side_by_side.hpp"

namespace keydrift::collating {
namespace {

// Candidates kept per couplet after the first comparison.
constexpr std::size_t most_kept = 10;

struct Candidate {
  CandidatePair pair;
  Grade taxa{};
  Grade statements{};
  Grade neighbours{};
  Grade total{};
  std::uint32_t pairing{};  // where its lead pairing begins
  [[nodiscard]] Grade without_neighbours() const {
    return static_cast<Grade>(
        (std::uint64_t{taxa_weight} * taxa + std::uint64_t{statements_weight} * statements) /
        (taxa_weight + statements_weight));
  }
  [[nodiscard]] bool credible() const { return collating::credible(taxa, statements, neighbours); }
  [[nodiscard]] bool may_become_credible() const {
    return collating::may_become_credible(taxa, statements);
  }
};

// A number for the edition's words, to put two editions in an order of their own.
std::uint64_t side_number(Side const& side) {
  std::uint64_t number = side.couplet_count();
  for (std::uint32_t i = 0; i < side.couplet_count(); ++i) {
    number = mix(number ^ text_number(side.couplet(i).label));
    for (auto const& lead : side.couplet(i).leads) {
      number = mix(number ^ text_number(lead.text) ^ (text_number(lead.destination_printed) + 1));
    }
  }
  return number;
}

// `answers`: the pairing of the leads as Comparison::compare gives it.
CoupletPair make_pair(Comparison const& comparison, std::uint32_t old_couplet,
                      std::uint32_t new_couplet, std::span<std::uint32_t const> answers,
                      Similarity const& similarity) {
  CoupletPair pair{.old_couplet = CoupletId{old_couplet},
                   .new_couplet = CoupletId{new_couplet},
                   .similarity = similarity,
                   .leads = {}};
  auto const news = comparison.side(Of::new_edition).lead_count(new_couplet);
  for (std::uint32_t j = 0; j < news; ++j) {
    auto const found = std::find(answers.begin(), answers.end(), j);
    LeadPair leads{.old_lead = std::nullopt, .new_lead = j};
    if (found != answers.end()) {
      leads.old_lead = static_cast<std::uint32_t>(found - answers.begin());
    }
    pair.leads.push_back(leads);
  }
  for (std::uint32_t i = 0; i < answers.size(); ++i) {
    if (answers[i] == none) pair.leads.push_back({.old_lead = i, .new_lead = std::nullopt});
  }
  return pair;
}

void index_pairs(Comparison const& comparison, Alignment& alignment) {
  alignment.pair_of_new.assign(comparison.side(Of::new_edition).couplet_count(), none);
  for (std::uint32_t i = 0; i < alignment.pairs.size(); ++i) {
    alignment.pair_of_new[alignment.pairs[i].new_couplet.index] = i;
  }
}

class Aligning {
 public:
  explicit Aligning(Comparison const& comparison)
      : comparison_{comparison},
        old_side_{comparison.side(Of::old_edition)},
        new_side_{comparison.side(Of::new_edition)},
        neighbourhood_{comparison},
        // Where several assignments are worth the same, which one is found depends on the side
        // that the rows are: choose it by content, so that changing places mirrors the result.
        turned_{std::pair{old_side_.couplet_count(), side_number(old_side_)} >
                std::pair{new_side_.couplet_count(), side_number(new_side_)}} {}

  Alignment run() && {
    auto found = find_candidates(comparison_);
    settled_ = std::move(found.settled);
    consider(found.pairs);
    keep_the_best();
    for (auto& candidate : candidates_) candidate.total = candidate.without_neighbours();
    assign();
    for (unsigned round = 0; round < most_rounds; ++round) {
      auto const before = chosen_;
      auto const known = candidates_.size();
      add_neighbours();
      grade();
      assign();
      if (chosen_ == before && candidates_.size() == known) break;
    }
    grade();
    return result();
  }

 private:
  [[nodiscard]] std::span<std::uint32_t const> pairing(Candidate const& candidate) const {
    return {pairings_.data() + candidate.pairing, old_side_.lead_count(candidate.pair.old_couplet)};
  }

  // Pairs are compared apart from each other and become candidates in their order.
  void consider(std::vector<CandidatePair> const& pairs) {
    struct Part {
      std::vector<Candidate> candidates;
      std::vector<std::uint32_t> pairings;
    };
    auto const compare = [&](std::size_t begin, std::size_t end) {
      Part part;
      std::vector<std::uint32_t> answers;
      for (auto i = begin; i < end; ++i) {
        auto const result =
            comparison_.compare(pairs[i].old_couplet, pairs[i].new_couplet, answers);
        Candidate candidate{.pair = pairs[i],
                            .taxa = result.taxa,
                            .statements = result.statements,
                            .pairing = static_cast<std::uint32_t>(part.pairings.size())};
        if (!candidate.may_become_credible()) continue;
        part.pairings.insert(part.pairings.end(), answers.begin(), answers.end());
        part.candidates.push_back(candidate);
      }
      return part;
    };
    constexpr std::size_t worth_a_thread = 2000;
    for (auto& part : made_in_parts(pairs.size(), worth_a_thread, compare)) {
      for (auto& candidate : part.candidates) {
        candidate.pairing += static_cast<std::uint32_t>(pairings_.size());
        candidates_.push_back(candidate);
      }
      pairings_.insert(pairings_.end(), part.pairings.begin(), part.pairings.end());
    }
  }

  // Keeps a candidate that is among the best of its old or of its new couplet.
  void keep_the_best() {
    std::vector<char> keep(candidates_.size(), 0);
    std::vector<std::uint32_t> order(candidates_.size());
    for (std::uint32_t i = 0; i < order.size(); ++i) order[i] = i;
    for (bool const by_old : {true, false}) {
      auto const couplet = [&](std::uint32_t i) {
        auto const& pair = candidates_[i].pair;
        return by_old ? pair.old_couplet : pair.new_couplet;
      };
      std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        if (couplet(a) != couplet(b)) return couplet(a) < couplet(b);
        auto const x = candidates_[a].without_neighbours();
        auto const y = candidates_[b].without_neighbours();
        if (x != y) return x > y;
        auto const near_a = tie_break(candidates_[a].pair);
        auto const near_b = tie_break(candidates_[b].pair);
        return near_a != near_b ? near_a > near_b : a < b;
      });
      std::size_t taken = 0;
      for (std::size_t i = 0; i < order.size(); ++i) {
        if (i == 0 || couplet(order[i]) != couplet(order[i - 1])) taken = 0;
        if (taken++ < most_kept) keep[order[i]] = 1;
      }
    }
    std::size_t kept = 0;
    for (std::size_t i = 0; i < candidates_.size(); ++i) {
      if (keep[i] != 0) candidates_[kept++] = candidates_[i];
    }
    candidates_.resize(kept);
    sorted_ = kept;
  }

  // Couplets before and behind aligned ones become candidates.
  void add_neighbours() {
    std::vector<CandidatePair> fresh;
    for (std::uint32_t couplet = 0; couplet < old_side_.couplet_count(); ++couplet) {
      auto const counterpart = neighbourhood_.counterpart(Of::old_edition, couplet);
      if (counterpart == none) continue;
      for (auto row = old_side_.first_lead[couplet]; row < old_side_.end_lead(couplet); ++row) {
        auto const new_row = neighbourhood_.lead_counterpart(Of::old_edition, row);
        if (new_row == none) continue;
        auto const old_goal = old_side_.behind[row];
        auto const new_goal = new_side_.behind[new_row];
        if (old_goal == none || new_goal == none) continue;
        fresh.push_back({old_goal, new_goal});
        // One couplet further on where one stands between.
        for (auto k = new_side_.first_lead[new_goal]; k < new_side_.end_lead(new_goal); ++k) {
          if (new_side_.behind[k] != none) fresh.push_back({old_goal, new_side_.behind[k]});
        }
        for (auto k = old_side_.first_lead[old_goal]; k < old_side_.end_lead(old_goal); ++k) {
          if (old_side_.behind[k] != none) fresh.push_back({old_side_.behind[k], new_goal});
        }
      }
      auto const old_parents = old_side_.graph->leads_to(CoupletId{couplet});
      auto const new_parents = new_side_.graph->leads_to(CoupletId{counterpart});
      for (auto const a : old_parents.first(std::min<std::size_t>(old_parents.size(), 4))) {
        for (auto const b : new_parents.first(std::min<std::size_t>(new_parents.size(), 4))) {
          fresh.push_back({a.couplet.index, b.couplet.index});
        }
      }
    }
    std::sort(fresh.begin(), fresh.end());
    fresh.erase(std::unique(fresh.begin(), fresh.end()), fresh.end());
    std::vector<CandidatePair> unseen;
    std::set_difference(fresh.begin(), fresh.end(), seen_.begin(), seen_.end(),
                        std::back_inserter(unseen));
    std::erase_if(unseen, [&](CandidatePair const& pair) {
      if (settled_[0][pair.old_couplet] != 0 || settled_[1][pair.new_couplet] != 0) return true;
      return std::binary_search(
          candidates_.begin(), candidates_.begin() + static_cast<std::ptrdiff_t>(sorted_),
          Candidate{.pair = pair},
          [](Candidate const& a, Candidate const& b) { return a.pair < b.pair; });
    });
    auto const middle = seen_.size();
    seen_.insert(seen_.end(), unseen.begin(), unseen.end());
    std::inplace_merge(seen_.begin(), seen_.begin() + static_cast<std::ptrdiff_t>(middle),
                       seen_.end());
    consider(unseen);
  }

  void grade() {
    for (auto& candidate : candidates_) {
      candidate.neighbours = neighbourhood_.agreement(
          candidate.pair.old_couplet, candidate.pair.new_couplet, pairing(candidate));
      candidate.total = total_grade(candidate.taxa, candidate.statements, candidate.neighbours);
    }
  }

  // Among equals those win that stand in like places of the key; the rest is settled by a number
  // that does not depend on which edition is the old one.  Below 2^20.
  [[nodiscard]] std::int64_t tie_break(CandidatePair const& pair) const {
    auto const a = std::int64_t{old_side_.rank[pair.old_couplet]};
    auto const b = std::int64_t{new_side_.rank[pair.new_couplet]};
    auto const apart = std::min<std::int64_t>(a < b ? b - a : a - b, 63);
    auto const number = mix(static_cast<std::uint64_t>(std::min(a, b)) << 32U |
                            static_cast<std::uint64_t>(std::max(a, b)));
    return (63 * 63 - apart * apart) * 256 + static_cast<std::int64_t>(number & 255U);
  }

  void assign() {
    std::vector<Offer> offers;
    std::vector<std::uint32_t> candidate_of;
    std::vector<std::uint32_t> order(candidates_.size());
    for (std::uint32_t i = 0; i < order.size(); ++i) order[i] = i;
    auto const key = [&](std::uint32_t i) {
      auto const& pair = candidates_[i].pair;
      auto const a = old_side_.rank[pair.old_couplet];
      auto const b = new_side_.rank[pair.new_couplet];
      return turned_ ? std::pair{b, a} : std::pair{a, b};
    };
    std::sort(order.begin(), order.end(),
              [&](std::uint32_t a, std::uint32_t b) { return key(a) < key(b); });
    for (auto const i : order) {
      auto const& candidate = candidates_[i];
      if (candidate.total <= floor_total || !candidate.credible()) continue;
      auto const [row, column] = key(i);
      offers.push_back({.row = row,
                        .column = column,
                        .worth = (std::int64_t{candidate.total - floor_total} << 40) +
                                 tie_break(candidate.pair)});
      candidate_of.push_back(i);
    }
    auto rows = old_side_.couplet_count();
    auto columns = new_side_.couplet_count();
    if (turned_) std::swap(rows, columns);
    chosen_.clear();
    neighbourhood_.clear();
    for (auto const offer : heaviest_assignment(rows, columns, offers)) {
      if (offer == none) continue;
      auto const& candidate = candidates_[candidate_of[offer]];
      chosen_.push_back(candidate_of[offer]);
      neighbourhood_.set(candidate.pair.old_couplet, candidate.pair.new_couplet,
                         pairing(candidate));
    }
    std::sort(chosen_.begin(), chosen_.end());
  }

  [[nodiscard]] Alignment result() const {
    Alignment alignment;
    for (auto const index : chosen_) {
      auto const& candidate = candidates_[index];
      alignment.pairs.push_back(make_pair(comparison_, candidate.pair.old_couplet,
                                          candidate.pair.new_couplet, pairing(candidate),
                                          {.taxa = to_share(candidate.taxa),
                                           .statements = to_share(candidate.statements),
                                           .neighbours = to_share(candidate.neighbours),
                                           .total = to_share(candidate.total)}));
    }
    std::sort(
        alignment.pairs.begin(), alignment.pairs.end(),
        [](CoupletPair const& a, CoupletPair const& b) { return a.old_couplet < b.old_couplet; });
    index_pairs(comparison_, alignment);
    for (std::uint32_t i = 0; i < old_side_.couplet_count(); ++i) {
      if (neighbourhood_.counterpart(Of::old_edition, i) == none) {
        alignment.only_old.push_back(CoupletId{i});
      }
    }
    for (std::uint32_t i = 0; i < new_side_.couplet_count(); ++i) {
      if (neighbourhood_.counterpart(Of::new_edition, i) == none) {
        alignment.only_new.push_back(CoupletId{i});
      }
    }
    return alignment;
  }

  Comparison const& comparison_;
  Side const& old_side_;
  Side const& new_side_;
  Neighbourhood neighbourhood_;
  bool turned_;
  std::vector<Candidate> candidates_;
  std::vector<std::uint32_t> pairings_;
  std::vector<std::uint32_t> chosen_;  // indices of candidates, ascending
  std::array<std::vector<char>, 2> settled_;
  std::vector<CandidatePair> seen_;  // looked at as neighbours, sorted
  std::size_t sorted_{};             // candidates found by index, sorted by pair
};

}  // namespace

Alignment align(Comparison const& comparison) { return Aligning{comparison}.run(); }

void regrade(Comparison const& comparison, Alignment& alignment) {
  Neighbourhood neighbourhood{comparison};
  std::vector<std::uint32_t> pairing;
  for (auto const& pair : alignment.pairs) {
    comparison.compare(pair.old_couplet.index, pair.new_couplet.index, pairing);
    neighbourhood.set(pair.old_couplet.index, pair.new_couplet.index, pairing);
  }
  for (auto& pair : alignment.pairs) {
    auto const old_couplet = pair.old_couplet.index;
    auto const new_couplet = pair.new_couplet.index;
    auto const result = comparison.compare(old_couplet, new_couplet, pairing);
    auto const neighbours = neighbourhood.agreement(old_couplet, new_couplet, pairing);
    pair = make_pair(comparison, old_couplet, new_couplet, pairing,
                     {.taxa = to_share(result.taxa),
                      .statements = to_share(result.statements),
                      .neighbours = to_share(neighbours),
                      .total = to_share(total_grade(result.taxa, result.statements, neighbours))});
  }
  index_pairs(comparison, alignment);
}

Counterparts counterparts(Comparison const& comparison, Alignment const& alignment) {
  Counterparts result;
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    auto const index = index_of(of);
    result.couplet[index].assign(comparison.side(of).couplet_count(), none);
    result.lead[index].assign(comparison.side(of).leads.size(), none);
  }
  for (auto const& pair : alignment.pairs) {
    result.couplet[0][pair.old_couplet.index] = pair.new_couplet.index;
    result.couplet[1][pair.new_couplet.index] = pair.old_couplet.index;
    for (auto const& leads : pair.leads) {
      if (!leads.old_lead || !leads.new_lead) continue;
      auto const old_row =
          comparison.side(Of::old_edition).row({pair.old_couplet, *leads.old_lead});
      auto const new_row =
          comparison.side(Of::new_edition).row({pair.new_couplet, *leads.new_lead});
      result.lead[0][old_row] = new_row;
      result.lead[1][new_row] = old_row;
    }
  }
  return result;
}

}  // namespace keydrift::collating

#include "keydrift/collation/parts_apart.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace keydrift::collating {
namespace {

constexpr Grade said_again_apart = whole / 2;
// Nearly word for word, or by the words and where the leads of the leftover lead.
constexpr Grade word_for_word = whole * 9 / 10;
constexpr Grade taken_along = whole / 3;
// Couplets looked at for one statement of a leftover, and wholes compared with one leftover.
constexpr std::size_t most_with_a_statement = 32;
constexpr std::size_t most_compared = 8;

// A couplet of edition `of` and its counterpart, which has more leads.
struct Grown {
  std::uint32_t counterpart{};  // of edition `of`
  std::uint32_t couplet{};      // of the other one
  std::size_t pair{};           // index into the alignment
};

std::vector<Grown> grown_couplets(Comparison const& comparison, Alignment const& alignment, Of of) {
  std::vector<Grown> grown;
  for (std::size_t i = 0; i < alignment.pairs.size(); ++i) {
    auto const& pair = alignment.pairs[i];
    Grown const one = of == Of::old_edition
                          ? Grown{pair.old_couplet.index, pair.new_couplet.index, i}
                          : Grown{pair.new_couplet.index, pair.old_couplet.index, i};
    auto const leads = comparison.side(other(of)).lead_count(one.couplet);
    if (leads > comparison.side(of).lead_count(one.counterpart) &&
        leads <= Comparison::most_leads_together) {
      grown.push_back(one);
    }
  }
  return grown;
}

template <class Visit>
void each_statement(Comparison const& comparison, Of of, std::uint32_t couplet,
                    Visit const& visit) {
  auto const& side = comparison.side(of);
  for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
    for (auto const& statement : comparison.saying(of, row).statements) visit(statement.predicate);
  }
}

// Which grown couplets say what.
class Index {
 public:
  Index(Comparison const& comparison, std::vector<Grown> const& grown, Of of) {
    for (std::uint32_t i = 0; i < grown.size(); ++i) {
      each_statement(comparison, other(of), grown[i].couplet,
                     [&](std::uint64_t predicate) { rows_.emplace_back(predicate, i); });
    }
    std::sort(rows_.begin(), rows_.end());
    rows_.erase(std::unique(rows_.begin(), rows_.end()), rows_.end());
  }

  // Those that have most statements in common with a couplet of edition `of`, the first of equals.
  [[nodiscard]] std::vector<std::uint32_t> alike(Comparison const& comparison, Of of,
                                                 std::uint32_t couplet) const {
    std::vector<std::uint32_t> hits;
    each_statement(comparison, of, couplet, [&](std::uint64_t predicate) {
      auto row = std::lower_bound(rows_.begin(), rows_.end(), std::pair{predicate, 0U});
      for (std::size_t n = 0; n < most_with_a_statement && row != rows_.end(); ++n, ++row) {
        if (row->first != predicate) break;
        hits.push_back(row->second);
      }
    });
    std::sort(hits.begin(), hits.end());
    std::vector<std::pair<std::size_t, std::uint32_t>> counted;  // fewer is better
    for (auto begin = hits.begin(); begin != hits.end();) {
      auto const end = std::upper_bound(begin, hits.end(), *begin);
      counted.emplace_back(hits.size() - static_cast<std::size_t>(end - begin), *begin);
      begin = end;
    }
    std::sort(counted.begin(), counted.end());
    counted.resize(std::min(counted.size(), most_compared));
    std::vector<std::uint32_t> found;
    for (auto const& [missing, i] : counted) found.push_back(i);
    return found;
  }

 private:
  std::vector<std::pair<std::uint64_t, std::uint32_t>> rows_;  // predicate, index of the grown
};

}  // namespace

std::optional<Joining> joining(Comparison const& comparison, Of of, std::uint32_t one,
                               std::uint32_t other_one, std::uint32_t whole_couplet) {
  auto const& side = comparison.side(of);
  auto const wanted = comparison.side(other(of)).lead_count(whole_couplet);
  if (one == other_one || wanted > Comparison::most_leads_together || side.lead_count(one) < 2 ||
      side.lead_count(other_one) < 2 ||
      side.lead_count(one) + side.lead_count(other_one) != wanted + 1) {
    return std::nullopt;
  }
  std::optional<Joining> best;
  ShortList<Comparison::JoinedLead, 12> leads;
  for (auto const& order : {std::pair{one, other_one}, std::pair{other_one, one}}) {
    // No structured binding, which clang 14 lets no lambda capture.
    auto const upper = order.first;
    auto const lower = order.second;
    for (auto joint = side.first_lead[upper]; joint < side.end_lead(upper); ++joint) {
      auto const found = comparison.compare_joined(of, upper, joint, lower, whole_couplet, leads);
      bool const all_said = std::all_of(leads.begin(), leads.end(), [&](auto const& lead) {
        if (lead.answer == none || lead.words <= said_again_apart) return false;
        if (side.leads[lead.row].couplet.index != lower) return true;
        auto const& mine = comparison.saying(of, lead.row);
        auto const& there = comparison.saying(other(of), lead.answer);
        return agreement_of_statements(both_said(comparison.saying(of, joint), mine), there) >
               agreement_of_statements(mine, there);
      });
      if (!all_said || (best && found.worth() <= best->agreement.worth())) continue;
      best = {.upper = upper, .lower = lower, .joint = joint, .agreement = found};
      std::uint64_t below_lower = 0;
      std::uint64_t below_upper = 0;
      for (auto const& lead : leads) {
        (side.leads[lead.row].couplet.index == lower ? below_lower : below_upper) += lead.taxa;
      }
      best->lower_taxa = static_cast<Grade>(below_lower / side.lead_count(lower));
      best->upper_taxa = static_cast<Grade>(below_upper / (side.lead_count(upper) - 1));
    }
  }
  return best;
}

void find_parts_apart(Comparison const& comparison, Alignment& alignment, Divisions& divisions) {
  bool any_changed = false;
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    auto& alone = of == Of::old_edition ? alignment.only_old : alignment.only_new;
    auto const grown = grown_couplets(comparison, alignment, of);
    if (grown.empty()) continue;
    Index const index{comparison, grown, of};
    auto& owners = divisions[index_of(of)];
    std::vector<char> divided(comparison.side(other(of)).couplet_count(), 0);
    for (auto const owner : owners) {
      if (owner != none) divided[owner] = 1;
    }
    auto const leftovers = alone;
    for (auto const leftover : leftovers) {
      if (owners[leftover.index] != none) continue;
      std::optional<Joining> best;
      Grown whole_couplet;
      for (auto const i : index.alike(comparison, of, leftover.index)) {
        if (divided[grown[i].couplet] != 0) continue;
        auto const found =
            joining(comparison, of, grown[i].counterpart, leftover.index, grown[i].couplet);
        if (!found) continue;
        auto const taxa = found->upper == leftover.index ? found->upper_taxa : found->lower_taxa;
        if (found->agreement.statements < word_for_word && taxa < taken_along) continue;
        if (!best || found->agreement.worth() > best->agreement.worth()) {
          best = found;
          whole_couplet = grown[i];
        }
      }
      if (!best) continue;
      divided[whole_couplet.couplet] = 1;
      owners[best->lower] = whole_couplet.couplet;
      if (best->upper != leftover.index) continue;
      any_changed = true;
      owners[best->upper] = none;
      std::replace(alone.begin(), alone.end(), leftover, CoupletId{best->lower});
      auto& pair = alignment.pairs[whole_couplet.pair];
      (of == Of::old_edition ? pair.old_couplet : pair.new_couplet) = leftover;
    }
    std::sort(alone.begin(), alone.end());
  }
  if (!any_changed) return;
  // Only now: the indexes of the pairs were known until both editions were gone through.
  std::sort(
      alignment.pairs.begin(), alignment.pairs.end(),
      [](CoupletPair const& a, CoupletPair const& b) { return a.old_couplet < b.old_couplet; });
  regrade(comparison, alignment);
}

}  // namespace keydrift::collating

#include "keydrift/collation/divisions.hpp"

#include <algorithm>

namespace keydrift::collating {
namespace {

constexpr Grade said_again_in_part = whole * 3 / 4;
constexpr Grade most_of_it = whole / 3 * 2;
// Taken parts are asked for their own neighbours this often: a polytomy of n leads has n - 2 parts.
constexpr unsigned most_passes = 8;

// One direction: parts are looked for in edition `of`, what they are parts of in the other one.
class Dividing {
 public:
  Dividing(Comparison const& comparison, Counterparts const& counterparts, Of of)
      : comparison_{comparison},
        counterparts_{counterparts},
        of_{of},
        other_{of == Of::old_edition ? Of::new_edition : Of::old_edition},
        side_{comparison.side(of)},
        other_side_{comparison.side(other_)},
        owner_(side_.couplet_count(), none),
        parts_(other_side_.couplet_count()) {}

  std::vector<std::uint32_t> run(std::vector<CoupletId> const& leftovers) && {
    for (unsigned pass = 0; pass < most_passes; ++pass) {
      std::vector<std::pair<std::uint32_t, std::uint32_t>> found;
      for (auto const leftover : leftovers) {
        if (owner_[leftover.index] != none) continue;
        if (auto const divided = owner_of(leftover.index); divided != none) {
          found.emplace_back(leftover.index, divided);
        }
      }
      if (found.empty()) break;
      for (auto const& [part, divided] : found) {
        owner_[part] = divided;
        parts_[divided].push_back(part);
      }
    }
    return std::move(owner_);
  }

 private:
  [[nodiscard]] std::vector<std::uint32_t> const& mine() const {
    return counterparts_.couplet[static_cast<std::size_t>(of_)];
  }

  std::uint32_t owner_of(std::uint32_t part) {
    divided_.clear();
    auto const ask = [&](std::uint32_t neighbour) {
      auto const divided = mine()[neighbour] != none ? mine()[neighbour] : owner_[neighbour];
      if (divided != none) divided_.push_back(divided);
    };
    for (auto const lead : side_.graph->leads_to(CoupletId{part})) ask(lead.couplet.index);
    for (auto row = side_.first_lead[part]; row < side_.end_lead(part); ++row) {
      if (side_.behind[row] != none) ask(side_.behind[row]);
    }
    for (auto const divided : divided_) {
      if (is_part(divided, part)) return divided;
    }
    return none;
  }

  [[nodiscard]] bool is_part(std::uint32_t divided, std::uint32_t part) const {
    // The counterpart and the parts found so far: what they say and where they lead is theirs.
    std::vector<std::uint32_t> mates{
        counterparts_.couplet[static_cast<std::size_t>(other_)][divided]};
    mates.insert(mates.end(), parts_[divided].begin(), parts_[divided].end());
    auto const part_runs = side_.graph->taxa_below(CoupletId{part});
    auto const divided_runs = other_side_.graph->taxa_below(CoupletId{divided});
    auto const mass = comparison_.below_couplet(of_, part).mass;
    auto const common = of_ == Of::old_edition
                            ? comparison_.shared().common(part_runs, divided_runs)
                            : comparison_.shared().common(divided_runs, part_runs);
    if (mass == 0 || common == 0) return false;
    auto const taken = share_taken(divided, mates, part);
    // Where taxa moved away at the same time, the words alone tell it if most of them do.
    if (common * 5 < mass * 4) return taken >= most_of_it;
    return 2 * taken > whole || takes_lead(divided, mates, part);
  }

  // Does a lead of the couplet say so, other than those that lead to `but_to`?
  [[nodiscard]] bool says(Of of, std::uint32_t couplet, SaidStatement const& statement,
                          std::uint32_t but_to = none) const {
    auto const& side = comparison_.side(of);
    for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
      if (but_to != none && side.behind[row] == but_to) continue;
      for (auto const& said : comparison_.saying(of, row).statements) {
        if (agreement(said, statement) >= said_again_in_part) return true;
      }
    }
    return false;
  }

  // Of the part's statements: said by the divided couplet and not by its other parts, but for the
  // leads from there to the part, which may sum up what the part says.
  [[nodiscard]] Grade share_taken(std::uint32_t divided, std::vector<std::uint32_t> const& mates,
                                  std::uint32_t part) const {
    std::uint64_t all = 0;
    std::uint64_t taken = 0;
    for (auto row = side_.first_lead[part]; row < side_.end_lead(part); ++row) {
      for (auto const& statement : comparison_.saying(of_, row).statements) {
        ++all;
        taken += says(other_, divided, statement) &&
                         std::none_of(
                             mates.begin(), mates.end(),
                             [&](std::uint32_t mate) { return says(of_, mate, statement, part); })
                     ? 1U
                     : 0U;
      }
    }
    return all == 0 ? 0 : static_cast<Grade>(whole * taken / all);
  }

  [[nodiscard]] bool takes_lead(std::uint32_t divided, std::vector<std::uint32_t> const& mates,
                                std::uint32_t part) const {
    if (other_side_.lead_count(divided) <= side_.lead_count(mates.front())) return false;
    auto const goes_to = [&](Of of, std::uint32_t couplet, Below const& below) {
      auto const& side = comparison_.side(of);
      for (auto row = side.first_lead[couplet]; row < side.end_lead(couplet); ++row) {
        if (comparison_.below_lead(of, row).fingerprint == below.fingerprint) return true;
      }
      return false;
    };
    for (auto row = side_.first_lead[part]; row < side_.end_lead(part); ++row) {
      auto const& below = comparison_.below_lead(of_, row);
      if (below.mass > 0 && goes_to(other_, divided, below) &&
          std::none_of(mates.begin(), mates.end(),
                       [&](std::uint32_t mate) { return goes_to(of_, mate, below); })) {
        return true;
      }
    }
    return false;
  }

  Comparison const& comparison_;
  Counterparts const& counterparts_;
  Of of_;
  Of other_;
  Side const& side_;
  Side const& other_side_;
  std::vector<std::uint32_t> owner_;
  std::vector<std::vector<std::uint32_t>> parts_;  // by divided couplet: found so far
  std::vector<std::uint32_t> divided_;
};

}  // namespace

Divisions find_divisions(Comparison const& comparison, Alignment const& alignment,
                         Counterparts const& counterparts) {
  return {Dividing{comparison, counterparts, Of::old_edition}.run(alignment.only_old),
          Dividing{comparison, counterparts, Of::new_edition}.run(alignment.only_new)};
}

void prefer_upper_parts(Comparison const& comparison, Alignment& alignment, Divisions& divisions) {
  // The couplet that a part of the same whole leads to is not the upper one.
  auto const upper_of = [&](Of of, std::uint32_t divided, std::uint32_t mate) {
    auto const& owners = divisions[index_of(of)];
    auto const& side = comparison.side(of);
    auto upper = mate;
    for (unsigned step = 0; step < most_passes; ++step) {
      auto const leads = side.graph->leads_to(CoupletId{upper});
      auto const above = std::find_if(leads.begin(), leads.end(), [&](LeadId lead) {
        return owners[lead.couplet.index] == divided && lead.couplet.index != upper;
      });
      if (above == leads.end()) break;
      upper = above->couplet.index;
    }
    return upper;
  };
  bool any = false;
  for (auto& pair : alignment.pairs) {
    auto& old_couplet = pair.old_couplet.index;
    auto& new_couplet = pair.new_couplet.index;
    for (auto const of : {Of::old_edition, Of::new_edition}) {
      auto& mine = of == Of::old_edition ? old_couplet : new_couplet;
      auto const divided = of == Of::old_edition ? new_couplet : old_couplet;
      auto const upper = upper_of(of, divided, mine);
      if (upper == mine) continue;
      any = true;
      auto& owners = divisions[index_of(of)];
      owners[mine] = divided;
      owners[upper] = none;
      auto& alone = of == Of::old_edition ? alignment.only_old : alignment.only_new;
      std::replace(alone.begin(), alone.end(), CoupletId{upper}, CoupletId{mine});
      std::sort(alone.begin(), alone.end());
      mine = upper;
    }
  }
  if (!any) return;
  std::sort(
      alignment.pairs.begin(), alignment.pairs.end(),
      [](CoupletPair const& a, CoupletPair const& b) { return a.old_couplet < b.old_couplet; });
  regrade(comparison, alignment);
}

}  // namespace keydrift::collating

#include "keydrift/collation/followed_ways.hpp"

#include <algorithm>
#include <span>
#include <utility>

namespace keydrift::collating {
namespace {

// How many of the leads count, being in reach of the start, and one of them.
struct Reachable {
  std::size_t count{};
  LeadId lead;
};
Reachable reachable(KeyGraph const& graph, std::span<LeadId const> leads) {
  Reachable found;
  for (auto const lead : leads) {
    if (!graph.reachable(lead.couplet)) continue;
    ++found.count;
    found.lead = lead;
  }
  return found;
}

}  // namespace

FollowedWays::FollowedWays(Side const& old_side, Side const& new_side,
                           std::array<Ways, 2> const& ways)
    : sides_{&old_side, &new_side}, ways_{ways} {
  for (auto const of : {Of::old_edition, Of::new_edition}) {
    find_single_ways(of);
    at(of).times.assign(ways_[index_of(of)].character_count(), 0);
  }
}

void FollowedWays::find_single_ways(Of of) {
  auto const& graph = *side(of).graph;
  auto& followed = at(of);
  followed.depth.assign(side(of).couplet_count(), none);
  followed.lead_to.assign(side(of).couplet_count(), none);
  // Couplets before those that they lead to; those on cycles come last and have no depth yet when
  // it is asked for.
  for (auto const couplet : graph.topological_order()) {
    auto const before = reachable(graph, graph.leads_to(couplet));
    if (before.count == 0) followed.depth[couplet.index] = 0;
    if (before.count != 1 || followed.depth[before.lead.couplet.index] == none) continue;
    followed.depth[couplet.index] = followed.depth[before.lead.couplet.index] + 1;
    followed.lead_to[couplet.index] = side(of).row(before.lead);
  }
  followed.last_lead.assign(side(of).edition->taxa.size(), none);
  for (std::uint32_t i = 0; i < followed.last_lead.size(); ++i) {
    auto const before = reachable(graph, graph.leads_to(TaxonId{i}));
    if (before.count == 1 && followed.depth[before.lead.couplet.index] != none) {
      followed.last_lead[i] = side(of).row(before.lead);
    }
  }
}

FollowedWays::End FollowedWays::end_of(Of of, TaxonId taxon, std::size_t most) const {
  auto const& followed = at(of);
  auto row = followed.last_lead[taxon.index];
  End end;
  end.length = followed.depth[side(of).leads[row].couplet.index] + std::size_t{1};
  while (end.leads.size() < std::min(most, end.length)) {
    end.leads.push_back(side(of).leads[row]);
    row = followed.lead_to[side(of).leads[row].couplet.index];
  }
  std::reverse(end.leads.begin(), end.leads.end());
  return end;
}

void FollowedWays::follow(Of of, TaxonId taxon) {
  auto& followed = at(of);
  auto& path = followed.path;
  way_up_.clear();
  std::size_t kept = 0;
  for (auto row = followed.last_lead[taxon.index]; row != none;) {
    auto const lead = side(of).leads[row];
    auto const depth = followed.depth[lead.couplet.index];
    if (depth < path.size() && path[depth] == lead) {
      kept = depth + std::size_t{1};
      break;
    }
    way_up_.push_back(row);
    row = followed.lead_to[lead.couplet.index];
  }
  followed.kept = std::min(followed.kept, kept);
  while (path.size() > kept) {
    leave(of, side(of).row(path.back()));
    path.pop_back();
  }
  for (auto row = way_up_.rbegin(); row != way_up_.rend(); ++row) {
    path.push_back(side(of).leads[*row]);
    take(of, *row);
  }
}

std::size_t FollowedWays::kept_since(Of of) {
  return std::exchange(at(of).kept, at(of).path.size());
}

void FollowedWays::take(Of of, std::uint32_t row) {
  auto& here = at(of);
  auto& there = at(other(of));
  for (auto const character : ways_[index_of(of)].characters_of(row)) {
    if (here.times[character]++ > 0) continue;
    here.characters.insert(character);
    if (there.times[character] > 0) {
      there.only_here.erase(character);
    } else {
      here.only_here.insert(character);
    }
  }
}

void FollowedWays::leave(Of of, std::uint32_t row) {
  auto& here = at(of);
  auto& there = at(other(of));
  for (auto const character : ways_[index_of(of)].characters_of(row)) {
    if (--here.times[character] > 0) continue;
    here.characters.erase(character);
    if (there.times[character] > 0) {
      there.only_here.insert(character);
    } else {
      here.only_here.erase(character);
    }
  }
}

}  // namespace keydrift::collating

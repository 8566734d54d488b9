#include "keydrift/characters/reading/groups.hpp"

#include <algorithm>
#include <utility>

namespace keydrift::reading {

Cluster opaque_cluster(std::string words, bool negated, std::uint32_t first, std::uint32_t last) {
  DraftAtom atom;
  atom.opaque = true;
  atom.atom.states.push_back(std::move(words));
  atom.atom.negated = negated;
  Cluster cluster;
  cluster.all.push_back(std::move(atom));
  cluster.first = first;
  cluster.last = last;
  return cluster;
}

bool same_character(Cluster const& a, Cluster const& b) {
  return a.all.size() == 1 && b.all.size() == 1 && !a.all[0].opaque && !b.all[0].opaque &&
         a.all[0].atom.character == b.all[0].atom.character;
}

void widen(Cluster& into, Cluster from) {
  auto& atom = into.all[0].atom;
  auto& other = from.all[0].atom;
  if (atom.negated == other.negated) {
    atom.states.insert(atom.states.end(), other.states.begin(), other.states.end());
    std::sort(atom.states.begin(), atom.states.end());
    atom.states.erase(std::unique(atom.states.begin(), atom.states.end()), atom.states.end());
    atom.ranges.insert(atom.ranges.end(), other.ranges.begin(), other.ranges.end());
  } else {
    // "not bifid or entire": all but the bifid, less what is admitted again.
    auto barred = atom.negated ? atom.states : other.states;
    auto const& admitted = atom.negated ? other.states : atom.states;
    std::erase_if(barred, [&](std::string const& state) {
      return std::binary_search(admitted.begin(), admitted.end(), state);
    });
    // "not bifid or bifid" says nothing; what stands first is kept.
    if (!barred.empty()) {
      atom.states = std::move(barred);
      atom.negated = true;
    }
  }
  auto& rivals = into.all[0].rivals;
  rivals.insert(rivals.end(), from.all[0].rivals.begin(), from.all[0].rivals.end());
  if (!into.second_begin && from.first > into.last) into.second_begin = into.last + 1;
  into.first = std::min(into.first, from.first);
  into.last = std::max(into.last, from.last);
  into.own_subject = into.own_subject || from.own_subject;
  into.backwards = into.backwards || from.backwards;
  into.unitless = into.unitless || from.unitless;
  into.or_rarely = into.or_rarely || from.or_rarely;
}

bool continues_list(Group& before, Group& group) {
  // Words without content ("up to") make a group that says nothing.
  if (before.alternatives.empty() || group.alternatives.empty()) return false;
  for (auto const& alternative : before.alternatives) {
    if (alternative.size() != 1) return false;
  }
  for (auto const& alternative : group.alternatives) {
    if (alternative.size() != 1) return false;
  }
  auto* into = &before.alternatives.back().front();
  if (!into->row) return false;
  bool same = false;
  for (auto const& alternative : group.alternatives) {
    auto const& cluster = alternative.front();
    if (cluster.own_subject) return false;
    if (same_character(*into, cluster)) {
      if (cluster.all[0].atom.negated != into->all[0].atom.negated) return false;
      if (!cluster.all[0].atom.ranges.empty()) return false;
      same = true;
    }
  }
  if (!same) return false;
  before.last = std::max(before.last, group.last);
  if (!before.alternatives_begin) before.alternatives_begin = group.first;
  for (auto& alternative : group.alternatives) {
    into = &before.alternatives.back().front();
    Cluster* match = nullptr;
    for (auto& known : before.alternatives) {
      if (same_character(known.front(), alternative.front())) match = &known.front();
    }
    if (match != nullptr) {
      widen(*match, std::move(alternative.front()));
    } else {
      before.alternatives.push_back(std::move(alternative));
    }
  }
  before.rest.insert(before.rest.end(), group.rest.begin(), group.rest.end());
  if (!group.whole.empty()) before.whole += ' ' + group.whole;
  return true;
}

Origin origin_of(Group const& group) {
  // The least certain of its parts.
  Origin origin = Origin::mark;
  for (auto const& alternative : group.alternatives) {
    for (auto const& cluster : alternative) origin = std::max(origin, cluster.origin);
  }
  return origin;
}

std::vector<std::vector<DraftAtom>> conjunction(Group group) {
  constexpr std::size_t kMost = 16;
  std::vector<std::vector<DraftAtom>> product(1);
  // As a rule one thing is said, and need not be copied.
  if (group.alternatives.size() == 1 && group.alternatives[0].size() == 1 &&
      group.alternatives[0][0].all.size() == 1) {
    product.front() = std::move(group.alternatives[0][0].all);
    return product;
  }
  for (auto const& alternative : group.alternatives) {
    std::vector<DraftAtom const*> all;
    for (auto const& cluster : alternative) {
      for (auto const& atom : cluster.all) all.push_back(&atom);
    }
    if (product.size() * all.size() > kMost) all.resize(1);
    std::vector<std::vector<DraftAtom>> next;
    next.reserve(product.size() * all.size());
    for (auto const& so_far : product) {
      for (auto const* atom : all) {
        auto& longer = next.emplace_back();
        longer.reserve(so_far.size() + 1);
        longer = so_far;
        longer.push_back(*atom);
      }
    }
    product = std::move(next);
  }
  return product;
}

}  // namespace keydrift::reading

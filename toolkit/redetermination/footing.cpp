// What an outcome rests on.
#include <set>

#include "keydrift/redetermination/judge.hpp"

namespace keydrift {
namespace {

struct Counts {
  std::size_t understood{};
  std::size_t words{};
};

void count(Edition const& edition, Route const& route, std::set<LeadId>& seen, Counts& counts) {
  for (auto const lead : route) {
    if (!seen.insert(lead).second) continue;
    for (auto const& statement : edition[lead].statements) {
      bool const firm =
          statement.strength == Strength::firm || statement.strength == Strength::excepted;
      if (!firm || statement.any_of.empty()) continue;
      ++(statement.origin == Origin::opaque ? counts.words : counts.understood);
    }
  }
}

}  // namespace

Footing footing_of(Sides const& sides, Possibilities const& found) {
  Counts counts;
  std::set<LeadId> old_leads;
  std::set<LeadId> new_leads;
  for (auto const& leaf : found.old_leaves) {
    count(*sides.old_key->edition, leaf.route, old_leads, counts);
  }
  for (auto const& hypothesis : found.hypotheses) {
    count(*sides.new_key->edition, hypothesis.route, new_leads, counts);
  }
  if (counts.words == 0) return counts.understood == 0 ? Footing::nothing : Footing::understood;
  return counts.understood == 0 ? Footing::words_only : Footing::partly;
}

}  // namespace keydrift

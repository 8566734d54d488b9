#include "keydrift/redetermination/walk.hpp"

#include <algorithm>
#include <utility>

namespace keydrift {
namespace {

// Completions that pass a lead.
struct Branch {
  std::uint32_t lead{};
  Box box;
  std::optional<std::vector<TaxonId>> only;  // restricted to these terminals by an exception
  bool through_exception{false};
};

// Does the lead say something that fails throughout the box and that no exception covers?
bool refutes(CharacterSpace const& space, CompiledStatement const& statement, Box const& box) {
  if (statement.strength == Strength::hedged || statement.strength == Strength::excepted) {
    return false;
  }
  return std::none_of(statement.any_of.begin(), statement.any_of.end(), [&](auto const& atom) {
    return meets(space.part(box, atom.character), atom.allowed);
  });
}

// Part of a box, while the statements of a lead are applied one by one.
struct WalkPiece {
  Box box;
  std::optional<std::vector<TaxonId>> only;
  bool through_exception{false};
};

class Splitter {
 public:
  explicit Splitter(CompiledKey const& key) : key_{key}, space_{*key.space} {}

  // The disjoint parts of `box` where the statement holds (is not refuted).
  void holding(CompiledStatement const& statement, Box const& box, std::vector<Box>& out) const {
    Box rest = box;
    for (auto const& atom : statement.any_of) {
      if (!meets(space_.part(rest, atom.character), atom.allowed)) continue;
      Box part = rest;
      intersect(space_.part(part, atom.character), atom.allowed);
      if (space_.settle(part)) out.push_back(std::move(part));
      remove(space_.part(rest, atom.character), atom.allowed);
      if (is_empty(space_.part(rest, atom.character))) return;
    }
  }

  // Makes `box` the part of it where a statement of one atom holds; false: there is none.
  [[nodiscard]] bool keep_holding(CompiledAtom const& atom, Box& box) const {
    auto const cells = space_.part(box, atom.character);
    if (!meets(cells, atom.allowed)) return false;
    intersect(cells, atom.allowed);
    return space_.settle(box);
  }

  // The part of `box` where it fails, if any.
  [[nodiscard]] std::optional<Box> failing(CompiledStatement const& statement,
                                           Box const& box) const {
    Box rest = box;
    for (auto const& atom : statement.any_of) {
      remove(space_.part(rest, atom.character), atom.allowed);
      if (is_empty(space_.part(rest, atom.character))) return std::nullopt;
    }
    if (!space_.settle(rest)) return std::nullopt;
    return rest;
  }

  // Pieces of `box` that the lead does not refute when the statements `from`..`to` count.
  void passing(CompiledLead const& lead, std::size_t from, std::size_t to, Box const& box,
               std::optional<std::vector<TaxonId>> const& only, std::vector<Branch>& out) const {
    // At most couplets all leads but one are refuted at once, and nothing need be copied.
    for (std::size_t s = from; s < to; ++s) {
      if (refutes(space_, lead.statements[s], box)) return;
    }
    std::vector<WalkPiece> pieces;
    pieces.push_back({box, only, false});
    for (std::size_t s = from; s < to && !pieces.empty(); ++s) {
      auto const& statement = lead.statements[s];
      if (statement.strength == Strength::hedged) continue;
      if (statement.strength != Strength::excepted && statement.any_of.size() == 1) {
        std::erase_if(pieces, [&](WalkPiece& piece) {
          return !keep_holding(statement.any_of.front(), piece.box);
        });
        continue;
      }
      std::vector<WalkPiece> next;
      for (auto const& piece : pieces) {
        std::vector<Box> parts;
        holding(statement, piece.box, parts);
        for (auto& part : parts)
          next.push_back({std::move(part), piece.only, piece.through_exception});
        if (statement.strength != Strength::excepted) continue;
        auto allowed = restrict_to(piece.only, statement.excepted);
        if (!any_below(*key_.graph, lead.id, allowed)) continue;
        if (auto rest = failing(statement, piece.box)) {
          next.push_back({std::move(*rest), std::move(allowed), true});
        }
      }
      pieces = std::move(next);
    }
    for (auto& piece : pieces) {
      out.push_back(
          {lead.id.ordinal, std::move(piece.box), std::move(piece.only), piece.through_exception});
    }
  }

  // Does a statement of one atom hold throughout the box, or fail?  Nothing: neither, or it is to
  // be asked in parts.
  [[nodiscard]] std::optional<bool> known(CompiledStatement const& statement,
                                          Box const& box) const {
    if (statement.any_of.size() != 1) return std::nullopt;
    auto const& atom = statement.any_of.front();
    auto const cells = space_.part(box, atom.character);
    if (is_empty(cells)) return std::nullopt;
    if (!meets(cells, atom.allowed)) return false;
    return is_subset(cells, atom.allowed) ? std::optional{true} : std::nullopt;
  }
  [[nodiscard]] bool settle(Box& box) const { return space_.settle(box); }

  // What is left of the fragments when the branch is taken away.
  void subtract(std::vector<Box>& fragments, Box const& branch) const {
    std::vector<Box> left;
    for (auto& fragment : fragments) {
      for (std::size_t word = 0; word < fragment.size(); ++word) {
        if ((fragment[word] & ~branch[word]) == 0) continue;
        auto const character = key_.character_of_word[word];
        auto const cells = space_.part(fragment, character);
        auto const taken = space_.part(branch, character);
        Box piece = fragment;
        remove(space_.part(piece, character), taken);
        if (space_.settle(piece)) left.push_back(std::move(piece));
        intersect(cells, taken);
        if (is_empty(cells)) break;
      }
    }
    fragments = std::move(left);
  }

  [[nodiscard]] Box without_other_states(Box box) const {
    for (auto const& [character, word, bit] : key_.other_states) {
      if ((box[word] & bit) == 0) continue;
      // Not where it is the only one.
      bool const others = (box[word] & ~bit) != 0;
      if (others || count_cells(space_.part(box, character)) > 1) box[word] &= ~bit;
    }
    return box;
  }

 private:
  static std::vector<TaxonId> restrict_to(std::optional<std::vector<TaxonId>> const& only,
                                          std::vector<TaxonId> const& excepted) {
    if (!only) return excepted;
    std::vector<TaxonId> both;
    std::set_intersection(only->begin(), only->end(), excepted.begin(), excepted.end(),
                          std::back_inserter(both));
    return both;
  }

  CompiledKey const& key_;
  CharacterSpace const& space_;
};

// "The lead that fits more of its statements": the share of a lead's statements that hold, hedged
// ones aside (their failure says little); equal
// shares leave the leads open side by side, and a lead of which nothing holds is not taken.
//
// A vote commits the specimen to no single statement, so what the choice assumes is kept character
// by character (the hull of the completions that vote so).  With complete evidence that is exact;
// with less it may leave a name possible that no completion reaches, never the reverse.
void best_overall(Splitter const& split, std::vector<CompiledLead> const& leads, Box const& box,
                  std::optional<std::vector<TaxonId>> const& only, std::size_t maximum,
                  std::vector<Branch>& out, bool& complete) {
  struct Scored {
    Box box;
    std::vector<std::size_t> holds;  // by lead
  };
  std::vector<Scored> pieces;
  pieces.push_back({box, std::vector<std::size_t>(leads.size())});
  for (std::size_t l = 0; l < leads.size(); ++l) {
    for (auto const& statement : leads[l].statements) {
      if (statement.strength == Strength::hedged) continue;
      std::vector<Scored> next;
      for (auto& piece : pieces) {
        if (auto const known = split.known(statement, piece.box)) {
          if (!split.settle(piece.box)) continue;
          if (*known) ++piece.holds[l];
          next.push_back(std::move(piece));
          continue;
        }
        std::vector<Box> parts;
        split.holding(statement, piece.box, parts);
        for (auto& part : parts) {
          next.push_back({std::move(part), piece.holds});
          ++next.back().holds[l];
        }
        if (auto rest = split.failing(statement, piece.box)) {
          next.push_back({std::move(*rest), piece.holds});
        }
      }
      pieces = std::move(next);
      if (pieces.size() > maximum) {
        complete = false;
        pieces.resize(maximum);
      }
    }
  }
  // a/b >= c/d compared without division; a lead without statements fits by default.
  std::vector<std::size_t> votes;
  for (auto const& lead : leads) {
    votes.push_back(static_cast<std::size_t>(
        std::count_if(lead.statements.begin(), lead.statements.end(),
                      [](auto const& s) { return s.strength != Strength::hedged; })));
  }
  auto const size = [&](std::size_t i) { return std::max<std::size_t>(votes[i], 1); };
  for (std::size_t l = 0; l < leads.size(); ++l) {
    std::optional<Box> hull;
    for (auto const& piece : pieces) {
      auto const score = [&](std::size_t i) {
        return votes[i] == 0 ? std::size_t{1} : piece.holds[i];
      };
      bool best = score(l) > 0;
      for (std::size_t other = 0; other < leads.size() && best; ++other) {
        best = score(l) * size(other) >= score(other) * size(l);
      }
      if (!best) continue;
      if (!hull) {
        hull = piece.box;
        continue;
      }
      for (std::size_t w = 0; w < hull->size(); ++w) (*hull)[w] |= piece.box[w];
    }
    if (hull) out.push_back({static_cast<std::uint32_t>(l), std::move(*hull), only, false});
  }
}

struct Pending {
  CoupletId couplet;
  Box box;
  std::optional<std::vector<TaxonId>> only;
  bool through_exception{false};
  Route route;
};

}  // namespace

Walk walk(CompiledKey const& key, Box const& evidence, Reading reading,
          std::vector<TaxonId> const* targets, WalkLimits limits) {
  Walk result;
  if (key.couplets.empty()) return result;
  Splitter const split{key};
  std::vector<Followed> followed;  // one per visit
  std::vector<Pending> stack;
  {
    Box start = evidence;
    if (!key.space->settle(start)) return result;
    stack.push_back({key.start, std::move(start), std::nullopt, false, {}});
  }
  std::size_t steps = 0;
  while (!stack.empty()) {
    auto here = std::move(stack.back());
    stack.pop_back();
    if (++steps > limits.maximum_steps || here.route.size() > key.couplets.size() ||
        result.leaves.size() >= limits.maximum_leaves) {
      result.complete = false;
      continue;
    }
    auto const& leads = key.couplets[here.couplet.index];
    std::vector<Branch> branches;
    if (reading == Reading::best_overall) {
      best_overall(split, leads, here.box, here.only, limits.maximum_leaves, branches,
                   result.complete);
    } else {
      for (auto const& lead : leads) {
        if (reading == Reading::strict) {
          split.passing(lead, 0, lead.statements.size(), here.box, here.only, branches);
        } else {
          auto const first = lead.primary.value_or(0);
          split.passing(lead, first, lead.primary ? first + 1 : first, here.box, here.only,
                        branches);
        }
      }
    }
    auto& taken = followed.emplace_back(Followed{.couplet = here.couplet, .leads = 0}).leads;
    for (auto const& branch : branches) taken |= std::uint64_t{1} << (branch.lead % 64);

    std::vector<Box> lost;
    if (targets == nullptr && limits.seek_strands) {
      lost.push_back(split.without_other_states(here.box));
      for (auto const& branch : branches) {
        split.subtract(lost, branch.box);
        if (lost.size() > limits.maximum_leaves) break;
      }
    }
    bool stranded = !lost.empty();

    auto const depth = static_cast<std::uint32_t>(here.route.size());
    auto route_by = [&, left = branches.size()](LeadId lead) mutable {
      auto route = --left == 0 ? std::move(here.route) : here.route;
      route.push_back(lead);
      return route;
    };
    // Pushed in reverse, so that the first lead is walked first.
    for (auto branch = branches.rbegin(); branch != branches.rend(); ++branch) {
      auto const& lead = leads[branch->lead];
      if (targets != nullptr && !any_below(*key.graph, lead.id, *targets)) continue;
      if (!lead.next) continue;
      bool const by_exception = here.through_exception || branch->through_exception;
      stack.push_back({*lead.next, std::move(branch->box), std::move(branch->only), by_exception,
                       route_by(lead.id)});
    }
    for (auto& branch : branches) {
      auto const& lead = leads[branch.lead];
      if (lead.next) continue;
      auto const route = route_by(lead.id);
      bool const by_exception = here.through_exception || branch.through_exception;
      bool arrived = false;
      for (auto const taxon : lead.ends) {
        if (branch.only && !std::binary_search(branch.only->begin(), branch.only->end(), taxon)) {
          continue;
        }
        arrived = true;
        if (targets != nullptr && !std::binary_search(targets->begin(), targets->end(), taxon)) {
          continue;
        }
        result.leaves.push_back({taxon, branch.box, route, by_exception});
      }
      if (!arrived && targets == nullptr) stranded = true;
    }
    if (stranded) {
      result.strands.push_back({here.couplet, depth});
    }
  }
  std::sort(followed.begin(), followed.end());
  for (auto const& visit : followed) {
    if (result.followed.empty() || result.followed.back().couplet != visit.couplet) {
      result.followed.push_back(visit);
    } else {
      result.followed.back().leads |= visit.leads;
    }
  }
  return result;
}

bool surely_takes(CompiledKey const& key, Box const& box, Route const& route) {
  auto const& space = *key.space;
  // The lead taken holds in all that it says firmly; of each other one the statement that comes
  // first fails, so that it is refuted, and has fewer votes.
  auto const holds = [&](CompiledStatement const& statement) {
    return statement.strength == Strength::hedged ||
           std::any_of(statement.any_of.begin(), statement.any_of.end(), [&](auto const& atom) {
             return is_subset(space.part(box, atom.character), atom.allowed);
           });
  };
  for (auto const step : route) {
    for (auto const& lead : key.couplets[step.couplet.index]) {
      auto const& said = lead.statements;
      if (lead.id == step ? !std::all_of(said.begin(), said.end(), holds)
                          : !lead.primary || !refutes(space, said[*lead.primary], box)) {
        return false;
      }
    }
  }
  return !route.empty() &&
         key.couplets[route.back().couplet.index][route.back().ordinal].ends.size() == 1;
}

}  // namespace keydrift

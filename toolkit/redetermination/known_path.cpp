#include "keydrift/redetermination/known_path.hpp"

#include <algorithm>

namespace keydrift {

KnownPath::KnownPath(CompiledKey const& old_key, CompiledKey const& new_key)
    : old_key_{old_key},
      new_key_{new_key},
      met_(old_key.space->size()),
      visited_(std::max(old_key.couplets.size(), new_key.couplets.size())) {}

bool KnownPath::append(Box const& box, std::string& out) {
  if (++record_ == 0) {  // after four thousand million records
    std::fill(met_.begin(), met_.end(), 0);
    record_ = 1;
  }
  std::fill(visited_.begin(), visited_.end(), 0);
  if (!follow(old_key_, box, out)) return false;
  std::fill(visited_.begin(), visited_.end(), 0);
  return follow(new_key_, box, out);
}

bool KnownPath::follow(CompiledKey const& key, Box const& box, std::string& out) {
  if (key.couplets.empty()) return true;
  auto const& space = *key.space;
  stack_.assign(1, key.start);
  while (!stack_.empty()) {
    auto const couplet = stack_.back();
    stack_.pop_back();
    if (visited_[couplet.index] != 0) continue;
    visited_[couplet.index] = 1;
    for (auto const& lead : key.couplets[couplet.index]) {
      // A lead of which nothing firm holds is followed under no reading, unless nothing firm is
      // said or an exception covers what fails.
      bool any_firm = false;
      bool holds = false;
      bool excepted = false;
      for (auto const& statement : lead.statements) {
        bool one = false;
        for (auto const& atom : statement.any_of) {
          auto const cells = space.part(box, atom.character);
          if (met_[atom.character.index] != record_) {
            if (count_cells(cells) != 1) return false;
            met_[atom.character.index] = record_;
            out.append(reinterpret_cast<char const*>(cells.data()),
                       cells.size() * sizeof(std::uint64_t));
          }
          one = one || meets(cells, atom.allowed);
        }
        if (statement.strength == Strength::hedged) continue;
        any_firm = true;
        holds = holds || one;
        excepted = excepted || statement.strength == Strength::excepted;
      }
      if ((holds || excepted || !any_firm) && lead.next) stack_.push_back(*lead.next);
    }
  }
  return true;
}

}  // namespace keydrift

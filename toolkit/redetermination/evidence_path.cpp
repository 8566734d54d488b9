#include "keydrift/redetermination/evidence_path.hpp"

#include <algorithm>

namespace keydrift {
namespace {

// Nodes of the tree kept, 32 bytes each; beyond that all are forgotten.
constexpr std::size_t kNodesKept = std::size_t{1} << 18;

std::string bytes_of_cells(std::span<std::uint64_t const> cells) {
  return {reinterpret_cast<char const*>(cells.data()), cells.size() * sizeof(std::uint64_t)};
}

}  // namespace

EvidencePath::EvidencePath(CompiledKey const& old_key, CompiledKey const& new_key)
    : old_key_{old_key},
      new_key_{new_key},
      space_{*old_key.space},
      met_(space_.size()),
      visited_(std::max(old_key.couplets.size(), new_key.couplets.size())),
      wide_(space_.size()) {}

void EvidencePath::append(Box const& box, std::string& out) {
  find(box);
  for (auto const character : met_in_order_) {
    auto const cells = space_.part(box, character);
    out.append(reinterpret_cast<char const*>(cells.data()), cells.size() * sizeof(std::uint64_t));
  }
}

void EvidencePath::find(Box const& box) {
  // Asked for a number first and for its bytes then, where it is new.
  if (!met_in_order_.empty() && box == found_of_) return;
  found_of_ = box;
  met_in_order_.clear();
  if (++record_ == 0) {  // after four thousand million records
    std::fill(met_.begin(), met_.end(), 0);
    record_ = 1;
  }
  follow(old_key_, box);
  follow(new_key_, box);
}

void EvidencePath::meet(CharacterIndex character) {
  std::optional<CharacterIndex> next = character;
  while (next && met_[next->index] != record_) {
    met_[next->index] = record_;
    met_in_order_.push_back(*next);
    // What decides whether it applies may tie it to another character.
    next = space_[*next].condition;
  }
}

void EvidencePath::follow(CompiledKey const& key, Box const& box) {
  if (key.couplets.empty()) return;
  if (++walk_ == 0) {
    std::fill(visited_.begin(), visited_.end(), 0);
    walk_ = 1;
  }
  stack_.assign(1, key.start);
  while (!stack_.empty()) {
    auto const couplet = stack_.back();
    stack_.pop_back();
    if (visited_[couplet.index] == walk_) continue;
    visited_[couplet.index] = walk_;
    for (auto const& lead : key.couplets[couplet.index]) {
      // A lead of which nothing firm may hold is followed under no reading, unless nothing firm is
      // said or an exception covers what fails.
      bool any_firm = false;
      bool holds = false;
      bool excepted = false;
      for (auto const& statement : lead.statements) {
        bool one = false;
        for (auto const& atom : statement.any_of) {
          meet(atom.character);
          one = one || meets(space_.part(box, atom.character), atom.allowed);
        }
        if (statement.strength == Strength::hedged) continue;
        any_firm = true;
        holds = holds || one;
        excepted = excepted || statement.strength == Strength::excepted;
      }
      if ((holds || excepted || !any_firm) && lead.next) stack_.push_back(*lead.next);
    }
  }
}

std::uint64_t EvidencePath::cells_of(CharacterIndex character, Box const& box) {
  auto const cells = space_.part(box, character);
  if (cells.size() == 1) return cells.front();
  auto& known = wide_[character.index];
  return known.try_emplace(bytes_of_cells(cells), known.size()).first->second;
}

std::uint32_t EvidencePath::after(Node const& node, std::uint64_t cells) const {
  // Chosen without a jump: which state a record shows cannot be foretold.
  auto const second = node.cells[1] == cells ? node.to[1] : kNone;
  auto const to = node.cells[0] == cells ? node.to[0] : second;
  if (to != kNone || node.more == kNone) return to;
  for (auto edge = node.more; edge != kNone; edge = edges_[edge].next) {
    if (edges_[edge].cells == cells) return edges_[edge].to;
  }
  return kNone;
}

void EvidencePath::link(std::uint32_t from, std::uint64_t cells, std::uint32_t to) {
  auto& node = nodes_[from];
  for (std::size_t i = 0; i < node.to.size(); ++i) {
    if (node.to[i] != kNone) continue;
    node.cells[i] = cells;
    node.to[i] = to;
    return;
  }
  edges_.push_back({.cells = cells, .to = to, .next = node.more});
  node.more = static_cast<std::uint32_t>(edges_.size() - 1);
}

std::uint32_t EvidencePath::number_of(Box const& box) {
  if (nodes_.empty()) return insert(box);
  std::uint32_t at = 0;
  for (;;) {
    auto const& node = nodes_[at];
    if (node.word == kEnd) return node.more;
    auto const cells =
        node.word < kWide ? box[node.word] : cells_of(CharacterIndex{node.word - kWide}, box);
    at = after(node, cells);
    if (at == kNone) return insert(box);
  }
}

std::uint32_t EvidencePath::insert(Box const& box) {
  find(box);
  if (nodes_.size() + met_in_order_.size() + 1 > kNodesKept) {
    nodes_.clear();
    edges_.clear();
    for (auto& known : wide_) known.clear();
    numbers_ = 0;
    ++forgotten_;
  }
  auto const add_node = [&](std::size_t asked) {
    Node node;
    if (asked < met_in_order_.size()) {
      auto const character = met_in_order_[asked];
      auto const& domain = space_[character];
      node.word = domain.words == 1 ? domain.offset : kWide + character.index;
    } else {
      node.more = numbers_++;
    }
    nodes_.push_back(node);
    return static_cast<std::uint32_t>(nodes_.size() - 1);
  };
  std::uint32_t at = nodes_.empty() ? add_node(0) : 0;
  for (std::size_t asked = 0; asked < met_in_order_.size(); ++asked) {
    auto const cells = cells_of(met_in_order_[asked], box);
    auto next = after(nodes_[at], cells);
    if (next == kNone) {
      next = add_node(asked + 1);
      link(at, cells, next);
    }
    at = next;
  }
  return nodes_[at].more;
}

}  // namespace keydrift

#include <algorithm>
#include <numeric>

#include "keydrift/taxa/matching_parts.hpp"
#include "keydrift/taxa/name_text.hpp"

namespace keydrift {

using namespace name_parts;

namespace {

// Union-find over name keys.
class Forest {
 public:
  std::size_t node(std::string const& key) {
    auto const [at, fresh] = index_.emplace(key, parent_.size());
    if (fresh) parent_.push_back(at->second);
    return at->second;
  }
  std::size_t root(std::size_t node) {
    while (parent_[node] != node) {
      parent_[node] = parent_[parent_[node]];
      node = parent_[node];
    }
    return node;
  }
  // The older node stays root, so that groups keep the order of the front matters.
  void join(std::size_t a, std::size_t b) {
    a = root(a);
    b = root(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }
  [[nodiscard]] std::unordered_map<std::string, std::size_t> const& index() const { return index_; }
  [[nodiscard]] std::size_t size() const { return parent_.size(); }

 private:
  std::unordered_map<std::string, std::size_t> index_;
  std::vector<std::size_t> parent_;
};

}  // namespace

SynonymGroups::SynonymGroups(Edition const& old_edition, Edition const& new_edition,
                             TaxonTable const& old, TaxonTable const& new_table) {
  Forest forest;
  std::vector<std::string> authors;  // by node, as the front matter prints them; may be empty
  auto const node_of = [&](std::string const& name) -> std::optional<std::size_t> {
    auto const keys = name_keys(name);
    if (keys.empty()) return std::nullopt;
    auto const first = forest.node(keys.front());
    for (auto const& key : keys) forest.join(first, forest.node(key));
    authors.resize(forest.size());
    for (auto const& key : keys) {
      auto& known = authors[forest.node(key)];
      if (known.empty()) known = parse_name(name).authorship;
    }
    return first;
  };
  auto const read = [&](Edition const& edition, TaxonTable const& own, TaxonTable const& other) {
    for (auto const& entry : edition.front.synonyms) {
      // "V. palustris = C. palustris": the accepted name is this edition's, the synonym most
      // often the other's.
      auto const accepted = other.expanded(own.expanded(entry.accepted));
      auto synonym = entry.synonym;
      if (other.find(synonym)) {
        synonym = other.expanded(synonym);
      } else if (own.find(synonym)) {
        synonym = own.expanded(synonym);
      } else {
        synonym = with_genus(synonym, parse_name(accepted).genus);
        synonym = other.expanded(own.expanded(synonym));
      }
      auto const a = node_of(accepted);
      auto const b = node_of(synonym);
      if (a && b) forest.join(*a, *b);
    }
  };
  read(new_edition, new_table, old);
  read(old_edition, old, new_table);

  std::vector<std::size_t> group_at(forest.size());
  for (std::size_t node = 0; node < forest.size(); ++node) {
    auto const root = forest.root(node);
    if (root == node) {
      group_at[node] = groups_.size();
      groups_.emplace_back();
    } else {
      group_at[node] = group_at[root];
    }
  }
  for (auto const& [key, node] : forest.index()) group_of_.emplace(key, group_at[node]);
  auto const place = [&](TaxonTable const& table, std::vector<TaxonId> SynonymGroup::*side) {
    for (std::uint32_t i = 0; i < table.rows().size(); ++i) {
      auto const& row = table.rows()[i];
      for (auto const& key : row.keys) {
        auto const found = forest.index().find(key);
        if (found == forest.index().end()) continue;
        if (!same_authorship(authors[found->second], row.authorship)) continue;
        auto& taxa = groups_[group_at[found->second]].*side;
        if (taxa.empty() || taxa.back() != TaxonId{i}) taxa.push_back(TaxonId{i});
      }
    }
  };
  place(old, &SynonymGroup::old_taxa);
  place(new_table, &SynonymGroup::new_taxa);
}

SynonymGroup const* SynonymGroups::find(std::string const& key) const {
  auto const found = group_of_.find(key);
  return found == group_of_.end() ? nullptr : &groups_[found->second];
}

}  // namespace keydrift

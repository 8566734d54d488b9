#pragma once
// The taxa below a lead, kept as runs of an order that all leads share: a comb of n couplets has n
// sets of up to n taxa.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "keydrift/key/graph.hpp"

namespace keydrift {

class TaxonSet {
 public:
  using Order = std::shared_ptr<std::vector<TaxonId> const>;

  TaxonSet() = default;
  // `order`: the taxa of the edition by position (KeyGraph::taxon_at()); `runs` of positions.
  TaxonSet(Order order, std::span<TaxonRun const> runs)
      : order_{std::move(order)}, runs_{runs.begin(), runs.end()} {
    for (auto const& run : runs_) size_ += run.end - run.begin;
  }

  // Of a few taxa, in this order.
  [[nodiscard]] static TaxonSet of(std::vector<TaxonId> taxa) {
    TaxonRun const all{0, static_cast<std::uint32_t>(taxa.size())};
    return {std::make_shared<std::vector<TaxonId> const>(std::move(taxa)), std::span{&all, 1}};
  }

  [[nodiscard]] bool empty() const { return size_ == 0; }
  [[nodiscard]] std::size_t size() const { return size_; }
  // In order of position.
  [[nodiscard]] std::vector<TaxonId> list() const {
    std::vector<TaxonId> taxa;
    taxa.reserve(size_);
    for (auto const& run : runs_) {
      for (auto at = run.begin; at < run.end; ++at) taxa.push_back((*order_)[at]);
    }
    return taxa;
  }

 private:
  Order order_;
  std::vector<TaxonRun> runs_;
  std::size_t size_{0};
};

}  // namespace keydrift

#include "keydrift/collation/route_chain.hpp"

#include <algorithm>

namespace keydrift::collating {

RouteChain::RouteChain(Counterparts const& counterparts)
    : counterparts_{counterparts},
      old_at_(counterparts.couplet[0].size(), none),
      new_at_(counterparts.couplet[1].size(), none) {}

std::uint32_t RouteChain::place(std::uint32_t old_step) const {
  auto const there = counterparts_.couplet[0][old_route_[old_step].couplet.index];
  return there == none ? none : new_at_[there];
}

std::uint32_t RouteChain::exchange_ends(Route const& old_route, std::size_t old_kept,
                                        Route const& new_route, std::size_t new_kept) {
  auto first = static_cast<std::uint32_t>(std::min(old_kept, old_route_.size()));
  auto const answers_to = [&](std::uint32_t new_couplet) {
    auto const there = counterparts_.couplet[1][new_couplet];
    if (there != none && old_at_[there] != none) first = std::min(first, old_at_[there]);
  };
  while (new_route_.size() > new_kept) {
    auto const couplet = new_route_.back().couplet.index;
    answers_to(couplet);
    new_at_[couplet] = none;
    new_route_.pop_back();
  }
  while (old_route_.size() > old_kept) {
    old_at_[old_route_.back().couplet.index] = none;
    old_route_.pop_back();
  }
  for (auto i = old_route_.size(); i < old_route.size(); ++i) {
    old_at_[old_route[i].couplet.index] = static_cast<std::uint32_t>(i);
    old_route_.push_back(old_route[i]);
  }
  for (auto j = new_route_.size(); j < new_route.size(); ++j) {
    auto const couplet = new_route[j].couplet.index;
    new_at_[couplet] = static_cast<std::uint32_t>(j);
    answers_to(couplet);
    new_route_.push_back(new_route[j]);
  }
  return first;
}

void RouteChain::take_back(std::uint32_t first) {
  while (done_.size() > first) {
    auto const& done = done_.back();
    if (done.level != none) {
      if (done.ousted == none) {
        tails_.pop_back();
      } else {
        tails_[done.level] = done.ousted;
      }
    }
    done_.pop_back();
  }
  while (!links_.empty() && links_.back().old_step >= first) links_.pop_back();
}

void RouteChain::take_in() {
  for (auto i = static_cast<std::uint32_t>(done_.size()); i < old_route_.size(); ++i) {
    auto const j = place(i);
    Done done{.level = none, .before = none, .ousted = none};
    if (j != none) {
      auto longer = tails_.end();
      if (!tails_.empty() && place(tails_.back()) >= j) {
        longer = std::lower_bound(tails_.begin(), tails_.end(), j,
                                  [&](std::uint32_t k, std::uint32_t at) { return place(k) < at; });
      }
      done.level = static_cast<std::uint32_t>(longer - tails_.begin());
      if (longer != tails_.begin()) done.before = *std::prev(longer);
      if (longer == tails_.end()) {
        tails_.push_back(i);
      } else {
        done.ousted = *longer;
        *longer = i;
      }
    }
    done_.push_back(done);
  }
}

// The chain from its end back to where it meets the one that was known.
void RouteChain::relink() {
  auto const known = links_.size();
  std::size_t meets = 0;
  std::vector<Link> fresh;
  for (auto i = tails_.empty() ? none : tails_.back(); i != none; i = done_[i].before) {
    auto const level = done_[i].level;
    if (level < known && links_[level].old_step == i) {
      meets = level + std::size_t{1};
      break;
    }
    fresh.push_back({i, place(i)});
  }
  links_.resize(meets);
  links_kept_ = meets;
  links_.insert(links_.end(), fresh.rbegin(), fresh.rend());
}

void RouteChain::update(Route const& old_route, std::size_t old_kept, Route const& new_route,
                        std::size_t new_kept) {
  take_back(exchange_ends(old_route, old_kept, new_route, new_kept));
  take_in();
  relink();
}

}  // namespace keydrift::collating

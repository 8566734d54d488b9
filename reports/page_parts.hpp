#pragma once
// Setting many things of one kind on several threads.

#include <cstddef>
#include <memory>
#include <utility>

#include "keydrift/key/side_by_side.hpp"
#include "keydrift/reports/page.hpp"

namespace keydrift::reports {

// Calls set(page, i) for 0 … count and adds what it sets to `page` in that order.  `set` must not
// look at what stands on the page before.
template <class Set>
void set_in_parts(Page& page, std::size_t count, Set const& set) {
  constexpr std::size_t worth_a_thread = 200;
  auto parts = made_in_parts(count, worth_a_thread, [&](std::size_t begin, std::size_t end) {
    auto part = std::make_unique<Page>(page.further());
    for (auto i = begin; i < end; ++i) set(*part, i);
    return part;
  });
  for (auto& part : parts) page.add(std::move(*part));
}

}  // namespace keydrift::reports

#pragma once
// Work done on all cores, whose results do not hang on which thread did what.

#include <algorithm>
#include <cstddef>
#include <functional>
#include <utility>
#include <vector>

namespace keydrift {

// Runs every task, those in front first, on as many threads as there are cores (the calling one
// among them), and returns when all are done.  Tasks must write to places of their own.  What a
// task throws is thrown once the others are done; of several, that of the task in front.
void side_by_side(std::vector<std::function<void()>> tasks);

// The same, but each thread does tasks that stand together, the calling one those in front, and
// helps the others once it is done.  What is made in parts and used up in parts then mostly stays
// with one thread, whose memory is not locked by the other's.
void side_by_side_in_blocks(std::vector<std::function<void()>> tasks);

// How long the parts of `count` things are: hangs on the two numbers only; `least` is what is worth
// starting a thread for.
[[nodiscard]] constexpr std::size_t part_size(std::size_t count, std::size_t least) {
  constexpr std::size_t most_parts = 32;
  return std::max({count / most_parts + 1, least, std::size_t{1}});
}

// Calls use(begin, end) for ranges that cover 0 … count, each once, side by side.
template <class Use>
void in_parts(std::size_t count, std::size_t least, Use const& use) {
  auto const size = part_size(count, least);
  if (count <= size) {
    if (count > 0) use(std::size_t{0}, count);
    return;
  }
  std::vector<std::function<void()>> tasks;
  for (std::size_t begin = 0; begin < count; begin += size) {
    tasks.emplace_back([&use, begin, end = std::min(begin + size, count)] { use(begin, end); });
  }
  side_by_side_in_blocks(std::move(tasks));
}

// What make(begin, end) makes of such ranges, in order.
template <class Make>
[[nodiscard]] auto made_in_parts(std::size_t count, std::size_t least, Make const& make) {
  std::vector<decltype(make(std::size_t{}, std::size_t{}))> made;
  auto const size = part_size(count, least);
  made.resize((count + size - 1) / size);
  in_parts(count, least,
           [&](std::size_t begin, std::size_t end) { made[begin / size] = make(begin, end); });
  return made;
}

}  // namespace keydrift

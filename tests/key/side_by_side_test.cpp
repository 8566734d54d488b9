#include "keydrift/key/side_by_side.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <numeric>
#include <stdexcept>
#include <string>
#include <thread>

namespace keydrift {
namespace {

TEST(SideBySide, EveryTaskIsDoneOnce) {
  std::vector<int> done(100, 0);
  std::vector<std::function<void()>> tasks;
  for (auto& mark : done) tasks.emplace_back([&mark] { ++mark; });
  side_by_side(tasks);
  EXPECT_EQ(done, std::vector<int>(100, 1));
  side_by_side({});
  std::fill(done.begin(), done.end(), 0);
  side_by_side_in_blocks(tasks);
  EXPECT_EQ(done, std::vector<int>(100, 1));
  side_by_side_in_blocks({});
}

TEST(SideBySide, WhoIsDoneWithTheOwnBlockHelpsTheOthers) {
  // The first task waits for all others, so that whoever does it cannot do those of its block.
  std::atomic<int> left{15};
  std::vector<std::function<void()>> tasks(16, [&left] { --left; });
  bool all_done_by_others = false;
  bool const alone = std::thread::hardware_concurrency() < 2;
  tasks.front() = [&] {
    auto const end = std::chrono::steady_clock::now() + std::chrono::seconds{20};
    while (!alone && left > 0 && std::chrono::steady_clock::now() < end) std::this_thread::yield();
    all_done_by_others = left == 0;
  };
  side_by_side_in_blocks(tasks);
  if (alone) GTEST_SKIP() << "one core only";
  EXPECT_TRUE(all_done_by_others);
}

TEST(SideBySide, OfSeveralThingsThrownThatOfTheTaskInFrontIsThrown) {
  std::vector<int> done(3, 0);
  std::string thrown;
  try {
    side_by_side({[&] { done[0] = 1; },
                  [&] {
                    done[1] = 1;
                    throw std::runtime_error{"second"};
                  },
                  [&] {
                    done[2] = 1;
                    throw std::runtime_error{"third"};
                  }});
  } catch (std::runtime_error const& error) {
    thrown = error.what();
  }
  EXPECT_EQ(thrown, "second");
  EXPECT_EQ(done, std::vector<int>(3, 1));
}

TEST(SideBySide, PartsCoverEverythingInOrder) {
  for (std::size_t const count : {0U, 1U, 9U, 10U, 11U, 320U, 1000U}) {
    auto const parts = made_in_parts(count, 10, [](std::size_t begin, std::size_t end) {
      std::vector<std::size_t> part(end - begin);
      std::iota(part.begin(), part.end(), begin);
      return part;
    });
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      EXPECT_TRUE(i + 1 == parts.size() || parts[i].size() >= 10) << count;
      all.insert(all.end(), parts[i].begin(), parts[i].end());
    }
    std::vector<std::size_t> wanted(count);
    std::iota(wanted.begin(), wanted.end(), std::size_t{0});
    EXPECT_EQ(all, wanted) << count;
  }
}

}  // namespace
}  // namespace keydrift

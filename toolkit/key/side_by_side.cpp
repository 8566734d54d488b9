#include "keydrift/key/side_by_side.hpp"

#include <atomic>
#include <exception>
#include <future>
#include <system_error>
#include <thread>

namespace keydrift {

namespace {

using Tasks = std::vector<std::function<void()>>;

std::size_t threads_for(Tasks const& tasks) {
  return std::min<std::size_t>(tasks.size(), std::max(1U, std::thread::hardware_concurrency()));
}

// Tasks that stand together: the first that nobody has taken yet, and the end.
struct Block {
  std::atomic<std::size_t> next{0};
  std::size_t end{};
};

// A thread starts with the block of its own number and goes on to the following ones.
void run_blocks(Tasks const& tasks, std::vector<Block>& blocks) {
  std::vector<std::exception_ptr> thrown(tasks.size());
  auto const work = [&](std::size_t self) {
    for (std::size_t b = 0; b < blocks.size(); ++b) {
      auto& block = blocks[(self + b) % blocks.size()];
      for (auto i = block.next++; i < block.end; i = block.next++) {
        try {
          tasks[i]();
        } catch (...) {
          thrown[i] = std::current_exception();
        }
      }
    }
  };
  auto const threads = threads_for(tasks);
  std::vector<std::future<void>> others;
  try {
    while (others.size() + 1 < threads) {
      others.push_back(std::async(std::launch::async, work, others.size() + 1));
    }
  } catch (std::system_error const&) {
    // No further thread is to be had: those there are do the work.
  }
  work(0);
  for (auto& other : others) other.get();
  for (auto const& one : thrown) {
    if (one) std::rethrow_exception(one);
  }
}

}  // namespace

void side_by_side(Tasks tasks) {
  std::vector<Block> one(1);
  one[0].end = tasks.size();
  run_blocks(tasks, one);
}

void side_by_side_in_blocks(Tasks tasks) {
  std::vector<Block> blocks(threads_for(tasks));
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    blocks[b].next = tasks.size() * b / blocks.size();
    blocks[b].end = tasks.size() * (b + 1) / blocks.size();
  }
  run_blocks(tasks, blocks);
}

}  // namespace keydrift

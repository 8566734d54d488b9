#include "keydrift/key/side_by_side.hpp"

#include <atomic>
#include <exception>
#include <future>
#include <system_error>
#include <thread>

namespace keydrift {

void side_by_side(std::vector<std::function<void()>> tasks) {
  std::atomic<std::size_t> next{0};
  std::vector<std::exception_ptr> thrown(tasks.size());
  auto const work = [&] {
    for (auto i = next++; i < tasks.size(); i = next++) {
      try {
        tasks[i]();
      } catch (...) {
        thrown[i] = std::current_exception();
      }
    }
  };
  auto const threads =
      std::min<std::size_t>(tasks.size(), std::max(1U, std::thread::hardware_concurrency()));
  std::vector<std::future<void>> others;
  try {
    while (others.size() + 1 < threads) others.push_back(std::async(std::launch::async, work));
  } catch (std::system_error const&) {
    // No further thread is to be had: those there are do the work.
  }
  work();
  for (auto& other : others) other.get();
  for (auto const& one : thrown) {
    if (one) std::rethrow_exception(one);
  }
}

}  // namespace keydrift

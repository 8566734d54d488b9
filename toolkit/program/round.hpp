#pragma once
// Jobs that go round between one thread that reads and others that work: filled, done by any of
// them, handed on in order, filled again.  Inner header of program.

#include <condition_variable>
#include <cstdint>
#include <exception>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace keydrift::program {

inline constexpr unsigned kMostThreads = 16;  // beyond, the one that reads is the slowest

template <class Job>
class Round {
 public:
  explicit Round(std::size_t jobs) : jobs_(jobs) {}

  // --- the reader's side ---
  [[nodiscard]] bool has_room() const { return filled_ - handed_on_ < jobs_.size(); }
  [[nodiscard]] bool is_empty() const { return filled_ == handed_on_; }
  [[nodiscard]] Job& to_fill() { return jobs_[filled_ % jobs_.size()].job; }
  void submit() {
    {
      std::lock_guard const lock{mutex_};
      ++filled_;
    }
    to_do_.notify_one();
  }
  // Waits for the oldest job; throws what a worker threw.
  [[nodiscard]] Job& oldest() {
    std::unique_lock lock{mutex_};
    auto& slot = jobs_[handed_on_ % jobs_.size()];
    done_.wait(lock, [&] { return slot.done || failure_; });
    if (failure_) std::rethrow_exception(failure_);
    slot.done = false;
    return slot.job;
  }
  void hand_on() { ++handed_on_; }
  void close() {
    {
      std::lock_guard const lock{mutex_};
      closed_ = true;
    }
    to_do_.notify_all();
  }

  // --- the workers' side ---
  // Calls worker.count(job) until the round is closed and nothing is left.
  template <class Worker>
  void work(Worker& worker) {
    try {
      for (;;) {
        Slot* slot = nullptr;
        {
          std::unique_lock lock{mutex_};
          to_do_.wait(lock, [&] { return taken_ < filled_ || closed_; });
          if (taken_ == filled_) return;
          slot = &jobs_[taken_++ % jobs_.size()];
        }
        worker.count(slot->job);
        {
          std::lock_guard const lock{mutex_};
          slot->done = true;
        }
        done_.notify_one();
      }
    } catch (...) {
      {
        std::lock_guard const lock{mutex_};
        failure_ = std::current_exception();
      }
      done_.notify_one();
    }
  }

 private:
  struct Slot {
    Job job;
    bool done{false};
  };
  std::vector<Slot> jobs_;
  std::mutex mutex_;
  std::condition_variable to_do_, done_;
  std::uint64_t filled_{}, taken_{}, handed_on_{};
  bool closed_{false};
  std::exception_ptr failure_;
};

// Threads that end, whatever happens; one for each worker.
template <class Job, class Worker>
class Crew {
 public:
  Crew(Round<Job>& round, std::vector<std::unique_ptr<Worker>>& workers) : round_{round} {
    for (auto& worker : workers) {
      threads_.emplace_back([&round, &worker] { round.work(*worker); });
    }
  }
  Crew(Crew const&) = delete;
  Crew& operator=(Crew const&) = delete;
  ~Crew() { join(); }
  void join() {
    round_.close();
    for (auto& thread : threads_) {
      if (thread.joinable()) thread.join();
    }
  }

 private:
  Round<Job>& round_;
  std::vector<std::thread> threads_;
};

}  // namespace keydrift::program

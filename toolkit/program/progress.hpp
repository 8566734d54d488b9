#pragma once
// A line that counts, on a terminal, for work that takes more than a moment.

#include <chrono>
#include <cstdint>
#include <string>

#include "keydrift/program/context.hpp"

namespace keydrift::program {

// Counts steps; shows the count a few times a second where `err` is a terminal, and clears its line
// at the end.  In a pipe or a file it writes nothing.
class Progress {
 public:
  Progress(Context& context, std::string what);
  ~Progress();
  Progress(Progress const&) = delete;
  Progress& operator=(Progress const&) = delete;

  void step() {
    // The clock is asked every 4096 steps only.
    if ((++count_ & 0xFFFU) == 0 && context_.show_progress) show();
  }
  void step(std::uint64_t many) {
    count_ += many;
    if (context_.show_progress) show();
  }

 private:
  void show();

  Context& context_;
  std::string what_;
  std::uint64_t count_{};
  bool shown_{false};
  std::chrono::steady_clock::time_point last_;
};

}  // namespace keydrift::program

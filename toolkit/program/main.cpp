#include <malloc.h>

#include <csignal>
#include <exception>
#include <iostream>
#include <new>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/program/context.hpp"

namespace {

// Large editions are read, compared and told in one go: giving memory back in between, only to ask
// for it again page by page, costs time.
void keep_memory() {
#ifdef __GLIBC__
  constexpr int kKept = 512 << 20;  // bytes
  constexpr int kAtOnce = 4 << 20;
  constexpr int kLargest = 32 << 20;  // what is larger comes from the system apart, and goes back
  ::mallopt(M_TRIM_THRESHOLD, kKept);
  ::mallopt(M_TOP_PAD, kAtOnce);
  ::mallopt(M_MMAP_THRESHOLD, kLargest);
#endif
}

}  // namespace

int main(int argc, char** argv) {
  keep_memory();
  // A file that grows beyond what is allowed is an output that cannot be written, and is told.
  std::signal(SIGXFSZ, SIG_IGN);
  std::ios::sync_with_stdio(false);
  auto context = keydrift::program::make_context(std::cout, std::cerr);
  try {
    auto const code =
        keydrift::program::run(std::vector<std::string>(argv + 1, argv + argc), context);
    // Never taken apart, yet in reach of what looks for leaks.
    [[maybe_unused]] static auto const* const left = new auto(std::move(context.kept));
    std::cout.flush();
    if (!std::cout) {
      std::cerr << "keydrift: standard output could not be written\n";
      return keydrift::program::kUnwritableOutput;
    }
    return code;
  } catch (std::bad_alloc const&) {
    std::cerr << "keydrift: out of memory; no output file was changed\n";
    return keydrift::program::kUnreadableInput;
  } catch (std::exception const& error) {
    std::cerr << "keydrift: this is a defect of keydrift, please report it: " << error.what()
              << '\n';
    return keydrift::program::kUnreadableInput;
  }
}

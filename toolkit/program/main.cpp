#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>

#include <csignal>
#include <cstdint>
#include <cstdlib>
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
#ifdef MADV_HUGEPAGE
  // The heap that is in reach at once is asked for in huge pages: a third fewer page faults, and
  // small pieces far apart are found faster.  Memory is taken when it is touched, as before.
  constexpr std::uintptr_t kReach = 256 << 20;
  constexpr std::uintptr_t kHugePage = 2 << 20;
  ::mallopt(M_TOP_PAD, static_cast<int>(kReach));
  void* const first = std::malloc(kHugePage);  // moves the end of the heap so far
  ::mallopt(M_TOP_PAD, kAtOnce);
  auto const begin = (reinterpret_cast<std::uintptr_t>(first) + kHugePage - 1) & ~(kHugePage - 1);
  auto const end = reinterpret_cast<std::uintptr_t>(::sbrk(0));
  bool const moved = first != nullptr && begin < end && end - begin <= kReach + 2 * kHugePage;
  if (moved) (void)::madvise(reinterpret_cast<void*>(begin), end - begin, MADV_HUGEPAGE);
  std::free(first);
#endif
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

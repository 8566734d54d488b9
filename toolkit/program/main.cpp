#include <csignal>
#include <exception>
#include <iostream>
#include <new>
#include <string>
#include <vector>

#include "keydrift/program/context.hpp"

int main(int argc, char** argv) {
  // A file that grows beyond what is allowed is an output that cannot be written, and is told.
  std::signal(SIGXFSZ, SIG_IGN);
  std::ios::sync_with_stdio(false);
  auto context = keydrift::program::make_context(std::cout, std::cerr);
  try {
    auto const code =
        keydrift::program::run(std::vector<std::string>(argv + 1, argv + argc), context);
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

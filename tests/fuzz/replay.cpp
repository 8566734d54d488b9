// Runs a fuzz target without a fuzzer: every file of the folders given, and each of them damaged in
// a few hundred ways that are the same on every run.  So that the targets are held to compile and
// their promises to hold in every test run; searching for new ground is tests/fuzz/run.sh.
//
// Usage: replay MUTATIONS FOLDER_OR_FILE...

#include <algorithm>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size);

namespace {

constexpr std::size_t kLargest = std::size_t{64} << 10;  // of a seed, so that a run stays short

std::string const* running = nullptr;  // for keep_broken

// What broke a promise or crashed is kept for whoever mends it.
void keep_broken(int signal) {
  if (running != nullptr) {
    if (auto* file = std::fopen("broken-input", "wb")) {
      std::fwrite(running->data(), 1, running->size(), file);
      std::fclose(file);
      std::fputs("the input was written to broken-input\n", stderr);
    }
  }
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

void run(std::string const& bytes) {
  running = &bytes;
  LLVMFuzzerTestOneInput(reinterpret_cast<std::uint8_t const*>(bytes.data()), bytes.size());
}

std::string damaged(std::string bytes, std::mt19937& random) {
  auto const below = [&](std::size_t limit) { return limit == 0 ? 0 : random() % limit; };
  for (auto edits = 1 + below(6); edits > 0 && !bytes.empty(); --edits) {
    auto const at = below(bytes.size());
    auto const length = std::min(bytes.size() - at, 1 + below(40));
    switch (below(5)) {
      case 0:
        bytes[at] = static_cast<char>(below(256));
        break;
      case 1:
        bytes.erase(at, length);
        break;
      case 2:
        bytes.insert(below(bytes.size()), bytes.substr(at, length));
        break;
      case 3:
        bytes.insert(at, 1, "\n\t \"'(.,;0–"[below(11)]);
        break;
      default:
        bytes.resize(at);
    }
  }
  return bytes;
}

}  // namespace

int main(int count, char** arguments) {
  namespace fs = std::filesystem;
  if (count < 3) {
    std::fprintf(stderr, "usage: %s MUTATIONS FOLDER_OR_FILE...\n", arguments[0]);
    return 2;
  }
  auto const mutations = std::strtoul(arguments[1], nullptr, 10);
  std::vector<fs::path> files;
  for (int i = 2; i < count; ++i) {
    fs::path const path = arguments[i];
    if (!fs::is_directory(path)) {
      files.push_back(path);
      continue;
    }
    for (auto const& entry : fs::recursive_directory_iterator{path}) {
      if (entry.is_regular_file()) files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  for (int const signal : {SIGABRT, SIGSEGV}) std::signal(signal, keep_broken);
  std::mt19937 random{20260101};
  std::size_t runs = 0;
  for (auto const& file : files) {
    std::ifstream in{file, std::ios::binary};
    std::string bytes{std::istreambuf_iterator<char>{in}, {}};
    if (bytes.size() > kLargest) bytes.resize(kLargest);
    // Named before it runs: a crash leaves the last line as its witness.
    std::printf("%s\n", file.c_str());
    std::fflush(stdout);
    run(bytes);
    for (std::size_t i = 0; i < mutations; ++i) run(damaged(bytes, random));
    runs += 1 + mutations;
  }
  std::printf("%zu runs\n", runs);
  return runs == 0 ? 1 : 0;
}

#include "golden.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace fs = std::filesystem;

namespace keydrift::test {
namespace {

void spill(fs::path const& path, std::string_view text) {
  fs::create_directories(path.parent_path());
  std::ofstream out{path, std::ios::binary | std::ios::trunc};
  out << text;
  if (!out) ADD_FAILURE() << "cannot write " << path;
}

}  // namespace

std::string slurp(std::string const& path) {
  std::ifstream in{path, std::ios::binary};
  if (!in) {
    ADD_FAILURE() << "cannot read " << path;
    return {};
  }
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

void expect_golden(std::string_view name, std::string_view actual) {
  auto const want = fs::path{KEYDRIFT_SOURCE_DIR} / "tests" / "golden" / name;
  auto const got = fs::path{KEYDRIFT_BINARY_DIR} / "received" / name;
  bool const known = fs::exists(want);
  if (known && slurp(want.string()) == actual) return;
  if (std::getenv("KEYDRIFT_UPDATE_GOLDEN") != nullptr && std::getenv("CI") == nullptr) {
    spill(want, actual);
    ADD_FAILURE() << "rewrote " << want << "; review `git diff`, then run again without "
                  << "KEYDRIFT_UPDATE_GOLDEN";
    return;
  }
  spill(got, actual);
  if (!known) {
    ADD_FAILURE() << "no golden file " << want << "; the output is in " << got;
    return;
  }
  ADD_FAILURE() << "differs from the golden file; see\n  diff -u " << want.string() << ' '
                << got.string();
}

}  // namespace keydrift::test

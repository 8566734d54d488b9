#pragma once
// Runs the real binary, as a user's shell would.

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace keydrift::test {

// A key of one couplet, where any will do.
inline constexpr char const* kSmallKey =
    "1 Beak bifid ........ Aus bus\n"
    "- Beak entire ....... Aus cus\n";

struct Ran {
  int exit{};
  std::string out;
  std::string err;
  std::uint64_t peak_bytes{};  // most memory that was resident at once
};

// Arguments as given, without a shell in between.  `folder`: current directory; empty: the test's.
[[nodiscard]] Ran run_keydrift(std::vector<std::string> const& arguments,
                               std::filesystem::path const& folder = {});
// Any program on the PATH.
[[nodiscard]] Ran run_program(std::vector<std::string> const& command,
                              std::filesystem::path const& folder = {});

// A folder of its own for a test, emptied before and removed after.
class Sandbox {
 public:
  Sandbox();
  ~Sandbox();
  Sandbox(Sandbox const&) = delete;
  Sandbox& operator=(Sandbox const&) = delete;

  [[nodiscard]] std::filesystem::path const& path() const { return path_; }
  [[nodiscard]] std::string write(std::string const& name, std::string const& text) const;
  [[nodiscard]] std::vector<std::string> files() const;  // names, sorted

 private:
  std::filesystem::path path_;
};

// fixtures/<name> in the source tree.
[[nodiscard]] std::string fixture(std::string const& name);

}  // namespace keydrift::test

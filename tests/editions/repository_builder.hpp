#pragma once
// Makes small files and git repositories in a temporary folder.

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "keydrift/editions/source.hpp"

struct git_repository;

namespace keydrift::test {

// A folder of its own for one test, removed at the end.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(TemporaryFolder const&) = delete;
  TemporaryFolder& operator=(TemporaryFolder const&) = delete;

  [[nodiscard]] std::filesystem::path const& path() const { return path_; }
  [[nodiscard]] std::string file(std::string const& name) const { return (path_ / name).string(); }
  // Writes the file, folders above it included; gives its path.
  std::string write(std::string const& name, std::string const& bytes) const;

 private:
  std::filesystem::path path_;
};

// Every file below the folder with its size and the time it was last written.
[[nodiscard]] std::map<std::string, std::string> listing(std::filesystem::path const& folder);

// The text of the one finding with which `spec` is refused, its file written as "SPEC".
[[nodiscard]] std::string refusal(std::string const& spec, SourceLimits const& limits = {});

enum class Mode : std::uint32_t { file = 0100644, link = 0120000, submodule = 0160000 };
struct TreeFile {
  std::string path;
  std::string bytes;  // a submodule's: the object id of its commit
  Mode mode{Mode::file};
};

enum class Kind { working_tree, bare };

// Every call fails the running test when libgit2 refuses.
class TestRepository {
 public:
  TestRepository(std::string path, Kind kind);
  ~TestRepository();
  TestRepository(TestRepository const&) = delete;
  TestRepository& operator=(TestRepository const&) = delete;

  [[nodiscard]] std::string const& path() const { return path_; }
  // Commits these files, and no others, onto refs/heads/main.  Returns the full object id.
  std::string commit(std::vector<TreeFile> const& files, std::string const& message);
  void tag(std::string const& name, std::string const& commit);
  void annotated_tag(std::string const& name, std::string const& commit);
  void tag_tree(std::string const& name, std::string const& commit);
  void branch(std::string const& name, std::string const& commit);
  void add_worktree(std::string const& path);
  // Moves every object into a pack file and removes the loose ones.
  void pack();

 private:
  std::string path_;
  git_repository* repository_{};
};

}  // namespace keydrift::test

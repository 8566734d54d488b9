#pragma once
// Reads one file of one revision from a git repository's object database.  Internal to this folder;
// libgit2 stays inside the .cpp.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/editions/source.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// One way to read "REPO@REVISION:PATH".
struct GitSpec {
  std::string repository;  // a path; empty: the repository that holds the current folder
  std::string revision;
  std::string path;
};

// Every '@' with a ':' behind it parts the text once; the last '@' comes first.  An '@' that starts
// "@{", as in "HEAD@{1}", belongs to the revision and parts nothing.
[[nodiscard]] std::vector<GitSpec> git_specs(std::string_view spec);

// Can the path be opened as a repository?  Says why not, or nullopt.
[[nodiscard]] std::optional<std::string> why_no_repository(std::string const& path);

// Reads the blob.  Findings name `name` as their file.
[[nodiscard]] Loaded<SourceText> load_git_object(std::string const& name, GitSpec const& spec,
                                                 SourceLimits const& limits);

}  // namespace keydrift

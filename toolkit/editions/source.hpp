#pragma once
// Where the bytes of an edition come from: a file, or REPO@REVISION:PATH in a git repository.
//
// The repository is read straight from its object database: no checkout, nothing written; bare,
// packed, shallow repositories and worktrees alike.  libgit2 stays inside the .cpp.

#include <cstdint>
#include <string>
#include <string_view>

#include "keydrift/key/finding.hpp"

namespace keydrift {

struct SourceText {
  std::string name;   // as the user wrote it; messages use it
  std::string bytes;  // undecoded
  std::string revision;  // full object id of the commit; empty for a file
};

struct SourceLimits {
  std::uint64_t maximum_bytes{std::uint64_t{256} << 20};
};

// Reads `spec`.  An existing file of exactly that name wins over the REPO@REVISION:PATH reading.
// Codes: no-such-file, is-a-directory, unreadable-file, empty-file, too-large, no-such-repository,
// no-such-revision (lists near branch and tag names), no-such-path (lists near paths), not-a-file.
[[nodiscard]] Loaded<SourceText> load_source(std::string const& spec,
                                             SourceLimits const& limits = {});

}  // namespace keydrift

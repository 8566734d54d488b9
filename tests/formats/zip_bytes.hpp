#pragma once
// Zip files made in memory.

#include <string>
#include <string_view>
#include <vector>

namespace keydrift::test {

struct ZipEntry {
  std::string name;
  std::string bytes;
};

// Deflated entries in the order given; the same entries give the same bytes.
[[nodiscard]] std::string zip_bytes(std::vector<ZipEntry> const& entries);

// Replaces every `from` by `to`, of the same length: names, flags and sizes that libzip would not
// write.  Fails the running test when there is none.
[[nodiscard]] std::string patched(std::string bytes, std::string_view from, std::string_view to);

}  // namespace keydrift::test

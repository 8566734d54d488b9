#pragma once
// A file without a name in TMPDIR (else /tmp): written at its end, read anywhere, gone with the
// process.  Inner header of spill.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "keydrift/key/finding.hpp"

namespace keydrift {

class TemporaryFile {
 public:
  TemporaryFile() = default;  // made with the first byte
  ~TemporaryFile();
  TemporaryFile(TemporaryFile const&) = delete;
  TemporaryFile& operator=(TemporaryFile const&) = delete;

  void append(std::string_view bytes);
  [[nodiscard]] std::uint64_t size() const { return size_; }  // bytes appended
  // Reads bytes that were appended; by any number of threads.  False: it failed, and errno says
  // why (0: there are fewer bytes than that).
  [[nodiscard]] bool read(std::uint64_t at, char* to, std::size_t bytes) const;
  // temporary-file: it could not be made, written (a full disk) or read back.  Its file is the
  // folder.
  [[nodiscard]] std::optional<Finding> const& failure() const { return failed_; }
  void fail(char const* what);  // "made", "written", "read back"; errno says why

 private:
  [[nodiscard]] bool open();
  int handle_{-1};
  std::uint64_t size_{};
  std::optional<Finding> failed_;
};

}  // namespace keydrift

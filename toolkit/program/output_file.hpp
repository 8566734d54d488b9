#pragma once
// Output files are written whole or not at all.

#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/finding.hpp"

namespace keydrift::program {

// A file without a name (or with a temporary one, where the file system wants it) beside its
// target; it gets its own name by commit(), and is gone without a trace if that does not come.  A
// reader of the target sees the old file or the new one.
class OutputFile {
 public:
  // Opens the temporary file; on failure ok() is false and failure() says why.
  explicit OutputFile(std::string path);
  ~OutputFile();
  OutputFile(OutputFile&& other) noexcept;
  OutputFile& operator=(OutputFile&&) = delete;
  OutputFile(OutputFile const&) = delete;

  void write(std::string_view bytes);
  [[nodiscard]] bool ok() const { return !failure_.has_value(); }
  [[nodiscard]] Finding const& failure() const { return *failure_; }
  // Flushes everything to the disk under the temporary name; then only the renaming is left.
  void finish();
  // Gives the file its name.
  void commit();

 private:
  void fail(char const* what, int error);
  void give_temporary_name();

  std::string path_;
  std::string temporary_;
  std::FILE* file_{};
  bool nameless_{false};  // open, but not yet in any folder
  std::optional<Finding> failure_;
};

// The outputs of one command: all are finished before the first is renamed, so that a full disk
// leaves none of them.
class Outputs {
 public:
  void add(std::string path, std::string_view bytes);
  void add(OutputFile file);
  // nullopt: all were written; else what went wrong (and no target was touched, unless a rename
  // itself failed).
  [[nodiscard]] std::optional<Finding> commit();

 private:
  std::vector<OutputFile> files_;
};

}  // namespace keydrift::program

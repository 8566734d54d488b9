#include "keydrift/program/output_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>

namespace keydrift::program {

OutputFile::OutputFile(std::string path) : path_{std::move(path)} {
  struct stat status {};
  if (::stat(path_.c_str(), &status) == 0) {
    if (S_ISDIR(status.st_mode)) {
      fail("is a folder; name a file in it", 0);
      return;
    }
    if (!S_ISREG(status.st_mode)) {
      // A device or pipe cannot be replaced; it is written to directly.
      file_ = std::fopen(path_.c_str(), "wb");
      if (file_ == nullptr) fail("cannot be written", errno);
      return;
    }
  }
  // A file without a name is gone whatever ends the program; where the file system has none, a
  // named one is taken away by the destructor.
  auto const slash = path_.rfind('/');
  auto const folder = slash == std::string::npos ? std::string{"."} : path_.substr(0, slash + 1);
  bool const can_link = ::access("/proc/self/fd", X_OK) == 0;
  int const nameless =
      can_link ? ::open(folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, 0666) : -1;
  if (nameless >= 0) {
    nameless_ = true;
    file_ = ::fdopen(nameless, "wb");
    if (file_ == nullptr) fail("cannot be written", errno);
    return;
  }
  temporary_ = path_ + ".XXXXXX";
  int const descriptor = ::mkstemp(temporary_.data());
  if (descriptor < 0) {
    int const error = errno;
    temporary_.clear();
    fail("cannot be written", error);
    return;
  }
  // mkstemp gives 0600; a report is as readable as any file the user makes.
  mode_t const mask = ::umask(0);
  ::umask(mask);
  ::fchmod(descriptor, 0666 & ~mask);
  file_ = ::fdopen(descriptor, "wb");
  if (file_ == nullptr) fail("cannot be written", errno);
}

OutputFile::OutputFile(OutputFile&& other) noexcept
    : path_{std::move(other.path_)},
      temporary_{std::exchange(other.temporary_, {})},
      file_{std::exchange(other.file_, nullptr)},
      nameless_{std::exchange(other.nameless_, false)},
      failure_{std::move(other.failure_)} {}

OutputFile::~OutputFile() {
  if (file_ != nullptr) std::fclose(file_);
  if (!temporary_.empty()) ::unlink(temporary_.c_str());
}

void OutputFile::fail(char const* what, int error) {
  if (failure_) return;
  Finding finding;
  finding.code = "unwritable-output";
  finding.file = path_;
  finding.message = "\"" + path_ + "\" " + what;
  if (error != 0) finding.message += std::string{": "} + std::strerror(error);
  finding.remedy =
      "check the folder, the permissions and the free space; no output file was changed";
  failure_ = std::move(finding);
}

void OutputFile::write(std::string_view bytes) {
  if (failure_ || bytes.empty()) return;
  if (std::fwrite(bytes.data(), 1, bytes.size(), file_) != bytes.size()) {
    fail("cannot be written", errno);
  }
}

void OutputFile::finish() {
  if (failure_ || file_ == nullptr) return;
  if (std::fflush(file_) != 0) fail("cannot be written", errno);
  bool const regular = nameless_ || !temporary_.empty();
  if (!failure_ && regular && ::fsync(::fileno(file_)) != 0) fail("cannot be written", errno);
  if (!failure_ && nameless_) give_temporary_name();
  if (std::fclose(std::exchange(file_, nullptr)) != 0) fail("cannot be written", errno);
}

void OutputFile::give_temporary_name() {
  // linkat does not replace, so the file gets a free name first and is then renamed over its
  // target.
  auto const from = "/proc/self/fd/" + std::to_string(::fileno(file_));
  for (unsigned number = 0; number < 1000; ++number) {
    auto name = path_ + "." + std::to_string(::getpid()) + "-" + std::to_string(number);
    if (::linkat(AT_FDCWD, from.c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) == 0) {
      temporary_ = std::move(name);
      return;
    }
    if (errno != EEXIST) break;
  }
  fail("cannot be given its name", errno);
}

void OutputFile::commit() {
  if (failure_ || temporary_.empty()) return;
  if (::rename(temporary_.c_str(), path_.c_str()) != 0) {
    fail("cannot be given its name", errno);
    return;
  }
  temporary_.clear();
}

void Outputs::add(std::string path, std::string_view bytes) {
  OutputFile file{std::move(path)};
  file.write(bytes);
  files_.push_back(std::move(file));
}

void Outputs::add(OutputFile file) { files_.push_back(std::move(file)); }

std::optional<Finding> Outputs::commit() {
  for (auto& file : files_) {
    file.finish();
    if (!file.ok()) return file.failure();
  }
  for (auto& file : files_) {
    file.commit();
    if (!file.ok()) return file.failure();
  }
  return std::nullopt;
}

}  // namespace keydrift::program

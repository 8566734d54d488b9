#include "keydrift/key/spill/temporary_file.hpp"

#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <string>
#include <system_error>

namespace keydrift {
namespace {

// What was tried.
constexpr char const* kMade = "made";
constexpr char const* kWritten = "written";

constexpr int kTooShort = 0;  // instead of an error number: the file ends before it should

std::string folder() {
  char const* const named = std::getenv("TMPDIR");
  return named != nullptr && *named != '\0' ? named : "/tmp";
}

}  // namespace

TemporaryFile::~TemporaryFile() {
  if (handle_ >= 0) ::close(handle_);
}

void TemporaryFile::fail(char const* what) {
  if (failed_) return;
  Finding finding;
  finding.code = "temporary-file";
  finding.severity = Severity::error;
  auto const why = errno;
  finding.file = folder();
  finding.place.line = 0;
  finding.message = std::string{"a temporary file cannot be "} + what + ": " +
                    (why == kTooShort ? "it is shorter than what was written"
                                      : std::generic_category().message(why));
  finding.remedy = "make room on the disk, or say where there is some by TMPDIR";
  failed_ = std::move(finding);
}

bool TemporaryFile::open() {
  if (handle_ >= 0) return true;
  auto path = folder() + "/keydrift-XXXXXX";
  handle_ = ::mkstemp(path.data());
  if (handle_ < 0) {
    fail(kMade);
    return false;
  }
  ::unlink(path.c_str());  // gone with the process, whatever becomes of it
  return true;
}

void TemporaryFile::append(std::string_view bytes) {
  if (failed_ || bytes.empty() || !open()) return;
  while (!bytes.empty()) {
    auto const size = ::write(handle_, bytes.data(), bytes.size());
    if (size < 0 && errno == EINTR) continue;
    if (size <= 0) {
      if (size == 0) errno = ENOSPC;
      fail(kWritten);
      return;
    }
    bytes.remove_prefix(static_cast<std::size_t>(size));
    size_ += static_cast<std::uint64_t>(size);
  }
}

bool TemporaryFile::read(std::uint64_t at, char* to, std::size_t bytes) const {
  while (bytes > 0) {
    auto const size = ::pread(handle_, to, bytes, static_cast<off_t>(at));
    if (size < 0 && errno == EINTR) continue;
    if (size <= 0) {
      if (size == 0) errno = kTooShort;
      return false;
    }
    at += static_cast<std::uint64_t>(size);
    to += size;
    bytes -= static_cast<std::size_t>(size);
  }
  return true;
}

}  // namespace keydrift

#include "binary.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <poll.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>

namespace fs = std::filesystem;

namespace keydrift::test {
namespace {

// Reads both ends until both are closed, so that neither side can block.
void drain(int out, int err, Ran& ran) {
  std::array<pollfd, 2> ends{{{out, POLLIN, 0}, {err, POLLIN, 0}}};
  std::array<std::string*, 2> texts{&ran.out, &ran.err};
  int open = 2;
  std::array<char, 65536> buffer{};
  while (open > 0) {
    if (::poll(ends.data(), ends.size(), -1) < 0) return;
    for (std::size_t i = 0; i < ends.size(); ++i) {
      if (ends[i].fd < 0 || ends[i].revents == 0) continue;
      auto const got = ::read(ends[i].fd, buffer.data(), buffer.size());
      if (got > 0) {
        texts[i]->append(buffer.data(), static_cast<std::size_t>(got));
      } else {
        ::close(ends[i].fd);
        ends[i].fd = -1;
        --open;
      }
    }
  }
}

}  // namespace

Ran run_program(std::vector<std::string> const& command, fs::path const& folder) {
  Ran ran;
  std::array<int, 2> out{};
  std::array<int, 2> err{};
  if (::pipe(out.data()) != 0 || ::pipe(err.data()) != 0) {
    ADD_FAILURE() << "no pipe";
    return ran;
  }
  std::vector<char*> argv;
  for (auto const& word : command) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  pid_t const child = ::fork();
  if (child == 0) {
    if (!folder.empty() && ::chdir(folder.c_str()) != 0) ::_exit(126);
    int const nothing = ::open("/dev/null", O_RDONLY);
    ::dup2(nothing, STDIN_FILENO);
    ::dup2(out[1], STDOUT_FILENO);
    ::dup2(err[1], STDERR_FILENO);
    for (int const fd : {out[0], out[1], err[0], err[1]}) ::close(fd);
    ::execvp(argv[0], argv.data());
    ::_exit(127);
  }
  ::close(out[1]);
  ::close(err[1]);
  drain(out[0], err[0], ran);
  int status = 0;
  rusage used{};
  ::wait4(child, &status, 0, &used);
  ran.peak_bytes = static_cast<std::uint64_t>(used.ru_maxrss) << 10;
  ran.exit = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return ran;
}

Ran run_keydrift(std::vector<std::string> const& arguments, fs::path const& folder) {
  std::vector<std::string> command{KEYDRIFT_BINARY};
  command.insert(command.end(), arguments.begin(), arguments.end());
  return run_program(command, folder);
}

Sandbox::Sandbox() {
  auto const* test = testing::UnitTest::GetInstance()->current_test_info();
  std::string name = std::string{test->test_suite_name()} + "." + test->name();
  std::replace(name.begin(), name.end(), '/', '_');
  path_ = fs::temp_directory_path() / ("keydrift-" + name + "-" + std::to_string(::getpid()));
  fs::remove_all(path_);
  fs::create_directories(path_);
}

Sandbox::~Sandbox() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string Sandbox::write(std::string const& name, std::string const& text) const {
  auto const file = path_ / name;
  std::ofstream out{file, std::ios::binary};
  out << text;
  if (!out) ADD_FAILURE() << "cannot write " << file;
  return file.string();
}

std::vector<std::string> Sandbox::files() const {
  std::vector<std::string> names;
  for (auto const& entry : fs::directory_iterator{path_}) {
    names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string fixture(std::string const& name) {
  return (fs::path{KEYDRIFT_SOURCE_DIR} / "fixtures" / name).string();
}

}  // namespace keydrift::test

#include "keydrift/editions/source.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>
#include <utility>
#include <vector>

#include "keydrift/editions/git_object.hpp"
#include "keydrift/editions/source_findings.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kChunk = std::size_t{1} << 16;
constexpr std::size_t kMostNames = 20'000;  // of a folder, looked through for "did you mean"

struct Close {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

// Names in the folder that are like the one wanted, as the user would write them.
std::string near_files(std::string const& wanted) {
  auto const slash = wanted.rfind('/');
  auto const folder = slash == std::string::npos ? std::string{} : wanted.substr(0, slash + 1);
  std::error_code error;
  std::vector<std::string> names;
  fs::directory_iterator entry{folder.empty() ? fs::path{"."} : fs::path{folder}, error};
  if (error) return "see whether the folder " + in_quotes(folder) + " exists and may be listed";
  for (; entry != fs::directory_iterator{} && names.size() < kMostNames; entry.increment(error)) {
    if (error) break;
    names.push_back(entry->path().filename().string());
  }
  auto near = near_words(wanted.substr(folder.size()), names);
  for (auto& name : near) name.insert(0, folder);
  return did_you_mean(near);
}

Loaded<SourceText> unreadable(std::string const& name, int error) {
  if (error == EACCES || error == EPERM) {
    return refuse(name, "unreadable-file", "you may not read " + in_quotes(name),
                  "ask its owner for the right to read it");
  }
  return refuse(name, "unreadable-file",
                in_quotes(name) + " cannot be read: " + std::generic_category().message(error),
                "see whether the disk or the device is in order");
}

// Reads at most one byte more than the limit, so that pipes and devices are bounded as well.
Loaded<SourceText> load_file(std::string const& name, SourceLimits const& limits) {
  errno = 0;
  std::unique_ptr<std::FILE, Close> const file{std::fopen(name.c_str(), "rb")};
  if (!file) return unreadable(name, errno);
  std::error_code no_size;
  auto const size = fs::file_size(name, no_size);
  if (!no_size && size > limits.maximum_bytes) {
    return refuse_too_large(name, size, limits.maximum_bytes);
  }
  std::string bytes;
  if (!no_size) bytes.reserve(size);
  std::array<char, kChunk> chunk{};
  while (bytes.size() <= limits.maximum_bytes) {
    errno = 0;
    auto const got = std::fread(chunk.data(), 1, chunk.size(), file.get());
    bytes.append(chunk.data(), got);
    if (got == chunk.size()) continue;
    if (std::ferror(file.get()) != 0) return unreadable(name, errno);
    break;
  }
  if (bytes.size() > limits.maximum_bytes) {
    return refuse_too_large(name, std::nullopt, limits.maximum_bytes);
  }
  if (bytes.empty()) return refuse_empty(name);
  return {SourceText{name, std::move(bytes), {}}, {}};
}

Loaded<SourceText> load_git(std::string const& name, std::vector<GitSpec> const& specs,
                            SourceLimits const& limits) {
  // Folders may hold '@' in their names: the first reading whose repository exists is meant, or at
  // least the first whose folder does.
  GitSpec const* best = nullptr;
  std::string why_not;
  for (auto const& spec : specs) {
    auto reason = why_no_repository(spec.repository);
    if (!reason) return load_git_object(name, spec, limits);
    std::error_code error;
    if (best == nullptr ||
        (!fs::exists(best->repository, error) && fs::exists(spec.repository, error))) {
      best = &spec;
      why_not = std::move(*reason);
    }
  }
  std::error_code error;
  std::string remedy = "name a working tree, its .git folder or a bare repository";
  if (!best->repository.empty() && !fs::exists(best->repository, error)) {
    why_not = "there is no git repository " + in_quotes(best->repository) + ", nor a file " +
              in_quotes(name);
    if (auto near = near_files(best->repository); !near.empty()) remedy = std::move(near);
  }
  return refuse(name, "no-such-repository", std::move(why_not), std::move(remedy));
}

}  // namespace

Loaded<SourceText> refuse(std::string const& name, std::string_view code, std::string message,
                          std::string remedy) {
  return {std::nullopt,
          {Finding{.code = std::string{code},
                   .severity = Severity::error,
                   .file = name,
                   .place = {},
                   .printed = {},
                   .message = std::move(message),
                   .remedy = std::move(remedy),
                   .related = {}}}};
}

Loaded<SourceText> refuse_too_large(std::string const& name, std::optional<std::uint64_t> size,
                                    std::uint64_t maximum) {
  auto const most = std::to_string(maximum);
  return refuse(
      name, "too-large",
      size ? "it holds " + std::to_string(*size) + " bytes, and at most " + most + " are read"
           : "it holds more than " + most + " bytes, the most that are read",
      "see whether this is the right file; a key takes far less");
}

Loaded<SourceText> refuse_empty(std::string const& name) {
  return refuse(name, "empty-file", "the file is empty", "see whether this is the right file");
}

Loaded<SourceText> load_source(std::string const& spec, SourceLimits const& limits) {
  std::error_code error;
  auto const status = fs::status(spec, error);
  if (status.type() == fs::file_type::directory) {
    auto remedy = std::string{"name a file in it"};
    if (!why_no_repository(spec)) {
      remedy = "name an edition in this repository as " + in_quotes(spec + "@REVISION:PATH");
    }
    return refuse(spec, "is-a-directory", in_quotes(spec) + " is a folder", std::move(remedy));
  }
  if (fs::exists(status)) return load_file(spec, limits);
  if (auto const specs = git_specs(spec); !specs.empty()) return load_git(spec, specs, limits);
  if (status.type() != fs::file_type::not_found) return unreadable(spec, error.value());
  auto remedy = near_files(spec);
  if (remedy.empty()) remedy = "see whether its name is right and the current folder the one meant";
  return refuse(spec, "no-such-file", "there is no file " + in_quotes(spec), std::move(remedy));
}

}  // namespace keydrift

#include "keydrift/editions/git_object.hpp"

#include <git2.h>

#include <algorithm>
#include <array>
#include <memory>
#include <utility>

#include "keydrift/editions/source_findings.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/key/prose.hpp"

#ifdef __SANITIZE_ADDRESS__
// libgit2 1.5.1 leaks a match of its regular expressions (20 kB) for every name that is no
// revision; nothing here can free it.
extern "C" char const* __lsan_default_suppressions() { return "leak:libpcre2"; }
#endif

namespace keydrift {
namespace {

// Paths looked through for "did you mean"; trees of a repository may hold millions.
constexpr std::size_t kMostPaths = 20'000;
constexpr std::size_t kMostNamed = 5;

// libgit2's global state, kept in this one place.
class GitLibrary {
 public:
  GitLibrary(GitLibrary const&) = delete;
  GitLibrary& operator=(GitLibrary const&) = delete;

  static void use() { static GitLibrary const library; }

 private:
  GitLibrary() {
    git_libgit2_init();
    // git refuses repositories of other users because their hooks and configuration could run
    // programs.  Reading a blob from the object database runs nothing, and archives are often kept
    // on a shared drive, so the check would only get in the way.
    git_libgit2_opts(GIT_OPT_SET_OWNER_VALIDATION, 0);
    // Settings of the user or the machine must not change what a revision means.
    for (auto const level : {GIT_CONFIG_LEVEL_PROGRAMDATA, GIT_CONFIG_LEVEL_SYSTEM,
                             GIT_CONFIG_LEVEL_XDG, GIT_CONFIG_LEVEL_GLOBAL}) {
      git_libgit2_opts(GIT_OPT_SET_SEARCH_PATH, level, "");
    }
    // Extensions that matter to writers only; sparse checkouts use the first.
    std::array<char const*, 3> extensions{"worktreeconfig", "partialclone", "preciousobjects"};
    git_libgit2_opts(GIT_OPT_SET_EXTENSIONS, extensions.data(), extensions.size());
  }
  ~GitLibrary() { git_libgit2_shutdown(); }
};

template <auto Free>
struct Freed {
  template <class T>
  void operator()(T* thing) const {
    Free(thing);
  }
};
using Repository = std::unique_ptr<git_repository, Freed<git_repository_free>>;
using Object = std::unique_ptr<git_object, Freed<git_object_free>>;
using Tree = std::unique_ptr<git_tree, Freed<git_tree_free>>;
using TreeEntry = std::unique_ptr<git_tree_entry, Freed<git_tree_entry_free>>;
using Blob = std::unique_ptr<git_blob, Freed<git_blob_free>>;
using Odb = std::unique_ptr<git_odb, Freed<git_odb_free>>;
using ReferenceIterator =
    std::unique_ptr<git_reference_iterator, Freed<git_reference_iterator_free>>;

// To be called right after a call failed: the next one may overwrite it.
std::string last_error() {
  auto const* error = git_error_last();
  return error == nullptr || error->message == nullptr ? std::string{"no reason is given"}
                                                       : std::string{error->message};
}

std::string hex(git_oid const* id) {
  std::string text(GIT_OID_HEXSZ, '0');
  git_oid_fmt(text.data(), id);
  return text;
}

// Opens exactly the repository at the path, not one around it; the empty path stands for the one
// around the current folder.
Repository open(std::string const& path, std::string& why_not) {
  GitLibrary::use();
  git_repository* repository = nullptr;
  auto const flags = path.empty() ? 0U : static_cast<unsigned>(GIT_REPOSITORY_OPEN_NO_SEARCH);
  auto const status =
      git_repository_open_ext(&repository, path.empty() ? "." : path.c_str(), flags, nullptr);
  if (status == GIT_ENOTFOUND) {
    why_not = path.empty() ? "the current folder is not inside a git repository"
                           : in_quotes(path) + " is no git repository";
  } else if (status != 0) {
    auto const reason = last_error();
    why_not = "the git repository " + in_quotes(path.empty() ? "." : path) +
              " cannot be opened: " + reason;
  }
  return Repository{repository};
}

// Short names of tags, then of branches, local ones first; each kind in byte order.
std::vector<std::string> revision_names(git_repository* repository) {
  git_reference_iterator* raw = nullptr;
  if (git_reference_iterator_new(&raw, repository) != 0) return {};
  ReferenceIterator const references{raw};
  constexpr std::array<std::string_view, 3> kinds{"refs/tags/", "refs/heads/", "refs/remotes/"};
  std::array<std::vector<std::string>, kinds.size()> names;
  char const* full = nullptr;
  while (git_reference_next_name(&full, references.get()) == 0) {
    std::string_view const name{full};
    for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
      if (name.starts_with(kinds[kind])) names[kind].emplace_back(name.substr(kinds[kind].size()));
    }
  }
  std::vector<std::string> all;
  for (auto& of_kind : names) {
    std::sort(of_kind.begin(), of_kind.end());
    std::move(of_kind.begin(), of_kind.end(), std::back_inserter(all));
  }
  return all;
}

// Paths of files in the tree, in the order of the tree; at most kMostPaths.
std::vector<std::string> file_paths(git_repository* repository, git_tree const* root) {
  struct Folder {
    Tree tree;
    std::string path;
  };
  std::vector<std::string> paths;
  std::vector<Folder> folders;
  auto const take = [&](git_tree const* tree, std::string const& prefix) {
    for (std::size_t i = 0; i < git_tree_entrycount(tree) && paths.size() < kMostPaths; ++i) {
      auto const* entry = git_tree_entry_byindex(tree, i);
      auto path = prefix + git_tree_entry_name(entry);
      if (git_tree_entry_type(entry) == GIT_OBJECT_BLOB) {
        paths.push_back(std::move(path));
      } else if (git_tree_entry_type(entry) == GIT_OBJECT_TREE && folders.size() < kMostPaths) {
        git_tree* below = nullptr;
        if (git_tree_lookup(&below, repository, git_tree_entry_id(entry)) == 0) {
          folders.push_back({Tree{below}, path + "/"});
        }
      }
    }
  };
  take(root, "");
  while (!folders.empty() && paths.size() < kMostPaths) {
    auto const folder = std::move(folders.back());
    folders.pop_back();
    take(folder.tree.get(), folder.path);
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

std::string last_name(std::string const& path) { return path.substr(path.rfind('/') + 1); }

// The same file in another folder is likelier to be meant than a name spelt alike.
std::vector<std::string> near_paths(std::string const& wanted,
                                    std::vector<std::string> const& paths) {
  auto const name = last_name(wanted);
  std::vector<std::string> near;
  for (auto const& path : paths) {
    if (last_name(path) == name && near.size() < 3) near.push_back(path);
  }
  if (near.empty()) near = near_words(wanted, paths);
  if (!near.empty()) return near;
  std::vector<std::string> names;
  for (auto const& path : paths) names.push_back(last_name(path));
  auto const near_names = near_words(name, names);
  for (auto const& path : paths) {
    bool const is_near =
        std::find(near_names.begin(), near_names.end(), last_name(path)) != near_names.end();
    if (is_near && near.size() < 3) near.push_back(path);
  }
  return near;
}

// Reads one object; the members are what every message speaks of.
class GitReader {
 public:
  GitReader(std::string const& name, GitSpec const& spec, SourceLimits const& limits)
      : name_{name}, spec_{spec}, limits_{limits} {}

  Loaded<SourceText> read() {
    std::string why_not;
    repository_ = open(spec_.repository, why_not);
    if (!repository_) return refuse(name_, "no-such-repository", why_not, {});
    if (spec_.revision.empty()) {
      return refuse(name_, "no-such-revision", "no revision is named between \"@\" and \":\"",
                    some_revisions());
    }
    Object found;
    if (auto refusal = find_commit(found)) return std::move(*refusal);
    auto const revision = hex(git_object_id(found.get()));

    git_object* root = nullptr;
    if (auto const status = git_object_peel(&root, found.get(), GIT_OBJECT_TREE); status != 0) {
      return unreadable(status);
    }
    Object const tree{root};
    return read_path(reinterpret_cast<git_tree*>(root), revision);
  }

 private:
  std::optional<Loaded<SourceText>> find_commit(Object& commit) {
    git_object* named = nullptr;
    auto const status = git_revparse_single(&named, repository_.get(), spec_.revision.c_str());
    Object const object{named};
    if (status == GIT_EAMBIGUOUS) {
      return refuse(name_, "no-such-revision",
                    "the abbreviation " + in_quotes(spec_.revision) + " could mean several objects",
                    "give more of the object id");
    }
    if (status != 0) {
      auto remedy = did_you_mean(near_words(spec_.revision, revision_names(repository_.get())));
      if (remedy.empty()) {
        remedy = git_repository_is_shallow(repository_.get()) == 1
                     ? "the clone is shallow: its history ends early"
                     : some_revisions();
      }
      return refuse(name_, "no-such-revision",
                    "the repository has no revision " + in_quotes(spec_.revision),
                    std::move(remedy));
    }
    git_object* peeled = nullptr;
    if (git_object_peel(&peeled, object.get(), GIT_OBJECT_COMMIT) != 0) {
      return refuse(name_, "no-such-revision",
                    in_quotes(spec_.revision) + " names a " +
                        git_object_type2string(git_object_type(object.get())) + ", not a revision",
                    some_revisions());
    }
    commit.reset(peeled);
    return std::nullopt;
  }

  [[nodiscard]] std::string some_revisions() const {
    auto const names = revision_names(repository_.get());
    if (names.empty()) return "the repository has neither tags nor branches yet";
    std::vector<std::string> shown;
    for (auto const& name : names) shown.push_back(in_quotes(name));
    return "it has " + in_prose(shown, kMostNamed);
  }

  Loaded<SourceText> read_path(git_tree* root, std::string const& revision) {
    auto path = spec_.path;
    while (path.starts_with("./")) path.erase(0, 2);
    while (path.ends_with('/')) path.pop_back();
    if (path.empty()) return refuse_folder(root, path);

    git_tree_entry* raw = nullptr;
    auto const status = git_tree_entry_bypath(&raw, root, path.c_str());
    if (status != 0 && status != GIT_ENOTFOUND) return unreadable(status);
    if (status == GIT_ENOTFOUND) {
      auto remedy = did_you_mean(near_paths(path, file_paths(repository_.get(), root)));
      if (remedy.empty()) remedy = "paths start at the top of the repository";
      return refuse(name_, "no-such-path",
                    "revision " + in_quotes(spec_.revision) + " has no file " + in_quotes(path),
                    std::move(remedy));
    }
    TreeEntry const entry{raw};
    if (git_tree_entry_type(raw) == GIT_OBJECT_TREE) return refuse_folder(root, path);
    if (git_tree_entry_type(raw) == GIT_OBJECT_COMMIT) {
      return refuse(name_, "not-a-file", in_quotes(path) + " is a submodule",
                    "name its own repository, at revision " + hex(git_tree_entry_id(raw)));
    }
    return read_blob(*raw, path, revision);
  }

  Loaded<SourceText> refuse_folder(git_tree* root, std::string const& path) {
    std::vector<std::string> inside;
    for (auto const& each : file_paths(repository_.get(), root)) {
      if (each.starts_with(path.empty() ? path : path + "/") && inside.size() < 3) {
        inside.push_back(each);
      }
    }
    auto remedy = did_you_mean(inside);
    return refuse(name_, "not-a-file",
                  path.empty()
                      ? "no path is named behind the revision"
                      : in_quotes(path) + " is a folder in revision " + in_quotes(spec_.revision),
                  std::move(remedy));
  }

  Loaded<SourceText> read_blob(git_tree_entry const& entry, std::string const& path,
                               std::string const& revision) {
    auto const* id = git_tree_entry_id(&entry);
    // The header tells the size before anything is unpacked.
    git_odb* raw_odb = nullptr;
    std::size_t size = 0;
    auto type = GIT_OBJECT_ANY;
    auto status = git_repository_odb(&raw_odb, repository_.get());
    Odb const odb{raw_odb};
    if (status == 0) status = git_odb_read_header(&size, &type, raw_odb, id);
    if (status != 0) return unreadable(status);
    if (size > limits_.maximum_bytes) return refuse_too_large(name_, size, limits_.maximum_bytes);

    git_blob* raw_blob = nullptr;
    status = git_blob_lookup(&raw_blob, repository_.get(), id);
    if (status != 0) return unreadable(status);
    Blob const blob{raw_blob};
    std::string bytes(static_cast<char const*>(git_blob_rawcontent(raw_blob)), size);
    if (git_tree_entry_filemode(&entry) == GIT_FILEMODE_LINK) {
      return refuse(name_, "not-a-file", in_quotes(path) + " is a symbolic link",
                    "name what it links to: " + in_quotes(bytes));
    }
    if (bytes.empty()) return refuse_empty(name_);
    return {SourceText{name_, std::move(bytes), revision}, {}};
  }

  // To be called right after libgit2 refused, with what it returned.
  Loaded<SourceText> unreadable(int status) {
    if (status == GIT_ENOTFOUND) {
      return refuse(name_, "unreadable-file",
                    in_quotes(spec_.path) + " is missing from the repository's objects",
                    "a shallow or partial clone lacks some: fetch them first");
    }
    auto const reason = last_error();
    return refuse(name_, "unreadable-file",
                  in_quotes(spec_.path) + " cannot be read from the repository: " + reason,
                  "see whether the repository is damaged");
  }

  std::string const& name_;
  GitSpec const& spec_;
  SourceLimits const& limits_;
  Repository repository_;
};

}  // namespace

std::vector<GitSpec> git_specs(std::string_view spec) {
  std::vector<GitSpec> specs;
  for (auto sign = spec.rfind('@'); sign != std::string_view::npos;
       sign = sign == 0 ? std::string_view::npos : spec.rfind('@', sign - 1)) {
    auto const colon = spec.find(':', sign);
    if (colon == std::string_view::npos || spec.substr(sign + 1).starts_with('{')) continue;
    specs.push_back({std::string{spec.substr(0, sign)},
                     std::string{spec.substr(sign + 1, colon - sign - 1)},
                     std::string{spec.substr(colon + 1)}});
  }
  return specs;
}

std::optional<std::string> why_no_repository(std::string const& path) {
  std::string why_not;
  if (open(path, why_not)) return std::nullopt;
  return why_not;
}

Loaded<SourceText> load_git_object(std::string const& name, GitSpec const& spec,
                                   SourceLimits const& limits) {
  return GitReader{name, spec, limits}.read();
}

}  // namespace keydrift

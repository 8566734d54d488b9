#include "repository_builder.hpp"

#include <git2.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <fstream>
#include <utility>

namespace keydrift::test {
namespace {

namespace fs = std::filesystem;

void must(int status) {
  if (status == 0) return;
  auto const* error = git_error_last();
  ADD_FAILURE() << (error != nullptr ? error->message : "libgit2 gives no reason");
}

git_oid id_of(std::string const& hex) {
  git_oid id{};
  must(git_oid_fromstr(&id, hex.c_str()));
  return id;
}

std::string hex_of(git_oid const& id) {
  std::string hex(GIT_OID_HEXSZ, '0');
  git_oid_fmt(hex.data(), &id);
  return hex;
}

git_signature* author() {
  git_signature* signature = nullptr;
  must(git_signature_new(&signature, "A. Keyer", "keyer@example.org", 883612800, 60));
  return signature;
}

git_object* look_up(git_repository* repository, std::string const& hex) {
  auto const id = id_of(hex);
  git_object* object = nullptr;
  must(git_object_lookup(&object, repository, &id, GIT_OBJECT_ANY));
  return object;
}

}  // namespace

TemporaryFolder::TemporaryFolder() {
  auto pattern = (fs::temp_directory_path() / "keydrift-XXXXXX").string();
  if (mkdtemp(pattern.data()) == nullptr) ADD_FAILURE() << "cannot make " << pattern;
  path_ = pattern;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string TemporaryFolder::write(std::string const& name, std::string const& bytes) const {
  auto const path = path_ / name;
  fs::create_directories(path.parent_path());
  std::ofstream out{path, std::ios::binary};
  out << bytes;
  if (!out.flush()) ADD_FAILURE() << "cannot write " << path;
  return path.string();
}

std::map<std::string, std::string> listing(fs::path const& folder) {
  std::map<std::string, std::string> files;
  for (auto const& entry : fs::recursive_directory_iterator{folder}) {
    auto const written = entry.last_write_time().time_since_epoch().count();
    auto const size = entry.is_regular_file() ? entry.file_size() : 0;
    files[entry.path().string()] = std::to_string(size) + " bytes, " + std::to_string(written);
  }
  return files;
}

std::string refusal(std::string const& spec, SourceLimits const& limits) {
  auto const loaded = load_source(spec, limits);
  EXPECT_FALSE(loaded.value.has_value());
  EXPECT_EQ(loaded.findings.size(), 1U);
  if (loaded.findings.empty()) return {};
  auto finding = loaded.findings.front();
  EXPECT_EQ(finding.file, spec);
  finding.file = "SPEC";
  return to_text(finding);
}

TestRepository::TestRepository(std::string path, Kind kind) : path_{std::move(path)} {
  git_libgit2_init();
  must(git_repository_init(&repository_, path_.c_str(), kind == Kind::bare ? 1 : 0));
  must(git_repository_set_head(repository_, "refs/heads/main"));
}

TestRepository::~TestRepository() {
  git_repository_free(repository_);
  git_libgit2_shutdown();
}

std::string TestRepository::commit(std::vector<TreeFile> const& files, std::string const& message) {
  git_index* index = nullptr;
  must(git_index_new(&index));
  for (auto const& file : files) {
    git_index_entry entry{};
    entry.path = file.path.c_str();
    entry.mode = static_cast<std::uint32_t>(file.mode);
    if (file.mode == Mode::submodule) {
      entry.id = id_of(file.bytes);
    } else {
      must(git_blob_create_from_buffer(&entry.id, repository_, file.bytes.data(),
                                       file.bytes.size()));
    }
    must(git_index_add(index, &entry));
  }
  git_oid tree_id{};
  must(git_index_write_tree_to(&tree_id, index, repository_));
  git_index_free(index);

  git_tree* tree = nullptr;
  must(git_tree_lookup(&tree, repository_, &tree_id));
  git_oid parent_id{};
  git_commit* parent = nullptr;
  if (git_reference_name_to_id(&parent_id, repository_, "refs/heads/main") == 0) {
    must(git_commit_lookup(&parent, repository_, &parent_id));
  }
  std::array<git_commit const*, 1> parents{parent};
  auto* signature = author();
  git_oid id{};
  must(git_commit_create(&id, repository_, "refs/heads/main", signature, signature, nullptr,
                         message.c_str(), tree, parent == nullptr ? 0 : 1, parents.data()));
  git_signature_free(signature);
  git_commit_free(parent);
  git_tree_free(tree);
  return hex_of(id);
}

void TestRepository::tag(std::string const& name, std::string const& commit) {
  auto* object = look_up(repository_, commit);
  git_oid id{};
  must(git_tag_create_lightweight(&id, repository_, name.c_str(), object, 0));
  git_object_free(object);
}

void TestRepository::annotated_tag(std::string const& name, std::string const& commit) {
  auto* object = look_up(repository_, commit);
  auto* signature = author();
  git_oid id{};
  must(git_tag_create(&id, repository_, name.c_str(), object, signature, "an edition", 0));
  git_signature_free(signature);
  git_object_free(object);
}

void TestRepository::tag_tree(std::string const& name, std::string const& commit) {
  auto* object = look_up(repository_, commit);
  git_object* tree = nullptr;
  must(git_object_peel(&tree, object, GIT_OBJECT_TREE));
  git_oid id{};
  must(git_tag_create_lightweight(&id, repository_, name.c_str(), tree, 0));
  git_object_free(tree);
  git_object_free(object);
}

void TestRepository::branch(std::string const& name, std::string const& commit) {
  auto const id = id_of(commit);
  git_reference* reference = nullptr;
  must(git_reference_create(&reference, repository_, ("refs/heads/" + name).c_str(), &id, 0,
                            "a branch"));
  git_reference_free(reference);
}

void TestRepository::add_worktree(std::string const& path) {
  git_worktree* worktree = nullptr;
  must(git_worktree_add(&worktree, repository_, "side", path.c_str(), nullptr));
  git_worktree_free(worktree);
}

void TestRepository::pack() {
  git_packbuilder* packer = nullptr;
  must(git_packbuilder_new(&packer, repository_));
  git_odb* odb = nullptr;
  must(git_repository_odb(&odb, repository_));
  auto const insert = [](git_oid const* id, void* into) {
    return git_packbuilder_insert(static_cast<git_packbuilder*>(into), id, nullptr);
  };
  must(git_odb_foreach(odb, insert, packer));
  must(git_packbuilder_write(packer, nullptr, 0, nullptr, nullptr));
  git_packbuilder_free(packer);
  git_odb_free(odb);
  auto const objects = fs::path{git_repository_path(repository_)} / "objects";
  std::vector<fs::path> loose;
  for (auto const& entry : fs::directory_iterator{objects}) {
    if (entry.path().filename().string().size() == 2) loose.push_back(entry.path());
  }
  for (auto const& folder : loose) fs::remove_all(folder);
}

}  // namespace keydrift::test

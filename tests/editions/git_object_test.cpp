// Editions read from the object database of a git repository.

#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>

#include "keydrift/editions/source.hpp"
#include "repository_builder.hpp"

namespace keydrift {
namespace {

namespace fs = std::filesystem;
using test::Kind;
using test::listing;
using test::Mode;
using test::refusal;
using test::TemporaryFolder;
using test::TestRepository;

// Three editions of one key: v1974 (lightweight tag), v1998 (annotated), main; a branch "draft".
class GitSource : public testing::Test {
 protected:
  explicit GitSource(Kind kind = Kind::working_tree) : repository_{folder_.file("archive"), kind} {
    first_ = repository_.commit({{"key.txt", "first\n"}, {"notes/velunaceae.txt", "n\n"}}, "first");
    second_ = repository_.commit({{"key.txt", "second\n"},
                                  {"notes/velunaceae.txt", "n\n"},
                                  {"notes/empty.txt", ""},
                                  {"link.txt", "key.txt", Mode::link},
                                  {"other", first_, Mode::submodule}},
                                 "second");
    third_ = repository_.commit({{"keys/key.txt", "third\n"}}, "third");
    repository_.tag("v1974", first_);
    repository_.annotated_tag("v1998", second_);
    repository_.branch("draft", second_);
  }

  [[nodiscard]] std::string spec(std::string const& rest) const {
    return repository_.path() + "@" + rest;
  }
  void expect(std::string const& spec, std::string const& bytes, std::string const& revision) {
    auto const before = listing(folder_.path());
    auto const loaded = load_source(spec);
    EXPECT_EQ(listing(folder_.path()), before) << "something was written";
    ASSERT_TRUE(loaded.value.has_value()) << spec << '\n' << to_text(loaded.findings.at(0));
    EXPECT_EQ(loaded.value->bytes, bytes) << spec;
    EXPECT_EQ(loaded.value->revision, revision) << spec;
    EXPECT_EQ(loaded.value->name, spec);
  }

  TemporaryFolder folder_;
  TestRepository repository_;
  std::string first_, second_, third_;
};

class BareGitSource : public GitSource {
 protected:
  BareGitSource() : GitSource{Kind::bare} {}
};

TEST_F(GitSource, ReadsEveryKindOfRevisionAndWritesNothing) {
  expect(spec("v1974:key.txt"), "first\n", first_);
  expect(spec("v1998:key.txt"), "second\n", second_);
  expect(spec("draft:key.txt"), "second\n", second_);
  expect(spec("refs/heads/draft:key.txt"), "second\n", second_);
  expect(spec("main:keys/key.txt"), "third\n", third_);
  expect(spec("main:./keys/key.txt"), "third\n", third_);
  expect(spec("HEAD:keys/key.txt"), "third\n", third_);
  expect(spec("HEAD~2:key.txt"), "first\n", first_);
  expect(spec("v1998^:key.txt"), "first\n", first_);
  expect(spec(second_ + ":key.txt"), "second\n", second_);
  expect(spec(second_.substr(0, 10) + ":key.txt"), "second\n", second_);
  expect(spec("main@{0}:keys/key.txt"), "third\n", third_);
}

TEST_F(GitSource, ReadsThroughTheDotGitFolderAndAWorktree) {
  expect(repository_.path() + "/.git@v1974:key.txt", "first\n", first_);
  expect(repository_.path() + "/@v1974:key.txt", "first\n", first_);
  repository_.add_worktree(folder_.file("side"));
  expect(folder_.file("side") + "@v1998:key.txt", "second\n", second_);
}

TEST_F(BareGitSource, ReadsABareRepositoryLooseAndPacked) {
  expect(spec("v1998:key.txt"), "second\n", second_);
  repository_.pack();
  ASSERT_FALSE(fs::exists(folder_.path() / "archive/objects" / second_.substr(0, 2)));
  expect(spec("v1998:key.txt"), "second\n", second_);
  expect(spec("v1974:notes/velunaceae.txt"), "n\n", first_);
}

TEST_F(GitSource, TakesTheRepositoryAroundTheCurrentFolderWhenNoneIsNamed) {
  auto const before = fs::current_path();
  fs::create_directories(folder_.path() / "archive/deeper/still");
  fs::current_path(folder_.path() / "archive/deeper/still");
  expect("@v1998:key.txt", "second\n", second_);
  fs::current_path(before);
}

TEST_F(GitSource, TakesFoldersWithSignsInTheirNames) {
  fs::rename(folder_.path() / "archive", folder_.path() / "me@home:archive");
  expect(folder_.file("me@home:archive@v1998:key.txt"), "second\n", second_);
  expect(folder_.file("me@home:archive@main@{0}:keys/key.txt"), "third\n", third_);
}

TEST_F(GitSource, ReadsARepositoryOfAnotherUser) {
  if (geteuid() != 0) GTEST_SKIP() << "only root can give files away";
  ASSERT_EQ(lchown(repository_.path().c_str(), 12345, 12345), 0);
  for (auto const& entry : fs::recursive_directory_iterator{repository_.path()}) {
    ASSERT_EQ(lchown(entry.path().c_str(), 12345, 12345), 0);
  }
  expect(spec("v1998:key.txt"), "second\n", second_);
}

TEST_F(GitSource, ReadsRepositoriesWithExtensionsForWriters) {
  folder_.write("archive/.git/config",
                "[core]\n repositoryformatversion = 1\n bare = false\n"
                "[extensions]\n worktreeConfig = true\n");
  expect(spec("v1998:key.txt"), "second\n", second_);
}

TEST_F(GitSource, ReadsAShallowClone) {
  // As a clone of depth 2 is: the first commit is missing, and "shallow" says where history ends.
  auto const git = folder_.path() / "archive/.git";
  ASSERT_TRUE(fs::remove(git / "objects" / first_.substr(0, 2) / first_.substr(2)));
  ASSERT_TRUE(fs::remove(git / "refs/tags/v1974"));
  folder_.write("archive/.git/shallow", second_ + "\n");
  expect(spec("v1998:key.txt"), "second\n", second_);
  expect(spec("HEAD~1:key.txt"), "second\n", second_);
  EXPECT_EQ(refusal(spec("HEAD~2:key.txt")),
            "SPEC:1:1: error: the repository has no revision \"HEAD~2\" [no-such-revision]\n"
            "  the clone is shallow: its history ends early\n");
}

TEST_F(GitSource, ProposesNearRevisions) {
  EXPECT_EQ(refusal(spec("v1989:key.txt")),
            "SPEC:1:1: error: the repository has no revision \"v1989\" [no-such-revision]\n"
            "  did you mean \"v1998\"?\n");
}

TEST_F(GitSource, NamesItsRevisionsWhenNoneIsNear) {
  EXPECT_EQ(refusal(spec("third-edition:key.txt")),
            "SPEC:1:1: error: the repository has no revision \"third-edition\" [no-such-revision]\n"
            "  it has \"v1974\", \"v1998\", \"draft\" and \"main\"\n");
  EXPECT_EQ(refusal(spec(":key.txt")),
            "SPEC:1:1: error: no revision is named between \"@\" and \":\" [no-such-revision]\n"
            "  it has \"v1974\", \"v1998\", \"draft\" and \"main\"\n");
}

TEST_F(GitSource, SaysWhenARevisionIsNone) {
  repository_.tag_tree("heap", first_);
  EXPECT_EQ(refusal(spec("heap:key.txt")),
            "SPEC:1:1: error: \"heap\" names a tree, not a revision [no-such-revision]\n"
            "  it has \"heap\", \"v1974\", \"v1998\", \"draft\" and \"main\"\n");
}

TEST_F(GitSource, ProposesNearPaths) {
  EXPECT_EQ(refusal(spec("main:key.txt")),
            "SPEC:1:1: error: revision \"main\" has no file \"key.txt\" [no-such-path]\n"
            "  did you mean \"keys/key.txt\"?\n");
  EXPECT_EQ(refusal(spec("v1998:notes/velumaceae.txt")),
            "SPEC:1:1: error: revision \"v1998\" has no file \"notes/velumaceae.txt\" "
            "[no-such-path]\n"
            "  did you mean \"notes/velunaceae.txt\"?\n");
  EXPECT_EQ(refusal(spec("v1998:moss/fen/velunacae.txt")),
            "SPEC:1:1: error: revision \"v1998\" has no file \"moss/fen/velunacae.txt\" "
            "[no-such-path]\n"
            "  did you mean \"notes/velunaceae.txt\"?\n");
  EXPECT_EQ(refusal(spec("v1998:zzz")),
            "SPEC:1:1: error: revision \"v1998\" has no file \"zzz\" [no-such-path]\n"
            "  paths start at the top of the repository\n");
}

TEST_F(GitSource, RefusesFoldersLinksAndSubmodules) {
  EXPECT_EQ(refusal(spec("v1998:notes/")),
            "SPEC:1:1: error: \"notes\" is a folder in revision \"v1998\" [not-a-file]\n"
            "  did you mean \"notes/empty.txt\" or \"notes/velunaceae.txt\"?\n");
  EXPECT_EQ(refusal(spec("v1974:")),
            "SPEC:1:1: error: no path is named behind the revision [not-a-file]\n"
            "  did you mean \"key.txt\" or \"notes/velunaceae.txt\"?\n");
  EXPECT_EQ(refusal(spec("v1998:link.txt")),
            "SPEC:1:1: error: \"link.txt\" is a symbolic link [not-a-file]\n"
            "  name what it links to: \"key.txt\"\n");
  EXPECT_EQ(refusal(spec("v1998:other")),
            "SPEC:1:1: error: \"other\" is a submodule [not-a-file]\n"
            "  name its own repository, at revision " +
                first_ + "\n");
}

TEST_F(GitSource, RefusesEmptyAndTooLargeFiles) {
  EXPECT_EQ(refusal(spec("v1998:notes/empty.txt")),
            "SPEC:1:1: error: the file is empty [empty-file]\n"
            "  see whether this is the right file\n");
  EXPECT_EQ(refusal(spec("v1998:key.txt"), {.maximum_bytes = 6}),
            "SPEC:1:1: error: it holds 7 bytes, and at most 6 are read [too-large]\n"
            "  see whether this is the right file; a key takes far less\n");
  EXPECT_TRUE(load_source(spec("v1998:key.txt"), {.maximum_bytes = 7}).value.has_value());
}

TEST_F(GitSource, SaysWhenAnObjectIsMissing) {
  // Commits and trees stay; this is the blob that holds "second\n".
  auto const blob =
      folder_.path() / "archive/.git/objects/e0/19be006cf33489e2d0177a3837a2384eddebc5";
  ASSERT_TRUE(fs::remove(blob));
  EXPECT_EQ(refusal(spec("v1998:key.txt")),
            "SPEC:1:1: error: \"key.txt\" is missing from the repository's objects "
            "[unreadable-file]\n"
            "  a shallow or partial clone lacks some: fetch them first\n");
}

TEST_F(GitSource, SaysWhenThereIsNoRepository) {
  auto const missing = folder_.file("archives@v1998:key.txt");
  EXPECT_EQ(refusal(missing), "SPEC:1:1: error: there is no git repository \"" +
                                  folder_.file("archives") + "\", nor a file \"" + missing +
                                  "\" [no-such-repository]\n  did you mean \"" +
                                  folder_.file("archive") + "\"?\n");
  auto const elsewhere = folder_.file("nowhere@HEAD@{1}:key.txt");
  EXPECT_EQ(refusal(elsewhere),
            "SPEC:1:1: error: there is no git repository \"" + folder_.file("nowhere") +
                "\", nor a file \"" + elsewhere +
                "\" [no-such-repository]\n"
                "  name a working tree, its .git folder or a bare repository\n");
  fs::create_directories(folder_.path() / "archive/plain");
  EXPECT_EQ(refusal(folder_.file("archive/plain@v1998:key.txt")),
            "SPEC:1:1: error: \"" + folder_.file("archive/plain") +
                "\" is no git repository [no-such-repository]\n"
                "  name a working tree, its .git folder or a bare repository\n");
}

TEST_F(GitSource, SaysWhyARepositoryCannotBeOpened) {
  folder_.write("archive/.git/config",
                "[core]\n repositoryformatversion = 1\n[extensions]\n objectFormat = none\n");
  EXPECT_EQ(refusal(spec("v1998:key.txt")),
            "SPEC:1:1: error: the git repository \"" + repository_.path() +
                "\" cannot be opened: unsupported extension name extensions.objectformat "
                "[no-such-repository]\n"
                "  name a working tree, its .git folder or a bare repository\n");
}

TEST(EmptyGitSource, SaysThatARepositoryHasNoRevisionsYet) {
  TemporaryFolder const folder;
  TestRepository const repository{folder.file("archive"), Kind::working_tree};
  EXPECT_EQ(refusal(repository.path() + "@HEAD:key.txt"),
            "SPEC:1:1: error: the repository has no revision \"HEAD\" [no-such-revision]\n"
            "  the repository has neither tags nor branches yet\n");
}

TEST_F(GitSource, ProposesARevisionWhenARepositoryIsNamedAlone) {
  EXPECT_EQ(refusal(repository_.path()), "SPEC:1:1: error: \"" + repository_.path() +
                                             "\" is a folder [is-a-directory]\n"
                                             "  name an edition in this repository as \"" +
                                             repository_.path() + "@REVISION:PATH\"\n");
}

}  // namespace
}  // namespace keydrift

#include "keydrift/editions/source.hpp"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>

#include "repository_builder.hpp"

namespace keydrift {
namespace {

namespace fs = std::filesystem;
using test::refusal;
using test::TemporaryFolder;

TEST(FileSource, GivesTheBytesOfAFile) {
  TemporaryFolder const folder;
  std::string const bytes{"1 leaves flat\0binary \xFF", 22};
  auto const path = folder.write("key.txt", bytes);
  auto const loaded = load_source(path);
  ASSERT_TRUE(loaded.value.has_value());
  EXPECT_EQ(loaded.value->bytes, bytes);
  EXPECT_EQ(loaded.value->name, path);
  EXPECT_EQ(loaded.value->revision, "");
  EXPECT_TRUE(loaded.findings.empty());
}

TEST(FileSource, ReadsAFileOfManyBlocks) {
  TemporaryFolder const folder;
  std::string bytes;
  for (int i = 0; i < 300'000; ++i) bytes += static_cast<char>('a' + i % 23);
  auto const loaded = load_source(folder.write("long.txt", bytes));
  ASSERT_TRUE(loaded.value.has_value());
  EXPECT_EQ(loaded.value->bytes, bytes);
}

TEST(FileSource, ProposesNearNamesForAMissingFile) {
  TemporaryFolder const folder;
  folder.write("velunaceae-1998.txt", "x");
  folder.write("velunaceae-1989.txt", "x");
  folder.write("velunaceae-2024.txt", "x");
  folder.write("other.csv", "x");
  auto const wanted = folder.file("velunaceae-1988.txt");
  EXPECT_EQ(refusal(wanted), "SPEC:1:1: error: there is no file \"" + wanted +
                                 "\" [no-such-file]\n  did you mean \"" +
                                 folder.file("velunaceae-1989.txt") + "\" or \"" +
                                 folder.file("velunaceae-1998.txt") + "\"?\n");
}

TEST(FileSource, SaysWhatToSeeToWhenNoNameIsNear) {
  TemporaryFolder const folder;
  folder.write("key.txt", "x");
  auto const wanted = folder.file("zzzzzz");
  EXPECT_EQ(refusal(wanted),
            "SPEC:1:1: error: there is no file \"" + wanted +
                "\" [no-such-file]\n"
                "  see whether its name is right and the current folder the one meant\n");
}

TEST(FileSource, SaysWhenTheFolderOfAMissingFileIsMissingToo) {
  TemporaryFolder const folder;
  auto const wanted = folder.file("none/key.txt");
  EXPECT_EQ(refusal(wanted), "SPEC:1:1: error: there is no file \"" + wanted +
                                 "\" [no-such-file]\n  see whether the folder \"" +
                                 folder.file("none/") + "\" exists and may be listed\n");
}

TEST(FileSource, RefusesAFolder) {
  TemporaryFolder const folder;
  EXPECT_EQ(refusal(folder.path().string()), "SPEC:1:1: error: \"" + folder.path().string() +
                                                 "\" is a folder [is-a-directory]\n"
                                                 "  name a file in it\n");
}

TEST(FileSource, RefusesAnEmptyFile) {
  TemporaryFolder const folder;
  EXPECT_EQ(refusal(folder.write("key.txt", "")),
            "SPEC:1:1: error: the file is empty [empty-file]\n"
            "  see whether this is the right file\n");
}

TEST(FileSource, RefusesAFileBeyondTheLimit) {
  TemporaryFolder const folder;
  auto const path = folder.write("key.txt", "12345678");
  EXPECT_EQ(refusal(path, {.maximum_bytes = 7}),
            "SPEC:1:1: error: it holds 8 bytes, and at most 7 are read [too-large]\n"
            "  see whether this is the right file; a key takes far less\n");
  EXPECT_TRUE(load_source(path, {.maximum_bytes = 8}).value.has_value());
}

TEST(FileSource, BoundsADeviceThatNeverEnds) {
  if (!fs::exists("/dev/zero")) GTEST_SKIP();
  EXPECT_EQ(refusal("/dev/zero", {.maximum_bytes = 100'000}),
            "SPEC:1:1: error: it holds more than 100000 bytes, the most that are read "
            "[too-large]\n"
            "  see whether this is the right file; a key takes far less\n");
}

TEST(FileSource, SaysWhyAFileCannotBeRead) {
  // The first page of a process's memory is never mapped, so reading it fails for everybody.
  if (!fs::exists("/proc/self/mem")) GTEST_SKIP();
  EXPECT_EQ(refusal("/proc/self/mem"),
            "SPEC:1:1: error: \"/proc/self/mem\" cannot be read: Input/output error "
            "[unreadable-file]\n"
            "  see whether the disk or the device is in order\n");
}

TEST(FileSource, SaysWhenAFileMayNotBeRead) {
  TemporaryFolder const folder;
  auto const path = folder.write("key.txt", "x");
  fs::permissions(path, fs::perms::none);
  fs::permissions(folder.path(), fs::perms::all);
  // Root may read everything, so the test is somebody else for a moment.
  bool const is_root = geteuid() == 0;
  if (is_root) {
    ASSERT_EQ(seteuid(12345), 0);
  }
  auto const text = refusal(path);
  if (is_root) {
    ASSERT_EQ(seteuid(0), 0);
  }
  EXPECT_EQ(text, "SPEC:1:1: error: you may not read \"" + path +
                      "\" [unreadable-file]\n"
                      "  ask its owner for the right to read it\n");
}

TEST(FileSource, OfExactlyThatNameWinsOverAReadingAsRevision) {
  TemporaryFolder const folder;
  auto const path = folder.write("archive@v1:key.txt", "1 flat\n");
  auto const loaded = load_source(path);
  ASSERT_TRUE(loaded.value.has_value());
  EXPECT_EQ(loaded.value->bytes, "1 flat\n");
  EXPECT_EQ(loaded.value->revision, "");
}

}  // namespace
}  // namespace keydrift

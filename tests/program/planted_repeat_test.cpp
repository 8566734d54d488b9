// The same question asked in another way gives the same bytes: a second run, the editions read from
// a git repository, the editions laid out anew.

#include <gtest/gtest.h>

#include <cctype>
#include <map>
#include <ostream>

#include "golden.hpp"
#include "planted_support.hpp"

namespace keydrift::test {
namespace {

// The three editions of the Velunaceae as tagged revisions of one file.
void make_repository(std::filesystem::path const& folder) {
  auto const git = [&](std::vector<std::string> const& words) {
    std::vector<std::string> command{"git", "-C", folder.string()};
    command.insert(command.end(), words.begin(), words.end());
    auto const ran = run_program(command);
    ASSERT_EQ(ran.exit, 0) << ran.err;
  };
  std::filesystem::create_directories(folder);
  git({"init", "-q", "--initial-branch=main"});
  for (std::string const year : {"1974", "1998", "2024"}) {
    std::filesystem::copy_file(fixture("velunaceae/edition-" + year + ".txt"),
                               folder / "velunaceae.txt",
                               std::filesystem::copy_options::overwrite_existing);
    git({"add", "velunaceae.txt"});
    git({"-c", "user.name=Flora of the Halvern Basin", "-c", "user.email=flora@example.org", "-c",
         "commit.gpgsign=false", "commit", "-q", "-m", "Edition of " + year});
    git({"tag", "--no-sign", "v" + year});
  }
}

Redetermined velunaceae_from(std::string const& old_edition, std::string const& new_edition) {
  std::vector<std::string> inputs{old_edition, new_edition};
  for (auto const& option : velunaceae_options()) inputs.push_back(option);
  return redetermine(fixture("velunaceae"), inputs);
}

void expect_same_bytes(std::string const& what, std::string const& one, std::string const& other) {
  EXPECT_FALSE(one.empty()) << what;
  if (one == other) return;
  auto const ones = lines_of(one);
  auto const others = lines_of(other);
  std::size_t i = 0;
  while (i < ones.size() && i < others.size() && ones[i] == others[i]) ++i;
  auto const line = [&](std::vector<std::string> const& lines) {
    return i < lines.size() ? lines[i].substr(0, 400) : std::string{"(end)"};
  };
  ADD_FAILURE() << what << " differs from line " << i + 1 << "\n  " << line(ones) << "\n  "
                << line(others);
}

TEST(PlantedRepeat, ASecondRunWritesTheSameBytes) {
  auto const& first = velunaceae();
  auto const second = velunaceae_from("edition-1998.txt", "edition-2024.txt");
  expect_same_bytes("standard output", first.ran.out, second.ran.out);
  expect_same_bytes("JSON", first.json, second.json);
  expect_same_bytes("HTML", first.html, second.html);
  expect_same_bytes("worklist", first.worklist, second.worklist);
  expect_same_bytes("specimens", first.specimens, second.specimens);
}

TEST(PlantedRepeat, EditionsReadFromTagsGiveTheSameBytesButForTheirNames) {
  Sandbox const sandbox;
  auto const repository = sandbox.path() / "flora";
  make_repository(repository);
  if (HasFatalFailure()) return;
  auto const name = [&](std::string const& year) {
    return repository.string() + "@v" + year + ":velunaceae.txt";
  };
  auto const& from_files = velunaceae();
  auto const from_tags = velunaceae_from(name("1998"), name("2024"));
  auto const renamed = [&](std::string text) {
    for (std::string const year : {"1998", "2024"}) {
      text = replaced(std::move(text), name(year), "edition-" + year + ".txt");
    }
    return text;
  };
  expect_same_bytes("specimens", from_files.specimens, from_tags.specimens);
  expect_same_bytes("worklist", from_files.worklist, from_tags.worklist);
  expect_same_bytes("JSON", from_files.json, renamed(from_tags.json));
  expect_same_bytes("HTML", from_files.html, renamed(from_tags.html));
  expect_same_bytes("standard output", from_files.ran.out, renamed(from_tags.ran.out));
}

TEST(PlantedRepeat, NothingIsWrittenToTheRepository) {
  Sandbox const sandbox;
  auto const repository = sandbox.path() / "flora";
  make_repository(repository);
  if (HasFatalFailure()) return;
  auto const listed = [&] {
    std::set<std::string> files;
    for (auto const& entry : std::filesystem::recursive_directory_iterator{repository}) {
      files.insert(entry.path().string() +
                   (entry.is_regular_file() ? " " + slurp(entry.path().string()) : ""));
    }
    return files;
  };
  auto const before = listed();
  auto const ran = run_keydrift(
      {"collate", "flora@v1974:velunaceae.txt", "flora@v1998:velunaceae.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 1) << ran.err;
  EXPECT_EQ(listed(), before);
}

// An edition and the options that its archive is keyed with.
struct LaidOut {
  char const* folder;
  char const* edition;
};

void PrintTo(LaidOut const& edition, std::ostream* out) {
  *out << edition.folder << "/" << edition.edition;
}

class PlantedLayout : public testing::TestWithParam<LaidOut> {
 protected:
  [[nodiscard]] std::string edition() const {
    return fixture(std::string{GetParam().folder} + "/" + GetParam().edition);
  }
  // The edition converted into a file of the sandbox.
  [[nodiscard]] std::string laid_out(Sandbox const& sandbox, std::string const& form) const {
    auto const file = (sandbox.path() / ("again." + form)).string();
    std::vector<std::string> command{"convert", edition(), "--to", form, "-o", file};
    if (form == "text") command.insert(command.end(), {"--width", "60"});
    auto const ran = run_keydrift(command, sandbox.path());
    EXPECT_EQ(ran.exit, 0) << ran.err;
    return file;
  }
};

TEST_P(PlantedLayout, AReLayoutIsNoChange) {
  for (std::string const form : {"text", "json"}) {
    Sandbox const sandbox;
    auto const again = laid_out(sandbox, form);
    EXPECT_NE(slurp(again), slurp(edition())) << "laid out as before";
    auto const lexicon = fixture(std::string{GetParam().folder} + "/lexicon.csv");
    for (bool const swapped : {false, true}) {
      auto const plain = run_keydrift({"collate", swapped ? again : edition(),  //
                                       swapped ? edition() : again});
      EXPECT_EQ(plain.exit, 0) << form << "\n" << plain.out << plain.err;
      auto const with_words = run_keydrift({"collate", swapped ? again : edition(),
                                            swapped ? edition() : again, "--lexicon", lexicon});
      EXPECT_EQ(with_words.exit, 0) << form << "\n" << with_words.out << with_words.err;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Editions, PlantedLayout,
                         testing::Values(LaidOut{"velunaceae", "edition-1974.txt"},
                                         LaidOut{"velunaceae", "edition-1998.txt"},
                                         LaidOut{"velunaceae", "edition-2024.txt"},
                                         LaidOut{"halvern-crayfish", "edition-2001.txt"},
                                         LaidOut{"halvern-crayfish", "edition-2019.txt"},
                                         LaidOut{"two-editions", "edition-a.txt"}),
                         [](testing::TestParamInfo<LaidOut> const& edition) {
                           std::string name = edition.param.folder;
                           name += edition.param.edition;
                           std::erase_if(name, [](char c) { return !std::isalnum(c); });
                           return name;
                         });

// Sheets that cannot be keyed by 1998 at all stay what they are; old synonyms of the front matter
// are given the accepted name; all others stand.
TEST(PlantedRepeat, UnderAReLayoutEveryKeyableSheetStands) {
  std::map<std::string, std::string> under_2024;
  for (auto const& row : read_table(velunaceae().specimens)) {
    under_2024[row.at("catalogNumber")] = row.at("outcome");
  }
  for (std::string const form : {"text", "json"}) {
    Sandbox const sandbox;
    auto const again = (sandbox.path() / ("again." + form)).string();
    ASSERT_EQ(run_keydrift({"convert", fixture("velunaceae/edition-1998.txt"), "--to", form,
                            "--lexicon", fixture("velunaceae/lexicon.csv"), "-o", again})
                  .exit,
              0);
    auto const made = redetermine(
        fixture("velunaceae"), {"edition-1998.txt", again, "sheets.csv", "--lexicon", "lexicon.csv",
                                "--parents", "parents.csv", "--measurements", "measurements.csv"});
    std::map<std::string, std::size_t> count;
    for (auto const& row : read_table(made.specimens)) {
      auto const& outcome = row.at("outcome");
      auto const& later = under_2024.at(row.at("catalogNumber"));
      std::string wanted = "stands";
      if (later == "doubtful" || later == "not keyed") wanted = later;
      if (later == "enters scope") wanted = "not keyed";  // 1998 never covered its place
      if (row.at("scientificName") == "Veluna stagnalis") wanted = "renamed";
      EXPECT_EQ(outcome, wanted) << row.at("catalogNumber") << " " << row.at("scientificName")
                                 << ": " << row.at("reason");
      ++count[outcome];
    }
    EXPECT_EQ(count["stands"], 1747U);
    EXPECT_EQ(count["renamed"], 4U);
  }
}

}  // namespace
}  // namespace keydrift::test

// What `redetermine` writes does not hang on the number of threads, nor on whether the table is
// read in blocks or row by row.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "golden.hpp"
#include "planted_support.hpp"

namespace keydrift::test {
namespace {

// The demo's archive several times over under ever new numbers, with rows in between of which each
// is unusual in a way of its own.  Several blocks.
std::string large_archive() {
  auto const sheets = slurp(fixture("velunaceae/sheets.csv"));
  auto const lines = lines_of(sheets);
  std::vector<std::string> const odd{"\"HLV, 1\",\"say \"\"no\"\"\"",
                                     "two\nlines of,one",
                                     "\"never closed,x,y",
                                     std::string{"n\0l,x", 5},
                                     "b\xFCs,Veluna",
                                     "",
                                     ",,,,",
                                     "a\"b,Veluna nana"};
  std::string text = lines.front() + "\n";
  for (int round = 0; round < 14; ++round) {
    for (std::size_t i = 1; i < lines.size(); ++i) {
      if (lines[i].empty()) continue;
      text += "R" + std::to_string(round) + lines[i] + "\n";
      if (i % 200 == 0) text += odd[(i / 200) % odd.size()] + "\n";
    }
  }
  // More values that cannot be used than are told one by one.
  auto const& header = lines.front();
  auto const width = header.substr(0, header.find("leaf-width"));
  auto const number = header.substr(0, header.find("catalogNumber"));
  std::string const before(static_cast<std::size_t>(std::count(number.begin(), number.end(), ',')),
                           ',');
  std::string const between(
      static_cast<std::size_t>(std::count(width.begin(), width.end(), ',')) - before.size(), ',');
  for (int i = 0; i < 600; ++i) {
    text += before + "BAD" + std::to_string(i) + between + "wide" + std::to_string(i) + "\n";
  }
  return text;
}

struct Written {
  Ran ran;
  std::map<std::string, std::string> files;
};

Written run(std::string const& archive, std::vector<std::string> const& more,
            bool with_lexicon = true) {
  auto const out = std::filesystem::path{archive + ".out"};
  std::filesystem::remove_all(out);
  std::filesystem::create_directory(out);
  std::vector<std::string> arguments{"redetermine", "edition-1998.txt", "edition-2024.txt",
                                     archive};
  for (auto const* option : {"--concepts", "concepts-1998-2024.csv", "--parents", "parents.csv"}) {
    arguments.emplace_back(option);
  }
  if (with_lexicon) arguments.insert(arguments.end(), {"--lexicon", "lexicon.csv"});
  for (auto const* name :
       {"specimens", "worklist", "worklist-html", "summaries", "rejects", "json", "html"}) {
    arguments.push_back(std::string{"--"} + name);
    arguments.push_back((out / name).string());
  }
  arguments.insert(arguments.end(), more.begin(), more.end());
  Written written{.ran = run_keydrift(arguments, fixture("velunaceae")), .files = {}};
  for (auto const& file : std::filesystem::directory_iterator{out}) {
    written.files[file.path().filename().string()] = slurp(file.path().string());
  }
  return written;
}

std::vector<std::string> cells_in(std::string const& line) {
  std::vector<std::string> cells;
  for (std::size_t from = 0; from <= line.size();) {
    auto const end = std::min(line.find(',', from), line.size());
    cells.push_back(line.substr(from, end - from));
    from = end + 1;
  }
  return cells;
}

void expect_same(Written const& one, Written const& other, std::string const& what) {
  EXPECT_EQ(one.ran.exit, other.ran.exit) << what;
  EXPECT_TRUE(one.ran.out == other.ran.out) << what;
  EXPECT_EQ(one.ran.err, other.ran.err) << what;
  ASSERT_EQ(one.files.size(), other.files.size()) << what;
  for (auto const& [name, text] : one.files) {
    EXPECT_TRUE(text == other.files.at(name)) << what << ": " << name;
  }
}

TEST(Threads, WriteTheSameBytesWhateverTheirNumber) {
  Sandbox const sandbox;
  auto const archive = sandbox.write("large.csv", large_archive());
  auto const one = run(archive, {"--threads", "1"});
  ASSERT_EQ(one.ran.exit, 0) << one.ran.err;
  ASSERT_EQ(one.files.size(), 7U);
  EXPECT_GT(one.files.at("rejects").size(), 1000U);
  EXPECT_NE(one.ran.err.find("further records hold other values that cannot be used"),
            std::string::npos);
  expect_same(one, run(archive, {"--threads", "2"}), "two threads");
  expect_same(one, run(archive, {"--threads", "5"}), "five threads");
  // Measurements have to be joined, which is done row by row.
  auto const none =
      sandbox.write("measurements.csv", "occurrenceID,measurementType,measurementValue\n");
  auto joined = run(archive, {"--measurements", none});
  joined.ran.err = one.ran.err;
  expect_same(one, joined, "row by row");
}

// Such tables are read by one thread, which copies specimens for the others.
TEST(Threads, WriteTheSameBytesOfTablesThatAreJoinedOrTiedByWords) {
  Sandbox const sandbox;
  auto const sheets = lines_of(slurp(fixture("velunaceae/sheets.csv")));
  std::string text;
  for (std::size_t i = 0; i < 700; ++i) {
    text += sheets[i] + "\n";
    if (i % 90 == 1) text += std::string{"n\0l,x\n", 6};
  }
  auto const archive = sandbox.write("sheets.csv", text + sheets[1] + "\n");
  struct Case {
    std::vector<std::string> options;
    bool with_lexicon;
  };
  for (auto const& [options, with_lexicon] :
       {Case{{"--measurements", "measurements.csv"}, true}, Case{{}, false}}) {
    auto const of = [&](char const* threads) {
      auto all = options;
      all.insert(all.end(), {"--threads", threads});
      return run(archive, all, with_lexicon);
    };
    auto const one = of("1");
    ASSERT_EQ(one.ran.exit, 0) << one.ran.err;
    EXPECT_NE(one.ran.out.find("707 records read: 699 specimens judged, 8 set aside"),
              std::string::npos)
        << one.ran.out;
    // A number that stands twice is told with its rows.
    EXPECT_NE(one.ran.out.find("Rows whose number or id an earlier row has; all are used"),
              std::string::npos)
        << one.ran.out;
    auto const& json = one.files.at("json");
    EXPECT_NE(json.find("\"firstLine\": 2,"), std::string::npos);
    EXPECT_NE(json.find("\"line\": 709\n"), std::string::npos);
    expect_same(one, of("3"), with_lexicon ? "measurements" : "without lexicon");
  }
}

// The first sheets of the demo as a Darwin Core archive, with its measurements in an extension.
std::string star_archive(Sandbox const& sandbox) {
  auto const lines = lines_of(slurp(fixture("velunaceae/sheets.csv")));
  std::string table;
  for (std::size_t i = 0; i < 500; ++i) {
    table += lines[i] + "\n";
    if (i % 90 == 1) table += std::string{"n\0l,x\n", 6};
  }
  (void)sandbox.write("occurrence.csv", table);
  (void)sandbox.write("facts.csv", slurp(fixture("velunaceae/measurements.csv")));
  auto const field = [](std::size_t index, std::string const& term) {
    return "<field index=\"" + std::to_string(index) + "\" term=\"" + term + "\"/>\n";
  };
  std::string const terms = "http://rs.tdwg.org/dwc/terms/";
  std::string const form =
      " fieldsTerminatedBy=\",\" fieldsEnclosedBy='\"' ignoreHeaderLines=\"1\"";
  std::string core;
  std::size_t index = 0;
  bool character = false;
  for (auto const& column : cells_in(lines.front())) {
    core += field(index++, character ? column : terms + column);
    character = character || column == "occurrenceRemarks";
  }
  std::string facts;
  index = 1;
  for (auto const* term : {"measurementType", "measurementValue", "measurementUnit"}) {
    facts += field(index++, terms + term);
  }
  return sandbox.write(
      "meta.xml", "<archive xmlns=\"http://rs.tdwg.org/dwc/text/\">\n<core rowType=\"" + terms +
                      "Occurrence\"" + form +
                      "><files><location>occurrence.csv</location></files><id index=\"0\"/>\n" +
                      core + "</core>\n<extension rowType=\"" + terms + "MeasurementOrFact\"" +
                      form + "><files><location>facts.csv</location></files>" +
                      "<coreid index=\"0\"/>\n" + facts + "</extension>\n</archive>\n");
}

TEST(Threads, WriteTheSameBytesOfArchivesWithExtensions) {
  Sandbox const sandbox;
  auto const archive = star_archive(sandbox);
  auto const one = run(archive, {"--threads", "1"});
  ASSERT_EQ(one.ran.exit, 0) << one.ran.err;
  EXPECT_NE(one.ran.out.find("505 records read: 499 specimens judged, 6 set aside"),
            std::string::npos)
      << one.ran.out;
  // The extension tells: without it other sheets are to be looked at.
  auto const flat =
      run(sandbox.write("flat.csv", slurp((sandbox.path() / "occurrence.csv").string())),
          {"--threads", "1"});
  EXPECT_NE(one.files.at("worklist"), flat.files.at("worklist"));
  for (auto const* threads : {"2", "3"}) {
    expect_same(one, run(archive, {"--threads", threads}), threads);
  }
}

TEST(Threads, AreAtLeastOne) {
  auto const ran = run_keydrift({"redetermine", "a", "b", "c", "--threads", "0"});
  EXPECT_EQ(ran.exit, 2);
  EXPECT_NE(ran.err.find("--threads"), std::string::npos) << ran.err;
}

}  // namespace
}  // namespace keydrift::test

#include "keydrift/formats/darwin_archive.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>  // mkdtemp

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>

#include "finding_text.hpp"
#include "zip_bytes.hpp"

namespace fs = std::filesystem;

namespace keydrift::test {
namespace {

// An archive as a folder or a zip file, gone after the test.
class OnDisk {
 public:
  explicit OnDisk(std::vector<ZipEntry> entries) : entries_{std::move(entries)} {
    auto name = (fs::temp_directory_path() / "keydrift-archive-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) ADD_FAILURE() << "cannot make " << name;
    root_ = name;
  }
  ~OnDisk() {
    std::error_code ignored;
    fs::remove_all(root_, ignored);
  }
  OnDisk(OnDisk const&) = delete;
  OnDisk& operator=(OnDisk const&) = delete;

  [[nodiscard]] std::string folder() const {
    for (auto const& entry : entries_) {
      auto const path = root_ / "folder" / entry.name;
      fs::create_directories(path.parent_path());
      std::ofstream{path, std::ios::binary} << entry.bytes;
    }
    return (root_ / "folder").string();
  }
  [[nodiscard]] std::string zip() const {
    auto const path = root_ / "archive.zip";
    std::ofstream{path, std::ios::binary} << zip_bytes(entries_);
    return path.string();
  }
  [[nodiscard]] std::string without_root(std::string text) const {
    for (auto at = text.find(root_.string()); at != std::string::npos;
         at = text.find(root_.string())) {
      text.erase(at, root_.string().size() + 1);
    }
    return text;
  }

 private:
  std::vector<ZipEntry> entries_;
  fs::path root_;
};

constexpr char const* kMeta = R"(<?xml version="1.0" encoding="UTF-8"?>
<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="eml.xml">
  <core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" encoding="UTF-8" fieldsTerminatedBy="\t"
        linesTerminatedBy="\n" fieldsEnclosedBy="" ignoreHeaderLines="1">
    <files><location>one.txt</location><location>./two.txt</location></files>
    <id index="0"/>
    <field index="1" term="http://rs.tdwg.org/dwc/terms/catalogNumber"/>
    <field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
    <field index="3" term="http://rs.tdwg.org/dwc/terms/country" default="Halvern"/>
    <field term="http://rs.tdwg.org/dwc/terms/typeStatus" default="none"/>
  </core>
  <extension rowType="http://rs.tdwg.org/dwc/terms/Identification" fieldsTerminatedBy=","
             ignoreHeaderLines="0">
    <files><location>history.csv</location></files>
    <coreid index="0"/>
    <field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
    <field index="2" term="http://rs.tdwg.org/dwc/terms/dateIdentified"/>
    <field index="3" term="http://rs.tdwg.org/dwc/terms/identifiedBy"/>
    <field index="4" term="http://rs.tdwg.org/dwc/terms/isAcceptedIdentification"/>
  </extension>
  <extension rowType="http://rs.tdwg.org/dwc/terms/MeasurementOrFact" fieldsTerminatedBy="\t"
             fieldsEnclosedBy="" ignoreHeaderLines="1">
    <files><location>facts.txt</location></files>
    <coreid index="0"/>
    <field index="1" term="http://rs.tdwg.org/dwc/terms/measurementType"/>
    <field index="2" term="http://rs.tdwg.org/dwc/terms/measurementValue"/>
    <field term="http://rs.tdwg.org/dwc/terms/measurementUnit" default="mm"/>
  </extension>
</archive>
)";

std::vector<ZipEntry> star() {
  return {{"meta.xml", kMeta},
          {"one.txt",
           "id\tnumber\tname\tland\n"
           "a\t1\tAus bus\tOrrland\n"
           "b\t2\t\"Aus\" bus\t\n"
           "c\t3\t\t\n"},
          {"two.txt", "id\tnumber\tname\tland\nd\t4\tAus bus\t\n"},
          {"history.csv",
           "c,Aus cus,2001,L.\n"
           "a,Aus dus,1990,K.,true\n"
           "c,Aus bus,1999-05,K.\n"
           "d,Aus bus,1980,K.\n"
           "d,Aus bus,1991-02-03,\"M. \"\"N.\"\"\"\n"
           "d,Aus cus,2001,L.\n"
           "x,Aus cus,2001,L.\n"},
          {"facts.txt",
           "id\ttype\tvalue\n"
           "d\tspike length\t12\n"
           "a\tstorage location\tCabinet 2\n"
           "d\tcolour\tred\n"
           "a\tspike length\t9\n"}};
}

std::string told(Specimen const& s) {
  std::string text = s.catalog_number + " " + s.scientific_name + " " + s.date_identified + " " +
                     s.identified_by + " " + s.storage;
  for (auto const& place : s.places) text += " in " + place;
  for (auto const& seen : s.observations) {
    text += "; " + seen.character + " " + seen.value + " " + seen.unit;
  }
  return text + "; type " + s.type_status;
}

struct ReadBack {
  std::vector<std::string> specimens;
  std::vector<std::string> findings;
  ArchiveCounts counts;
  bool sound{false};
};

ReadBack read_back(std::string const& path) {
  ReadBack back;
  auto archive = DarwinArchive::open(path);
  back.findings = one_line_each(archive.findings);
  if (!archive.value) return back;
  OccurrenceOptions options;
  options.characters = {"spike length"};
  auto const read = archive.value->read(options,
                                        [&](Specimen const& specimen) {
                                          back.specimens.push_back(told(specimen));
                                          return true;
                                        },
                                        {});
  for (auto const& line : one_line_each(read.findings)) back.findings.push_back(line);
  back.counts = archive.value->counts();
  back.sound = read.value.has_value();
  return back;
}

TEST(DarwinArchive, IsReadAlikeFromAFolderAndFromAZipFile) {
  OnDisk const disk{star()};
  std::vector<std::string> const expected{
      "1 Aus dus 1990 K. Cabinet 2 in Orrland; spike length 9 mm; type none",
      "2 \"Aus\" bus    in Halvern; type none", "3 Aus cus 2001 L.  in Halvern; type none",
      "4 Aus bus 1991-02-03 M. \"N.\"  in Halvern; spike length 12 mm; type none"};
  auto const folder = read_back(disk.folder());
  EXPECT_EQ(folder.specimens, expected);
  EXPECT_TRUE(folder.sound);
  auto const zip = read_back(disk.zip());
  EXPECT_EQ(zip.specimens, expected);
  EXPECT_EQ(zip.counts.history->accepted, 1U);
  EXPECT_EQ(zip.counts.history->by_core, 1U);
  EXPECT_EQ(zip.counts.history->latest, 1U);
  EXPECT_EQ(zip.counts.history->several, 2U);
  EXPECT_TRUE(DarwinArchive::is_archive(disk.zip()));
  EXPECT_TRUE(DarwinArchive::is_archive(disk.folder() + "/meta.xml"));
  EXPECT_FALSE(DarwinArchive::is_archive(disk.folder() + "/one.txt"));
}

TEST(DarwinArchive, SaysWhichRowsOfExtensionsBelongToNothing) {
  OnDisk const disk{star()};
  std::vector<std::string> told_of;
  for (auto const& line : read_back(disk.folder()).findings) {
    if (line.find("[unknown-") != std::string::npos) told_of.push_back(disk.without_root(line));
  }
  EXPECT_EQ(told_of,
            (std::vector<std::string>{
                "folder/history.csv:7:1: warning: the core has no row \"x\"; what they say was not "
                "used [unknown-id] (check whether the core is complete)",
                "folder/facts.txt:1:1: information: these types are not characters of the lexicon "
                "and were not used: \"colour\" [unknown-type] (measurementType wants the id or "
                "label of a character of the lexicon)"}));
}

TEST(DarwinArchive, TellsIdsThatStandTwiceAndUsesAllTheirRows) {
  auto entries = star();
  entries[1].bytes += "b\t5\tAus fus\t\nb\t6\tAus gus\t\n";
  entries[2].bytes += "a\t7\tAus hus\t\n";
  entries[3].bytes += "b,Aus ius,2001,P.,true\n";
  OnDisk const disk{entries};
  auto const back = read_back(disk.folder());
  EXPECT_TRUE(back.sound);
  EXPECT_EQ(back.specimens.size(), 7U);
  EXPECT_EQ(back.specimens[1], "2 Aus ius 2001 P.  in Halvern; type none");
  EXPECT_EQ(back.specimens[3], "5 Aus fus    in Halvern; type none");
  EXPECT_EQ(back.specimens[6], "7 Aus hus    in Halvern; type none");
  EXPECT_EQ(back.counts.repeated_ids, 3U);
  std::vector<std::string> repeats;
  for (auto const& one : back.counts.repeats) {
    repeats.push_back(disk.without_root(one.id + ": " + one.first_file + ":" +
                                        std::to_string(one.first_line) + ", " + one.file + ":" +
                                        std::to_string(one.line)));
  }
  EXPECT_EQ(repeats, (std::vector<std::string>{"b: folder/one.txt:3, folder/one.txt:5",
                                               "b: folder/one.txt:3, folder/one.txt:6",
                                               "a: folder/one.txt:2, folder/two.txt:3"}));
  std::vector<std::string> told_of;
  for (auto const& line : back.findings) {
    if (line.find("[repeated-") != std::string::npos) told_of.push_back(disk.without_root(line));
  }
  EXPECT_EQ(
      told_of,
      (std::vector<std::string>{
          "folder/one.txt:5:1: warning: \"b\" is the id of line 3 already, and 2 further rows "
          "repeat ids; all rows are used, and what extensions say goes to the first of an id "
          "[repeated-occurrence] (check whether it is one specimen, and give each an id of its "
          "own)"}));
}

TEST(DarwinArchive, TellsEverythingThatIsWrongAtOnce) {
  auto entries = star();
  auto& meta = entries.front().bytes;
  auto const change = [&](std::string const& from, std::string const& to) {
    auto const at = meta.find(from);
    ASSERT_NE(at, std::string::npos) << from;
    meta.replace(at, from.size(), to);
  };
  change("one.txt", "../one.txt");
  change("facts.txt", "https://example.org/facts.txt");
  change("fieldsTerminatedBy=\",\"", "fieldsTerminatedBy=\"||\" encoding=\"EBCDIC\"");
  change("<field index=\"3\"", "<field index=\"three\"");
  OnDisk const disk{entries};
  std::vector<std::string> codes;
  for (auto const& line : read_back(disk.folder()).findings) {
    auto const open = line.find('[');
    codes.push_back(line.substr(open + 1, line.find(']') - open - 1));
  }
  EXPECT_EQ(codes, (std::vector<std::string>{"unsafe-path", "bad-index", "unsupported-separator",
                                             "unsupported-encoding", "remote-table", "no-files"}));
}

TEST(DarwinArchive, MissesTheTablesThatAreNotThere) {
  auto entries = star();
  std::erase_if(entries, [](ZipEntry const& entry) { return entry.name == "history.csv"; });
  OnDisk const disk{entries};
  auto const back = read_back(disk.zip());
  EXPECT_FALSE(back.sound);
  ASSERT_EQ(back.findings.size(), 1U);
  EXPECT_EQ(disk.without_root(back.findings.front()),
            "archive.zip:meta.xml:12:3: error: the archive has no file \"history.csv\", which "
            "meta.xml names [missing-table] (check that the archive is complete)");
}

TEST(DarwinArchive, IsFoundInTheOnlyFolderOfAZipFile) {
  std::vector<ZipEntry> entries{{"__MACOSX/meta.xml", "litter"}};
  for (auto entry : star()) entries.push_back({"export/" + entry.name, entry.bytes});
  OnDisk const disk{entries};
  EXPECT_EQ(read_back(disk.zip()).specimens.size(), 4U);
}

TEST(DarwinArchive, RefusesAZipFileThatIsNone) {
  OnDisk const disk{{{"readme.md", "nothing"}}};
  auto const back = read_back(disk.zip());
  ASSERT_EQ(back.findings.size(), 1U);
  EXPECT_EQ(disk.without_root(back.findings.front()),
            "archive.zip:1:1: error: there is no meta.xml in the zip file, and not exactly one "
            "table either [no-meta] (name the table of specimens, or an archive with its "
            "meta.xml)");
}

}  // namespace
}  // namespace keydrift::test

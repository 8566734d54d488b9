// A worklist goes out, is filled in, and comes back.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "binary.hpp"
#include "golden.hpp"
#include "planted_support.hpp"
#include "table.hpp"

namespace keydrift::test {
namespace {

// CSV as a spreadsheet may save it.
struct Form {
  char separator{','};
  char const* line_end{"\n"};
  char const* mark{""};
};

std::string saved(std::vector<std::string> const& columns, std::vector<Row> const& rows,
                  Form const& form = {}) {
  std::string text = form.mark;
  auto const add = [&](std::string const& cell, bool last) {
    bool const quote = cell.find_first_of(std::string{"\"\r\n"} + form.separator) != cell.npos;
    text += quote ? "\"" + replaced(cell, "\"", "\"\"") + "\"" : cell;
    text += last ? form.line_end : std::string(1, form.separator);
  };
  for (auto const& column : columns) add(column, &column == &columns.back());
  for (auto const& row : rows) {
    for (auto const& column : columns) {
      auto const cell = row.find(column);
      add(cell == row.end() ? "" : cell->second, &column == &columns.back());
    }
  }
  return text;
}

std::vector<std::string> const kWorklist{"storageLocation",
                                         "catalogNumber",
                                         "scientificName",
                                         "typeOrVoucher",
                                         "question",
                                         "answersAllowed",
                                         "possibleResults",
                                         "answer",
                                         "newName",
                                         "by",
                                         "date",
                                         "remarks",
                                         "character",
                                         "occurrenceID",
                                         "rowCheck"};

// --- the demo ------------------------------------------------------------------------------------

// What there is to see on the sheets that must be looked at (made by fixtures/velunaceae).
struct Seen {
  std::map<std::string, std::map<std::string, std::string>> characters;  // number -> character
  std::map<std::string, std::string> names;
};

Seen seen_on_sheets() {
  Seen seen;
  for (auto const& row : read_table_file(fixture("velunaceae/looked-at.csv"))) {
    if (row.at("newName").empty()) {
      seen.characters[row.at("catalogNumber")][row.at("character")] = row.at("seen");
    } else {
      seen.names[row.at("catalogNumber")] = row.at("newName");
    }
  }
  return seen;
}

// A worklist as somebody fills it in who sees what there is to see.
std::vector<Row> filled_in(std::vector<Row> rows, Seen const& seen) {
  for (auto& row : rows) {
    auto const number = row.at("catalogNumber");
    row["by"] = "Q. Z.";
    row["date"] = "2026-05-17";
    auto const name = seen.names.find(number);
    if (name != seen.names.end()) {
      row["newName"] = name->second;
    } else {
      row["answer"] = seen.characters.at(number).at(row.at("character"));
    }
  }
  return rows;
}

std::vector<std::string> demo(std::vector<std::string> const& options) {
  auto const data = fixture("velunaceae") + "/";
  std::vector<std::string> arguments{"redetermine", data + "edition-1998.txt",
                                     data + "edition-2024.txt"};
  for (auto const& option : velunaceae_options(data)) arguments.push_back(option);
  arguments.insert(arguments.end(), options.begin(), options.end());
  return arguments;
}

TEST(TakeBack, TheDemosWorklistComesBackWithThePlantedTruth) {
  Sandbox const sandbox;
  auto const seen = seen_on_sheets();
  auto const before = slurp(fixture("velunaceae/sheets.csv"));
  auto worklist = read_table(velunaceae().worklist);
  EXPECT_EQ(worklist.size(), 174U);
  std::vector<std::string> options;
  Ran ran;
  for (int round = 1; round <= 6 && !worklist.empty(); ++round) {
    auto const file = "filled-" + std::to_string(round) + ".csv";
    (void)sandbox.write(file, saved(kWorklist, filled_in(worklist, seen)));
    options.insert(options.end(), {"--take-back", file});
    auto all = options;
    all.insert(all.end(), {"--worklist", "next.csv", "--specimens", "specimens.csv",
                           "--identifications", "history.csv", "--take-back-log", "log.csv"});
    ran = run_keydrift(demo(all), sandbox.path());
    ASSERT_EQ(ran.exit, 0) << ran.err << ran.out;
    worklist = read_table_file((sandbox.path() / "next.csv").string());
  }
  EXPECT_TRUE(worklist.empty()) << worklist.size() << " sheets are still asked for something";

  std::map<std::string, Row> after;
  for (auto const& row : read_table_file((sandbox.path() / "specimens.csv").string())) {
    after[row.at("catalogNumber")] = row;
  }
  std::multiset<std::string> planted;
  std::multiset<std::string> reported;
  for (auto const& row : read_table_file(fixture("velunaceae/expected-after-looking.csv"))) {
    auto const& number = row.at("catalogNumber");
    auto const& sheet = after.at(number);
    // A genus that stands whatever species it is need not be asked further.
    auto const names = items_of(sheet.at("newScientificName"));
    bool const among =
        names.size() > 1 && sheet.at("outcome") == "stands" &&
        std::find(names.begin(), names.end(), row.at("newScientificName")) != names.end();
    planted.insert(number + " " + row.at("outcome") + " " + row.at("newScientificName"));
    reported.insert(number + " " + sheet.at("outcome") + " " +
                    (among ? row.at("newScientificName") : sheet.at("newScientificName")));
  }
  EXPECT_EQ(planted.size(), 174U);
  expect_the_same_rows(planted, reported);

  // One determination for each sheet, and the archive is as it was.
  std::set<std::string> determined;
  std::set<std::string> ids;
  for (auto const& row : read_table_file((sandbox.path() / "history.csv").string())) {
    EXPECT_TRUE(determined.insert(row.at("catalogNumber")).second) << row.at("catalogNumber");
    EXPECT_TRUE(ids.insert(row.at("identificationID")).second);
    EXPECT_EQ(row.at("identifiedBy"), "Q. Z.");
    EXPECT_EQ(row.at("dateIdentified"), "2026-05-17");
    EXPECT_EQ(row.at("identificationVerificationStatus"), "0");
    EXPECT_EQ(row.at("occurrenceID"), "urn:catalog:HLVN:VEL:" + row.at("catalogNumber").substr(4));
  }
  EXPECT_EQ(determined.size(), 174U);
  EXPECT_EQ(slurp(fixture("velunaceae/sheets.csv")), before);
}

// --- a small archive -----------------------------------------------------------------------------

constexpr char const* kSheetsLookedAt =
    "occurrenceID,catalogNumber,scientificName,storageLocation,leaf-length\n"
    "o:1,0001,Aus,C 1,\n"
    "o:2,0002,Aus,C 1,\n"
    "o:3,0003,Cus,C 2,\n"
    "o:4,0004,Aus,C 2,\n"
    "o:5,0005,Aus,C 3,3-5\n"
    "o:6,0006,Aus,C 3,\n"
    "o:7,0006,Aus,C 4,\n"
    "o:8,0008,Bus,C 5,\n"
    "o:9,0009,Aus,C 5,\n"
    "o:10,0010,Aus,C 5,\n"
    "o:11,0011,Aus,C 5,\n"
    "o:12,0012,Aus,C 5,\n";

class SmallWorklist : public testing::Test {
 protected:
  void SetUp() override { (void)sandbox_.write("sheets.csv", kSheetsLookedAt); }

  Ran take_back(std::string const& filled, std::vector<std::string> const& more = {}) {
    (void)sandbox_.write("filled.csv", filled);
    auto const editions = fixture("two-editions") + "/";
    std::vector<std::string> arguments{"redetermine",
                                       editions + "edition-a.txt",
                                       editions + "edition-b.txt",
                                       "sheets.csv",
                                       "--lexicon",
                                       editions + "lexicon.csv",
                                       "--take-back",
                                       "filled.csv",
                                       "--take-back-log",
                                       "log.csv",
                                       "--identifications",
                                       "history.csv",
                                       "--specimens",
                                       "specimens.csv"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return run_keydrift(arguments, sandbox_.path());
  }
  std::string written(char const* name) const { return slurp((sandbox_.path() / name).string()); }

  Sandbox sandbox_;
};

TEST_F(SmallWorklist, RefusesWhatCannotBeBelievedAndSaysWhy) {
  auto const ran = take_back(
      "catalogNumber;scientificName;answer;newName;by;date;remarks;character\n"
      "1;Aus;4,5 cm;;K.;17.5.2024;;leaf-length\n"
      "0002;Aus;less than 40 mm;Bus;K.;2024-05-17;label loose;leaf-length\n"
      "0003;Cus;;;;;on loan;\n"
      "0004;Aus;4 cm;Bus;K.;2024-05-17;;leaf-length\n"
      "0005;Aus;9 cm;;K.;2024-05-17;;leaf-length\n"
      "0006;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "0007;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "0008;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "0009;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "0009;Aus;6 cm;;K.;2024-05-17;;leaf-length\n"
      "0010;Aus;3 cm;;;2024-05-17;;leaf-length\n"
      "0010;Aus;3 cm;;K.;;;leaf-length\n"
      "0010;Aus;3 cm;;K.;3/4/2024;;leaf-length\n"
      "0010;Aus;long;;K.;2024-05-17;;leaf-length\n"
      "0010;Aus;red;;K.;2024-05-17;;petal\n"
      "0010;Aus;not visible;;K.;2024-05-17;;leaf-length\n"
      "1E+05;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "0011;Aus;;Dus;K.;2024-05-17;;\n"
      "0012;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "12;Aus;3 cm;;K.;2024-05-17;;leaf-length\n"
      "0011;Aus;3;x;K;2024-05-17;;leaf-length;more\n"
      ";Aus;3 cm;;K.;2024-05-17;;leaf-length\n");
  EXPECT_EQ(ran.exit, 1) << ran.err;
  std::string told;
  for (auto const& row : read_table(written("log.csv"))) {
    told += row.at("line") + " " + row.at("status");
    if (row.at("status") == "applied") told += " " + row.at("outcome");
    if (!row.at("code").empty()) told += " " + row.at("code");
    if (!row.at("reason").empty()) told += ": " + row.at("reason");
    if (!row.at("remedy").empty()) told += " (" + row.at("remedy") + ")";
    told += "\n";
  }
  EXPECT_EQ(
      told,
      "2 applied stands: the number \"1\" was taken for \"0001\"\n"
      "3 applied changes\n"
      "4 noted nothing-answered: neither an answer nor a new name is given\n"
      "5 refused name-contradicts-answer: from \"4 cm\" the key leads to Aus, not to \"Bus\" (mend "
      "the answer or the name; a name without an answer is taken as it is)\n"
      "6 refused contradicts-record: \"9 cm\" is excluded by what is recorded of the sheet (see "
      "which of the two is right, and mend the record if need be)\n"
      "7 refused several-sheets: \"0006\" stands for 2 sheets of the archive (fill in the column "
      "occurrenceID)\n"
      "8 refused unknown-sheet: the archive has no sheet \"0007\" (did you mean \"0001\", \"0002\" "
      "or \"0003\"?)\n"
      "9 refused another-name: under \"0008\" the archive has \"Bus\", not \"Aus\" (see whether "
      "the "
      "columns of the worklist were sorted apart, or the archive changed since)\n"
      "10 refused answers-contradict: it contradicts line 11 of filled.csv (look at the sheet "
      "again "
      "and keep the row that is right)\n"
      "11 refused answers-contradict: it contradicts line 10 of filled.csv (look at the sheet "
      "again "
      "and keep the row that is right)\n"
      "12 refused no-person: it is not said who looked (write a name into the column \"by\")\n"
      "13 refused no-date: it is not said when (write a day into the column \"date\")\n"
      "14 refused bad-date: \"3/4/2024\" may be two days (say --dates day-first or --dates "
      "month-first)\n"
      "15 refused unknown-answer: \"long\" is no answer about length of the leaves (write one of: "
      "less than 40 mm | at least 40 mm)\n"
      "16 refused other-question: the answer \"red\" belongs to no question about this sheet "
      "(write "
      "the name into the column \"newName\", or take a new worklist)\n"
      "17 noted not-visible: the answer \"not visible\" decides nothing\n"
      "18 refused number-lost: a spreadsheet made a power of ten of the number and wrote \"1E+05\" "
      "(format the column as text before the worklist is opened, and write the number again)\n"
      "19 refused misspelt-name: the new edition has no \"Dus\" (did you mean \"Aus\", \"Bus\" or "
      "\"Cus\"?)\n"
      "20 applied changes\n"
      "21 refused entered-twice: it says the same as line 20 of filled.csv\n"
      "22 refused unreadable-row: the row has 9 cells where the header has 8 (mend the row in the "
      "spreadsheet; its bytes are in the column remarks)\n"
      "23 refused no-number: the row does not say which sheet is meant (fill in the column "
      "catalogNumber or occurrenceID)\n");
  EXPECT_EQ(
      written("history.csv"),
      "occurrenceID,catalogNumber,identificationID,verbatimIdentification,scientificName,"
      "scientificNameAuthorship,identifiedBy,dateIdentified,identificationReferences,"
      "nameAccordingTo,identificationVerificationStatus,identificationRemarks\n"
      "o:1,0001,urn:uuid:5d413148-2d00-52ff-87e2-faf29d9ee65a,,Aus,,K.,2024-05-17,\"The smallest "
      "pair of editions that disagree, edition B\",\"The smallest pair of editions that disagree, "
      "edition B\",0,\"looked at length of the leaves: 4,5 cm; before: Aus; by the key: 1b, 2a\"\n"
      "o:2,0002,urn:uuid:40354241-5e48-5877-8b0f-a6ec73da9740,Bus,Bus,,K.,2024-05-17,\"The "
      "smallest pair of editions that disagree, edition B\",\"The smallest pair of editions that "
      "disagree, edition B\",0,looked at length of the leaves: less than 40 mm; named by the "
      "person; before: Aus; label loose; by the key: 1a\n"
      "o:12,0012,urn:uuid:10c9e74f-4413-53be-8e21-ae42b2d094f2,,Bus,,K.,2024-05-17,\"The smallest "
      "pair of editions that disagree, edition B\",\"The smallest pair of editions that disagree, "
      "edition B\",0,looked at length of the leaves: 3 cm; before: Aus; by the key: 1a\n");
  EXPECT_EQ(written("sheets.csv"), kSheetsLookedAt);
}

TEST_F(SmallWorklist, IsUnderstoodHoweverASpreadsheetSavedIt) {
  std::vector<Row> rows;
  for (auto const* number : {"0001", "0002", "0009"}) {
    rows.push_back({{"catalogNumber", number},
                    {"scientificName", "Aus"},
                    {"answer", "3.5 cm"},
                    {"by", "K."},
                    {"date", "2024-05-17"},
                    {"character", "leaf-length"}});
  }
  ASSERT_EQ(take_back(saved(kWorklist, rows)).exit, 0);
  auto const plain = written("history.csv");
  std::filesystem::remove(sandbox_.path() / "history.csv");
  rows[0]["catalogNumber"] = "1";
  rows[1]["catalogNumber"] = "2,00";
  for (auto& row : rows) row["answer"] = "3,5 cm";
  rows[0]["date"] = "17.05.2024";
  rows[1]["date"] = "45429";
  rows[2]["date"] = "5/17/2024";
  auto columns = kWorklist;
  std::reverse(columns.begin(), columns.end());
  auto const ran = take_back(
      saved(columns, rows, {.separator = ';', .line_end = "\r\n", .mark = "\xEF\xBB\xBF"}));
  ASSERT_EQ(ran.exit, 0) << ran.out << ran.err;
  // Only the ids differ, which are made of what was written.
  auto const without_ids = [](std::string const& text) {
    std::string left;
    for (auto row : read_table(text)) {
      row["identificationID"].clear();
      for (auto const& [column, cell] : row) left += cell + "|";
      left += "\n";
    }
    return left;
  };
  EXPECT_EQ(without_ids(replaced(written("history.csv"), "3,5 cm", "3.5 cm")), without_ids(plain));

  // "Unicode text": tabs and UTF-16 with its mark.
  std::filesystem::remove(sandbox_.path() / "history.csv");
  auto const tabbed = saved(columns, rows, {.separator = '\t', .line_end = "\r\n", .mark = ""});
  std::string wide = "\xFF\xFE";
  for (char const c : tabbed) wide += {c, '\0'};
  auto const again = take_back(wide);
  ASSERT_EQ(again.exit, 0) << again.out << again.err;
  EXPECT_EQ(without_ids(replaced(written("history.csv"), "3,5 cm", "3.5 cm")), without_ids(plain));
}

// The worklist of the small archive, all rows answered alike.
std::vector<Row> answered(std::string const& worklist) {
  auto rows = read_table(worklist);
  for (auto& row : rows) {
    row["answer"] = "3 cm";
    row["by"] = "K.";
    row["date"] = "2024-05-17";
  }
  return rows;
}

// One column by itself, in descending order, so that every cell comes to another row.
void sort_column(std::vector<Row>& rows, std::string const& column) {
  std::vector<std::string> cells;
  for (auto const& row : rows) cells.push_back(row.at(column));
  std::sort(cells.rbegin(), cells.rend());
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i][column] = cells[i];
}

TEST_F(SmallWorklist, SeesByTheLettersOfItsRowsWhenAColumnWasSortedByItself) {
  (void)sandbox_.write("sheets.csv",
                       "catalogNumber,scientificName,storageLocation\n"
                       "0001,Aus,C 1\n0002,Aus,C 1\n0003,Aus,C 2\n0012,Aus,C 3\n");
  ASSERT_EQ(take_back("catalogNumber,answer,by,date\n", {"--worklist", "worklist.csv"}).exit, 0);
  auto const rows = answered(written("worklist.csv"));
  ASSERT_EQ(rows.size(), 4U);
  auto const history = [&](std::vector<Row> const& some, std::vector<std::string> const& columns) {
    std::filesystem::remove(sandbox_.path() / "history.csv");
    auto const ran = take_back(saved(columns, some));
    std::multiset<std::string> numbers;
    for (auto const& row : read_table(written("history.csv"))) {
      numbers.insert(row.at("catalogNumber"));
    }
    return std::pair{ran, numbers};
  };
  std::multiset<std::string> const all{"0001", "0002", "0003", "0012"};

  // Whole rows in another order, some of them gone, and what a spreadsheet does to numbers.
  auto otherwise = rows;
  std::reverse(otherwise.begin(), otherwise.end());
  auto const [sorted, of_sorted] = history(otherwise, kWorklist);
  EXPECT_EQ(sorted.exit, 0) << sorted.out;
  EXPECT_EQ(sorted.err, "");
  EXPECT_EQ(of_sorted, all);
  otherwise.erase(otherwise.begin() + 1);
  otherwise[0]["catalogNumber"] = "12";
  otherwise[1]["catalogNumber"] = "2.0";
  otherwise[1]["question"] = replaced(otherwise[1]["question"], "→", "?");
  otherwise[2]["rowCheck"][0] = static_cast<char>(otherwise[2]["rowCheck"][0] - 'A' + 'a');
  auto const [fewer, of_fewer] = history(otherwise, kWorklist);
  EXPECT_EQ(fewer.exit, 0) << fewer.out;
  EXPECT_EQ(of_fewer, (std::multiset<std::string>{"0001", "0002", "0012"}));

  // One column without the others: nothing is taken from a row that it touched.
  for (auto const* column : {"catalogNumber", "rowCheck"}) {
    auto parted = rows;
    sort_column(parted, column);
    std::multiset<std::string> untouched;
    std::string codes;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      bool const same = parted[i].at(column) == rows[i].at(column);
      if (same) untouched.insert(rows[i].at("catalogNumber"));
      codes += same ? "|" : "row-check|";
    }
    auto const [ran, of_parted] = history(parted, kWorklist);
    EXPECT_EQ(ran.exit, 1) << column;
    EXPECT_EQ(of_parted, untouched) << column;
    EXPECT_LT(untouched.size(), 3U) << column;
    std::string told;
    for (auto const& row : read_table(written("log.csv"))) told += row.at("code") + "|";
    EXPECT_EQ(told, codes) << column;
  }
  auto renamed = rows;
  renamed[1]["question"] = "look at something else";
  auto const [ran, of_renamed] = history(renamed, kWorklist);
  EXPECT_EQ(ran.exit, 1);
  EXPECT_EQ(of_renamed, (std::multiset<std::string>{"0001", "0003", "0012"}));
  auto const place = ran.out.find("  filled.csv:3:");
  ASSERT_NE(place, std::string::npos) << ran.out;
  // The last cell of its line, of which columns count characters.
  auto const line = saved(kWorklist, {renamed[1]}).substr(saved(kWorklist, {}).size());
  auto const characters =
      std::count_if(line.begin(), line.end(), [](char c) { return (c & '\xC0') != '\x80'; });
  EXPECT_EQ(ran.out.substr(place),
            "  filled.csv:3:" + std::to_string(characters - 6) + " 0002 [row-check]\n" +
                "      \"" + rows[1].at("rowCheck") +
                "\" in the column \"rowCheck\" does not belong to the sheet, the name\n"
                "      and the question of the row\n"
                "      if a column was sorted without the others, fill in a new worklist; if a\n"
                "      cell was changed, put back what it said\n");

  // Worklists that have no such column, or not all that its letters were made of.
  auto without = kWorklist;
  std::erase(without, "rowCheck");
  auto const [older, of_older] = history(rows, without);
  EXPECT_EQ(older.exit, 0) << older.out;
  EXPECT_EQ(of_older, all);
  EXPECT_EQ(older.err,
            "filled.csv:1:1: information: the first row has no column \"rowCheck\", so nothing "
            "tells whether a column was sorted without the others [no-row-check]\n"
            "  worklists that are written now have it; this one is taken as it is\n");
  without = kWorklist;
  std::erase(without, "question");
  auto const [shorter, of_shorter] = history(rows, without);
  EXPECT_EQ(shorter.exit, 0) << shorter.out;
  EXPECT_EQ(of_shorter, all);
  EXPECT_EQ(shorter.err,
            "filled.csv:1:1: information: the column \"rowCheck\" cannot be used without "
            "\"question\", so nothing tells whether a column was sorted without the others "
            "[no-row-check]\n"
            "  give the worklist back with all its columns; this one is taken as it is\n");
}

TEST_F(SmallWorklist, AddsToTheHistoryAndOverwritesNothing) {
  std::string const header =
      "catalogNumber,scientificName,answer,newName,by,date,remarks,character\n";
  std::string const first = "0001,Aus,3 cm,,K.,2024-05-17,,leaf-length\n";
  ASSERT_EQ(take_back(header + first).exit, 0);
  auto const once = written("history.csv");
  ASSERT_EQ(take_back(header + first).exit, 0);
  EXPECT_EQ(written("history.csv"), once) << "the same answer is no second determination";
  ASSERT_EQ(take_back(header + first + "0002,Aus,6 cm,,L.,2024-05-18,,leaf-length\n").exit, 0);
  auto const twice = written("history.csv");
  EXPECT_EQ(twice.substr(0, once.size()), once);
  EXPECT_EQ(read_table(twice).size(), 2U);

  (void)sandbox_.write("history.csv", "a,b\n1,2\n");
  auto const refused = take_back(header + first);
  EXPECT_EQ(refused.exit, 4);
  EXPECT_NE(refused.err.find("[other-columns]"), std::string::npos) << refused.err;
  EXPECT_EQ(written("history.csv"), "a,b\n1,2\n");
}

TEST_F(SmallWorklist, TakesANameWithoutAnAnswerForADetermination) {
  ASSERT_EQ(take_back("catalogNumber,answer,newName,by,date\n"
                      "0001,,Bus,K.,2024-05-17\n"
                      "0008,,Xerus longus,K.,2024-05-17\n")
                .exit,
            0);
  std::map<std::string, Row> sheets;
  for (auto const& row : read_table(written("specimens.csv"))) {
    sheets[row.at("catalogNumber")] = row;
  }
  EXPECT_EQ(sheets.at("0001").at("outcome"), "changes");
  EXPECT_EQ(sheets.at("0001").at("newScientificName"), "Bus");
  auto const history = read_table(written("history.csv"));
  ASSERT_EQ(history.size(), 2U);
  EXPECT_EQ(history[1].at("scientificName"), "Xerus longus");
  EXPECT_EQ(history[1].at("identificationRemarks"),
            "named by the person; before: Bus; the name is not in the edition");
}

}  // namespace
}  // namespace keydrift::test

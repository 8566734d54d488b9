// Heads, feet, numbers and stamps of pages that stand between the lines of leads.

#include "keydrift/formats/printed_lines_of_pages.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <cstddef>
#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::all_with;
using test::findings_of;
using test::line_kinds;
using test::sketch;

constexpr auto kThree =
    "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n"
    "2[2] Lip thin and white -> Aus cus\n2[–] Lip thick -> Aus dus\n";

// The line stands between "and" and "white".
std::string parted(std::string const& line) {
  return "1. Shell smooth ..... 2\n– Shell ribbed ..... Aus bus\n2. Lip thin and\n" + line +
         "\nwhite ..... Aus cus\n– Lip thick ..... Aus dus\n";
}

constexpr auto kSerial =
    "1[1] Shell smooth -> 2\n1[4] Shell ribbed -> 5\n2[2] Lip thin -> Aus bus\n"
    "2[3] Lip thick -> Aus cus\n5[5] Foot pale -> Aus dus\n5[6] Foot dark -> 7\n"
    "7[7] Apex blunt -> Aus eus\n7[8] Apex sharp -> Aus fus\n";

// The line stands behind a lead that prints no destination.
std::string serial(std::string const& line) {
  return "Key to Aus\n\n1 (4) Shell smooth\n2 (3) Lip thin ..... Aus bus\n"
         "3 (2) Lip thick ..... Aus cus\n4 (1) Shell ribbed\n" +
         line +
         "\n5 (6) Foot pale ..... Aus dus\n6 (5) Foot dark\n7 (8) Apex blunt ..... Aus eus\n"
         "8 (7) Apex sharp ..... Aus fus\n";
}

std::string indented(std::string const& line) {
  return "Key to Aus\n\n1. Shell smooth\n   2. Lip thin ..... Aus bus\n   2. Lip thick ..... Aus "
         "cus\n1. Shell ribbed\n" +
         line +
         "\n   3. Foot pale ..... Aus dus\n   3. Foot dark\n      4. Apex blunt ..... Aus eus\n"
         "      4. Apex sharp ..... Aus fus\n";
}

TEST(PrintedLinesOfPages, LeavesStampsOutOfLeads) {
  for (auto const* stamp :
       {"This content downloaded from 192.0.2.7 on Sat, 12 Sep 2020 10:12:44 UTC",
        "All use subject to https://marsh.example/terms", "Digitized by Marsh Books",
        "Downloaded from marsh.example11/23/2020 08:13:55PM",
        "Downloaded From: https://marsh.example/7 on 12 Sep 2020", "[Plate 4 near here]",
        "Table 2 about here", "(insert Figs. 3-5 here)", "PLATE IV"}) {
    EXPECT_EQ(sketch(parted(stamp)), kThree) << stamp;
    EXPECT_EQ(line_kinds(parted(stamp)), "lead, lead, lead, running head, continuation, lead")
        << stamp;
  }
}

TEST(PrintedLinesOfPages, KnowsStampsWhereverTheyStand) {
  auto const text =
      "1. Shell smooth 2\n– Shell ribbed Aus bus\nDownloaded from marsh.example 08:13:55PM\n"
      "via free access\n2. Lip thin Aus cus\n– Lip thick Aus dus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n2[2] Lip thin -> Aus cus\n"
            "2[–] Lip thick -> Aus dus\n");
  EXPECT_EQ(line_kinds(text), "lead, lead, running head, running head, lead, lead");
}

TEST(PrintedLinesOfPages, TellsWhatItLeftOut) {
  auto const findings = findings_of(parted("Digitized by Marsh Books"));
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_NE(findings[0].find("1 line was kept nowhere: 1 running head"), std::string::npos)
      << findings[0];
}

TEST(PrintedLinesOfPages, KeepsSentencesThatOnlyBeginLikeStamps) {
  auto const text = "Downloaded from the museum in 2010, the key was set anew.\n\n" +
                    parted("Digitized by hand in the year of the flood,");
  EXPECT_EQ(line_kinds(text), "note, blank, lead, lead, lead, continuation, continuation, lead");
}

TEST(PrintedLinesOfPages, LeavesHeadsAndFeetOutOfLeads) {
  for (auto const* head : {"118          Morrow & Fentz", "118   Bulletin of the Marsh Museum",
                           "Ann. Marsh. Mus. 14: 112 (1998)", "Marsh Studies 14(2): 112-118, 1998",
                           "[Vol. 14, No. 2]", "\n[Vol. 14, No. 2]\n", "MORROW: Revision of Aus",
                           "\f118     Morrow & Fentz", "—— 114 ——"}) {
    EXPECT_EQ(sketch(parted(head)), kThree) << head;
  }
  EXPECT_EQ(line_kinds(parted("\n[Vol. 14, No. 2]\n")),
            "lead, lead, lead, blank, running head, blank, continuation, lead");
  EXPECT_EQ(line_kinds(parted("—— 114 ——")), "lead, lead, lead, page number, continuation, lead");
}

TEST(PrintedLinesOfPages, LeavesHeadsOutBehindLeadsThatPrintNoDestination) {
  for (auto const* head : {"118          Morrow & Fentz", "118   Bulletin of the Marsh Museum",
                           "Ann. Marsh. Mus. 14: 112 (1998)", "PLATE IV"}) {
    EXPECT_EQ(sketch(serial(head)), kSerial) << head;
    EXPECT_EQ(sketch(indented(head)),
              "1[1] Shell smooth -> 2\n1[1] Shell ribbed -> 3\n2[2] Lip thin -> Aus bus\n"
              "2[2] Lip thick -> Aus cus\n3[3] Foot pale -> Aus dus\n3[3] Foot dark -> 4\n"
              "4[4] Apex blunt -> Aus eus\n4[4] Apex sharp -> Aus fus\n")
        << head;
  }
}

TEST(PrintedLinesOfPages, KnowsTheGenusOfAKeyAsItsHead) {
  auto const text = all_with(serial("118   Aussa"), "Aus ", "Aussa ");
  EXPECT_EQ(sketch(text), all_with(kSerial, "Aus ", "Aussa "));
}

TEST(PrintedLinesOfPages, KnowsAFootByItsShapeAgain) {
  auto const text =
      "A. Shell smooth\n  B. Lip thin ..... Aus bus\n  B'. Lip thick ..... Aus cus\n"
      "A'. Shell ribbed, but\nAnn. Marsh. Mus. 14: 112 (1998)\n    dull\n"
      "  B. Foot pale ..... Aus dus\n  B'. Foot dark ..... Aus eus\n"
      "Ann. Marsh. Mus. 14: 113 (1998)\n";
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, lead, running head, continuation, lead, lead, running head");
}

TEST(PrintedLinesOfPages, KeepsALeadsOwnWords) {
  // What the lead's words may be: a place, a plate that the sentence names, a genus with its
  // number.
  for (auto const* words : {"North America and", "Plate IV, fig. 3, and", "12 Tergites and"}) {
    EXPECT_EQ(line_kinds(parted(words)), "lead, lead, lead, continuation, continuation, lead")
        << words;
  }
  EXPECT_EQ(line_kinds(serial("118   Gus")).find("running head"), std::string::npos);
  // The number of the species that a lead leads to.
  auto const numbered =
      "1. Shell smooth     2\n1. Shell ribbed     No. 3\n2. Lip thin and long, or as long as the\n"
      "                    No. 2\n2. Lip thick     No. 1\n";
  EXPECT_EQ(line_kinds(numbered), "lead, lead, lead, destination, lead");
}

TEST(PrintedLinesOfPages, KeepsWhatLeadsSayBehindAWordInCapitals) {
  for (auto const* words :
       {"MALE: Lip red, with", "FEMALES: Lip as long as in Aus,", "HEAD: Eyes large"}) {
    EXPECT_EQ(line_kinds(parted(words)), "lead, lead, lead, continuation, continuation, lead")
        << words;
  }
}

// A file of nothing but what an archive stamps on its pages.
TEST(PrintedLinesOfPages, TakesNoLongerOverStampsThanThereAreOfThem) {
  std::string stamps;
  for (std::size_t i = 0; i < 60'000; ++i) stamps += "Downloaded from marsh.example\n";
  auto const begin = std::chrono::steady_clock::now();
  EXPECT_EQ(sketch(parted(stamps)), kThree);
  EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds{10});
}

// Each head has a name of its own, which the text is searched for.
TEST(PrintedLinesOfPages, SearchesTheTextOnceForWhatHeadsName) {
  std::string text;
  for (std::size_t i = 1; i <= 40'000; ++i) {
    auto const number = std::to_string(i);
    text += number + ". Shell smooth and\n";
    if (i > 3) {
      text += "GUS";
      for (auto const digit : number) text += static_cast<char>(digit - '0' + 'A');
      text += "           " + std::to_string(90'000 + i) + "\n";
    }
    text += number + ". Shell ribbed and\n";
  }
  auto lines = printed::split_lines(text);
  auto const begin = std::chrono::steady_clock::now();
  EXPECT_TRUE(printed::take_out_lines_of_pages(lines).empty());
  EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds{10});
}

TEST(PrintedLinesOfPages, AreNotColonsWithoutWordsBeforeThem) {
  EXPECT_EQ(line_kinds("1. Shell smooth, or as smooth as\n: The Shells\nany other ..... 2\n"
                       "– Shell ribbed ..... Gusella busa\n2. Lip thin ..... Gusella cusa\n"
                       "– Lip thick ..... Gusella dusa\n"),
            "lead, continuation, continuation, lead, lead, lead");
}

}  // namespace
}  // namespace keydrift

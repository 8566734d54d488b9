// Wrapped lines that begin as leads or captions do.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

// A small key whose first lead is `lead`, whose second one `rival`.
std::string key_of(std::string_view lead, std::string_view rival = "– Legs black ...... A. dusa") {
  return "Key to the species of Ausella\n\n" + std::string{lead} + "\n" + std::string{rival} +
         "\n2. Eyes red ...... A. cusa\n– Eyes black ...... A. fusa\n";
}

std::string read_as(std::string_view words, std::string_view rival = "Legs black -> Ausella dusa") {
  return "1[1] " + std::string{words} + "\n1[–] " + std::string{rival} +
         "\n2[2] Eyes red -> Ausella cusa\n2[–] Eyes black -> Ausella fusa\n";
}

TEST(PrintedWrappedLines, NumbersBehindWordsThatEndNoSentence) {
  EXPECT_EQ(sketch(key_of("1. Legs red; spots on tergites 1 and\n2. Hind legs long ...... 2")),
            read_as("Legs red; spots on tergites 1 and 2. Hind legs long -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red; segment 1 shorter than\n   2. legs long ...... 2")),
            read_as("Legs red; segment 1 shorter than 2. legs long -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red; spots on tergites 1 and\n3. Hind legs long ...... 2")),
            read_as("Legs red; spots on tergites 1 and 3. Hind legs long -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red ...... 2",
                          "– Legs black; spots on tergites 1,\n2. Hind legs long ...... A. dusa")),
            read_as("Legs red -> 2",
                    "Legs black; spots on tergites 1, 2. Hind legs long -> Ausella dusa"));
}

TEST(PrintedWrappedLines, NumbersAmongRepeatedLabels) {
  EXPECT_EQ(sketch("1. Legs red; spots on tergites 1 and\n"
                   "2. Hind legs long ...... 2\n"
                   "1. Legs black ...... Ausella dusa\n"
                   "2. Eyes red ...... Ausella cusa\n"
                   "2. Eyes black ...... Ausella fusa\n"),
            "1[1] Legs red; spots on tergites 1 and 2. Hind legs long -> 2\n"
            "1[1] Legs black -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[2] Eyes black -> Ausella fusa\n");
  EXPECT_EQ(sketch("1a. Legs red; spots on tergites 1 and\n"
                   "2. Hind legs long ...... 2\n"
                   "1b. Legs black ...... Ausella dusa\n"
                   "2a. Eyes red ...... Ausella cusa\n"
                   "2b. Eyes black ...... Ausella fusa\n"),
            "1[1a] Legs red; spots on tergites 1 and 2. Hind legs long -> 2\n"
            "1[1b] Legs black -> Ausella dusa\n"
            "2[2a] Eyes red -> Ausella cusa\n"
            "2[2b] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, NumbersThatLeaveNoWordsToALead) {
  EXPECT_EQ(sketch("1 Head ending before tergite\n"
                   "2 ..... 2\n"
                   "- Head longer ..... Ausella dusa\n"
                   "2 Eyes red; head as long as article\n"
                   "3 ..... Ausella cusa\n"
                   "- Eyes black ..... 3\n"
                   "3 Wings clear ..... Ausella fusa\n"
                   "- Wings dark ..... Ausella gusa\n"),
            "1[1] Head ending before tergite 2 -> 2\n"
            "1[-] Head longer -> Ausella dusa\n"
            "2[2] Eyes red; head as long as article 3 -> Ausella cusa\n"
            "2[-] Eyes black -> 3\n"
            "3[3] Wings clear -> Ausella fusa\n"
            "3[-] Wings dark -> Ausella gusa\n");
}

TEST(PrintedWrappedLines, RangesAndFormulas) {
  for (auto const formula : {"2 – 3", "1 + 2", "1 : 2"}) {
    auto const words = std::string{formula};
    EXPECT_EQ(sketch("1 Black marks on segments\n" + words +
                     " ...... 2\n"
                     "– Marks absent ...... Ausella dusa\n"
                     "2 Eyes red ...... Ausella cusa\n"
                     "– Eyes black ...... Ausella fusa\n"),
              "1[1] Black marks on segments " + words +
                  " -> 2\n"
                  "1[–] Marks absent -> Ausella dusa\n"
                  "2[2] Eyes red -> Ausella cusa\n"
                  "2[–] Eyes black -> Ausella fusa\n");
  }
}

TEST(PrintedWrappedLines, VeinsAndTimes) {
  EXPECT_EQ(sketch(key_of("1. Hind wing with veins\n1A and 2A joined ...... 2")),
            read_as("Hind wing with veins 1A and 2A joined -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red; head about\n2x as long as wide ...... 2")),
            read_as("Legs red; head about 2x as long as wide -> 2"));
}

TEST(PrintedWrappedLines, NumbersThatCloseABracket) {
  EXPECT_EQ(sketch(key_of("1. Legs red (Figs 1,\n2) ...... 2")),
            read_as("Legs red (Figs 1, 2) -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red, tooth (T\n2) large ...... 2")),
            read_as("Legs red, tooth (T 2) large -> 2"));
}

TEST(PrintedWrappedLines, RangesBrokenAtTheirDash) {
  EXPECT_EQ(sketch(key_of("1. Legs red; body length 3.0\n– 3.5 mm ...... 2")),
            read_as("Legs red; body length 3.0 – 3.5 mm -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red ...... 2",
                          "– Legs black; body length 3.0\n– 3.5 mm ...... A. dusa")),
            read_as("Legs red -> 2", "Legs black; body length 3.0 – 3.5 mm -> Ausella dusa"));
  EXPECT_EQ(sketch("1a. Legs red; body length 3.0\n"
                   "– 3.5 mm ...... 2\n"
                   "1b. Legs black ...... Ausella dusa\n"
                   "2a. Eyes red ...... Ausella cusa\n"
                   "2b. Eyes black ...... Ausella fusa\n"),
            "1[1a] Legs red; body length 3.0 – 3.5 mm -> 2\n"
            "1[1b] Legs black -> Ausella dusa\n"
            "2[2a] Eyes red -> Ausella cusa\n"
            "2[2b] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, FiguresBeforeABlankLine) {
  for (auto const figure : {"Fig. 8", "Figs 3, 5", "figs. 40–42", "Pl. 3, fig. 2", "Map 3"}) {
    auto const words = std::string{figure};
    EXPECT_EQ(sketch("1. Legs red ...... 2\n"
                     "– Legs black; head as in\n" +
                     words +
                     " ...... Ausella dusa\n"
                     "\n"
                     "2. Eyes red ...... Ausella cusa\n"
                     "– Eyes black ...... Ausella fusa\n"),
              "1[1] Legs red -> 2\n"
              "1[–] Legs black; head as in " +
                  words +
                  " -> Ausella dusa\n"
                  "2[2] Eyes red -> Ausella cusa\n"
                  "2[–] Eyes black -> Ausella fusa\n")
        << words;
  }
}

// --- lines that begin so by right ----------------------------------------------------------------

TEST(PrintedWrappedLines, ACaptionThatPartsALead) {
  EXPECT_EQ(sketch("1. Legs red ...... 2\n"
                   "– Legs black; head longer\n"
                   "Fig. 8. Head of a male.\n"
                   "\n"
                   "than wide ...... Ausella dusa\n"
                   "2. Eyes red ...... Ausella cusa\n"
                   "– Eyes black ...... Ausella fusa\n"),
            "1[1] Legs red -> 2\n"
            "1[–] Legs black; head longer than wide -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, LeadsWithCoupletsBeneathThem) {
  EXPECT_EQ(sketch("1. Legs red, more than in\n"
                   "  2. Eyes red ...... Ausella cusa\n"
                   "  2. Eyes black ...... Ausella fusa\n"
                   "1. Legs black\n"
                   "  3. Wings clear, shorter\n"
                   "    4. Tail long ...... Ausella gusa\n"
                   "    4. Tail short ...... Ausella husa\n"
                   "  3. Wings dark ...... Ausella dusa\n"),
            "1[1] Legs red, more than in -> 2\n"
            "1[1] Legs black -> 3\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[2] Eyes black -> Ausella fusa\n"
            "3[3] Wings clear, shorter -> 4\n"
            "3[3] Wings dark -> Ausella dusa\n"
            "4[4] Tail long -> Ausella gusa\n"
            "4[4] Tail short -> Ausella husa\n");
}

TEST(PrintedWrappedLines, LeadsThatBeginWithNumbers) {
  EXPECT_EQ(sketch("1. Stamens 5\n"
                   "  2. Eyes red ...... Ausella cusa\n"
                   "  – Eyes black ...... Ausella fusa\n"
                   "– 10 stamens ...... Ausella dusa\n"),
            "1[1] Stamens 5 -> 2\n"
            "1[–] 10 stamens -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, AHeadThatPartsALead) {
  EXPECT_EQ(sketch("1. Legs red; spots on tergites 1 and\n"
                   "2  ROE: MARSH FLIES\n"
                   "3; eyes red ...... 2\n"
                   "– Legs black ...... Ausella dusa\n"
                   "\n"
                   "4  ROE: MARSH FLIES\n"
                   "\n"
                   "2. Eyes red ...... Ausella cusa\n"
                   "– Eyes black ...... Ausella fusa\n"),
            "1[1] Legs red; spots on tergites 1 and 3; eyes red -> 2\n"
            "1[–] Legs black -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift

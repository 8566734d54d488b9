// Blank lines that part nothing.

#include <gtest/gtest.h>

#include <string_view>
#include <vector>

#include "keydrift/formats/printed_spacing.hpp"
#include "printed_support.hpp"

namespace keydrift::printed {
namespace {

using Numbers = std::vector<std::uint32_t>;

Numbers stray_blanks(std::string_view text, StrayBlanks which) {
  auto const closer = without_stray_blanks(split_lines(text), which);
  return closer ? closer->taken : Numbers{};
}

constexpr std::string_view kTextLayer =
    "Key to the species of Ausella\n"  // 1
    "\n"
    "1. Wings dark, with a white spot at the base and\n"
    "\n"
    "two behind it ... 2\n"
    "\n"
    "Wings clear .. A. busa\n"
    "\n"
    "2. Spores dark, spinulose, often\n"
    "\n"
    "\n"
    "I0-12 mm wide .. A. cusa\n"  // 12
    "\n"
    "Spores pale, hardly wider than\n"
    "\n"
    "the stalk, as in\n"
    "\n"
    "most others .. A. dusa\n"  // 18
    "\n"
    "Genus BUSELLA Roe\n"
    "\n"
    "AUSELLA 33\n";

TEST(PrintedStrayBlanks, BeforeSmallLettersLinesGoOn) {
  EXPECT_EQ(stray_blanks(kTextLayer, StrayBlanks::before_small_letters), (Numbers{4, 15, 17}));
}

TEST(PrintedStrayBlanks, BeforeOtherLinesTheyGoOnWhereNoLeadAboveEnds) {
  EXPECT_EQ(stray_blanks(kTextLayer, StrayBlanks::before_unnumbered), (Numbers{4, 10, 11, 15, 17}));
}

TEST(PrintedStrayBlanks, AFewWrappedLinesMayBeAnythingElse) {
  EXPECT_EQ(stray_blanks("Key to the species of Ausella\n"
                         "\n"
                         "1. Wings dark, with a white spot and\n"
                         "\n"
                         "two behind it ... 2\n"
                         "— Wings clear .. A. busa\n",
                         StrayBlanks::before_small_letters),
            Numbers{});
}

TEST(PrintedStrayBlanks, NamesBetweenBlankLinesAreNoAccounts) {
  EXPECT_EQ(
      test::sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Legs red; antennae as long as the body, the third joint the longest\n"
                   "\n"
                   "Ausella busa Roe\n"
                   "\n"
                   "Legs black; antennae shorter than the body, the third joint short 2\n"
                   "\n"
                   "2. Head smooth and shining, without punctures between the eyes\n"
                   "\n"
                   "Ausella cusa Roe\n"
                   "\n"
                   "Head pitted, opaque, with coarse punctures between the eyes 3\n"
                   "\n"
                   "3. Wings clear, the veins dark brown\n"
                   "\n"
                   "Ausella dusa Roe\n"
                   "\n"
                   "Wings smoky, the veins black\n"
                   "\n"
                   "Ausella fusa Roe\n"),
      "1[1] Legs red; antennae as long as the body, the third joint the longest -> Ausella busa\n"
      "1[] Legs black; antennae shorter than the body, the third joint short -> 2\n"
      "2[2] Head smooth and shining, without punctures between the eyes -> Ausella cusa\n"
      "2[] Head pitted, opaque, with coarse punctures between the eyes -> 3\n"
      "3[3] Wings clear, the veins dark brown -> Ausella dusa\n"
      "3[] Wings smoky, the veins black -> Ausella fusa\n");
}

TEST(PrintedStrayBlanks, AccountsBeneathLeadsStay) {
  EXPECT_EQ(test::sketch("KEY TO THE SPECIES OF AUSELLA\n"
                         "\n"
                         "A. Legs red; antennae as long as the body.\n"
                         "\n"
                         "1. Ausella busa Roe\n"
                         "\n"
                         "Length 4 mm. Black, the legs red, the wings clear with a dark spot.\n"
                         "\n"
                         "Fens and bogs, common.\n"
                         "\n"
                         "AA. Legs black; antennae shorter than the body.\n"
                         "\n"
                         "B. Head smooth.\n"
                         "\n"
                         "2. Ausella cusa Roe\n"
                         "\n"
                         "Length 5 mm. Brown, the legs black.\n"
                         "\n"
                         "On heaths; rare.\n"
                         "\n"
                         "BB. Head pitted.\n"
                         "\n"
                         "3. Ausella dusa Dorn\n"
                         "\n"
                         "Length 3 mm. Brown, with pits.\n"
                         "\n"
                         "In dunes.\n"),
            "A[A] Legs red; antennae as long as the body. -> Ausella busa\n"
            "A[AA] Legs black; antennae shorter than the body. -> B\n"
            "B[B] Head smooth. -> Ausella cusa\n"
            "B[BB] Head pitted. -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift::printed

// Marks that are no part of the key and are left out before it is read.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::sketch;

TEST(PrintedClearedMarks, ADashBeforeTheNumberOfACoupletIsNone) {
  auto const text =
      "— 1. Thorax rayé . . . . . 2.\n"
      "— Thorax uni . . . . . 3.\n"
      "— 2. Yeux petits . . . . . 1. marginata ROE.\n"
      "— Yeux grands . . . . . 2. alpigena DORN.\n"
      "— 3. ♂ : apophyse bifide . . . . . 3. paludis ROE.\n"
      "— Pattes pâles . . . . . 4.\n"
      "— 4. Abdomen noir . . . . . 4. nigra ROE.\n"
      "— Abdomen gris . . . . . 5. lurida DORN.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Thorax rayé -> 2\n"
            "1[—] Thorax uni -> 3\n"
            "2[2] Yeux petits -> marginata\n"
            "2[—] Yeux grands -> alpigena\n"
            "3[3] ♂ : apophyse bifide -> paludis\n"
            "3[—] Pattes pâles -> 4\n"
            "4[4] Abdomen noir -> nigra\n"
            "4[—] Abdomen gris -> lurida\n");
  EXPECT_NE(findings_of(text).front().find("dashed-numbers"), std::string::npos);
}

TEST(PrintedClearedMarks, ADashBeforeANumberThatDoesNotCountStays) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n"
                   "– 1. Vein long ..... Aus bus\n"
                   "2. Legs pale ..... Aus cus\n"
                   "– 2. Joint long ..... Aus dus\n"),
            "1[1] Wings clear -> 2\n"
            "1[–] 1. Vein long -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n"
            "2[–] 2. Joint long -> Aus dus\n");
}

TEST(PrintedClearedMarks, LowLinesThatUnderlineAreLeftOut) {
  auto const text =
      "1a. Fronds simple ..... 2\n"
      "1b. Fronds divided ..... _A. busa_ Roe\n"
      "2a. Tip rooting\n"
      "     . . . . . . . . . . . _A. vivipara_ Roe\n"
      "2b. Tip blunt\n"
      "     . . . . . . . . . . . A. rigens_ Dorn\n";
  EXPECT_EQ(sketch(text),
            "1[1a] Fronds simple -> 2\n"
            "1[1b] Fronds divided -> A. busa\n"
            "2[2a] Tip rooting -> A. vivipara\n"
            "2[2b] Tip blunt -> A. rigens\n");
  EXPECT_NE(findings_of(text).front().find("underlined-words"), std::string::npos);
}

TEST(PrintedClearedMarks, RowsOfLowLinesStayLeaders) {
  EXPECT_EQ(sketch("1. Wings clear____2\n1. Wings dark____A. busa\n"
                   "2. Legs pale____A. cusa\n2. Legs dark____A. dusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[1] Wings dark -> A. busa\n"
            "2[2] Legs pale -> A. cusa\n"
            "2[2] Legs dark -> A. dusa\n");
}

}  // namespace
}  // namespace keydrift

// Layouts other than the bracketed one: rivals far apart, numbers for every lead.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

TEST(PrintedLayout, SerialNumbersNameTheRivalInBrackets) {
  auto const text =
      "1 (6). Shell smooth.\n"
      "2 (3). Foot pale .......... Aus bus\n"
      "3 (2). Foot dark.\n"
      "4 (5). Eyes large .......... Aus cus\n"
      "5 (4). Eyes small .......... Aus dus\n"
      "6 (1). Shell ribbed .......... Dus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth. -> 2\n1[6] Shell ribbed -> Dus eus\n"
            "2[2] Foot pale -> Aus bus\n2[3] Foot dark. -> 4\n"
            "4[4] Eyes large -> Aus cus\n4[5] Eyes small -> Aus dus\n");
  EXPECT_EQ(read_key(text).source.layout_note,
            "serial layout, leads marked 1 and 6, destinations after dot leaders; a lead without "
            "destination goes on with the next lead");
}

TEST(PrintedLayout, SerialLeadsMayPrintTheNumberThatFollows) {
  EXPECT_EQ(sketch("1(4) Shell smooth ..... 2\n2(3) Foot pale ..... Aus bus\n"
                   "3(2) Foot dark ..... Aus cus\n4(1) Shell ribbed ..... 5\n"
                   "5(6) Eyes large ..... Dus eus\n6(5) Eyes small ..... 2\n"),
            "1[1] Shell smooth -> 2\n1[4] Shell ribbed -> 5\n"
            "2[2] Foot pale -> Aus bus\n2[3] Foot dark -> Aus cus\n"
            "5[5] Eyes large -> Dus eus\n5[6] Eyes small -> 2\n");
}

TEST(PrintedLayout, IndentedNumbersComeBackForTheRival) {
  auto const text =
      "1. Shell smooth\n"
      "    2. Foot pale .......... Aus bus\n"
      "    2. Foot dark\n"
      "        3. Eyes large .......... Aus cus\n"
      "        3. Eyes small .......... Aus dus\n"
      "1. Shell ribbed\n"
      "    4. Foot broad .......... Dus eus\n"
      "    4. Foot narrow .......... Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[1] Shell ribbed -> 4\n"
            "2[2] Foot pale -> Aus bus\n2[2] Foot dark -> 3\n"
            "3[3] Eyes large -> Aus cus\n3[3] Eyes small -> Aus dus\n"
            "4[4] Foot broad -> Dus eus\n4[4] Foot narrow -> Dus fus\n");
  EXPECT_EQ(read_key(text).source.layout_note,
            "indented layout, leads marked 1 and 1, destinations after dot leaders; a lead without "
            "destination goes on with the next lead");
}

TEST(PrintedLayout, IndentedPrimesAndLettersComeBackToo) {
  EXPECT_EQ(sketch("1. Shell smooth\n  2. Foot pale ..... Aus bus\n  2'. Foot dark ..... Aus cus\n"
                   "1'. Shell ribbed ..... Dus eus\n"),
            "1[1] Shell smooth -> 2\n1[1'] Shell ribbed -> Dus eus\n"
            "2[2] Foot pale -> Aus bus\n2[2'] Foot dark -> Aus cus\n");
  EXPECT_EQ(
      sketch("1a. Shell smooth\n  2a. Foot pale ..... Aus bus\n  2b. Foot dark ..... Aus cus\n"
             "1b. Shell ribbed\n  3a. Foot pale ..... Dus eus\n  3b. Foot dark ..... Dus fus\n"),
      "1[1a] Shell smooth -> 2\n1[1b] Shell ribbed -> 3\n"
      "2[2a] Foot pale -> Aus bus\n2[2b] Foot dark -> Aus cus\n"
      "3[3a] Foot pale -> Dus eus\n3[3b] Foot dark -> Dus fus\n");
}

// Letters that tell ranks cannot be what leads lead to: the couplets are counted.
TEST(PrintedLayout, LettersUsedAgainInEachBranchAreCoupletsOfTheirOwn) {
  auto const text =
      "A. Shell smooth\n  B. Foot pale ..... Aus bus\n"
      "  BB. Foot dark ..... Aus cus\nAA. Shell ribbed\n"
      "  B. Foot broad ..... Dus eus\n  BB. Foot narrow ..... Dus fus\n";
  EXPECT_EQ(sketch(text),
            "1[A] Shell smooth -> 2\n1[AA] Shell ribbed -> 3\n"
            "2[B] Foot pale -> Aus bus\n2[BB] Foot dark -> Aus cus\n"
            "3[B] Foot broad -> Dus eus\n3[BB] Foot narrow -> Dus fus\n");
  EXPECT_EQ(read_key(text).source.layout_note,
            "indented layout, leads marked A and AA, destinations after dot leaders; the couplets' "
            "numbers are not printed but counted; a lead without destination goes on with the next "
            "lead");
}

TEST(PrintedLayout, LettersUsedOnceStayTheLabelsOfTheirCouplets) {
  EXPECT_EQ(sketch("A. Shell smooth\n  B. Foot pale ..... Aus bus\n"
                   "  BB. Foot dark ..... Aus cus\nAA. Shell ribbed\n"
                   "  C. Foot broad ..... Dus eus\n  CC. Foot narrow ..... Dus fus\n"),
            "A[A] Shell smooth -> B\nA[AA] Shell ribbed -> C\n"
            "B[B] Foot pale -> Aus bus\nB[BB] Foot dark -> Aus cus\n"
            "C[C] Foot broad -> Dus eus\nC[CC] Foot narrow -> Dus fus\n");
}

}  // namespace
}  // namespace keydrift

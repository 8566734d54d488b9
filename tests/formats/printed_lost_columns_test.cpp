// Destinations that touch the words before them.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedLostColumns, NumbersAndNamesTouchTheWords) {
  EXPECT_EQ(sketch("1Eyes absent; body unpigmented2\n"
                   "–Eyes present; body pigmented (in life)3\n"
                   "2Palm with two distal setaeAusella busa Roe, 1976\n"
                   "–Palm with one distal setaAusella cusa sp. nov.\n"
                   "3Telson cleft to 80%Ausella dusa Dorn, 1989\n"
                   "–Telson entire, 2 mmAusella\n"),
            "1[1] Eyes absent; body unpigmented -> 2\n"
            "1[–] Eyes present; body pigmented (in life) -> 3\n"
            "2[2] Palm with two distal setae -> Ausella busa\n"
            "2[–] Palm with one distal seta -> Ausella cusa (sp. nov.)\n"
            "3[3] Telson cleft to 80% -> Ausella dusa\n"
            "3[–] Telson entire, 2 mm -> Ausella\n");
}

TEST(PrintedLostColumns, OfTwoNumbersThatTouchTheSecondIsTheNext) {
  EXPECT_EQ(sketch("1.Eyes absent; body unpigmented2\n"
                   "–.Eyes present; body pigmented4\n"
                   "2.Ramus longer than article 13\n"
                   "–.Ramus shorterAusella busa\n"
                   "3.Palm with two setaeAusella cusa\n"
                   "–.Palm with one setaAusella dusa\n"
                   "4.Telson cleftAusella eusa\n"
                   "–.Telson entireAusella fusa\n"),
            "1[1] Eyes absent; body unpigmented -> 2\n"
            "1[–] Eyes present; body pigmented -> 4\n"
            "2[2] Ramus longer than article 1 -> 3\n"
            "2[–] Ramus shorter -> Ausella busa\n"
            "3[3] Palm with two setae -> Ausella cusa\n"
            "3[–] Palm with one seta -> Ausella dusa\n"
            "4[4] Telson cleft -> Ausella eusa\n"
            "4[–] Telson entire -> Ausella fusa\n");
}

TEST(PrintedLostColumns, ANoteOrAMeasureIsNoHabit) {
  // The number of a note touches a name; "mm2" is a measure.
  EXPECT_EQ(sketch("1. Leaves up to 30 mm2 ..... 2\n"
                   "- Leaves up to 90 mm2 ..... 3\n"
                   "2. Flowers red, as in Aus cus2 ..... Aus bus\n"
                   "- Flowers white ..... Aus cus\n"
                   "3. Flowers blue ..... Aus dus\n"
                   "- Flowers pink ..... Aus eus\n"),
            "1[1] Leaves up to 30 mm2 -> 2\n"
            "1[-] Leaves up to 90 mm2 -> 3\n"
            "2[2] Flowers red, as in Aus cus2 -> Aus bus\n"
            "2[-] Flowers white -> Aus cus\n"
            "3[3] Flowers blue -> Aus dus\n"
            "3[-] Flowers pink -> Aus eus\n");
}

}  // namespace
}  // namespace keydrift

// Further leads that bear the number of their couplet behind a dash.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedDashedSeconds, ADashWithTheCoupletsNumberIsALabel) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n"
                   "–1. Wings dark ..... 3\n"
                   "2. Legs pale ..... Aus bus\n"
                   "–2. Legs dark ..... Aus cus\n"
                   "3. Head long ..... Aus dus\n"
                   "–3. Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[–1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[–2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[–3] Head short -> Aus eus\n");
}

TEST(PrintedDashedSeconds, TheNumberMayBearNoStop) {
  EXPECT_EQ(sketch("1 Wings clear ..... 2\n"
                   "-1 Wings dark ..... 3\n"
                   "2 Legs pale ..... Aus bus\n"
                   "-2 Legs dark ..... Aus cus\n"
                   "-2 Legs red ..... Aus fus\n"
                   "3 Head long ..... Aus dus\n"
                   "-3 Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[-1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[-2] Legs dark -> Aus cus\n2[-2] Legs red -> Aus fus\n"
            "3[3] Head long -> Aus dus\n3[-3] Head short -> Aus eus\n");
}

TEST(PrintedDashedSeconds, AKeyOfOneCouplet) {
  EXPECT_EQ(sketch("1. Legs pale ..... Aus bus\n"
                   "–1. Legs dark ..... Aus cus\n"),
            "1[1] Legs pale -> Aus bus\n1[–1] Legs dark -> Aus cus\n");
}

TEST(PrintedDashedSeconds, OfANestedKeyTheyStandFarBelow) {
  EXPECT_EQ(sketch("1. Wings clear\n"
                   "  2. Legs pale ..... Aus bus\n"
                   "  –2. Legs dark ..... Aus cus\n"
                   "–1. Wings dark\n"
                   "  3. Head long ..... Aus dus\n"
                   "  –3. Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[–1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[–2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[–3] Head short -> Aus eus\n");
}

TEST(PrintedDashedSeconds, TheNumberOfAnotherCoupletIsNoLabel) {
  auto const read = sketch(
      "1. Wings clear ..... 2\n"
      "–7. Antennal segment long ..... 3\n"
      "2. Legs pale ..... Aus bus\n"
      "–2. Antennal segment long ..... Aus cus\n"
      "3. Head long ..... Aus dus\n"
      "–3. Antennal segment long ..... Aus eus\n");
  EXPECT_EQ(read.find("[–2]"), std::string::npos) << read;
  EXPECT_EQ(read.find("[–3]"), std::string::npos) << read;
}

}  // namespace
}  // namespace keydrift

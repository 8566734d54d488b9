// Lines of prose and captions that happen to begin with a number.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

constexpr auto kKeyBesideProse =
    "Key to species of Ausella\n\n1. Wings clear .......... 2\n- Wings dark .......... 3\n"
    "2. Legs long .......... Ausella cusa Roe\n- Legs short .......... Ausella dusa Dorn\n"
    "3. Eyes red .......... Ausella eusa Dorn\n- Eyes black .......... Ausella fusa Roe\n";
constexpr auto kReadBesideProse =
    "1[1] Wings clear -> 2\n1[-] Wings dark -> 3\n"
    "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n"
    "3[3] Eyes red -> Ausella eusa\n3[-] Eyes black -> Ausella fusa\n";

void expect_no_leads(std::string const& prose) {
  auto const before = prose + "\n\n" + kKeyBesideProse;
  EXPECT_EQ(sketch(before), kReadBesideProse) << before;
  auto const& parts = read_key(before).edition.parts;
  ASSERT_EQ(parts.size(), 1U) << before;
  EXPECT_EQ(parts.front().title, "Key to species of Ausella") << before;
  auto const behind = kKeyBesideProse + ("\n" + prose) + "\n";
  EXPECT_EQ(sketch(behind), kReadBesideProse) << behind;
}

TEST(PrintedProseNumbers, Dates) {
  expect_no_leads(
      "Holotype male: Upper Sarn, meadow near the mill, leg. Roe,\n"
      "12. vii. 1988. Paratypes: 3 males from the same place.");
  expect_no_leads("Holotype male: Upper Sarn, meadow near the mill, leg. Roe,\n12.vi.1988.");
  expect_no_leads(
      "Material examined. Sarn: 2 males, leg. Dorn,\n12. vii. 1988; Lower Mere, 250 m,\n"
      "1. viii. 1990, leg. Dorn.");
}

TEST(PrintedProseNumbers, Captions) {
  expect_no_leads("Figs 1–4. Aedeagus.\n1. A. busa. 2. A. cusa.");
  expect_no_leads("Fig. 1. Parts of the body.\n1 – head; 2 – pronotum;");
  expect_no_leads("Figs 1–2. Elytra. 1. A. busa, holotype.\n2. A. cusa, male.");
}

TEST(PrintedProseNumbers, WrappedWords) {
  expect_no_leads(
      "The two species differ in several ways: 1. in the colour of the elytra,\n"
      "2. in the length of the antennae.");
  expect_no_leads(
      "The drawings were made by Dorn, and the journey was paid for by grant no.\n"
      "12. The drawings are kept at Sarn.");
  expect_no_leads("Dorn, P. 1904. Notes on the beetles of the marshes. Annals of Sarn\n3: 12–45.");
}

TEST(PrintedProseNumbers, BetweenTwoKeys) {
  EXPECT_EQ(sketch("Key to species of Ausella\n\n1. Wings clear .......... 2\n"
                   "- Wings dark .......... Ausella busa Roe\n"
                   "2. Legs long .......... Ausella cusa Roe\n"
                   "- Legs short .......... Ausella dusa Dorn\n\n"
                   "The key leads females to the right species, and males to couplet\n"
                   "2. Teneral specimens cannot be named.\n\nKey to species of Busella\n\n"
                   "1. Eyes red .......... Busella busa Roe\n"
                   "- Eyes black .......... Busella cusa Dorn\n"),
            "1[1] Wings clear -> 2\n1[-] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n"
            "1[1] Eyes red -> Busella busa\n1[-] Eyes black -> Busella cusa\n");
}

TEST(PrintedProseNumbers, LeavesLeadsBeneathATitleAlone) {
  EXPECT_EQ(sketch("The beetles of the genus Ausella that are known from Lower Sarn,\n"
                   "1. Wings clear.\n  2. Legs long.\n    3. Eyes red .......... Ausella eusa\n"
                   "    3. Eyes black .......... Ausella fusa\n"
                   "  2. Legs short .......... Ausella dusa\n1. Wings dark .......... Ausella "
                   "busa\n"),
            "1[1] Wings clear. -> 2\n1[1] Wings dark -> Ausella busa\n2[2] Legs long. -> 3\n"
            "2[2] Legs short -> Ausella dusa\n3[3] Eyes red -> Ausella eusa\n"
            "3[3] Eyes black -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift

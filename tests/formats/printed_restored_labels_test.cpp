// Labels that a scan damaged or lost, where the couplets around them tell what they were.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::all_with;
using test::findings_of;
using test::sketch;

std::string with(std::string text, std::string_view right, std::string_view damaged) {
  auto const at = text.find(right);
  EXPECT_NE(at, std::string::npos) << right;
  return at == std::string::npos ? text : text.replace(at, right.size(), damaged);
}

std::string const kDashedLeads =
    "1. Legs black ..... 2\n"
    "- Legs yellow ..... 4\n"
    "2. Head rugose ..... 3\n"
    "- Head smooth ..... Ausella busa\n"
    "3. Wings wide ..... Ausella cusa\n"
    "- Wings narrow ..... Ausella dusa\n"
    "4. Labrum entire ..... 5\n"
    "- Labrum notched ..... Ausella fusa\n"
    "5. Tibiae curved ..... Ausella gusa\n"
    "- Tibiae straight ..... Ausella husa\n";

std::string dashes_sketch(std::string const& four = "4", std::string const& five = "5",
                          std::string const& two = "2", std::string const& one = "1") {
  return "1[" + one + "] Legs black -> 2\n1[-] Legs yellow -> 4\n2[" + two +
         "] Head rugose -> 3\n2[-] Head smooth -> Ausella busa\n"
         "3[3] Wings wide -> Ausella cusa\n3[-] Wings narrow -> Ausella dusa\n4[" +
         four + "] Labrum entire -> 5\n4[-] Labrum notched -> Ausella fusa\n5[" + five +
         "] Tibiae curved -> Ausella gusa\n5[-] Tibiae straight -> Ausella husa\n";
}

std::string with_seconds(std::string key, std::string_view first, std::string_view second) {
  for (char const digit : std::string_view{"12345"}) {
    auto const number = std::string{digit} + ". ";
    auto const at = key.find(number);
    auto const dash = key.find("\n- ", at);
    key.replace(dash + 1, 1, std::string{digit} + std::string{second});
    key.replace(at, 2, std::string{digit} + std::string{first});
  }
  return key;
}

std::string const kLetteredLeads = with_seconds(kDashedLeads, "a.", "b.");
std::string const kPrimedLeads = with_seconds(kDashedLeads, ".", "'.");

std::string seconds_sketch(std::string_view first, std::string_view second, std::string const& four,
                           std::string const& rival) {
  auto text = dashes_sketch();
  for (char const digit : std::string_view{"12345"}) {
    auto const front = std::string{digit} + "[";
    text = with(text, front + digit + "]", front + digit + std::string{first} + "]");
    text = with(text, front + "-]", front + digit + std::string{second} + "]");
  }
  text = with(text, "4[4" + std::string{first} + "]", "4[" + four + "]");
  return with(text, "4[4" + std::string{second} + "]", "4[" + rival + "]");
}

TEST(PrintedRestoredLabels, TheSignBehindANumberMayBeLost) {
  EXPECT_EQ(sketch(with(kDashedLeads, "4. Labrum", "4 Labrum")), dashes_sketch());
  auto const brackets =
      all_with(all_with(all_with(kDashedLeads, ". ", ") "), "....) ", "..... "), "-) ", "- ");
  EXPECT_EQ(sketch(with(brackets, "4) Labrum", "4 Labrum")), dashes_sketch());
}

TEST(PrintedRestoredLabels, AnotherSignMayStandForIt) {
  for (auto const* const damaged : {"4·", "4;", "4..", "4]", "4}", "4,"}) {
    EXPECT_EQ(sketch(with(kDashedLeads, "4.", damaged)), dashes_sketch(damaged)) << damaged;
  }
}

TEST(PrintedRestoredLabels, SpecksMayStandBeforeIt) {
  for (auto const* const damaged : {"'4", ". 4", "| 4", "-4", "*4", "(4"}) {
    EXPECT_EQ(sketch(with(kDashedLeads, "4. L", std::string{damaged} + ". L")),
              dashes_sketch(damaged))
        << damaged;
  }
}

TEST(PrintedRestoredLabels, TheWholeNumberMayBeLost) {
  EXPECT_EQ(sketch(with(kDashedLeads, "4. Labrum", "Labrum")), dashes_sketch(""));
  EXPECT_EQ(sketch(with(kDashedLeads, "4. Labrum", ". Labrum")), dashes_sketch("."));
  EXPECT_EQ(sketch(with(kLetteredLeads, "4a. Labrum", "Labrum")),
            seconds_sketch("a", "b", "", "4b"));
  EXPECT_EQ(sketch(with(kPrimedLeads, "4. Labrum", "Labrum")), seconds_sketch("", "'", "", "4'"));
}

TEST(PrintedRestoredLabels, LessUsualLettersMayStandForItsDigits) {
  EXPECT_EQ(sketch(with(kDashedLeads, "5. Tibiae", "s. Tibiae")), dashes_sketch("4", "s"));
  EXPECT_EQ(sketch(with(kDashedLeads, "4. Labrum", "A. Labrum")), dashes_sketch("A"));
  EXPECT_EQ(sketch(with(kDashedLeads, "1. Legs", "i. Legs")), dashes_sketch("4", "5", "2", "i"));
  EXPECT_EQ(sketch(with(kDashedLeads, "1. Legs", "]. Legs")), dashes_sketch("4", "5", "2", "]"));
}

TEST(PrintedRestoredLabels, TabsForLeadersLoseNoOtherLeads) {
  auto const tabs = all_with(kDashedLeads, " ..... ", "\t");
  EXPECT_EQ(sketch(with(tabs, "4. Labrum", "4, Labrum")), dashes_sketch("4,"));
  EXPECT_EQ(sketch(with(tabs, "4. Labrum", "4 Labrum")), dashes_sketch("4"));
  EXPECT_EQ(sketch(with(tabs, "4. Labrum", "Labrum")), dashes_sketch(""));
  EXPECT_EQ(sketch(with(tabs, "5. Tibiae", "S. Tibiae")), dashes_sketch("4", "S"));
  EXPECT_EQ(sketch(with(tabs, "2. Head", "Z. Head")), dashes_sketch("4", "5", "Z"));
  EXPECT_EQ(sketch("1. Legs black\t2\n"
                   "- Legs yellow\tAusella busa\n"
                   "Wings wide\t3\n"
                   "- Wings narrow\tAusella cusa\n"
                   "3. Labrum entire\tAusella dusa\n"
                   "- Labrum notched\tAusella fusa\n"),
            "1[1] Legs black -> 2\n1[-] Legs yellow -> Ausella busa\n"
            "2[] Wings wide -> 3\n2[-] Wings narrow -> Ausella cusa\n"
            "3[3] Labrum entire -> Ausella dusa\n3[-] Labrum notched -> Ausella fusa\n");
}

TEST(PrintedRestoredLabels, ABracketBehindItMayBeDamaged) {
  auto backed = with(kDashedLeads, "2.", "2(1).");
  backed = with(backed, "3.", "3(2).");
  backed = with(backed, "4.", "4(1).");
  backed = with(backed, "5.", "5(4).");
  for (auto const* const damaged : {"4(l)", "4(1J", "4(1", "4{1)", "4l1)", "41)"}) {
    EXPECT_EQ(sketch(with(backed, "4(1)", damaged)), dashes_sketch(damaged)) << damaged;
  }
}

TEST(PrintedRestoredLabels, ALetterOrAMarkMayBeDamaged) {
  for (auto const* const damaged : {"4a,", "4 a", "4o"}) {
    EXPECT_EQ(sketch(with(kLetteredLeads, damaged[2] == ',' ? "4a." : "4a", damaged)),
              seconds_sketch("a", "b", damaged, "4b"))
        << damaged;
  }
  for (auto const* const damaged : {"4b,", "46", "4 b"}) {
    EXPECT_EQ(sketch(with(kLetteredLeads, damaged[2] == ',' ? "4b." : "4b", damaged)),
              seconds_sketch("a", "b", "4a", damaged))
        << damaged;
  }
  for (auto const* const damaged : {"41", "4 '", "4,", "4°"}) {
    EXPECT_EQ(sketch(with(kPrimedLeads, "4'", damaged)), seconds_sketch("", "'", "4", damaged))
        << damaged;
  }
}

TEST(PrintedRestoredLabels, TheLeadAboveMayEndInItsCommonNameInBrackets) {
  auto const named = [](std::string_view four) {
    std::string key = kLetteredLeads;
    for (auto const species : {"busa", "cusa", "dusa", "fusa", "gusa", "husa"}) {
      key = with(key, species, std::string{species} + "\n(slender moth)");
    }
    return sketch(with(with(key, "..... 5", "..... Ausella lusa\n(dwarf moth)"), "4b.", four));
  };
  EXPECT_NE(named("4b.").find("4[4b] Labrum notched -> Ausella fusa\n"), std::string::npos)
      << named("4b.");
  EXPECT_EQ(with(named("4b,"), "[4b,]", "[4b]"), named("4b."));
}

TEST(PrintedRestoredLabels, ALetterMayStandForTheFirstNumberBesideItsPrime) {
  EXPECT_EQ(sketch(with(kPrimedLeads, "1. Legs", "i. Legs")),
            with(seconds_sketch("", "'", "4", "4'"), "1[1]", "1[i]"));
}

TEST(PrintedRestoredLabels, ABlankMayStandBeforeTheFullStop) {
  EXPECT_EQ(sketch(with(kDashedLeads, "4. Labrum", "4 . Labrum")), dashes_sketch());
}

TEST(PrintedRestoredLabels, ABareNumberMayStandOnALineOfItsOwn) {
  auto bare = kDashedLeads;
  for (char const digit : std::string_view{"12345"}) {
    bare = with(bare, std::string{digit} + ". ", std::string{digit} + " ");
  }
  EXPECT_EQ(sketch(with(bare, "4 Labrum", "4\nLabrum")), dashes_sketch());
}

TEST(PrintedRestoredLabels, AnotherSignMayStandForADash) {
  for (auto const* const damaged : {"_", "~", "·", "=", "-,", ". -", "'-"}) {
    EXPECT_EQ(sketch(with(kDashedLeads, "- Labrum", std::string{damaged} + " Labrum")),
              with(dashes_sketch(), "4[-]", "4[" + std::string{damaged} + "]"))
        << damaged;
  }
}

TEST(PrintedRestoredLabels, TheLeadsOfACoupletMayHaveChangedPlaces) {
  auto const moved =
      with(with(kDashedLeads, "- Labrum notched ..... Ausella fusa\n", ""), "4. Labrum entire",
           "- Labrum notched ..... Ausella fusa\n4. Labrum entire");
  EXPECT_EQ(sketch(moved), with(with(dashes_sketch(), "4[-] Labrum notched -> Ausella fusa\n", ""),
                                "4[4] Labrum", "4[-] Labrum notched -> Ausella fusa\n4[4] Labrum"));
  EXPECT_EQ(sketch("- Legs yellow ..... Ausella busa\n"
                   "1. Legs black ..... 2\n"
                   "2. Wings wide ..... Ausella cusa\n"
                   "- Wings narrow ..... Ausella dusa\n"),
            "1[-] Legs yellow -> Ausella busa\n1[1] Legs black -> 2\n"
            "2[2] Wings wide -> Ausella cusa\n2[-] Wings narrow -> Ausella dusa\n");
}

TEST(PrintedRestoredLabels, EachIsReported) {
  auto const finding = [](std::string const& key) {
    auto const all = findings_of(key);
    auto const found = std::find_if(all.begin(), all.end(), [](std::string const& one) {
      return one.find("misprinted-label") != std::string::npos;
    });
    return found == all.end() ? std::string{} : *found;
  };
  EXPECT_EQ(finding(with(kDashedLeads, "4. Labrum", "4· Labrum")),
            "key.txt:7:1: warning: \"4·\" was read as a lead of couplet 4 [misprinted-label] "
            "(print the label as the others are)");
  EXPECT_EQ(
      finding(with(kDashedLeads, "4. Labrum", "4 Labrum")),
      "key.txt:7:1: warning: the sign behind \"4\" is not the usual one; the count tells that "
      "a lead begins here [misprinted-label] (print what stands behind the other numbers)");
  EXPECT_EQ(finding(with(kDashedLeads, "4. Labrum", "Labrum")),
            "key.txt:7:1: warning: no number is printed; the count tells that a lead of couplet 4 "
            "begins here [misprinted-label] (print the number)");
  EXPECT_EQ(finding(with(kDashedLeads, "- Labrum", "_ Labrum")),
            "key.txt:8:1: warning: \"_\" was read as the dash of a further lead "
            "[misprinted-label] (print the sign that other such leads have)");
}

// --- what stays as it is ------------------------------------------------------------------------

TEST(PrintedRestoredLabels, ThreeRivalsBeforeAMissingCoupletStayThree) {
  EXPECT_EQ(sketch("1. Legs black ..... 2\n"
                   "- Legs yellow ..... 3\n"
                   "- Legs red ..... Ausella busa\n"
                   "2. Head rugose ..... Ausella cusa\n"
                   "- Head smooth ..... Ausella dusa\n"
                   "- Head hairy ..... Ausella fusa\n"
                   "4. Wings wide ..... Ausella gusa\n"
                   "- Wings narrow ..... Ausella husa\n"),
            "1[1] Legs black -> 2\n1[-] Legs yellow -> ?3\n1[-] Legs red -> Ausella busa\n"
            "2[2] Head rugose -> Ausella cusa\n2[-] Head smooth -> Ausella dusa\n"
            "2[-] Head hairy -> Ausella fusa\n"
            "4[4] Wings wide -> Ausella gusa\n4[-] Wings narrow -> Ausella husa\n");
}

TEST(PrintedRestoredLabels, ACountWithinWordsIsNoLabel) {
  EXPECT_EQ(sketch("1. Legs black ..... 2\n"
                   "- Legs yellow ..... 4\n"
                   "2. Head rugose ..... Ausella busa\n"
                   "- Head smooth, or with less than\n"
                   "3 Labral hairs ..... Ausella cusa\n"
                   "4. Wings wide ..... Ausella gusa\n"
                   "- Wings narrow ..... Ausella husa\n"),
            "1[1] Legs black -> 2\n1[-] Legs yellow -> 4\n"
            "2[2] Head rugose -> Ausella busa\n"
            "2[-] Head smooth, or with less than 3 Labral hairs -> Ausella cusa\n"
            "4[4] Wings wide -> Ausella gusa\n4[-] Wings narrow -> Ausella husa\n");
}

TEST(PrintedRestoredLabels, NumbersThatACopyLost) {
  EXPECT_EQ(sketch("Larval key to Halesella\n"
                   "\n"
                   "Gills present as single filaments\t2\n"
                   "–\tGills absent, or in groups\t4\n"
                   "\n"
                   "Pronotum with a row of stout setae\t3\n"
                   "–\tPronotum with scattered setae only\tHalesella dornensis\n"
                   "\n"
                   "Head with a pale band\tHalesella subnigra\n"
                   "–\tHead dark\tHalesella alpicola\n"
                   "\n"
                   "Mandible with 4 teeth\t5\n"
                   "–\tMandible without teeth\tHalesella vernalis\n"
                   "\n"
                   "Gills reaching to segment V\tHalesella aestiva\n"
                   "–\tGills reaching to segment VII\tHalesella sp. B\n"),
            "1[] Gills present as single filaments -> 2\n"
            "1[–] Gills absent, or in groups -> 4\n"
            "2[] Pronotum with a row of stout setae -> 3\n"
            "2[–] Pronotum with scattered setae only -> Halesella dornensis\n"
            "3[] Head with a pale band -> Halesella subnigra\n"
            "3[–] Head dark -> Halesella alpicola\n"
            "4[] Mandible with 4 teeth -> 5\n"
            "4[–] Mandible without teeth -> Halesella vernalis\n"
            "5[] Gills reaching to segment V -> Halesella aestiva\n"
            "5[–] Gills reaching to segment VII -> Halesella sp. B\n");
}

TEST(PrintedRestoredLabels, NumbersThatStandElsewhereAreNotLost) {
  EXPECT_EQ(sketch("Key to Halesella\n"
                   "\n"
                   "1. Gills present as single filaments\t2\n"
                   "–\tGills absent, or in groups\t3\n"
                   "\n"
                   "2. Pronotum with a row of stout setae\tHalesella aestiva\n"
                   "–\tPronotum with scattered setae only\tHalesella dornensis\n"
                   "\n"
                   "3. Head with a pale band\tHalesella subnigra\n"
                   "–\tHead dark\tHalesella alpicola\n"),
            "1[1] Gills present as single filaments -> 2\n"
            "1[–] Gills absent, or in groups -> 3\n"
            "2[2] Pronotum with a row of stout setae -> Halesella aestiva\n"
            "2[–] Pronotum with scattered setae only -> Halesella dornensis\n"
            "3[3] Head with a pale band -> Halesella subnigra\n"
            "3[–] Head dark -> Halesella alpicola\n");
}

}  // namespace
}  // namespace keydrift

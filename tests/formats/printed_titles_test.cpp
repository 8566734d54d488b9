// Titles of keys that are longer than a line.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

std::string titles_of(std::string const& text) {
  std::string titles;
  for (auto const& part : read_key(text).edition.parts) {
    titles += (titles.empty() ? "" : " | ") + part.title;
  }
  return titles;
}

std::string two_keys(std::string const& title, std::string const& leaders) {
  return "Key to species of Busella\n\n1. Legs long" + leaders + "Busella tarda Roe\n" +
         "- Legs short" + leaders + "Busella vilis Dorn\n\n" + title + "\n\n1. Wings clear" +
         leaders + "Ausella busa Roe\n- Wings dark" + leaders + "Ausella cusa Dorn\n";
}

TEST(PrintedTitles, OfTwoLines) {
  for (auto const* leaders : {" ........ ", " "}) {
    EXPECT_EQ(titles_of(two_keys("Key to the species of Ausella known from Sarn and\n"
                                 "neighbouring countries",
                                 leaders)),
              "Key to species of Busella | Key to the species of Ausella known from Sarn and "
              "neighbouring countries");
    EXPECT_EQ(titles_of(two_keys("Key to the males of the species of\nAusella", leaders)),
              "Key to species of Busella | Key to the males of the species of Ausella");
    EXPECT_EQ(titles_of(two_keys("Key to the species of Ausella\n(adult males)", leaders)),
              "Key to species of Busella | Key to the species of Ausella (adult males)");
    EXPECT_EQ(test::sketch(two_keys("Key to the species of Ausella known from Sarn and\n"
                                    "neighbouring countries",
                                    leaders)),
              "1[1] Legs long -> Busella tarda\n1[-] Legs short -> Busella vilis\n"
              "1[1] Wings clear -> Ausella busa\n1[-] Wings dark -> Ausella cusa\n");
  }
}

TEST(PrintedTitles, BeforeTheFirstKey) {
  EXPECT_EQ(titles_of("Key to the males of the species of\nAusella\n\n1. Wings clear ........ "
                      "Ausella busa\n- Wings dark ........ Ausella cusa\n"),
            "Key to the males of the species of Ausella");
}

TEST(PrintedTitles, LeaveWhatStandsBeneathAlone) {
  EXPECT_EQ(titles_of("Key to the species of Ausella\nMales\n\n1. Wings clear ........ Ausella "
                      "busa\n- Wings dark ........ Ausella cusa\n"),
            "Key to the species of Ausella");
}

TEST(PrintedTitles, TheSexThatTheNextKeyIsOfIsNoDestination) {
  auto const text =
      "Males\n"
      "1\nWings clear\n2\n–\nWings dark\nA. ausa Roe, 1988\n"
      "2\nLegs pale\nA. busa sp. nov.\n–\nLegs dark\nA. cusa Roe, 1988\n"
      "Females\n"
      "1\nTail long\n2\n–\nTail short\nA. ausa Roe, 1988\n"
      "2\nHead long\nA. busa sp. nov., A. cusa Roe, 1988\n–\nHead short\nA. dusa Roe, 1988\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> A. ausa\n"
            "2[2] Legs pale -> A. busa (sp. nov.)\n"
            "2[–] Legs dark -> A. cusa\n"
            "1[1] Tail long -> 2\n"
            "1[–] Tail short -> A. ausa\n"
            "2[2] Head long -> A. busa + A. cusa (sp. nov.)\n"
            "2[–] Head short -> A. dusa\n");
}

TEST(PrintedTitles, ANounAndAndAreNoGenusWithItsAuthor) {
  EXPECT_EQ(sketch("1924] Roe — The Spider Genus Phrurosella 45\n\n"
                   "EPIGYNUM AND PALPUS.\n\n"
                   "The spur of the palpus must be viewed from the outer side.\n\n"
                   "Key to Males\n\n"
                   "1. Palpus with two spurs ..... 2\n"
                   "- Palpus with one spur ..... pallida\n"
                   "2. Spurs long ..... nigra\n"
                   "- Spurs short ..... rufa\n"),
            "1[1] Palpus with two spurs -> 2\n"
            "1[-] Palpus with one spur -> Phrurosella pallida\n"
            "2[2] Spurs long -> Phrurosella nigra\n"
            "2[-] Spurs short -> Phrurosella rufa\n");
}

TEST(PrintedTitles, TheNumberOfAFootnoteIsNoLetterOfTheGenus) {
  EXPECT_EQ(sketch("Genus 1031. FERULELLA¹ ROE.\n\n"
                   "1. Fruit hairy ..... 2\n"
                   "+ Fruit bare ..... 1. F. nuda Roe\n"
                   "2. Stem tall ..... 2. F. gigantea Roe\n"
                   "+ Stem short ..... 3. F. nana Roe\n\n"
                   "¹ From the Latin name of the plant.\n"),
            "1[1] Fruit hairy -> 2\n"
            "1[+] Fruit bare -> Ferulella nuda\n"
            "2[2] Stem tall -> Ferulella gigantea\n"
            "2[+] Stem short -> Ferulella nana\n");
}

TEST(PrintedTitles, ANumberedGenusWithItsYearIsNoLead) {
  EXPECT_EQ(sketch("4. Hamostemon STRENK. 1851\n"
                   "\n"
                   "Climbing shrubs with opposite leaves; fruit a drupe.\n"
                   "\n"
                   "1. a. Climbers with hooks . . . . . . . . 2 b. Erect shrubs . . . . . . . . 3\n"
                   "2. a. Corolla tube long . . . H. uncinatus STRENK. b. Corolla tube short . . . "
                   ". H. tenuis VALM.\n"
                   "3. a. Leaves cordate . . . H. latifolius STRENK. b. Leaves cuneate . . . H. "
                   "acutus HOOGV.\n"
                   "\n"
                   "5. Tjerimaia VALM. 1868\n"
                   "\n"
                   "Treelets with caducous stipules.\n"),
            "1[1. a] Climbers with hooks -> 2\n"
            "1[b] Erect shrubs -> 3\n"
            "2[2. a] Corolla tube long -> Hamostemon uncinatus\n"
            "2[b] Corolla tube short -> Hamostemon tenuis\n"
            "3[3. a] Leaves cordate -> Hamostemon latifolius\n"
            "3[b] Leaves cuneate -> Hamostemon acutus\n");
}

TEST(PrintedTitles, ASectionOfABookIsNoLead) {
  EXPECT_EQ(sketch("3.2  KEY TO THE SNAILS OF THE WALDREN BASIN\n"
                   "\n"
                   "Use adult shells only.\n"
                   "\n"
                   "1.1  Shell with operculum\n"
                   "                         Go to 2\n"
                   "1.2  Shell without operculum\n"
                   "                         Go to 3\n"
                   "\n"
                   "2.1  Operculum calcareous\n"
                   "                         Ausella busa\n"
                   "2.2  Operculum horny\n"
                   "                         Ausella cusa\n"
                   "\n"
                   "3.1  Shell high\n"
                   "                         Busella dusa\n"
                   "3.2  Shell flat\n"
                   "                         Busella fusa\n"),
            "1[1.1] Shell with operculum -> 2\n"
            "1[1.2] Shell without operculum -> 3\n"
            "2[2.1] Operculum calcareous -> Ausella busa\n"
            "2[2.2] Operculum horny -> Ausella cusa\n"
            "3[3.1] Shell high -> Busella dusa\n"
            "3[3.2] Shell flat -> Busella fusa\n");
}

}  // namespace
}  // namespace keydrift

// Initials of genera that scanning made others of, and abbreviations that say something else.

#include "keydrift/formats/printed_odd_initials.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift::printed {
namespace {

using test::sketch;

std::string with_odd(std::string_view odd) {
  std::string text =
      "Key to Varnella\n1. Legs red ..... V. busa\n– Legs black ..... 2\n"
      "2. Head red ..... V. cusa\n– Head black ..... 3\n"
      "3. Wings red ..... V. dusa\n– Wings black ..... 4\n"
      "4. Tail red ..... V. fusa\n– Tail black ..... 5\n"
      "5. Eyes red ..... V. gusa\n– Eyes black ..... 6\n"
      "6. Feet red ..... V. lusa\n– Feet black ..... V. musa\n";
  auto const at = text.rfind("V. musa");
  return text.replace(at, 1, odd);
}

TEST(PrintedOddInitials, OneThatLooksLikeAllOthersIsTheirs) {
  auto text = with_odd("F");
  EXPECT_EQ(restore_odd_initials(text), 1U);
  EXPECT_EQ(text, with_odd("V"));
  EXPECT_EQ(sketch(with_odd("F")), sketch(with_odd("V")));
}

TEST(PrintedOddInitials, AnotherGenusKeepsItsOwn) {
  auto other = with_odd("F") + "\nFarnella musa is known from the north.\n";
  EXPECT_EQ(restore_odd_initials(other), 0U);
  auto unlike = with_odd("M");  // which does not look like V
  EXPECT_EQ(restore_odd_initials(unlike), 0U);
  auto few = with_odd("F");
  few.erase(few.find("1. Legs"), few.find("3. Wings") - few.find("1. Legs"));
  EXPECT_EQ(restore_odd_initials(few), 0U);
}

std::string const kPlates =
    "Genus Planella\n1. Legs red ..... Pl. busa\n– Legs black ..... 2\n"
    "2. Head red ..... Pl. cusa\n– Head black ..... 3\n"
    "3. Wings red ..... Pl. dusa\n– Wings black ..... Pl. fusa\n";

TEST(PrintedOddInitials, AnAbbreviationThatSaysPlateIsShortened) {
  EXPECT_EQ(sketch(kPlates),
            "1[1] Legs red -> Planella busa\n1[–] Legs black -> 2\n"
            "2[2] Head red -> Planella cusa\n2[–] Head black -> 3\n"
            "3[3] Wings red -> Planella dusa\n3[–] Wings black -> Planella fusa\n");
  auto misread = kPlates;
  for (auto at = misread.find("Pl. "); at != std::string::npos; at = misread.find("Pl. ")) {
    misread[at + 1] = 'I';
  }
  EXPECT_EQ(sketch(misread), sketch(kPlates));
}

TEST(PrintedOddInitials, PlatesStayPlates) {
  auto plates = std::string{"Wings clear (Pl. 3). Pl. busa. Pl. cusa. Pl. dusa.\n"};  // no genus
  EXPECT_EQ(shorten_abbreviations(plates), 0U);
  auto numbers = std::string{"Planella busa (Pl. 3, Pl. 4, Pl. 5 and Pl. 6)\n"};
  EXPECT_EQ(shorten_abbreviations(numbers), 0U);
}

TEST(PrintedOddInitials, SignsBehindTheNumberOfASpecies) {
  EXPECT_EQ(sketch("Key to Itapea\n"
                   "1. Legs red ..... 1. I. busa\n"
                   "– Legs black ..... 2\n"
                   "2. Head red ..... 2. I. cusa\n"
                   "– Head black ..... 3\n"
                   "3. Wings red ..... 3. I. dusa\n"
                   "– Wings black ..... 4\n"
                   "4. Tail red ..... 4. I. fusa\n"
                   "– Tail black ..... 5\n"
                   "5. Eyes red ..... 5. I. gusa\n"
                   "– Eyes black ..... 6\n"
                   "6. Feet red ..... 6. I, lusa\n"
                   "– Feet black ..... 7\n"
                   "7. Hairs red ..... 7. 1. musa\n"
                   "– Hairs black ..... 8. /. nusa\n"),
            "1[1] Legs red -> Itapea busa\n"
            "1[–] Legs black -> 2\n"
            "2[2] Head red -> Itapea cusa\n"
            "2[–] Head black -> 3\n"
            "3[3] Wings red -> Itapea dusa\n"
            "3[–] Wings black -> 4\n"
            "4[4] Tail red -> Itapea fusa\n"
            "4[–] Tail black -> 5\n"
            "5[5] Eyes red -> Itapea gusa\n"
            "5[–] Eyes black -> 6\n"
            "6[6] Feet red -> Itapea lusa\n"
            "6[–] Feet black -> 7\n"
            "7[7] Hairs red -> Itapea musa\n"
            "7[–] Hairs black -> Itapea nusa\n");
}

TEST(PrintedOddInitials, SignsBehindLeadersAndInitialsWithoutFullStop) {
  EXPECT_EQ(sketch("Key to the species of Scaphodora.\n"
                   "\n"
                   "1 Apex of elytra with a spine . . S. spinosa Roe.\n"
                   "- Apex of elytra rounded . . 2\n"
                   "2 Scutellum white . . .5'. albida Dorn.\n"
                   "- Scutellum black . . 3\n"
                   "3 Hind tarsi short . . S. brevis Roe.\n"
                   "- Hind tarsi long . . 4\n"
                   "4 Body blue beneath . . S. cyanea Dorn.\n"
                   "- Body black beneath, with a stripe of yellow hair behind\n"
                   "S lineata (Roe).\n"
                   "- Body black beneath, without stripe . . 5\n"
                   "5 Vertex with a furrow . . S. sulcata Roe.\n"
                   "- Vertex without furrow . . 6\n"
                   "6 Femora red . . S. plana Dorn.\n"
                   "- Femora black . . S. nigra Roe.\n"),
            "1[1] Apex of elytra with a spine -> Scaphodora spinosa\n"
            "1[-] Apex of elytra rounded -> 2\n"
            "2[2] Scutellum white -> Scaphodora albida\n"
            "2[-] Scutellum black -> 3\n"
            "3[3] Hind tarsi short -> Scaphodora brevis\n"
            "3[-] Hind tarsi long -> 4\n"
            "4[4] Body blue beneath -> Scaphodora cyanea\n"
            "4[-] Body black beneath, with a stripe of yellow hair behind -> Scaphodora lineata\n"
            "4[-] Body black beneath, without stripe -> 5\n"
            "5[5] Vertex with a furrow -> Scaphodora sulcata\n"
            "5[-] Vertex without furrow -> 6\n"
            "6[6] Femora red -> Scaphodora plana\n"
            "6[-] Femora black -> Scaphodora nigra\n");
}

}  // namespace
}  // namespace keydrift::printed

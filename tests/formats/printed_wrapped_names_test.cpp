// Names that the end of a line parts from their author, their species or their number, and headings
// that stand directly beneath a name.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

// A key whose first lead ends in `name`, however many lines that takes.
std::string key_with(std::string_view name) {
  return "Key to the species of Ausella\n\n1. Legs red ...... " + std::string{name} +
         "\n– Legs black ...... 2\n2. Eyes red ...... A. cusa Dorvik\n"
         "– Eyes black ...... A. fusa Dorvik\n";
}

// "name | author" of the taxon that the first lead leads to, and its remark.
std::string first_taxon(std::string_view name) {
  auto const reading = read_key(key_with(name));
  if (reading.edition.couplets.size() != 2 || reading.edition.taxa.empty()) return "misread";
  auto const& taxon = reading.edition.taxa.front();
  auto const& lead = reading.edition.couplets.front().leads.front();
  auto text = taxon.name + " | " + taxon.authorship;
  if (!lead.taxon_remark.empty()) text += " (" + lead.taxon_remark + ")";
  return text;
}

TEST(PrintedWrappedNames, AnAuthorOnTheNextLine) {
  EXPECT_EQ(first_taxon("A. busa\nDorvik"), "Ausella busa | Dorvik");
  EXPECT_EQ(first_taxon("A. busa\n(Dorvik)"), "Ausella busa | (Dorvik)");
  EXPECT_EQ(first_taxon("A. busa\nVorsel"), "Ausella busa | Vorsel");
  EXPECT_EQ(first_taxon("A. busa\n    Vorsel and Brenn"), "Ausella busa | Vorsel and Brenn");
  EXPECT_EQ(first_taxon("A. busa\nVorsel, 1911 (in part)"),
            "Ausella busa | Vorsel, 1911 (in part)");
}

TEST(PrintedWrappedNames, ASecondAuthorBehindABracket) {
  EXPECT_EQ(first_taxon("A. busa (Dorvik, 1911)\nBrenn, 1920"),
            "Ausella busa | (Dorvik, 1911) Brenn, 1920");
}

TEST(PrintedWrappedNames, AWordThatIsNoAuthor) {
  EXPECT_EQ(first_taxon("A. busa\nSubrina"), "Ausella busa | ");
  EXPECT_EQ(first_taxon("A. busa Dorvik\nVorsel"), "Ausella busa | Dorvik");
}

TEST(PrintedWrappedNames, TheRestOfACommonNameInCapitals) {
  EXPECT_EQ(first_taxon("YELLOW\nBOGBEAR, Busella flava"), "Busella flava |  (YELLOW BOGBEAR)");
  EXPECT_EQ(first_taxon("SMALL YELLOW\nBOGBEAR, Busella flava Roe"),
            "Busella flava | Roe (SMALL YELLOW BOGBEAR)");
  // A family, and the heading of an account.
  EXPECT_EQ(first_taxon("AUSIDAE\nBOGBEARS, Busella flava"), "Ausidae | ");
}

TEST(PrintedWrappedNames, ASpeciesBehindItsGenus) {
  EXPECT_EQ(first_taxon("Ausella\n(Subrina) busa Dorvik"), "Ausella (Subrina) busa | Dorvik");
  EXPECT_EQ(first_taxon("A. busa Dorvik, A.\ndusa Dorvik and A. gusa Brenn"),
            "Ausella busa | Dorvik");
}

TEST(PrintedWrappedNames, ANumberAloneOnItsLine) {
  EXPECT_EQ(first_taxon("A. busa Dorvik and Brenn\n1984"), "Ausella busa | Dorvik and Brenn 1984");
  EXPECT_EQ(first_taxon("Ausella sp.\n1"), "Ausella sp. 1 | ");
}

TEST(PrintedWrappedNames, APageNumberBeneathAName) {
  EXPECT_EQ(first_taxon("Ausella sp.\n\n1\n"), "Ausella sp. | ");
  EXPECT_EQ(first_taxon("A. busa Dorvik\n84"), "Ausella busa | Dorvik");
}

TEST(PrintedWrappedNames, NamesWithoutLeaders) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Legs with long white hairs. A.\n"
                   "busa Dorvik, 1911\n"
                   "– Legs without hairs. A. cusa Dorvik, 1911\n"),
            "1[1] Legs with long white hairs. -> Ausella busa\n"
            "1[–] Legs without hairs. -> Ausella cusa\n");
}

TEST(PrintedWrappedNames, HeadingsBeneathADestination) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Legs red ...... 2\n"
                   "– Legs black ...... 3\n"
                   "busana group\n"
                   "2. Eyes red ...... A. busa Dorvik, 1911\n"
                   "– Eyes black ...... A. cusa Brenn, 1911\n"
                   "Subrina Brenn, 1920\n"
                   "3. Head red ...... A. dusa Dorvik, 1911\n"
                   "– Head black ...... A. fusa Dorvik, 1911\n"),
            "1[1] Legs red -> 2\n"
            "1[–] Legs black -> 3\n"
            "2[2] Eyes red -> Ausella busa\n"
            "2[–] Eyes black -> Ausella cusa\n"
            "3[3] Head red -> Ausella dusa\n"
            "3[–] Head black -> Ausella fusa\n");
  auto const reading = read_key(
      "Key to the species of Ausella\n\n"
      "1. Eyes red ...... A. busa Dorvik, 1911\n"
      "– Eyes black ...... A. cusa Brenn, 1911\n"
      "Tolvera Brenn, 1888\n"
      "Type species Tolvera rubra Brenn. Body black, legs red.\n");
  ASSERT_EQ(reading.edition.taxa.size(), 2U);
  EXPECT_EQ(reading.edition.taxa[1].authorship, "Brenn, 1911");
  EXPECT_TRUE(reading.edition.couplets[0].leads[1].notes.empty());
}

TEST(PrintedWrappedNames, EndTheLeadAboveABareNumber) {
  EXPECT_EQ(sketch("Key to the species of Nusella\n"
                   "\n"
                   "1 Trees or tall shrubs ..... N. busa\n"
                   "1 Herbs or low subshrubs\n"
                   "    2 Seeds winged ..... N. cusa\n"
                   "    2 Seeds wingless, smooth or nearly so ..... N.\n"
                   "        dusa\n"
                   "1 Climbers ..... N. fusa\n"),
            "1[1] Trees or tall shrubs -> Nusella busa\n"
            "1[1] Herbs or low subshrubs -> 2\n"
            "1[1] Climbers -> Nusella fusa\n"
            "2[2] Seeds winged -> Nusella cusa\n"
            "2[2] Seeds wingless, smooth or nearly so -> Nusella dusa\n");
}

TEST(PrintedWrappedNames, BrokenOffBehindTheGenusCloseNoSentence) {
  EXPECT_EQ(sketch("Key to the species of Nusella\n"
                   "\n"
                   "1. Anthers exserted from the corolla\tN. busa\n"
                   "1. Anthers included in the corolla\tN.\n"
                   "cusa\n"
                   "1. Anthers level with the throat\tN.\n"
                   "dusa\n"),
            "1[1] Anthers exserted from the corolla -> Nusella busa\n"
            "1[1] Anthers included in the corolla -> Nusella cusa\n"
            "1[1] Anthers level with the throat -> Nusella dusa\n");
}

TEST(PrintedWrappedNames, AKnownAuthorAloneAboveALeadWithoutLabel) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Femur with one small tooth; second sternite short....... busa\n"
                   "   Roe\n"
                   "   Femur with two teeth; second sternite longer....... 2\n"
                   "2. Elytra spotted at base and behind the middle....... dusa Roe\n"
                   "   Elytra without spots....... 3\n"
                   "3. Legs red....... fusa Dorn\n"
                   "   Legs black....... gusa Dorn\n"),
            "1[1] Femur with one small tooth; second sternite short -> Ausella busa\n"
            "1[] Femur with two teeth; second sternite longer -> 2\n"
            "2[2] Elytra spotted at base and behind the middle -> Ausella dusa\n"
            "2[] Elytra without spots -> 3\n"
            "3[3] Legs red -> Ausella fusa\n"
            "3[] Legs black -> Ausella gusa\n");
  EXPECT_EQ(sketch("Key to the genera of Auselleae\n"
                   "\n"
                   "1. Sutures of the face extend over its margin....... Busella\n"
                   "     Roe\n"
                   "   Sutures of the face end at the pits....... 2\n"
                   "2. Crown with a carina....... Cusella Roe\n"
                   "   Crown without a carina....... 3\n"
                   "3. Legs red....... Dusella Dorn\n"
                   "   Legs black....... Fusella Dorn\n"),
            "1[1] Sutures of the face extend over its margin -> Busella\n"
            "1[] Sutures of the face end at the pits -> 2\n"
            "2[2] Crown with a carina -> Cusella\n"
            "2[] Crown without a carina -> 3\n"
            "3[3] Legs red -> Dusella\n"
            "3[] Legs black -> Fusella\n");
  // A word of the second lead that is no author elsewhere.
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Femur with one small tooth....... busa\n"
                   "   Posterior\n"
                   "   femur with two teeth....... 2\n"
                   "2. Elytra spotted....... dusa Roe\n"
                   "   Elytra without spots....... 3\n"
                   "3. Legs red....... fusa Dorn\n"
                   "   Legs black....... gusa Dorn\n"),
            "1[1] Femur with one small tooth -> Ausella busa\n"
            "1[] Posterior femur with two teeth -> 2\n"
            "2[2] Elytra spotted -> Ausella dusa\n"
            "2[] Elytra without spots -> 3\n"
            "3[3] Legs red -> Ausella fusa\n"
            "3[] Legs black -> Ausella gusa\n");
}

// A key without leaders whose third couplet ends in `lines`.
std::string sketch_without_leaders(std::string_view lines) {
  auto const all = sketch(
      "Key to the species of Ausella\n1. Pronotum with a groove 2\n"
      "– Pronotum without groove 3\n2. Elytra black Ausella nigra Roe, 1932\n"
      "– Elytra red Ausella rubra sp. n.\n3. Legs yellow Ausella fusca Roe, 1932\n"
      "– " +
      std::string{lines} + "\n");
  return all.substr(all.rfind("3[–]"));
}

TEST(PrintedWrappedNames, AGenusAtALinesEndWithoutLeaders) {
  EXPECT_EQ(sketch_without_leaders("Legs dark, the claws simple Ausella\nflavipes Roe, 1932"),
            "3[–] Legs dark, the claws simple -> Ausella flavipes\n");
  EXPECT_EQ(sketch_without_leaders("Legs dark, the claws simple (Fig. 16) Ausella\nflavipes Roe"),
            "3[–] Legs dark, the claws simple (Fig. 16) -> Ausella flavipes\n");
  EXPECT_EQ(sketch_without_leaders("Legs dark, without spines beneath Ausella brun-\nnea (Dorn)"),
            "3[–] Legs dark, without spines beneath -> Ausella brunnea\n");
  EXPECT_EQ(sketch_without_leaders("Legs dark. Ausella bru-\nnnea (Dorn, 1911)"),
            "3[–] Legs dark. -> Ausella brunnea\n");
  // An epithet behind a noun, where the species leave out their genus.
  EXPECT_EQ(sketch("Tabelle der Arten von Ausella\n1. Beine mit gelber Stirn\n"
                   "          flavipes Roe.\n– Beine schwarz, mit dunkler Tibia\n"
                   "          nigripes Dorn.\n"),
            "1[1] Beine mit gelber Stirn -> Ausella flavipes\n"
            "1[–] Beine schwarz, mit dunkler Tibia -> Ausella nigripes\n");
}

TEST(PrintedWrappedNames, GeneraWithTheirYears) {
  EXPECT_EQ(sketch("1 Gehäuse hoch 2\n"
                   "– Gehäuse flach 3\n"
                   "2 (1) Mündung mit Zähnen Ausella Roe 1847\n"
                   "– Mündung zahnlos Busella Dorn 1871\n"
                   "3 (1) Oberfläche mit Haaren Cusella Roe 1847\n"
                   "– Oberfläche kahl, glänzend Dusella Roe 1847, Fusella\n"
                   "Dorn 1858 (nur anatomisch zu trennen)\n"),
            "1[1] Gehäuse hoch -> 2\n"
            "1[–] Gehäuse flach -> 3\n"
            "2[2] Mündung mit Zähnen -> Ausella\n"
            "2[–] Mündung zahnlos -> Busella\n"
            "3[3] Oberfläche mit Haaren -> Cusella\n"
            "3[–] Oberfläche kahl, glänzend -> Dusella + Fusella (nur anatomisch zu trennen)\n");
}

}  // namespace
}  // namespace keydrift

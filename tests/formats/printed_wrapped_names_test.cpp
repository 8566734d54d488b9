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
std::string key_with_wrapped(std::string_view name) {
  return "Key to the species of Ausella\n\n1. Legs red ...... " + std::string{name} +
         "\n– Legs black ...... 2\n2. Eyes red ...... A. cusa Dorvik\n"
         "– Eyes black ...... A. fusa Dorvik\n";
}

// "name | author" of the taxon that the first lead leads to, and its remark.
std::string first_taxon(std::string_view name) {
  auto const reading = read_key(key_with_wrapped(name));
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

TEST(PrintedWrappedNames, AHyphenJoinsTheEpithetToItsLastLine) {
  EXPECT_EQ(sketch("KEY TO DRELLIMUS\n"
                   "\n"
                   "5. Interspaces of elytra elevated behind the base, costate,\n"
                   "reaching the apical callus costifer Hargate\n"
                   "Beak slender, in female nearly one-half longer than pronotum; costae\n"
                   "of elytra evanescent Jong before the apical callus tenui-\n"
                   "rostris Mabry\n"
                   "7. Head behind the eyes narrower than apex of pronotum; eyes separated\n"
                   "above by less than width of beak at base_ 8\n"
                   "Head behind the eyes as wide as apex of pronotum; eyes separated above\n"
                   "by fully the width of beak at base grandiceps, new species\n"
                   "8. Interspaces of elytra each with a single row of erect, clavate setae,\n"
                   "these as long as width of an interspace setulifer (Mabry)\n"
                   "Interspaces of elytra without erect setae, or with a few very short\n"
                   "ones on the declivity only opacicollis Dorrance\n"),
            "5[5] Interspaces of elytra elevated behind the base, costate, reaching the apical "
            "callus -> Drellimus costifer\n"
            "5[] Beak slender, in female nearly one-half longer than pronotum; costae of elytra "
            "evanescent Jong before the apical callus -> Drellimus tenuirostris\n"
            "7[7] Head behind the eyes narrower than apex of pronotum; eyes separated above by "
            "less than width of beak at base -> 8\n"
            "7[] Head behind the eyes as wide as apex of pronotum; eyes separated above by fully "
            "the width of beak at base -> Drellimus grandiceps (new species)\n"
            "8[8] Interspaces of elytra each with a single row of erect, clavate setae, these as "
            "long as width of an interspace -> Drellimus setulifer\n"
            "8[] Interspaces of elytra without erect setae, or with a few very short ones on the "
            "declivity only -> Drellimus opacicollis\n");
}

TEST(PrintedWrappedNames, ASpeciesBelowItsNumberEndsTheLead) {
  EXPECT_EQ(
      sketch(
          "KEY TO ALVEOPORUS\n"
          "\n"
          "7. Context white or pallid when fresh, not changing on drying 8\n"
          "7. Context colored when fresh, or becoming so on drying 13\n"
          "8. Growing on the wood of coniferous trees 7. A. albidus\n"
          "8. Growing on the wood of deciduous trees 8. A. caeruleus\n"
          "13. Context orange, turning purple in KOH solution 13. A. croceus\n"
          "13. Context pinkish, reddish, or pale brown, not turning purple in KOH solution 14\n"
          "14. White when fresh, quickly spotting rusty red where handled 14. A. fragilis\n"
          "14. Not spotting reddish when handled 15\n"
          "15. Sporophore soft throughout, 2-6 cm. broad, cinnamon 15. A. nidularis\n"
          "15. Sporophore firm or rigid, ochraceous; setae usually abundant in the hymenium 16.\n"
          "A. gilvulus\n"
          "\n"
          "1. ALVEOPORUS MELANOPODIUS Thaxby Figs. 112, 113\n"
          "\n"
          "Boletaster melanopodius Marr, Obs. Fung. 1: 36. 1797.\n"),
      "7[7] Context white or pallid when fresh, not changing on drying -> 8\n"
      "7[7] Context colored when fresh, or becoming so on drying -> 13\n"
      "8[8] Growing on the wood of coniferous trees -> Alveoporus albidus\n"
      "8[8] Growing on the wood of deciduous trees -> Alveoporus caeruleus\n"
      "13[13] Context orange, turning purple in KOH solution -> Alveoporus croceus\n"
      "13[13] Context pinkish, reddish, or pale brown, not turning purple in KOH solution -> 14\n"
      "14[14] White when fresh, quickly spotting rusty red where handled -> Alveoporus fragilis\n"
      "14[14] Not spotting reddish when handled -> 15\n"
      "15[15] Sporophore soft throughout, 2-6 cm. broad, cinnamon -> Alveoporus nidularis\n"
      "15[15] Sporophore firm or rigid, ochraceous; setae usually abundant in the hymenium 16. -> "
      "Alveoporus gilvulus\n");
}

TEST(PrintedWrappedNames, AnAuthorAloneBelowHisSpeciesEndsTheLead) {
  EXPECT_EQ(sketch("KEY TO CLITOLEPTA\n"
                   "\n"
                   "(A) Pileus viscid when moist.\n"
                   "(a) Growing on wood.\n"
                   "(b) Stem eccentric, very short; pileus pale tan. 801. C. excentrica\n"
                   "(bb) Stem central; pileus darker. 803. C. lignatilis Tolm.\n"
                   "(aa) Growing on the ground.\n"
                   "(b) Pileus pure white, 1-3 cm. broad. 804. C. glutinella Bretz\n"
                   "(bb) Pileus colored. 806. C. farinacea Halm\n"
                   "(AA) Pileus not viscid.\n"
                   "(a) Pileus hygrophanous. 808. C. sphagnicola\n"
                   "(aa) Pileus not hygrophanous.\n"
                   "(b) Gills long-decurrent, repeatedly forked, orange. 812. C. furcata\n"
                   "(bb) Gills adnate to subdecurrent, simple or nearly so.\n"
                   "(c) Margin of pileus fringed with stiff hairs. 813. C. ciliata Bretz\n"
                   "(cc) Margin of pileus naked or merely silky. 817. C. silvatica\n"
                   "Halm\n"
                   "\n"
                   "801. Clitolepta excentrica Bretz (EDIBLE)\n"),
            "1[A] Pileus viscid when moist. -> 2\n"
            "1[AA] Pileus not viscid. -> 5\n"
            "2[a] Growing on wood. -> 3\n"
            "2[aa] Growing on the ground. -> 4\n"
            "3[b] Stem eccentric, very short; pileus pale tan. -> Clitolepta excentrica\n"
            "3[bb] Stem central; pileus darker. -> Clitolepta lignatilis\n"
            "4[b] Pileus pure white, 1-3 cm. broad. -> Clitolepta glutinella\n"
            "4[bb] Pileus colored. -> Clitolepta farinacea\n"
            "5[a] Pileus hygrophanous. -> Clitolepta sphagnicola\n"
            "5[aa] Pileus not hygrophanous. -> 6\n"
            "6[b] Gills long-decurrent, repeatedly forked, orange. -> Clitolepta furcata\n"
            "6[bb] Gills adnate to subdecurrent, simple or nearly so. -> 7\n"
            "7[c] Margin of pileus fringed with stiff hairs. -> Clitolepta ciliata\n"
            "7[cc] Margin of pileus naked or merely silky. -> Clitolepta silvatica\n");
}

}  // namespace
}  // namespace keydrift

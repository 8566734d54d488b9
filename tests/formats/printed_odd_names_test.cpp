// Names in unusual dress: what of them is the taxon, and how many taxa there are.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::led_to;
using test::read_key;
using test::sketch;

TEST(PrintedOddNames, APhraseNameEndsInItsCollectorAndNumber) {
  EXPECT_EQ(led_to("Ausella sp. Tarn Hill (A.Roe 3317)"), "Ausella sp. Tarn Hill (A.Roe 3317)");
}

TEST(PrintedOddNames, APartIsNoKey) {
  EXPECT_EQ(led_to("Ausella (part; A. bus only)"), "Ausella (part; A. bus only)");
}

TEST(PrintedOddNames, CommonNamesBeforeACommaAreNoTaxa) {
  EXPECT_EQ(led_to("Buchenfink, Aus coelebs"), "Aus coelebs (Buchenfink)");
  EXPECT_EQ(led_to("Greenhead Tilapella, Aus macrochir"), "Aus macrochir (Greenhead Tilapella)");
}

TEST(PrintedOddNames, ABracketMaySayWhichSubspecies) {
  EXPECT_EQ(led_to("Aus bus (a. subsp. cus)"), "Aus bus subsp. cus");
  EXPECT_EQ(led_to("Aus bus (var. cus)"), "Aus bus var. cus");
}

TEST(PrintedOddNames, ACommaPartsNumberedGenera) {
  EXPECT_EQ(led_to("16. Aus, 17. Bus"), "Aus + Bus");
}

TEST(PrintedOddNames, ASubgenusMayStandBeforeADoubtfulEpithet) {
  EXPECT_EQ(led_to("Aus (Subaus) cf. bus"), "Aus (Subaus) cf. bus");
}

TEST(PrintedOddNames, ASlashPartsANewSpeciesFromAnother) {
  EXPECT_EQ(led_to("A. bus sp. nov. / A. cus Roe"), "Aus bus + Aus cus (sp. nov.)");
}

TEST(PrintedOddNames, ALetteredSpeciesIsOfTheTitlesGenus) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Leaves hairy ..... Species A, p. 177\n"
                   "1. Leaves bare ..... 2\n"
                   "2. Stem low ..... alba Roe\n"
                   "2. Stem tall ..... nana Roe\n"),
            "1[1] Leaves hairy -> Ausella Species A (p. 177)\n1[1] Leaves bare -> 2\n"
            "2[2] Stem low -> Ausella alba\n2[2] Stem tall -> Ausella nana\n");
}

TEST(PrintedOddNames, AnAuthorInCapitalsBehindAnEpithetIsNoGenus) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Leaves hairy ..... setiger HARKE\n"
                   "1. Leaves bare ..... 2\n"
                   "2. Stem low ..... niger HARKE\n"
                   "2. Stem tall ..... nanus ROE\n"),
            "1[1] Leaves hairy -> Ausella setiger\n1[1] Leaves bare -> 2\n"
            "2[2] Stem low -> Ausella niger\n2[2] Stem tall -> Ausella nanus\n");
}

TEST(PrintedOddNames, ACommonNameAndACountMayFollowAGenusInCapitals) {
  EXPECT_EQ(led_to("AUSELLA. Marshwort. 3 sp."), "Ausella (Marshwort. 3 sp.)");
}

TEST(PrintedOddNames, AnEpithetBehindAGenusCutShortMayBeCapitalised) {
  EXPECT_EQ(led_to("A. Dorinae Silv."), "Aus Dorinae");
}

TEST(PrintedOddNames, ALineOfStressDoesNotMakeTheAuthorPartOfTheName) {
  auto const reading = read_key(
      "1. Corolla red ..... Droste\u0331lia nána Roe\n"
      "1. Corolla white ..... Busella alba Dorn\n");
  auto const& taxa = reading.edition.taxa;
  ASSERT_EQ(taxa.size(), 2U);
  EXPECT_EQ(taxa.front().name, "Drostelia nana");
  EXPECT_EQ(taxa.front().authorship, "Roe");
}

TEST(PrintedOddNames, ANumberInABracketBehindAnEpithetIsNoCouplet) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear ..... 2\n"
                   "1. Wings dark ..... alba\n"
                   "2. Legs pale ..... rivulicola (1)\n"
                   "2. Legs dark ..... nigra\n"),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Ausella alba\n"
            "2[2] Legs pale -> Ausella rivulicola (1)\n2[2] Legs dark -> Ausella nigra\n");
}

TEST(PrintedOddNames, ANewVarietyBehindAnEpithetIsOfTheTitlesGenus) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Wings clear, the veins pale ..... 2\n"
                   "1. Wings dark, the face golden ..... fulvus aurifrons, n. var.\n"
                   "2. Legs pale ..... pallipes Roe\n"
                   "2. Legs wholly black ..... tristis Roe\n"),
            "1[1] Wings clear, the veins pale -> 2\n"
            "1[1] Wings dark, the face golden -> Ausella fulvus aurifrons (n. var.)\n"
            "2[2] Legs pale -> Ausella pallipes\n2[2] Legs wholly black -> Ausella tristis\n");
}

TEST(PrintedOddNames, AnEpithetInItsCapitalClosesALead) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Pedicels slender ..... 4. A. attenuata.\n"
                   "1. Pedicels stout ..... 5. A. Roellana.\n"),
            "1[1] Pedicels slender -> Ausella attenuata\n"
            "1[1] Pedicels stout -> Ausella roellana\n");
}

TEST(PrintedOddNames, AGenusMayHaveALetterForItsName) {
  EXPECT_EQ(sketch("1. Antennae long ..... Genus A\n1. Antennae short ..... Genus 2\n"),
            "1[1] Antennae long -> Genus A\n"
            "1[1] Antennae short -> Genus 2\n");
}

TEST(PrintedOddNames, WordsInCapitalsBeforeABinomialAreACommonName) {
  EXPECT_EQ(sketch("1 • Wings dark\n"
                   "     SOOTY QUEEN Ausagrion obscurus (p. 46)\n"
                   "  • Wings clear ..... 2\n"
                   "2 • Legs red\n"
                   "     GREATER EMBER Busagrion major (p. 56)\n"
                   "  • Legs pale\n"
                   "     COMMON LAMPTAIL Cusagrion commune (p. 60)\n"),
            "1[1] Wings dark -> Ausagrion obscurus (SOOTY QUEEN; p. 46)\n"
            "1[•] Wings clear -> 2\n"
            "2[2] Legs red -> Busagrion major (GREATER EMBER; p. 56)\n"
            "2[•] Legs pale -> Cusagrion commune (COMMON LAMPTAIL; p. 60)\n");
}

TEST(PrintedOddNames, ABlankOrAFigureMayStandBeforeTheCommaBehindACommonName) {
  EXPECT_EQ(led_to("SMOOTH CLOVERLEAF WORM , Busella viridis"),
            "Busella viridis (SMOOTH CLOVERLEAF WORM)");
  EXPECT_EQ(led_to("SMOOTH CABBAGEWORM (Fig. 2), Busella viridis"),
            "Busella viridis (SMOOTH CABBAGEWORM)");
  EXPECT_EQ(led_to("Ausella busa , Busella cusa"), led_to("Ausella busa, Busella cusa"));
  EXPECT_EQ(led_to("Ausella busa (Fig. 2), Busella cusa"), "Ausella busa + Busella cusa (Fig. 2)");
}

TEST(PrintedOddNames, AnUnnamedSpeciesMayStandBetweenGuillemets) {
  EXPECT_EQ(sketch("1. Nageoire noire ..... Ausella sp. « Haute-Rive »\n"
                   "1. Nageoire claire ..... Ausella brevis\n"),
            "1[1] Nageoire noire -> Ausella sp. « Haute-Rive »\n"
            "1[1] Nageoire claire -> Ausella brevis\n");
}

TEST(PrintedOddNames, ABracketMayNameEachVariety) {
  EXPECT_EQ(sketch("Key to Ausella\n\n"
                   "1. Gemmae brown ..... 10. A. vulgata (var. vulgata, var. rivularis)\n"
                   "1. Gemmae pale ..... 11. A. pallida (subsp. alba and subsp. nivea)\n"),
            "1[1] Gemmae brown -> Ausella vulgata var. vulgata + Ausella vulgata var. rivularis\n"
            "1[1] Gemmae pale -> Ausella pallida subsp. alba + Ausella pallida subsp. nivea\n");
}

TEST(PrintedOddNames, EpithetsMayBeginWithACount) {
  EXPECT_EQ(sketch("Tableau du genre Ausella\n\n"
                   "1. Deux taches ..... 4-signata Roe\n"
                   "1. Une tache ..... bimaculata Roe\n"
                   "1. Sans taches, pattes 4-lobed ..... A. 10-punctata Roe\n"),
            "1[1] Deux taches -> Ausella 4-signata\n"
            "1[1] Une tache -> Ausella bimaculata\n"
            "1[1] Sans taches, pattes 4-lobed -> Ausella 10-punctata\n");
}

TEST(PrintedOddNames, UnnamedSpeciesStandInListsAndBehindShortGenera) {
  EXPECT_EQ(sketch("Key to Ausella\n\n"
                   "1. Leaves green ..... Ausella sp. B and Ausella sp. C (females alike)\n"
                   "   Leaves grey . . . . . 2\n"
                   "2. Leaves soft . . . . . 12. A. mollis\n"
                   "   Leaves bare; fruits 3 cm. long 13. A. sp. A\n"),
            "1[1] Leaves green -> Ausella sp. B + Ausella sp. C (females alike)\n"
            "1[] Leaves grey -> 2\n"
            "2[2] Leaves soft -> Ausella mollis\n"
            "2[] Leaves bare; fruits 3 cm. long -> Ausella sp. A\n");
}

TEST(PrintedOddNames, EpithetsWithAuthorsAndPagesMakeAList) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "1. Coxae brown ..... impigra Roe (p. 371)\n"
                   "   Coxae white ..... punctata Roe (p. 372), hirsuteron Dorn (p. 375)\n"),
            "1[1] Coxae brown -> Ausella impigra (p. 371)\n"
            "1[] Coxae white -> Ausella punctata + Ausella hirsuteron (p. 372; p. 375)\n");
}

TEST(PrintedOddNames, ASecondAuthorOfANewSpeciesIsNoGenus) {
  EXPECT_EQ(sketch("1. Wings dark ..... Ausella busa Roe & Dorn-Ashby sp. n.\n"
                   "1. Wings clear ..... Ausella cusa Roe & Dorna, sp. nov.\n"),
            "1[1] Wings dark -> Ausella busa (sp. n.)\n"
            "1[1] Wings clear -> Ausella cusa (sp. nov.)\n");
}

TEST(PrintedOddNames, CountsInBracketsBehindNames) {
  EXPECT_EQ(sketch("Key to the genera\n\n"
                   "1. Rays narrow\n"
                   "   2. Fibres septate .......... Ausella (2)\n"
                   "   2. Fibres not septate .......... Busella (1)\n"
                   "1. Rays wide\n"
                   "   3. Crystals present .......... Cusella (2)\n"
                   "   3. Crystals absent .......... Dusella (7)\n"),
            "1[1] Rays narrow -> 2\n"
            "1[1] Rays wide -> 3\n"
            "2[2] Fibres septate -> Ausella (2)\n"
            "2[2] Fibres not septate -> Busella (1)\n"
            "3[3] Crystals present -> Cusella (2)\n"
            "3[3] Crystals absent -> Dusella (7)\n");
  // They lead on to couplets that are there, and no two to one.
  EXPECT_EQ(sketch("Key to the groups\n\n"
                   "1. Rays narrow .......... Ausella (2)\n"
                   "1. Rays wide .......... Busella (3)\n"
                   "2. Fibres septate .......... Ausella busa\n"
                   "2. Fibres not septate .......... Ausella cusa\n"
                   "3. Crystals present .......... Busella dusa\n"
                   "3. Crystals absent .......... Busella eusa\n"),
            "1[1] Rays narrow -> 2 (Ausella)\n"
            "1[1] Rays wide -> 3 (Busella)\n"
            "2[2] Fibres septate -> Ausella busa\n"
            "2[2] Fibres not septate -> Ausella cusa\n"
            "3[3] Crystals present -> Busella dusa\n"
            "3[3] Crystals absent -> Busella eusa\n");
}

TEST(PrintedOddNames, AnUndescribedGenusWithANumber) {
  EXPECT_EQ(sketch("1. Lunule exposed ... undescribed genus 1 [Neotropical]\n"
                   "- Lunule hidden ... 2\n"
                   "2. Hairs long ... Ausella Roe\n"
                   "- Hairs short ... Busella Roe\n"),
            "1[1] Lunule exposed -> undescribed genus 1 (Neotropical)\n"
            "1[-] Lunule hidden -> 2\n"
            "2[2] Hairs long -> Ausella\n"
            "2[-] Hairs short -> Busella\n");
}

TEST(PrintedOddNames, AGroupBeneathItsGenus) {
  EXPECT_EQ(sketch("1. Rays narrow .......... Ausella sect. Ausella\n"
                   "1. Rays wide .......... 2\n"
                   "2. Fibres septate .......... Ausella subg. Busa Roe\n"
                   "2. Fibres not septate .......... Cusella\n"),
            "1[1] Rays narrow -> Ausella sect. Ausella\n"
            "1[1] Rays wide -> 2\n"
            "2[2] Fibres septate -> Ausella subg. Busa\n"
            "2[2] Fibres not septate -> Cusella\n");
}

TEST(PrintedOddNames, SubspeciesOfNoNamedSpeciesDoNotPileUp) {
  EXPECT_EQ(sketch("Key to subspecies\n"
                   "\n"
                   "1. Leaves ovate ..... subsp. busa\n"
                   "1. Leaves linear ..... subsp. linea Tor.\n"),
            "1[1] Leaves ovate -> subsp. busa\n1[1] Leaves linear -> subsp. linea\n");
}

TEST(PrintedOddNames, SubspeciesAreOfTheSpeciesThatTheTitleOfTheirKeyNames) {
  EXPECT_EQ(sketch("Key to the varieties of A. busa\n"
                   "\n"
                   "1. Leaves ovate ..... var. busa\n"
                   "1. Leaves linear ..... var. linea Tor.\n"),
            "1[1] Leaves ovate -> A. busa var. busa\n1[1] Leaves linear -> A. busa var. linea\n");
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Leaves ovate ..... A. busa\n"
                   "1. Leaves linear ..... A. flava\n"
                   "\n"
                   "Key to the subspecies of A. busa\n"
                   "\n"
                   "1. Stem hairy ..... subsp. alpina\n"
                   "1. Stem bald ..... subsp. linea\n"),
            "1[1] Leaves ovate -> Ausella busa\n"
            "1[1] Leaves linear -> Ausella flava\n"
            "1[1] Stem hairy -> Ausella busa subsp. alpina\n"
            "1[1] Stem bald -> Ausella busa subsp. linea\n");
}

TEST(PrintedOddNames, AGroupMayStandBeforeTheGenusOrWithoutIt) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white ..... gr. A. alba\n"
                   "1. Flowers yellow ..... gr. longa\n"),
            "1[1] Flowers white -> Ausella gr. alba\n1[1] Flowers yellow -> Ausella gr. longa\n");
}

TEST(PrintedOddNames, BehindABlankGroupsAndUnnamedSpeciesKeepTheirGenus) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white A. spec. A\n"
                   "1. Flowers yellow A. flava group\n"),
            "1[1] Flowers white -> Ausella spec. A\n"
            "1[1] Flowers yellow -> Ausella flava group\n");
}

TEST(PrintedOddNames, ASynonymInBracketsIsNotLedTo) {
  EXPECT_EQ(sketch("Key to species of Ausella\n"
                   "\n"
                   "1. Flowers white A. alba (= A. minor Tor.)\n"
                   "1. Flowers yellow A. flava\n"),
            "1[1] Flowers white -> Ausella alba (= A. minor Tor.)\n"
            "1[1] Flowers yellow -> Ausella flava\n");
}

TEST(PrintedOddNames, DoubtsAndQuotationMarksLeaveTheEpithet) {
  EXPECT_EQ(led_to("A. bus?"), "Aus bus (?)");
  EXPECT_EQ(led_to("A. ?bus Roe"), "Aus bus (?)");
  EXPECT_EQ(led_to("A. \"bus\""), "Aus \"bus\"");
  EXPECT_EQ(led_to("A. bus: see Remarks"), "Aus bus (see Remarks)");
}

TEST(PrintedOddNames, AnEpithetMayBeCutShortToAnN) {
  EXPECT_EQ(sketch("Key to the subspecies of Ausella nigrata\n"
                   "\n"
                   "1. Eyes red ...... A. n. nigrata Roe\n"
                   "1. Eyes black ...... A. n. alba Dorn\n"),
            "1[1] Eyes red -> Ausella nigrata nigrata\n1[1] Eyes black -> Ausella nigrata alba\n");
}

TEST(PrintedOddNames, EpithetsMayBeListedWithCommasOnly) {
  EXPECT_EQ(led_to("A. alba, fulva"), "Aus alba + Aus fulva");
  EXPECT_EQ(led_to("A. nigra, rubra, simplex"), "Aus nigra + Aus rubra + Aus simplex");
  EXPECT_EQ(led_to("A. alba, rare"), "Aus alba (rare)");
}

TEST(PrintedOddNames, ASpeciesWithoutANameIsAnEnd) {
  EXPECT_EQ(led_to("Morphospecies 2"), "Zus Morphospecies 2");
}

TEST(PrintedOddNames, ANewSpeciesBehindASentenceKeepsItsGenus) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Elytra smooth. Ausella nigrata sp. nov.\n"
                   "1. Elytra rough. Genus Busella Roe\n"),
            "1[1] Elytra smooth. -> Ausella nigrata (sp. nov.)\n"
            "1[1] Elytra rough. -> Busella (Genus)\n");
}

TEST(PrintedOddNames, AnEnglishAdjectiveBeforeAGenusIsAWord) {
  EXPECT_EQ(sketch("1. Stem hairy 2\n"
                   "1. Stem glabrous Ausella\n"
                   "2. Seeds angular Busella\n"
                   "2. Seeds round Cusella\n"),
            "1[1] Stem hairy -> 2\n1[1] Stem glabrous -> Ausella\n"
            "2[2] Seeds angular -> Busella\n2[2] Seeds round -> Cusella\n");
  EXPECT_EQ(sketch("1. Stem hairy Ausaceae, p. 50\n1. Stem glabrous Busaceae, p. 52\n"),
            "1[1] Stem hairy -> Ausaceae (p. 50)\n1[1] Stem glabrous -> Busaceae (p. 52)\n");
}

TEST(PrintedOddNames, GreekLettersCountVarieties) {
  EXPECT_EQ(led_to("Aus bus β. elata Roe"), "Aus bus var. elata");
  EXPECT_EQ(led_to("Aus bus var, elata Roe"), "Aus bus var. elata");
  EXPECT_EQ(led_to("Aus bus subsp, cus Roe"), "Aus bus subsp. cus");
}

TEST(PrintedOddNames, SpeciesWithoutNamesMayStandOnLinesOfTheirOwn) {
  EXPECT_EQ(sketch("1.\tVertex with a carina; labrum bilobed\n"
                   "\tAusella busa Roe, 1949\n"
                   "1’.\tVertex without carina; labrum simple (three workers known)\n"
                   "\tAusella sp. 2\n"
                   "\n"
                   "Figure 18. Mandible, outer view.\n"
                   "\n"
                   "4.4 Description of the species\n"),
            "1[1] Vertex with a carina; labrum bilobed -> Ausella busa\n"
            "1[1’] Vertex without carina; labrum simple (three workers known) -> Ausella sp. 2\n");
}

// What the last lead of a key without leaders leads to that ends so.
std::string led_to_without_leaders(std::string_view end) {
  auto const all = sketch(
      "Key to the species of Ausella\n1. Pronotum with a groove 2\n"
      "– Pronotum without groove 3\n2. Elytra black Ausella nigra Roe, 1932\n"
      "– Elytra red Ausella rubra sp. n.\n3. Legs dark Ausella fusca Roe, 1932\n"
      "– Legs yellow, without setae " +
      std::string{end} + "\n");
  auto const last = all.substr(all.rfind("3[–] "));
  constexpr std::string_view kWords = "3[–] Legs yellow, without setae -> ";
  return last.starts_with(kWords) ? last.substr(kWords.size(), last.size() - kWords.size() - 1)
                                  : last;
}

TEST(PrintedOddNames, AGenusWithItsAuthorAndARemarkEndsALead) {
  EXPECT_EQ(led_to_without_leaders("Busella Roe, 1932 (p. 12)"), "Busella (p. 12)");
  EXPECT_EQ(led_to_without_leaders("Busella Roe, 1932 (6 species)"), "Busella (6 species)");
  EXPECT_EQ(led_to_without_leaders("Busella Roe, 1932 [monotypic]"), "Busella (monotypic)");
  EXPECT_EQ(led_to_without_leaders("Busella Roe, gen. nov."), "Busella (gen. nov.)");
  EXPECT_EQ(led_to_without_leaders("subgenus Busella Roe, 1932"), "Busella (subgenus)");
  EXPECT_EQ(led_to_without_leaders("Busellini Roe, 1932"), "Busellini");
}

TEST(PrintedOddNames, SignsAndNumbersBesideANameWithoutLeaders) {
  EXPECT_EQ(led_to_without_leaders("Ausella busa (1)"), "Ausella busa (1)");
  EXPECT_EQ(led_to_without_leaders("Ausella sp. nov. 1"), "Ausella sp. nov. 1");
  EXPECT_EQ(led_to_without_leaders("†Ausella busa Roe, 1932"), "Ausella busa (†)");
  EXPECT_EQ(led_to_without_leaders("Ausella busa Contini, 1932"), "Ausella busa");
  EXPECT_EQ(led_to("♂ Ausella busa Roe, 1932"), "Ausella busa (♂)");
  EXPECT_EQ(led_to("Ausella busa incertae sedis"), "Ausella busa (incertae sedis)");
  EXPECT_EQ(led_to("Ausella ‘busa’ Roe"), "Ausella ‘busa’");
}

TEST(PrintedOddNames, AreReadWithoutCharactersThatNobodySees) {
  auto const* const text =
      "1. Scales cycloid ..... 2\n– Scales cte\u200Bnoid ..... Ausella r\u202Eara\n"
      "2. Fins red ..... Ausella cu\u200Bsa\n– Fins blue ..... Ausella dusa\n";
  EXPECT_EQ(test::sketch(text),
            "1[1] Scales cycloid -> 2\n1[–] Scales ctenoid -> Ausella rara\n"
            "2[2] Fins red -> Ausella cusa\n2[–] Fins blue -> Ausella dusa\n");
  EXPECT_EQ(test::findings_of(text),
            std::vector<std::string>{
                "key.txt:2:34: information: the invisible character U+202E stands in this name, "
                "which was read without it, as was 1 further name [invisible-characters] (take "
                "such characters out, so that names are found and compared as they look)"});
}

}  // namespace
}  // namespace keydrift

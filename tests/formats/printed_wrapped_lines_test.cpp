// Wrapped lines that begin as leads or captions do.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

// A small key whose first lead is `lead`, whose second one `rival`.
std::string key_of(std::string_view lead, std::string_view rival = "– Legs black ...... A. dusa") {
  return "Key to the species of Ausella\n\n" + std::string{lead} + "\n" + std::string{rival} +
         "\n2. Eyes red ...... A. cusa\n– Eyes black ...... A. fusa\n";
}

std::string read_as(std::string_view words, std::string_view rival = "Legs black -> Ausella dusa") {
  return "1[1] " + std::string{words} + "\n1[–] " + std::string{rival} +
         "\n2[2] Eyes red -> Ausella cusa\n2[–] Eyes black -> Ausella fusa\n";
}

TEST(PrintedWrappedLines, NumbersBehindWordsThatEndNoSentence) {
  EXPECT_EQ(sketch(key_of("1. Legs red; spots on tergites 1 and\n2. Hind legs long ...... 2")),
            read_as("Legs red; spots on tergites 1 and 2. Hind legs long -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red; segment 1 shorter than\n   2. legs long ...... 2")),
            read_as("Legs red; segment 1 shorter than 2. legs long -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red; spots on tergites 1 and\n3. Hind legs long ...... 2")),
            read_as("Legs red; spots on tergites 1 and 3. Hind legs long -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red ...... 2",
                          "– Legs black; spots on tergites 1,\n2. Hind legs long ...... A. dusa")),
            read_as("Legs red -> 2",
                    "Legs black; spots on tergites 1, 2. Hind legs long -> Ausella dusa"));
}

TEST(PrintedWrappedLines, NumbersAmongRepeatedLabels) {
  EXPECT_EQ(sketch("1. Legs red; spots on tergites 1 and\n"
                   "2. Hind legs long ...... 2\n"
                   "1. Legs black ...... Ausella dusa\n"
                   "2. Eyes red ...... Ausella cusa\n"
                   "2. Eyes black ...... Ausella fusa\n"),
            "1[1] Legs red; spots on tergites 1 and 2. Hind legs long -> 2\n"
            "1[1] Legs black -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[2] Eyes black -> Ausella fusa\n");
  EXPECT_EQ(sketch("1a. Legs red; spots on tergites 1 and\n"
                   "2. Hind legs long ...... 2\n"
                   "1b. Legs black ...... Ausella dusa\n"
                   "2a. Eyes red ...... Ausella cusa\n"
                   "2b. Eyes black ...... Ausella fusa\n"),
            "1[1a] Legs red; spots on tergites 1 and 2. Hind legs long -> 2\n"
            "1[1b] Legs black -> Ausella dusa\n"
            "2[2a] Eyes red -> Ausella cusa\n"
            "2[2b] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, NumbersThatLeaveNoWordsToALead) {
  EXPECT_EQ(sketch("1 Head ending before tergite\n"
                   "2 ..... 2\n"
                   "- Head longer ..... Ausella dusa\n"
                   "2 Eyes red; head as long as article\n"
                   "3 ..... Ausella cusa\n"
                   "- Eyes black ..... 3\n"
                   "3 Wings clear ..... Ausella fusa\n"
                   "- Wings dark ..... Ausella gusa\n"),
            "1[1] Head ending before tergite 2 -> 2\n"
            "1[-] Head longer -> Ausella dusa\n"
            "2[2] Eyes red; head as long as article 3 -> Ausella cusa\n"
            "2[-] Eyes black -> 3\n"
            "3[3] Wings clear -> Ausella fusa\n"
            "3[-] Wings dark -> Ausella gusa\n");
}

TEST(PrintedWrappedLines, RangesAndFormulas) {
  for (auto const formula : {"2 – 3", "1 + 2", "1 : 2"}) {
    auto const words = std::string{formula};
    EXPECT_EQ(sketch("1 Black marks on segments\n" + words +
                     " ...... 2\n"
                     "– Marks absent ...... Ausella dusa\n"
                     "2 Eyes red ...... Ausella cusa\n"
                     "– Eyes black ...... Ausella fusa\n"),
              "1[1] Black marks on segments " + words +
                  " -> 2\n"
                  "1[–] Marks absent -> Ausella dusa\n"
                  "2[2] Eyes red -> Ausella cusa\n"
                  "2[–] Eyes black -> Ausella fusa\n");
  }
}

TEST(PrintedWrappedLines, VeinsAndTimes) {
  EXPECT_EQ(sketch(key_of("1. Hind wing with veins\n1A and 2A joined ...... 2")),
            read_as("Hind wing with veins 1A and 2A joined -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red; head about\n2x as long as wide ...... 2")),
            read_as("Legs red; head about 2x as long as wide -> 2"));
}

TEST(PrintedWrappedLines, NumbersThatCloseABracket) {
  EXPECT_EQ(sketch(key_of("1. Legs red (Figs 1,\n2) ...... 2")),
            read_as("Legs red (Figs 1, 2) -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red, tooth (T\n2) large ...... 2")),
            read_as("Legs red, tooth (T 2) large -> 2"));
}

TEST(PrintedWrappedLines, RangesBrokenAtTheirDash) {
  EXPECT_EQ(sketch(key_of("1. Legs red; body length 3.0\n– 3.5 mm ...... 2")),
            read_as("Legs red; body length 3.0 – 3.5 mm -> 2"));
  EXPECT_EQ(sketch(key_of("1. Legs red ...... 2",
                          "– Legs black; body length 3.0\n– 3.5 mm ...... A. dusa")),
            read_as("Legs red -> 2", "Legs black; body length 3.0 – 3.5 mm -> Ausella dusa"));
  EXPECT_EQ(sketch("1a. Legs red; body length 3.0\n"
                   "– 3.5 mm ...... 2\n"
                   "1b. Legs black ...... Ausella dusa\n"
                   "2a. Eyes red ...... Ausella cusa\n"
                   "2b. Eyes black ...... Ausella fusa\n"),
            "1[1a] Legs red; body length 3.0 – 3.5 mm -> 2\n"
            "1[1b] Legs black -> Ausella dusa\n"
            "2[2a] Eyes red -> Ausella cusa\n"
            "2[2b] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, FiguresBeforeABlankLine) {
  for (auto const figure : {"Fig. 8", "Figs 3, 5", "figs. 40–42", "Pl. 3, fig. 2", "Map 3"}) {
    auto const words = std::string{figure};
    EXPECT_EQ(sketch("1. Legs red ...... 2\n"
                     "– Legs black; head as in\n" +
                     words +
                     " ...... Ausella dusa\n"
                     "\n"
                     "2. Eyes red ...... Ausella cusa\n"
                     "– Eyes black ...... Ausella fusa\n"),
              "1[1] Legs red -> 2\n"
              "1[–] Legs black; head as in " +
                  words +
                  " -> Ausella dusa\n"
                  "2[2] Eyes red -> Ausella cusa\n"
                  "2[–] Eyes black -> Ausella fusa\n")
        << words;
  }
}

// --- lines that begin so by right ----------------------------------------------------------------

TEST(PrintedWrappedLines, ACaptionThatPartsALead) {
  EXPECT_EQ(sketch("1. Legs red ...... 2\n"
                   "– Legs black; head longer\n"
                   "Fig. 8. Head of a male.\n"
                   "\n"
                   "than wide ...... Ausella dusa\n"
                   "2. Eyes red ...... Ausella cusa\n"
                   "– Eyes black ...... Ausella fusa\n"),
            "1[1] Legs red -> 2\n"
            "1[–] Legs black; head longer than wide -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, LeadsWithCoupletsBeneathThem) {
  EXPECT_EQ(sketch("1. Legs red, more than in\n"
                   "  2. Eyes red ...... Ausella cusa\n"
                   "  2. Eyes black ...... Ausella fusa\n"
                   "1. Legs black\n"
                   "  3. Wings clear, shorter\n"
                   "    4. Tail long ...... Ausella gusa\n"
                   "    4. Tail short ...... Ausella husa\n"
                   "  3. Wings dark ...... Ausella dusa\n"),
            "1[1] Legs red, more than in -> 2\n"
            "1[1] Legs black -> 3\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[2] Eyes black -> Ausella fusa\n"
            "3[3] Wings clear, shorter -> 4\n"
            "3[3] Wings dark -> Ausella dusa\n"
            "4[4] Tail long -> Ausella gusa\n"
            "4[4] Tail short -> Ausella husa\n");
}

TEST(PrintedWrappedLines, LeadsThatBeginWithNumbers) {
  EXPECT_EQ(sketch("1. Stamens 5\n"
                   "  2. Eyes red ...... Ausella cusa\n"
                   "  – Eyes black ...... Ausella fusa\n"
                   "– 10 stamens ...... Ausella dusa\n"),
            "1[1] Stamens 5 -> 2\n"
            "1[–] 10 stamens -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, AHeadThatPartsALead) {
  EXPECT_EQ(sketch("1. Legs red; spots on tergites 1 and\n"
                   "2  ROE: MARSH FLIES\n"
                   "3; eyes red ...... 2\n"
                   "– Legs black ...... Ausella dusa\n"
                   "\n"
                   "4  ROE: MARSH FLIES\n"
                   "\n"
                   "2. Eyes red ...... Ausella cusa\n"
                   "– Eyes black ...... Ausella fusa\n"),
            "1[1] Legs red; spots on tergites 1 and 3; eyes red -> 2\n"
            "1[–] Legs black -> Ausella dusa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, ARomanNumberAloneEndsNoLeadOfArabicOnes) {
  EXPECT_EQ(sketch("1a. Shield entire, reaching coxa\n    II.\n    2\n"
                   "1b. Shield short.\n    3\n2a. Legs long.\n    A. busa\n2b. Legs short.\n"
                   "    A. cusa\n3a. Tail long.\n    A. dusa\n3b. Tail short.\n   A. eusa\n"),
            "1[1a] Shield entire, reaching coxa II. -> 2\n"
            "1[1b] Shield short. -> 3\n"
            "2[2a] Legs long. -> A. busa\n"
            "2[2b] Legs short. -> A. cusa\n"
            "3[3a] Tail long. -> A. dusa\n"
            "3[3b] Tail short. -> A. eusa\n");
}

TEST(PrintedWrappedLines, TheNumberOfAFigureAloneEndsNoLead) {
  EXPECT_EQ(
      sketch("1. Shield long\n2\n– Shield short\n4\n2. Shield truncate (fig.\n4)\n"
             "Ausella busa Roe\n– Shield round\n3\n3. Legs long\nAusella cusa Roe\n– Legs short\n"
             "Ausella dusa Roe\n4. Tail long\nAusella eusa Roe\n– Tail short\nAusella fusa Roe\n"),
      "1[1] Shield long -> 2\n"
      "1[–] Shield short -> 4\n"
      "2[2] Shield truncate (fig. 4) -> Ausella busa\n"
      "2[–] Shield round -> 3\n"
      "3[3] Legs long -> Ausella cusa\n"
      "3[–] Legs short -> Ausella dusa\n"
      "4[4] Tail long -> Ausella eusa\n"
      "4[–] Tail short -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, TheSpeciesMayStandBeneathItsNumber) {
  EXPECT_EQ(sketch("1. Shield entire. 2\n- Shield divided. 3\n"
                   "2. Setae simple, the longest 110-130. 1.\n    Ausella longiseta Roe\n"
                   "- Setae plumose, weakly serrate. 2.\n    Ausella punctata Roe\n"
                   "3. Legs long. 3. Ausella grandis Roe\n- Legs short. 4. Ausella parva Roe\n"),
            "1[1] Shield entire. -> 2\n"
            "1[-] Shield divided. -> 3\n"
            "2[2] Setae simple, the longest 110-130. -> Ausella longiseta\n"
            "2[-] Setae plumose, weakly serrate. -> Ausella punctata\n"
            "3[3] Legs long. -> Ausella grandis\n"
            "3[-] Legs short. -> Ausella parva\n");
}

TEST(PrintedWrappedLines, ADashMayStandBeforeTheRestOfALead) {
  EXPECT_EQ(
      sketch("1. Tiges dressées ..... 2\n"
             "— Tiges couchées ..... 3\n"
             "2. Feuilles rondes, entières ; fleurs solitaires.\n"
             "— Marais tourbeux ..... L. nummulifolia Roe\n"
             "— Feuilles ovales ..... L. repens Roe\n"
             "3. Calice poilu ..... 4\n"
             "— Calice glabre ..... 5\n"
             "4. Style long ..... L. longistyla Roe\n"
             "— Style court ..... L. brevistyla Roe\n"
             "5. Tige velue ..... L. hirta Roe\n"
             "— Tige glabre ..... L. nuda Roe\n"),
      "1[1] Tiges dressées -> 2\n"
      "1[—] Tiges couchées -> 3\n"
      "2[2] Feuilles rondes, entières ; fleurs solitaires. — Marais tourbeux -> L. nummulifolia\n"
      "2[—] Feuilles ovales -> L. repens\n"
      "3[3] Calice poilu -> 4\n"
      "3[—] Calice glabre -> 5\n"
      "4[4] Style long -> L. longistyla\n"
      "4[—] Style court -> L. brevistyla\n"
      "5[5] Tige velue -> L. hirta\n"
      "5[—] Tige glabre -> L. nuda\n");
}

TEST(PrintedWrappedLines, AUnitAloneIsNoLabelAndNoEnd) {
  EXPECT_EQ(sketch("a. Shield entire.\n"
                   "    b. Plates fused; length less than 4\n"
                   "       mm.\n"
                   "                         Ausella busa Roe\n"
                   "    bb. Plates two; length 4.5-5.2\n"
                   "       mm.        Ausella cusa Roe\n"
                   "aa. Shield divided (in females 18\n"
                   "       mm.) ..... Ausella dusa Roe\n"),
            "a[a] Shield entire. -> b\n"
            "a[aa] Shield divided (in females 18 mm.) -> Ausella dusa\n"
            "b[b] Plates fused; length less than 4 mm. -> Ausella busa\n"
            "b[bb] Plates two; length 4.5-5.2 mm. -> Ausella cusa\n");
}

TEST(PrintedWrappedLines, ADashBetweenRivalsThatAreNumberedBeginsNone) {
  EXPECT_EQ(sketch("1a. Wings clear ..... 2\n1b. Wings dark ..... Aus bus\n"
                   "2a. Legs long, head as wide as the thorax.\n"
                   "— Marshes; under wet leaves ..... Aus cus\n2b. Legs short ..... 3\n"
                   "3a. Eyes round ..... Aus dus\n3b. Eyes narrow ..... Aus eus\n"),
            "1[1a] Wings clear -> 2\n"
            "1[1b] Wings dark -> Aus bus\n"
            "2[2a] Legs long, head as wide as the thorax. — Marshes; under wet leaves -> Aus cus\n"
            "2[2b] Legs short -> 3\n"
            "3[3a] Eyes round -> Aus dus\n"
            "3[3b] Eyes narrow -> Aus eus\n");
}

TEST(PrintedWrappedLines, AFigureInSmallLettersEndsALead) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "Males\n"
                   "\n"
                   "L Claspers 2-segmented, the apical seg-\n"
                   "ment at least half as long as basal\n"
                   "segment, fig. 512.... 2\n"
                   "\n"
                   "Claspers 1-segmented or with the apical\n"
                   "segment reduced to a minute knob,\n"
                   "fig. 519 . . . 3\n"
                   "\n"
                   "2. Tergite deeply cleft, fig.\n"
                   "513 .. A. busa\n"
                   "\n"
                   "Tergite entire .. A. cusa\n"
                   "\n"
                   "3. Eyes large .. A. dusa\n"
                   "\n"
                   "Eyes small .. A. fusa\n"),
            "1[] L Claspers 2-segmented, the apical segment at least half as long as basal "
            "segment, fig. 512 -> 2\n"
            "1[] Claspers 1-segmented or with the apical segment reduced to a minute knob, fig. "
            "519 -> 3\n"
            "2[2] Tergite deeply cleft, fig. 513 -> Ausella busa\n"
            "2[] Tergite entire -> Ausella cusa\n"
            "3[3] Eyes large -> Ausella dusa\n"
            "3[] Eyes small -> Ausella fusa\n");
}

TEST(PrintedWrappedLines, APageMayBreakWithinItsBracket) {
  EXPECT_EQ(sketch("Key to the species of Ombrisca\n"
                   "\n"
                   "1 Body length 9–13 mm ... (p. 43) ... Ombrisca grandis Brandeth\n"
                   "—Body length 4–7 mm; aedeagus otherwise ....... 2\n"
                   "2(1) Interstriae with tufts ... (p. 45) ... Ombrisca vestita Tolle\n"
                   "—Interstriae without tufts, erect setae uniformly distributed; femora "
                   "unicolorous ... (p.\n"
                   "47) ... Ombrisca pilifera new species\n"),
            "1[1] Body length 9–13 mm ... (p. 43) -> Ombrisca grandis\n"
            "1[—] Body length 4–7 mm; aedeagus otherwise -> 2\n"
            "2[2] Interstriae with tufts ... (p. 45) -> Ombrisca vestita\n"
            "2[—] Interstriae without tufts, erect setae uniformly distributed; femora unicolorous "
            "... (p. 47) -> Ombrisca pilifera (new species)\n");
}

}  // namespace
}  // namespace keydrift

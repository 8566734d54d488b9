// Labels in forms that few keys print, and numbers at the beginning of lines that are no labels.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

TEST(PrintedLabelForms, ARingCountsAsFrenchAndSpanishWorksDo) {
  EXPECT_EQ(sketch("1° Wings clear ..... 2\n"
                   "1° Wings dark ..... 3\n"
                   "2° Legs pale ..... Aus bus\n"
                   "2° Legs dark ..... Aus cus\n"
                   "3° Head long ..... Aus dus\n"
                   "3° Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[3] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, WordsBehindALetterOfAnOutlineMayBeginWithACount) {
  EXPECT_EQ(sketch("I. Wings clear.\n"
                   "  a) 3 or more spines on the tibia ..... Aus bus\n"
                   "  b) 2 spines on the tibia ..... Aus cus\n"
                   "II. Wings dark.\n"
                   "  a) Head long ..... Aus dus\n"
                   "  b) Head short ..... Aus eus\n"
                   "  c) Head round ..... Aus fus\n"),
            "1[I] Wings clear. -> 2\n1[II] Wings dark. -> 3\n"
            "2[a] 3 or more spines on the tibia -> Aus bus\n"
            "2[b] 2 spines on the tibia -> Aus cus\n3[a] Head long -> Aus dus\n"
            "3[b] Head short -> Aus eus\n3[c] Head round -> Aus fus\n");
}

TEST(PrintedLabelForms, WordsBehindANumberAndALetterMayBeginWithACount) {
  EXPECT_EQ(sketch("1. a) Wings clear ..... 2\n"
                   "   b) Wings dark ..... 3\n"
                   "2. a) Legs pale ..... 4\n"
                   "   b) Legs dark ..... 5\n"
                   "3. a) Head long ..... Aus cus\n"
                   "   b) Head short ..... Aus dus\n"
                   "4. a) Tail long ..... Aus eus\n"
                   "   b) Tail short ..... Aus fus\n"
                   "5. a) 3 or more spines ..... Aus hus\n"
                   "   b) 2 spines ..... Aus ius\n"),
            "1[1. a] Wings clear -> 2\n1[b] Wings dark -> 3\n"
            "2[2. a] Legs pale -> 4\n2[b] Legs dark -> 5\n"
            "3[3. a] Head long -> Aus cus\n3[b] Head short -> Aus dus\n"
            "4[4. a] Tail long -> Aus eus\n4[b] Tail short -> Aus fus\n"
            "5[5. a] 3 or more spines -> Aus hus\n5[b] 2 spines -> Aus ius\n");
}

TEST(PrintedLabelForms, BisNumbersACoupletThatWasInserted) {
  EXPECT_EQ(sketch("8. Wings clear ..... 9\n"
                   "8. Wings dark ..... 9 bis\n"
                   "9. Legs pale ..... Aus bus\n"
                   "9. Legs dark ..... Aus cus\n"
                   "9 bis. Head long ..... Aus dus\n"
                   "9 bis. Head short ..... Aus eus\n"),
            "8[8] Wings clear -> 9\n8[8] Wings dark -> 9bis\n"
            "9[9] Legs pale -> Aus bus\n9[9] Legs dark -> Aus cus\n"
            "9bis[9 bis] Head long -> Aus dus\n9bis[9 bis] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, BisMayBearThePrimeOfTheSecondLead) {
  EXPECT_EQ(sketch("8. Wings clear ..... 9\n"
                   "8'. Wings dark ..... 9 bis\n"
                   "9. Legs pale ..... Aus bus\n"
                   "9'. Legs dark ..... Aus cus\n"
                   "9 bis. Head long ..... Aus dus\n"
                   "9 bis'. Head short ..... Aus eus\n"),
            "8[8] Wings clear -> 9\n8[8'] Wings dark -> 9bis\n"
            "9[9] Legs pale -> Aus bus\n9[9'] Legs dark -> Aus cus\n"
            "9bis[9 bis] Head long -> Aus dus\n9bis[9 bis'] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, CountsJoinedByOrAreNone) {
  auto const text =
      "1. Wings clear ..... 2\n"
      "1. Wings dark ..... 3\n"
      "2. Legs pale; antennae\n"
      "2- or 3-jointed ..... Aus bus\n"
      "2. Legs dark ..... Aus cus\n"
      "3. Head long; palpi\n"
      "3- or 4-jointed ..... Aus dus\n"
      "3. Head short ..... Aus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> 3\n"
            "2[2] Legs pale; antennae 2- or 3-jointed -> Aus bus\n"
            "2[2] Legs dark -> Aus cus\n"
            "3[3] Head long; palpi 3- or 4-jointed -> Aus dus\n"
            "3[3] Head short -> Aus eus\n");
  EXPECT_EQ(line_kinds(text), "lead, lead, lead, continuation, lead, lead, continuation, lead");
}

TEST(PrintedLabelForms, AYearBeforeASynonymIsNone) {
  auto const text =
      "1889. Aus, Roe, Proc. Marsh. 4, p. 56.\n"
      "\n"
      "1. Wings clear ..... 2\n"
      "1. Wings dark ..... Aus bus\n"
      "2. Legs pale ..... Aus cus\n"
      "2. Legs dark ..... Aus dus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[2] Legs dark -> Aus dus\n");
  EXPECT_EQ(line_kinds(text), "heading, blank, lead, lead, lead, lead");
}

TEST(PrintedLabelForms, ASecondLeadsLetterMayStandBeforeSmallLetters) {
  EXPECT_EQ(sketch("1a křídla čirá ..... 2\n"
                   "b křídla tmavá ..... 3\n"
                   "2a nohy bledé ..... Aus bus\n"
                   "b nohy tmavé ..... Aus cus\n"
                   "3a hlava dlouhá ..... Aus dus\n"
                   "b hlava krátká ..... Aus eus\n"),
            "1[1a] křídla čirá -> 2\n1[b] křídla tmavá -> 3\n"
            "2[2a] nohy bledé -> Aus bus\n2[b] nohy tmavé -> Aus cus\n"
            "3[3a] hlava dlouhá -> Aus dus\n3[b] hlava krátká -> Aus eus\n");
}

TEST(PrintedLabelForms, BareNumbersThatDashesAnswerStandBesideLetteredOnes) {
  EXPECT_EQ(sketch("9a Wings clear ..... 10\n"
                   "9b Wings dark ..... 11a\n"
                   "10 Legs pale ..... Aus bus\n"
                   "- Legs dark ..... Aus cus\n"
                   "11a Head long ..... 12\n"
                   "11b Head short ..... 15a\n"
                   "12 Feet broad ..... Aus dus\n"
                   "- Feet narrow ..... Aus eus\n"
                   "15a Tail long ..... Aus fus\n"
                   "15b Tail short ..... Aus gus\n"),
            "9[9a] Wings clear -> 10\n9[9b] Wings dark -> 11\n"
            "10[10] Legs pale -> Aus bus\n10[-] Legs dark -> Aus cus\n"
            "11[11a] Head long -> 12\n11[11b] Head short -> 15\n"
            "12[12] Feet broad -> Aus dus\n12[-] Feet narrow -> Aus eus\n"
            "15[15a] Tail long -> Aus fus\n15[15b] Tail short -> Aus gus\n");
}

TEST(PrintedLabelForms, NumbersInCellsOfAFragmentAreNoPageNumbers) {
  auto const text =
      "7\tWings clear\tAus bus\n"
      "\n"
      "7a\tWings dark\t8\n"
      "\n"
      "8\tLegs pale\tAus cus\n"
      "\n"
      "–\tLegs dark\tAus dus\n"
      "\n"
      "18\tHead long\tAus eus\n"
      "\n"
      "18a\tHead short\tAus fus\n";
  EXPECT_EQ(sketch(text),
            "7[7] Wings clear -> Aus bus\n7[7a] Wings dark -> 8\n"
            "8[8] Legs pale -> Aus cus\n8[–] Legs dark -> Aus dus\n"
            "18[18] Head long -> Aus eus\n18[18a] Head short -> Aus fus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, blank, lead, blank, lead, blank, lead, blank, lead, blank, lead");
}

TEST(PrintedLabelForms, DashesBeforeTheRangeInASerialKeyAreNone) {
  auto const text =
      "1 (2) Wings clear . . . . Aus bus\n"
      " — Everywhere, common.\n"
      "2 (1) Wings dark.\n"
      "3 (4) Legs pale . . . . Aus cus\n"
      " — Marshes.\n"
      "4 (3) Legs dark.\n"
      "5 (6) Head long . . . . Aus dus\n"
      " — Tarn Hill.\n"
      "6 (5) Head short . . . . Aus eus\n"
      " — Rare.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> Aus bus\n1[2] Wings dark. -> 3\n"
            "3[3] Legs pale -> Aus cus\n3[4] Legs dark. -> 5\n"
            "5[5] Head long -> Aus dus\n5[6] Head short -> Aus eus\n");
  EXPECT_EQ(line_kinds(text), "lead, note, lead, lead, note, lead, lead, note, lead, note");
}

TEST(PrintedLabelForms, ANumberWithAFullStopIsAHeadingsAmongBareOnes) {
  auto const text =
      "1 Wings clear ..... 2\n"
      "1 Wings dark ..... 3\n"
      "2 Legs pale ..... Aus bus\n"
      "2 Legs dark ..... Aus cus\n"
      "3 Head long ..... Aus dus\n"
      "3 Head short ..... Aus eus\n"
      "\n"
      "4. The species\n"
      "\n"
      "The species of the marsh are few and hard to tell.\n"
      "\n"
      "1 Tail long ..... Aus fus\n"
      "1 Tail short ..... Aus gus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[3] Head short -> Aus eus\n"
            "1[1] Tail long -> Aus fus\n1[1] Tail short -> Aus gus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, lead, lead, lead, blank, heading, blank, note, blank, lead, lead");
}

TEST(PrintedLabelForms, AStepMayBearTheLetterOfItsKey) {
  EXPECT_EQ(sketch("MAIN KEY\n"
                   "\n"
                   "Step 1\n"
                   "• Legs absent → Aus aus\n"
                   "• Legs four → Step 2\n"
                   "Step 2\n"
                   "• Tail present → Key A\n"
                   "• Tail absent → Key B\n"
                   "\n"
                   "KEY A. Newts\n"
                   "\n"
                   "Step A1\n"
                   "• Skin rough → Aus bus\n"
                   "• Skin smooth → Step A2\n"
                   "Step A2\n"
                   "• Belly pale → Aus cus\n"
                   "• Belly dark → Aus dus\n"
                   "\n"
                   "KEY B. Toads\n"
                   "\n"
                   "Step B1\n"
                   "• Skin warty → Bus eus\n"
                   "• Skin smooth → Step B2\n"
                   "Step B2\n"
                   "• Belly pale → Bus fus\n"
                   "• Belly dark → Bus gus\n"),
            "1[•] Legs absent -> Aus aus\n1[•] Legs four -> 2\n"
            "2[•] Tail present -> key: KEY A. Newts\n2[•] Tail absent -> key: KEY B. Toads\n"
            "1[•] Skin rough -> Aus bus\n1[•] Skin smooth -> 2\n2[•] Belly pale -> Aus cus\n"
            "2[•] Belly dark -> Aus dus\n1[•] Skin warty -> Bus eus\n1[•] Skin smooth -> 2\n"
            "2[•] Belly pale -> Bus fus\n2[•] Belly dark -> Bus gus\n");
}

TEST(PrintedLabelForms, ARingACrossAndAnEqualsSignAreLevels) {
  EXPECT_EQ(sketch("O Plants woody.\n"
                   "   = Leaves linear.\n"
                   "      X Calyx hairy ..... Aus bus\n"
                   "      X Calyx bare ..... Aus cus\n"
                   "   = Leaves ovate ..... Aus dus\n"
                   "O Plants soft.\n"
                   "   = Leaves linear ..... Aus eus\n"
                   "   = Leaves ovate.\n"
                   "      X Calyx hairy ..... Aus fus\n"
                   "      X Calyx bare ..... Aus gus\n"),
            "1[O] Plants woody. -> 2\n1[O] Plants soft. -> 4\n2[=] Leaves linear. -> 3\n"
            "2[=] Leaves ovate -> Aus dus\n3[X] Calyx hairy -> Aus bus\n"
            "3[X] Calyx bare -> Aus cus\n4[=] Leaves linear -> Aus eus\n4[=] Leaves ovate. -> 5\n"
            "5[X] Calyx hairy -> Aus fus\n5[X] Calyx bare -> Aus gus\n");
}

TEST(PrintedLabelForms, TwoYearsBeforeSynonymsAreNone) {
  EXPECT_EQ(sketch("1888. Aus, Roe, Proc. Marsh. 4, p. 56.\n"
                   "1889. Aus, Dorn, Proc. Marsh. 5, p. 12.\n"
                   "\n"
                   "1. Wings clear.\n"
                   "  2. Legs pale ..... Aus bus\n"
                   "  2. Legs dark ..... Aus cus\n"
                   "1. Wings dark.\n"
                   "  3. Head long ..... Aus dus\n"
                   "  3. Head short ..... Aus eus\n"),
            "1[1] Wings clear. -> 2\n1[1] Wings dark. -> 3\n2[2] Legs pale -> Aus bus\n"
            "2[2] Legs dark -> Aus cus\n3[3] Head long -> Aus dus\n3[3] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, APagesNumberBeforeItsHeadIsNoneThoughTheKeyHasTheSame) {
  auto const text =
      "8  Wings clear ..... 9\n"
      "–  Wings dark ..... 10\n"
      "9  Legs pale ..... Aus bus\n"
      "\n"
      "10        MARSH BULLETIN    Ser. A\n"
      "\n"
      "–  Legs dark ..... Aus cus\n"
      "10  Head long ..... Aus dus\n"
      "–  Head short ..... 11\n"
      "11  Tail long ..... Aus eus\n"
      "–  Tail short ..... Aus fus\n";
  EXPECT_EQ(sketch(text),
            "8[8] Wings clear -> 9\n8[–] Wings dark -> 10\n9[9] Legs pale -> Aus bus\n"
            "9[–] Legs dark -> Aus cus\n10[10] Head long -> Aus dus\n10[–] Head short -> 11\n"
            "11[11] Tail long -> Aus eus\n11[–] Tail short -> Aus fus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, lead, lead, blank, running head, blank, lead, lead, lead, lead, lead");
}

TEST(PrintedLabelForms, WordsMayBeginWithAnOrdinalNumber) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "a. 1st segment long, narrow at the base.\n"
                   "a1. Thorax black A. busa, p. 3.\n"
                   "b1. Thorax yellow A. cusa, p. 4.\n"
                   "b. 1st segment short, broad at the base.\n"
                   "a1. Margin reflexed A. dusa, p. 5.\n"
                   "b1. Margin flat A. eusa, p. 6.\n"),
            "1[a] 1st segment long, narrow at the base. -> 2\n"
            "1[b] 1st segment short, broad at the base. -> 3\n"
            "2[a1] Thorax black -> Ausella busa (p. 3.)\n"
            "2[b1] Thorax yellow -> Ausella cusa (p. 4.)\n"
            "3[a1] Margin reflexed -> Ausella dusa (p. 5.)\n"
            "3[b1] Margin flat -> Ausella eusa (p. 6.)\n");
}

TEST(PrintedLabelForms, LettersMayStandInAColumnOfTheirOwn) {
  auto const text =
      "1    a   Wings with a fringe of hairs, pale at\n"
      "         the tips ..................... Aus bus\n"
      "     b   Wings bare; body flat, far from flat-\n"
      "         tened ........................ Aus cus\n"
      "2    a   Legs pale\n"
      "         .............................. Aus dus\n"
      "     b   Legs dark ..................... 3\n"
      "3    a   Head long\n"
      "         .............................. Aus eus\n"
      "     b   Head short\n"
      "         .............................. Aus fus\n";
  EXPECT_EQ(sketch(text),
            "1[1 a] Wings with a fringe of hairs, pale at the tips -> Aus bus\n"
            "1[b] Wings bare; body flat, far from flattened -> Aus cus\n"
            "2[2 a] Legs pale -> Aus dus\n"
            "2[b] Legs dark -> 3\n"
            "3[3 a] Head long -> Aus eus\n"
            "3[b] Head short -> Aus fus\n");
}

TEST(PrintedLabelForms, ADashMayStandBeforeACount) {
  EXPECT_EQ(sketch("1 – Wings clear ..... 2\n"
                   "    Wings dark ..... 3\n"
                   "2 – 12 to 14 scales ..... Aus bus\n"
                   "    16 to 20 scales ..... Aus cus\n"
                   "3 – Legs pale ..... Aus dus\n"
                   "    Legs dark ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> 3\n"
            "2[2] 12 to 14 scales -> Aus bus\n"
            "2[] 16 to 20 scales -> Aus cus\n"
            "3[3] Legs pale -> Aus dus\n"
            "3[] Legs dark -> Aus eus\n");
}

TEST(PrintedLabelForms, ADashBeneathTheWordsIsNoLead) {
  auto const text =
      "5. Ausella Roe\n\n"
      "I. Spike one.\n"
      "  A. Stigmas two.\n"
      "    1. Plants of one sex; fruit with nerves ...... 1. A. dioeca Roe\n"
      "    2. Plants of both sexes; fruit without nerves.\n"
      "       – Heaths, rare ............................ 2. A. nuda Roe\n"
      "  B. Stigmas three ............................... 3. A. rupestris Roe\n"
      "II. Spikes many .................................. 4. A. multa Roe\n";
  EXPECT_EQ(sketch(text),
            "1[I] Spike one. -> 2\n"
            "1[II] Spikes many -> Ausella multa\n"
            "2[A] Stigmas two. -> 3\n"
            "2[B] Stigmas three -> Ausella rupestris\n"
            "3[1] Plants of one sex; fruit with nerves -> Ausella dioeca\n"
            "3[2] Plants of both sexes; fruit without nerves. – Heaths, rare -> Ausella nuda\n");
}

TEST(PrintedLabelForms, CapitalsMayTouchTheNumber) {
  auto const text =
      "Key to world species of Ausella Roe, 1976\n"
      "1Eyes absent; body unpigmented 2\n"
      "\u2013Eyes present; body pigmented in life 3\n"
      "2Uropod 3 outer ramus short, article 2 minute Ausella busa Roe, 1976\n"
      "\u2013Uropod 3 outer ramus long Ausella cusa sp. nov.\n"
      "3Telson cleft to 75\u201380% Ausella dusa Dorn, 1989\n"
      "\u2013Telson entire Ausella eusa Dorn, 1989\n"
      "\n"
      "1Museum of the Marsh, 2Institute of Fens\n";
  EXPECT_EQ(sketch(text),
            "1[1] Eyes absent; body unpigmented -> 2\n"
            "1[–] Eyes present; body pigmented in life -> 3\n"
            "2[2] Uropod 3 outer ramus short, article 2 minute -> Ausella busa\n"
            "2[–] Uropod 3 outer ramus long -> Ausella cusa (sp. nov.)\n"
            "3[3] Telson cleft to 75–80% -> Ausella dusa\n"
            "3[–] Telson entire -> Ausella eusa\n");
}

TEST(PrintedLabelForms, CapitalsMayTouchTheLetterOfANumber) {
  EXPECT_EQ(sketch("1aEyes absent 2\n"
                   "1bEyes present Ausella busa Roe\n"
                   "2aTelson cleft Ausella cusa Roe\n"
                   "2bTelson entire Ausella dusa Roe\n"),
            "1[1a] Eyes absent -> 2\n"
            "1[1b] Eyes present -> Ausella busa\n"
            "2[2a] Telson cleft -> Ausella cusa\n"
            "2[2b] Telson entire -> Ausella dusa\n");
}

TEST(PrintedLabelForms, BisBeforeASecondLeadThatIsWrapped) {
  EXPECT_EQ(sketch("Gen. AUSELLA Roe.\n\n"
                   "   1.  Apertura semplice . . . . . . . . . . . . .   2\n"
                   "   1 bis.  Dente palatale allungato a lamella, visibile per trasparenza\n"
                   "             all' esterno. Liguria . . . . . . . .   busa (Roe)\n"
                   "   2.  Conchiglia turrita; altezza mm. 9-11 . . . .\n"
                   "             . . . . . . . . . . . . . . . . . .   cusa Roe\n"
                   "   2 bis.  Conchiglia ovata . . . . . . . . . . . . .  dusa Roe\n"),
            "1[1] Apertura semplice -> 2\n"
            "1[1 bis] Dente palatale allungato a lamella, visibile per trasparenza all' esterno. "
            "Liguria -> Ausella busa\n"
            "2[2] Conchiglia turrita; altezza mm. 9-11 -> Ausella cusa\n"
            "2[2 bis] Conchiglia ovata -> Ausella dusa\n");
}

TEST(PrintedLabelForms, LettersAndMarksMayStandApartFromTheirNumbers) {
  for (auto const* const stop : {"", "."}) {
    auto const at = [stop](std::string const& label) { return label + stop; };
    EXPECT_EQ(sketch(at("1 a") + " Flowers white ..... 2\n" + at("1 b") +
                     " Flowers yellow ..... Ausella busa\n" + at("2 a") +
                     " Leaves ovate ..... Ausella cusa\n" + at("2 b") +
                     " Leaves linear ..... Ausella dusa\n"),
              "1[1 a] Flowers white -> 2\n1[1 b] Flowers yellow -> Ausella busa\n"
              "2[2 a] Leaves ovate -> Ausella cusa\n2[2 b] Leaves linear -> Ausella dusa\n")
        << stop;
  }
  EXPECT_EQ(sketch("1 Flowers white ..... 2\n"
                   "1 * Flowers yellow ..... Ausella busa\n"
                   "2 Leaves ovate ..... Ausella cusa\n"
                   "2 * Leaves linear ..... Ausella dusa\n"),
            "1[1] Flowers white -> 2\n1[1 *] Flowers yellow -> Ausella busa\n"
            "2[2] Leaves ovate -> Ausella cusa\n2[2 *] Leaves linear -> Ausella dusa\n");
}

TEST(PrintedLabelForms, ABracketForTheCoupletThatNothingLeadsTo) {
  EXPECT_EQ(sketch("1(–). Eyes absent ...... 2\n"
                   "– Eyes present ...... Ausella busa\n"
                   "2(1). Telson cleft ...... 3\n"
                   "– Telson entire ...... Ausella cusa\n"
                   "3(2–). Legs red ...... Ausella dusa\n"
                   "– Legs black ...... Ausella fusa\n"),
            "1[1] Eyes absent -> 2\n"
            "1[–] Eyes present -> Ausella busa\n"
            "2[2] Telson cleft -> 3\n"
            "2[–] Telson entire -> Ausella cusa\n"
            "3[3] Legs red -> Ausella dusa\n"
            "3[–] Legs black -> Ausella fusa\n");
}

TEST(PrintedLabelForms, DashesThatBearTheStopOfNumbers) {
  EXPECT_EQ(sketch("1) Eyes absent ...... 2\n"
                   "-) Eyes present ...... Ausella busa\n"
                   "2) Telson cleft ...... Ausella cusa\n"
                   "-) Telson entire ...... Ausella dusa\n"),
            "1[1] Eyes absent -> 2\n"
            "1[-] Eyes present -> Ausella busa\n"
            "2[2] Telson cleft -> Ausella cusa\n"
            "2[-] Telson entire -> Ausella dusa\n");
  EXPECT_EQ(sketch("1.- Eyes absent ...... 2\n"
                   ".- Eyes present ...... Ausella busa\n"
                   "2.- Telson cleft ...... Ausella cusa\n"
                   ".- Telson entire ...... Ausella dusa\n"),
            "1[1] Eyes absent -> 2\n"
            "1[-] Eyes present -> Ausella busa\n"
            "2[2] Telson cleft -> Ausella cusa\n"
            "2[-] Telson entire -> Ausella dusa\n");
}

TEST(PrintedLabelForms, BisMarksTheRivalInACellOfItsOwn) {
  EXPECT_EQ(sketch("1\tFlowers solitary\tAusella husa\n"
                   "1bis\tFlowers in racemes\t2\n"
                   "2\tPetals red\tAusella busa\n"
                   "2bis\tPetals white\tAusella cusa\n"),
            "1[1] Flowers solitary -> Ausella husa\n"
            "1[1bis] Flowers in racemes -> 2\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[2bis] Petals white -> Ausella cusa\n");
}

TEST(PrintedLabelForms, BisMarksTheRivalAndNumbersCloseLeads) {
  EXPECT_EQ(sketch("1. Flowers solitary Ausella husa\n"
                   "1bis. Flowers in racemes 2\n"
                   "2. Petals red Ausella busa\n"
                   "2bis. Petals white 3\n"
                   "3. Seeds winged Ausella fusa\n"
                   "3bis. Seeds wingless Ausella gusa\n"),
            "1[1] Flowers solitary -> Ausella husa\n"
            "1[1bis] Flowers in racemes -> 2\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[2bis] Petals white -> 3\n"
            "3[3] Seeds winged -> Ausella fusa\n"
            "3[3bis] Seeds wingless -> Ausella gusa\n");
}

TEST(PrintedLabelForms, WithTheirLettersInBrackets) {
  EXPECT_EQ(sketch("1(a) Shell smooth ..... 2\n1(b) Shell ribbed ..... Aus bus\n"
                   "2(a) Foot pale ..... Aus cus\n2(b) Foot dark ..... Aus dus\n"
                   "2(c) Foot grey ..... Aus eus\n"),
            "1[1(a)] Shell smooth -> 2\n1[1(b)] Shell ribbed -> Aus bus\n"
            "2[2(a)] Foot pale -> Aus cus\n2[2(b)] Foot dark -> Aus dus\n"
            "2[2(c)] Foot grey -> Aus eus\n");
}

TEST(PrintedLabelForms, TheNumberTwiceMarksTheRival) {
  EXPECT_EQ(sketch("Key to the Species of Chelonella.\n"
                   "\n"
                   "11. Elytra short, meeting along the suture, trun-\n"
                   "cate at the apex.\n"
                   "\n"
                   "12. Forceps of the 3 asymmetrical, the right\n"
                   "branch more strongly curved ; length\n"
                   "with forceps 19 mm................... collina, Hask., p. 154.\n"
                   "\n"
                   "12.12. Forceps of the ¢ symmetrical, straight\n"
                   "for two-thirds of their length; length\n"
                   "with forceps 11-13 mm............... montivaga, Tolv.,\n"
                   "\n"
                   "[p. 155.\n"
                   "\n"
                   "11.11. Elytra in the form of oval lateral flaps, widely\n"
                   "separated on the mesonotum.\n"
                   "\n"
                   "13. Pronotum with a deep median sulcus;\n"
                   "antennal segments beyond the sixth\n"
                   "pyriform............................ saxicola, sp. n., p. 156.\n"
                   "\n"
                   "13.13. Pronotum without a sulcus ; antennal\n"
                   "segments all cylindrical............ aptera, Marn., p. 157.\n"),
            "11[11] Elytra short, meeting along the suture, truncate at the apex. -> 12\n"
            "11[11.11] Elytra in the form of oval lateral flaps, widely separated on the "
            "mesonotum. -> 13\n"
            "12[12] Forceps of the 3 asymmetrical, the right branch more strongly curved ; length "
            "with forceps 19 mm -> Chelonella collina (Hask., p. 154.)\n"
            "12[12.12] Forceps of the ¢ symmetrical, straight for two-thirds of their length; "
            "length with forceps 11-13 mm -> Chelonella montivaga (Tolv.)\n"
            "13[13] Pronotum with a deep median sulcus; antennal segments beyond the sixth "
            "pyriform -> Chelonella saxicola (sp. n., p. 156.)\n"
            "13[13.13] Pronotum without a sulcus ; antennal segments all cylindrical -> Chelonella "
            "aptera (Marn., p. 157.)\n");
}

TEST(PrintedLabelForms, AFullStopMayFollowTheBracketsOfANumber) {
  EXPECT_EQ(sketch("(1). Wings clear ..... 2\n"
                   "(1). Wings dark ..... 3\n"
                   "(2). Legs pale ..... Aus bus\n"
                   "(2). Legs dark ..... Aus cus\n"
                   "(3). Head long ..... Aus dus\n"
                   "(3). Head short ..... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[2] Legs dark -> Aus cus\n"
            "3[3] Head long -> Aus dus\n3[3] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, AFullStopMayFollowTheBracketsOfANumberWithItsLetter) {
  EXPECT_EQ(sketch("(1a). Wings clear ..... 2\n"
                   "(1b). Wings dark ..... 3\n"
                   "(2a). Legs pale ..... Aus bus\n"
                   "(2b). Legs dark ..... Aus cus\n"
                   "(3a). Head long ..... Aus dus\n"
                   "(3b). Head short ..... Aus eus\n"),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> 3\n"
            "2[2a] Legs pale -> Aus bus\n2[2b] Legs dark -> Aus cus\n"
            "3[3a] Head long -> Aus dus\n3[3b] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, AHyphenMayStandBeforeTheLetter) {
  EXPECT_EQ(sketch("1-a. Wings clear ..... 2\n"
                   "1-b. Wings dark ..... 3\n"
                   "2-a. Legs pale ..... Aus bus\n"
                   "2-b. Legs dark ..... Aus cus\n"
                   "3-a. Head long ..... Aus dus\n"
                   "3-b. Head short ..... Aus eus\n"),
            "1[1-a] Wings clear -> 2\n1[1-b] Wings dark -> 3\n"
            "2[2-a] Legs pale -> Aus bus\n2[2-b] Legs dark -> Aus cus\n"
            "3[3-a] Head long -> Aus dus\n3[3-b] Head short -> Aus eus\n");
}

TEST(PrintedLabelForms, TheLetterBehindAHyphenMayBeACapital) {
  EXPECT_EQ(sketch("1-A. Wings clear ..... 2\n"
                   "1-B. Wings dark ..... Aus dus\n"
                   "2-A. Legs pale ..... Aus bus\n"
                   "2-B. Legs dark ..... Aus cus\n"),
            "1[1-A] Wings clear -> 2\n1[1-B] Wings dark -> Aus dus\n"
            "2[2-A] Legs pale -> Aus bus\n2[2-B] Legs dark -> Aus cus\n");
}

TEST(PrintedLabelForms, NumbersBehindAWordMayHaveTheirEndsBehindATab) {
  for (std::string const before : {"Step ", "Couplet ", "No. ", "#"}) {
    std::string text;
    for (std::string const lead :
         {"1a. Wings clear\t2\n", "1b. Wings dark\t3\n", "2a. Legs pale\tAus bus\n",
          "2b. Legs dark\tAus cus\n", "3a. Head long\tAus dus\n", "3b. Head short\t4\n",
          "4a. Tail long\tAus eus\n", "4b. Tail short\tAus fus\n"}) {
      text += before + lead;
    }
    std::string expected;
    for (std::string const lead :
         {"1a] Wings clear -> 2\n", "1b] Wings dark -> 3\n", "2a] Legs pale -> Aus bus\n",
          "2b] Legs dark -> Aus cus\n", "3a] Head long -> Aus dus\n", "3b] Head short -> 4\n",
          "4a] Tail long -> Aus eus\n", "4b] Tail short -> Aus fus\n"}) {
      expected += lead.substr(0, 1) + "[" + before + lead;
    }
    EXPECT_EQ(sketch(text), expected);
  }
}

TEST(PrintedLabelForms, EndsBeneathLeadsWhoseLettersStandApartAreNoLabels) {
  EXPECT_EQ(sketch("1 a. Wings clear\n2\n1 b. Wings dark\n3\n"
                   "2 a. Legs pale\n4\n2 b. Legs dark\n5\n"
                   "3 a. Head long\nAus bus\n3 b. Head short\nAus cus\n"
                   "4 a. Tail long\nAus dus\n4 b. Tail short\nAus eus\n"
                   "5 a. Eyes red\nAus fus\n5 b. Eyes black\nAus gus\n"),
            "1[1 a] Wings clear -> 2\n1[1 b] Wings dark -> 3\n"
            "2[2 a] Legs pale -> 4\n2[2 b] Legs dark -> 5\n"
            "3[3 a] Head long -> Aus bus\n3[3 b] Head short -> Aus cus\n"
            "4[4 a] Tail long -> Aus dus\n4[4 b] Tail short -> Aus eus\n"
            "5[5 a] Eyes red -> Aus fus\n5[5 b] Eyes black -> Aus gus\n");
}

TEST(PrintedLabelForms, LettersMayStandTwice) {
  EXPECT_EQ(sketch("1a  Wings clear ........ 2\n"
                   "1aa  Wings dark ........ Ausella busa\n"
                   "2a  Legs red ........ Ausella cusa\n"
                   "2aa  Legs black ........ 3\n"
                   "3a  Head large ........ Ausella dusa\n"
                   "3aa  Head small ........ Ausella fusa\n"),
            "1[1a] Wings clear -> 2\n"
            "1[1aa] Wings dark -> Ausella busa\n"
            "2[2a] Legs red -> Ausella cusa\n"
            "2[2aa] Legs black -> 3\n"
            "3[3a] Head large -> Ausella dusa\n"
            "3[3aa] Head small -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift

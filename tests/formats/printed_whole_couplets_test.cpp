// Keys that print a whole couplet in each paragraph, the further leads without labels of theirs.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedWholeCouplets, FurtherLeadsBeginBehindWhatTheFormerEndIn) {
  EXPECT_EQ(sketch("Key\n\n1. Wings clear (2). Wings dark: Corvella.\n"
                   "2. Antennae long (3). Antennae short: Bruvella.\n"
                   "3. Legs red: Rubella. Legs yellow: Flavella. Legs blue: Azurella.\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> Corvella\n"
            "2[2] Antennae long -> 3\n"
            "2[] Antennae short -> Bruvella\n"
            "3[3] Legs red -> Rubella\n"
            "3[] Legs yellow -> Flavella\n"
            "3[] Legs blue -> Azurella\n");
}

TEST(PrintedWholeCouplets, WrapsAreNoEnds) {
  EXPECT_EQ(
      sketch("1. Hojas opuestas, con el margen entero o apenas dentado hacia el ápice, y los\n"
             "pecíolos de 2-4 mm: 2. Hojas alternas, de margen aserrado, con pecíolos de más\n"
             "de 10 mm: 4.\n"
             "2. Flores blancas: 3. Flores azules, rara vez rosadas: R. azurea (Pal) Tor.\n"
             "3. Tallos glabros: R. nuda Tor. Tallos pelosos en los nudos: R. hirta.\n"
             "4. Frutos negros: R. nigra P. Br. Frutos rojos: R. rubra Pal.\n"),
      "1[1] Hojas opuestas, con el margen entero o apenas dentado hacia el ápice, y los pecíolos "
      "de 2-4 mm -> 2\n"
      "1[] Hojas alternas, de margen aserrado, con pecíolos de más de 10 mm -> 4\n"
      "2[2] Flores blancas -> 3\n"
      "2[] Flores azules, rara vez rosadas -> R. azurea\n"
      "3[3] Tallos glabros -> R. nuda\n"
      "3[] Tallos pelosos en los nudos -> R. hirta\n"
      "4[4] Frutos negros -> R. nigra\n"
      "4[] Frutos rojos -> R. rubra\n");
}

TEST(PrintedWholeCouplets, SmallLettersFollowBehindSemicolons) {
  EXPECT_EQ(sketch("1. Wings clear, 2; wings dark, 3.\n"
                   "2. Antennae long, Bruvella; antennae short, Corvella.\n"
                   "3. Legs red; tarsi pale, Rubella; legs yellow, Flavella.\n"),
            "1[1] Wings clear, -> 2\n"
            "1[] wings dark, -> 3\n"
            "2[2] Antennae long, -> Bruvella\n"
            "2[] antennae short, -> Corvella\n"
            "3[3] Legs red; tarsi pale, -> Rubella\n"
            "3[] legs yellow, -> Flavella\n");
}

TEST(PrintedWholeCouplets, LettersStarsAndDashesMayStandBeforeTheFurtherOnes) {
  EXPECT_EQ(sketch("1. a. Wings clear 2; b. Wings dark 3.\n"
                   "2. a. Antennae long A. bus; b. Antennae short A. cus.\n"
                   "3. a. Legs red A. dus; b. Legs yellow A. eus.\n"),
            "1[1. a] Wings clear -> 2\n"
            "1[b] Wings dark -> 3\n"
            "2[2. a] Antennae long -> A. bus\n"
            "2[b] Antennae short -> A. cus\n"
            "3[3. a] Legs red -> A. dus\n"
            "3[b] Legs yellow -> A. eus\n");
  EXPECT_EQ(sketch("1. Wings clear — 2 * Wings dark — 3\n"
                   "2. Antennae long — A. bus * Antennae short — A. cus\n"
                   "3. Legs red — A. dus * Legs yellow — A. eus\n"),
            "1[1] Wings clear -> 2\n"
            "1[*] Wings dark -> 3\n"
            "2[2] Antennae long -> A. bus\n"
            "2[*] Antennae short -> A. cus\n"
            "3[3] Legs red -> A. dus\n"
            "3[*] Legs yellow -> A. eus\n");
  EXPECT_EQ(sketch("1. Wings clear (2) – Wings dark (3)\n"
                   "2. Antennae long: Bruvella. – Antennae short: Corvella.\n"
                   "3. Legs red: Rubella. – Legs yellow: Flavella.\n"),
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> 3\n"
            "2[2] Antennae long -> Bruvella\n"
            "2[–] Antennae short -> Corvella\n"
            "3[3] Legs red -> Rubella\n"
            "3[–] Legs yellow -> Flavella\n");
}

TEST(PrintedWholeCouplets, StepsAskAQuestionAndAnswerIt) {
  EXPECT_EQ(sketch("How to name your beetle\n\n"
                   "Step 1. Are the wing cases long? If yes go to step 2. If no go to step 3.\n"
                   "Step 2. Are the legs red? If yes: Vadella rubripes. If no: Vadella nigra.\n"
                   "Step 3. Are there spots? If yes: Vadella maculata. If no: Vadella plana.\n"),
            "1[Step 1] Are the wing cases long? If yes -> 2\n"
            "1[] If no -> 3\n"
            "2[Step 2] Are the legs red? If yes -> Vadella rubripes\n"
            "2[] If no -> Vadella nigra\n"
            "3[Step 3] Are there spots? If yes -> Vadella maculata\n"
            "3[] If no -> Vadella plana\n");
}

TEST(PrintedWholeCouplets, NumbersThatLeadNowhereMakeNone) {
  // A list of species with remarks.
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n– Wings dark ..... Aus bus\n"
                   "2. Legs red ..... Aus cus\n– Legs pale ..... Aus dus\n\n"
                   "1. Aus bus. Common in fens. Seen in 1950. Near Aus eus.\n"
                   "2. Aus cus. In woods. Flies in May. Often with Aus bus.\n"
                   "3. Aus dus. At the coast. Near Aus cus.\n"),
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> Aus bus\n"
            "2[2] Legs red -> Aus cus\n"
            "2[–] Legs pale -> Aus dus\n");
}

TEST(PrintedDestinations, NoIsAWordBeforeGoTo) {
  EXPECT_EQ(sketch("1. Are the wings clear?\nIf yes, go to 2\nIf no, go to 3\n"
                   "2. Are the legs red?\nIf yes ... Aus bus\nIf no ... Aus cus\n"
                   "3. Is the head round?\nIf yes ... Aus dus\nIf no ... Aus eus\n"),
            "1[1] Are the wings clear? If yes, -> 2\n"
            "1[] If no, -> 3\n"
            "2[2] Are the legs red? If yes -> Aus bus\n"
            "2[] If no -> Aus cus\n"
            "3[3] Is the head round? If yes -> Aus dus\n"
            "3[] If no -> Aus eus\n");
}

TEST(PrintedWholeCouplets, TwoCouplets) {
  EXPECT_EQ(sketch("1. Wings clear (2). Wings dark: Aus bus.\n"
                   "2. Legs 6, pale: Aus cus. Legs 8, dark: Aus dus.\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> Aus bus\n"
            "2[2] Legs 6, pale -> Aus cus\n"
            "2[] Legs 8, dark -> Aus dus\n");
}

TEST(PrintedWholeCouplets, CountsBehindNounsAreNoLabels) {
  EXPECT_EQ(sketch("1. Wings clear (2). Wings dark (3).\n"
                   "2. Legs pale: Aus fus. Legs dark: Aus cus.\n"
                   "3. Eyes 2: Aus dus. Eyes 4: Aus eus.\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus fus\n"
            "2[] Legs dark -> Aus cus\n"
            "3[3] Eyes 2 -> Aus dus\n"
            "3[] Eyes 4 -> Aus eus\n");
}

TEST(PrintedWholeCouplets, ArePartedBeforeLabelsThatStandWithinLines) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Elytra with scales; pronotum transverse and about half as long as\n"
                   "wide ........ 2 – Elytra bare; pronotum quadrate, its sides nearly\n"
                   "parallel ........ 3\n"
                   "\n"
                   "2. Legs red; tarsi five-segmented; claws simple or toothed below\n"
                   "........ Ausella busa – Legs black; tarsi four-segmented; claws bifid\n"
                   "........ Ausella cusa\n"
                   "\n"
                   "3. Head keeled; body large ........ Ausella dusa – Head flat; body\n"
                   "small ........ Ausella eusa\n"),
            "1[1] Elytra with scales; pronotum transverse and about half as long as wide -> 2\n"
            "1[–] Elytra bare; pronotum quadrate, its sides nearly parallel -> 3\n"
            "2[2] Legs red; tarsi five-segmented; claws simple or toothed below -> Ausella busa\n"
            "2[–] Legs black; tarsi four-segmented; claws bifid -> Ausella cusa\n"
            "3[3] Head keeled; body large -> Ausella dusa\n"
            "3[–] Head flat; body small -> Ausella eusa\n");
}

TEST(PrintedWholeCouplets, MayHoldLabelsWithLettersThatBeginLines) {
  EXPECT_EQ(sketch("1a. Elytra with scales; pronotum transverse ........ 2\n"
                   "1b. Elytra bare ........ 3\n"
                   "\n"
                   "2a. Legs red; tarsi five-segmented; claws simple ........ Ausella\n"
                   "busa 2b. Legs black ........ Ausella cusa\n"
                   "\n"
                   "3a. Head keeled ........ Ausella dusa 3b. Head flat ........ 4\n"
                   "\n"
                   "4a. Claws simple ........ Ausella eusa 4b. Claws\n"
                   "toothed ........ Ausella fusa\n"),
            "1[1a] Elytra with scales; pronotum transverse -> 2\n"
            "1[1b] Elytra bare -> 3\n"
            "2[2a] Legs red; tarsi five-segmented; claws simple -> Ausella busa\n"
            "2[2b] Legs black -> Ausella cusa\n"
            "3[3a] Head keeled -> Ausella dusa\n"
            "3[3b] Head flat -> 4\n"
            "4[4a] Claws simple -> Ausella eusa\n"
            "4[4b] Claws toothed -> Ausella fusa\n");
}

TEST(PrintedWholeCouplets, MayWrapTheNumbersThatLeadsEndIn) {
  EXPECT_EQ(
      sketch("1. Antennae with ten segments; eyes large, parted by less than their\n"
             "own width: 2. – Antennae with eleven segments; eyes small, far apart:\n"
             "3.\n"
             "\n"
             "2. Legs red; tarsi five-segmented: Ausella busa. –\n"
             "Legs black; tarsi four-segmented: Ausella cusa.\n"
             "\n"
             "3. Head keeled: Ausella dusa. – Head flat: Ausella eusa.\n"),
      "1[1] Antennae with ten segments; eyes large, parted by less than their own width -> 2\n"
      "1[–] Antennae with eleven segments; eyes small, far apart -> 3\n"
      "2[2] Legs red; tarsi five-segmented -> Ausella busa\n"
      "2[–] Legs black; tarsi four-segmented -> Ausella cusa\n"
      "3[3] Head keeled -> Ausella dusa\n"
      "3[–] Head flat -> Ausella eusa\n");
}

TEST(PrintedWholeCouplets, EndLeadsInBracketsBeforeLabelsOfRivals) {
  EXPECT_EQ(sketch("1. Elytra with scales, as wide as long (2) – Elytra bare; pronotum wide (3)\n"
                   "2. Legs red (Ausella busa) – Legs black, tarsi four-segmented (Ausella cusa)\n"
                   "3. Head keeled (Ausella dusa) – Head flat, tarsi long (4)\n"
                   "4. Claws simple (Ausella eusa) – Claws toothed (Ausella fusa)\n"),
            "1[1] Elytra with scales, as wide as long -> 2\n"
            "1[–] Elytra bare; pronotum wide -> 3\n"
            "2[2] Legs red -> Ausella busa\n"
            "2[–] Legs black, tarsi four-segmented -> Ausella cusa\n"
            "3[3] Head keeled -> Ausella dusa\n"
            "3[–] Head flat, tarsi long -> 4\n"
            "4[4] Claws simple -> Ausella eusa\n"
            "4[–] Claws toothed -> Ausella fusa\n");
}

TEST(PrintedWholeCouplets, WholeKeysOfOneWrappedParagraph) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Elytra with nine striae, pronotum with two foveae (2). – Elytra with\n"
                   "ten striae, pronotum without foveae (Ausella busa). 2. Legs red or\n"
                   "reddish brown (Ausella cusa). – Legs black (3). 3. Tarsi with yellow\n"
                   "setae beneath (Ausella dusa). – Tarsi with white setae beneath (Ausella\n"
                   "fusa).\n"),
            "1[1] Elytra with nine striae, pronotum with two foveae -> 2\n"
            "1[–] Elytra with ten striae, pronotum without foveae -> Ausella busa\n"
            "2[2] Legs red or reddish brown -> Ausella cusa\n"
            "2[–] Legs black -> 3\n"
            "3[3] Tarsi with yellow setae beneath -> Ausella dusa\n"
            "3[–] Tarsi with white setae beneath -> Ausella fusa\n");
}

TEST(PrintedWholeCouplets, LabelsAtTheEndOfALineOpenTheWordsBelow) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Elytra with nine striae, pronotum with two foveae behind 2 – Elytra\n"
                   "with ten striae, pronotum without any foveae Ausella busa 2. Legs red\n"
                   "or reddish brown, rarely nearly yellow Ausella cusa – Legs black 3 3.\n"
                   "Tarsi with yellow setae beneath, wide Ausella dusa – Tarsi with white\n"
                   "setae beneath Ausella fusa\n"),
            "1[1] Elytra with nine striae, pronotum with two foveae behind -> 2\n"
            "1[–] Elytra with ten striae, pronotum without any foveae -> Ausella busa\n"
            "2[2] Legs red or reddish brown, rarely nearly yellow -> Ausella cusa\n"
            "2[–] Legs black -> 3\n"
            "3[3] Tarsi with yellow setae beneath, wide -> Ausella dusa\n"
            "3[–] Tarsi with white setae beneath -> Ausella fusa\n");
}

TEST(PrintedWholeCouplets, YearsBeforeADashBeginNoCouplet) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n"
             "\n"
             "1 Elytra with nine striae, pronotum with two foveae at its base ..... 2 - Elytra\n"
             "with ten striae ..... Ausella fusa Dorn, 1911\n"
             "\n"
             "2 Antennae longer than half of the body, third joint long ..... Ausella busa\n"
             "Roe, 1901 - Antennae shorter, third joint short ..... 3\n"
             "\n"
             "3 Legs red or reddish brown ..... Ausella cusa (Roe, 1902) - Legs\n"
             "black ..... Ausella dusa Dorn, 1920\n"),
      "1[1] Elytra with nine striae, pronotum with two foveae at its base -> 2\n"
      "1[-] Elytra with ten striae -> Ausella fusa\n"
      "2[2] Antennae longer than half of the body, third joint long -> Ausella busa\n"
      "2[-] Antennae shorter, third joint short -> 3\n"
      "3[3] Legs red or reddish brown -> Ausella cusa\n"
      "3[-] Legs black -> Ausella dusa\n");
}

TEST(PrintedWholeCouplets, NumbersInBracketsAnswerThoseInBrackets) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "(1) Elytra with nine striae, pronotum with two foveae behind 3 (1) Elytra\n"
                   "with ten striae, pronotum without any foveae 2 (2) Legs red or reddish brown\n"
                   "Ausella cusa (2) Legs black Ausella busa (3) Tarsi with yellow setae beneath,\n"
                   "wide Ausella dusa (3) Tarsi with white setae beneath Ausella fusa\n"),
            "1[1] Elytra with nine striae, pronotum with two foveae behind -> 3\n"
            "1[1] Elytra with ten striae, pronotum without any foveae -> 2\n"
            "2[2] Legs red or reddish brown -> Ausella cusa\n"
            "2[2] Legs black -> Ausella busa\n"
            "3[3] Tarsi with yellow setae beneath, wide -> Ausella dusa\n"
            "3[3] Tarsi with white setae beneath -> Ausella fusa\n");
}

// The number that a lead ends in may begin a line, before the sign of its rival.
TEST(PrintedWholeCouplets, ANumberInBracketsBeforeADashIsAnEnd) {
  for (auto const* stop : {"", "."}) {
    auto const end = [&](std::string const& number) { return "(" + number + ")" + stop; };
    EXPECT_EQ(
        sketch("Key to the species of Ausella\n\n"
               "1. Wings clear, with dark veins and a long pale stigma\n" +
               end("2") + " – Wings dark, with pale veins and a short black stigma\n" + end("3") +
               "\n2. Legs red, with spines (Ausella busa). – Legs black, without\n"
               "spines (Ausella cusa).\n"
               "3. Head large, with a keel (Ausella dusa). – Head small\n"
               "(Ausella eusa).\n"),
        "1[1] Wings clear, with dark veins and a long pale stigma -> 2\n"
        "1[–] Wings dark, with pale veins and a short black stigma -> 3\n"
        "2[2] Legs red, with spines -> Ausella busa\n"
        "2[–] Legs black, without spines -> Ausella cusa\n"
        "3[3] Head large, with a keel -> Ausella dusa\n"
        "3[–] Head small -> Ausella eusa\n");
  }
}

TEST(PrintedWholeCouplets, DashesBehindANameInBracketsLeadToNoFurtherOne) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Elytra with nine striae, pronotum with two foveae (Ausella busa). –\n"
                   "Elytra setosa in their hind half, pronotum without foveae (2). 2. Legs red\n"
                   "or reddish brown (Ausella cusa). – Tibia rubra or reddish, femora black (3).\n"
                   "3. Tarsi with yellow setae beneath (Ausella dusa). – Tarsi with white\n"
                   "setae beneath (Ausella fusa).\n"),
            "1[1] Elytra with nine striae, pronotum with two foveae -> Ausella busa\n"
            "1[–] Elytra setosa in their hind half, pronotum without foveae -> 2\n"
            "2[2] Legs red or reddish brown -> Ausella cusa\n"
            "2[–] Tibia rubra or reddish, femora black -> 3\n"
            "3[3] Tarsi with yellow setae beneath -> Ausella dusa\n"
            "3[–] Tarsi with white setae beneath -> Ausella fusa\n");
}

TEST(PrintedWholeCouplets, LettersInBracketsBeginLeadsWithinParagraphs) {
  EXPECT_EQ(
      sketch(
          "                    Key to Ausella.\n"
          "\n"
          "   1. (a) Wings clear, with long dark spots . . . 2. (b) Wings dark . . . 3.\n"
          "\n"
          "   2. (a) Legs red . . . A. busa Roe. (b) Legs black . . . A. cusa\n"
          "Dorn.\n"
          " \n"
          "212         Moths of the Lower Cullen\n"
          "\n"
          "   3. (a) Head large . . . 4.\n"
          "(b) Head very small, hardly wider than the collar and deeply sunk . . . A. fusa Roe.\n"
          "\n"
          "   4. (a) Tail short . . . A. gusa Roe. (b) Tail\n"
          "long . . . A. husa Roe.\n"),
      "1[1. (a)] Wings clear, with long dark spots -> 2\n"
      "1[b] Wings dark -> 3\n"
      "2[2. (a)] Legs red -> Ausella busa\n"
      "2[b] Legs black -> Ausella cusa\n"
      "3[3. (a)] Head large -> 4\n"
      "3[b] Head very small, hardly wider than the collar and deeply sunk -> Ausella fusa\n"
      "4[4. (a)] Tail short -> Ausella gusa\n"
      "4[b] Tail long -> Ausella husa\n");
}

TEST(PrintedWholeCouplets, NumbersOfParagraphsMayBeMisread) {
  EXPECT_EQ(sketch("Key to Ausella.\n"
                   "\n"
                   "   1. (a) Wings clear, with two spots . . . A. busa Roe. (b) Wings dark or\n"
                   "pale . . . 2.\n"
                   "\n"
                   "   2. (a) Wings clear, with six spots . . . A. cusa Roe. (b) Wings dark or\n"
                   "pale . . . 3.\n"
                   "\n"
                   "   3. (a) Wings clear, with ten spots . . . A. dusa Roe. (b) Wings dark or\n"
                   "pale . . . 4.\n"
                   "\n"
                   "   4. (a) Wings clear, with one spots . . . A. fusa Roe. (b) Wings dark or\n"
                   "pale . . . 5.\n"
                   "\n"
                   "   5. (a) Wings clear, with two spots . . . A. gusa Roe. (b) Wings dark or\n"
                   "pale . . . 6.\n"
                   "\n"
                   "   6. (a) Wings clear, with six spots . . . A. husa Roe. (b) Wings dark or\n"
                   "pale . . . 7.\n"
                   "\n"
                   "   7. (a) Wings clear, with ten spots . . . A. jusa Roe. (b) Wings dark or\n"
                   "pale . . . 8.\n"
                   "\n"
                   "   8. (a) Wings clear, with one spots . . . A. kusa Roe. (b) Wings dark or\n"
                   "pale . . . 9.\n"
                   "\n"
                   "   9. (a) Wings clear, with two spots . . . A. lusa Roe. (b) Wings dark or\n"
                   "pale . . . l0.\n"
                   "\n"
                   "   10. (a) Wings clear, with six spots . . . A. musa Roe. (b) Wings dark or\n"
                   "pale . . . 11.\n"
                   "\n"
                   "   ll. (a) Wings clear, with ten spots . . . A. nusa Roe. (b) Wings dark or\n"
                   "pale . . . 12.\n"
                   "\n"
                   "   12. (a) Wings clear, with one spots . . . A. pusa Roe. (b) Wings dark or\n"
                   "pale . . . A. zusa Roe.\n"),
            "1[1. (a)] Wings clear, with two spots -> Ausella busa\n"
            "1[b] Wings dark or pale -> 2\n"
            "2[2. (a)] Wings clear, with six spots -> Ausella cusa\n"
            "2[b] Wings dark or pale -> 3\n"
            "3[3. (a)] Wings clear, with ten spots -> Ausella dusa\n"
            "3[b] Wings dark or pale -> 4\n"
            "4[4. (a)] Wings clear, with one spots -> Ausella fusa\n"
            "4[b] Wings dark or pale -> 5\n"
            "5[5. (a)] Wings clear, with two spots -> Ausella gusa\n"
            "5[b] Wings dark or pale -> 6\n"
            "6[6. (a)] Wings clear, with six spots -> Ausella husa\n"
            "6[b] Wings dark or pale -> 7\n"
            "7[7. (a)] Wings clear, with ten spots -> Ausella jusa\n"
            "7[b] Wings dark or pale -> 8\n"
            "8[8. (a)] Wings clear, with one spots -> Ausella kusa\n"
            "8[b] Wings dark or pale -> 9\n"
            "9[9. (a)] Wings clear, with two spots -> Ausella lusa\n"
            "9[b] Wings dark or pale -> 10\n"
            "10[10. (a)] Wings clear, with six spots -> Ausella musa\n"
            "10[b] Wings dark or pale -> 11\n"
            "11[ll. (a)] Wings clear, with ten spots -> Ausella nusa\n"
            "11[b] Wings dark or pale -> 12\n"
            "12[12. (a)] Wings clear, with one spots -> Ausella pusa\n"
            "12[b] Wings dark or pale -> Ausella zusa\n");
}

}  // namespace
}  // namespace keydrift

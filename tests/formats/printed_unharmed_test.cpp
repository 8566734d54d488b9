// Ordinary keys that look, at some place, like what the mends for damaged ones look for.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedUnharmed, GroupsReachedFromSeveralLeads) {
  EXPECT_EQ(sketch("1 Body hairless ........ 2\n"
                   "– Body hairy ........ 4\n"
                   "2 Tail forked ........ Ausella (5)\n"
                   "– Tail entire ........ 3\n"
                   "3 Eyes red ........ Busella (6)\n"
                   "– Eyes black ........ Ausella (5)\n"
                   "4 Horn long ........ Busella (6)\n"
                   "– Horn short ........ Dusella fusa\n"
                   "5 Wings clear ........ Ausella busa\n"
                   "– Wings dark ........ Ausella cusa\n"
                   "6 Legs red ........ Busella gusa\n"
                   "– Legs black ........ Busella husa\n"),
            "1[1] Body hairless -> 2\n"
            "1[–] Body hairy -> 4\n"
            "2[2] Tail forked -> 5 (Ausella)\n"
            "2[–] Tail entire -> 3\n"
            "3[3] Eyes red -> 6 (Busella)\n"
            "3[–] Eyes black -> 5 (Ausella)\n"
            "4[4] Horn long -> 6 (Busella)\n"
            "4[–] Horn short -> Dusella fusa\n"
            "5[5] Wings clear -> Ausella busa\n"
            "5[–] Wings dark -> Ausella cusa\n"
            "6[6] Legs red -> Busella gusa\n"
            "6[–] Legs black -> Busella husa\n");
}

TEST(PrintedUnharmed, FootnotesThatTouchNames) {
  EXPECT_EQ(sketch("1 Leaves hairy ........ 2\n"
                   "– Leaves bald ........ 3\n"
                   "2 Stem round ........ Ausella busa1\n"
                   "– Stem square ........ Ausella cusa2\n"
                   "3 Petals red ........ Ausella dusa3\n"
                   "– Petals white ........ Ausella fusa2\n"),
            "1[1] Leaves hairy -> 2\n"
            "1[–] Leaves bald -> 3\n"
            "2[2] Stem round -> Ausella busa (1)\n"
            "2[–] Stem square -> Ausella cusa (2)\n"
            "3[3] Petals red -> Ausella dusa (3)\n"
            "3[–] Petals white -> Ausella fusa (2)\n");
}

TEST(PrintedUnharmed, AuthorsWithoutABlank) {
  EXPECT_EQ(sketch("1. Leaves hairy ........ 2\n"
                   "– Leaves bald ........ 3\n"
                   "2. Stem round ........ Ausella busa (L.)Roe subsp. busa\n"
                   "– Stem square ........ Ausella busa (L.)Roe subsp. cusa\n"
                   "3. Petals red ........ Ausella dusa (L.)Roe var. dusa\n"
                   "– Petals white ........ Ausella dusa (L.)Roe var. fusa\n"),
            "1[1] Leaves hairy -> 2\n"
            "1[–] Leaves bald -> 3\n"
            "2[2] Stem round -> Ausella busa subsp. busa\n"
            "2[–] Stem square -> Ausella busa subsp. cusa\n"
            "3[3] Petals red -> Ausella dusa var. dusa\n"
            "3[–] Petals white -> Ausella dusa var. fusa\n");
}

TEST(PrintedUnharmed, AFirstLeadOfOneWordInCapitals) {
  EXPECT_EQ(sketch("1. TREES.\n"
                   "   2. Leaves opposite ........ Ausella busa\n"
                   "   2. Leaves alternate ........ Ausella cusa\n"
                   "1. SHRUBS.\n"
                   "   3. Petals red ........ Ausella dusa\n"
                   "   3. Petals white ........ Ausella fusa\n"
                   "1. HERBS.\n"
                   "   4. Fruit dry ........ Ausella gusa\n"
                   "   4. Fruit fleshy ........ Ausella husa\n"),
            "1[1] TREES. -> 2\n"
            "1[1] SHRUBS. -> 3\n"
            "1[1] HERBS. -> 4\n"
            "2[2] Leaves opposite -> Ausella busa\n"
            "2[2] Leaves alternate -> Ausella cusa\n"
            "3[3] Petals red -> Ausella dusa\n"
            "3[3] Petals white -> Ausella fusa\n"
            "4[4] Fruit dry -> Ausella gusa\n"
            "4[4] Fruit fleshy -> Ausella husa\n");
}

TEST(PrintedUnharmed, ALengthAtTheEndOfALineInCapitals) {
  EXPECT_EQ(sketch("1. LEAVES HAIRY; PLANTS OF THE COAST, NEVER SEEN ABOVE\n"
                   "MARSH LEVEL AT AN ALTITUDE OF 900\n"
                   "M ........ 2\n"
                   "– LEAVES BALD; PLANTS OF THE HILLS ........ AUSELLA BUSA\n"
                   "2. STEM ROUND ........ AUSELLA CUSA\n"
                   "– STEM SQUARE ........ AUSELLA DUSA\n"),
            "1[1] LEAVES HAIRY; PLANTS OF THE COAST, NEVER SEEN ABOVE MARSH LEVEL AT AN ALTITUDE "
            "OF 900 M -> 2\n"
            "1[–] LEAVES BALD; PLANTS OF THE HILLS -> Ausella busa\n"
            "2[2] STEM ROUND -> Ausella cusa\n"
            "2[–] STEM SQUARE -> Ausella dusa\n");
}

TEST(PrintedUnharmed, AShortLineInADoubleSpacedKey) {
  EXPECT_EQ(
      sketch("1 Wings clear; known only from the valleys of the\n\n"
             "Upper Ausel\n\n"
             "and hills near it ........ 2\n\n"
             "– Wings dark ........ Ausella busa\n\n"
             "2 Legs red ........ Ausella cusa\n\n"
             "– Legs black ........ Ausella dusa\n"),
      "1[1] Wings clear; known only from the valleys of the Upper Ausel and hills near it -> 2\n"
      "1[–] Wings dark -> Ausella busa\n"
      "2[2] Legs red -> Ausella cusa\n"
      "2[–] Legs black -> Ausella dusa\n");
}

TEST(PrintedUnharmed, LettersOfAFigure) {
  EXPECT_EQ(sketch("1 Wings clear (Fig. 2 a c e g i) ........ 2\n"
                   "– Wings dark (Fig. 2 b d f h k) ........ Ausella busa\n"
                   "2 Fore tibia with setae p q r t v present ........ Ausella cusa\n"
                   "– Fore tibia with setae p q r t v absent ........ Ausella dusa\n"),
            "1[1] Wings clear (Fig. 2 a c e g i) -> 2\n"
            "1[–] Wings dark (Fig. 2 b d f h k) -> Ausella busa\n"
            "2[2] Fore tibia with setae p q r t v present -> Ausella cusa\n"
            "2[–] Fore tibia with setae p q r t v absent -> Ausella dusa\n");
}

TEST(PrintedUnharmed, AnArticleBetweenGreekLabels) {
  EXPECT_EQ(sketch("A Stem hairy\n"
                   " α Leaves round ........ Ausella busa\n"
                   "   a rare plant of dunes\n"
                   " β Leaves long ........ Ausella cusa\n"
                   "B Stem bald\n"
                   " α Petals red ........ Ausella dusa\n"
                   "   a weed of fields\n"
                   " β Petals white ........ Ausella fusa\n"),
            "1[A] Stem hairy -> 2\n"
            "1[B] Stem bald -> 3\n"
            "2[α] Leaves round -> Ausella busa (a rare plant of dunes)\n"
            "2[β] Leaves long -> Ausella cusa\n"
            "3[α] Petals red -> Ausella dusa (a weed of fields)\n"
            "3[β] Petals white -> Ausella fusa\n");
}

TEST(PrintedUnharmed, AQuotationBetweenGreekLabels) {
  EXPECT_EQ(sketch("A. Tige velue\n"
                   "   α Feuilles entières ........ Ausella busa\n"
                   "   « Petite buse » des jardiniers.\n"
                   "   β Feuilles lobées ........ Ausella cusa\n"
                   "B. Tige glabre\n"
                   "   α Pétales rouges ........ Ausella dusa\n"
                   "   β Pétales blancs ........ Ausella fusa\n"),
            "1[A] Tige velue -> 2\n"
            "1[B] Tige glabre -> 3\n"
            "2[α] Feuilles entières -> Ausella busa\n"
            "2[β] Feuilles lobées -> Ausella cusa\n"
            "3[α] Pétales rouges -> Ausella dusa\n"
            "3[β] Pétales blancs -> Ausella fusa\n");
}

TEST(PrintedUnharmed, OneSpeciesBeforeAClause) {
  EXPECT_EQ(sketch("1 Body hairy ........ 2\n"
                   "– Body bald ........ Ausella busa\n"
                   "2 Legs red ........ Busella dusa\n"
                   "– Legs black ........ Cusella, one species, C. gusa, with 3 forms\n"),
            "1[1] Body hairy -> 2\n"
            "1[–] Body bald -> Ausella busa\n"
            "2[2] Legs red -> Busella dusa\n"
            "2[–] Legs black -> Cusella gusa (Cusella, one species; with 3 forms)\n");
}

TEST(PrintedUnharmed, NumberedTitlesThatLeadsName) {
  EXPECT_EQ(sketch("1 Wings clear ........ Group 10\n"
                   "– Wings dark ........ Group 11\n\n"
                   "Group 10\n\n"
                   "1 Legs red ........ 2\n"
                   "– Legs black ........ A. busa\n"
                   "2 Eyes red ........ A. cusa\n"
                   "– Eyes black ........ 3\n"
                   "3 Horn long ........ A. dusa\n"
                   "– Horn short ........ 4\n"
                   "4 Nose long ........ A. lusa\n"
                   "– Nose short ........ A. musa\n\n"
                   "Group 11\n\n"
                   "1 Tail long ........ A. fusa\n"
                   "– Tail short ........ A. gusa\n"),
            "1[1] Wings clear -> key: Group 10\n"
            "1[–] Wings dark -> key: Group 11\n"
            "1[1] Legs red -> 2\n"
            "1[–] Legs black -> A. busa\n"
            "2[2] Eyes red -> A. cusa\n"
            "2[–] Eyes black -> 3\n"
            "3[3] Horn long -> A. dusa\n"
            "3[–] Horn short -> 4\n"
            "4[4] Nose long -> A. lusa\n"
            "4[–] Nose short -> A. musa\n"
            "1[1] Tail long -> A. fusa\n"
            "1[–] Tail short -> A. gusa\n");
}

TEST(PrintedUnharmed, NewSpeciesBehindASubgenusOrAnEpithet) {
  EXPECT_EQ(sketch("1 Wings clear 2\n"
                   "– Wings dark Ausella busa\n"
                   "2 Legs red Ausella cf. cusa n. sp.\n"
                   "– Legs black Ausella (Busella) dusa sp. nov.\n"),
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> Ausella busa\n"
            "2[2] Legs red -> Ausella cf. cusa (n. sp.)\n"
            "2[–] Legs black -> Ausella (Busella) dusa (sp. nov.)\n");
}

TEST(PrintedUnharmed, ANoteThatBeginsWithAnInitial) {
  EXPECT_EQ(sketch("1 Leaves opposite\n"
                   "   2 Petals red ........ Ausella busa\n"
                   "   2 Petals white ........ Ausella cusa\n"
                   "     I. Roe records it from dunes.\n"
                   "1 Leaves alternate\n"
                   "   3 Fruit dry ........ Ausella dusa\n"
                   "   3 Fruit fleshy ........ Ausella fusa\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[1] Leaves alternate -> 3\n"
            "2[2] Petals red -> Ausella busa\n"
            "2[2] Petals white -> Ausella cusa\n"
            "3[3] Fruit dry -> Ausella dusa\n"
            "3[3] Fruit fleshy -> Ausella fusa\n");
}

TEST(PrintedUnharmed, RivalsOfOneLatinWordInCapitals) {
  EXPECT_EQ(sketch("1. PUPAE.\n"
                   "   2. Leaves long ........ Ausella busa\n"
                   "   2. Leaves short ........ Ausella cusa\n"
                   "1. LARVAE.\n"
                   "   3. Stem long ........ Ausella dusa\n"
                   "   3. Stem short ........ Ausella fusa\n"),
            "1[1] PUPAE. -> 2\n"
            "1[1] LARVAE. -> 3\n"
            "2[2] Leaves long -> Ausella busa\n"
            "2[2] Leaves short -> Ausella cusa\n"
            "3[3] Stem long -> Ausella dusa\n"
            "3[3] Stem short -> Ausella fusa\n");
}

TEST(PrintedUnharmed, SynonymsInBrackets) {
  EXPECT_EQ(sketch("1 Leaves hairy ........ 2\n"
                   "– Leaves bald ........ Dusella (Ausella dusa)\n"
                   "2 Stem round ........ Cusella Dorn (Ausella gusa Roe)\n"
                   "– Stem square ........ BUSELLA BUSA (Ausella busa Roe)\n"),
            "1[1] Leaves hairy -> 2\n"
            "1[–] Leaves bald -> Dusella (Ausella dusa)\n"
            "2[2] Stem round -> Cusella (Ausella gusa Roe)\n"
            "2[–] Stem square -> Busella busa (Ausella busa Roe)\n");
}

TEST(PrintedUnharmed, VeinsAtTheBeginningsOfLines) {
  EXPECT_EQ(sketch("1 Wings clear, with vein\n"
                   "2Cu forked near the margin ........ 2\n"
                   "– Wings dark, with vein\n"
                   "1Rs simple ........ 3\n"
                   "2 Legs red, hind wing with\n"
                   "2Cu absent ........ Ausella busa\n"
                   "– Legs black ........ Ausella cusa\n"
                   "3 Eyes hairy ........ Busella dusa\n"
                   "– Eyes bald ........ Busella fusa\n"),
            "1[1] Wings clear, with vein 2Cu forked near the margin -> 2\n"
            "1[–] Wings dark, with vein 1Rs simple -> 3\n"
            "2[2] Legs red, hind wing with 2Cu absent -> Ausella busa\n"
            "2[–] Legs black -> Ausella cusa\n"
            "3[3] Eyes hairy -> Busella dusa\n"
            "3[–] Eyes bald -> Busella fusa\n");
}

TEST(PrintedUnharmed, AnExcerptThatKeepsItsLetters) {
  EXPECT_EQ(sketch("A. Petals red ........ Ausella busa\n"
                   "B. Petals white ........ Ausella cusa\n"
                   "C. Petals blue ........ Ausella dusa\n"
                   "G. Petals none ........ Ausella gusa\n"),
            "1[A] Petals red -> Ausella busa\n"
            "1[B] Petals white -> Ausella cusa\n"
            "1[C] Petals blue -> Ausella dusa\n"
            "1[G] Petals none -> Ausella gusa\n");
}

TEST(PrintedUnharmed, AFirstLeadBeforeOnesThatEndInColons) {
  EXPECT_EQ(sketch("Petals red\n"
                   "   Leaves long: Ausella busa\n"
                   "   Leaves round: Ausella cusa\n"
                   "Petals white, and:\n"
                   "   Stem long: Ausella dusa\n"
                   "   Stem short, and:\n"
                   "      Fruit dry: Ausella fusa\n"
                   "      Fruit fleshy, and:\n"
                   "         Seeds black: Ausella gusa\n"
                   "         Seeds white: Ausella husa\n"),
            "1[] Petals red -> 2\n"
            "1[] Petals white, and: -> 3\n"
            "2[] Leaves long -> Ausella busa\n"
            "2[] Leaves round -> Ausella cusa\n"
            "3[] Stem long -> Ausella dusa\n"
            "3[] Stem short, and: -> 4\n"
            "4[] Fruit dry -> Ausella fusa\n"
            "4[] Fruit fleshy, and: -> 5\n"
            "5[] Seeds black -> Ausella gusa\n"
            "5[] Seeds white -> Ausella husa\n");
}

TEST(PrintedUnharmed, NumbersBehindOneBlankBesideLeadersBeforeNames) {
  EXPECT_EQ(sketch("1. Flowers white 2\n"
                   "1. Flowers yellow 3\n"
                   "2. Stem hairy ..... Ausella busa\n"
                   "2. Stem bald ..... Ausella cusa\n"
                   "3. Fruit winged ..... Ausella dusa\n"
                   "3. Fruit wingless, seeds 4 ..... Ausella fusa\n"),
            "1[1] Flowers white -> 2\n"
            "1[1] Flowers yellow -> 3\n"
            "2[2] Stem hairy -> Ausella busa\n"
            "2[2] Stem bald -> Ausella cusa\n"
            "3[3] Fruit winged -> Ausella dusa\n"
            "3[3] Fruit wingless, seeds 4 -> Ausella fusa\n");
}

TEST(PrintedUnharmed, CountsBeforeCouplets) {
  EXPECT_EQ(sketch("1. Flowers white, stamens 3\n"
                   "  2. Stem hairy ..... Ausella busa\n"
                   "  2. Stem bald ..... Ausella cusa\n"
                   "1. Flowers yellow, stamens 5\n"
                   "  3. Fruit winged ..... Ausella dusa\n"
                   "  3. Fruit wingless ..... Ausella fusa\n"),
            "1[1] Flowers white, stamens 3 -> 2\n"
            "1[1] Flowers yellow, stamens 5 -> 3\n"
            "2[2] Stem hairy -> Ausella busa\n"
            "2[2] Stem bald -> Ausella cusa\n"
            "3[3] Fruit winged -> Ausella dusa\n"
            "3[3] Fruit wingless -> Ausella fusa\n");
}

TEST(PrintedUnharmed, SpeciesNumbersBehindOneBlank) {
  EXPECT_EQ(sketch("1. Flowers white 2\n"
                   "1. Flowers yellow 1) Ausella busa\n"
                   "2. Leaves ovate (2) Ausella cusa\n"
                   "2. Leaves linear – 3a. Ausella dusa\n"),
            "1[1] Flowers white -> 2\n"
            "1[1] Flowers yellow -> Ausella busa\n"
            "2[2] Leaves ovate -> Ausella cusa\n"
            "2[2] Leaves linear -> Ausella dusa\n");
}

TEST(PrintedUnharmed, FiguresBeforeNamesAreTheWordsOwn) {
  EXPECT_EQ(sketch("1. Antenna with 10 segments. 2\n"
                   "– Claws on legs 3 and 4. A. busa Roe\n"
                   "2. Genitalia as in figs 14, 15. A. cusa Roe\n"
                   "– Genitalia as in figs 16, 17. A. dusa Roe\n"),
            "1[1] Antenna with 10 segments. -> 2\n"
            "1[–] Claws on legs 3 and 4. -> A. busa\n"
            "2[2] Genitalia as in figs 14, 15. -> A. cusa\n"
            "2[–] Genitalia as in figs 16, 17. -> A. dusa\n");
}

TEST(PrintedUnharmed, SignsBeforeAllDestinations) {
  EXPECT_EQ(sketch("1. Leaves > 5 mm > 2\n"
                   "1. Leaves < 5 mm > 3\n"
                   "2. Stem hairy > Ausella busa\n"
                   "2. Stem bald > Ausella cusa\n"
                   "3. Fruit winged > Ausella dusa\n"
                   "3. Fruit wingless > Ausella fusa\n"),
            "1[1] Leaves > 5 mm -> 2\n"
            "1[1] Leaves < 5 mm -> 3\n"
            "2[2] Stem hairy -> Ausella busa\n"
            "2[2] Stem bald -> Ausella cusa\n"
            "3[3] Fruit winged -> Ausella dusa\n"
            "3[3] Fruit wingless -> Ausella fusa\n");
}

TEST(PrintedUnharmed, NounsAtTheBeginningOfAWrappedLine) {
  EXPECT_EQ(sketch("1. Blüten weiß. Wälder des\n"
                   "Hügellandes bis 800 m. A. busa Roe\n"
                   "1. Blüten gelb. A. cusa Roe\n"),
            "1[1] Blüten weiß. Wälder des Hügellandes bis 800 m. -> A. busa\n"
            "1[1] Blüten gelb. -> A. cusa\n");
}

TEST(PrintedUnharmed, CountsOfChromosomesAtTheBeginningsOfLines) {
  EXPECT_EQ(sketch("1a. Flowers white ..... Ausella busa\n"
                   "2n = 24. Woods.\n"
                   "1b. Flowers yellow ..... Ausella cusa\n"
                   "2n = 48. Meadows.\n"),
            "1[1a] Flowers white -> Ausella busa\n1[1b] Flowers yellow -> Ausella cusa\n");
  EXPECT_EQ(sketch("1. Fleurs blanches ..... Ausella busa\n"
                   "– Fleurs jaunes, solitaires. Juin-sept.\n"
                   "2n = 24 ..... Ausella cusa\n"),
            "1[1] Fleurs blanches -> Ausella busa\n"
            "1[–] Fleurs jaunes, solitaires. Juin-sept. 2n = 24 -> Ausella cusa\n");
}

TEST(PrintedUnharmed, AWrappedLineThatBeginsWithACountAndAFullStop) {
  EXPECT_EQ(sketch("1. Fleurs blanches; étamines 5 ou\n"
                   "8. Rochers, de 1200 à 2400 m → 1. A. busa\n"
                   "1. Fleurs jaunes → 2. A. cusa\n"),
            "1[1] Fleurs blanches; étamines 5 ou 8. Rochers, de 1200 à 2400 m -> A. busa\n"
            "1[1] Fleurs jaunes -> A. cusa\n");
}

TEST(PrintedUnharmed, ASectionOfRomanNumberBetweenCouplets) {
  EXPECT_EQ(sketch("1. Flowers white ..... 2\n"
                   "1. Flowers yellow ..... 3\n"
                   "I. Subgen. Albae\n"
                   "2. Leaves ovate ..... Ausella busa\n"
                   "2. Leaves linear ..... Ausella cusa\n"
                   "II. Subgen. Flavae\n"
                   "3. Fruit winged ..... Ausella dusa\n"
                   "3. Fruit wingless ..... Ausella fusa\n"),
            "1[1] Flowers white -> 2\n1[1] Flowers yellow -> 3\n"
            "2[2] Leaves ovate -> Ausella busa\n2[2] Leaves linear -> Ausella cusa\n"
            "3[3] Fruit winged -> Ausella dusa\n3[3] Fruit wingless -> Ausella fusa\n");
}

TEST(PrintedUnharmed, ABareNumberBeforeLeadersWithinALead) {
  EXPECT_EQ(sketch("1 Legs black ..... 2\n"
                   "- Legs yellow ..... Ausella busa\n"
                   "2 Head ending before tergite\n"
                   "3 ..... Ausella cusa\n"
                   "- Head longer ..... 3\n"
                   "3 Wings wide ..... Ausella dusa\n"
                   "- Wings narrow ..... Ausella fusa\n"),
            "1[1] Legs black -> 2\n1[-] Legs yellow -> Ausella busa\n"
            "2[2] Head ending before tergite 3 -> Ausella cusa\n2[-] Head longer -> 3\n"
            "3[3] Wings wide -> Ausella dusa\n3[-] Wings narrow -> Ausella fusa\n");
}

TEST(PrintedUnharmed, GeneraWithAuthorsAndYears) {
  EXPECT_EQ(sketch("Key to genera of Ausellidae\n\n1. Tarsi five-segmented Ausella Roe, 1921\n"
                   "- Tarsi four-segmented 2\n2. Eyes large Busella Dorn, 1904\n"
                   "- Eyes small Cusella Roe, 1889\n"),
            "1[1] Tarsi five-segmented -> Ausella\n1[-] Tarsi four-segmented -> 2\n"
            "2[2] Eyes large -> Busella\n2[-] Eyes small -> Cusella\n");
}

// Numbers that stand once are no list where the lines between them are their rivals.
TEST(PrintedUnharmed, SecondLeadsWithoutLabelsBeforeAKeyWithDashes) {
  EXPECT_EQ(sketch("Key A\n\n"
                   "1. Wings clear 2\n"
                   "Wings dark Ausella busa\n"
                   "2. Legs red Ausella cusa\n"
                   "Legs black Ausella dusa\n\n"
                   "Key B\n\n"
                   "1. Head red Busella gusa\n"
                   "- Head black Busella husa\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> Ausella busa\n"
            "2[2] Legs red -> Ausella cusa\n"
            "2[] Legs black -> Ausella dusa\n"
            "1[1] Head red -> Busella gusa\n"
            "1[-] Head black -> Busella husa\n");
}

// A genus with its number, far in, is no head of what stands below.
TEST(PrintedUnharmed, NumberedGeneraBeneathTheirLeads) {
  EXPECT_EQ(sketch("1. Needles long\n"
                   "              1. Ausella Roe\n"
                   "1. Needles short\n"
                   "              2. Busella Dorn\n"
                   "1. Needles none\n"
                   "              3. Cusella Dorn\n"),
            "1[1] Needles long -> Ausella\n"
            "1[1] Needles short -> Busella\n"
            "1[1] Needles none -> Cusella\n");
}

TEST(PrintedUnharmed, RaysOfFinsInASerialKey) {
  EXPECT_EQ(sketch("1 (4) Head large.\n"
                   "2 (3) D. XII, 14–16 ...... Ausella busa\n"
                   "3 (2) D. X, 11–12 ...... Ausella cusa\n"
                   "4 (1) Head small.\n"
                   "5 (6) A. III, 8 ...... Ausella dusa\n"
                   "6 (5) A. III, 7 ...... Ausella fusa\n"),
            "1[1] Head large. -> 2\n"
            "1[4] Head small. -> 5\n"
            "2[2] D. XII, 14–16 -> Ausella busa\n"
            "2[3] D. X, 11–12 -> Ausella cusa\n"
            "5[5] A. III, 8 -> Ausella dusa\n"
            "5[6] A. III, 7 -> Ausella fusa\n");
}

TEST(PrintedUnharmed, ANameBeneathTheFiguresThatEndTheWords) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "1. Head wide, genitalia as in Figs 3, 4\n"
                   "A. longa Roe\n"
                   "– Head narrow 2\n"
                   "2. Legs red 3\n"
                   "– Legs black A. busa Roe\n"
                   "3. Tail long 4\n"
                   "– Tail short A. cusa Roe\n"
                   "4. Horn long A. dusa Roe\n"
                   "– Horn short A. fusa Roe\n"),
            "1[1] Head wide, genitalia as in Figs 3, 4 -> Ausella longa\n"
            "1[–] Head narrow -> 2\n"
            "2[2] Legs red -> 3\n"
            "2[–] Legs black -> Ausella busa\n"
            "3[3] Tail long -> 4\n"
            "3[–] Tail short -> Ausella cusa\n"
            "4[4] Horn long -> Ausella dusa\n"
            "4[–] Horn short -> Ausella fusa\n");
}

TEST(PrintedUnharmed, GeneraWithPagesOrNumbersBehindOneBlank) {
  EXPECT_EQ(sketch("1 Blüten weiß Ausella S. 12\n"
                   "1* Blüten gelb 2\n"
                   "2 Blätter eiförmig Busella S. 13\n"
                   "2* Blätter lineal Cusella, 14\n"),
            "1[1] Blüten weiß -> Ausella (S. 12)\n"
            "1[1*] Blüten gelb -> 2\n"
            "2[2] Blätter eiförmig -> Busella (S. 13)\n"
            "2[2*] Blätter lineal -> Cusella (14)\n");
  EXPECT_EQ(sketch("1. Flowers white 2\n"
                   "1. Flowers yellow 1. Ausella Roe\n"
                   "2. Leaves ovate 2. Busella Dorn\n"
                   "2. Leaves linear 3. Cusella Roe\n"),
            "1[1] Flowers white -> 2\n"
            "1[1] Flowers yellow -> Ausella\n"
            "2[2] Leaves ovate -> Busella\n"
            "2[2] Leaves linear -> Cusella\n");
}

TEST(PrintedUnharmed, AnAddressBehindTheLastLead) {
  EXPECT_EQ(sketch("1. Legs red ..... Ausella busa\n"
                   "- Legs black ..... Ausella cusa\n"
                   "https://doi.org/10.9999/abc.12\n"),
            "1[1] Legs red -> Ausella busa\n"
            "1[-] Legs black -> Ausella cusa\n");
}

TEST(PrintedUnharmed, RangesThatALinesEndParts) {
  EXPECT_EQ(sketch("– Stamens many, in the upper half of a tube of 3.0\n"
                   "   – 3.5 mm ..... Ausella busa\n"
                   "– Stamens few\n"
                   "   – Petals red, on stalks as long as the sepals, of 10\n"
                   "      – 12 mm ..... Ausella cusa\n"
                   "   – Petals white ..... Ausella dusa\n"),
            "1[–] Stamens many, in the upper half of a tube of 3.0 – 3.5 mm -> Ausella busa\n"
            "1[–] Stamens few -> 2\n"
            "2[–] Petals red, on stalks as long as the sepals, of 10 – 12 mm -> Ausella cusa\n"
            "2[–] Petals white -> Ausella dusa\n");
}

// No column behind the destinations, but one for names and one for numbers.
TEST(PrintedUnharmed, NamesAndNumbersInColumnsOfTheirOwn) {
  EXPECT_EQ(sketch("1\tWings clear\tAus bus\t\n–\tWings dark\t\t2\n2\tLegs long\tAus cus\t\n"
                   "–\tLegs short\t\t3\n3\tHead red\tAus dus\t\n–\tHead black\tAus eus\t\n"),
            "1[1] Wings clear -> Aus bus\n1[–] Wings dark -> 2\n2[2] Legs long -> Aus cus\n"
            "2[–] Legs short -> 3\n3[3] Head red -> Aus dus\n3[–] Head black -> Aus eus\n");
}

// Second leads without labels that begin with a word and a colon are leads all the same.
TEST(PrintedUnharmed, LeadsThatBeginWithAWordAndAColon) {
  for (auto const* leaders : {" … ", "    ", " – ", " → "}) {
    std::string text;
    for (auto const& [words, end] :
         std::vector<std::pair<std::string, std::string>>{{"1 Wings: clear", "Aus bus"},
                                                          {"Wings: dark", "2"},
                                                          {"2 Wings: long", "Aus cus"},
                                                          {"Wings: short", "3"},
                                                          {"3 Wings: red", "Aus dus"},
                                                          {"Wings: black", "Aus eus"}}) {
      text += words + leaders + end + "\n";
    }
    EXPECT_EQ(sketch(text),
              "1[1] Wings: clear -> Aus bus\n1[] Wings: dark -> 2\n"
              "2[2] Wings: long -> Aus cus\n2[] Wings: short -> 3\n"
              "3[3] Wings: red -> Aus dus\n3[] Wings: black -> Aus eus\n")
        << leaders;
  }
}

// No signs of a list: the dashes are the second leads', the numbers behind them count setae.
TEST(PrintedUnharmed, NumbersBehindTheDashesOfSecondLeads) {
  EXPECT_EQ(sketch("1. 1 Seta on the pronotum ... 2\n– 2 Setae on the pronotum ... 3\n"
                   "2. 2 Spots on the wing ... Aus bus\n– 3 Spots on the wing ... Aus cus\n"
                   "3. 3 Spines on the tibia ... Aus dus\n– 4 Spines on the tibia ... Aus eus\n"),
            "1[1] 1 Seta on the pronotum -> 2\n1[–] 2 Setae on the pronotum -> 3\n"
            "2[2] 2 Spots on the wing -> Aus bus\n2[–] 3 Spots on the wing -> Aus cus\n"
            "3[3] 3 Spines on the tibia -> Aus dus\n3[–] 4 Spines on the tibia -> Aus eus\n");
}

// Where ends stand in brackets, colours in brackets are none.
TEST(PrintedUnharmed, WordsInBracketsBesideNamesInBrackets) {
  EXPECT_EQ(sketch("Key to weeds\n"
                   "A Green all over\n    B Flat sheets (Viridulva lata)\n"
                   "    BB Tubes or threads (Enterulva bullosa)\n"
                   "AA Not green (olive, brown or bleached)\n"
                   "    D Large, leathery (Fucomora lata)\n"
                   "    DD Small, feathery (Purpurora alba)\n"),
            "A[A] Green all over -> B\n"
            "A[AA] Not green (olive, brown or bleached) -> D\n"
            "B[B] Flat sheets -> Viridulva lata\nB[BB] Tubes or threads -> Enterulva bullosa\n"
            "D[D] Large, leathery -> Fucomora lata\nD[DD] Small, feathery -> Purpurora alba\n");
}

TEST(PrintedUnharmed, AThirdLeadWithoutEndAtTheKeysEndIsALead) {
  EXPECT_EQ(sketch("Key to ferns\n"
                   "1a. Rachis dark: Ebenula platynota\n1b. Rachis green ... 2\n"
                   "2a. Indusium kidney-shaped: Renisorus reniformis\n"
                   "2b. Indusium hooked: Athyriella femina\n"
                   "2c. Indusium none: Nudisorus (two species; not treated)\n"),
            "1[1a] Rachis dark -> Ebenula platynota\n"
            "1[1b] Rachis green -> 2\n"
            "2[2a] Indusium kidney-shaped -> Renisorus reniformis\n"
            "2[2b] Indusium hooked -> Athyriella femina\n"
            "2[2c] Indusium none: Nudisorus (two species; not treated) -> ?\n");
  EXPECT_EQ(sketch("Key to ferns\n"
                   "1 Rachis dark ... Ebenula platynota\n1′ Rachis green ... 2\n"
                   "2 Indusium kidney-shaped ... Renisorus reniformis\n"
                   "2′ Indusium hooked ... Athyriella femina\n"
                   "2″ Anything else – ask!\n\nTally sheet\n"),
            "1[1] Rachis dark -> Ebenula platynota\n"
            "1[1′] Rachis green -> 2\n"
            "2[2] Indusium kidney-shaped -> Renisorus reniformis\n"
            "2[2′] Indusium hooked -> Athyriella femina\n"
            "2[2″] Anything else – ask! -> ?\n");
}

TEST(PrintedUnharmed, ALeadOfOneWordWithASmallerNumber) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Males\n"
                   "   2. Wings clear ..... A. busa\n"
                   "   2. Wings dark ...... A. cusa\n"
                   "1. Females\n"
                   "   3. Legs red ........ A. dusa\n"
                   "   3. Legs black ...... A. fusa\n"),
            "1[1] Males -> 2\n"
            "1[1] Females -> 3\n"
            "2[2] Wings clear -> Ausella busa\n"
            "2[2] Wings dark -> Ausella cusa\n"
            "3[3] Legs red -> Ausella dusa\n"
            "3[3] Legs black -> Ausella fusa\n");
}

TEST(PrintedUnharmed, AnAuthorThatEndsInI) {
  EXPECT_EQ(sketch("The genus Ausella Roe\n"
                   "\n"
                   "1. Fingers alike; surface smooth 2\n"
                   "Fingers unlike 3\n"
                   "2. Hands swollen, busa, Rossi, p. 47\n"
                   "Hands slender, cusa, Rossi, p. 48\n"
                   "3. Wrist with a spine, dusa, Rossi, p. 49\n"
                   "Wrist bare, fusa, Rossi, p. 50\n"),
            "1[1] Fingers alike; surface smooth -> 2\n"
            "1[] Fingers unlike -> 3\n"
            "2[2] Hands swollen, -> Ausella busa (Rossi, p. 47)\n"
            "2[] Hands slender, -> Ausella cusa (Rossi, p. 48)\n"
            "3[3] Wrist with a spine, -> Ausella dusa (Rossi, p. 49)\n"
            "3[] Wrist bare, -> Ausella fusa (Rossi, p. 50)\n");
}

}  // namespace
}  // namespace keydrift

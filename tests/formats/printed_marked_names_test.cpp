// Names beside common names, in other scripts, with letters of their own, set far from their leads.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::led_to;
using test::line_kinds;
using test::read_key;
using test::sketch;

TEST(PrintedMarkedNames, CommonNamesEndInAComma) {
  EXPECT_EQ(led_to("Lesser kernel weevil, Situlio minor"), "Situlio minor (Lesser kernel weevil)");
  EXPECT_EQ(led_to("Ware beetle, Trogus voracis"), "Trogus voracis (Ware beetle)");
  EXPECT_EQ(led_to("Aus alba, Aus nigra"), "Aus alba + Aus nigra");
}

TEST(PrintedMarkedNames, AuthorsHaveInitialsThatPagesHaveElsewhere) {
  EXPECT_EQ(led_to("Ausus dus S. M. Tang"), "Ausus dus");
  EXPECT_EQ(led_to("Ausus dus P. Roe"), "Ausus dus");
  EXPECT_EQ(led_to("Ausus dus (W. P. Lou) Tang"), "Ausus dus");
  EXPECT_EQ(led_to("Ausus dus W. P. Lou var. cus"), "Ausus dus var. cus");
  EXPECT_EQ(led_to("Ausus dus, S. 12"), "Ausus dus (S. 12)");
}

TEST(PrintedMarkedNames, CommonNamesInCapitalsStandBeforeBrackets) {
  EXPECT_EQ(led_to("BOX KELLIN (Acerus negundinum)"), "Acerus negundinum (BOX KELLIN)");
  EXPECT_EQ(led_to("REDHAWS (Crateles)"), "Crateles (REDHAWS)");
  EXPECT_EQ(led_to("ACERUS NEGUNDINUM (Roe)"), "Acerus negundinum");
}

TEST(PrintedMarkedNames, CommonNamesMayBeInOtherLetters) {
  EXPECT_EQ(led_to("12. С. бахромчатый — Ausus fimbriatus Roe"),
            "Ausus fimbriatus (С. бахромчатый)");
  EXPECT_EQ(led_to("1.黑绒苣Ausus nigrosus Roe"), "Ausus nigrosus (黑绒苣)");
  EXPECT_EQ(led_to("7b.矮绒苣（变种）Ausus nigrosus var. humilis"),
            "Ausus nigrosus var. humilis (矮绒苣(变种))");
}

TEST(PrintedMarkedNames, TitlesInChineseNameTheGenus) {
  auto const text =
      "6. 绒苣属 Cichoraster S. M. Tang\n\n1.茎极短缩…………1.黑绒苣C. nigrosus Roe\n"
      "1.茎明显。\n  2.总苞片外面…………2.紫绒苣C. purpureus Roe\n  2.总苞片…………3.羽绒苣C. albus "
      "Roe\n";
  auto const read = sketch(text);
  EXPECT_NE(read.find("-> Cichoraster nigrosus (黑绒苣)"), std::string::npos) << read;
  EXPECT_EQ(line_kinds(text).substr(0, 7), "heading") << line_kinds(text);
}

TEST(PrintedMarkedNames, SectionsAreKeyedOnInBrackets) {
  EXPECT_EQ(led_to("sect. AUSAE (Key A, p. 18)"), "key: Key A (sect. AUSAE)");
}

TEST(PrintedMarkedNames, SubspeciesBearLettersAndPages) {
  EXPECT_EQ(led_to("a. subsp. dus"), "Zus yus subsp. dus");
  auto const read = sketch(
      "Key to the species of Spirus\n\n1. Shell smooth ..... densa laevior (p. 93)\n"
      "1. Shell ribbed ..... 2\n2. Foot pale ..... alba (p. 94)\n2. Foot dark ..... nigra (p. "
      "95)\n");
  EXPECT_NE(read.find("Shell smooth -> Spirus densa laevior (p. 93)"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, AnAuthorOnTheNextLineMayStandBeforeAnotherSpecies) {
  auto const read = sketch(
      "Key to the species of Ausus\n\n1. Wings clear . . . . . A. bus Roe\n"
      "1. Wings dark . . . . . 2\n2. Legs pale . . . . . A. cus\n   Roe and A. dus Dorn\n"
      "2. Legs dark . . . . . A. eus\n   Dorn\n");
  EXPECT_NE(read.find("Legs pale -> Ausus cus + Ausus dus"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, EpithetsOfPersonsMayHaveCapitals) {
  auto const read = sketch(
      "TABLEAU DES ESPÈCES DU GENRE AUSUS\n\n1. Ailes claires.              rufus Roe.\n"
      "— Ailes enfumées. 2\n2. Pattes pâles.               Delacombeana Roe.\n— Pattes noires. 3\n"
      "3. Labre blanc.                pallipes Roe.\n— Labre noir.                  nigrus Roe.\n");
  EXPECT_NE(read.find("-> Ausus delacombeana\n"), std::string::npos) << read;
  EXPECT_NE(read.find("-> Ausus pallipes\n"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, ATitleBehindCellsIsNoDestination) {
  auto const text =
      "Key A\n\n1\nEyes present\n2\n–\nEyes absent\nKey B\n2\nAntennae short\nAus bus Roe, "
      "1900\n–\n"
      "Antennae long\nAus cus Dorn, 1978\n\nKey B. Species without eyes\n\n1\nLegs pale\n"
      "Aus dus Roe, 1900\n–\nLegs dark\nAus eus Roe, 1901\n";
  auto const read = sketch(text);
  EXPECT_NE(read.find("Antennae long -> Aus cus\n"), std::string::npos) << read;
  EXPECT_EQ(read_key(text).edition.parts.back().title, "Key B. Species without eyes");
}

TEST(PrintedMarkedNames, NamesFarInEndSentencesThatLookLikeNames) {
  auto const read = sketch(
      "Ausus Roe\n\n"
      "1 (2) A fej fekete. — 3 mm. Nyáron\n                                    alba Roe\n"
      "2 (1) A fej sárga.\n"
      "3 (4) A csáp rövid. Szikes réteken\n                                    pallida Dorn\n"
      "4 (3) A csáp hosszú. Kaszálókon gyakori\n                                    longa Dorn\n");
  EXPECT_NE(read.find("Szikes réteken -> Ausus pallida\n"), std::string::npos) << read;
  EXPECT_NE(read.find("Kaszálókon gyakori -> Ausus longa\n"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, NumberedNamesStandBelowTheLeadsOfOutlines) {
  auto const read = sketch(
      "Spirula Roe\n\n"
      "I. Gehäuse rechts gewunden.\n"
      "  A. Nabel offen; Gehäuse gelblich, glänzend.\n     1. Sp. edentata Roe.\n"
      "  B. Nabel eng; auf nassen\n     Wiesen unter Steinen und Holz. 2. Sp. inornata Dorn.\n"
      "II. Gehäuse links gewunden.\n"
      "  A. Gaumenfalte lang.\n     3. Sp. pusilla Roe.\n"
      "  B. Gaumenfalte kurz.\n     4. Sp. angusta Roe.\n");
  EXPECT_NE(read.find("glänzend. -> Spirula edentata\n"), std::string::npos) << read;
  EXPECT_NE(read.find("Steinen und Holz. -> Spirula inornata\n"), std::string::npos) << read;
  EXPECT_NE(read.find("Gaumenfalte kurz. -> Spirula angusta\n"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, PagesSetApartAreNoDestinations) {
  EXPECT_EQ(
      sketch("2a  Sori round; fronds all alike\n       Wall-comb  Polydrasis vulgata   (page 34)\n"
             "2b  Sori in lines; fronds upright   ► 3\n\n"
             "3a  Stalk black\n       Ladder Fern  Stenoblechum spicatum   (page 36)\n"
             "3b  Stalk green\n       Maiden Fern  Asplenacris nigripes   (page 38)\n"),
      "2[2a] Sori round; fronds all alike -> Polydrasis vulgata (Wall-comb; page 34)\n"
      "2[2b] Sori in lines; fronds upright -> 3\n"
      "3[3a] Stalk black -> Stenoblechum spicatum (Ladder Fern; page 36)\n"
      "3[3b] Stalk green -> Asplenacris nigripes (Maiden Fern; page 38)\n");
}

TEST(PrintedMarkedNames, SentencesMayNameThem) {
  auto const read = sketch(
      "1.\n•\tBody with a cover. Go to 2.\n•\tBody bare. Go to 3.\n\n"
      "2.\n•\tCover thin; on fruit. This is the red scale (Chrysaspis aurantina).\n"
      "•\tCover thick; on twigs. This is the grey scale (Disparaspis perniciosa).\n\n"
      "3.\n•\tBody flat. This is the long scale (Lepidochlis gloverana).\n"
      "•\tBody round. This is the black scale (Sessetia nigricans).\n");
  EXPECT_NE(read.find("-> Chrysaspis aurantina\n"), std::string::npos) << read;
  EXPECT_NE(read.find("-> Sessetia nigricans\n"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, KeysMayBeNumberedWithLettersAndDashes) {
  EXPECT_EQ(led_to("Go to Key C-2"), "key: Key C-2");
}

TEST(PrintedMarkedNames, AGenusMayStandOnALineOfItsOwn) {
  auto const read = sketch(
      "KEY C-2.  GENERA OF HYDROSTEGIDAE\n\n"
      "1a.\tHead with a broad, flat area set off by a carina.\n\tArctostega\n"
      "1b.\tHead convex above.\t2\n\n"
      "2a.\tProsternum with sclerites.\t3\n2b.\tProsternum without.\tChemostega\n\n"
      "3a.\tApotome with a notch.\n\tHydrostega (Hydrostega)\n"
      "3b.\tApotome without notch.\tHydrostega (Busa)\n");
  EXPECT_NE(read.find("set off by a carina. -> Arctostega\n"), std::string::npos) << read;
  EXPECT_NE(read.find("with a notch. -> Hydrostega\n"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, ASingleDotMayLeadToThem) {
  auto const read = sketch(
      "GENRE XANTHUS Roe\n\n1. — Ailes claires . . . . rufa Roe (p. 64)\n  — Ailes enfumées . . . "
      ". 2\n"
      "2. — Fémurs noirs. Long. 4 mm. . . . solstitiella Roe (p. 66)\n"
      "  — Fémurs jaunes. Long. 4,5 mm. — Basses-Cévrines . quadrata, n. sp. (p. 67)\n");
  EXPECT_NE(read.find("Basses-Cévrines -> Xanthus quadrata"), std::string::npos) << read;
}

TEST(PrintedMarkedNames, ATitlesGenusStandsAloneInCapitals) {
  auto const leads =
      "A. Folia opposita . . . . . . . 1. grandiflora\nB. Folia alterna.\n"
      "   I. Flores magni, fauce nuda . . . . . . . 2. C. lutea.\n"
      "   II. Flores parvi, fauce barbata . . . . . . . 3. C. barbata.\n";
  for (std::string const title :
       {"XXII. CALYPTANDRA.\n\nCLAVIS SPECIERUM.\n\n",
        "7. CALYPTANDRA\n\nHallwey in Journ. Harrowdale Bot. Club 14: 203 (1899)\n\n"}) {
    auto const read = sketch(title + leads);
    EXPECT_NE(read.find("-> Calyptandra grandiflora\n"), std::string::npos) << title << read;
    EXPECT_NE(read.find("-> Calyptandra lutea\n"), std::string::npos) << title << read;
    EXPECT_NE(read.find("-> Calyptandra barbata\n"), std::string::npos) << title << read;
  }
}

// Scales in rows: labels, leads without labels, names below hanging leaders, no indentation left.
TEST(PrintedMarkedNames, NamesAnswerTheLeadersOfTheLineAbove) {
  EXPECT_EQ(
      sketch("Synopsis of the Species of Lomadus.\n\n"
             "I. Scales in 19 rows.\n\nA. Anal entire.\n\n"
             "Two labials; ventrals 201-214 ..\n1. collaris, p. 170.\n"
             "Three labials; ventrals 222-246 . .\n2. blandus, p. 171.\n\n"
             "B. Anal divided.\n\n"
             "Loreal long . . . .  3. galti, p. 172.\nLoreal short ......  4. fuscus, p. 173.\n\n"
             "II. Scales in 17 rows.\n\n"
             "Ventrals angulate ............. 5. insularis, p. 178.\n"
             "Ventrals rounded 6. teres, p. 178.\n\n\n"
             "1. Lomadus collaris.\n\nDipsas collaris, Roe, Proc. Nat. Soc. 1854, p. 312.\n"),
      "1[I] Scales in 19 rows. -> 2\n1[II] Scales in 17 rows. -> 5\n"
      "2[A] Anal entire. -> 3\n2[B] Anal divided. -> 4\n"
      "3[] Two labials; ventrals 201-214 -> Lomadus collaris (p. 170.)\n"
      "3[] Three labials; ventrals 222-246 -> Lomadus blandus (p. 171.)\n"
      "4[] Loreal long -> Lomadus galti (p. 172.)\n4[] Loreal short -> Lomadus fuscus (p. 173.)\n"
      "5[] Ventrals angulate -> Lomadus insularis (p. 178.)\n"
      "5[] Ventrals rounded -> Lomadus teres (p. 178.)\n");
}

TEST(PrintedMarkedNames, ARankAloneIsNoName) {
  EXPECT_EQ(sketch("1. Eyes in pairs ..... Genus\n   Ausus Roe\n1. Eyes in a row ..... 2\n"
                   "2. Legs pale ..... Genus Busus Roe\n2. Legs dark ..... Genus Cusus Roe\n"),
            "1[1] Eyes in pairs -> Ausus (Genus)\n1[1] Eyes in a row -> 2\n"
            "2[2] Legs pale -> Busus (Genus)\n2[2] Legs dark -> Cusus (Genus)\n");
}

TEST(PrintedMarkedNames, LettersAloneBeginSecondLeads) {
  EXPECT_EQ(sketch("24. rod AUSUS Roe\n\n"
                   "1a Ostny dlouhé ................ 2\n b Ostny krátké ................ 3\n\n"
                   "2a Květy žluté; lodyha křídlatá ..... 1. A. solaris (Dorn)\n"
                   "  Roe – chrpinka slunečná\n"
                   " b Květy bílé ................ 2. A. albus Roe\n\n"
                   "3a Listy měkké ................ 3. A. mollis Roe\n"
                   "  b Listy tuhé ................ 4. A. durus Roe\n"),
            "1[1a] Ostny dlouhé -> 2\n1[b] Ostny krátké -> 3\n"
            "2[2a] Květy žluté; lodyha křídlatá -> Ausus solaris\n2[b] Květy bílé -> Ausus albus\n"
            "3[3a] Listy měkké -> Ausus mollis\n3[b] Listy tuhé -> Ausus durus\n");
}

TEST(PrintedMarkedNames, DoubleSpacedTypescriptsAreReadAsIfSingleSpaced) {
  std::string text = "KEY TO THE SPECIES OF AUSUS\n\n\n";
  for (int couplet = 1; couplet <= 5; ++couplet) {
    auto const number = std::to_string(couplet);
    text +=
        number + ".   Processes long, directed basad; forewing\n\n     with three cells ------- " +
        std::string(static_cast<std::size_t>(couplet), 'b') + "us n. sp., p. 2" + number +
        "\n\n     Processes short, directed laterad; fore-\n\n     wing with two cells ------- " +
        (couplet == 5 ? std::string{"zus Roe, p. 30"} : std::to_string(couplet + 1)) + "\n\n\n";
  }
  auto const read = sketch(text);
  EXPECT_NE(
      read.find("1[1] Processes long, directed basad; forewing with three cells -> Ausus bus"),
      std::string::npos)
      << read;
  EXPECT_NE(read.find("Processes short, directed laterad; forewing with two cells -> 2\n"),
            std::string::npos)
      << read;
  EXPECT_EQ(read_key(text).edition.couplets.size(), 5U);
  EXPECT_EQ(read_key(text).source.lines.size(), 48U);
}

TEST(PrintedMarkedNames, HeadsOfPagesEndNoNotes) {
  auto const text =
      "1\tEyes prominent .. .. .. .. .. Aus bus Roe\n\tLength 5 mm. In moss; common.\n"
      "–\tEyes flat .. .. .. .. .. 2\n2\tLegs pale .. .. .. .. .. Aus cus Roe\n"
      "\tLength 5-6 mm. In flood rubbish; generally common.\n"
      "                         CARABIDAE                                  53\n"
      "–\tLegs dark .. .. .. .. .. 3\n3\tBody flat .. .. .. .. .. Aus dus Roe\n"
      "                         CARABIDAE                                  54\n"
      "–\tBody round .. .. .. .. .. Aus eus Roe\n";
  EXPECT_EQ(read_key(text).edition.couplets.size(), 3U);
  EXPECT_EQ(line_kinds(text),
            "lead, note, lead, lead, note, running head, lead, lead, running head, lead");
}

}  // namespace
}  // namespace keydrift

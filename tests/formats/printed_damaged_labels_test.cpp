// Labels that recognition of characters damaged, told by those around them.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "keydrift/formats/printed_label.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

// A serial key of which one label is printed otherwise than it should be.
std::string serial_key(std::string_view right, std::string_view damaged) {
  std::string key =
      "1 (12) Wings clear.\n2 (3) Legs pale . . . . Aus bus\n3 (2) Legs dark.\n"
      "4 (5) Head long . . . . Aus cus\n5 (4) Head short.\n"
      "6 (7) Ribs many . . . . Aus dus\n7 (6) Ribs few.\n"
      "8 (9) Tail long . . . . Aus eus\n9 (8) Tail short.\n"
      "10 (11) Feet broad . . . . Aus fus\n11 (10) Feet narrow . . . . Aus gus\n"
      "12 (1) Wings dark . . . . Aus hus\n";
  return key.replace(key.find(right), right.size(), damaged);
}

// What it says, whatever the damage: only the label of couplet 10 stays as it is printed.
std::string serial_sketch(std::string const& tenth) {
  return "1[1] Wings clear. -> 2\n1[12] Wings dark -> Aus hus\n"
         "2[2] Legs pale -> Aus bus\n2[3] Legs dark. -> 4\n"
         "4[4] Head long -> Aus cus\n4[5] Head short. -> 6\n"
         "6[6] Ribs many -> Aus dus\n6[7] Ribs few. -> 8\n"
         "8[8] Tail long -> Aus eus\n8[9] Tail short. -> 10\n10[" +
         tenth + "] Feet broad -> Aus fus\n10[11] Feet narrow -> Aus gus\n";
}

TEST(PrintedDamagedLabels, ABackReferenceMayLackItsClosingBracket) {
  EXPECT_EQ(sketch(serial_key("12 (1) Wings", "12 (1 Wings")), serial_sketch("10"));
}

TEST(PrintedDamagedLabels, ALetterMayStandForTheClosingBracket) {
  EXPECT_EQ(sketch(serial_key("8 (9) Tail", "8 (9j Tail")), serial_sketch("10"));
}

TEST(PrintedDamagedLabels, TheNumberBeforeABackReferenceMayBeMisread) {
  EXPECT_EQ(sketch(serial_key("10 (11) Feet", "l0 (11) Feet")), serial_sketch("l0"));
}

TEST(PrintedDamagedLabels, TheNumberInABackReferenceMayBeMisread) {
  EXPECT_EQ(sketch(serial_key("10 (11) Feet", "10 (I1). Feet")), serial_sketch("10"));
}

TEST(PrintedDamagedLabels, TheNumberInABackReferenceMayBeMisreadWhereSecondLeadsHaveNone) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "10. Legs red ...... 11\n    Legs black ...... 2l\n"
                   "11(10). Head long ...... busa Roe\n    Head short ...... 12\n"
                   "12(11). Tail long ...... cusa Roe\n    Tail short ...... dusa Roe\n"
                   "21(l0). Body bald ...... 22\n    Body hairy ...... fusa Roe\n"
                   "22(21). Feet broad ...... gusa Roe\n    Feet narrow ...... husa Roe\n"),
            "10[10] Legs red -> 11\n10[] Legs black -> 21\n"
            "11[11] Head long -> Ausella busa\n11[] Head short -> 12\n"
            "12[12] Tail long -> Ausella cusa\n12[] Tail short -> Ausella dusa\n"
            "21[21] Body bald -> 22\n21[] Body hairy -> Ausella fusa\n"
            "22[22] Feet broad -> Ausella gusa\n22[] Feet narrow -> Ausella husa\n");
}

// Leads go on with the couplet beneath them; `right` is printed as `damaged`.
std::string sketch_of_nested_key(std::string_view right, std::string_view damaged) {
  std::string key =
      "Key to the species of Ausella\n\n"
      "8. Spike solitary, without bracts.\n9. Stigmas two ...... A. busa\n"
      "9. Stigmas three ...... A. cusa\n8. Spikes two or more, with bracts.\n"
      "10. Stems rough.\n11. Sheaths red ...... A. dusa\n11. Sheaths brown.\n"
      "12. Scales awned ...... A. fusa\n12. Scales acute ...... A. gusa\n"
      "10. Stems smooth, at least below the middle.\n13. Beak long ...... A. husa\n"
      "13. Beak short ...... A. jusa\n";
  auto const at = key.find(right);
  EXPECT_NE(at, std::string::npos);
  auto read = sketch(key.replace(at, right.size(), damaged));
  // The label as it is printed tells nothing of the couplet.
  auto const label = "[" + std::string{damaged.substr(0, damaged.find('.'))} + "]";
  auto const shown = read.find(label);
  auto const number = right.substr(0, right.find('.'));
  return shown == std::string::npos ? read : read.replace(shown + 1, label.size() - 2, number);
}

TEST(PrintedDamagedLabels, TheNumberBeneathALeadThatGoesOnMayBeMisread) {
  auto const whole = sketch_of_nested_key("11. Sheaths red", "11. Sheaths red");
  EXPECT_NE(whole.find("11[11] Sheaths red -> Ausella dusa\n"), std::string::npos) << whole;
  EXPECT_EQ(sketch_of_nested_key("11. Sheaths red", "1l. Sheaths red"), whole);
  EXPECT_EQ(sketch_of_nested_key("11. Sheaths red", "I1. Sheaths red"), whole);
  EXPECT_EQ(sketch_of_nested_key("10. Stems rough", "I0. Stems rough"), whole);
  EXPECT_EQ(sketch_of_nested_key("13. Beak long", "l3. Beak long"), whole);
}

TEST(PrintedDamagedLabels, ACommaMayFollowABackReference) {
  EXPECT_EQ(sketch(serial_key("11 (10) Feet", "11 (10), Feet")), serial_sketch("10"));
}

TEST(PrintedDamagedLabels, AnIndexReadAsALetterIsOneBesideTheSecondOfItsLetter) {
  EXPECT_EQ(sketch("A. Foot pale.\n"
                   "  Bl. Beak long ..... Aus bus\n"
                   "  B2. Beak short ..... Aus cus\n"
                   "A. Foot dark.\n"
                   "  C1. Tail long ..... Aus dus\n"
                   "  C2. Tail short ..... Aus eus\n"),
            "1[A] Foot pale. -> 2\n1[A] Foot dark. -> 3\n"
            "2[Bl] Beak long -> Aus bus\n2[B2] Beak short -> Aus cus\n"
            "3[C1] Tail long -> Aus dus\n3[C2] Tail short -> Aus eus\n");
}

TEST(PrintedDamagedLabels, ASharpSIsTheBetaBehindAnAlpha) {
  EXPECT_EQ(sketch("I. Flügel hell.\n"
                   "  α) Beine blass ..... Aus bus\n"
                   "  ß) Beine dunkel ..... Aus cus\n"
                   "II. Flügel dunkel.\n"
                   "  α) Kopf lang ..... Aus dus\n"
                   "  ß) Kopf kurz ..... Aus eus\n"),
            "1[I] Flügel hell. -> 2\n1[II] Flügel dunkel. -> 3\n"
            "2[α] Beine blass -> Aus bus\n2[β] Beine dunkel -> Aus cus\n"
            "3[α] Kopf lang -> Aus dus\n3[β] Kopf kurz -> Aus eus\n");
}

TEST(PrintedDamagedLabels, ALetteredOneIsReadThoughItDoesNotCarryTheCountOn) {
  EXPECT_EQ(sketch("1a. Wings clear ..... 2\n"
                   "1b. Wings dark ..... 3\n"
                   "2a. Legs pale ..... Aus bus\n"
                   "2b. Legs dark ..... Aus cus\n"
                   "3a. Head long ..... 4\n"
                   "3b. Head short ..... Aus eus\n"
                   "4a. Tail long ..... Aus fus\n"
                   "4b. Tail short ..... Aus gus\n"
                   "\n"
                   "The species of the hills are these.\n"
                   "\n"
                   "la. Feet broad ..... Bus fus\n"
                   "lb. Feet narrow ..... Bus gus\n"),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> 3\n"
            "2[2a] Legs pale -> Aus bus\n2[2b] Legs dark -> Aus cus\n"
            "3[3a] Head long -> 4\n3[3b] Head short -> Aus eus\n"
            "4[4a] Tail long -> Aus fus\n4[4b] Tail short -> Aus gus\n"
            "1[la] Feet broad -> Bus fus\n1[lb] Feet narrow -> Bus gus\n");
}

TEST(PrintedDamagedLabels, ALetteredTenIsReadBehindALostCouplet) {
  EXPECT_EQ(sketch("6a. Wings clear ..... 7\n"
                   "6b. Wings dark ..... 11\n"
                   "7a. Legs pale ..... 8\n"
                   "7b. Legs dark ..... 10\n"
                   "8a. Head long ..... Aus bus\n"
                   "8b. Head short ..... Aus cus\n"
                   "l0a. Tail long ..... Aus fus\n"
                   "l0b. Tail short ..... Aus gus\n"
                   "11a. Ribs many ..... Aus hus\n"
                   "11b. Ribs few ..... Aus ius\n"),
            "6[6a] Wings clear -> 7\n6[6b] Wings dark -> 11\n"
            "7[7a] Legs pale -> 8\n7[7b] Legs dark -> 10\n"
            "8[8a] Head long -> Aus bus\n8[8b] Head short -> Aus cus\n"
            "10[l0a] Tail long -> Aus fus\n10[l0b] Tail short -> Aus gus\n"
            "11[11a] Ribs many -> Aus hus\n11[11b] Ribs few -> Aus ius\n");
}

TEST(PrintedDamagedLabels, ACyrillicLetterMayStandForTheNumberBeforeABackReference) {
  auto expected = serial_sketch("10");
  expected.replace(expected.find("2[3]"), 4, "2[З]");
  EXPECT_EQ(sketch(serial_key("3 (2) Legs", "З (2) Legs")), expected);
}

TEST(PrintedDamagedLabels, ALeadWhoseBackReferenceIsMisreadJoinsTheRivalThatNamesIt) {
  EXPECT_EQ(sketch(serial_key("11 (10) Feet", "11 (I0). Feet")), serial_sketch("10"));
}

TEST(PrintedDamagedLabels, ALeadWhoseNumberIsMisreadJoinsTheRivalInItsBackReference) {
  auto expected = serial_sketch("10");
  expected.replace(expected.find("10[11]"), 6, "10[1l]");
  EXPECT_EQ(sketch(serial_key("11 (10) Feet", "1l (10) Feet")), expected);
}

TEST(PrintedDamagedLabels, AnSIsAnEightWhereTheCountExpectsOne) {
  EXPECT_EQ(sketch("7. Beine blass ..... Aus bus\n"
                   "— Beine schwarz ..... 8\n"
                   "S. Thorax schwarz ..... Aus cus\n"
                   "— Thorax rot ..... 9\n"
                   "9. Stirn breit ..... Aus dus\n"
                   "— Stirn schmal ..... Aus eus\n"),
            "7[7] Beine blass -> Aus bus\n7[—] Beine schwarz -> 8\n"
            "8[S] Thorax schwarz -> Aus cus\n8[—] Thorax rot -> 9\n9[9] Stirn breit -> Aus dus\n"
            "9[—] Stirn schmal -> Aus eus\n");
}

TEST(PrintedDamagedLabels, ASixIsABWhereAnAStandsAbove) {
  EXPECT_EQ(sketch("Genus Ausella Roe\n\n"
                   "a. Thorax long.\n"
                   "a1. Wings clear.\n"
                   "a2. Legs pale A. busa, p. 3.\n"
                   "62. Legs dark A. cusa, p. 4.\n"
                   "b1. Wings dark A. dusa, p. 5.\n"
                   "b. Thorax short A. eusa, p. 6.\n"),
            "1[a] Thorax long. -> 2\n"
            "1[b] Thorax short -> Ausella eusa (p. 6.)\n"
            "2[a1] Wings clear. -> 3\n"
            "2[b1] Wings dark -> Ausella dusa (p. 5.)\n"
            "3[a2] Legs pale -> Ausella busa (p. 3.)\n"
            "3[62] Legs dark -> Ausella cusa (p. 4.)\n");
}

TEST(PrintedDamagedLabels, AnIInTheBracketOfARivalIsAOne) {
  constexpr std::string_view kLine = "19 (i8). Body shining";
  auto const label = printed::read_damaged_back_reference(kLine, 19);
  ASSERT_TRUE(label);
  EXPECT_EQ(label->printed, "19");
  EXPECT_EQ(kLine.substr(label->text_at), "Body shining");
  EXPECT_FALSE(printed::read_damaged_back_reference("19 (in fens). Body shining", 19));
}

TEST(PrintedDamagedLabels, ACommaMayStandForTheFullStopBeforeADash) {
  EXPECT_EQ(sketch("1. — Wings clear . . . . . . . . 2.\n"
                   "— Wings dark . . . . . . . . Aus bus\n"
                   "2, — Legs pale . . . . . . . . Aus cus\n"
                   "— Legs dark . . . . . . . . Aus dus\n"),
            "1[1] Wings clear -> 2\n1[—] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[—] Legs dark -> Aus dus\n");
}

TEST(PrintedDamagedLabels, BracketsOfSerialKeysMayBeDamaged) {
  auto const key = [](std::string const& second) {
    return sketch("1 (4) Leaves opposite.\n" + second +
                  " Petals red ..... M. busa\n"
                  "3 (2) Petals white ..... M. cusa\n"
                  "4 (1) Leaves alternate.\n"
                  "5 (6) Stem erect ..... M. dusa\n"
                  "6 (5) Stem prostrate ..... M. fusa\n");
  };
  auto const right = [](std::string const& label) {
    return "1[1] Leaves opposite. -> 2\n"
           "1[4] Leaves alternate. -> 5\n"
           "2[" +
           label +
           "] Petals red -> M. busa\n"
           "2[3] Petals white -> M. cusa\n"
           "5[5] Stem erect -> M. dusa\n"
           "5[6] Stem prostrate -> M. fusa\n";
  };
  for (auto const* damaged : {"2 3)", "2, (3)", "2 C3)", "2 (3j", "2 f3)", "2 (.3)", "2 (3."}) {
    EXPECT_EQ(key(damaged), right("2")) << damaged;
  }
  EXPECT_EQ(key(".2 (3)"), right(".2"));
  EXPECT_EQ(key("z (3)"), right("z"));
}

TEST(PrintedDamagedLabels, NumbersThatOtherLeadsRepeatMayBeDamaged) {
  auto const key = [](std::string const& first, std::string const& third) {
    return sketch(first +
                  " Leaves opposite ..... 2\n"
                  "1. Leaves alternate ..... 3\n" +
                  "2. Petals red ..... M. busa\n"
                  "2. Petals white ..... M. cusa\n" +
                  third +
                  " Stem erect ..... 4\n"
                  "3. Stem prostrate ..... M. dusa\n"
                  "4. Seeds red ..... M. fusa\n"
                  "4. Seeds white ..... M. gusa\n");
  };
  auto const right = [](std::string const& first, std::string const& third) {
    return "1[" + first +
           "] Leaves opposite -> 2\n"
           "1[1] Leaves alternate -> 3\n"
           "2[2] Petals red -> M. busa\n"
           "2[2] Petals white -> M. cusa\n"
           "3[" +
           third +
           "] Stem erect -> 4\n"
           "3[3] Stem prostrate -> M. dusa\n"
           "4[4] Seeds red -> M. fusa\n"
           "4[4] Seeds white -> M. gusa\n";
  };
  EXPECT_EQ(key("1.", "3"), right("1", "3"));
  EXPECT_EQ(key("1.", ". 3."), right("1", ". 3"));
  EXPECT_EQ(key("1.", "■ 3."), right("1", "■ 3"));
  EXPECT_EQ(key("1.", "3;"), right("1", "3;"));
  EXPECT_EQ(key("l.", "3."), right("l", "3"));
  EXPECT_EQ(key("i.", "3."), right("i", "3"));
}

TEST(PrintedDamagedLabels, SignsMayTouchTheWordsBehindThem) {
  EXPECT_EQ(sketch("1. Leaves opposite ..... 2\n"
                   "   Leaves alternate ..... 3\n"
                   "2 .Petals red ..... M. busa\n"
                   "   Petals white ..... M. cusa\n"
                   "3,Stem erect ..... M. dusa\n"
                   "   Stem prostrate ..... 4\n"
                   "4. Seeds red ..... M. fusa\n"
                   "   Seeds white ..... M. gusa\n"),
            "1[1] Leaves opposite -> 2\n"
            "1[] Leaves alternate -> 3\n"
            "2[2] Petals red -> M. busa\n"
            "2[] Petals white -> M. cusa\n"
            "3[3,] Stem erect -> M. dusa\n"
            "3[] Stem prostrate -> 4\n"
            "4[4] Seeds red -> M. fusa\n"
            "4[] Seeds white -> M. gusa\n");
}

TEST(PrintedDamagedLabels, ADoubledLOfAnOutlineIsNoEleven) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "j. Spire conic.\n"
                   "  k. Whorls seven, closely coiled . . . . . A. busa Roe\n"
                   "  kk. Whorls five, loosely coiled . . . . . A. cusa Roe\n"
                   "jj. Spire low, the altitude two thirds of the diameter.\n"
                   "  l. A deep furrow behind the lip . . . . . A. dusa Roe\n"
                   "  11. No furrow, or only a shallow one.\n"
                   "    m. Small, the teeth subequal . . . . . A. fusa Roe\n"
                   "    mm. Larger, without teeth . . . . . A. gusa Roe\n"),
            "j[j] Spire conic. -> k\n"
            "j[jj] Spire low, the altitude two thirds of the diameter. -> l\n"
            "k[k] Whorls seven, closely coiled -> Ausella busa\n"
            "k[kk] Whorls five, loosely coiled -> Ausella cusa\n"
            "l[l] A deep furrow behind the lip -> Ausella dusa\n"
            "l[11] No furrow, or only a shallow one. -> m\n"
            "m[m] Small, the teeth subequal -> Ausella fusa\n"
            "m[mm] Larger, without teeth -> Ausella gusa\n");
}

TEST(PrintedDamagedLabels, ASerialKeyWithThreeOfThemIsReadByItsLabels) {
  EXPECT_EQ(
      sketch(
          "Tabelle der Arten von Ausella\n\n"
          "Körper fein behaart. Die Arten leben\nunter Laub; nur zwei steigen in die Ebene hinab.\n"
          "1 (12) Decken mit deutlichen Punkten, die\nbis zur Mitte reichen.\n"
          "2 (7) Schild gerundet, vor den Ecken\nnicht geschweift.\n"
          "3 (4) Schwarz, die Beine rot. L. 4 mm. Alpen.\n1. alpina Kort.\n"
          "4 (3) Braun, die Beine gelb.\n"
          "5 (6) Glied so lang wie das vierte. L. 3 mm. 2. brunnea Ohl.\n"
          "6 (5) Glied doppelt so lang. L. 4 mm.\n3. gracilis n. sp.\n"
          "7 (2) Schild geschweift.\n"
          "8 (1l) Decken ohne Makel.\n"
          "9 (10) Stirn matt. L. 5 mm. 4. rugosa Kort.\n"
          "1O (9) Stirn glatt. L. 5 mm. 5. laevis Ohl.\n"
          "11 (8) Decken mit gelber Makel. 6. humeralis Ohl.\n"
          "12 (1) Decken glatt.\n"
          "l3 (14) Seiten behaart. L. 4 mm. 7. sericata\nKort.\n"
          "14 (13) Seiten kahl. L. 5 mm. Insel\nMorva. 8. nuda n. sp.\n"),
      "1[1] Decken mit deutlichen Punkten, die bis zur Mitte reichen. -> 2\n"
      "1[12] Decken glatt. -> 13\n"
      "2[2] Schild gerundet, vor den Ecken nicht geschweift. -> 3\n"
      "2[7] Schild geschweift. -> 8\n"
      "3[3] Schwarz, die Beine rot. L. 4 mm. Alpen. -> Ausella alpina\n"
      "3[4] Braun, die Beine gelb. -> 5\n"
      "5[5] Glied so lang wie das vierte. L. 3 mm. -> Ausella brunnea\n"
      "5[6] Glied doppelt so lang. L. 4 mm. -> Ausella gracilis (n. sp.)\n"
      "8[8] Decken ohne Makel. -> 9\n"
      "8[11] Decken mit gelber Makel. -> Ausella humeralis\n"
      "9[9] Stirn matt. L. 5 mm. -> Ausella rugosa\n"
      "9[1O] Stirn glatt. L. 5 mm. -> Ausella laevis\n"
      "13[l3] Seiten behaart. L. 4 mm. -> Ausella sericata\n"
      "13[14] Seiten kahl. L. 5 mm. Insel Morva. -> Ausella nuda (n. sp.)\n");
}

TEST(PrintedDamagedLabels, AVStandsForTheBPrimeThatIsMissing) {
  EXPECT_EQ(sketch("Key to the Species of Ausella.\n"
                   "\n"
                   "a. Elytra with rows of punctures.\n"
                   "a'. Tarsus bilobed.\n"
                   "a\". Thorax with teeth . . . . 1. serricollis, p. 113.\n"
                   "b\". Thorax not toothed . . . 2. politulus, p. 113.\n"
                   "V. Tarsus simple.\n"
                   "a\". Elytra black . . . . . . . 3. bimaculosus, p. 115.\n"
                   "b\". Elytra bluish . . . . . . 4. limbifer, p. 115.\n"
                   "b. Elytra without rows of punctures.\n"
                   "a'. Upper surface hairy . . . 5. villiger, p. 117.\n"
                   "b'. Upper surface naked . . . 6. clavator, p. 118.\n"),
            "1[a] Elytra with rows of punctures. -> 2\n"
            "1[b] Elytra without rows of punctures. -> 5\n"
            "2[a'] Tarsus bilobed. -> 3\n"
            "2[V] Tarsus simple. -> 4\n"
            "3[a\"] Thorax with teeth -> Ausella serricollis (p. 113.)\n"
            "3[b\"] Thorax not toothed -> Ausella politulus (p. 113.)\n"
            "4[a\"] Elytra black -> Ausella bimaculosus (p. 115.)\n"
            "4[b\"] Elytra bluish -> Ausella limbifer (p. 115.)\n"
            "5[a'] Upper surface hairy -> Ausella villiger (p. 117.)\n"
            "5[b'] Upper surface naked -> Ausella clavator (p. 118.)\n");
}

TEST(PrintedDamagedLabels, AOneBetweenKAndLIsAnL) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "a. Leaves in whorls ... b.\n"
                   "b. Inflorescence open ... c.\n"
                   "c. Petals entire. 1. A. racemosa.\n"
                   "c. Petals cut ... d.\n"
                   "d. Calyx inflated ... 2. A. palustris.\n"
                   "d. Calyx not inflated ... e.\n"
                   "e. Flowers nodding. 3. A. nutans.\n"
                   "e. Flowers erect ... f.\n"
                   "f. Leaves glaucous ... 4. A. glauca.\n"
                   "f. Leaves green ... g.\n"
                   "g. Plants annual ... h.\n"
                   "h. Calyx glabrous ... 5. A. antirrhina.\n"
                   "h. Calyx hairy ... i.\n"
                   "i. Petals short. 6. A. brevis.\n"
                   "i. Petals long ... j.\n"
                   "j. Calyx ovoid. 7. A. conoidea.\n"
                   "j. Calyx cylindric ... k.\n"
                   "k. Dwarf plants. 8. A. caespitosa.\n"
                   "k. Taller plants ... l.\n"
                   "1. Corolla crimson; leaves oblanceolate ... 9. A. regia.\n"
                   "l. Corolla white; leaves ovate. 10. A. latifolia.\n"
                   "b. Inflorescence dense. 11. A. densa.\n"
                   "a. Leaves opposite. 12. A. opposita.\n"),
            "a[a] Leaves in whorls -> b\n"
            "a[a] Leaves opposite. -> Ausella opposita\n"
            "b[b] Inflorescence open -> c\n"
            "b[b] Inflorescence dense. -> Ausella densa\n"
            "c[c] Petals entire. -> Ausella racemosa\n"
            "c[c] Petals cut -> d\n"
            "d[d] Calyx inflated -> Ausella palustris\n"
            "d[d] Calyx not inflated -> e\n"
            "e[e] Flowers nodding. -> Ausella nutans\n"
            "e[e] Flowers erect -> f\n"
            "f[f] Leaves glaucous -> Ausella glauca\n"
            "f[f] Leaves green -> g\n"
            "g[g] Plants annual -> h\n"
            "h[h] Calyx glabrous -> Ausella antirrhina\n"
            "h[h] Calyx hairy -> i\n"
            "i[i] Petals short. -> Ausella brevis\n"
            "i[i] Petals long -> j\n"
            "j[j] Calyx ovoid. -> Ausella conoidea\n"
            "j[j] Calyx cylindric -> k\n"
            "k[k] Dwarf plants. -> Ausella caespitosa\n"
            "k[k] Taller plants -> l\n"
            "l[1] Corolla crimson; leaves oblanceolate -> Ausella regia\n"
            "l[l] Corolla white; leaves ovate. -> Ausella latifolia\n");
}

TEST(PrintedDamagedLabels, AWornIndexCountsOn) {
  EXPECT_EQ(sketch("a1. Ventral fins united.\n"
                   "b1. Scales in series 20 to 30.\n"
                   "c1. Predorsal scales present.\n"
                   "D. rivularis Arrieta.\n"
                   "c2. No predorsal scales.\n"
                   "D. nudus Arrieta.\n"
                   "b2. Scales in series 36 to 60.\n"
                   "c1. Teeth caninelike.\n"
                   "d1. Scales 36 to 40 ............... D. caninus Arrieta.\n"
                   "d?. Scales 48 to 52; no recurved canines.\n"
                   "D. dentex Arrieta and Coldwell.\n"
                   "c2. Teeth small.\n"
                   "D. microlepis Arrieta.\n"
                   "a2. Ventral fins separate.\n"
                   "D. gulosus Coldwell.\n"),
            "1[a1] Ventral fins united. -> 2\n"
            "1[a2] Ventral fins separate. -> D. gulosus\n"
            "2[b1] Scales in series 20 to 30. -> 3\n"
            "2[b2] Scales in series 36 to 60. -> 4\n"
            "3[c1] Predorsal scales present. -> D. rivularis\n"
            "3[c2] No predorsal scales. -> D. nudus\n"
            "4[c1] Teeth caninelike. -> 5\n"
            "4[c2] Teeth small. -> D. microlepis\n"
            "5[d1] Scales 36 to 40 -> D. caninus\n"
            "5[d?] Scales 48 to 52; no recurved canines. -> D. dentex\n");
}

}  // namespace
}  // namespace keydrift

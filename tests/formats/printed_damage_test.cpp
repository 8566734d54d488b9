// Damage of scanning and pasting: misread numbers, spoilt leaders, cells pasted one by one, fused
// words, text that breaks off.

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using test::sketch;
using Lines = std::vector<std::string>;

constexpr std::string_view kEleven =
    "1. Wings clear ..... 2\n– Wings dark ..... Aus bus\n"
    "2. Legs pale ..... 3\n– Legs dark ..... 10\n"
    "3. Horns long ..... 4\n– Horns short ..... 5\n"
    "4. Small ..... 6\n– Large ..... 7\n"
    "5. Head wide ..... 8\n– Head narrow ..... Aus cus\n"
    "6. Eyes round ..... Aus dus\n– Eyes oval ..... 9\n"
    "7. Foot long ..... Aus eus\n– Foot short ..... Aus fus\n"
    "8. Tail long ..... Aus gus\n– Tail short ..... Aus hus\n"
    "9. Fin long ..... Aus ius\n– Fin short ..... 11\n"
    "10. Nail long ..... Aus jus\n– Nail short ..... Aus kus\n"
    "11. Nose long ..... Aus lus\n– Nose short ..... Aus mus\n";

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  auto const at = text.find(what);
  EXPECT_NE(at, std::string::npos) << what;
  if (at == std::string::npos) return text;
  return text.replace(at, what.size(), with);
}

// The sketch without the labels as printed.
std::string destinations(std::string_view text) {
  std::string out;
  for (std::string_view rest = text; !rest.empty();) {
    auto const line = rest.substr(0, rest.find('\n'));
    out += std::string{line.substr(0, line.find('['))} + std::string{line.substr(line.find(']'))} +
           "\n";
    rest.remove_prefix(line.size() + 1);
  }
  return out;
}

struct DamageCase {
  char const* name;
  char const* whole;
  char const* damaged;
  char const* code;
};
void PrintTo(DamageCase const& damage, std::ostream* out) { *out << damage.name; }

class PrintedMisreadNumbers : public testing::TestWithParam<DamageCase> {};

TEST_P(PrintedMisreadNumbers, ArePutRightAndSaid) {
  auto const& damage = GetParam();
  auto const text = replaced(std::string{kEleven}, damage.whole, damage.damaged);
  EXPECT_EQ(destinations(sketch(text)), destinations(sketch(kEleven)));
  bool said = false;
  for (auto const& finding : findings_of(text)) {
    said = said || finding.find(damage.code) != std::string::npos;
  }
  EXPECT_TRUE(said) << damage.code;
}

INSTANTIATE_TEST_SUITE_P(
    All, PrintedMisreadNumbers,
    testing::Values(
        DamageCase{"SmallL", "dark ..... 10", "dark ..... l0", "misread-destination"},
        DamageCase{"CapitalI", "short ..... 11", "short ..... 1I", "misread-destination"},
        DamageCase{"LetterO", "dark ..... 10", "dark ..... 1O", "misread-destination"},
        DamageCase{"SmallO", "dark ..... 10", "dark ..... 1o", "misread-destination"},
        DamageCase{"Five", "short ..... 5", "short ..... S", "misread-destination"},
        DamageCase{"Eight", "wide ..... 8", "wide ..... B", "misread-destination"},
        DamageCase{"Parted", "short ..... 11", "short ..... 1 1", "misread-destination"},
        DamageCase{"SpeckBehind", "short ..... 11", "short ..... 11 |", "misread-destination"},
        DamageCase{"StopBehind", "short ..... 11", "short ..... 11 .", "misread-signs"},
        DamageCase{"MarkBehind", "short ..... 11", "short ..... 11 '", "misread-destination"},
        DamageCase{"MarkBefore", "short ..... 11", "short ..... '11", "misread-signs"},
        DamageCase{"BracketBefore", "short ..... 11", "short ..... (11", "misread-destination"},
        DamageCase{"Twice", "short ..... 11", "short ..... 11 11", "misread-destination"},
        DamageCase{"SmallS", "short ..... 5", "short ..... s", "misread-destination"},
        DamageCase{"LabelOfL", "11. Nose", "ll. Nose", "misprinted-label"},
        DamageCase{"LabelOfO", "10. Nail", "1O. Nail", "misprinted-label"},
        DamageCase{"LabelParted", "10. Nail", "1 0. Nail", "misprinted-label"},
        DamageCase{"LabelInBrackets", "11. Nose", "(l1) Nose", "misprinted-label"},
        DamageCase{"FirstLabel", "1. Wings", "l. Wings", "misprinted-label"},
        DamageCase{"LabelFive", "5. Head", "S. Head", "misprinted-label"},
        DamageCase{"CommaForPoint", "9. Fin", "9, Fin", "misprinted-label"}),
    [](auto const& damage) { return std::string{damage.param.name}; });

TEST(PrintedMisreadNumbers, AreLeftWhereTheGraphDoesNotConfirmThem) {
  // Couplet 1 is reached by nobody else, but couplet 2 is: "Z" stays what it is.
  auto const text =
      "1. Wings clear ..... 2\n– Wings dark ..... Z\n"
      "2. Legs pale ..... Aus bus\n– Legs dark ..... Aus cus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Z\n"
            "2[2] Legs pale -> Aus bus\n2[–] Legs dark -> Aus cus\n");
  EXPECT_TRUE(findings_of(text).empty());
}

TEST(PrintedMisreadNumbers, AreNamedWithThePrintedWords) {
  auto const text = replaced(std::string{kEleven}, "dark ..... 10", "dark ..... l0");
  EXPECT_EQ(
      findings_of(text),
      (Lines{"key.txt:4:19: warning: \"l0\" was read as 10: there is a couplet 10, and no "
             "other lead leads to it [misread-destination] (print the number in digits if this is "
             "right, else the right destination)"}));
}

TEST(PrintedDamage, SpoiltLeadersAreLeaders) {
  EXPECT_EQ(sketch("1. Wings clear .  . ,. . .. . 2\n– Wings dark . . , . . ... .Aus bus\n"
                   "2. Legs pale .....: Aus cus\n– Legs dark ..... = Aus dus\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(PrintedDamage, DestinationsMayEndInAnyPoint) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2.\n– Wings dark ..... Aus bus.\n"
                   "2. Legs pale ..... 3;\n– Legs dark ..... Aus cus;\n"
                   "3. Foot pale ..... Aus dus Mill.\n– Foot dark ..... Aus sp.\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> 3\n2[–] Legs dark -> Aus cus\n"
            "3[3] Foot pale -> Aus dus\n3[–] Foot dark -> Aus sp.\n");
}

TEST(PrintedDamage, LabelsFusedToTheDestinationBeforeThemBeginLeads) {
  EXPECT_EQ(sketch("1. Wings clear .... 2\n– Wings dark .... 3\n"
                   "2. Head red .... Aus bus- Head blue .... Aus cus\n"
                   "3. Legs pale ....44. Foot red .... Aus dus\n– Foot blue .... Aus eus\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> 3\n"
            "2[2] Head red -> Aus bus\n2[-] Head blue -> Aus cus\n"
            "3[3] Legs pale -> 4\n4[4] Foot red -> Aus dus\n4[–] Foot blue -> Aus eus\n");
}

TEST(PrintedDamage, FusedNamesArePartedWhereBothWordsStandElsewhere) {
  auto const text =
      "1. Wings clear ..... 2\n– Wings dark ..... Ausbus\n"
      "2. Legs pale ..... Aus cus\n– Legs dark ..... A. bus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus bus\n");
  EXPECT_EQ(
      findings_of(text).front(),
      "key.txt:2:20: warning: \"Ausbus\" was read as \"Aus bus\": the source names both words "
      "elsewhere [fused-name] (print a blank between genus and epithet, or the right name)");
  EXPECT_EQ(sketch("1. Clear ..... 2\n– Dark ..... Ausbus\n2. Pale ..... Aus\n– Dark ..... Bus\n"),
            "1[1] Clear -> 2\n1[–] Dark -> Ausbus\n2[2] Pale -> Aus\n2[–] Dark -> Bus\n");
}

TEST(PrintedDamage, CellsPastedOneBelowTheOtherMakeLeads) {
  auto const text =
      "Key to Aus\n1\nWings clear and rather long,\nwith dark veins\n2\n–\nWings dark\n\nAus bus\n"
      "2\nLegs pale\n3\n–\nLegs dark\nGrey Halver\n"
      "3\nHorns long\nAus cus Roe\nFound in fens.\n–\nHorns short\nAus dus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Wings clear and rather long, with dark veins -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> 3\n2[–] Legs dark -> Grey Halver\n"
            "3[3] Horns long -> Aus cus\n3[–] Horns short -> Aus dus\n");
  EXPECT_EQ(read_key(text).edition.couplets[2].leads[0].notes, (Lines{"Found in fens."}));
}

TEST(PrintedDamage, CellsWithLeadersInTheWordsKeepThem) {
  EXPECT_EQ(sketch("1.\nWings clear .... 2\n–\nWings dark, never\nbanded .... Aus bus\n"
                   "2.\nLegs pale .... Aus cus\n–\nLegs dark .... Aus dus\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark, never banded -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(PrintedDamage, SecondLeadsNeedNoLabelWhereNoneHasOne) {
  EXPECT_EQ(sketch("1. Wings clear, with dark\n   veins\n                                 2\n"
                   "   Wings dark\n                                 3\n"
                   "2. Legs pale\n                           Aus bus Roe\n"
                   "   Legs dark\n                           Aus cus Roe\n"
                   "3. Foot long\n                           Aus dus Roe\n"
                   "   Foot short\n                           Aus eus Roe\n"),
            "1[1] Wings clear, with dark veins -> 2\n1[] Wings dark -> 3\n"
            "2[2] Legs pale -> Aus bus\n2[] Legs dark -> Aus cus\n"
            "3[3] Foot long -> Aus dus\n3[] Foot short -> Aus eus\n");
}

TEST(PrintedDamage, LinesQuotedInALetterAreReadWithoutTheirMarks) {
  std::string const letter =
      "Hi Kees,\n\nhere is the key.\n\n> KEY TO AUS\n>\n> 1a. Wings clear, with a vein\n>     or "
      "two "
      "..... go to 2\n> 1b. Wings dark ..... Aus bus\n>\n> 2a. Legs pale ..... Aus cus\n>> 2b. "
      "Legs "
      "dark ..... Aus dus\n>     (one record)\n\nAll the best\n";
  auto const reading = read_key(letter);
  EXPECT_EQ(test::sketch(reading.edition),
            "1[1a] Wings clear, with a vein or two -> 2\n1[1b] Wings dark -> Aus bus\n"
            "2[2a] Legs pale -> Aus cus\n2[2b] Legs dark -> Aus dus\n");
  auto const& place = reading.edition.couplets.at(0).leads.at(0).place;
  EXPECT_EQ(place.line, 7U);
  EXPECT_EQ(place.column, 3U);
  // Leads that are marked so themselves keep their marks.
  EXPECT_EQ(
      sketch("> Wings clear\n  > Legs pale ..... Aus bus\n  > Legs dark ..... Aus cus\n"
             "> Wings dark\n  > Feet wide ..... Aus dus\n  > Feet narrow ..... Aus eus\n"),
      "1[] > Wings clear -> 2\n1[] > Wings dark -> 3\n2[] > Legs pale -> Aus bus\n"
      "2[] > Legs dark -> Aus cus\n3[] > Feet wide -> Aus dus\n3[] > Feet narrow -> Aus eus\n");
}

TEST(PrintedDamage, TheTextThatBreaksOffIsSaidSo) {
  constexpr std::string_view kWhole =
      "1. Wings clear ..... 2\n1'. Wings dark ..... Aus bus\n2. Legs pale ..... Aus cus\n";
  EXPECT_EQ(
      findings_of(std::string{kWhole} + "2'."),
      (Lines{"key.txt:4:1: warning: the text ends within this lead: its words and "
             "destination are missing [text-breaks-off] (add what the source prints after it)"}));
  EXPECT_EQ(findings_of(std::string{kWhole} + "2'. Legs dark, with a long"),
            (Lines{"key.txt:4:1: warning: the text ends within this lead: its destination is "
                   "missing [text-breaks-off] (add what the source prints after it)"}));
  EXPECT_TRUE(findings_of(std::string{kWhole} + "2'. Legs dark ..... Aus dus").empty());
}

TEST(PrintedDamage, LinesKeptNowhereAreCountedAndPlaced) {
  auto const text =
      "1. Wings clear and long, with a\nbroad band across the\n\n"
      "132          THE AUSIDAE OF HALVERN\n\ntip ..... 2\n– Wings dark ..... Aus bus\n-----\n"
      "2. Legs pale ..... Aus cus\n45\n– Legs dark ..... Aus dus\n";
  EXPECT_EQ(
      findings_of(text),
      (Lines{"key.txt:4:1: information: 3 lines were kept nowhere: 1 page number, 1 running "
             "head, 1 ruled line [skipped-lines] (if one of them belongs to the key, print it on "
             "a line with its lead)"}));
  EXPECT_EQ(line_kinds(text),
            "lead, continuation, blank, running head, blank, continuation, lead, skipped, lead, "
            "page number, lead");
}

TEST(PrintedDamage, HeadsOfPagesThatFollowEachOtherAreTold) {
  EXPECT_EQ(line_kinds("Shells of Halvern                          17\n\n"
                       "1. Wings clear, with a broad band ..... 2\n– Wings dark, with a\n"
                       "18                           Roe and Doe\nlong tip ..... Aus bus\n"
                       "2. Legs pale ..... Aus cus\n– Legs dark ..... Aus dus\n"),
            "running head, blank, lead, lead, running head, continuation, lead, lead");
}

TEST(PrintedDamage, PlatesInTheMiddleOfALeadDoNotEndIt) {
  EXPECT_EQ(
      sketch("1. Wings clear, longer than\n\n              PLATE 4\n\n"
             "Fig. 1. Aus bus Roe, 41 mm.\nFig. 2. A. cus Roe, 33 mm.\nFig. 3. A. dus.\n\n28\n\n"
             "   the legs ..... 2\n1'. Wings dark ..... Aus bus\n"
             "2. Legs pale ..... Aus cus\n2'. Legs dark ..... Aus dus\n"),
      "1[1] Wings clear, longer than the legs -> 2\n1[1'] Wings dark -> Aus bus\n"
      "2[2] Legs pale -> Aus cus\n2[2'] Legs dark -> Aus dus\n");
}

TEST(PrintedDamage, TheYearOfAnAuthorIsNoDestination) {
  EXPECT_EQ(sketch("1 Wings clear 2\n– Wings dark Aus bus Roe,\n1898\n"
                   "2 Legs pale Aus cus Roe, 1901\n– Legs dark Aus dus Roe\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(PrintedDamage, TheLastCellStandsBeforeOtherText) {
  std::string const cells =
      "Download as\nXML\n1\nWings clear\n2\n–\nWings dark\nAus bus\n2\nLegs pale\nAus cus\n–\nLegs "
      "dark\n";
  for (std::string const last : {"Aus dus Roe, 1900", "Aus cf. dus Roe", "Grey Halver"}) {
    auto const whole = sketch(cells + last + "\nThanks\nWe thank Orm for shells (nos 118, 119).\n");
    EXPECT_NE(whole.find("Legs dark -> " + last.substr(0, last.find(" Roe"))), std::string::npos)
        << whole;
  }
  EXPECT_EQ(line_kinds(cells + "Aus dus\n").substr(0, 22), "note, note, lead, cont");
}

TEST(PrintedDamage, CellsThatComeBackBesideALabelAreNoHeads) {
  EXPECT_EQ(sketch("1\nWings clear\n2\n–\nWings dark\nBusella Roe & Dorn, gen. nov.\n2\nLegs "
                   "pale\nAusella\n–\nLegs dark\nDusella Roe\n\nBusella Roe & Dorn, gen. nov.\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Busella (gen. nov.)\n"
            "2[2] Legs pale -> Ausella\n2[–] Legs dark -> Dusella\n");
}

TEST(PrintedDamage, TheOneOfALevelMayBeALetter) {
  EXPECT_EQ(sketch("I. Umbilicus open.\n"
                   "A. Aperture with teeth.\n"
                   "1. Teeth three. C. busa.\n"
                   "2. Tooth one. C. cusa.\n"
                   "B. Aperture without teeth,\n"
                   "a. Shell clear.\n"
                   "C. dusa.\n"
                   "b. Shell opaque. C. fusa.\n"
                   "II. Umbilicus closed.\n"
                   "A. Shell banded. C. gusa.\n"
                   "B. Shell plain.\n"
                   "I. Surface with hairs. C. lusa.\n"
                   "2. Surface without hairs.\n"
                   "a. Large. C. musa.\n"
                   "h. Small. C. nusa.\n"),
            "1[I] Umbilicus open. -> 2\n"
            "1[II] Umbilicus closed. -> 5\n"
            "2[A] Aperture with teeth. -> 3\n"
            "2[B] Aperture without teeth, -> 4\n"
            "3[1] Teeth three. -> C. busa\n"
            "3[2] Tooth one. -> C. cusa\n"
            "4[a] Shell clear. -> C. dusa\n"
            "4[b] Shell opaque. -> C. fusa\n"
            "5[A] Shell banded. -> C. gusa\n"
            "5[B] Shell plain. -> 6\n"
            "6[I] Surface with hairs. -> C. lusa\n"
            "6[2] Surface without hairs. -> 7\n"
            "7[a] Large. -> C. musa\n"
            "7[h] Small. -> C. nusa\n");
}

TEST(PrintedDamage, ARivalMayHaveOneLetterThatLooksLikeAnother) {
  EXPECT_EQ(sketch("Species of Ausella.\n"
                   "\n"
                   "a. Lateral line complete.\n"
                   "b. Anal spines two ; gill membranes separate. busa, 1.\n"
                   "bb. Anal spine single ; gill membranes joined. cusa, 2.\n"
                   "oa. Lateral line absent or short.\n"
                   "b. Size minute ; scales few. dusa, 3.\n"
                   "bb. Size moderate ; scales many. fusa, 4.\n"
                   "\n"
                   "1. Ausella busa sp. nov.\n"
                   "\n"
                   "Head 4 in length.\n"),
            "1[a] Lateral line complete. -> 2\n"
            "1[oa] Lateral line absent or short. -> 3\n"
            "2[b] Anal spines two ; gill membranes separate. -> Ausella busa (1.)\n"
            "2[bb] Anal spine single ; gill membranes joined. -> Ausella cusa (2.)\n"
            "3[b] Size minute ; scales few. -> Ausella dusa (3.)\n"
            "3[bb] Size moderate ; scales many. -> Ausella fusa (4.)\n");
}

TEST(PrintedDamage, AVMayBeANumberAndItsPrime) {
  EXPECT_EQ(sketch("1. Leaves narrow 2\n"
                   "V. Leaves broad 3\n"
                   "2. Petals red 1. A. busa\n"
                   "2'. Petals white 2. A. cusa\n"
                   "3. Seeds smooth 3. A. dusa\n"
                   "3'. Seeds rough 4. A. fusa\n"),
            "1[1] Leaves narrow -> 2\n"
            "1[V] Leaves broad -> 3\n"
            "2[2] Petals red -> A. busa\n"
            "2[2'] Petals white -> A. cusa\n"
            "3[3] Seeds smooth -> A. dusa\n"
            "3[3'] Seeds rough -> A. fusa\n");
}

TEST(PrintedDamage, ASerialNumberMayBeALetter) {
  EXPECT_EQ(sketch("1 (4). Elytra striate.\n"
                   "2 (3). Thorax hairy busa, Marl.\n"
                   "3 (2). Thorax bare cusa, Marl.\n"
                   "4 (1). Elytra smooth.\n"
                   "5 (8). Tarsi simple.\n"
                   "C (7). Legs red dusa, Pell.\n"
                   "7 (6). Legs black fusa, Garth .\n"
                   "8 (5). Tarsi broad gusa, Crewd.\n"),
            "1[1] Elytra striate. -> 2\n"
            "1[4] Elytra smooth. -> 5\n"
            "2[2] Thorax hairy -> busa\n"
            "2[3] Thorax bare -> cusa\n"
            "5[5] Tarsi simple. -> 6\n"
            "5[8] Tarsi broad -> gusa\n"
            "6[C] Legs red -> dusa\n"
            "6[7] Legs black -> fusa\n");
}

TEST(PrintedDamage, ACommaMayStandForTheFullStopOfALead) {
  EXPECT_EQ(sketch("a. Lateral line complete.\n"
                   "b. Anal spines two ; gill membranes nearly\n"
                   "separate,\n"
                   "c. Scales large. busa, 1.\n"
                   "cc. Scales small. cusa, 2.\n"
                   "bb. Anal spine single. dusa, 3.\n"
                   "aa. Lateral line short. fusa, 4.\n"),
            "a[a] Lateral line complete. -> b\n"
            "a[aa] Lateral line short. -> fusa (4.)\n"
            "b[b] Anal spines two ; gill membranes nearly separate, -> c\n"
            "b[bb] Anal spine single. -> dusa (3.)\n"
            "c[c] Scales large. -> busa (1.)\n"
            "c[cc] Scales small. -> cusa (2.)\n");
}

TEST(PrintedDamage, PartedFiguresLeadOnAndNotBack) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n"
                   "8. Wings clear 9\n— Wings dark 10\n"
                   "9. Head long busa Roe\n— Head short cusa Roe\n"
                   "10. Legs red, tibiae with a spur 1 1\n— Legs black dusa Roe\n"
                   "11. Tail flat with spines 8\n— Tail round fusa Roe\n"),
            "8[8] Wings clear -> 9\n"
            "8[—] Wings dark -> 10\n"
            "9[9] Head long -> Ausella busa\n"
            "9[—] Head short -> Ausella cusa\n"
            "10[10] Legs red, tibiae with a spur -> 11\n"
            "10[—] Legs black -> Ausella dusa\n"
            "11[11] Tail flat with spines -> 8\n"
            "11[—] Tail round -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift

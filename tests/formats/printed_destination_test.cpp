// Where leads lead: leaders in every form, numbers, names, keys.

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_target.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using test::sketch;
using Lines = std::vector<std::string>;

struct Leaders {
  char const* name;
  char const* between;  // stands between the words and the destination
};

void PrintTo(Leaders const& leaders, std::ostream* out) { *out << leaders.name; }

class PrintedLeaders : public testing::TestWithParam<Leaders> {};

TEST_P(PrintedLeaders, PartTheWordsFromTheDestination) {
  std::string const to = GetParam().between;
  auto const text = "1. Shell smooth" + to + "2\n– Shell ribbed" + to + "Aus bus\n" +
                    "2. Foot pale" + to + "A. cus\n– Foot dark" + to + "Dus eus Smith, 1900\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[–] Foot dark -> Dus eus\n");
}

INSTANTIATE_TEST_SUITE_P(
    All, PrintedLeaders,
    testing::Values(Leaders{"Dots", " .......... "}, Leaders{"DotsTouching", ".........."},
                    Leaders{"SpacedDots", " . . . . . . "},
                    Leaders{"SpacedDotsTouching", ". . . . ."}, Leaders{"TwoSpacedDots", " . . "},
                    Leaders{"OneDot", " . "}, Leaders{"BrokenDots", " ......  ..... "},
                    Leaders{"ThreeDots", "... "}, Leaders{"TwoDots", " .. "},
                    Leaders{"Ellipsis", " … "}, Leaders{"EllipsisTouching", "…"},
                    Leaders{"Ellipses", "………… "}, Leaders{"SpacedEllipses", " … … … "},
                    Leaders{"BulletOperators", " ∙∙∙∙ "}, Leaders{"MiddleDots", " ····· "},
                    Leaders{"Bullets", " •••• "}, Leaders{"LowLines", " ______ "},
                    Leaders{"Tab", "\t"}, Leaders{"DotsAndTab", " .....\t"},
                    Leaders{"Blanks", "        "}, Leaders{"ThreeBlanks", "   "},
                    Leaders{"NoBreakBlanks", "\u00A0\u00A0\u00A0\u00A0"}, Leaders{"Arrow", " → "},
                    Leaders{"ArrowOfSigns", " -> "}, Leaders{"DoubleArrow", " => "},
                    Leaders{"TwoHeads", " >> "}, Leaders{"DotsAndArrow", " ..... → "},
                    Leaders{"SingleBlank", " "}, Leaders{"EmDash", " — "}, Leaders{"EnDash", " – "},
                    Leaders{"EmDashTouching", "—"}, Leaders{"TwoHyphens", " -- "},
                    Leaders{"RowOfHyphens", " ---------- "}, Leaders{"SpacedHyphens", " - - - - "},
                    Leaders{"RowOfDashes", " ———— "}, Leaders{"TwoBlanks", "  "}),
    [](auto const& leaders) { return std::string{leaders.param.name}; });

TEST(PrintedDestination, KeepsTheFullStopBeforeLeaders) {
  EXPECT_EQ(sketch("1. Shell smooth. ..... 2\n– Shell ribbed...... Aus bus\n"
                   "2. Pale ..... Aus cus\n– Dark ..... Aus dus\n"),
            "1[1] Shell smooth. -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Pale -> Aus cus\n2[–] Dark -> Aus dus\n");
}

TEST(PrintedDestination, ReadsPointerWordsOfSixLanguages) {
  for (std::string const pointer : {"go to 2",   "go to couplet 2",
                                    "see 2",     "see couplet 2",
                                    "siehe 2",   "weiter bei 2",
                                    "voir 2",    "véase 2",
                                    "ver 2",     "ir a 2",
                                    "vide 2",    "→ 2",
                                    "(2)",       "[2]",
                                    "2.",        "s. 2",
                                    "s. u. 2",   "vgl. 2",
                                    "voir n° 2", "passer à 2",
                                    "vedi 2",    "vai al 2",
                                    "zie 2",     "ga naar 2",
                                    "pase al 2"}) {
    auto const key =
        "1. Small … " + pointer + "\n– Large … Aus aus\n2. Pale … Aus bus\n– Dark … Aus cus\n";
    EXPECT_EQ(sketch(key).substr(0, 16), "1[1] Small -> 2\n") << pointer;
  }
  for (std::string const pointer : {"go to 2", "see couplet 2", "siehe 2", "weiter bei 2", "voir 2",
                                    "véase 2", "vide 2", "s. 2", "zie 2", "vedi 2", "passer à 2"}) {
    auto const key =
        "1. Small, " + pointer + "\n– Large … Aus aus\n2. Pale … Aus bus\n– Dark … Aus cus\n";
    EXPECT_EQ(sketch(key).substr(0, 17), "1[1] Small, -> 2\n") << pointer;
  }
}

TEST(PrintedDestination, StandsOnALineOfItsOwn) {
  auto const text =
      "7. Body long,\n     hairy\n          Aus bus\n"
      "– Body short\n     8\n"
      "8. Legs pale ..........\n        A. cus\n"
      "– Legs dark\n          Dus eus (Smith, 1900)\n";
  EXPECT_EQ(sketch(text),
            "7[7] Body long, hairy -> Aus bus\n7[–] Body short -> 8\n"
            "8[8] Legs pale -> Aus cus\n8[–] Legs dark -> Dus eus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, continuation, destination, lead, destination, lead, destination, lead, "
            "destination");
}

TEST(PrintedDestination, IsNeitherFigureNorPageNorCount) {
  EXPECT_EQ(sketch("2. Stamens 5; see Fig. 7 … 3. Aus bus, p. 44\n"
                   "– Stamens 3; see Fig. 2 … 3\n"
                   "3. Leaves lobed (54,55) … Aus cus, 12\n"
                   "– Leaves entire, p. 2 … Aus dus 44\n"),
            "2[2] Stamens 5; see Fig. 7 -> Aus bus (p. 44)\n"
            "2[–] Stamens 3; see Fig. 2 -> 3\n"
            "3[3] Leaves lobed (54,55) -> Aus cus (12)\n"
            "3[–] Leaves entire, p. 2 -> Aus dus (44)\n");
}

TEST(PrintedDestination, NumberAtTheEndIsOfTheWordsWhereNoCoupletBearsIt) {
  auto const text =
      "1. Stamens 3 ..... 2\n– Stamens 5\n"
      "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Stamens 3 -> 2\n1[–] Stamens 5 -> ?\n"
            "2[2] Pale -> Aus bus\n2[–] Dark -> Aus cus\n");
  EXPECT_TRUE(findings_of(text).empty());  // proof reports the lead
}

TEST(PrintedDestination, NumberAtTheEndIsADestinationWhereACoupletBearsItAndIsSaidSo) {
  auto const text =
      "1. Small ..... 2\n– Large, with stamens 3\n"
      "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n"
      "3. Round ..... Aus dus\n– Square ..... Aus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Small -> 2\n1[–] Large, with stamens -> 3\n2[2] Pale -> Aus bus\n"
            "2[–] Dark -> Aus cus\n3[3] Round -> Aus dus\n3[–] Square -> Aus eus\n");
  EXPECT_EQ(findings_of(text),
            Lines{"key.txt:2:23: information: the number 3 at the end of this lead was taken for "
                  "couplet 3, to which no other lead leads [ambiguous-number] (if it belongs to "
                  "the words, print the lead's destination after dot leaders)"});
}

TEST(PrintedDestination, NamesWithoutLeadersAreFoundAtTheEnd) {
  auto const text =
      "1 Shell smooth 2\n- Shell ribbed, as in Dus eus Aus bus (Smith, 1900)\n"
      "2 Foot pale A. cus\n- Foot dark. Dus eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Shell smooth -> 2\n1[-] Shell ribbed, as in Dus eus -> Aus bus\n"
            "2[2] Foot pale -> Aus cus\n2[-] Foot dark. -> Dus eus\n");
}

TEST(PrintedDestination, NameWithoutLeadersAmongLedOnesIsReported) {
  auto const text =
      "1. Small ..... 2\n– Large Aus aus\n2. Pale ..... Aus bus\n– Dark ..... Aus cus\n";
  EXPECT_EQ(findings_of(text),
            Lines{"key.txt:2:9: information: no leaders stand before \"Aus aus\"; it was taken for "
                  "the lead's destination [assumed-destination] (print dot leaders before the "
                  "destination)"});
}

TEST(PrintedDestination, GroupNameWithANumberLeadsToTheCouplet) {
  EXPECT_EQ(sketch("1. Small ..... Aus group, 2\n– Large ..... Dus 3\n"
                   "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n"
                   "3. Round ..... subgenus Eus ..... 4\n– Square ..... Dus eus\n"
                   "4. Short ..... Eus (3 species) 2\n– Long ..... Eus fus ..... 2\n"),
            "1[1] Small -> 2 (Aus group)\n1[–] Large -> 3 (Dus)\n"
            "2[2] Pale -> Aus bus\n2[–] Dark -> Aus cus\n"
            "3[3] Round -> 4 (subgenus Eus)\n3[–] Square -> Dus eus\n"
            "4[4] Short -> 2 (Eus (3 species))\n4[–] Long -> 2 (Eus fus)\n");
}

TEST(PrintedDestination, SeveralTaxaAtOneEnd) {
  EXPECT_EQ(sketch("1. Small ..... A. bus, A. cus or A. dus\n"
                   "– Large ..... Aus eus & Aus fus\n"
                   "2. Pale ..... Aus gus Smith & Jones, 1900\n"
                   "– Dark ..... Aus hus (Smith, 1900) and Dus ius Roe\n"
                   "3. Round ..... A. bus, cus or dus\n– Square ..... Aus or Dus\n"
                   "4. Short ..... Aus, Dus or Eus\n– Long ..... Aus bus; Dus eus\n"),
            "1[1] Small -> Aus bus + Aus cus + Aus dus\n"
            "1[–] Large -> Aus eus + Aus fus\n"
            "2[2] Pale -> Aus gus\n"
            "2[–] Dark -> Aus hus + Dus ius\n"
            "3[3] Round -> Aus bus + Aus cus + Aus dus\n3[–] Square -> Aus + Dus\n"
            "4[4] Short -> Aus + Dus + Eus\n4[–] Long -> Aus bus + Dus eus\n");
}

TEST(PrintedDestination, NotesBehindTheTaxonAreItsRemark) {
  EXPECT_EQ(
      sketch("1. Small ..... Aus bus (part)\n– Large ..... Aus bus, in part\n"
             "2. Pale ..... Aus cus (Smith), sp. n.\n– Dark ..... Aus dus Roe p.p.\n"
             "3. Round ..... Aus eus, rare form only\n– Square ..... Aus fus partly\n"
             "4. Short ..... Aus gus (see also 12)\n– Long ..... Aus hus. Found in fens\n"
             "5. Thin ..... Aus ius (Roe, 1901), p. 44\n– Thick ..... Aus kus Roe (Fig. 7)\n"),
      "1[1] Small -> Aus bus (part)\n1[–] Large -> Aus bus (in part)\n"
      "2[2] Pale -> Aus cus (sp. n.)\n2[–] Dark -> Aus dus (p.p.)\n"
      "3[3] Round -> Aus eus (rare form only)\n3[–] Square -> Aus fus (partly)\n"
      "4[4] Short -> Aus gus (see also 12)\n4[–] Long -> Aus hus (Found in fens)\n"
      "5[5] Thin -> Aus ius (p. 44)\n5[–] Thick -> Aus kus\n");
}

TEST(PrintedDestination, KeepsAuthorsApartFromNames) {
  auto const edition = read_key(
                           "1. Small ..... Aus bus (Smith, 1900)\n"
                           "– Large ..... Aus (Dus) cus Smith & Jones, 1900\n"
                           "2. Pale ..... Aus dus var. eus (L.) Mill. ex Roe\n"
                           "– Dark ..... Aus fus de Roe, van der Poe & Moe, 1900\n"
                           "3. Thin ..... Aus gus subsp. hus\n– Thick ..... Grey Reed Warbler\n"
                           "4. Dry ..... Aus sp. n.\n– Wet ..... Aus L.\n"
                           "5. Low ..... ×Aus kus\n– High ..... Aus cf. lus Roe\n")
                           .edition;
  std::string text;
  for (auto const& taxon : edition.taxa) text += taxon.name + " | " + taxon.authorship + "\n";
  EXPECT_EQ(text,
            "Aus bus | (Smith, 1900)\n"
            "Aus (Dus) cus | Smith & Jones, 1900\n"
            "Aus dus var. eus | (L.) Mill. ex Roe\n"
            "Aus fus | de Roe, van der Poe & Moe, 1900\n"
            "Aus gus subsp. hus | \n"
            "Grey Reed Warbler | \n"
            "Aus sp. n. | \n"
            "Aus | L.\n"
            "×Aus kus | \n"
            "Aus cf. lus | Roe\n");
}

TEST(PrintedDestination, ExpandsAbbreviatedAndMissingGeneraAndSaysSo) {
  auto const text =
      "1. Small ..... Aus bus\n– Large ..... A. cus\n"
      "2. Pale ..... dus (Smith)\n– Dark ..... Eus fus\n"
      "3. Round ..... A. gus\n– Square ..... E. hus hus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Small -> Aus bus\n1[–] Large -> Aus cus\n"
            "2[2] Pale -> Aus dus\n2[–] Dark -> Eus fus\n"
            "3[3] Round -> Aus gus\n3[–] Square -> Eus hus hus\n");
  EXPECT_EQ(findings_of(text),
            (Lines{"key.txt:2:15: information: \"A.\" was read as \"Aus\" here and in 1 further "
                   "name [expanded-name] (print the genus in full where this is wrong)",
                   "key.txt:3:15: information: the genus is not printed; it was read as \"Aus\" "
                   "[expanded-name] (print the genus in full where this is wrong)",
                   "key.txt:6:16: information: \"E.\" was read as \"Eus\" [expanded-name] (print "
                   "the genus in full where this is wrong)"}));
}

TEST(PrintedDestination, TakesTheNearestOfSeveralGeneraAndWarns) {
  auto const text =
      "1. Small ..... Aus bus\n– Large ..... 2\n"
      "2. Pale ..... Acus dus\n– Dark ..... A. eus\n";
  EXPECT_EQ(sketch(text),
            "1[1] Small -> Aus bus\n1[–] Large -> 2\n"
            "2[2] Pale -> Acus dus\n2[–] Dark -> Acus eus\n");
  EXPECT_EQ(findings_of(text),
            Lines{"key.txt:4:14: warning: \"A.\" was read as \"Acus\", the nearest before it; it "
                  "may also be Aus [ambiguous-abbreviation] (print the genus in full where this "
                  "is wrong)"});
}

TEST(PrintedDestination, TheFullNameElsewhereSettlesAnAbbreviation) {
  EXPECT_EQ(sketch("1. Small ..... Aus bus\n– Large ..... 2\n"
                   "2. Pale ..... Acus dus\n– Dark ..... A. bus\n"),
            "1[1] Small -> Aus bus\n1[–] Large -> 2\n"
            "2[2] Pale -> Acus dus\n2[–] Dark -> Aus bus\n");
}

TEST(PrintedDestination, TheTitleGivesTheGenusThatTheKeyNeverPrints) {
  EXPECT_EQ(sketch("Key to the species of Aus\n\n1. Small ..... A. bus\n– Large ..... A. cus\n"),
            "1[1] Small -> Aus bus\n1[–] Large -> Aus cus\n");
}

TEST(PrintedDestination, PointersIntoOtherKeysAreKept) {
  EXPECT_EQ(sketch("1. Small ..... Key B\n– Large ..... Group 2\n"
                   "2. Pale ..... 3b, in AUSACEAE, p. 22\n– Dark ..... see Key to Aus\n"
                   "3. Round ..... Schlüssel C\n– Square ..... Aus aus\n"),
            "1[1] Small -> key: Key B\n1[–] Large -> key: Group 2\n"
            "2[2] Pale -> key: 3b, in AUSACEAE, p. 22\n2[–] Dark -> key: Key to Aus\n"
            "3[3] Round -> key: Schlüssel C\n3[–] Square -> Aus aus\n");
}

TEST(PrintedDestination, DanglingNumbersStayAsPrinted) {
  auto const text = "1. Small ..... 22\n– Large ..... Aus aus\n";
  EXPECT_EQ(sketch(text), "1[1] Small -> ?22\n1[–] Large -> Aus aus\n");
  EXPECT_TRUE(findings_of(text).empty());  // proof reports it
}

TEST(PrintedDestination, NumberWithALeadsLetterMeansItsCouplet) {
  EXPECT_EQ(sketch("1a Small ..... 2a\n1b Large ..... Aus aus\n"
                   "2a Pale ..... Aus bus\n2b Dark ..... 1b\n"),
            "1[1a] Small -> 2\n1[1b] Large -> Aus aus\n2[2a] Pale -> Aus bus\n2[2b] Dark -> 1\n");
  EXPECT_EQ(findings_of("1a Small ..... 2a\n1b Large ..... Aus aus\n"
                        "2a Pale ..... Aus bus\n2b Dark ..... 1b\n"),
            Lines{"key.txt:4:15: warning: \"1b\" is no couplet; it was taken for couplet 1 "
                  "[points-at-lead] (print the couplet's number alone, or number the couplet so)"});
}

TEST(PrintedDestination, HasItsPlace) {
  auto const edition =
      read_key("1. Größe ♂ klein ..... Aus bus\n– Größe\n   groß ..... 2\n").edition;
  auto const& first = edition.couplets[0].leads[0];
  EXPECT_EQ(first.destination_place.line, 1U);
  EXPECT_EQ(first.destination_place.column, 24U);
  EXPECT_EQ(first.destination_printed, "Aus bus");
  auto const& second = edition.couplets[0].leads[1];
  EXPECT_EQ(second.destination_place.line, 3U);
  EXPECT_EQ(second.destination_place.column, 15U);
  EXPECT_EQ(second.place.line, 2U);
  EXPECT_EQ(edition.taxa[0].place, first.destination_place);
}

TEST(PrintedDestination, RangesBetweenDashesAreNone) {
  EXPECT_EQ(sketch("1. Setae 3 – 5\n– Setae 6 – 8 ..... 2\n"
                   "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n"),
            "1[1] Setae 3 – 5 -> ?\n1[–] Setae 6 – 8 -> 2\n"
            "2[2] Pale -> Aus bus\n2[–] Dark -> Aus cus\n");
}

TEST(PrintedDestination, NumberAndNameGiveTheCoupletAndARemark) {
  EXPECT_EQ(sketch("1. Small ..... 2 (Aus)\n– Large ..... 3. Aus bus\n"
                   "2. Pale ..... 3 – Aus cus group\n– Dark ..... Aus eus\n"
                   "3. Round ..... Aus cus (12)\n– Square ..... Aus dus\n"),
            "1[1] Small -> 2 (Aus)\n1[–] Large -> Aus bus\n"
            "2[2] Pale -> 3 (Aus cus group)\n2[–] Dark -> Aus eus\n"
            "3[3] Round -> Aus cus (12)\n3[–] Square -> Aus dus\n");
}

TEST(PrintedDestination, LinesDirectlyBeneathALeadAreItsNotes) {
  auto const edition = read_key(
                           "1. Small ..... Aus bus Roe\nHalvern Basin, in fens; May to July.\n"
                           "Common.\n– Large ..... 2\n"
                           "2. Pale ..... Aus cus\n– Dark ..... Aus dus\n")
                           .edition;
  EXPECT_EQ(edition.couplets[0].leads[0].notes,
            (Lines{"Halvern Basin, in fens; May to July. Common."}));
}

TEST(PrintedDestination, GroupsThatAKeyInBracketsGoesOnWithLeadThere) {
  auto const edition =
      read_key(
          "Key 1\n1. Nose simple ..... Ausidae Roe (Key 2)\n– Nose leafed ..... Dusidae (Key III)\n"
          "\nKey 2\n1. Wings clear ..... Aus bus (see key to males)\n– Wings dark ..... Aus cus\n")
          .edition;
  EXPECT_EQ(
      test::sketch(edition),
      "1[1] Nose simple -> key: Key 2 (Ausidae Roe)\n1[–] Nose leafed -> key: Key III (Dusidae)\n"
      "1[1] Wings clear -> Aus bus (see key to males)\n1[–] Wings dark -> Aus cus\n");
}

TEST(PrintedDestination, PagesAndSignsOfGeneraMayStandBeforeNames) {
  EXPECT_EQ(sketch("1. Body smooth ..... (p. 219) G. Ausella.\n"
                   "-  Body hairy ..... 2\n"
                   "2. Head red ..... (p. 220) Busella\n"
                   "-  Head black ..... G. Cusella\n"),
            "1[1] Body smooth -> Ausella (p. 219)\n1[-] Body hairy -> 2\n"
            "2[2] Head red -> Busella (p. 220)\n2[-] Head black -> Cusella\n");
}

TEST(PrintedDestination, BehindHalfAnArrow) {
  EXPECT_EQ(sketch("1. Flowers solitary ..... Ausella husa\n"
                   "– Flowers in racemes ..... > 2\n"
                   "2. Petals red, > 2 mm long ..... Ausella busa\n"
                   "– Petals white ..... > 3\n"
                   "3. Seeds winged ..... Ausella cusa\n"
                   "– Seeds wingless ..... Ausella dusa\n"),
            "1[1] Flowers solitary -> Ausella husa\n"
            "1[–] Flowers in racemes -> 2\n"
            "2[2] Petals red, > 2 mm long -> Ausella busa\n"
            "2[–] Petals white -> 3\n"
            "3[3] Seeds winged -> Ausella cusa\n"
            "3[–] Seeds wingless -> Ausella dusa\n");
}

TEST(PrintedDestination, PointersInBrackets) {
  for (auto const* pointer : {"[go to couplet 2]", "[go to 2]", "[see 2]", "(go to 2)", "[2]"}) {
    EXPECT_EQ(sketch("1. Wings clear " + std::string{pointer} +
                     "\n–  Wings dark [Aus bus]\n2. Legs long [Aus cus]\n"
                     "–  Legs short [Aus dus]\n"),
              "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
              "2[2] Legs long -> Aus cus\n2[–] Legs short -> Aus dus\n")
        << pointer;
  }
  // One alone, where the others have leaders.
  EXPECT_EQ(sketch("1. Wings clear [go to couplet 2]\n–  Wings dark ..... Aus bus\n"
                   "2. Legs long ..... Aus cus\n–  Legs short [see Fig. 2] ..... Aus dus\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs long -> Aus cus\n2[–] Legs short [see Fig. 2] -> Aus dus\n");
}

// What stands in a column behind the destinations is said of them, and is not what they are.
TEST(PrintedDestination, BeforeAColumnOfOtherThings) {
  constexpr std::string_view kPlain =
      "1[1] Wings clear -> Aus bus\n1[–] Wings dark -> 2\n"
      "2[2] Legs long -> Aus cus\n2[–] Legs short -> Aus dus\n";
  auto const with = [](std::array<std::string_view, 4> const& behind) {
    std::string text;
    std::size_t i = 0;
    for (auto const* lead : {"1\tWings clear\tAus bus", "–\tWings dark\t2", "2\tLegs long\tAus cus",
                             "–\tLegs short\tAus dus"}) {
      text += lead + std::string{"\t"} + std::string{behind[i++]} + "\n";
    }
    return text;
  };
  EXPECT_EQ(sketch(with({"Fig. 3", "", "Fig. 5", "Fig. 6"})), kPlain);
  EXPECT_EQ(sketch(with({"Fig. 3", "Fig. 4", "Fig. 5", "Fig. 6"})), kPlain);
  EXPECT_EQ(test::read_key(with({"Fig. 3", "Fig. 4", "Fig. 5", "Fig. 6"}))
                .edition.couplets[0]
                .leads[1]
                .figures,
            std::vector<std::string>{"Fig. 4"});
  auto const numbers = sketch(with({"3a", "4, 5", "5", "—"}));
  EXPECT_NE(numbers.find("1[–] Wings dark -> 2 (4, 5)\n2[2] Legs long -> Aus cus (5)\n"),
            std::string::npos)
      << numbers;
  EXPECT_EQ(sketch(with({"Varro, 1901", "", "Varro, 1901", "Orm, 1870"})), kPlain);
  auto const taxa = [&](std::array<std::string_view, 4> const& behind) {
    std::vector<std::string> names;
    for (auto const& taxon : test::read_key(with(behind)).edition.taxa) names.push_back(taxon.name);
    return names;
  };
  std::vector<std::string> const kNames{"Aus bus", "Aus cus", "Aus dus"};
  EXPECT_EQ(taxa({"Plain beetle", "", "Red beetle", "Black beetle"}), kNames);
  EXPECT_EQ(taxa({"34", "", "36", "37"}), kNames);
  auto const pages = sketch(with({"34", "35", "36", "37"}));
  EXPECT_NE(pages.find("1[–] Wings dark -> 2 (35)\n"), std::string::npos) << pages;
}

// "Sect. 1. Eudrusa.—Calyx": what follows the dash are characters, and no name.
TEST(PrintedDestination, ADashBehindASectionsNameLeadsNowhere) {
  EXPECT_EQ(sketch("Key to the species of Cadwenia\n\n"
                   "Sect. 1. Eucadwenia.—Calyx-lobes valvate. Shrubs.\n"
                   "    Leaves opposite . . . . . C. busa.\n"
                   "    Leaves alternate . . . . . C. cusa.\n"
                   "Sect. 2. Gymnowenia.—Calyx-lobes open. Herbs.\n"
                   "    Stems erect . . . . . C. dusa.\n"
                   "    Stems prostrate . . . . . C. fusa.\n"),
            "1[] Sect. 1. Eucadwenia.—Calyx-lobes valvate. Shrubs. -> 2\n"
            "1[] Sect. 2. Gymnowenia.—Calyx-lobes open. Herbs. -> 3\n"
            "2[] Leaves opposite -> Cadwenia busa\n"
            "2[] Leaves alternate -> Cadwenia cusa\n"
            "3[] Stems erect -> Cadwenia dusa\n"
            "3[] Stems prostrate -> Cadwenia fusa\n");
}

TEST(PrintedDestination, TwoDotsOfWhichTheSecondTouchesTheName) {
  EXPECT_EQ(sketch("1. Costal index about 2.6. .busa (Roe)\n"
                   "– Costal index about 3.4......cusa Roe\n"),
            "1[1] Costal index about 2.6. -> busa\n"
            "1[–] Costal index about 3.4 -> cusa\n");
}

TEST(PrintedDestination, ChaptersAndTitlesOfSpeciesAreOtherKeys) {
  EXPECT_EQ(sketch("1. Wings clear ..... 2\n"
                   "– Wings dark ..... see Species of Ausella\n"
                   "2. Legs long ..... chapter 8\n"
                   "– Legs short ..... Busella busa\n\n"
                   "Species of Ausella\n\n"
                   "1. Head long ..... 2\n"
                   "– Head short ..... Ausella busa\n"
                   "2. Eyes red ..... Ausella cusa\n"
                   "– Eyes black ..... Ausella dusa\n"),
            "1[1] Wings clear -> 2\n"
            "1[–] Wings dark -> key: Species of Ausella\n"
            "2[2] Legs long -> key: chapter 8\n"
            "2[–] Legs short -> Busella busa\n"
            "1[1] Head long -> 2\n"
            "1[–] Head short -> Ausella busa\n"
            "2[2] Eyes red -> Ausella cusa\n"
            "2[–] Eyes black -> Ausella dusa\n");
}

TEST(PrintedDestination, AnArrowOrADashBehindAGroupLeadsToAKey) {
  for (auto const* sign : {" → ", " – ", ": see ", ", "}) {
    auto const to = printed::read_destination("Ausidae" + std::string{sign} + "Key B", {});
    EXPECT_EQ(to.form, printed::DestinationForm::key) << sign;
    EXPECT_EQ(to.key_name, "Key B") << sign;
    EXPECT_EQ(to.remark, "Ausidae") << sign;
  }
}

TEST(PrintedDestination, AnArticleMayStandBeforeAKey) {
  for (auto const* words : {"go to the key to ants", "see our key to ants", "Go to key to ants"}) {
    auto const to = printed::read_destination(words, {});
    EXPECT_EQ(to.form, printed::DestinationForm::key) << words;
    EXPECT_EQ(to.key_name, "key to ants") << words;
  }
  // In brackets behind a group, it says where that is keyed on.
  EXPECT_EQ(printed::read_destination("Aus Roe (see the key to Aus below)", {}).form,
            printed::DestinationForm::taxa);
}

TEST(PrintedDestination, TaxaOfAListMayHaveLongRemarks) {
  EXPECT_EQ(sketch("Key to shells\n"
                   "\n"
                   "1a Shell white or buff → Zebrilla radiata, map 68\n"
                   "1b Shell uniformly brown → 2\n"
                   "2a Apex entire → Ennidea montana (SH 13–16 mm, map 69) or Ennidea obscurior "
                   "(SH 8–10 mm, map 70)\n"
                   "2b Shell barrel-shaped → Chrysalis snails, see key on page 52\n"),
            "1[1a] Shell white or buff -> Zebrilla radiata (map 68)\n"
            "1[1b] Shell uniformly brown -> 2\n"
            "2[2a] Apex entire -> Ennidea montana + Ennidea obscurior (SH 13–16 mm map 69; SH 8–10 "
            "mm, map 70)\n"
            "2[2b] Shell barrel-shaped -> key: Chrysalis snails (see key on page 52)\n");
}

TEST(PrintedDestination, ABracketOfTheWordsClosesBeforeTheName) {
  EXPECT_EQ(sketch("Genus OROPASSER Orwell.\n"
                   "\n"
                   "Key to the species.\n"
                   "\n"
                   "a. Crown with a stripe.\n"
                   "b. Rectrices without white. (Plains of the interior.)\n"
                   "Oropasser coronatus coronatus (p. 325).\n"
                   "bb. Rectrices extensively white. (Coast of\n"
                   "Lower Nevalta.) Oropasser coronatus leucurus (p. 327).\n"
                   "bbb. Rectrices narrowly tipped with white.\n"
                   "(Tres Pinos Islands.) Oropasser coronatus insularis (p. 328).\n"
                   "aa. Crown without a stripe. (Ilmara and adjacent islands.)\n"
                   "Oropasser pusillus (p. 329).\n"),
            "a[a] Crown with a stripe. -> b\n"
            "a[aa] Crown without a stripe. (Ilmara and adjacent islands.) -> Oropasser pusillus "
            "(p. 329)\n"
            "b[b] Rectrices without white. (Plains of the interior.) -> Oropasser coronatus "
            "coronatus (p. 325)\n"
            "b[bb] Rectrices extensively white. (Coast of Lower Nevalta.) -> Oropasser coronatus "
            "leucurus (p. 327)\n"
            "b[bbb] Rectrices narrowly tipped with white. (Tres Pinos Islands.) -> Oropasser "
            "coronatus insularis (p. 328)\n");
}

TEST(PrintedDestination, GeneraWithoutSpeciesStandBesideSpecies) {
  EXPECT_EQ(
      sketch("1. Ears long ..... Ausella busa (skull > 55 mm) or Busella spp. (skull < 32 mm)\n"
             "– Ears short ..... 2\n"
             "2. Tail long ..... Ausella cusa or Cusella\n"
             "– Tail short ..... Ausella dusa, Dusella sp.\n"),
      "1[1] Ears long -> Ausella busa + Busella spp. (skull > 55 mm; skull < 32 mm)\n"
      "1[–] Ears short -> 2\n"
      "2[2] Tail long -> Ausella cusa + Cusella\n"
      "2[–] Tail short -> Ausella dusa + Dusella sp.\n");
}

TEST(PrintedDestination, NamesInBracketsMayHaveTheirAuthorInBrackets) {
  EXPECT_EQ(sketch("1. Scutellum with a pit (Ausella busa (Roe, 1911))\n"
                   "– Scutellum without a pit (2)\n"
                   "2. Coxa black (A. cusa (Roe, 1899))\n"
                   "– Coxa yellow (A. dusa Dorn, sp. nov.)\n"),
            "1[1] Scutellum with a pit -> Ausella busa\n"
            "1[–] Scutellum without a pit -> 2\n"
            "2[2] Coxa black -> Ausella cusa\n"
            "2[–] Coxa yellow -> Ausella dusa (sp. nov.)\n");
}

TEST(PrintedDestination, NumbersBeforeTheSpeciesOfAListMayHaveNoStop) {
  EXPECT_EQ(sketch("1. Roots brown ..... 3 Ausella busa, 17 Ausella cusa\n"
                   "– Roots yellow ..... 4 Ausella dusa\n"),
            "1[1] Roots brown -> Ausella busa + Ausella cusa\n"
            "1[–] Roots yellow -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift

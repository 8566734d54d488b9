// "Name: value" lines before a key.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using Lines = std::vector<std::string>;

std::string const kKeyBehindFront = "\n1. Small ..... Aus aus\n– Large ..... Aus bus\n";

TEST(PrintedFront, KeepsThePlaceOfEachListedName) {
  auto const scope =
      read_key("Lists: Aus aus; Aus\n   bus; Aus  cus\nLists: Dus\nExcludes: Dus; Eus\n" +
               kKeyBehindFront)
          .edition.front.scope;
  EXPECT_EQ(scope.listed_taxa, (Lines{"Aus aus", "Aus bus", "Aus cus", "Dus"}));
  Lines places;
  for (auto const* list : {&scope.listed_places, &scope.excluded_places}) {
    for (auto const& place : *list) {
      places.push_back(std::to_string(place.line) + ":" + std::to_string(place.column) + " " +
                       std::to_string(place.end - place.begin));
    }
  }
  // A name over two lines, or with a run of blanks in it, is where its first word is.
  EXPECT_EQ(places, (Lines{"1:8 7", "1:17 3", "2:9 3", "3:8 3", "4:11 3", "4:16 3"}));
}

TEST(PrintedFront, ReadsEveryKnownName) {
  auto const front = read_key(
                         "Title: Shells of Halvern\nEdition: 2nd\nYear: 1998\n"
                         "Authors: E. R.; M. K. H.\nLanguage: en-GB\nTaxa: all land snails\n"
                         "Region: Halvern Basin\nPlaces: Aldmere; Carrow Levels\n"
                         "Excludes: Dus; Eus fus\nLists: Aus aus; Aus bus\nLife stage: Adults\n"
                         "Sex: females\nMaterial: dry shells\n"
                         "Synonyms: Aus aus = Bus aus; Aus bus = Bus bus = Cus bus\n" +
                         kKeyBehindFront)
                         .edition.front;
  EXPECT_EQ(front.title, "Shells of Halvern");
  EXPECT_EQ(front.edition, "2nd");
  EXPECT_EQ(front.year, 1998);
  EXPECT_EQ(front.authors, (Lines{"E. R.", "M. K. H."}));
  EXPECT_EQ(front.language, "en-GB");
  EXPECT_EQ(front.scope.taxa, "all land snails");
  EXPECT_EQ(front.scope.region, "Halvern Basin");
  EXPECT_EQ(front.scope.places, (Lines{"Aldmere", "Carrow Levels"}));
  EXPECT_EQ(front.scope.excluded_taxa, (Lines{"Dus", "Eus fus"}));
  EXPECT_EQ(front.scope.listed_taxa, (Lines{"Aus aus", "Aus bus"}));
  EXPECT_EQ(front.scope.life_stage, "adult");
  EXPECT_EQ(front.scope.sex, "female");
  EXPECT_EQ(front.scope.material, "dry shells");
  ASSERT_EQ(front.synonyms.size(), 3U);
  EXPECT_EQ(front.synonyms[2].accepted, "Aus bus");
  EXPECT_EQ(front.synonyms[2].synonym, "Cus bus");
  EXPECT_EQ(front.synonyms[2].place.line, 14U);
  EXPECT_TRUE(front.other.empty());
}

TEST(PrintedFront, NamesAreReadInAnyCaseAndRepeatedLinesAdd) {
  auto const front = read_key(
                         "TITLE: Shells\nregion: Halvern\nLIFE-STAGE: larvae\nplaces: Aldmere\n"
                         "Places: Brennfold; Carrow\nRegion: the Marches\n" +
                         kKeyBehindFront)
                         .edition.front;
  EXPECT_EQ(front.title, "Shells");
  EXPECT_EQ(front.scope.region, "Halvern; the Marches");
  EXPECT_EQ(front.scope.places, (Lines{"Aldmere", "Brennfold", "Carrow"}));
  EXPECT_EQ(front.scope.life_stage, "larva");
}

TEST(PrintedFront, IndentedLinesGoOnWithTheValue) {
  auto const text =
      "Lists: Aus aus; Aus\n    bus; Dus\n\nRegion: Halvern\n  Basin\n" + kKeyBehindFront;
  auto const front = read_key(text).edition.front;
  EXPECT_EQ(front.scope.listed_taxa, (Lines{"Aus aus", "Aus bus", "Dus"}));
  EXPECT_EQ(front.scope.region, "Halvern Basin");
  EXPECT_EQ(line_kinds(text),
            "front matter, front matter, blank, front matter, front matter, blank, lead, lead");
}

TEST(PrintedFront, UnknownNamesInTheBlockAreKept) {
  auto const front =
      read_key("Title: Shells\nSeries: Fauna, part 3\nMade on: dry days\n" + kKeyBehindFront)
          .edition.front;
  EXPECT_EQ(front.other, (std::vector<std::pair<std::string, std::string>>{
                             {"Series", "Fauna, part 3"}, {"Made on", "dry days"}}));
}

TEST(PrintedFront, AnEditionCalledByAYearIsOfThatYear) {
  EXPECT_EQ(read_key("Edition: 1974\n" + kKeyBehindFront).edition.front.year, 1974);
  EXPECT_EQ(read_key("Edition: 2nd\n" + kKeyBehindFront).edition.front.year, std::nullopt);
}

TEST(PrintedFront, ATitleMayStandBeforeTheBlock) {
  auto const reading =
      read_key("Shells of Halvern,\ntheir names\n\nRegion: Halvern\n" + kKeyBehindFront);
  EXPECT_EQ(reading.edition.front.title, "Shells of Halvern, their names");
  EXPECT_EQ(reading.edition.front.scope.region, "Halvern");
}

TEST(PrintedFront, AKeysTitleBelowTheBlockIsNoFrontMatter) {
  auto const edition = read_key("Title: Shells\n\nKey A: adults\n" + kKeyBehindFront).edition;
  EXPECT_TRUE(edition.front.other.empty());
  EXPECT_EQ(edition.parts[0].title, "Key A: adults");
}

TEST(PrintedFront, ProseWithAColonIsNoFrontMatter) {
  auto const edition =
      read_key("Title: Shells\n\nPlease note: dry shells only.\n" + kKeyBehindFront).edition;
  EXPECT_TRUE(edition.front.other.empty());
  ASSERT_EQ(edition.notes.size(), 1U);
  EXPECT_EQ(edition.notes[0].text, "Please note: dry shells only.");
}

TEST(PrintedFront, ABadYearIsReportedAndKept) {
  auto const text = "Title: x\nYear: MCMXC\n" + kKeyBehindFront;
  EXPECT_EQ(findings_of(text),
            Lines{"key.txt:2:1: warning: \"MCMXC\" is no year [bad-year] (write four digits, as in "
                  "\"Year: 1998\")"});
  auto const front = read_key(text).edition.front;
  EXPECT_EQ(front.year, std::nullopt);
  EXPECT_EQ(front.other[0].second, "MCMXC");
}

TEST(PrintedFront, ASynonymWithoutItsAcceptedNameIsReported) {
  EXPECT_EQ(findings_of("Synonyms: Aus aus = Bus aus; Cus\n" + kKeyBehindFront),
            Lines{"key.txt:1:1: warning: \"Cus\" does not say which name is a synonym "
                  "[bad-synonym] (write \"Accepted name = old name\", several of them separated "
                  "by \";\")"});
}

TEST(PrintedFront, APageAndAYearAreNoLabel) {
  EXPECT_EQ(test::sketch("64 AUSACEAE\n"
                         "7. ONDRELLA\n"
                         "Tollv. in Ann. Mus. Bot. Harvend. 2: 214 (1879); Brenk., Fl. Terr. 5:\n"
                         "88 (1901); Tarrant in Merrow Bull. 1936: 57 (1936)\n"
                         "Perennial herbs, often from a woody rootstock.\n"
                         "A genus of some 40 species in dry parts of the tropics.\n"
                         "1. Leaves in whorls of 3, at least on the main stem below the\n"
                         "inflorescence . . . . . . . . . . . . . . . . . . . . . 2\n"
                         "Leaves opposite throughout . . . . . . . . . . . . . . 1. O. busa\n"
                         "2. Corolla-tube 18 mm long, straight . . . . . . . . . 2. O. cusa\n"
                         "Corolla-tube 4 mm long, curved at the apex . . . . . . 3. O. dusa\n"),
            "1[1] Leaves in whorls of 3, at least on the main stem below the inflorescence -> 2\n"
            "1[] Leaves opposite throughout -> Ondrella busa\n"
            "2[2] Corolla-tube 18 mm long, straight -> Ondrella cusa\n"
            "2[] Corolla-tube 4 mm long, curved at the apex -> Ondrella dusa\n");
}

}  // namespace
}  // namespace keydrift

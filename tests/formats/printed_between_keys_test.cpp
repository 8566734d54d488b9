// What stands between keys and behind them, numbered as leads are: heads of families and genera,
// titles of keys, accounts of species.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

// The titles of the parts, one a line, and the sketch.
std::string sketch_by_part(std::string_view text) {
  auto const edition = test::read_key(text).edition;
  std::string titles;
  for (auto const& part : edition.parts) titles += "= " + part.title + "\n";
  return titles + sketch(edition);
}

TEST(PrintedBetweenKeys, GenusHeadsNumberedAsLeads) {
  EXPECT_EQ(sketch_by_part("Key to genera\n\n"
                           "1. Needles long ..... 1. Ausella\n"
                           "1. Needles short ..... 2. Busella\n\n"
                           "1. Ausella Roe\n\n"
                           "1. Cones long ..... A. fusa\n"
                           "1. Cones short ..... A. gusa\n\n"
                           "2. Busella Dorn\n\n"
                           "1. Bark grey ..... B. husa\n"
                           "1. Bark red ..... B. lusa\n"),
            "= Key to genera\n"
            "= 1. Ausella Roe\n"
            "= 2. Busella Dorn\n"
            "1[1] Needles long -> Ausella\n"
            "1[1] Needles short -> Busella\n"
            "1[1] Cones long -> Ausella fusa\n"
            "1[1] Cones short -> Ausella gusa\n"
            "1[1] Bark grey -> Busella husa\n"
            "1[1] Bark red -> Busella lusa\n");
}

TEST(PrintedBetweenKeys, GenusHeadsWhoseKeysHaveDashes) {
  EXPECT_EQ(sketch_by_part("1. Ausella Roe\n\n"
                           "1. Flowers white ..... 2\n"
                           "– Flowers yellow ..... A. fusa\n"
                           "2. Leaves ovate ..... A. gusa\n"
                           "– Leaves linear ..... A. husa\n\n"
                           "2. Busella Dorn\n\n"
                           "1. Sepals long ..... B. lusa\n"
                           "– Sepals short ..... B. musa\n"),
            "= 1. Ausella Roe\n"
            "= 2. Busella Dorn\n"
            "1[1] Flowers white -> 2\n"
            "1[–] Flowers yellow -> Ausella fusa\n"
            "2[2] Leaves ovate -> Ausella gusa\n"
            "2[–] Leaves linear -> Ausella husa\n"
            "1[1] Sepals long -> Busella lusa\n"
            "1[–] Sepals short -> Busella musa\n");
}

TEST(PrintedBetweenKeys, AFamilyHeadAboveAGenusHead) {
  EXPECT_EQ(sketch_by_part("Key to families\n\n"
                           "1. Needles long ..... 1. AUSACEAE\n"
                           "1. Needles short ..... 2. BUSACEAE\n\n"
                           "1. AUSACEAE\n\n"
                           "1. Needles in pairs ..... 1. Ausella\n"
                           "1. Needles single ..... 2. Cusella\n\n"
                           "1. Ausella Roe – Marsh Pine\n\n"
                           "1. Cones long ..... A. fusa\n"
                           "1. Cones short ..... A. gusa\n"),
            "= Key to families\n"
            "= 1. AUSACEAE\n"
            "= 1. Ausella Roe – Marsh Pine\n"
            "1[1] Needles long -> Ausaceae\n"
            "1[1] Needles short -> Busaceae\n"
            "1[1] Needles in pairs -> Ausella\n"
            "1[1] Needles single -> Cusella\n"
            "1[1] Cones long -> Ausella fusa\n"
            "1[1] Cones short -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, AGenusDescribedAboveItsKey) {
  EXPECT_EQ(sketch_by_part("1. AUSACEAE\n\n"
                           "1. Ausella Roe (Dwarf Weed)\n\n"
                           "Herbs. Leaves opposite,\n"
                           "flowers small.\n\n"
                           "1. Flowers white ..... A. fusa\n"
                           "1. Flowers yellow ..... A. gusa\n"),
            "= 1. Ausella Roe (Dwarf Weed)\n"
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, AGenusOfOneSpeciesHasNoKey) {
  EXPECT_EQ(sketch_by_part("6. Ausella Roe\n\n"
                           "1 Flowers white ..... A. fusa\n"
                           "1* Flowers yellow ..... A. gusa\n\n"
                           "7. Busella Dorn\n\n"
                           "Herbs. One species of the marshes, B. husa.\n\n"
                           "8. Cusella Roe\n\n"
                           "1 Sepals long ..... C. lusa\n"
                           "1* Sepals short ..... C. musa\n\n"
                           "9. Dusella Dorn\n\n"
                           "Herbs.\n"),
            "= 6. Ausella Roe\n"
            "= 8. Cusella Roe\n"
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1*] Flowers yellow -> Ausella gusa\n"
            "1[1] Sepals long -> Cusella lusa\n"
            "1[1*] Sepals short -> Cusella musa\n");
}

TEST(PrintedBetweenKeys, NumberedTitlesOfKeys) {
  EXPECT_EQ(sketch_by_part("1. Key to flowering plants\n\n"
                           "1. Flowers white ..... Ausella fusa\n"
                           "1. Flowers yellow ..... Ausella gusa\n\n"
                           "2. Key to fruiting plants\n\n"
                           "1. Fruit round ..... Ausella fusa\n"
                           "1. Fruit long ..... Ausella gusa\n"),
            "= 1. Key to flowering plants\n"
            "= 2. Key to fruiting plants\n"
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> Ausella gusa\n"
            "1[1] Fruit round -> Ausella fusa\n"
            "1[1] Fruit long -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, LeadsThatAreNamesAlone) {
  // No count begins behind "2. Ausella Roe": a lead, however bare.
  EXPECT_EQ(sketch("1. Trees\n\n"
                   "2. Leaves opposite ..... Busella fusa\n\n"
                   "2. Leaves alternate ..... Busella gusa\n\n"
                   "1. Shrubs\n\n"
                   "3. Petals red ..... Cusella husa\n\n"
                   "3. Petals white ..... Cusella lusa\n"),
            "1[1] Trees -> 2\n"
            "1[1] Shrubs -> 3\n"
            "2[2] Leaves opposite -> Busella fusa\n"
            "2[2] Leaves alternate -> Busella gusa\n"
            "3[3] Petals red -> Cusella husa\n"
            "3[3] Petals white -> Cusella lusa\n");
}

TEST(PrintedBetweenKeys, AccountsBehindADash) {
  EXPECT_EQ(sketch("1. Flowers white ..... A. fusa\n"
                   "1. Flowers yellow ..... A. gusa\n\n"
                   "1. Ausella fusa Roe – Perennial herb. Woods.\n"
                   "2. Ausella gusa Dorn – Annual herb. Meadows.\n"),
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> Ausella gusa\n");
}

TEST(PrintedBetweenKeys, AccountsOfAKeyWithoutLeaders) {
  EXPECT_EQ(sketch("Ausella Roe\n\n"
                   "1. Flowers white 2\n"
                   "1. Flowers yellow 3\n"
                   "2. Stem hairy A. fusa Roe\n"
                   "2. Stem glabrous A. gusa Dorn\n"
                   "3. Fruit winged A. husa Roe\n"
                   "3. Fruit wingless A. lusa Dorn\n\n"
                   "1. A. fusa Roe; woods; V–VII\n"
                   "2. A. gusa Dorn; meadows; VI\n"
                   "3. A. husa Roe; meadows; VI\n"
                   "4. A. lusa Dorn; walls; VI\n"),
            "1[1] Flowers white -> 2\n"
            "1[1] Flowers yellow -> 3\n"
            "2[2] Stem hairy -> Ausella fusa\n"
            "2[2] Stem glabrous -> Ausella gusa\n"
            "3[3] Fruit winged -> Ausella husa\n"
            "3[3] Fruit wingless -> Ausella lusa\n");
}

TEST(PrintedBetweenKeys, AccountsThatNoBlankLineParts) {
  EXPECT_EQ(sketch("Key to species of Ausella\n\n"
                   "1. Elytra black 2\n"
                   "- Elytra brown Ausella fusa Roe\n"
                   "2. Antennae long Ausella gusa Roe\n"
                   "- Antennae short Ausella husa Dorn\n"
                   "1. Ausella fusa Roe, 1921\n"
                   "Elytra brown. Marshes.\n"
                   "2. Ausella husa Dorn, 1889\n"
                   "Elytra black. Woods.\n"),
            "1[1] Elytra black -> 2\n"
            "1[-] Elytra brown -> Ausella fusa\n"
            "2[2] Antennae long -> Ausella gusa\n"
            "2[-] Antennae short -> Ausella husa\n");
}

TEST(PrintedBetweenKeys, ListsOfSpeciesBehindEachKey) {
  EXPECT_EQ(sketch("Key to species of Ausella\n\n"
                   "1. Elytra black ............................. 2\n"
                   "- Elytra brown .............. Ausella fusa Roe\n"
                   "2. Antennae long ............ Ausella gusa Roe\n"
                   "- Antennae short ............ Ausella husa Dorn\n\n"
                   "1. Ausella fusa Roe, 1921\n"
                   "2. Ausella gusa Roe, 1921\n"
                   "3. Ausella husa Dorn, 1889\n\n"
                   "Key to species of Busella\n\n"
                   "1. Legs long ................................ 2\n"
                   "- Legs short ................ Busella lusa Roe\n"
                   "2. Eyes large ............... Busella musa Roe\n"
                   "- Eyes small ................ Busella nusa Dorn\n\n"
                   "1. Busella lusa Roe, 1904\n"
                   "2. Busella musa Roe, 1921\n"
                   "3. Busella nusa Dorn, 1889\n"),
            "1[1] Elytra black -> 2\n"
            "1[-] Elytra brown -> Ausella fusa\n"
            "2[2] Antennae long -> Ausella gusa\n"
            "2[-] Antennae short -> Ausella husa\n"
            "1[1] Legs long -> 2\n"
            "1[-] Legs short -> Busella lusa\n"
            "2[2] Eyes large -> Busella musa\n"
            "2[-] Eyes small -> Busella nusa\n");
}

constexpr auto kKeyBetween =
    "Key to species of Ausella\n\n"
    "1. Elytra black ............................. 2\n"
    "- Elytra brown .............. Ausella fusa Roe\n"
    "2. Antennae long ............ Ausella gusa Roe\n"
    "- Antennae short ............ Ausella husa Dorn\n";
constexpr auto kItsSketch =
    "= Key to species of Ausella\n"
    "1[1] Elytra black -> 2\n"
    "1[-] Elytra brown -> Ausella fusa\n"
    "2[2] Antennae long -> Ausella gusa\n"
    "2[-] Antennae short -> Ausella husa\n";

class PrintedListsBeforeKeys : public testing::TestWithParam<char const*> {};

TEST_P(PrintedListsBeforeKeys, AreNoKeys) {
  EXPECT_EQ(sketch_by_part(std::string{GetParam()} + "\n\n" + kKeyBetween), kItsSketch);
}

INSTANTIATE_TEST_SUITE_P(
    All, PrintedListsBeforeKeys,
    testing::Values("1. Introduction\n\nThe genus was described by Roe (1921).\n\n"
                    "2. Material and methods\n\nAbout 120 specimens were studied.",
                    "1. Introduction",
                    "References\n\n[1] Roe P. Notes on beetles. Annals 1904;3:12–45.\n"
                    "[2] Dorn J. A new genus. Journal 1921;12:30–41.",
                    "J. Roe & P. Dorn\n\n1 Institute of Beetles, Norvale\n"
                    "2 Museum of Lower Sarn, Sarn",
                    "Important characters:\n1. Tarsi\n2. Eyes\n3. Claws",
                    "Contents\n\n1. Introduction ....... 2\n2. Description ........ 3",
                    "1 genus with 3 species."));

TEST(PrintedBetweenKeys, NumberedSectionsOfAnArticle) {
  EXPECT_EQ(sketch_by_part("1. Introduction\n\n"
                           "The genus was described by Roe (1921).\n\n"
                           "2. Key to species of Ausella\n\n"
                           "1. Elytra black ............................. 2\n"
                           "- Elytra brown .............. Ausella fusa Roe\n"
                           "2. Antennae long ............ Ausella gusa Roe\n"
                           "- Antennae short ............ Ausella husa Dorn\n\n"
                           "3. Discussion\n\n"
                           "The species are rare.\n"),
            "= 2. Key to species of Ausella\n"
            "1[1] Elytra black -> 2\n"
            "1[-] Elytra brown -> Ausella fusa\n"
            "2[2] Antennae long -> Ausella gusa\n"
            "2[-] Antennae short -> Ausella husa\n");
}

TEST(PrintedBetweenKeys, AListBetweenKeysWithoutLeaders) {
  EXPECT_EQ(sketch("Key to species of Ausella\n\n"
                   "1. Elytra black 2\n"
                   "- Elytra brown 3\n"
                   "2. Antennae long Ausella fusa Roe\n"
                   "- Antennae short Ausella gusa Dorn\n"
                   "3. Pronotum wide Ausella husa Roe\n"
                   "- Pronotum narrow Ausella lusa Roe\n\n"
                   "The genus Busella differs in the following:\n\n"
                   "1. Tarsi five-segmented.\n"
                   "2. Eyes large.\n"
                   "3. Claws simple.\n\n"
                   "Key to species of Busella\n\n"
                   "1. Head red Busella musa Roe\n"
                   "- Head yellow 2\n"
                   "2. Legs long Busella nusa Roe\n"
                   "- Legs short Busella rusa Dorn\n"),
            "1[1] Elytra black -> 2\n"
            "1[-] Elytra brown -> 3\n"
            "2[2] Antennae long -> Ausella fusa\n"
            "2[-] Antennae short -> Ausella gusa\n"
            "3[3] Pronotum wide -> Ausella husa\n"
            "3[-] Pronotum narrow -> Ausella lusa\n"
            "1[1] Head red -> Busella musa\n"
            "1[-] Head yellow -> 2\n"
            "2[2] Legs long -> Busella nusa\n"
            "2[-] Legs short -> Busella rusa\n");
}

TEST(PrintedBetweenKeys, AListOfSpeciesBetweenKeysWithoutLeaders) {
  EXPECT_EQ(sketch("Key to species of Ausella\n\n"
                   "1. Elytra black 2\n"
                   "- Elytra brown 3\n"
                   "2. Antennae long Ausella fusa Roe\n"
                   "- Antennae short Ausella gusa Dorn\n"
                   "3. Pronotum wide Ausella husa Roe\n"
                   "- Pronotum narrow Ausella lusa Roe\n\n"
                   "Checklist\n\n"
                   "1. Ausella fusa Roe, 1921\n"
                   "2. Ausella gusa Dorn, 1889\n"
                   "3. Ausella husa Roe, 1904\n"
                   "4. Ausella lusa Roe, 1921\n\n"
                   "Key to species of Busella\n\n"
                   "1. Head red Busella musa Roe\n"
                   "- Head yellow 2\n"
                   "2. Legs long Busella nusa Roe\n"
                   "- Legs short Busella rusa Dorn\n"),
            "1[1] Elytra black -> 2\n"
            "1[-] Elytra brown -> 3\n"
            "2[2] Antennae long -> Ausella fusa\n"
            "2[-] Antennae short -> Ausella gusa\n"
            "3[3] Pronotum wide -> Ausella husa\n"
            "3[-] Pronotum narrow -> Ausella lusa\n"
            "1[1] Head red -> Busella musa\n"
            "1[-] Head yellow -> 2\n"
            "2[2] Legs long -> Busella nusa\n"
            "2[-] Legs short -> Busella rusa\n");
}

TEST(PrintedBetweenKeys, HeadingsBehindASerialKey) {
  EXPECT_EQ(sketch("1 (4) Elytra black.\n"
                   "2 (3) Antennae long. Ausella fusa Roe\n"
                   "3 (2) Antennae short. Ausella gusa Roe\n"
                   "4 (1) Elytra brown.\n"
                   "5 (6) Pronotum wide. Ausella husa Dorn\n"
                   "6 (5) Pronotum narrow. Ausella lusa Roe\n\n"
                   "4 Discussion\n\n"
                   "The key was tested.\n\n"
                   "5 Acknowledgements\n\n"
                   "We thank P. Dorn.\n"),
            "1[1] Elytra black. -> 2\n"
            "1[4] Elytra brown. -> 5\n"
            "2[2] Antennae long. -> Ausella fusa\n"
            "2[3] Antennae short. -> Ausella gusa\n"
            "5[5] Pronotum wide. -> Ausella husa\n"
            "5[6] Pronotum narrow. -> Ausella lusa\n");
}

TEST(PrintedBetweenKeys, ALeadSetApartIsNoList) {
  // Blank lines around the first of three rivals; and an indented key, whose numbers stand once
  // before they come back.
  EXPECT_EQ(sketch("1. Tail long ..... Ausella fusa\n\n"
                   "1. Tail short ..... Ausella gusa\n\n"
                   "1. Tail none ..... 2\n\n"
                   "2. Legs red ..... Ausella husa\n\n"
                   "2. Legs black ..... Ausella lusa\n"),
            "1[1] Tail long -> Ausella fusa\n"
            "1[1] Tail short -> Ausella gusa\n"
            "1[1] Tail none -> 2\n"
            "2[2] Legs red -> Ausella husa\n"
            "2[2] Legs black -> Ausella lusa\n");
  EXPECT_EQ(sketch("1. Trees\n"
                   "  2. Leaves opposite ..... Busella fusa\n"
                   "  2. Leaves alternate ..... Busella gusa\n\n"
                   "1. Shrubs\n"
                   "  3. Petals red ..... Cusella husa\n"
                   "  3. Petals white ..... Cusella lusa\n"),
            "1[1] Trees -> 2\n"
            "1[1] Shrubs -> 3\n"
            "2[2] Leaves opposite -> Busella fusa\n"
            "2[2] Leaves alternate -> Busella gusa\n"
            "3[3] Petals red -> Cusella husa\n"
            "3[3] Petals white -> Cusella lusa\n");
}

class PrintedDashesBehindKeys : public testing::TestWithParam<char const*> {};

TEST_P(PrintedDashesBehindKeys, AreNoLeads) {
  auto const text = std::string{kKeyBetween} + "\n" + GetParam() + "\n";
  EXPECT_EQ(sketch_by_part(text), kItsSketch);
  EXPECT_EQ(sketch_by_part(text + "\nKey to species of Busella\n\n"
                                  "1. Legs long ................ Busella musa Roe\n"
                                  "- Legs short ............... Busella nusa Dorn\n"),
            "= Key to species of Ausella\n= Key to species of Busella\n" +
                std::string{kItsSketch}.substr(28) +
                "1[1] Legs long -> Busella musa\n"
                "1[-] Legs short -> Busella nusa\n");
}

INSTANTIATE_TEST_SUITE_P(All, PrintedDashesBehindKeys,
                         testing::Values("References\n\n"
                                         "Roe, P. 1904. Notes on beetles. Annals 3: 12.\n"
                                         "- 1906. More notes on beetles. Annals 5: 1.",
                                         "The genus Busella differs:\n"
                                         "- tarsi five-segmented;\n"
                                         "- eyes large.",
                                         "The groups of species are:\n\n"
                                         "- the fusa group: A. fusa, A. gusa;\n"
                                         "- the husa group: A. husa."));

TEST(PrintedBetweenKeys, AThirdLeadBehindAPagesHeadIsALead) {
  EXPECT_EQ(sketch("1. Elytra black ............................. 2\n"
                   "- Elytra brown .............. Ausella fusa Roe\n"
                   "2. Antennae long ............ Ausella gusa Roe\n"
                   "- Antennae short ............ Ausella husa Dorn\n\n"
                   "AUSELLIDAE\n\n"
                   "- Antennae none ............. Ausella lusa Dorn\n"),
            "1[1] Elytra black -> 2\n"
            "1[-] Elytra brown -> Ausella fusa\n"
            "2[2] Antennae long -> Ausella gusa\n"
            "2[-] Antennae short -> Ausella husa\n"
            "2[-] Antennae none -> Ausella lusa\n");
}

TEST(PrintedBetweenKeys, AccountsOfSubspecies) {
  EXPECT_EQ(sketch_by_part(std::string{kKeyBetween} + "\n4a. Ausella fusa fusa Roe, 1921\n\n"
                                                      "Tarsi red.\n\n"
                                                      "4b. Ausella fusa minor Dorn, 1930\n\n"
                                                      "Tarsi yellow.\n"),
            kItsSketch);
}

TEST(PrintedBetweenKeys, SynonymsBeneathLeads) {
  EXPECT_EQ(sketch("1. Flowers white ..... Ausella fusa\n"
                   "Syn.: A. minor Roe, A. parva auct.\n"
                   "1. Flowers yellow ..... 2\n"
                   "2. Leaves ovate ..... Ausella gusa\n"
                   "Syn.: A. major Roe, A. lata auct.\n"
                   "2. Leaves linear ..... Ausella husa\n"
                   "Syn.: A. media Roe, A. stricta auct.\n"),
            "1[1] Flowers white -> Ausella fusa\n"
            "1[1] Flowers yellow -> 2\n"
            "2[2] Leaves ovate -> Ausella gusa\n"
            "2[2] Leaves linear -> Ausella husa\n");
}

// "Host: …" beneath every species is said of it, and is no third lead.
TEST(PrintedNotes, OfOneKindBeneathEachSpecies) {
  for (auto const* head : {"Host", "Distribution", "Type species", "Included species"}) {
    std::string const note = std::string{head} + ": ";
    auto const edition = read_key("Key to species\n\n1 Wings clear … Aus bus\n" + note +
                                  "Fagella alba.\n– Wings dark … 2\n2 Legs long … Aus cus\n" +
                                  note + "Fagella nigra.\n– Legs short … Aus dus\n" + note +
                                  "Fagella alba, Quercella nigra.\n")
                             .edition;
    EXPECT_EQ(sketch(edition),
              "1[1] Wings clear -> Aus bus\n1[–] Wings dark -> 2\n"
              "2[2] Legs long -> Aus cus\n2[–] Legs short -> Aus dus\n")
        << head;
  }
}

TEST(PrintedBetweenKeys, GroupsOfOtherTongues) {
  for (std::string const group : {"Skupina", "Grupa", "Grupp", "Groep", "Gruppo"}) {
    auto const text =
        "1 Legs red ..... " + group + " A\n– Legs black ..... " + group + " B\n\n" + group +
        " A\n\n1 Head red ..... Ausella busa\n– Head black ..... Ausella cusa\n\n" + group +
        " B\n\n1 Wings red ..... Ausella dusa\n– Wings black ..... Ausella fusa\n";
    EXPECT_NE(sketch(text).find("Legs red -> key: " + group + " A\n"), std::string::npos)
        << sketch(text);
  }
}

TEST(PrintedBetweenKeys, KeysThatAreNumberedAsChaptersNumberThem) {
  EXPECT_EQ(sketch("Key 4.1. Lizard genera\n"
                   "1. Scales smooth ..... Galeodrex\n"
                   "– Scales keeled (this thesis; Table 4.1) ..... see Key 4.2\n\n"
                   "Key 4.2. Species of Rugoscincus on the plateau\n"
                   "Juveniles cannot be keyed.\n"
                   "1. Supranasals in contact ..... Rugoscincus exilipes\n"
                   "– Supranasals apart ..... R. lateralior\n"),
            "1[1] Scales smooth -> Galeodrex\n"
            "1[–] Scales keeled (this thesis; Table 4.1) -> key: Key 4.2. Species of Rugoscincus "
            "on the plateau\n"
            "1[1] Supranasals in contact -> Rugoscincus exilipes\n"
            "1[–] Supranasals apart -> Rugoscincus lateralior\n");
}

TEST(PrintedBetweenKeys, CitedGenusAboveAnOutline) {
  EXPECT_EQ(sketch("6. Stachyella Roe Syn. II. (1822) 39. — Busella § 2.\n"
                   "\n"
                   "Flores regulares. Petala sub disci margine inserta.\n"
                   "\n"
                   "Clavis specierum.\n"
                   "\n"
                   "A. Folia opposita.\n"
                   "\n"
                   "1. Petioli 3—5 cm longi. Flores albi. 1. S. laxa.\n"
                   "\n"
                   "2. Sepala obtusa, petalis triplo breviora. 2. S. tomentosa.\n"
                   "\n"
                   "B. Folia alterna.\n"
                   "\n"
                   "1. Sepala acuta, petalis aequilonga. 3. S. dentata.\n"
                   "\n"
                   "2. Sepala obtusa, petalis breviora.\n"
                   "\n"
                   "* Folia lanceolata 4. S. lanceolata.\n"
                   "\n"
                   "** Folia obovata 5. S. obovata.\n"),
            "1[A] Folia opposita. -> 2\n"
            "1[B] Folia alterna. -> 3\n"
            "2[1] Petioli 3—5 cm longi. Flores albi. -> Stachyella laxa\n"
            "2[2] Sepala obtusa, petalis triplo breviora. -> Stachyella tomentosa\n"
            "3[1] Sepala acuta, petalis aequilonga. -> Stachyella dentata\n"
            "3[2] Sepala obtusa, petalis breviora. -> 4\n"
            "4[*] Folia lanceolata -> Stachyella lanceolata\n"
            "4[**] Folia obovata -> Stachyella obovata\n");
}

TEST(PrintedBetweenKeys, ATitleOverThreeLinesAsWebPagesSetIt) {
  EXPECT_EQ(sketch_by_part("Key to males\n1. Wings clear ..... Ausella alba\n"
                           "- Wings dark ..... Ausella nigra\n\n"
                           "Key to females of\nAusella\nfrom Temaru Island\n\n"
                           "Females of A. rubra are unknown.\n\n"
                           "1. Wings clear ..... Ausella alba\n- Wings dark ..... Ausella nigra\n"),
            "= Key to males\n"
            "= Key to females of Ausella from Temaru Island\n"
            "1[1] Wings clear -> Ausella alba\n"
            "1[-] Wings dark -> Ausella nigra\n"
            "1[1] Wings clear -> Ausella alba\n"
            "1[-] Wings dark -> Ausella nigra\n");
}

}  // namespace
}  // namespace keydrift

// The taxa that leads end in: remarks, marks of new names, sexes, genera from titles, capitals.

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::led_to;
using test::read_key;
using test::sketch;
using Lines = std::vector<std::string>;

std::string author_of_second(std::string_view destination) {
  auto const text = "1. Wings clear ..... Zus yus\n– Wings dark ..... " + std::string{destination} +
                    "\n2. Legs pale ..... Aus bus\n– Legs dark ..... Aus cus\n";
  auto const edition = read_key(text).edition;
  return edition.taxa.at(1).authorship;
}

TEST(PrintedNames, PartsOfATaxonAreRemarksInEveryLanguage) {
  for (std::string const words :
       {"in part", "(part)", "[part]", "pars", "p.p.", "p. p.", "partim", "pro parte", "z. T.",
        "en partie", "(en parte)", "em parte", "in parte", "deels"}) {
    auto const found = led_to("Aus dus " + words);
    EXPECT_EQ(found.substr(0, 9), "Aus dus (") << words;
  }
}

TEST(PrintedNames, MarksOfNewNamesAreRemarks) {
  for (std::string const words : {"sp. n.", "sp. nov.", "n. sp.", "nov. sp.", "stat. rev.",
                                  "comb. n.", "comb. nov.", "syn. n."}) {
    EXPECT_EQ(led_to("Aus dus " + words), "Aus dus (" + words + ")");
  }
  EXPECT_EQ(led_to("Aus dus (Roe, 1900), comb. n."), "Aus dus (comb. n.)");
}

TEST(PrintedNames, LimitsAndDoubtsBelongToTheName) {
  for (std::string const name :
       {"Aus dus agg.", "Aus cf. dus", "Aus aff. dus", "Aus sp. A", "?Aus dus", "Aus × dus",
        "Aus sp. aff. dus", "Aus sp. nov. 1", "Aus sp. n. B", "Aus n. sp. 2", "Aus type A",
        "Aus morphospecies 2", "Aus sp. “Dark Tarn”", "Aus sp. 'Tarn'", "Aus sp. \"Tarn Hill\""}) {
    EXPECT_EQ(led_to(name), name);
  }
  EXPECT_EQ(led_to("Aus sp. 'Tarn"), "Aus sp. ('Tarn)");  // a quotation that does not end
  // How wide the name is meant goes beside it.
  EXPECT_EQ(led_to("Aus dus s.l."), "Aus dus (s.l.)");
  EXPECT_EQ(led_to("Aus dus s. str."), "Aus dus (s. str.)");
}

TEST(PrintedNames, GroupsBehindAnAuthorBelongToTheName) {
  EXPECT_EQ(led_to("Aus dus (Roe) complex"), "Aus dus complex");
  EXPECT_EQ(author_of_second("Aus dus (Roe) complex"), "(Roe)");
  EXPECT_EQ(led_to("Aus dus Roe group (Fig. 3)"), "Aus dus group");
  EXPECT_EQ(led_to("Aus dus Roe species complex"), "Aus dus species complex");
  EXPECT_EQ(led_to("Aus dus species group"), "Aus dus species group");
  // What is said of the name is no part of it.
  EXPECT_EQ(led_to("Aus dus Roe, complex in the south"), "Aus dus (complex in the south)");
  EXPECT_EQ(led_to("Aus dus Roe (complex)"), "Aus dus (complex)");
}

TEST(PrintedNames, VarietiesAtOneEndAreTaxaOfOneSpecies) {
  EXPECT_EQ(led_to("Aus dus (Roe) Dorn var. dus et var. fus Dorn"),
            "Aus dus var. dus + Aus dus var. fus");
  EXPECT_EQ(led_to("Aus dus subsp. dus or subsp. fus"), "Aus dus subsp. dus + Aus dus subsp. fus");
  EXPECT_EQ(led_to("Aus dus var. gus Roe, var. fus Roe"), "Aus dus var. gus + Aus dus var. fus");
  EXPECT_EQ(led_to("Aus dus subsp. dus et var. fus"), "Aus dus subsp. dus + Aus dus var. fus");
  EXPECT_EQ(led_to("Aus dus subsp. gus var. fus and var. hus"),
            "Aus dus subsp. gus var. fus + Aus dus subsp. gus var. hus");
  // One name, and a species with a variety of it.
  EXPECT_EQ(led_to("Aus dus Roe, subsp. gus Dorn"), "Aus dus subsp. gus");
  EXPECT_EQ(led_to("Aus dus subsp. gus, var. fus"), "Aus dus subsp. gus (var. fus)");
  EXPECT_EQ(led_to("Aus dus Roe, et var. fus Dorn"), "Aus dus (et var. fus Dorn)");
}

TEST(PrintedNames, CommonNamesStandBeforeLatinOnesInBrackets) {
  EXPECT_EQ(led_to("Lake Bat or Common Bat (Aus dus, A. fus), hardly told apart"),
            "Aus dus + Aus fus (Lake Bat or Common Bat; hardly told apart)");
  EXPECT_EQ(led_to("beet worm (Aus dus) or stained worm (Aus fus)"),
            "Aus dus + Aus fus (beet worm or stained worm)");
  // Names beside the one of the lead, and one common name.
  EXPECT_EQ(led_to("Aus dus or Aus fus (Bus gus, Bus hus)"),
            "Aus dus + Aus fus (Bus gus, Bus hus)");
  EXPECT_EQ(led_to("Lake Bat (Aus dus)"), "Aus dus (Lake Bat)");
}

TEST(PrintedNames, SexesAndPlacesInBracketsAreNoAuthors) {
  EXPECT_EQ(led_to("Aus dus (Weibchen)"), "Aus dus (Weibchen)");
  EXPECT_EQ(author_of_second("Aus dus (Weibchen)"), "");
  EXPECT_EQ(led_to("Aus dus Roe (Halvern Basin, fens)"), "Aus dus (Halvern Basin, fens)");
  EXPECT_EQ(author_of_second("Aus dus Roe (Halvern Basin, fens)"), "Roe");
  EXPECT_EQ(author_of_second("Aus dus (Roe, 1900)"), "(Roe, 1900)");
  EXPECT_EQ(author_of_second("Aus dus (L.) Roe (1900)"), "(L.) Roe (1900)");
  EXPECT_EQ(led_to("Aus dus Roe — Halvern, Orm"), "Aus dus (Halvern, Orm)");
}

TEST(PrintedNames, CapitalsAndLigaturesAreSetAsNamesAre) {
  EXPECT_EQ(led_to("AUS DUS Roe"), "Aus dus");
  EXPECT_EQ(author_of_second("AUS DUS Roe"), "Roe");
  EXPECT_EQ(led_to("AUSIDAE"), "Ausidae");
  EXPECT_EQ(led_to("TRIALCIS Roe (p. 31)"), "Trialcis (p. 31)");
  EXPECT_EQ(led_to("Aus \uFB02avus"), "Aus flavus");
}

TEST(PrintedNames, VernacularNamesBeforeTheNameAreRemarks) {
  for (std::string const words :
       {"Dwarf Mouse Aus dus", "Fool's Marshwort (Aus dus)", "Marshwort, Aus dus",
        "Kleine Weidrute – Aus dus", "Pine warbler Aus dus"}) {
    EXPECT_EQ(led_to(words).substr(0, 9), "Aus dus (") << words;
  }
  EXPECT_EQ(led_to("Dwarf Mouse Aus dus"), "Aus dus (Dwarf Mouse)");
  EXPECT_EQ(led_to("Marshwort (Aus dus) – POISONOUS"), "Aus dus (Marshwort; POISONOUS)");
  EXPECT_EQ(led_to("Family Ausidae"), "Ausidae (Family)");
  // A name with a name's author is no vernacular one, and "Grey Warbler" is no name in Latin.
  EXPECT_EQ(led_to("Dusus Smith"), "Dusus");
  EXPECT_EQ(led_to("Grey Warbler"), "Grey Warbler");
}

TEST(PrintedNames, ListsOfGeneraAreToldFromAuthors) {
  EXPECT_EQ(led_to("Dusus Roe & Dorn"), "Dusus");
  EXPECT_EQ(led_to("Dusus Dorn & Lund, 2001"), "Dusus");
  EXPECT_EQ(led_to("Dusus Roe and Eusus Dorn"), "Dusus + Eusus");
  EXPECT_EQ(led_to("Dusus, Eusus"), "Dusus + Eusus");
  EXPECT_EQ(led_to("DUSIDAE (p. 6) and EUSIDAE (p. 9)"), "Dusidae + Eusidae (p. 6; p. 9)");
  EXPECT_EQ(led_to("9. Dusus or 10. Eusus"), "Dusus + Eusus");
  EXPECT_EQ(led_to("Dusus Roe, Eusus Dorn"), "Dusus + Eusus");
  EXPECT_EQ(led_to("DUSIDAE: Eusus Dorn"), "Eusus (DUSIDAE)");
}

TEST(PrintedNames, NumbersSubgeneraAndUnnamedSpeciesGoWithShortGenera) {
  EXPECT_EQ(led_to("2a. A. dus var. dus"), "Aus dus var. dus");
  EXPECT_EQ(led_to("A. (Xus) dus"), "Aus (Xus) dus");
  EXPECT_EQ(led_to("A. (s. str.) dus Roe"), "Aus (s. str.) dus");
  EXPECT_EQ(led_to("A. sp. 1"), "Aus sp. 1");
  EXPECT_EQ(led_to("A. sp. aff. dus"), "Aus sp. aff. dus");
  EXPECT_EQ(led_to("A. DUS Roe"), "Aus dus");
  EXPECT_EQ(led_to("[A. dus]"), "Aus dus");
}

TEST(PrintedNames, EpithetsAloneTakeTheTitlesGenus) {
  EXPECT_EQ(sketch("Key to the species of Aus\n\n"
                   "1. Wings clear. 2.\n   Wings dark. bus Roe.\n"
                   "2. Legs pale. cus n. sp.\n   Legs dark. 3.\n"
                   "3. Head red      dus subsp. eus\n   Head black      fus (p. 12)\n"),
            "1[1] Wings clear. -> 2\n1[] Wings dark. -> Aus bus\n"
            "2[2] Legs pale. -> Aus cus (n. sp.)\n2[] Legs dark. -> 3\n"
            "3[3] Head red -> Aus dus subsp. eus\n3[] Head black -> Aus fus (p. 12)\n");
  EXPECT_EQ(sketch("Key to the subspecies of Aus bus\n\n1. Wings clear ..... A. b. cus\n"
                   "– Wings dark ..... A. b. bus\n"),
            "1[1] Wings clear -> Aus bus cus\n1[–] Wings dark -> Aus bus bus\n");
}

TEST(PrintedNames, ShortEpithetsStandForTheSpeciesBefore) {
  EXPECT_EQ(sketch("1. Wings clear ..... Aus bus bus\n– Wings dark ..... 2\n"
                   "2. Legs pale ..... A. b. cus Roe\n– Legs dark ..... subsp. dus\n"),
            "1[1] Wings clear -> Aus bus bus\n1[–] Wings dark -> 2\n"
            "2[2] Legs pale -> Aus bus cus\n2[–] Legs dark -> Aus bus subsp. dus\n");
}

TEST(PrintedNames, TheTitleGivesTheGenus) {
  for (std::string const title : {"Key to the species of Tambora", "KEY TO THE SPECIES OF TAMBORA",
                                  "TAMBORA.", "TABLE OF SPECIES OF TAMBORA ROE, 1902 (IMAGINES)",
                                  "Schlüssel der Tambora-Arten", "Tambora in the Outer Marches"}) {
    auto const text = title +
                      "\n\n1. Wings clear ..... T. bus\n– Wings dark ..... 2\n"
                      "2. Legs pale ..... cus Roe\n– Legs dark ..... 7. dus\n";
    EXPECT_EQ(sketch(text),
              "1[1] Wings clear -> Tambora bus\n1[–] Wings dark -> 2\n"
              "2[2] Legs pale -> Tambora cus\n2[–] Legs dark -> Tambora dus\n")
        << title;
  }
}

TEST(PrintedNames, TheGenusOfATitleIsTheWordThatIsAnnounced) {
  auto const key =
      "1. Alae hyalinae ..... A. bus\n– Alae fuscae ..... 2\n"
      "2. Pedes pallidi ..... A. cus\n– Pedes atri ..... A. dus\n";
  for (std::string const title :
       {"CLAVE PARA LAS ESPECIES DE AUSA", "Clavis sectionis Busa generis Ausa",
        "Marina plants: key to the genus Ausa", "Chave para as espécies de Ausa"}) {
    EXPECT_EQ(read_key(title + "\n\n" + key).edition.taxa.front().name, "Ausa bus") << title;
  }
}

TEST(PrintedNames, TheNamesOfTheKeyGoBeforeItsTitle) {
  EXPECT_EQ(sketch("Key to the Tamboridae\n\n1. Wings clear ..... Tus bus\n– Wings dark ..... 2\n"
                   "2. Legs pale ..... T. cus\n– Legs dark ..... T. dus\n"),
            "1[1] Wings clear -> Tus bus\n1[–] Wings dark -> 2\n"
            "2[2] Legs pale -> Tus cus\n2[–] Legs dark -> Tus dus\n");
}

TEST(PrintedNames, SentencesInLatinFormAreNoNames) {
  EXPECT_EQ(sketch("1. Wings clear; Leaves alternate\n– Wings dark ..... 2\n"
                   "2. Legs pale ..... Aus bus\n– Legs dark ..... Aus cus\n"),
            "1[1] Wings clear; Leaves alternate -> ?\n1[–] Wings dark -> 2\n"
            "2[2] Legs pale -> Aus bus\n2[–] Legs dark -> Aus cus\n");
}

TEST(PrintedNames, HybridsMayBearTheLetterForTheSign) {
  EXPECT_EQ(led_to("Aus x dus"), "Aus x dus");
  EXPECT_EQ(led_to("A. x dus Roe"), "Aus x dus");
}

TEST(PrintedNames, DigitsThatWereRaisedAreNoPartOfAName) {
  EXPECT_EQ(led_to("Dusus2 Roe"), "Dusus (2)");
  EXPECT_EQ(author_of_second("Dusus2 Roe"), "Roe");
  EXPECT_EQ(led_to("Aus duus1"), "Aus duus (1)");
  EXPECT_EQ(led_to("Aus sp1"), "Aus sp1");
}

TEST(PrintedNames, WordsMayStandBetweenSpeciesOfOneGenus) {
  EXPECT_EQ(led_to("Marsh Mouse Aus dus (p. 24) or, in the far north only, Arctic Mouse A. eus"),
            "Aus dus + Aus eus (Marsh Mouse; p. 24 in the far north only Arctic Mouse)");
  EXPECT_EQ(led_to("Aus dus and compare with A. cus"), "Aus dus (and compare with A. cus)");
}

// A key whose leads end in names that nothing but a blank sets apart, and one lead more.
std::string unled(std::string_view lead) {
  auto const text =
      "1 Wings clear 2\n– Wings dark 3\n2 Legs pale Ausella buta\n– Legs dark "
      "Ausella cuta\n3 Head red Ausella duta\n– " +
      std::string{lead} + "\n";
  auto const whole = sketch(text);
  return whole.substr(whole.find("3[–]") + 7);
}

TEST(PrintedNames, AGenusOfOtherLeadsTellsItsSpecies) {
  EXPECT_EQ(unled("Head with one ocellus Ausella dispar"),
            "Head with one ocellus -> Ausella dispar\n");
  EXPECT_EQ(unled("Parasite of leaf-mining Nepta on Quercia Ausella crassifemur Roe"),
            "Parasite of leaf-mining Nepta on Quercia -> Ausella crassifemur\n");
  EXPECT_EQ(unled("Head black, with setae as in Ausella dispar"),
            "Head black, with setae as in Ausella dispar -> ?\n");
}

TEST(PrintedNames, AnAuthorWithTheYearTellsANameFromWords) {
  EXPECT_EQ(unled("Head with one ocellus Busella dispar Roe, 1901"),
            "Head with one ocellus -> Busella dispar\n");
  EXPECT_EQ(unled("Head with one ocellus Busella cf. duta"),
            "Head with one ocellus -> Busella cf. duta\n");
}

TEST(PrintedNames, ListsBeginWithTheirFirstSpecies) {
  EXPECT_EQ(unled("Head with 3 setae A. euta Roe, A. fulta Dorn (compare the eyes, table 2)"),
            "Head with 3 setae -> Ausella euta + Ausella fulta (compare the eyes, table 2)\n");
  EXPECT_EQ(unled("Antennae pale, A. euta Roe, A. fulta Dorn"),
            "Antennae pale, -> Ausella euta + Ausella fulta\n");
}

TEST(PrintedNames, AuthorsWithTheYearMayStandOnTheNextLine) {
  auto const text = std::string{"1 Wings clear 2\n– Wings dark Aus eus\n"} +
                    "2 Legs pale Aus bus\nRoe & Dorn, 2013\n– Legs dark Aus cus (Dorn,\n1844)\n";
  auto const edition = read_key(text).edition;
  EXPECT_EQ(edition.taxa.at(1).authorship, "Roe & Dorn, 2013");
  EXPECT_EQ(edition.taxa.at(2).authorship, "(Dorn, 1844)");
  EXPECT_TRUE(edition.notes.empty());
}

TEST(PrintedNames, SignsBeforeANameAreRemarks) {
  EXPECT_EQ(led_to("*Aus dus"), "Aus dus (*)");
  EXPECT_EQ(led_to("† Aus dus Roe"), "Aus dus (†)");
  EXPECT_EQ(led_to("* duus L."), "Zus duus (*)");
  EXPECT_EQ(unled("Head black *Ausella futa"), "Head black -> Ausella futa (*)\n");
  EXPECT_EQ(unled("Head black † Ausella futa"), "Head black -> Ausella futa (†)\n");
  EXPECT_EQ(unled("Head black ?Ausella futa"), "Head black -> ?Ausella futa\n");
}

TEST(PrintedNames, CrossesOfTwoSpeciesAreOneName) {
  EXPECT_EQ(led_to("Aus dus × Aus eus"), "Aus dus × Aus eus");
  EXPECT_EQ(led_to("\"Aus species A\"."), "Aus species A");
  EXPECT_EQ(led_to("(Aus dus)"), "Aus dus");
  EXPECT_EQ(author_of_second("Aus dus Roe et al., 1901"), "Roe et al., 1901");
}

TEST(PrintedNames, VernacularNamesMayStandBeforeABracketAlone) {
  EXPECT_EQ(unled("Tail forked, Marsh Tern (Busella futa)"),
            "Tail forked, Marsh Tern -> Busella futa\n");
  EXPECT_EQ(unled("Tail forked as in terns (Busella futa)"),
            "Tail forked as in terns (Busella futa) -> ?\n");
}

TEST(PrintedNames, GeneraThatNothingSetsApartMayBearRemarks) {
  EXPECT_EQ(
      sketch("1 Antennae long 2\n– Antennae short Busarius gen. et sp. nov.\n2 Elytra long 3\n"
             "– Elytra short Cusarius Dorn, 1899 (1 species)\n3 Legs red Ausarius Roe (in "
             "part)\n– Legs black Dusarius Lund [= Eusarius Dorn]\n"),
      "1[1] Antennae long -> 2\n1[–] Antennae short -> Busarius (gen. et sp. nov.)\n"
      "2[2] Elytra long -> 3\n2[–] Elytra short -> Cusarius (1 species)\n"
      "3[3] Legs red -> Ausarius (in part)\n3[–] Legs black -> Dusarius (= Eusarius Dorn)\n");
}

TEST(PrintedNames, PointersMayBearSignsAndPages) {
  EXPECT_EQ(sketch("1) Hair long, see 3)\n1) Hair short: go to #2\n2) Nose red: Aus bus\n"
                   "2) Nose blue, go to 3 (p. 23)\n3) Ear large: Aus cus\n3) Ear small: Aus dus\n"),
            "1[1] Hair long, -> 3\n1[1] Hair short -> 2\n2[2] Nose red -> Aus bus\n"
            "2[2] Nose blue, -> 3\n3[3] Ear large -> Aus cus\n3[3] Ear small -> Aus dus\n");
}

TEST(PrintedNames, NumbersOfSpeciesMayStandBeforeEpithets) {
  auto const text = sketch(
      "14. Pelaria Roe\n\n1 Mericarps winged\n2 Scape simple 1. alpina\n2 Scape branched 2. "
      "tuberosa\n"
      "1 Mericarps not winged\n3 Sepals long; petals 3 7. palustris\n3 Sepals short (11-13). chia "
      "group\n");
  EXPECT_EQ(text,
            "1[1] Mericarps winged -> 2\n1[1] Mericarps not winged -> 3\n"
            "2[2] Scape simple -> Pelaria alpina\n2[2] Scape branched -> Pelaria tuberosa\n"
            "3[3] Sepals long; petals 3 -> Pelaria palustris\n"
            "3[3] Sepals short -> Pelaria chia group\n");
  EXPECT_EQ(led_to("17.–19. Aus dus agg."), "Aus dus agg.");
}

TEST(PrintedNames, EpithetsAndCodesOfManyKinds) {
  EXPECT_EQ(led_to("dusa, eusa"), "Zus dusa + Zus eusa");
  EXPECT_EQ(led_to("A. dus coll. (see part 2)"), "Aus dus coll. (see part 2)");
  EXPECT_EQ(led_to("Aus sp. CO-03"), "Aus sp. CO-03");
  EXPECT_EQ(led_to("²A. dus"), "Aus dus (²)");
  EXPECT_EQ(led_to("Savanna bont tick (Aus dus)"), "Aus dus (Savanna bont tick)");
  EXPECT_EQ(led_to("Wood ticks (Dusus spp.) – rare"), "Dusus spp. (Wood ticks; rare)");
  EXPECT_EQ(led_to("Dusella Roe (D. nana only)"), "Dusella (D. nana only)");
}

TEST(PrintedNames, EpithetsMayStandBehindTwoLowLines) {
  EXPECT_EQ(
      sketch("Key to the species of Pelaria\n\n1. Shell smooth__dusa, p. 4.\n1. Shell ribbed___2\n"
             "2. Lip thin___eusa, p. 5.\n2. Lip thick and\n   white\n   fusa, p. 6.\n"),
      "1[1] Shell smooth -> Pelaria dusa (p. 4.)\n1[1] Shell ribbed -> 2\n"
      "2[2] Lip thin -> Pelaria eusa (p. 5.)\n"
      "2[2] Lip thick and white -> Pelaria fusa (p. 6.)\n");
}

TEST(PrintedNames, SentencesBehindTwoBlanksAreNoNames) {
  EXPECT_EQ(sketch("1. Spine large, seen from above.  Eyes retractile\n   -----------Ausella buta\n"
                   "1. Spine small.  Ausella cuta\n"),
            "1[1] Spine large, seen from above. Eyes retractile -> Ausella buta\n"
            "1[1] Spine small. -> Ausella cuta\n");
}

TEST(PrintedNames, AuthorsBehindCommasTellEpithets) {
  EXPECT_EQ(sketch("Ausella Roe\n\n"
                   "1. Legs red 2\n"
                   "Legs black 3\n\n"
                   "2. Head wide, the cheeks smooth busa, Roe.\n"
                   "Head narrow, the cheeks hairy cusa, Dorn-Hall.\n\n"
                   "3. Wings clear beneath dusalis, Roe.\n"
                   "Wings dark beneath fusula, Dorn-Hall.\n"),
            "1[1] Legs red -> 2\n"
            "1[] Legs black -> 3\n"
            "2[2] Head wide, the cheeks smooth -> Ausella busa\n"
            "2[] Head narrow, the cheeks hairy -> Ausella cusa\n"
            "3[3] Wings clear beneath -> Ausella dusalis\n"
            "3[] Wings dark beneath -> Ausella fusula\n");
}

TEST(PrintedNames, AnAnnouncedGenusIsTheKeysOwn) {
  EXPECT_EQ(sketch("Contr. Arachnol. Mus. Tessaly 12: 1-88. 1972\n\n"
                   "REVISION OF THE GENUS AUSELLA\n"
                   "(ARANEAE, BUSIDAE)\n\n"
                   "Key to males\n\n"
                   "1. Legs red .......... busa, p. 14\n"
                   "- Legs black .......... cusa, p. 17\n"),
            "1[1] Legs red -> Ausella busa (p. 14)\n"
            "1[-] Legs black -> Ausella cusa (p. 17)\n");
}

TEST(PrintedNames, TheGenusGoesWithItsEpithetWhateverItsEnding) {
  EXPECT_EQ(sketch("1a. Body naked ..... Ausella busa\n"
                   "1b. Body scaled ..... 2\n"
                   "2a. Last ray strong; lateral line of 24 scales Busbarba altior\n"
                   "2b. Last ray feeble; three spots on the flank Busbarba trimaculosus\n"),
            "1[1a] Body naked -> Ausella busa\n"
            "1[1b] Body scaled -> 2\n"
            "2[2a] Last ray strong; lateral line of 24 scales -> Busbarba altior\n"
            "2[2b] Last ray feeble; three spots on the flank -> Busbarba trimaculosus\n");
}

TEST(PrintedNames, AGenusBehindAnElidedArticle) {
  EXPECT_EQ(sketch("CLÉ DES ESPÈCES D'AUSARIA SECTION BUSAE\n\n"
                   "(Chez Ausaria, les spores sont mesurées sans ornement.)\n\n"
                   "1. Chapeau rouge ..... A. busa\n"
                   "1' Chapeau noir ..... A. cusa\n"),
            "1[1] Chapeau rouge -> Ausaria busa\n"
            "1[1'] Chapeau noir -> Ausaria cusa\n");
}

TEST(PrintedNames, NoNameStandsBehindAnArticle) {
  EXPECT_EQ(sketch("Die Arten der Gattung Ausella Roe\n\n"
                   "1 Bohrer kürzer als die Tibia 2\n"
                   "– Bohrer so lang wie die Tibia 3\n"
                   "2 Beine schwarz. 6–8 mm nigripes Roe\n"
                   "– Beine rot. Stirn glatt.\n"
                   "Alpen, oberhalb der Waldgrenze alpicola Roe\n"
                   "3 Flügel klar femoralis Roe\n"
                   "– Flügel trüb. Unter Fichtenrinde albitarsis Roe\n"),
            "1[1] Bohrer kürzer als die Tibia -> 2\n"
            "1[–] Bohrer so lang wie die Tibia -> 3\n"
            "2[2] Beine schwarz. 6–8 mm -> Ausella nigripes\n"
            "2[–] Beine rot. Stirn glatt. Alpen, oberhalb der Waldgrenze -> Ausella alpicola\n"
            "3[3] Flügel klar -> Ausella femoralis\n"
            "3[–] Flügel trüb. Unter Fichtenrinde -> Ausella albitarsis\n");
}

TEST(PrintedNames, EpithetsWithTheNumbersOfTheirAccounts) {
  EXPECT_EQ(sketch("Genus 118. AUSELLA Roe.\n\n"
                   "a. Dorsal spines 9.\n"
                   "b. Cheeks naked; depth 5 busops, 1041.\n"
                   "bb. Cheeks scaled; caudal with 5 bars nudiceps, 1042.\n"
                   "bbb. Cheeks with a spine pallens, 1043.\n"
                   "aa. Dorsal spines 12.\n"
                   "c. Snout acute, vertebrae 38.\n\n"
                   "uranica, 1044.\n"
                   "cc. Snout blunt, the fins ouarita, 1045.\n"),
            "a[a] Dorsal spines 9. -> b\n"
            "a[aa] Dorsal spines 12. -> c\n"
            "b[b] Cheeks naked; depth 5 -> Ausella busops\n"
            "b[bb] Cheeks scaled; caudal with 5 bars -> Ausella nudiceps\n"
            "b[bbb] Cheeks with a spine -> Ausella pallens\n"
            "c[c] Snout acute, vertebrae 38. -> Ausella uranica\n"
            "c[cc] Snout blunt, the fins -> Ausella ouarita\n");
}

TEST(PrintedNames, CapitalsInASeriesOfNumbersAreEpithets) {
  EXPECT_EQ(sketch("612. THALASSOBRYCUS, Roe.\n\n"
                   "a. Teeth in bands.\n"
                   "   b. Lateral line complete.                 altipinnis, 1890.\n"
                   "   bb. Lateral line interrupted.             BREVILINEA, 1891.\n"
                   "aa. Teeth conical.\n"
                   "   c. Canines strong.\n"
                   "      d. Spines coarse.                      canidens, 1892.\n"
                   "      dd. Spines fine.                       atrilabris, 1893.\n"
                   "   cc. Canines small.                        RHODOPTERUS, 1894.\n"),
            "a[a] Teeth in bands. -> b\n"
            "a[aa] Teeth conical. -> c\n"
            "b[b] Lateral line complete. -> Thalassobrycus altipinnis\n"
            "b[bb] Lateral line interrupted. -> Thalassobrycus brevilinea\n"
            "c[c] Canines strong. -> d\n"
            "c[cc] Canines small. -> Thalassobrycus rhodopterus\n"
            "d[d] Spines coarse. -> Thalassobrycus canidens\n"
            "d[dd] Spines fine. -> Thalassobrycus atrilabris\n");
}

TEST(PrintedNames, TwoWordsInCapitalsAreASubspecies) {
  EXPECT_EQ(sketch("Key to the species of Orvalichthys\n\n"
                   "a. Scales large.                       GUTTATUS, 1306.\n"
                   "aa. Scales small.\n"
                   "  b. Lip plain.                        FASCIATUS, 1307.\n"
                   "  bb. Lip fringed.\n"
                   "     c. Bands two.                     VITTATUS, 1308.\n"
                   "     cc. Bands four.                   VITTATUS LINEOLATUS, 1308a.\n"),
            "a[a] Scales large. -> Orvalichthys guttatus\n"
            "a[aa] Scales small. -> b\n"
            "b[b] Lip plain. -> Orvalichthys fasciatus\n"
            "b[bb] Lip fringed. -> c\n"
            "c[c] Bands two. -> Orvalichthys vittatus\n"
            "c[cc] Bands four. -> Orvalichthys vittatus lineolatus\n");
}

TEST(PrintedNames, BracketsAndNewNamesEndALeadAsOthersDo) {
  EXPECT_EQ(led_to("[A. palustris]."), "Aus palustris");
  EXPECT_EQ(led_to("pygmaeus nom. nov."), "Zus pygmaeus (nom. nov.)");
  EXPECT_EQ(led_to("busula, new species (p. 113)."), "Zus busula (new species (p. 113))");
}

TEST(PrintedNames, AMarkOfNewWithACommaPartsAList) {
  EXPECT_EQ(led_to("A. busa sp. nov., A. cusa Roe, 1988"), "Aus busa + Aus cusa (sp. nov.)");
  EXPECT_EQ(led_to("A. busa n. sp., A. cusa sp. n. and A. dusa Roe"),
            "Aus busa + Aus cusa + Aus dusa (n. sp. sp. n.)");
}

TEST(PrintedNames, EpithetsOfTheAuthorHimself) {
  EXPECT_EQ(
      sketch("Gattung Catoplectus\n"
             "1\" Halsschild rot, matt.                    bicolor Seiff.\n"
             "1' Halsschild braun, dicht punktiert. L. 2,8 mm. — Nassau.    sericans m.\n"),
      "1[1\"] Halsschild rot, matt. -> Catoplectus bicolor\n"
      "1[1'] Halsschild braun, dicht punktiert. L. 2,8 mm. — Nassau. -> Catoplectus sericans\n");
}

TEST(PrintedNames, NumberedEpithetsInALead) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Legs red ..... 1. A. levis\n"
                   "- Legs black ..... 2. opaca and 3. rufa.\n"),
            "1[1] Legs red -> Ausella levis\n"
            "1[-] Legs black -> Ausella opaca + Ausella rufa\n");
}

TEST(PrintedNames, NewGeneraAndTwoAuthorsBehindDashes) {
  EXPECT_EQ(sketch("Conspectus generum\n"
                   "\n"
                   "1 (4). Mesosterno carina elevata.\n"
                   "2 (3). Scutello lateribus sinuato. — Tropidosterna Brng.\n"
                   "3 (2). Scutello lateribus recto. — Homalophloea n. gen.\n"
                   "4 (1). Mesosterno carina nulla.\n"
                   "5 (6). Abdominis marginibus lobatis. — Phlœoryctis Am. & Lind.\n"
                   "6 (5). Abdominis marginibus integris. — Planibasis nov. gen.\n"),
            "1[1] Mesosterno carina elevata. -> 2\n"
            "1[4] Mesosterno carina nulla. -> 5\n"
            "2[2] Scutello lateribus sinuato. -> Tropidosterna\n"
            "2[3] Scutello lateribus recto. -> Homalophloea (n. gen.)\n"
            "5[5] Abdominis marginibus lobatis. -> Phlœoryctis\n"
            "5[6] Abdominis marginibus integris. -> Planibasis (nov. gen.)\n");
}

TEST(PrintedNames, AnAuthorInCapitalsBehindANumberedEpithet) {
  EXPECT_EQ(sketch("Tableau des espèces du genre Otiophilus\n"
                   "\n"
                   "1. Rostre caréné . . . 1. niger FABRE, p. 150.\n"
                   "— Rostre bicaréné . . . 2. sulcatellus FABRE, p. 151.\n"),
            "1[1] Rostre caréné -> Otiophilus niger (p. 150.)\n"
            "1[—] Rostre bicaréné -> Otiophilus sulcatellus (p. 151.)\n");
}

TEST(PrintedNames, CommonNamesBeforeGeneraOfAnyEnding) {
  EXPECT_EQ(sketch("Key to the sea-stars\n"
                   "\n"
                   "1. Rays five .................................... 2\n"
                   "1. Rays more than five .......................... Helaster rubra\n"
                   "\n"
                   "    2. Plates granular, dull red or buff; R to 3 inches. Rough\n"
                   "        Gemstar, Orfaster scabrosus (p. 23)\n"
                   "    2. Plates bare ...............................  3\n"
                   "\n"
                   "        3.  Spines in five distinct rows along each ray;\n"
                   "            rays mottled.  Mottled Star, Ordaster variatus\n"
                   "            (p. 33)\n"
                   "        3.  Spines scattered, few, large, each with a blue\n"
                   "            ring at base.  Giant Wreathstar, Ordaster\n"
                   "            giganteus (p. 34)\n"),
            "1[1] Rays five -> 2\n"
            "1[1] Rays more than five -> Helaster rubra\n"
            "2[2] Plates granular, dull red or buff; R to 3 inches. Rough -> Orfaster scabrosus "
            "(Gemstar; p. 23)\n"
            "2[2] Plates bare -> 3\n"
            "3[3] Spines in five distinct rows along each ray; rays mottled. -> Ordaster variatus "
            "(Mottled Star; p. 33)\n"
            "3[3] Spines scattered, few, large, each with a blue ring at base. -> Ordaster "
            "giganteus (Giant Wreathstar; p. 34)\n");
}

TEST(PrintedNames, TwoLettersStandForTheGenus) {
  EXPECT_EQ(sketch("Key to the females of Vexatonella\n"
                   "\n"
                   "1. Cibarium with four teeth ............... 2\n"
                   "- Cibarium with many teeth ............... Vx. tolimae\n"
                   "2. Thorax brown ........................... Vx. fuscopleura\n"
                   "- Thorax yellow .......................... Vx. nitida\n"),
            "1[1] Cibarium with four teeth -> 2\n"
            "1[-] Cibarium with many teeth -> Vexatonella tolimae\n"
            "2[2] Thorax brown -> Vexatonella fuscopleura\n"
            "2[-] Thorax yellow -> Vexatonella nitida\n");
}

TEST(PrintedNames, CommonNamesBeforeSpeciesInBrackets) {
  EXPECT_EQ(sketch("Key to the woods\n"
                   "\n"
                   "1. Rayons étagés . . . . . . . . Tolva (Mavrovia striata Morvel.)\n"
                   "1 bis. Rayons non étagés . . . . 2\n"
                   "2. Bois jaune . . . . . . . . . . Fuma (Fumavria levis (Morvel.) Vaugr.)\n"
                   "2 bis. Bois gris . . . . . . . . . 3\n"
                   "3. Densité faible . . . . . . . . Oak felt mite (Trimerophyes tomenti), p. 35\n"
                   "3 bis. Densité forte . . . . . . . Bemba (Bemvaria macropora Vaugr.)\n"),
            "1[1] Rayons étagés -> Mavrovia striata (Tolva)\n"
            "1[1 bis] Rayons non étagés -> 2\n"
            "2[2] Bois jaune -> Fumavria levis (Fuma)\n"
            "2[2 bis] Bois gris -> 3\n"
            "3[3] Densité faible -> Trimerophyes tomenti (Oak felt mite; p. 35)\n"
            "3[3 bis] Densité forte -> Bemvaria macropora (Bemba)\n");
}

TEST(PrintedNames, LettersThatBeginAGenusAreNotTwoOfIt) {
  EXPECT_EQ(sketch("Key to Aedella\n"
                   "\n"
                   "1. Cibarium with four teeth ............... 2\n"
                   "- Cibarium with many teeth ................ Anophella gambiae\n"
                   "2. Thorax brown ........................... Ae. fuscopleura\n"
                   "- Thorax yellow ........................... Anophella nitida\n"),
            "1[1] Cibarium with four teeth -> 2\n"
            "1[-] Cibarium with many teeth -> Anophella gambiae\n"
            "2[2] Thorax brown -> Aedella fuscopleura\n"
            "2[-] Thorax yellow -> Anophella nitida\n");
}

TEST(PrintedNames, ASynonymInBracketsHasNoAuthor) {
  EXPECT_EQ(sketch("Key to the genera\n\n"
                   "1. Sap milky ..... Rolva (Busella busa)\n1'. Sap watery ..... 2\n"
                   "2. Leaves hairy ..... Cusella Roe\n2'. Leaves bald ..... Dusella Roe\n"),
            "1[1] Sap milky -> Rolva (Busella busa)\n1[1'] Sap watery -> 2\n"
            "2[2] Leaves hairy -> Cusella\n2[2'] Leaves bald -> Dusella\n");
}

TEST(PrintedNames, AbbreviationsThatTheTextTells) {
  EXPECT_EQ(sketch("KEY TO LARVAE\n"
                   "\n"
                   "Generic names are abbreviated as follows: An. = Anopsara; Ae. = Aedoria; Cs.\n"
                   "= Culistena; Mr. = Mansorides.\n"
                   "\n"
                   "1. Abdomen without siphon ............. 2\n"
                   "   Abdomen with siphon ................ 3\n"
                   "2. Setae 2-C close together ........... An. lagunae\n"
                   "   Setae 2-C widely separated ......... Ae. ripicola\n"
                   "3. Siphon short, conical .............. Mr. perforans\n"
                   "   Siphon cylindrical ................. Cs. vicina\n"),
            "1[1] Abdomen without siphon -> 2\n"
            "1[] Abdomen with siphon -> 3\n"
            "2[2] Setae 2-C close together -> Anopsara lagunae\n"
            "2[] Setae 2-C widely separated -> Aedoria ripicola\n"
            "3[3] Siphon short, conical -> Mansorides perforans\n"
            "3[] Siphon cylindrical -> Culistena vicina\n");
}

TEST(PrintedNames, AVarietyBehindACommaBelongsToTheName) {
  EXPECT_EQ(sketch("Key to Ausella\n"
                   "\n"
                   "1. Leaves wide ..... 2\n"
                   "- Leaves narrow ..... Ausella bus, var. cus\n"
                   "2. Stem long ..... 4a. A. busa, var. mollis.\n"
                   "- Stem short ...... A. busa, subsp. dusa Roe\n"),
            "1[1] Leaves wide -> 2\n"
            "1[-] Leaves narrow -> Ausella bus var. cus\n"
            "2[2] Stem long -> Ausella busa var. mollis\n"
            "2[-] Stem short -> Ausella busa subsp. dusa\n");
}

TEST(PrintedNames, ASignBetweenNumberAndName) {
  EXPECT_EQ(sketch("Key to Carvessia\n"
                   "\n"
                   "1 Glumes with a red band ....................... 19. C. sanguinea\n"
                   "1: Glumes brown; spikelets 4–6 mm wide ......... 2\n"
                   "2 Rhachilla deciduous .......................... 21. *C. unioloides\n"
                   "2: Rhachilla persistent ........................ 2. *C. alternata\n"),
            "1[1] Glumes with a red band -> Carvessia sanguinea\n"
            "1[1] Glumes brown; spikelets 4–6 mm wide -> 2\n"
            "2[2] Rhachilla deciduous -> Carvessia unioloides (*)\n"
            "2[2] Rhachilla persistent -> Carvessia alternata (*)\n");
}

}  // namespace
}  // namespace keydrift

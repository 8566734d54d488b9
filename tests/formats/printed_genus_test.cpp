// The genus that leads cut short or leave out: which word of the text it is, and when nothing
// tells.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::read_key;
using test::sketch;

// The names of the key's taxa, in the order of first naming.
std::vector<std::string> names_in(std::string_view text) {
  std::vector<std::string> names;
  for (auto const& taxon : read_key(text).edition.taxa) names.push_back(taxon.name);
  return names;
}

constexpr std::string_view kShort =
    "1. Corolla red ..... C. pallida\n1. Corolla white ..... 2\n"
    "2. Calyx hairy ..... C. dioica\n2. Calyx smooth ..... C. nervosa\n";
constexpr std::string_view kLone =
    "1. Corolla red ..... pallida Roe\n1. Corolla white ..... 2\n"
    "2. Calyx hairy ..... dioica Roe\n2. Calyx smooth ..... nervosa Dorn\n";

std::vector<std::string> three_of_genus(std::string const& genus) {
  return {genus + " pallida", genus + " dioica", genus + " nervosa"};
}

// A genus among words that begin sentences: in a heading of its own, in an account behind the key,
// in the head of a page.
TEST(PrintedGenus, IsNoWordOfDescriptions) {
  std::vector<std::string> const before{
      "9. CADWENIA Hosk., Ann. Bot. Gard. Till 3: 112. 1841.\n\nCorolla tubular, white. Capsula "
      "opens by a lid; corolla hairy within.\n\n",
      "Cadwenia Hosk.\n\nHerbs. Corolla tubular. Ovula many.\n\n",
      "GENUS CADWENIA\n\nCorolla zygomorphic.\n\n", "Cadwenia\n========\n\nCorolla five-lobed.\n\n",
      "12. CADWENIA.\n\nCorolla tubular; corolla-tube long.\n\n"};
  for (auto const& text : before) {
    EXPECT_EQ(names_in(text + std::string{kShort}), three_of_genus("Cadwenia")) << text;
    EXPECT_EQ(names_in(text + std::string{kLone}), three_of_genus("Cadwenia")) << text;
  }
  for (std::string const behind :
       {"\n1. Cadwenia pallida Roe, Till. 3: 4. 1841.\n\nCorolla tubular, red, 3 cm long.\n",
        "\nCadwenia dioica grows on rocks. Corolla smaller than that of the others.\n"}) {
    EXPECT_EQ(names_in(std::string{kShort} + behind), three_of_genus("Cadwenia")) << behind;
    EXPECT_EQ(names_in(std::string{kLone} + behind), three_of_genus("Cadwenia")) << behind;
  }
}

// The full name of one species outweighs titles, journals and the places of a web page.
TEST(PrintedGenus, StandsBeforeEpithetsOfTheKey) {
  EXPECT_EQ(names_in("Home > Plants > Key\n\n" + std::string{kLone} +
                     "\nCadwenia nervosa has been seen once.\n"),
            three_of_genus("Cadwenia"));
  EXPECT_EQ(names_in("CADWENIA.\n\nCadwenia, part., Hallm, Isis Nat. v. p. 211.\nCapra, Roe, Cat. "
                     "p. 6.\n\n" +
                     std::string{kLone} + "\n1. Cadwenia pallida.\n\nIsis pallida, Roe, Cat.\n"),
            three_of_genus("Cadwenia"));
}

// Two genera with the same initial: each name is that of the genus it is printed with.
TEST(PrintedGenus, IsTheOneThatANameIsPrintedWithElsewhere) {
  EXPECT_EQ(names_in("1. Corolla red ..... Cadwenia alba\n1. Corolla white ..... Corvina nigra\n\n"
                     "1. Leaves long ..... C. pallida\n1. Leaves short ..... C. dioica\n\n"
                     "Corvina pallida was found by Roe; Cadwenia dioica is common.\n"),
            (std::vector<std::string>{"Cadwenia alba", "Corvina nigra", "Corvina pallida",
                                      "Cadwenia dioica"}));
}

TEST(PrintedGenus, NoFamilyAndNoWordIsTakenForOne) {
  std::vector<std::string> const lone{"pallida", "dioica", "nervosa"};
  std::vector<std::string> const abbreviated{"C. pallida", "C. dioica", "C. nervosa"};
  for (std::string const before :
       {"12. CADWENIACEAE\n\n", "Corolla white or red.\n\n", "Home > Plants > Keys\n\n", ""}) {
    EXPECT_EQ(names_in(before + std::string{kShort}), abbreviated) << before;
    EXPECT_EQ(names_in(before + std::string{kLone}), lone) << before;
  }
  auto const findings = findings_of(kShort);
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](std::string const& finding) {
    return finding.find(
               "the text does not tell which genus \"C.\" is, here and in 2 further names; "
               "names stay as they are printed") != std::string::npos;
  }));
}

// A variety's epithet that comes back is that of its species (autonyms).
TEST(PrintedGenus, VarietiesStandBeneathTheSpeciesWhoseEpithetComesBack) {
  EXPECT_EQ(
      names_in("1. Corolla red ..... Cadwenia pallida\n1. Corolla white ..... 2\n"
               "2. Calyx hairy ..... C. dioica\n2. Calyx smooth ..... C. nervosa\n\n"
               "Key to the varieties\n\n1. Stem brown ..... 1a. var. alba\n1. Stem red ..... 1b. "
               "var. pallida\n"),
      (std::vector<std::string>{"Cadwenia pallida", "Cadwenia dioica", "Cadwenia nervosa",
                                "Cadwenia pallida var. alba", "Cadwenia pallida var. pallida"}));
}

// Items of a list, titles of accounts and words in brackets are no leads.
TEST(PrintedGenus, AccountsAndListsAreNoLeads) {
  std::string const key =
      "1a. Corolla red ..... Cadwenia pallida\n1b. Corolla white ..... 2a\n"
      "2a. Calyx hairy ..... C. dioica\n2b. Calyx smooth ..... C. nervosa\n";
  auto const plain = sketch(key);
  for (std::string const behind :
       {"+ Cadwenia pallida (Roe, 1841)\n+ Cadwenia dioica Roe & Dorn, 1857\n",
        "- Cadwenia pallida Roe, 1841\n- Cadwenia dioica Roe, 1857\n",
        "2a. Cadwenia dioica var. dioica\nCorolla purple. Rocks.\n\n"
        "2b. Cadwenia dioica var. alba Y. Roe & Dorn, Till. 31: 9. 1940.\nCorolla violet.\n",
        "1. Cadwenia pallida Roe. — Dorn, 1936 : 44. Corolla red.\n"}) {
    EXPECT_EQ(sketch(key + "\nList of species\n\n" + behind), plain) << behind;
  }
}

TEST(PrintedGenus, NumbersOfTheBookMayStandBeforeNames) {
  for (std::string const number : {"6.3.", "6.10.", "6.3.1.", "6.3", "12.", "3a."}) {
    auto const text = "6. Cadwenia Roe\n\n1. Corolla red ..... " + number +
                      " C. pallida\n1. Corolla white ..... " + number + " C. dioica\n";
    EXPECT_EQ(names_in(text), (std::vector<std::string>{"Cadwenia pallida", "Cadwenia dioica"}))
        << number;
  }
}

// Titles of genera, lists of a page, accounts whose epithets bear a capital: no leads either.
TEST(PrintedGenus, WhatFollowsAKeyIsNoLead) {
  std::string const key =
      "1. Corolla red ..... Cadwenia pallida\n   Corolla white ..... 2\n"
      "2. Calyx hairy ..... C. dioica\n   Calyx smooth ..... C. nervosa\n"
      "3. Leaves long ..... C. rosea\n   Leaves short ..... C. lutea\n"
      "4. Stem long ..... C. magna\n   Stem short ..... C. parva\n";
  auto const plain = sketch(key);
  for (std::string const behind :
       {"\nGenus  Corvina  Roe-Dorn, 1856\n\nShell oval, one tooth on the right.\n",
        "\n1. C. Roei Dorn. — Herb. Leaves dense. — Spring. Walls, C.\n",
        "\n* Distribution Map\n* Illustration (2)\n",
        "\nTable 1. Measurements\n1  3.4  5.6\n2  3.3  5.1\n3  2.9  4.7\n",
        "\nFigures 1-3. Flowers. 1. Left.\n3. Seen from above.\n"}) {
    EXPECT_EQ(sketch(key + behind), plain) << behind;
  }
}

TEST(PrintedGenus, WordsInBracketsMayExplainAGenus) {
  EXPECT_EQ(
      names_in("1. Teeth in a row. Go to 2.\n1. No teeth. Avella (birds; see their page)\n"
               "2. Snout long. Sorella cinerea (ashy shrew)\n2. Snout short. Go to 3.\n"
               "3. Ears long. Sorella alba (white shrew)\n3. Ears short. Sorella nigra "
               "(black shrew)\n"),
      (std::vector<std::string>{"Avella", "Sorella cinerea", "Sorella alba", "Sorella nigra"}));
}

TEST(PrintedGenus, PagesTellGeneraWhateverTheirEnding) {
  for (std::string const page : {", p. 68.", " (p. 68)", ", page 68", " (S. 68)", ", pág. 68"}) {
    auto const text = "1. Corolla red, the apex rounded. Pelvurgo" + page +
                      "\n1. Corolla white.\nVostrinil" + page + "\n";
    EXPECT_EQ(names_in(text), (std::vector<std::string>{"Pelvurgo", "Vostrinil"})) << page;
  }
  EXPECT_EQ(names_in("1. Corolla red, as in Pelvurgo, p. 68.\n1. Corolla white ..... Vostrinil\n"),
            (std::vector<std::string>{"Vostrinil"}));
}

// A part's title tells the genus of its names, though another one with that initial was keyed out
// before.
TEST(PrintedGenus, IsThatOfThePartsTitle) {
  EXPECT_EQ(
      names_in(
          "Key 1. Genera of Ausidae\n\n1a. Horns long ..... Key 2\n1b. Horns short ..... 2\n"
          "2a. Gills free ..... Buccadora Roe, 1870\n2b. Gills fused ..... Polydora Roe, "
          "1870\n\nKey 2. Species of Bicornulla Doe, 1977\n\n1a. Hooks with two teeth ..... 2\n"
          "1b. Hooks with three teeth ..... B. pallida Doe, 1977\n2a. Eyes two ..... B. "
          "dioica sp. nov.\n2b. Eyes four ..... B. nervosa (Roe, 1880)\n"),
      (std::vector<std::string>{"Buccadora", "Polydora", "Bicornulla pallida", "Bicornulla dioica",
                                "Bicornulla nervosa"}));
}

TEST(PrintedGenus, AccountsOfVarietiesGoOnWithAnAuthor) {
  EXPECT_TRUE(printed::titles_account("Ausa centa var. lenta"));
  EXPECT_TRUE(printed::titles_account("Ausa centa var. lenta Roe, 1900"));
  EXPECT_FALSE(printed::titles_account("Ausa centa var. lenta on walls"));
}

// Also a genus that only the last leads lead to tells accounts from leads.
TEST(PrintedGenus, OfAllLeadsTellAccounts) {
  std::string text;
  for (int i = 1; i <= 9; ++i) {
    auto const n = std::to_string(i);
    text += n + ". Head " + n + " ..... Ausa benta\n– Tail " + n + " ..... " +
            std::to_string(i + 1) + "\n";
  }
  text += "10. Head flat ..... Ausa centa\n– Tail flat ..... Dusia lenta\n\n11. Dusia lenta\n";
  auto const lines = printed::split_lines(text);
  auto const numbering = printed::decide_numbering(lines, printed::DecimalLabels::sections);
  printed::LinesAhead const ahead{lines, numbering, nullptr};
  EXPECT_TRUE(ahead.label_at(18));
  EXPECT_FALSE(ahead.label_at(21)) << lines[21].text;
}

bool is_ambiguous(std::string_view text) {
  auto const findings = test::findings_of(text);
  return std::any_of(findings.begin(), findings.end(), [](std::string const& one) {
    return one.find("ambiguous-abbreviation") != std::string::npos;
  });
}

TEST(PrintedGenus, CommonNamesAndAbbreviationsAreNone) {
  EXPECT_FALSE(
      is_ambiguous("Ausella L. – Ausellie\n\n"
                   "1. Blüten weiß ..... A. busa\n"
                   "1*. Blüten gelb ..... A. cusa\n"));
  EXPECT_FALSE(
      is_ambiguous("Abkürzungen: Bl = Blatt, Blü = Blüte, Fr = Frucht.\n\n"
                   "Busella L.\n\n"
                   "1 Blüten weiß ..... B. ausa\n"
                   "1* Blüten gelb ..... B. cusa\n"));
  // Two genera are two genera.
  EXPECT_TRUE(
      is_ambiguous("Key to Ausella and Aurella\n\n"
                   "1. Blüten weiß ..... A. busa\n"
                   "1*. Blüten gelb ..... A. cusa\n"));
}

TEST(PrintedGenus, NoSpeciesBelongsToAFamily) {
  EXPECT_FALSE(
      is_ambiguous("1. Needles long ..... Ausaceae\n"
                   "1. Needles short ..... Busaceae\n\n"
                   "Ausella Roe\n\n"
                   "1. Cones long ..... A. fusa\n"
                   "1. Cones short ..... A. gusa\n"));
}

TEST(PrintedGenus, TitlesMaySpaceTheirLettersOrBreakTheLine) {
  auto const first = [](std::string const& title) {
    auto const text = title +
                      "\n\n1. Leaves opposite .... 2\n– Leaves alternate .... M. busa\n"
                      "2. Petals red .... M. cusa\n– Petals white .... M. dusa\n";
    auto const all = sketch(text);
    auto const from = all.find("alternate -> ") + 13;
    return all.substr(from, all.find('\n', from) - from);
  };
  EXPECT_EQ(first("M A R V A N T H U S."), "Marvanthus busa");
  EXPECT_EQ(first("KEY TO THE SPECIES OF MARVAN-\nTHUS"), "Marvanthus busa");
  EXPECT_EQ(first("Key to the species of Marvanthus*"), "Marvanthus busa");
  EXPECT_EQ(first("Key to the species of “Marvanthus”"), "Marvanthus busa");
}

TEST(PrintedGenus, SwedishTitlesAndNamesOfTheAuthorHimself) {
  EXPECT_EQ(sketch("8. Sl. Glossodontium Lindst.  Tungmossa.\n"
                   "Öfversikt af arterna.\n"
                   "1. Hårspetsen slät . . . . . G. canescens Lindst.\n"
                   "   Hårspetsen taggig . . . . 2.\n"
                   "2. Kapseln lång . . . . . G. busa Lindst.\n"
                   "   Kapseln kort . . . . . G. cusa m.\n"),
            "1[1] Hårspetsen slät -> Glossodontium canescens\n"
            "1[] Hårspetsen taggig -> 2\n"
            "2[2] Kapseln lång -> Glossodontium busa\n"
            "2[] Kapseln kort -> Glossodontium cusa\n");
}

TEST(PrintedGenus, ACoupletsGenusInBracketsIsThatOfItsSpecies) {
  EXPECT_EQ(
      sketch(
          "KEY TO THE CRABS OF THE LUNDAKA HIGHLANDS\n\n"
          "1a. Palp of two parts ..... 2 (Lundakana)\n1b. Palp of three parts ..... 3 (Potella)\n"
          "2a. Margin spiny ..... L. spinata Roe\n2b. Margin smooth ..... L. laevis Roe\n"
          "3a. Finger arched ..... P. hians Dorn\n3b. Finger straight ..... P. tenuis Dorn\n"),
      "1[1a] Palp of two parts -> 2 (Lundakana)\n"
      "1[1b] Palp of three parts -> 3 (Potella)\n"
      "2[2a] Margin spiny -> Lundakana spinata\n"
      "2[2b] Margin smooth -> Lundakana laevis\n"
      "3[3a] Finger arched -> Potella hians\n"
      "3[3b] Finger straight -> Potella tenuis\n");
}

TEST(PrintedGenus, AGivenNameBeforeASurnameInCapitalsIsNone) {
  EXPECT_EQ(sketch("Contribution à l'étude du genre Ochrella en zone alpine\n\n"
                   "par Étienne MARSOUIN et Odile VERNAZET\n\nCLÉ DES ESPÈCES ALPINES\n\n"
                   "1 – Lames stériles ................ O. nivicola Brasset\n"
                   "1' – Lames fertiles ................ O. inodora (Brasset) Marsouin\n"),
            "1[1] Lames stériles -> Ochrella nivicola\n"
            "1[1'] Lames fertiles -> Ochrella inodora\n");
}

TEST(PrintedGenus, TheWordForGenusMayBeMisread) {
  EXPECT_EQ(sketch("5. Gattiing: Ausella Roe.\n"
                   "\n"
                   "1. Fühler 11-gliedrig — 2.\n"
                   "— Fühler 10-gliedrig. foveicollis Roe.\n"
                   "2. Beine rot. striatella Dorn.\n"
                   "— Beine schwarz. seriata Dorn.\n"
                   "\n"
                   "6. Gattung: Busella Roe.\n"
                   "\n"
                   "Halsschild quer. In Baumschwämmen.\n"),
            "1[1] Fühler 11-gliedrig -> 2\n"
            "1[—] Fühler 10-gliedrig. -> Ausella foveicollis\n"
            "2[2] Beine rot. -> Ausella striatella\n"
            "2[—] Beine schwarz. -> Ausella seriata\n");
}

TEST(PrintedGenus, TheTypicalSectionTellsItsGenus) {
  EXPECT_EQ(sketch("Sect. II. Euausella Roe in Bot. Zeitschr. XXXI. (1902) 214.\n"
                   "\n"
                   "Conspectus specierum.\n"
                   "\n"
                   "A. Folia opposita.\n"
                   "a. Calyx glaber ..... 8. A. leucantha.\n"
                   "b. Calyx hirsutus. Acus globosa ..... 9. A. flavida.\n"
                   "B. Folia alterna.\n"
                   "a. Ramuli spinescentes. Acus ovoidea ..... 10. A. spinosa.\n"
                   "b. Ramuli inermes ..... 11. A. inermis.\n"),
            "1[A] Folia opposita. -> 2\n"
            "1[B] Folia alterna. -> 3\n"
            "2[a] Calyx glaber -> Ausella leucantha\n"
            "2[b] Calyx hirsutus. Acus globosa -> Ausella flavida\n"
            "3[a] Ramuli spinescentes. Acus ovoidea -> Ausella spinosa\n"
            "3[b] Ramuli inermes -> Ausella inermis\n");
}

TEST(PrintedGenus, ACommonNameInCapitalsStandsBeforeIt) {
  EXPECT_EQ(sketch("OMBELLINÉES 213\n"
                   "\n"
                   "II. TRAGOPHYLLE. Tragophyllum Lob.\n"
                   "\n"
                   "1. Fleurs jaunes .. 2\n"
                   "— Fleurs blanches .. pectinatum\n"
                   "2. Feuilles entières .. bracteatum\n"
                   "— Feuilles divisées .. montanum\n"),
            "1[1] Fleurs jaunes -> 2\n"
            "1[—] Fleurs blanches -> Tragophyllum pectinatum\n"
            "2[2] Feuilles entières -> Tragophyllum bracteatum\n"
            "2[—] Feuilles divisées -> Tragophyllum montanum\n");
}

TEST(PrintedGenus, AnAdjectiveOfACountryIsNone) {
  EXPECT_EQ(sketch("Merrivale. — Descriptions of Australian Micro-Lepidoptera. 31\n"
                   "\n"
                   "The species are readily known by the following tabulation :\n"
                   "\n"
                   "1. Forewings yellow .. 2\n"
                   "— Forewings dark .. 3\n"
                   "2. Head yellow .. chrysotoxa\n"
                   "— Head white .. tetraspila\n"
                   "3. Hindwings orange .. kabrodes\n"
                   "— Hindwings grey .. dialyta\n"),
            "1[1] Forewings yellow -> 2\n"
            "1[—] Forewings dark -> 3\n"
            "2[2] Head yellow -> chrysotoxa\n"
            "2[—] Head white -> tetraspila\n"
            "3[3] Hindwings orange -> kabrodes\n"
            "3[—] Hindwings grey -> dialyta\n");
}

TEST(PrintedGenus, ARankWithItsCapitalIsNone) {
  EXPECT_EQ(sketch("Tavola delle specie del genere Ausella\n"
                   "\n"
                   "1 Clipeo inciso nel mezzo 2\n"
                   "1' Clipeo intero A. busa Roe\n"
                   "2 Solco profondo . A. carinata Roe.\n"
                   "2' Solco superficiale. Var. levior n. var.\n"),
            "1[1] Clipeo inciso nel mezzo -> 2\n"
            "1[1'] Clipeo intero -> Ausella busa\n"
            "2[2] Solco profondo -> Ausella carinata\n"
            "2[2'] Solco superficiale. -> Ausella carinata var. levior (n. var.)\n");
}

TEST(PrintedGenus, AHeadThatReadsAsALeadTellsIt) {
  EXPECT_EQ(
      sketch("7. Ausella Brunn. in Bot. Zeitschr. Ost. XXI. (1863) 317; Hart. Gen. I. 612. —\n"
             "Pelianthus Schrag. in Denkschr. Reg. Ges. III. (1838) 74. — Flores hermaphroditi. "
             "Sepala 5,\n"
             "basi connata. Petala 5, imbricata.\n"
             "\n"
             "Clavis specierum.\n"
             "\n"
             "A. Folia opposita.\n"
             "a. Petala alba . . . . 1. A. glabra.\n"
             "b. Petala rosea . . . . 2. A. sericea.\n"
             "B. Folia alterna.\n"
             "a. Caules erecti . . . . 3. A. repens.\n"
             "b. Caules repentes . . . . 4. A. andina.\n"),
      "1[A] Folia opposita. -> 2\n"
      "1[B] Folia alterna. -> 3\n"
      "2[a] Petala alba -> Ausella glabra\n"
      "2[b] Petala rosea -> Ausella sericea\n"
      "3[a] Caules erecti -> Ausella repens\n"
      "3[b] Caules repentes -> Ausella andina\n");
}

TEST(PrintedGenus, APlaceInTheTitleOfAFloraIsNone) {
  EXPECT_EQ(sketch("6 Flora de la Cuenca de Xoltepec Fascículo 188\n"
                   "\n"
                   "Género con unas 40 especies.\n"
                   "\n"
                   "1 Plantas leñosas\n"
                   "2 Hojas tomentosas ..... X. arborea\n"
                   "2 Hojas verdes ..... X. viscidula\n"
                   "1 Plantas herbáceas\n"
                   "3 Vilano presente ..... X. annua\n"
                   "3 Vilano ausente ..... X. exigua\n"
                   "\n"
                   "Xalamora alata (Loz.) Roe, Bol. Soc. Bot. 44: 17. 1983.\n"),
            "1[1] Plantas leñosas -> 2\n"
            "1[1] Plantas herbáceas -> 3\n"
            "2[2] Hojas tomentosas -> Xalamora arborea\n"
            "2[2] Hojas verdes -> Xalamora viscidula\n"
            "3[3] Vilano presente -> Xalamora annua\n"
            "3[3] Vilano ausente -> Xalamora exigua\n");
}

TEST(PrintedGenus, AnOrderInAHeadIsNone) {
  EXPECT_EQ(sketch("118 HÉMIPTÈRES HÉTÉROPTÈRES\n"
                   "\n"
                   "TABLEAU DES ESPÈCES\n"
                   "\n"
                   "1. — Fémurs renflés 1. argentata Roe.\n"
                   "— Fémurs minces 2.\n"
                   "2. — Dessus noir 2. nigra Roe.\n"
                   "— Dessus vert 3. viridula Dorn.\n"),
            "1[1] Fémurs renflés -> argentata\n"
            "1[—] Fémurs minces -> 2\n"
            "2[2] Dessus noir -> nigra\n"
            "2[—] Dessus vert -> viridula\n");
}

TEST(PrintedGenus, ARegionInASentenceAboveIsNone) {
  EXPECT_EQ(sketch("India, Indo-China, and Malay Archipelago.\n"
                   "\n"
                   "Synopsis of the Species.\n"
                   "\n"
                   "I. Scales in 19 rows.\n"
                   "\n"
                   "A. Anal divided 1. nigricollis, p. 212.\n"
                   "\n"
                   "B. Anal entire 2. hypoxanthus, p. 213.\n"
                   "\n"
                   "II. Scales in 17 rows 3. annulatus, p. 214.\n"),
            "1[I] Scales in 19 rows. -> 2\n"
            "1[II] Scales in 17 rows -> annulatus (p. 214.)\n"
            "2[A] Anal divided -> nigricollis (p. 212.)\n"
            "2[B] Anal entire -> hypoxanthus (p. 213.)\n");
}

TEST(PrintedGenus, WordsThatLookLikeASpeciesLendNoGenus) {
  EXPECT_EQ(
      sketch("Dascyrtus Hallw.\n"
             "\n"
             "Uebersicht der Arten.\n"
             "\n"
             "1\" Halsschild scharf gerandet. — Ungarn. hirtulus Hallw.\n"
             "1' Halsschild höchstens um ein Drittel breiter als lang.\n"
             "2\" Die Haare kurz, anliegend, reifartig, nur an der\n"
             "Spitze etwas gehoben. Stirn ohne Grübchen. Long. 2·5—2·7 mm. —\n"
             "Deutschland, in Kiefernstöcken; selten. pruinosus Kolw.\n"
             "2' Oberseite kahl, höchstens mit einzelnen Härchen. — Tirol.\n"
             "planiceps Strb.\n"),
      "1[1\"] Halsschild scharf gerandet. — Ungarn. -> Dascyrtus hirtulus\n"
      "1[1'] Halsschild höchstens um ein Drittel breiter als lang. -> 2\n"
      "2[2\"] Die Haare kurz, anliegend, reifartig, nur an der Spitze etwas gehoben. Stirn ohne "
      "Grübchen. Long. 2·5—2·7 mm. — Deutschland, in Kiefernstöcken; selten. -> Dascyrtus "
      "pruinosus\n"
      "2[2'] Oberseite kahl, höchstens mit einzelnen Härchen. — Tirol. -> Dascyrtus planiceps\n");
}

}  // namespace
}  // namespace keydrift

// Keys in the languages of Europe: their words before numbers, their names of plants, the order in
// which their floras print names, authors, habitats and pages.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::read_key;
using test::sketch;

// "Ausella busa Roe; Ausella cusa" of the taxa that leads lead to.
std::string taxa_of(std::string_view text) {
  std::string taxa;
  for (auto const& taxon : read_key(text).edition.taxa) {
    taxa += (taxa.empty() ? "" : "; ") + taxon.name;
    if (!taxon.authorship.empty()) taxa += " | " + taxon.authorship;
  }
  return taxa;
}

TEST(PrintedTongues, AuthorBeforeARank) {
  EXPECT_EQ(sketch("Schlüssel der Arten von Ausella\n\n"
                   "1. Blätter ganzrandig. 2\n"
                   "1*. Blätter gezähnt. Ausella busa R. subsp. minor Dorn\n"
                   "2. Krone blau. A. cusa R. subsp. cusa\n"
                   "2*. Krone gelb. A. cusa R. f. alba (Dorn) Vorn.\n"),
            "1[1] Blätter ganzrandig. -> 2\n"
            "1[1*] Blätter gezähnt. -> Ausella busa subsp. minor\n"
            "2[2] Krone blau. -> Ausella cusa subsp. cusa\n"
            "2[2*] Krone gelb. -> Ausella cusa f. alba\n");
}

TEST(PrintedTongues, SubspeciesOfAnAbbreviatedGenusBehindAWord) {
  EXPECT_EQ(sketch("Key to Ausella\n\n"
                   "1. Leaves pale. A. busa Roe subsp. minor\n"
                   "1*. Leaves dark. 2\n"
                   "2. Petals blue. A. cusa Roe\n"
                   "2*. Petals red. A. sp. nov.\n"),
            "1[1] Leaves pale. -> Ausella busa subsp. minor\n"
            "1[1*] Leaves dark. -> 2\n"
            "2[2] Petals blue. -> Ausella cusa\n"
            "2[2*] Petals red. -> Ausella sp. nov.\n");
}

TEST(PrintedTongues, AuthorsOnLinesOfTheirOwn) {
  std::string const text =
      "Schlüssel der Arten von Ausella\n\n"
      "1 Blätter ganzrandig, unterseits kahl\t2\n"
      "– Blätter gezähnt, unterseits filzig\tA. busa (R.)\n"
      "Dorn.\n"
      "2 Krone blau, klein\tA. cusa\n"
      "Dorn.\n"
      "– Krone gelb, groß\tA. dusa\n"
      "VO.\n";
  EXPECT_EQ(taxa_of(text), "Ausella busa | (R.) Dorn.; Ausella cusa | Dorn.; Ausella dusa | VO.");
}

TEST(PrintedTongues, RemarksUnderNamesWithoutAuthors) {
  EXPECT_EQ(taxa_of("Key to the species of Ausella\n\n"
                    "1 Leaves entire\t2\n"
                    "– Leaves toothed\tA. busa\n"
                    "Rare.\n"
                    "2 Petals blue\tA. cusa\n"
                    "Rare.\n"
                    "– Petals yellow\tA. dusa\n"),
            "Ausella busa; Ausella cusa; Ausella dusa");
  EXPECT_EQ(taxa_of("Key to the species of Ausella\n\n"
                    "1 Elytra black\t2\n"
                    "– Elytra red\tA. busa (Roe)\n"
                    "Alps.\n"
                    "2 Legs black\tA. cusa (Dorn)\n"
                    "– Legs red\tA. dusa Dorn\n"),
            "Ausella busa | (Roe); Ausella cusa | (Dorn); Ausella dusa | Dorn");
  EXPECT_EQ(taxa_of("Key to the species of Ausella\n\n"
                    "1 Elytra black\t2\n"
                    "– Elytra red\tA. busa (Roe)\n"
                    "Rare.\n"
                    "2 Legs black\tA. cusa\n"
                    "Rare.\n"
                    "– Legs red\tA. dusa Dorn\n"
                    "Common.\n"),
            "Ausella busa | (Roe); Ausella cusa; Ausella dusa | Dorn");
}

TEST(PrintedTongues, HabitatsDirectlyBehindAuthors) {
  std::string const text =
      "1. Blätter kahl ..... Ausella busa Roth.\n"
      "1*. Blätter behaart ..... 2\n"
      "2. Krone blau ..... A. cusa Roth. Wiesen; häufig.\n"
      "2*. Krone gelb ..... A. dusa DO. Alpen; selten.\n";
  EXPECT_EQ(taxa_of(text), "Ausella busa | Roth.; Ausella cusa | Roth.; Ausella dusa | DO.");
  EXPECT_EQ(sketch(text),
            "1[1] Blätter kahl -> Ausella busa\n"
            "1[1*] Blätter behaart -> 2\n"
            "2[2] Krone blau -> Ausella cusa (Wiesen; häufig)\n"
            "2[2*] Krone gelb -> Ausella dusa (Alpen; selten)\n");
}

TEST(PrintedTongues, ForenamesOfAuthors) {
  EXPECT_EQ(taxa_of("1. Blätter kahl ..... Ausella busa Joh. Dorn; selten\n"
                    "1*. Blätter behaart ..... 2\n"
                    "2. Krone blau ..... A. cusa Vorn. Roe, häufig\n"
                    "2*. Krone gelb ..... A. dusa Roe; häufig\n"),
            "Ausella busa | Joh. Dorn; Ausella cusa | Vorn. Roe; Ausella dusa | Roe");
}

TEST(PrintedTongues, CommonNamesBeforeLatinOnes) {
  EXPECT_EQ(sketch("Chiave delle specie di Ausella\n\n"
                   "1. Foglie glabre ..... Ausella azzurra (A. busa Roe)\n"
                   "1. Foglie pelose ..... 2\n"
                   "2. Corolla azzurra ..... Ausella chiara (A. cusa (Roe) Dorn)\n"
                   "2. Corolla gialla ..... Ausella gialla – A. dusa Dorn\n"),
            "1[1] Foglie glabre -> Ausella busa (Ausella azzurra)\n"
            "1[1] Foglie pelose -> 2\n"
            "2[2] Corolla azzurra -> Ausella cusa (Ausella chiara)\n"
            "2[2] Corolla gialla -> Ausella dusa (Ausella gialla)\n");
  EXPECT_EQ(sketch("1. Feuilles glabres ..... A. bleue – Ausella busa Roe\n"
                   "– Feuilles velues ..... 2\n"
                   "2. Corolle bleue ..... A. velue – A. cusa Roe\n"
                   "– Corolle jaune ..... A. jaune – A. dusa Dorn\n"),
            "1[1] Feuilles glabres -> Ausella busa (A. bleue)\n"
            "1[–] Feuilles velues -> 2\n"
            "2[2] Corolle bleue -> Ausella cusa (A. velue)\n"
            "2[–] Corolle jaune -> Ausella dusa (A. jaune)\n");
  EXPECT_EQ(sketch("1. Blätter kahl ..... Blaue Samtblume = Ausella busa Roe\n"
                   "1*. Blätter behaart ..... 2\n"
                   "2. Krone blau ..... Kahle Samtblume = A. cusa Roe\n"
                   "2*. Krone gelb ..... Gelbe Samtblume = A. dusa Dorn\n"),
            "1[1] Blätter kahl -> Ausella busa (Blaue Samtblume)\n"
            "1[1*] Blätter behaart -> 2\n"
            "2[2] Krone blau -> Ausella cusa (Kahle Samtblume)\n"
            "2[2*] Krone gelb -> Ausella dusa (Gelbe Samtblume)\n");
}

TEST(PrintedTongues, SynonymsInBracketsBehindNames) {
  EXPECT_EQ(taxa_of("1. Leaves bald ..... Ausella busa (Ausella azurra Roe)\n"
                    "1. Leaves hairy ..... 2\n"
                    "2. Petals blue ..... Ausella cusa (Ausella clara Roe)\n"
                    "2. Petals yellow ..... 3\n"
                    "3. Stem round ..... Ausella dusa (Ausella lutea Dorn)\n"
                    "3. Stem square ..... Ausella fusa\n"),
            "Ausella busa; Ausella cusa; Ausella dusa; Ausella fusa");
}

TEST(PrintedTongues, CommonNamesBehindLatinOnesWithoutLeaders) {
  EXPECT_EQ(sketch("Chiave delle specie di Ausella\n\n"
                   "1. Foglie glabre Ausella busa Roe - Ausella azzurra\n"
                   "1. Foglie pelose 2\n"
                   "2. Corolla azzurra Ausella cusa Roe - Ausella chiara\n"
                   "2. Corolla gialla Ausella dusa Dorn - Ausella gialla\n"),
            "1[1] Foglie glabre -> Ausella busa (Ausella azzurra)\n"
            "1[1] Foglie pelose -> 2\n"
            "2[2] Corolla azzurra -> Ausella cusa (Ausella chiara)\n"
            "2[2] Corolla gialla -> Ausella dusa (Ausella gialla)\n");
}

TEST(PrintedTongues, CommonNamesDirectlyBehindLatinOnes) {
  auto const edition = read_key(
                           "Tabel tot de soorten van Ausella\n\n"
                           "1. Bladen kaal A. busa R. Blauwe ausella\n"
                           "– Bladen behaard 2\n"
                           "2. Kroon blauw A. cusa Roe Kale ausella\n"
                           "– Kroon geel A. dusa Dorn Gele ausella\n")
                           .edition;
  ASSERT_EQ(edition.taxa.size(), 3U);
  EXPECT_EQ(edition.taxa[0].name, "Ausella busa");
  EXPECT_EQ(edition.taxa[1].name, "Ausella cusa");
  EXPECT_EQ(edition.taxa[2].name, "Ausella dusa");
}

TEST(PrintedTongues, DashesAsLeadersBehindNamesThatAreComparedWith) {
  EXPECT_EQ(sketch("1. Leaves bald, larger than in A. busa Roe — Ausella cusa\n"
                   "1. Leaves hairy — 2\n"
                   "2. Petals blue — Ausella busa Roe\n"
                   "2. Petals yellow — Ausella dusa Dorn\n"),
            "1[1] Leaves bald, larger than in A. busa Roe -> Ausella cusa\n"
            "1[1] Leaves hairy -> 2\n"
            "2[2] Petals blue -> Ausella busa\n"
            "2[2] Petals yellow -> Ausella dusa\n");
}

TEST(PrintedTongues, PlacesBehindADashInTheLine) {
  EXPECT_EQ(sketch("Schlüssel der Arten von Ausella\n\n"
                   "1. Blätter kahl. — A. busa Roe – Alpen\n"
                   "1*. Blätter behaart. — 2\n"
                   "2. Krone blau. — A. cusa Roe – Alpen, bis 2200 m\n"
                   "2*. Krone gelb. — A. dusa Dorn – Jura\n"),
            "1[1] Blätter kahl. -> Ausella busa (Alpen)\n"
            "1[1*] Blätter behaart. -> 2\n"
            "2[2] Krone blau. -> Ausella cusa (Alpen, bis 2200 m)\n"
            "2[2*] Krone gelb. -> Ausella dusa (Jura)\n");
}

TEST(PrintedTongues, CommonNamesBehindADashInTheLine) {
  EXPECT_EQ(sketch("Ключ для определения видов Ausella\n\n"
                   "1. Листья голые. A. busa Roe — Аузелла голая\n"
                   "– Листья волосистые. 2\n"
                   "2. Венчик синий. A. cusa Roe — Аузелла синяя\n"
                   "– Венчик желтый. A. dusa Dorn — Аузелла желтая\n"),
            "1[1] Листья голые. -> Ausella busa (Аузелла голая)\n"
            "1[–] Листья волосистые. -> 2\n"
            "2[2] Венчик синий. -> Ausella cusa (Аузелла синяя)\n"
            "2[–] Венчик желтый. -> Ausella dusa (Аузелла желтая)\n");
}

TEST(PrintedTongues, WordsBeforeNumbersBehindLeaders) {
  for (auto const* const pointer :
       {"gå till 2", "se nr 2", "ver el n.º 2", "(ver n.º 2)", "sigue en 2", "si veda 2", "v. n° 2",
        "jdi na 2", "dále viz 2", "переходим к 2"}) {
    EXPECT_EQ(
        sketch("1. Blad kala ..... Ausella busa Roe\n– Blad håriga ..... " + std::string{pointer} +
               "\n2. Krona blå ..... A. cusa Roe\n– Krona gul ..... A. dusa Dorn\n"),
        "1[1] Blad kala -> Ausella busa\n"
        "1[–] Blad håriga -> 2\n"
        "2[2] Krona blå -> Ausella cusa\n"
        "2[–] Krona gul -> Ausella dusa\n")
        << pointer;
  }
}

TEST(PrintedTongues, WordsBeforeNumbersBehindASentence) {
  for (auto const* const pointer :
       {"Nr. 2", "se nr 2", "(ver n.º 2)", "v. 2", "vedi n. 2", "cf. 2", "pasar a 2", "sigue en 2",
        "naar 2", "se 2", "gå till 2", "viz 2", "segue 2", "см. 2", "смотри 2", "к 2"}) {
    EXPECT_EQ(sketch("1. Blätter ganz kahl. " + std::string{pointer} +
                     "\n1*. Blätter behaart. Ausella busa Roe\n"
                     "2. Krone blau. A. cusa Roe\n2*. Krone gelb. A. dusa Dorn\n"),
              "1[1] Blätter ganz kahl. -> 2\n"
              "1[1*] Blätter behaart. -> Ausella busa\n"
              "2[2] Krone blau. -> Ausella cusa\n"
              "2[2*] Krone gelb. -> Ausella dusa\n")
        << pointer;
  }
}

TEST(PrintedTongues, NumbersOnWrappedLinesWithoutLeaders) {
  EXPECT_EQ(sketch("Bestimmungsschlüssel der Arten\n\n"
                   "1. Blätter ganzrandig, unterseits\nkahl. 2\n"
                   "1*. Blätter gezähnt, unterseits\nfilzig. 3\n"
                   "2. Krone blau, 10–12 mm lang.\nAusella busa R.\n"
                   "2*. Krone gelb, 4,5–6 mm lang. A.\ncusa Roth.\n"
                   "3. Stengel aufrecht, ästig. A.\ndusa DO.\n"
                   "3*. Stengel niederliegend, an den\nKnoten wurzelnd. A. fusa\n(R.) Roth.\n"),
            "1[1] Blätter ganzrandig, unterseits kahl. -> 2\n"
            "1[1*] Blätter gezähnt, unterseits filzig. -> 3\n"
            "2[2] Krone blau, 10–12 mm lang. -> Ausella busa\n"
            "2[2*] Krone gelb, 4,5–6 mm lang. -> Ausella cusa\n"
            "3[3] Stengel aufrecht, ästig. -> Ausella dusa\n"
            "3[3*] Stengel niederliegend, an den Knoten wurzelnd. -> Ausella fusa\n");
}

TEST(PrintedTongues, ShortWordsBeforeNumbersBehindABlank) {
  for (auto const* const pointer : {"v. 2", "cf. 2", "см. 2", "naar 2", "se 2", "к 2"}) {
    EXPECT_EQ(sketch("1. Blätter kahl " + std::string{pointer} +
                     "\n1*. Blätter behaart Ausella busa Roe\n"
                     "2. Krone blau A. cusa Roe\n2*. Krone gelb A. dusa Dorn\n"),
              "1[1] Blätter kahl -> 2\n"
              "1[1*] Blätter behaart -> Ausella busa\n"
              "2[2] Krone blau -> Ausella cusa\n"
              "2[2*] Krone gelb -> Ausella dusa\n")
        << pointer;
  }
}

TEST(PrintedTongues, MonthsAndHeightsBehindNames) {
  EXPECT_EQ(sketch("Schlüssel der Arten von Ausella\n\n"
                   "1. Blätter kahl. — A. busa Roe 5–8; 0,2–0,5 m; Trockenrasen, selten; Alpen\n"
                   "1*. Blätter behaart. — 2\n"
                   "2. Krone blau. — A. cusa Roe 6–7; 0,1–0,2 m; Felsen, kalkmeidend; selten\n"
                   "2*. Krone gelb. — A. dusa Dorn 7–8; 0,1–0,3 m; Wiesen, Wegränder; häufig\n"),
            "1[1] Blätter kahl. -> Ausella busa (5–8; 0,2–0,5 m; Trockenrasen, selten; Alpen)\n"
            "1[1*] Blätter behaart. -> 2\n"
            "2[2] Krone blau. -> Ausella cusa (6–7; 0,1–0,2 m; Felsen, kalkmeidend; selten)\n"
            "2[2*] Krone gelb. -> Ausella dusa (7–8; 0,1–0,3 m; Wiesen, Wegränder; häufig)\n");
}

TEST(PrintedTongues, PagesBehindNames) {
  EXPECT_EQ(sketch("Nyckel till arterna av Ausella\n\n"
                   "1. Blad kala A. busa Roe s. 33\n"
                   "– Blad håriga 2\n"
                   "2. Krona blå A. cusa Roe s. 34\n"
                   "– Krona gul A. dusa Dorn s. 35\n"),
            "1[1] Blad kala -> Ausella busa (s. 33)\n"
            "1[–] Blad håriga -> 2\n"
            "2[2] Krona blå -> Ausella cusa (s. 34)\n"
            "2[–] Krona gul -> Ausella dusa (s. 35)\n");
}

TEST(PrintedTongues, SynonymsInBracketsWithoutLeaders) {
  EXPECT_EQ(sketch("Schlüssel der Arten von Ausella\n\n"
                   "1. Blätter kahl A. busa Roe (A. viridis auct. non Dorn)\n"
                   "1*. Blätter behaart 2\n"
                   "2. Krone blau A. cusa Roe (Syn.: A. caerula auct.)\n"
                   "2*. Krone gelb A. dusa Dorn [A. alba Roe]\n"),
            "1[1] Blätter kahl -> Ausella busa (A. viridis auct. non Dorn)\n"
            "1[1*] Blätter behaart -> 2\n"
            "2[2] Krone blau -> Ausella cusa (Syn.: A. caerula auct.)\n"
            "2[2*] Krone gelb -> Ausella dusa (A. alba Roe)\n");
}

TEST(PrintedTongues, HabitatsOnLinesThatBeginWithADash) {
  EXPECT_EQ(sketch("Schlüssel der Arten von Ausella\n\n"
                   "1. Blätter kahl ..... A. busa Roe\n"
                   "— Wiesen und Wälder; Alpen.\n"
                   "1*. Blätter behaart ..... 2\n"
                   "2. Krone blau ..... A. cusa Roe\n"
                   "— Gebüsche; Jura.\n"
                   "2*. Krone gelb ..... A. dusa Dorn\n"
                   "— Felsen; Karst.\n"),
            "1[1] Blätter kahl -> Ausella busa\n"
            "1[1*] Blätter behaart -> 2\n"
            "2[2] Krone blau -> Ausella cusa\n"
            "2[2*] Krone gelb -> Ausella dusa\n");
}

TEST(PrintedTongues, ThirdLeadsWithADash) {
  EXPECT_EQ(sketch("1. Blätter kahl ..... Ausella busa Roe\n"
                   "1*. Blätter borstig ..... 2\n"
                   "— Blätter behaart ..... A. fusa Roe\n"
                   "2. Krone blau ..... A. cusa Roe\n"
                   "2*. Krone gelb ..... A. dusa Dorn\n"
                   "— Krone weiß ..... A. gusa Dorn\n"),
            "1[1] Blätter kahl -> Ausella busa\n"
            "1[1*] Blätter borstig -> 2\n"
            "1[—] Blätter behaart -> Ausella fusa\n"
            "2[2] Krone blau -> Ausella cusa\n"
            "2[2*] Krone gelb -> Ausella dusa\n"
            "2[—] Krone weiß -> Ausella gusa\n");
}

TEST(PrintedTongues, NoughtsBeforeSecondLeads) {
  EXPECT_EQ(sketch("Clavis specierum\n\n"
                   "1. Folia glabra ..... Ausella busa Roe\n"
                   "0. Folia pilosa ..... 2\n"
                   "2. Corolla coerulea ..... A. cusa Roe\n"
                   "0. Corolla lutea ..... A. dusa Dorn\n"),
            "1[1] Folia glabra -> Ausella busa\n"
            "1[0] Folia pilosa -> 2\n"
            "2[2] Corolla coerulea -> Ausella cusa\n"
            "2[0] Corolla lutea -> Ausella dusa\n");
  EXPECT_EQ(sketch("Clavis specierum\n\n"
                   "1. Folia glabra. Ausella busa Roe\n"
                   "0. Folia pilosa. 2\n"
                   "2. Corolla coerulea. A. cusa Roe\n"
                   "0. Corolla lutea. A. dusa Dorn\n"),
            "1[1] Folia glabra. -> Ausella busa\n"
            "1[0] Folia pilosa. -> 2\n"
            "2[2] Corolla coerulea. -> Ausella cusa\n"
            "2[0] Corolla lutea. -> Ausella dusa\n");
}

TEST(PrintedTongues, StarsBeforeTheNumbersOfSecondLeads) {
  EXPECT_EQ(sketch("Clavis specierum\n\n"
                   "1. Folia glabra ..... Ausella busa Roe\n"
                   "*1. Folia pilosa ..... 2\n"
                   "2. Corolla coerulea ..... A. cusa Roe\n"
                   "*2. Corolla lutea ..... A. dusa Dorn\n"),
            "1[1] Folia glabra -> Ausella busa\n"
            "1[*1] Folia pilosa -> 2\n"
            "2[2] Corolla coerulea -> Ausella cusa\n"
            "2[*2] Corolla lutea -> Ausella dusa\n");
}

TEST(PrintedTongues, TitlesThatEndInAnAuthor) {
  for (auto const* const title :
       {"Artenschlüssel Ausella R.", "Clavis specierum generis Ausella R."}) {
    auto const edition = read_key(std::string{title} +
                                  "\n\n1 Folia glabra ..... A. busa Roe\n– Folia pilosa ..... 2\n"
                                  "2 Corolla rubra ..... A. cusa Roe\n"
                                  "– Corolla nigra ..... A. dusa Dorn\n")
                             .edition;
    ASSERT_EQ(edition.parts.size(), 1U);
    EXPECT_EQ(edition.parts[0].title, title);
  }
}

TEST(PrintedTongues, SexesBeforeNames) {
  EXPECT_EQ(sketch("1. Fühler lang ..... Ausella busa Roe\n"
                   "1*. Fühler kurz ..... 2\n"
                   "2. Beine rot ..... ♂ A. cusa Roe\n"
                   "2*. Beine schwarz ..... !A. dusa Dorn\n"),
            "1[1] Fühler lang -> Ausella busa\n"
            "1[1*] Fühler kurz -> 2\n"
            "2[2] Beine rot -> Ausella cusa (♂)\n"
            "2[2*] Beine schwarz -> Ausella dusa (!)\n");
}

TEST(PrintedTongues, PagesBeforeNames) {
  EXPECT_EQ(sketch("1. Blätter kahl ..... S. 123 Ausella busa Roe\n"
                   "1*. Blätter behaart ..... 2\n"
                   "2. Krone blau ..... n° 12 A. cusa Roe\n"
                   "2*. Krone gelb ..... Nr. 13 A. dusa Dorn\n"),
            "1[1] Blätter kahl -> Ausella busa (S. 123)\n"
            "1[1*] Blätter behaart -> 2\n"
            "2[2] Krone blau -> Ausella cusa (n° 12)\n"
            "2[2*] Krone gelb -> Ausella dusa (Nr. 13)\n");
}

TEST(PrintedTongues, CommonNamesBeforeACommaMayLookLikeLatin) {
  auto const key = [](std::string_view last) {
    return "Key to scale insects\n"
           "1. Shell round ..... 2\n1. Shell long ..... 4\n"
           "2. Shell tan ..... Pale ivy scale, Planaspella hederina\n2. Shell red ..... 3\n"
           "3. Body orange ..... Orchid dot scale, Chionulaspis cattlei\n"
           "3. Body purple ..... Ember scale, Planaspella ignita\n"
           "4. Shell white ..... Fern snow scale, Chionulaspis pteridis\n"
           "4. Shell brown ..... " +
           std::string{last} + "\n";
  };
  EXPECT_EQ(sketch(key("Comma scale, Commataspis pomicola")),
            "1[1] Shell round -> 2\n"
            "1[1] Shell long -> 4\n"
            "2[2] Shell tan -> Planaspella hederina (Pale ivy scale)\n"
            "2[2] Shell red -> 3\n"
            "3[3] Body orange -> Chionulaspis cattlei (Orchid dot scale)\n"
            "3[3] Body purple -> Planaspella ignita (Ember scale)\n"
            "4[4] Shell white -> Chionulaspis pteridis (Fern snow scale)\n"
            "4[4] Shell brown -> Commataspis pomicola (Comma scale)\n");
  // Two names.
  EXPECT_EQ(sketch(key("Commataspis pomicola, Commataspis lata")),
            "1[1] Shell round -> 2\n"
            "1[1] Shell long -> 4\n"
            "2[2] Shell tan -> Planaspella hederina (Pale ivy scale)\n"
            "2[2] Shell red -> 3\n"
            "3[3] Body orange -> Chionulaspis cattlei (Orchid dot scale)\n"
            "3[3] Body purple -> Planaspella ignita (Ember scale)\n"
            "4[4] Shell white -> Chionulaspis pteridis (Fern snow scale)\n"
            "4[4] Shell brown -> Commataspis pomicola + Commataspis lata\n");
}

TEST(PrintedTongues, ANameThatStandsAloneElsewhereIsOneBehindACommonName) {
  EXPECT_EQ(sketch("Key A\n"
                   "1. Snout long ..... Mill weevil Sitonyllus molitor\n"
                   "1. Snout short ..... Rusty flour beetle Tribolodes ferrugo\n"
                   "Key B\n"
                   "1. Grub white ..... Sitonyllus molitor\n"
                   "1. Grub brown ..... Tribolodes ferrugo\n"),
            "1[1] Snout long -> Sitonyllus molitor (Mill weevil)\n"
            "1[1] Snout short -> Tribolodes ferrugo (Rusty flour beetle)\n"
            "1[1] Grub white -> Sitonyllus molitor\n"
            "1[1] Grub brown -> Tribolodes ferrugo\n");
}

}  // namespace
}  // namespace keydrift

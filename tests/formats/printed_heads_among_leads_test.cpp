// Heads and feet of pages among the leads of a key, with no blank line beside them.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

constexpr auto kFourLeads =
    "1[1] Wings clear -> 2\n1[-] Wings dark -> Ausella busa\n"
    "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n";

std::string between(std::string const& line, std::string const& leaders = " .......... ") {
  return "Key to the species of Ausella\n\n1. Wings dark" + leaders + "Ausella busa Roe\n" +
         "- Wings clear" + leaders + "2\n" + line + "\n2. Legs long" + leaders +
         "Ausella cusa Roe\n- Legs short" + leaders + "Ausella dusa Dorn\n";
}

std::string within(std::string const& line) {
  return "Key to the species of Ausella\n\n1. Wings clear .......... 2\n- Wings dark or in\n" +
         line +
         "\nparts brown .......... Ausella busa Roe\n2. Legs long .......... Ausella cusa Roe\n"
         "- Legs short .......... Ausella dusa Dorn\n";
}

constexpr auto kBetween =
    "1[1] Wings dark -> Ausella busa\n1[-] Wings clear -> 2\n"
    "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n";
constexpr auto kHeadWithin =
    "1[1] Wings clear -> 2\n1[-] Wings dark or in parts brown -> Ausella busa\n"
    "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n";

TEST(PrintedHeadsAmongLeads, WithANumberOfNoCouplet) {
  for (auto const* head : {"Review of Ausella                            37",
                           "Ausellidae            35", "36    J. Roe & P. Dorn", "36 | Roe et al.",
                           "Annals of Sarn 12 (3)", "Review of Ausella | 35", "35 | P a g e",
                           "Review of Ausella\t35", "214 J. Roe & P. Dorn"}) {
    EXPECT_EQ(sketch(between(head)), kBetween) << head;
  }
  for (auto const* head :
       {"J. Roe: Revision of Ausella      213", "213      The beetles of Sarn", "212 J. Roe",
        "212 Roe, Beetles of Sarn", "The beetles of Sarn 213", "Annals of Sarn 12 (3)"}) {
    EXPECT_EQ(sketch(within(head)), kHeadWithin) << head;
  }
}

TEST(PrintedHeadsAmongLeads, BeforeANumberOrACapitalOfTheLead) {
  for (std::string const head :
       {"Revision of the genus Ausella 413", "414 J. Roe et al.",
        "https://doi.org/10.9999/sarn.412", "Downloaded from https://sarn.example.org on 12 March",
        "Roe et al.", "Page 17 of 38", "Annals of Sarn 10, 1234\t17 of 38"}) {
    for (std::string const gap : {"", "\n"}) {
      auto const text =
          "Key to the species of Ausella\n\n1. Wings clear .......... 2\n"
          "- Wings dark, the hind ones\n" +
          gap + head + "\n" + gap +
          "0.8 times as long .......... Ausella busa Roe\n"
          "2. Legs long .......... Ausella cusa Roe\n"
          "- Legs short .......... Ausella dusa Dorn\n";
      EXPECT_EQ(sketch(text),
                "1[1] Wings clear -> 2\n"
                "1[-] Wings dark, the hind ones 0.8 times as long -> Ausella busa\n"
                "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n")
          << text;
    }
  }
  EXPECT_EQ(sketch("Key to the species of Ausella\n\n1. Wings clear .......... 2\n"
                   "- Wings dark; mentum broad\n414 J. Roe et al.\n"
                   "Tarsi red .......... Ausella busa Roe\n"
                   "2. Legs long .......... Ausella cusa Roe\n"
                   "- Legs short .......... Ausella dusa Dorn\n"),
            "1[1] Wings clear -> 2\n1[-] Wings dark; mentum broad Tarsi red -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n");
}

TEST(PrintedHeadsAmongLeads, BetweenLeadersAndTheirName) {
  for (std::string const page : {"17", "Roe et al.\n413", "413\nRevision of the genus Ausella",
                                 "Revision of the genus Ausella 413", "\n413\n\nRoe et al.\n"}) {
    auto const text =
        "Key to the species of Ausella\n\n1. Wings clear .......... 2\n"
        "- Wings dark ..........\n" +
        page +
        "\nAusella busa Roe\n2. Legs long .......... Ausella cusa Roe\n"
        "- Legs short .......... Ausella dusa Dorn\n";
    EXPECT_EQ(sketch(text), kFourLeads) << text;
  }
  // A couplet's number there leads to it, and a name alone is no head.
  EXPECT_EQ(sketch("1. Wings dark .......... Ausella busa Roe\n- Wings clear ..........\n2\n"
                   "2. Legs long ..........\nAusella cusa Roe\n"
                   "- Legs short .......... Ausella dusa Dorn\n"),
            kBetween);
}

TEST(PrintedHeadsAmongLeads, OneAddressThatComesBack) {
  // At the foot of each page, and no link beneath every other lead.
  std::string const foot = "https://doi.org/10.9999/sarn.412\n";
  EXPECT_EQ(sketch(foot + "\nThe genus is small.\n\n" + foot + "\n" +
                   "Key to the species of Ausella\n\n1. Wings clear .......... 2\n"
                   "- Wings dark or in\n" +
                   foot +
                   "parts brown .......... Ausella busa Roe\n"
                   "2. Legs long .......... Ausella cusa Roe\n"
                   "- Legs short .......... Ausella dusa Dorn\n"),
            kHeadWithin);
}

TEST(PrintedHeadsAmongLeads, InCapitals) {
  for (auto const* head : {"THE BEETLES OF SARN", "ROE: REVIEW OF AUSELLA"}) {
    EXPECT_EQ(sketch(between(head)), kBetween) << head;
    EXPECT_EQ(sketch(between(head, " ")), kBetween) << head;
    EXPECT_EQ(sketch(within(head)), kHeadWithin) << head;
  }
}

TEST(PrintedHeadsAmongLeads, AuthorsAndTheirTitle) {
  for (auto const* head : {"Roe et al.: Review of Ausella", "J. Roe & P. Dorn: Beetles of Sarn"}) {
    EXPECT_EQ(sketch(between(head)), kBetween) << head;
    EXPECT_EQ(sketch(between(head, " ")), kBetween) << head;
    EXPECT_EQ(sketch(within(head)), kHeadWithin) << head;
  }
  EXPECT_EQ(sketch(within("Antennae: Segments 2 and 3")),
            "1[1] Wings clear -> 2\n"
            "1[-] Wings dark or in Antennae: Segments 2 and 3 parts brown -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n");
}

TEST(PrintedHeadsAmongLeads, AddressesOfTheWeb) {
  for (auto const* foot : {"https://doi.example/10.9999/jbs.12.3", "doi: 10.9999/jbs.12.3",
                           "ISSN 1234-5678 (print)", "www.sarn.example/beetles"}) {
    EXPECT_EQ(sketch(between(foot)), kBetween) << foot;
    EXPECT_EQ(sketch(between(foot, " ")), kBetween) << foot;
    EXPECT_EQ(sketch(within(foot)), kHeadWithin) << foot;
  }
}

TEST(PrintedHeadsAmongLeads, TheTitleOnceMore) {
  for (auto const* head : {"Key to the species of Ausella (continued)", "(continued)",
                           "Key to the species of Ausella"}) {
    EXPECT_EQ(sketch(between(head)), kBetween) << head;
    EXPECT_EQ(sketch(within(head)), kHeadWithin) << head;
  }
}

TEST(PrintedHeadsAmongLeads, TheBindersSign) {
  EXPECT_EQ(sketch(between("3*")), kBetween);
  EXPECT_EQ(sketch("1. Wings clear .......... 2\n3*\n- Wings dark .......... Ausella busa\n"
                   "2. Legs long .......... Ausella cusa\n- Legs short .......... Ausella dusa\n"),
            kFourLeads);
}

TEST(PrintedHeadsAmongLeads, WordsBehindACoupletsNumber) {
  // All leads have an end; with the words of the line this one would have none.
  for (auto const* line :
       {"Roe et al.: Review of Ausella", "(continued)", "3/12", "Species with clear wings"}) {
    EXPECT_EQ(sketch(between(line, " ")), kBetween) << line;
  }
}

TEST(PrintedHeadsAmongLeads, BesideAPagesNumberWithinALead) {
  std::string const begin =
      "1 Wings clear .......... 2\n- Wings dark, or in part with the tibiae\n\n";
  std::string const end =
      "\n\nbrown .......... Ausella busa\n2 Legs long .......... Ausella cusa\n"
      "- Legs short .......... Ausella dusa\n";
  constexpr auto kRead =
      "1[1] Wings clear -> 2\n"
      "1[-] Wings dark, or in part with the tibiae brown -> Ausella busa\n"
      "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n";
  EXPECT_EQ(sketch(begin + "Roe: Beetles of Sarn\n213" + end), kRead);
  EXPECT_EQ(sketch(begin + "212\n\nRoe: Beetles of Sarn" + end), kRead);
}

TEST(PrintedHeadsAmongLeads, WhereTheEndStandsOnALineOfItsOwn) {
  EXPECT_EQ(sketch("1. Wings clear, at most with a few fine hairs at the base of the veins\n2\n"
                   "Review of Ausella\t135\n- Wings dark Ausella busa Roe\n"
                   "2. Legs long Ausella cusa Roe\n- Legs short Ausella dusa Dorn\n"),
            "1[1] Wings clear, at most with a few fine hairs at the base of the veins -> 2\n"
            "1[-] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n");
  EXPECT_EQ(sketch("1 Wings clear, at most with a few fine hairs at the base of the veins\n2\n"
                   "135 | P a g e\n- Wings dark Ausella busa Roe\n"
                   "2 Legs long Ausella cusa Roe\n- Legs short Ausella dusa Dorn\n"),
            "1[1] Wings clear, at most with a few fine hairs at the base of the veins -> 2\n"
            "1[-] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n");
  EXPECT_EQ(sketch("1. Wings clear, at most with a few fine hairs at the base of the\nveins "
                   ".......... 2\nhttps://doi.example/10.9999/jbs.12.3\n"
                   "1. Wings dark .......... Ausella busa Roe\n"
                   "2. Legs long .......... Ausella cusa Roe\n"
                   "2. Legs short .......... Ausella dusa Dorn\n"),
            "1[1] Wings clear, at most with a few fine hairs at the base of the veins -> 2\n"
            "1[1] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[2] Legs short -> Ausella dusa\n");
}

TEST(PrintedHeadsAmongLeads, LeavesWhatOnlyLooksLikeOne) {
  // Leads that lead to pages.
  EXPECT_EQ(sketch("1. Wings clear\n   and long          37\n- Wings dark          2\n"
                   "2. Legs long          41\n- Legs short          45\n"),
            "1[1] Wings clear and long -> ?37\n1[-] Wings dark -> 2\n2[2] Legs long -> ?41\n"
            "2[-] Legs short -> ?45\n");
  // Second leads without a label.
  EXPECT_EQ(sketch("1. Wings clear          2\nWings dark          Ausella busa\n"
                   "2. Legs long          3\nLegs short          32\n"
                   "3. Eyes red          Ausella cusa\nEyes black          Ausella dusa\n"),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Ausella busa\n2[2] Legs long -> 3\n"
            "2[] Legs short -> ?32\n3[3] Eyes red -> Ausella cusa\n3[] Eyes black -> Ausella "
            "dusa\n");
  // An address beneath each name.
  EXPECT_EQ(sketch("1. Wings clear .......... Ausella cusa\nhttps://sarn.example/cusa\n"
                   "- Wings dark .......... Ausella busa\nhttps://sarn.example/busa\n"),
            "1[1] Wings clear -> Ausella cusa (https://sarn.example/cusa)\n"
            "1[-] Wings dark -> Ausella busa (https://sarn.example/busa)\n");
  // A title that the contents name.
  auto const parts = test::read_key(
                         "Key to the males\nKey to the females\n\nKey to the males\n\n"
                         "1. Wings clear .......... 2\n- Wings dark .......... Ausella "
                         "busa\n2. Legs long .......... Ausella cusa\n- Legs short "
                         ".......... Ausella dusa\n\nKey to the females\n\n3. Wings "
                         "red .......... 4\n- Wings green .......... Ausella busa\n"
                         "4. Legs red .......... Ausella cusa\n- Legs black .......... "
                         "Ausella dusa\n")
                         .edition.parts;
  ASSERT_EQ(parts.size(), 2U);
  EXPECT_EQ(parts.back().title, "Key to the females");
  // A heading in capitals above another key, and words of a lead that begin with a capital.
  EXPECT_EQ(line_kinds("1. Wings clear .......... 2\n- Wings dark .......... Ausella busa\n"
                       "2. Legs long .......... Ausella cusa\n- Legs short .......... Ausella "
                       "dusa\nTHE SPECIES OF THE HILLS\n1. Wings red .......... Ausella eusa\n- "
                       "Wings green .......... Ausella fusa\n"),
            "lead, lead, lead, lead, heading, lead, lead");
  EXPECT_EQ(sketch("1. Wings clear 2\n- Antennae with segment 2\nLonger than 3 Ausella busa Roe\n"
                   "2. Legs long Ausella cusa Roe\n- Legs short Ausella dusa Dorn\n"),
            "1[1] Wings clear -> 2\n1[-] Antennae with segment 2 Longer than 3 -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n");
}

TEST(PrintedHeadsAmongLeads, AuthorsInCapitalsHeadAPage) {
  EXPECT_EQ(sketch("Clave de las especies de Ausella.\n"
                   "\n"
                   "A. Papus formado por pelos.\n"
                   "B. Hojas enteras 1. A. busa\n"
                   "BB. Hojas partidas 2. A. cusa\n"
                   "AA. Papus formado por páleas.\n"
                   "\n"
                   "E. CARDONA, Las especies de Ausella 281\n"
                   "\n"
                   "C. Capítulos solitarios 3. A. dusa\n"
                   "CC. Capítulos en grupos 4. A. fusa\n"),
            "A[A] Papus formado por pelos. -> B\n"
            "A[AA] Papus formado por páleas. -> C\n"
            "B[B] Hojas enteras -> Ausella busa\n"
            "B[BB] Hojas partidas -> Ausella cusa\n"
            "C[C] Capítulos solitarios -> Ausella dusa\n"
            "C[CC] Capítulos en grupos -> Ausella fusa\n");
}

TEST(PrintedHeadsAmongLeads, AHeadInCapitalsBeneathThePagesNumber) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Body bright green; on ferns. . . .pteridis Oster.\n"
                   "Body brown . . . . 2\n"
                   "2(1). Scutellum flat; cuneus with a dark spot at base. . . . \n"
                   "maculosa Oster & Pell.\n"
                   "Scutellum swollen; length about 4 mm gracilis Pell.\n"
                   "\n"
                   "220\n"
                   "\n"
                   "INSECTS OF THE OUTER ISLANDS. VOL. 3\n"
                   "\n"
                   "Ausella pteridis (Dorn).\n"),
            "1[1] Body bright green; on ferns -> Ausella pteridis\n"
            "1[] Body brown -> 2\n"
            "2[2] Scutellum flat; cuneus with a dark spot at base -> Ausella maculosa\n"
            "2[] Scutellum swollen; length about 4 mm -> Ausella gracilis\n");
}

TEST(PrintedHeadsAmongLeads, AnAuthorAndWhatTheWorkIsAbout) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Vertex broad 2\n"
                   "\n"
                   "Vertex narrow...... busa\n"
                   "\n"
                   "2(1). Frons black...... cusa\n"
                   "\n"
                   "Fenwick — Planthoppers: Ausidae 93\n"
                   "\n"
                   "Frons yellow...... dusa\n"),
            "1[1] Vertex broad -> 2\n"
            "1[] Vertex narrow -> Ausella busa\n"
            "2[2] Frons black -> Ausella cusa\n"
            "2[] Frons yellow -> Ausella dusa\n");
}

TEST(PrintedHeadsAmongLeads, AuthorsFarFromTheNumberOfThePage) {
  EXPECT_EQ(sketch("1. Botões com cálice fechado.\n"
                   "2. Folhas pilosas .............................. 1. Ausella busa\n"
                   "2'. Folhas glabras ............................. 2. Ausella cusa\n"
                   "1'. Botões com cálice aberto.\n"
                   "\n"
                   "Folia 61(2): 247-264. 2010\n"
                   "\n"
                   "\n"
                   "250                                                                            "
                   "                              Roemann, M.T. & Dornel, L.O.\n"
                   "\n"
                   "3. Folhas sésseis .............................. 3. Ausella dusa\n"
                   "3'. Folhas pecioladas .......................... 4. Ausella fusa\n"),
            "1[1] Botões com cálice fechado. -> 2\n"
            "1[1'] Botões com cálice aberto. -> 3\n"
            "2[2] Folhas pilosas -> Ausella busa\n"
            "2[2'] Folhas glabras -> Ausella cusa\n"
            "3[3] Folhas sésseis -> Ausella dusa\n"
            "3[3'] Folhas pecioladas -> Ausella fusa\n");
}

TEST(PrintedHeadsAmongLeads, AuthorsBetweenAPageAndAHead) {
  EXPECT_EQ(sketch("1 Wings clear; antenna with 14 or\n"
                   "more segments .............. 2\n"
                   "– Wings dark; antenna with 13 segments .............. 4\n"
                   "2 Scutellum with median pit; body length 4.5 mm ......... Ausella busa Roe\n"
                   "– Scutellum without median pit; body length 2.8–4.2 mm\n"
                   "12\n"
                   "Roe & Dorn\n"
                   "Acta Marrovica 12(3): 120–145\n"
                   "......... 3\n"
                   "3 Legs black ......... Ausella cusa Roe\n"
                   "– Legs yellow ......... Ausella dusa Roe\n"
                   "4 Head large ......... Ausella fusa Roe\n"
                   "– Head small ......... Ausella gusa Roe\n"),
            "1[1] Wings clear; antenna with 14 or more segments -> 2\n"
            "1[–] Wings dark; antenna with 13 segments -> 4\n"
            "2[2] Scutellum with median pit; body length 4.5 mm -> Ausella busa\n"
            "2[–] Scutellum without median pit; body length 2.8–4.2 mm -> 3\n"
            "3[3] Legs black -> Ausella cusa\n"
            "3[–] Legs yellow -> Ausella dusa\n"
            "4[4] Head large -> Ausella fusa\n"
            "4[–] Head small -> Ausella gusa\n");
}

}  // namespace
}  // namespace keydrift

// Footnotes at the foot of a page within a key.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::sketch;

constexpr auto kFootnoteStart =
    "1. Wings clear .......... 2\n- Wings dark .......... Ausella busa Roe1\n";
constexpr auto kFootnoteEnd =
    "2. Legs long .......... Ausella cusa Roe\n- Legs short .......... Ausella dusa Dorn\n";
constexpr auto kReadWithoutNotes =
    "1[1] Wings clear -> 2\n1[-] Wings dark -> Ausella busa\n"
    "2[2] Legs long -> Ausella cusa\n2[-] Legs short -> Ausella dusa\n";

// Without what is said beside the names.
std::string leads_of(std::string const& text) {
  auto whole = sketch(text);
  for (auto at = whole.find(" ("); at != std::string::npos; at = whole.find(" (")) {
    whole.erase(at, whole.find(')', at) + 1 - at);
  }
  return whole;
}

TEST(PrintedFootnotes, BetweenLeads) {
  for (auto const* note : {"1 Female unknown.\n", "* Female unknown.\n", "1) Female unknown.\n",
                           "1. Female unknown.\n", "1Female unknown.\n",
                           "1 Female unknown; the male was found twice in the marshes\nof Sarn.\n",
                           "______\n1. Female unknown.\n\n"}) {
    EXPECT_EQ(leads_of(kFootnoteStart + std::string{note} + kFootnoteEnd), kReadWithoutNotes)
        << note;
    EXPECT_EQ(leads_of(kFootnoteStart + ("\n" + std::string{note}) + "\n" + kFootnoteEnd),
              kReadWithoutNotes)
        << note;
  }
  EXPECT_EQ(line_kinds(kFootnoteStart + std::string{"\n1 Female unknown.\n\n"} + kFootnoteEnd),
            "lead, lead, blank, footnote, blank, lead, lead");
}

TEST(PrintedFootnotes, BehindTheLastLead) {
  for (auto const* note : {"* The species Ausella eusa is not included.\n",
                           "\n* The species Ausella eusa is not included.\n"}) {
    EXPECT_EQ(sketch("1 Wings clear … Ausella busa\n– Wings dark … 2\n"
                     "2 Legs long … Ausella cusa\n– Legs short … Ausella dusa\n" +
                     std::string{note}),
              "1[1] Wings clear -> Ausella busa\n1[–] Wings dark -> 2\n"
              "2[2] Legs long -> Ausella cusa\n2[–] Legs short -> Ausella dusa\n")
        << note;
  }
  // The second lead of the last couplet.
  EXPECT_EQ(sketch("1 Wings clear … Ausella busa\n* Wings dark … 2\n"
                   "2 Legs long … Ausella cusa\n* Legs short, as Roe says of Ausella dusa.\n"),
            "1[1] Wings clear -> Ausella busa\n1[*] Wings dark -> 2\n"
            "2[2] Legs long -> Ausella cusa\n2[*] Legs short, as Roe says of Ausella dusa. -> ?\n");
}

TEST(PrintedFootnotes, WithinALead) {
  for (auto const* note : {"* Only the female is known.", "1 Only the female is known."}) {
    EXPECT_EQ(leads_of("1. Wings clear .......... 2\n- Wings dark .......... Ausella busa\n"
                       "2. Legs long or in\n" +
                       std::string{note} +
                       "\nparts short .......... Ausella cusa\n- Legs short .......... Ausella "
                       "dusa\n"),
              "1[1] Wings clear -> 2\n1[-] Wings dark -> Ausella busa\n"
              "2[2] Legs long or in parts short -> Ausella cusa\n2[-] Legs short -> Ausella "
              "dusa\n")
        << note;
  }
}

TEST(PrintedFootnotes, LeavesLeadsThatOnlyLookLikeOne) {
  // A third lead, and stars that mark second leads.
  EXPECT_EQ(sketch("1. Wings clear .......... 2\n1. Wings dark .......... Ausella busa\n"
                   "1. Wings red .......... Ausella eusa\n"
                   "2. Legs long .......... Ausella cusa\n2. Legs short .......... Ausella dusa\n"),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Ausella busa\n1[1] Wings red -> Ausella "
            "eusa\n2[2] Legs long -> Ausella cusa\n2[2] Legs short -> Ausella dusa\n");
  EXPECT_EQ(sketch("1. Wings clear .......... 2\n* Wings dark.\n"
                   "2. Legs long .......... Ausella cusa\n* Legs short .......... Ausella dusa\n"),
            "1[1] Wings clear -> 2\n1[*] Wings dark. -> ?\n"
            "2[2] Legs long -> Ausella cusa\n2[*] Legs short -> Ausella dusa\n");
  // Couplets of another key stand beneath their leads.
  EXPECT_EQ(
      sketch("1. Wings clear .......... Ausella eusa\n- Wings dark .......... Ausella busa\n\n"
             "Key to the species of Busella\n\n1. Legs long.\n"
             "  2. Eyes red .......... Busella cusa\n  2. Eyes black .......... Busella dusa\n"
             "1. Legs short .......... Busella eusa\n"),
      "1[1] Wings clear -> Ausella eusa\n1[-] Wings dark -> Ausella busa\n"
      "1[1] Legs long. -> 2\n1[1] Legs short -> Busella eusa\n"
      "2[2] Eyes red -> Busella cusa\n2[2] Eyes black -> Busella dusa\n");
}

TEST(PrintedFootnotes, ANumberedGenusIsNone) {
  EXPECT_EQ(sketch("KEY TO THE GENERA.\n"
                   "\n"
                   "1. Leaves undivided ... ... ... see 2\n"
                   "Leaves divided ... ... ... see 3\n"
                   "\n"
                   "2. Leaves round, attached by the middle ... 1. PELTUMIA (Pennyplate).\n"
                   "Leaves lance-shaped, entire; flowers yellow\n"
                   "2. VELMORA (Hare's-cup).\n"
                   "\n"
                   "3. Flowers white ... ... ... see 4\n"
                   "Flowers yellow ... ... ... see 5\n"
                   "\n"
                   "4. Segments hair-like ... ... 3. HASTUMERA (Dill-weed).\n"
                   "Segments fleshy ... ... 4. CRITHALIA (Rock-fennel).\n"
                   "\n"
                   "5. Fruit flat ... ... 5. QUERILLA (Goldparsnip).\n"
                   "Fruit round, minute or none\n"
                   "6. ORBELICA (Earth-parsnip).\n"
                   "\n"
                   "1. PELTUMIA (Pennyplate).\n"
                   "\n"
                   "1. P. marina.— Stem 1-2 ft., much branched.\n"),
            "1[1] Leaves undivided -> 2\n"
            "1[] Leaves divided -> 3\n"
            "2[2] Leaves round, attached by the middle -> Peltumia\n"
            "2[] Leaves lance-shaped, entire; flowers yellow -> Velmora\n"
            "3[3] Flowers white -> 4\n"
            "3[] Flowers yellow -> 5\n"
            "4[4] Segments hair-like -> Hastumera\n"
            "4[] Segments fleshy -> Crithalia\n"
            "5[5] Fruit flat -> Querilla\n"
            "5[] Fruit round, minute or none -> Orbelica\n");
}

TEST(PrintedFootnotes, NumberedGeneraOnTheirOwnLinesAreEnds) {
  EXPECT_EQ(sketch("Übersicht der Gattungen.\n"
                   "\n"
                   "1. Staubblätter 5 2.\n"
                   "— Staubblätter 4 oder 2 3.\n"
                   "2. Blumen radförmig, gelb; Kapsel mit Klappen aufspringend.\n"
                   "\n"
                   "1. Velaria.\n"
                   "— Blumen glockig, blau oder weiß; Kapsel mit Deckel.\n"
                   "\n"
                   "2. Lonsia.\n"
                   "3. Staubfäden bärtig; Blüten in langen Trauben. 3. Tragopis.\n"
                   "— Staubfäden kahl 4.\n"
                   "4. Kelch aufgeblasen; Frucht eine Beere.\n"
                   "\n"
                   "4. Schirmeria.\n"
                   "— Kelch nicht vergrößert; Frucht eine Kapsel 5. Hartmundia.\n"),
            "1[1] Staubblätter 5 -> 2\n"
            "1[—] Staubblätter 4 oder 2 -> 3\n"
            "2[2] Blumen radförmig, gelb; Kapsel mit Klappen aufspringend. -> Velaria\n"
            "2[—] Blumen glockig, blau oder weiß; Kapsel mit Deckel. -> Lonsia\n"
            "3[3] Staubfäden bärtig; Blüten in langen Trauben. -> Tragopis\n"
            "3[—] Staubfäden kahl -> 4\n"
            "4[4] Kelch aufgeblasen; Frucht eine Beere. -> Schirmeria\n"
            "4[—] Kelch nicht vergrößert; Frucht eine Kapsel -> Hartmundia\n");
}

// The words of every lead, and its notes behind "/".
std::string words_and_notes(std::string const& text) {
  std::string all;
  for (auto const& couplet : test::read_key(text).edition.couplets) {
    for (auto const& lead : couplet.leads) {
      all += lead.text + (lead.taxon_remark.empty() ? "" : " (" + lead.taxon_remark + ")");
      for (auto const& note : lead.notes) all += " / " + note;
      all += "\n";
    }
  }
  return all;
}

TEST(PrintedFootnotes, GoToTheLeadThatBearsTheirSign) {
  EXPECT_EQ(words_and_notes("1. Scales cycloid* ..... 2\n– Scales ctenoid ..... Ausella busa\n"
                            "2. Fins red, area 2 mm² ..... Ausella cusa²\n– Fins blue ..... "
                            "Ausella dusa\n\n* Best seen under water.\n\n² Known from one "
                            "specimen.\n"),
            "Scales cycloid / Best seen under water.\nScales ctenoid\n"
            "Fins red, area 2 mm² / Known from one specimen.\nFins blue\n");
  EXPECT_EQ(words_and_notes("1. Scales cycloid1 and red ..... Ausella busa\n"
                            "– Scales ctenoid ..... 2\n----------\n1 Best seen under water.\n"
                            "2. Fins red ..... Ausella cusa\n– Fins blue ..... Ausella dusa\n"),
            "Scales cycloid and red / Best seen under water.\nScales ctenoid\nFins red\n"
            "Fins blue\n");
}

TEST(PrintedFootnotes, StayBesideTheKeyWhereSeveralLeadsBearTheSignOrNone) {
  auto const* const key =
      "1. Scales cycloid ..... Ausella busa*\n– Scales ctenoid ..... 2\n"
      "2. Fins red ..... Ausella cusa*\n– Fins B2 ..... Ausella dusa\n\n";
  for (auto const* note : {"* Introduced.\n", "² Known from one specimen.\n"}) {
    auto const edition = test::read_key(key + std::string{note}).edition;
    EXPECT_EQ(edition.notes.size(), 1U) << note;
    EXPECT_EQ(edition.couplets[0].leads[0].taxon_remark, "*");
  }
}

TEST(PrintedFootnotes, SeveralBeneathEachOtherGoToNoWrongLead) {
  EXPECT_EQ(words_and_notes("1. Scales cycloid* ..... 2\n– Scales ctenoid ..... Ausella cusa\n"
                            "2. Fins red** ..... Ausella dusa\n– Fins blue ..... Ausella busa\n\n"
                            "* Introduced.\n** Extinct.\n"),
            "Scales cycloid / Introduced.\nScales ctenoid\nFins red / Extinct.\nFins blue\n");
  EXPECT_EQ(words_and_notes("1. Scales cycloid1 ..... 2\n– Scales ctenoid ..... Ausella cusa\n"
                            "2. Fins red2 ..... Ausella dusa\n– Fins blue ..... Ausella busa\n\n"
                            "1 Best seen under water.\n2 Only known from the type.\n"),
            "Scales cycloid1\nScales ctenoid\nFins red2\nFins blue\n");
}

TEST(PrintedFootnotes, StayBesideTheKeyWhereASignBehindABlankMayBeTheirs) {
  EXPECT_EQ(words_and_notes("1. Scales cycloid* ..... Ausella busa\n"
                            "– Scales ctenoid ..... Ausella cusa *\n\n* Introduced.\n"),
            "Scales cycloid*\nScales ctenoid (*)\n");
}

TEST(PrintedFootnotes, WordsBehindTheSignKeepTheirPlaces) {
  auto const edition = test::read_key(
                           "1. Scales cycloid* and red ..... Ausella busa\n– Scales ctenoid ..... "
                           "Ausella cusa\n\n* Best seen under water.\n")
                           .edition;
  auto const& lead = edition.couplets[0].leads[0];
  ASSERT_EQ(lead.text, "Scales cycloid and red");
  EXPECT_EQ(place_in_text(lead, lead.text.find("cycloid"), 7).column, 11U);
  EXPECT_EQ(place_in_text(lead, lead.text.find("red"), 3).column, 24U);
}

}  // namespace
}  // namespace keydrift

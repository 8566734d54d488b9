// Outlines of cyclopedias and manuals: the accounts beneath leads are where those lead to.

#include <gtest/gtest.h>

#include <string>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using printed::read_account_head;
using printed::read_account_name;
using test::line_kinds;
using test::read_key;
using test::sketch;

std::string name_of(std::string_view line) {
  auto const head = read_account_head(line);
  if (!head) return "none";
  auto const taxon =
      read_account_name(line.substr(head->name_begin, head->name_end - head->name_begin));
  return std::to_string(head->number) + (head->doubtful ? "? " : " ") + taxon.name +
         (taxon.genusless ? " (epithet)" : "");
}

TEST(PrintedAccountLeaves, AccountsBeginWithANumberAndAName) {
  EXPECT_EQ(name_of("1. bus, Roe (A. cus, Hort.). Lvs. blunt"), "1 bus (epithet)");
  EXPECT_EQ(name_of("12. A. bus Roe. Rootstock thick"), "12 A. bus");
  EXPECT_EQ(name_of("3. Ausella alba Roe, Fl. 2, 18. — A tree"), "3 Ausella alba");
  EXPECT_EQ(name_of("4. A. BUS, Roe. Smooth"), "4 A. bus");
  EXPECT_EQ(name_of("5. Smithii, Roe. Stem 6 ft."), "5 smithii (epithet)");
  EXPECT_EQ(name_of("*6. A. bus var. cus Roe. Like the last"), "6 A. bus var. cus");
  EXPECT_EQ(name_of("6. Ausella × media Hort. A cross"), "6 Ausella × media");
  EXPECT_EQ(name_of("7. grácilis, Roe. Lvs. 3"), "7 gracilis (epithet)");
  EXPECT_EQ(name_of("8. cærulea, Roe. Lvs. 3"), "8 caerulea (epithet)");
  EXPECT_EQ(name_of("l. alba, Roe. Lvs. 3"), "1? alba (epithet)");
  EXPECT_EQ(name_of("9 A. bus Roe. Lvs. 3"), "9? A. bus");
  EXPECT_EQ(name_of("A. bus, Roe. Lvs. 3"), "0 A. bus");
  EXPECT_EQ(name_of("8. AUSELLA Roe."), "none");
  EXPECT_EQ(name_of("2. Leaves opposite, entire"), "none");
  EXPECT_EQ(name_of("2. leaves of the stem"), "none");
  EXPECT_EQ(name_of("1.5 cm long, alba"), "none");
}

char const* const kAccountOutline =
    "AUSELLA (after Dr. Aus). Herbs of the meadows.\n"
    "\n"
    "A. Fls. solitary.\n"
    "   B. Plant low.\n"
    "\n"
    "    1. nana, Roe (A. humilis, Hort.). Lvs. blunt, ciliate:\n"
    "A. Dorn found it once. May.\n"
    "    2. alba, Dorn. Fls. white.\n"
    "\n"
    "   BB. Plant tall.\n"
    "3. elata, Roe. Lvs. oblong.\n"
    "AA. Fls. several.\n"
    "\n"
    "    4. spicata, Roe. Stem stout.\n"
    "    Var. lutea, Hort. Fls. yellow.\n";

TEST(PrintedAccountLeaves, AreWhereTheLeadsAboveThemLeadTo) {
  EXPECT_EQ(sketch(kAccountOutline),
            "A[A] Fls. solitary. -> B\nA[AA] Fls. several. -> Ausella spicata\n"
            "B[B] Plant low. -> Ausella nana + Ausella alba\n"
            "B[BB] Plant tall. -> Ausella elata\n");
}

TEST(PrintedAccountLeaves, AreKeptAsNotes) {
  EXPECT_EQ(line_kinds(kAccountOutline),
            "note, blank, lead, lead, blank, destination, note, destination, blank, lead, "
            "destination, lead, blank, destination, note");
  auto const reading = read_key(kAccountOutline);
  ASSERT_EQ(reading.source.lines.size(), 15U);
  EXPECT_EQ(reading.source.lines[5].reason,
            "an account beneath the lead: its species is the destination");
  EXPECT_EQ(reading.source.lines[6].reason, "goes on with the account");
  EXPECT_EQ(reading.source.layout_note,
            "outline, rivals told by their labels, leads marked A and AA, destinations without dot "
            "leaders; accounts beneath leads are where they lead to; a lead without destination "
            "goes on with the next lead");
  ASSERT_EQ(reading.edition.couplets.size(), 2U);
  ASSERT_EQ(reading.edition.couplets[1].leads.size(), 2U);
  auto const& lead = reading.edition.couplets[1].leads[0];
  EXPECT_EQ(lead.destination_printed, "nana, alba");
  EXPECT_EQ(lead.destination_place.line, 6U);
  ASSERT_EQ(lead.notes.size(), 2U);
  EXPECT_EQ(lead.notes[0],
            "1. nana, Roe (A. humilis, Hort.). Lvs. blunt, ciliate: A. Dorn found it once. May.");
}

TEST(PrintedAccountLeaves, SomeLeadsMayNameTheirSpeciesThemselves) {
  EXPECT_EQ(sketch("AUSELLA Roe.\n"
                   "\n"
                   "A. Bulb coated.\n"
                   "B. Fls. yellow ........ 1. A. lutea\n"
                   "BB. Fls. white.\n"
                   "2. A. alba Dorn. Lvs. flat, 5 mm broad.\n"
                   "AA. Bulb naked.\n"
                   "3. A. nuda Roe. Lvs. hollow.\n"),
            "A[A] Bulb coated. -> B\nA[AA] Bulb naked. -> Ausella nuda\n"
            "B[B] Fls. yellow -> Ausella lutea\nB[BB] Fls. white. -> Ausella alba\n");
}

TEST(PrintedAccountLeaves, TheirNumbersMayBeMissing) {
  EXPECT_EQ(sketch("AUSELLA Roe.\n"
                   "\n"
                   "§ 1. Fls. solitary.\n"
                   "\n"
                   "A. nana, Roe. Dwarf Aus. Lvs. blunt.\n"
                   "\n"
                   "A. alba, Dorn. Fls. white.\n"
                   "\n"
                   "§ 2. Fls. in spikes.\n"
                   "\n"
                   "A. spicata, Roe. Stem stout.\n"
                   "\n"
                   "§ 3. Fls. in umbels.\n"
                   "\n"
                   "A. umbellata, Roe. Stem hollow.\n"),
            "1[§ 1] Fls. solitary. -> Ausella nana + Ausella alba\n"
            "1[§ 2] Fls. in spikes. -> Ausella spicata\n"
            "1[§ 3] Fls. in umbels. -> Ausella umbellata\n");
}

TEST(PrintedAccountLeaves, APageMayEndBetweenALeadAndItsAccount) {
  EXPECT_EQ(sketch("AUSELLA Roe\n"
                   "\n"
                   "1 Fls. solitary.\n"
                   "2 Lvs. hairy.\n"
                   "214\n"
                   "A. hirta Roe, a low perennial. Ost.\n"
                   "\n"
                   "2 Lvs. glabrous.\n"
                   "\n"
                   "A. glabra Dorn, perennial. July.\n"
                   "\n"
                   "1 Fls. in heads.\n"
                   "\n"
                   "A. capitata Roe, perennial. Aug.\n"),
            "1[1] Fls. solitary. -> 2\n1[1] Fls. in heads. -> Ausella capitata\n"
            "2[2] Lvs. hairy. -> Ausella hirta\n2[2] Lvs. glabrous. -> Ausella glabra\n");
}

TEST(PrintedAccountLeaves, LeadsMayBeAnsweredByTheSameLabel) {
  EXPECT_EQ(sketch("AUSELLA, Roe\n"
                   "\n"
                   "  A. Fls. solitary.\n"
                   "\n"
                   "     B. Plant low.\n"
                   "\n"
                   "1. A. nana Roe. Glabrous; named by\n"
                   "A. Dorn.\n"
                   "\n"
                   "     B. Plant tall.\n"
                   "\n"
                   "2. A. alta Roe. Hairy.\n"
                   "\n"
                   "  A. Fls. several.\n"
                   "\n"
                   "3. A. spicata Roe. Walls.\n"),
            "A[A] Fls. solitary. -> B\nA[A] Fls. several. -> Ausella spicata\n"
            "B[B] Plant low. -> Ausella nana\nB[B] Plant tall. -> Ausella alta\n");
  EXPECT_EQ(sketch("AUSELLA Roe\n"
                   "\n"
                   "1 Fls. solitary.\n"
                   "2 Lvs. hairy.\n"
                   "\n"
                   "A. hirta Roe, a low perennial. Ost.\n"
                   "\n"
                   "2 Lvs. glabrous.\n"
                   "\n"
                   "A. glabra Dorn, perennial. July.\n"
                   "\n"
                   "1 Fls. in heads.\n"
                   "\n"
                   "A. capitata Roe, perennial. Aug.\n"),
            "1[1] Fls. solitary. -> 2\n1[1] Fls. in heads. -> Ausella capitata\n"
            "2[2] Lvs. hairy. -> Ausella hirta\n2[2] Lvs. glabrous. -> Ausella glabra\n");
}

TEST(PrintedAccountLeaves, SectionsAreLeadsToo) {
  EXPECT_EQ(sketch("AUSELLA, Roe.\n"
                   "\n"
                   "Section I.— EUAUSA. Petals yellow.\n"
                   "\n"
                   "* Pods erect.\n"
                   "\n"
                   "1. A. nana, Roe. Glabrous.\n"
                   "\n"
                   "** Pods drooping.\n"
                   "\n"
                   "2. A. alba, Dorn. Hairy.\n"
                   "\n"
                   "Section II.— LEUCAUSA. Petals white.\n"
                   "\n"
                   "3. A. cava, Roe. Walls.\n"),
            "1[Section I] EUAUSA. Petals yellow. -> 2\n"
            "1[Section II] LEUCAUSA. Petals white. -> Ausella cava\n"
            "2[*] Pods erect. -> Ausella nana\n2[**] Pods drooping. -> Ausella alba\n");
}

TEST(PrintedAccountLeaves, LeadsAboveThemMayBearNoLabels) {
  EXPECT_EQ(sketch("AUSELLA Roe.\n"
                   "\n"
                   "Herbs of the meadows, with narrow leaves.\n"
                   "\n"
                   "Fls. solitary.\n"
                   "  Plant low, the leaves in a flat\n"
                   "  rosette.\n"
                   "\n"
                   "    1. A. nana Roe. Lvs. blunt. Rocks.\n"
                   "\n"
                   "    2. A. alba Dorn. Fls. white.\n"
                   "\n"
                   "  Plant tall.\n"
                   "\n"
                   "    3. A. elata Roe. Lvs. oblong.\n"
                   "\n"
                   "There is a form with double flowers.\n"
                   "\n"
                   "Fls. several.\n"
                   "\n"
                   "    4. A. spicata Roe. Stem stout.\n"),
            "1[] Fls. solitary. -> 2\n1[] Fls. several. -> Ausella spicata\n"
            "2[] Plant low, the leaves in a flat rosette. -> Ausella nana + Ausella alba\n"
            "2[] Plant tall. -> Ausella elata\n");
}

TEST(PrintedAccountLeaves, EachGenusHasAKeyOfItsOwn) {
  auto const text =
      "AUSELLA (after Dr. Aus). Herbs of the\n"
      "meadows.\n"
      "\n"
      "A. Fls. solitary.\n"
      "\n"
      "    1. nana, Roe. Lvs. blunt.\n"
      "\n"
      "AA. Fls. several.\n"
      "\n"
      "    2. spicata, Roe. Stem stout.\n"
      "\n"
      "BUSELLA, Dorn. Shrubs.\n"
      "\n"
      "A. Lvs. flat.\n"
      "\n"
      "    1. plana, Roe. Low.\n"
      "\n"
      "AA. Lvs. hollow.\n"
      "\n"
      "    2. cava, Roe. Tall.\n";
  auto const edition = read_key(text).edition;
  EXPECT_EQ(sketch(edition),
            "A[A] Fls. solitary. -> Ausella nana\nA[AA] Fls. several. -> Ausella spicata\n"
            "A[A] Lvs. flat. -> Busella plana\nA[AA] Lvs. hollow. -> Busella cava\n");
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(edition.parts[0].title, "AUSELLA (after Dr. Aus)");
  EXPECT_EQ(edition.parts[1].title, "BUSELLA, Dorn");
  ASSERT_FALSE(edition.notes.empty());
  EXPECT_EQ(edition.notes[0].text, "Herbs of the meadows.");
}

TEST(PrintedAccountLeaves, AccountsBehindAKeyLeadNowhere) {
  EXPECT_EQ(sketch("A. Wings clear ....... 1. Aus bus\n"
                   "AA. Wings dark.\n"
                   "   B. Legs pale ....... 2. Aus cus\n"
                   "   BB. Legs dark ....... 3. Aus dus\n"
                   "\n"
                   "1. Aus bus Roe. Body long. Common.\n"
                   "2. Aus cus Roe. Body short. Rare.\n"
                   "3. Aus dus Roe. Body round. Rare.\n"),
            "A[A] Wings clear -> Aus bus\nA[AA] Wings dark. -> B\n"
            "B[B] Legs pale -> Aus cus\nB[BB] Legs dark -> Aus dus\n");
}

TEST(PrintedAccountLeaves, EpithetsBehindAKeyTitleAccounts) {
  EXPECT_EQ(sketch("AUSELLA Roe.\n"
                   "\n"
                   "A. Fls. white ....... 1. alba\n"
                   "AA. Fls. yellow.\n"
                   "   B. Lvs. flat ....... 2. lutea\n"
                   "   BB. Lvs. hollow ....... 3. cava\n"
                   "\n"
                   "1. alba, Roe (A. nivea, Hort.). Bulb\n"
                   "round: lvs. 4.\n"
                   "2. lutea, Dorn. Lvs. mostly 2.\n"
                   "3. cava, Dorn. Scape stout.\n"),
            "A[A] Fls. white -> Ausella alba\nA[AA] Fls. yellow. -> B\n"
            "B[B] Lvs. flat -> Ausella lutea\nB[BB] Lvs. hollow -> Ausella cava\n");
}

TEST(PrintedAccountLeaves, FlorasMayCountTheirAccountsThrough) {
  EXPECT_EQ(name_of("2701. — A. bus Roe. — Plant of 30 cm"), "2701 A. bus");
  EXPECT_EQ(sketch("AUSELLA Roe\n\n"
                   "A. Flowers yellow.\n\n"
                   "2701. — A. lutea Roe. — Plant of 30 cm, bare.\n\n"
                   "Marshes.\n\n"
                   "AA. Flowers red.\n"
                   "B. Stem bare.\n\n"
                   "2702. — A. rubra Dorn. — Plant of 10 cm.\n\n"
                   "BB. Stem hairy.\n\n"
                   "2703. — A. hirta Dorn. — Plant of 20 cm.\n"),
            "A[A] Flowers yellow. -> Ausella lutea\n"
            "A[AA] Flowers red. -> B\n"
            "B[B] Stem bare. -> Ausella rubra\n"
            "B[BB] Stem hairy. -> Ausella hirta\n");
}

TEST(PrintedAccountLeaves, EachLevelMayHaveASignOfItsOwn) {
  EXPECT_EQ(sketch("AUSELLA Roe\n\n"
                   "* Flowers yellow.\n"
                   "= Root thick.\n\n"
                   "41. — A. lutea Roe. — Plant of 30 cm, bare.\n\n"
                   "= Root thin.\n"
                   "+ Plant bare.\n\n"
                   "42. — A. glabra Roe. — Plant of 10 cm.\n\n"
                   "+ Plant hairy.\n\n"
                   "43. — A. hirta Roe. — Plant of 20 cm.\n\n"
                   "* Flowers blue.\n\n"
                   "44. — A. cyanea Dorn. — Plant of 50 cm.\n"),
            "1[*] Flowers yellow. -> 2\n"
            "1[*] Flowers blue. -> Ausella cyanea\n"
            "2[=] Root thick. -> Ausella lutea\n"
            "2[=] Root thin. -> 3\n"
            "3[+] Plant bare. -> Ausella glabra\n"
            "3[+] Plant hairy. -> Ausella hirta\n");
}

// A fauna that sets the species beneath its leads goes on with what is said of each.
TEST(PrintedAccountLeaves, ASpeciesComesBackBehindTheKey) {
  EXPECT_EQ(sketch("Gattung Ausella Roe.\n"
                   "\n"
                   "A. Beine geringelt.\n"
                   "a) Binden in Flecke aufgelöst. Auf Wiesen.\n"
                   "A. busa (Roe).\n"
                   "b) Binden nicht unterbrochen. Auf Äckern.\n"
                   "A. cusa Dorn.\n"
                   "B. Beine einfarbig.\n"
                   "a) Bauch hell. In Mooren, überall häufig.\n"
                   "A. dusa (Roe).\n"
                   "b) Bauch dunkel. Auf Dünen.\n"
                   "A. fusa Dorn.\n"
                   "\n"
                   "A. busa (Roe) (Fig. 52). Männchen: 3 mm lang, das Mittelband gelb.\n"),
            "1[A] Beine geringelt. -> 2\n"
            "1[B] Beine einfarbig. -> 3\n"
            "2[a] Binden in Flecke aufgelöst. Auf Wiesen. -> Ausella busa\n"
            "2[b] Binden nicht unterbrochen. Auf Äckern. -> Ausella cusa\n"
            "3[a] Bauch hell. In Mooren, überall häufig. -> Ausella dusa\n"
            "3[b] Bauch dunkel. Auf Dünen. -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift

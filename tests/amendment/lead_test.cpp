// Instructions that are about one lead of a couplet, and what they leave alone.
#include <gtest/gtest.h>

#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "support.hpp"

namespace keydrift::test {
namespace {

constexpr std::string_view kPairs =
    "1a  Body keeled ..... 2\n1b  Body not keeled ..... 3\n"
    "2a  Tail forked ..... Aus bus\n2b  Tail rounded ..... Aus cus\n"
    "3a  Eyes large ..... Aus dus\n3b  Eyes small ..... Aus eus\n";
constexpr std::string_view kSerial =
    "1 (4)  Body keeled\n2 (3)  Tail forked ..... Aus bus\n3 (2)  Tail rounded ..... Aus cus\n"
    "4 (1)  Body not keeled\n5 (6)  Eyes large ..... Aus dus\n6 (5)  Eyes small ..... Aus eus\n";

constexpr std::string_view kFourth = "4a. Legs red ..... Aus eus\n4b. Legs blue ..... Aus fus\n";

std::string led_on(std::string_view instruction, std::string_view lead) {
  auto const result =
      amended(kPairs, std::string{instruction} + std::string{lead} + std::string{kFourth});
  return key_in_short(result.edition) + told(result.unplaced);
}

TEST(AmendedLeads, AreReplacedWithTheCoupletsThatFollow) {
  std::string const expected =
      "1: Body keeled > 2 | Body not keeled > 3\n2: Tail forked > Aus bus | Tail rounded > Aus "
      "cus\n3: Eyes large > Aus dus | Eyes tiny > 4\n4: Legs red > Aus eus | Legs blue > Aus fus\n";
  EXPECT_EQ(led_on("Replace 3b by:\n", "3b. Eyes tiny ..... 4\n"), expected);
  EXPECT_EQ(led_on("Change the second half of couplet 3 to read:\n", "– Eyes tiny ..... 4\n"),
            expected);
  EXPECT_EQ(led_on("Couplet 3 should read:\n", "– Eyes tiny ..... 4\n"), expected);
  EXPECT_EQ(led_on("", "Lead 3b: Eyes tiny ..... 4\nNew couplet 4:\n"), expected);
}

TEST(AmendedLeads, AreSplitIntoCoupletsOfTheirOwnLetters) {
  auto const result = amended(kPairs,
                              "Replace lead 2b by two couplets:\n2b. Tail not forked ..... 2c\n"
                              "2c. Tail round ..... Aus cus\n2c'. Tail pointed ..... Aus fus\n");
  EXPECT_EQ(told(result.unplaced), "");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2: Tail forked > Aus bus | Tail not forked > 2c\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2c"),
            "2c: Tail round > Aus cus | Tail pointed > Aus fus\n");
}

TEST(AmendedLeads, TakeNothingAwayWhereItIsNotKnownWhichIsMeant) {
  auto const key =
      "1  Body keeled ..... Aus bus\n–  Body flat ..... Aus cus\n–  Body round ..... Aus dus\n";
  auto const result = amended(key, "Couplet 1 should read:\n– Body oval ..... Aus eus\n");
  EXPECT_EQ(key_in_short(result.edition), key_in_short(read_key(key)));
  EXPECT_EQ(told(result.unplaced),
            "piece.txt:2:1: error: this does not say which lead of couplet 1 it replaces "
            "[couplet-without-number]\n"
            "  Body oval\n"
            "  name the lead: 1a, 1b and 1c\n");
}

TEST(AmendedLeads, AreNamedAsTheyAreWhereNoCoupletIsFound) {
  auto const result = amended(kPairs, "Replace 3c by:\n3c. Eyes tiny ..... Aus fus\n");
  EXPECT_EQ(told(result.unplaced),
            "piece.txt:1:1: error: this could not be placed: the edition has no couplet or lead 3c "
            "[no-such-couplet]\n"
            "  Replace 3c by:\n"
            "  couplet 3 has the leads 3a and 3b\n");
}

TEST(AmendedLeads, AreFoundByTheirNumbersInSerialKeys) {
  auto const tiny = amended(kSerial, "In lead 6 for \"small\" read \"minute\".\n");
  EXPECT_EQ(told(tiny.unplaced), "");
  EXPECT_EQ(tiny.edition.couplets[2].leads[1].text, "Eyes minute");

  // 5 is a lead as well, not both of them.
  auto const first = amended(kSerial, "In 5 for \"Eyes\" read \"Pupils\".\n");
  EXPECT_EQ(told(first.unplaced), "");
  EXPECT_EQ(first.edition.couplets[2].leads[0].text, "Pupils large");
  EXPECT_EQ(first.edition.couplets[2].leads[1].text, "Eyes small");

  auto const replaced = amended(kSerial, "6 (5)  Eyes tiny ..... Aus fus\n");
  EXPECT_EQ(told(replaced.unplaced), "");
  EXPECT_EQ(replaced.edition.couplets[2].leads[1].text, "Eyes tiny");
}

TEST(AmendedLeads, OfSerialKeysGoOneByOne) {
  auto const one = amended(kSerial, "Delete 6.\n");
  EXPECT_EQ(told(one.unplaced), "");
  ASSERT_EQ(one.edition.couplets.size(), 3U);
  EXPECT_EQ(one.edition.couplets[2].leads.size(), 1U);
  auto const both = amended(kSerial, "Delete 5 and 6.\n");
  EXPECT_EQ(told(both.unplaced), "");
  EXPECT_EQ(both.edition.couplets.size(), 2U);
}

constexpr std::string_view kShort =
    "1  Body keeled ..... 2\n–  Body not keeled ..... Aus bus\n"
    "2  Tail forked ..... Aus cus\n–  Tail rounded ..... Aus dus\n";

TEST(AmendedNote, StandsBehindCoupletsThatWereInserted) {
  auto const result = amended(kShort,
                              "Insert after couplet 2:\n2a. Legs red ..... Aus dus\n"
                              "– Legs blue ..... Aus eus\n");
  auto const printed = print_key(result.edition).value.value_or("");
  EXPECT_TRUE(printed.ends_with("\n\nAmended in couplets 2 and 2a.\n")) << printed;
  auto const again = read_printed_key({.name = "key.txt", .bytes = printed});
  EXPECT_EQ(told(again.findings), "");
}

TEST(AmendedNote, NamesTheCoupletsAsTheyAreNumberedAnew) {
  auto result = amended(kShort,
                        "Insert after couplet 1:\n1a. Legs red ..... 2\n"
                        "– Legs blue ..... Aus eus\nCouplet 2: for 'rounded' read 'round'\n");
  ASSERT_EQ(result.edition.notes.size(), 1U);
  EXPECT_EQ(result.edition.notes[0].text, "Amended in couplets 1, 1a and 2.");
  (void)renumber(result.edition);
  EXPECT_EQ(result.edition.notes[0].text, "Amended in couplets 1, 2 and 3.");
}

TEST(AmendedFindings, NameTheFileThatAFurtherPlaceIsOf) {
  auto const piece = read_piece("2b. Tail blunt ..... Aus dus\n");
  Proof const proof = [](Edition const& edition) {
    auto const& leads = edition.couplets[1].leads;
    Finding finding;
    finding.code = "alike";
    finding.file = edition.name;
    finding.place = leads[1].place;
    finding.message = "these are alike";
    finding.related = {{leads[0].place, "the other lead"}};
    return std::vector{finding};
  };
  auto const result = amend(read_key(kShort), {&piece, 1}, proof);
  EXPECT_EQ(told(result.faults_lasting),
            "piece.txt:1:1: error: these are alike; see key.txt:3:1: the other lead [alike]\n");
}

}  // namespace
}  // namespace keydrift::test

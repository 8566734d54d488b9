// Words changed, leads redirected, taxa renamed.
#include <gtest/gtest.h>

#include "support.hpp"

namespace keydrift::test {
namespace {

TEST(Errata, ChangeADestinationByItsNumber) {
  auto const result = amended(small_key(), "3a: for 4 read 2\n");
  EXPECT_EQ(couplet_in_short(result.edition, "3"), "3 (1): Head red > 2 | Head blue > Bus dus\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2 (1, 3): Legs pale > Aus bus | Legs dark > Aus cus\n");
  EXPECT_EQ(told(result.unplaced), "");
}

TEST(Errata, PreferTheDestinationToANumberAmongTheWords) {
  auto const result =
      amended(std::string{small_key()} + "5 (4)  Setae 4 ..... 4\n–  Setae 3 ..... 2\n",
              "Couplet 5: for 4 read 3.\n");
  EXPECT_EQ(couplet_in_short(result.edition, "5"), "5 (4): Setae 4 > 3 | Setae 3 > 2\n");
  EXPECT_EQ(told(result.remarks),
            "piece.txt:1:1: warning: 4 stands among the words as well; the destination of lead 5a "
            "was changed [words-taken-for-destination]\n"
            "  Couplet 5: for 4 read 3.\n"
            "  quote more of the words if they are meant\n");
}

TEST(Errata, ChangeWordsWhateverTheirCaseAndDashes) {
  auto const key =
      "1  Pale wings 4–6 mm long ..... Aus bus\n–  Dark wings; legs pale ..... Aus cus\n";
  auto const result =
      amended(key, "Couplet 1: for '4-6 mm' read '4.5–6 mm'\n1a: for 'pale' read 'dull'\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Dull wings 4.5–6 mm long > Aus bus | Dark wings; legs pale > Aus cus\n");
}

TEST(Errata, TellLinesOfACoupletApart) {
  auto const key =
      "1  Wings pale, with a band of\n   many pale spots ..... Aus bus\n"
      "–  Wings dark ..... Aus cus\n";
  auto const result = amended(key, "p. 3, couplet 1, line 2: for 'pale' read 'red'\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings pale, with a band of many red spots > Aus bus | Wings dark > Aus cus\n");
}

TEST(Errata, TakeWordsOutAndPutThemIn) {
  auto const key = "1  Wings long, red, hairy ..... Aus bus\n–  Wings short ..... Aus cus\n";
  auto const result =
      amended(key, "In lead 1a delete 'red'.\nIn couplet 1, after 'short' insert ', bare'.\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings long, hairy > Aus bus | Wings short, bare > Aus cus\n");
}

TEST(Errata, ChangeATaxonInOneCoupletOnly) {
  auto const key =
      "1  Wings red ..... Aus bus\n–  Wings blue ..... 2\n"
      "2  Legs red ..... Aus bus\n–  Legs blue ..... Aus cus\n";
  auto const result = amended(key, "In couplet 2, change ‘Aus bus’ to ‘Aus dus Smith’.\n");
  EXPECT_EQ(key_in_short(result.edition),
            "1: Wings red > Aus bus | Wings blue > 2\n"
            "2: Legs red > Aus dus | Legs blue > Aus cus\n");
  EXPECT_EQ(result.edition.taxa[1].authorship, "Smith");
  EXPECT_EQ(deeds_in_short(result), "redirected 2\n");
}

TEST(Errata, RenameATaxonThroughout) {
  auto const key =
      "1  Wings red, except in Aus bus ..... Aus cus\n–  Wings blue ..... 2\n"
      "2  Legs red ..... Aus bus\n–  Legs blue ..... Aus cus\n";
  auto const species = amended(key, "Throughout the key, for Aus bus read Dus bus.\n");
  EXPECT_EQ(key_in_short(species.edition),
            "1: Wings red, except in Dus bus > Aus cus | Wings blue > 2\n"
            "2: Legs red > Dus bus | Legs blue > Aus cus\n");
  EXPECT_EQ(deeds_in_short(species), "reworded 1\nrenamed 2: Aus bus is now Dus bus\n");
  auto const lumped = amended(key, "Throughout, for 'Aus bus' read 'Aus cus'.\n");
  EXPECT_EQ(lumped.edition.taxa.size(), 1U);
  auto const genus = amended(key, "Throughout, for 'Aus' read 'Eus'.\n");
  EXPECT_EQ(key_in_short(genus.edition),
            "1: Wings red, except in Eus bus > Eus cus | Wings blue > 2\n"
            "2: Legs red > Eus bus | Legs blue > Eus cus\n");
}

TEST(Errata, ChangeAuthorsThroughout) {
  auto const key =
      "1  Wings red ..... Aus bus Roe\n–  Wings blue ..... 2\n"
      "2  Legs red ..... Aus cus (Roe) Dorn\n–  Legs blue ..... Aus dus Dorn\n";
  auto const result = amended(key, "Throughout, for \"Roe\" read \"Roe & Fentz\".\n");
  ASSERT_EQ(result.edition.taxa.size(), 3U);
  EXPECT_EQ(result.edition.taxa[0].authorship, "Roe & Fentz");
  EXPECT_EQ(result.edition.taxa[1].authorship, "(Roe & Fentz) Dorn");
  EXPECT_EQ(result.edition.taxa[2].authorship, "Dorn");
  EXPECT_EQ(result.edition.couplets[0].leads[0].destination_printed, "Aus bus Roe & Fentz");
  EXPECT_EQ(deeds_in_short(result),
            "renamed 1: Aus bus Roe is now Aus bus Roe & Fentz\n"
            "renamed 2: Aus cus (Roe) Dorn is now Aus cus (Roe & Fentz) Dorn\n");
}

TEST(Errata, LeaveNothingOfAnAuthorWhoIsTakenOut) {
  auto const key =
      "1  Wings red ..... Aus bus Roe, 1900\n–  Wings blue ..... 2\n"
      "2  Legs red ..... Aus cus (Roe) Dorn\n–  Legs blue ..... Aus dus Roe\n";
  auto const result = amended(key, "Throughout, delete \"Roe\".\n");
  ASSERT_EQ(result.edition.taxa.size(), 3U);
  EXPECT_EQ(result.edition.taxa[0].authorship, "1900");
  EXPECT_EQ(result.edition.taxa[1].authorship, "Dorn");
  EXPECT_EQ(result.edition.taxa[2].authorship, "");
  EXPECT_EQ(result.edition.couplets[1].leads[0].destination_printed, "Aus cus Dorn");
  EXPECT_EQ(result.edition.couplets[1].leads[1].destination_printed, "");
}

// Colours and hair are authors' names as well.
TEST(Errata, ChangeNoAuthorsWhoAreCalledAsWhatIsSaid) {
  auto const key =
      "1  Wings brown ..... Aus bus Brown\n–  Wings blue ..... 2\n"
      "2  Legs brown ..... Aus cus (Brown) Dorn\n–  Legs blue ..... Aus dus Dorn\n";
  auto const result = amended(key, "Throughout, for \"brown\" read \"reddish\".\n");
  ASSERT_EQ(result.edition.taxa.size(), 3U);
  EXPECT_EQ(result.edition.taxa[0].authorship, "Brown");
  EXPECT_EQ(result.edition.taxa[1].authorship, "(Brown) Dorn");
  EXPECT_EQ(result.edition.couplets[0].leads[0].text, "Wings reddish");
  EXPECT_EQ(deeds_in_short(result).find("renamed"), std::string::npos);
}

TEST(Errata, ChangeNoWordsThatAreOnlySpelledAsTheAuthor) {
  auto const key = "1  Wings brown ..... Aus bus Brown\n–  Wings blue ..... Aus cus Dorn\n";
  auto const result = amended(key, "Throughout, for \"Brown\" read \"Braun\".\n");
  ASSERT_EQ(result.edition.taxa.size(), 2U);
  EXPECT_EQ(result.edition.taxa[0].authorship, "Braun");
  EXPECT_EQ(result.edition.couplets[0].leads[0].text, "Wings brown");
}

TEST(Errata, SayWhereOnlyAuthorsHaveTheWords) {
  auto const key = "1  Wings red ..... Aus bus Roe\n–  Wings blue ..... Aus cus Dorn\n";
  EXPECT_EQ(told(amended(key, "In couplet 1, for \"Roe\" read \"Fentz\".\n").unplaced),
            "piece.txt:1:1: error: \"Roe\" stands in 1 as the author of names only, as in "
            "\"Aus bus Roe\" [words-not-found]\n"
            "  In couplet 1, for \"Roe\" read \"Fentz\".\n"
            "  quote the name with its author, or say \"throughout\"\n");
}

TEST(Errata, RewordAWholeLead) {
  auto const result = amended(small_key(), "Lead 2b should read “Legs brown, hairy”.\n");
  EXPECT_EQ(couplet_in_short(result.edition, "2"),
            "2 (1): Legs pale > Aus bus | Legs brown, hairy > Aus cus\n");
}

TEST(Errata, LeadElsewhereInOtherLanguages) {
  for (auto const* piece : {"Punkt 3a führt nun zu 2.", "Le couplet 3a renvoie à 2.",
                            "Couplet 3a : au lieu de 4 lire 2.",
                            "Passo 3a: onde se lê 4 leia-se 2.", "Num. 3a: pro 4 lege 2."}) {
    auto const result = amended(small_key(), piece);
    EXPECT_EQ(couplet_in_short(result.edition, "3"), "3 (1): Head red > 2 | Head blue > Bus dus\n")
        << piece;
  }
}

}  // namespace
}  // namespace keydrift::test

// Pages of accounts that a full line had no room for.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedOverrunPages, StandAtTheEndOfTheLineAbove) {
  EXPECT_EQ(sketch("Key to the Species of Ausella.\n"
                   "\n"
                   "a. Wings clear.\n"
                   "a'. Legs red ... A. busa, p. 12.\n"
                   "b'. Legs longer than the distance from the eye [p. 13.\n"
                   "to the end of the snout; tail short ... A. meridionalis,\n"
                   "b. Wings dusky.\n"
                   "c'. Thorax hairy ... A. fusa, p. 15.\n"
                   "d'. Thorax bare ... A. lusa, p. 17.\n"),
            "1[a] Wings clear. -> 2\n"
            "1[b] Wings dusky. -> 3\n"
            "2[a'] Legs red -> Ausella busa (p. 12.)\n"
            "2[b'] Legs longer than the distance from the eye to the end of the snout; tail short "
            "-> Ausella meridionalis (p. 13.)\n"
            "3[c'] Thorax hairy -> Ausella fusa (p. 15.)\n"
            "3[d'] Thorax bare -> Ausella lusa (p. 17.)\n");
}

TEST(PrintedOverrunPages, StandAtTheEndOfTheLineBelow) {
  EXPECT_EQ(
      sketch("Key to the Species of Ausella.\n"
             "\n"
             "a. Wings clear.\n"
             "a'. Legs red, longer than the distance from the eye ... A. meridionalis,\n"
             "b'. Legs black. [p. 12.\n"
             "a\". Head smooth ... A. cusa, p. 13.\n"
             "b\". Head rugose ... A. dusa, p. 14.\n"
             "b. Wings dusky.\n"
             "c'. Thorax hairy ... A. fusa, p. 15.\n"
             "d'. Thorax bare ... A. lusa, p. 17.\n"),
      "1[a] Wings clear. -> 2\n"
      "1[b] Wings dusky. -> 4\n"
      "2[a'] Legs red, longer than the distance from the eye -> Ausella meridionalis (p. 12.)\n"
      "2[b'] Legs black. -> 3\n"
      "3[a\"] Head smooth -> Ausella cusa (p. 13.)\n"
      "3[b\"] Head rugose -> Ausella dusa (p. 14.)\n"
      "4[c'] Thorax hairy -> Ausella fusa (p. 15.)\n"
      "4[d'] Thorax bare -> Ausella lusa (p. 17.)\n");
}

TEST(PrintedOverrunPages, BehindAuthors) {
  EXPECT_EQ(
      sketch("Key to the Species of Ausella.\n"
             "\n"
             "a. Wings clear.\n"
             "a'. Legs red, longer than the distance from the eye ... striata, Harte,\n"
             "b'. Legs black. [p. 12.\n"
             "a''. Head smooth, wider than the distance from the [p. 13.\n"
             "eye to the snout ... bicolora, sp. n.,\n"
             "b''. Head rugose ... A. dusa, p. 14.\n"
             "b. Wings dusky.\n"
             "c'. Thorax hairy ... A. fusa, p. 15.\n"
             "d'. Thorax bare ... A. lusa, p. 17.\n"),
      "1[a] Wings clear. -> 2\n"
      "1[b] Wings dusky. -> 4\n"
      "2[a'] Legs red, longer than the distance from the eye -> Ausella striata (Harte, p. 12.)\n"
      "2[b'] Legs black. -> 3\n"
      "3[a''] Head smooth, wider than the distance from the eye to the snout -> Ausella "
      "bicolora (sp. n., p. 13.)\n"
      "3[b''] Head rugose -> Ausella dusa (p. 14.)\n"
      "4[c'] Thorax hairy -> Ausella fusa (p. 15.)\n"
      "4[d'] Thorax bare -> Ausella lusa (p. 17.)\n");
}

TEST(PrintedOverrunPages, OnALineOfTheirOwn) {
  EXPECT_EQ(
      sketch("Key to the species of Chrysolalage.\n"
             "\n"
             "a. Under tail-coverts white.\n"
             "a'. Bill black; crown black in the male C. dimorpha, p. 271.\n"
             "b'. Bill pale; ear-coverts\n"
             "chestnut in both sexes C. pyrrhotis, p. 272.\n"
             "b. Under tail-coverts crimson C. sanguiniventris,\n"
             "[p. 273.\n"),
      "1[a] Under tail-coverts white. -> 2\n"
      "1[b] Under tail-coverts crimson -> Chrysolalage sanguiniventris (p. 273.)\n"
      "2[a'] Bill black; crown black in the male -> Chrysolalage dimorpha (p. 271.)\n"
      "2[b'] Bill pale; ear-coverts chestnut in both sexes -> Chrysolalage pyrrhotis (p. 272.)\n");
}

}  // namespace
}  // namespace keydrift

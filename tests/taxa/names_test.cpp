// Names by the Codes' articles.  All names are invented.

#include "keydrift/taxa/names.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keydrift {
namespace {

struct PlainCase {
  char const* printed;
  char const* plain;
};
class PlainName : public testing::TestWithParam<PlainCase> {};
TEST_P(PlainName, LeavesOnlyTheName) {
  EXPECT_EQ(plain_name(GetParam().printed), GetParam().plain);
}
INSTANTIATE_TEST_SUITE_P(
    Table, PlainName,
    testing::Values(
        // Binomina and trinomina (ICZN 5.1, 5.2), authors and years (ICZN 51, ICN 46).
        PlainCase{"Aus bus", "Aus bus"}, PlainCase{"  Aus   bus ", "Aus bus"},
        PlainCase{"Aus bus Smith, 1900", "Aus bus"}, PlainCase{"Aus bus (Smith, 1900)", "Aus bus"},
        PlainCase{"Aus bus (Smith) Jones", "Aus bus"}, PlainCase{"Aus bus de la Mare", "Aus bus"},
        PlainCase{"Aus bus von Berg", "Aus bus"}, PlainCase{"Aus bus Smith & Jones", "Aus bus"},
        PlainCase{"Aus bus Smith et al.", "Aus bus"},
        PlainCase{"Aus bus Smith ex Jones in Brown", "Aus bus"}, PlainCase{"Aus bus L.", "Aus bus"},
        PlainCase{"Aus bus L. f.", "Aus bus"}, PlainCase{"Aus bus cus Smith, 1900", "Aus bus cus"},
        // Ranks below the species (ICN 24.1, 26.1): only the last connecting term counts.
        PlainCase{"Aus bus ssp. cus", "Aus bus subsp. cus"},
        PlainCase{"Aus bus Smith subsp. cus (Jones) Brown", "Aus bus subsp. cus"},
        PlainCase{"Aus bus subsp. cus var. dus", "Aus bus var. dus"},
        PlainCase{"Aus bus L. f. alba Smith", "Aus bus f. alba"},
        PlainCase{"Aus bus f. sp. cus", "Aus bus f. sp. cus"},
        PlainCase{"Aus bus Smith var. bus", "Aus bus var. bus"},
        PlainCase{"Aus bus forma cus", "Aus bus f. cus"},
        // Subgenera (ICZN 6.1), aggregates (ICZN 6.2), sections (ICN 21.1, Rec. 21A).
        PlainCase{"Aus (Bus) cus", "Aus cus"}, PlainCase{"Aus (Bus) cus Smith, 1900", "Aus cus"},
        PlainCase{"Aus (bus) cus", "Aus cus"}, PlainCase{"Aus (sect. Bus) cus", "Aus cus"},
        PlainCase{"Aus subg. Bus cus", "Aus cus"}, PlainCase{"Aus sect. Bus", "Aus sect. Bus"},
        PlainCase{"Aus (Bus)", "Aus subg. Bus"}, PlainCase{"Aus (Smith) Jones", "Aus"},
        PlainCase{"Aus (Smith, 1900)", "Aus"}, PlainCase{"Aus bus agg.", "Aus bus agg."},
        PlainCase{"Aus group", "Aus group"},
        // Doubt (ICZN 5.3) and open nomenclature.
        PlainCase{"Aus cf. bus", "Aus bus"}, PlainCase{"Aus aff. bus Smith", "Aus bus"},
        PlainCase{"Aus ?bus", "Aus bus"}, PlainCase{"?Aus bus", "Aus bus"},
        PlainCase{"Aus bus?", "Aus bus"}, PlainCase{"Aus sp.", "Aus"}, PlainCase{"Aus spp.", "Aus"},
        PlainCase{"Aus sp. nr bus", "Aus"}, PlainCase{"Aus sp. indet.", "Aus"},
        PlainCase{"Aus sp. 2", "Aus sp. 2"}, PlainCase{"Group 2", "Group 2"},
        PlainCase{"Aus bus (Smith), sp. n.", "Aus bus"},
        // What is said about a name (ICN Rec. 47A, 50).
        PlainCase{"Aus bus s. l.", "Aus bus"}, PlainCase{"Aus bus s.str.", "Aus bus"},
        PlainCase{"Aus bus sensu Smith", "Aus bus"},
        PlainCase{"Aus bus auct. non Smith", "Aus bus"},
        PlainCase{"Aus bus Smith sensu lato", "Aus bus"}, PlainCase{"Aus bus p. p.", "Aus bus"},
        PlainCase{"Aus bus (in part)", "Aus bus"}, PlainCase{"Aus bus, rare form only", "Aus bus"},
        PlainCase{"Aus bus Smith, nom. nud.", "Aus bus"},
        // Hybrids (ICN H.1-H.3): the sign in all its spellings; a formula keeps both parents.
        PlainCase{"Aus ×bus", "Aus × bus"}, PlainCase{"Aus x bus", "Aus × bus"},
        PlainCase{"×Aus bus", "× Aus bus"}, PlainCase{"xAus bus", "× Aus bus"},
        PlainCase{"Aus &times; bus", "Aus × bus"},
        PlainCase{"Aus bus nothosubsp. cus", "Aus × bus subsp. cus"},
        PlainCase{"Aus bus × Aus cus", "Aus bus × Aus cus"},
        PlainCase{"Aus bus × cus", "Aus bus × Aus cus"},
        PlainCase{"Aus bus x A. cus", "Aus bus × Aus cus"},
        // Cultivars, higher ranks, capitals, abbreviations.
        PlainCase{"Aus bus 'Red Star'", "Aus bus 'Red Star'"},
        PlainCase{"Family Ausidae", "Ausidae"}, PlainCase{"AUSIDAE", "Ausidae"},
        PlainCase{"AUS BUS", "Aus bus"}, PlainCase{"aus bus", "Aus bus"},
        PlainCase{"A. bus", "A. bus"}, PlainCase{"Aus 10-punctatus Smith", "Aus 10-punctatus"},
        PlainCase{"Aus novae-angliae", "Aus novae-angliae"}, PlainCase{"† Aus bus", "Aus bus"}));

TEST(ParseName, TellsTheAuthorOfTheLastEpithet) {
  EXPECT_EQ(parse_name("Aus bus Smith subsp. cus (Jones) Brown").authorship, "(Jones) Brown");
  EXPECT_EQ(parse_name("Aus bus (Smith & Jones, 1900)").authorship, "(Smith & Jones, 1900)");
  EXPECT_EQ(parse_name("Aus bus Smith, 1900").authorship, "Smith, 1900");
  EXPECT_EQ(parse_name("Aus Smith").authorship, "Smith");
}

TEST(ParseName, GivesAnAutonymTheSpeciesAuthor) {
  auto const name = parse_name("Aus bus Smith var. bus");
  EXPECT_EQ(name.authorship, "Smith");
  EXPECT_EQ(name.rank, "variety");
  EXPECT_EQ(name.infraspecies, "bus");
}

TEST(ParseName, KeepsQualifiersAndSenseApart) {
  EXPECT_EQ(parse_name("Aus cf. bus Smith").qualifier, "cf.");
  EXPECT_EQ(parse_name("Aus sp. nr bus").qualifier, "sp. nr bus");
  EXPECT_EQ(parse_name("Aus bus?").qualifier, "?");
  EXPECT_EQ(parse_name("Aus bus auct. non Smith").sensu, "auct. non Smith");
  EXPECT_EQ(parse_name("Aus bus Smith s. str.").sensu, "s. str.");
  EXPECT_EQ(parse_name("Aus bus Smith s. str.").authorship, "Smith");
}

TEST(ParseName, TellsGenusOnlyNames) {
  for (auto const* name : {"Aus", "Aus sp.", "Aus spp.", "Aus Smith, 1900", "Aus sp. nr bus"}) {
    EXPECT_TRUE(parse_name(name).genus_only) << name;
  }
  for (auto const* name : {"Aus bus", "Aus sp. 1", "Aus subg. Bus", "Aus bus × Aus cus"}) {
    EXPECT_FALSE(parse_name(name).genus_only) << name;
  }
}

TEST(ParseName, MarksHybridsByPosition) {
  EXPECT_TRUE(parse_name("× Aus bus").hybrid_genus);
  EXPECT_FALSE(parse_name("Aus × bus").hybrid_genus);
  EXPECT_TRUE(parse_name("Aus × bus").hybrid);
  EXPECT_EQ(parse_name("Aus bus × Aus cus").other_parent, "Aus cus");
}

struct LikenessCase {
  char const* a;
  char const* b;
  NameLikeness likeness;
};
class Likeness : public testing::TestWithParam<LikenessCase> {};
TEST_P(Likeness, IsTheTierOfTheCodes) {
  auto const& [a, b, likeness] = GetParam();
  EXPECT_STREQ(to_word(compare_names(a, b)), to_word(likeness)) << a << " / " << b;
  EXPECT_STREQ(to_word(compare_names(b, a)), to_word(likeness)) << b << " / " << a;
}
using enum NameLikeness;
INSTANTIATE_TEST_SUITE_P(
    Table, Likeness,
    testing::Values(
        // Tiers 0 and 1.
        LikenessCase{"Aus bus", "Aus bus", identical},
        LikenessCase{"Aus bus Smith", "Aus bus", identical},
        LikenessCase{"Aus bus (Smith, 1900)", "Aus bus Smith, 1900", identical},
        LikenessCase{"aus  bus", "Aus bus", identical},
        LikenessCase{"Aus bus ssp. cus", "Aus bus subsp. cus", identical},
        LikenessCase{"Aus (Bus) cus", "Aus cus", identical},
        // Tier 2: marks, ligatures, hyphens, signs, numbers (ICZN 32.5.2; ICN 60.7, H.3.3).
        LikenessCase{"Aus mülleri", "Aus muelleri", spelling},
        LikenessCase{"Aus mülleri", "Aus mulleri", spelling},
        LikenessCase{"Aus isoëtes", "Aus isoetes", spelling},
        LikenessCase{"Aus cæruleus", "Aus caeruleus", spelling},
        LikenessCase{"Aus smørensis", "Aus smoerensis", spelling},
        LikenessCase{"Aus c-album", "Aus calbum", spelling},
        LikenessCase{"Aus o'briani", "Aus obriani", spelling},
        LikenessCase{"Aus × bus", "Aus bus", spelling},
        LikenessCase{"Aus 10-punctatus", "Aus decempunctatus", spelling},
        LikenessCase{"Aus bus cus", "Aus bus subsp. cus", spelling},
        LikenessCase{"Aus bus × Aus cus", "Aus cus × Aus bus", spelling},
        // Tier 3: gender (ICZN 31.2, 34.2; ICN 23.5).
        LikenessCase{"Aus albus", "Aus alba", gender},
        LikenessCase{"Aus album", "Aus alba", gender},
        LikenessCase{"Aus viridis", "Aus viride", gender},
        LikenessCase{"Aus niger", "Aus nigra", gender},
        LikenessCase{"Aus asper", "Aus asperum", gender},
        LikenessCase{"Aus acer", "Aus acris", gender}, LikenessCase{"Aus acre", "Aus acer", gender},
        LikenessCase{"Aus minor", "Aus minus", gender},
        LikenessCase{"Aus inferior", "Aus inferius", gender},
        LikenessCase{"Aus florifer", "Aus florifera", gender},
        LikenessCase{"Aus lutensis", "Aus lutense", gender},
        LikenessCase{"Aus multiflorus", "Aus multiflorum", gender},
        LikenessCase{"Aus albus Smith, 1900", "Aus alba (Smith, 1900)", gender},
        LikenessCase{"Aus albus Smith", "Aus alba Jones", different},
        // Names in -i, -ae, -orum are nouns; -icus and -ensis are two words.
        LikenessCase{"Aus smithi", "Aus smithae", different},
        LikenessCase{"Aus lutensis", "Aus luticus", different},
        // Tier 4: variant spellings (ICZN 58, 33.4; ICN 60.8).
        LikenessCase{"Aus smithi", "Aus smithii", variant},
        LikenessCase{"Aus smithae", "Aus smithiae", variant},
        LikenessCase{"Aus silvestris", "Aus sylvestris", variant},
        LikenessCase{"Aus litoralis", "Aus littoralis", variant},
        LikenessCase{"Aus autumnalis", "Aus auctumnalis", variant},
        LikenessCase{"Aus caucasicus", "Aus kaukasikus", variant},
        LikenessCase{"Aus sulphureus", "Aus sulfureus", variant},
        LikenessCase{"Aus nigrinotatus", "Aus nigronotatus", variant},
        LikenessCase{"Aus lutensis", "Aus lutiensis", variant},
        LikenessCase{"Aus melanos", "Aus melanus", variant},
        // Tier 5: another genus or rank.
        LikenessCase{"Aus albus", "Bus alba", recombination},
        LikenessCase{"Aus bus cus", "Aus cus", recombination},
        LikenessCase{"Aus bus var. cus", "Aus bus subsp. cus", recombination},
        LikenessCase{"Aus albus Smith, 1900", "Bus alba (Smith, 1900)", recombination},
        LikenessCase{"Aus albus Smith", "Bus alba (Smith) Jones", recombination},
        LikenessCase{"Aus albus Smith, 1900", "Bus alba Jones, 1950", different},
        // Tier 6: a slip of the pen.
        LikenessCase{"Aus palustris", "Aus palusrtis", misprint},
        LikenessCase{"Velunaca bus", "Velunata cus", different},
        LikenessCase{"Velunaca latifolia", "Velunacca latifolia", variant},
        LikenessCase{"Velunaca latifolia", "Velunata latifolia", recombination},
        LikenessCase{"Aus bus", "Aus cus", different},
        // Homonyms and misapplied names never match.
        LikenessCase{"Aus bus Smith, 1900", "Aus bus Jones, 1950", different},
        LikenessCase{"Aus bus Smith, 1900", "Aus bus Smith, 1950", different},
        LikenessCase{"Aus bus auct. non Smith", "Aus bus Smith", different},
        LikenessCase{"Aus", "Bus", different}, LikenessCase{"Aus", "Aus bus", different},
        LikenessCase{"Aus bus agg.", "Aus bus", different},
        LikenessCase{"Aus sp. 1", "Aus sp. 2", different},
        LikenessCase{"Aus sp. 1", "Bus sp. 1", different}));

TEST(NameKeys, AreEqualExactlyForAutomaticMatches) {
  EXPECT_EQ(name_key("Aus alba"), name_key("Aus albus"));
  EXPECT_NE(spelling_key("Aus alba"), spelling_key("Aus albus"));
  EXPECT_EQ(spelling_key("Aus (Bus) mülleri Smith"), spelling_key("AUS muelleri"));
  EXPECT_NE(name_key("Aus smithi"), name_key("Aus smithii"));
  EXPECT_NE(name_key("A. bus"), name_key("Aus bus"));
  EXPECT_EQ(name_keys("Aus mülleri").size(), 2U);
  EXPECT_EQ(name_keys("Aus bus"), std::vector<std::string>{name_key("Aus bus")});
}

TEST(NearNames, PutsTheLeastSlipFirst) {
  std::vector<std::string> const known{"Aus palustris", "Aus lacustris", "Aus palustre",
                                       "Bus palustris", "Cus maritimus"};
  EXPECT_EQ(near_names("Aus palusrtis", known),
            (std::vector<std::string>{"Aus palustris", "Bus palustris", "Aus lacustris"}));
  EXPECT_EQ(near_names("Dusania maritima", known), std::vector<std::string>{"Cus maritimus"});
  EXPECT_TRUE(near_names("Xenoglossa quercina", known).empty());
  EXPECT_EQ(near_names("Aus palusrtis", known, 1).size(), 1U);
}

}  // namespace
}  // namespace keydrift

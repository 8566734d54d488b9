// Characters that changed their role, one transition a test.

#include <gtest/gtest.h>

#include <array>

#include "keydrift/characters/reading.hpp"
#include "keydrift/collation/numbers.hpp"
#include "sketch.hpp"

namespace keydrift {
namespace {

using test::collated;
using test::CoupletSketch;
using test::sketched;
using test::snails;

std::string roles(std::vector<CoupletSketch> const& old_sketch,
                  std::vector<CoupletSketch> const& new_sketch) {
  auto const old_edition = sketched("old", old_sketch);
  auto const new_edition = sketched("new", new_sketch);
  return test::roles_of(collated(old_edition, new_edition), old_edition, new_edition);
}

// The snails with the words of lead 3b replaced.
std::vector<CoupletSketch> with_3b(std::string words) {
  auto sketch = snails();
  sketch[2].leads[1].text = std::move(words);
  return sketch;
}

std::string roles_of_3b(std::string was, std::string is) {
  return roles(with_3b(std::move(was)), with_3b(std::move(is)));
}

TEST(RoleChanges, NothingIsToldOfTheSameKey) { EXPECT_EQ(roles(snails(), snails()), ""); }

TEST(RoleChanges, AFirmCharacterBecomesAnException) {
  EXPECT_EQ(roles_of_3b("lip: brown", "lip: brown except Aus dus"),
            "lip: became an exception note 3b→3b for Aus dus\n");
}

TEST(RoleChanges, AnExceptionIsWidened) {
  EXPECT_EQ(roles_of_3b("lip: brown except Aus dus", "lip: brown except Aus dus | Bus"),
            "lip: exception widened 3b→3b for Bus\n");
}

TEST(RoleChanges, AnExceptionIsNarrowed) {
  EXPECT_EQ(roles_of_3b("lip: brown except Aus dus | Bus", "lip: brown except Bus"),
            "lip: exception narrowed 3b→3b not for Aus dus\n");
}

TEST(RoleChanges, AnExceptionIsForOtherGroups) {
  EXPECT_EQ(roles_of_3b("lip: brown except Aus", "lip: brown except Bus"),
            "lip: exception for other groups 3b→3b for Bus not for Aus\n");
}

TEST(RoleChanges, AnExceptionNamedByItsMembersIsTheSame) {
  EXPECT_EQ(roles_of_3b("lip: brown except Aus", "lip: brown except Aus bus | Aus cus | Aus dus"),
            "");
}

TEST(RoleChanges, AFirmCharacterBecomesHedged) {
  EXPECT_EQ(roles_of_3b("lip: brown", "usually lip: brown"), "lip: became hedged 3b→3b\n");
}

TEST(RoleChanges, AFirmCharacterBecomesANote) {
  EXPECT_EQ(roles_of_3b("lip: brown", "note lip: brown"), "lip: became a note 3b→3b\n");
}

TEST(RoleChanges, ACharacterIsDropped) {
  EXPECT_EQ(roles_of_3b("lip: brown; foot: pale", "lip: brown"), "foot: dropped 3b→3b\n");
}

TEST(RoleChanges, ACharacterIsIntroduced) {
  EXPECT_EQ(roles_of_3b("lip: brown", "lip: brown; foot: pale"), "foot: introduced 3b→3b\n");
}

TEST(RoleChanges, AHedgedCharacterBecomesFirm) {
  EXPECT_EQ(roles_of_3b("usually lip: brown", "lip: brown"), "lip: became firm 3b→3b\n");
  EXPECT_EQ(roles_of_3b("lip: brown except Aus", "lip: brown"),
            "lip: became firm 3b→3b not for Aus\n");
}

TEST(RoleChanges, ANoteBecomesStronger) {
  EXPECT_EQ(roles_of_3b("note lip: brown", "usually lip: brown"), "lip: became stronger 3b→3b\n");
  EXPECT_EQ(roles_of_3b("usually lip: brown", "lip: brown except Aus"),
            "lip: became stronger 3b→3b for Aus\n");
}

TEST(RoleChanges, ALimitMovesFromOneNumberToAnother) {
  auto revised = snails();
  revised[3].leads[0].text = "height: < 4 mm";
  revised[3].leads[1].text = "height: >= 4 mm";
  EXPECT_EQ(roles(snails(), revised),
            "height: limits changed 4a→4a 5 mm → 4 mm\n"
            "height: limits changed 4b→4b 5 mm → 4 mm\n");
}

TEST(RoleChanges, ARangeIsPrintedWithItsExtremes) {
  EXPECT_EQ(roles_of_3b("ribs: (2..)3..5", "ribs: 3..5(..7)"),
            "ribs: limits changed 3b→3b (2–)3–5 → 3–5(–7)\n");
}

TEST(RoleChanges, OtherStatesAreTold) {
  EXPECT_EQ(roles_of_3b("lip: brown", "lip: brown | pink"), "lip: states changed 3b→3b\n");
}

TEST(RoleChanges, ALimitToASexIsAddedAndRemoved) {
  EXPECT_EQ(roles_of_3b("lip: brown", "male lip: brown"), "lip: scope limit added 3b→3b male\n");
  EXPECT_EQ(roles_of_3b("male lip: brown", "lip: brown"), "lip: scope limit removed 3b→3b male\n");
  EXPECT_EQ(roles_of_3b("male lip: brown", "female lip: brown"),
            "lip: scope limit added 3b→3b female\nlip: scope limit removed 3b→3b male\n");
}

TEST(RoleChanges, SeveralChangesOfOneStatementAreAllTold) {
  EXPECT_EQ(roles_of_3b("lip: brown", "male lip: brown | pink except Aus dus"),
            "lip: became an exception note 3b→3b for Aus dus\n"
            "lip: states changed 3b→3b\n"
            "lip: scope limit added 3b→3b male\n");
}

// Each strength against each other, there and back.
TEST(RoleChanges, EveryStepOfStrengthHasItsTransition) {
  struct Step {
    char const* was;
    char const* is;
    char const* there;
    char const* back;
  };
  constexpr auto firm = "lip: brown";
  constexpr auto excepted = "lip: brown except Aus dus";
  constexpr auto hedged = "usually lip: brown";
  constexpr auto noted = "note lip: brown";
  for (auto const& [was, is, there, back] : {
           Step{firm, excepted, "became an exception note 3b→3b for Aus dus",
                "became firm 3b→3b not for Aus dus"},
           Step{firm, hedged, "became hedged 3b→3b", "became firm 3b→3b"},
           Step{firm, noted, "became a note 3b→3b", "became firm 3b→3b"},
           Step{excepted, hedged, "became hedged 3b→3b not for Aus dus",
                "became stronger 3b→3b for Aus dus"},
           Step{excepted, noted, "became a note 3b→3b not for Aus dus",
                "became stronger 3b→3b for Aus dus"},
           Step{hedged, noted, "became a note 3b→3b", "became stronger 3b→3b"},
       }) {
    EXPECT_EQ(roles_of_3b(was, is), std::string{"lip: "} + there + "\n") << was << " | " << is;
    EXPECT_EQ(roles_of_3b(is, was), std::string{"lip: "} + back + "\n") << is << " | " << was;
  }
}

TEST(RoleChanges, OfAGroupExceptedInPartTheOthersAreTold) {
  EXPECT_EQ(roles_of_3b("lip: brown except Aus", "lip: brown except Aus bus"),
            "lip: exception narrowed 3b→3b not for Aus cus not for Aus dus\n");
  EXPECT_EQ(roles_of_3b("lip: brown except Aus bus | Bus", "lip: brown except Aus"),
            "lip: exception for other groups 3b→3b for Aus cus for Aus dus not for Bus\n");
}

TEST(RoleChanges, AnExceptedTaxonUnderItsNewNameIsTheSame) {
  auto const old_edition = sketched("old", with_3b("lip: brown except Aus dus"));
  auto revised = with_3b("lip: brown except Bus novus");
  revised[2].leads[1].to = "Bus novus";
  auto const new_edition = sketched("new", revised);
  auto const collation = collated(old_edition, new_edition,
                                  {.lexicon = {},
                                   .rows = {{.old_name = "Aus dus",
                                             .relation = Relation::congruent,
                                             .new_name = "Bus novus",
                                             .note = "",
                                             .place = {}}},
                                   .parents = {}});
  EXPECT_EQ(test::roles_of(collation, old_edition, new_edition), "");
}

TEST(RoleChanges, ANumberIsToldWhenItIsNegatedOrGetsAnotherEnd) {
  EXPECT_EQ(roles_of_3b("ribs: 3..5", "not ribs: 3..5"),
            "ribs: limits changed 3b→3b 3–5 → not 3–5\n");
  EXPECT_EQ(roles_of_3b("ribs: < 5 mm", "ribs: <= 5 mm"),
            "ribs: limits changed 3b→3b < 5 mm → ≤ 5 mm\n");
  EXPECT_EQ(roles_of_3b("ribs: < 5 mm", "ribs: 3..5 mm"),
            "ribs: limits changed 3b→3b < 5 mm → 3–5 mm\n");
}

TEST(RoleChanges, AContraryIsAnotherState) {
  EXPECT_EQ(roles_of_3b("lip: brown", "not lip: brown"), "lip: states changed 3b→3b\n");
}

// The words of the two editions are read here, with a lexicon that knows both.
TEST(RoleChanges, AnotherWordForAPartOrAStateIsNoChange) {
  Lexicon lexicon;
  lexicon.characters.push_back({.id = "lip",
                                .label = "colour of the lip",
                                .structure = "lip",
                                .property = "colour",
                                .subjects = {Phrase{"lip"}, Phrase{"labrum"}},
                                .states = {{.id = "white", .phrases = {Phrase{"pale"}}},
                                           {.id = "brown", .phrases = {Phrase{"tan"}}}}});
  auto old_edition = test::make_edition(
      "old", {{"1", {{"Lip white", "Aus bus"}, {"Lip brown, except in Aus cus", "2"}}},
              {"2", {{"Shell flat", "Aus cus"}, {"Shell high", "Aus dus"}}}});
  auto new_edition = test::make_edition(
      "new", {{"1", {{"Labrum pale", "Aus bus"}, {"Labrum tan (but not in Aus cus)", "2"}}},
              {"2", {{"Shell flat", "Aus cus"}, {"Shell high", "Aus dus"}}}});
  EXPECT_TRUE(read_statements(std::array{&old_edition, &new_edition}, lexicon).empty());
  auto const collation =
      collated(old_edition, new_edition, {.lexicon = lexicon, .rows = {}, .parents = {}});
  EXPECT_EQ(test::roles_of(collation, old_edition, new_edition), "");
  EXPECT_EQ(test::told(collation, old_edition, new_edition), "1-1 reworded; 2-2 kept");
  EXPECT_FALSE(collation.changes_meaning);
}

TEST(RoleChanges, ExceptionNotesLeadTheList) {
  auto revised = snails();
  revised[0].leads[0].text = "usually shell: smooth";
  revised[5].leads[0].text = "umbilicus: open except Bus";
  EXPECT_EQ(roles(snails(), revised),
            "umbilicus: became an exception note 6a→6a for Bus\n"
            "shell: became hedged 1a→1a\n");
}

TEST(RoleChanges, AnOpaqueStatementInOtherWordsIsOneCharacterWithOtherStates) {
  EXPECT_EQ(roles_of_3b("mantle with two dark bands", "mantle with three dark bands"),
            "~mantle with three dark bands: states changed 3b→3b\n");
}

TEST(RoleChanges, ANumberThatNoLexiconKnowsIsNotTakenForAnotherOne) {
  EXPECT_EQ(roles_of_3b("lip: brown; ~n:rib|1: 3..5", "lip: brown; ~n:tooth|1: 3..5"),
            "~n:rib|1: dropped 3b→3b\n~n:tooth|1: introduced 3b→3b\n");
}

TEST(RoleChanges, AnInsertedCoupletIntroducesItsCharactersWithoutAnOldLead) {
  auto revised = snails();
  revised[0].leads[0].to = "1x";
  revised.push_back({"1x", {{"foot: black", "Aus novus"}, {"foot: pale", "2"}}});
  EXPECT_EQ(roles(snails(), revised), "foot: introduced -→1xa\nfoot: introduced -→1xb\n");
  EXPECT_EQ(roles(revised, snails()), "foot: dropped 1xa→-\nfoot: dropped 1xb→-\n");
}

TEST(RoleChanges, AMovedCharacterIsDroppedHereAndIntroducedThere) {
  auto old_sketch = with_3b("lip: brown; foot: pale");
  auto revised = snails();
  revised[4].leads[1].text = "mouth: oval; foot: pale";
  EXPECT_EQ(roles(old_sketch, revised), "foot: dropped 3b→3b\nfoot: introduced 5b→5b\n");
}

TEST(RoleChanges, OneCharacterOfAnEitherOrIsIntroduced) {
  EXPECT_EQ(roles_of_3b("lip: brown", "lip: brown or foot: pale"), "foot: introduced 3b→3b\n");
}

// The snails with three leads in couplet 3, and the same with the last two in a couplet of their
// own.
std::vector<CoupletSketch> three_lips() {
  auto sketch = snails();
  sketch[2].leads.push_back({"lip: blue", "Aus ius"});
  return sketch;
}
std::vector<CoupletSketch> parted_lips(std::string brown, std::string blue) {
  auto sketch = snails();
  sketch[2].leads = {{"lip: white", "Aus bus"}, {"lip: blue | brown", "3x"}};
  sketch.push_back({"3x", {{std::move(brown), "Aus dus"}, {std::move(blue), "Aus ius"}}});
  return sketch;
}

TEST(RoleChanges, SplittingACoupletChangesNoRole) {
  EXPECT_EQ(roles(three_lips(), parted_lips("lip: brown", "lip: blue")), "");
  EXPECT_EQ(roles(parted_lips("lip: brown", "lip: blue"), three_lips()), "");
}

TEST(RoleChanges, WhatChangesInAPartOfASplitCoupletIsToldOfTheLeadThatItWas) {
  EXPECT_EQ(roles(three_lips(), parted_lips("usually lip: brown", "lip: blue; keel: sharp")),
            "lip: became hedged 3b→3xa\nkeel: introduced 3c→3xb\n");
}

TEST(RoleChanges, WhatWasSaidAboveMergedLeadsNeitherCameNorWent) {
  auto revised = snails();
  revised[1].leads = {{"spire: high; lip: white", "Aus bus"},
                      {"usually spire: high; lip: brown", "Aus dus"},
                      {"spire: low", "Aus cus"}};
  revised.erase(revised.begin() + 2);
  EXPECT_EQ(roles(snails(), revised), "spire: became hedged 2a→2b\n");
}

// What stands behind two leads changes places.
void exchange(std::vector<CoupletSketch>& sketch, std::string const& one, std::string const& two) {
  for (auto& couplet : sketch) {
    for (auto& lead : couplet.leads) {
      if (lead.to == one) {
        lead.to = two;
      } else if (lead.to == two) {
        lead.to = one;
      }
    }
  }
}

TEST(RoleChanges, NoneChangesInPartsThatTaxaMovedAwayFrom) {
  auto parted = parted_lips("lip: brown", "lip: blue");
  parted[2].leads[1].text = "lip: brown; lip: blue";  // sums up what 3x says
  exchange(parted, "Aus dus", "Bus eus");
  EXPECT_EQ(roles(three_lips(), parted), "");
  EXPECT_EQ(roles(parted, three_lips()), "");
}

TEST(RoleChanges, WhatWasSaidAboveMergedLeadsIsKnownWhereTaxaMoved) {
  auto revised = snails();
  revised[1].leads = {{"spire: low", "Aus cus"},
                      {"spire: high; lip: brown", "Aus dus"},
                      {"spire: high; usually lip: white", "Aus bus"}};
  revised.erase(revised.begin() + 2);
  exchange(revised, "Aus bus", "Bus eus");
  EXPECT_EQ(roles(snails(), revised), "lip: became hedged 3a→2c\n");
  EXPECT_EQ(roles(revised, snails()), "lip: became firm 2c→3a\n");
}

TEST(RoleChanges, OfTwoStatementsOnOneCharacterThatOneAnswersThatSharesAState) {
  auto revised = snails();
  revised[2].leads[0].text = "lip: brown; lip: white | grey";
  auto const collation = collated(snails(), revised);
  ASSERT_EQ(collation.roles.size(), 2U);
  EXPECT_EQ(collation.roles[0].transition, RoleTransition::introduced);
  EXPECT_EQ(collation.roles[0].new_statement->ordinal, 0U);
  EXPECT_EQ(collation.roles[1].transition, RoleTransition::states_changed);
  EXPECT_EQ(collation.roles[1].new_statement->ordinal, 1U);
}

TEST(RoleChanges, OfACoupletChangedInEverythingAtOnceAreToldOfItsLeads) {
  auto revised = snails();
  revised[2].leads = {{"usually margin pale {lip: white}; keel: sharp", "Aus bus"},
                      {"rim dark {lip: brown | red}; keel: blunt", "Aus dus"}};
  exchange(revised, "Aus dus", "Bus gus");
  EXPECT_EQ(roles(snails(), revised),
            "lip: became hedged 3a→3a\nkeel: introduced 3a→3a\nkeel: introduced 3b→3b\n"
            "lip: states changed 3b→3b\n");
}

TEST(RoleChanges, ACoupletWhoseTaxaWentIsKnownByItsPlaceAndItsCharacter) {
  auto revised = snails();
  revised[1].leads = {{"usually coil steep {spire: high}; keel: sharp", "3"},
                      {"whorls flat {spire: low | flat}; keel: blunt", "Aus ius"}};
  exchange(revised, "Aus dus", "Bus gus");
  exchange(revised, "Aus bus", "Bus eus");
  EXPECT_EQ(roles(snails(), revised),
            "spire: became hedged 2a→2a\nkeel: introduced 2a→2a\nkeel: introduced 2b→2b\n"
            "spire: states changed 2b→2b\n");
}

// Couplet 5 was put where couplet 3 hung, and united with 2.
TEST(RoleChanges, NoneChangesInCoupletsThatWereBroughtTogetherAndUnited) {
  auto revised = snails();
  revised[1].leads = {{"spire: low", "Aus cus"},
                      {"spire: high; mouth: round", "6"},
                      {"spire: high; mouth: oval", "Bus gus"}};
  revised[3].leads[1].to = "3";
  revised.erase(revised.begin() + 4);
  EXPECT_EQ(roles(snails(), revised), "");
  EXPECT_EQ(roles(revised, snails()), "");
}

TEST(RoleChanges, AnAddedLeadIsNoPartOfACoupletThatWentElsewhere) {
  auto revised = snails();
  revised[1].leads.push_back({"spire: flat; mouth: round", "Aus ius"});
  revised[3].leads[1].to = "Bus gus";
  revised.erase(revised.begin() + 4, revised.end());
  EXPECT_EQ(roles(snails(), revised),
            "mouth: dropped 5a→-\nmouth: dropped 5b→-\n"
            "umbilicus: dropped 6a→-\numbilicus: dropped 6b→-\n"
            "spire: introduced -→2c\nmouth: introduced -→2c\n");
}

// Both leads have another one that is much like them; the third one is new.
TEST(RoleChanges, OfACoupletThatGotALeadThoseInTheSameWordsAnswerWhicheverEditionIsOld) {
  auto before = snails();
  before[2].leads = {{"rim thick white inside", "Aus bus"}, {"rim thick inside blunt", "Aus dus"}};
  auto revised = snails();
  revised[2].leads = {{"keel sharp", "Aus ius"},
                      {"rim thick white inside", "Aus dus"},
                      {"rim thick inside blunt", "Aus bus"}};
  EXPECT_EQ(roles(before, revised), "~keel sharp: introduced -→3a\n");
  EXPECT_EQ(roles(revised, before), "~keel sharp: dropped 3a→-\n");
}

TEST(RoleChanges, TheTaxaBelowTheLeadAreListed) {
  auto revised = snails();
  revised[1].leads[0].text = "usually spire: high";
  auto const edition = sketched("new", revised);
  auto const collation = collated(sketched("old", snails()), edition);
  ASSERT_EQ(collation.roles.size(), 1U);
  auto const below = collation.roles[0].new_taxa.list();
  ASSERT_EQ(below.size(), 2U);
  EXPECT_EQ(edition[below[0]].name, "Aus bus");
  EXPECT_EQ(edition[below[1]].name, "Aus dus");
  EXPECT_EQ(collation.roles[0].old_taxa.size(), 2U);
}

TEST(RoleChanges, UsesOfACharacterAreListedForBothEditionsByLabel) {
  auto const revised = with_3b("lip: brown; some words; ~n:rib|1: 3..5");
  Lexicon lexicon;
  lexicon.characters.emplace_back();
  lexicon.characters.back().id = "lip";
  lexicon.characters.back().label = "Colour of the lip";
  auto const collation =
      collated(snails(), revised, {.lexicon = lexicon, .rows = {}, .parents = {}});
  std::string text;
  for (auto const& use : collation.characters) {
    text += use.label + (use.opaque ? "~ " : " ") + std::to_string(use.old_uses.size()) + "/" +
            std::to_string(use.new_uses.size()) + "\n";
  }
  EXPECT_EQ(text,
            "Colour of the lip 2/2\nheight 2/2\nmouth 2/2\nrib~ 0/1\nshell 2/2\nsome words~ 0/1\n"
            "spire 2/2\numbilicus 2/2\n");
}

TEST(Numbers, DecimalsAreTrimmed) {
  EXPECT_EQ(collating::trimmed(5.0), "5");
  EXPECT_EQ(collating::trimmed(4.25), "4.25");
  EXPECT_EQ(collating::trimmed(0.1 + 0.2), "0.3");
  EXPECT_EQ(collating::trimmed(-0.0), "0");
  EXPECT_EQ(collating::trimmed(1200.0), "1200");
}

}  // namespace
}  // namespace keydrift

// States that a lexicon knows.

#include <gtest/gtest.h>

#include "reading_support.hpp"

namespace keydrift::test {
namespace {

class PlantStates : public testing::TestWithParam<ReadingCase> {};

TEST_P(PlantStates, AreReadFromTheWords) {
  EXPECT_EQ(reading_of(GetParam().text, plant_lexicon()), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kPlantStates[]{
    // a state with its structure
    {"Leaves flat", "leaf-section = flat"},
    {"Leaf flat.", "leaf-section = flat"},
    {"LEAVES FLAT", "leaf-section = flat"},
    {"Leaves rolled inwards", "leaf-section = inrolled"},
    {"Leaves egg-shaped", "leaf-shape = ovate"},
    {"Leaves egg shaped", "leaf-shape = ovate"},
    {"Leaves V‐shaped", "leaf-shape = v-shaped"},
    {"With flat leaves", "leaf-section = flat"},
    {"Leaves are flat", "leaf-section = flat"},
    {"Leaves: flat", "leaf-section = flat"},
    {"Leaf blades flat", "leaf-section = flat"},
    {"Plant with long runners", "habit = creeping"},
    {"Beak of utricle bifid", "beak-tip = bifid"},
    {"Beak of the utricle bifid", "beak-tip = bifid"},
    {"Utricle with a bifid beak", "beak-tip = bifid"},
    {"Lowest bract longer than the inflorescence", "bract-reach = longer"},
    // statements joined
    {"Utricle beaked; beak bifid", "utricle-beak = beaked & beak-tip = bifid"},
    {"Utricle beaked. Beak bifid.", "utricle-beak = beaked & beak-tip = bifid"},
    {"Utricle beaked – beak bifid", "utricle-beak = beaked & beak-tip = bifid"},
    {"Leaves flat, glaucous", "leaf-section = flat & leaf-colour = glaucous"},
    {"Leaves flat and glaucous", "leaf-section = flat & leaf-colour = glaucous"},
    {"Leaves flat, green, linear",
     "leaf-section = flat & leaf-colour = green & leaf-shape = linear"},
    {"Leaves flat; glaucous", "leaf-section = flat & leaf-colour = glaucous"},
    {"Leaves flat with ciliate margins", "leaf-section = flat & leaf-margin = ciliate"},
    {"Leaves flat, margins entire", "leaf-section = flat & leaf-margin = entire"},
    {"Leaf margins toothed, sheaths red", "leaf-margin = toothed & sheath-colour = red"},
    {"Leaf sheath red; leaves green", "sheath-colour = red & leaf-colour = green"},
    {"Plants tufted; leaves flat (Fig. 3)", "habit = tufted & leaf-section = flat"},
    // alternatives
    {"Leaves flat or channelled", "leaf-section = channelled|flat"},
    {"Leaves flat to channelled", "leaf-section = channelled|flat"},
    {"Leaves flat and/or channelled", "leaf-section = channelled|flat"},
    {"Leaves flat/channelled", "leaf-section = channelled|flat"},
    {"Leaves ovate, lanceolate or elliptic", "leaf-shape = elliptic|lanceolate|ovate"},
    {"Leaves ovate, lanceolate, or elliptic", "leaf-shape = elliptic|lanceolate|ovate"},
    {"Leaves either flat or channelled", "leaf-section = channelled|flat"},
    {"Either leaves flat or beak bifid", "leaf-section = flat or beak-tip = bifid"},
    {"Leaves flat or beak bifid", "leaf-section = flat or beak-tip = bifid"},
    {"Either leaves flat, sheaths red, or beak bifid",
     "leaf-section = flat or sheath-colour = red or beak-tip = bifid"},
    {"Leaves flat or channelled, beak bifid or entire",
     "leaf-section = channelled|flat & beak-tip = bifid|entire"},
    {"Leaves flat, or sheaths red and beak bifid",
     "leaf-section = flat or sheath-colour = red & leaf-section = flat or beak-tip = bifid"},
    // an alternative that the lexicon does not know stays an alternative
    {"Leaves ovate or rhombic", "leaf-shape = ovate or ~leaves rhombic = leaves rhombic"},
    {"Leaves ovate, rarely rhombic", "leaf-shape = ovate or ~leaves rhombic = leaves rhombic"},
    // negation
    {"Beak not bifid", "beak-tip ≠ bifid"},
    {"Beak never bifid", "beak-tip ≠ bifid"},
    {"Beak not distinctly bifid", "beak-tip ≠ bifid"},
    {"Beak neither bifid nor oblique", "beak-tip ≠ bifid|oblique"},
    {"Beak not bifid or oblique", "beak-tip ≠ bifid|oblique"},
    {"Beak entire, not bifid", "beak-tip = entire & beak-tip ≠ bifid"},
    {"Leaves flat, not glaucous", "leaf-section = flat & leaf-colour ≠ glaucous"},
    {"Without bifid beak", "beak-tip ≠ bifid"},
    // absence
    {"Utricle without a beak", "utricle-beak = beakless"},
    {"Utricle without beak", "utricle-beak = beakless"},
    {"Utricle beakless", "utricle-beak = beakless"},
    {"Awn absent", "awn = absent"},
    {"Awns lacking", "awn = absent"},
    {"Without awn", "awn = absent"},
    {"Lacking an awn", "awn = absent"},
    {"Awnless", "awn = absent"},
    {"No awns", "awn = absent"},
    {"Awns present", "awn = present"},
    {"With awns", "awn = present"},
    // what is not meant
    {"Stems glaucous", "~stems glaucous = stems glaucous"},
    {"Leaves flat; stems glaucous", "leaf-section = flat & ~stems glaucous = stems glaucous"},
    {"Leaf ligules ciliate", "~leaf ligules ciliate = leaf ligules ciliate"},
    {"Upper leaves flat", "~upper leaves flat = upper leaves flat"},
    {"Margin of petals entire", "~margin of petals entire = margin of petals entire"},
    {"Sheath flat", "~sheath flat = sheath flat"},
};

INSTANTIATE_TEST_SUITE_P(Words, PlantStates, testing::ValuesIn(kPlantStates));

class AnimalStates : public testing::TestWithParam<ReadingCase> {};

TEST_P(AnimalStates, AreReadFromTheWords) {
  EXPECT_EQ(reading_of(GetParam().text, animal_lexicon()), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kAnimalStates[]{
    {"Elytra black", "elytra-colour = black"},
    {"Legs black, tibiae ringed", "leg-colour = black & tibia-colour = ringed"},
    {"Legs black with yellow tibiae", "leg-colour = black & tibia-colour = yellow"},
    {"Legs and elytra black", "elytra-colour = black & leg-colour = black"},
    {"Palps and legs black", "leg-colour = black & ~palps black = palps black"},
    {"Rostrum smooth; eyes missing", "rostrum = smooth & eyes = absent"},
    {"Eyeless", "eyes = absent"},
    {"Without eyes", "eyes = absent"},
    {"Rostrum without teeth", "rostrum = smooth"},
    {"Male claw hooked", "male-claw = hooked"},
    {"Male claws hooked; claws of female slender",
     "male-claw = hooked & claw-shape = slender [female]"},
    {"Hind legs black", "~hind legs black = hind legs black"},
    {"Elytra black or red, legs yellow", "elytra-colour = black|red & leg-colour = yellow"},
};

INSTANTIATE_TEST_SUITE_P(Words, AnimalStates, testing::ValuesIn(kAnimalStates));

TEST(ReadingStates, PrefersTheCharacterThatTheSiblingLeadSpeaksOf) {
  auto const readings = readings_of({"Fruit pale", "Fruit shining"}, plant_lexicon());
  EXPECT_EQ(readings[0], "fruit-skin = pale");
  EXPECT_EQ(readings[1], "fruit-skin = shining");
}

TEST(ReadingStates, SaysSoWhenWordsMeanStatesOfTwoCharacters) {
  auto edition = couplet_of({"Fruit pale", "Fruit dark"});
  auto const findings = read_statements(edition, plant_lexicon());
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(to_text(findings[0]),
            "test:1:1: warning: \"pale\" is read as a state of \"fruit-colour\" and may also mean "
            "\"fruit-skin\" [ambiguous-words]\n"
            "  Fruit pale\n"
            "  name the structure in the words, or add a mark {character: state}\n");
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), "fruit-colour = pale");
}

}  // namespace
}  // namespace keydrift::test

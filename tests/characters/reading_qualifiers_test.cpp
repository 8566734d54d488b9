// Hedges, exceptions, limits and notes.

#include <gtest/gtest.h>

#include "reading_support.hpp"

namespace keydrift::test {
namespace {

class QualifiedPlants : public testing::TestWithParam<ReadingCase> {};

TEST_P(QualifiedPlants, AreAsStrongAsTheirWords) {
  EXPECT_EQ(reading_of(GetParam().text, plant_lexicon()), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kPlantQualifiers[]{
    // hedges
    {"Leaves usually flat", "leaf-section = flat [usually]"},
    {"Usually leaves flat", "leaf-section = flat [Usually]"},
    {"Leaves flat, usually", "leaf-section = flat [usually]"},
    {"Leaves mostly flat", "leaf-section = flat [mostly]"},
    {"Leaves often flat", "leaf-section = flat [often]"},
    {"Leaves rarely flat", "leaf-section = flat [rarely]"},
    {"Leaves typically flat", "leaf-section = flat [typically]"},
    {"Leaves as a rule flat", "leaf-section = flat [as a rule]"},
    {"Leaves ± flat", "leaf-section = flat [±]"},
    {"Leaves more or less flat", "leaf-section = flat [more or less]"},
    {"Leaves more-or-less flat", "leaf-section = flat [more-or-less]"},
    {"Leaves almost flat", "leaf-section = flat [almost]"},
    {"Leaves tending to be flat", "leaf-section = flat [tending to be]"},
    {"Leaves not always flat", "leaf-section = flat [not always]"},
    {"Leaves always flat", "leaf-section = flat"},
    {"Leaves at most channelled", "leaf-section = channelled [at most]"},
    {"Leaves flat, sheaths usually red", "leaf-section = flat & sheath-colour = red [usually]"},
    {"Leaves usually flat; sheaths red", "leaf-section = flat [usually] & sheath-colour = red"},
    {"Spike usually 2–3 cm long", "spike-length 20–30 mm [usually]"},
    {"Spike usually up to 3 cm long", "spike-length ≤30 mm [usually]"},
    {"Spike at least 3 cm long", "spike-length ≥30 mm"},
    {"Beak, if present, bifid", "beak-tip = bifid [if present]"},
    {"Beak (when present) bifid", "beak-tip = bifid [when present]"},
    {"Leaves flat, or if channelled, then sheaths red",
     "leaf-section = channelled|flat [if] & sheath-colour = red [if]"},
    // a hedge before another state widens, and the whole is firm
    {"Leaves flat, rarely channelled", "leaf-section = channelled|flat"},
    {"Leaves flat (rarely channelled)", "leaf-section = channelled|flat"},
    {"Leaves flat or rarely channelled", "leaf-section = channelled|flat"},
    {"Leaves flat to rarely channelled", "leaf-section = channelled|flat"},
    {"Leaves usually flat, sometimes channelled", "leaf-section = channelled|flat"},
    {"Leaves usually flat or channelled", "leaf-section = channelled|flat [usually]"},
    {"Spike usually 2–3 cm, rarely 5 cm long", "spike-length 20–30 (20–50) mm"},
    {"Stigmas 3, sometimes 2", "stigmas 3 (2–3)"},
    // exceptions
    {"Leaves flat except in Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat, except in Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat (except in Aus)", "leaf-section = flat [except Aus]"},
    {"Leaves flat (except Aus bus)", "leaf-section = flat [except Aus bus]"},
    {"Leaves flat (except A. bus)", "leaf-section = flat [except A. bus]"},
    {"Leaves flat except Aus, Bus and Cus", "leaf-section = flat [except Aus, Bus, Cus]"},
    {"Leaves flat except Aus bus, A. cus & A. dus",
     "leaf-section = flat [except Aus bus, A. cus, A. dus]"},
    {"Leaves flat except in Aus and in some Bus", "leaf-section = flat [except Aus, Bus]"},
    {"Leaves flat except in A. bus subsp. cus", "leaf-section = flat [except A. bus subsp. cus]"},
    {"Leaves flat except in Aus sp. 1", "leaf-section = flat [except Aus sp. 1]"},
    {"Leaves flat except in the Aus group", "leaf-section = flat [except Aus group]"},
    {"Leaves flat excluding Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat, other than in Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat, but not in Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat save in Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat, with the exception of Aus", "leaf-section = flat [except Aus]"},
    {"Leaves flat; except in Aus", "leaf-section = flat [except Aus]"},
    {"Except in Aus, leaves flat", "leaf-section = flat [except Aus]"},
    {"Except in Aus; leaves flat", "leaf-section = flat [except Aus]"},
    {"Leaves flat except in Aus, where channelled", "leaf-section = flat [except Aus]"},
    {"Leaves flat (channelled in Aus)", "leaf-section = flat [except Aus]"},
    {"Leaves flat, in Aus channelled", "leaf-section = flat [except Aus]"},
    {"Leaves flat (in A. bus channelled)", "leaf-section = flat [except A. bus]"},
    {"Leaves flat except in Aus; sheaths red",
     "leaf-section = flat [except Aus] & sheath-colour = red"},
    {"Leaves flat, glaucous except in Aus",
     "leaf-section = flat & leaf-colour = glaucous [except Aus]"},
    {"Leaves flat, except in Aus, glaucous",
     "leaf-section = flat [except Aus] & leaf-colour = glaucous"},
    {"Leaves flat (except in Aus), glaucous",
     "leaf-section = flat [except Aus] & leaf-colour = glaucous"},
    {"Spike 2–3 cm (except in Aus bus) long", "spike-length 20–30 mm [except Aus bus]"},
    {"Leaves usually flat, except in Aus", "leaf-section = flat [usually] [except Aus]"},
    {"Leaves flat except in the floating forms",
     "leaf-section = flat [except in the floating forms]"},
    {"Leaves flat except at the base", "leaf-section = flat"},
    // limits
    {"Leaves flat when dry", "leaf-section = flat [dried]"},
    {"Leaves flat (in dried material)", "leaf-section = flat [dried]"},
    {"In fruit leaves flat", "leaf-section = flat [fruiting]"},
    {"Leaves flat in spring", "leaf-section = flat [spring]"},
    {"Female spikes 8–12 mm long", "female-spike-length 8–12 mm"},
    {"Male spikes nodding", "~male spikes nodding = male spikes nodding"},
    {"Leaves flat when dry; sheaths red", "leaf-section = flat [dried] & sheath-colour = red"},
    // notes
    {"Leaves flat [glaucous]", "leaf-section = flat & leaf-colour = glaucous [noted]"},
    {"Leaves flat. Note: sheaths red", "leaf-section = flat & sheath-colour = red [noted]"},
    {"Leaves flat. N.B. sheaths red.", "leaf-section = flat & sheath-colour = red [noted]"},
    {"Leaves flat (Figs 3–5)", "leaf-section = flat"},
    {"Leaves flat (Fig. 3a, b), glaucous (pl. II)", "leaf-section = flat & leaf-colour = glaucous"},
    {"Leaves flat, fig. 3", "leaf-section = flat"},
    {"Leaves flat [Fig. 3]", "leaf-section = flat"},
    {"Leaves flat (54,55)", "leaf-section = flat"},
    {"(Fig. 3)", " [noted]"},
};

INSTANTIATE_TEST_SUITE_P(Words, QualifiedPlants, testing::ValuesIn(kPlantQualifiers));

class QualifiedAnimals : public testing::TestWithParam<ReadingCase> {};

TEST_P(QualifiedAnimals, SpeakOfOneSexOrStage) {
  EXPECT_EQ(reading_of(GetParam().text, animal_lexicon()), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kAnimalQualifiers[]{
    {"♂: elytra black", "elytra-colour = black [male]"},
    {"♀ elytra black", "elytra-colour = black [female]"},
    {"Males: elytra black", "elytra-colour = black [male]"},
    {"Male: elytra black", "elytra-colour = black [male]"},
    {"Males with black elytra", "elytra-colour = black [male]"},
    {"Elytra black in females", "elytra-colour = black [female]"},
    {"Elytra black in the female", "elytra-colour = black [female]"},
    {"Elytra black (males)", "elytra-colour = black [male]"},
    {"Elytra black (♂)", "elytra-colour = black [male]"},
    {"Elytra of male black", "elytra-colour = black [male]"},
    {"Elytra black in both sexes", "elytra-colour = black"},
    {"Elytra black in males and females", "elytra-colour = black"},
    {"♂♀: elytra black", "elytra-colour = black"},
    {"Elytra black except in females", "elytra-colour = black [male]"},
    {"Elytra black, in females legs yellow",
     "elytra-colour = black & leg-colour = yellow [female]"},
    {"Legs black (in alcohol yellow)", "leg-colour = black & leg-colour = yellow [in alcohol]"},
    {"♂: elytra black; legs yellow", "elytra-colour = black [male] & leg-colour = yellow [male]"},
    {"♂: elytra black; ♀: elytra red",
     "elytra-colour = black [male] & elytra-colour = red [female]"},
    {"♂: elytra black. Legs yellow", "elytra-colour = black [male] & leg-colour = yellow"},
    {"Elytra black in males; legs yellow", "elytra-colour = black [male] & leg-colour = yellow"},
    {"Larvae: legs black", "leg-colour = black [larva]"},
    {"Larvae with black legs", "leg-colour = black [larva]"},
    {"Legs black in adults", "leg-colour = black [adult]"},
    {"Adults: legs black", "leg-colour = black [adult]"},
    {"Legs black in juveniles", "leg-colour = black [juvenile]"},
    {"Legs black in life", "leg-colour = black [fresh]"},
    {"Legs black in alcohol", "leg-colour = black [in alcohol]"},
    {"Elytra longer than in females",
     "~elytra longer than in females = elytra longer than in females"},
    {"Legs black except tarsi", "leg-colour = black"},
    {"Legs black except tibiae ringed", "leg-colour = black & tibia-colour = ringed"},
    {"Elytra usually black, red in A. bus", "elytra-colour = black [usually] [except A. bus]"},
};

INSTANTIATE_TEST_SUITE_P(Words, QualifiedAnimals, testing::ValuesIn(kAnimalQualifiers));

struct ForeignCase {
  char const* language;
  char const* text;
  char const* says;
};

class ForeignQualifiers : public testing::TestWithParam<ForeignCase> {};

TEST_P(ForeignQualifiers, AreKnown) {
  auto const& row = GetParam();
  EXPECT_EQ(reading_of(row.text, Lexicon{}, row.language), row.says) << row.text;
}

constexpr ForeignCase kForeign[]{
    {"de", "Blätter meist flach", "~blätter flach = blätter flach [meist]"},
    {"de", "Blätter in der Regel flach", "~blätter flach = blätter flach [in der Regel]"},
    {"de", "Blätter selten flach", "~blätter flach = blätter flach [selten]"},
    {"de", "Blätter mehr oder weniger flach", "~blätter flach = blätter flach [mehr oder weniger]"},
    {"de", "Blätter flach (außer bei Aus bus)", "~blätter flach = blätter flach [except Aus bus]"},
    {"de", "Blätter flach, ausgenommen A. bus", "~blätter flach = blätter flach [except A. bus]"},
    {"de", "Blätter nicht flach", "~blätter flach ≠ blätter flach"},
    {"de", "Ähre 2 bis 3 cm lang", "~n:ähre length|mm 20–30 mm"},
    {"de", "Ähre bis 3 cm lang", "~n:ähre length|mm ≤30 mm"},
    {"de", "Ähre mehr als 3 cm lang", "~n:ähre length|mm >30 mm"},
    {"de", "Ähre mindestens 3 cm lang", "~n:ähre length|mm ≥30 mm"},
    {"de", "Ähre etwa 3 cm lang", "~n:ähre length|mm ~27–33 mm"},
    {"de", "Drei Narben", "~n:narben|1 3"},
    {"fr", "Feuilles généralement planes", "~feuilles planes = feuilles planes [généralement]"},
    {"fr", "Feuilles le plus souvent planes",
     "~feuilles planes = feuilles planes [le plus souvent]"},
    {"fr", "Feuilles planes (sauf chez Aus bus)",
     "~feuilles planes = feuilles planes [except Aus bus]"},
    {"fr", "Feuilles planes, à l’exception de A. bus",
     "~feuilles planes = feuilles planes [except A. bus]"},
    {"fr", "Feuilles plus ou moins planes", "~feuilles planes = feuilles planes [plus ou moins]"},
    {"es", "Hojas generalmente planas", "~hojas planas = hojas planas [generalmente]"},
    {"es", "Hojas a menudo planas", "~hojas planas = hojas planas [a menudo]"},
    {"es", "Hojas planas, excepto en Aus", "~hojas planas = hojas planas [except Aus]"},
    {"es", "Hojas no planas", "~hojas planas ≠ hojas planas"},
    {"pt", "Folhas geralmente planas", "~folhas planas = folhas planas [geralmente]"},
    {"pt", "Folhas às vezes planas", "~folhas planas = folhas planas [às vezes]"},
    {"pt", "Folhas planas, exceto em Aus bus", "~folhas planas = folhas planas [except Aus bus]"},
    {"la", "Folia plerumque plana", "~folia plana = folia plana [plerumque]"},
    {"la", "Folia plana, excepta A. bus", "~folia plana = folia plana [except A. bus]"},
    {"la", "Folia non plana", "~folia plana ≠ folia plana"},
};

INSTANTIATE_TEST_SUITE_P(Languages, ForeignQualifiers, testing::ValuesIn(kForeign));

Statement first_statement(std::string_view text) {
  auto edition = couplet_of({std::string{text}});
  read_statements(edition, plant_lexicon());
  return edition.couplets[0].leads[0].statements.front();
}

TEST(Exceptions, KeepTheirWords) {
  auto const plain = first_statement("Leaves flat, except in Aus bus and Cus; sheaths red");
  EXPECT_EQ(plain.strength, Strength::excepted);
  EXPECT_EQ(plain.exception_words, "except in Aus bus and Cus");
  EXPECT_EQ(plain.except, (std::vector<std::string>{"Aus bus", "Cus"}));
  EXPECT_EQ(plain.text, "Leaves flat, except in Aus bus and Cus");
  auto const other_state = first_statement("Leaves flat (channelled in Aus)");
  EXPECT_EQ(other_state.exception_words, "channelled in Aus");
}

TEST(Hedges, KeepTheirWords) {
  auto const statement = first_statement("Leaves more or less flat");
  EXPECT_EQ(statement.strength, Strength::hedged);
  EXPECT_EQ(statement.hedge, "more or less");
}

// In German all nouns begin with a capital: only taxa that the edition knows are groups there.
TEST(Exceptions, TakeGermanNounsForWhatTheyAre) {
  auto edition = couplet_of({"Blätter flach, außer bei Aus", "Blätter gerollt"}, "de");
  read_statements(edition, Lexicon{});
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements),
            "~blätter flach = blätter flach [except Aus]");
  EXPECT_EQ(reading_of("Blätter flach, außer bei Trockenheit", Lexicon{}, "de"),
            "~blätter flach = blätter flach [außer bei Trockenheit]");
}

}  // namespace
}  // namespace keydrift::test

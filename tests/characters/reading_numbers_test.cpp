// Measurements, counts and ratios, with and without a lexicon.

#include <gtest/gtest.h>

#include "reading_support.hpp"

namespace keydrift::test {
namespace {

class PlainNumbers : public testing::TestWithParam<ReadingCase> {};

// Without a lexicon, the words around the number name the character.
TEST_P(PlainNumbers, NameTheirCharacterByTheWordsAround) {
  EXPECT_EQ(reading_of(GetParam().text, Lexicon{}), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kPlain[]{
    // ranges
    {"Spike 2–3 cm long", "~n:spike length|mm 20–30 mm"},
    {"Spike 2-3 cm long", "~n:spike length|mm 20–30 mm"},
    // a nought that is not printed
    {"Spike .5–1.5 mm long", "~n:spike length|mm 0.5–1.5 mm"},
    {"Spike (.3–).5–.75 mm long", "~n:spike length|mm 0.5–0.75 (0.3–0.75) mm"},
    {"Spike ·5–1·5 mm long", "~n:spike length|mm 0.5–1.5 mm"},
    {"Spike 2 – 3 cm long", "~n:spike length|mm 20–30 mm"},
    {"Spike 2--3 cm long", "~n:spike length|mm 20–30 mm"},
    {"Spike 2 to 3 cm long", "~n:spike length|mm 20–30 mm"},
    {"Spikes 2–3 cm in length", "~n:spike length|mm 20–30 mm"},
    {"Length of spike 2–3 cm", "~n:spike length|mm 20–30 mm"},
    {"Spike length: 2–3 cm", "~n:spike length|mm 20–30 mm"},
    {"Spike 2 cm to 30 mm", "~n:spike length|mm 20–30 mm"},
    {"Spike between 2 and 3 cm long", "~n:spike length|mm 20–30 mm"},
    {"Spike from 2 to 3 cm long", "~n:spike length|mm 20–30 mm"},
    {"Spike 2.5 cm long", "~n:spike length|mm 25 mm"},
    {"Spike 2,5 cm long", "~n:spike length|mm 25 mm"},
    {"Spike 2½ cm long", "~n:spike length|mm 25 mm"},
    {"Carapace 1,200 µm wide", "~n:carapace width|mm 1.2 mm"},
    {"Shell 2 in. high", "~n:shell height|mm 50.8 mm"},
    {"Trunk 3–4 ft thick", "~n:trunk thickness|mm 914.4–1219.2 mm"},
    {"Spike 2–3 cm", "~n:spike length|mm 20–30 mm"},
    {"Spike 2–3 cm wide", "~n:spike width|mm 20–30 mm"},
    {"Leaf blades to 12 mm broad", "~n:leaf blade width|mm ≤12 mm"},
    {"Cap 2–5 cm in diameter", "~n:cap diameter|mm 20–50 mm"},
    {"Cap 2–5 cm diam.", "~n:cap diameter|mm 20–50 mm"},
    {"Stem 2–3 mm thick at base", "~n:stem base thickness|mm 2–3 mm"},
    // of other times and countries
    {"Carapace 4·5 mm", "~n:carapace length|mm 4.5 mm"},
    {"Carapace 9.2~10.1 mm", "~n:carapace length|mm 9.2–10.1 mm"},
    {"Carapace 9,2 à 10,1 mm", "~n:carapace length|mm 9.2–10.1 mm"},
    // the mean within a range
    {"Spores 7–8.5–10 µm", "~n:spore length|mm 0.007–0.01 mm"},
    // extremes
    {"Utricles (3–)4–6(–8) mm", "~n:utricle length|mm 4–6 (3–8) mm"},
    {"Utricles (3-)4-6(-8) mm long", "~n:utricle length|mm 4–6 (3–8) mm"},
    {"Utricles (3) 4–6 (8) mm long", "~n:utricle length|mm 4–6 (3–8) mm"},
    {"Utricles 4–6 (–8) mm", "~n:utricle length|mm 4–6 (4–8) mm"},
    {"Utricles 4–6(to 8) mm", "~n:utricle length|mm 4–6 (4–8) mm"},
    {"Utricles ((1–)2–)3–4(–5(–9)) mm", "~n:utricle length|mm 3–4 (1–9) mm"},
    {"Utricles 4–6 mm (rarely to 8 mm)", "~n:utricle length|mm 4–6 (4–8) mm"},
    {"Utricles 4–6 mm, rarely 8 mm long", "~n:utricle length|mm 4–6 (4–8) mm"},
    {"Petals 3-5(-7)", "~n:petal|1 3–5 (3–7)"},
    {"Petals 5(or 10)", "~n:petal|1 5 (5–10)"},
    {"Leaves (3 or)4-lobed", "~n:leaf lobe|1 4 (3–4)"},
    {"Culms to 20(–30) cm tall", "~n:culm height|mm ≤200 (≤300) mm"},
    // bounds
    {"Spike more than 3 cm long", "~n:spike length|mm >30 mm"},
    {"Spike longer than 3 cm", "~n:spike length|mm >30 mm"},
    {"Spike over 3 cm long", "~n:spike length|mm >30 mm"},
    {"Spike > 3 cm", "~n:spike length|mm >30 mm"},
    {"Spike >3 cm", "~n:spike length|mm >30 mm"},
    {"Spike exceeding 3 cm", "~n:spike length|mm >30 mm"},
    {"Spike less than 3 cm long", "~n:spike length|mm <30 mm"},
    {"Spike shorter than 3 cm", "~n:spike length|mm <30 mm"},
    {"Spike under 3 cm", "~n:spike length|mm <30 mm"},
    {"Spike < 3 cm", "~n:spike length|mm <30 mm"},
    {"Spike to 3 cm long", "~n:spike length|mm ≤30 mm"},
    {"Spike up to 3 cm long", "~n:spike length|mm ≤30 mm"},
    {"Spike at most 3 cm long", "~n:spike length|mm ≤30 mm"},
    {"Spike not more than 3 cm long", "~n:spike length|mm ≤30 mm"},
    {"Spike not exceeding 3 cm", "~n:spike length|mm ≤30 mm"},
    {"Spike never longer than 3 cm", "~n:spike length|mm ≤30 mm"},
    {"Spike ≤ 3 cm", "~n:spike length|mm ≤30 mm"},
    {"Spike 3 cm or less", "~n:spike length|mm ≤30 mm"},
    {"Spike at least 3 cm long", "~n:spike length|mm ≥30 mm"},
    {"Spike not less than 3 cm long", "~n:spike length|mm ≥30 mm"},
    {"Spike ≥ 3 cm", "~n:spike length|mm ≥30 mm"},
    {"Spike 3 cm or more", "~n:spike length|mm ≥30 mm"},
    {"Spike 3 cm or longer", "~n:spike length|mm ≥30 mm"},
    {"Stamens 10 or more", "~n:stamen|1 ≥10"},
    {"Stamens 10+", "~n:stamen|1 ≥10"},
    {"Spike more than 3 but less than 5 cm long", "~n:spike length|mm >30<50 mm"},
    // approximation: a tenth, where nothing else is said
    {"Petiole ca. 5 mm long", "~n:petiole length|mm ~4.5–5.5 mm"},
    {"Petiole about 5 mm long", "~n:petiole length|mm ~4.5–5.5 mm"},
    {"Petiole ± 5 mm", "~n:petiole length|mm ~4.5–5.5 mm"},
    {"Petiole c. 5 mm", "~n:petiole length|mm ~4.5–5.5 mm"},
    {"Petiole approx. 5 mm", "~n:petiole length|mm ~4.5–5.5 mm"},
    {"Petiole more than ca. 5 mm", "~n:petiole length|mm ~>4.5 mm"},
    {"Petiole nearly 5 mm long", "~n:petiole length|mm ~4.5–5.5 mm"},
    // counts
    {"Stigmas 3", "~n:stigma|1 3"},
    {"Stigmas three", "~n:stigma|1 3"},
    {"Three stigmas", "~n:stigma|1 3"},
    {"With 3 stigmas", "~n:stigma|1 3"},
    {"Stigmas 3 in every flower", "~n:stigma|1 3"},
    {"Stigmas 3 in number", "~n:stigma|1 3"},
    {"Stigmas 2 or 3", "~n:stigma|1 2 | 3"},
    {"Petals 3, 5 or 7", "~n:petal|1 3 | 5 | 7"},
    {"Stigmas 2–3", "~n:stigma|1 2–3"},
    {"Two to four stamens", "~n:stamen|1 2–4"},
    {"Stamens 5, rarely 4", "~n:stamen|1 5 (4–5)"},
    {"Stamens 5 or rarely 4", "~n:stamen|1 5 (4–5)"},
    {"Antennae with 11 segments", "~n:antenna segment|1 11"},
    {"Fin with 2 spines and 8–9 soft rays", "~n:fin spine|1 2 & ~n:fin soft ray|1 8–9"},
    {"With 3–5 stems 10–20 cm tall", "~n:stem|1 3–5 & ~n:stem height|mm 100–200 mm"},
    {"Palps 2-segmented", "~n:palp segment|1 2"},
    {"Fruit 3–5-lobed", "~n:fruit lobe|1 3–5"},
    {"More than 20 flowers", "~n:flower|1 >20"},
    {"Leaves 3 per node", "~n:leaf node|1 3"},
    // other dimensions
    {"Angle of beak 30–45°", "~n:beak angle|° 30–45 °"},
    {"Cover more than 50 %", "~n:cover|% >50 %"},
    {"Leaf area 2–3 cm²", "~n:leaf area|mm2 200–300 mm2"},
    // several in one
    {"Leaves 4–6 × 2–3 mm", "~n:leaf length|mm 4–6 mm & ~n:leaf width|mm 2–3 mm"},
    {"Leaves 4–6 x 2–3 mm", "~n:leaf length|mm 4–6 mm & ~n:leaf width|mm 2–3 mm"},
    {"Leaves 4–6 cm × 20–30 mm", "~n:leaf length|mm 40–60 mm & ~n:leaf width|mm 20–30 mm"},
    {"Leaves 4–6 mm long, 2–3 mm wide", "~n:leaf length|mm 4–6 mm & ~n:leaf width|mm 2–3 mm"},
    {"Leaves 4–6 mm long and 2–3 mm wide", "~n:leaf length|mm 4–6 mm & ~n:leaf width|mm 2–3 mm"},
    {"Plants tufted, 5–20 cm tall",
     "~plants tufted = plants tufted & ~n:plant height|mm 50–200 mm"},
    {"Plants tufted 5–20 cm tall", "~plants tufted = plants tufted & ~n:plant height|mm 50–200 mm"},
    // ratios
    {"Beak twice as long as wide", "~n:beak length/width| 2"},
    {"Beak 1.5–2× as long as wide", "~n:beak length/width| 1.5–2"},
    {"Beak 1.5–2 times as long as broad", "~n:beak length/width| 1.5–2"},
    {"Beak twice as wide as long", "~n:beak length/width| 0.5"},
    {"Beak longer than wide", "~n:beak length/width| >1"},
    {"Beak wider than long", "~n:beak length/width| <1"},
    {"Beak not longer than wide", "~n:beak length/width| ≤1"},
    {"Beak much longer than wide", "~n:beak length/width| >1"},
    {"Beak as long as wide", "~n:beak length/width| 1"},
    {"Beak about as long as wide", "~n:beak length/width| ~0.9–1.1"},
    {"Beak at least twice as long as wide", "~n:beak length/width| ≥2"},
    {"Beak more than twice as long as wide", "~n:beak length/width| >2"},
    {"Beak less than half as long as wide", "~n:beak length/width| <0.5"},
    {"Beak 3 times longer than wide", "~n:beak length/width| 3"},
    {"Beak as long as or longer than wide", "~n:beak length/width| ≥1"},
    {"Beak shorter than or as long as wide", "~n:beak length/width| ≤1"},
    {"Beak length/width 2.1–2.6", "~n:beak length/width| 2.1–2.6"},
    {"Beak with length to width ratio 2.1–2.6", "~n:beak length/width| 2.1–2.6"},
    {"Beak longer than the body", "~n:beak length / body length| >1"},
    {"Body shorter than the beak", "~n:beak length / body length| >1"},
    {"Beak half as long as the body", "~n:beak length / body length| 0.5"},
    {"Beak half the length of the body", "~n:beak length / body length| 0.5"},
    {"Body twice as long as the beak", "~n:beak length / body length| 0.5"},
    {"Palp 0.4–0.5× as long as 3-SR", "~n:palp length / sr length| 0.4–0.5"},
    // numbers that count nothing
    {"Tergite 2 black", "~tergite 2 black = tergite 2 black"},
    {"Tergites 2–4 black", "~tergites 2 4 black = tergites 2 4 black"},
    {"Vein M1 curved", "~vein m1 curved = vein m1 curved"},
    {"Chromosomes 2n = 24", "~chromosomes 2 n 24 = chromosomes 2 n 24"},
    {"One side of leaf hairy", "~one side of leaf hairy = one side of leaf hairy"},
    {"Wing spotted (54,55)", "~wing spotted = wing spotted"},
    {"Stamens 5; see Fig. 7", "~n:stamen|1 5"},
    {"Legs black (рис. 141, 3)", "~legs black = legs black"},
};

INSTANTIATE_TEST_SUITE_P(Numbers, PlainNumbers, testing::ValuesIn(kPlain));

// A number behind a part of which a body has several in a row says which of them is meant.
class NumbersOfParts : public testing::TestWithParam<ReadingCase> {};

TEST_P(NumbersOfParts, BelongToTheNameOfThePart) {
  EXPECT_EQ(reading_of(GetParam().text, Lexicon{}), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kOfParts[]{
    // compared with itself
    {"Tergite 1 longer than wide", "~n:tergite 1 length/width| >1"},
    {"Tergite 1 wider than long", "~n:tergite 1 length/width| <1"},
    {"Metasomal tergite 1 as wide as long or wider", "~n:metasomal tergite 1 length/width| ≤1"},
    {"Flagellomere 3 longer than wide", "~n:flagellomere 3 length/width| >1"},
    {"Flagellomere 1 2.5 times longer than wide", "~n:flagellomere 1 length/width| 2.5"},
    {"Femur 3 about 4 times as long as wide", "~n:femur 3 length/width| ~3.6–4.4"},
    {"Tergites 2–4 wider than long", "~n:tergite 2 4 length/width| <1"},
    // with another one
    {"Segment 2 as long as segment 3", "~n:segment 2 length / segment 3 length| 1"},
    {"Segment 2 longer than segment 3", "~n:segment 2 length / segment 3 length| >1"},
    {"Article 1 half as long as article 2", "~n:article 1 length / article 2 length| 0.5"},
    {"Antennomere 3 longer than 4", "~n:antennomere 3 length / antennomere 4 length| >1"},
    {"Antennomere 3 twice as long as 4", "~n:antennomere 3 length / antennomere 4 length| 2"},
    {"Tarsomere 1 longer than tarsomeres 2–4 combined",
     "~n:tarsomere 1 length / tarsomere 2 4 combined length| >1"},
    {"Spine 1 half as long as spine 2", "~n:spine 1 length / spine 2 length| 0.5"},
    // with something on it
    {"Tergites 2–4 with yellow spots",
     "~tergites 2 4 with yellow spots = tergites 2 4 with yellow spots"},
    {"Yellow spots on tergites 2–4",
     "~yellow spots on tergites 2 4 = yellow spots on tergites 2 4"},
    {"Segments 1 and 2 of fore tarsus white",
     "~segments 1 and 2 of fore tarsus white = segments 1 and 2 of fore tarsus white"},
    {"Tergites 1, 3 and 4 with spots",
     "~tergites 1 3 and 4 with spots = tergites 1 3 and 4 with spots"},
    {"Tibia 1 with 2 spurs", "~n:tibia 1 spur|1 2"},
    {"Interval 3 with 4 punctures", "~n:interval 3 puncture|1 4"},
    {"Tergite 1 3 mm long", "~n:tergite 1 length|mm 3 mm"},
    // counts and measurements all the same
    {"Tibia with 2 spurs", "~n:tibia spur|1 2"},
    {"Antenna with 3 segments", "~n:antenna segment|1 3"},
    {"Flagellum segments 12", "~n:flagellum segment|1 12"},
    {"Segments 5–7", "~n:segment|1 5–7"},
    {"Segments 5–7, yellow", "~n:segment|1 5–7 & ~segments yellow = segments yellow"},
    {"Antennomeres 10–11 in number", "~n:antennomere|1 10–11"},
    {"Leaf segments 3–5 with hairs", "~n:leaf segment hair|1 3–5"},
    {"Femur 3 times as long as wide", "~n:femur length/width| 3"},
    {"Femur 3× as long as wide", "~n:femur length/width| 3"},
    {"Femur 2 mm long", "~n:femur length|mm 2 mm"},
    {"Segment 3 longer than 4 mm", "~n:segment 3 length|mm >4 mm"},
};

INSTANTIATE_TEST_SUITE_P(Numbers, NumbersOfParts, testing::ValuesIn(kOfParts));

TEST(NumbersOfParts, AreReadInOtherLanguages) {
  EXPECT_EQ(reading_of("Fühlerglied 3 länger als breit", Lexicon{}, "de"),
            "~n:fühlerglied 3 length/width| >1");
  EXPECT_EQ(reading_of("Fühlerglied 3 länger als 4", Lexicon{}, "de"),
            "~n:fühlerglied 3 length / fühlerglied 4 length| >1");
  EXPECT_EQ(reading_of("Tergit 1 so lang wie breit", Lexicon{}, "de"),
            "~n:tergit 1 length/width| 1");
  EXPECT_EQ(reading_of("Article 3 plus long que large", Lexicon{}, "fr"),
            "~n:article 3 length/width| >1");
  EXPECT_EQ(reading_of("Article 3 plus long que l'article 4", Lexicon{}, "fr"),
            "~n:article 3 length / article 4 length| >1");
}

class NumbersOfTheLexicon : public testing::TestWithParam<ReadingCase> {};

TEST_P(NumbersOfTheLexicon, AreItsCharacters) {
  EXPECT_EQ(reading_of(GetParam().text, plant_lexicon()), GetParam().says) << GetParam().text;
}

constexpr ReadingCase kWithLexicon[]{
    {"Spike 2–3 cm long", "spike-length 20–30 mm"},
    {"Spikes 2–3 cm long", "spike-length 20–30 mm"},
    {"Spikes 20–30 mm", "spike-length 20–30 mm"},
    {"Spike more than 3 cm", "spike-length >30 mm"},
    {"Spike 4 mm wide", "spike-width 4 mm"},
    {"Spike 2–3 cm long, 4 mm wide", "spike-length 20–30 mm & spike-width 4 mm"},
    {"Spike 20–30 × 4–5 mm", "spike-length 20–30 mm & spike-width 4–5 mm"},
    {"Spike ca. 3 cm long", "spike-length ~27–33 mm"},
    {"Female spikes 8–12 mm long", "female-spike-length 8–12 mm"},
    {"Spike 3 cm high", "~n:spike height|mm 30 mm"},
    {"Stigmas 3", "stigmas 3"},
    {"Three stigmas", "stigmas 3"},
    {"Stigmas 2 or 3", "stigmas 2 | 3"},
    {"Stigmas 2 in every flower", "stigmas 2"},
    {"Ligule longer than wide", "ligule-ratio >1"},
    {"Ligule wider than long", "ligule-ratio <1"},
    {"Ligule twice as long as wide", "ligule-ratio 2"},
    {"Leaves flat, 3–4 mm wide", "leaf-section = flat & ~n:leaf width|mm 3–4 mm"},
    {"Lowest bract longer than the inflorescence", "bract-reach = longer"},
    {"Utricle 4 mm long, with a bifid beak", "~n:utricle length|mm 4 mm & beak-tip = bifid"},
};

INSTANTIATE_TEST_SUITE_P(Numbers, NumbersOfTheLexicon, testing::ValuesIn(kWithLexicon));

TEST(NumbersOfTheLexicon, WidenByTheCharactersOwnTolerance) {
  auto lexicon = plant_lexicon();
  for (auto& character : lexicon.characters) character.tolerance = 0.2;
  EXPECT_EQ(reading_of("Spike ca. 3 cm long", lexicon), "spike-length ~24–36 mm");
}

TEST(NumbersOfAnimals, CountSegmentsAndCompareParts) {
  EXPECT_EQ(reading_of("Antennae with 11 segments", animal_lexicon()), "antenna-segments 11");
  EXPECT_EQ(reading_of("Antennae 11-segmented", animal_lexicon()), "antenna-segments 11");
  EXPECT_EQ(reading_of("Carapace 12–15(–18) mm", animal_lexicon()),
            "carapace-length 12–15 (12–18) mm");
  EXPECT_EQ(reading_of("Rostrum wider than long", animal_lexicon()), "rostrum-ratio <1");
}

// "leaf 1.1 cm" and "leaf 11 mm" must be one number.
TEST(PlainNumbersAlone, AreTheSameInEveryUnit) {
  EXPECT_EQ(reading_of("Leaf 1.1 cm", Lexicon{}), reading_of("Leaf 11 mm", Lexicon{}));
  EXPECT_EQ(reading_of("Leaf 0.3 cm", Lexicon{}), reading_of("Leaf 3 mm", Lexicon{}));
  EXPECT_EQ(reading_of("Spore 7 µm", Lexicon{}), reading_of("Spore 0.007 mm", Lexicon{}));
}

TEST(PlainNumbersAlone, AreReadTheRightWayRoundAndReportedWhenPrintedBackwards) {
  auto edition = couplet_of({"Spike 6–4 mm long", "Spike 8 mm long"});
  auto const findings = read_statements(edition, Lexicon{});
  EXPECT_EQ(said(edition.couplets[0].leads[0].statements), "~n:spike length|mm 4–6 mm");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(to_text(findings[0]),
            "test:1:1: warning: a range in \"Spike 6–4 mm long\" ends below its beginning "
            "[backwards-range]\n"
            "  Spike 6–4 mm long\n"
            "  print the smaller number first; it is read that way round\n");
}

}  // namespace
}  // namespace keydrift::test

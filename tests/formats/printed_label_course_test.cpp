// Keys of which scanning damaged several labels: read together they tell each other.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::all_with;
using test::findings_of;
using test::sketch;

// Each lead's words and where it leads, a couplet told by its first words.
std::vector<std::string> ways(std::string const& text) {
  auto const loaded = read_printed_key({.name = "key.txt", .bytes = text});
  std::vector<std::string> all;
  if (!loaded) return all;
  auto const& edition = loaded.value->edition;
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      std::string to = "nowhere";
      if (auto const* other = std::get_if<ToCouplet>(&lead.destination)) {
        to = edition[other->couplet].leads.front().text;
      } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
        to = edition[taxa->taxa.front()].name;
      }
      all.push_back(lead.text + " -> " + to);
    }
  }
  return all;
}

using Replacements = std::vector<std::pair<std::string_view, std::string_view>>;

std::string damaged(std::string text, Replacements const& damage) {
  for (auto const& [right, seen] : damage) {
    auto const at = text.find(right);
    EXPECT_NE(at, std::string::npos) << right;
    if (at != std::string::npos) text.replace(at, right.size(), seen);
  }
  return text;
}

void expect_unharmed(std::string const& key, std::vector<Replacements> const& all) {
  auto const sound = ways(key);
  ASSERT_EQ(sound.size(), 10U) << key;
  for (auto const& damage : all) {
    auto const text = damaged(key, damage);
    EXPECT_EQ(ways(text), sound) << text;
  }
}

constexpr std::string_view kDashedKey =
    "Key to the species of Ausella\n\n"
    "1. Legs black ..... 2\n"
    "– Legs yellow ..... 4\n"
    "2. Head rugose, at least in front ..... 3\n"
    "– Head smooth ..... Ausella busa\n"
    "3. Wings wide ..... Ausella cusa\n"
    "– Wings narrow ..... Ausella dusa\n"
    "4. Labrum entire ..... 5\n"
    "– Labrum notched ..... Ausella fusa\n"
    "5. Tibiae curved ..... Ausella gusa\n"
    "– Tibiae straight ..... Ausella lusa\n";

TEST(PrintedLabelCourse, NumbersAndDashes) {
  expect_unharmed(std::string{kDashedKey}, {
                                               {{"– Legs", "■ Legs"}, {"3. Wings", "B. Wings"}},
                                               {{"2. Head", "a. Head"}, {"– Head", "Head"}},
                                               {{"4. Lab", "A, Lab"}, {"5. Tib", "'S. Tib"}},
                                               {{"1. Legs", "Legs"}, {"– Wings", "_ Wings"}},
                                               {{"3. Wings", "8. Wings"},  // as damaged as others
                                                {"– Legs", "~ Legs"},
                                                {"4. Lab", "4: Lab"}},
                                           });
}

TEST(PrintedLabelCourse, WordsWithoutCapitals) {
  auto key = std::string{kDashedKey};
  for (std::string_view const word : {"Legs", "Head", "Wings", "Labrum", "Tibiae"}) {
    auto small = std::string{word};
    small[0] = static_cast<char>(small[0] - 'A' + 'a');
    key = all_with(key, word, small);
  }
  expect_unharmed(key, {
                           {{"2. head", "a. head"}, {"– legs", "■ legs"}},
                           {{"3. wings", "B. wings"}, {"5. tib", "'S. tib"}},
                       });
}

TEST(PrintedLabelCourse, NumbersWithBackReferences) {
  auto key = std::string{kDashedKey};
  for (auto const& [bare, full] : Replacements{{"2. Head", "2 (1). Head"},
                                               {"3. Wings", "3 (2). Wings"},
                                               {"4. Lab", "4 (1). Lab"},
                                               {"5. Tib", "5 (4). Tib"}}) {
    key = damaged(key, {{bare, full}});
  }
  expect_unharmed(key, {
                           {{"2 (1).", "2 (l}."}, {"5 (4).", "S (4)."}},
                           {{"3 (2).", "3 {2)"}, {"– Labrum", "Labrum"}},
                           {{"4 (1).", ".4 (1J."}, {"– Wings", "• Wings"}},
                       });
}

TEST(PrintedLabelCourse, LettersAndMarksOfSecondLeads) {
  auto lettered = std::string{kDashedKey};
  auto marked = std::string{kDashedKey};
  auto repeated = std::string{kDashedKey};
  for (char const number : {'1', '2', '3', '4', '5'}) {
    auto const first = std::string{number} + ". ";
    auto const digit = std::string{number};
    lettered = damaged(lettered, {{first, digit + "a. "}, {"– ", digit + "b. "}});
    marked = damaged(marked, {{"– ", digit + "'. "}});
    repeated = damaged(repeated, {{"– ", first}});
  }
  expect_unharmed(lettered, {
                                {{"1b.", "1h."}, {"3a.", "B«."}},
                                {{"2a.", "Zo,"}, {"5b.", "5 6."}},
                                {{"4a. ", ""}, {"4b.", "4t."}},
                            });
  expect_unharmed(marked, {
                              {{"1'.", "!'."}, {"3'.", "3*,"}},
                              {{"2'.", "2!."}, {"4.", "i."}, {"4'.", "'4'."}},
                          });
  expect_unharmed(repeated,
                  {
                      {{"1. Legs yel", "Legs yel"}, {"5. Tibiae str", "s. Tibiae str"}},
                      {{"3. Wings nar", "B. Wings nar"}, {"4. Labrum no", "A. Labrum no"}},
                  });
}

constexpr std::string_view kNested =
    "Key to the species of Ausella\n\n"
    "A. Legs black\n"
    "  B. Head rugose, at least in front\n"
    "    C. Wings wide ..... Ausella cusa\n"
    "    CC. Wings narrow ..... Ausella dusa\n"
    "  BB. Head smooth ..... Ausella busa\n"
    "AA. Legs yellow\n"
    "  B. Labrum entire\n"
    "    C. Tibiae curved ..... Ausella gusa\n"
    "    CC. Tibiae straight ..... Ausella lusa\n"
    "  BB. Labrum notched ..... Ausella fusa\n";

TEST(PrintedLabelCourse, LettersOfRanks) {
  expect_unharmed(std::string{kNested},
                  {
                      {{"B. Head", "E. Head"}, {"CC. Wings", "CO. Wings"}},
                      {{"AA. Legs", "A4. Legs"}, {"C. Tib", "O. Tib"}, {"BB. Lab", "8B. Lab"}},
                      {{"C. Wings", "'C. Wings"}, {"CC. Tibiae", "CC Tibiae"}},
                  });
  auto raised = all_with(std::string{kNested}, "AA.", "a².");
  for (auto const& [letters, label] :
       Replacements{{"A.", "a¹."}, {"BB.", "b²."}, {"B.", "b¹."}, {"CC.", "c²."}, {"C.", "c¹."}}) {
    raised = all_with(raised, letters, label);
  }
  expect_unharmed(raised, {
                              {{"b¹. Head", "b'. Head"}, {"c². Wings", "c\". Wings"}},
                              {{"b². Head", "h². Head"}, {"c¹. Tib", "o¹. Tib"}},
                          });
}

TEST(PrintedLabelCourse, PlacesWithThoseOfTheirRivals) {
  std::string const key =
      "Key to the species of Ausella\n\n"
      "1 (6) Legs black\n"
      "  2 (5) Head rugose, at least in front\n"
      "    3 (4) Wings wide ..... Ausella cusa\n"
      "    4 (3) Wings narrow ..... Ausella dusa\n"
      "  5 (2) Head smooth ..... Ausella busa\n"
      "6 (1) Legs yellow\n"
      "  7 (10) Labrum entire\n"
      "    8 (9) Tibiae curved ..... Ausella gusa\n"
      "    9 (8) Tibiae straight ..... Ausella lusa\n"
      "  10 (7) Labrum notched ..... Ausella fusa\n";
  expect_unharmed(key, {
                           {{"2 (5)", "2 (S)"}, {"4 (3)", "4 {3)"}},
                           {{"6 (1)", "G (l)"}, {"10 (7)", "1O (7)"}},
                           {{"8 (9) ", ""}, {"5 (2)", "5 (2J"}},
                       });
}

TEST(PrintedLabelCourse, RanksWithAlphabetsOfTheirOwn) {
  std::string const key =
      "Uebersicht der Arten von Ausella\n\n"
      "A. Blätter gegenständig.\n"
      "I. Krone gelb.\n"
      "a. Stengel kahl. ..... Ausella busa\n"
      "b. Stengel behaart. ..... Ausella cusa\n"
      "II. Krone weiss.\n"
      "a. Blüten einzeln. ..... Ausella dusa\n"
      "b. Blüten in Dolden. ..... Ausella fusa\n"
      "B. Blätter wechselständig.\n"
      "I. Pflanze einjährig. ..... Ausella gusa\n"
      "II. Pflanze ausdauernd. ..... Ausella lusa\n";
  expect_unharmed(key, {
                           {{"B. Blätter", "B, Blätter"}, {"I. Pfl", "L Pfl"}},
                           {{"b. Stengel", "h. Stengel"}, {"II. Krone", "IL Krone"}},
                           {{"a. Blüten", "o. Blüten"}, {"II. Pfl", "H. Pfl"}},
                       });
}

// Marks behind the letters tell the rank, and the letters of a rank run on.
// Each rank with a punctuation of its own, brackets among them; the first label of a rank, from
// which the order of ranks is told, may be damaged.
TEST(PrintedLabelCourse, RanksWithEndsOfTheirOwn) {
  std::string const key =
      "Key to the Species of Ausella.\n\n"
      "A. Wings clear.\n"
      "1. Legs red. A. busa\n"
      "2. Legs black.\n"
      "(a) Head smooth. A. cusa\n"
      "(b) Head rugose. A. dusa\n"
      "B. Wings dusky.\n"
      "1. Thorax hairy.\n"
      "(a) Tail long. A. fusa\n"
      "(b) Tail short. A. gusa\n"
      "2. Thorax bare. A. lusa\n";
  expect_unharmed(key, {
                           {{"A. Wings", "A . Wings"}, {"1. Legs", "l. Legs"}},
                           {{"(b) Head", "(h) Head"}, {"B. Wings", "8. Wings"}},
                           {{"1. Legs", "I. Legs"}, {"(a) Tail", "(a, Tail"}},
                           {{"2. Legs", "z. Legs"}, {"(a) Head", "(o) Head"}},
                       });
}

TEST(PrintedLabelCourse, RanksWithPrimes) {
  std::string const key =
      "Key to the Species of Ausella.\n\n"
      "a. Wings clear.\n"
      "a'. Legs red. A. busa, p. 12.\n"
      "b'. Legs black.\n"
      "a\". Head smooth. A. cusa, p. 13.\n"
      "b\". Head rugose. A. dusa, p. 14.\n"
      "b. Wings dusky.\n"
      "c'. Thorax hairy.\n"
      "c\". Tail long. A. fusa, p. 15.\n"
      "d\". Tail short. A. gusa, p. 16.\n"
      "d'. Thorax bare. A. lusa, p. 17.\n";
  expect_unharmed(key, {
                           {{"b'. Legs", "V. Legs"}, {"a\". Head", "«\". Head"}},
                           {{"c'. Th", "e'. Th"}, {"d'. Th", "d!. Th"}},
                           {{"d\". Tail", "d^ . Tail"}, {"a'. Legs", "a. Legs"}},
                           {{"b\". Head", "V. Head"}, {"c\". Tail", "c' . Tail"}},
                       });
}

TEST(PrintedLabelCourse, RanksWithIndicesThatBeginAnew) {
  std::string const key =
      "Key to the Species of Ausella.\n\n"
      "a. Wings clear.\n"
      "a1. Legs red. A. busa, p. 12.\n"
      "b1. Legs black.\n"
      "a2. Head smooth. A. cusa, p. 13.\n"
      "b2. Head rugose. A. dusa, p. 14.\n"
      "b. Wings dusky.\n"
      "a1. Thorax hairy.\n"
      "a2. Tail long. A. fusa, p. 15.\n"
      "b2. Tail short. A. gusa, p. 16.\n"
      "b1. Thorax bare. A. lusa, p. 17.\n";
  expect_unharmed(key, {
                           {{"b1. Legs", "b^ Legs"}, {"a2. Head", "a\". Head"}},
                           {{"a1. Th", "«1. Th"}, {"b1. Th", "h 1 . Th"}},
                           {{"b2. Tail", "62. Tail"}, {"a1. Legs", "a. Legs"}},
                       });
}

// The account behind the key begins with a capital letter, as no rank does.
TEST(PrintedLabelCourse, NoLabelOfARankIsMadeOfAnotherAlphabet) {
  auto const all = findings_of(
      "Key to the Species of Ausella.\n\n"
      "a. Wings clear.\n"
      "a'. Legs red. A. busa, p. 12.\n"
      "V. Legs black.\n"
      "a\". Head smooth. A. cusa, p. 13.\n"
      "b\". Head rugose. A. dusa, p. 14.\n"
      "b. Wings dusky.\n"
      "c'. Thorax hairy. A. fusa, p. 15.\n"
      "d!. Thorax bare. A. lusa, p. 17.\n\n"
      "72. Ausella busa. The Red-legged Ausella.\n\n"
      "Ausa busa, Harte, J. A. S. xi, p. 180.\n\n"
      "B. Male. Forehead and crown black.\n");
  auto const begins = [](std::string_view place) {
    return [place](std::string const& one) {
      return one.find("[misprinted-label]") != std::string::npos && one.starts_with(place);
    };
  };
  EXPECT_TRUE(std::any_of(all.begin(), all.end(), begins("key.txt:5:")));
  EXPECT_TRUE(std::none_of(all.begin(), all.end(), begins("key.txt:16:")))
      << ::testing::PrintToString(all);
}

// Couplets that bear letters, and ends in letters: floras of a few manuals.
constexpr std::string_view kLetteredKey =
    "Key to the species of Ausella\n\n"
    "a. Leaves cordate, petioled b.\n"
    "a. Leaves linear, sessile d.\n"
    "b. Rays white; heads corymbed c.\n"
    "b. Rays blue; heads panicled 1. A. busa.\n"
    "c. Plant without glands\n2. A. cusa.\n"
    "c. Plant glandular above\n3. A. dusa.\n"
    "d. Stem smooth e.\n"
    "d. Stem hairy 4. A. fusa.\n"
    "e. Pappus simple\n5. A. gusa.\n"
    "e. Pappus double\n6. A. lusa.\n";

TEST(PrintedLabelCourse, LettersOfCouplets) {
  expect_unharmed(std::string{kLetteredKey},
                  {
                      {{"a. Leaves linear", "o. Leaves linear"}, {"c. Plant gl", "e. Plant gl"}},
                      {{"b. Rays blue", "h. Rays blue"}, {"d. Stem smooth", "ct. Stem smooth"}},
                      {{"c. Plant wi", "e. Plant wi"}, {"e. Pappus d", "«. Pappus d"}},
                  });
}

TEST(PrintedLabelCourse, EachChangeIsReported) {
  auto const all =
      findings_of(damaged(std::string{kDashedKey}, {{"– Legs", "Legs"}, {"4. Lab", "A, Lab"}}));
  EXPECT_EQ(std::count_if(all.begin(), all.end(),
                          [](std::string const& one) {
                            return one.find("[misprinted-label]") != std::string::npos;
                          }),
            2);
  auto const has = [&all](std::string_view text) {
    return std::any_of(all.begin(), all.end(), [text](std::string const& one) {
      return one.find(text) != std::string::npos;
    });
  };
  EXPECT_TRUE(
      has("key.txt:9:1: warning: \"A,\" was read as \"4.\", which the labels around call "
          "for [misprinted-label] (print the label as the others are)"))
      << ::testing::PrintToString(all);
}

// Users see the text as printed: places are of that text, though another one was read.
TEST(PrintedLabelCourse, PlacesAreOfTheTextAsPrinted) {
  auto const text = damaged(std::string{kDashedKey},
                            {{"– Legs", "Legs"}, {"3. Wings", "'B .  Wings"}, {"– Lab", "■ Lab"}});
  auto const loaded = read_printed_key({.name = "key.txt", .bytes = text});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->source.text, text);
  TextPlaces const places{text};
  std::size_t runs = 0;
  for (auto const& couplet : loaded.value->edition.couplets) {
    for (auto const& lead : couplet.leads) {
      for (auto const& run : lead.runs) {
        EXPECT_EQ(text.substr(run.place.begin, run.place.end - run.place.begin), lead.text);
        EXPECT_EQ(run.place, places.at(run.place.begin, run.place.end)) << lead.text;
        ++runs;
      }
      EXPECT_EQ(lead.place, places.at(lead.place.begin, lead.place.end)) << lead.text;
      EXPECT_EQ(text.substr(lead.destination_place.begin,
                            lead.destination_place.end - lead.destination_place.begin),
                lead.destination_printed);
    }
  }
  EXPECT_EQ(runs, 10U);
}

// Dashes tell the reader where second leads begin; nobody printed them.
TEST(PrintedLabelCourse, SecondLeadsWithoutLabelsGetNone) {
  auto const key = all_with(std::string{kDashedKey}, "– ", "   ");
  auto const text =
      damaged(key, {{"3. Wings", "B. Wings"}, {"..... 4", "..... h"}, {"..... 5", "..... s"}});
  EXPECT_EQ(ways(text), ways(std::string{kDashedKey})) << text;
  auto const loaded = read_printed_key({.name = "key.txt", .bytes = text});
  ASSERT_TRUE(loaded);
  for (auto const& couplet : loaded.value->edition.couplets) {
    ASSERT_EQ(couplet.leads.size(), 2U);
    EXPECT_EQ(couplet.leads[0].label, couplet.label);
    EXPECT_EQ(couplet.leads[1].label, "");
  }
  EXPECT_EQ(loaded.value->source.layout_note.find("–"), std::string::npos)
      << loaded.value->source.layout_note;
}

// --- what stays as it is ------------------------------------------------------------------------

// A number that stands twice may be the author's slip: nothing else shows a scan.
TEST(PrintedLabelCourse, ASoundNumberIsNotTakenForAnother) {
  auto const slip = damaged(std::string{kDashedKey}, {{"3. Wings", "8. Wings"}});
  EXPECT_NE(ways(slip), ways(std::string{kDashedKey}));
  auto const all = ways(slip);
  EXPECT_TRUE(std::any_of(all.begin(), all.end(), [](std::string const& one) {
    return one == "Head rugose, at least in front -> nowhere";
  }));
}

TEST(PrintedLabelCourse, NoLeadIsMadeOfWhatFollowsTheKey) {
  for (std::string const behind :
       {"\n1. Ausella busa Roe\n\nElongate, black, the legs yellow.\n",
        "\nAusella busa Roe\n\nElongate, black.\n", "\n* Distribution map\n* Illustration (2)\n",
        "\nContents\nIntroduction ..... 3\nMaterial ..... 4\n"}) {
    EXPECT_EQ(ways(std::string{kDashedKey} + behind), ways(std::string{kDashedKey})) << behind;
  }
}

TEST(PrintedLabelCourse, TwoPrimesAndOne) {
  EXPECT_EQ(test::sketch("5. Gattung: Ausella Roe.\n"
                         "\n"
                         "1\" Halsschild an der Basis mit einem Grübchen.\n"
                         "2\" Keule 3-gliedrig.\n"
                         "3\" Flügeldecken verworren punktiert. foveicollis Olbr.\n"
                         "3 ' Flügeldecken in Reihen punktiert. striatella Roe.\n"
                         "2' Keule 2-gliedrig.\n"
                         "4\" Flügeldecken schwarz. biguttata Roe.\n"
                         "4/ Flügeldecken einfarbig. ruficornis Roe.\n"
                         "1' Halsschild an der Basis ohne Grübchen .\n"
                         "5\" Oberseite behaart. pubescens Dorn.\n"
                         "5* Oberseite kahl.\n"
                         "6\" Kopf breit. glabra Dorn.\n"
                         "6' Kopf schmal. nitens Dorn.\n"),
            "1[1\"] Halsschild an der Basis mit einem Grübchen. -> 2\n"
            "1[1'] Halsschild an der Basis ohne Grübchen. -> 5\n"
            "2[2\"] Keule 3-gliedrig. -> 3\n"
            "2[2'] Keule 2-gliedrig. -> 4\n"
            "3[3\"] Flügeldecken verworren punktiert. -> Ausella foveicollis\n"
            "3[3'] Flügeldecken in Reihen punktiert. -> Ausella striatella\n"
            "4[4\"] Flügeldecken schwarz. -> Ausella biguttata\n"
            "4[4'] Flügeldecken einfarbig. -> Ausella ruficornis\n"
            "5[5\"] Oberseite behaart. -> Ausella pubescens\n"
            "5[5'] Oberseite kahl. -> 6\n"
            "6[6\"] Kopf breit. -> Ausella glabra\n"
            "6[6'] Kopf schmal. -> Ausella nitens\n");
}

TEST(PrintedLabelCourse, AnHThatCameOutAsSevenAndI) {
  EXPECT_EQ(test::sketch("KEY TO THE SPECIES OF AUSELLA.\n"
                         "\n"
                         "a. Scales large; dorsal with ten spines.\n"
                         "b. Gill rakers long. busa, 2071.\n"
                         "bb. Gill rakers short. cusa, 2072.\n"
                         "aa. Scales small, the lateral line with seventy pores.\n"
                         "c. Anal rays seven.\n"
                         "d. Body deep. dusa, 2073.\n"
                         "dd. Body slender.\n"
                         "e. Opercle bare. fusa, 2074.\n"
                         "ee. Opercle scaly. gusa, 2075.\n"
                         "cc. Anal rays ten.\n"
                         "f. Snout blunt.\n"
                         "g. Eye small. husa, 2076.\n"
                         "gg. Eye large. lusa, 2077.\n"
                         "ff. Snout sharp.\n"
                         "7i. Maxillary reaching middle of eye. musa, 2078.\n"
                         "hh. Maxillary barely reaching front of eye. nusa, 2079.\n"),
            "a[a] Scales large; dorsal with ten spines. -> b\n"
            "a[aa] Scales small, the lateral line with seventy pores. -> c\n"
            "b[b] Gill rakers long. -> Ausella busa\n"
            "b[bb] Gill rakers short. -> Ausella cusa\n"
            "c[c] Anal rays seven. -> d\n"
            "c[cc] Anal rays ten. -> f\n"
            "d[d] Body deep. -> Ausella dusa\n"
            "d[dd] Body slender. -> e\n"
            "e[e] Opercle bare. -> Ausella fusa\n"
            "e[ee] Opercle scaly. -> Ausella gusa\n"
            "f[f] Snout blunt. -> g\n"
            "f[ff] Snout sharp. -> h\n"
            "g[g] Eye small. -> Ausella husa\n"
            "g[gg] Eye large. -> Ausella lusa\n"
            "h[h] Maxillary reaching middle of eye. -> Ausella musa\n"
            "h[hh] Maxillary barely reaching front of eye. -> Ausella nusa\n");
}

TEST(PrintedLabelCourse, DoubledLettersInBrackets) {
  EXPECT_EQ(sketch("Key to the Species of Ausella.\n"
                   "\n"
                   "(a) Stem annulate.\n"
                   "(b) Pileus viscid. A. busa Roe.\n"
                   "(bb) Pileus dry.\n"
                   "(c) Gills adnate. A. cusa Roe.\n"
                   "(ce) Gills free. A. dusa Roe.\n"
                   "(aa) Stem not annulate.\n"
                   "(b) Odor strong.\n"
                   "(e) Odor of radish. A. fusa Roe.\n"
                   "(cc) Odor of anise. A. gusa Roe.\n"
                   "(bh) Odor none. A. lusa Roe.\n"),
            "1[a] Stem annulate. -> 2\n"
            "1[aa] Stem not annulate. -> 4\n"
            "2[b] Pileus viscid. -> Ausella busa\n"
            "2[bb] Pileus dry. -> 3\n"
            "3[c] Gills adnate. -> Ausella cusa\n"
            "3[cc] Gills free. -> Ausella dusa\n"
            "4[b] Odor strong. -> 5\n"
            "4[bb] Odor none. -> Ausella lusa\n"
            "5[c] Odor of radish. -> Ausella fusa\n"
            "5[cc] Odor of anise. -> Ausella gusa\n");
}

TEST(PrintedLabelCourse, SecondLeadsWithTheirLetterAlone) {
  EXPECT_EQ(sketch("Tabel voor Ausella\n"
                   "\n"
                   "1a. Dekschilden zonder stippelrijen ..... 2\n"
                   "b. Dekschilden met stippelrijen ..... 4\n"
                   "2a. Onderzijde geheel geelrood ..... Ausella busa\n"
                   "h. Onderzijde geheel of grotendeels zwart ..... 3\n"
                   "3a. Halsschild met een streepje ..... Ausella cusa\n"
                   "b. Halsschild zonder streepje ..... Ausella dusa\n"
                   "4a. Penis spits ..... Ausella fusa\n"
                   "b, Penis stomp ..... 5\n"
                   "Sa. Tarsen lang ..... Ausella gusa\n"
                   "b. Tarsen kort ..... Ausella lusa\n"),
            "1[1a] Dekschilden zonder stippelrijen -> 2\n"
            "1[b] Dekschilden met stippelrijen -> 4\n"
            "2[2a] Onderzijde geheel geelrood -> Ausella busa\n"
            "2[b] Onderzijde geheel of grotendeels zwart -> 3\n"
            "3[3a] Halsschild met een streepje -> Ausella cusa\n"
            "3[b] Halsschild zonder streepje -> Ausella dusa\n"
            "4[4a] Penis spits -> Ausella fusa\n"
            "4[b] Penis stomp -> 5\n"
            "5[5a] Tarsen lang -> Ausella gusa\n"
            "5[b] Tarsen kort -> Ausella lusa\n");
}

TEST(PrintedLabelCourse, HalfOfTheLabelsMayBeDamagedWhereTheCountHolds) {
  EXPECT_EQ(sketch("Key to the species of Ausella.\n"
                   "\n"
                   "i (6) Elytra with raised lines on the disc.\n"
                   "2 (S) Pronotum with a tooth behind the middle.\n"
                   "3 (4) Antennae reaching beyond the apex . A. longa Roe.\n"
                   "4 (3) Antennae not reaching the apex . A. brevis Dorn.\n"
                   "S (2) Pronotum without a tooth . A. mitis Roe.\n"
                   "G (i) Elytra without raised lines.\n"
                   "7 (io) Vertex with a furrow.\n"
                   "S (9) Body blue beneath . A. cyanea Roe.\n"
                   "9 (S) Body black beneath . A. nigra Dorn.\n"
                   "io (7) Vertex without a furrow . A. plana Roe.\n"),
            "1[1] Elytra with raised lines on the disc. -> 2\n"
            "1[6] Elytra without raised lines. -> 7\n"
            "2[2] Pronotum with a tooth behind the middle. -> 3\n"
            "2[5] Pronotum without a tooth -> Ausella mitis\n"
            "3[3] Antennae reaching beyond the apex -> Ausella longa\n"
            "3[4] Antennae not reaching the apex -> Ausella brevis\n"
            "7[7] Vertex with a furrow. -> 8\n"
            "7[10] Vertex without a furrow -> Ausella plana\n"
            "8[8] Body blue beneath -> Ausella cyanea\n"
            "8[9] Body black beneath -> Ausella nigra\n");
}

TEST(PrintedLabelCourse, TheFootOfAPageEndsNoLead) {
  EXPECT_EQ(sketch("KEY TO THE SPECIES OF AUSELLA\n"
                   "\n"
                   "1. Wings clear 2.\n"
                   "\n"
                   "Wings dark 3.\n"
                   "\n"
                   "2. Legs yellow albiceps Roe, p. 5.\n"
                   "\n"
                   "Legs black, like the body nigripes Dorn, p. 6.\n"
                   "\n"
                   "^ For the loan of types I thank Dr. Roe.\n"
                   "\n"
                   "Proceedings of the Museum. Vol. 61. Art. 7.\n"
                   "\n"
                   "4 PROCEEDINGS OF THE STATE MUSEUM. VOL. 61.\n"
                   "\n"
                   "S. Petiole long and rugose, opaque 4.\n"
                   "\n"
                   "Petiole smooth nitidula Dorn, p. 11.\n"
                   "\n"
                   "4. Scutum finely rugose rugosa Roe, p. 12.\n"
                   "\n"
                   "Scutum with punctures punctata Dorn, p. 12.\n"),
            "1[1] Wings clear -> 2\n"
            "1[] Wings dark -> 3\n"
            "2[2] Legs yellow -> Ausella albiceps (p. 5.)\n"
            "2[] Legs black, like the body -> Ausella nigripes (p. 6.)\n"
            "3[3] Petiole long and rugose, opaque -> 4\n"
            "3[] Petiole smooth -> Ausella nitidula (p. 11.)\n"
            "4[4] Scutum finely rugose -> Ausella rugosa (p. 12.)\n"
            "4[] Scutum with punctures -> Ausella punctata (p. 12.)\n");
}

}  // namespace
}  // namespace keydrift

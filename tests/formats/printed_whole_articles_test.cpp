// Keys within whole articles: authors' addresses, lists, captions and prose around them begin lines
// with numbers and dashes as leads do.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

constexpr std::string_view kDotted =
    "Key to the species of Ausella\n"
    "1. Wings clear ......... 2\n"
    "– Wings dark ......... 3\n"
    "2. Legs black ......... Ausella cusa Roe, 1932\n"
    "– Legs red ......... Ausella dusa sp. n.\n"
    "3. Eyes red ......... Ausella eusa Roe, 1932\n"
    "– Eyes black ......... Ausella fusa (Dorn, 1911)\n";
constexpr std::string_view kBare =
    "Key to the species of Ausella\n"
    "1 Wings clear ......... 2\n"
    "– Wings dark ......... 3\n"
    "2 Legs black ......... Ausella cusa Roe, 1932\n"
    "– Legs red ......... Ausella dusa sp. n.\n"
    "3 Eyes red ......... Ausella eusa Roe, 1932\n"
    "– Eyes black ......... Ausella fusa (Dorn, 1911)\n";
constexpr auto kReadInArticle =
    "1[1] Wings clear -> 2\n1[–] Wings dark -> 3\n"
    "2[2] Legs black -> Ausella cusa\n2[–] Legs red -> Ausella dusa (sp. n.)\n"
    "3[3] Eyes red -> Ausella eusa\n3[–] Eyes black -> Ausella fusa\n";
constexpr std::string_view kAddresses =
    "1 Museum of Natural History, Sarn, Inventia\n"
    "2 University of Mere, Mere, Inventia\n"
    "3 Institute of Zoology, Sarn, Inventia\n\n";

void expect_key_behind(std::string const& matter, std::string_view key) {
  auto const text = matter + "\n\n" + std::string{key};
  EXPECT_EQ(sketch(text), kReadInArticle) << text;
}

TEST(PrintedWholeArticles, AddressesAndAListBeforeTheKey) {
  auto const addresses = std::string{kAddresses};
  expect_key_behind(addresses +
                        "Checklist\n1. Ausella cusa Roe, 1932\n2. Ausella gusa Roe, 1932\n"
                        "3. Ausella eusa Roe, 1932",
                    kDotted);
  expect_key_behind(addresses + "1. Introduction\n\nThe genus is small.\n\n2. Methods\n\nDry ones.",
                    kDotted);
  expect_key_behind(addresses +
                        "The genus is recognised by:\n– grooved pronotum;\n– long antennae;\n"
                        "– toothed tibia.",
                    kDotted);
  expect_key_behind(addresses + "Ausella cusa Roe\n1200 m, 3 specimens.\n5 of them are males.",
                    kDotted);
}

TEST(PrintedWholeArticles, ProseBeforeAKeyWithBareNumbers) {
  expect_key_behind("The genus was found in about\n5 of 12 localities visited.", kBare);
  expect_key_behind("Material examined. 3♂, 2♀, Sarn, 12.vi.2011;\n4 ♂, same locality, Mere.",
                    kBare);
  expect_key_behind("Gill rakers\n4 + 12. Vertebrae 31.", kBare);
  expect_key_behind("Antennae 11-segmented, ratio of segments\n3 : 2 : 4. Pronotum with 2 setae.",
                    kBare);
  expect_key_behind("Figures 1–3. Heads. 1 Ausella cusa; 2 A. dusa;\n3 A. eusa. Scale bars: 1 mm.",
                    kBare);
}

TEST(PrintedWholeArticles, AListWithANewSpeciesBehindTheKey) {
  for (std::string const list :
       {"Checklist of species\n1. Ausella cusa Roe, 1932\n2. Ausella dusa sp. n.\n"
        "3. Ausella eusa Roe, 1932",
        "Checklist of species\n1. Ausella cusa Roe, 1932\n2. Ausella dusa sp. nov., holotype.\n"
        "3. Ausella eusa Roe, 1932",
        "Checklist of species\n1. Ausella cusa Roe, 1932\n2. Ausella sp. 1\n"
        "3. Ausella eusa Roe, 1932",
        "Figures 1–3. Ausella spp., habitus.\n1. Ausella cusa Roe, male.\n"
        "2. Ausella dusa sp. n., holotype.\n3. Ausella eusa Roe, male."}) {
    auto const text = std::string{kDotted} + "\n" + list + "\n";
    EXPECT_EQ(sketch(text), kReadInArticle) << text;
  }
}

TEST(PrintedWholeArticles, CaptionsAmongLeads) {
  std::string const key = std::string{kDotted};
  auto const at = key.find("3. Eyes red");
  for (std::string const caption :
       {"Figs 3–5. Aedeagus. 3. Ausella cusa. 4. A. dusa.\n5. A. eusa. Scale bar: 0.5 mm.\n",
        "FIGURES 3–5. Aedeagus.\n3, Ausella cusa; 4, A. dusa;\n5, A. eusa.\n"}) {
    auto const text = key.substr(0, at) + caption + key.substr(at);
    EXPECT_EQ(sketch(text), kReadInArticle) << text;
  }
  for (std::string const caption :
       {"FIGURE 3. Ausella cusa, male habitus, dorsal view.\n",
        "Fig. 3. Ausella cusa Roe, 1932, male, holotype. A. Dorsal view. B. Lateral view.\n"
        "C. Aedeagus.\n"}) {
    auto const text = key.substr(0, at) + "3. Eyes in lateral view\n" + caption +
                      "strongly curved and\nred ......... Ausella eusa Roe, 1932\n" +
                      key.substr(key.find("– Eyes black"));
    EXPECT_EQ(sketch(text),
              "1[1] Wings clear -> 2\n1[–] Wings dark -> 3\n"
              "2[2] Legs black -> Ausella cusa\n2[–] Legs red -> Ausella dusa (sp. n.)\n"
              "3[3] Eyes in lateral view strongly curved and red -> Ausella eusa\n"
              "3[–] Eyes black -> Ausella fusa\n")
        << text;
  }
  // The same words as part of a lead.
  EXPECT_EQ(sketch("1. Aedeagus in lateral view as in\nFig. 3. Legs long, at least 2.5 mm.\n"
                   "long in males ......... Ausella busa\n– Legs short ......... Ausella cusa\n"),
            "1[1] Aedeagus in lateral view as in Fig. 3. Legs long, at least 2.5 mm. long in males "
            "-> Ausella busa\n1[–] Legs short -> Ausella cusa\n");
}

TEST(PrintedWholeArticles, MatterBetweenTwoKeys) {
  constexpr auto kGenera = "1[1] Head black -> Ausella\n1[–] Head yellow -> Busella\n";
  std::string const genera =
      "Key to genera\n1. Head black ......... Ausella Roe, 1932\n"
      "– Head yellow ......... Busella Dorn, 1911\n";
  EXPECT_EQ(sketch(genera + "* Known from the female only.\n" + std::string{kDotted}),
            std::string{kGenera} + kReadInArticle);
  auto const females = "Females\n" + std::string{kDotted.substr(kDotted.find('\n') + 1)};
  EXPECT_EQ(sketch(genera +
                   "References\n1. Roe A. Beetles of Sarn. Ann Zool 1932; 12: 1–44.\n"
                   "2. Dorn B. New species. Ent News 1911; 3: 112–118.\n" +
                   females),
            std::string{kGenera} + kReadInArticle);
}

TEST(PrintedWholeArticles, MatterBeforeAnOutlineWithoutNumbers) {
  constexpr auto kOutline =
      "1[] Wings clear -> 2\n1[] Wings dark -> 3\n"
      "2[] Legs black -> Ausella cusa\n2[] Legs red -> Ausella dusa (sp. n.)\n"
      "3[] Eyes red -> Ausella eusa\n3[] Eyes black -> Ausella fusa\n";
  std::string const outline =
      "Key to the species of Ausella\nWings clear\n"
      "  Legs black ......... Ausella cusa Roe, 1932\n"
      "  Legs red ......... Ausella dusa sp. n.\nWings dark\n"
      "  Eyes red ......... Ausella eusa Roe, 1932\n"
      "  Eyes black ......... Ausella fusa (Dorn, 1911)\n";
  for (std::string const matter :
       {"Localities:\n1. Sarn, Mt Mere, 1200 m, 12.vi.2011, 3♂, 2♀.\n"
        "2. Sarn, Lower Valley, 800 m, 3.vii.2012, 1♂.\n3. Mere, 450 m, 14.viii.1998, 1♀.\n\n",
        "References\n1. Roe A. Beetles of Sarn. Ann Zool 1932; 12: 1–44.\n"
        "2. Dorn B. New species. Ent News 1911; 3: 112–118.\n"
        "3. Lund C. Notes. J Beetles 2003; 44: 201–222.\n\n",
        "Synonyms:\n– Busella Dorn, 1911 (junior homonym)\n– Cusella Lund, 1920 (misspelling)\n\n",
        "Contents\nIntroduction ......... 3\nMaterial and methods ......... 4\n"
        "References ......... 35\n\n"}) {
    EXPECT_EQ(sketch(matter + outline), kOutline) << matter;
  }
}

TEST(PrintedWholeArticles, NumbersOfEveryFifthLine) {
  EXPECT_EQ(sketch("    1. Wings clear, with\n    hairs on the veins and with\n"
                   "215 dense pubescence\n    ......... 2\n    – Wings dark\n    ......... 3\n"
                   "    2. Legs black ......... Ausella cusa Roe, 1932\n"
                   "220 – Legs red ......... Ausella dusa sp. n.\n"
                   "    3. Eyes red ......... Ausella eusa Roe, 1932\n"
                   "    – Eyes black ......... Ausella fusa (Dorn, 1911)\n"),
            "1[1] Wings clear, with hairs on the veins and with dense pubescence -> 2\n"
            "1[–] Wings dark -> 3\n"
            "2[2] Legs black -> Ausella cusa\n2[–] Legs red -> Ausella dusa (sp. n.)\n"
            "3[3] Eyes red -> Ausella eusa\n3[–] Eyes black -> Ausella fusa\n");
  // Lines of words that begin with a round number are no margin.
  EXPECT_EQ(sketch("1. Wings clear, with\n10 hairs or more ......... 2\n"
                   "– Wings dark, with up to\n15 hairs ......... Ausella busa\n"
                   "2. Legs black ......... Ausella cusa\n– Legs red ......... Ausella dusa\n"),
            "1[1] Wings clear, with 10 hairs or more -> 2\n"
            "1[–] Wings dark, with up to 15 hairs -> Ausella busa\n"
            "2[2] Legs black -> Ausella cusa\n2[–] Legs red -> Ausella dusa\n");
}

TEST(PrintedWholeArticles, NumbersOfLinesAtTheRight) {
  std::string numbered;
  std::size_t number = 211;
  for (std::size_t at = 0; at < kDotted.size();) {
    auto const end = kDotted.find('\n', at);
    numbered += std::string{kDotted.substr(at, end - at)} + " " + std::to_string(number++) + "\n";
    at = end + 1;
  }
  EXPECT_EQ(sketch(numbered), kReadInArticle) << numbered;
  // Couplets that count one by one lead on.
  EXPECT_EQ(sketch("1. Wings clear 2\n– Wings dark 3\n2. Legs black 4\n– Legs red 5\n"
                   "3. Eyes red 6\n– Eyes black 7\n4. Head red 8\n– Head black 9\n")
                .substr(0, 42),
            "1[1] Wings clear -> 2\n1[–] Wings dark ->");
}

TEST(PrintedWholeArticles, DashesDirectlyBehindTheKey) {
  EXPECT_EQ(sketch(std::string{kBare} +
                   "The genus is recognised by:\n– grooved pronotum;\n– long antennae.\n"),
            kReadInArticle);
  // A third lead has none of this above it.
  EXPECT_EQ(sketch("1 Wings clear ......... Ausella busa Roe\n"
                   "– Wings dark ......... Ausella cusa Roe\n"
                   "– Wings spotted ......... Ausella dusa Roe\n"),
            "1[1] Wings clear -> Ausella busa\n1[–] Wings dark -> Ausella cusa\n"
            "1[–] Wings spotted -> Ausella dusa\n");
}

TEST(PrintedWholeArticles, ASectionDirectlyBehindTheKey) {
  for (std::string const section :
       {"1. Introduction\nThe genus Ausella was erected by Roe (1932).\n",
        "1. Genus Ausella Roe, 1932\n"}) {
    EXPECT_EQ(sketch(std::string{kDotted} + section), kReadInArticle) << section;
  }
}

TEST(PrintedWholeArticles, LeadsAboveAKeyStayLeads) {
  // The count begins anew below, and blank lines part the leads above.
  EXPECT_EQ(
      sketch("1. Wings clear, without any spots ... 2\n\n– Wings dark ... Ausella busa Roe\n\n"
             "2. Legs black ... Ausella cusa Roe\n\n– Legs red ... Ausella dusa Roe\n\n"
             "Key to the males\n\n1. Head red ... Ausella cusa Roe\n"
             "– Head black ... Ausella dusa Roe\n"),
      "1[1] Wings clear, without any spots -> 2\n1[–] Wings dark -> Ausella busa\n"
      "2[2] Legs black -> Ausella cusa\n2[–] Legs red -> Ausella dusa\n"
      "1[1] Head red -> Ausella cusa\n1[–] Head black -> Ausella dusa\n");
  EXPECT_EQ(sketch("1. Wings clear, without any spots 2\n\n– Wings dark Ausella busa Roe\n\n"
                   "2. Legs black Ausella cusa Roe\n\n– Legs red Ausella dusa Roe\n\n"
                   "Key to the males\n\n1. Head red Ausella cusa Roe\n"
                   "– Head black Ausella dusa Roe\n"),
            "1[1] Wings clear, without any spots -> 2\n1[–] Wings dark -> Ausella busa\n"
            "2[2] Legs black -> Ausella cusa\n2[–] Legs red -> Ausella dusa\n"
            "1[1] Head red -> Ausella cusa\n1[–] Head black -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift

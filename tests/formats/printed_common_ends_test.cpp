// Ends of leads in leaflets: common names, with and without scientific ones in brackets, beside
// leads that say "go to 5".

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::sketch;

// Four ends that `name` sets behind the lead's words.
template <class Name>
std::string leaflet(Name name) {
  auto const end = [&name](std::string const& words, std::string const& common) {
    return name(words, common) + "\n";
  };
  return "1. a. Head drawn out in front ......... go to 2\n"
         "   b. Head round ...................... go to 3\n\n"
         "2. a. " +
         end("Wings spotted; legs red", "Barn mole-beetle") + "   b. " +
         end("Wings plain", "Long-pitted mole-beetle") +
         "\n3. a. Body rough .......... go to 4\n   b. " + end("Body smooth", "Small borer") +
         "\n4. a. " + end("Horns long", "Sheaf beetle") + "   b. " +
         end("Horns short", "Toothed bread beetle");
}

std::string const kReadWithCommonEnds =
    "1[1. a] Head drawn out in front -> 2\n1[b] Head round -> 3\n"
    "2[2. a] Wings spotted; legs red -> Barn mole-beetle\n"
    "2[b] Wings plain -> Long-pitted mole-beetle\n3[3. a] Body rough -> 4\n"
    "3[b] Body smooth -> Small borer\n4[4. a] Horns long -> Sheaf beetle\n"
    "4[b] Horns short -> Toothed bread beetle\n";

TEST(PrintedCommonEnds, BracketsHoldThem) {
  EXPECT_EQ(sketch(leaflet([](std::string const& words, std::string const& name) {
              return words + " (" + name + ")";
            })),
            kReadWithCommonEnds);
}

TEST(PrintedCommonEnds, DashesSetThemApart) {
  EXPECT_EQ(sketch(leaflet([](std::string const& words, std::string const& name) {
              return words + " - " + name;
            })),
            kReadWithCommonEnds);
  EXPECT_EQ(sketch(leaflet([](std::string const& words, std::string const& name) {
              return words + " – " + name;
            })),
            kReadWithCommonEnds);
}

TEST(PrintedCommonEnds, ColonsSetThemApart) {
  EXPECT_EQ(sketch(leaflet([](std::string const& words, std::string const& name) {
              return words + ": " + name;
            })),
            kReadWithCommonEnds);
}

TEST(PrintedCommonEnds, TheLastSentenceIsTheName) {
  auto const text = leaflet(
      [](std::string const& words, std::string const& name) { return words + ", " + name + "."; });
  EXPECT_EQ(sketch(text), kReadWithCommonEnds);
  auto const findings = findings_of(text);
  ASSERT_EQ(findings.size(), 5U);
  EXPECT_NE(findings.front().find("assumed-destination"), std::string::npos) << findings.front();
}

TEST(PrintedCommonEnds, OneLeadThatEndsOtherwiseMakesThemWords) {
  auto const text = leaflet([](std::string const& words, std::string const& name) {
    return name == "Small borer" ? words + " and soft" : words + ". " + name;
  });
  EXPECT_NE(sketch(text).find("Horns long. Sheaf beetle -> ?\n"), std::string::npos)
      << sketch(text);
}

TEST(PrintedCommonEnds, WordsThatTwoLeadsShareAreNoNames) {
  auto const text = leaflet([](auto words, auto) { return words + ". Legs long"; });
  EXPECT_NE(sketch(text).find("Wings plain. Legs long -> ?\n"), std::string::npos) << sketch(text);
}

TEST(PrintedCommonEnds, ScientificNamesInBracketsNeedNoLeadersThoughNumbersHaveThem) {
  auto const text =
      "KNOW YOUR GRAIN\n\n"
      "1. a. Head drawn out in front into a snout ........... go to 2\n"
      "   b. Head without a snout ........................... go to 4\n\n"
      "2. a. Wing covers with four pale spots ............... go to 3\n"
      "   b. Wing covers without spots, Field borer (Ausella agrestis)\n\n"
      "3. a. Pits on the back round; flies well. Barn borer (Ausella\n"
      "      horrei)\n"
      "   b. Pits long and narrow; cannot fly. Long-pitted borer\n"
      "      (Ausella elongata)\n\n"
      "4. a. Head bent under and hidden from above .......... go to 5\n"
      "   b. Head plainly seen from above ................... go to 6\n\n"
      "5. a. Body smooth or hairy; antennae saw-like ........ go to 7\n"
      "   b. Body rough, like a file. Small borer (Busella minor)\n\n"
      "6. a. Sides of thorax with teeth .................... go to 8\n"
      "   b. Sides of thorax without teeth ................. go to 9\n\n"
      "7. a. Wing covers without lines. Sheaf borer (Cusella nitida)\n"
      "   b. Wing covers with fine lines. Bread borer (Cusella\n"
      "      panis)\n\n"
      "8. a. Six teeth on each side. Toothed borer (Dusella dentata)\n"
      "   b. One blunt tooth at each front corner only; found in mouldy\n"
      "      grain. Damp borer (Dusella humida)\n\n"
      "9. a. Dull black. Dark borer (Eusella opaca)\n"
      "   b. Shiny dark brown or black. Shining borer (Eusella lucida)\n";
  EXPECT_EQ(sketch(text),
            "1[1. a] Head drawn out in front into a snout -> 2\n"
            "1[b] Head without a snout -> 4\n"
            "2[2. a] Wing covers with four pale spots -> 3\n"
            "2[b] Wing covers without spots, Field borer -> Ausella agrestis\n"
            "3[3. a] Pits on the back round; flies well. Barn borer -> Ausella horrei\n"
            "3[b] Pits long and narrow; cannot fly. Long-pitted borer -> Ausella elongata\n"
            "4[4. a] Head bent under and hidden from above -> 5\n"
            "4[b] Head plainly seen from above -> 6\n"
            "5[5. a] Body smooth or hairy; antennae saw-like -> 7\n"
            "5[b] Body rough, like a file. Small borer -> Busella minor\n"
            "6[6. a] Sides of thorax with teeth -> 8\n"
            "6[b] Sides of thorax without teeth -> 9\n"
            "7[7. a] Wing covers without lines. Sheaf borer -> Cusella nitida\n"
            "7[b] Wing covers with fine lines. Bread borer -> Cusella panis\n"
            "8[8. a] Six teeth on each side. Toothed borer -> Dusella dentata\n"
            "8[b] One blunt tooth at each front corner only; found in mouldy grain. Damp borer -> "
            "Dusella humida\n"
            "9[9. a] Dull black. Dark borer -> Eusella opaca\n"
            "9[b] Shiny dark brown or black. Shining borer -> Eusella lucida\n");
}

TEST(PrintedCommonEnds, CapitalsBeforeABracketedBinomialAreNoName) {
  EXPECT_EQ(sketch("Key to caterpillars\n\n"
                   "1. Looping .......... BRASSICA LOOPER (Semilopha agnata)\n"
                   "   Not looping .......... 2\n"
                   "2. Head black .... CABBAGE CENTRE-WEBBER (Omolypta undulosa)\n"
                   "   Head brown .......... 3\n"
                   "3. Five prolegs ......... CLUSTER WEBBER (Crenolis binotella)\n"
                   "   Two prolegs .......... TWIG LOOPER (Xylogestra decorata)\n"),
            "1[1] Looping -> Semilopha agnata (BRASSICA LOOPER)\n"
            "1[] Not looping -> 2\n"
            "2[2] Head black -> Omolypta undulosa (CABBAGE CENTRE-WEBBER)\n"
            "2[] Head brown -> 3\n"
            "3[3] Five prolegs -> Crenolis binotella (CLUSTER WEBBER)\n"
            "3[] Two prolegs -> Xylogestra decorata (TWIG LOOPER)\n");
}

// The bracket may stand on the next line, the genus ends as no other does, "Merrowdale scale" looks
// like a species.
TEST(PrintedCommonEnds, TheLatinNameBehindACommonOne) {
  EXPECT_EQ(
      sketch("1. Shell round ..... 2\n– Shell long ..... Plum mussel scale (Ulmaspis conchata)\n"
             "2. Back domed ..... Cherry pea scale\n(Globolecan cerasinum)\n"
             "– Back flat ..... 3\n"
             "3. A letter H on the back ..... H-back scale (Hattalecan insigne)\n"
             "– No letter ..... Merrowdale scale (Plano-\nlecan lampwickae)\n"),
      "1[1] Shell round -> 2\n"
      "1[–] Shell long -> Ulmaspis conchata (Plum mussel scale)\n"
      "2[2] Back domed -> Globolecan cerasinum (Cherry pea scale)\n"
      "2[–] Back flat -> 3\n"
      "3[3] A letter H on the back -> Hattalecan insigne (H-back scale)\n"
      "3[–] No letter -> Planolecan lampwickae (Merrowdale scale)\n");
}

TEST(PrintedCommonEnds, ANameInBracketsMayStandOnTheNextLine) {
  EXPECT_EQ(sketch("1a. Wings clear .... Pale Barnlet (Ausella pallida)\n1b. Wings dark ....... 2\n"
                   "2a. Legs 10 cm, diffuse .... Fieldlet\n    (Busella pilosa)\n"
                   "2b. Legs grey .... Rock Cushatet\n    (Cusella livens) incl. all town birds\n"),
            "1[1a] Wings clear -> Ausella pallida (Pale Barnlet)\n"
            "1[1b] Wings dark -> 2\n"
            "2[2a] Legs 10 cm, diffuse -> Busella pilosa (Fieldlet)\n"
            "2[2b] Legs grey -> Cusella livens (Rock Cushatet; incl. all town birds)\n");
}

TEST(PrintedCommonEnds, CommonNamesBehindASentence) {
  EXPECT_EQ(
      sketch("KEY TO THE WOODY PLANTS BY THEIR TWIGS\n"
             "\n"
             "A. Leaf-scars opposite.\n"
             "\n"
             "B. Bundle-scar one. =Burnwood= (_Evonella atrovirens_), p. 88.\n"
             "\n"
             "BB. Bundle-scars three.\n"
             "\n"
             "C. Pith white. =Blue Sambrel= (_Sambrella glauca_), p. 97.\n"
             "\n"
             "CC. Pith brown, very wide; lenticels large. =Sweet\n"
             "Sambrel= (_S. pubens_), p. 98.\n"
             "\n"
             "AA. Leaf-scars alternate.\n"
             "\n"
             "D. Buds crowded at the tip of the twig. =The Oakels=\n"
             "(_Quercella_), p. 121.\n"
             "\n"
             "DD. Buds slender. =Beechlet= (_Fagonella silvestris_), p. 130.\n"),
      "A[A] Leaf-scars opposite. -> B\n"
      "A[AA] Leaf-scars alternate. -> D\n"
      "B[B] Bundle-scar one. -> Evonella atrovirens (Burnwood; p. 88.)\n"
      "B[BB] Bundle-scars three. -> C\n"
      "C[C] Pith white. -> Sambrella glauca (Blue Sambrel; p. 97.)\n"
      "C[CC] Pith brown, very wide; lenticels large. -> Sambrella pubens (Sweet Sambrel; p. 98.)\n"
      "D[D] Buds crowded at the tip of the twig. -> Quercella (The Oakels; p. 121.)\n"
      "D[DD] Buds slender. -> Fagonella silvestris (Beechlet; p. 130.)\n");
}

TEST(PrintedCommonEnds, ACommonNameMayEndAsALatinNeuter) {
  EXPECT_EQ(sketch("Key to beetles\n"
                   "\n"
                   "1. Wing covers with rows of pits .......... 2\n"
                   "- Wing covers smooth .......... Leaf-bale beetle (Lasiella testacea), p. 15.\n"
                   "2. Thorax long .......... Mill beetle (Ptinella velox), p. 16.\n"
                   "- Thorax short .......... Bin snout beetle (Sitella fossor), p. 6.\n"),
            "1[1] Wing covers with rows of pits -> 2\n"
            "1[-] Wing covers smooth -> Lasiella testacea (Leaf-bale beetle; p. 15.)\n"
            "2[2] Thorax long -> Ptinella velox (Mill beetle; p. 16.)\n"
            "2[-] Thorax short -> Sitella fossor (Bin snout beetle; p. 6.)\n");
}

TEST(PrintedCommonEnds, ACommonNameBeforeADash) {
  EXPECT_EQ(
      sketch("1 Knospen gegenständig ... 2\n"
             "1* Knospen wechselständig ... 3\n"
             "2 Knospen kugelig ... Berg-Holler – Sambucella racemifera\n"
             "2* Knospen bedeckt ... Berg-Masch – Platacer montanum Gersd.\n"
             "3 Seitenknospen angedrückt ... Spitz-Masch – Platacer latifrons (Wied.) Gersd.\n"
             "3* Seitenknospen abstehend ... Feld-Masch – Platacer campicola Wied.\n"),
      "1[1] Knospen gegenständig -> 2\n"
      "1[1*] Knospen wechselständig -> 3\n"
      "2[2] Knospen kugelig -> Sambucella racemifera (Berg-Holler)\n"
      "2[2*] Knospen bedeckt -> Platacer montanum (Berg-Masch)\n"
      "3[3] Seitenknospen angedrückt -> Platacer latifrons (Spitz-Masch)\n"
      "3[3*] Seitenknospen abstehend -> Platacer campicola (Feld-Masch)\n");
}

TEST(PrintedCommonEnds, SmallSecondWordsBeforeABracket) {
  EXPECT_EQ(sketch("Key to the mussels\n"
                   "\n"
                   "1a. Shell long .......... Marsh spike (Lanceunio busensis), page 26\n"
                   "1b. Shell short .......... 2\n"
                   "2a. Rays broken .......... Rayed pigtoe (Perlunio cusus), page 33, or Dusky "
                   "pigtoe (Perlunio dusus), page 34\n"
                   "2b. Rays absent .......... Fat pigtoe (Perlunio fusus), page 36\n"),
            "1[1a] Shell long -> Lanceunio busensis (Marsh spike; page 26)\n"
            "1[1b] Shell short -> 2\n"
            "2[2a] Rays broken -> Perlunio cusus + Perlunio dusus (Rayed pigtoe or Dusky pigtoe; "
            "page 34)\n"
            "2[2b] Rays absent -> Perlunio fusus (Fat pigtoe; page 36)\n");
}

}  // namespace
}  // namespace keydrift

// Genera that end leads.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedGenusEnds, GeneraAreNoAuthorsOfTheWordsBeforeThem) {
  EXPECT_EQ(
      sketch(
          "Chiave dei generi\n"
          "\n"
          "1 Branchie presenti, semplici o ramificate 2\n"
          "- Branchie assenti 3\n"
          "2(1) Capo con carena; femori con una sola spina ventrale (fig. 14 a, b) Potamocharis\n"
          "- Capo senza carena; astuccio di frammenti disposti trasversalmente Limnocentrus\n"
          "3(1) Setole corte 4\n"
          "- Setole lunghe, unghie con un dente apicale Oecetopsis\n"
          "4(3) Tibie con frangia natatoria (fig. 18 c) Mystaciella\n"
          "- Tibie senza frangia 5\n"
          "5(4) Metanoto nudo Stenocharis\n"
          "- Metanoto con ciuffi Allocentrus\n"),
      "1[1] Branchie presenti, semplici o ramificate -> 2\n"
      "1[-] Branchie assenti -> 3\n"
      "2[2] Capo con carena; femori con una sola spina -> ventrale (( a, b) Potamocharis)\n"
      "2[-] Capo senza carena; astuccio di frammenti disposti trasversalmente -> Limnocentrus\n"
      "3[3] Setole corte -> 4\n"
      "3[-] Setole lunghe, unghie con un dente -> Limnocentrus apicale\n"
      "4[4] Tibie con frangia -> Limnocentrus natatoria (( c) Mystaciella)\n"
      "4[-] Tibie senza frangia -> 5\n"
      "5[5] Metanoto nudo -> Stenocharis\n"
      "5[-] Metanoto con -> Limnocentrus ciuffi\n");
}

TEST(PrintedGenusEnds, LineEndsThatCompareNameNoGenus) {
  EXPECT_EQ(sketch("Key to the species of Ausella\n"
                   "\n"
                   "1. Rostrum as in Busella Ferrand ...... 2\n"
                   "— Rostrum longer than in Cusella Ferrand ...... 3\n"
                   "2. Eyes round ...... A. busa\n"
                   "— Eyes oval ...... A. cusa\n"
                   "3. Eyes flat ...... A. dusa\n"
                   "— Eyes convex ...... A. fusa\n"),
            "1[1] Rostrum as in Busella Ferrand -> 2\n"
            "1[—] Rostrum longer than in Cusella Ferrand -> 3\n"
            "2[2] Eyes round -> Ausella busa\n"
            "2[—] Eyes oval -> Ausella cusa\n"
            "3[3] Eyes flat -> Ausella dusa\n"
            "3[—] Eyes convex -> Ausella fusa\n");
}

TEST(PrintedGenusEnds, AuthorsOfSeveralGeneraThatEndLines) {
  EXPECT_EQ(
      sketch(
          "Key to the genera of Ausellini\n"
          "\n"
          "1. Prosternum with a deep channel; pygidium covered by\n"
          "elytra Cyrtella Ferrand\n"
          "— Prosternum flat 2\n"
          "2(1). Third tarsal segment deeply bilobed; tibiae hooked at apex.. Barella Wrenfield\n"
          "— Third tarsal segment not wider than second 3\n"
          "3(2). Males with prosternal horns.... Pseudocentor Wrenfield (part)\n"
          "— Males without horns 4\n"
          "4(3). Striae with large punctures. .Glyptella Ferrand\n"
          "— Striae fine Pseudocentor Wrenfield (part)\n"
          "\n"
          "Genus Dusella Wrenfield\n"),
      "1[1] Prosternum with a deep channel; pygidium covered by elytra -> Cyrtella\n"
      "1[—] Prosternum flat -> 2\n"
      "2[2] Third tarsal segment deeply bilobed; tibiae hooked at apex -> Barella\n"
      "2[—] Third tarsal segment not wider than second -> 3\n"
      "3[3] Males with prosternal horns -> Pseudocentor (part)\n"
      "3[—] Males without horns -> 4\n"
      "4[4] Striae with large punctures. -> Glyptella\n"
      "4[—] Striae fine -> Pseudocentor (part)\n");
}

}  // namespace
}  // namespace keydrift

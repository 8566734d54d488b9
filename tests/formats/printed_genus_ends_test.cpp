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
      "4[4] Tibie con -> Limnocentrus frangia natatoria (( c) Mystaciella)\n"
      "4[-] Tibie senza frangia -> 5\n"
      "5[5] Metanoto nudo -> Stenocharis\n"
      "5[-] Metanoto con -> Limnocentrus ciuffi\n");
}

}  // namespace
}  // namespace keydrift

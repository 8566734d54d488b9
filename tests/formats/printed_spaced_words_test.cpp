// Words that are spaced to stand out.

#include <string>

#include <gtest/gtest.h>

#include "keydrift/formats/printed_spaced_words.hpp"
#include "printed_support.hpp"

namespace keydrift::printed {
namespace {

std::string closed(std::string text) {
  close_spaced_words(text);
  return text;
}

TEST(PrintedSpacedWords, SmallLettersBehindACapital) {
  EXPECT_EQ(closed("Felsmoose. A u s a l i s."), "Felsmoose. Ausalis.      ");
  EXPECT_EQ(closed("A u s a l i s B u s a"), "Ausalis B u s a      ");
  EXPECT_EQ(closed("die d ü n n e n Blätter"), "die dünnen Blätter     ");
  EXPECT_EQ(closed("A U S A L I S\nA U S A"), "AUSALIS      \nA U S A");
}

TEST(PrintedSpacedWords, AWordThatALineBreaks) {
  std::string text = "meist filzig. A u s -\nt r i c h a.\nEnde";
  EXPECT_EQ(close_spaced_words(text), 1U);
  EXPECT_EQ(text, "meist filzig. Aus-   \ntricha.     \nEnde");
}

TEST(PrintedSpacedWords, LettersOfFiguresAndLabelsStay) {
  for (std::string const text : {"Zähne spitz (a b c d e in Fig. 3)", "A B i s t", "1. A b c d e f",
                                 "a b c -\nx y", "a - b c d", "Fig. 3 a b c -\nd e f g"}) {
    EXPECT_EQ(closed(text), text);
  }
}

TEST(PrintedSpacedWords, FiguresAmongSpacedLetters) {
  EXPECT_EQ(test::sketch("Übersicht der Gattungen.\n"
                   "\n"
                   "1. Staubblätter 2 2.\n"
                   "— Staubblätter 4 3.\n"
                   "2. Blüten gelb; Blätter gekerbt. 1. D i a n d r e 1 1 a.\n"
                   "— Blüten blau; Blätter ganzrandig. 2. S o 1 e a t e 1 1 a.\n"
                   "3. Frucht in 4 Nüßchen zerfallend. 3. M e n t h o 1 i a.\n"
                   "— Frucht eine Kapsel 4.\n"
                   "4. Kelch mit Sporn. 4. Cornicula.\n"
                   "— Kelch ohne Sporn. 5. H e m i p t i l o n.\n"),
            "1[1] Staubblätter 2 -> 2\n"
            "1[—] Staubblätter 4 -> 3\n"
            "2[2] Blüten gelb; Blätter gekerbt. -> Diandrella\n"
            "2[—] Blüten blau; Blätter ganzrandig. -> Soleatella\n"
            "3[3] Frucht in 4 Nüßchen zerfallend. -> Mentholia\n"
            "3[—] Frucht eine Kapsel -> 4\n"
            "4[4] Kelch mit Sporn. -> Cornicula\n"
            "4[—] Kelch ohne Sporn. -> Hemiptilon\n");
}

}  // namespace
}  // namespace keydrift::printed

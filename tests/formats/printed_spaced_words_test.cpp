// Words that are spaced to stand out.

#include <string>

#include <gtest/gtest.h>

#include "keydrift/formats/printed_spaced_words.hpp"

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

}  // namespace
}  // namespace keydrift::printed

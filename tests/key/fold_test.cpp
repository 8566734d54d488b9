#include "keydrift/key/fold.hpp"

#include <gtest/gtest.h>

namespace keydrift {
namespace {

TEST(FoldWords, IgnoresCaseAndSpacing) {
  EXPECT_EQ(fold_words("  Key\tB:\n Larvae "), "key b: larvae");
  EXPECT_EQ(fold_words(""), "");
  EXPECT_EQ(fold_words(" \t"), "");
}

TEST(FoldWords, IgnoresCompatibilityFormsAndComposition) {
  EXPECT_EQ(fold_words("BLU\u0308TEN"), fold_words("bl\u00FCten"));
  EXPECT_EQ(fold_words("Stra\u00DFe"), "strasse");
  EXPECT_EQ(fold_words("\uFB02ora"), "flora");   // the ligature fl
  EXPECT_EQ(fold_words("Key\u00A0B"), "key b");  // no-break space
  EXPECT_EQ(fold_words("\u00C9toile"), "\u00E9toile");
}

TEST(FoldWords, LeavesBytesThatAreNotUtf8) { EXPECT_EQ(fold_words("A\xFF  b"), "A\xFF b"); }

}  // namespace
}  // namespace keydrift

// The genus that a title names.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedTitleGenus, GenitivesOfTheFirstDeclension) {
  EXPECT_EQ(sketch("Clavis specierum generis Ausellae\n"
                   "\n"
                   "1. Corpus carinatum ..... A. busa\n"
                   "— Corpus haud carinatum ..... A. cusa\n"),
            "1[1] Corpus carinatum -> Ausella busa\n"
            "1[—] Corpus haud carinatum -> Ausella cusa\n");
}

}  // namespace
}  // namespace keydrift

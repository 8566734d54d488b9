#include "keydrift/key/prose.hpp"

#include <gtest/gtest.h>

namespace keydrift {
namespace {

TEST(InProse, ListsItemsAsASentenceWould) {
  EXPECT_EQ(in_prose({}), "");
  EXPECT_EQ(in_prose({"4"}), "4");
  EXPECT_EQ(in_prose({"4", "5"}), "4 and 5");
  EXPECT_EQ(in_prose({"4", "5", "6"}), "4, 5 and 6");
}

TEST(InProse, CountsWhatIsTooMuchToList) {
  EXPECT_EQ(in_prose({"4", "5", "6", "7"}, 4), "4, 5, 6 and 7");
  EXPECT_EQ(in_prose({"4", "5", "6", "7", "8"}, 4), "4, 5, 6 and 2 more");
}

TEST(InQuotes, PutsQuotesAround) { EXPECT_EQ(in_quotes("7a"), "\"7a\""); }

}  // namespace
}  // namespace keydrift

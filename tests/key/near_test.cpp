#include "keydrift/key/near.hpp"

#include <gtest/gtest.h>

#include <random>

namespace keydrift {
namespace {

using Words = std::vector<std::string>;

TEST(CountSlips, CountsInsertionsDeletionsSubstitutionsAndSwaps) {
  EXPECT_EQ(count_slips("", "", 9), 0U);
  EXPECT_EQ(count_slips("", "abc", 9), 3U);
  EXPECT_EQ(count_slips("beak", "beaks", 9), 1U);
  EXPECT_EQ(count_slips("beak", "eak", 9), 1U);
  EXPECT_EQ(count_slips("beak", "bead", 9), 1U);
  EXPECT_EQ(count_slips("beak", "baek", 9), 1U);
  EXPECT_EQ(count_slips("ca", "abc", 9), 3U);  // no letter takes part in two edits
  EXPECT_EQ(count_slips("kitten", "sitting", 9), 3U);
}

TEST(CountSlips, StopsBeyondTheMost) {
  EXPECT_EQ(count_slips("kitten", "sitting", 3), 3U);
  EXPECT_EQ(count_slips("kitten", "sitting", 2), 3U);
  EXPECT_EQ(count_slips("a", "abcdefghij", 2), 3U);
}

// The definition, without the shortcuts: a table of all prefixes.
std::size_t by_definition(std::string const& a, std::string const& b) {
  std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      auto& here = cost[i][j];
      if (i == 0 || j == 0) {
        here = i + j;
        continue;
      }
      here = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1,
                       cost[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        here = std::min(here, cost[i - 2][j - 2] + 1);
      }
    }
  }
  return cost[a.size()][b.size()];
}

TEST(CountSlips, AgreesWithTheDefinitionOnRandomWordsShortAndLong) {
  std::mt19937 random{static_cast<unsigned>(testing::UnitTest::GetInstance()->random_seed())};
  auto const word = [&](std::size_t longest) {
    std::string text(random() % (longest + 1), 'a');
    for (auto& byte : text) byte = static_cast<char>('a' + random() % 3);
    return text;
  };
  for (int i = 0; i < 3000; ++i) {
    std::size_t const longest = i % 10 == 0 ? 70 : 8;
    auto const a = word(longest);
    auto const b = word(longest);
    auto const most = static_cast<std::size_t>(random() % 12);
    ASSERT_EQ(count_slips(a, b, most), std::min(by_definition(a, b), most + 1)) << a << ' ' << b;
  }
}

TEST(NearWords, GivesTheNearestFirstAndEquallyNearOnesInByteOrder) {
  Words const known{"v2024", "v1989", "v1998", "v1974", "draft", "v1998"};
  EXPECT_EQ(near_words("v1988", known), (Words{"v1989", "v1998"}));
  EXPECT_EQ(near_words("v1988", known, 1), (Words{"v1989"}));
}

TEST(NearWords, IgnoresCaseAndSpacing) {
  EXPECT_EQ(near_words("AUS  bus", {"Aus bus", "Cus"}), (Words{"Aus bus"}));
}

TEST(NearWords, FallsBackOnWordsThatHoldOneAnother) {
  EXPECT_EQ(near_words("key.txt", {"keys/key.txt", "old/keys/key.txt", "notes.md"}),
            (Words{"keys/key.txt", "old/keys/key.txt"}));
  EXPECT_EQ(near_words("edition-1998-draft", {"edition-1998", "x"}), (Words{"edition-1998"}));
  EXPECT_EQ(near_words("ab", {"cabinet"}), Words{});
}

TEST(NearWords, GivesNoneForNothingOrForStrangers) {
  EXPECT_EQ(near_words("", {"a", "b"}), Words{});
  EXPECT_EQ(near_words("Nardulium", {"Aus", "Velunaca"}), Words{});
}

TEST(DidYouMean, ListsTheWordsAsASentenceWould) {
  EXPECT_EQ(did_you_mean({}), "");
  EXPECT_EQ(did_you_mean({"a"}), "did you mean \"a\"?");
  EXPECT_EQ(did_you_mean({"a", "b"}), "did you mean \"a\" or \"b\"?");
  EXPECT_EQ(did_you_mean({"a", "b", "c"}), "did you mean \"a\", \"b\" or \"c\"?");
}

}  // namespace
}  // namespace keydrift

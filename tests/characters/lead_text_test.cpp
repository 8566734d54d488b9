// Which brackets of a lead belong together.

#include "keydrift/characters/reading/lead_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace keydrift::reading {
namespace {

// The text between the halves of each pair, in the order in which they open.
std::string pairs_of(std::string_view words) {
  LeadText const text{words, ""};
  std::string pairs;
  for (std::uint32_t i = 0; i < text.size(); ++i) {
    if (text.partner[i] == LeadText::kNone || text.partner[i] < i) continue;
    pairs += std::string{text.slice(i, text.partner[i])} + '|';
  }
  return pairs;
}

TEST(LeadText, BracketsStandWithinEachOther) {
  EXPECT_EQ(pairs_of("leaves (3 [2] mm) long [dry]"), "(3 [2] mm)|[2]|[dry]|");
  EXPECT_EQ(pairs_of("leaves (3 mm long"), "");
}

TEST(LeadText, OfPairsThatCrossTheLaterIsNone) {
  EXPECT_EQ(pairs_of("leaves [3 (2] mm) long"), "[3 (2]|");
  EXPECT_EQ(pairs_of("leaves (3 [2) mm] long (dry)"), "(3 [2)|(dry)|");
  EXPECT_EQ(pairs_of("leaves [3 (2 (1] mm) a) long (dry)"), "[3 (2 (1]|(dry)|");
}

}  // namespace
}  // namespace keydrift::reading

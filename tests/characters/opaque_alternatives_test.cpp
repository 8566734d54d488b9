#include <gtest/gtest.h>

#include "edition_builder.hpp"
#include "keydrift/characters/reading.hpp"

namespace keydrift::test {
namespace {

TEST(OpaqueCharacters, AStateOfSeveralAlternativesTakesInEachOfThem) {
  auto edition =
      make_edition("key", {{"1", {{"Nuts smooth or ridged", "2"}, {"Nuts pitted", "Aus bus"}}},
                           {"2", {{"Nuts smooth", "Cus cus"}, {"Nuts ridged", "Dus dus"}}},
                           {"3", {{"Nuts pitted", "Aus bus"}, {"Nuts smooth", "Cus cus"}}}});
  static_cast<void>(read_statements(edition, Lexicon{}));
  auto const& wide = edition.couplets[0].leads[0].statements.at(0).any_of.at(0);
  auto const& narrow = edition.couplets[1].leads[0].statements.at(0).any_of.at(0);
  ASSERT_EQ(wide.character, narrow.character);
  // So who comes down the first lead may take the second: the route does not contradict itself.
  EXPECT_EQ(wide.states,
            (std::vector<std::string>{"nuts ridged", "nuts smooth", "nuts smooth or ridged"}));
  EXPECT_EQ(narrow.states, (std::vector<std::string>{"nuts smooth"}));
}

}  // namespace
}  // namespace keydrift::test

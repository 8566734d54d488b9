// What is left of leaders at the end of a lead's words.

#include "keydrift/formats/printed_leader_remains.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

std::string without_remains(std::string_view words) {
  return std::string{words.substr(0, printed::without_leader_remains(words))};
}

TEST(PrintedLeaderRemains, AreDotsAndBulletsThatStandApart) {
  EXPECT_EQ(without_remains("Petals red. ."), "Petals red.");
  EXPECT_EQ(without_remains("Petals red. . . ."), "Petals red.");
  EXPECT_EQ(without_remains("Petals red ...."), "Petals red");
  EXPECT_EQ(without_remains("Petals red • ·"), "Petals red");
  EXPECT_EQ(without_remains("Petals red; …"), "Petals red;");
}

TEST(PrintedLeaderRemains, AreNotTheWordsOwnStops) {
  for (auto const* words : {"Petals red.", "Petals red .", "Petals red...", "Stamens etc.", "....",
                            "Petals 3 mm", ""}) {
    EXPECT_EQ(without_remains(words), words);
  }
}

TEST(PrintedLeaderRemains, AreNoWordsOfLeadsThatGoOnBeneath) {
  EXPECT_EQ(sketch("a. Racemes in axils. .\n"
                   "  b. Petals red ..... Ausella busa\n"
                   "  bb. Petals blue. ...... Ausella cusa\n"
                   "aa. Racemes at tips ..... Ausella dusa\n"),
            "a[a] Racemes in axils. -> b\n"
            "a[aa] Racemes at tips -> Ausella dusa\n"
            "b[b] Petals red -> Ausella busa\n"
            "b[bb] Petals blue. -> Ausella cusa\n");
}

TEST(PrintedLeaderRemains, AreInNoPlaceOfTheWords) {
  std::string const text{
      "a. Racemes in axils. .\n"
      "  b. Petals red ..... Ausella busa\n"
      "  bb. Petals blue ..... Ausella cusa\n"
      "aa. Racemes at tips ..... Ausella dusa\n"};
  auto const edition = test::read_key(text).edition;
  auto const& lead = edition.couplets.front().leads.front();
  ASSERT_EQ(lead.runs.size(), 1U);
  auto const& place = lead.runs.front().place;
  EXPECT_EQ(text.substr(place.begin, place.end - place.begin), "Racemes in axils.");
}

}  // namespace
}  // namespace keydrift

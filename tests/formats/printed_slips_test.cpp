// Words that scanning makes of others.

#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_slips.hpp"

namespace keydrift {
namespace {

using printed::may_be_misread;
using printed::MisreadWords;

TEST(PrintedSlips, TwoAtMostMakeOneWordOfTheOther) {
  EXPECT_TRUE(may_be_misread("tenuifiora", "tenuiflora"));
  EXPECT_TRUE(may_be_misread("vemus", "vernus"));
  EXPECT_TRUE(may_be_misread("rnaiom", "maiom"));
  EXPECT_TRUE(may_be_misread("lacnstris", "lacustris"));
  EXPECT_TRUE(may_be_misread("lacnstrls", "lacustris"));
  EXPECT_FALSE(may_be_misread("lacnstrls", "lacuslris"));  // three
  EXPECT_FALSE(may_be_misread("lacustris", "lacustris"));
  EXPECT_FALSE(may_be_misread("lacustris", "palustris"));
}

TEST(PrintedSlips, LettersOfAsManyStrokesMakeOneWordOfTheOther) {
  EXPECT_TRUE(may_be_misread("viaculosa", "maculosa"));
  EXPECT_TRUE(may_be_misread("brtmnescens", "brunnescens"));
  EXPECT_TRUE(may_be_misread("palliditla", "pallidula"));
  EXPECT_FALSE(may_be_misread("maculosa", "aculosa"));
  EXPECT_FALSE(may_be_misread("lutipes", "rufipes"));
  EXPECT_FALSE(may_be_misread("luteola", "tineola"));
  EXPECT_FALSE(may_be_misread("minor", "uiior"));  // too short
}

TEST(PrintedSlips, WordsAlikeAreFoundAsByALookAtEach) {
  static constexpr std::array<std::string_view, 14> kParts{"n",  "u",  "rn", "m", "in", "li", "h",
                                                           "fi", "fl", "cl", "d", "ii", "e",  "o"};
  std::mt19937 random{11};
  auto const made = [&random] {
    std::string word;
    for (int part = 0; part < 3; ++part) word += kParts[random() % kParts.size()];
    return word;
  };
  std::vector<std::string> words;
  MisreadWords index;
  for (int i = 0; i < 300; ++i) {
    words.push_back(made());
    index.add(words.back());
  }
  std::size_t alike = 0;
  for (int i = 0; i < 300; ++i) {
    auto const other = made();
    std::vector<std::size_t> expected;
    for (std::size_t w = 0; w < words.size(); ++w) {
      if (may_be_misread(words[w], other)) expected.push_back(w);
    }
    alike += expected.size();
    EXPECT_EQ(index.like(other), expected) << other;
  }
  EXPECT_GT(alike, 300U);
}

}  // namespace
}  // namespace keydrift

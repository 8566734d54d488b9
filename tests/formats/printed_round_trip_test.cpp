// What is written reads back the same, at any width, for editions of many shapes.

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <vector>

#include "finding_text.hpp"
#include "golden.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "made_editions.hpp"
#include "printed_support.hpp"
#include "seeds.hpp"

namespace keydrift {
namespace {

constexpr std::array kLayoutsThereAndBack{PrintLayout::parallel, PrintLayout::indented,
                                          PrintLayout::serial};

std::string printed_once(Edition const& edition, PrintOptions const& options = {}) {
  auto loaded = print_key(edition, options);
  std::string refusals;
  for (auto const& finding : loaded.findings) {
    if (finding.severity == Severity::error) refusals += test::one_line(finding) + "\n";
  }
  EXPECT_TRUE(loaded) << refusals;
  return loaded ? *loaded.value : std::string{};
}

// What the layout holds of the edition is printed, and reads back.
void expect_round_trip(Edition const& edition, PrintOptions const& options, std::string const& of) {
  SCOPED_TRACE(of + ", layout " + std::to_string(static_cast<int>(options.layout)) + ", width " +
               std::to_string(options.width));
  auto const text = printed_once(edition, options);
  auto const loaded = read_printed_key({.name = "made", .bytes = text});
  ASSERT_TRUE(loaded);
  EXPECT_TRUE(same_content(as_printed(edition, options), loaded.value->edition)) << text;
}

TEST(PrintedRoundTrip, WhatIsWrittenReadsBackTheSameInEveryLayoutAtAnyWidth) {
  auto const seeds = test::seeds(10);
  for (auto seed = seeds.begin; seed < seeds.end; ++seed) {
    auto const edition = test::odd_edition(seed);
    for (auto const layout : kLayoutsThereAndBack) {
      for (std::size_t const width : {80U, 34U, 132U, 400U}) {
        expect_round_trip(edition, {.layout = layout, .width = width},
                          "seed " + std::to_string(seed));
      }
    }
  }
}

TEST(PrintedRoundTrip, KeepsLinesWithinTheWidthWhereWordsAllow) {
  auto const text = printed_once(
      test::read_key(
          "1. A lead with many words in it that has to be set in several lines ..... 2\n"
          "– Short ..... Aus bus Smith, 1900, in part\n2. x ..... Aus cus\n– y ..... 1\n")
          .edition,
      {.width = 40});
  std::size_t begin = 0;
  while (begin < text.size()) {
    auto const end = text.find('\n', begin);
    EXPECT_LE(count_code_points(text.substr(begin, end - begin)), 40U);
    begin = end + 1;
  }
}

TEST(PrintedRoundTrip, WritesBackReferencesOfTheGraphWhenAsked) {
  auto const edition = test::read_key(
                           "1. Small ..... 2\n– Large ..... 3\n2. Pale ..... 3\n"
                           "– Dark ..... Aus bus\n3. Round ..... Aus cus\n– Square ..... Aus dus\n")
                           .edition;
  auto const text = printed_once(edition, {.back_references = BackReferences::from_graph});
  EXPECT_NE(text.find("\n3 (1, 2).  Round"), std::string::npos) << text;
  EXPECT_EQ(printed_once(edition).find("(1"), std::string::npos);
}

TEST(PrintedRoundTrip, LooksLikeAPrintedKey) {
  auto const edition = test::read_key(
                           "Title: River shells of Halvern\nEdition: 2nd\nYear: 1998\n"
                           "Authors: E. R.; M. K.\nLists: Aus bus; Aus cus; Dus eus; Dus fus\n\n"
                           "Key to the shells\n\nMeasure dry shells only; those kept in spirit are "
                           "longer by a tenth or more.\n\n"
                           "1. Shell smooth, in fresh ones glossy and somewhat translucent towards "
                           "the margin (Fig. 2) ..... 2\n– Shell ribbed ..... Dus group, 3\n"
                           "2 (1). Foot pale {foot: pale} ..... Aus bus (Smith, 1900)\n"
                           "Note: bleached ones are paler.\n"
                           "– Foot dark; whorls usually 4–6(–8) ..... A. cus or A. bus, in part\n\n"
                           "Ribbed species\n\n3 (1). Eyes large ..... Dus eus\n"
                           "– Eyes small ..... Dus fus (Fig. 9)\n")
                           .edition;
  test::expect_golden("printed/shells.txt", printed_once(edition));
}

}  // namespace
}  // namespace keydrift

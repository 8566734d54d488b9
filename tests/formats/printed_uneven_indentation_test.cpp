// Keys without labels of which scanning left the indentation uneven.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "keydrift/formats/printed_indent_course.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using printed::amiss_in;
using printed::IndentedLead;
using printed::least_amiss;
using printed::likelier_levels;
using printed::OpenLevels;
using test::findings_of;
using test::sketch;

// Six species of a genus, four couplets; `indents`: columns of its ten leads.
std::string outline(std::vector<std::size_t> const& indents) {
  static constexpr std::array kLeads{"Wings longer than the body; legs slender",
                                     "Eyes red, much larger than the palps",
                                     "Thorax with two rows of bristles ..... Ausella busa",
                                     "Thorax bare or nearly so ..... Ausella cusa",
                                     "Eyes black, hardly larger than the palps ..... Ausella dusa",
                                     "Wings shorter than the body, or wanting",
                                     "Antennae clubbed; femora swollen ..... Ausella eusa",
                                     "Antennae thread-like; femora as broad as tibiae",
                                     "Tarsi of four joints, the last bilobed ..... Ausella fusa",
                                     "Tarsi of five joints, all simple ..... Ausella gusa"};
  std::string text = "Key to the species of Ausella\n\n";
  for (std::size_t i = 0; i < kLeads.size(); ++i) {
    text += std::string(indents[i], ' ') + kLeads[i] + "\n";
  }
  return text;
}
constexpr auto kReadUneven =
    "1[] Wings longer than the body; legs slender -> 2\n"
    "1[] Wings shorter than the body, or wanting -> 4\n"
    "2[] Eyes red, much larger than the palps -> 3\n"
    "2[] Eyes black, hardly larger than the palps -> Ausella dusa\n"
    "3[] Thorax with two rows of bristles -> Ausella busa\n"
    "3[] Thorax bare or nearly so -> Ausella cusa\n"
    "4[] Antennae clubbed; femora swollen -> Ausella eusa\n"
    "4[] Antennae thread-like; femora as broad as tibiae -> 5\n"
    "5[] Tarsi of four joints, the last bilobed -> Ausella fusa\n"
    "5[] Tarsi of five joints, all simple -> Ausella gusa\n";

bool says_uneven(std::vector<std::string> const& findings) {
  return std::any_of(findings.begin(), findings.end(), [](std::string const& finding) {
    return finding.find("[uneven-indentation]") != std::string::npos;
  });
}

TEST(PrintedUnevenIndentation, EvenKeysAreReadAsTheyStand) {
  auto const text = outline({0, 3, 6, 6, 3, 0, 3, 3, 6, 6});
  EXPECT_EQ(sketch(text), kReadUneven);
  EXPECT_FALSE(says_uneven(findings_of(text)));
}

TEST(PrintedUnevenIndentation, TheEndsOfLeadsTellWhereALeadBelongs) {
  for (std::vector<std::size_t> const& indents : {
           std::vector<std::size_t>{0, 3, 6, 6, 5, 0, 3, 3, 6, 6},
           std::vector<std::size_t>{0, 4, 6, 6, 2, 0, 3, 3, 6, 6},
           std::vector<std::size_t>{0, 3, 6, 5, 3, 1, 3, 2, 6, 6},
           std::vector<std::size_t>{0, 3, 6, 6, 3, 0, 3, 5, 6, 7},
           std::vector<std::size_t>{1, 3, 6, 6, 3, 0, 3, 3, 4, 6},
       }) {
    EXPECT_EQ(sketch(outline(indents)), kReadUneven) << outline(indents);
  }
}

TEST(PrintedUnevenIndentation, LeadsThatBelongElsewhereAreSaid) {
  auto const findings = findings_of(outline({0, 3, 6, 6, 5, 0, 3, 3, 6, 6}));
  ASSERT_TRUE(says_uneven(findings));
  EXPECT_EQ(findings.front(),
            "key.txt:7:6: warning: 1 lead was taken to belong where the ends of leads tell, not "
            "where indentation alone does [uneven-indentation] (compare these couplets with the "
            "print, or indent their leads alike)");
}

// "… the palps" / "Thorax with …": lines that may go on, being full.
TEST(PrintedUnevenIndentation, CoupletsTellWhatLinesAreLeads) {
  auto const text =
      "Key to the species of Ausella\n\n"
      "Wings longer than the body; legs slender, the femora\n"
      "     often brownish\n"
      "   Eyes red, and as a rule much larger than the palps\n"
      "        Thorax with two rows of strong and many of fine\n"
      "             bristles ..... Ausella busa\n"
      "      Thorax bare or nearly so ..... Ausella cusa\n"
      "   Eyes black, hardly larger than the palps ..... Ausella dusa\n"
      "Wings shorter than the body, or wanting\n"
      "   Antennae clubbed; femora swollen ..... Ausella eusa\n"
      "   Antennae thread-like; femora no broader than tibiae\n"
      "        Tarsi of four joints, the last bilobed ..... Ausella fusa\n"
      "      Tarsi of five joints, all simple ..... Ausella gusa\n";
  EXPECT_EQ(sketch(text),
            "1[] Wings longer than the body; legs slender, the femora often brownish -> 2\n"
            "1[] Wings shorter than the body, or wanting -> 4\n"
            "2[] Eyes red, and as a rule much larger than the palps -> 3\n"
            "2[] Eyes black, hardly larger than the palps -> Ausella dusa\n"
            "3[] Thorax with two rows of strong and many of fine bristles -> Ausella busa\n"
            "3[] Thorax bare or nearly so -> Ausella cusa\n"
            "4[] Antennae clubbed; femora swollen -> Ausella eusa\n"
            "4[] Antennae thread-like; femora no broader than tibiae -> 5\n"
            "5[] Tarsi of four joints, the last bilobed -> Ausella fusa\n"
            "5[] Tarsi of five joints, all simple -> Ausella gusa\n");
}

TEST(PrintedUnevenIndentation, AuthorsGoOnWhereBlankLinesPartLeads) {
  auto const text =
      "Key to the species of Ausella\n\n"
      "Wings longer than the body; legs\n"
      "    slender.\n\n"
      "  Eyes red ..... Ausella busa Roe &\n"
      "      Dorn, 1968\n\n"
      "   Eyes black ..... Ausella cusa\n\n"
      "Wings shorter than the body, or\n"
      "    wanting.\n\n"
      "  Antennae clubbed ..... Ausella eusa\n\n"
      "  Antennae thread-like ..... Ausella fusa\n"
      "      (Roe)\n";
  EXPECT_EQ(sketch(text),
            "1[] Wings longer than the body; legs slender. -> 2\n"
            "1[] Wings shorter than the body, or wanting. -> 3\n"
            "2[] Eyes red -> Ausella busa\n"
            "2[] Eyes black -> Ausella cusa\n"
            "3[] Antennae clubbed -> Ausella eusa\n"
            "3[] Antennae thread-like -> Ausella fusa\n");
}

TEST(PrintedUnevenIndentation, ListsOfContentsAreNoOutlines) {
  auto const findings = findings_of(
      "Contents\n"
      "Wings and legs ..... Ausella busa\n"
      "Eyes of both sexes ..... Ausella cusa\n"
      "References ..... Ausella dusa\n");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_NE(findings.front().find("[no-couplets]"), std::string::npos) << findings.front();
}

// --- levels --------------------------------------------------------------------------------------

constexpr auto kBeneath = std::nullopt;

TEST(PrintedIndentCourse, NothingIsAmissInAnEvenKey) {
  std::vector<IndentedLead> const leads{
      {0, false, true}, {3, true, false}, {3, true, false}, {0, true, false}};
  OpenLevels const levels{kBeneath, kBeneath, 1, 0};
  EXPECT_EQ(amiss_in(leads, levels).cost(), 0U);
  EXPECT_FALSE(likelier_levels(leads, levels));
}

TEST(PrintedIndentCourse, WhatIsAmissIsCounted) {
  std::vector<IndentedLead> const leads{
      {0, false, true}, {3, true, false}, {3, true, false}, {0, true, false}};
  // All are rivals: two are set in otherwise, one leads nowhere, two are a third and a fourth lead.
  auto const flat = amiss_in(leads, {kBeneath, 0, 0, 0});
  EXPECT_EQ(flat.structure, 7U + 3U + 3U);
  EXPECT_EQ(flat.indentation, 5U + 5U);
  // Each beneath the one before: two stand beneath an end, three couplets lack their second lead.
  auto const deep = amiss_in(leads, {kBeneath, kBeneath, kBeneath, kBeneath});
  EXPECT_EQ(deep.structure, 2U * 9U + 2U * 5U + 4U * 8U);
}

TEST(PrintedIndentCourse, TheLikelierLevelsHaveLessAmiss) {
  std::vector<IndentedLead> const leads{{0, false, true}, {3, false, false}, {6, true, false},
                                        {6, true, false}, {5, true, false},  {0, true, false}};
  OpenLevels const told{kBeneath, kBeneath, kBeneath, 2, 2, 0};  // 5 is as good as 6
  auto const likelier = likelier_levels(leads, told);
  ASSERT_TRUE(likelier);
  EXPECT_EQ(*likelier, (OpenLevels{kBeneath, kBeneath, kBeneath, 2, 1, 0}));
  EXPECT_EQ(least_amiss(leads)->structure, 0U);
}

TEST(PrintedIndentCourse, WithoutIndentationNothingIsTold) {
  std::vector<IndentedLead> const leads{
      {0, false, true}, {0, true, false}, {0, true, false}, {0, true, false}};
  EXPECT_FALSE(least_amiss(leads));
}

TEST(PrintedIndentCourse, KeysInOneTextAreApart) {
  std::vector<IndentedLead> const leads{{0, false, true}, {3, true, false}, {3, true, false},
                                        {0, true, false}, {3, false, true}, {6, true, false},
                                        {6, true, false}, {3, true, false}};
  OpenLevels const levels{kBeneath, kBeneath, 1, 0, kBeneath, kBeneath, 1, 0};
  EXPECT_EQ(amiss_in(leads, levels).cost(), 0U);
}

TEST(PrintedUnevenIndentation, ANumberedNameBelowARowOfDotsEndsTheKey) {
  EXPECT_EQ(
      sketch("Key to the species of Ausella\n\n"
             "Wings longer than the body.\n"
             "    Eyes red, much larger than the palps ..... 1. A. busa.\n"
             "    Eyes black, hardly larger than the palps ..... 2. A. cusa.\n"
             "Wings shorter than the body, or wanting.\n"
             "    Antennae clubbed; femora swollen, with a row of stout spines beneath .....\n"
             "                                        3. A. eusa.\n"
             "    Antennae thread-like; femora as broad as tibiae, without such spines .....\n"
             "                                        4. A. fusa.\n"),
      "1[] Wings longer than the body. -> 2\n"
      "1[] Wings shorter than the body, or wanting. -> 3\n"
      "2[] Eyes red, much larger than the palps -> Ausella busa\n"
      "2[] Eyes black, hardly larger than the palps -> Ausella cusa\n"
      "3[] Antennae clubbed; femora swollen, with a row of stout spines beneath -> Ausella eusa\n"
      "3[] Antennae thread-like; femora as broad as tibiae, without such spines -> Ausella fusa\n");
}

}  // namespace
}  // namespace keydrift

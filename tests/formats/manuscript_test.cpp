#include "keydrift/formats/manuscript.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

std::vector<ManuscriptLine> rows() {
  return {{"1\tBeak bifid\t2", 40, 5},
          {"–\tBeak entire\tCus cus", 43, 5},
          {"2\tScales dark\tAus bus", 46, 5},
          {"–\tScales pale\t9", 49, 5}};
}

TEST(Manuscript, ReadsRowsAsALeadEach) {
  auto const loaded = read_manuscript("a.xml", rows());
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(test::sketch(loaded.value->edition),
            "1[1] Beak bifid -> 2\n1[–] Beak entire -> Cus cus\n2[2] Scales dark -> Aus bus\n"
            "2[–] Scales pale -> ?9\n");
  EXPECT_EQ(loaded.value->source.text,
            "1\tBeak bifid\t2\n–\tBeak entire\tCus cus\n2\tScales dark\tAus bus\n"
            "–\tScales pale\t9\n");
}

TEST(Manuscript, PlacesAreThoseOfTheOrigin) {
  auto const loaded = read_manuscript("a.xml", rows());
  ASSERT_TRUE(loaded);
  auto const& edition = loaded.value->edition;
  auto const& lead = edition.couplets[1].leads[0];
  EXPECT_EQ(lead.place.line, 46U);
  EXPECT_EQ(lead.place.column, 5U);
  EXPECT_EQ(lead.destination_place.line, 46U);
  EXPECT_EQ(lead.destination_place.column, 19U);  // 5 and "2", tab, "Scales dark", tab
  EXPECT_EQ(place_in_text(lead, 7, 4).line, 46U);
  EXPECT_EQ(place_in_text(lead, 7, 4).column, 14U);
  EXPECT_EQ(edition.taxa[1].place.line, 46U);
  EXPECT_EQ(edition.couplets[1].place.line, 46U);
  EXPECT_EQ(edition.parts[0].place.line, 40U);
  Lines accounts;
  for (auto const& account : loaded.value->source.lines) {
    accounts.push_back(std::to_string(account.line) + " " + to_word(account.kind));
  }
  EXPECT_EQ(accounts, (Lines{"40 lead", "43 lead", "46 lead", "49 lead"}));
}

TEST(Manuscript, StretchesGiveThePlaceOfWordsThatMarkupParts) {
  auto lines = rows();
  // "Scales " stands at 46:9, "dark" on the next line, the name at 48:3.
  lines[2].stretches = {{0, 46, 5}, {2, 46, 12}, {9, 47, 30}, {14, 48, 3}};
  auto const loaded = read_manuscript("a.xml", lines);
  ASSERT_TRUE(loaded);
  auto const& lead = loaded.value->edition.couplets[1].leads[0];
  EXPECT_EQ(lead.place.line, 46U);
  EXPECT_EQ(lead.place.column, 5U);
  EXPECT_EQ(place_in_text(lead, 0, 6).column, 12U);
  EXPECT_EQ(place_in_text(lead, 7, 4).line, 47U);
  EXPECT_EQ(place_in_text(lead, 7, 4).column, 30U);
  EXPECT_EQ(place_in_text(lead, 9, 2).column, 32U);
  EXPECT_EQ(lead.destination_place.line, 48U);
  EXPECT_EQ(lead.destination_place.column, 3U);
}

TEST(Manuscript, FindingsAreMovedAsWell) {
  auto lines = rows();
  lines.insert(lines.begin() + 2, {"Prose that belongs to no lead, between the couplets.", 44, 1});
  lines[0].text.append(200, 'x');
  auto const refused = read_manuscript("a.xml", lines, {.line_bytes = 100});
  EXPECT_FALSE(refused);
  ASSERT_EQ(refused.findings.size(), 1U);
  EXPECT_EQ(refused.findings[0].code, "line-too-long");
  EXPECT_EQ(refused.findings[0].place.line, 40U);
  auto const none = read_manuscript("a.xml", {{"Nothing but prose.", 7, 3}});
  EXPECT_FALSE(none);
  ASSERT_EQ(none.findings.size(), 1U);
  EXPECT_EQ(none.findings[0].code, "no-couplets");
  EXPECT_EQ(none.findings[0].place.line, 7U);
  EXPECT_EQ(none.findings[0].place.column, 3U);
}

TEST(Manuscript, BlanksWithinALineDoNotBreakIt) {
  auto lines = rows();
  lines[0].text = "1\tBeak\nbifid\x01\t2";
  lines[1].text =
      "–\tBeak\xE2\x80\xA8"
      "entire, se\xCC\x81pale\tCus cus";  // e + combining acute
  auto const loaded = read_manuscript("a.xml", lines);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition),
            "1[1] Beak bifid -> 2\n1[–] Beak entire, sépale -> Cus cus\n"
            "2[2] Scales dark -> Aus bus\n2[–] Scales pale -> ?9\n");
  EXPECT_EQ(loaded.value->edition.couplets[1].leads[0].place.line, 46U);
}

}  // namespace
}  // namespace keydrift

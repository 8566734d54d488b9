#include "keydrift/formats/manuscript.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

std::vector<ManuscriptLine> table_lines() {
  return {{"1\tBeak bifid\t2", 40, 5},
          {"–\tBeak entire\tCus cus", 43, 5},
          {"2\tScales dark\tAus bus", 46, 5},
          {"–\tScales pale\t9", 49, 5}};
}

TEST(Manuscript, ReadsRowsAsALeadEach) {
  auto const loaded = read_manuscript("a.xml", table_lines());
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(test::sketch(loaded.value->edition),
            "1[1] Beak bifid -> 2\n1[–] Beak entire -> Cus cus\n2[2] Scales dark -> Aus bus\n"
            "2[–] Scales pale -> ?9\n");
  EXPECT_EQ(loaded.value->source.text,
            "1\tBeak bifid\t2\n–\tBeak entire\tCus cus\n2\tScales dark\tAus bus\n"
            "–\tScales pale\t9\n");
}

TEST(Manuscript, PlacesOfListedNamesAreThoseOfTheOrigin) {
  auto lines = table_lines();
  lines.insert(lines.begin(), {"Lists: Aus bus; Cus cus", 7, 3});
  auto const loaded = read_manuscript("a.xml", lines);
  ASSERT_TRUE(loaded);
  auto const& places = loaded.value->edition.front.scope.listed_places;
  ASSERT_EQ(places.size(), 2U);
  EXPECT_EQ(places[1].line, 7U);
  EXPECT_EQ(places[1].column, 19U);  // 3 and "Lists: Aus bus; "
}

TEST(Manuscript, PlacesAreThoseOfTheOrigin) {
  auto const loaded = read_manuscript("a.xml", table_lines());
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
  auto lines = table_lines();
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
  auto lines = table_lines();
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
  auto lines = table_lines();
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

// "label|words|destination" as a row of three cells.
ManuscriptLine row_line(std::string_view cells, std::uint32_t number) {
  ManuscriptLine line;
  line.number = number;
  auto const first = cells.find('|');
  auto const second = cells.find('|', first + 1);
  line.text = std::string{cells};
  line.text[first] = '\t';
  line.text[second] = '\t';
  line.markup = {LineRole::lead, first + 1, second + 1};
  return line;
}

TEST(Manuscript, BordersOfCellsOutweighWhatTheWordsLookLike) {
  auto const loaded = read_manuscript(
      "a.xml", {row_line("1|Wings 2; see Fig. 3 ..... p. 4|2", 1),
                row_line("—|Wings 4|Aus bus, rare form only", 2),
                row_line("2(1)|Antennae longer than in Aus cus|Aus dus (Smith, 1900) (Fig. 3)", 3),
                row_line("|Antennae shorter, 3|", 4), row_line("la|12 setae|77", 5)});
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(test::sketch(loaded.value->edition),
            "1[1] Wings 2; see Fig. 3 ..... p. 4 -> 2\n1[—] Wings 4 -> Aus bus (rare form only)\n"
            "2[2] Antennae longer than in Aus cus -> Aus dus\n2[] Antennae shorter, 3 -> ?\n"
            "2[] la 12 setae -> ?77\n");
}

TEST(Manuscript, RolesOfLinesOutweighWhatTheyLookLike) {
  auto rows =
      std::vector{row_line("1|Beak bifid|2", 3),        row_line("–|Beak entire|Aus bus", 4),
                  row_line("2|Scales dark|Aus cus", 6), row_line("–|Scales pale|Aus dus", 8),
                  row_line("1|Legs long|Aus eus", 10),  row_line("–|Legs short|Aus fus", 11)};
  auto const other = [](std::string text, std::uint32_t number, LineRole role) {
    return ManuscriptLine{std::move(text), number, 1, {}, {role, kNotTold, kNotTold}};
  };
  rows.insert(rows.begin() + 4, other("Key to males", 9, LineRole::heading));
  rows.insert(rows.begin() + 3, other("3 Only one specimen known ... 4", 7, LineRole::note));
  rows.insert(rows.begin() + 2, other("1 Not a lead ..... 2", 5, LineRole::aside));
  rows.insert(rows.begin(), other("Title: the larger species", 1, LineRole::heading));
  auto const loaded = read_manuscript("a.xml", rows);
  ASSERT_TRUE(loaded);
  auto const& edition = loaded.value->edition;
  EXPECT_EQ(test::sketch(edition),
            "1[1] Beak bifid -> 2\n1[–] Beak entire -> Aus bus\n2[2] Scales dark -> Aus cus\n"
            "2[–] Scales pale -> Aus dus\n1[1] Legs long -> Aus eus\n1[–] Legs short -> Aus fus\n");
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(edition.parts[0].title, "Title: the larger species");
  EXPECT_EQ(edition.parts[1].title, "Key to males");
  EXPECT_EQ(edition.front.title, "");
  EXPECT_EQ(edition.couplets[1].leads[0].notes, Lines{"3 Only one specimen known ... 4"});
  ASSERT_EQ(edition.notes.size(), 1U);
  EXPECT_EQ(edition.notes[0].text, "1 Not a lead ..... 2");
  EXPECT_EQ(edition.notes[0].place.line, 5U);
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
}

}  // namespace
}  // namespace keydrift

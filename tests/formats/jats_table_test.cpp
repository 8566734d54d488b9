#include <gtest/gtest.h>

#include "jats_support.hpp"

namespace keydrift {
namespace {

using test::key_section;
using test::kTwoCouplets;
using test::one_line_each;
using test::read_article;
using test::rows;
using test::sketch_article;
using Lines = std::vector<std::string>;

std::string sketch_rows(std::string_view text) {
  return sketch_article(key_section("Key to the species of Aus", rows(text)));
}

TEST(JatsTable, RowsOfThreeCells) {
  EXPECT_EQ(sketch_rows("1|Wings clear|2\n–|Wings dark|Aus bus\n2|Legs long|Aus cus\n"
                        "–|Legs short|Aus dus"),
            kTwoCouplets);
}

TEST(JatsTable, RowsOfTwoCells) {
  EXPECT_EQ(sketch_rows("1 Wings clear|2\n– Wings dark|Aus bus\n2 Legs long|Aus cus\n"
                        "– Legs short|Aus dus"),
            kTwoCouplets);
  EXPECT_EQ(sketch_rows("1|Wings clear ... 2\n–|Wings dark ... Aus bus\n2|Legs long ... Aus cus\n"
                        "–|Legs short ... Aus dus"),
            kTwoCouplets);
}

TEST(JatsTable, RowsOfOneCell) {
  EXPECT_EQ(sketch_rows("1 Wings clear ... 2\n– Wings dark ... Aus bus\n2 Legs long ... Aus cus\n"
                        "– Legs short ... Aus dus"),
            kTwoCouplets);
}

TEST(JatsTable, RowsOfMixedWidth) {
  EXPECT_EQ(sketch_rows("1|Wings clear|2\n– Wings dark|Aus bus\n2|Legs long|Aus cus\n"
                        "– Legs short ... Aus dus"),
            kTwoCouplets);
}

TEST(JatsTable, FourColumnsAndFillers) {
  EXPECT_EQ(sketch_rows("1||Wings clear|......|2\n–||Wings dark|......|Aus bus\n"
                        "2|(1)|Legs long|......|Aus cus\n–||Legs short|......|Aus dus"),
            kTwoCouplets);
  EXPECT_EQ(sketch_rows("1|Wings clear|....... 2|\n–|Wings dark||Aus bus\n2|Legs long||Aus cus\n"
                        "–|Legs short|Aus dus|"),
            kTwoCouplets);
}

TEST(JatsTable, TheCellOfTheDestinationIsTheDestination) {
  EXPECT_EQ(sketch_rows("1|Setae 2, see Fig. 3|2\n–|Setae as in Cus cus|Aus bus, rare form only\n"
                        "2|Stamens 5 ... 7 mm|77\n–|Compare couplet 1|Key B\n"),
            "1[1] Setae 2, see Fig. 3 -> 2\n"
            "1[–] Setae as in Cus cus -> Aus bus (rare form only)\n"
            "2[2] Stamens 5 ... 7 mm -> ?77\n2[–] Compare couplet 1 -> key: Key B\n");
}

TEST(JatsTable, NamesNumbersAndWhatStandsAroundThem) {
  EXPECT_EQ(
      sketch_article(key_section(
          "Key",
          "<tr><td>1</td><td>Wings<xref ref-type=\"fn\" rid=\"f\"><sup>1</sup></xref> "
          "<bold>clear</bold></td><td><xref ref-type=\"other\">2</xref></td></tr>\n"
          "<tr><td>—</td><td>Wings dark (<xref ref-type=\"fig\">Fig. 3</xref>)</td>"
          "<td><ext-link xlink:href=\"urn:z\"><tp:taxon-name><object-id>urn:1</object-id>"
          "<tp:taxon-name-part>Aus</tp:taxon-name-part><tp:taxon-name-part>bus</tp:taxon-name-part>"
          "</tp:taxon-name></ext-link> Smith, 1900 (<xref ref-type=\"fig\">Fig. "
          "3</xref>)</td></tr>\n"
          "<tr><td>2(1)</td><td>Legs 10<sup>2</sup> mm</td><td><italic>Aus</italic>&#160;"
          "<italic>cus</italic></td></tr>\n"
          "<tr><td>−</td><td><![CDATA[Legs < 10 mm]]></td><td><italic>Aus</italic>, 1</td></tr>")),
      "1[1] Wings clear -> 2\n1[—] Wings dark (Fig. 3) -> Aus bus\n"
      "2[2] Legs 10² mm -> Aus cus\n2[−] Legs < 10 mm -> 1 (Aus)\n");
}

TEST(JatsTable, PlacesAreThoseOfTheFile) {
  auto const loaded = read_article(key_section(
      "Key",
      "<tr><td>1</td><td>Wings <bold>clear</bold></td><td>2</td></tr>\n<tr><td>–</td>\n"
      "  <td>Wings\n   <italic>very</italic> dark</td>\n  <td><italic>Aus bus</italic></td></tr>\n"
      "<tr><td>2</td><td>&#8805; 3 mm, pale</td><td>Aus cus</td></tr>"
      "<tr><td>–</td><td>2 mm</td><td>9</td></tr>"));
  ASSERT_TRUE(loaded);
  auto const& edition = loaded.value->edition;
  auto const at = [](Place const& place) {
    return std::to_string(place.line) + ":" + std::to_string(place.column);
  };
  EXPECT_EQ(at(edition.parts[0].place), "3:28");
  auto const& first = edition.couplets[0].leads[0];
  EXPECT_EQ(at(first.place), "5:9");
  EXPECT_EQ(at(place_in_text(first, 6, 5)), "5:31");
  EXPECT_EQ(at(first.destination_place), "5:52");
  auto const& second = edition.couplets[0].leads[1];
  EXPECT_EQ(at(second.place), "6:9");
  EXPECT_EQ(at(place_in_text(second, 0, 5)), "7:7");
  EXPECT_EQ(at(place_in_text(second, 6, 4)), "8:12");
  EXPECT_EQ(at(place_in_text(second, 11, 4)), "8:26");
  EXPECT_EQ(at(second.destination_place), "9:15");
  EXPECT_EQ(at(edition.taxa[0].place), "9:15");
  auto const& third = edition.couplets[1].leads[0];
  EXPECT_EQ(at(place_in_text(third, 10, 4)), "10:33");  // behind the reference "&#8805;"
  EXPECT_EQ(at(edition.couplets[1].leads[1].place), "10:71");
}

TEST(JatsTable, SpansAndEmptyRows) {
  EXPECT_EQ(sketch_article(
                key_section("Key",
                            "<tr><td rowspan=\"2\">1</td><td>Wings clear</td><td>2</td></tr>\n"
                            "<tr><td>Wings dark</td><td>Aus bus</td></tr>\n"
                            "<tr><td/><td></td><td> </td></tr><tr/>\n"
                            "<tr><td colspan=\"2\">2 Legs long</td><td>Aus cus</td></tr>\n"
                            "<tr><td>–</td><td colspan=\"2\">Legs short ... Aus dus</td></tr>")),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Aus bus\n2[2] Legs long -> Aus cus\n"
            "2[–] Legs short -> Aus dus\n");
}

TEST(JatsTable, HeadingsAndNotesAsRows) {
  auto const loaded = read_article(
      key_section("Keys to Aus",
                  "<tr><th>Couplet</th><th>Character</th><th>Go to</th></tr>\n"
                  "<tr><td colspan=\"3\"><bold>Key to males</bold></td></tr>\n" +
                      rows("1|Wings clear|2\n–|Wings dark|Aus bus\n2|Legs long|Aus cus\n"
                           "|Note: long means 3 mm|\n–|Legs short|Aus dus") +
                      "<tr><td colspan=\"3\">Key to females</td></tr>\n" +
                      rows("1|Body red|Aus bus\n–|Body blue|Aus cus")));
  ASSERT_TRUE(loaded);
  auto const& edition = loaded.value->edition;
  EXPECT_EQ(test::sketch(edition),
            std::string{kTwoCouplets} + "1[1] Body red -> Aus bus\n1[–] Body blue -> Aus cus\n");
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(edition.parts[0].title, "Key to males");
  EXPECT_EQ(edition.parts[1].title, "Key to females");
  EXPECT_EQ(edition.couplets[1].leads[0].notes, Lines{"long means 3 mm"});
  ASSERT_EQ(edition.notes.size(), 2U);
  EXPECT_EQ(edition.notes[0].text, "Keys to Aus");
  EXPECT_EQ(edition.notes[1].text, "Couplet Character Go to");
}

TEST(JatsTable, ACoupletInOneRow) {
  EXPECT_EQ(sketch_article(key_section("Key",
                                       "<tr><td>1</td><td><p>Wings clear</p><p>Wings dark</p></td>"
                                       "<td>2<break/>Aus bus</td></tr>\n"
                                       "<tr><td>2<break/>–</td><td>Legs long<break/>Legs short</td>"
                                       "<td><p>Aus cus</p><p>Aus dus</p></td></tr>")),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Aus bus\n2[2] Legs long -> Aus cus\n"
            "2[–] Legs short -> Aus dus\n");
}

TEST(JatsTable, LinesWithinCellsAreNoCoupletWhenTheRivalFollows) {
  EXPECT_EQ(sketch_rows("1|Wings clear|2\n–|Wings dark|Aus bus\n2|<p>Legs</p><p>long</p>|Aus "
                        "cus<break/>Halvern\n–|Legs short|Aus dus"),
            kTwoCouplets);
}

TEST(JatsTable, DestinationsInRowsOfTheirOwn) {
  EXPECT_EQ(sketch_rows("1|Wings clear|\n||2\n–|Wings dark|Aus bus,\n||Aus eus\n2|Legs long,|\n"
                        "|hairy|Aus cus\n–|Legs short|Aus dus"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus + Aus eus\n"
            "2[2] Legs long, hairy -> Aus cus\n2[–] Legs short -> Aus dus\n");
}

TEST(JatsTable, LabelsAndDestinationsInTwoColumns) {
  EXPECT_EQ(sketch_rows("1|a|Wings clear||2\n|b|Wings dark|Aus bus|\n2|a|Legs long|Aus cus|\n"
                        "|b|Legs short|Aus group|3\n3|a|Body red|Aus dus|\n|b|Body blue|Aus eus|"),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> Aus bus\n2[2a] Legs long -> Aus cus\n"
            "2[2b] Legs short -> 3 (Aus group)\n3[3a] Body red -> Aus dus\n"
            "3[3b] Body blue -> Aus eus\n");
}

TEST(JatsTable, LinesWithinTheCellOfTheDestination) {
  auto const loaded = read_article(
      key_section("Key", rows("1|Wings clear|2\n–|Wings dark|<p>Aus bus</p><p>Halvern Basin</p>\n"
                              "2|Legs long|Aus cus<break/>(Smith, 1900)\n"
                              "–|Legs short|<p>Aus dus,</p><p>Aus eus</p><p>Aus fus</p>")));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n2[2] Legs long -> Aus cus\n"
            "2[–] Legs short -> Aus dus + Aus eus + Aus fus\n");
  EXPECT_EQ(loaded.value->edition.couplets[0].leads[1].notes, Lines{"Halvern Basin"});
}

TEST(JatsTable, MissingLabelsAndDestinations) {
  EXPECT_EQ(sketch_rows("1|Wings clear|2\n|Wings dark|Aus bus\n2|Legs long, setae 1|\n"
                        "–|Legs short|(6)"),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Aus bus\n2[2] Legs long, setae 1 -> ?\n"
            "2[–] Legs short -> ?6\n");
}

// Second leads without any label, in a table that only its section's title calls a key.
TEST(JatsTable, EmptyLabelsWhereTheSectionSpeaksOfAKey) {
  auto const key = [](std::string_view title, std::string_view text) {
    return test::article("<sec><title>" + std::string{title} + "</title><table-wrap><table>" +
                         std::string{text} + "</table></table-wrap></sec>");
  };
  constexpr std::string_view kUnlabelled =
      "1[1] Wings clear -> 2\n1[] Wings dark -> Aus bus\n"
      "2[2] Legs long -> Aus cus\n2[] Legs short -> Aus dus\n";
  auto const empty =
      rows("1|Wings clear|2\n|Wings dark|Aus bus\n2|Legs long|Aus cus\n|Legs short|Aus dus");
  EXPECT_EQ(sketch_article(key("Key to Aus", empty)), kUnlabelled);
  EXPECT_EQ(
      sketch_article(key("Key to Aus",
                         "<tr><td rowspan=\"2\">1</td><td>Wings clear</td><td>2</td></tr>\n"
                         "<tr><td>Wings dark</td><td>Aus bus</td></tr>\n"
                         "<tr><td rowspan=\"2\">2</td><td>Legs long</td><td>Aus cus</td></tr>\n"
                         "<tr><td>Legs short</td><td>Aus dus</td></tr>\n")),
      kUnlabelled);
  EXPECT_EQ(
      sketch_article(key("Key to Aus", rows("1|Wings clear ... 2\n|Wings dark ... Aus bus\n"
                                            "2|Legs long ... Aus cus\n|Legs short ... Aus dus"))),
      kUnlabelled);
  // Measurements in such a section lead nowhere.
  auto const both =
      read_article(test::article("<sec><title>Key to Aus</title><table-wrap><table>" + empty +
                                 "</table></table-wrap><table-wrap><table>" +
                                 rows("1|Halvern|5.2\n|Norden|4.9\n2|Velmark|5.0\n|Orsund|4.8") +
                                 "</table></table-wrap></sec>"));
  ASSERT_TRUE(both);
  EXPECT_EQ(test::sketch(both.value->edition), kUnlabelled);
  // No title, no key: the second column of counts may be numbered as well.
  EXPECT_FALSE(
      read_article(key("Material", rows("1|Halvern|2\n|Norden|1\n2|Velmark|1\n|Orsund|2"))));
}

TEST(JatsTable, CellsOfNothingButANoBreakSpaceAreEmpty) {
  EXPECT_EQ(sketch_rows("1|Wings clear; legs red|2\n&#160;|Wings dark; legs black|Aus bus\n"
                        "2|Legs long; head 5 mm|Aus cus\n&#160;|Legs short; head 7 mm|Aus dus"),
            "1[1] Wings clear; legs red -> 2\n1[] Wings dark; legs black -> Aus bus\n"
            "2[2] Legs long; head 5 mm -> Aus cus\n2[] Legs short; head 7 mm -> Aus dus\n");
}

TEST(JatsTable, TheHeadOfTheColumnsMayStandAgain) {
  auto const body = rows(
      "1|Wings clear|2\n–|Wings dark|Aus bus\nCouplet|Lead|Result\n"
      "2|Legs long|Aus cus\n–|Legs short|Aus dus");
  EXPECT_EQ(sketch_article(key_section("Key", rows("Couplet|Lead|Result") + body)), kTwoCouplets);
  auto const section =
      test::article("<sec><title>Key</title><table-wrap content-type=\"key\"><table><thead>" +
                    rows("Couplet|Lead|Result") + "</thead><tbody>" + body +
                    "</tbody></table></table-wrap></sec>");
  EXPECT_EQ(sketch_article(section), kTwoCouplets);
}

TEST(JatsTable, LeadsOfSerialKeysGoOnWhereTheirCellIsEmpty) {
  constexpr std::string_view kSerial =
      "1[1] Wings clear -> 2\n1[4] Wings dark -> 5\n2[2] Legs long -> Aus bus\n"
      "2[3] Legs short -> Aus cus\n5[5] Head red -> Aus dus\n5[6] Head black -> Aus eus\n";
  auto const text = rows(
      "1 (4)|Wings clear|\n2 (3)|Legs long|Aus bus\n3 (2)|Legs short|Aus cus\n"
      "4 (1)|Wings dark|\n5 (6)|Head red|Aus dus\n6 (5)|Head black|Aus eus");
  EXPECT_EQ(sketch_article(key_section("Key", text)), kSerial);
  EXPECT_EQ(sketch_article(test::article("<sec><title>Key to Aus</title><table-wrap><table>" +
                                         text + "</table></table-wrap></sec>")),
            kSerial);
  EXPECT_EQ(sketch_rows("1|(4)|Wings clear|\n2|(3)|Legs long|Aus bus\n3|(2)|Legs short|Aus cus\n"
                        "4|(1)|Wings dark|\n5|(6)|Head red|Aus dus\n6|(5)|Head black|Aus eus"),
            kSerial);
}

TEST(JatsTable, FiguresInAColumnOfTheirOwnBeforeTheDestination) {
  EXPECT_EQ(sketch_rows("1|Wings clear|Fig. 3|2\n–|Wings dark|Figs 4, 5|Aus bus\n"
                        "2|Legs long||Aus cus\n–|Legs short|Fig. 6|Aus dus"),
            "1[1] Wings clear Fig. 3 -> 2\n1[–] Wings dark Figs 4, 5 -> Aus bus\n"
            "2[2] Legs long -> Aus cus\n2[–] Legs short Fig. 6 -> Aus dus\n");
  // Behind the destination they are said of the taxon.
  EXPECT_EQ(sketch_rows("1|Wings clear|2|\n–|Wings dark|Aus bus|Fig. 4\n"
                        "2|Legs long|Aus cus|Fig. 5\n–|Legs short|Aus dus|Fig. 6"),
            kTwoCouplets);
}

TEST(JatsTable, PicturesWithinACellAreNoWords) {
  auto const loaded = read_article(key_section(
      "Key", rows("1|Wings clear<fig id=\"F1\"><label>Figure 1.</label><caption><p>Wing of Aus.</p>"
                  "</caption><graphic href=\"f1.png\"/></fig>|2\n–|Wings dark|Aus bus\n"
                  "2|Legs long|Aus cus\n–|Legs short|Aus dus")));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition), kTwoCouplets);
  ASSERT_FALSE(loaded.value->edition.notes.empty());
  EXPECT_EQ(loaded.value->edition.notes.back().text, "Figure 1. Wing of Aus.");
}

TEST(JatsTable, AKeyThatGoesOnInTheNextTable) {
  auto const wrap = [](std::string_view caption, std::string_view text) {
    return "<table-wrap content-type=\"key\"><label>Table " + std::string{caption} +
           "</caption><table>" + rows(text) + "</table></table-wrap>\n";
  };
  auto const loaded = read_article(test::article(
      "<sec><title>Identification key</title>" +
      wrap("1.</label><caption><p>Key to Aus</p>", "1|Wings clear|2\n–|Wings dark|Aus bus") +
      wrap("1.</label><caption><p>Continued</p>", "2|Legs long|Aus cus\n–|Legs short|Aus dus") +
      "</sec>"));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(test::sketch(loaded.value->edition), kTwoCouplets);
  ASSERT_EQ(loaded.value->edition.parts.size(), 1U);
  EXPECT_EQ(loaded.value->edition.parts[0].title, "Table 1. Key to Aus");
}

TEST(JatsTable, AnArrayHasItsRowsWithoutATable) {
  EXPECT_EQ(sketch_article(test::article(
                "<sec><title>Key</title><array><tbody>" +
                rows("1a.|Wings clear|2 (<italic>Ausella</italic>)\n1b.|Wings dark|Bus cus\n"
                     "2a.|Legs long|<italic>A. dus</italic>\n"
                     "2b.|Legs short|<italic>A. eus</italic>") +
                "</tbody></array></sec>")),
            "1[1a] Wings clear -> 2 (Ausella)\n"
            "1[1b] Wings dark -> Bus cus\n"
            "2[2a] Legs long -> Ausella dus\n"
            "2[2b] Legs short -> Ausella eus\n");
}

TEST(JatsTable, AuthorsInItalicsBehindBoldNamesAreNoEnds) {
  auto const lead = [](std::string_view words, std::string_view name, std::string_view author) {
    return "<p>" + std::string{words} + " \u2003 <bold>" + std::string{name} + "</bold> <italic>" +
           std::string{author} + "</italic> [hills]</p>";
  };
  EXPECT_EQ(sketch_article(test::article("<sec><title>Key to <italic>Ausella</italic></title>" +
                                         lead("1. Wings clear", "1. A. busa", "Roe") +
                                         lead("— Wings dark", "2. A. cusa", "Dorn") + "</sec>")),
            "1[1] Wings clear -> Ausella busa (hills)\n"
            "1[—] Wings dark -> Ausella cusa (hills)\n");
}

TEST(JatsTable, WhatBeginsAtARingIsNotComparedWithTheName) {
  EXPECT_EQ(
      sketch_article(test::article(
          "<sec><title>Key</title><p>1 Sides pointed from ring 8 on <italic>Aus bus</italic></p>"
          "<p>– Sides round, not as in <italic>Aus bus</italic>: <italic>Aus "
          "cus</italic></p></sec>")),
      "1[1] Sides pointed from ring 8 on -> Aus bus\n"
      "1[–] Sides round, not as in Aus bus: -> Aus cus\n");
}

TEST(JatsTable, LettersOfFootnotesAreNoLettersOfNames) {
  EXPECT_EQ(
      sketch_article(key_section(
          "Key",
          "<tr><td>1</td><td>Wings clear</td><td><italic>Aus bus</italic><sup>a</sup></td></tr>"
          "<tr><td>–</td><td>Wings dark</td><td><italic>Aus cus</italic> "
          "Roe<sup>b</sup></td></tr>")),
      "1[1] Wings clear -> Aus bus (ᵃ)\n1[–] Wings dark -> Aus cus (ᵇ)\n");
}

TEST(JatsTable, MoreThanALetterMayBeRaised) {
  EXPECT_EQ(sketch_article(key_section(
                "Key",
                "<tr><td>1</td><td>Wings clear</td><td><italic>Aus bus</italic><sup>a<!-- n -->,b"
                "</sup></td></tr><tr><td>–</td><td>Wings dark</td><td><italic>Aus cus</italic></td>"
                "</tr>")),
            "1[1] Wings clear -> Aus bus ([ᵃ] [ᵇ])\n1[–] Wings dark -> Aus cus\n");
}

}  // namespace
}  // namespace keydrift

// Keys that are pasted with their HTML.

#include "keydrift/formats/hypertext.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line;
using test::sketch;

EditionReading read_as_edition(std::string_view text) {
  auto loaded = read_edition({.name = "key.txt", .bytes = text});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return std::move(*loaded.value);
}

std::string const kHypertextSketch =
    "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
    "2[2] Legs pale, 5–6 µm -> Aus cus\n2[–] Legs dark -> Aus dus\n";

std::string const kTableOfLeads =
    "<h3>Key to <i>Aus</i></h3>\n<table>\n"
    "<tr><td>1</td><td>Wings clear</td><td><a href=\"#2\">2</a></td></tr>\n"
    "<tr><td>–</td><td>Wings\n dark</td><td><i>Aus bus</i> Roe</td></tr>\n"
    "<tr><td><a name='k>2'></a>2</td><td>Legs pale, 5&ndash;6 &micro;m</td><td>Aus&#32;cus</td>"
    "</tr>\n<tr><td>&#8211;</td><td>Legs dark<!-- 3 --></td><td>Aus dus</td></tr>\n</table>\n"
    "<p>Aus eus is <b>not</b> keyed.</p>\n";

TEST(Hypertext, ReadsRowsAsLeads) {
  auto const reading = read_as_edition(kTableOfLeads);
  EXPECT_EQ(sketch(reading.edition), kHypertextSketch);
  EXPECT_EQ(reading.edition.parts.at(0).title, "Key to Aus");
  ASSERT_EQ(reading.edition.notes.size(), 1U);
  EXPECT_EQ(reading.edition.notes[0].text, "Aus eus is not keyed.");
}

// Pages write each cell on a line of its own; such a line parts nothing.
TEST(Hypertext, CellsOnLinesOfTheirOwnAreARow) {
  auto const row = [](std::string const& number, std::string const& words, std::string const& end) {
    return "<tr>\n  <td valign=\"top\">" + number + "</td>\n  <td>" + words +
           "</td>\n  <td align=\"right\">&nbsp;" + end + "</td>\n</tr>\n";
  };
  auto const rows =
      row("1", "Wings clear", "(2)") + row("+", "Wings dark", "3&nbsp;<i>Aus bus</i>") +
      row("2&nbsp;(1)", "Legs pale", "(3)") + row("+", "Legs dark", "1&nbsp;<i>Aus dus</i>") +
      row("3&nbsp;(2)", "Eyes round", "2&nbsp;<i>Aus cus</i>") +
      row("+", "Eyes narrow", "4&nbsp;<i>Aus eus</i>");
  std::string const wanted =
      "1[1] Wings clear -> 2\n1[+] Wings dark -> Aus bus\n2[2] Legs pale -> 3\n"
      "2[+] Legs dark -> Aus dus\n3[3] Eyes round -> Aus cus\n3[+] Eyes narrow -> Aus eus\n";
  EXPECT_EQ(sketch(read_as_edition("<table>\n" + rows + "</table>\n").edition), wanted);
  // Among lines that line feeds part.
  std::string const lines =
      "Ausella is a genus of marshes.\nIt was found in the west.\nIt was found in the east.\n"
      "It flies in spring.\nIt rests in summer.\nIt was never seen in autumn.\n"
      "It was seen once in winter.\nNothing is known of its eggs.\nNor of its larvae.\n\n";
  EXPECT_EQ(
      sketch(read_as_edition(lines + lines + lines + "<table>\n" + rows + "</table>\n").edition),
      wanted);
}

TEST(Hypertext, LinesOfTextBesideATableStayLines) {
  EXPECT_EQ(sketch(read_as_edition("<table><tr><td>Ausella</td><td>p. 2</td></tr></table>\n"
                                   "1 Wings clear ..... 2\n"
                                   "– Wings dark ..... <i>Aus bus</i>\n"
                                   "2 Legs pale, 5&ndash;6 &micro;m ..... <i>Aus cus</i>\n"
                                   "– Legs dark ..... <i>Aus dus</i>\n")
                       .edition),
            kHypertextSketch);
}

TEST(Hypertext, KeepsThePlacesOfTheSource) {
  auto const reading = read_as_edition(kTableOfLeads);
  auto const& lead = reading.edition.couplets.at(1).leads.at(0);
  EXPECT_EQ(lead.place.line, 6U);
  EXPECT_EQ(lead.destination_place.line, 6U);
  EXPECT_EQ(lead.destination_place.column, 75U);
  EXPECT_EQ(reading.edition.notes.at(0).place.line, 9U);
  EXPECT_EQ(reading.edition.notes.at(0).place.column, 4U);
}

TEST(Hypertext, ReadsParagraphsBreaksAndLists) {
  EXPECT_EQ(sketch(read_as_edition(
                       "<p>1. Wings clear ..... 2<p>– Wings dark ..... Aus bus</p><p>2. Legs pale, "
                       "5–6\n&micro;m ..... Aus cus<p>– Legs dark ..... Aus dus")
                       .edition),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale, 5–6 µm -> Aus cus\n2[–] Legs dark -> Aus dus\n");
  EXPECT_EQ(sketch(read_as_edition(
                       "1. Wings clear ..... 2<br>\n– Wings dark ..... <em>Aus bus</em><br/>\n"
                       "2. Legs pale, 5–6 µm ..... Aus cus<BR>\n– Legs dark ..... Aus dus\n")
                       .edition),
            kHypertextSketch);
  EXPECT_EQ(
      sketch(read_as_edition("<ul><li>1. Wings clear<ul><li>2. Legs pale, 5–6 µm ... Aus cus</li>"
                             "<li>2. Legs dark ... Aus dus</li></ul></li>"
                             "<li>1. Wings dark ... Aus bus</li></ul>")
                 .edition),
      "1[1] Wings clear -> 2\n1[1] Wings dark -> Aus bus\n"
      "2[2] Legs pale, 5–6 µm -> Aus cus\n2[2] Legs dark -> Aus dus\n");
}

// Three couplets as `couplet` sets each: "{n}" its number, "{a}" and "{b}" its leads.
std::string three(std::string_view couplet) {
  static constexpr std::array<std::array<std::string_view, 3>, 3> kCouplets{
      {{"1", "Wings clear ... <a href=\"#2\">2</a>", "Wings dark ... <i>Aus bus</i>"},
       {"2", "Legs pale ... <a href=\"#3\">3</a>", "Legs dark ... <i>Aus cus</i>"},
       {"3", "Head long ... <i>Aus dus</i>", "Head short ... <i>Aus eus</i>"}}};
  std::string out;
  for (auto const& words : kCouplets) {
    for (std::size_t at = 0; at < couplet.size(); ++at) {
      bool const place = couplet[at] == '{' && at + 2 < couplet.size();
      if (!place) {
        out += couplet[at];
        continue;
      }
      out += words[couplet[at + 1] == 'n' ? 0 : couplet[at + 1] == 'a' ? 1 : 2];
      at += 2;
    }
  }
  return out;
}

std::string sketch_of_three(std::string_view first, std::string_view second) {
  std::string out;
  for (auto const& [number, words, to, other, taxon] :
       {std::array<std::string_view, 5>{"1", "Wings clear", "2", "Wings dark", "Aus bus"},
        {"2", "Legs pale", "3", "Legs dark", "Aus cus"},
        {"3", "Head long", "Aus dus", "Head short", "Aus eus"}}) {
    auto const lead = [&](std::string_view mark, std::string_view says, std::string_view end) {
      out += std::string{number} + "[" + (mark == "–" ? "" : std::string{number}) +
             std::string{mark} + "] " + std::string{says} + " -> " + std::string{end} + "\n";
    };
    lead(first, words, to);
    lead(second, other, taxon);
  }
  return out;
}

TEST(Hypertext, NumbersTheCoupletsOfListsAsTheyAreShown) {
  auto const lettered = sketch_of_three("a", "b");
  auto const dashed = sketch_of_three("", "–");
  // Each item a list of leads; with tags left out that HTML lets one leave out.
  EXPECT_EQ(sketch(read_as_edition("<ol>" +
                                   three("<li id=\"c{n}\"><ol type=\"a\"><li>{a}</li>\n<li>{b}</li>"
                                         "</ol></li>\n") +
                                   "</ol>")
                       .edition),
            lettered);
  EXPECT_EQ(
      sketch(read_as_edition("<ol>" + three("<li><ul><li>{a}<li>{b}</ul>") + "</ol>").edition),
      lettered);
  // Scripts are no part of a list, however they are written.
  EXPECT_EQ(sketch(read_as_edition("<SCRIPT>if (a<b) { s = '<ol><li>1'; }</SCRIPT><ol>" +
                                   three("<li><ul><li>{a}<li>{b}</ul>") + "</ol>")
                       .edition),
            lettered);
  // Leads with letters of their own have them once.
  EXPECT_EQ(
      sketch(
          read_as_edition("<ol>" + three("<li><ul><li>a. {a}<li>b. {b}</ul>") + "</ol>").edition),
      lettered);
  // Each item two lines.
  EXPECT_EQ(sketch(read_as_edition("<ol>" + three("<li>{a}<br>{b}</li>") + "</ol>").edition),
            dashed);
  EXPECT_EQ(
      sketch(read_as_edition("<ol>" + three("<li><p>{a}</p><p>{b}</p></li>") + "</ol>").edition),
      dashed);
  // Terms that are numbers; an empty definition for a picture, and a caption.
  EXPECT_EQ(sketch(read_as_edition("<dl>" +
                                   three("<dt id=\"n{n}\">{n}.</dt>\n<dd>{a}</dd>\n<dd>{b}</dd>"
                                         "<dd><img src=\"a.gif\" alt=\"\"></dd>\n") +
                                   "</dl>")
                       .edition),
            dashed);
  EXPECT_EQ(
      sketch(read_as_edition("<dl>" + three("<dt>{n}a.<dd>{a}<dt>{n}b.<dd><p>{b}</p>") + "</dl>")
                 .edition),
      lettered);
}

TEST(Hypertext, BeginsListsWhereTheySay) {
  auto const reading = read_as_edition(
      "<ol><li>Wings clear ... 2<br>Wings dark ... Aus bus"
      "<li>Legs pale ... 3<br>Legs dark ... Aus cus"
      "<li>Head long ... 4<br>Head short ... Aus dus</ol><p>Also:</p>"
      "<ol start=\"4\"><li>Feet wide ... 5<br>Feet narrow ... Aus eus"
      "<li>Eyes red ... 6<br>Eyes blue ... Aus fus"
      "<li>Tail long ... Aus gus<br>Tail short ... Aus hus</ol>");
  EXPECT_EQ(sketch(reading.edition),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> 3\n2[–] Legs dark -> Aus cus\n"
            "3[3] Head long -> 4\n3[–] Head short -> Aus dus\n"
            "4[4] Feet wide -> 5\n4[–] Feet narrow -> Aus eus\n"
            "5[5] Eyes red -> 6\n5[–] Eyes blue -> Aus fus\n"
            "6[6] Tail long -> Aus gus\n6[–] Tail short -> Aus hus\n");
}

TEST(Hypertext, ParagraphsOfSeveralLinesStandApart) {
  EXPECT_EQ(sketch(read_as_edition(
                       "<h2>Key to Aus</h2><p>1. Wings clear<br>go to 2</p><p>1'. Wings dark<br>"
                       "<b>Aus bus</b></p><p>2. Legs pale<br><b>Aus cus</b></p><p>2'. Legs dark"
                       "<br><b>A. cf. dus</b> (perhaps undescribed)</p><p>I hope that this is of "
                       "use. Next time: how to mount them.</p>")
                       .edition),
            "1[1] Wings clear -> 2\n1[1'] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[2'] Legs dark -> Aus cf. dus (perhaps undescribed)\n");
}

TEST(Hypertext, CellsOfManyParagraphsFrameAPage) {
  // Closing tags may be missing.
  for (std::string_view const closes : {"", "</td>"}) {
    EXPECT_EQ(sketch(read_as_edition(
                         "<table><tr><td><a>Home</a><br><a>Species</a>" + std::string{closes} +
                         "<td><h2>Key to Aus</h2><p>By Roe.</p><p>1. Wings clear ..... 2</p>"
                         "<p>– Wings dark ..... Aus bus</p><p>2. Legs pale ..... Aus cus</p>"
                         "<p>– Legs dark ..... Aus dus</p><p>See also the list.</p>" +
                         std::string{closes} + "<tr><td>Made by Roe</table>")
                         .edition),
              "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
              "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
  }
  // A cell with the leads of a couplet is none.
  EXPECT_EQ(sketch(read_as_edition(
                       "<h2>Key to Aus</h2><table><tr><td>1<td>Wings<p>clear, or <p>nearly so<td>2"
                       "<tr><td>–<td>Wings dark<td>Aus bus<tr><td>2<td>Legs pale<td>Aus cus<tr>"
                       "<td>–<td>Legs dark<td>Aus dus</table>")
                       .edition),
            "1[1] Wings clear, or nearly so -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(Hypertext, NumbersInHeadingsAreThoseOfTheLeadsBelow) {
  auto const couplet = [](std::string_view number, std::string_view one, std::string_view other) {
    return "<div><h3>" + std::string{number} + ".</h3><ul><li>" + std::string{one} + "</li><li>" +
           std::string{other} + "</li></ul></div>\n";
  };
  EXPECT_EQ(sketch(read_as_edition("<h2>Key to Aus</h2>" +
                                   couplet("1", "Wings clear. <a>Go to 2</a>",
                                           "Wings dark. <a><em>Aus bus</em></a> (Bearded Fly)") +
                                   couplet("2", "Legs pale. <a><em>Aus cus</em></a>",
                                           "Legs dark. <a><em>Aus dus</em></a> (Creek Fly)"))
                       .edition),
            "1[] Wings clear. -> 2\n"
            "1[] Wings dark. -> Aus bus\n"
            "2[] Legs pale. -> Aus cus\n"
            "2[] Legs dark. -> Aus dus\n");
}

TEST(Hypertext, RowsOfAWholeCouplet) {
  auto const reading = read_as_edition(
      "<h2>Key to Aus</h2><table>\n<tr><td>1</td><td>Wings <i>clear</i>,<br>Wings dark</td><td><a>2"
      "</a><br><i>Aus bus</i></td></tr>\n<tr><td>2</td><td><p>Legs pale</p><p>Legs dark</p></td>"
      "<td><p><i>Aus cus</i></p><p><i>Aus dus</i></p></td></tr></table>");
  EXPECT_EQ(sketch(reading.edition),
            "1[1] Wings clear, -> 2\n1[] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[] Legs dark -> Aus dus\n");
  auto const& second = reading.edition.couplets.at(0).leads.at(1);
  EXPECT_EQ(second.place.line, 2U);
  EXPECT_EQ(second.place.column, 42U);
  EXPECT_EQ(second.destination_place.column, 76U);
  // A lead of two lines whose destination has one is no couplet.
  EXPECT_EQ(sketch(read_as_edition(
                       "<h2>Key to Aus</h2><table><tr><td>1<td>Wings clear,<br>veins pale<td>2<tr>"
                       "<td>–<td>Wings dark<td>Aus bus<tr><td>2<td>Legs pale<td>Aus cus<tr><td>–"
                       "<td>Legs dark<td>Aus dus</table>")
                       .edition),
            "1[1] Wings clear, veins pale -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(Hypertext, NumbersInRowsOfTheirOwn) {
  EXPECT_EQ(
      sketch(read_as_edition(
                 "<h2>Key to Aus</h2><table><tr><th colspan=2>1</th></tr><tr><td>Wings clear</td>"
                 "<td>Go to 2</td></tr><tr><td>Wings dark</td><td><i>Aus bus</i></td></tr><tr><th "
                 "colspan=2>2</th></tr><tr><td>Legs pale</td><td><i>Aus cus</i></td></tr><tr><td>"
                 "Legs dark</td><td><i>Aus dus</i></td></tr></table>")
                 .edition),
      "1[] Wings clear -> 2\n1[] Wings dark -> Aus bus\n"
      "2[] Legs pale -> Aus cus\n2[] Legs dark -> Aus dus\n");
}

TEST(Hypertext, SummariesAreLines) {
  EXPECT_EQ(sketch(read_as_edition(
                       "<h2>Key to Aus</h2><details><summary>1. Wings clear</summary><details>"
                       "<summary>2. Legs pale</summary><p><i>Aus cus</i></p></details><details>"
                       "<summary>2. Legs dark</summary><p><i>Aus dus</i></p></details></details>"
                       "<details><summary>1. Wings dark</summary><p><i>Aus bus</i></p></details>")
                       .edition),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[2] Legs dark -> Aus dus\n");
}

TEST(Hypertext, TablesBesideANumberHoldTheLeadsOfACouplet) {
  auto const couplet = [](std::string_view number, std::string_view one, std::string_view to_one,
                          std::string_view other, std::string_view to_other) {
    return "<tr><td><b>" + std::string{number} + "</b></td>\n<td><table>\n<tr><td>" +
           std::string{one} + "</td><td>" + std::string{to_one} + "</td></tr>\n<tr><td>" +
           std::string{other} + "</td><td>" + std::string{to_other} +
           "</td></tr>\n</table></td></tr>\n";
  };
  auto const key =
      couplet("1", "Wings clear", "<a>2</a>", "Wings dark", "<i>Aus bus</i>") +
      couplet("2", "Legs pale", "<a>3</a>", "Legs dark", "<i>Aus cus</i>") +
      couplet("3", "Eyes red", "<i>Aus dus</i>", "Eyes black", "<i>Aus eus</i><br>(Creek Fly)");
  // In a page's frame, too.
  for (auto const& page :
       {"<h2>Key to Aus</h2><table>" + key + "</table>",
        "<table><tr><td><table><tr><td>Home</td></tr><tr><td>Guests</td></tr></table></td><td>"
        "<center>The flies (genus <i>Aus</i>)</center><p>A small key.</p><table>" +
            key +
            "</table><p>Note.</p><p>By Roe.</p><hr><p>2002</p><p>Visitor 12</p></td></tr>"
            "</table>"}) {
    EXPECT_EQ(sketch(read_as_edition(page).edition),
              "1[1] Wings clear -> 2\n"
              "1[] Wings dark -> Aus bus\n"
              "2[2] Legs pale -> 3\n"
              "2[] Legs dark -> Aus cus\n"
              "3[3] Eyes red -> Aus dus\n"
              "3[] Eyes black -> Aus eus\n")
        << page;
  }
}

TEST(Hypertext, LettersItemsBeneathNumberedHeadings) {
  auto const step = [](std::string_view number, std::string_view before, std::string_view one,
                       std::string_view other) {
    return "<h3>Step " + std::string{number} + "</h3>" + std::string{before} +
           "<ol type=\"a\"><li>" + std::string{one} + "</li><li>" + std::string{other} +
           "</li></ol>\n";
  };
  EXPECT_EQ(sketch(read_as_edition("<h2>Key to beetles</h2>" +
                                   step("1", "", "Snout long. <a>Go to step 2.</a>",
                                        "Snout short. <a>Go to step 3.</a>") +
                                   step("2", "", "Wings spotted. Bin weevil, <em>Aus bus</em>",
                                        "Wings dark. Crib weevil, <em>Aus cus</em>") +
                                   step("3", "<p class=\"caption\">Figure 2. Two beetles</p>",
                                        "About 1/8 inch long. <em>Dus eus</em>",
                                        "About 1/4 inch long. <em>Dus fus</em>"))
                       .edition),
            "1[a] Snout long. -> 2\n"
            "1[b] Snout short. -> 3\n"
            "2[a] Wings spotted. Bin weevil, -> Aus bus\n"
            "2[b] Wings dark. Crib weevil, -> Aus cus\n"
            "3[a] About 1/8 inch long. -> Dus eus\n"
            "3[b] About 1/4 inch long. -> Dus fus\n");
}

TEST(Hypertext, DashesMayBeTerms) {
  EXPECT_EQ(sketch(read_as_edition(
                       "<h2>Key to Aus</h2><dl><dt>1.</dt><dd>Wings clear <a>2</a></dd><dt>–</dt>"
                       "<dd>Wings dark <em>Aus bus</em></dd><dt>2.</dt><dd>Legs pale <em>Aus "
                       "cus</em></dd><dt>–</dt><dd>Legs dark <em>Aus dus</em></dd></dl>")
                       .edition),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(Hypertext, RemarksBeneathANameInItalicsAreNoPartOfTheLead) {
  EXPECT_EQ(
      sketch(read_as_edition(
                 "<h2>Key to Aus</h2><p><b>1</b> Legs 2, dark <em>A. bus</em> (Roe)<br>In wet "
                 "moss, not rare.<br><b>–</b> Legs pale <a>2</a></p><p><b>2</b> Wings dark "
                 "<em>A. cus</em> Roe<br><b>–</b> Wings pale <em>A. dus</em> Roe<br>Seen "
                 "thrice.</p>")
                 .edition),
      "1[1] Legs 2, dark -> Aus bus\n"
      "1[–] Legs pale -> 2\n"
      "2[2] Wings dark -> Aus cus\n"
      "2[–] Wings pale -> Aus dus\n");
}

TEST(Hypertext, NumbersListsThatWordsPart) {
  // The last list leads to none of its own couplets; its item says its number.
  EXPECT_EQ(sketch(read_as_edition(
                       "<h2>Key to Aus</h2><ol><li><ol type=a><li>Wings clear <a>go to 2</a>"
                       "<li>Wings dark <i>Aus bus</i></ol><li><ol type=a><li>Legs pale <i>Aus "
                       "cus</i><li>Legs dark <a>go to 3</a></ol></ol><p>Now look at the palps.</p>"
                       "<ol><li value=\"3\"><ol type=a><li>Palps long <i>Aus dus</i><li>Palps "
                       "short <i>Aus eus</i></ol></ol>")
                       .edition),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> Aus bus\n"
            "2[2a] Legs pale -> Aus cus\n2[2b] Legs dark -> 3\n"
            "3[3a] Palps long -> Aus dus\n3[3b] Palps short -> Aus eus\n");
}

TEST(Hypertext, NumbersFirstLeadsInListsOfOneItem) {
  EXPECT_EQ(
      sketch(read_as_edition(three("<ol start=\"{n}\"><li>{a}</li></ol>\n<p>– {b}</p>\n")).edition),
      sketch_of_three("", "–"));
  // Titles of sections keep their numbers to themselves.
  auto const page =
      read_as_edition("<ol><li>The genus</li></ol><p>Small.</p><ol start=\"2\"><li>Key</li></ol>" +
                      kTableOfLeads + "<ol start=\"3\"><li>Works</li></ol><p>Roe 1901. Wings.</p>");
  EXPECT_EQ(sketch(page.edition), kHypertextSketch);
  ASSERT_FALSE(page.edition.notes.empty());
  EXPECT_TRUE(page.edition.notes.front().text.starts_with("The genus"));
}

TEST(Hypertext, NumbersNoListsOfOtherThings) {
  // Works, steps and a page's contents, and items that print their numbers.
  auto const reading = read_as_edition(
      "<ol><li><a href=\"1\">Sampling</a></li><li>Keeping</li><li>Keys</li></ol>" + kTableOfLeads +
      "<ol><li>Roe, A. 1901. Wings.<br>Bergen 1: 1–20<li>Roe, A. 1902. Legs.<br>Bergen 2: 1–7"
      "<li>Roe, A. 1903. Heads.<br>Bergen 3: 3–9</ol>"
      "<dl><dt>Wing<dd>what it flies with<dt>Leg<dd>what it walks with<dt>Head<dd>the rest</dl>");
  EXPECT_EQ(sketch(reading.edition), kHypertextSketch);
  EXPECT_EQ(sketch(read_as_edition("<ol style=\"list-style: none\">" +
                                   three("<li>{n}. {a}<br>– {b}</li>") + "</ol>")
                       .edition),
            sketch_of_three("", "–"));
}

TEST(Hypertext, SetsMenusContentsAndCommentsAside) {
  auto const reading = read_as_edition(
      "<nav><p>1. Home</p><p>2. Keys</p></nav>\n<div id=\"left toc\">\n<div>1. Wings ... 2</div>\n"
      "1. Legs ... Aus eus</div>\n<ul class='page-menu'><li>1. News</ul>" +
      kTableOfLeads +
      "<ol class=\"comment-list\"><li>1. Roe says: Wings dark ... Aus fus</li></ol>\n<footer>3. "
      "Seen "
      "by 4</footer>\n<p class=comments>Small.</p>\n");
  EXPECT_EQ(sketch(reading.edition), kHypertextSketch);
  std::vector<std::string> aside;
  for (auto const& account : reading.source->lines) {
    if (account.reason == "stands beside the key") aside.push_back(std::to_string(account.line));
  }
  EXPECT_EQ(aside, (std::vector<std::string>{"1", "1", "3", "4", "5", "14", "15"}));
  EXPECT_EQ(
      sketch(read_as_edition("<DIV CLASS='TOC'><P>1. Wings</P></DIV>" + kTableOfLeads).edition),
      kHypertextSketch);
  // What holds most of the page is the page, whatever it is called; nor is what never closes.
  EXPECT_EQ(
      sketch(read_as_edition("<div class=\"content nav\">" + kTableOfLeads + "</div>").edition),
      kHypertextSketch);
  EXPECT_EQ(sketch(read_as_edition("<div class=\"toc\">" + kTableOfLeads).edition),
            kHypertextSketch);
}

TEST(Hypertext, LeavesLinesAloneWhereOnlyLettersAreMarked) {
  EXPECT_EQ(sketch(read_as_edition("1. Wings clear ..... 2\n– Wings dark ..... <i>Aus bus</i>\n"
                                   "2. Legs pale, 5–6 &#xB5;m ..... <i>Aus cus</i>\n"
                                   "– Legs dark ..... <i>Aus\n   dus</i>\n")
                       .edition),
            kHypertextSketch);
}

TEST(Hypertext, SetsDigitsAsTheTagsDo) {
  auto const reading = read_as_edition(
      "<p>1. Leaf 5 cm<sup>2</sup> ..... Aus bus</p><p>– Leaf H<sub>2</sub> ..... Aus cus</p>");
  EXPECT_EQ(reading.edition.couplets.at(0).leads.at(0).text, "Leaf 5 cm²");
  EXPECT_EQ(reading.edition.couplets.at(0).leads.at(1).text, "Leaf H₂");
}

TEST(Hypertext, SaysNothingOfScriptsAndStyles) {
  EXPECT_EQ(sketch(read_as_edition(
                       "<!DOCTYPE html><html><head><style>p { 1. Wings }</style><script>if (1<2) "
                       "'</p>';</script></head><body>" +
                       kTableOfLeads + "</body></html>")
                       .edition),
            kHypertextSketch);
}

TEST(Hypertext, ACellMayLeadBackBehindItsNumber) {
  auto const row = [](std::string_view label, std::string_view words, std::string_view to) {
    return "<tr><td>" + std::string{label} + "</td><td>" + std::string{words} + "</td><td>" +
           std::string{to} + "</td></tr>";
  };
  EXPECT_EQ(sketch(read_as_edition(
                       "<h1>Key to Ausella</h1><table>" + row("<b>1</b>", "Wings clear", "2") +
                       row("&nbsp;", "Wings dark", "3") +
                       row("<b>2</b><br>Back to <a>1</a>", "Legs red", "<i>Ausella busa</i>") +
                       row("&nbsp;", "Legs black", "<i>Ausella cusa</i>") +
                       row("<b>3</b><br>Back to <a>1</a>", "Head red", "<i>Ausella dusa</i>") +
                       row("&nbsp;", "Head black", "<i>Ausella fusa</i>") + "</table>")
                       .edition),
            "1[1] Wings clear -> 2\n1[] Wings dark -> 3\n2[2] Legs red -> Ausella busa\n"
            "2[] Legs black -> Ausella cusa\n3[3] Head red -> Ausella dusa\n"
            "3[] Head black -> Ausella fusa\n");
}

TEST(Hypertext, SourcesOfPicturesAreNoWords) {
  auto const reading = read_as_edition(
      "<p>1. Leaf red <picture><source media=\"(min-width: 9px)\" srcset=\"a.jpg\"><img "
      "src=\"b.jpg\"></picture> ..... Aus bus</p><p>– Leaf dark ..... Aus cus</p>");
  EXPECT_EQ(reading.edition.couplets.at(0).leads.at(0).text, "Leaf red");
}

TEST(Hypertext, TellsWhatItLeftOut) {
  auto const loaded = read_hypertext({.name = "key.txt", .bytes = kTableOfLeads});
  ASSERT_TRUE(loaded);
  ASSERT_FALSE(loaded.findings.empty());
  EXPECT_EQ(one_line(loaded.findings.front()),
            "key.txt:1:1: information: the text was read as HTML: 49 tags and 4 named or numbered "
            "characters were taken for the lines, cells and letters that they set [hypertext] (if "
            "the brackets are part of the words, write \"&lt;\" for them)");
}

TEST(Hypertext, LeadsBesideEachOther) {
  auto const couplet = [](std::string const& number, std::string const& first,
                          std::string const& second) {
    return "<table><tr><th colspan=2>Couplet " + number + "</th></tr><tr><td><p><b>" + number +
           "a.</b> Wings clear</p><img src=a.jpg><br><span>Figure 1</span><p>" + first +
           "</p></td><td><p><b>" + number + "b.</b> Wings dark</p><img src=b.jpg><br>" +
           "<span>Figure 2</span><p>" + second + "</p></td></tr></table><hr>\n";
  };
  auto const reading =
      read_as_edition("<h2>Key to Ausella</h2>\n" +
                      couplet("1", "<a href=#c2>Go to couplet 2</a>", "<i>Ausella busa</i>") +
                      couplet("2", "<i>Ausella cusa</i>", "<i>Ausella dusa</i>"));
  EXPECT_EQ(sketch(reading.edition),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> Ausella busa\n"
            "2[2a] Wings clear -> Ausella cusa\n2[2b] Wings dark -> Ausella dusa\n");
  EXPECT_EQ(std::count_if(reading.source->lines.begin(), reading.source->lines.end(),
                          [](auto const& line) { return line.kind == LineKind::figure; }),
            4);
}

// Number, lead and lead, however what they lead to is set off.
TEST(Hypertext, LeadsBesideEachOtherBehindTheirNumber) {
  auto const page = [](std::string const& before, std::string const& after) {
    auto const row = [&](std::string const& number, std::string const& first,
                         std::string const& one, std::string const& second,
                         std::string const& other) {
      return "<tr><td>" + number + "</td><td>" + first + before + one + after + "</td><td>" +
             second + before + other + after + "</td></tr>";
    };
    return "<html><h1>Key to Ausella</h1><table><tr><th>No.</th><th>Lead a</th><th>Lead "
           "b</th></tr>" +
           row("1", "Wings clear; head flat", "2", "Wings dark; head keeled", "3") +
           row("2", "Legs long and red", "Ausella busa", "Legs short and red", "Ausella cusa") +
           row("3", "Eyes large; tarsi red", "Ausella dusa", "Eyes small; tarsi dark",
               "Ausella eusa") +
           "</table></html>\n";
  };
  for (auto const& [before, after] :
       {std::pair{" … ", ""}, std::pair{" ...... ", ""}, std::pair{" → ", ""}, std::pair{" ", ""},
        std::pair{" <b>", "</b>"}, std::pair{"<br>", ""}, std::pair{"<br><i>", "</i>"},
        std::pair{"</td><td>", ""}}) {
    EXPECT_EQ(
        sketch(read_as_edition(page(before, after)).edition),
        "1[1] Wings clear; head flat -> 2\n1[–] Wings dark; head keeled -> 3\n"
        "2[2] Legs long and red -> Ausella busa\n2[–] Legs short and red -> Ausella cusa\n"
        "3[3] Eyes large; tarsi red -> Ausella dusa\n3[–] Eyes small; tarsi dark -> Ausella eusa\n")
        << before;
  }
}

// What a last column says of the taxa is no rival where each lead has a row.
TEST(Hypertext, RemarksInRowsOfOneLeadAreNoRivals) {
  auto const row = [](std::string const& number, std::string const& words, std::string const& end,
                      std::string const& remark) {
    return "<tr><td>" + number + "</td><td>" + words + "</td><td>" + end + "</td><td>" + remark +
           "</td></tr>\n";
  };
  for (auto const* second : {"2'", "2", "–", ""}) {
    auto const text = sketch(
        read_as_edition("<html><h1>Key to Ausella</h1><table>" + row("1", "Wings clear", "2", "") +
                        row("1", "Wings dark", "Ausella dusa", "") +
                        row("2", "Legs red", "Ausella busa", "Rare, resembles Ausella cusa") +
                        row(second, "Legs black", "Ausella cusa", "Rare, resembles Ausella busa") +
                        "</table></html>\n")
            .edition);
    EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 4) << second << '\n' << text;
  }
}

TEST(Hypertext, APageWithoutWordsIsNoEmptyFile) {
  auto const loaded = read_hypertext({.name = "key.txt", .bytes = "<a><a><p><b></b></p></a></a>"});
  ASSERT_FALSE(loaded);
  EXPECT_EQ(
      one_line(loaded.findings.back()),
      "key.txt:1:1: error: the file holds tags, but no words between them [empty-file] (check "
      "that this is the right file, and that the page was saved with its text)");
}

TEST(Hypertext, ChoicesBesideEachOtherBeneathTheirNumber) {
  auto const couplet = [](std::string const& number, std::string const& first,
                          std::string const& second) {
    return "<table><tr><td colspan=2>" + number + "</td></tr><tr><td>" + first + "</td><td>" +
           second + "</td></tr></table><p>&nbsp;</p>\n";
  };
  EXPECT_EQ(
      sketch(read_as_edition(
                 "<h2>Key to Ausella</h2>\n" +
                 couplet("<b>1</b>", "Wings clear, with four veins<br><br><a href=#c2><b>2</b></a>",
                         "Wings dark, without veins<br><br><i>Ausella busa</i>") +
                 couplet("<b>2</b> (1)", "Legs short and dark<br><br><a href=#c3><b>3</b></a>",
                         "Legs long and pale<br><br><i>Ausella cusa</i>") +
                 couplet("<b>3</b> (2)", "Antennae with 9 segments<br><br><a href=#c4><b>4</b></a>",
                         "Antennae with 8 segments<br><br><i>Ausella gusa</i>") +
                 couplet("<b>4</b> (3)", "Tarsi black<br><br><a href=#c5><b>5</b></a>",
                         "Tarsi yellow in both sexes<br><br><i>Ausella nusa</i>") +
                 couplet("<b>5</b> (4)", "Head smooth<br><br><i>Ausella dusa</i>",
                         "Head ribbed and hairy<br><br><i>Ausella rusa</i>"))
                 .edition),
      "1[] Wings clear, with four veins -> 2\n"
      "1[] Wings dark, without veins -> Ausella busa\n"
      "2[] Legs short and dark -> 3\n"
      "2[] Legs long and pale -> Ausella cusa\n"
      "3[] Antennae with 9 segments -> 4\n"
      "3[] Antennae with 8 segments -> Ausella gusa\n"
      "4[] Tarsi black -> 5\n"
      "4[] Tarsi yellow in both sexes -> Ausella nusa\n"
      "5[] Head smooth -> Ausella dusa\n"
      "5[] Head ribbed and hairy -> Ausella rusa\n");
}

TEST(Hypertext, TakesTimeOnlyInProportion) {
  std::string text;
  for (std::size_t i = 0; i < 300'000; ++i) text += i % 2 == 0 ? "<!--" : "<a=\"";
  EXPECT_FALSE(is_hypertext(text));
  EXPECT_FALSE(is_hypertext("<a=\"" + text));
  EXPECT_FALSE(read_hypertext({.name = "key.txt", .bytes = "<p>1. Wings</p><br>" + text}));
  std::string open = "<p>1. Wings</p><br>";
  for (std::size_t i = 0; i < 100'000; ++i) open += "<span class=\"editsection\">[";
  EXPECT_FALSE(read_hypertext({.name = "key.txt", .bytes = open}));
}

TEST(Hypertext, TakesSignsOfMeasureForNoTags) {
  EXPECT_FALSE(
      is_hypertext("1. Length <5 mm; width > 3 ..... 2\n– Length >5 mm; a<b ..... Aus & Bus;\n"));
  EXPECT_FALSE(is_hypertext("1. Wings <clear> ..... 2\n– Wings <dark> </dark> ..... Aus bus\n"));
  EXPECT_TRUE(is_hypertext("a<br>b<br>c<br>"));
  EXPECT_TRUE(is_hypertext("5 &micro;m &ndash; caf&eacute;"));
  // Within other tags such signs are words.
  EXPECT_EQ(
      read_as_edition("<p>1. Length <5 mm ..... 2</p><p>– Length >5 mm ..... Aus bus</p>"
                      "<p>2. Legs pale & long ..... Aus cus</p><p>– Legs dark ..... Aus dus</p>")
          .edition.couplets.at(1)
          .leads.at(0)
          .text,
      "Legs pale & long");
}

TEST(Hypertext, LettersOfFootnotesAreNoLettersOfNames) {
  EXPECT_EQ(
      sketch(read_as_edition(
                 "<p>1. Wings clear ... <i>Aus bus</i><sup>a</sup></p><p>– Wings M<sup>a</sup> "
                 "... <i>Aus cus</i><sup>1</sup></p>")
                 .edition),
      "1[1] Wings clear -> Aus bus (ᵃ)\n1[–] Wings Ma -> Aus cus (¹)\n");
}

TEST(Hypertext, AListOfTheSpeciesBesideTheKeyIsNone) {
  std::string list;
  for (auto const* name : {"busa", "cusa", "dusa", "eusa", "fusa", "gusa", "husa", "iusa", "jusa",
                           "kusa", "lusa", "musa"}) {
    list += "<tr><td><i>Aus " + std::string{name} + "</i></td><td>&nbsp;</td><td>Map</td></tr>\n";
  }
  auto const reading = read_as_edition(
      "<table><tr><td>1</td><td>Wings clear.</td><td>(2)</td></tr>\n"
      "<tr><td>+</td><td>Wings dark.</td><td><i>Aus busa</i></td></tr>\n"
      "<tr><td>2</td><td>Legs pale.</td><td>Key 2</td></tr>\n"
      "<tr><td>+</td><td>Legs dark.</td><td>Key 3</td></tr></table>\n<b>Key 2</b>\n"
      "<table><tr><td>1</td><td>Head red.</td><td><i>Aus cusa</i></td></tr>\n"
      "<tr><td>+</td><td>Head black.</td><td>(2)</td></tr>\n"
      "<tr><td>2</td><td>Eyes large.</td><td><i>Aus dusa</i></td></tr>\n"
      "<tr><td>+</td><td>Eyes small.</td><td><i>Aus eusa</i></td></tr></table>\n<b>Key 3</b>\n"
      "<table><tr><td>1</td><td>Tail long.</td><td>(2)</td></tr>\n"
      "<tr><td>+</td><td>Tail short.</td><td><i>Aus fusa</i></td></tr>\n"
      "<tr><td>2</td><td>Ribs many.</td><td><i>Aus gusa</i></td></tr>\n"
      "<tr><td>+</td><td>Ribs few.</td><td><i>Aus husa</i></td></tr></table>\n"
      "<b>List of taxa</b>\n<table><tr><td>Taxon</td><td>Synonym</td><td>Objects</td></tr>\n" +
      list + "</table>\n");
  EXPECT_EQ(reading.edition.couplets.size(), 6U);
  EXPECT_EQ(reading.edition.parts.size(), 3U);
}

TEST(Hypertext, NamesEndAboveTheCommonOnesInTheirCells) {
  EXPECT_EQ(
      sketch(
          read_as_edition(
              "<table><tr><td>1</td><td>Wings clear</td><td>2</td></tr>\n"
              "<tr><td></td><td>Wings dark</td><td><em>Aus busa</em><br/>red marshwort</td></tr>\n"
              "<tr><td>2</td><td>Legs pale</td><td><i>Aus cusa</i>*<br>marshwort</td></tr>\n"
              "<tr><td></td><td>Legs dark</td><td><i>Aus dusa</i></td></tr></table>")
              .edition),
      "1[1] Wings clear -> 2\n1[] Wings dark -> Aus busa (red marshwort)\n"
      "2[2] Legs pale -> Aus cusa (* marshwort)\n2[] Legs dark -> Aus dusa\n");
}

TEST(Hypertext, NumbersStandAloneAboveChoicesWithoutLabels) {
  std::string const wanted =
      "1[] Wings clear -> 2\n1[] Wings dark -> Aus busa\n2[] Legs pale -> 3\n"
      "2[] Legs dark -> Aus cusa\n3[] Head long -> Aus dusa\n3[] Head short -> Aus eusa\n";
  EXPECT_EQ(sketch(read_as_edition(
                       "<p><b>1</b></p><p>Wings clear ... <b>2</b></p><p>Wings dark ... <i>Aus "
                       "busa</i></p>\n<p><b>2</b></p><p>Legs pale ... <b>3</b></p><p>Legs dark ... "
                       "<i>Aus cusa</i></p>\n<p><b>3</b></p><p>Head long ... <i>Aus dusa</i></p>"
                       "<p>Head short ... <i>Aus eusa</i></p>")
                       .edition),
            wanted);
  EXPECT_EQ(sketch(read_as_edition(
                       "<table><tr><td colspan=2><b>1</b></td></tr><tr><td>Wings clear<br><br><a "
                       "href=#b><b>2</b></a></td><td>Wings dark<br><br><i>Aus busa</i></td></tr>"
                       "</table>\n<table><tr><td colspan=2><b>2</b></td></tr><tr><td>Legs "
                       "pale<br><br><a href=#c><b>3</b></a></td><td>Legs dark<br><br><i>Aus "
                       "cusa</i></td></tr></table>\n<table><tr><td colspan=2><b>3</b></td></tr>"
                       "<tr><td>Head long<br><br><i>Aus dusa</i></td><td>Head short<br><br><i>Aus "
                       "eusa</i></td></tr></table>")
                       .edition),
            "1[1] Wings clear -> 2\n1[] Wings dark -> Aus busa\n2[2] Legs pale -> 3\n"
            "2[] Legs dark -> Aus cusa\n3[3] Head long -> Aus dusa\n3[] Head short -> Aus eusa\n");
}

}  // namespace
}  // namespace keydrift

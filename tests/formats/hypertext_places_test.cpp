// Web pages whose style sheets part what no tag parts, and what their markup tells of a lead's end.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "keydrift/formats/hypertext_places.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch_page;

std::string page_around(std::string_view body) {
  return "<html><head><title>Key to Ausella</title></head><body>\n" + std::string{body} +
         "\n</body></html>\n";
}

// --- boxes
// -----------------------------------------------------------------------------------------

std::string box(std::string_view number, std::string_view words, std::string_view to) {
  std::string text = "<div class=\"lead\"><span class=\"no\">" + std::string{number} +
                     "</span><span class=\"words\">" + std::string{words} + "</span>";
  if (!to.empty()) text += "<span class=\"to\">" + std::string{to} + "</span>";
  return text + "</div>\n";
}

TEST(HypertextPlaces, ElementsThatTouchAreCells) {
  EXPECT_EQ(
      sketch_page(page_around(box("1", "Wings clear", "<a href=\"#k2\">2</a>") +
                              box("1&prime;", "Wings dark", "<em>Ausella busa</em>") +
                              box("2", "Legs 3", "<em>Ausella cusa</em>") +
                              box("2&prime;", "Legs short (Fig. 3)", "<em>Ausella dusa</em>"))),
      "1[1] Wings clear -> 2\n1[1′] Wings dark -> Ausella busa\n"
      "2[2] Legs 3 -> Ausella cusa\n2[2′] Legs short (Fig. 3) -> Ausella dusa\n");
}

TEST(HypertextPlaces, CellsOfNestedLeads) {
  EXPECT_EQ(sketch_page(page_around(box("1", "Wings clear", "") +
                                    box("2", "Legs long", "<em>Ausella cusa</em>") +
                                    box("2&prime;", "Legs short", "<em>Ausella dusa</em>") +
                                    box("1&prime;", "Wings dark", "<em>Ausella busa</em>"))),
            "1[1] Wings clear -> 2\n1[1′] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[2′] Legs short -> Ausella dusa\n");
}

TEST(HypertextPlaces, WordsOfWhichPartsAreMarkedStayWords) {
  // Initials, endings and index letters have elements of their own here and there.
  constexpr std::string_view kPage =
      "<p><span class=\"first\">W</span><span class=\"rest\">ings</span> clear</p>"
      "<p>Legs <span class=\"x\">long</span><span class=\"y\">er</span></p>"
      "<p><b>1</b><span class=\"z\">Wings</span></p>";
  auto const placement = hypertext::placement_of(kPage, hypertext::sheet_of(kPage));
  EXPECT_TRUE(placement.elements.empty());
}

// --- coordinates
// -------------------------------------------------------------------------------------

std::string at(int top, int left, std::string_view text, std::string_view name = "span") {
  return "<" + std::string{name} + " style=\"position:absolute;top:" + std::to_string(top) +
         "px;left:" + std::to_string(left) + "px;white-space:nowrap\">" + std::string{text} + "</" +
         std::string{name} + ">\n";
}

TEST(HypertextPlaces, LinesAndCellsByTheirCoordinates) {
  for (std::string_view const name : {"span", "p", "div"}) {
    auto const key = at(90, 200, "Key to the species of <i>Ausella</i>", name) +
                     at(120, 108, "1", name) + at(120, 140, "Wings clear, the veins of the", name) +
                     at(135, 140, "fore wing pale", name) + at(135, 700, "2", name) +
                     at(150, 108, "–", name) + at(150, 140, "Wings dark", name) +
                     at(150, 640, "<i>A. busa</i>", name) + at(165, 108, "2", name) +
                     at(165, 140, "Legs long", name) + at(166, 640, "<i>A. cusa</i>", name) +
                     at(180, 108, "–", name) + at(180, 140, "Legs short", name) +
                     at(180, 640, "<i>A. dusa</i>", name);
    EXPECT_EQ(sketch_page(
                  page_around("<div id=\"page1\" style=\"position:relative\">\n" + key + "</div>")),
              "1[1] Wings clear, the veins of the fore wing pale -> 2\n"
              "1[–] Wings dark -> Ausella busa\n"
              "2[2] Legs long -> Ausella cusa\n2[–] Legs short -> Ausella dusa\n")
        << name;
  }
}

TEST(HypertextPlaces, IndentationByCoordinates) {
  auto const key = at(90, 100, "Key to the species of <i>Ausella</i>", "p") +
                   at(120, 100, "Wings clear", "p") + at(135, 130, "Legs long ..... A. cusa", "p") +
                   at(150, 130, "Legs short ..... A. dusa", "p") + at(165, 100, "Wings dark", "p") +
                   at(180, 130, "Eyes red", "p") + at(195, 160, "Palps black ..... A. eusa", "p") +
                   at(210, 160, "Palps pale ..... A. fusa", "p") +
                   at(225, 130, "Eyes black ..... A. gusa", "p");
  EXPECT_EQ(sketch_page(page_around(key)),
            "1[] Wings clear -> 2\n1[] Wings dark -> 3\n"
            "2[] Legs long -> Ausella cusa\n2[] Legs short -> Ausella dusa\n"
            "3[] Eyes red -> 4\n3[] Eyes black -> Ausella gusa\n"
            "4[] Palps black -> Ausella eusa\n4[] Palps pale -> Ausella fusa\n");
}

TEST(HypertextPlaces, LinesApartByTheirCoordinates) {
  // A figure at the foot of a page and the head of the next one stand within a lead.
  auto const key = at(50, 300, "ROE: BEETLES OF THE MARSHES", "p") + at(50, 700, "214", "p") +
                   at(90, 100, "1 Wings clear, the hind ones short . . . . . 2", "p") +
                   at(109, 100, "– Wings dark . . . . . Ausella busa", "p") +
                   at(128, 100, "2 Legs long . . . . . Ausella cusa", "p") +
                   at(147, 100, "– Legs short, of the same colour as", "p") +
                   at(230, 100, "Fig. 2. Ausella busa, hind leg.", "p") + at(50, 100, "215", "p") +
                   at(50, 300, "Beetles of the marshes", "p") +
                   at(90, 120, "the body, and hairy (2 species, not", "p") +
                   at(109, 120, "told apart) . . . . . A. dusa, A. fusa", "p");
  EXPECT_EQ(sketch_page(page_around(key)),
            "1[1] Wings clear, the hind ones short -> 2\n"
            "1[–] Wings dark -> Ausella busa\n2[2] Legs long -> Ausella cusa\n"
            "2[–] Legs short, of the same colour as the body, and hairy (2 species, not told "
            "apart) -> Ausella dusa + Ausella fusa\n");
}

TEST(HypertextPlaces, OrnamentsWithCoordinatesChangeNothing) {
  EXPECT_EQ(sketch_page(page_around(
                "<div style=\"position:absolute;top:0;left:0\">Museum of Sarn</div>\n"
                "<p>1 Wings clear ... 2</p><p>– Wings dark ... Ausella busa</p>\n"
                "<p>2 Legs long ... Ausella cusa</p><p>– Legs short ... Ausella dusa</p>")),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> Ausella busa\n"
            "2[2] Legs long -> Ausella cusa\n2[–] Legs short -> Ausella dusa\n");
}

// --- ends
// --------------------------------------------------------------------------------------------

TEST(HypertextEnds, NamesInItalicsAndLinkedNumbersEndALead) {
  EXPECT_EQ(sketch_page(page_around(
                "<p>1 Wings clear, setae 5 <a href=\"#c2\">2</a></p>\n"
                "<p>– Wings dark, unlike those of <i>Ausella cusa</i> <i>Ausella busa</i> "
                "Roe, 1901</p>\n<p>2 Legs long, as in <em>Ausella busa</em> <em>Ausella "
                "cusa</em> (in part)</p>\n<p>– Legs short <em>Ausella</em> sp. 1</p>\n"
                "<h3>Glossary</h3>\n<dl><dt>seta</dt><dd>a bristle</dd></dl>")),
            "1[1] Wings clear, setae 5 -> 2\n"
            "1[–] Wings dark, unlike those of Ausella cusa -> Ausella busa\n"
            "2[2] Legs long, as in Ausella busa -> Ausella cusa (in part)\n"
            "2[–] Legs short -> Ausella sp. 1\n");
}

TEST(HypertextEnds, WhatStandsBeneathATitleIsNoPartOfTheLeadAbove) {
  EXPECT_EQ(sketch_page(page_around("<p>1 Wings clear <i>Ausella busa</i></p>\n"
                                    "<p>– Wings dark <i>Ausella sp. 1</i></p>\n<h3>Glossary</h3>\n"
                                    "<p>arista</p><p>the bristle of an antenna</p>")),
            "1[1] Wings clear -> Ausella busa\n1[–] Wings dark -> Ausella sp. 1\n");
}

// --- terms
// -------------------------------------------------------------------------------------------

TEST(HypertextLists, TermsOfKeysToGroups) {
  EXPECT_EQ(sketch_page(page_around(
                "<h3>Key to the groups</h3><dl><dt>1</dt><dd>Wings clear <b>Group "
                "A</b></dd><dd>Wings dark <b>Group B</b></dd></dl>"
                "<h3>Group A</h3><dl><dt>A1</dt><dd>Legs long <i>Ausella busa</i></dd>"
                "<dd>Legs short <a href=\"#A2\">A2</a></dd><dt>A2</dt><dd>Eyes red <i>Ausella "
                "cusa</i></dd><dd>Eyes black <i>Ausella dusa</i></dd></dl>"
                "<h3>Group B</h3><dl><dt>B1</dt><dd>Palps red <i>Ausella eusa</i></dd>"
                "<dd>Palps black <i>Ausella fusa</i></dd></dl>")),
            "1[1] Wings clear -> key: Group A\n1[–] Wings dark -> key: Group B\n"
            "A1[A1] Legs long -> Ausella busa\nA1[–] Legs short -> A2\n"
            "A2[A2] Eyes red -> Ausella cusa\nA2[–] Eyes black -> Ausella dusa\n"
            "B1[B1] Palps red -> Ausella eusa\nB1[–] Palps black -> Ausella fusa\n");
}

// --- margins
// ---------------------------------------------------------------------------------------

// E-texts of old floras set their outlines in by classes, and the pages of the book beside them.
TEST(HypertextPlaces, AStyleSheetSetsParagraphsIn) {
  EXPECT_EQ(sketch_page(
                "<html><head><title>Key to Ausella</title><style type=\"text/css\">\n"
                "p { margin-top: .5em; }\n"
                "p.k0, p.k1, p.k2 { text-indent: -1em; }\n"
                "p.k0 { margin-left: 1em; }\np.k1 { margin-left: 2.5em; }\n"
                ".k2 { text-align: left; margin-left: 64px }\n"
                ".kr { float: right; text-indent: 0; }\n"
                "</style></head><body>\n"
                "<p class=\"k0\">Leaves all basal.</p>\n"
                "<p class=\"k1\">Leaves round. <span class=\"kr\">1. <i>A. busa.</i></span></p>\n"
                "<p class=\"k1\">Leaves not round.</p>\n"
                "<p class=\"k2\">Scape leafless. <span class=\"kr\">2. <i>A. cusa.</i></span></p>\n"
                "<p class=\"k2\"><span class=\"pagenum\"><a id=\"Page_2\"></a>[Pg 2]</span>"
                "Scape bracted. <span class=\"kr\">3. <i>A. dusa.</i></span></p>\n"
                "<p class=\"k0\">Leaves of the stem opposite.</p>\n"
                "<p class=\"k1\">Petals red. <span class=\"kr\">4. <i>A. fusa.</i></span></p>\n"
                "<p class=\"k1\">Petals white. <span class=\"kr\">5. <i>A. gusa.</i></span></p>\n"
                "</body></html>\n"),
            "1[] Leaves all basal. -> 2\n1[] Leaves of the stem opposite. -> 4\n"
            "2[] Leaves round. -> Ausella busa\n2[] Leaves not round. -> 3\n"
            "3[] Scape leafless. -> Ausella cusa\n3[] Scape bracted. -> Ausella dusa\n"
            "4[] Petals red. -> Ausella fusa\n4[] Petals white. -> Ausella gusa\n");
}

// A note at the right is none of what leads lead to, nor is an element with words behind it.
TEST(HypertextPlaces, ASideNotePartsNoWords) {
  EXPECT_EQ(sketch_page("<html><head><title>Key to Ausella</title><style>\n"
                        ".sn { float: right; }\n"
                        "</style></head><body>\n"
                        "<p>1. Leaves <span class=\"sn\">mostly</span> round ... 2</p>\n"
                        "<p>- Leaves not round ... Ausella busa</p>\n"
                        "<p>2. Scape leafless ... Ausella cusa</p>\n"
                        "<p>- Scape bracted ... Ausella dusa</p>\n"
                        "</body></html>\n"),
            "1[1] Leaves mostly round -> 2\n1[-] Leaves not round -> Ausella busa\n"
            "2[2] Scape leafless -> Ausella cusa\n2[-] Scape bracted -> Ausella dusa\n");
}

}  // namespace
}  // namespace keydrift

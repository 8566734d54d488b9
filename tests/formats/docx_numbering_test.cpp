// Automatic numbers, indentation, tab leaders and tables of manuscripts.

#include <gtest/gtest.h>

#include "docx_support.hpp"
#include "keydrift/formats/docx.hpp"

namespace keydrift::test {
namespace {

using Lines = std::vector<std::string>;

std::string level(std::string const& ilvl, std::string const& format, std::string const& text,
                  std::string const& more = {}) {
  return "<w:lvl w:ilvl=\"" + ilvl + "\"><w:start w:val=\"1\"/><w:numFmt w:val=\"" + format +
         "\"/><w:lvlText w:val=\"" + text + "\"/>" + more + "</w:lvl>";
}

std::string abstract(std::string const& id, std::string const& levels) {
  return "<w:abstractNum w:abstractNumId=\"" + id + "\">" + levels + "</w:abstractNum>";
}

std::string num(std::string const& id, std::string const& abstract_id,
                std::string const& overrides = {}) {
  return "<w:num w:numId=\"" + id + "\"><w:abstractNumId w:val=\"" + abstract_id + "\"/>" +
         overrides + "</w:num>";
}

// The automatic numbers of paragraphs "red" at these levels of numbering 1, parted by "|".
std::string numbers(std::string const& numbering, std::vector<std::string> const& levels) {
  std::string body;
  for (auto const& one : levels) body += paragraph("red", numbered("1", one));
  body += paragraph("1. Beak bifid ..... Aus bus") + paragraph("– Beak entire ..... Aus cus");
  auto const lines = read_body(body, {.numbering = numbering}).lines;
  std::string text;
  std::size_t at = 0;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    auto const end = lines.find('\n', at);
    auto line = lines.substr(at, end - at);
    if (!line.empty()) line.erase(0, line.find_first_not_of(' '));
    text += (i > 0 ? "|" : "") + line;
    at = end + 1;
  }
  return text;
}

TEST(DocxNumbering, PrintsTheNumbersOfAKey) {
  auto const couplet = numbered("1", "0");
  auto const second = numbered("1", "1");
  auto const read = read_body(
      paragraph("Beak bifid ..... 2", couplet) + paragraph("Beak entire ..... Aus bus", second) +
          paragraph("Spike long ..... Aus cus", couplet) +
          paragraph("Spike short ..... Aus dus", second),
      {.numbering = abstract("0", level("0", "decimal", "%1.") + level("1", "bullet", "–")) +
                    num("1", "0")});
  EXPECT_EQ(read.lines,
            "1. Beak bifid ..... 2\n– Beak entire ..... Aus bus\n2. Spike long ..... Aus cus\n"
            "– Spike short ..... Aus dus\n");
  EXPECT_EQ(read.sketch,
            "1[1] Beak bifid -> 2\n1[–] Beak entire -> Aus bus\n2[2] Spike long -> Aus cus\n"
            "2[–] Spike short -> Aus dus\n");
  EXPECT_EQ(read.reading.edition.couplets.at(1).leads.at(0).place.line, 3U);
}

TEST(DocxNumbering, KnowsTheFormats) {
  auto const of = [](std::string const& format, std::string const& text) {
    return numbers(abstract("0", level("0", format, text)) + num("1", "0"),
                   std::vector<std::string>(4, "0"));
  };
  EXPECT_EQ(of("decimal", "%1)"), "1) red|2) red|3) red|4) red");
  EXPECT_EQ(of("decimalZero", "%1"), "01 red|02 red|03 red|04 red");
  EXPECT_EQ(of("lowerLetter", "(%1)"), "(a) red|(b) red|(c) red|(d) red");
  EXPECT_EQ(of("upperLetter", "%1."), "A. red|B. red|C. red|D. red");
  EXPECT_EQ(of("lowerRoman", "%1."), "i. red|ii. red|iii. red|iv. red");
  EXPECT_EQ(of("upperRoman", "%1"), "I red|II red|III red|IV red");
  EXPECT_EQ(of("ordinal", "%1"), "1st red|2nd red|3rd red|4th red");
  EXPECT_EQ(of("none", "%1"), "red|red|red|red");
  EXPECT_EQ(of("bullet", "\uF0B7"), "• red|• red|• red|• red");
  EXPECT_EQ(of("chicago", "%1"), "1 red|2 red|3 red|4 red");
}

TEST(DocxNumbering, SaysWhichFormatsItDoesNotKnow) {
  auto const read =
      read_body(paragraph("Beak bifid ..... Aus bus", numbered("1")) +
                    paragraph("– Beak entire ..... Aus cus"),
                {.numbering = abstract("0", level("0", "chicago", "%1.")) + num("1", "0")});
  EXPECT_EQ(read.findings,
            Lines{"k.docx:1:1: warning: automatic numbers of the format \"chicago\" are read as "
                  "decimal numbers [numbering-format] (compare the labels of the couplets with the "
                  "printed manuscript)"});
}

TEST(DocxNumbering, CountsLevelsUnderLevels) {
  auto const levels = level("0", "upperRoman", "%1.") + level("1", "decimal", "%1.%2") +
                      level("2", "lowerLetter", "%1.%2%3");
  EXPECT_EQ(
      numbers(abstract("0", levels) + num("1", "0"), {"0", "1", "2", "2", "1", "2", "0", "1"}),
      "I. red|I.1 red|I.1a red|I.1b red|I.2 red|I.2a red|II. red|II.1 red");
  EXPECT_EQ(numbers(abstract("0", level("0", "upperRoman", "%1.") +
                                      level("1", "decimal", "%1.%2", "<w:isLgl/>")) +
                        num("1", "0"),
                    {"0", "1"}),
            "I. red|1.1 red");
  EXPECT_EQ(numbers(abstract("0", level("0", "decimal", "%1.") +
                                      level("1", "decimal", "%2", "<w:lvlRestart w:val=\"0\"/>")) +
                        num("1", "0"),
                    {"0", "1", "1", "0", "1"}),
            "1. red|1 red|2 red|2. red|3 red");
}

TEST(DocxNumbering, FollowsTheNumberWithWhatTheLevelSays) {
  auto const of = [](std::string const& suffix) {
    return numbers(
        abstract("0", level("0", "decimal", "%1.", "<w:suff w:val=\"" + suffix + "\"/>")) +
            num("1", "0"),
        {"0"});
  };
  EXPECT_EQ(of("tab"), "1. red");
  EXPECT_EQ(of("space"), "1. red");
  EXPECT_EQ(of("nothing"), "1.red");
}

TEST(DocxNumbering, SharesCountersAmongListsUntilOneStartsAnew) {
  auto const numbering =
      abstract("0", level("0", "decimal", "%1.")) + num("1", "0") + num("2", "0") +
      num("3", "0", "<w:lvlOverride w:ilvl=\"0\"><w:startOverride w:val=\"7\"/></w:lvlOverride>") +
      num("4", "0",
          "<w:lvlOverride w:ilvl=\"0\">" + level("0", "lowerLetter", "%1)") + "</w:lvlOverride>");
  std::string body;
  for (auto const* id : {"1", "2", "3", "3", "1", "4"}) body += paragraph("red", numbered(id));
  auto const read = read_body(
      body + paragraph("1. Beak bifid ..... Aus bus") + paragraph("– Beak entire ..... Aus cus"),
      {.numbering = numbering});
  EXPECT_EQ(read.lines.substr(0, 42), "1. red\n2. red\n7. red\n8. red\n9. red\nj) red\n");
}

TEST(DocxNumbering, ComesFromStylesAndTheirAncestors) {
  std::string const styles =
      "<w:style w:type=\"paragraph\" w:default=\"1\" w:styleId=\"Normal\"/>"
      "<w:style w:type=\"paragraph\" w:styleId=\"Couplet\"><w:basedOn w:val=\"Normal\"/><w:pPr>"
      "<w:numPr><w:numId w:val=\"1\"/></w:numPr></w:pPr></w:style>"
      "<w:style w:type=\"paragraph\" w:styleId=\"Own\"><w:basedOn w:val=\"Couplet\"/></w:style>"
      "<w:style w:type=\"paragraph\" w:styleId=\"Second\"><w:basedOn w:val=\"Couplet\"/><w:pPr>"
      "<w:numPr><w:ilvl w:val=\"1\"/><w:numId w:val=\"1\"/></w:numPr></w:pPr></w:style>";
  auto const numbering =
      abstract("0", level("0", "decimal", "%1", "<w:pStyle w:val=\"Couplet\"/>") +
                        level("1", "none", "–")) +
      num("1", "0");
  auto const in = [](std::string const& style, std::string const& text,
                     std::string const& more = {}) {
    return paragraph(text, "<w:pStyle w:val=\"" + style + "\"/>" + more);
  };
  auto const read = read_body(
      in("Couplet", "Beak bifid ..... 2") + in("Second", "Beak entire ..... Aus bus") +
          in("Couplet", "not numbered", "<w:numPr><w:numId w:val=\"0\"/></w:numPr>") +
          in("Own", "Spike long ..... Aus cus") + in("Second", "Spike short ..... Aus dus"),
      {.numbering = numbering, .styles = styles});
  EXPECT_EQ(read.lines,
            "1 Beak bifid ..... 2\n– Beak entire ..... Aus bus\nnot numbered\n"
            "2 Spike long ..... Aus cus\n– Spike short ..... Aus dus\n");
}

TEST(DocxNumbering, NumbersDeletedParagraphsNot) {
  auto const read =
      read_body(paragraph("Beak bifid ..... Aus bus", numbered("1")) +
                    paragraph_of("<w:del><w:r><w:delText>gone</w:delText></w:r></w:del>",
                                 numbered("1") + "<w:rPr><w:del/></w:rPr>") +
                    paragraph("Beak entire ..... Aus cus", numbered("1")),
                {.numbering = abstract("0", level("0", "lowerLetter", "1%1")) + num("1", "0")});
  EXPECT_EQ(read.lines, "1a Beak bifid ..... Aus bus\n1b Beak entire ..... Aus cus\n");
}

TEST(DocxNumbering, TakesDamagedDefinitionsForNone) {
  // A ring of numbering and style, a numbering without levels, one that is not there.
  auto const numbering =
      "<w:abstractNum w:abstractNumId=\"0\"><w:numStyleLink w:val=\"L\"/></w:abstractNum>" +
      num("1", "0") + abstract("5", "") + num("2", "5") + num("3", "99") +
      "<w:num w:numId=\"x\"/><w:abstractNum/>";
  auto const styles =
      "<w:style w:type=\"numbering\" w:styleId=\"L\"><w:basedOn w:val=\"L\"/><w:pPr><w:numPr>"
      "<w:numId w:val=\"1\"/></w:numPr></w:pPr></w:style>";
  std::string body;
  for (auto const* id : {"1", "2", "3", "77"}) body += paragraph("red", numbered(id, "12"));
  auto const read = read_body(
      body + paragraph("1. Beak bifid ..... Aus bus") + paragraph("– Beak entire ..... Aus cus"),
      {.numbering = numbering, .styles = styles});
  EXPECT_EQ(read.lines.substr(0, 16), "red\nred\nred\nred\n");
}

TEST(DocxLayout, TurnsDepthsOfIndentationIntoBlanks) {
  auto const at = [](std::string const& text, std::string const& indent) {
    return paragraph(text, "<w:ind " + indent + "/>");
  };
  auto const lines = read_body(
      paragraph("1. Beak bifid ..... 2", "<w:ind w:left=\"360\" w:hanging=\"360\"/>") +
      at("2. Spike long ..... Aus bus", "w:start=\"0.25in\"") +
      at("– Spike short ..... Aus cus", "w:left=\"370\"") +
      at("– Beak entire ..... Aus dus", "w:left=\"0\"") + at("Note: far in", "w:left=\"4cm\""));
  EXPECT_EQ(lines.lines,
            "1. Beak bifid ..... 2\n    2. Spike long ..... Aus bus\n"
            "    – Spike short ..... Aus cus\n– Beak entire ..... Aus dus\n        Note: far in\n");
}

TEST(DocxLayout, IndentsByStyleAndNumbering) {
  auto const numbering =
      abstract("0", level("0", "decimal", "%1.",
                          "<w:pPr><w:ind w:left=\"720\" "
                          "w:hanging=\"360\"/></w:pPr>") +
                        level("1", "decimal", "%2.",
                              "<w:pPr><w:ind w:left=\"1440\" w:hanging=\"360\"/></w:pPr>")) +
      num("1", "0");
  auto const read = read_body(
      paragraph("Title") + paragraph("Beak ..... Aus bus", numbered("1", "0")) +
          paragraph("Spike ..... Aus cus", numbered("1", "1")) +
          paragraph("own ..... Aus dus", numbered("1", "1") + "<w:ind w:left=\"360\"/>") +
          paragraph("in style", "<w:pStyle w:val=\"Deep\"/>") +
          paragraph("1. Beak bifid ..... Aus bus") + paragraph("– Beak entire ..... Aus cus"),
      {.numbering = numbering,
       .styles = "<w:style w:type=\"paragraph\" w:styleId=\"Deep\"><w:pPr><w:ind "
                 "w:left=\"1080\"/></w:pPr></w:style>"});
  EXPECT_EQ(read.lines.substr(0, 101),
            "Title\n    1. Beak ..... Aus bus\n        1. Spike ..... Aus cus\n"
            "2. own ..... Aus dus\n        in style\n");
}

TEST(DocxLayout, DrawsLeadersWhereTheTabMeetsOne) {
  auto const tabs = std::string{
      "<w:ind w:left=\"567\" w:hanging=\"567\"/><w:tabs><w:tab w:val=\"left\" w:pos=\"567\"/>"
      "<w:tab w:val=\"right\" w:leader=\"dot\" w:pos=\"9072\"/></w:tabs>"};
  std::string const words =
      "Beak bifid, and the words go on for more than one line of print, so "
      "that nobody can tell from their number where the tab stands";
  auto const read = read_body(
      paragraph("1\tBeak bifid\t2", tabs) + paragraph("–\t" + words + "\tAus bus", tabs) +
      paragraph("2\tSpike long\t\tAus cus", tabs) + paragraph("–\tSpike short\tAus dus", tabs));
  EXPECT_EQ(read.lines,
            "1\tBeak bifid ..... 2\n–\t" + words +
                " ..... Aus bus\n2\tSpike long ..... Aus cus\n–\tSpike short ..... Aus dus\n")
      << read.lines;
  EXPECT_EQ(read.reading.edition.couplets.at(0).leads.at(0).destination_place.column, 14U);
}

TEST(DocxLayout, ReadsTabStopsOfStylesAndWithoutLeaders) {
  auto const styles = std::string{
      "<w:style w:type=\"paragraph\" w:styleId=\"Lead\"><w:pPr><w:tabs><w:tab w:val=\"right\" "
      "w:leader=\"underscore\" w:pos=\"9072\"/></w:tabs></w:pPr></w:style>"};
  auto const read =
      read_body(paragraph("1. Beak bifid\tAus bus", "<w:pStyle w:val=\"Lead\"/>") +
                    paragraph("– Beak entire\tAus cus",
                              "<w:pStyle w:val=\"Lead\"/><w:tabs><w:tab w:val=\"clear\" "
                              "w:pos=\"9072\"/></w:tabs>"),
                {.styles = styles});
  EXPECT_EQ(read.lines, "1. Beak bifid ..... Aus bus\n– Beak entire\tAus cus\n");
}

TEST(DocxTables, ReadsAnOrdinaryTableRowByRow) {
  auto const read =
      read_body(paragraph("Key to Aus") +
                table({cells({"No.", "Characters", "Go to"}), cells({"1", "Beak bifid, 3 mm", "2"}),
                       cells({"", "Beak entire", "Aus bus"}),
                       cells({"2", "Spike long", "Aus cus, rare form"}),
                       cells({"", "Spike short", "Aus dus"})}));
  EXPECT_EQ(read.lines,
            "Key to Aus\nNo.\tCharacters\tGo to\n1\tBeak bifid, 3 mm\t2\n\tBeak entire\tAus bus\n"
            "2\tSpike long\tAus cus, rare form\n\tSpike short\tAus dus\n");
  EXPECT_EQ(read.sketch,
            "1[1] Beak bifid, 3 mm -> 2\n1[] Beak entire -> Aus bus\n"
            "2[2] Spike long -> Aus cus (rare form)\n2[] Spike short -> Aus dus\n");
  EXPECT_EQ(read.reading.edition.couplets.at(0).leads.at(0).destination_place.line, 7U);
  EXPECT_EQ(read.reading.edition.couplets.at(0).leads.at(0).destination_place.column, 1U);
}

TEST(DocxTables, ReadsCellsThatHoldACouplet) {
  auto const read = read_body(table(
      {row({paragraph("1a") + paragraph("1b"), paragraph("Beak bifid") + paragraph("Beak entire"),
            paragraph("Aus bus") + paragraph("Aus cus")})}));
  EXPECT_EQ(read.lines, "1a\tBeak bifid\tAus bus\n1b\tBeak entire\tAus cus\n");
  EXPECT_EQ(read.sketch, "1[1a] Beak bifid -> Aus bus\n1[1b] Beak entire -> Aus cus\n");
}

TEST(DocxTables, ReadsMergedLabelsForEachRow) {
  auto const merged = [](std::string const& value, std::string const& text) {
    return "<w:tcPr><w:vMerge" + (value.empty() ? "" : " w:val=\"" + value + "\"") + "/></w:tcPr>" +
           paragraph(text);
  };
  auto const read =
      read_body(table({row({merged("restart", "1"), paragraph("Beak bifid"), paragraph("Aus bus")}),
                       row({merged("", ""), paragraph("Beak entire"), paragraph("Aus cus")})}));
  EXPECT_EQ(read.lines, "1\tBeak bifid\tAus bus\n1\tBeak entire\tAus cus\n");
}

TEST(DocxTables, TakesTablesForFramesAroundText) {
  auto const key =
      paragraph("1. Beak bifid ..... Aus bus") + paragraph("– Beak entire ..... Aus cus");
  std::string const lines = "1. Beak bifid ..... Aus bus\n– Beak entire ..... Aus cus\n";
  EXPECT_EQ(read_body(table({row({key})})).lines, lines);
  EXPECT_EQ(read_body(table({row({paragraph(""), key})})).lines, lines);
  // A table in a table.
  EXPECT_EQ(read_body(table({row({paragraph("Key to Aus") + table({row({key})})})})).lines,
            "Key to Aus\n" + lines);
  EXPECT_EQ(read_body(table({row({paragraph("a"),
                                  paragraph("b") + table({row({paragraph("c"), paragraph("d")})})}),
                             row({key})}))
                .lines,
            "a\tb\nc\td\n" + lines);
}

}  // namespace
}  // namespace keydrift::test

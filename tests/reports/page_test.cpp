#include "keydrift/reports/page.hpp"

#include <gtest/gtest.h>

namespace keydrift::reports {
namespace {

std::string plain(std::vector<Line> const& lines) {
  std::string text;
  for (auto const& line : lines) {
    for (auto const& run : line.runs) text += run.text;
    text += '\n';
  }
  return text;
}

std::string wrapped(std::string const& text, std::size_t width, std::size_t first = 0,
                    std::size_t rest = 0) {
  return plain(wrap({{text, Face::plain}}, width, first, rest, true));
}

std::string lead(std::string label, std::string text, std::string destination, std::size_t width) {
  return plain(set_lead({.label = {{std::move(label), Face::plain}},
                         .label_width = 4,
                         .text = {{std::move(text), Face::plain}},
                         .destination = {{std::move(destination), Face::plain}}},
                        width, true));
}

TEST(DisplayWidth, CountsCellsNotBytesNorCodePoints) {
  EXPECT_EQ(display_width("abc"), 3);
  EXPECT_EQ(display_width("♂ µm"), 4);
  EXPECT_EQ(display_width("e\u0301"), 1);  // a combining accent takes no cell
  EXPECT_EQ(display_width("莎草"), 4);     // wide characters take two
}

TEST(CleanText, MakesControlCharactersAndBrokenBytesVisible) {
  EXPECT_EQ(clean_text("a\x1b[31mb", true), "a\uFFFD[31mb");
  EXPECT_EQ(clean_text("a\xC3(", true), "a\uFFFD(");
  EXPECT_EQ(clean_text("a\tb\nc\r\nd", true), "a b c  d");
  EXPECT_EQ(clean_text("a\u0085b\u009Bc", true), "a b\uFFFDc");
}

TEST(CleanText, DropsCharactersThatTurnTheOrderOfWords) {
  EXPECT_EQ(clean_text("a\u202Eb\u2066c\u200Fd", true), "abcd");
}

TEST(CleanText, SpellsInAsciiWhereAskedTo) {
  EXPECT_EQ(clean_text("“3–5 mm” ± 2×, é ß ♀ ½ → Ø", false),
            "\"3-5 mm\" +/- 2x, e ss female 1/2 -> O");
  EXPECT_EQ(clean_text("莎", false), "?");
  EXPECT_EQ(clean_text("a\u0301", false), "a");
}

TEST(UpperCase, ReachesBeyondAscii) { EXPECT_EQ(upper_case("crustacés"), "CRUSTACÉS"); }

TEST(Wrap, BreaksAtBlanksWithAHangingIndent) {
  EXPECT_EQ(wrapped("claws hairy on both sides", 12, 0, 2),
            "claws hairy\n"
            "  on both\n"
            "  sides\n");
}

TEST(Wrap, SqueezesBlanksAndKeepsNoBreakSpaces) {
  EXPECT_EQ(wrapped("  a   b  ", 10), "a b\n");
  EXPECT_EQ(wrapped("aaa 5\u00a0mm", 7), "aaa\n5\u00a0mm\n");
}

TEST(Wrap, KeepsNumbersWithTheirUnitsAndInitialsWithTheirEpithets) {
  EXPECT_EQ(wrapped("legs (2–)3–4(–6) mm long", 16), "legs\n(2–)3–4(–6) mm\nlong\n");
  EXPECT_EQ(wrapped("see also O. major.", 13), "see also\nO. major.\n");
  EXPECT_EQ(wrapped("see O. Major 4 ways", 8), "see O.\nMajor 4\nways\n");
}

TEST(Wrap, BreaksAWordThatIsWiderThanTheLineBetweenClusters) {
  EXPECT_EQ(wrapped("ab e\u0301e\u0301e\u0301e\u0301", 3), "ab\ne\u0301e\u0301e\u0301\ne\u0301\n");
  EXPECT_EQ(wrapped("莎草科", 5), "莎草\n科\n");
}

TEST(Wrap, SetsAnEmptyTextAsOneEmptyLine) {
  auto const lines = wrap({}, 20, 0, 0, true);
  ASSERT_EQ(lines.size(), 1);
  EXPECT_EQ(lines[0].width, 0);
}

TEST(Wrap, KeepsFacesThroughLineBreaks) {
  auto const lines =
      wrap({{"say ", Face::plain}, {"claws hairy", Face::underlined}}, 9, 0, 0, true);
  ASSERT_EQ(lines.size(), 2);
  EXPECT_EQ(lines[0].runs.back(), (keydrift::reports::Run{"claws", Face::underlined}));
  EXPECT_EQ(lines[1].runs.back(), (keydrift::reports::Run{"hairy", Face::underlined}));
}

TEST(SetLead, RunsDotLeadersToTheDestinationOnTheRight) {
  EXPECT_EQ(lead("1a", "Claws hairy", "2", 30), "1a  Claws hairy ............ 2\n");
}

TEST(SetLead, HangsTheWordsBehindTheLabel) {
  EXPECT_EQ(lead("1a", "Claws hairy on both sides", "12", 21),
            "1a  Claws hairy on\n"
            "    both sides ... 12\n");
}

TEST(SetLead, SetsADestinationWithoutRoomOnALineOfItsOwn) {
  EXPECT_EQ(lead("1a", "Claws hairy on top", "Orla major", 22),
            "1a  Claws hairy on top\n"
            "    ....... Orla major\n");
}

TEST(SetLead, BreaksADestinationWiderThanTheColumn) {
  EXPECT_EQ(lead("1a", "Claws hairy", "Orla major Smith, p. 12", 20),
            "1a  Claws hairy\n"
            "      Orla major\n"
            "      Smith, p. 12\n");
}

TEST(SetLead, DrawsNoLeadersWhereNothingIsPrinted) {
  EXPECT_EQ(lead("1a", "Claws hairy", "", 30), "1a  Claws hairy\n");
}

TEST(SetLead, KeepsAWideLabelOnTheLine) {
  EXPECT_EQ(lead("1a (17)", "Claws hairy", "2", 30), "1a (17) Claws hairy ........ 2\n");
}

TEST(Page, UsesNoEscapesWithoutColourAndThreeFacesWithIt) {
  Page without{{.width = 40, .colour = false, .unicode = true}};
  without.paragraph(Words{{"a", Face::bold}, {" b", Face::dim}, {" c", Face::underlined}});
  EXPECT_EQ(without.take(), "a b c\n");
  Page with{{.width = 40, .colour = true, .unicode = true}};
  with.paragraph(Words{{"a", Face::bold}, {" b", Face::dim}, {" c", Face::underlined}});
  EXPECT_EQ(with.take(), "\x1b[1ma\x1b[0m \x1b[2mb\x1b[0m \x1b[4mc\x1b[0m\n");
}

TEST(Page, SetsColumnsWithWhiteBetweenAndTheMarkInTheMargin) {
  Page page{{.width = 44, .colour = false, .unicode = true}};
  EXPECT_EQ(page.column_width(), 18);
  auto const column = [&](std::string const& text) {
    return wrap({{text, Face::plain}}, page.column_width(), 0, 0, true);
  };
  page.columns("§", column("left words that are wrapped"), column("right"));
  page.columns("", {}, column("alone"));
  EXPECT_EQ(page.take(),
            "§   left words that       right\n"
            "    are wrapped\n"
            "                          alone\n");
}

TEST(Page, NeverSetsTwoBlankLinesNorBlanksAtALinesEnd) {
  Page page{{}};
  page.blank();
  page.paragraph("a");
  page.blank();
  page.blank();
  page.item("b", "", 2, 4);
  page.blank();
  page.heading("c");
  auto const text = page.take();
  EXPECT_EQ(text.find("\n\n\n"), std::string::npos);
  EXPECT_EQ(text.find(" \n"), std::string::npos);
  EXPECT_TRUE(text.starts_with("a\n\n  b\n\nC\n──"));
}

}  // namespace
}  // namespace keydrift::reports

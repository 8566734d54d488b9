#include "keydrift/formats/xml_document.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "finding_text.hpp"
#include "read_damaged.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using Lines = std::vector<std::string>;

Loaded<xml::Document> parse(std::string_view bytes, ReadLimits const& limits = {},
                            xml::Doctype doctype = xml::Doctype::refused) {
  return xml::parse({.name = "k.xml", .bytes = bytes}, limits, doctype);
}

std::string first_finding(std::string_view bytes, ReadLimits const& limits = {}) {
  auto const loaded = parse(bytes, limits);
  return loaded.findings.empty() ? "" : test::one_line(loaded.findings.front());
}

std::string malformed(std::string_view place, std::string_view what) {
  return "k.xml:" + std::string{place} +
         ": error: this is not well-formed XML: " + std::string{what} +
         " [malformed-xml] (mend it here, or a little before this place)";
}

TEST(XmlDocument, NodesKnowTheirPlaces) {
  auto const loaded = parse(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\r\n<a>\r\n  <!-- é --><b x='1'>ü&amp;<i>w</i> z"
      "</b><![CDATA[<c>]]>\n</a>\n");
  ASSERT_TRUE(loaded) << one_line_each(loaded.findings).front();
  EXPECT_EQ(one_line_each(loaded.findings), Lines{});
  auto const& document = *loaded.value;
  auto const b = document.root().child("b");
  EXPECT_EQ(document.place(b).line, 3U);
  EXPECT_EQ(document.place(b).column, 13U);
  auto const words = b.first_child();
  EXPECT_STREQ(words.value(), "ü&");
  EXPECT_EQ(document.place(words).column, 22U);
  auto const z = b.last_child();
  EXPECT_STREQ(z.value(), " z");
  EXPECT_EQ(document.place(z).column, 36U);
  EXPECT_EQ(document.text().substr(document.offset(b), 2), "<b");
  EXPECT_EQ(document.text().substr(document.offset(z), 2), " z");
  auto const data = b.next_sibling();
  EXPECT_STREQ(data.value(), "<c>");
  EXPECT_EQ(document.place(data).line, 3U);
}

TEST(XmlDocument, PlacesInVeryLongLines) {
  std::string bytes = "<a>";
  for (int i = 0; i < 5000; ++i) bytes += "<é/>";
  bytes += "<last/></a>";
  auto const loaded = parse(bytes);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->place(loaded.value->root().last_child()).line, 1U);
  EXPECT_EQ(loaded.value->place(loaded.value->root().last_child()).column, 3U + 4 * 5000 + 1);
  // Places at and about the ends of the index's blocks.
  std::string text(4096, 'x');
  text[1023] = '\n';
  text[2047] = '\n';
  xml::PlaceIndex const places{text};
  EXPECT_EQ(places.at(1023, 1023).column, 1024U);
  EXPECT_EQ(places.at(1024, 1024).line, 2U);
  EXPECT_EQ(places.at(1024, 1024).column, 1U);
  EXPECT_EQ(places.at(4096, 4096).line, 3U);
  EXPECT_EQ(places.at(4096, 4096).column, 2049U);
}

TEST(XmlDocument, SaysWhatIsNotWellFormed) {
  EXPECT_EQ(first_finding("<a>\n  <b>x</c>\n</a>"),
            malformed("2:7", "the element \"b\" is ended by \"</c>\""));
  EXPECT_EQ(first_finding("<a>\n  <b>x"),
            malformed("2:7", "the file ends within the element \"b\""));
  EXPECT_EQ(first_finding("<a/>\n<b/>"),
            malformed("2:1", "a second outermost element, \"b\", follows the first"));
  EXPECT_EQ(first_finding("<a/> tail"),
            malformed("1:6", "text stands outside the outermost element"));
  EXPECT_EQ(first_finding("<a>1 < 2</a>"),
            malformed("1:6", "\"<\" begins no tag; as a sign it is written \"&lt;\""));
  EXPECT_EQ(first_finding("<a>Smith & Roe</a>"),
            malformed("1:10", "\"&\" begins no reference such as \"&amp;\""));
  EXPECT_EQ(first_finding("<a>&#0;</a>"), malformed("1:4", "\"&#0;\" names no character"));
  EXPECT_EQ(first_finding("<a>&#xD800;</a>"), malformed("1:4", "\"&#xD800;\" names no character"));
  EXPECT_EQ(first_finding("<a>&#1114112;</a>"),
            malformed("1:4", "\"&#1114112;\" names no character"));
  EXPECT_EQ(first_finding("<a b=1/>"),
            malformed("1:4", "the attribute \"b\" has no value in quotation marks"));
  EXPECT_EQ(first_finding("<a b='1/>"),
            malformed("1:4", "the value of the attribute \"b\" has no end, or holds \"<\""));
  EXPECT_EQ(first_finding("<a b='1' b='2'/>"),
            malformed("1:1", "the attribute \"b\" stands twice in \"<a\""));
  EXPECT_EQ(first_finding("<a b='1'c='2'/>"), malformed("1:9", "the tag of \"a\" is damaged"));
  EXPECT_EQ(first_finding("<a"), malformed("1:1", "the tag \"<a\" has no \">\""));
  EXPECT_EQ(first_finding("<a><!-- x</a>"), malformed("1:4", "a comment (\"<!--\") has no end"));
  EXPECT_EQ(first_finding("<a><![CDATA[x</a>"), malformed("1:4", "a CDATA section has no end"));
  EXPECT_EQ(first_finding("<?xml version='1.0'?>"), malformed("1:1", "there is no element"));
  EXPECT_EQ(first_finding("</a>"), malformed("1:1", "the end tag \"</a>\" ends no element"));
  EXPECT_EQ(first_finding("<a></a"), malformed("1:4", "the end tag \"</a\" has no \">\""));
  auto const loaded = parse("<a>\n<b>\n</a>");
  ASSERT_EQ(loaded.findings.size(), 1U);
  ASSERT_EQ(loaded.findings[0].related.size(), 1U);
  EXPECT_EQ(loaded.findings[0].related[0].message, "it begins here");
  EXPECT_EQ(loaded.findings[0].related[0].place.line, 2U);
}

constexpr std::string_view kBomb =
    "<!DOCTYPE a [<!ENTITY b \"xxxxxxxx\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;\">]>\n<a>&c;</a>";
constexpr std::string_view kOutside =
    "<!DOCTYPE a PUBLIC \"-//X//Y\" \"a.dtd\">\n<a>1&ndash;2, &nosuch; &b; </a>";

TEST(XmlDocument, RefusesDeclarationsOfEntities) {
  std::string const message =
      "k.xml:1:1: error: the document type declaration holds declarations of its own (entities may "
      "be among them), which are not read [xml-entities] (take it out, from \"<!DOCTYPE\" to "
      "\"]>\", and write the characters that entities stood for)";
  EXPECT_EQ(first_finding(kBomb), message);
  EXPECT_EQ(first_finding("<!DOCTYPE a SYSTEM 'a.dtd' [<!ENTITY b SYSTEM 'file:///x'>]><a>&b;</a>"),
            message);
  auto const passed_over = parse(kBomb, {}, xml::Doctype::external_passed_over);
  EXPECT_FALSE(passed_over);
  EXPECT_EQ(one_line_each(passed_over.findings), Lines{message});
}

TEST(XmlDocument, NeverLooksUpADtd) {
  EXPECT_EQ(first_finding(kOutside),
            "k.xml:1:1: error: the file has a document type declaration, which this form must not "
            "have [doctype] (take it out, from \"<!DOCTYPE\" to \">\")");
  auto const loaded = parse(kOutside, {}, xml::Doctype::external_passed_over);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(
      one_line_each(loaded.findings),
      (Lines{"k.xml:1:1: information: the document type declaration names \"a.dtd\" outside "
             "the file; it was not looked up [external-dtd]",
             "k.xml:2:15: warning: nothing in the file says what \"&nosuch;\" stands for, and "
             "so it is at one further place; the references stay as they are printed "
             "[unknown-entity] (write the character itself, or its number as in "
             "\"&#8211;\")"}));
  EXPECT_STREQ(loaded.value->root().first_child().value(), "1&ndash;2, &nosuch; &b; ");
  // Names that HTML gives characters are known; xml::read_flow() puts the characters.
  EXPECT_EQ(first_finding("<a>&nbsp;</a>"),
            "k.xml:1:4: error: nothing in the file says what \"&nbsp;\" stands for "
            "[unknown-entity] (write the character itself, or its number as in \"&#8211;\")");
}

TEST(XmlDocument, StopsAtItsLimits) {
  std::string deep;
  for (int i = 0; i < 1'000'000; ++i) deep += "<a>";
  EXPECT_EQ(first_finding(deep),
            "k.xml:1:769: error: elements are nested more than 256 deep [xml-too-deep] (check that "
            "this is the right file; --limit depth=512 takes in more)");
  EXPECT_EQ(first_finding("<a><b/><b/>\n<b c='1'/></a>", {.xml_nodes = 4}),
            "k.xml:2:1: error: the file has more than 4 elements, attributes and stretches of text "
            "[xml-too-large] (cut the key out of the file; --limit nodes=8 takes in more)");
  auto const huge = "<a b=\"" + std::string(std::size_t{4} << 20, 'x') + "\"/>";
  auto const loaded = parse(huge);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(std::string_view{loaded.value->root().attribute("b").value()}.size(),
            std::size_t{4} << 20);
  EXPECT_EQ(
      first_finding("<a/>", {.bytes = 3}),
      "k.xml:1:1: error: the file has 4 bytes, more than the limit of 3 [too-large] (split the "
      "file; if it is meant to be this large, --limit size=4 takes it in)");
}

TEST(XmlDocument, TheDeclaredEncodingCounts) {
  auto const latin = parse("<?xml version='1.0' encoding='ISO-8859-1'?><a>\xE9</a>");
  ASSERT_TRUE(latin);
  EXPECT_STREQ(latin.value->root().first_child().value(), "é");
  EXPECT_EQ(one_line_each(latin.findings),
            Lines{"k.xml:1:1: information: the file is not UTF-8; it was read as Windows-1252, as "
                  "it declares "
                  "[encoding] (if any character looks wrong, save it as UTF-8, or tell what it is "
                  "in with --encoding NAME)"});
  auto const wrong = parse("<?xml version='1.0' encoding='ISO-8859-1'?><a>é</a>");
  ASSERT_TRUE(wrong);
  EXPECT_STREQ(wrong.value->root().first_child().value(), "é");
  EXPECT_EQ(
      one_line_each(wrong.findings),
      Lines{"k.xml:1:31: warning: the XML declaration says \"ISO-8859-1\", but the bytes are "
            "UTF-8 and were read as that [encoding-conflict] (mend the declaration, and check "
            "the letters with accents)"});
  EXPECT_EQ(first_finding("<?xml version='1.0' encoding='x-none'?><a>\xE9</a>"),
            "k.xml:1:1: information: the file is not UTF-8; it was read as Windows-1252 [encoding] "
            "(if any character looks wrong, save it as UTF-8, or tell what it is in with "
            "--encoding NAME)");
  auto const other = parse("<?xml version='1.0' encoding='x-none'?><a>\xE9</a>");
  EXPECT_FALSE(other);
  ASSERT_EQ(other.findings.size(), 2U);
  EXPECT_EQ(test::one_line(other.findings[1]),
            "k.xml:1:31: error: the XML declaration names the encoding \"x-none\", which is not "
            "read [unsupported-encoding] (save the file as UTF-8, with encoding=\"UTF-8\" in its "
            "first line, or tell what it is in with --encoding NAME)");
  EXPECT_TRUE(parse("<?xml version='1.0' encoding='x-none'?><a>plain</a>"));
  std::string wide = "\xFF\xFE";
  for (char const c : "<?xml version='1.0' encoding='UTF-16'?><a>x</a>"sv) {
    wide += c;
    wide += '\0';
  }
  EXPECT_TRUE(parse(wide));
  EXPECT_FALSE(parse("<a>\0</a>"sv));
}

TEST(XmlDocument, DamageIsFoundOrHarmless) {
  constexpr std::string_view kSmall =
      "<?xml version='1.0' encoding='UTF-8'?><a b='1'>x<!-- y --><c>&#8211;&amp;é</c><?p q?>"
      "<![CDATA[z]]></a>";
  test::read_damaged(kSmall, [](std::string const& bytes) {
    auto loaded = parse(bytes);
    EXPECT_TRUE(!loaded || loaded.value->root());
    return loaded;
  });
}

}  // namespace
}  // namespace keydrift

// Titles of web pages: those that number the couplets below, heads and captions of tables; and
// characters by their numbers.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line;
using test::sketch;

EditionReading read_titled(std::string_view text) {
  auto loaded = read_edition({.name = "key.html", .bytes = text});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return std::move(*loaded.value);
}

std::string titled_couplet(std::string const& title, std::string const& one, std::string const& end,
                           std::string const& other, std::string const& other_end) {
  return "<div><h3>" + title + "</h3>\n<ul>\n<li>" + one + "<br />\n" + end + "</li>\n<li>" +
         other + "<br />\n" + other_end +
         "</li>\n</ul>\n<p><a href=\"#top\">Top of page</a></p>\n" + "</div>\n";
}

std::string const kTitledCouplets =
    "<html><body><h1>Key to Aus</h1>\n" +
    titled_couplet("Couplet 1", "Wings clear", "<a>Couplet 2</a>", "Wings dark",
                   "<a>Couplet 3</a>") +
    titled_couplet("Couplet 2 <span>[<a>back to 1</a>]</span>", "Legs pale",
                   "<a><i>Aus cus</i></a>", "Legs dark", "<a><i>Aus dus</i></a> (on mango)") +
    titled_couplet("Couplet 3 <span>[<a>back to 1</a>]</span>", "Eyes in 2 groups",
                   "<a><i>Aus eus</i></a> or <a><i>Aus fus</i></a>", "Eyes absent",
                   "<a>refer to specialist</a>");

TEST(HypertextTitles, NumberTheLeadsOfTheListsBelow) {
  auto const reading = read_titled(kTitledCouplets +
                                   "<h2>Records</h2>\n<table>\n<tr><td><i>Aus cus</i></td><td>"
                                   "lime</td><td>204</td></tr>\n<tr><td><i>Aus dus</i></td>"
                                   "<td>fig</td><td>31</td></tr></table>\n</body></html>");
  EXPECT_EQ(sketch(reading.edition),
            "1[] Wings clear -> 2\n1[] Wings dark -> 3\n"
            "2[] Legs pale -> Aus cus\n2[] Legs dark -> Aus dus (on mango)\n"
            "3[] Eyes in 2 groups -> Aus eus + Aus fus\n3[] Eyes absent -> ?refer to specialist\n");
  // What the title says besides is kept.
  bool kept = false;
  for (auto const& note : reading.edition.notes) {
    kept = kept || note.text.find("[back to 1]") != std::string::npos;
  }
  EXPECT_TRUE(kept);
  EXPECT_EQ(reading.edition.couplets.at(2).leads.at(1).destination_printed, "refer to specialist");
}

TEST(HypertextTitles, OfStepsThatLeadNowhereAreTitles) {
  EXPECT_EQ(
      sketch(read_titled(
                 "<h1>Key to Aus</h1>" +
                 titled_couplet("Step 1", "Take a tray", "of white tin", "Fill it", "to the brim") +
                 titled_couplet("Step 2", "Wait", "for an hour", "Sort", "what moves") +
                 titled_couplet("Step 3", "Look", "at the wings", "Note", "all of them") +
                 "<p>1. Wings clear ..... <i>Aus bus</i></p><p>1. Wings dark ..... 2</p>"
                 "<p>2. Legs pale ..... <i>Aus cus</i></p>"
                 "<p>2. Legs dark ..... <i>Aus dus</i></p>")
                 .edition),
      "1[1] Wings clear -> Aus bus\n1[1] Wings dark -> 2\n"
      "2[2] Legs pale -> Aus cus\n2[2] Legs dark -> Aus dus\n");
}

std::string cell_row(std::string const& label, std::string const& words, std::string const& end) {
  return "<tr><th>" + label + "</th><td>" + words + "</td><td>" + end + "</td></tr>";
}

// Two couplets, whose first lead ends so.
std::string table(std::string const& caption, std::string const& heads, std::string const& first,
                  std::string const& genus) {
  return "<table>" + caption + "<thead><tr>" + heads + "</tr></thead><tbody>" +
         cell_row("1", "Wings clear", first) + cell_row("1", "Wings dark", "2") +
         cell_row("2", "Legs pale", "<em>" + genus + "</em>") +
         cell_row("2", "Legs dark", "<em>" + genus + "s</em>") + "</tbody></table>\n";
}

TEST(HypertextTitles, HeadsAndCaptionsOfTablesAreNoTitlesOfKeys) {
  std::string const heads = "<th>Step</th><th>Character</th><th>Result</th>";
  auto const reading = read_titled(
      "<h2>Key to genera</h2><p>Start here.</p>" +
      table("<caption>Flies of the isles</caption>", heads, "<em>Aus</em> – see key to species",
            "<em>Busella</em>") +
      "<h2>Key to species of <em>Aus</em> (marsh flies)</h2><p>Worn ones turn white.</p>" +
      table("<caption>Marsh flies</caption>", heads, "<em>Aus bus</em>", "Aus cu"));
  ASSERT_EQ(reading.edition.parts.size(), 2U);
  EXPECT_EQ(reading.edition.parts[0].title, "Key to genera");
  EXPECT_EQ(reading.edition.parts[1].title, "Key to species of Aus (marsh flies)");
  EXPECT_EQ(sketch(reading.edition),
            "1[1] Wings clear -> key: Key to species of Aus (marsh flies) (Aus)\n"
            "1[1] Wings dark -> 2\n2[2] Legs pale -> Busella\n2[2] Legs dark -> Busellas\n"
            "1[1] Wings clear -> Aus bus\n1[1] Wings dark -> 2\n"
            "2[2] Legs pale -> Aus cu\n2[2] Legs dark -> Aus cus\n");
}

TEST(HypertextTitles, ACaptionIsTheTitleWhereNoOtherNamesTheKey) {
  auto const reading = read_titled(
      "<h2>Flies</h2>" + table("<caption>Key to Aus</caption>", "", "<em>Aus bus</em>", "Aus cu"));
  ASSERT_EQ(reading.edition.parts.size(), 1U);
  EXPECT_EQ(reading.edition.parts[0].title, "Key to Aus");
}

TEST(HypertextTitles, LeadsInHeadCellsStayLeads) {
  EXPECT_EQ(sketch(read_titled("<h2>Key to Aus</h2><table>"
                               "<tr><th>1</th><th>Wings clear</th><th>2</th></tr>"
                               "<tr><th>1</th><th>Wings dark</th><th>Aus bus</th></tr>"
                               "<tr><th>2</th><th>Legs pale</th><th>Aus cus</th></tr>"
                               "<tr><th>2</th><th>Legs dark</th><th>Aus dus</th></tr></table>")
                       .edition),
            "1[1] Wings clear -> 2\n1[1] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[2] Legs dark -> Aus dus\n");
}

TEST(HypertextTitles, NumbersOfControlsAreBytesOfWindows1252) {
  EXPECT_EQ(sketch(read_titled("<p>1. Wings 3&#150;4 mm ..... <i>Aus bus</i></p>"
                               "<p>1. Wings 5&#x96;6 mm &#129; ..... <i>Aus cus</i></p>")
                       .edition),
            "1[1] Wings 3–4 mm -> Aus bus\n1[1] Wings 5–6 mm &#129; -> Aus cus\n");
}

}  // namespace
}  // namespace keydrift

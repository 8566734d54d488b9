// Pages whose source was wrapped at a width, and those whose line feeds part lines.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line;

std::string read(std::string_view page) {
  auto const loaded = read_edition({.name = "key.html", .bytes = page});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  return test::sketch(loaded.value->edition);
}

// A paragraph as word processors write it: its source is broken wherever the width ends, within
// tags as well.
std::string paragraph(std::string_view label, std::string_view words, std::string_view end) {
  return "\n<p class=Lead\nstyle='margin-left:1.0cm;text-indent:-1.0cm'><span\nlang=EN>" +
         std::string{label} + "&nbsp;&nbsp;&nbsp;&nbsp;&nbsp;\n" + std::string{words} +
         "........... " + std::string{end} + "</span></p>\n";
}

std::string const kWanted =
    "1[1] Wings clear, and the veins in them pale as far as their ends -> 2\n"
    "1[–] Wings dark, and the veins in them dark but for their ends -> Ausella busa\n"
    "2[2] Legs pale, and the feet of the first pair of them wide -> Ausella cusa\n"
    "2[–] Legs dark, and the feet of the first pair of them narrow -> Ausella dusa\n";

TEST(HypertextWrapping, BlanksBehindALabelMayEndALineOfTheSource) {
  EXPECT_EQ(read("<html><head><title>Key to Ausella</title></head><body>\n" +
                 paragraph("1.", "Wings clear, and the veins\nin them pale as far\nas their ends",
                           "<b>2</b>") +
                 paragraph("–", "Wings dark, and the veins\nin them dark but\nfor their ends",
                           "<b><i>Ausella\nbusa</i></b>") +
                 paragraph("2.", "Legs pale, and the feet of\nthe first pair\nof them wide",
                           "<b><i>Ausella\ncusa</i></b>") +
                 paragraph("–", "Legs dark, and the feet of\nthe first pair\nof them narrow",
                           "<b><i>Ausella\ndusa</i></b>") +
                 "</body></html>\n"),
            kWanted);
}

// Some tags are long; nothing else was wrapped.
TEST(HypertextWrapping, LinesStayLinesBesideAFewLongTags) {
  EXPECT_EQ(read("<html><head><title>Key to Ausella</title></head><body\nbgcolor=white>\n"
                 "<p><a\nhref=\"index.htm\">Home</a></p>\n<p><a\nhref=\"keys.htm\">Keys</a></p>\n"
                 "<p>Beetles</p>\n<p>Moths</p>\n<p>Flies</p>\n<p>Bees</p>\n<p>Bugs</p>\n"
                 "<p>1. Wings clear, and the veins in them pale\n   as far as their ends ..... 2\n"
                 "– Wings dark, and the veins in them dark\n   but for their ends ..... <i>Ausella "
                 "busa</i>\n2. Legs pale, and the feet of the first pair\n   of them wide ..... "
                 "<i>Ausella cusa</i>\n– Legs dark, and the feet of the first pair\n   of them "
                 "narrow ..... <i>Ausella dusa</i>\n\n\nThe feet\nare seen\nfrom above.\n"
                 "The wings\nare best\nseen in\na living\nbeetle.</p>\n</body></html>\n"),
            kWanted);
}

}  // namespace
}  // namespace keydrift

// Pages whose source was wrapped at a width, and those whose line feeds part lines.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch_page;

// A paragraph as word processors write it: its source is broken wherever the width ends, within
// tags as well.
std::string paragraph(std::string_view label, std::string_view words, std::string_view end) {
  return "\n<p class=Lead\nstyle='margin-left:1.0cm;text-indent:-1.0cm'><span\nlang=EN>" +
         std::string{label} + "&nbsp;&nbsp;&nbsp;&nbsp;&nbsp;\n" + std::string{words} +
         "........... " + std::string{end} + "</span></p>\n";
}

std::string const kWantedUnwrapped =
    "1[1] Wings clear, and the veins in them pale as far as their ends -> 2\n"
    "1[–] Wings dark, and the veins in them dark but for their ends -> Ausella busa\n"
    "2[2] Legs pale, and the feet of the first pair of them wide -> Ausella cusa\n"
    "2[–] Legs dark, and the feet of the first pair of them narrow -> Ausella dusa\n";

TEST(HypertextWrapping, BlanksBehindALabelMayEndALineOfTheSource) {
  EXPECT_EQ(
      sketch_page("<html><head><title>Key to Ausella</title></head><body>\n" +
                  paragraph("1.", "Wings clear, and the veins\nin them pale as far\nas their ends",
                            "<b>2</b>") +
                  paragraph("–", "Wings dark, and the veins\nin them dark but\nfor their ends",
                            "<b><i>Ausella\nbusa</i></b>") +
                  paragraph("2.", "Legs pale, and the feet of\nthe first pair\nof them wide",
                            "<b><i>Ausella\ncusa</i></b>") +
                  paragraph("–", "Legs dark, and the feet of\nthe first pair\nof them narrow",
                            "<b><i>Ausella\ndusa</i></b>") +
                  "</body></html>\n"),
      kWantedUnwrapped);
}

// Some tags are long; nothing else was wrapped.
TEST(HypertextWrapping, LinesStayLinesBesideAFewLongTags) {
  EXPECT_EQ(sketch_page(
                "<html><head><title>Key to Ausella</title></head><body\nbgcolor=white>\n"
                "<p><a\nhref=\"index.htm\">Home</a></p>\n<p><a\nhref=\"keys.htm\">Keys</a></p>\n"
                "<p>Beetles</p>\n<p>Moths</p>\n<p>Flies</p>\n<p>Bees</p>\n<p>Bugs</p>\n"
                "<p>1. Wings clear, and the veins in them pale\n   as far as their ends ..... 2\n"
                "– Wings dark, and the veins in them dark\n   but for their ends ..... <i>Ausella "
                "busa</i>\n2. Legs pale, and the feet of the first pair\n   of them wide ..... "
                "<i>Ausella cusa</i>\n– Legs dark, and the feet of the first pair\n   of them "
                "narrow ..... <i>Ausella dusa</i>\n\n\nThe feet\nare seen\nfrom above.\n"
                "The wings\nare best\nseen in\na living\nbeetle.</p>\n</body></html>\n"),
            kWantedUnwrapped);
}

// Breaks the text at blanks, so that no line is longer than a page's source is wide.
std::string broken_at_width(std::string text) {
  constexpr std::size_t kWidth = 80;
  std::size_t line = 0;
  std::size_t blank = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == ' ') blank = at;
    if (at - line < kWidth || blank <= line) continue;
    text[blank] = '\n';
    line = blank + 1;
  }
  return text;
}

// A lead whose tags are long, and its words.
std::string styled_lead(std::string const& label, std::string const& words,
                        std::string const& end) {
  return "<p class=Lead style='margin-left:36.0pt;text-indent:-36.0pt'><span lang=EN>" + label +
         "&nbsp;&nbsp;&nbsp;&nbsp;&nbsp;&nbsp;\n" + broken_at_width(words + "........... " + end) +
         "</span></p>\n\n";
}

TEST(HypertextWrapping, WordsMayBeBrokenWhereTagsAreNot) {
  std::string const clear =
      "Wings clear, with veins that are pale to their ends, and with a row of hairs along the "
      "front of each of them that is hardly seen where it is worn away in those that have flown "
      "for weeks, as most that are caught in late summer have done";
  std::string const dark =
      "Wings dark, with veins that are dark but for their ends, and without any row of hairs "
      "along the front, though a few may stand at the base of the wing, which is told from the "
      "row by their length and by the sockets in which they are set";
  std::string const wide =
      "Legs pale, and the feet of the first pair of them wide, as wide as the shin that bears "
      "them or still wider, at least where they are seen from above and are not turned";
  std::string const narrow =
      "Legs dark, and the feet of the first pair of them narrow, hardly half as wide as the shin "
      "that bears them, from wherever they are seen";
  EXPECT_EQ(
      sketch_page("<html><head><title>Key to Ausella</title></head><body>\n" +
                  styled_lead("1", clear, "2") +
                  styled_lead("–", dark, "<b><i>Ausella busa</i></b>") +
                  styled_lead("2", wide, "<b><i>Ausella cusa</i></b>") +
                  styled_lead("–", narrow, "<b><i>Ausella dusa</i></b>") + "</body></html>\n"),
      "1[1] " + clear + " -> 2\n1[–] " + dark + " -> Ausella busa\n2[2] " + wide +
          " -> Ausella cusa\n2[–] " + narrow + " -> Ausella dusa\n");
}

// Leads of one line each, whose leaders all come to the same width.
TEST(HypertextWrapping, LeadersMayComeToOneWidthWhereLinesAreLeads) {
  std::string text = "<title>Key to Ausella</title>\n<p><b>Key</b></p>\n<div>\n";
  std::string wanted;
  for (int couplet = 1; couplet <= 8; ++couplet) {
    auto const number = std::to_string(couplet);
    auto const name = std::string{"Ausella bus"} + static_cast<char>('a' + couplet);
    auto const other = std::string{"Ausella cus"} + static_cast<char>('a' + couplet);
    auto const next = couplet < 8 ? std::to_string(couplet + 1) : other;
    auto const line = [](std::string const& words, std::string const& end) {
      return words + std::string(66 - words.size() - end.size(), '.') + end + "\n";
    };
    text += line(number + " Wings of form " + number + " ", name) +
            line("- Wings not of form " + number + " ", next);
    wanted += number + "[" + number + "] Wings of form " + number + " -> " + name + "\n" + number +
              "[-] Wings not of form " + number + " -> " + next + "\n";
  }
  EXPECT_EQ(sketch_page(text + "</div>\n"), wanted);
}

}  // namespace
}  // namespace keydrift

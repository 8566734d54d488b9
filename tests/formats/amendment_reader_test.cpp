// What a piece holds besides its instructions, and that nothing of it is lost.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "amendment_support.hpp"
#include "docx_support.hpp"
#include "keydrift/formats/amendment_reader.hpp"
#include "keydrift/formats/printed_key.hpp"

namespace keydrift::test {
namespace {

constexpr std::string_view kPiece =
    "Title: Additions to the key to Aus\n"
    "Edition: 2003\n"
    "Amends: 1998\n"
    "\n"
    "The species of the upper valley were overlooked.\n"
    "\n"
    "Insert after couplet 7:\n"
    "\n"
    "7a (7)  Wings pale, with a row of\n"
    "        dark spots ..... 8\n"
    "–       Wings dark ..... Aus dus Smith\n"
    "\n"
    "Errata\n"
    "p. 12, couplet 3, line 2: for ‘pale’ read ‘dark’\n"
    "Couplet 9:\n"
    "for 10 read 11\n"
    "\n"
    "We thank the keeper of the collection.\n";

TEST(AmendmentReader, KeepsFrontMatterCoupletsInstructionsAndText) {
  auto const loaded = read_amendment({.name = "piece.txt", .bytes = kPiece});
  ASSERT_TRUE(loaded);
  auto const& amendment = *loaded.value;
  EXPECT_EQ(amendment.piece.front.title, "Additions to the key to Aus");
  EXPECT_EQ(amendment.piece.front.edition, "2003");
  EXPECT_EQ(in_short(amendment),
            "insert after 7: 7a\n"
            "change 3 line 2: {pale} {dark}\n"
            "change 9: {10} {11}\n");
  ASSERT_EQ(amendment.kept.size(), 3U);
  EXPECT_EQ(amendment.kept[0].text, "The species of the upper valley were overlooked.");
  EXPECT_EQ(amendment.kept[1].text, "Errata");
  EXPECT_EQ(amendment.kept[2].text, "We thank the keeper of the collection.");
  EXPECT_EQ(amendment.piece.couplets[0].leads[0].text, "Wings pale, with a row of dark spots");
  EXPECT_EQ(amendment.piece.couplets[0].leads[0].destination, Destination{Unresolved{"8"}});
  EXPECT_EQ(amendment.piece.couplets[0].back_references[0].label, "7");
  EXPECT_EQ(amendment.piece.taxa[0].name, "Aus dus");
  EXPECT_EQ(amendment.instructions[2].place.line, 16U);
  ASSERT_EQ(loaded.findings.size(), 1U);
  EXPECT_EQ(to_text(loaded.findings[0]),
            "piece.txt:5:1: information: this is neither couplet nor instruction; nothing was done "
            "with it [kept-text]\n"
            "  The species of the upper valley were overlooked.\n"
            "  piece.txt:13:1: nothing was done with this either\n"
            "  piece.txt:18:1: nothing was done with this either\n");
}

// Every word of the piece stands in a place that the amendment names.
TEST(AmendmentReader, AccountsForEveryLine) {
  auto const loaded = read_amendment({.name = "piece.txt", .bytes = kPiece});
  ASSERT_TRUE(loaded);
  auto const& amendment = *loaded.value;
  std::vector<Place> places;
  for (auto const& one : amendment.instructions) places.push_back(one.place);
  for (auto const& one : amendment.kept) places.push_back(one.place);
  for (auto const& couplet : amendment.piece.couplets) {
    for (auto const& lead : couplet.leads) places.push_back(lead.place);
  }
  std::size_t begin = kPiece.find("The species");
  while (begin < kPiece.size()) {
    auto const end = kPiece.find('\n', begin);
    auto const line = kPiece.substr(begin, end - begin);
    auto const words = begin + line.find_first_not_of(' ');
    bool const heading = line == "Couplet 9:";  // told by the instruction below it
    if (!line.empty() && !heading) {
      EXPECT_TRUE(std::any_of(places.begin(), places.end(), [&](Place const& place) {
        return place.begin <= words && end <= place.end;
      })) << line;
    }
    begin = end + 1;
  }
}

TEST(AmendmentReader, SaysWhatSeemsToAskForAChangeAndIsNotUnderstood) {
  auto const loaded = read_amendment({.name = "piece.txt",
                                      .bytes = "Delete couplet 9.\n\nThe leads of ‘pale’ and "
                                               "‘dark’ of couplet 4 are to be replaced, both of "
                                               "them, in the obvious manner.\n"});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(in_short(*loaded.value).substr(0, 9), "remove 9\n");
}

TEST(AmendmentReader, WantsCoupletsBelowAnInstructionThatSpeaksOfThem) {
  EXPECT_EQ(amendment_in_short("Replace couplet 12 by:\nDelete couplet 3.\n"),
            "remove 3\ninstruction-without-couplets\n");
}

TEST(AmendmentReader, RefusesTextThatIsNoAmendment) {
  auto const loaded = read_amendment({.name = "letter.txt", .bytes = "\nDear colleagues,\n"});
  EXPECT_FALSE(loaded);
  ASSERT_EQ(loaded.findings.size(), 1U);
  EXPECT_EQ(to_text(loaded.findings[0]),
            "letter.txt:2:1: error: neither a couplet nor an instruction was found "
            "[no-amendment]\n"
            "  Dear colleagues,\n"
            "  write couplets with their numbers, or lines such as \"Delete couplet 9\" and "
            "\"Couplet 8b: for 9 read 10\"\n");
}

TEST(AmendmentReader, KeepsItsLimits) {
  ReadLimits limits;
  limits.line_bytes = 20;
  auto const loaded = read_amendment(
      {.name = "piece.txt", .bytes = "Delete couplet 9.\nDelete couplets 11, 12 and 13.\n"},
      limits);
  EXPECT_FALSE(loaded);
  ASSERT_EQ(loaded.findings.size(), 1U);
  EXPECT_EQ(to_text(loaded.findings[0]),
            "piece.txt:2:1: error: this line has 30 bytes, more than the limit of 20 "
            "[line-too-long]\n"
            "  break the piece into lines, one lead each, or allow more with --limit line=33\n");
}

TEST(AmendmentReader, TakesCoupletsOfTheInterchangeFormByTheirNumbers) {
  EXPECT_EQ(amendment_in_short(R"({"keydrift": 1, "couplets": [{"label": "7a", "leads": [
      {"label": "7a", "text": "Wings pale", "destination": {"unresolved": "8"}},
      {"label": "7a'", "text": "Wings dark", "destination": {"taxa": ["Aus dus"]}}]}]})"),
            "by number: 7a\n");
}

TEST(AmendmentReader, ReadsManuscripts) {
  auto const bytes = docx_bytes(paragraph("Delete couplet 9.") + paragraph("") +
                                paragraph("Couplet 8b: for ‘pale’ read ‘dark’."));
  auto const loaded = read_amendment({.name = "piece.docx", .bytes = bytes});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(in_short(*loaded.value), "remove 9\nchange 8b: {pale} {dark}\n");
  EXPECT_EQ(loaded.value->instructions[1].place.line, 3U);
  auto const couplets =
      docx_bytes(paragraph("Insert after couplet 7:") +
                 table({row({paragraph("7a (7)"), paragraph("Wings pale"), paragraph("8")}),
                        row({paragraph("–"), paragraph("Wings dark"), paragraph("Aus dus")})}));
  EXPECT_EQ(amendment_in_short(couplets), "insert after 7: 7a\n");
}

TEST(AmendmentReader, ReadsTheKeyOfAnArticle) {
  EXPECT_EQ(
      amendment_in_short("<article><body><sec sec-type=\"key\"><title>Additions to the key</title>"
                         "<p>Insert after couplet 7:</p><table-wrap content-type=\"key\"><table>"
                         "<tr><td>7a (7)</td><td>Wings pale</td><td>8</td></tr>"
                         "<tr><td>–</td><td>Wings dark</td><td><italic>Aus dus</italic></td></tr>"
                         "</table></table-wrap></sec></body></article>"),
      "insert after 7: 7a\n");
}

// Leads are no instructions, whatever words they hold.
TEST(AmendmentReader, DoesNotTakeLeadsForInstructions) {
  EXPECT_EQ(amendment_in_short("7  Hairs replaced by scales; for couplet 8 see below ..... 8\n"
                               "–  Hairs added to scales, 4 changed to 5 ..... 9\n"
                               "8  Spines of couplet 3 removed, wings to 5 mm ..... Aus bus\n"
                               "–  Spines present; read with a lens ..... Aus cus\n"),
            "by number: 7 8\n");
}

}  // namespace
}  // namespace keydrift::test

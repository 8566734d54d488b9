// What stands between, above and below the leads: every line is accounted for.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "finding_text.hpp"
#include "keydrift/formats/text.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;
using test::line_kinds;
using test::read_key;
using test::sketch;
using Lines = std::vector<std::string>;

constexpr auto kLinesSketch =
    "1[1] Small -> 2\n1[–] Large -> Aus aus\n2[2] Pale -> Aus bus\n2[–] Dark -> Aus cus\n";

TEST(PrintedLines, JoinsWrappedLeadsWithOneBlank) {
  EXPECT_EQ(sketch("1. Shell  smooth,\n    with\ta   few\n    pale bands ...... 2\n"
                   "– Shell\nribbed ...... Aus bus\n2. Pale ..... Aus cus\n– Dark ..... Aus dus\n"),
            "1[1] Shell smooth, with a few pale bands -> 2\n1[–] Shell ribbed -> Aus bus\n"
            "2[2] Pale -> Aus cus\n2[–] Dark -> Aus dus\n");
}

TEST(PrintedLines, JoinsHyphenatedWordsByHowTheFileWritesThem) {
  auto const edition = read_key(
                           "1. Antennae hair-\n   less; legs three-\n   lobed; wings 3-\n   5 mm "
                           "long; long-\n   and short-winged; veins red-\n   brown ..... 2\n"
                           "– Legs three-lobed; veins red-brown or reddish ..... Aus bus\n"
                           "2. Pale\u00AD\n   ness ..... Aus cus\n– Dark ..... Aus dus\n")
                           .edition;
  EXPECT_EQ(edition.couplets[0].leads[0].text,
            "Antennae hairless; legs three-lobed; wings 3-5 mm long; long- and short-winged; veins "
            "red-brown");
  EXPECT_EQ(edition.couplets[1].leads[0].text, "Paleness");
}

TEST(PrintedLines, KeepTheHyphenOfCompoundsThatLinesMayEndIn) {
  auto const edition =
      read_key(
          "1. Scales with a well-\n   developed keel, half-\n   hidden; spots four-\n"
          "   teen; lobes self-\n   coloured ..... Aus bus\n"
          "– Scales non-\n   flowering, nonflowering in shade ..... Aus cus\n")
          .edition;
  EXPECT_EQ(edition.couplets[0].leads[0].text,
            "Scales with a well-developed keel, half-hidden; spots fourteen; lobes self-coloured");
  // The text prints it in one word.
  EXPECT_EQ(edition.couplets[0].leads[1].text, "Scales nonflowering, nonflowering in shade");
}

TEST(PrintedLines, RunsTieTheWordsToTheSource) {
  std::string const text =
      "Title: Größen\n\n1. Füße  hair-\n    less; Kör\u00ADper\u00A0rot\n    ♂ lang ..... Aus bus\n"
      "– Füße haarig ..... Aus cus\n";
  auto const edition = read_key(text).edition;
  auto const& lead = edition.couplets[0].leads[0];
  ASSERT_EQ(lead.text, "Füße hairless; Körper rot ♂ lang");
  TextPlaces const places{text};
  for (std::size_t r = 0; r < lead.runs.size(); ++r) {
    auto const& run = lead.runs[r];
    auto const end = r + 1 < lead.runs.size() ? lead.runs[r + 1].text_begin : lead.text.size();
    auto words = lead.text.substr(run.text_begin, end - run.text_begin);
    if (!words.empty() && words.back() == ' ') words.pop_back();  // the joint
    auto const printed = text.substr(run.place.begin, run.place.end - run.place.begin);
    EXPECT_EQ(words, printed);
    auto const place = places.at(run.place.begin, run.place.end);
    EXPECT_EQ(place, run.place) << printed;
  }
  EXPECT_EQ(place_in_text(lead, lead.text.find("lang"), 4).line, 5U);
  EXPECT_EQ(place_in_text(lead, lead.text.find("lang"), 4).column, 7U);
}

TEST(PrintedLines, NotesUnderALeadBelongToIt) {
  auto const text =
      "1. Small ..... 2\n   Note: look at dry shells\n   only, wet ones swell.\n"
      "– Large ..... Aus aus\n   [rare, once on Mera]\n"
      "2. Pale ..... Aus bus\n\nN.B. Bleached shells are pale too.\n– Dark ..... Aus cus\n"
      "   in captivity paler\n";
  auto const edition = read_key(text).edition;
  EXPECT_EQ(sketch(edition),
            "1[1] Small -> 2\n1[–] Large -> Aus aus\n2[2] Pale -> Aus bus\n"
            "2[–] Dark -> Aus cus (in captivity paler)\n");
  EXPECT_EQ(edition.couplets[0].leads[0].notes, Lines{"look at dry shells only, wet ones swell."});
  EXPECT_EQ(edition.couplets[0].leads[1].notes, Lines{"[rare, once on Mera]"});
  EXPECT_EQ(edition.couplets[1].leads[0].notes, Lines{"N.B. Bleached shells are pale too."});
  EXPECT_EQ(line_kinds(text), "lead, note, note, lead, note, lead, blank, note, lead, destination");
}

TEST(PrintedLines, NotesOnACoupletBelongToIt) {
  auto const edition = read_key(
                           "1. Small ..... 2\n– Large ..... Aus aus\n"
                           "Note on couplet 1: measure along\n  the longest axis\n"
                           "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n")
                           .edition;
  EXPECT_EQ(sketch(edition), kLinesSketch);
  EXPECT_EQ(edition.couplets[0].notes, Lines{"measure along the longest axis"});
}

TEST(PrintedLines, FiguresArePickedOutOfWordsAndDestinations) {
  auto const edition = read_key(
                           "1. Small (Figs 3–5, 7) ..... Aus aus (Fig. 2a)\n"
                           "– Large; see Abb. 4 & 6 ..... Aus bus, Pl. 3\n")
                           .edition;
  EXPECT_EQ(edition.couplets[0].leads[0].figures, (Lines{"Figs 3–5, 7", "Fig. 2a"}));
  EXPECT_EQ(edition.couplets[0].leads[1].figures, (Lines{"Abb. 4 & 6", "Pl. 3"}));
  EXPECT_EQ(sketch(edition),
            "1[1] Small (Figs 3–5, 7) -> Aus aus\n1[–] Large; see Abb. 4 & 6 -> Aus bus\n");
}

TEST(PrintedLines, CaptionsPageNumbersAndRunningHeadsDoNotDisturb) {
  auto const text =
      "1. Small ..... 2\n\nFIG. 7. Shell of Aus bus,\nfrom above.\n\n– Large ..... Aus aus\n"
      "- 44 -\n\fMOLLUSCS OF HALVERN 45\n\n2. Pale ..... Aus bus\n\n46 MOLLUSCS OF HALVERN\n\n"
      "– Dark,\n 47\n   with rings ..... Aus cus\nPlate 3\n";
  EXPECT_EQ(sketch(text),
            "1[1] Small -> 2\n1[–] Large -> Aus aus\n2[2] Pale -> Aus bus\n"
            "2[–] Dark, with rings -> Aus cus\n");
  EXPECT_EQ(line_kinds(text),
            "lead, blank, figure, figure, blank, lead, page number, running head, blank, lead, "
            "blank, running head, blank, lead, page number, continuation, figure");
}

TEST(PrintedLines, CrossHeadingsAndProseAreNotesOfTheEdition) {
  auto const text =
      "Key to the shells of Halvern\n\nThis key is for dry shells. It was tried on\n"
      "four hundred of them.\n\n1. Small ..... 2\n– Large ..... Aus aus\n\n"
      "Small species (1)\n\n2. Pale ..... Aus bus\n– Dark ..... Aus cus\n\n"
      "¹ Sensu lato.\n\nReferences are given elsewhere, at length.\n";
  auto const reading = read_key(text);
  EXPECT_EQ(sketch(reading.edition), kLinesSketch);
  ASSERT_EQ(reading.edition.parts.size(), 1U);
  EXPECT_EQ(reading.edition.parts[0].title, "Key to the shells of Halvern");
  Lines notes;
  for (auto const& note : reading.edition.notes) notes.push_back(note.text);
  EXPECT_EQ(notes, (Lines{"This key is for dry shells. It was tried on four hundred of them.",
                          "Small species (1)", "¹ Sensu lato.",
                          "References are given elsewhere, at length."}));
  EXPECT_EQ(line_kinds(text),
            "heading, blank, note, note, blank, lead, lead, blank, heading, blank, lead, lead, "
            "blank, footnote, blank, note");
}

TEST(PrintedLines, TextThatBelongsToNoLeadIsReportedOnce) {
  EXPECT_EQ(
      findings_of("1. Small ..... 2\n– Large ..... Aus aus\n\nThese shells are rare.\n\n"
                  "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n\nThe end is here.\n"),
      Lines{"key.txt:4:1: information: this text belongs to no lead; it was kept as a note of "
            "the edition, and so was text at 1 further place [stray-text] (begin it with "
            "\"Note:\" beneath a lead if it belongs there)"});
}

TEST(PrintedLines, TablesPastedWithTabsAreRead) {
  EXPECT_EQ(
      sketch("1\t-\tSmall\t2\n\t-\tLarge\tAus aus\n2\t(1)\tPale\tA. bus\n\t-\tDark\tA. cus\n"),
      "1[1] Small -> 2\n1[-] Large -> Aus aus\n2[2] Pale -> Aus bus\n2[-] Dark -> Aus cus\n");
}

TEST(PrintedLines, BlankLinesMayStandBetweenAllLines) {
  EXPECT_EQ(sketch("1. Small ..... 2\n\n– Large,\n\n  with rings ..... Aus aus\n\n"
                   "2. Pale ..... Aus bus\n\n– Dark ..... Aus cus\n"),
            "1[1] Small -> 2\n1[–] Large, with rings -> Aus aus\n2[2] Pale -> Aus bus\n"
            "2[–] Dark -> Aus cus\n");
}

TEST(PrintedLines, IndentationWithoutMeaningIsIgnored) {
  EXPECT_EQ(sketch("1. Small ..... 2\n1'. Large ..... Aus aus\n"
                   "      2. Pale ..... Aus bus\n      2'. Dark ..... Aus cus\n"),
            "1[1] Small -> 2\n1[1'] Large -> Aus aus\n2[2] Pale -> Aus bus\n"
            "2[2'] Dark -> Aus cus\n");
}

TEST(PrintedLines, SeveralKeysInOneFileAreParts) {
  auto const edition = read_key(
                           "Key A: adults\n\n1. Small ..... 2\n– Large ..... Key B\n"
                           "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n\n"
                           "Key B: larvae\n\n1. Round ..... 2\n– Square ..... Dus eus\n"
                           "2. Thin ..... Dus fus\n– Thick ..... 1\n")
                           .edition;
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(edition.parts[0].title, "Key A: adults");
  EXPECT_EQ(edition.parts[1].title, "Key B: larvae");
  EXPECT_EQ(edition.parts[1].start, CoupletId{2});
  EXPECT_EQ(edition.parts[1].place.line, 8U);
  EXPECT_EQ(sketch(edition),
            "1[1] Small -> 2\n1[–] Large -> key: Key B: larvae\n"
            "2[2] Pale -> Aus bus\n2[–] Dark -> Aus cus\n"
            "1[1] Round -> 2\n1[–] Square -> Dus eus\n2[2] Thin -> Dus fus\n2[–] Thick -> 1\n");
  EXPECT_EQ(std::get<ToCouplet>(edition.couplets[2].leads[0].destination).couplet, CoupletId{3});
  EXPECT_EQ(std::get<ToCouplet>(edition.couplets[3].leads[1].destination).couplet, CoupletId{2});
}

TEST(PrintedLines, KeysWithRunningNumbersArePartsWhereAHeadingNamesThem) {
  auto const edition = read_key(
                           "1. Small ..... Key B\n– Large ..... Key C\n\n"
                           "Key B\n2. Pale ..... Aus bus\n– Dark ..... Aus cus\n\n"
                           "Key C\n3. Round ..... Aus dus\n– Square ..... Aus eus\n")
                           .edition;
  ASSERT_EQ(edition.parts.size(), 3U);
  EXPECT_EQ(edition.parts[2].title, "Key C");
  EXPECT_EQ(edition.parts[2].start, CoupletId{2});
}

TEST(PrintedLines, NumberingThatStartsAgainWithoutAHeadingIsAnotherPart) {
  auto const edition = read_key(
                           "1. Small ..... 2\n– Large ..... Aus aus\n"
                           "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n\n"
                           "1. Round ..... 2\n– Square ..... Dus eus\n"
                           "2. Thin ..... Dus fus\n– Thick ..... Dus gus\n")
                           .edition;
  ASSERT_EQ(edition.parts.size(), 2U);
  EXPECT_EQ(std::get<ToCouplet>(edition.couplets[2].leads[0].destination).couplet, CoupletId{3});
}

TEST(PrintedLines, ATextThatEndsInTheMiddleKeepsWhatIsThere) {
  auto const text = "4. Small ..... 5\n4'. Large ..... Aus aus\n5. Pale ..... Aus bus\n5'.";
  EXPECT_EQ(sketch(text),
            "4[4] Small -> 5\n4[4'] Large -> Aus aus\n5[5] Pale -> Aus bus\n5[5']  -> ?\n");
}

TEST(PrintedLines, FusedNumbersAndNamesComeOutAsPrinted) {
  EXPECT_EQ(
      sketch("1.Small......2\n–Large......Aus aus\n2.Pale......Aus bus\n–Dark......Aus cus\n"),
      kLinesSketch);
}

TEST(PrintedLines, AWholeKeyMayRunOnInOneParagraph) {
  auto const text =
      "1. Small … 2 – Large … Aus aus 2. Pale … Aus bus – Dark …\nAus cus Smith 3. Never … 1\n";
  EXPECT_EQ(sketch("1. Small … 2 – Large … Aus aus 2. Pale … Aus bus – Dark … Aus cus\n"),
            kLinesSketch);
  EXPECT_EQ(sketch("1a Small ..... 2 1b Large ..... Aus aus 2a Pale\n..... Aus bus 2b Dark ..... "
                   "Aus cus\n"),
            "1[1a] Small -> 2\n1[1b] Large -> Aus aus\n2[2a] Pale -> Aus bus\n"
            "2[2b] Dark -> Aus cus\n");
  EXPECT_EQ(read_key(text).source.lines.size(), 2U);
}

TEST(PrintedLines, ANumberFusedWithTheNextLabelIsParted) {
  EXPECT_EQ(
      sketch("1. Large ..... Aus aus – Small ......22. Pale ..... Aus bus – Dark ..... A. cus\n"),
      "1[1] Large -> Aus aus\n1[–] Small -> 2\n2[2] Pale -> Aus bus\n"
      "2[–] Dark -> Aus cus\n");
}

TEST(PrintedLines, RunOnLeadsKeepTheirColumns) {
  auto const edition =
      read_key("1. Klein … 2 – Groß … Aus aus 2. Blaß … Aus bus – x … Aus cus\n").edition;
  EXPECT_EQ(edition.couplets[0].leads[1].place.column, 14U);
  EXPECT_EQ(edition.couplets[1].leads[0].place.column, 31U);
}

TEST(PrintedLines, LeadersThatStandTwiceAreReported) {
  EXPECT_EQ(findings_of("1. Small ..... 2 Large ..... Aus aus\n– Huge ..... Aus dus\n"
                        "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n"),
            Lines{"key.txt:1:16: warning: leaders stand twice in this lead; what follows the first "
                  "of them was taken for words, and \"Aus aus\" for the destination "
                  "[leaders-within-words] (begin each lead on a line of its own, with its label)"});
}

TEST(PrintedLines, HedgesAndExceptionsStayInTheWords) {
  EXPECT_EQ(sketch("1. Tibia black except in A. bus, or if pale, then ringed ..... 2\n"
                   "– Tibia usually red {tibia: red} ..... Aus aus\n"
                   "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n"),
            "1[1] Tibia black except in A. bus, or if pale, then ringed -> 2\n"
            "1[–] Tibia usually red {tibia: red} -> Aus aus\n"
            "2[2] Pale -> Aus bus\n2[–] Dark -> Aus cus\n");
}

TEST(PrintedLines, FileOfAnotherEncodingReadsAlike) {
  EXPECT_EQ(sketch("1. Gr\xF6\xDF"
                   "e klein \x85 2\n\x96 Gro\xDF \x85 Aus aus\n"
                   "2. Bla\xDF \x85 Aus bus\n\x96 Dunkel \x85 Aus cus\n"),
            "1[1] Größe klein -> 2\n1[–] Groß -> Aus aus\n2[2] Blaß -> Aus bus\n"
            "2[–] Dunkel -> Aus cus\n");
}

TEST(PrintedLines, ContentsAfterTheKeyAreNoLeads) {
  auto const edition = read_key(
                           "1. Small ..... 2\n– Large ..... Aus aus\n"
                           "2. Pale ..... Aus bus\n– Dark ..... Aus cus\n\n"
                           "Contents\n\nIntroduction ........ 4\nGlossary ........ 9\n")
                           .edition;
  EXPECT_EQ(sketch(edition), kLinesSketch);
}

// --- refusals ----------------------------------------------------------------------------------

TEST(PrintedRefusal, TextWithoutAnyLabelShowsWhatIsExpected) {
  EXPECT_EQ(
      findings_of("Dear colleague,\nhere is the list.\n"),
      Lines{"key.txt:1:1: error: no couplet was found: no line begins with a couplet's number "
            "[no-couplets] (write couplets as in \"1. Leaves opposite ..... 2\" and, on the "
            "next line, \"– Leaves alternate ..... Aus bus\")"});
}

TEST(PrintedRefusal, ListWithoutPairsNamesTheFirstLineWherePairingFails) {
  EXPECT_EQ(findings_of("Contents\n\n1. Introduction\n2. Methods\n3. Results\n"),
            Lines{"key.txt:3:1: error: no couplet was found: \"1\" has no second lead; line 4 "
                  "begins with \"2\" [no-couplets] (write couplets as in \"1. Leaves opposite "
                  "..... 2\" and, on the next line, \"– Leaves alternate ..... Aus bus\")"});
}

TEST(PrintedRefusal, PairsThatLeadNowhereAreNoKey) {
  auto const loaded = read_printed_key(
      {.name = "key.txt", .bytes = "1. buy milk\n– and bread\n2. post letters\n– and cards\n"});
  EXPECT_FALSE(loaded);
  ASSERT_EQ(loaded.findings.size(), 1U);
  EXPECT_EQ(loaded.findings[0].message,
            "no couplet was found: no lead ends in a couplet's number or a name");
}

TEST(PrintedRefusal, EmptyAndBinaryFilesAreRefusedByTheDecoder) {
  EXPECT_FALSE(read_printed_key({.name = "key.txt", .bytes = ""}));
  EXPECT_EQ(read_printed_key({.name = "k", .bytes = "%PDF-1.7"}).findings[0].code, "binary-file");
}

TEST(PrintedRefusal, AnOverlongLineIsRefusedWithItsNumber) {
  auto const text = "1. Small ..... 2\n– " + std::string(3000, 'x') + " ..... Aus aus\n";
  auto const loaded = read_printed_key({.name = "key.txt", .bytes = text}, {.line_bytes = 1000});
  EXPECT_FALSE(loaded);
  EXPECT_EQ(
      test::one_line_each(loaded.findings),
      Lines{"key.txt:2:1: error: line 2 has 3018 bytes, more than the limit of 1000 "
            "[line-too-long] (break the key into lines, one lead each; if such a line is meant, "
            "--limit line=3395 takes it in)"});
}

// --- accounting --------------------------------------------------------------------------------

TEST(PrintedAccount, HasOneEntryForEveryLineInOrder) {
  std::string const text =
      "A title\n\nEdition: 1998\nTaxa: all of\n  them\n\nKey\n\nprose of no use.\n\n1. Small\n  "
      "..... 2\n  Note: x\n–  Large ..... Aus aus\n12\n=====\n* * *\n2. Pale ..... Aus bus\n"
      "– Dark ..... Aus cus\nFig. 3. A caption\n\n† a footnote\n\n\nend\n";
  auto const reading = read_key(text);
  TextPlaces const places{text};
  ASSERT_EQ(reading.source.lines.size(), places.line_count());
  for (std::size_t i = 0; i < reading.source.lines.size(); ++i) {
    EXPECT_EQ(reading.source.lines[i].line, i + 1);
    bool const blank = places.line(i + 1).empty();
    EXPECT_EQ(reading.source.lines[i].kind == LineKind::blank, blank) << i + 1;
    EXPECT_EQ(reading.source.lines[i].reason.empty(), blank) << i + 1;
  }
  EXPECT_EQ(line_kinds(text),
            "heading, blank, front matter, front matter, front matter, blank, heading, blank, "
            "note, blank, lead, continuation, note, lead, page number, skipped, skipped, lead, "
            "lead, figure, blank, footnote, blank, blank, heading");
}

TEST(PrintedAccount, SaysWhichLayoutWasRead) {
  EXPECT_EQ(read_key("1a Small ..... 2\n1b Large ..... Aus aus\n2a Pale ..... Aus bus\n"
                     "2b Dark ..... Aus cus\n")
                .source.layout_note,
            "parallel layout, leads marked 1a and 1b, destinations after dot leaders");
  EXPECT_EQ(
      read_key("1 Small 2\n- Large Aus aus\n2 Pale Aus bus\n- Dark Aus cus\n").source.layout_note,
      "parallel layout, leads marked 1 and -, destinations without dot leaders");
}

TEST(PrintedLines, RivalsInOneLineArePartedAtTheDash) {
  EXPECT_EQ(sketch("1. Wings clear 2. – Wings dark 3.\n2. Legs pale A. bus. – Legs dark A. cus.\n"
                   "3. Head red A. dus. – Head black A. eus.\n"),
            "1[1] Wings clear -> 2\n1[–] Wings dark -> 3\n2[2] Legs pale -> A. bus\n"
            "2[–] Legs dark -> A. cus\n3[3] Head red -> A. dus\n3[–] Head black -> A. eus\n");
}

TEST(PrintedLines, DrawnTablesAreReadCellByCell) {
  EXPECT_EQ(sketch("| No. | Character | Taxon |\n|-----|---|---|\n| 1a | Wings clear | 2 |\n"
                   "| 1b | Wings dark | Aus bus |\n| 2a | Legs pale | Aus cus |\n"
                   "| 2b | Legs dark | Aus dus |\n"),
            "1[1a] Wings clear -> 2\n1[1b] Wings dark -> Aus bus\n2[2a] Legs pale -> Aus cus\n"
            "2[2b] Legs dark -> Aus dus\n");
}

TEST(PrintedLines, NumberedTitlesBeginKeys) {
  auto const reading = test::read_key(
      "1. Adults\n\n1 Wings clear ... Aus bus\n– Wings dark ... Aus cus\n\n2. Larvae\n\n"
      "1 Gills long ... Aus bus\n– Gills short ... Aus cus\n");
  ASSERT_EQ(reading.edition.parts.size(), 2U);
  EXPECT_EQ(reading.edition.parts[0].title, "1. Adults");
  EXPECT_EQ(reading.edition.parts[1].title, "2. Larvae");
}

TEST(PrintedLines, JournalsHeadsBetweenLinesOfALeadAreLeftOut) {
  EXPECT_EQ(sketch("1. Wings clear and longer than ..... 2\n– Wings dark ..... Aus bus\n"
                   "2. Legs pale ..... Aus cus\n"
                   "Journal of Marsh Animals 44 (2)                    131\n"
                   "Roe, 1897\n– Legs dark ..... Aus dus\n"),
            "1[1] Wings clear and longer than -> 2\n1[–] Wings dark -> Aus bus\n"
            "2[2] Legs pale -> Aus cus\n2[–] Legs dark -> Aus dus\n");
}

TEST(PrintedLines, EachNoteThatSaysSoIsOneOfItsOwn) {
  auto const edition = read_key(
                           "1. Small ..... Aus bus\n"
                           "   Note: look at dry shells\n"
                           "   only.\n"
                           "   Note: wet ones swell.\n"
                           "–  Large ..... Aus cus\n")
                           .edition;
  EXPECT_EQ(edition.couplets.at(0).leads.at(0).notes,
            (std::vector<std::string>{"look at dry shells only.", "wet ones swell."}));
}

TEST(PrintedLines, AWordOfAPictureBeneathAnArrow) {
  EXPECT_EQ(sketch("Key to the species of Selenognathus\n"
                   "\n"
                   "1a. Two dorsal fins, separated by an interspace . . . . . . . . → 2\n"
                   "1b. Dorsal fin single (Fig. 2) . . . . . . . . . . → 3\n"
                   "interspace\n"
                   "Fig. 1 Fig. 2\n"
                   "notch\n"
                   "2a. Eye very large . . . . . Selenognathus macrops\n"
                   "2b. Eye moderate . . . . . . Selenognathus medius\n"
                   "3a. Mouth black . . . . . . . Selenognathus niger\n"
                   "3b. Mouth pale . . . . . . . Selenognathus pallidus\n"),
            "1[1a] Two dorsal fins, separated by an interspace -> 2\n"
            "1[1b] Dorsal fin single (Fig. 2) -> 3\n"
            "2[2a] Eye very large -> Selenognathus macrops\n"
            "2[2b] Eye moderate -> Selenognathus medius\n"
            "3[3a] Mouth black -> Selenognathus niger\n"
            "3[3b] Mouth pale -> Selenognathus pallidus\n");
}

TEST(PrintedLines, AMarginTellsPagesOfTheOriginal) {
  EXPECT_EQ(
      sketch("Key to species of the genus Limnopalla\n"
             "\n"
             "1 (4). Teeth on metasome only.\n"
             "2 (3). Teeth low, obtuse ............ 1. L. obtusa Tarenko\n"
             "3 (2). Teeth high, acute ............ 2. L. acuta Tarenko\n"
             "4 (1). Teeth on metasome and mesosome.\n"
             "5 (6). Teeth beginning from segment III; palm strongly oblique ............ 3. L. "
             "carinifera Gorsk.\n"
             "(102) 6 (5). Teeth beginning from segment VI; palm trans-\n"
             "verse in both sexes ......... 4. L. serrulata (Vinogr.)\n"),
      "1[1] Teeth on metasome only. -> 2\n"
      "1[4] Teeth on metasome and mesosome. -> 5\n"
      "2[2] Teeth low, obtuse -> Limnopalla obtusa\n"
      "2[3] Teeth high, acute -> Limnopalla acuta\n"
      "5[5] Teeth beginning from segment III; palm strongly oblique -> Limnopalla carinifera\n"
      "5[6] Teeth beginning from segment VI; palm transverse in both sexes -> Limnopalla "
      "serrulata\n");
}

}  // namespace
}  // namespace keydrift

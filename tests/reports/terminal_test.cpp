#include "keydrift/reports/terminal.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>  // setenv
#include <utf8proc.h>

#include <algorithm>
#include <string_view>

#include "golden.hpp"
#include "keydrift/reports/html.hpp"
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/summaries_csv.hpp"
#include "sample.hpp"

namespace keydrift {
namespace {

using test::expect_golden;
using test::make_sample;

TEST(TerminalProof, GroupsFindingsBySeverityAndTellsTheNumbers) {
  auto const sample = make_sample();
  expect_golden("reports/proof.txt", proof_text(sample.old_edition, sample.proof, {}));
}

TEST(TerminalCollation, SetsTwoEditionsAsAPrintedKeyInTwoColumns) {
  auto const sample = make_sample();
  expect_golden("reports/collation.txt",
                collation_text(sample.old_edition, sample.new_edition, sample.collation, {}));
}

TEST(TerminalRedetermination, TellsNamesUpdatedApartFromSpecimensExamined) {
  auto const sample = make_sample();
  expect_golden("reports/redetermination.txt",
                redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                     sample.redetermination, {}));
}

TEST(TerminalKeyout, ShowsTheRouteAsThePrintedWordsWithWhatIsKnown) {
  auto const sample = make_sample();
  expect_golden("reports/keyout.txt",
                keyout_text(sample.new_edition, sample.specimen, sample.keyout, {}, {}));
}

std::vector<std::string> all_reports(test::Sample const& sample, TerminalStyle style) {
  return {proof_text(sample.old_edition, sample.proof, style),
          collation_text(sample.old_edition, sample.new_edition, sample.collation,
                         {.style = style, .every_couplet = true}),
          redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                               sample.redetermination, style),
          keyout_text(sample.new_edition, sample.specimen, sample.keyout, {}, style)};
}

// Cells by utf8proc alone, without the code under test.
std::size_t cells(std::string_view line) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < line.size();) {
    utf8proc_int32_t code = -1;
    auto const used = utf8proc_iterate(reinterpret_cast<utf8proc_uint8_t const*>(&line[at]),
                                       static_cast<utf8proc_ssize_t>(line.size() - at), &code);
    EXPECT_GT(used, 0) << "no UTF-8: " << line;
    if (used <= 0) return width;
    width += static_cast<std::size_t>(utf8proc_charwidth(code));
    at += static_cast<std::size_t>(used);
  }
  return width;
}

void expect_within(std::string_view text, std::size_t width) {
  while (!text.empty()) {
    auto const line = text.substr(0, text.find('\n'));
    EXPECT_LE(cells(line), width) << line;
    EXPECT_FALSE(line.ends_with(' ')) << line;
    text.remove_prefix(std::min(text.size(), line.size() + 1));
  }
}

template <class Value, class Change>
void change_each(StoredList<Value>& list, Change const& change) {
  auto values = list.to_vector();
  for (auto& value : values) change(value);
  list = StoredList<Value>{values};
}

// Wide, combining, joined and very long words wherever a user's text goes.
test::Sample awkward_sample() {
  auto sample = make_sample();
  std::string const wide =
      "莎草科植物检索表的编者按语很长很长很长很长很长很长很长很长很长很长很长很长很长";
  std::string const marked = "e\u0301ca\u0308rlate\u0301 ♂♀ 3–5 µm 👩\u200D🔬";
  std::string const endless(150, 'x');
  for (auto* edition : {&sample.old_edition, &sample.new_edition}) {
    edition->name = "folder/" + endless + ".txt";
    edition->front.edition += " " + wide;
    for (auto& couplet : edition->couplets) {
      for (auto& lead : couplet.leads) {
        lead.text += "; " + wide + " " + marked + " " + endless;
        if (std::holds_alternative<ToTaxa>(lead.destination)) lead.destination_printed += wide;
      }
    }
    edition->couplets[1].label = "123456789 (1234567890)";
    edition->taxa[0].name += " " + marked + endless;
  }
  for (auto& use : sample.collation.characters) use.label += wide + endless;
  for (auto& role : sample.collation.roles) role.numbers += endless;
  for (auto& each : sample.proof.findings) each.message += endless + wide;
  for (auto& each : sample.redetermination.to_look_at) each.specimen.storage = wide;
  change_each(sample.redetermination.verdicts, [&](Verdict& verdict) {
    for (auto& question : verdict.questions) question.label += marked + endless;
  });
  change_each(sample.redetermination.from_to, [&](FromTo& row) { row.to += endless; });
  sample.specimen.observations[0].value = wide + endless;
  sample.specimen.catalog_number = endless;
  return sample;
}

TEST(TerminalReports, NoLineIsWiderThanTheWidth) {
  auto const plain = make_sample();
  auto const awkward = awkward_sample();
  for (unsigned width = 60; width <= 120; ++width) {
    for (auto const& text : all_reports(plain, {.width = width})) expect_within(text, width);
    // Even and odd widths, and all remainders of the column widths, without setting 61 long ones.
    if (width > 63 && width % 7 != 0) continue;
    for (auto const& text : all_reports(awkward, {.width = width})) expect_within(text, width);
  }
}

TEST(TerminalReports, ANarrowWidthIsTakenAsForty) {
  for (auto const& text : all_reports(awkward_sample(), {.width = 3})) expect_within(text, 40);
}

TEST(TerminalReports, WithoutUnicodeEveryByteIsAscii) {
  for (auto const& text : all_reports(awkward_sample(), {.width = 80, .unicode = false})) {
    EXPECT_TRUE(std::all_of(text.begin(), text.end(),
                            [](char c) { return c == '\n' || (c >= 0x20 && c < 0x7F); }));
    expect_within(text, 80);
  }
}

std::string without_escapes(std::string const& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\x1b') {
      i = text.find('m', i);
      continue;
    }
    out += text[i];
  }
  return out;
}

TEST(TerminalReports, ColourAddsFacesAndNothingElse) {
  auto const sample = make_sample();
  auto const plain = all_reports(sample, {.colour = false});
  auto const faced = all_reports(sample, {.colour = true});
  for (std::size_t i = 0; i < plain.size(); ++i) {
    EXPECT_EQ(plain[i].find('\x1b'), std::string::npos);
    EXPECT_EQ(without_escapes(faced[i]), plain[i]);
    // Bold, dim, underlined and their end: no hues.
    for (auto at = faced[i].find('\x1b'); at != std::string::npos;
         at = faced[i].find('\x1b', at + 1)) {
      auto const code = faced[i].substr(at, 4);
      EXPECT_TRUE(code == "\x1b[1m" || code == "\x1b[2m" || code == "\x1b[4m" || code == "\x1b[0m");
    }
  }
}

TEST(TerminalReports, EscapesInTheSourceAreNotPassedOn) {
  auto sample = make_sample();
  sample.old_edition.couplets[0].leads[0].text = "claws \x1b[31mred\x1b[0m\x07";
  sample.old_edition.couplets[0].leads[0].statements.clear();
  sample.proof.findings[0].printed = "\x1b]0;title\x07";
  for (auto const& text : all_reports(sample, {})) EXPECT_EQ(text.find('\x1b'), std::string::npos);
}

TEST(TerminalReports, LooksLikeNoSourceDiffer) {
  auto const sample = make_sample();
  for (auto const& text : all_reports(sample, {})) {
    EXPECT_EQ(text.find("\n+"), std::string::npos);
    EXPECT_EQ(text.find("\n-"), std::string::npos);
    EXPECT_EQ(text.find("@@"), std::string::npos);
  }
}

TEST(TerminalCollation, EveryCoupletIsSetOnRequest) {
  auto const sample = make_sample();
  auto const text = collation_text(sample.old_edition, sample.new_edition, sample.collation,
                                   {.style = {}, .every_couplet = true});
  EXPECT_NE(text.find("·   Couplet 3 of 1968, couplet 4 of 2003: renumbered, leads swapped"),
            std::string::npos);
  EXPECT_EQ(text.find("COUPLETS THAT MEAN THE SAME"), std::string::npos);
}

TEST(TerminalCollation, SaysPlainlyThatNothingChanges) {
  auto const sample = make_sample();
  Collation collation;
  collation.couplets = {{{CoupletId{0}}, {CoupletId{0}}, {CoupletEvent::kept}, {}, {}, false}};
  auto const text = collation_text(sample.old_edition, sample.old_edition, collation, {});
  EXPECT_NE(text.find("The meaning of the key does not change"), std::string::npos);
  EXPECT_EQ(text.find("COUPLETS SIDE BY SIDE"), std::string::npos);
  EXPECT_NE(text.find("  Kept: 1.\n"), std::string::npos);
}

std::string collated(test::Sample const& sample) {
  return collation_text(sample.old_edition, sample.new_edition, sample.collation, {});
}

TEST(TerminalCollation, SetsTaxaThatPartAtOnePlaceTogetherUnderIt) {
  auto sample = make_sample();
  // Orla minor now takes another lead where Orla clausa does.
  auto& minor = sample.collation.taxa[3];
  minor.events = {TaxonEvent::other_route};
  minor.steps[1].same_lead = false;
  sample.collation.taxa[2].steps[1].same_lead = false;
  auto const text = collated(sample);
  auto const place = text.find("\n‡   2b  Rostrum shorter");
  ASSERT_NE(place, std::string::npos);
  EXPECT_EQ(text.find("\n‡   2b  Rostrum shorter", place + 1), std::string::npos);
  auto const clausa = text.find("\n  Orla clausa: route restated", place);
  auto const next = text.find("\n  Orla minor: other route\n", place);
  ASSERT_NE(clausa, std::string::npos);
  ASSERT_NE(next, std::string::npos);
  EXPECT_LT(next, text.find("Eyes black ..... Pellucina nigra", place));
}

TEST(TerminalCollation, SumsUpRolesOfLeadsWithoutACounterpart) {
  auto sample = make_sample();
  auto role = sample.collation.roles[2];  // eyes, dropped with lead 5a
  role.old_lead = test::lead(4, 1);
  role.old_statement = StatementId{test::lead(4, 1), 0};
  sample.collation.roles.push_back(role);
  EXPECT_NE(collated(sample).find(
                "DROPPED\n"
                "    With leads that have no counterpart: colour of the eyes (at 5a and 5b).\n"),
            std::string::npos);
}

TEST(TerminalCollation, TellsTheNumberOfStepsThatAreLeftOut) {
  auto sample = make_sample();
  sample.collation.taxa[1].steps_before = 1200;
  sample.collation.taxa[1].steps_after = 7;
  EXPECT_NE(collated(sample).find("    1968  …      1a  2a  ·   …\n"
                                  "    2003  …      1a  2a  3b  …\n"
                                  "          1,200  §   §   *   7\n"),
            std::string::npos);
}

TEST(TerminalCollation, LeavesOutTheMiddleOfALongRunOfLikeSteps) {
  auto sample = make_sample();
  auto& steps = sample.collation.taxa[1].steps;
  for (int i = 0; i < 20; ++i) steps.push_back(steps[0]);
  auto const text = collated(sample);
  EXPECT_NE(text.find("    1968  1a  2a  ·   1a  1a  1a  …    1a  1a  1a\n"
                      "    2003  1a  2a  3b  1a  1a  1a  …    1a  1a  1a\n"
                      "          §   §   *   §   §   §   14§  §   §   §\n"),
            std::string::npos)
      << text;
  EXPECT_NE(text.find("… steps left out"), std::string::npos);
  EXPECT_EQ(collated(make_sample()).find("… steps left out"), std::string::npos);
}

TEST(TerminalCollation, LeavesOutTheMiddleOfAWayThatChangesThroughout) {
  auto sample = make_sample();
  auto& steps = sample.collation.taxa[1].steps;
  for (int i = 0; i < 1000; ++i) steps.push_back(steps[i % 2 == 0 ? 0 : 2]);
  auto const text = collated(sample);
  EXPECT_NE(text.find("956"), std::string::npos) << text;
  EXPECT_LT(text.size(), collated(make_sample()).size() + 1000);
}

TEST(TerminalCollation, BreaksALongRouteIntoRowsThatFit) {
  auto sample = make_sample();
  auto& steps = sample.collation.taxa[1].steps;
  for (int i = 0; i < 40; ++i) steps.push_back(steps[i % 2 == 0 ? 0 : 2]);
  auto const text = collated(sample);
  expect_within(text, 80);
  EXPECT_EQ(text.find("…  "), std::string::npos);
  std::size_t rows = 0;
  for (auto at = text.find("    1968  "); at != std::string::npos;
       at = text.find("    1968  ", at + 1)) {
    ++rows;
  }
  EXPECT_GE(rows, 6);  // three of them for the long route
}

TEST(TerminalCollation, SetsADividedCoupletOverAllItsParts) {
  auto sample = make_sample();
  sample.collation.couplets = {{{CoupletId{1}},
                                {CoupletId{1}, CoupletId{2}},
                                {CoupletEvent::split},
                                {},
                                {{0, 0}, {1, 1}},
                                true}};
  auto const text = collation_text(sample.old_edition, sample.new_edition, sample.collation, {});
  auto const at = text.find("¶   Couplet 2 of 1968, couplets 2 and 3 of 2003: split\n");
  ASSERT_NE(at, std::string::npos);
  EXPECT_NE(text.find("\n*                                           3a  Underside", at),
            std::string::npos);
}

TEST(TerminalProof, SaysThatNothingWasFound) {
  auto const sample = make_sample();
  auto const text = proof_text(sample.old_edition, {}, {});
  EXPECT_NE(text.find("Nothing was found wrong.\n"), std::string::npos);
  EXPECT_NE(text.find("no taxon can be reached from the first couplet"), std::string::npos);
}

TEST(TerminalProof, CountsRemarksOnStyleByKindWithTheirLines) {
  auto const sample = make_sample();
  EditionProof proof;
  for (std::uint32_t line = 1; line <= 14; ++line) {
    proof.findings.push_back(
        test::finding("larger-side-first", Severity::information, "k", line, "", "x", ""));
  }
  proof.findings.push_back(
      test::finding("first-lead-negative", Severity::information, "k", 7, "", "x", ""));
  auto const text = proof_text(sample.old_edition, proof, {});
  EXPECT_NE(text.find("15 remarks on style.\n"), std::string::npos) << text;
  EXPECT_EQ(text.find("FOR INFORMATION"), std::string::npos);
  EXPECT_NE(
      text.find("STYLE\n"
                "────────────────────────────────────────────────────────────────────────────────\n"
                "  The first lead is negative [first-lead-negative] ........................... 1\n"
                "    line 7\n"
                "\n"
                "  The lead of more taxa comes first [larger-side-first] ..................... 14\n"
                "    lines 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 2 more\n"),
      std::string::npos)
      << text;
}

TEST(TerminalProof, SaysWhichTaxaItsFiguresLeaveOut) {
  auto sample = make_sample();
  sample.proof.numbers->beyond_start = 3;
  auto const text = proof_text(sample.old_edition, sample.proof, {});
  EXPECT_NE(text.find("3 more taxa in this file cannot be reached from its first couplet; the "),
            std::string::npos)
      << text;
}

TEST(TerminalProof, SaysInFullWhereWhatFiguresGoByWasPublished) {
  auto const sample = make_sample();
  auto text = proof_text(sample.old_edition, sample.proof, {});
  std::replace(text.begin(), text.end(), '\n', ' ');
  for (auto const* part : {"Huffman 1952", "Shannon 1948", "Colless 1982",
                           "Osborne 1963, Some aspects", "from memory"}) {
    EXPECT_NE(text.find(part), std::string::npos) << part;
  }
}

TEST(TerminalProof, SaysWhyFiguresAreLeftOutWhereLeadsGoRound) {
  auto sample = make_sample();
  auto& numbers = *sample.proof.numbers;
  numbers.behind_circles = 2;
  numbers.longest_route = {};
  numbers.mean_route = {};
  numbers.evenness = {};
  numbers.colless = {};
  sample.proof.difficulties->mean_cost = {};
  sample.proof.difficulties->taxa_behind_hard = {};
  sample.proof.frequencies = {};
  sample.proof.right = {};
  auto const text = proof_text(sample.old_edition, sample.proof, {});
  EXPECT_NE(text.find("  Leads go round in a circle on the way to 2 of the taxa that key out, so "),
            std::string::npos)
      << text;
  EXPECT_NE(text.find("shortest way ..."), std::string::npos);
  for (auto const* left_out : {"longest", "average", "(Huffman)", "Evenness", "Colless",
                               "no route leads to", "come out right"}) {
    EXPECT_EQ(text.find(left_out, text.find("shortest way")), std::string::npos) << left_out;
  }
}

TEST(TerminalRedetermination, RowsBeyondTheListAreCountedWithTheirSpecimens) {
  auto sample = make_sample();
  auto row = sample.redetermination.from_to[0];
  row.by_outcome = {0, 0, 5, 0, 0, 0, 0, 0, 0, 0};
  row.specimens = 5;
  sample.redetermination.from_to = StoredList<FromTo>{std::vector<FromTo>(27, row)};
  auto const text = redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination, {});
  EXPECT_NE(
      text.find("  and 3 more rows in the other reports ...................................... "
                "15\n"),
      std::string::npos)
      << text;
}

TEST(TerminalRedetermination, SaysWhenThereIsNoRoomToSortTheQuestions) {
  auto sample = make_sample();
  auto const group = sample.redetermination.worklist[0];
  sample.redetermination.worklist = StoredList<WorkGroup>{std::vector<WorkGroup>(60'000, group)};
  char const* const before = std::getenv("TMPDIR");
  std::string const kept = before == nullptr ? "" : before;
  ::setenv("TMPDIR", "/nowhere/at/all", 1);
  std::optional<Finding> failure;
  (void)redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                             sample.redetermination, {}, &failure);
  before == nullptr ? ::unsetenv("TMPDIR") : ::setenv("TMPDIR", kept.c_str(), 1);
  ASSERT_TRUE(failure);
  EXPECT_EQ(failure->message, "a temporary file cannot be made: No such file or directory");
  EXPECT_FALSE(sample.redetermination.failure());
}

TEST(TerminalRedetermination, ManyPossibleNamesAreCutHereAndWholeInTheTables) {
  auto sample = make_sample();
  std::string names = "Orla a";
  for (char name = 'b'; name <= 'l'; ++name) names += std::string{" | Orla "} + name;
  sample.redetermination.from_to = {{"Orla minor", names, {0, 0, 0, 0, 7, 0, 0, 0, 0, 0}, 7}};
  auto const text = redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination, {});
  EXPECT_NE(text.find("  Orla minor to Orla a | Orla b | Orla c and 9 more: open ........"),
            std::string::npos)
      << text;
  auto const html = redetermination_html(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination);
  EXPECT_NE(html.find("<td>Orla a | Orla b | Orla c and 9 more</td>"), std::string::npos);
  auto const json = json_of_redetermination(sample);
  EXPECT_NE(json.find(names), std::string::npos);
  auto const sums = test::whole_text(
      [&](TextSink const& sink) { write_summaries_csv(sample.redetermination, sink); });
  EXPECT_NE(sums.find(names), std::string::npos);
}

TEST(TerminalRedetermination, SaysNothingOfStorageWhereNoneIsRecorded) {
  auto sample = make_sample();
  change_each(sample.redetermination.worklist, [](WorkGroup& group) { group.storage.clear(); });
  auto const text = redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination, {});
  EXPECT_NE(text.find("  4 specimens to look at, with 3 different questions to answer.\n"),
            std::string::npos)
      << text;
  EXPECT_EQ(text.find("storage place"), std::string::npos);
}

TEST(TerminalCollation, CountsATaxonThatWasDividedOnceForAllItsParts) {
  auto sample = make_sample();
  TaxonChange part;
  part.old_taxa = {TaxonId{0}};
  part.new_taxa = {TaxonId{0}};
  part.events = {TaxonEvent::split};
  auto other = part;
  other.new_taxa = {TaxonId{1}};
  TaxonChange lump;
  lump.old_taxa = {TaxonId{2}};
  lump.new_taxa = {TaxonId{3}};
  lump.events = {TaxonEvent::lumped};
  auto second = lump;
  second.old_taxa = {TaxonId{3}};
  sample.collation.taxa = {part, other, lump, second};
  auto const text = collation_text(sample.old_edition, sample.new_edition, sample.collation, {});
  EXPECT_NE(
      text.find("divided ................................................................ 1\n"),
      std::string::npos)
      << text;
  EXPECT_NE(
      text.find("united ................................................................. 1\n"),
      std::string::npos)
      << text;
  auto const html = collation_html(sample.old_edition, sample.new_edition, sample.collation);
  EXPECT_NE(html.find("taxa divided</span><span class=\"dots\"></span><span class=\"n\">1<"),
            std::string::npos);
}

TEST(TerminalKeyout, CallsCharactersByTheirLabels) {
  auto sample = make_sample();
  sample.keyout.terminals[0].rests_on = {"beak-tip", "~n:spike|mm", "~leaves hairy"};
  sample.keyout.open_characters = sample.keyout.terminals[0].rests_on;
  Lexicon lexicon;
  lexicon.characters.push_back({.id = "beak-tip", .label = "tip of the beak"});
  auto const text =
      keyout_text(sample.new_edition, sample.specimen, sample.keyout, lexicon, {.width = 200});
  EXPECT_NE(text.find("rests on tip of the beak, “spike” and “leaves hairy”\n"), std::string::npos)
      << text;
  EXPECT_NE(text.find("look at tip of the beak, “spike” or “leaves hairy”.\n"), std::string::npos);
}

TEST(TerminalRedetermination, ARowOfSeveralOutcomesTellsThemApart) {
  auto sample = make_sample();
  change_each(sample.redetermination.from_to, [](FromTo& row) {
    if (row.from != "Orla clausa") return;
    row.by_outcome = {0, 0, 31, 0, 44, 0, 0, 0, 0, 0};
    row.specimens = 75;
  });
  auto const text = redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination, {});
  EXPECT_NE(text.find("75\n      31 changes, 44 open\n"), std::string::npos);
}

TEST(TerminalRedetermination, ManyPlacesAreSummedUpByTheirWidestPart) {
  auto sample = make_sample();
  auto& worklist = sample.redetermination.worklist;
  auto group = worklist[worklist.size() - 1];
  for (int folder = 1; folder <= 30; ++folder) {
    group.storage =
        "Cabinet " + std::to_string(2 + folder / 15) + " / Folder " + std::to_string(folder);
    worklist.push_back(group);
  }
  auto const text = redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination, {});
  auto const at = text.find("Specimens to pull, by storage place\n");
  ASSERT_NE(at, std::string::npos);
  auto const list = text.substr(at, text.find("\n\n", at) - at);
  EXPECT_NE(list.find("  Cabinet 2 ....."), std::string::npos) << list;
  EXPECT_NE(list.find(".. 15\n"), std::string::npos) << list;
  EXPECT_EQ(list.find("Folder"), std::string::npos);
}

TEST(TerminalRedetermination, TotalsAddUpToTheRecordsRead) {
  auto const sample = make_sample();
  auto const text = redetermination_text(sample.old_edition, sample.new_edition, sample.collation,
                                         sample.redetermination, {});
  EXPECT_NE(text.find("1,230 records read: 1,228 specimens judged, 2 set aside"),
            std::string::npos);
  EXPECT_NE(text.find("together       ................................................ 1,228"),
            std::string::npos);
}

TEST(TerminalKeyout, ALongListOfOpenCharactersIsCutAtEachEndAndWholeAtTheLast) {
  auto sample = make_sample();
  std::vector<std::string> characters;
  for (char c = 'a'; c < 'j'; ++c) characters.push_back(std::string("character ") + c);
  sample.keyout.terminals[0].rests_on = characters;
  sample.keyout.open_characters = characters;
  auto const text =
      keyout_text(sample.new_edition, sample.specimen, sample.keyout, {}, {.width = 200});
  EXPECT_NE(text.find("rests on character a, character b, character c, character d, character e, "
                      "character f and 3 more\n"),
            std::string::npos);
  EXPECT_NE(text.find("character g, character h or character i.\n"), std::string::npos);
}

}  // namespace
}  // namespace keydrift

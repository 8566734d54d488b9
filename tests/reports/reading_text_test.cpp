// How the lines of a source were taken, as `proof --explain` shows it.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "golden.hpp"
#include "keydrift/reports/terminal.hpp"

namespace keydrift {
namespace {

using test::expect_golden;

struct ReadForText {
  Edition edition;
  SourceReading source;
};

// The lines of a small key with all that may stand in one, as a reader would have taken them.
class ReadingMaker {
 public:
  ReadingMaker& line(std::string_view text, LineKind kind, std::string_view reason) {
    reading_.source.lines.push_back({number_++, kind, reason});
    reading_.source.text += text;
    reading_.source.text += '\n';
    return *this;
  }

  // Adds a lead that begins in the line made last; its words end there too.
  ReadingMaker& lead(std::uint32_t couplet, std::string label, std::string words,
                     std::string printed, Destination to) {
    auto& couplets = reading_.edition.couplets;
    couplets.resize(std::max<std::size_t>(couplets.size(), couplet));
    auto& owner = couplets[couplet - 1];
    owner.label = std::to_string(couplet);
    auto const line = number_ - 1;
    if (owner.leads.empty()) owner.place.line = line;
    Lead lead;
    lead.place = {.line = line, .column = 1, .begin = 0, .end = 0};
    auto const column = static_cast<std::uint32_t>(label.size() + 3);
    lead.label = std::move(label);
    lead.runs.push_back({0, {.line = line, .column = column, .begin = 0, .end = words.size()}});
    lead.text = std::move(words);
    lead.destination_printed = std::move(printed);
    lead.destination_place.line = line;
    lead.destination = std::move(to);
    owner.leads.push_back(std::move(lead));
    return *this;
  }

  ReadForText& reading() { return reading_; }

 private:
  ReadForText reading_;
  std::uint32_t number_{1};
};

ReadForText sample() {
  ReadingMaker make;
  auto& edition = make.reading().edition;
  edition.name = "shells.txt";
  edition.taxa = {{"Aus bus", "Smith, 1900", {}}, {"Aus cus", "", {}}};
  edition.parts = {{"Key to the shells", CoupletId{0}, {}}};
  make.reading().source.layout_note = "parallel layout, leads marked 1 and –";
  make.line("Key to the shells", LineKind::heading, "heading before the key")
      .line("", LineKind::blank, "")
      .line("", LineKind::blank, "")
      .line("1. Shell with a long spire, the last whorl not wider than the others ..... 2",
            LineKind::lead, "label")
      .lead(1, "1", "Shell with a long spire, the last whorl not wider than the others", "2",
            ToCouplet{CoupletId{1}})
      .line("– Shell flat ..... A. bus Smith, 1900, in part", LineKind::lead, "label")
      .lead(1, "–", "Shell flat", "A. bus Smith, 1900, in part", ToTaxa{{TaxonId{0}}});
  edition.couplets[0].leads[1].taxon_remark = "in part";
  make.line("", LineKind::blank, "")
      .line("    44", LineKind::page_number, "a number alone, where no destination is missing")
      .line("2. Foot pale ..... 9", LineKind::lead, "label")
      .lead(2, "2", "Foot pale", "9", Unresolved{"9"})
      .line("Foot dark ..... Key B", LineKind::lead, "no label, but leaders and a destination")
      .lead(2, "", "Foot dark", "Key B", ToKey{"Key B"})
      .line("Foot grey", LineKind::lead, "no label, but leaders and a destination")
      .lead(2, "", "Foot grey", "Aus bus, Aus cus", ToTaxa{{TaxonId{0}, TaxonId{1}}})
      .line("    Aus bus, Aus cus", LineKind::destination, "destination on a line of its own");
  edition.couplets[1].leads[2].destination_place.line = 11;
  make.line("Foot striped", LineKind::lead, "label").lead(2, "*", "Foot striped", "", Unresolved{});
  make.line("------", LineKind::skipped, "ruled line");
  return std::move(make.reading());
}

TEST(TerminalReading, TellsLineByLineWhatTheReaderTookThemFor) {
  auto const reading = sample();
  expect_golden("reports/reading.txt", reading_text(reading.edition, reading.source, {}));
}

TEST(TerminalReading, StaysWithinTheWidthWhateverTheLinesHold) {
  ReadingMaker make;
  make.reading().edition.name = "k.txt";
  std::string const wide(300, 'x');
  make.line("\t1. " + wide + "\x1b[31m " + wide, LineKind::lead, "label")
      .lead(1, "1", wide, wide, Unresolved{wide})
      .line("見出し見出し見出し見出し見出し見出し見出し見出し見出し見出し見出し", LineKind::note,
            "prose");
  for (unsigned const width : {40U, 80U, 132U}) {
    auto const text = reading_text(make.reading().edition, make.reading().source, {.width = width});
    EXPECT_EQ(text.find('\x1b'), std::string::npos);
    std::string_view rest = text;
    while (!rest.empty()) {
      auto const line = rest.substr(0, rest.find('\n'));
      EXPECT_LE(reports::display_width(line), width) << line;
      rest.remove_prefix(std::min(rest.size(), line.size() + 1));
    }
  }
}

}  // namespace
}  // namespace keydrift

// Tables read in blocks give what they give row by row, however they are cut.

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

#include "finding_text.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/occurrences.hpp"

namespace keydrift {
namespace {

using test::one_line_each;
using Lines = std::vector<std::string>;

Lines row_by_row(std::string const& bytes, char quote) {
  Lines lines;
  auto const stream = stream_of(bytes, 7);
  CsvReader reader{*stream, {.separator = ',', .quote = quote, .maximum_row_bytes = 60}};
  for (auto next = reader.next(); next != CsvReader::Next::end; next = reader.next()) {
    std::string line;
    if (next == CsvReader::Next::row) {
      line = std::to_string(reader.row().line) + " <" + std::string{reader.row().raw} + ">";
      for (auto const cell : reader.row().cells) line += " [" + std::string{cell} + "]";
    } else {
      auto const& reject = reader.reject();
      line = std::to_string(reject.line) + " " + std::string{reject.code} + " " +
             std::string{reject.message} + " <" + std::string{reject.raw} + ">";
    }
    lines.push_back(line);
  }
  for (auto const& remark : one_line_each(reader.remarks("s.csv"))) lines.push_back(remark);
  return lines;
}

Lines in_blocks(std::string const& bytes, char quote, std::size_t block_bytes, std::size_t chunk) {
  Lines lines;
  auto const stream = stream_of(bytes, chunk);
  CsvReader reader{*stream,
                   {.separator = ',',
                    .quote = quote,
                    .maximum_row_bytes = 60,
                    .block_bytes = std::max<std::size_t>(chunk, 16)}};
  CsvBlock block;
  while (reader.next_block(block, block_bytes)) {
    for (auto const& row : block.rows) {
      auto line = std::to_string(row.line) + " ";
      auto const raw = "<" + std::string{block.raw(row)} + ">";
      if (row.rejected) {
        auto const& why = block.rejects[row.first_cell];
        line += why.code + " " + why.message + " " + raw;
      } else {
        line += raw;
        for (std::uint32_t i = 0; i < row.cell_count; ++i) {
          line += " [" + std::string{block.text(block.cells[row.first_cell + i])} + "]";
        }
      }
      lines.push_back(line);
    }
  }
  for (auto const& remark : one_line_each(reader.remarks("s.csv"))) lines.push_back(remark);
  return lines;
}

// Rows of three cells, mostly; with everything that tables have in them.
std::string made_table(unsigned seed) {
  std::mt19937 random{seed};
  auto const below = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  std::vector<std::string> const ordinary{"a", "bus", "x y",         "\"q\"",        "\"a, b\"",
                                          "",  "12",  "Aus bus Orm", "\"two words\""};
  std::vector<std::string> const odd{"\"say \"\"no\"\"\"",
                                     "\"two\nlines\"",
                                     " \"z\" ",
                                     "o\"p",
                                     "\"never closed",
                                     std::string{"n\0l", 3},
                                     "\"w\" x",
                                     "\"\"",
                                     std::string(70, 'l'),
                                     "\r",
                                     " "};
  bool const unruly = below(3) != 0;
  std::string text = "one,two,three\n";
  auto const rows = 5 + below(60);
  for (unsigned i = 0; i < rows; ++i) {
    auto const cells = unruly && below(12) == 0 ? 1 + below(5) : 3;
    for (unsigned c = 0; c < cells; ++c) {
      if (c > 0) text += ',';
      bool const strange = unruly && below(10) == 0;
      text += strange ? odd[below(static_cast<unsigned>(odd.size()))]
                      : ordinary[below(static_cast<unsigned>(ordinary.size()))];
    }
    if (unruly && below(15) == 0) text += ",,";
    text += below(4) == 0 ? "\r\n" : unruly && below(20) == 0 ? "\r" : "\n";
    if (unruly && below(15) == 0) text += below(2) == 0 ? "\n" : ",,\n";
  }
  if (below(2) == 0) text += "last,row,open";
  return text;
}

TEST(CsvBlocks, GiveTheRowsAndRejectsOfTheReader) {
  for (unsigned seed = 1; seed <= 400; ++seed) {
    auto const text = made_table(seed);
    for (char const quote : {'"', '\0'}) {
      auto const whole = row_by_row(text, quote);
      for (auto const& [block, chunk] :
           {std::pair<std::size_t, std::size_t>{1, 5}, {64, 200}, {200, 64}, {100'000, 100'000}}) {
        ASSERT_EQ(in_blocks(text, quote, block, chunk), whole)
            << "seed " << seed << ", blocks of " << block << ", chunks of " << chunk;
      }
    }
  }
}

// --- occurrences -------------------------------------------------------------------------------

std::string told(Specimen const& specimen) {
  auto text = std::to_string(specimen.line);
  for (auto const& word :
       {specimen.catalog_number, specimen.occurrence_id, specimen.scientific_name,
        specimen.qualifier, specimen.identified_by, specimen.date_identified,
        specimen.identification_references, specimen.type_status, specimen.sex, specimen.life_stage,
        specimen.storage, specimen.remarks}) {
    text += "|" + word;
  }
  for (auto const& place : specimen.places) text += "@" + place;
  for (auto const& one : specimen.observations) {
    text += "#" + one.character + "=" + one.value + one.unit + ":" + std::to_string(one.column);
  }
  return text + (specimen.voucher ? "!" : "");
}

OccurrenceOptions with_characters() { return {.characters = {"margin", "spike length"}}; }

void append_counts(Lines& lines, OccurrenceReader const& reader) {
  auto const& counts = reader.counts();
  for (auto const count : {counts.rows, counts.specimens, counts.rejected, counts.without_name,
                           counts.repeated_numbers}) {
    lines.push_back(std::to_string(count));
  }
  for (auto const& finding : one_line_each(reader.findings())) lines.push_back(finding);
}

Lines specimens_one_by_one(std::string const& text) {
  Lines lines;
  auto const stream = stream_of(text, 1000);
  OccurrenceReader reader{*stream, "s.csv", with_characters()};
  for (;;) {
    auto const next = reader.next();
    if (next == OccurrenceReader::Next::specimen) {
      lines.push_back(told(reader.specimen()));
    } else if (next == OccurrenceReader::Next::reject) {
      lines.push_back(std::to_string(reader.reject().line) + " " +
                      std::string{reader.reject().code});
    } else {
      break;
    }
  }
  append_counts(lines, reader);
  return lines;
}

// The specimen as its numbers of words say.
Specimen decoded(CodedSpecimen const& coded, OccurrenceWorker const& words, Specimen brief) {
  auto const term = [&](CodedTerm which) {
    return std::string{words.term(which, coded.term(which))};
  };
  brief.line = coded.line;
  brief.voucher = coded.voucher;
  brief.qualifier = term(CodedTerm::qualifier);
  brief.identified_by = term(CodedTerm::identified_by);
  brief.sex = term(CodedTerm::sex);
  brief.life_stage = term(CodedTerm::life_stage);
  brief.scientific_name = term(CodedTerm::scientific_name);
  brief.places.clear();
  for (std::size_t i = 0; i < coded.places.size(); ++i) {
    for (auto const& place : words.places(i, coded.places[i])) brief.places.push_back(place);
  }
  brief.observations.clear();
  for (std::size_t i = 0; i < coded.characters.size(); ++i) {
    if (coded.characters[i] == kNoWord) continue;
    brief.observations.push_back({.character = std::string{words.characters()[i].character},
                                  .value = std::string{words.character(i, coded.characters[i])},
                                  .unit = std::string{words.characters()[i].unit},
                                  .line = coded.line,
                                  .column = 0});
  }
  return brief;
}

Lines specimens_in_blocks(std::string const& text, std::size_t block_bytes, std::size_t workers,
                          std::size_t& coded_rows) {
  Lines lines;
  auto const stream = stream_of(text, 1000);
  OccurrenceReader reader{*stream, "s.csv", with_characters()};
  EXPECT_TRUE(reader.start());
  std::vector<std::unique_ptr<OccurrenceWorker>> crew;
  for (std::size_t i = 0; i < workers; ++i) crew.push_back(reader.worker());
  OccurrenceBlock block;
  for (std::size_t turn = 0;
       reader.next_block(block, block_bytes) == OccurrenceReader::NextBlock::block; ++turn) {
    auto& worker = *crew[turn % workers];
    worker.begin(block);
    for (std::size_t i = 0; i < block.csv.rows.size(); ++i) {
      auto const& row = block.csv.rows[i];
      if (row.rejected) {
        lines.push_back(std::to_string(row.line) + " " + block.csv.rejects[row.first_cell].code);
        continue;
      }
      auto const* coded = worker.coded(i);
      std::string by_codes;
      if (coded != nullptr) {
        ++coded_rows;
        worker.take_coded();
        by_codes = told(decoded(*coded, worker, worker.brief(i)));
      }
      auto const* specimen = worker.read(i);
      if (specimen == nullptr) {
        lines.push_back(std::to_string(row.line) + " " + std::string{kNothingUsable});
        continue;
      }
      lines.push_back(told(*specimen));
      if (coded != nullptr) {
        auto plain = *specimen;
        plain.remarks.clear();
        for (auto& observation : plain.observations) observation.column = 0;
        EXPECT_EQ(by_codes, told(plain));
      }
      auto const number = worker.number();
      if (number != 0 && reader.repeats(number, row.line)) {
        reader.repeat_number(worker.printed_number(i), row.line);
      }
    }
  }
  for (auto& worker : crew) reader.absorb(*worker);
  append_counts(lines, reader);
  return lines;
}

std::string made_archive(unsigned seed, unsigned rows, bool many_words) {
  std::mt19937 random{seed};
  auto const below = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  std::string text =
      "catalogNumber,occurrenceID,institutionCode,scientificName,identificationQualifier,"
      "identifiedBy,dateIdentified,identificationReferences,typeStatus,sex,lifeStage,"
      "storageLocation,occurrenceRemarks,country,higherGeography,voucher,margin,spike length (mm)"
      "\n";
  auto const pick = [&](std::initializer_list<char const*> words) {
    return std::string{*(words.begin() + below(static_cast<unsigned>(words.size())))};
  };
  for (unsigned i = 0; i < rows; ++i) {
    text += pick({"", "A 1", "A 2", " B 3 "}) + (below(3) == 0 ? "" : std::to_string(below(999)));
    text += "," + pick({"", "", "urn:x:1", "urn:x:2"}) + "," + pick({"", "HLV", "ORM"}) + ",";
    text += many_words ? "Aus b" + std::to_string(i) + "us"
                       : pick({"Aus bus", "  Aus cus ", "", "NULL", "\\N", "Aus d\xC3\xBCs",
                               "Aus d\x75\xCC\x88s", "Aus d\xFCs", "Aus  extremely-long-epithetus",
                               "\"Aus, \"\"bus\"\"\""});
    text += "," + pick({"", "", "cf.", "aff."}) + "," + pick({"Orm", "Tal", "\"Orm, A.\""});
    text += "," + pick({"1998", "1998-05-01", ""}) + "," + pick({"", "Orm 1998"});
    text += "," + pick({"", "", "", "holotype of Aus bus"}) + "," + pick({"male", "female", ""});
    text += "," + pick({"adult", ""}) + ",Cabinet " + std::to_string(below(many_words ? 9999 : 9));
    text += "," + pick({"", "seen", "se\xE9n"}) + "," + pick({"Halvern", ""});
    text += "," + pick({"", "Halvern | Orm | Tal", " | "});
    text += "," + pick({"", "", "no", "yes", "x", "perhaps"}) + ",";
    text += pick({"scabrid", "smooth", "scabrid or smooth", "", "se\nx"}).substr(0, 17);
    text += "," + (below(2) == 0 ? "" : std::to_string(below(many_words ? 100'000 : 30)));
    text += below(30) == 0 ? ",,,,too many\n" : "\n";
    if (below(40) == 0) text += ",,,,,,,,,,,,x\n";
  }
  return text;
}

TEST(OccurrenceBlocks, GiveTheSpecimensAndFindingsOfTheReader) {
  std::size_t coded = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    auto const text = made_archive(seed, 60, false);
    auto const whole = specimens_one_by_one(text);
    ASSERT_EQ(specimens_in_blocks(text, 300, 1, coded), whole) << "seed " << seed;
    ASSERT_EQ(specimens_in_blocks(text, 900, 3, coded), whole) << "seed " << seed;
    ASSERT_EQ(specimens_in_blocks(text, 1'000'000, 2, coded), whole) << "seed " << seed;
  }
  EXPECT_GT(coded, 4000U);
}

TEST(OccurrenceBlocks, GoOnWhenAColumnHasTooManyDifferentWords) {
  std::size_t coded = 0;
  auto const text = made_archive(7, 12'000, true);
  EXPECT_TRUE(specimens_in_blocks(text, 100'000, 1, coded) == specimens_one_by_one(text));
  EXPECT_GT(coded, 6000U);
}

}  // namespace
}  // namespace keydrift

// A table of occurrences read in blocks by two workers gives what it gives row by row, whatever its
// bytes are and however it is cut.

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include "checks.hpp"
#include "keydrift/formats/csv.hpp"
#include "keydrift/formats/occurrences.hpp"

namespace {

using namespace keydrift;
using Lines = std::vector<std::string>;

constexpr std::size_t kChunk = 41;  // so that rows, quotes and code points fall on borders

std::string told(std::uint64_t line, std::string_view raw) {
  return std::to_string(line) + " <" + std::string{raw} + ">";
}

Lines rows_one_by_one(std::string_view bytes) {
  Lines lines;
  auto const stream = stream_of(bytes, kChunk);
  CsvReader reader{*stream, {.separator = ',', .maximum_row_bytes = 200}};
  for (auto next = reader.next(); next != CsvReader::Next::end; next = reader.next()) {
    if (next == CsvReader::Next::row) {
      lines.push_back(told(reader.row().line, reader.row().raw));
      for (auto const cell : reader.row().cells) lines.back() += " [" + std::string{cell} + "]";
    } else {
      lines.push_back(told(reader.reject().line, reader.reject().raw));
      lines.back() += " " + std::string{reader.reject().code};
    }
  }
  return lines;
}

Lines rows_in_blocks(std::string_view bytes, std::size_t block_bytes) {
  Lines lines;
  auto const stream = stream_of(bytes, kChunk);
  CsvReader reader{*stream, {.separator = ',', .maximum_row_bytes = 200, .block_bytes = kChunk}};
  CsvBlock block;
  while (reader.next_block(block, block_bytes)) {
    for (auto const& row : block.rows) {
      lines.push_back(told(row.line, block.raw(row)));
      if (row.rejected) {
        lines.back() += " " + block.rejects[row.first_cell].code;
        continue;
      }
      for (std::uint32_t i = 0; i < row.cell_count; ++i) {
        lines.back() += " [" + std::string{block.text(block.cells[row.first_cell + i])} + "]";
      }
    }
  }
  return lines;
}

std::string told(Specimen const& specimen) {
  auto text = std::to_string(specimen.line);
  for (auto const& word :
       {specimen.catalog_number, specimen.occurrence_id, specimen.scientific_name,
        specimen.qualifier, specimen.identified_by, specimen.date_identified,
        specimen.identification_references, specimen.type_status, specimen.sex, specimen.life_stage,
        specimen.storage}) {
    text += "|" + word;
  }
  for (auto const& place : specimen.places) text += "@" + place;
  for (auto const& one : specimen.observations) {
    text += "#" + one.character + "=" + one.value + one.unit;
  }
  return text + (specimen.voucher ? "!" : "");
}

void append_counts(Lines& lines, OccurrenceReader const& reader) {
  auto const& counts = reader.counts();
  for (auto const count : {counts.rows, counts.specimens, counts.rejected, counts.without_name,
                           counts.repeated_numbers}) {
    lines.push_back(std::to_string(count));
  }
  fuzz::check_findings(reader.findings());
  for (auto const& finding : reader.findings()) {
    lines.push_back(finding.code + " " + finding.message);
  }
}

OccurrenceOptions options() { return {.characters = {"margin", "spike length"}}; }

Lines specimens_one_by_one(std::string_view bytes) {
  Lines lines;
  auto const stream = stream_of(bytes, kChunk);
  OccurrenceReader reader{*stream, "s.csv", options()};
  if (!reader.start()) return lines;
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

Lines specimens_in_blocks(std::string_view bytes, std::size_t block_bytes) {
  Lines lines;
  auto const stream = stream_of(bytes, kChunk);
  OccurrenceReader reader{*stream, "s.csv", options()};
  if (!reader.start()) return lines;
  std::vector<std::unique_ptr<OccurrenceWorker>> crew;
  for (int i = 0; i < 2; ++i) crew.push_back(reader.worker());
  OccurrenceBlock block;
  for (std::size_t turn = 0;
       reader.next_block(block, block_bytes) == OccurrenceReader::NextBlock::block; ++turn) {
    auto& worker = *crew[turn % crew.size()];
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
        worker.take_coded();
        by_codes = told(decoded(*coded, worker, worker.brief(i)));
      }
      auto const* specimen = worker.read(i);
      if (specimen == nullptr) {
        lines.push_back(std::to_string(row.line) + " " + std::string{kNothingUsable});
        continue;
      }
      lines.push_back(told(*specimen));
      fuzz::expect(coded == nullptr || by_codes == lines.back(),
                   "a row as numbers of words says what it says in words");
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

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  auto const bytes = fuzz::as_text(data, size);
  auto const rows = rows_one_by_one(bytes);
  auto const specimens = specimens_one_by_one(bytes);
  for (std::size_t const block_bytes : {std::size_t{1}, std::size_t{90}, std::size_t{1} << 20}) {
    fuzz::expect(rows_in_blocks(bytes, block_bytes) == rows, "blocks hold the rows of the table");
    fuzz::expect(specimens_in_blocks(bytes, block_bytes) == specimens,
                 "blocks hold the specimens of the table");
  }
  return 0;
}

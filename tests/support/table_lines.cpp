#include "table_lines.hpp"

#include <cstdint>
#include <memory>

#include "keydrift/formats/occurrences.hpp"

namespace keydrift::test {
namespace {

std::string line_of(std::uint64_t line, std::string_view raw) {
  return std::to_string(line) + " <" + std::string{raw} + ">";
}

void append_findings(Lines& lines, std::vector<Finding> const& findings) {
  for (auto const& finding : findings) {
    lines.push_back(std::to_string(finding.place.line) + ":" +
                    std::to_string(finding.place.column) + ": " + to_word(finding.severity) + ": " +
                    finding.message + " [" + finding.code + "] (" + finding.remedy + ")");
  }
}

std::string told(Specimen const& specimen) {
  auto text = std::to_string(specimen.line);
  for (auto const& word :
       {specimen.catalog_number, specimen.occurrence_id, specimen.scientific_name,
        specimen.authorship, specimen.qualifier, specimen.identified_by, specimen.date_identified,
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
  append_findings(lines, reader.findings());
}

// The specimen as its numbers of words say.
Specimen decoded(CodedSpecimen const& coded, OccurrenceWorker const& words, Specimen brief) {
  auto const term = [&](CodedTerm which) {
    return std::string{words.term(which, coded.term(which))};
  };
  brief.line = coded.line;
  brief.voucher = coded.voucher;
  brief.authorship = term(CodedTerm::authorship);
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

// What numbers of words leave out.
Specimen without_places(Specimen specimen) {
  specimen.remarks.clear();
  for (auto& observation : specimen.observations) observation.column = 0;
  return specimen;
}

}  // namespace

Lines rows_one_by_one(std::string_view bytes, CsvOptions const& options, std::size_t chunk) {
  Lines lines;
  auto const stream = stream_of(bytes, chunk);
  CsvReader reader{*stream, options};
  for (auto next = reader.next(); next != CsvReader::Next::end; next = reader.next()) {
    if (next == CsvReader::Next::row) {
      auto line = line_of(reader.row().line, reader.row().raw);
      for (auto const cell : reader.row().cells) line += " [" + std::string{cell} + "]";
      lines.push_back(std::move(line));
    } else {
      auto const& reject = reader.reject();
      lines.push_back(line_of(reject.line, reject.raw) + " " + std::string{reject.code} + " " +
                      std::string{reject.message});
    }
  }
  append_findings(lines, reader.remarks("s.csv"));
  return lines;
}

Lines rows_in_blocks(std::string_view bytes, CsvOptions const& options, std::size_t chunk,
                     std::size_t block_bytes) {
  Lines lines;
  auto const stream = stream_of(bytes, chunk);
  CsvReader reader{*stream, options};
  CsvBlock block;
  while (reader.next_block(block, block_bytes)) {
    for (auto const& row : block.rows) {
      auto line = line_of(row.line, block.raw(row));
      if (row.rejected) {
        auto const& why = block.rejects[row.first_cell];
        line += " " + why.code + " " + why.message;
      } else {
        for (std::uint32_t i = 0; i < row.cell_count; ++i) {
          line += " [" + std::string{block.text(block.cells[row.first_cell + i])} + "]";
        }
      }
      lines.push_back(std::move(line));
    }
  }
  append_findings(lines, reader.remarks("s.csv"));
  return lines;
}

Lines specimens_one_by_one(std::string_view bytes, std::size_t chunk) {
  Lines lines;
  auto const stream = stream_of(bytes, chunk);
  OccurrenceReader reader{*stream, "s.csv", with_characters()};
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

BlocksRead specimens_in_blocks(std::string_view bytes, std::size_t chunk, std::size_t block_bytes,
                               std::size_t workers) {
  BlocksRead read;
  auto const stream = stream_of(bytes, chunk);
  OccurrenceReader reader{*stream, "s.csv", with_characters()};
  if (!reader.start()) return read;
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
        read.lines.push_back(std::to_string(row.line) + " " +
                             block.csv.rejects[row.first_cell].code);
        continue;
      }
      auto const* coded = worker.coded(i);
      std::string by_codes;
      if (coded != nullptr) {
        ++read.coded;
        worker.take_coded();
        by_codes = told(decoded(*coded, worker, worker.brief(i)));
      }
      auto const* specimen = worker.read(i);
      if (specimen == nullptr) {
        read.lines.push_back(std::to_string(row.line) + " " + std::string{kNothingUsable});
        continue;
      }
      read.lines.push_back(told(*specimen));
      if (coded != nullptr && by_codes != told(without_places(*specimen))) {
        read.otherwise.push_back(std::move(by_codes));
      }
      auto const number = worker.number();
      if (number != 0 && reader.meet_number(number, row.line)) {
        reader.take_number(worker.printed_number(i));
      }
    }
  }
  for (auto& worker : crew) reader.absorb(*worker);
  append_counts(read.lines, reader);
  return read;
}

}  // namespace keydrift::test

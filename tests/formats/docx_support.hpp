#pragma once
// Small manuscripts (.docx) put together from the XML that a test gives.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_key.hpp"
#include "zip_bytes.hpp"

namespace keydrift::test {

// The parts beside the text; empty ones are left out, the others are the content of their root.
struct DocxParts {
  std::string numbering{};
  std::string styles{};
  std::string footnotes{};
  std::string comments{};
  std::string header{};
  bool strict{false};
};

// The archive of a manuscript whose w:body holds `body`.
[[nodiscard]] std::string docx_bytes(std::string_view body, DocxParts const& parts = {});
// Its entries, for tests that damage one.
[[nodiscard]] std::vector<ZipEntry> docx_entries(std::string_view body,
                                                 DocxParts const& parts = {});

// A paragraph of one run; "\t" and "\n" become w:tab and w:br.  `properties`: content of w:pPr.
[[nodiscard]] std::string paragraph(std::string_view text, std::string_view properties = {});
// A paragraph of the given runs.
[[nodiscard]] std::string paragraph_of(std::string_view runs, std::string_view properties = {});
[[nodiscard]] std::string run(std::string_view text, std::string_view properties = {});
// A row of a table, each cell of the given content.
[[nodiscard]] std::string row(std::vector<std::string> const& cells);
// The same of a paragraph of plain text each.
[[nodiscard]] std::string cells(std::vector<std::string> const& texts);
[[nodiscard]] std::string table(std::vector<std::string> const& rows);

// w:numPr of that numbering and level.
[[nodiscard]] std::string numbered(std::string_view num_id, std::string_view level = "0");

struct DocxReading {
  std::string lines;   // SourceReading::text
  std::string sketch;  // of the edition; "" when nothing was loaded
  std::vector<std::string> findings;
  PrintedReading reading;
};
[[nodiscard]] DocxReading read_manuscript_bytes(std::string_view bytes);
[[nodiscard]] DocxReading read_body(std::string_view body, DocxParts const& parts = {});

}  // namespace keydrift::test

#pragma once
// meta.xml: which files of a Darwin Core archive are tables, and how they are written.  Inner
// header of formats.
//
// Source: Darwin Core text guide, issue 2023-09-13, http://rs.tdwg.org/dwc/terms/guides/text/ ,
// with its defaults: UTF-8, fields parted by a comma, enclosed by the double quote, no header
// lines.

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

struct MetaField {
  std::optional<std::size_t> index{};  // column, 0-based; absent: the default holds for every row
  std::string term{};                  // as printed: an IRI
  std::string default_value{};         // where the cell is missing or empty
  std::string delimited_by{};          // between the items of a list; "" where none is declared
};

struct MetaTable {
  std::string row_type{};            // local part of the IRI: "Occurrence", "Identification", …
  std::vector<std::string> files{};  // parts of one table, relative to meta.xml
  char separator{','};
  std::optional<char> quote{'"'};   // absent: nothing is enclosed
  std::uint64_t header_lines{};     // physical lines at the beginning of each file
  std::optional<std::size_t> id{};  // column of the core id
  std::vector<MetaField> fields{};
  Place place{};
};

struct Meta {
  MetaTable core{};
  std::vector<MetaTable> extensions{};
};

// Errors: those of the XML reader; no-core, no-files, unsupported-separator (more than one byte, or
// lines that end otherwise than text does), unsupported-encoding, bad-index, remote-table, and
// unsafe-path: a location that leads out of the archive.  Warnings: unmapped-field (neither index
// nor default), duplicate-term (the first counts), no-core-id (extensions cannot be joined).
[[nodiscard]] Loaded<Meta> read_meta(Source source);

}  // namespace keydrift

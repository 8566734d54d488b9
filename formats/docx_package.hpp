#pragma once
// The parts of a word-processor manuscript (ISO/IEC 29500-2, Open Packaging Conventions).  Inner
// header of formats.

#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/formats/xml_document.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::docx {

struct Package {
  xml::Document main;
  std::optional<xml::Document> styles;
  std::optional<xml::Document> numbering;
  std::optional<xml::Document> footnotes;
  std::optional<xml::Document> endnotes;
  std::optional<xml::Document> comments;
  std::vector<xml::Document> margins;  // headers and footers
};

// Opens the archive and parses the parts that matter, told by their relationships.  Errors: those
// of PackedFile and xml::parse (about "FILE (PART)"), damaged-manuscript (a part is not there, or
// is no WordprocessingML).
[[nodiscard]] Loaded<Package> open_package(Source source, ReadLimits const& limits);

}  // namespace keydrift::docx

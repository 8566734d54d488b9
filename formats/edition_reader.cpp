#include "keydrift/formats/edition_reader.hpp"

#include <iterator>
#include <string>
#include <utility>

#include "keydrift/formats/docx.hpp"
#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/hypertext.hpp"
#include "keydrift/formats/jats_read.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/key_sheet.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/sdd_read.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift {
namespace {

// UTF-16 hides the brace of a JSON file from file_kind().
FileKind kind_of_source(Source const& source, ReadLimits const& limits) {
  auto const kind = file_kind(source.bytes);
  // Pictures may stand before the parts by which a manuscript is known.
  if (kind == FileKind::zip && source.bytes.find("word/document") != std::string_view::npos) {
    return FileKind::word_2007;
  }
  // "[1, 2]" begins as a printed label may.
  if (kind == FileKind::text && source.name.ends_with(".json")) {
    auto const first = source.bytes.find_first_not_of(" \t\r\n");
    if (first != std::string_view::npos && source.bytes[first] == '[') return FileKind::json;
  }
  if (kind != FileKind::text || source.bytes.substr(0, 64).find('\0') == std::string_view::npos) {
    return kind;
  }
  auto const decoded = decode_text(source, {.maximum_bytes = limits.bytes});
  return decoded ? file_kind(decoded.value->text) : kind;
}

Loaded<EditionReading> with_lines(Loaded<PrintedReading>&& reading) {
  Loaded<EditionReading> loaded;
  loaded.findings = std::move(reading.findings);
  if (reading) {
    loaded.value =
        EditionReading{std::move(reading.value->edition), std::move(reading.value->source)};
  }
  return loaded;
}

// Forms of XML are told by the document, not by its first characters.
Loaded<EditionReading> read_xml(Source const& source, ReadLimits const& limits) {
  Loaded<EditionReading> loaded;
  auto document = xml::parse(source, limits, xml::Doctype::external_passed_over);
  loaded.findings = std::move(document.findings);
  if (!document) return loaded;
  auto const take_findings = [&loaded](std::vector<Finding>& more) {
    loaded.findings.insert(loaded.findings.end(), std::make_move_iterator(more.begin()),
                           std::make_move_iterator(more.end()));
  };
  if (is_sdd(*document.value)) {
    auto edition = read_sdd(*document.value);
    take_findings(edition.findings);
    if (edition) loaded.value = EditionReading{std::move(*edition.value), std::nullopt};
    return loaded;
  }
  if (!is_jats(*document.value)) {
    Finding finding;
    finding.code = "unsupported-file";
    finding.file = std::string{source.name};
    finding.place = document.value->place(document.value->root());
    finding.printed = std::string{"<"} + document.value->root().name() + ">";
    finding.message = "this is an XML file of a form that is not read";
    finding.remedy = way_to_text(FileKind::xml);
    loaded.findings.push_back(std::move(finding));
    return loaded;
  }
  auto reading = with_lines(read_jats(*document.value, limits));
  take_findings(reading.findings);
  loaded.value = std::move(reading.value);
  return loaded;
}

// Word processors pack a manuscript with a password into a compound file with this stream, its name
// in UTF-16 ([MS-OFFCRYPTO] 1.3.3, from memory).
bool is_locked(std::string_view compound_file) {
  std::string name;
  for (char const c : std::string_view{"EncryptedPackage"}) {
    name += c;
    name += '\0';
  }
  return compound_file.find(name) != std::string_view::npos;
}

}  // namespace

Loaded<EditionReading> read_edition(Source source, ReadLimits const& limits) {
  auto const kind = kind_of_source(source, limits);
  switch (kind) {
    case FileKind::json: {
      auto edition = read_key_json(source, limits);
      Loaded<EditionReading> loaded;
      loaded.findings = std::move(edition.findings);
      if (edition) loaded.value = EditionReading{std::move(*edition.value), std::nullopt};
      return loaded;
    }
    case FileKind::text:
      if (auto const columns = sheet_in_columns(source.bytes)) {
        return with_lines(read_printed_key({.name = source.name, .bytes = *columns}, limits));
      }
      [[fallthrough]];
    case FileKind::empty:
      return with_lines(is_hypertext(source.bytes) ? read_hypertext(source, limits)
                                                   : read_printed_key(source, limits));
    case FileKind::html:
      return with_lines(read_hypertext(source, limits));
    case FileKind::word_2007:
      return with_lines(read_docx(source, limits));
    case FileKind::xml:
      return read_xml(source, limits);
    case FileKind::zip:
    case FileKind::sheet_2007:
    case FileKind::open_document:
    case FileKind::darwin_core_archive:
    case FileKind::old_office:
    case FileKind::rich_text:
    case FileKind::pdf:
    case FileKind::gzip:
    case FileKind::compressed:
    case FileKind::tape:
    case FileKind::picture:
    case FileKind::database:
    case FileKind::binary:
      break;
  }
  if (kind == FileKind::binary) {
    if (auto told = nul_in_text(source, "unsupported-file"))
      return {std::nullopt, {*std::move(told)}};
  }
  Finding finding;
  finding.code = "unsupported-file";
  finding.file = std::string{source.name};
  finding.message =
      std::string{"this is "} + to_phrase(kind) + ", which is no form of key that is read";
  finding.remedy = way_to_text(kind);
  if (kind == FileKind::old_office && is_locked(source.bytes)) {
    finding.message = "this is a manuscript that is locked with a password";
    finding.remedy = "open it in the word processor and save it without a password";
  }
  Loaded<EditionReading> loaded;
  loaded.findings.push_back(std::move(finding));
  return loaded;
}

}  // namespace keydrift

#include "keydrift/formats/edition_reader.hpp"

#include <string>
#include <utility>

#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/printed_key.hpp"

namespace keydrift {
namespace {

// UTF-16 hides the brace of a JSON file from file_kind().
FileKind kind_of(Source const& source) {
  auto const kind = file_kind(source.bytes);
  if (kind != FileKind::text || source.bytes.substr(0, 64).find('\0') == std::string_view::npos) {
    return kind;
  }
  auto const decoded = decode_text(source);
  return decoded ? file_kind(decoded.value->text) : kind;
}

}  // namespace

Loaded<EditionReading> read_edition(Source source, ReadLimits const& limits) {
  auto const kind = kind_of(source);
  switch (kind) {
    case FileKind::json: {
      auto edition = read_key_json(source);
      Loaded<EditionReading> loaded;
      loaded.findings = std::move(edition.findings);
      if (edition) loaded.value = EditionReading{std::move(*edition.value), std::nullopt};
      return loaded;
    }
    case FileKind::text:
    case FileKind::empty: {
      auto reading = read_printed_key(source, limits);
      Loaded<EditionReading> loaded;
      loaded.findings = std::move(reading.findings);
      if (reading) {
        loaded.value =
            EditionReading{std::move(reading.value->edition), std::move(reading.value->source)};
      }
      return loaded;
    }
    case FileKind::xml:
    case FileKind::html:
    case FileKind::zip:
    case FileKind::word_2007:
    case FileKind::sheet_2007:
    case FileKind::open_document:
    case FileKind::darwin_core_archive:
    case FileKind::old_office:
    case FileKind::rich_text:
    case FileKind::pdf:
    case FileKind::gzip:
    case FileKind::compressed:
    case FileKind::picture:
    case FileKind::database:
    case FileKind::binary:
      break;
  }
  Finding finding;
  finding.code = "unsupported-file";
  finding.file = std::string{source.name};
  finding.message =
      std::string{"this is "} + to_phrase(kind) + ", not a key as plain text or as keydrift's JSON";
  finding.remedy = way_to_text(kind);
  Loaded<EditionReading> loaded;
  loaded.findings.push_back(std::move(finding));
  return loaded;
}

}  // namespace keydrift

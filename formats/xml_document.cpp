#include "keydrift/formats/xml_document.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/formats/text_encodings.hpp"
#include "keydrift/formats/xml_scan.hpp"

namespace keydrift::xml {
namespace {

constexpr std::size_t kStride = 1024;  // bytes; a place costs at most a walk over so many

bool starts_code_point(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80; }

Finding finding_of(std::string_view file, std::string code, Severity severity, std::string message,
                   std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = std::string{file};
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

// UTF-16 of either order and UTF-8 are each believed by their form.
bool agrees(Encoding declared, Encoding read) {
  if (encodings::is_wide(declared)) return encodings::is_wide(read);
  return declared == read;
}

// False when the bytes cannot be what the declaration says and nothing better is known.
// `asked`: what the user says.
bool check_encoding(DecodedText const& decoded, std::optional<Encoding> asked,
                    std::vector<Finding>& findings) {
  auto const label = declared_encoding(decoded.text);
  if (label.empty() || is_ascii(decoded.text)) return true;  // reads the same in every encoding
  auto const declared = encoding_by_label(label);
  if (declared && agrees(*declared, decoded.encoding)) return true;
  if (asked && *asked == decoded.encoding) return true;
  auto const begin = static_cast<std::size_t>(label.data() - decoded.text.data());
  auto const end = begin + label.size();
  auto const add = [&](std::string code, Severity severity, std::string message,
                       std::string remedy) {
    auto finding =
        finding_of(decoded.name, std::move(code), severity, std::move(message), std::move(remedy));
    finding.place = PlaceIndex{std::string_view{decoded.text}.substr(0, end)}.at(begin, end);
    finding.printed = std::string{label};
    findings.push_back(std::move(finding));
  };
  if (!declared && encodings::is_wide(decoded.encoding)) return true;
  if (!declared && decoded.encoding != Encoding::utf_8) {
    add("unsupported-encoding", Severity::error,
        "the XML declaration names the encoding \"" + std::string{label} + "\", which is not read",
        "save the file as UTF-8, with encoding=\"UTF-8\" in its first line, or tell what it is in "
        "with --encoding NAME");
    return false;
  }
  add("encoding-conflict", Severity::warning,
      "the XML declaration says \"" + std::string{label} + "\", but the bytes are " +
          to_word(decoded.encoding) + " and were read as that",
      "mend the declaration, and check the letters with accents");
  return true;
}

}  // namespace

PlaceIndex::PlaceIndex(std::string_view text) : text_{text} {
  marks_.reserve(text.size() / kStride + 1);
  Mark mark{.line = 1, .column = 1};
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i % kStride == 0) marks_.push_back(mark);
    if (text[i] == '\n') {
      ++mark.line;
      mark.column = 1;
    } else if (starts_code_point(text[i])) {
      ++mark.column;
    }
  }
  if (text.size() % kStride == 0) marks_.push_back(mark);
}

Place PlaceIndex::at(std::size_t begin, std::size_t end) const {
  auto mark = marks_[begin / kStride];
  for (std::size_t i = begin / kStride * kStride; i < begin; ++i) {
    if (text_[i] == '\n') {
      ++mark.line;
      mark.column = 1;
    } else if (starts_code_point(text_[i])) {
      ++mark.column;
    }
  }
  return {.line = mark.line, .column = mark.column, .begin = begin, .end = end};
}

Document::Document(DecodedText source, std::unique_ptr<pugi::xml_document> tree)
    : source_{std::make_unique<DecodedText>(std::move(source))},
      tree_{std::move(tree)},
      places_{source_->text} {}

std::size_t Document::offset(pugi::xml_node node) const {
  auto const at = node.offset_debug();  // of an element's name, of a text's first byte
  if (at < 0) return 0;
  auto const offset = static_cast<std::size_t>(at);
  return node.type() == pugi::node_element && offset > 0 ? offset - 1 : offset;
}

Place Document::place(pugi::xml_node node) const {
  auto const begin = offset(node);
  auto const length =
      node.type() == pugi::node_element ? 1 + std::string_view{node.name()}.size() : 0;
  return places_.at(begin, std::min(begin + length, source_->text.size()));
}

std::string_view local_name(pugi::xml_node node) {
  std::string_view name = node.name();
  auto const colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

Loaded<Document> parse(Source source, ReadLimits const& limits, Doctype doctype) {
  Loaded<Document> loaded;
  // Of a label that is not known, check_encoding() tells.
  auto const label = declared_encoding(source.bytes);
  auto decoded =
      decode_text(source, {.maximum_bytes = limits.bytes,
                           .declared = encoding_by_label(label) ? label : std::string_view{}});
  loaded.findings = std::move(decoded.findings);
  if (!decoded) return loaded;
  if (!check_encoding(*decoded.value, source.encoding, loaded.findings)) return loaded;
  auto const& text = decoded.value->text;
  if (!scan(decoded.value->name, text, PlaceIndex{text}, limits, doctype, loaded.findings)) {
    return loaded;
  }
  auto tree = std::make_unique<pugi::xml_document>();
  auto const result =
      tree->load_buffer(text.data(), text.size(),
                        pugi::parse_cdata | pugi::parse_escapes | pugi::parse_wconv_attribute |
                            pugi::parse_eol | pugi::parse_ws_pcdata,
                        pugi::encoding_utf8);
  if (!result) {
    auto const offset =
        std::min(static_cast<std::size_t>(std::max(result.offset, std::ptrdiff_t{})), text.size());
    auto finding = finding_of(decoded.value->name, "malformed-xml", Severity::error,
                              std::string{"this is not well-formed XML: "} + result.description(),
                              "mend it here, or a little before this place");
    finding.place = PlaceIndex{text}.at(offset, offset);
    loaded.findings.push_back(std::move(finding));
    return loaded;
  }
  loaded.value.emplace(std::move(*decoded.value), std::move(tree));
  return loaded;
}

}  // namespace keydrift::xml

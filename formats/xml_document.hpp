#pragma once
// XML as a tree in which every node knows its place.  Inner header of formats.

#include <cstdint>
#include <memory>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::xml {

// Lines and columns of a text's bytes, in constant time however long its lines are (XML is often
// one line).  Borrows the text.
class PlaceIndex {
 public:
  explicit PlaceIndex(std::string_view text);
  // Precondition: begin <= end <= text.size(), both on code point borders.
  [[nodiscard]] Place at(std::size_t begin, std::size_t end) const;

 private:
  struct Mark {
    std::uint32_t line;
    std::uint32_t column;
  };
  std::string_view text_;
  std::vector<Mark> marks_;  // at every kStride-th byte
};

// What a document type declaration costs a file.  None is ever followed out of the file.
enum class Doctype : std::uint8_t {
  refused,
  // "<!DOCTYPE article PUBLIC … …>" is passed over and said; one that declares anything itself
  // (entities above all) is refused all the same.  Of the entities that it may declare those that
  // name characters in HTML 4.01 or ISO's Latin sets are known: read_flow() puts the characters.
  external_passed_over,
};

// A well-formed document.  Blanks between elements are nodes; comments and processing instructions
// are not.  Texts may be split into several nodes (by comments, CDATA sections), and are NFC only
// as written: references to combining characters are not composed.
class Document {
 public:
  Document(DecodedText source, std::unique_ptr<pugi::xml_document> tree);

  [[nodiscard]] pugi::xml_node root() const { return tree_->document_element(); }
  [[nodiscard]] std::string const& name() const { return source_->name; }
  [[nodiscard]] std::string_view text() const { return source_->text; }

  // Of an element: its start tag's "<" and name.  Of a text: its first byte, nothing after.
  [[nodiscard]] Place place(pugi::xml_node node) const;
  // Of any stretch of text().
  [[nodiscard]] Place place(std::size_t begin, std::size_t end) const {
    return places_.at(begin, end);
  }
  // Byte offset into text() of an element's "<", or of a text's first byte.
  [[nodiscard]] std::size_t offset(pugi::xml_node node) const;

 private:
  std::unique_ptr<DecodedText> source_;  // a home that does not move, for places_
  std::unique_ptr<pugi::xml_document> tree_;
  PlaceIndex places_;
};

// The name without its prefix: "taxon-name" of "tp:taxon-name".
[[nodiscard]] std::string_view local_name(pugi::xml_node node);

// Decodes as decode_text does; the declaration's encoding decides where the bytes allow it.
//
// Errors: those of decode_text; malformed-xml, xml-too-deep (limits.depth), xml-too-large
// (limits.xml_nodes), doctype, xml-entities, unknown-entity, unsupported-encoding.  Warnings:
// encoding-conflict; unknown-entity where a DTD that was passed over may declare another (the
// reference stays as printed).  Information: external-dtd.
[[nodiscard]] Loaded<Document> parse(Source source, ReadLimits const& limits = {},
                                     Doctype doctype = Doctype::refused);

}  // namespace keydrift::xml

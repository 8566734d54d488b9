#include "docx_support.hpp"

#include "finding_text.hpp"
#include "keydrift/formats/docx.hpp"
#include "printed_support.hpp"

namespace keydrift::test {
namespace {

std::string root(std::string_view name, std::string_view content, bool strict) {
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n<w:";
  text += name;
  text += strict ? " xmlns:w=\"http://purl.oclc.org/ooxml/wordprocessingml/main\">"
                 : " xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\" "
                   "xmlns:mc=\"http://schemas.openxmlformats.org/markup-compatibility/2006\" "
                   "xmlns:v=\"urn:schemas-microsoft-com:vml\">";
  return text.append(content).append("</w:").append(name).append(">");
}

}  // namespace

std::vector<ZipEntry> docx_entries(std::string_view body, DocxParts const& parts) {
  std::string const types =
      parts.strict ? "http://purl.oclc.org/ooxml/officeDocument/relationships/"
                   : "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
  std::string const open =
      "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">";
  std::vector<ZipEntry> entries{
      {"_rels/.rels", open + "<Relationship Id=\"r1\" Type=\"" + types +
                          "officeDocument\" Target=\"word/document.xml\"/></Relationships>"},
      {"word/document.xml",
       root("document", "<w:body>" + std::string{body} + "<w:sectPr/></w:body>", parts.strict)}};
  std::string relationships;
  auto const add = [&](std::string const& kind, std::string const& name,
                       std::string const& content) {
    if (content.empty()) return;
    relationships += "<Relationship Id=\"" + kind + "\" Type=\"" + types + kind + "\" Target=\"" +
                     kind + ".xml\"/>";
    entries.push_back({"word/" + kind + ".xml", root(name, content, parts.strict)});
  };
  add("numbering", "numbering", parts.numbering);
  add("styles", "styles", parts.styles);
  add("footnotes", "footnotes", parts.footnotes);
  add("comments", "comments", parts.comments);
  add("header", "hdr", parts.header);
  entries.push_back({"word/_rels/document.xml.rels", open + relationships + "</Relationships>"});
  return entries;
}

std::string docx_bytes(std::string_view body, DocxParts const& parts) {
  return zip_bytes(docx_entries(body, parts));
}

std::string run(std::string_view text, std::string_view properties) {
  std::string out =
      "<w:r><w:rPr>" + std::string{properties} + "</w:rPr><w:t xml:space=\"preserve\">";
  for (char const c : text) {
    if (c == '\t' || c == '\n') {
      out += std::string{"</w:t>"} + (c == '\t' ? "<w:tab/>" : "<w:br/>") +
             "<w:t xml:space=\"preserve\">";
    } else {
      out += c;
    }
  }
  return out + "</w:t></w:r>";
}

std::string paragraph_of(std::string_view runs, std::string_view properties) {
  return "<w:p><w:pPr>" + std::string{properties} + "</w:pPr>" + std::string{runs} + "</w:p>";
}

std::string paragraph(std::string_view text, std::string_view properties) {
  return paragraph_of(run(text), properties);
}

std::string row(std::vector<std::string> const& cells) {
  std::string out = "<w:tr>";
  for (auto const& cell : cells) out += "<w:tc>" + cell + "</w:tc>";
  return out + "</w:tr>";
}

std::string cells(std::vector<std::string> const& texts) {
  std::vector<std::string> contents;
  contents.reserve(texts.size());
  for (auto const& text : texts) contents.push_back(paragraph(text));
  return row(contents);
}

std::string table(std::vector<std::string> const& rows) {
  std::string out = "<w:tbl><w:tblPr/>";
  for (auto const& one : rows) out += one;
  return out + "</w:tbl>";
}

std::string numbered(std::string_view num_id, std::string_view level) {
  return "<w:numPr><w:ilvl w:val=\"" + std::string{level} + "\"/><w:numId w:val=\"" +
         std::string{num_id} + "\"/></w:numPr>";
}

DocxReading read_manuscript_bytes(std::string_view bytes) {
  auto loaded = read_docx({.name = "k.docx", .bytes = bytes});
  DocxReading read;
  read.findings = one_line_each(loaded.findings);
  if (!loaded) return read;
  read.reading = std::move(*loaded.value);
  read.lines = read.reading.source.text;
  read.sketch = sketch(read.reading.edition);
  return read;
}

DocxReading read_body(std::string_view body, DocxParts const& parts) {
  return read_manuscript_bytes(docx_bytes(body, parts));
}

}  // namespace keydrift::test

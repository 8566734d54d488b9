#pragma once
// Small articles around invented keys.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "finding_text.hpp"
#include "keydrift/formats/jats_read.hpp"
#include "printed_support.hpp"

namespace keydrift::test {

// How sketch() shows a key of two couplets that several tests print in many ways.
inline constexpr std::string_view kTwoCouplets =
    "1[1] Wings clear -> 2\n1[–] Wings dark -> Aus bus\n"
    "2[2] Legs long -> Aus cus\n2[–] Legs short -> Aus dus\n";

inline std::string sec(std::string_view title, std::string_view content) {
  return "<sec><title>" + std::string{title} + "</title>" + std::string{content} + "</sec>\n";
}

// An article whose body is `body`, from line 3 on.
inline std::string article(std::string_view body) {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<article xmlns:tp=\"urn:x\" "
         "xmlns:xlink=\"urn:y\" xml:lang=\"en\"><body>\n" +
         std::string{body} + "\n</body></article>\n";
}

// A section of that title holding one key table of the given rows.
inline std::string key_section(std::string_view title, std::string_view rows) {
  return article("<sec sec-type=\"key\"><title>" + std::string{title} +
                 "</title>\n<table-wrap content-type=\"key\"><table><tbody>\n" + std::string{rows} +
                 "\n</tbody></table></table-wrap></sec>");
}

// "<tr><td>a</td><td>b</td></tr>" of "a|b", a row for each line.
inline std::string rows(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    auto line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(line.size() + 1, text.size()));
    out += "<tr>";
    for (;;) {
      auto const bar = line.find('|');
      out += "<td>" + std::string{line.substr(0, bar)} + "</td>";
      if (bar == std::string_view::npos) break;
      line.remove_prefix(bar + 1);
    }
    out += "</tr>\n";
  }
  return out;
}

inline Loaded<PrintedReading> read_article(std::string_view bytes) {
  auto document =
      xml::parse({.name = "a.xml", .bytes = bytes}, {}, xml::Doctype::external_passed_over);
  Loaded<PrintedReading> loaded;
  loaded.findings = document.findings;
  if (!document) return loaded;
  auto reading = read_jats(*document.value);
  for (auto& finding : reading.findings) loaded.findings.push_back(std::move(finding));
  loaded.value = std::move(reading.value);
  return loaded;
}

// The leads as sketch() shows them; fails the running test when nothing is loaded.
inline std::string sketch_article(std::string_view bytes) {
  auto const loaded = read_article(bytes);
  if (!loaded) {
    for (auto const& line : one_line_each(loaded.findings)) ADD_FAILURE() << line;
    return {};
  }
  return sketch(loaded.value->edition);
}

}  // namespace keydrift::test

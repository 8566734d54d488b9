#include "keydrift/formats/hypertext.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/text_declared.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kFewestTags = 3;        // fewer may be signs of other things
constexpr std::size_t kFewestCharacters = 3;  // references without any tag

using tables::counted;

Finding hypertext_read(std::string_view file, hypertext::Lines const& lines) {
  Finding finding;
  finding.code = "hypertext";
  finding.severity = Severity::information;
  finding.file = std::string{file};
  finding.message =
      "the text was read as HTML: " + counted(lines.tags, "tag", "tags") + " and " +
      counted(lines.characters, "named or numbered character", "named or numbered characters") +
      " were taken for the lines, cells and letters that they set";
  finding.remedy = "if the brackets are part of the words, write \"&lt;\" for them";
  return finding;
}

bool is_without_words(std::vector<ManuscriptLine> const& lines) {
  return std::all_of(lines.begin(), lines.end(), [](ManuscriptLine const& line) {
    return std::all_of(line.text.begin(), line.text.end(), hypertext::is_white);
  });
}

Finding markup_alone(std::string_view name) {
  Finding finding;
  finding.code = "empty-file";
  finding.severity = Severity::error;
  finding.file = name;
  finding.place = {.line = 1, .column = 1, .begin = 0, .end = 0};
  finding.message = "the file holds tags, but no words between them";
  finding.remedy = "check that this is the right file, and that the page was saved with its text";
  return finding;
}

}  // namespace

bool is_hypertext(std::string_view bytes) {
  std::size_t tags = 0;
  bool closed = false;
  std::size_t length = 0;
  for (auto at = bytes.find('<'); at != std::string_view::npos;
       at = bytes.find('<', at + std::max<std::size_t>(length, 1))) {
    auto const tag = hypertext::tag_at(bytes.substr(at));
    length = tag.length;  // of a comment that does not end: all the rest
    if (length == 0 || !hypertext::is_known(tag.name)) continue;
    ++tags;
    closed = closed || tag.closes || tag.name == "br" || tag.name == "p";
    if (closed && tags >= kFewestTags) return true;
  }
  std::size_t characters = 0;
  for (auto at = bytes.find('&'); at != std::string_view::npos; at = bytes.find('&', at + 1)) {
    if (hypertext::reference_at(bytes.substr(at)).length == 0) continue;
    if (++characters >= kFewestCharacters) return true;
  }
  return false;
}

Loaded<PrintedReading> read_hypertext(Source source, ReadLimits const& limits) {
  Loaded<PrintedReading> loaded;
  auto decoded = decode_text(source, {.maximum_bytes = limits.bytes,
                                      .declared = encodings::declared_charset(source.bytes)});
  loaded.findings = std::move(decoded.findings);
  if (!decoded) return loaded;
  auto const lines = hypertext::lines_of(decoded.value->text);
  loaded.findings.push_back(hypertext_read(source.name, lines));
  if (is_without_words(lines.lines)) {
    loaded.findings.push_back(markup_alone(source.name));
    return loaded;
  }
  auto reading = read_manuscript(source.name, lines.lines, limits);
  loaded.findings.insert(loaded.findings.end(), std::make_move_iterator(reading.findings.begin()),
                         std::make_move_iterator(reading.findings.end()));
  sort_findings(loaded.findings);
  if (!reading) return loaded;
  reading.value->source.layout_note = "HTML; " + reading.value->source.layout_note;
  loaded.value = std::move(reading.value);
  return loaded;
}

}  // namespace keydrift

#include "keydrift/formats/docx.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/formats/docx_headings.hpp"
#include "keydrift/formats/docx_lines.hpp"
#include "keydrift/formats/docx_package.hpp"
#include "keydrift/formats/docx_remarks.hpp"
#include "keydrift/formats/docx_xml.hpp"
#include "keydrift/formats/manuscript.hpp"
#include "keydrift/formats/printed_chars.hpp"

namespace keydrift {
namespace docx {
namespace {

constexpr std::int32_t kSameDepth = 60;  // twips, a millimetre: set by eye, meant the same
constexpr std::size_t kStep = 4;         // blanks for each depth

// How many depths of indentation lie below each that is used.  Rows of tables have none.
class Depths {
 public:
  explicit Depths(std::vector<Line> const& lines) {
    for (auto const& line : lines) {
      if (!line.in_row && !line.text.empty()) used_.push_back(line.indent);
    }
    std::sort(used_.begin(), used_.end());
    std::vector<std::int32_t> firsts;
    for (auto const indent : used_) {
      if (firsts.empty() || indent - firsts.back() >= kSameDepth) firsts.push_back(indent);
    }
    used_ = std::move(firsts);
  }
  [[nodiscard]] std::size_t of(Line const& line) const {
    if (line.in_row || line.text.empty()) return 0;
    auto const after = std::upper_bound(used_.begin(), used_.end(), line.indent);
    return static_cast<std::size_t>(after - used_.begin()) - 1;
  }

 private:
  std::vector<std::int32_t> used_;
};

std::vector<ManuscriptLine> indented(std::vector<Line>&& lines) {
  Depths const depths{lines};
  std::vector<ManuscriptLine> out;
  out.reserve(lines.size());
  for (auto& line : lines) {
    auto const blanks = kStep * depths.of(line);
    ManuscriptLine made;
    made.text = std::string(blanks, ' ') + line.text;
    if (!line.stretches.empty()) {
      made.number = line.stretches.front().number;
      made.column = line.stretches.front().column;
    }
    for (auto stretch : line.stretches) {
      stretch.text_begin += blanks;
      made.stretches.push_back(stretch);
    }
    made.markup = line.markup;
    made.markup.move(blanks);
    out.push_back(std::move(made));
  }
  return out;
}

// Footnotes or endnotes by their ids.
std::map<std::string, pugi::xml_node, std::less<>> notes_of(
    std::optional<xml::Document> const& part) {
  std::map<std::string, pugi::xml_node, std::less<>> notes;
  if (!part) return notes;
  for (auto const node : part->root().children()) {
    auto const id = attribute(node, "id");
    if (id) notes.emplace(*id, node);
  }
  return notes;
}

// The notes that the text refers to, as lines beside the key, at the place of the reference.
void append_notes(Package const& package, Story const& story, Looks looks,
                  std::vector<ManuscriptLine>& lines, std::vector<Marked>& marks) {
  auto footnotes = notes_of(package.footnotes);
  auto endnotes = notes_of(package.endnotes);
  for (auto const& mark : story.marks) {
    if (mark.mark != Mark::footnote && mark.mark != Mark::endnote) continue;
    auto& notes = mark.mark == Mark::footnote ? footnotes : endnotes;
    auto const note = notes.find(mark.text);
    if (note == notes.end()) continue;
    auto read = read_story(note->second, looks);
    notes.erase(note);  // a second reference to it adds nothing
    std::string text;
    for (auto const& line : read.lines) {
      if (printed::trim(line.text).empty()) continue;
      if (!text.empty()) text += ' ';
      text += line.text;
    }
    for (auto& inner : read.marks) {
      inner.number = mark.number;
      inner.column = mark.column;
      marks.push_back(std::move(inner));
    }
    if (text.empty()) continue;
    lines.push_back({.text = std::move(text),
                     .number = mark.number,
                     .column = mark.column,
                     .stretches = {{0, mark.number, mark.column}},
                     .markup = {.role = LineRole::aside}});
  }
}

// A footnote is said of the lead whose words refer to it.
void put_notes_to_leads(std::vector<ManuscriptLine> const& lines, Edition& edition) {
  using Typed = std::pair<std::uint32_t, std::uint32_t>;  // paragraph, column
  std::map<Typed, std::string> asides;
  for (auto const& line : lines) {
    if (line.markup.role != LineRole::aside) continue;
    asides.emplace(Typed{line.number, line.column}, printed::squeeze(line.text));
  }
  if (asides.empty()) return;
  std::map<Typed, LeadId> words;  // where a lead's words begin, or go on
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    auto const& leads = edition.couplets[c].leads;
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      auto const put = [&](Place const& place) {
        words.emplace(Typed{place.line, place.column}, LeadId{CoupletId{c}, i});
      };
      put(leads[i].place);
      put(leads[i].destination_place);
      for (auto const& run : leads[i].runs) put(run.place);
    }
  }
  std::erase_if(edition.notes, [&](Note const& note) {
    Typed const at{note.place.line, note.place.column};
    auto const aside = asides.find(at);
    if (aside == asides.end() || aside->second != note.text) return false;
    auto const behind = words.upper_bound(at);
    if (behind == words.begin()) return false;
    auto const& [begin, lead] = *std::prev(behind);
    if (begin.first != at.first) return false;
    edition[lead].notes.push_back(note.text);
    return true;
  });
}

}  // namespace
}  // namespace docx

Loaded<std::vector<ManuscriptLine>> read_docx_lines(Source source, ReadLimits const& limits) {
  Loaded<std::vector<ManuscriptLine>> loaded;
  auto opened = docx::open_package(source, limits);
  loaded.findings = std::move(opened.findings);
  if (!opened) return loaded;
  auto const& package = *opened.value;
  docx::Numbering numbering;
  if (package.numbering) numbering.add(package.numbering->root());
  docx::Styles styles;
  if (package.styles) styles.add(package.styles->root(), numbering);
  docx::Looks const looks{styles, numbering};
  auto story = docx::read_story(docx::child(package.main.root(), "body"), looks);
  docx::mark_up_headings(story.lines);
  auto lines = docx::indented(std::move(story.lines));
  auto marks = story.marks;
  docx::append_notes(package, story, looks, lines, marks);
  auto remarks = docx::remarks_on(source.name, package, marks, numbering);
  std::move(remarks.begin(), remarks.end(), std::back_inserter(loaded.findings));
  loaded.value = std::move(lines);
  return loaded;
}

Loaded<PrintedReading> read_docx(Source source, ReadLimits const& limits) {
  auto lines = read_docx_lines(source, limits);
  Loaded<PrintedReading> loaded;
  loaded.findings = std::move(lines.findings);
  if (!lines) return loaded;
  auto reading = read_manuscript(source.name, *lines.value, limits);
  std::move(reading.findings.begin(), reading.findings.end(), std::back_inserter(loaded.findings));
  sort_findings(loaded.findings);
  loaded.value = std::move(reading.value);
  if (loaded) docx::put_notes_to_leads(*lines.value, loaded.value->edition);
  return loaded;
}

}  // namespace keydrift

#include "keydrift/formats/manuscript.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/edition_places.hpp"
#include "keydrift/formats/text_encodings.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;

// Characters that decode_text would take for the end of a line, or leave out.
std::size_t odd_blank(std::string_view at) {
  if (at.substr(0, 3) == "\xE2\x80\xA8"sv || at.substr(0, 3) == "\xE2\x80\xA9"sv ||
      at.substr(0, 3) == "\xEF\xBB\xBF"sv) {
    return 3;
  }
  if (at.substr(0, 2) == "\xC2\x85"sv) return 2;
  auto const byte = static_cast<unsigned char>(at.front());
  return (byte < 0x20 && byte != '\t') || byte == 0x7F ? 1 : 0;
}

// One line of what read_printed_key is given, and where its bytes come from.
struct LineOrigin {
  std::size_t begin{};  // of the line, in the whole text
  std::vector<ManuscriptStretch> stretches;
  LineMarkup markup;  // offsets into the whole text
};

std::string cleaned(std::string_view rest) {
  std::string out;
  while (!rest.empty()) {
    auto const odd = odd_blank(rest);
    out += odd > 0 ? ' ' : rest.front();
    rest.remove_prefix(std::max<std::size_t>(odd, 1));
  }
  return out;
}

// Appends the line piece by piece, so that what normalisation and cleaning shift shifts with it.
LineOrigin append_line(std::string& text, ManuscriptLine const& line) {
  LineOrigin origin{text.size(), {}, line.markup};
  auto stretches = line.stretches;
  if (stretches.empty() || stretches.front().text_begin > 0) {
    stretches.insert(stretches.begin(), {0, line.number, line.column});
  }
  std::string whole;
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    auto const begin = std::min(stretches[i].text_begin, line.text.size());
    auto const end = i + 1 < stretches.size()
                         ? std::clamp(stretches[i + 1].text_begin, begin, line.text.size())
                         : line.text.size();
    origin.stretches.push_back({whole.size(), stretches[i].number, stretches[i].column});
    whole += cleaned(std::string_view{line.text}.substr(begin, end - begin));
  }
  // What stands before a border of cells, in its final form.
  auto const shift = [&](std::size_t& border) {
    if (border == kNotTold) return;
    auto const before = std::string_view{line.text}.substr(0, border);
    border = origin.begin + encodings::to_nfc(cleaned(before)).size();
  };
  shift(origin.markup.words_begin);
  shift(origin.markup.destination_begin);
  shift(origin.markup.destination_end);
  // Composition across stretches is rare; places then err by the marks composed, the text does not.
  text += encodings::to_nfc(whole);
  text += '\n';
  return origin;
}

class Mover {
 public:
  Mover(std::string_view text, std::vector<LineOrigin> const& origins)
      : text_{text}, origins_{origins} {}

  // Line and column of the origin; the bytes stay.
  void move(Place& place) const {
    if (place.line == 0 || place.line > origins_.size()) return;
    auto const& origin = origins_[place.line - 1];
    // Findings about whole lines or files give no bytes.
    auto const at = std::max<std::size_t>(place.begin, origin.begin) - origin.begin;
    auto const after = std::upper_bound(
        origin.stretches.begin(), origin.stretches.end(), at,
        [](std::size_t byte, ManuscriptStretch const& one) { return byte < one.text_begin; });
    auto const& stretch = *(after - 1);
    auto const from = origin.begin + stretch.text_begin;
    place.line = stretch.number;
    place.column = stretch.column + count_code_points(text_.substr(
                                        from, std::min(place.begin, text_.size()) > from
                                                  ? std::min(place.begin, text_.size()) - from
                                                  : 0));
  }

  void move(Finding& finding) const {
    move_places(finding, [this](Place& place) { move(place); });
  }

  void move(Edition& edition) const {
    for (auto& couplet : edition.couplets) {
      for (auto& lead : couplet.leads) cut_runs(lead);
    }
    move_places(edition, [this](Place& place) { move(place); });
  }

 private:
  // A run's characters stand one after the other in the source, so it ends where a stretch does.
  void cut_runs(Lead& lead) const {
    std::vector<TextRun> cut;
    for (std::size_t i = 0; i < lead.runs.size(); ++i) {
      auto const& run = lead.runs[i];
      cut.push_back(run);
      if (run.place.line == 0 || run.place.line > origins_.size()) continue;
      auto const& origin = origins_[run.place.line - 1];
      auto const text_end =
          i + 1 < lead.runs.size() ? lead.runs[i + 1].text_begin : lead.text.size();
      for (auto const& stretch : origin.stretches) {
        auto const begin = origin.begin + stretch.text_begin;
        if (begin <= run.place.begin || begin >= run.place.end) continue;
        auto const text_begin = run.text_begin + (begin - run.place.begin);
        if (text_begin >= text_end) break;
        cut.back().place.end = begin;
        cut.push_back({text_begin,
                       {.line = run.place.line,
                        .column = run.place.column,  // move() counts from the stretch
                        .begin = begin,
                        .end = run.place.end}});
      }
    }
    lead.runs = std::move(cut);
  }

  std::string_view text_;
  std::vector<LineOrigin> const& origins_;
};

}  // namespace

void put_before(ManuscriptLine&& front, ManuscriptLine& line) {
  auto const shift = front.text.size() + 1;
  front.text += '\t' + line.text;
  if (line.stretches.empty()) front.stretches.push_back({shift, line.number, line.column});
  for (auto const& one : line.stretches) {
    front.stretches.push_back({one.text_begin + shift, one.number, one.column});
  }
  front.markup = line.markup;
  front.markup.move(shift);
  line = std::move(front);
}

Loaded<PrintedReading> read_manuscript(std::string_view name,
                                       std::vector<ManuscriptLine> const& lines,
                                       ReadLimits const& limits, ToldNames const& told) {
  std::string text;
  std::vector<LineOrigin> origins;
  origins.reserve(lines.size());
  for (auto const& line : lines) origins.push_back(append_line(text, line));
  std::vector<LineMarkup> markup;
  markup.reserve(lines.size());
  for (auto const& origin : origins) markup.push_back(origin.markup);
  auto loaded = read_printed_key({.name = name, .bytes = text}, limits, markup, told);
  Mover const mover{text, origins};
  for (auto& finding : loaded.findings) mover.move(finding);
  sort_findings(loaded.findings);
  if (!loaded) return loaded;
  mover.move(loaded.value->edition);
  for (auto& account : loaded.value->source.lines) {
    if (account.line >= 1 && account.line <= lines.size()) {
      account.line = lines[account.line - 1].number;
    }
  }
  return loaded;
}

}  // namespace keydrift

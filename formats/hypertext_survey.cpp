#include "keydrift/formats/hypertext_survey.hpp"

#include <cstddef>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_width.hpp"

namespace keydrift::hypertext {

Survey survey_of(std::string_view text) {
  constexpr std::size_t kFewest = 3;
  Survey survey;
  std::size_t breaks = 0;
  std::size_t lines = 0;
  std::size_t parted = 0;   // paragraphs of several lines
  std::size_t wrapped = 0;  // tags that go on in the next line
  bool in_paragraph = false;
  bool filled = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '\n') filled = false;
    bool const first = !is_white(text[at]) && !filled;
    if (first) {
      filled = true;
      ++lines;
    }
    if (text[at] != '<') continue;
    auto const tag = tag_at(text.substr(at));
    if (tag.length == 0) continue;
    bool const element = text[at + 1] != '!' && text[at + 1] != '?';
    if (element && text.substr(at, tag.length).find('\n') != std::string_view::npos) ++wrapped;
    if (tag.closes) survey.closed.insert(tag.name);
    if (tag.name == "br" && in_paragraph) {
      ++parted;
      in_paragraph = false;
    }
    if (tag.name == "p") in_paragraph = !tag.closes;
    // A cell on a line of its own is no line of the row.
    bool const cell = tag.name == "td" || tag.name == "th";
    if (!tag.closes && (breaks_line(tag.name) || (cell && first))) ++breaks;
    at += tag.length - 1;
  }
  survey.paragraphs_stand_apart = parted >= kFewest;
  // What breaks its tags at a width breaks its words there too, and means nothing by it.
  bool const wraps = wrapped >= kFewest && wrapped * 2 >= breaks;
  survey.feeds_part_lines = breaks * 2 < lines && !wraps && !wraps_at_width(text);
  return survey;
}

}  // namespace keydrift::hypertext

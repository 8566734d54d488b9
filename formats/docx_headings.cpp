#include "keydrift/formats/docx_headings.hpp"

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::docx {
namespace {

bool shows_end(Line const& line) {
  return line.markup.destination_begin != kNotTold || printed::has_row_of_dots(line.text) ||
         printed::trailing_reference(line.text).has_value();
}

// "3. Descriptions" with the style of a heading is no lead of couplet 3; unless a key's leads are
// set as headings themselves.
void mark_up_numbered_headings(std::vector<Line>& lines) {
  std::vector<Line*> headings;
  std::size_t led = 0;
  for (auto& line : lines) {
    if (!line.heading) continue;
    auto const label = printed::read_label(line.text);
    if (!label || label->is_dash() || label->text_at >= line.text.size()) continue;
    // "2. Key to the species"
    if (printed::mentions_key(line.text)) line.markup.role = LineRole::heading;
    headings.push_back(&line);
    if (shows_end(line)) ++led;
  }
  if (led * 4 > headings.size()) return;
  for (auto* const line : headings) line->markup.role = LineRole::heading;
}

// Lines with the style of a heading and without a label are no part of a lead; unless a key's leads
// are set so.
void mark_up_plain_headings(std::vector<Line>& lines) {
  std::vector<Line*> headings;
  std::size_t led = 0;
  for (auto& line : lines) {
    bool const plain = line.heading && !line.in_row && !printed::trim(line.text).empty() &&
                       !printed::read_label(line.text);
    if (!plain) continue;
    bool const leads = shows_end(line);
    if (leads || line.text.size() > printed::kLongestHeading) ++led;
    if (!leads) headings.push_back(&line);
  }
  if (led * 4 > headings.size()) return;
  for (auto* const line : headings) line->markup.role = LineRole::heading;
}

// "KEY TO SPECIES" in the middle of its line, "Clé A : thalles" in bold type and kept with the next
// paragraph: titles without a style.  Two such signs, or one and the word for a key.
void mark_up_set_titles(std::vector<Line>& lines) {
  std::vector<Line*> titles;
  std::size_t led = 0;
  for (auto& line : lines) {
    auto const signs = (line.centred ? 1 : 0) + (line.emphatic ? 1 : 0) + (line.kept ? 1 : 0);
    bool const set = signs > 0 && !line.in_row && line.markup.role == LineRole::told_by_text &&
                     !printed::trim(line.text).empty();
    if (!set) continue;
    bool const leads = shows_end(line) || printed::read_label(line.text);
    if (leads || line.text.size() > printed::kLongestHeading) ++led;
    if (!leads && line.text.size() <= printed::kLongestHeading &&
        (signs > 1 || printed::mentions_key(line.text))) {
      titles.push_back(&line);
    }
  }
  if (led * 4 > titles.size() + led) return;
  for (auto* const line : titles) line->markup.role = LineRole::heading;
}

}  // namespace

void mark_up_headings(std::vector<Line>& lines) {
  mark_up_numbered_headings(lines);
  mark_up_plain_headings(lines);
  mark_up_set_titles(lines);
}

}  // namespace keydrift::docx

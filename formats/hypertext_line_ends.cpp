#include "keydrift/formats/hypertext_line_ends.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

#include "keydrift/formats/hypertext_lists.hpp"
#include "keydrift/formats/hypertext_rows.hpp"
#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::hypertext {

using namespace std::string_view_literals;

void drop_link_sign(std::string& text, std::vector<xml::InlineMark> const& marks) {
  static constexpr std::array kSigns{"›"sv, "»"sv, "→"sv, "▶"sv, "▸"sv};
  for (auto const& mark : marks) {
    if (mark.kind != xml::InlineKind::pointer || mark.end < text.size()) continue;
    auto const link = std::string_view{text}.substr(mark.begin);
    if (link.find("«") != std::string_view::npos || link.find("‹") != std::string_view::npos) {
      return;  // marks of quotation
    }
    for (auto const sign : kSigns) {
      if (!link.ends_with(sign) || link.size() == sign.size()) continue;
      auto const words = link.substr(0, link.size() - sign.size());
      text.resize(mark.begin + printed::trim_right(words).size());
      return;
    }
  }
}

ManuscriptLine back_reference(ManuscriptLine& title) {
  ManuscriptLine aside;
  auto const end = numbering_title(title.text);
  auto const rest = printed::skip_blanks(title.text, end);
  if (end == 0 || rest >= title.text.size()) return aside;
  append_stretch(aside, title, rest, title.text.size());
  aside.number = title.number;
  aside.column = aside.stretches.empty() ? title.column : aside.stretches.front().column;
  aside.markup.role = LineRole::aside;
  title.text.resize(end);
  std::erase_if(title.stretches,
                [end](ManuscriptStretch const& one) { return one.text_begin >= end; });
  return aside;
}

ManuscriptLine way_back_in_cell(ManuscriptLine& row) {
  ManuscriptLine aside;
  std::string_view const text = row.text;
  auto const cell = text.substr(0, std::min(text.find('\t'), text.size()));
  auto const digits = printed::leading_figures(cell);
  auto const begin = printed::skip_blanks(cell, digits);
  if (digits == 0 || begin == digits || cell.size() == text.size()) return aside;
  bool const numbered = printed::is_digit(static_cast<unsigned char>(cell.back()));
  if (!numbered || !printed::starts_note(cell.substr(begin))) return aside;
  append_stretch(aside, row, begin, cell.size());
  aside.number = row.number;
  aside.column = aside.stretches.empty() ? row.column : aside.stretches.front().column;
  aside.markup.role = LineRole::aside;
  ManuscriptLine rest;
  append_stretch(rest, row, 0, digits);
  append_stretch(rest, row, cell.size(), text.size());
  row.text = std::move(rest.text);
  row.stretches = std::move(rest.stretches);
  return aside;
}

std::size_t end_on_own_line(xml::FlowText const& line, std::size_t joined) {
  auto const told = marked::marked_destination(line);
  if (told != kNotTold) return told;
  auto const begin = printed::skip_blanks(line.text, joined);
  bool const link = std::any_of(line.marks.begin(), line.marks.end(), [&](auto const& mark) {
    return mark.kind == xml::InlineKind::pointer && mark.begin <= begin &&
           mark.end >= line.text.size();
  });
  return link ? begin : kNotTold;
}

}  // namespace keydrift::hypertext

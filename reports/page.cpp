#include "keydrift/reports/page.hpp"

#include <algorithm>
#include <utility>

namespace keydrift::reports {
namespace {

constexpr std::size_t kLeastWidth = 40;
constexpr std::size_t kLeastDots = 3;

Words cleaned(Words const& words, bool unicode) {
  Words out;
  out.reserve(words.size());
  for (auto const& run : words) out.push_back({clean_text(run.text, unicode), run.face});
  return out;
}

Words plain_words(std::string_view text) {
  Words words;
  words.push_back({std::string{text}, Face::plain});
  return words;
}

std::size_t width_of(Words const& words) {
  std::size_t width = 0;
  for (auto const& run : words) width += display_width(run.text);
  return width;
}

void extend(Line& line, Words const& words) {
  for (auto const& run : words) {
    line.runs.push_back(run);
    line.width += display_width(run.text);
  }
}

void extend(Line& line, std::string text) {
  line.width += display_width(text);
  line.runs.push_back({std::move(text), Face::plain});
}

// Fills the line with dots and sets `right` at its end.  Precondition: there is room for it.
void close_with_leader(Line& line, Words const& right, std::size_t right_width, std::size_t width) {
  auto const dots = width - right_width - 1 - line.width;
  std::string filling;
  if (!line.runs.empty() && line.width > 0 && dots > 1) {
    filling = " " + std::string(dots - 1, '.');
  } else {
    filling = std::string(dots, '.');
  }
  extend(line, filling + ' ');
  extend(line, right);
}

// Sets `right` behind the last of `lines`, or below it where there is no room.
void lead_to(std::vector<Line>& lines, Words const& right, std::size_t width, std::size_t hang,
             bool unicode) {
  auto const right_width = width_of(right);
  if (right_width == 0) return;
  if (lines.back().width + 1 + kLeastDots + 1 + right_width <= width) {
    close_with_leader(lines.back(), right, right_width, width);
    return;
  }
  if (hang + kLeastDots + 1 + right_width <= width) {
    Line line;
    if (hang > 0) extend(line, std::string(hang, ' '));
    extend(line, std::string(width - right_width - 1 - hang, '.') + ' ');
    extend(line, right);
    lines.push_back(std::move(line));
    return;
  }
  auto const indent = std::min(hang + 2, width / 2);
  for (auto& line : wrap(right, width, indent, indent, unicode)) lines.push_back(std::move(line));
}

}  // namespace

std::vector<Line> set_lead(LeadSetting const& lead, std::size_t width, bool unicode) {
  auto const label = cleaned(lead.label, unicode);
  auto const label_width = width_of(label);
  auto const hang = std::min(lead.label_width, width / 2);
  std::vector<Line> lines;
  if (label_width + 1 <= hang || label_width == 0) {
    lines = wrap(lead.text, width, hang, hang, unicode);
    if (label_width > 0) {
      // The first run holds the indent that the label takes the place of.
      auto& indent = lines.front().runs.front().text;
      indent.erase(0, label_width);
      lines.front().runs.insert(lines.front().runs.begin(), label.begin(), label.end());
    }
  } else {
    Words whole = label;
    whole.push_back({" ", Face::plain});
    whole.insert(whole.end(), lead.text.begin(), lead.text.end());
    lines = wrap(whole, width, 0, hang, unicode);
  }
  lead_to(lines, cleaned(lead.destination, unicode), width, hang, unicode);
  return lines;
}

Page::Page(TerminalStyle style)
    : style_{style}, width_{std::max<std::size_t>(style.width, kLeastWidth)} {}

Page Page::further() const {
  Page page{style_};
  page.last_blank_ = false;
  return page;
}

void Page::add(Page further) {
  if (further.text_.empty()) return;
  std::string_view text{further.text_};
  if (last_blank_ && text.starts_with('\n')) text.remove_prefix(1);
  text_ += text;
  last_blank_ = further.last_blank_;
}

void Page::emit(std::string_view text, Face face) {
  if (text.empty()) return;
  if (!style_.colour || face == Face::plain) {
    text_ += text;
    return;
  }
  switch (face) {
    case Face::plain:
      break;
    case Face::bold:
      text_ += "\x1b[1m";
      break;
    case Face::dim:
      text_ += "\x1b[2m";
      break;
    case Face::underlined:
      text_ += "\x1b[4m";
      break;
  }
  text_ += text;
  text_ += "\x1b[0m";
}

void Page::pad(std::size_t cells) { text_.append(cells, ' '); }

void Page::end_line() {
  while (!text_.empty() && text_.back() == ' ') text_.pop_back();
  text_ += '\n';
  last_blank_ = false;
}

void Page::line(Line const& line, std::size_t indent) {
  pad(indent);
  for (auto const& run : line.runs) emit(run.text, run.face);
  end_line();
}

void Page::blank() {
  if (last_blank_) return;
  text_ += '\n';
  last_blank_ = true;
}

void Page::rule() {
  std::string dashes;
  for (std::size_t i = 0; i < width_; ++i) dashes += style_.unicode ? "─" : "-";
  emit(dashes, Face::plain);
  end_line();
}

void Page::title(std::string_view text) {
  blank();
  for (auto const& set : wrap({{upper_case(text), Face::bold}}, width_, 0, 0, style_.unicode)) {
    line(set);
  }
  std::string dashes;
  for (std::size_t i = 0; i < width_; ++i) dashes += style_.unicode ? "═" : "=";
  emit(dashes, Face::plain);
  end_line();
}

void Page::heading(std::string_view text) {
  blank();
  for (auto const& set : wrap({{upper_case(text), Face::bold}}, width_, 0, 0, style_.unicode)) {
    line(set);
  }
  rule();
}

void Page::subheading(std::string_view text) {
  blank();
  for (auto const& set : wrap({{std::string{text}, Face::bold}}, width_, 0, 2, style_.unicode)) {
    line(set);
  }
}

void Page::paragraph(Words const& words, std::size_t indent, std::size_t hang) {
  for (auto const& set : wrap(words, width_, indent, indent + hang, style_.unicode)) line(set);
}

void Page::paragraph(std::string_view text, std::size_t indent, std::size_t hang) {
  paragraph(plain_words(text), indent, hang);
}

void Page::entry(LeadSetting const& setting, std::size_t indent) {
  indent = std::min(indent, width_ / 2);
  for (auto const& set : set_lead(setting, width_ - indent, style_.unicode)) line(set, indent);
}

void Page::item(std::string_view label, Words words, std::size_t indent, std::size_t label_width) {
  entry({.label = plain_words(label),
         .label_width = label_width,
         .text = std::move(words),
         .destination = {}},
        indent);
}

void Page::item(std::string_view label, std::string_view text, std::size_t indent,
                std::size_t label_width) {
  item(label, plain_words(text), indent, label_width);
}

void Page::leader(std::string_view left, std::string_view right, std::size_t indent) {
  auto lines = wrap({{std::string{left}, Face::plain}}, width_, indent, indent + 2, style_.unicode);
  lead_to(lines, cleaned({{std::string{right}, Face::plain}}, style_.unicode), width_, indent + 2,
          style_.unicode);
  for (auto const& set : lines) line(set);
}

std::size_t Page::column_width() const { return (width_ - kMargin - kGutter) / 2; }

void Page::lead(std::string_view mark, LeadSetting const& lead) {
  columns(mark, set_lead(lead, width_ - kMargin, style_.unicode), {});
}

void Page::columns(std::string_view mark, std::vector<Line> const& left,
                   std::vector<Line> const& right) {
  auto const margin = clean_text(mark, style_.unicode);
  auto const margin_width = display_width(margin);
  for (std::size_t i = 0; i < std::max<std::size_t>({left.size(), right.size(), 1}); ++i) {
    if (i == 0) emit(margin, Face::bold);
    pad(i == 0 ? kMargin - std::min(kMargin, margin_width) : kMargin);
    std::size_t const used = i < left.size() ? left[i].width : 0;
    if (i < left.size()) {
      for (auto const& run : left[i].runs) emit(run.text, run.face);
    }
    if (i < right.size()) {
      auto const across = column_width() + kGutter;
      pad(across > used ? across - used : 1);
      for (auto const& run : right[i].runs) emit(run.text, run.face);
    }
    end_line();
  }
}

}  // namespace keydrift::reports

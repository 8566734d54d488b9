#include "keydrift/formats/printed_spacing.hpp"

#include <cstddef>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_second_leads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSpacedLines = 12;  // lines with a single blank one behind them
constexpr std::size_t kFewestWrappedLines = 3;

// "shaft directed basad", ".......... 2", "---- 2": no lead begins so.
bool goes_on_below(std::string_view text) {
  auto const first = code_point_at(text, 0).value;
  if (is_lower(first)) return true;
  bool const row = first == '.' || first == '-' || first == '_';
  return row && text.size() > 2 && text[1] == text[0] && text[2] == text[0];
}

bool is_heading_or_furniture(SourceLine const& line) {
  return line.is_title || mentions_key(line.text) || titles_genus(line.text) ||
         is_page_furniture(line.text);
}

// "Ausella busa Roe" between blank lines beneath a line in which no lead ends.
bool is_name_beneath(std::vector<SourceLine> const& lines, std::size_t above, std::size_t name,
                     SecondLeads const& ends) {
  bool const alone = name + 1 >= lines.size() || lines[name + 1].text.empty();
  auto const text = lines[name].text;
  auto const words = words_of(start_of(text, kLongestTrailingName), 2);
  bool const named = words.size() == 2 && (is_abbreviated(words[0]) || is_capitalised(words[0])) &&
                     is_epithet(without_closing_marks(words[1])) && is_latin_name(text);
  return alone && named && !ends.may_end(above);
}

// Whether the blank lines between two lines part nothing.
bool are_stray(std::vector<SourceLine> const& lines, std::size_t above, std::size_t next,
               SecondLeads const& ends, StrayBlanks which) {
  auto const& line = lines[next];
  if (which == StrayBlanks::before_small_letters) return goes_on_below(line.text);
  auto const first = code_point_at(line.text, 0).value;
  if (is_digit(first) || line.told || is_heading_or_furniture(line)) return false;
  // A lead without a label may begin there.
  bool const closed = lines[above].text.ends_with('.') || ends.may_end(above);
  return !is_upper(first) || !closed || is_name_beneath(lines, above, next, ends);
}

}  // namespace

std::vector<std::uint32_t> take_out_double_spacing(std::vector<SourceLine>& lines) {
  std::vector<std::size_t> single;  // blank lines that stand alone
  std::size_t close = 0;            // lines directly behind others
  std::size_t wrapped = 0;
  bool const in_capitals = is_set_in_capitals(lines);
  for (std::size_t i = 1; i < lines.size(); ++i) {
    bool const blank_before = lines[i - 1].text.empty();
    if (lines[i].text.empty()) {
      bool const alone = !blank_before && i + 1 < lines.size() && !lines[i + 1].text.empty();
      if (!alone || lines[i].starts_page || lines[i + 1].starts_page) continue;
      // The first line may be a title.
      bool const below_head = i > 1 && is_head_with_page(lines[i - 1]);
      if (!in_capitals && (below_head || is_head_with_page(lines[i + 1]))) continue;
      single.push_back(i);
      if (goes_on_below(lines[i + 1].text)) ++wrapped;
    } else if (!blank_before) {
      ++close;
    }
  }
  std::vector<std::uint32_t> taken;
  bool const doubled = single.size() >= kFewestSpacedLines && close * 12 <= single.size() &&
                       wrapped >= kFewestWrappedLines && wrapped * 8 >= single.size();
  if (!doubled) return taken;
  taken.reserve(single.size());
  std::size_t kept = 0;
  std::size_t next = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (next < single.size() && single[next] == i) {
      taken.push_back(lines[i].number);
      ++next;
      continue;
    }
    if (kept != i) lines[kept] = lines[i];
    ++kept;
  }
  lines.resize(kept);
  return taken;
}

std::optional<CloserLines> without_stray_blanks(std::vector<SourceLine> const& lines,
                                                StrayBlanks which) {
  CloserLines closer;
  std::size_t wrapped = 0;
  auto const numbering = decide_numbering(lines);
  SecondLeads const ends{lines, numbering};
  bool const in_capitals = is_set_in_capitals(lines);
  auto const is_blank_line = [&lines](std::size_t i) {
    return i < lines.size() && lines[i].text.empty() && !lines[i].starts_page;
  };
  for (std::size_t i = 0; i < lines.size();) {
    if (!is_blank_line(i)) {
      closer.lines.push_back(lines[i++]);
      continue;
    }
    auto next = i;
    while (is_blank_line(next)) ++next;
    bool const within = i > 0 && next < lines.size() && !lines[next].text.empty();
    if (within && (goes_on_below(lines[next].text) || is_name_beneath(lines, i - 1, next, ends))) {
      ++wrapped;
    }
    bool const head = within && !in_capitals && is_head_with_page(lines[i - 1]);
    bool const stray = within && !head && are_stray(lines, i - 1, next, ends, which);
    for (; i < next; ++i) {
      if (stray) {
        closer.taken.push_back(lines[i].number);
      } else {
        closer.lines.push_back(lines[i]);
      }
    }
  }
  if (wrapped < kFewestWrappedLines) return std::nullopt;
  return closer;
}

}  // namespace keydrift::printed

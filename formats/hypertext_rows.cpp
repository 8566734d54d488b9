#include "keydrift/formats/hypertext_rows.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/marked_ends.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kMostLeads = 4;

// Bytes of the row's text, without blanks at their ends.
struct Piece {
  std::size_t begin{};
  std::size_t end{};
};

Piece trimmed(std::string_view text, std::size_t begin, std::size_t end) {
  while (begin < end && is_white(text[begin])) ++begin;
  while (end > begin && is_white(text[end - 1])) --end;
  return {begin, end};
}

// The lines of each cell that say anything.
std::vector<std::vector<Piece>> cells_of(std::string_view text,
                                         std::vector<std::size_t> const& breaks) {
  std::vector<std::vector<Piece>> cells;
  auto next = breaks.begin();
  for (std::size_t begin = 0; begin <= text.size();) {
    auto const end = std::min(text.find('\t', begin), text.size());
    std::vector<Piece> lines;
    auto const add = [&](std::size_t from, std::size_t to) {
      auto const piece = trimmed(text, from, to);
      if (piece.begin < piece.end) lines.push_back(piece);
    };
    auto from = begin;
    for (; next != breaks.end() && *next <= end; ++next) {
      if (*next <= from) continue;
      add(from, *next);
      from = *next;
    }
    add(from, end);
    cells.push_back(std::move(lines));
    begin = end + 1;
  }
  return cells;
}

}  // namespace

void append_stretch(ManuscriptLine& line, ManuscriptLine const& from, std::size_t begin,
                    std::size_t end) {
  auto const after = std::upper_bound(
      from.stretches.begin(), from.stretches.end(), begin,
      [](std::size_t at, ManuscriptStretch const& one) { return at < one.text_begin; });
  auto const shift = line.text.size();
  if (after != from.stretches.begin()) {
    auto first = *(after - 1);
    first.column += static_cast<std::uint32_t>(begin - first.text_begin);
    first.text_begin = shift;
    line.stretches.push_back(first);
  }
  for (auto one = after; one != from.stretches.end() && one->text_begin < end; ++one) {
    line.stretches.push_back({one->text_begin - begin + shift, one->number, one->column});
  }
  line.text.append(from.text, begin, end - begin);
}

std::vector<ManuscriptLine> leads_of_row(ManuscriptLine const& row,
                                         std::vector<std::size_t> const& breaks) {
  if (breaks.empty()) return {};
  auto const cells = cells_of(row.text, breaks);
  auto const leads = cells.back().size();
  if (cells.size() < 2 || leads < 2 || leads > kMostLeads) return {};
  auto const full = std::count_if(cells.begin(), cells.end(),
                                  [leads](auto const& lines) { return lines.size() == leads; });
  bool const fits = std::all_of(cells.begin(), cells.end(), [leads](auto const& lines) {
    return lines.size() <= 1 || lines.size() == leads;
  });
  // "(Fig. 2)" and "p. 34" go on with the line above.
  bool const begin = std::all_of(cells.begin(), cells.end(), [&row](auto const& lines) {
    return std::all_of(lines.begin(), lines.end(), [&row](Piece const& piece) {
      return marked::begins_lead_or_end(std::string_view{row.text}.substr(piece.begin));
    });
  });
  if (full < 2 || !fits || !begin) return {};
  std::vector<ManuscriptLine> lines;
  for (std::size_t i = 0; i < leads; ++i) {
    ManuscriptLine line;
    for (std::size_t c = 0; c < cells.size(); ++c) {
      if (c > 0) line.text += '\t';
      auto const& pieces = cells[c];
      if (pieces.size() == leads) {
        append_stretch(line, row, pieces[i].begin, pieces[i].end);
      } else if (i == 0 && !pieces.empty()) {
        append_stretch(line, row, pieces.front().begin, pieces.front().end);
      }
    }
    line.number = line.stretches.empty() ? row.number : line.stretches.front().number;
    line.column = line.stretches.empty() ? row.column : line.stretches.front().column;
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace keydrift::hypertext

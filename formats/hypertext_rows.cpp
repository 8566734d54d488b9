#include "keydrift/formats/hypertext_rows.hpp"

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kMostLeads = 4;

// Bytes of the row's text, without blanks at their ends.
struct Piece {
  std::size_t begin{};
  std::size_t end{};
};

Piece trimmed_piece(std::string_view text, std::size_t begin, std::size_t end) {
  while (begin < end && is_white(text[begin])) ++begin;
  while (end > begin && is_white(text[end - 1])) --end;
  return {begin, end};
}

using Cells = std::vector<std::vector<Piece>>;

// The lines of each cell that say anything.
Cells cells_of(std::string_view text, std::vector<std::size_t> const& breaks) {
  Cells cells;
  auto next = breaks.begin();
  for (std::size_t begin = 0; begin <= text.size();) {
    auto const end = std::min(text.find('\t', begin), text.size());
    std::vector<Piece> lines;
    auto const add = [&](std::size_t from, std::size_t to) {
      auto const piece = trimmed_piece(text, from, to);
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

// The label that the cell's first words begin with.
std::optional<printed::Label> label_of_cell(std::string_view text, std::vector<Piece> const& cell) {
  if (cell.empty()) return std::nullopt;
  auto const first = text.substr(cell.front().begin, cell.front().end - cell.front().begin);
  auto label = printed::read_label(first);
  bool const words = label && label->text_at < first.size() && !label->is_dash() &&
                     printed::starts_with_upper(first.substr(label->text_at));
  return words ? label : std::nullopt;
}

// "1a. Wings clear" and "1b. Wings dark" beside each other, each with what it leads to.
bool are_leads_beside(std::string_view text, Cells const& cells) {
  if (cells.size() < 2 || cells.size() > kMostLeads) return false;
  auto before = label_of_cell(text, cells.front());
  if (!before) return false;
  for (std::size_t c = 1; c < cells.size(); ++c) {
    auto const label = label_of_cell(text, cells[c]);
    if (!label || label->family != before->family) return false;
    bool const digits = label->family == printed::LabelFamily::digits;
    bool const rival = digits
                           ? label->number == before->number &&
                                 (label->letter != before->letter || label->marks > before->marks)
                           : label->number == before->number + 1;
    if (!rival) return false;
    before = label;
  }
  return true;
}

// "2", "Go to 2", "Ausella busa (Roe)": what a lead leads to, alone.
bool is_end(std::string_view piece) {
  constexpr std::size_t kMostDigits = 3;
  if (piece.size() <= kMostDigits && printed::only_figures(piece)) return !piece.empty();
  auto const reference = printed::trailing_reference(piece);
  return (reference && reference->pointed && reference->words_end == 0) ||
         (printed::starts_with_upper(piece) && printed::is_latin_name(piece));
}

// "Wings clear<br>2" and "Wings dark<br>Aus bus" beside each other, beneath the couplet's number.
bool are_choices_beside(std::string_view text, Cells const& cells) {
  if (cells.size() < 2 || cells.size() > kMostLeads) return false;
  return std::all_of(cells.begin(), cells.end(), [text](std::vector<Piece> const& cell) {
    if (cell.size() < 2) return false;
    auto const said = [text](Piece const& piece) {
      return text.substr(piece.begin, piece.end - piece.begin);
    };
    auto const words = said(cell.front());
    return printed::starts_with_upper(words) && words.find(' ') != std::string_view::npos &&
           !is_end(words) && is_end(said(cell.back()));
  });
}

void set_place(ManuscriptLine& line, ManuscriptLine const& row) {
  line.number = line.stretches.empty() ? row.number : line.stretches.front().number;
  line.column = line.stretches.empty() ? row.column : line.stretches.front().column;
}

// A line for each cell, what it leads to behind a tab, and its captions below.
std::vector<ManuscriptLine> lines_of_cells(ManuscriptLine const& row, Cells const& cells) {
  std::vector<ManuscriptLine> lines;
  for (auto const& cell : cells) {
    std::vector<Piece> words;
    std::vector<Piece> captions;
    for (auto const& piece : cell) {
      auto const text = std::string_view{row.text}.substr(piece.begin);
      (printed::starts_caption(text) ? captions : words).push_back(piece);
    }
    ManuscriptLine line;
    for (std::size_t p = 0; p < words.size(); ++p) {
      if (p > 0) line.text += p + 1 == words.size() ? '\t' : ' ';
      append_stretch(line, row, words[p].begin, words[p].end);
    }
    set_place(line, row);
    lines.push_back(std::move(line));
    for (auto const& caption : captions) {
      ManuscriptLine below;
      append_stretch(below, row, caption.begin, caption.end);
      set_place(below, row);
      lines.push_back(std::move(below));
    }
  }
  return lines;
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
                                         std::vector<std::size_t> const& breaks, bool numbered) {
  auto const cells = cells_of(row.text, breaks);
  if (are_leads_beside(row.text, cells) || (numbered && are_choices_beside(row.text, cells))) {
    return lines_of_cells(row, cells);
  }
  if (breaks.empty()) return {};
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
    set_place(line, row);
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace keydrift::hypertext

#include "keydrift/formats/hypertext_rows.hpp"

#include <algorithm>
#include <iterator>
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
#include "keydrift/formats/printed_target.hpp"
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

// A lead and what it leads to, in a row that begins with its couplet's number.
struct Choice {
  Piece words;
  Piece end;
};

bool are_words_of_lead(std::string_view words) {
  constexpr std::size_t kLongestName = 3;  // words; "Eyes large; tarsi 5" looks like one too
  bool const name = is_end(words) && printed::words_of(words).size() <= kLongestName;
  return printed::starts_with_upper(words) && words.find(' ') != std::string_view::npos && !name &&
         !printed::starts_caption(words);
}

// Behind the last leaders or arrow of the text, where a lead's end stands alone; npos without any.
std::size_t behind_leaders(std::string_view text) {
  using namespace std::string_view_literals;
  std::size_t behind = std::string_view::npos;
  for (auto const mark : {"…"sv, "→"sv, "⇒"sv, "►"sv, "..."sv, "->"sv}) {
    auto const at = text.rfind(mark);
    if (at == std::string_view::npos) continue;
    auto const end = at + mark.size();
    if (behind == std::string_view::npos || end > behind) behind = end;
  }
  return behind;
}

// Without the leaders or the arrow at its end.
Piece without_leaders(std::string_view text, Piece piece) {
  using namespace std::string_view_literals;
  for (bool cut = true; cut;) {
    cut = false;
    piece = trimmed_piece(text, piece.begin, piece.end);
    auto const words = text.substr(piece.begin, piece.end - piece.begin);
    for (auto const mark : {"…"sv, "→"sv, "⇒"sv, "►"sv, ".."sv, "->"sv, " ."sv}) {
      if (!words.ends_with(mark)) continue;
      piece.end -= mark.size();
      cut = true;
      break;
    }
  }
  return piece;
}

// "Wings clear … 2", "Wings clear → 2", "Wings dark Aus bus", "Wings clear<br>2".
std::optional<Choice> choice_in(std::string_view text, std::vector<Piece> const& cell) {
  if (cell.empty() || cell.size() > 2) return std::nullopt;
  auto const said = [text](Piece const& piece) {
    return text.substr(piece.begin, piece.end - piece.begin);
  };
  Choice choice{cell.front(), cell.back()};
  if (cell.size() == 1) {
    auto const whole = said(cell.front());
    auto begin = behind_leaders(whole);
    if (begin == std::string_view::npos) {
      if (auto const reference = printed::trailing_reference(whole)) {
        begin = reference->destination_begin;
        choice.words.end = choice.words.begin + reference->words_end;
      } else if (auto const name = printed::trailing_name(whole)) {
        begin = *name;
        choice.words.end = choice.words.begin + begin;
      } else {
        return std::nullopt;
      }
    } else {
      choice.words.end = choice.words.begin + begin;
    }
    choice.end.begin += begin;
  }
  choice.words = without_leaders(text, choice.words);
  choice.end = trimmed_piece(text, choice.end.begin, choice.end.end);
  if (!are_words_of_lead(said(choice.words)) || !is_end(said(choice.end))) return std::nullopt;
  return choice;
}

// "1", "Wings clear … 2", "Wings dark … Aus bus" beside each other, or each end in a cell of its
// own.  Empty for any other row.
std::vector<Choice> choices_behind_number(std::string_view text, Cells const& cells) {
  if (cells.size() < 3 || cells.front().size() != 1) return {};
  auto const& number = cells.front().front();
  auto const label = printed::label_alone(text.substr(number.begin, number.end - number.begin));
  if (!label || label->family != printed::LabelFamily::digits) return {};
  std::vector<Choice> choices;
  for (std::size_t c = 1; c < cells.size(); ++c) {
    if (auto const choice = choice_in(text, cells[c])) {
      choices.push_back(*choice);
      continue;
    }
    // Its words, and its end in the next cell.
    bool const two = c + 1 < cells.size() && cells[c].size() == 1 && cells[c + 1].size() == 1;
    if (!two) return {};
    auto const words = without_leaders(text, cells[c].front());
    auto const& end = cells[c + 1].front();
    if (!are_words_of_lead(text.substr(words.begin, words.end - words.begin)) ||
        !is_end(text.substr(end.begin, end.end - end.begin))) {
      return {};
    }
    choices.push_back({words, end});
    ++c;
  }
  return choices.size() < 2 || choices.size() > kMostLeads ? std::vector<Choice>{} : choices;
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

// A line for each: its couplet's number or a dash, its words, and what it leads to.
std::vector<ManuscriptLine> lines_of_choices(ManuscriptLine const& row, Piece const& number,
                                             std::vector<Choice> const& choices) {
  std::vector<ManuscriptLine> lines;
  for (auto const& choice : choices) {
    ManuscriptLine line;
    if (lines.empty()) {
      append_stretch(line, row, number.begin, number.end);
    } else {
      line.text = "–";
    }
    line.text += '\t';
    append_stretch(line, row, choice.words.begin, choice.words.end);
    line.text += '\t';
    append_stretch(line, row, choice.end.begin, choice.end.end);
    set_place(line, row);
    lines.push_back(std::move(line));
  }
  return lines;
}

// The lines of cells that have as many as the last one.
std::vector<ManuscriptLine> leads_beneath(ManuscriptLine const& row, Cells const& cells,
                                          std::vector<std::size_t> const& breaks) {
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

// Leads beside each other that have labels, or their couplet's number above.
std::vector<ManuscriptLine> leads_beside(ManuscriptLine const& row, Cells const& cells,
                                         bool numbered) {
  bool const beside =
      are_leads_beside(row.text, cells) || (numbered && are_choices_beside(row.text, cells));
  return beside ? lines_of_cells(row, cells) : std::vector<ManuscriptLine>{};
}

// "2" and "2'" alone in the first cell.
std::optional<std::uint32_t> number_in_front(std::string_view text, Cells const& cells) {
  if (cells.size() < 2 || cells.front().size() != 1) return std::nullopt;
  auto const& front = cells.front().front();
  auto const label = printed::label_alone(text.substr(front.begin, front.end - front.begin));
  bool const number = label && label->family == printed::LabelFamily::digits;
  return number ? std::optional{label->number} : std::nullopt;
}

// "2'", "–" or nothing before a lead and its end, beneath a row of couplet 2: each row is a lead.
bool answers_row_above(std::string_view text, Cells const& cells,
                       std::optional<std::uint32_t> above) {
  if (!above || cells.size() < 2) return false;
  if (auto const number = number_in_front(text, cells)) return number == above;
  auto const said = [text](std::vector<Piece> const& cell) {
    if (cell.size() != 1) return std::string_view{};
    return text.substr(cell.front().begin, cell.front().end - cell.front().begin);
  };
  auto const label = printed::label_alone(said(cells.front()));
  if (label && label->is_dash()) return true;
  std::size_t const words = cells.front().empty() ? 1 : 0;
  return words + 1 < cells.size() && are_words_of_lead(said(cells[words])) &&
         is_end(said(cells[words + 1]));
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

bool RowParter::part(ManuscriptLine const& row, std::vector<std::size_t> const& breaks,
                     bool numbered, std::vector<ManuscriptLine>& lines) {
  auto const cells = cells_of(row.text, breaks);
  auto const number = number_in_front(row.text, cells);
  bool const answers = answers_row_above(row.text, cells, number_);
  auto above = std::exchange(behind_number_, std::nullopt);
  if (answers && above && above->end == lines.size()) {
    lines.resize(above->begin);
    lines.push_back(std::move(above->whole));
  }
  if (number || !answers) number_ = number;
  auto leads = leads_beside(row, cells, numbered);
  if (leads.empty() && !answers) {
    if (auto const choices = choices_behind_number(row.text, cells); !choices.empty()) {
      leads = lines_of_choices(row, cells.front().front(), choices);
      behind_number_ = {row, lines.size(), lines.size() + leads.size()};
    }
  }
  if (leads.empty()) leads = leads_beneath(row, cells, breaks);
  lines.insert(lines.end(), std::make_move_iterator(leads.begin()),
               std::make_move_iterator(leads.end()));
  return !leads.empty();
}

}  // namespace keydrift::hypertext

#include "keydrift/formats/jats_rows.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "keydrift/formats/jats_table.hpp"
#include "keydrift/formats/jats_text.hpp"
#include "keydrift/formats/marked_ends.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::jats {
namespace {

using namespace marked;
using namespace printed;
using xml::FlowText;

class TableReader {
 public:
  TableReader(xml::Document const& document, pugi::xml_node table)
      : table_{read_table(document, table)} {}

  std::vector<ManuscriptLine> read() && {
    for (std::size_t r = 0; r < table_.rows.size(); ++r) take_row(r);
    std::vector<ManuscriptLine> lines;
    for (auto& row : rows_) lines.push_back(to_row_line(std::move(row)));
    for (auto& footnote : table_.footnotes) {
      lines.push_back(to_line(std::move(footnote), LineRole::aside));
    }
    return lines;
  }

 private:
  struct KeyRow {
    LineRole role{LineRole::lead};
    FlowText label{};
    FlowText words{};
    FlowText destination{};
    bool label_told{false};  // has a cell of its own
    bool destination_told{false};
    std::vector<FlowText> notes{};  // beneath the destination
  };

  void take_row(std::size_t r) {
    auto& row = table_.rows[r];
    auto const filled = static_cast<std::size_t>(std::count_if(
        row.cells.begin(), row.cells.end(), [](Cell const& cell) { return !cell.flow.empty(); }));
    if (filled == 0) return;
    FlowText whole;
    for (auto const& cell : row.cells) whole.append(cell.flow, " ");
    bool const head = row.is_head || (rows_.empty() && is_head_row(row));
    // Where the table was parted by pages, its head stands once more.
    if (head || (!head_.empty() && filled > 1 && whole.text == head_)) {
      if (head) head_ = whole.text;
      rows_.push_back({.role = LineRole::aside, .words = std::move(whole)});
    } else if (filled == 1 && table_.columns.used > 1) {
      take_lone_cell(row);
    } else if (!take_stacked(r)) {
      auto key = to_key_row(row);
      if (continues(key)) {
        rows_.back().words.append(key.words, " ");
        rows_.back().destination = std::move(key.destination);
        rows_.back().destination_told = key.destination_told;
      } else {
        add_row(std::move(key));
      }
    }
  }

  // The words of the row before break off, and this one has no label.
  [[nodiscard]] bool continues(KeyRow const& key) const {
    if (!key.label_told || !key.label.empty() || key.words.empty() || !lacks_destination()) {
      return false;
    }
    auto const& before = rows_.back().words.text;
    bool const hangs = !before.empty() && (before.back() == ',' || before.back() == '-');
    return hangs || is_lower(code_point_at(key.words.text, 0).value);
  }

  // "Couplet", "Character", "Go to" over the columns.
  [[nodiscard]] bool is_head_row(Row const& row) const {
    auto const& columns = table_.columns;
    if (columns.labels == 0) return false;
    auto const& first = row.cells.front();
    return !first.flow.empty() && !is_label_cell(first.flow.text) && first.span == 1 &&
           !read_label(first.flow.text) &&
           std::any_of(row.cells.begin() + 1, row.cells.end(),
                       [](Cell const& cell) { return !cell.flow.empty(); }) &&
           words_of(first.flow.text).size() <= 3;
  }

  [[nodiscard]] KeyRow to_key_row(Row const& row) const {
    auto const& columns = table_.columns;
    KeyRow key;
    bool const fewer = row.width < columns.count;  // a cell is missing rather than empty
    bool words_seen = false;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      auto const& cell = row.cells[c];
      if (cell.flow.empty()) continue;
      bool const last = c + 1 == row.cells.size();
      auto kind = columns.kind_of(cell);
      if (fewer) {
        bool const label =
            !words_seen && columns.labels > 0 && !last && is_label_cell(cell.flow.text);
        kind = label                                           ? ColumnKind::label
               : words_seen && last && columns.has_destination ? ColumnKind::destination
                                                               : ColumnKind::words;
      }
      switch (kind) {
        case ColumnKind::label:
          add_label(key.label, cell.flow);
          key.label_told = true;
          break;
        case ColumnKind::words:
          key.words.append(cell.flow, " ");
          words_seen = true;
          break;
        case ColumnKind::destination:
          add_destination(key, cell);
          key.destination_told = true;
          break;
      }
    }
    finish(key, row);
    return key;
  }

  // "1" and "(3)", or "1" and "a", in cells of their own.
  static void add_label(FlowText& label, FlowText const& more) {
    bool const letter = more.text.size() == 1 && is_lower(code_point_at(more.text, 0).value);
    label.append(more, letter ? "" : " ");
  }

  // Further lines of the cell: more of the name, another taxon, or a note beneath it.
  static void add_destination(KeyRow& key, Cell const& cell) {
    for (std::size_t i = 0; i < cell.lines.size(); ++i) {
      auto const& line = cell.lines[i];
      auto const first = code_point_at(line.text, 0).value;
      auto const& before = key.destination.text;
      bool const open = std::count(before.begin(), before.end(), '(') >
                        std::count(before.begin(), before.end(), ')');
      if (i == 0 || open || hangs_open(before) || first == '(' || is_lower(first) ||
          is_only_leaders(before)) {
        key.destination.append(line, " ");
      } else if (is_number(line.text) || is_latin_name(squeeze(line.text))) {
        key.destination.append(line, ", ");
      } else {
        key.notes.push_back(line);
      }
    }
  }

  // A letter alone goes with the number above it: "1 | a" and " | b".
  void complete_label(KeyRow& key) {
    auto const label = read_label(key.label.text);
    if (!label) return;
    if (label->family == LabelFamily::digits) {
      number_ = std::string{key.label.text.substr(0, leading_figures(key.label.text))};
    } else if (table_.columns.labels > 1 && label->family == LabelFamily::lower &&
               key.label.text.size() == 1 && !number_.empty()) {
      FlowText whole{.text = number_, .stretches = {}, .marks = {}};
      whole.append(key.label, "");
      key.label = std::move(whole);
    }
  }

  void add_row(KeyRow&& key) {
    if (key.role == LineRole::lead) complete_label(key);
    auto notes = std::move(key.notes);
    key.notes.clear();
    rows_.push_back(std::move(key));
    for (auto& note : notes) {
      rows_.push_back({.role = LineRole::note, .words = std::move(note)});
    }
  }

  void finish(KeyRow& key, Row const& row) const {
    auto const& columns = table_.columns;
    bool const spans_labels =
        std::any_of(row.cells.begin(), row.cells.end(), [&](Cell const& cell) {
          return cell.column < columns.labels && cell.column + cell.span > columns.labels;
        });
    bool const fewer = row.width < columns.count;
    if (columns.labels > 0 && !spans_labels && !fewer) key.label_told = true;
    drop_leaders(key.destination);
    if (!key.destination.empty()) return;
    // Nothing in the destination's cell: there is none, unless the words show it themselves.
    key.destination_told = columns.has_destination && !fewer &&
                           !shows_destination(key.words.text) &&
                           marked_destination(key.words) == kNotTold;
  }

  // A whole couplet in one row: its leads one below the other in each cell.
  bool take_stacked(std::size_t r) {
    auto const& row = table_.rows[r];
    auto const& columns = table_.columns;
    if (!columns.has_destination) return false;
    std::size_t size = 0;
    std::size_t destinations = 0;
    std::size_t labels = 0;
    for (auto const& cell : row.cells) {
      if (columns.kind_of(cell) == ColumnKind::label) labels = cell.lines.size();
      if (columns.kind_of(cell) == ColumnKind::words) size = cell.lines.size();
      if (columns.kind_of(cell) == ColumnKind::destination) destinations = cell.lines.size();
    }
    if (size < 2 || size != destinations) return false;
    if (labels != size && is_answered(r)) return false;
    for (std::size_t i = 0; i < size; ++i) {
      Row part{.cells = {}, .width = row.width, .is_head = false};
      for (auto const& cell : row.cells) {
        auto piece = cell;
        auto const count = cell.lines.size();
        piece.lines = {};
        piece.flow = count == size ? cell.lines[i] : i == 0 ? cell.flow : FlowText{};
        if (!piece.flow.empty()) piece.lines.push_back(piece.flow);
        part.cells.push_back(std::move(piece));
      }
      add_row(to_key_row(part));
    }
    return true;
  }

  // The next row begins with a dash or the same number: it holds the rival.
  [[nodiscard]] bool is_answered(std::size_t r) const {
    auto const label_of = [this](std::size_t i) {
      auto const& cells = table_.rows[i].cells;
      return cells.empty() ? std::optional<Label>{} : read_label(cells.front().flow.text);
    };
    if (r + 1 >= table_.rows.size()) return false;
    auto const here = label_of(r);
    auto const next = label_of(r + 1);
    return next && (next->is_dash() || (here && next->number == here->number));
  }

  // A row in which one cell is filled: a heading, a note, a lead that runs through, or what the row
  // before lacks.
  void take_lone_cell(Row const& row) {
    auto const& cell = *std::find_if(row.cells.begin(), row.cells.end(),
                                     [](Cell const& one) { return !one.flow.empty(); });
    auto const& columns = table_.columns;
    auto const& text = cell.flow.text;
    bool const through = row.cells.size() == 1 || cell.span > 1 || cell.column == 0;
    auto const label = read_label(text);
    bool const lead = label && label->text_at < text.size() &&
                      (shows_destination(text) || trailing_reference(text) ||
                       marked_destination(cell.flow) != kNotTold);
    // "1 | Wings clear ... 2" and, beneath, " | Wings dark ... Aus bus".
    bool const rival = columns.labels > 0 && !columns.has_destination &&
                       cell.column >= columns.labels && cell.span == 1 && !rows_.empty() &&
                       !is_open(rows_.back()) &&
                       (shows_destination(text) || marked_destination(cell.flow) != kNotTold);
    if (lead) {
      KeyRow key{.words = cell.flow};
      rows_.push_back(std::move(key));
    } else if (rival) {
      add_row(to_key_row(row));
    } else if (!through && columns.kind_of(cell) == ColumnKind::destination &&
               lacks_destination()) {
      rows_.back().destination.append(cell.flow, " ");
      drop_leaders(rows_.back().destination);
      rows_.back().destination_told = true;
    } else if (!through && columns.kind_of(cell) == ColumnKind::destination && !rows_.empty() &&
               rows_.back().role == LineRole::lead && hangs_open(rows_.back().destination.text)) {
      rows_.back().destination.append(cell.flow, " ");
    } else if (!through && columns.kind_of(cell) == ColumnKind::words && lacks_destination() &&
               !starts_note(text)) {
      rows_.back().words.append(cell.flow, " ");
    } else {
      rows_.push_back({.role = role_of_text(text), .words = cell.flow});
    }
  }

  [[nodiscard]] static LineRole role_of_text(std::string_view text) {
    if (starts_caption(text)) return LineRole::aside;
    bool const sentence = text.back() == '.' || text.back() == ';' || text.back() == ',' ||
                          text.front() == '[' || text.front() == '(' || starts_note(text);
    if (mentions_key(text)) return LineRole::heading;
    return sentence || text.size() > kLongestHeading ? LineRole::note : LineRole::heading;
  }

  [[nodiscard]] bool lacks_destination() const {
    return !rows_.empty() && rows_.back().role == LineRole::lead &&
           rows_.back().destination.empty() && !shows_destination(rows_.back().words.text);
  }

  // A lead whose end is yet to come, or no lead.
  [[nodiscard]] static bool is_open(KeyRow const& row) {
    return row.role != LineRole::lead ||
           (row.destination.empty() && !shows_destination(row.words.text) &&
            marked_destination(row.words) == kNotTold && !trailing_reference(row.words.text));
  }

  // "Aus bus, / Aus cus" in two rows.
  [[nodiscard]] static bool hangs_open(std::string_view destination) {
    auto const words = words_of(destination);
    if (words.empty()) return false;
    return words.back().back() == ',' || joins_names(words.back());
  }

  [[nodiscard]] static ManuscriptLine to_row_line(KeyRow&& row) {
    if (row.role != LineRole::lead) return to_line(std::move(row.words), row.role);
    FlowText whole = std::move(row.label);
    LineMarkup markup{.role = LineRole::lead};
    if (row.label_told) {
      if (!whole.empty()) whole.text += '\t';
      markup.words_begin = whole.text.size();
    }
    bool const told = row.destination_told || !row.destination.empty();
    if (!told) {
      auto const begin =
          shows_destination(row.words.text) ? kNotTold : marked_destination(row.words);
      if (begin != kNotTold) markup.destination_begin = whole.text.size() + begin;
    }
    whole.append(row.words, "");
    if (told) {
      whole.text += '\t';
      markup.destination_begin = whole.text.size();
      whole.append(row.destination, "");
    }
    auto line = to_line(std::move(whole), LineRole::lead);
    line.markup = markup;
    return line;
  }

  Table table_;
  std::vector<KeyRow> rows_;
  std::string number_;  // of the label read last
  std::string head_;    // "Couplet Character Go to", of the columns; empty: none
};

}  // namespace

std::vector<ManuscriptLine> table_lines(xml::Document const& document, pugi::xml_node table) {
  return TableReader{document, table}.read();
}

namespace {

struct LabelTally {
  std::vector<std::uint32_t> numbers;  // of labels that carry the count on
  std::size_t leads{};
  std::size_t rivals{};      // dashes, numbers that stand twice, "4 (1)" behind "1 (4)"
  std::size_t serial{};      // of these, the last
  std::size_t unlabelled{};  // leads beneath one with a number, their label's cell empty
};

LabelTally tally_labels(std::vector<ManuscriptLine> const& rows) {
  LabelTally tally;
  std::uint32_t last = 0;
  std::map<std::uint32_t, std::uint32_t> announced;  // "1 (4)": by 4
  for (auto const& row : rows) {
    if (row.markup.role != LineRole::lead) continue;
    ++tally.leads;
    auto const label = read_label(row.text);
    // Its label's cell is empty, or labels stand before the words and this row has none.
    bool const none = row.markup.words_begin == 0 || (row.markup.words_begin == kNotTold && !label);
    if (none && last > 0) ++tally.unlabelled;
    if (!label || row.markup.words_begin == 0) continue;
    if (auto const other = read_reference(label->back)) {
      auto const known = announced.find(label->number);
      if (known != announced.end() && known->second == other->number) {
        ++tally.rivals;
        ++tally.serial;
      }
      announced.emplace(other->number, label->number);
    }
    if (label->is_dash() || (last != 0 && label->number == last)) {
      ++tally.rivals;
    } else if (label->number == last + 1) {
      tally.numbers.push_back(label->number);
    }
    if (!label->is_dash()) last = label->number;
  }
  std::sort(tally.numbers.begin(), tally.numbers.end());
  return tally;
}

// The row's destination is one of the numbers.
bool leads_to(ManuscriptLine const& row, std::vector<std::uint32_t> const& numbers) {
  if (row.markup.destination_begin >= row.text.size()) return false;
  auto const destination = std::string_view{row.text}.substr(row.markup.destination_begin);
  auto const reference = read_reference(strip_pointer(destination));
  return reference && std::binary_search(numbers.begin(), numbers.end(), reference->number);
}

// Three of four leads end in one of the numbers, behind leaders, or in what may be a name; one of
// them at least in one of the former.
bool have_ends(std::vector<ManuscriptLine> const& rows, std::vector<std::uint32_t> const& numbers) {
  std::size_t leads = 0;
  std::size_t sure = 0;
  std::size_t others = 0;
  for (auto const& row : rows) {
    if (row.markup.role != LineRole::lead) continue;
    ++leads;
    auto const begin = row.markup.destination_begin;
    if (leads_to(row, numbers) || (begin == kNotTold && shows_destination(row.text))) {
      ++sure;
    } else if (begin < row.text.size() && starts_with_upper(row.text.substr(begin))) {
      ++others;
    }
  }
  return sure > 0 && (sure + others) * 4 >= leads * 3;
}

}  // namespace

bool looks_like_key(std::vector<ManuscriptLine> const& rows) {
  auto const tally = tally_labels(rows);
  auto const& numbers = tally.numbers;
  if (numbers.size() < 2 || tally.rivals < 2) return false;
  if ((numbers.size() + tally.rivals) * 4 < tally.leads * 3) return false;
  return tally.serial >= 2 || std::any_of(rows.begin(), rows.end(), [&numbers](auto const& row) {
           return leads_to(row, numbers);
         });
}

bool may_be_of_key(std::vector<ManuscriptLine> const& rows) {
  auto const tally = tally_labels(rows);
  auto const rivals = tally.rivals + (have_ends(rows, tally.numbers) ? tally.unlabelled : 0);
  return rivals > 0 && rivals * 3 >= tally.leads && tally.leads * 4 >= rows.size() * 3;
}

}  // namespace keydrift::jats

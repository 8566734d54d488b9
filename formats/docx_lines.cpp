#include "keydrift/formats/docx_lines.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <string_view>
#include <utility>

#include "keydrift/formats/docx_fields.hpp"
#include "keydrift/formats/docx_paragraph.hpp"
#include "keydrift/formats/docx_symbols.hpp"
#include "keydrift/formats/docx_tags.hpp"
#include "keydrift/formats/docx_xml.hpp"
#include "keydrift/formats/shifted_digits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/formats/text_encodings.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift::docx {
namespace {

// Blanks between elements are nodes as well.
bool follows_element(pugi::xml_node node) {
  auto const before = node.previous_sibling();
  return before && (before.type() == pugi::node_element ||
                    before.previous_sibling().type() == pugi::node_element);
}

// "2" as "²"; text that holds anything else stays.
std::string with_digits(std::string text, std::array<std::string_view, 10> const& digits) {
  if (text.find_first_not_of("0123456789") != std::string::npos) return text;
  std::string shifted;
  for (char const c : text) shifted += digits[static_cast<std::size_t>(c - '0')];
  return shifted;
}

// A part of the story that has lines of its own: the whole, a cell, a text box.
struct Container {
  std::vector<Line> lines;
  // Text of paragraphs whose end is deleted or hidden: it runs on into the next one.
  TypedText carried;
  pugi::xml_node carried_properties;
};

struct OpenParagraph {
  pugi::xml_node properties;
  ParagraphLook look;
  TypedText typed;
  std::uint32_t number{};
  std::uint32_t column{1};
  std::vector<Line> boxes;  // lines of the text boxes that are anchored in it
  bool run_hidden{false};
  bool run_italic{false};
  bool run_emphatic{false};                              // bold or underlined
  std::uint32_t run_size{};                              // half points, as below
  std::uint32_t largest_size{};                          // of its type so far
  bool run_struck{false};                                // and its text is still to come
  std::array<std::string_view, 10> const* run_digits{};  // where the run stands above or below
  std::string font;
  std::size_t fields_before{};  // open fields when it began
  std::string field_code;       // text in the code of a field that began in it
  std::uint32_t field_column{};
};

struct OpenTable {
  std::size_t first_line{};  // of its lines, in the container
  std::vector<Cell> above;   // the cells of the row before
  std::vector<Cell> row;
  std::uint32_t column{};
};

class StoryReader {
 public:
  explicit StoryReader(Looks looks) : looks_{looks} {}

  Story read(pugi::xml_node root) {
    containers_.emplace_back();
    walk(root);
    flush_carried();
    story_.lines = std::move(containers_.back().lines);
    if (fields_.in_contents()) {  // it lost its end: nothing tells how far it reaches
      for (auto& line : story_.lines) line.markup.role = LineRole::told_by_text;
    }
    return std::move(story_);
  }

 private:
  // Depth first, without recursion: nodes are entered, and left when their last child was.
  void walk(pugi::xml_node root) {
    auto node = root.first_child();
    while (node) {
      if (enter(node)) {
        if (auto const first = node.first_child()) {
          node = first;
          continue;
        }
        leave(node);
      }
      while (!node.next_sibling()) {
        node = node.parent();
        if (node == root) return;
        leave(node);
      }
      node = node.next_sibling();
    }
  }

  // False: what the node holds is passed over, and the node is not left.
  bool enter(pugi::xml_node node) {
    if (node.type() != pugi::node_element) return false;
    switch (tag_of(xml::local_name(node))) {
      case Tag::other:
        return true;
      case Tag::passed_over:
        return false;
      case Tag::paragraph:
        open_paragraph(node);
        return true;
      case Tag::run:
        open_run(node);
        return true;
      case Tag::text:
        add_text(node);
        return false;
      case Tag::tab:
        type("\t");
        return false;
      case Tag::line_break:
        type("\n");
        return false;
      case Tag::hyphen:
        type("-");
        return false;
      case Tag::symbol:
        add_symbol(node);
        return false;
      case Tag::field_mark:
        take_field_mark(attribute(node, "fldCharType").value_or(""));
        return false;
      case Tag::field_code:
        for (auto const piece : node.children()) fields_.add_code(piece.value());
        return false;
      case Tag::inserted:
        mark_change(Mark::insertion, node);
        return true;
      case Tag::moved_here:
        mark_change(Mark::move, node);
        return true;
      case Tag::deleted:
        mark_change(Mark::deletion, node);
        return false;
      case Tag::moved_away:
        return false;  // its arrival is marked
      case Tag::table:
        flush_carried();
        tables_.push_back(
            {.first_line = containers_.back().lines.size(), .above = {}, .row = {}, .column = 0});
        return true;
      case Tag::row:
        return open_row(node);
      case Tag::cell:
        return open_cell(node);
      case Tag::box:
        mark(Mark::text_box, "");
        containers_.emplace_back();
        return true;
      case Tag::alternative:  // the same once more, for programs that do not know the first
        return !follows_element(node);
      case Tag::note_mark:
        if (!text_is_dropped()) {
          mark(xml::local_name(node) == "footnoteReference" ? Mark::footnote : Mark::endnote,
               attribute(node, "id").value_or(""));
        }
        return false;
      case Tag::comment_mark:
        mark(Mark::comment, attribute(node, "id").value_or(""));
        return false;
      case Tag::embedded:
        mark(Mark::embedded, "");
        return false;
    }
    return true;
  }

  void leave(pugi::xml_node node) {
    switch (tag_of(xml::local_name(node))) {
      case Tag::paragraph:
        close_paragraph();
        break;
      case Tag::run:
        if (auto* const paragraph = here()) {
          paragraph->run_hidden = paragraph->run_struck = paragraph->run_italic =
              paragraph->run_emphatic = false;
          paragraph->run_digits = nullptr;
          paragraph->font.clear();
        }
        break;
      case Tag::table:
        if (tables_.empty()) break;
        if (!set_list_aside(containers_.back().lines, tables_.back().first_line)) {
          mark_up_leads(containers_.back().lines, tables_.back().first_line);
        }
        tables_.pop_back();
        break;
      case Tag::row:
        close_row();
        break;
      case Tag::cell:
        close_cell(node);
        break;
      case Tag::box:
        close_box();
        break;
      default:
        break;
    }
  }

  OpenParagraph* here() { return paragraphs_.empty() ? nullptr : &paragraphs_.back(); }

  void mark(Mark what, std::string_view text) {
    auto const* const paragraph = here();
    story_.marks.push_back({.mark = what,
                            .number = paragraph != nullptr ? paragraph->number : count_ + 1,
                            .column = paragraph != nullptr ? paragraph->column : 1,
                            .text = std::string{text}});
  }
  void mark_change(Mark what, pugi::xml_node node) {
    mark(what, attribute(node, "date").value_or("").substr(0, 10));
  }

  // --- paragraphs -------------------------------------------------------------------------------

  void open_paragraph(pugi::xml_node node) {
    OpenParagraph paragraph;
    paragraph.properties = child(node, "pPr");
    paragraph.look = looks_.styles.look_of(paragraph.properties, looks_.numbering);
    paragraph.number = ++count_;
    paragraph.fields_before = fields_.open();
    paragraph.typed.stretches.push_back({0, paragraph.number, 1});
    paragraphs_.push_back(std::move(paragraph));
    auto const end = child(child(node, "pPr"), "rPr");
    if (auto const inserted = child(end, "ins")) mark_change(Mark::insertion, inserted);
    if (auto const deleted = child(end, "del")) mark_change(Mark::deletion, deleted);
  }

  void close_paragraph() {
    if (paragraphs_.empty()) return;
    close_broken_field();
    auto paragraph = std::move(paragraphs_.back());
    paragraphs_.pop_back();
    auto& home = containers_.back();
    auto const end = child(paragraph.properties, "rPr");
    bool const runs_on =
        child(end, "del") || child(end, "moveFrom") || on_off(end, "vanish").value_or(false);
    carry_into(home, std::move(paragraph.typed));
    home.carried_properties = paragraph.properties;
    if (!runs_on) finish(home, paragraph.look);
    std::move(paragraph.boxes.begin(), paragraph.boxes.end(), std::back_inserter(home.lines));
  }

  static void carry_into(Container& home, TypedText&& typed) {
    auto const shift = home.carried.text.size();
    for (auto const& stretch : typed.stretches) {
      if (!home.carried.stretches.empty() &&
          home.carried.stretches.back().begin == stretch.begin + shift) {
        home.carried.stretches.pop_back();  // nothing was typed there
      }
      home.carried.stretches.push_back({stretch.begin + shift, stretch.number, stretch.column});
    }
    auto const carry = [shift](TypedSpans const& from, TypedSpans& to) {
      for (auto const& one : from) extend(to, one.begin + shift, one.end - one.begin);
    };
    carry(typed.italics, home.carried.italics);
    carry(typed.emphases, home.carried.emphases);
    home.carried.small_begin =
        typed.small_begin == std::string::npos ? std::string::npos : typed.small_begin + shift;
    home.carried.emphatic = home.carried.emphatic && typed.emphatic;
    home.carried.contents = home.carried.contents || typed.contents;
    home.carried.text += typed.text;
  }

  // The text gathered is a whole paragraph of that look.
  void finish(Container& home, ParagraphLook const& look) {
    auto const number =
        look.num_id != 0 ? looks_.numbering.next(look.num_id, look.level) : std::string{};
    auto typed = std::exchange(home.carried, {});
    auto lines = lines_of(typed, number, look);
    if (typed.contents) {
      for (auto& line : lines) line.markup.role = LineRole::aside;
    }
    std::move(lines.begin(), lines.end(), std::back_inserter(home.lines));
  }

  void flush_carried() {
    auto& home = containers_.back();
    if (home.carried.text.empty()) {
      home.carried = {};
      return;
    }
    finish(home, looks_.styles.look_of(home.carried_properties, looks_.numbering));
  }

  // --- runs -------------------------------------------------------------------------------------

  void open_run(pugi::xml_node node) {
    auto* const paragraph = here();
    if (paragraph == nullptr) return;
    auto const properties = child(node, "rPr");
    paragraph->run_hidden = looks_.styles.hides(properties, paragraph->look);
    paragraph->run_struck = on_off(properties, "strike").value_or(false) ||
                            on_off(properties, "dstrike").value_or(false);
    paragraph->run_italic = looks_.styles.is_italic(properties);
    paragraph->run_emphatic = looks_.styles.is_emphatic(properties, paragraph->look);
    auto const shift = value_of(properties, "vertAlign");
    paragraph->run_digits = shift == "superscript" ? &kRaisedDigits
                            : shift == "subscript" ? &kLoweredDigits
                                                   : nullptr;
    paragraph->run_size = looks_.styles.size_of(properties, paragraph->look);
    paragraph->font = looks_.styles.font_of(properties);
  }

  [[nodiscard]] bool text_is_dropped() const {
    return paragraphs_.empty() || paragraphs_.back().run_hidden || fields_.in_code();
  }

  void type(std::string_view text) {
    auto* const paragraph = here();
    if (paragraph == nullptr || text.empty()) return;
    if (fields_.in_code()) {
      if (paragraph->field_code.empty()) paragraph->field_column = paragraph->column;
      paragraph->field_code += text;
      return;
    }
    if (paragraph->run_hidden) {
      auto& marks = story_.marks;
      bool const goes_on = !marks.empty() && marks.back().mark == Mark::hidden_text &&
                           marks.back().number == paragraph->number &&
                           marks.back().column == paragraph->column;
      if (!goes_on) mark(Mark::hidden_text, "");
      marks.back().text += text;
      return;
    }
    if (std::exchange(paragraph->run_struck, false)) mark(Mark::struck_text, text);
    auto& typed = paragraph->typed;
    auto const begin = typed.text.size();
    if (paragraph->run_italic) extend(typed.italics, begin, text.size());
    if (paragraph->run_emphatic) extend(typed.emphases, begin, text.size());
    if (text.find_first_not_of(" \t\n") != std::string_view::npos) {
      typed.emphatic = typed.emphatic && paragraph->run_emphatic;
      bool const smaller = paragraph->run_size < paragraph->largest_size;
      if (!smaller) typed.small_begin = std::string::npos;
      if (smaller) typed.small_begin = std::min(typed.small_begin, begin);
      paragraph->largest_size = std::max(paragraph->largest_size, paragraph->run_size);
    }
    typed.contents = typed.contents || fields_.in_contents();
    typed.text += text;
    paragraph->column += count_code_points(text);
  }

  void add_text(pugi::xml_node node) {
    std::string text;
    for (auto const piece : node.children()) text += piece.value();
    // Blanks at its ends that nobody asked to be kept are those of a file set out for reading.
    if (attribute(node, "space") != "preserve" && text.find('\n') != std::string::npos) {
      constexpr char const* kBlanks = " \t\n";
      text.erase(std::min(text.find_last_not_of(kBlanks) + 1, text.size()));
      text.erase(0, std::min(text.find_first_not_of(kBlanks), text.size()));
    }
    std::replace(text.begin(), text.end(), '\n', ' ');
    if (auto const* const paragraph = here();
        paragraph != nullptr && paragraph->run_digits != nullptr) {
      text = with_digits(text, *paragraph->run_digits);
    }
    auto const read = in_font(text, paragraphs_.empty() ? "" : paragraphs_.back().font);
    if (!read.sound && !text_is_dropped()) {
      mark(Mark::unknown_symbol, paragraphs_.back().font);
    }
    type(read.text);
  }

  void add_symbol(pugi::xml_node node) {
    auto const font = attribute(node, "font").value_or("");
    auto const printed = attribute(node, "char").value_or("");
    char32_t code = 0;
    for (char const c : printed.substr(0, 6)) {
      auto const lower = static_cast<char>(c | 0x20);
      auto const digit = c >= '0' && c <= '9'           ? c - '0'
                         : lower >= 'a' && lower <= 'f' ? lower - 'a' + 10
                                                        : 0;
      code = code * 16 + static_cast<char32_t>(digit);
    }
    bool const sound = code >= 0x20 && code < 0x110000 && (code < 0xD800 || code > 0xDFFF);
    auto const meant = sound ? symbol(font, code) : std::nullopt;
    if (!meant && !text_is_dropped()) mark(Mark::unknown_symbol, font);
    std::string text;
    encodings::append_code_point(text, meant.value_or(kUnknownSymbol));
    type(text);
  }

  // --- fields: the code is passed over, the result is text (17.16.18) ---------------------------

  void take_field_mark(std::string_view kind) {
    fields_.take_mark(kind);
    auto* const paragraph = here();
    if (paragraph != nullptr && !fields_.in_code()) paragraph->field_code.clear();
  }
  // A field whose code is still open where its paragraph ends has lost its other marks; what was
  // taken for code is text, then.
  void close_broken_field() {
    auto& paragraph = paragraphs_.back();
    if (fields_.open() <= paragraph.fields_before || !fields_.in_code()) return;
    fields_.close_down_to(paragraph.fields_before);
    auto const code = std::exchange(paragraph.field_code, {});
    if (code.empty()) return;
    mark(Mark::open_field, code);
    type(code);
  }

  // --- tables and boxes -------------------------------------------------------------------------

  bool open_row(pugi::xml_node node) {
    if (tables_.empty()) return true;
    auto const properties = child(node, "trPr");
    if (auto const deleted = child(properties, "del")) {
      mark_change(Mark::deletion, deleted);
      return false;
    }
    if (auto const inserted = child(properties, "ins")) mark_change(Mark::insertion, inserted);
    auto& table = tables_.back();
    table.row.clear();
    table.column = whole(value_of(properties, "gridBefore")).value_or(0);
    return true;
  }

  bool open_cell(pugi::xml_node node) {
    if (tables_.empty()) return true;
    if (auto const deleted = child(child(node, "tcPr"), "cellDel")) {
      mark_change(Mark::deletion, deleted);
      return false;
    }
    containers_.emplace_back();
    return true;
  }

  void close_cell(pugi::xml_node node) {
    if (tables_.empty()) return;
    flush_carried();
    auto& table = tables_.back();
    Cell cell{.lines = std::move(containers_.back().lines), .column = table.column};
    containers_.pop_back();
    auto const properties = child(node, "tcPr");
    auto const merged = child(properties, "vMerge");
    // A cell that spans several rows is printed beside all of them (17.4.85).
    if (merged && attribute(merged, "val").value_or("continue") != "restart") {
      repeat_above(table, cell);
      cell.from_above = true;
    }
    table.column += std::clamp(whole(value_of(properties, "gridSpan")).value_or(1), 1U, 1000U);
    table.row.push_back(std::move(cell));
  }

  // Labels and destinations, that is; words of a lead are long and need not stand there twice.
  static void repeat_above(OpenTable const& table, Cell& cell) {
    constexpr std::size_t kLongest = 200;  // bytes
    auto const above =
        std::lower_bound(table.above.begin(), table.above.end(), cell.column,
                         [](Cell const& one, std::uint32_t column) { return one.column < column; });
    if (above == table.above.end() || above->column != cell.column) return;
    if (above->lines.size() == 1 && above->lines[0].text.size() <= kLongest) {
      cell.lines = above->lines;
    }
  }

  void close_row() {
    if (tables_.empty()) return;
    auto& table = tables_.back();
    auto lines = lines_of(table.row);
    std::move(lines.begin(), lines.end(), std::back_inserter(containers_.back().lines));
    table.above = std::move(table.row);
    table.row.clear();
  }

  void close_box() {
    flush_carried();
    auto lines = std::move(containers_.back().lines);
    containers_.pop_back();
    auto& into = paragraphs_.empty() ? containers_.back().lines : paragraphs_.back().boxes;
    std::move(lines.begin(), lines.end(), std::back_inserter(into));
  }

  Looks looks_;
  Story story_;
  std::uint32_t count_{};
  std::vector<Container> containers_;
  std::vector<OpenParagraph> paragraphs_;
  std::vector<OpenTable> tables_;
  Fields fields_;  // open ones
};

}  // namespace

Story read_story(pugi::xml_node root, Looks looks) { return StoryReader{looks}.read(root); }

}  // namespace keydrift::docx

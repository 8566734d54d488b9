#pragma once
// Setting plain text the way a key is printed: hanging indents, dot leaders, two columns.
//
// Widths are terminal cells (utf8proc's width of each code point), never bytes.  Every function
// makes foreign text harmless first: control characters and invalid bytes become U+FFFD, line ends
// and tabs become blanks, bidirectional overrides are dropped.  Nothing set here is ever wider than
// the width asked for.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

struct TerminalStyle {
  unsigned width = 80;  // cells; taken as 40 when smaller
  bool colour = false;  // bold, dim and underlined faces by ANSI escapes; never a hue
  bool unicode = true;  // false: ASCII only, other characters by their nearest ASCII spelling
};

namespace reports {

enum class Face { plain, bold, dim, underlined };

// A stretch of text in one face.
struct Run {
  std::string text;
  Face face{Face::plain};
  bool operator==(Run const&) const = default;
};
// Running text; adjoining runs are not parted by a blank.
using Words = std::vector<Run>;

// One line as set; its width is known and its faces are kept apart from its text.
struct Line {
  std::vector<Run> runs;
  std::size_t width{};
};

// Cells taken by the text: the sum over its code points.  Unassigned code points count as one.
[[nodiscard]] std::size_t display_width(std::string_view text);

// The text made harmless as told above; with `unicode` false also spelt in ASCII.
[[nodiscard]] std::string clean_text(std::string_view text, bool unicode);

// Upper case for headings, by Unicode's simple mapping.
[[nodiscard]] std::string upper_case(std::string_view text);

// Breaks running text at blanks.  The first line is indented by `first` cells, the others by
// `rest`; words wider than the line are broken between grapheme clusters.  At least one line.
[[nodiscard]] std::vector<Line> wrap(Words const& words, std::size_t width, std::size_t first,
                                     std::size_t rest, bool unicode);

// One lead of a printed key: label, words with a hanging indent, dot leaders, destination set
// right.  A destination that has no room behind the words stands on a line of its own, behind
// leaders; one wider than the column is broken.  An empty destination has no leaders.
struct LeadSetting {
  Words label;
  std::size_t label_width{};  // cells from the label's begin to the words'
  Words text;
  Words destination;
};
[[nodiscard]] std::vector<Line> set_lead(LeadSetting const& lead, std::size_t width, bool unicode);

// Collects the lines of a report.
class Page {
 public:
  explicit Page(TerminalStyle style);

  [[nodiscard]] std::size_t width() const { return width_; }
  [[nodiscard]] bool unicode() const { return style_.unicode; }
  [[nodiscard]] TerminalStyle const& style() const { return style_; }

  // A title in capitals over a double rule; a heading in capitals over a thin one, with a blank
  // line before; a lesser heading in bold, with a blank line before.
  void title(std::string_view text);
  void heading(std::string_view text);
  void subheading(std::string_view text);
  void blank();  // never two in succession
  void rule();

  // Running text; continuation lines are indented by `indent + hang`.
  void paragraph(Words const& words, std::size_t indent = 0, std::size_t hang = 0);
  void paragraph(std::string_view text, std::size_t indent = 0, std::size_t hang = 0);

  // `label` in a column of `label_width` cells, the words hanging behind it.  A label too wide for
  // its column gets a line of its own.
  void item(std::string_view label, Words words, std::size_t indent, std::size_t label_width);
  void item(std::string_view label, std::string_view text, std::size_t indent,
            std::size_t label_width);

  // "left ........ right", the left part wrapped where it must be.
  void leader(std::string_view left, std::string_view right, std::size_t indent = 0);

  // A lead without a margin; also any line of a table as a printed list of contents has it: a label
  // in a column of its own, words, dots, figures.
  void entry(LeadSetting const& setting, std::size_t indent = 0);

  // One lead, with `mark` in a margin of kMargin cells.
  void lead(std::string_view mark, LeadSetting const& lead);

  // Two columns with white between them, `mark` in the margin of the first line.
  void columns(std::string_view mark, std::vector<Line> const& left,
               std::vector<Line> const& right);
  // Cells of one column of columns().
  [[nodiscard]] std::size_t column_width() const;

  void line(Line const& line, std::size_t indent = 0);

  // A page for what comes behind this one's lines (also those yet to be set), to be added when both
  // are set.
  [[nodiscard]] Page further() const;
  void add(Page further);

  [[nodiscard]] std::string take() { return std::move(text_); }

  static constexpr std::size_t kMargin = 4;
  static constexpr std::size_t kGutter = 4;

 private:
  void emit(std::string_view text, Face face);
  void pad(std::size_t cells);
  void end_line();

  TerminalStyle style_;
  std::size_t width_;
  std::string text_;
  bool last_blank_{true};
};

}  // namespace reports
}  // namespace keydrift

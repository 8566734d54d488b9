#pragma once
// The lines of a printed key and how its leads are numbered.  Inner header of formats.

#include <bitset>
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/printed_end_habits.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift::printed {

// A line without the blanks at its ends, and without the outer strokes of a drawn table.  Borrows
// the decoded text.
struct SourceLine {
  std::string_view text;
  std::size_t begin{};      // byte offset of text in the decoded text
  std::uint32_t number{};   // 1-based
  std::uint32_t blanks{};   // code points before text
  std::uint32_t indent{};   // columns before text, tab stops every 8
  bool ends_in_tab{false};  // a tab stands behind text
  bool starts_page{false};  // a form feed stands in the line
  bool is_title{false};     // a title, as what stood before the first lead on its line
  bool is_no_lead{false};   // no lead begins there, whatever label it bears
  bool goes_on{false};      // with the lead above, though it begins as leads or captions do
  // The label that the couplets around tell, where the line prints it damaged or not at all.
  std::optional<Label> told;
  bool told_as_printed{false};  // nothing is amiss with the label that is told: "1 a Wings"
  LineMarkup markup{};          // offsets into the decoded text

  // Markup tells that the whole of it is a destination.
  [[nodiscard]] bool is_told_destination() const {
    return !text.empty() && markup.destination_begin == begin;
  }

  // As a blank line, in place.
  void clear() {
    text = {};
    told.reset();
  }
};

[[nodiscard]] std::vector<SourceLine> split_lines(std::string_view text);

// Tells labels of lines, by index, with which nothing is amiss.
void tell_labels(std::vector<SourceLine>& lines,
                 std::vector<std::pair<std::size_t, Label>> const& labels);

// Takes the marks off by which answers to letters quote lines ("> 1. Wings clear").
void take_off_quotation_marks(std::vector<SourceLine>& lines);

// Takes the signs off that a list sets before the labels of its leads ("* 1a. Wings clear",
// "3. 2a. Legs long").
void take_off_list_signs(std::vector<SourceLine>& lines);

// Takes the dash off that ends the leads of floras with leads beneath them ("Leaves opposite :—").
void take_off_dashes_behind_colons(std::vector<SourceLine>& lines);

// Takes the numbers of lines off that a manuscript under review prints in its margin.
void take_off_line_numbers(std::vector<SourceLine>& lines);

// Takes dashes that tell how deep a lead stands for its indentation, "— — Petals red".
void take_dashes_for_depth(std::vector<SourceLine>& lines);

// Tells the labels of keys whose letters and marks stand apart, "1 a Wings clear", "1 * Wings
// dark".
void tell_spaced_letters(std::vector<SourceLine>& lines);

// Tells the labels of serial keys whose brackets are damaged, "2 3) Wings" for "2 (3) Wings", where
// their rivals name them.
void tell_serial_labels(std::vector<SourceLine>& lines);

// Marks where destinations begin that touch the words before them, as where columns were lost.
void mark_lost_columns(std::vector<SourceLine>& lines);

// Marks where destinations begin in the rows of a table with a column behind them, of common names,
// authors, pages or figures.
void mark_cells_behind(std::vector<SourceLine>& lines);

// Marks the names behind leaders that a column of remarks follows, "… . . T. busa      kelp, low".
void mark_remarks_behind(std::vector<SourceLine>& lines);

// Marks where the epithets stand that lines end in with the numbers of their species behind them,
// "… front of eye. maculosus. 1.", where these count up.
void mark_counted_ends(std::vector<SourceLine>& lines);

// Marks where epithets with a capital stand before their authors in capitals, "… red. Busa; ROE."
void mark_epithets_before_authors(std::vector<SourceLine>& lines);

// Marks the common names before Latin ones in brackets that lines end in, "… wings. Burnwood (Aus
// bus), p. 88."
void mark_common_names(std::vector<SourceLine>& lines);

// Marks a destination that begins at byte `at` of line `first` and ends in line `last`.
void mark_end_over_lines(std::vector<SourceLine>& lines, std::size_t first, std::size_t at,
                         std::size_t last);

// Marks ends with the numbers of their taxa where these count up through the key: lines that are
// nothing but one, "5. gerardini Roe", genera behind a blank, "10. Ausella", and "(12) repens".
void mark_numbered_ends(std::vector<SourceLine>& lines);

// Marks the lines that only look as if they began with a label or a caption, for the words of the
// lead above go on there: "… spots on tergites 1 and" / "2. Hind legs red ...... 3".
void mark_wrapped_lines(std::vector<SourceLine>& lines);

// The line from byte `from` to byte `to` of its text, as a line of its own.
[[nodiscard]] SourceLine part_of_line(SourceLine const& line, std::size_t from, std::size_t to);

// Bytes [begin, end) of the decoded text, which begin within the line.
[[nodiscard]] Place place_in(SourceLine const& line, std::size_t begin, std::size_t end);

// Is this a whole key, or some couplets printed without the rest (an amendment)?
enum class Extent : std::uint8_t { whole, fragment };

// How the leads of a file are labelled, decided from all its lines.
struct Numbering {
  std::bitset<Label::kStyles> styles;  // accepted Label::style()s
  std::vector<std::uint32_t> numbers;  // of accepted labels; sorted, unique
  LabelFamily family{LabelFamily::digits};
  bool exact{false};               // the front matter says how to take labels (printed_exact.hpp)
  bool words_start_upper{false};   // nearly every lead's words begin with a capital
  std::uint32_t dash_indent{};     // deepest usual indentation of a dash
  std::uint32_t label_indent{};    // deepest usual indentation of a numbered label
  bool decimals_are_leads{false};  // 1.1 and 1.2 are the leads of couplet 1
  bool roman{false};               // couplets bear roman numerals, and leads lead to them
  bool prefixed{false};            // "Step A2": each key's numbers stand behind its letter
  bool lettered{false};            // nearly all labels are "1a." and "1b."
  bool marked{false};              // nearly all are "1" and "1'", or "1\"" and "1'"
  bool lettered_seconds{false};    // "b Wings dark" is the rival of "1a Wings clear"

  EndHabits ends;  // how destinations are set without leaders

  bool serial{false};         // nearly every number stands once, with that of its rival in brackets
  bool first_is_bare{false};  // "1" opens a key whose other labels bear back-references
  Extent extent{Extent::whole};

  [[nodiscard]] bool accepts(Label const& label) const {
    if (label.is_dash()) return true;
    bool const opening =
        first_is_bare && label.number == 1 && label.style() % 16 == 0 && label.family == family;
    return !label.decimal && (opening || styles.test(label.style()));
  }
  // The label that a line begins with, if it is one of this numbering.
  [[nodiscard]] std::optional<Label> label_of(std::string_view line) const;
  // The same, or what the couplets around tell.
  [[nodiscard]] std::optional<Label> label_of(SourceLine const& line) const {
    return line.told ? line.told : label_of(line.text);
  }
  // A couplet as leads refer to it, the whole of `text`: "8", "12a", "IV" where couplets are roman.
  [[nodiscard]] std::optional<Reference> read(std::string_view text) const;
  // Of a fragment every number may be one: the rest of the key has it.
  [[nodiscard]] bool has_number(std::uint32_t number) const;
};

enum class DecimalLabels : std::uint8_t {
  sections,  // 1.1 is no lead's label
  leads,     // 1.1 and 1.2 are leads of couplet 1
};

[[nodiscard]] Numbering decide_numbering(std::vector<SourceLine> const& lines,
                                         DecimalLabels decimals = DecimalLabels::sections,
                                         Extent extent = Extent::whole);

}  // namespace keydrift::printed

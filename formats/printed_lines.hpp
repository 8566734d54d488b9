#pragma once
// The lines of a printed key and how its leads are numbered.  Inner header of formats.

#include <bitset>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/line_markup.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift::printed {

// A line without the blanks at its ends.  Borrows the decoded text.
struct SourceLine {
  std::string_view text;
  std::size_t begin{};      // byte offset of text in the decoded text
  std::uint32_t number{};   // 1-based
  std::uint32_t blanks{};   // code points before text
  std::uint32_t indent{};   // columns before text, tab stops every 8
  bool starts_page{false};  // a form feed stands in the line
  LineMarkup markup{};      // offsets into the decoded text
};

[[nodiscard]] std::vector<SourceLine> split_lines(std::string_view text);

// Bytes [begin, end) of the decoded text, which begin within the line.
[[nodiscard]] Place place_in(SourceLine const& line, std::size_t begin, std::size_t end);

// How the leads of a file are labelled, decided from all its lines.
struct Numbering {
  std::bitset<Label::kStyles> styles;  // accepted Label::style()s
  std::vector<std::uint32_t> numbers;  // of accepted labels; sorted, unique
  LabelFamily family{LabelFamily::digits};
  bool words_start_upper{false};  // nearly every lead's words begin with a capital
  std::uint32_t dash_indent{};    // deepest usual indentation of a dash
  std::uint32_t label_indent{};   // deepest usual indentation of a numbered label

  [[nodiscard]] bool accepts(Label const& label) const {
    return label.is_dash() || (!label.decimal && styles.test(label.style()));
  }
  [[nodiscard]] bool has_number(std::uint32_t number) const;
};

[[nodiscard]] Numbering decide_numbering(std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed

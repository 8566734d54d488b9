#pragma once
// A couplet whose leads run on in a paragraph, and where they begin.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {

// A byte of a line's text.
struct Spot {
  std::size_t line{};
  std::size_t at{};
};

// A paragraph, or a couplet's part of one, its lines joined by blanks.
struct CoupletParagraph {
  std::size_t first{};   // line
  std::size_t offset{};  // byte of that line where it begins
  Label label;
  bool misread{false};  // its number
  std::string text;
  std::vector<std::size_t> begins;      // of its lines in the text
  std::vector<std::size_t> cuts;        // where further leads begin in the text
  std::vector<std::size_t> names;       // that only the sign before them sets apart, likewise
  std::vector<std::uint32_t> leads_to;  // numbers of couplets at the leads' ends
  bool ends_well{false};                // the last lead leads somewhere
  bool labelled{true};                  // all further leads bear labels

  [[nodiscard]] Spot spot(std::size_t at) const;  // of byte `at` of the text
  void add_line(std::string_view line);           // its next one
};

// Where the word behind the one at `at` begins; the text's size without.
[[nodiscard]] std::size_t next_word(std::string_view text, std::size_t at);

// Finds where further leads begin, what the leads lead to, and whether the last one leads
// somewhere: at rivals with labels, where there are any, and behind what may be ends elsewhere.
void find_cuts(CoupletParagraph& paragraph);

// The lead that begins at byte `begin` of the paragraph may end before byte `at`.
[[nodiscard]] bool may_end_before(CoupletParagraph const& paragraph, std::size_t begin,
                                  std::size_t at);

// "– Wings dark", "1' Wings dark", "b. Wings dark" at byte `at`; borrows the text.
[[nodiscard]] std::optional<Label> label_in_paragraph(std::string_view text, std::size_t at);

}  // namespace keydrift::printed

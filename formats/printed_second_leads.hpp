#pragma once
// Second leads that bear no label, by what the lines above them end in.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_known_authors.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_page_edges.hpp"

namespace keydrift::printed {

// "Hoch.", "Dorn, 1911": nothing but the author of a name that the line before ends in.
[[nodiscard]] bool is_author_alone(std::string_view text);

// "… carinae concolorous insularis", "… apex pale ferrandi": the last word may be an epithet.
[[nodiscard]] bool ends_in_epithet(std::string_view text);

// "Scutellum with two bristles" as `line` where the lead above begins with the words "Scutellum
// with four bristles" and its last line ends in what may be an epithet, "ferrandi".
[[nodiscard]] bool answers_in_words(std::string_view line, std::string_view words,
                                    std::string_view last_line);

// Borrows the lines and the numbering, whose numbers may grow.
class SecondLeads {
 public:
  SecondLeads(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines},
        numbering_{numbering},
        authors_{lines},
        in_capitals_{is_set_in_capitals(lines)} {}

  // The line ends in a couplet's number or in a name, with leaders or without.
  [[nodiscard]] bool ends_lead(std::size_t line) const;
  // The same, or it may: it ends in an epithet, an author or a page, or a letter for a number.
  [[nodiscard]] bool may_end(std::size_t line) const;
  // "… more or less convex G": the number of a couplet, read as a letter.
  [[nodiscard]] bool ends_in_figure(std::string_view text) const;

  // The line is the head of a page, in capitals that no lead is set in.
  [[nodiscard]] bool heads_page(std::size_t line) const {
    return !in_capitals_ && is_head_in_capitals(lines_[line].text);
  }

  // The line that the rival of a couplet's only lead begins with, a capital where the line before
  // may end in a destination, best with the word that the first lead begins with.  `first`: the
  // line of that lead, whose words begin at byte `words_at`; `end`: the line of the next couplet's
  // number, or the number of lines.
  [[nodiscard]] std::optional<std::size_t> second_of(std::size_t first, std::size_t words_at,
                                                     std::size_t end) const;

 private:
  [[nodiscard]] bool may_begin(std::size_t line) const;
  [[nodiscard]] std::size_t last_of_paragraph(std::size_t line, std::size_t end) const;
  [[nodiscard]] std::optional<std::size_t> paragraph_below(std::size_t first, std::size_t words_at,
                                                           std::size_t end) const;
  [[nodiscard]] bool name_stands_below(std::size_t line, std::size_t end) const;
  [[nodiscard]] std::optional<std::size_t> paragraph_above(std::size_t first,
                                                           std::size_t end) const;

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  KnownAuthors authors_;
  bool in_capitals_{false};  // the whole text
};

}  // namespace keydrift::printed

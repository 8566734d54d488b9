#pragma once
// Whether the line beneath a lead's destination goes on with the name there.  Inner header of
// formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Borrows the lines, the numbering and what looks ahead.
class WrappedNames {
 public:
  WrappedNames(std::vector<SourceLine> const& lines, Numbering const& numbering,
               LinesAhead const& ahead)
      : lines_{lines}, numbering_{numbering}, ahead_{ahead} {}

  // The destination at the end of a line: behind leaders, or a name without them; empty where none
  // stands.
  [[nodiscard]] std::string_view at_end_of(std::string_view line) const;

  // "…... A. bus" / "Roe", "…... Ausella" / "(Busella) cusa Roe", "…... A. bus, A." / "cus": line
  // `at`, where `destination` closes the line above.
  [[nodiscard]] bool go_on(std::string_view destination, std::size_t at) const;

  // "…... bus" / "Roe" / "Petals white ...": an author alone, whom other names have, between a lead
  // and its rival without label.
  [[nodiscard]] bool is_author_above_lead(std::string_view destination, std::size_t at) const;

  // "…... A. bus Roe and Dorn" / "1984", "…... Ausella sp." / "1": a number alone on line `at`.
  [[nodiscard]] bool go_on_with_number(std::string_view destination, std::size_t at) const;

 private:
  [[nodiscard]] bool goes_on_with_author(std::string_view destination, std::size_t at) const;
  // The key, or its lead, ends with line `at`.
  [[nodiscard]] bool is_end(std::size_t at) const;
  // "Roth.", "Roe & Dorn." as the whole line `at`, the last of its lead.
  [[nodiscard]] bool is_lone_author(std::size_t at) const;
  void look_at_authors() const;

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LinesAhead const& ahead_;
  // First words of the authors at the ends of lines, looked for once they are asked for.
  mutable std::optional<std::unordered_set<std::string>> authors_;
  mutable std::size_t authored_{};
  mutable std::size_t unauthored_{};  // names without author
  mutable std::size_t bracketed_{};   // names whose only author stands in brackets
};

// A couplet's number, or a name with its author and year: nothing but brackets goes on with it.
[[nodiscard]] bool is_whole_destination(std::string_view destination);

}  // namespace keydrift::printed

#pragma once
// Genera that end leads with nothing but a blank before them, where other leads have leaders. Inner
// header of formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Begin of "Aus" in "… body chamber unknown. Aus": no sentence is one such word.
[[nodiscard]] std::optional<std::size_t> lone_genus_at_end(std::string_view text);

// Borrows the lines and the numbering.
class GenusAuthors {
 public:
  GenusAuthors(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {}

  // Begin of "Ausella Roe" at the end of "…; color green. Ausella Roe", where leaders lead to other
  // genera of that author, and of "… hooked at apex Ausella Roe", where several lines end in genera
  // of that author.
  [[nodiscard]] std::optional<std::size_t> genus_at_end(std::string_view text) const;

  // Several lines end in genera of that author.
  [[nodiscard]] bool is_habitual(std::string_view author) const;

 private:
  void look() const;

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  mutable std::optional<std::unordered_set<std::string>> authors_;  // looked for when asked
  mutable std::unordered_set<std::string> habitual_;  // of genera that several lines end in
};

}  // namespace keydrift::printed

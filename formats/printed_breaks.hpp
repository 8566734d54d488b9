#pragma once
// Where lines were broken because they were full.  Inner header of formats.

#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Knows how wide the text was set.
class LineBreaks {
 public:
  explicit LineBreaks(std::vector<SourceLine> const& lines);

  // The line before had no room for this one's first word, so the break says nothing.  A break that
  // is not forced was meant.  Precondition: before < line, neither is empty.
  [[nodiscard]] bool forced(std::size_t before, std::size_t line) const;

 private:
  std::vector<SourceLine> const& lines_;
  std::vector<std::uint32_t> columns_;  // of each line, indentation included
  std::uint32_t width_{};               // columns that all but the longest lines keep to
};

}  // namespace keydrift::printed

#pragma once
// Authors of names that a text's lines end in, where nothing but them tells a name from words.
// Inner header of formats.

#include <cstddef>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// What may be an epithet, and the author behind it, at the end of a text: "… spots on area III bus
// Roe", "… area III bus, Roe."
struct AuthoredEnd {
  std::string_view author;  // empty where no such words end the text
  std::size_t begin{};      // of the epithet
  bool comma{false};        // parts the two
  bool latin{false};        // the epithet's ending is one
};
[[nodiscard]] AuthoredEnd authored_end(std::string_view text);

// Borrows the lines.
class KnownAuthors {
 public:
  explicit KnownAuthors(std::vector<SourceLine> const& lines) : lines_{lines} {}

  // Three lines of the text, or two with a comma before it, end in that author.
  [[nodiscard]] bool knows(AuthoredEnd const& end) const;

 private:
  struct Uses {
    std::size_t lines{};
    std::size_t commas{};  // of these, behind a comma
  };
  std::vector<SourceLine> const& lines_;
  mutable bool counted_{false};
  mutable std::unordered_map<std::string_view, Uses> uses_;  // counted when first asked for
};

}  // namespace keydrift::printed

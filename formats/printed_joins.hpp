#pragma once
// Joining the lines of a lead: hyphens at line ends, blanks.  Inner header of formats.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// Bytes from raw_begin up to the next span's raw_begin stem from source_begin on, in one line.
struct SourceSpan {
  std::size_t raw_begin{};
  std::size_t source_begin{};
  std::uint32_t line{};  // index
};

// A lead's lines as one text, blanks within lines untouched.
struct JoinedText {
  std::string raw;
  std::vector<SourceSpan> spans;  // one for each line
};

// Decides whether a hyphen at a line's end belongs to the word, by how the file writes the word
// elsewhere.
class LineJoiner {
 public:
  // Looks through the whole text once, if any lead has a hyphen at a line's end.
  LineJoiner(std::string_view text, std::vector<RawLead> const& leads,
             std::vector<Piece> const& pieces);

  [[nodiscard]] JoinedText join(std::span<Piece const> pieces) const;

  // The words that were joined with no evidence either way, with the piece that they began in.
  [[nodiscard]] bool has_line_end_hyphens() const { return !words_.empty(); }

 private:
  enum class Joint { blank, keep_hyphen, drop_hyphen };
  [[nodiscard]] Joint joint(std::string_view before, std::string_view after) const;

  std::string_view text_;
  std::unordered_map<std::string, bool> words_;  // joined or hyphenated forms: seen in the text?
};

// Squeezes raw[begin, end) into `text` and its runs.
void squeeze_with_runs(JoinedText const& joined, std::size_t begin, std::size_t end,
                       std::vector<SourceLine> const& lines, std::string& text,
                       std::vector<TextRun>& runs);

// The place of raw[begin, end).  Precondition: begin < end.
[[nodiscard]] Place place_of_raw(JoinedText const& joined, std::size_t begin, std::size_t end,
                                 std::vector<SourceLine> const& lines);

}  // namespace keydrift::printed

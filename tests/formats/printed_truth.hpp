#pragma once
// The truth about an invented key (corpus/*.truth) and how far a reading agrees with it.

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/edition_reader.hpp"

namespace keydrift::test {

// Where a lead begins: the N-th of those that begin on a line, both 1-based.
struct LeadSpot {
  std::uint32_t line{};
  std::uint32_t ordinal{1};
  auto operator<=>(LeadSpot const&) const = default;
};
[[nodiscard]] std::string to_text(LeadSpot spot);  // "12", "12.2"

// A truth file; corpus/README.md has its form.  Malformed lines fail the running test.
struct Truth {
  double expect{};     // share of leads that must be right
  std::size_t lost{};  // words of the source that may be missing from the edition
  bool unreadable{};   // no couplet key at all
  std::vector<std::pair<LeadSpot, std::string>> leads;  // "-> 7", "= Aus bus", "key: …", "none: …"
};
[[nodiscard]] Truth parse_truth(std::string_view text, std::string const& name);

// The destinations of a reading, in the words of a truth file.
[[nodiscard]] std::map<LeadSpot, std::string> read_truth(Edition const& edition);

// Whether `said` is what `truth` asks for: names regardless of case and of a subgenus in
// parentheses, titles and printed words regardless of blanks and signs.
[[nodiscard]] bool agrees(std::string_view truth, std::string_view said);

// Words of three letters and more that stand in a line which the reader says it kept (any kind but
// blank, skipped, figure, footnote, page number, running head) and nowhere in the edition:
// "LINE: word".
[[nodiscard]] std::vector<std::string> lost_words(EditionReading const& reading);

// Lines with letters that the reader kept nowhere, each with the kind it gave for that:
// "LINE: running head: words".
[[nodiscard]] std::vector<std::string> left_out_lines(SourceReading const& source);

}  // namespace keydrift::test

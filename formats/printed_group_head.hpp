#pragma once
// Heads that open the account of a genus or of a higher group.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

struct GroupHead {
  std::string genus;  // "Aus", for "AUS" too; empty for a family, a tribe or another higher group
  bool sure{false};   // a number or a word like "Genus" before it, or capitals and an author
};

// "612. AUS Roe.", "10. Aus Roe in Ann. Marsh.", "Genus AUS", "AUS Roe & Dorn (1924)", "Family 7.
// AUSIDAE."; nothing for other lines and for those that only end in a page's number.
[[nodiscard]] std::optional<GroupHead> read_group_head(std::string_view line);

// "MABOLEPIS.", "MABOLEPIS. 217", "Ordnung: Polydesmoidea 43": what stands behind the number that a
// group has in a book, and no lead's words.
[[nodiscard]] bool titles_group(std::string_view words);
// The same of the words from byte `words_at` on of line `at`, which no line near it answers with
// the same number.
[[nodiscard]] bool titles_group(std::vector<SourceLine> const& lines, std::size_t at,
                                std::size_t words_at);

// "AUSELLA (Marshwort).": a genus in capitals, and its common name at most.
[[nodiscard]] bool is_genus_alone(std::string_view text);
// The same with the number that it has in a book before it: "3. AUSELLA (Marshwort)."
[[nodiscard]] bool is_numbered_genus_alone(std::string_view text);

// The head that stands nearest above line `at` and not above line `from`; one that is sure goes
// before nearer ones that are not.
[[nodiscard]] std::optional<GroupHead> group_head_above(std::vector<SourceLine> const& lines,
                                                        std::size_t at, std::size_t from);

// "AUS Roe.      Marshwort": the common name stands far behind the Latin one; `split` is that of
// `words`.
[[nodiscard]] bool is_genus_before_gap(std::string_view words, TailSplit const& split);

}  // namespace keydrift::printed

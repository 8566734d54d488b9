#pragma once
// How a file sets the destinations at its leads' ends where no leaders are printed.  Inner header
// of formats.

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace keydrift::printed {

struct SourceLine;
struct Numbering;

// Signs that part words and destinations throughout the file.
struct EndHabits {
  bool brackets{false};  // "Wings dark [Aus bus]", "Wings dark (2)"
  bool colon{false};     // "Wings dark: bus"
  bool dash{false};      // "Wings dark — bus"
  bool letters{false};   // "Wings dark B", where letters number the couplets
  // Last resort: where a lead has no other end, the epithet or the genus that closes it is one.
  bool loose{false};
};

[[nodiscard]] EndHabits decide_end_habits(std::vector<SourceLine> const& lines,
                                          Numbering const& numbering);

// What stands in the brackets that close the text, "[Aus bus]." as well; nullopt without brackets.
struct BracketedEnd {
  std::size_t open{};  // of the bracket
  std::string_view inside;
};
[[nodiscard]] std::optional<BracketedEnd> bracketed_end(std::string_view text);

// Begin of the epithet or the genus, with its author, that closes the text after a single blank:
// "Wings dark bus Roe", "Wings dark Aus".
[[nodiscard]] std::optional<std::size_t> loose_name(std::string_view text);

// The same; where the text's names have their genera, with the word before an epithet that has a
// capital: "… of 24 scales Ausbarba busa", though no genus may end so.
[[nodiscard]] std::optional<std::size_t> loose_name(std::string_view text, bool names_have_genera);

}  // namespace keydrift::printed

#pragma once
// What a page's tags as a whole say about its lines.  Inner header of formats.

#include <string>
#include <string_view>
#include <unordered_set>

namespace keydrift::hypertext {

struct Survey {
  std::unordered_set<std::string> closed;  // names with a closing tag: those are tags at all
  bool feeds_part_lines{false};            // where tags do, line feeds are blanks
  bool paragraphs_stand_apart{false};
};

[[nodiscard]] Survey survey_of(std::string_view text);

}  // namespace keydrift::hypertext

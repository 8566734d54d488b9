// "… . . . T. brunnescens         kelp, low": checklists of field stations print where a species
// lives, or how often, in a column behind the names.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestRemarks = 3;         // lines that make a column
constexpr std::size_t kBlanksBeforeRemark = 3;    // blanks before it
constexpr std::size_t kLongestRemarkBehind = 24;  // bytes

struct RemarkedLine {
  std::size_t line{};
  std::size_t begin{};  // bytes of the line's text: the name
  std::size_t end{};
};

// A name between a dot of leaders and three blanks or more, with words behind these.
std::optional<RemarkedLine> remarked_line(std::string_view text, std::size_t line) {
  constexpr std::string_view kBlanks = "   ";
  static_assert(kBlanks.size() == kBlanksBeforeRemark);
  auto const gap = text.rfind(kBlanks);
  if (gap == std::string_view::npos) return std::nullopt;
  auto const remark = trim(text.substr(gap));
  if (remark.empty() || remark.size() > kLongestRemarkBehind) return std::nullopt;
  auto const before = trim_right(text.substr(0, gap));
  auto dots = before.rfind(". ");
  // "A. busa": the dot of an initial.
  while (dots != std::string_view::npos && dots > 0 && before[dots - 1] != '.' &&
         before[dots - 1] != ' ') {
    dots = before.rfind(". ", dots - 1);
  }
  if (dots == std::string_view::npos) return std::nullopt;
  auto const begin = skip_blanks(before, dots + 1);
  auto const name = before.substr(begin);
  auto const words = words_of(name, 3);
  if (words.size() != 2 || !(is_latin_name(name) || is_unnamed_species(name))) return std::nullopt;
  return RemarkedLine{line, begin, before.size()};
}

}  // namespace

void mark_remarks_behind(std::vector<SourceLine>& lines) {
  std::vector<RemarkedLine> named;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].markup.destination_begin != kNotTold) continue;
    if (auto const found = remarked_line(lines[i].text, i)) named.push_back(*found);
  }
  if (named.size() < kFewestRemarks) return;
  for (auto const& one : named) {
    auto& line = lines[one.line];
    line.markup.destination_begin = line.begin + one.begin;
    line.markup.destination_end = line.begin + one.end;
  }
}

}  // namespace keydrift::printed

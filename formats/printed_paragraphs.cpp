#include "keydrift/formats/printed_paragraphs.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_run_on_labels.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestParagraphLines = 3;
constexpr std::size_t kLongestParagraph = std::size_t{1} << 20U;  // bytes

// One line after the other, a blank between them.
struct JoinedParagraph {
  std::string text;
  std::vector<std::size_t> begins;  // of its lines in the text
};

JoinedParagraph joined_lines(std::vector<SourceLine> const& lines, std::size_t from,
                             std::size_t to) {
  JoinedParagraph paragraph;
  for (auto i = from; i < to; ++i) {
    if (i > from) paragraph.text += ' ';
    paragraph.begins.push_back(paragraph.text.size());
    paragraph.text += lines[i].text;
  }
  return paragraph;
}

}  // namespace

std::optional<std::vector<SourceLine>> part_paragraphs(std::vector<SourceLine> const& lines) {
  std::vector<SourceLine> parted;
  bool any = false;
  std::uint32_t counted = 0;
  for (std::size_t i = 0; i < lines.size();) {
    auto end = i;
    std::size_t bytes = 0;
    while (end < lines.size() && !lines[end].text.empty() && bytes < kLongestParagraph) {
      bytes += lines[end++].text.size();
    }
    auto const paragraph =
        end - i >= kFewestParagraphLines ? joined_lines(lines, i, end) : JoinedParagraph{};
    auto const cuts = count_cuts(paragraph.text, counted);
    any = any || !cuts.empty();
    auto cut = cuts.begin();
    for (auto l = i; l < end; ++l) {
      auto const begin = cuts.empty() ? 0 : paragraph.begins[l - i];
      std::size_t from = 0;
      for (; cut != cuts.end() && *cut < begin + lines[l].text.size(); ++cut) {
        auto const at = *cut - begin;
        if (at > from) {
          parted.push_back(part_of_line(lines[l], from, at));
          if (cut == cuts.begin()) parted.back().is_title = true;
        }
        from = at;
      }
      parted.push_back(part_of_line(lines[l], from, lines[l].text.size()));
    }
    for (; end < lines.size() && lines[end].text.empty(); ++end) parted.push_back(lines[end]);
    i = end;
  }
  return any ? std::optional{std::move(parted)} : std::nullopt;
}

}  // namespace keydrift::printed

#include "keydrift/formats/hypertext_margins.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "keydrift/formats/hypertext_lines.hpp"
#include "keydrift/formats/hypertext_walk.hpp"
#include "keydrift/formats/hypertext_words.hpp"

namespace keydrift::hypertext {
namespace {

constexpr std::size_t kFewestMargins = 3;
constexpr std::size_t kFewestParagraphs = 6;
constexpr std::uint32_t kColumns = 3;        // of one level: no end is set so little in
constexpr std::uint32_t kDeepestLevel = 20;  // deeper ones are set in no further

}  // namespace

std::unordered_map<std::size_t, std::uint32_t> margins_of(std::string_view text,
                                                          Sheet const& sheet) {
  std::vector<std::pair<std::size_t, double>> paragraphs;
  walk(
      text,
      [&](Tag const& tag, std::size_t at) {
        if (tag.closes || tag.empty) return;
        if (tag.name != "p" && tag.name != "div") return;
        auto const said = attribute_of(text.substr(at, tag.length), "class");
        for_parts(said, ' ', [&](std::string_view name) {
          auto const found = sheet.margins.find(name);
          if (found != sheet.margins.end()) paragraphs.emplace_back(at, found->second);
        });
      },
      [](std::size_t) { return std::size_t{1}; });
  std::vector<double> levels;
  for (auto const& [at, margin] : paragraphs) levels.push_back(margin);
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  std::unordered_map<std::size_t, std::uint32_t> margins;
  if (levels.size() < kFewestMargins || paragraphs.size() < kFewestParagraphs) return margins;
  for (auto const& [at, margin] : paragraphs) {
    auto const level = std::lower_bound(levels.begin(), levels.end(), margin) - levels.begin();
    margins[at] = kColumns * std::min(static_cast<std::uint32_t>(level), kDeepestLevel);
  }
  return margins;
}

}  // namespace keydrift::hypertext

#include "keydrift/formats/printed_breaks.hpp"

#include <algorithm>
#include <string_view>

#include "keydrift/formats/text.hpp"

namespace keydrift::printed {
namespace {

constexpr std::uint32_t kRagged = 3;  // columns that a full line may stay short by

}  // namespace

LineBreaks::LineBreaks(std::vector<SourceLine> const& lines) : lines_{lines} {
  columns_.reserve(lines.size());
  std::vector<std::uint32_t> filled;
  for (auto const& line : lines) {
    columns_.push_back(line.indent + count_code_points(line.text));
    // Leaders may run on beyond the words' measure.
    bool const led = line.text.find("..") != std::string_view::npos ||
                     line.text.find(". .") != std::string_view::npos ||
                     line.text.find("\u2026") != std::string_view::npos;
    if (!line.text.empty() && !led) filled.push_back(columns_.back());
  }
  if (filled.empty()) return;
  // One line in twenty may stand out: a long word, a table.
  auto const rank = filled.begin() + static_cast<std::ptrdiff_t>((filled.size() - 1) * 19 / 20);
  std::nth_element(filled.begin(), rank, filled.end());
  width_ = *rank;
}

bool LineBreaks::forced(std::size_t before, std::size_t line) const {
  auto const text = lines_[line].text;
  auto const word = text.substr(0, text.find_first_of(" \t"));
  return columns_[before] + 1 + count_code_points(word) + kRagged > width_;
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_figure_labels.hpp"

#include <cstddef>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kBlanksBetweenLabels = 5;  // blanks between two labels
constexpr std::size_t kFewestLabelsOnLine = 3;   // on a line
constexpr std::size_t kMostWordsOfLabel = 4;     // of a label
constexpr std::size_t kFewestLabelLines = 2;

// Short pieces with wide gaps between them, and nothing that leads on.
bool is_row_of_labels(SourceLine const& line) {
  if (line.text.empty() || line.markup.role != LineRole::told_by_text) return false;
  // "A. busa      A. cusa"
  auto const label_before = read_label(line.text);
  if (label_before && label_before->family != LabelFamily::upper) return false;
  if (has_row_of_dots(line.text)) return false;
  std::size_t labels = 0;
  for (std::size_t at = 0; at < line.text.size();) {
    auto end = at;
    std::size_t blanks = 0;
    while (end < line.text.size() && blanks < kBlanksBetweenLabels) {
      blanks = line.text[end] == ' '    ? blanks + 1
               : line.text[end] == '\t' ? kBlanksBetweenLabels
                                        : 0;
      ++end;
    }
    auto const label = trim(line.text.substr(at, end - at));
    if (label.empty() || is_digit(code_point_before(label, label.size()).value)) return false;
    auto const words = words_of(label, kMostWordsOfLabel + 1);
    if (words.size() > kMostWordsOfLabel) return false;
    bool const short_name = words.size() == 2 && is_abbreviated(words[0]) && is_epithet(words[1]);
    if (label_before && !short_name) return false;
    ++labels;
    at = skip_blanks(line.text, end);
  }
  return labels >= kFewestLabelsOnLine;
}

}  // namespace

void mark_figure_labels(std::vector<SourceLine>& lines) {
  for (std::size_t i = 1; i < lines.size(); ++i) {
    auto const above = lines[i - 1].text;
    bool const led = has_row_of_dots(above) || above.find(" . . ") != std::string_view::npos;
    if (!led || !is_row_of_labels(lines[i])) continue;
    auto end = i + 1;
    while (end < lines.size() && is_row_of_labels(lines[end])) ++end;
    if (end - i >= kFewestLabelLines) {
      for (auto at = i; at < end; ++at) lines[at].is_no_lead = true;
    }
    i = end - 1;
  }
}

}  // namespace keydrift::printed

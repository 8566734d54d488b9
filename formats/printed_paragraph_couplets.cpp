#include "keydrift/formats/printed_paragraph_couplets.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestPlaceLabel = 40;  // bytes looked at, back-references included

// A label and the capital of its words; nullopt elsewhere.
std::optional<Label> label_before_capital(std::string_view text, std::size_t at) {
  auto const first = code_point_at(text, at).value;
  if (!is_digit(first) && !is_dash(first) && first != '(' && first != '[') return std::nullopt;
  auto label = read_label(text.substr(at, kLongestPlaceLabel));
  if (!label || label->decimal || !(label->is_dash() || label->family == LabelFamily::digits)) {
    return std::nullopt;
  }
  return is_upper(code_point_at(text, at + label->text_at).value) ? label : std::nullopt;
}

class PlacesInParagraphs {
 public:
  explicit PlacesInParagraphs(std::vector<SourceLine> const& lines) : lines_{lines} {}

  ParagraphCouplets from(std::size_t first) && {
    auto const label = read_label(lines_[first].text);
    bool const one = label && !label->is_dash() && label->family == LabelFamily::digits &&
                     !label->decimal && label->number == 1 && label->marks == 0 &&
                     (label->letter.empty() || label->letter == "a");
    found_.end = first + 1;
    if (!one) return std::move(found_);
    first_ = *label;
    for (auto i = first; i < lines_.size();) {
      if (begins_lines_with_labels(i) || !take_paragraph(i)) break;
      i = found_.end;
      while (i < lines_.size() && lines_[i].text.empty()) ++i;
    }
    auto& couplets = found_.couplets;
    // The first one has to begin a line.
    auto const further = [this](CoupletPlace const& place) {
      return place.spot.at == 0 && place.label.number > 1 && begins_printed_line(place.spot.line);
    };
    auto const at_begin =
        static_cast<std::size_t>(std::count_if(couplets.begin(), couplets.end(), further));
    if (couplets.size() < 2 || at_begin * 2 > couplets.size() - 1) {
      couplets.clear();
    }
    return std::move(found_);
  }

 private:
  // Its leads have lines of their own.
  [[nodiscard]] bool begins_lines_with_labels(std::size_t first) const {
    constexpr std::size_t kLines = 12;  // looked at
    std::size_t labels = 0;
    auto i = first + 1;
    for (; i < lines_.size() && i <= first + kLines && !lines_[i].text.empty(); ++i) {
      if (begins_printed_line(i) && label_before_capital(lines_[i].text, 0)) ++labels;
    }
    return labels > 1 && labels * 3 > i - first;
  }

  // A line of the source, and no piece of one that was parted before.
  [[nodiscard]] bool begins_printed_line(std::size_t i) const {
    return i == 0 || lines_[i].number != lines_[i - 1].number;
  }

  // The paragraph at line `first`, which begins with the couplet that is due; false where none
  // does.
  bool take_paragraph(std::size_t first) {
    auto const begin = label_before_capital(lines_[first].text, 0);
    if (!begin || !is_due(*begin)) return false;
    CoupletParagraph paragraph;
    paragraph.first = first;
    auto i = first;
    for (; i < lines_.size() && !lines_[i].text.empty(); ++i) {
      auto const& line = lines_[i];
      if (line.is_no_lead || line.told || line.markup.role != LineRole::told_by_text) break;
      paragraph.add_line(line.text);
    }
    if (i == first) return false;
    found_.end = i;
    bool rival = false;  // of the couplet found last
    std::string_view const text = paragraph.text;
    for (std::size_t at = 0; at < text.size(); at = next_word(text, at)) {
      auto const label = label_before_capital(text, at);
      if (!label) continue;
      if (at == 0 || (rival && is_due(*label))) {
        take(*label, at, paragraph);
        rival = false;
      } else if (label->is_dash() || label->number == found_.couplets.size()) {
        rival = true;
      }
    }
    return true;
  }

  // A couplet at byte `at` of the paragraph.
  void take(Label label, std::size_t at, CoupletParagraph const& paragraph) {
    // Labels borrow their line's text, and not that of the paragraph.
    for (auto* const view : {&label.letter, &label.printed, &label.back}) {
      if (view->empty()) continue;
      auto const begin =
          paragraph.spot(static_cast<std::size_t>(view->data() - paragraph.text.data()));
      *view = lines_[begin.line].text.substr(begin.at, view->size());
    }
    auto const spot = paragraph.spot(at);
    // The words may stand on the next line.
    label.text_at = std::min(label.text_at, lines_[spot.line].text.size() - spot.at);
    found_.couplets.push_back({spot, label});
  }

  // The couplet that the count expects, labelled as the first one is.
  [[nodiscard]] bool is_due(Label const& label) const {
    // "3 (3) Legs": no couplet is reached from itself.
    bool const back = !label.back.empty() && number_of(label.back) != label.number;
    bool const like = label.end == first_.end && (label.back.empty() || back);
    return !label.is_dash() && label.number == found_.couplets.size() + 1 && label.marks == 0 &&
           label.letter == first_.letter && like;
  }

  std::vector<SourceLine> const& lines_;
  Label first_;
  ParagraphCouplets found_;
};

}  // namespace

ParagraphCouplets couplets_in_paragraphs(std::vector<SourceLine> const& lines, std::size_t first) {
  return PlacesInParagraphs{lines}.from(first);
}

}  // namespace keydrift::printed

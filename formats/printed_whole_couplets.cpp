#include "keydrift/formats/printed_whole_couplets.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_couplet_paragraph.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_paragraph_couplets.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestWholeCouplets = 2;    // couplets of a key
constexpr std::size_t kMostLinesOfParagraph = 30;  // of a paragraph

// Where a lead begins.
struct CoupletBegin {
  Spot spot;
  std::optional<Label> told;  // of its couplet, where no other reader tells it
  bool misread{false};        // its number is printed with other signs
};

class WholeCouplets {
 public:
  explicit WholeCouplets(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::optional<PartedCouplets> run() {
    for (std::size_t i = 0; i < lines_.size();) {
      auto key = key_at(i);
      auto next = key.empty() ? i + 1 : key.back().first + key.back().begins.size();
      if (auto within = key_within(i); within.size() > key.size() && hangs_together(within)) {
        key = std::move(within);
        next = looked_within_;
      } else if (key.empty() || !begin_within_lines(key) || !hangs_together(key)) {
        i = next;
        continue;
      }
      for (auto const& paragraph : key) take(paragraph);
      i = next;
    }
    if (begins_.empty()) return std::nullopt;
    return PartedCouplets{parted(), labelled_};
  }

 private:
  // Paragraphs that count on from 1, the first at line `i`, with no other labels between them.
  [[nodiscard]] std::vector<CoupletParagraph> key_at(std::size_t i) const {
    std::vector<CoupletParagraph> key;
    while (i < lines_.size()) {
      auto label = label_of(i);
      bool const misread = !label && !key.empty() && i > 0 && lines_[i - 1].text.empty();
      // "ll. Wings clear" behind couplet 10
      if (misread) label = misprinted_label(i, key.size() + 1);
      bool const due = label && label->number == key.size() + 1;
      if (!label || (!due && is_page_between(i))) {
        // A blank line between paragraphs, or the head of a page.
        if (key.empty() || !(lines_[i].text.empty() || is_page_between(i))) break;
        ++i;
        continue;
      }
      if (label->is_dash() || !due) break;
      bool const first_of_two = label->letter.empty() || fold(label->letter) == "a";
      if (!first_of_two || label->marks > 0) break;
      CoupletParagraph paragraph;
      paragraph.first = i;
      paragraph.label = *label;
      paragraph.misread = misread;
      do {
        bool const rival = misread || label_of(i).has_value();
        if (!paragraph.begins.empty() && !rival && answers(i) && !is_lettered(paragraph)) return {};
        paragraph.add_line(lines_[i].text);
        ++i;
      } while (i < lines_.size() && !lines_[i].text.empty() && goes_on(i, label->number) &&
               paragraph.begins.size() < kMostLinesOfParagraph);
      find_cuts(paragraph);
      key.push_back(std::move(paragraph));
    }
    return key.size() < kFewestWholeCouplets ? std::vector<CoupletParagraph>{} : key;
  }

  // Paragraphs that hold several couplets each, likewise.
  [[nodiscard]] std::vector<CoupletParagraph> key_within(std::size_t i) {
    if (i < looked_within_ || lines_[i].text.empty()) return {};
    auto const found = couplets_in_paragraphs(lines_, i);
    looked_within_ = found.end;
    std::vector<CoupletParagraph> key;
    for (std::size_t c = 0; c < found.couplets.size(); ++c) {
      auto const& place = found.couplets[c];
      CoupletParagraph paragraph;
      paragraph.first = place.spot.line;
      paragraph.offset = place.spot.at;
      paragraph.label = place.label;
      auto const last =
          c + 1 < found.couplets.size() ? found.couplets[c + 1].spot : spot_before(found.end);
      for (auto line = place.spot.line; line <= last.line && !lines_[line].text.empty(); ++line) {
        std::string_view text = lines_[line].text;
        if (line == last.line) text = text.substr(0, last.at);
        if (line == place.spot.line) text.remove_prefix(place.spot.at);
        if (text.empty()) break;
        paragraph.add_line(text);
      }
      find_cuts(paragraph);
      key.push_back(std::move(paragraph));
    }
    return key;
  }

  // The end of the line before line `end`.
  [[nodiscard]] Spot spot_before(std::size_t end) const {
    return {end - 1, lines_[end - 1].text.size()};
  }

  // The label of couplet `number` with misread figures, before a capital or a letter in brackets.
  [[nodiscard]] std::optional<Label> misprinted_label(std::size_t i, std::size_t number) const {
    auto const text = lines_[i].text;
    if (number > kMostCouplets || lines_[i].is_no_lead) return std::nullopt;
    auto const label = read_misprinted_label(text, static_cast<std::uint32_t>(number), false);
    if (!label || label->end == LabelEnd::none) return std::nullopt;
    auto const words = text.substr(std::min(label->text_at, text.size()));
    return starts_with_upper(words) || words.starts_with("(a) ") ? label : std::nullopt;
  }

  // The number of a page, alone or with words far from it, between blank lines.
  [[nodiscard]] bool is_page_between(std::size_t i) const {
    auto const edge = number_at_edge(lines_[i]);
    bool const apart =
        i > 0 && lines_[i - 1].text.empty() && i + 1 < lines_.size() && lines_[i + 1].text.empty();
    return apart && (is_page_number(lines_[i].text) || (edge && edge->blanks >= kGapBlanks));
  }

  // No label, or that of a rival that happens to begin a line: "– Wings dark", "2b. Wings dark"; or
  // the number that a lead ends in, alone or before its rival: "(2). – Wings dark".
  [[nodiscard]] bool goes_on(std::size_t i, std::uint32_t number) const {
    auto const label = label_of(i);
    if (!label || label->is_dash() || label->number == number) return true;
    // "… Aus bus Roe," / "1901 – Wings dark": a year begins no couplet.
    if (label->number > kMostCouplets) return true;
    auto const text = lines_[i].text;
    auto const front = trim_right(text.substr(0, label->text_at));
    bool const dash = is_dash(code_point_before(front, front.size()).value);
    return label->text_at >= text.size() || (dash && front.starts_with('('));
  }

  // "1. (a) Wings clear": its leads bear letters.
  [[nodiscard]] static bool is_lettered(CoupletParagraph const& paragraph) {
    auto const words = std::string_view{paragraph.text}.substr(paragraph.label.text_at);
    return words.starts_with("(a) ") || words.starts_with("a) ");
  }

  // "B. Wings dark" within a paragraph.
  [[nodiscard]] bool answers(std::size_t i) const {
    auto const label = read_label(lines_[i].text);
    auto const text = lines_[i].text;
    return label && label->text_at < text.size() && starts_with_upper(text.substr(label->text_at));
  }

  [[nodiscard]] std::optional<Label> label_of(std::size_t i) const {
    if (lines_[i].is_no_lead || lines_[i].markup.role != LineRole::told_by_text) return {};
    auto label = lines_[i].told ? lines_[i].told : read_label(lines_[i].text);
    // "Step 3. Are the legs red?"
    if (!label && behind_number_word(lines_[i].text) > 0) {
      auto const head = NumberReader{{NumberScript::digits, true}}.head(lines_[i].text);
      if (head && head->label.letter.empty()) label = head->label;
    }
    bool const counts = label && (label->is_dash() || label->family == LabelFamily::digits);
    return counts && !label->decimal ? label : std::nullopt;
  }

  // Leads hardly ever begin where lines do.
  [[nodiscard]] bool begin_within_lines(std::vector<CoupletParagraph> const& key) const {
    std::size_t at_begins = 0;
    bool labelled = true;
    for (auto const& paragraph : key) {
      labelled = labelled && paragraph.labelled;
      bool at_begin = false;
      for (std::size_t l = 1; l < paragraph.begins.size(); ++l) {
        // A line that was parted before had its leads within.
        auto const line = paragraph.first + l;
        at_begin =
            at_begin || (lines_[line].number != lines_[line - 1].number &&
                         may_end_before(paragraph, paragraph.label.text_at, paragraph.begins[l]));
      }
      if (at_begin) ++at_begins;
    }
    return at_begins * (labelled ? 2 : 3) <= key.size();
  }

  [[nodiscard]] static bool hangs_together(std::vector<CoupletParagraph> const& key) {
    std::vector<std::uint32_t> led(key.size() + 1);  // how often, by the couplet's number
    std::size_t cut = 0;
    std::size_t well = 0;
    for (auto const& paragraph : key) {
      if (!paragraph.cuts.empty()) ++cut;
      if (paragraph.ends_well) ++well;
      for (auto const number : paragraph.leads_to) {
        if (number < led.size()) ++led[number];
      }
    }
    auto const once = static_cast<std::size_t>(std::count(led.begin() + 2, led.end(), 1U));
    auto const nearly_all = [](std::size_t count, std::size_t of) { return count * 5 >= of * 4; };
    return nearly_all(cut, key.size()) && nearly_all(well, key.size()) &&
           nearly_all(once, key.size() - 1);
  }

  // What `own` prints, which borrows the paragraph from byte `cut` on, as part of the line's text.
  [[nodiscard]] static std::string_view label_printed_in(std::string_view text,
                                                         std::string_view paragraph,
                                                         std::size_t cut, Label const& own) {
    auto const from = static_cast<std::size_t>(own.printed.data() - paragraph.data()) - cut;
    return text.substr(std::min(from, text.size()), own.printed.size());
  }

  // Where its leads begin and end; the first one only where no other reader tells its label.
  void take(CoupletParagraph const& paragraph) {
    labelled_ = labelled_ && paragraph.labelled;
    auto label = paragraph.label;
    if (paragraph.misread || !read_label(paragraph.text)) {
      begins_.push_back({paragraph.spot(0), label, paragraph.misread});
    } else if (paragraph.offset > 0) {
      // Its words may stand on the next line.
      bool const alone = label.text_at == lines_[paragraph.first].text.size() - paragraph.offset;
      begins_.push_back({paragraph.spot(0), alone ? std::optional{label} : std::nullopt});
    }
    label.text_at = 0;
    label.printed = {};  // further leads print none
    for (auto const cut : paragraph.cuts) {
      auto const spot = paragraph.spot(cut);
      auto const text = lines_[spot.line].text.substr(spot.at);
      std::optional told = label;
      if (auto const own = label_in_paragraph(paragraph.text, cut)) {
        // "b. Wings dark" is told by the couplet; others speak for themselves.
        bool const letter = own->family == LabelFamily::lower || own->family == LabelFamily::upper;
        bool const answers = own->is_dash() || own->number == label.number;
        auto const alone = label_alone(text);
        if (own->text_at >= text.size()) {  // its words stand on the next line
          if (alone && alone->is_dash()) told = *alone;
          told->text_at = text.size();
        } else if (answers && !letter) {
          told.reset();
        } else {
          told->text_at = own->text_at;
          told->printed = label_printed_in(text, paragraph.text, cut, *own);
        }
      }
      begins_.push_back({spot, told});
    }
    for (auto const name : paragraph.names) names_.push_back(paragraph.spot(name));
  }

  // The lines, cut.
  [[nodiscard]] std::vector<SourceLine> parted() const {
    std::vector<SourceLine> lines;
    lines.reserve(lines_.size() + begins_.size());
    auto begin = begins_.begin();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      std::size_t from = 0;
      std::optional<Label> told;
      bool misread = false;
      auto const first = lines.size();
      bool const below_label = begin != begins_.begin() && is_label_alone(*std::prev(begin), i);
      for (; begin != begins_.end() && begin->spot.line == i; ++begin) {
        if (begin->spot.at > from) {
          lines.push_back(piece(i, from, begin->spot.at, told));
          lines.back().told_as_printed &= !misread;
        }
        from = begin->spot.at;
        told = begin->told;
        misread = begin->misread;
      }
      lines.push_back(piece(i, from, lines_[i].text.size(), told));
      lines.back().told_as_printed &= !misread;
      // What stands below a label alone are the lead's words.
      if (below_label) lines[first].goes_on = true;
    }
    for (auto const& name : names_) tell_destination(lines, lines_[name.line].begin + name.at);
    return lines;
  }

  // The lead's label ends the line above line `i`.
  [[nodiscard]] bool is_label_alone(CoupletBegin const& begin, std::size_t i) const {
    if (begin.spot.line + 1 != i || begin.spot.at == 0) return false;
    auto const text = lines_[begin.spot.line].text.substr(begin.spot.at);
    return (begin.told && begin.told->text_at >= text.size()) || label_alone(text);
  }

  [[nodiscard]] SourceLine piece(std::size_t line, std::size_t from, std::size_t to,
                                 std::optional<Label> const& told) const {
    auto part = part_of_line(lines_[line], from, to);
    if (told) {
      part.told = told;
      part.told_as_printed = true;
    }
    return part;
  }

  // At byte `at` of the decoded text.
  static void tell_destination(std::vector<SourceLine>& lines, std::size_t at) {
    auto const behind = std::upper_bound(
        lines.begin(), lines.end(), at,
        [](std::size_t byte, SourceLine const& line) { return byte < line.begin; });
    if (behind != lines.begin()) std::prev(behind)->markup.destination_begin = at;
  }

  std::vector<SourceLine> const& lines_;
  std::vector<CoupletBegin> begins_;  // in keys that are such, in the order of the text
  std::vector<Spot> names_;           // likewise
  bool labelled_{true};               // all further leads bear labels
  std::size_t looked_within_{};       // lines before it were sought for several couplets
};

}  // namespace

std::optional<PartedCouplets> part_whole_couplets(std::vector<SourceLine> const& lines) {
  return WholeCouplets{lines}.run();
}

}  // namespace keydrift::printed

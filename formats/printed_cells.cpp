#include "keydrift/formats/printed_cells.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestLabelCells = 4;      // labels alone on their lines that make a table
constexpr std::uint32_t kFarBeyond = 5;           // behind the last number that stands twice
constexpr std::size_t kMostLinesOfCellLead = 40;  // no lead has more lines

class CellFinder {
 public:
  CellFinder(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {
    std::size_t firsts = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i].text.empty() || lines[i].markup.role == LineRole::aside) continue;
      filled_.push_back(i);
      auto const label = label_alone(lines[i].text);
      bool const first = label && label->family == LabelFamily::digits && label->letter == "a";
      if (first) ++firsts;
    }
    lettered_ = firsts >= kFewestLabelCells;
    drop_column_heads();
    drop_pages();
    drop_captions();
  }

  std::optional<LeadPlan> find() && {
    if (!is_table()) return std::nullopt;
    plan_.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    plan_.parts.assign(lines_.size(), LinePart::other);
    std::size_t at = 0;
    while (at < filled_.size()) at = is_label(at) ? take_lead(at) : at + 1;
    return std::move(plan_);
  }

 private:
  [[nodiscard]] std::uint32_t number_alone(std::size_t i) const {
    auto const label = label_alone(lines_[i].text);
    return label && label->family == LabelFamily::digits && !label->decimal ? label->number : 0;
  }

  // A number far beyond the count of the labels is a page's, and so is one beyond all that stand
  // twice, as those of couplets do, far beyond or with a page's head behind it.
  void drop_pages() {
    std::map<std::uint32_t, std::size_t> times;
    for (auto const i : filled_) {
      if (auto const number = number_alone(i); number > 0) ++times[number];
    }
    if (times.empty()) return;
    std::size_t labels = 0;
    std::uint32_t last = 0;  // that stands twice
    std::size_t twice = 0;
    for (auto const& [number, count] : times) {
      labels += count;
      if (count > 1) {
        last = number;
        ++twice;
      }
    }
    bool const pairs = twice * 2 > times.size();
    std::vector<std::size_t> kept;
    std::uint32_t before = 0;  // the number kept last
    for (std::size_t f = 0; f < filled_.size(); ++f) {
      auto const number = number_alone(filled_[f]);
      bool const headed = f + 2 < filled_.size() && number_alone(filled_[f + 2]) > 0 &&
                          is_head(lines_[filled_[f + 1]].text);
      bool const far = number > before + kFarBeyond && times[number] == 1;
      bool const last_one = pairs && number > last + kFarBeyond && times[number] == 1;
      // The line above, pages apart, has an end behind leaders.
      bool const ended =
          (far || last_one) && !kept.empty() && has_led_end(lines_[kept.back()].text, numbering_);
      bool const beyond =
          number > labels + kMostCoupletsLeftOut || (last_one && (ended || has_end(kept)));
      // "… 11" / "27" / "28" below couplet 6: the foot of a page and the head of the next.
      bool const turned = ended && far;
      bool const page = beyond || turned || (number > last + 1 && times[number] == 1 && headed);
      if (!page) {
        kept.push_back(filled_[f]);
        if (number > 0) before = number;
      }
      if (page) drop_foot(kept);
      if (page && headed) ++f;
    }
    filled_ = std::move(kept);
  }

  // "Diagnostic Manual 14" above its page's number, beneath the end of a lead.
  void drop_foot(std::vector<std::size_t>& kept) const {
    if (kept.size() < 2) return;
    auto const text = lines_[kept.back()].text;
    auto const above = kept[kept.size() - 2];
    if (is_end(above) && is_head(text) && number_alone(kept.back()) == 0 && !is_end(kept.back())) {
      kept.pop_back();
    }
  }
  // The line is where a lead leads to.
  [[nodiscard]] bool is_end(std::size_t i) const {
    auto const text = lines_[i].text;
    return number_alone(i) > 0 || names_a_key(text) || certain_destination(text, numbering_);
  }
  // What is kept so far ends in the end of a lead, with the foot of a page behind it or not.
  [[nodiscard]] bool has_end(std::vector<std::size_t> const& kept) const {
    if (kept.empty()) return false;
    if (is_end(kept.back())) return true;
    if (kept.size() < 3 || !is_head(lines_[kept.back()].text)) return false;
    // A number beneath words, not the label of what may be words as well.
    auto const above = kept[kept.size() - 2];
    return is_end(above) && (number_alone(above) == 0 || !is_end(kept[kept.size() - 3]));
  }

  // "Couplet", "Character", "Go to": the heads of a table's columns that each page prints again.
  void drop_column_heads() {
    using Pair = std::pair<std::string_view, std::string_view>;
    std::map<Pair, std::size_t> pairs;
    auto const pair_at = [this](std::size_t f) {
      return Pair{lines_[filled_[f]].text, lines_[filled_[f + 1]].text};
    };
    auto const may_be_head = [this](std::string_view text) {
      return is_head(text) && !label_alone(text) && !certain_destination(text, numbering_);
    };
    for (std::size_t f = 0; f + 1 < filled_.size(); ++f) {
      auto const pair = pair_at(f);
      if (may_be_head(pair.first) && may_be_head(pair.second)) ++pairs[pair];
    }
    // They stand above the first label, too; a lead's words with its end do not.
    std::set<Pair> heads;
    for (std::size_t f = 0; f + 1 < filled_.size() && !is_label(f); ++f) {
      auto const found = pairs.find(pair_at(f));
      if (found != pairs.end() && found->second > 1) heads.insert(found->first);
    }
    std::vector<bool> drops(filled_.size());
    for (std::size_t f = 0; f + 1 < filled_.size(); ++f) {
      if (heads.contains(pair_at(f))) drops[f] = drops[f + 1] = true;
    }
    std::vector<std::size_t> kept;
    for (std::size_t f = 0; f < filled_.size(); ++f) {
      if (!drops[f]) kept.push_back(filled_[f]);
    }
    filled_ = std::move(kept);
  }

  // "Ausellidae", "Marsh Studies 12"
  [[nodiscard]] static bool is_head(std::string_view text) {
    constexpr std::size_t kMostWords = 6;
    return starts_with_upper(text) && !text.ends_with('.') &&
           words_of(text, kMostWords + 1).size() <= kMostWords;
  }

  // "Fig. 2. Wings of" / "Aus bus." between a destination and the next label.
  void drop_captions() {
    std::vector<std::size_t> kept;
    bool caption = false;
    for (std::size_t f = 0; f < filled_.size(); ++f) {
      auto const i = filled_[f];
      bool const label = is_label(f);
      caption = !label && (caption || (f > 0 && is_label(f - 1) && is_number(f - 1) &&
                                       starts_caption(lines_[i].text)));
      if (!caption) kept.push_back(i);
    }
    filled_ = std::move(kept);
  }

  [[nodiscard]] SourceLine const& line(std::size_t f) const { return lines_[filled_[f]]; }

  // Nothing but a label: "1", "1a.", "–".
  [[nodiscard]] bool is_label(std::size_t f) const {
    if (f >= filled_.size()) return false;
    // Whatever style the labels of other lines have.
    auto const label = label_alone(line(f).text);
    if (!label || label->decimal) return false;
    if (stands_within_sentence(f)) return false;
    // "b" beneath "1a"
    bool const letter =
        label->family == LabelFamily::lower && label->number > 1 && label->marks == 0 && lettered_;
    return label->is_dash() || label->family == LabelFamily::digits || letter;
  }

  // "5C" of "… simple (" / "Fig. 3A" / "," / "5C" / "); embolus …": markup parts the lines.
  [[nodiscard]] bool stands_within_sentence(std::size_t f) const {
    if (f == 0 || f + 1 >= filled_.size()) return false;
    auto const before = line(f - 1).text;
    bool const opened = before.ends_with('(') || before.ends_with('[') || before == ",";
    bool const goes_on =
        std::string_view{"),;]."}.find(line(f + 1).text.front()) != std::string_view::npos;
    return opened || goes_on;
  }

  // Most labels stand alone; a key with mere destinations on lines of their own has at least as
  // many labels before words.
  [[nodiscard]] bool is_table() const {
    std::size_t alone = 0;
    std::size_t with_words = 0;
    for (std::size_t f = 0; f < filled_.size(); ++f) {
      if (is_label(f)) {
        ++alone;
      } else if (numbering_.label_of(line(f))) {
        ++with_words;
      }
    }
    return alone >= kFewestLabelCells && alone > with_words * 2;
  }

  // Gives the roles of one lead, which begins with its label at `at`; returns where the next one
  // begins.
  std::size_t take_lead(std::size_t at) {
    LeadStart start;
    start.line = static_cast<std::uint32_t>(filled_[at]);
    start.rank.label = *read_label(line(at).text);
    plan_.start_at[start.line] = static_cast<std::uint32_t>(plan_.starts.size());
    plan_.starts.push_back(start);
    auto const words = at + 1;
    auto const limit = std::min(filled_.size(), words + kMostLinesOfCellLead);
    if (words >= filled_.size()) return words;
    auto next = words + 1;
    while (next < limit && !is_label(next) && !opens_next_key(next) && !is_title(next) &&
           !is_behind_led_line(next)) {
      ++next;
    }
    if (is_label(next) && (is_label(next + 1) || next + 1 == filled_.size()) && is_number(next)) {
      // A number before a label, or at the end, is the destination.
      give_words(words, next);
      plan_.parts[filled_[next]] = LinePart::destination;
      return next + 1;
    }
    // Behind the last label the text goes on with other things.
    bool const titled = next < limit && (opens_next_key(next) || is_title(next));
    auto const destination =
        is_label(next) || titled ? name_between(words + 1, next) : first_name(words + 1, next);
    if (!is_label(next) && leads_on(words)) {
      give_words(words, words + 1);
      return next;
    }
    if (next < limit && is_behind_led_line(next)) {
      give_words(words, next);
      return next;
    }
    give_words(words, destination);
    if (destination < next) plan_.parts[filled_[destination]] = LinePart::destination;
    return next;
  }

  void give_words(std::size_t from, std::size_t to) {
    for (auto f = from; f < to; ++f) plan_.parts[filled_[f]] = LinePart::words;
  }

  [[nodiscard]] bool is_number(std::size_t f) const {
    auto const label = read_label(line(f).text);
    return label && !label->is_dash();
  }

  [[nodiscard]] bool leads_on(std::size_t f) const {
    return split_at_leader(line(f).text, numbering_).kind != LeaderKind::none;
  }

  // "… not produced . . . . 5" stands above, and a blank line between, or a caption follows: what
  // follows is the foot of a page, its head or a figure.
  [[nodiscard]] bool is_behind_led_line(std::size_t f) const {
    if (filled_[f] == filled_[f - 1] + 1 && !starts_caption(line(f).text)) return false;
    return has_led_end(line(f - 1).text, numbering_);
  }

  // The line that names where the lead leads; `to` when none does.
  [[nodiscard]] std::size_t name_between(std::size_t from, std::size_t to) const {
    if (from >= to) return to;
    for (auto f = to; f > from; --f) {
      if (leads_on(f - 1)) return to;
      if (f > from + 1 && titles_next_key(f - 1)) continue;
      if (f > from + 1 && is_author_with_year(line(f - 1).text) &&
          is_latin_name(line(f - 2).text)) {
        continue;
      }
      if (certain_destination(line(f - 1).text, numbering_)) return f - 1;
    }
    return plausible_destination(line(to - 1).text, numbering_) ? to - 1 : to;
  }

  // Markup says so.
  [[nodiscard]] bool is_title(std::size_t f) const {
    return line(f).markup.role == LineRole::heading;
  }

  // "Key to females of" behind a blank line.
  [[nodiscard]] bool opens_next_key(std::size_t f) const {
    auto const at = filled_[f];
    return at > 0 && lines_[at - 1].text.empty() && starts_with_upper(line(f).text) &&
           mentions_key(line(f).text) && !is_label(f + 1);
  }

  // "Roe, 2011" beneath "Aus bus"
  [[nodiscard]] static bool is_author_with_year(std::string_view text) {
    auto const words = words_of(text);
    return words.size() >= 2 && words[words.size() - 2].ends_with(',') && is_year(words.back()) &&
           is_authorish(words.front());
  }

  // "Key B. Species without eyes", apart from the name before it.
  [[nodiscard]] bool titles_next_key(std::size_t f) const {
    auto const at = filled_[f];
    return at > 0 && lines_[at - 1].text.empty() && names_a_key(line(f).text) &&
           certain_destination(line(f - 1).text, numbering_);
  }

  // Without a name beyond doubt, the next cell that may be one: what comes after all cells is
  // farther off.
  [[nodiscard]] std::size_t first_name(std::size_t from, std::size_t to) const {
    auto const told = [&](std::size_t f) { return f < to && line(f).is_told_destination(); };
    for (auto f = from; f < to; ++f) {
      if (told(f)) return f;
      // "Males alone" may be a name but for the line beneath it.
      if (certain_destination(line(f).text, numbering_)) return told(f + 1) ? f + 1 : f;
    }
    for (auto f = from; f < to; ++f) {
      if (plausible_destination(line(f).text, numbering_)) return f;
    }
    return to;
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  std::vector<std::size_t> filled_;  // lines that are not blank, nor set aside
  bool lettered_{false};             // "1a" stands alone, again and again
  LeadPlan plan_;
};

}  // namespace

std::optional<LeadPlan> find_cells(std::vector<SourceLine> const& lines,
                                   Numbering const& numbering) {
  return CellFinder{lines, numbering}.find();
}

}  // namespace keydrift::printed

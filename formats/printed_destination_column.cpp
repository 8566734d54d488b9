// Destinations that were copied as a column of their own: some leads without an end, and behind
// them as many lines, each of them a destination (common practice of programs that copy text from
// PDF files and scans).

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_columns.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestOfColumn = 4;         // destinations that make a column
constexpr std::size_t kFewestNames = 2;            // the same of names
constexpr std::size_t kMostLinesOfColumnLead = 8;  // of a lead
constexpr std::size_t kLongestOfColumn = 100;      // bytes of a destination

class ColumnFinder {
 public:
  ColumnFinder(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {}

  // Whether any was put behind its lead.
  bool run() {
    order_.reserve(lines_.size());
    for (std::size_t i = 0; i < lines_.size();) {
      if (auto const end = move_spread_numbers(i)) {
        moved_ = true;
        i = *end;
        continue;
      }
      auto const end = end_of_column(i);
      if (may_be_column(i, end) && move_behind_leads(i, end)) {
        moved_ = true;
        i = end;
        continue;
      }
      do {
        order_.push_back(i++);
      } while (i < end);
    }
    return moved_;
  }

  // The lines in their new order; where destinations begin is marked, for nothing else sets off the
  // numbers of the other leads.
  [[nodiscard]] std::vector<SourceLine> lines() const {
    std::vector<SourceLine> lines;
    lines.reserve(order_.size());
    for (std::size_t k = 0; k < order_.size(); ++k) {
      auto line = lines_[order_[k]];
      bool const last = k + 1 == order_.size() || lines_[order_[k + 1]].text.empty() ||
                        starts_lead(order_[k + 1]);
      auto const number =
          last ? trailing_reference(line.text, &numbering_) : std::optional<TrailingReference>{};
      if (number && numbering_.has_number(number->reference.number)) {
        line.markup.destination_begin = line.begin + number->destination_begin;
      }
      bool const moved = std::binary_search(columns_.begin(), columns_.end(), order_[k]);
      if (moved) line.markup.destination_begin = line.begin;
      lines.push_back(line);
    }
    return lines;
  }

 private:
  // A number of the key or a name, and nothing else.
  [[nodiscard]] bool is_destination(std::size_t i) const {
    auto const text = lines_[i].text;
    if (text.empty() || text.size() > kLongestOfColumn || starts_lead(i)) return false;
    if (is_number_only(text)) {
      auto const number = read_reference(strip_pointer(text));
      return number && numbering_.has_number(number->number);
    }
    return (is_latin_name(text) && certain_destination(text, numbering_)) ||
           is_numbered_name(text) || is_genusless_name(text) ||
           is_genusless_name(without_full_stop(text));
  }
  [[nodiscard]] bool may_be_column(std::size_t begin, std::size_t end) const {
    if (end - begin >= kFewestOfColumn) return true;
    if (end - begin < kFewestNames) return false;
    auto const first = lines_.begin() + static_cast<std::ptrdiff_t>(begin);
    auto const last = lines_.begin() + static_cast<std::ptrdiff_t>(end);
    return std::none_of(first, last,
                        [](SourceLine const& line) { return is_number_only(line.text); });
  }
  [[nodiscard]] std::size_t end_of_column(std::size_t i) const {
    while (i < lines_.size() && is_destination(i)) ++i;
    return i;
  }

  [[nodiscard]] bool starts_lead(std::size_t i) const {
    auto const text = lines_[i].text;
    auto const label = read_label(text);
    return label && label->text_at < text.size() &&
           (label->is_dash() || label->family == LabelFamily::digits ||
            label->end == LabelEnd::dot) &&
           is_upper(code_point_at(text, label->text_at).value) && !is_numbered_name(text) &&
           !is_numbered_taxon(text);
  }

  // "… of uniform colour ... ... ..."
  [[nodiscard]] bool ends_in_leaders(std::size_t i) const {
    auto const split = split_at_leader(lines_[i].text, numbering_);
    return split.kind == LeaderKind::dots && split.destination_begin >= lines_[i].text.size();
  }

  [[nodiscard]] bool ends_lead(std::size_t i) const {
    auto text = lines_[i].text;
    if (auto const label = read_label(text)) text.remove_prefix(label->text_at);
    while (!text.empty() && !is_letter(code_point_at(text, 0).value)) {  // "9 (7) — Wings"
      text.remove_prefix(code_point_at(text, 0).length);
    }
    auto const split = split_at_leader(text, numbering_);
    bool const led = split.kind != LeaderKind::none && split.kind != LeaderKind::dash;
    if (led) return split.destination_begin < text.size();
    if (trailing_reference(text, &numbering_)) return true;
    // The first of a lead's words may only look like a genus.
    auto const name = trailing_name(text);
    return name && *name > 0 && is_certain_name(text.substr(*name));
  }

  // "3a. Wings clear", "b. Wings dark", "4", "5", "4a. Legs red", blank lines between them
  // or not: the line behind the numbers, if they were put behind the leads above.
  std::optional<std::size_t> move_spread_numbers(std::size_t begin) {
    std::vector<std::size_t> numbers;  // lines
    std::uint32_t before = 0;
    auto i = begin;
    for (; i < lines_.size(); ++i) {
      if (lines_[i].text.empty() && !numbers.empty()) continue;
      auto const number =
          is_number_only(lines_[i].text) && is_destination(i) ? number_of(lines_[i].text) : 0;
      if (number <= before) break;
      before = number;
      numbers.push_back(i);
    }
    if (numbers.size() < kFewestNames || i == lines_.size()) return std::nullopt;
    auto const label = starts_lead(i) ? read_label(lines_[i].text) : std::nullopt;
    bool const next = label && label->family == LabelFamily::digits &&
                      label->number == number_of(lines_[numbers.front()].text);
    if (!next) return std::nullopt;
    std::vector<std::size_t> ends;  // places in order_ behind the leads, last lead first
    auto at = order_.size();
    std::size_t rest = 0;
    bool fresh = true;
    while (at > 0 && ends.size() <= numbers.size()) {
      auto const above = order_[at - 1];
      bool const blank = lines_[above].text.empty();
      if (blank && !fresh) return std::nullopt;  // within a lead
      if (!blank && fresh) {
        if (is_destination(above) || ends_lead(above)) break;
        ends.push_back(at);
        rest = 0;
      }
      if (!blank) fresh = starts_lead(above);
      --at;
      if (++rest > kMostLinesOfColumnLead) return std::nullopt;
    }
    if (ends.size() != numbers.size()) return std::nullopt;
    for (std::size_t k = 0; k < ends.size(); ++k) {
      auto const number = numbers[numbers.size() - 1 - k];
      order_.insert(order_.begin() + static_cast<std::ptrdiff_t>(ends[k]), number);
    }
    columns_.insert(columns_.end(), numbers.begin(), numbers.end());
    for (auto k = begin; k < i; ++k) {
      if (lines_[k].text.empty()) order_.push_back(k);
    }
    return i;
  }

  // The leads without an end directly above the column are as many as it has lines.
  bool move_behind_leads(std::size_t begin, std::size_t end) {
    auto const wanted = end - begin;
    std::vector<std::size_t> starts;  // places in order_, last lead first
    auto at = order_.size();
    // A blank line above the column goes behind it.
    bool const blank = at > 0 && lines_[order_[at - 1]].text.empty();
    if (blank) --at;
    std::size_t rest = 0;  // lines of the lead that is being gone up
    bool fresh = true;     // the next line up is a lead's last one
    bool hanging = true;  // all leads so far end in leaders: those above that do not end in nothing
    while (at > 0 && starts.size() <= wanted) {
      auto const i = order_[at - 1];
      if (lines_[i].text.empty() || is_destination(i)) break;
      if (fresh && ends_lead(i)) break;
      if (fresh && starts.size() < wanted) hanging = hanging && ends_in_leaders(i);
      if (fresh && starts.size() == wanted && hanging) break;
      fresh = false;
      --at;
      if (++rest > kMostLinesOfColumnLead) break;
      if (!starts_lead(i)) continue;
      starts.push_back(at);
      rest = 0;
      fresh = true;
    }
    if (starts.size() != wanted) return false;
    std::reverse(starts.begin(), starts.end());
    std::vector<std::size_t> const leads(order_.begin() + static_cast<std::ptrdiff_t>(starts[0]),
                                         order_.end() - (blank ? 1 : 0));
    auto const above = order_.back();
    auto const first = starts[0];
    order_.resize(first);
    for (std::size_t k = 0; k < wanted; ++k) {
      auto const to = k + 1 < wanted ? starts[k + 1] : first + leads.size();
      order_.insert(order_.end(), leads.begin() + static_cast<std::ptrdiff_t>(starts[k] - first),
                    leads.begin() + static_cast<std::ptrdiff_t>(to - first));
      order_.push_back(begin + k);
      columns_.push_back(begin + k);
    }
    if (blank) order_.push_back(above);
    return true;
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  std::vector<std::size_t> order_;    // indices into the lines
  std::vector<std::size_t> columns_;  // of lines that were put behind their leads
  bool moved_{false};
};

}  // namespace

std::optional<std::vector<SourceLine>> put_destinations_behind_leads(
    std::vector<SourceLine> const& lines) {
  auto const numbering = decide_numbering(lines);
  ColumnFinder finder{lines, numbering};
  return finder.run() ? std::optional{finder.lines()} : std::nullopt;
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_exact.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <unordered_map>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLinesLookedAt = 200;  // front matter is not longer

struct LayoutWord {
  std::string_view word;
  Layout read;
  PrintLayout written;
};
constexpr std::array kLayoutWords{
    LayoutWord{"parallel"sv, Layout::parallel, PrintLayout::parallel},
    LayoutWord{"indented"sv, Layout::indented, PrintLayout::indented},
    LayoutWord{"serial"sv, Layout::serial, PrintLayout::serial},
};

LabelKey whole_key(Label const& label) {
  return key_of(label.family, label.number, label.letter, label.marks);
}

class ExactGrouper {
 public:
  ExactGrouper(KeyText const& key, SortedLines const& sorted, Layout layout)
      : key_{key}, leads_{sorted.leads}, remarks_{sorted.remarks}, layout_{layout} {}

  Grouping run() && {
    grouping_.layout = layout_;
    grouping_.goes_on = layout_ != Layout::parallel;
    members_.reserve(leads_.size());
    for (std::uint32_t i = 0; i < leads_.size(); ++i) {
      if (i == 0 || opens_part(leads_[i])) open_part(i);
      auto const group = group_for(leads_[i].label);
      members_[group].push_back(i);
    }
    grouping_.couplets.reserve(members_.size());
    grouping_.members.reserve(leads_.size());
    for (std::size_t g = 0; g < members_.size(); ++g) name(g);
    return std::move(grouping_);
  }

 private:
  [[nodiscard]] bool opens_part(RawLead const& lead) const {
    if (lead.last_heading == kNone) return false;
    auto const& piece = remarks_[lead.last_heading].pieces.front();
    auto const heading = key_.text.substr(piece.begin, piece.end - piece.begin);
    return !explicit_key_title(trim(heading)).empty();
  }

  void open_part(std::uint32_t lead) {
    grouping_.parts.push_back({lead, leads_[lead].last_heading});
    open_.clear();
    depth_of_.clear();
    by_number_.clear();
  }

  // The couplet that the next lead belongs to; a new one where none waits for it.
  [[nodiscard]] std::size_t group_for(Label const& label) {
    if (label.is_dash() && !members_.empty()) {
      return layout_ == Layout::indented && !open_.empty() ? open_.back() : members_.size() - 1;
    }
    switch (layout_) {
      case Layout::indented:
        return group_on_the_way(label);
      case Layout::serial:
        return group_of_rivals(label);
      default:
        return open_group();
    }
  }

  [[nodiscard]] std::size_t open_group() {
    members_.emplace_back();
    parts_.push_back(static_cast<std::uint32_t>(grouping_.parts.size() - 1));
    return members_.size() - 1;
  }

  [[nodiscard]] std::size_t group_on_the_way(Label const& label) {
    auto const key = whole_key(label);
    if (auto const found = depth_of_.find(key); found != depth_of_.end()) {
      auto const depth = found->second;
      for (; open_.size() > depth + 1; open_.pop_back()) {
        depth_of_.erase(whole_key(leads_[members_[open_.back()].front()].label));
      }
      return open_.back();
    }
    auto const group = open_group();
    depth_of_.emplace(key, open_.size());
    open_.push_back(group);
    return group;
  }

  [[nodiscard]] std::size_t group_of_rivals(Label const& label) {
    auto group = members_.size();
    if (auto const rivals = read_references(label.back)) {
      for (auto const& rival : *rivals) {
        auto const found = by_number_.find(rival.number);
        if (found != by_number_.end()) group = found->second;
      }
    }
    if (group == members_.size()) group = open_group();
    by_number_.emplace(label.number, group);
    return group;
  }

  void name(std::size_t group) {
    auto const& leads = members_[group];
    auto const& label = leads_[leads.front()].label;
    RawCouplet couplet;
    couplet.label = std::string{label.printed};
    couplet.key = whole_key(label);
    couplet.part = parts_[group];
    couplet.first_member = static_cast<std::uint32_t>(grouping_.members.size());
    couplet.member_count = static_cast<std::uint32_t>(leads.size());
    grouping_.members.insert(grouping_.members.end(), leads.begin(), leads.end());
    grouping_.couplets.push_back(std::move(couplet));
  }

  KeyText const& key_;
  std::vector<RawLead> const& leads_;
  std::vector<Remark> const& remarks_;
  Layout layout_;
  Grouping grouping_;
  std::vector<std::vector<std::uint32_t>> members_;  // leads, couplet by couplet
  std::vector<std::uint32_t> parts_;                 // of the couplets
  std::vector<std::size_t> open_;                    // couplets on the way; indented
  std::unordered_map<LabelKey, std::size_t> depth_of_;
  std::unordered_map<std::uint32_t, std::size_t> by_number_;  // serial
};

}  // namespace

std::string layout_line(PrintLayout layout) {
  std::string line{"Layout: "};
  for (auto const& one : kLayoutWords) {
    if (one.written == layout) line += one.word;
  }
  return line + ", exact";
}

std::optional<Layout> layout_of_line(std::string_view line) {
  // Every line is asked, and few begin so.
  auto const begin = skip_blanks(line, 0);
  if (begin == line.size() || (line[begin] != 'L' && line[begin] != 'l')) return std::nullopt;
  auto const folded = fold(squeeze(line));
  for (auto const& one : kLayoutWords) {
    if (folded == fold(layout_line(one.written))) return one.read;
  }
  return std::nullopt;
}

std::optional<Layout> declared_layout(std::vector<SourceLine> const& lines) {
  for (std::size_t i = 0; i < std::min(lines.size(), kLinesLookedAt); ++i) {
    if (auto const layout = layout_of_line(lines[i].text)) return layout;
  }
  return std::nullopt;
}

Numbering exact_numbering(std::vector<SourceLine> const& lines) {
  Numbering numbering;
  numbering.exact = true;
  std::array<std::size_t, 3> families{};
  auto const label_of = [](SourceLine const& line) {
    auto label = read_label(line.text);
    bool const whole = label && !label->is_dash() && !label->decimal && label->end == LabelEnd::dot;
    return whole ? label : std::nullopt;
  };
  for (auto const& line : lines) {
    auto const label = label_of(line);
    if (!label) continue;
    ++families[static_cast<std::size_t>(label->family)];
    numbering.styles.set(label->style());
    numbering.numbers.push_back(label->number);
  }
  // Letters number the couplets only where digits do not.
  auto const most = std::max_element(families.begin() + 1, families.end());
  numbering.family =
      families[0] > 0 ? LabelFamily::digits
                      : static_cast<LabelFamily>(static_cast<std::size_t>(most - families.begin()));
  for (unsigned style = 0; style < Label::kStyles; ++style) {
    if (style / 16 != static_cast<unsigned>(numbering.family)) numbering.styles.reset(style);
  }
  std::sort(numbering.numbers.begin(), numbering.numbers.end());
  numbering.numbers.erase(std::unique(numbering.numbers.begin(), numbering.numbers.end()),
                          numbering.numbers.end());
  return numbering;
}

Grouping group_exact(KeyText const& key, SortedLines const& sorted, Layout layout) {
  return ExactGrouper{key, sorted, layout}.run();
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_couplets.hpp"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_goes_on.hpp"

namespace keydrift::printed {
namespace {

LabelKey key_of_label(Label const& label) {
  return key_of(label.family, label.number, label.letter, label.marks);
}

// What leads of one couplet share: the number, with "bis" and "ter", which are no lead's letter.
LabelKey number_of_label(Label const& label) {
  auto const key = key_of_label(label);
  return label.letter.size() > 1 ? letter_key(key) : number_key(key);
}

constexpr std::size_t kLongestRun = 64;  // equal labels in a row that are looked at; even

// Leads that stand together, before they have a name.
struct CoupletGroup {
  std::vector<std::uint32_t> leads;
  std::uint32_t part{};
};

class Grouper {
 public:
  Grouper(KeyText const& key, SortedLines const& sorted, std::vector<ReadLead> const& reads)
      : key_{key}, leads_{sorted.leads}, remarks_{sorted.remarks}, reads_{reads} {}

  Layout likely_layout() && {
    collect_references();
    return decide_layout();
  }

  [[nodiscard]] bool may_be_serial() const { return reciprocal_leads() * 3 > leads_.size(); }

  Grouping run(Layout layout) && {
    collect_references();
    grouping_.layout = layout;
    grouping_.goes_on = grouping_.layout != Layout::parallel;
    find_parts();
    switch (grouping_.layout) {
      case Layout::parallel:
        group_parallel();
        break;
      case Layout::indented:
      case Layout::outline:
      case Layout::by_indentation:
      case Layout::by_order:
        group_indented();
        break;
      case Layout::serial:
        group_serial();
        break;
    }
    name_groups();
    if (grouping_.layout == Layout::indented && numbers_come_back()) number_here();
    bool const several = grouping_.layout == Layout::parallel && grouping_.parts.size() > 1;
    if (several && open_ > 0) mark_nested_parts(grouping_, reads_);
    return std::move(grouping_);
  }

 private:
  // --- layout ----------------------------------------------------------------------------------

  void collect_references() {
    for (auto const& read : reads_) {
      if (read.to.form == DestinationForm::couplet) referenced_.insert(read.to.couplet);
      if (is_open(read)) ++open_;
    }
    for (auto const& lead : leads_) {
      if (lead.label.is_dash()) continue;
      if (lead.label.letter.empty() && lead.label.marks == 0) {
        ++plain_[number_of_label(lead.label)];
      }
    }
  }

  [[nodiscard]] Layout decide_layout() const {
    if (reciprocal_leads() * 2 > leads_.size()) return Layout::serial;
    std::size_t references = 0;
    for (auto const& read : reads_) {
      if (read.to.form == DestinationForm::couplet) ++references;
    }
    bool const leads_nowhere = open_ * 3 > leads_.size() && references * 5 < leads_.size();
    bool const nested = references * 5 < leads_.size() && rivals_far_apart() > 0;
    return leads_nowhere || nested ? Layout::indented : Layout::parallel;
  }

  // Leads "1 (6)" whose rival "6 (1)" names them back.
  [[nodiscard]] std::size_t reciprocal_leads() const {
    std::unordered_map<std::uint32_t, std::uint32_t> rival;
    for (auto const& lead : leads_) {
      if (lead.label.back.empty() || lead.label.is_dash()) continue;
      auto const references = read_references(lead.label.back);
      if (references) rival.emplace(lead.label.number, references->front().number);
    }
    std::size_t count = 0;
    for (auto const& [number, other] : rival) {
      auto const found = rival.find(other);
      if (number != other && found != rival.end() && found->second == number) ++count;
    }
    return count;
  }

  // Numbers that come back after others, in single leads each time.
  [[nodiscard]] std::size_t rivals_far_apart() const {
    std::unordered_set<LabelKey> closed;
    std::size_t count = 0;
    LabelKey current = 0;
    for (auto const& lead : leads_) {
      if (lead.label.is_dash()) continue;
      auto const key = number_of_label(lead.label);
      if (key == current) continue;
      if (!closed.insert(key).second) ++count;
      current = key;
    }
    return count;
  }

  // --- parts -----------------------------------------------------------------------------------

  [[nodiscard]] bool has_key_heading(RawLead const& lead) const {
    return lead.last_heading != kNone &&
           names_a_key(trim(heading_text(remarks_[lead.last_heading])));
  }
  [[nodiscard]] std::string_view heading_text(Remark const& remark) const {
    auto const& piece = remark.pieces.front();
    return key_.text.substr(piece.begin, piece.end - piece.begin);
  }

  // The number after the couplet that lead i belongs to; 0 at the end.
  [[nodiscard]] std::uint32_t next_number(std::size_t i) const {
    auto const number = leads_[i].label.number;
    for (++i; i < leads_.size(); ++i) {
      auto const& label = leads_[i].label;
      if (!label.is_dash() && label.number != number) return label.number;
    }
    return 0;
  }

  // A key begins where the numbering starts again, or at a heading that names a key to whose first
  // couplet no number leads.
  void find_parts() {
    part_of_.assign(leads_.size(), 0);
    grouping_.parts.push_back({0, leads_.front().last_heading});
    std::uint32_t first_number = leads_.front().label.number;
    std::uint32_t largest = 0;
    bool seen_first_twice = false;
    bool numbered_twice = false;                               // and no dash was its second lead
    std::unordered_map<std::uint32_t, std::size_t> last_with;  // by number, of all leads
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      if (!leads_[i].label.is_dash()) last_with[leads_[i].label.number] = i;
    }
    std::uint32_t current = 0;
    // There every lead has a number of its own, so that none stands twice in a key.
    bool const serial = grouping_.layout == Layout::serial;
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto const& label = leads_[i].label;
      if (!label.is_dash() && i > 0) {
        bool const plain = label.marks == 0 &&
                           (label.letter.empty() || label.letter == "a" || label.letter == "A");
        bool const headed = leads_[i].last_heading != kNone;
        // "1", "1", "2", "2", "1", "2", "2": a third lead, for no rival would answer it.
        bool const alone = i + 1 == leads_.size() || !leads_[i + 1].label.is_dash();
        bool const third = numbered_twice && alone && last_with[label.number] == i;
        bool const restart = plain && label.number == first_number && label.number != current &&
                             largest > first_number &&
                             (headed || (next_number(i) == first_number + 1 && !third)) &&
                             (headed || seen_first_twice || serial);
        bool const again = plain && headed && label.number == first_number &&
                           label.number == current && has_key_heading(leads_[i]);
        // "1 … / – …" under one heading and under the next: keys of one couplet each.
        bool const single = plain && headed && label.number == first_number &&
                            label.number == current && seen_first_twice;
        bool const headed_key = has_key_heading(leads_[i]) && label.number != current && plain &&
                                referenced_.count(key_of_label(label)) == 0 &&
                                referenced_.count(number_of_label(label)) == 0;
        bool const other_key = headed && plain && label.number == 1 && label.number != current;
        bool const told =
            headed &&
            !explicit_key_title(trim(heading_text(remarks_[leads_[i].last_heading]))).empty();
        if (told || restart || again || single || headed_key || other_key) {
          grouping_.parts.push_back({static_cast<std::uint32_t>(i), leads_[i].last_heading});
          first_number = label.number;
          largest = 0;
          seen_first_twice = numbered_twice = false;
        }
      }
      part_of_[i] = static_cast<std::uint32_t>(grouping_.parts.size() - 1);
      if (label.is_dash()) {
        if (current == first_number) seen_first_twice = true;
        continue;
      }
      if (label.number == first_number && label.number == current) {
        seen_first_twice = numbered_twice = true;
      }
      current = label.number;
      largest = std::max(largest, label.number);
    }
  }

  // --- parallel --------------------------------------------------------------------------------

  void group_parallel() {
    std::size_t i = 0;
    while (i < leads_.size()) {
      // A block: leads of one number, dashes included.
      std::size_t end = i + 1;
      while (end < leads_.size() && part_of_[end] == part_of_[i] &&
             (leads_[end].label.is_dash() ||
              number_of_label(leads_[end].label) == number_of_label(leads_[i].label))) {
        ++end;
      }
      split_block(i, end);
      i = end;
    }
    join_yoked();
  }

  // Parts a block of one number into couplets: 7 | 7a/7a', or two couplets of the same number.
  void split_block(std::size_t begin, std::size_t end) {
    open_group(begin);
    std::size_t labelled = 1;  // labels in the current group
    bool dashed = false;       // it has a dash
    std::size_t identical = identical_run(begin, end);
    for (std::size_t i = begin + 1; i < end; ++i) {
      auto const& label = leads_[i].label;
      if (label.is_dash()) {
        groups_.back().leads.push_back(static_cast<std::uint32_t>(i));
        dashed = true;
        continue;
      }
      if (continues(i, end, labelled, dashed, identical)) {
        groups_.back().leads.push_back(static_cast<std::uint32_t>(i));
        ++labelled;
      } else {
        open_group(i);
        labelled = 1;
        dashed = false;
        identical = identical_run(i, end);
      }
    }
  }

  void open_group(std::size_t i) {
    groups_.push_back({{static_cast<std::uint32_t>(i)}, part_of_[i]});
  }

  // How many leads from i on bear the very same label.
  [[nodiscard]] std::size_t identical_run(std::size_t i, std::size_t end) const {
    std::size_t j = i + 1;
    while (j < end && j - i < kLongestRun && !leads_[j].label.is_dash() &&
           key_of_label(leads_[j].label) == key_of_label(leads_[i].label)) {
      ++j;
    }
    return j - i;
  }

  // Does lead i (labelled, same number) belong to the group being filled?
  [[nodiscard]] bool continues(std::size_t i, std::size_t end, std::size_t labelled, bool dashed,
                               std::size_t identical) const {
    auto const& group = groups_.back();
    auto const& first = leads_[group.leads.front()].label;
    auto const& label = leads_[i].label;
    bool const same_letter = first.letter == label.letter;
    if (same_letter) {
      if (dashed) return false;
      if (first.marks == label.marks) {
        // 7 / 7, 7 / 7 / 7; four and more are couplets of two that bear one number.
        return identical % 2 == 1 && identical > 1 ? labelled < identical : labelled < 2;
      }
      return std::none_of(group.leads.begin(), group.leads.end(), [&](std::uint32_t lead) {
        return leads_[lead].label.marks == label.marks && leads_[lead].label.letter == label.letter;
      });
    }
    if (is_answered(i, end)) return false;
    if (dashed) return labelled >= 2 && !first.letter.empty();
    if (first.letter.empty()) return labelled == 1 || all_lettered_after_first(group);
    // 7a / 7b / 7c; a group of 7a / 7a' is closed.
    auto const& last = leads_[group.leads.back()].label;
    bool const primed = group.leads.size() >= 2 && last.letter == first.letter;
    bool const repeated =
        std::any_of(group.leads.begin(), group.leads.end(),
                    [&](std::uint32_t lead) { return leads_[lead].label.letter == label.letter; });
    return !primed && !repeated;
  }

  [[nodiscard]] bool all_lettered_after_first(CoupletGroup const& group) const {
    return std::all_of(group.leads.begin() + 1, group.leads.end(),
                       [&](std::uint32_t lead) { return !leads_[lead].label.letter.empty(); });
  }

  // Lead i has a rival of its own behind it: 7a' after 7a, 7a after 7a, or a dash where the number
  // with its letter is a couplet that some lead leads to.
  [[nodiscard]] bool is_answered(std::size_t i, std::size_t end) const {
    if (i + 1 >= end) return false;
    auto const& label = leads_[i].label;
    auto const& next = leads_[i + 1].label;
    if (!next.is_dash()) return next.letter == label.letter;
    return referenced_.count(letter_key(key_of_label(label))) > 0;
  }

  // Two lone leads of one number that stand apart (6 … 6*) are one couplet.
  void join_yoked() {
    std::unordered_map<LabelKey, std::size_t> lone;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      auto& group = groups_[g];
      if (group.leads.size() != 1) continue;
      auto const& label = leads_[group.leads.front()].label;
      auto const key = number_of_label(label) | (static_cast<LabelKey>(group.part) << 52U);
      auto const [place, fresh] = lone.emplace(key, g);
      if (fresh) continue;
      groups_[place->second].leads.push_back(group.leads.front());
      group.leads.clear();
    }
    std::erase_if(groups_, [](CoupletGroup const& group) { return group.leads.empty(); });
  }

  // --- indented --------------------------------------------------------------------------------

  // A label that is open on the way down is a rival of it; any other opens a couplet.
  void group_indented() {
    std::vector<std::size_t> open;  // groups on the way from the start to the lead before
    std::unordered_map<LabelKey, std::size_t> depth_of;  // by number: where in `open` it stands
    auto const close_below = [&](std::size_t depth) {
      for (; open.size() > depth; open.pop_back()) depth_of.erase(number_of(groups_[open.back()]));
    };
    auto const descend = [&](std::size_t i) {
      open_group(i);
      depth_of.emplace(number_of(groups_.back()), open.size());
      open.push_back(groups_.size() - 1);
    };
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      if (i > 0 && part_of_[i] != part_of_[i - 1]) close_below(0);
      auto const& label = leads_[i].label;
      auto const rival = depth_of.find(number_of_label(label));
      if (label.is_dash() && !open.empty()) {
        close_below(depth_of_dash(open, i) + 1);
        groups_[open.back()].leads.push_back(static_cast<std::uint32_t>(i));
      } else if (rival == depth_of.end()) {
        descend(i);
      } else {
        close_below(rival->second + 1);
        groups_[open.back()].leads.push_back(static_cast<std::uint32_t>(i));
      }
    }
  }

  // A dash answers the innermost open couplet with its indentation, where indentation means
  // anything, else the innermost that has no answer yet, else the innermost.
  [[nodiscard]] std::size_t depth_of_dash(std::vector<std::size_t> const& open,
                                          std::size_t i) const {
    constexpr std::size_t kDeepest = 400;  // open couplets looked at; keeps the work linear
    auto const indent = [this](std::size_t lead) { return key_.lines[leads_[lead].line].indent; };
    auto const first_indent = [&](std::size_t depth) {
      return indent(groups_[open[depth]].leads.front());
    };
    auto const top = open.size() > kDeepest ? open.size() - kDeepest : 0;
    if (first_indent(0) != first_indent(open.size() - 1)) {
      for (auto depth = open.size(); depth-- > top;) {
        if (first_indent(depth) == indent(i)) return depth;
      }
    }
    for (auto depth = open.size(); depth-- > top;) {
      if (groups_[open[depth]].leads.size() == 1) return depth;
    }
    return open.size() - 1;
  }

  [[nodiscard]] LabelKey number_of(CoupletGroup const& group) const {
    return number_of_label(leads_[group.leads.front()].label);
  }

  // --- serial ----------------------------------------------------------------------------------

  void group_serial() {
    std::unordered_map<LabelKey, std::size_t> group_of;  // by part and number
    std::unordered_map<LabelKey, std::size_t> named;     // of leads that name the number as a rival
    auto const slot = [](std::uint32_t part, std::uint32_t number) {
      return (static_cast<LabelKey>(part) << 32U) | number;
    };
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto const& label = leads_[i].label;
      auto const part = part_of_[i];
      std::size_t group = groups_.size();
      if (label.is_dash() && !groups_.empty()) group = groups_.size() - 1;
      if (auto const rivals = read_references(label.back); rivals && !label.back.empty()) {
        for (auto const& rival : *rivals) {
          auto const found = group_of.find(slot(part, rival.number));
          if (found != group_of.end()) group = found->second;
        }
        for (auto const& rival : *rivals) named.emplace(slot(part, rival.number), group);
      } else if (auto const found = named.find(slot(part, label.number));
                 found != named.end() && !label.is_dash()) {
        group = found->second;  // its own bracket was misread
      }
      if (group == groups_.size()) {
        open_group(i);
      } else {
        groups_[group].leads.push_back(static_cast<std::uint32_t>(i));
      }
      if (!label.is_dash()) group_of.emplace(slot(part, label.number), group);
    }
  }

  // --- names -----------------------------------------------------------------------------------

  void name_groups() {
    grouping_.couplets.reserve(groups_.size());
    grouping_.members.reserve(leads_.size());
    for (auto const& group : groups_) {
      RawCouplet couplet;
      couplet.part = group.part;
      couplet.first_member = static_cast<std::uint32_t>(grouping_.members.size());
      couplet.member_count = static_cast<std::uint32_t>(group.leads.size());
      grouping_.members.insert(grouping_.members.end(), group.leads.begin(), group.leads.end());
      name(couplet, group);
      grouping_.couplets.push_back(std::move(couplet));
    }
  }

  // Numbers or letters that are used again in each branch tell ranks, not couplets.
  [[nodiscard]] bool numbers_come_back() const {
    std::unordered_set<LabelKey> seen;
    std::size_t again = 0;
    for (auto const& couplet : grouping_.couplets) {
      if (!seen.insert(couplet.key | (static_cast<LabelKey>(couplet.part) << 52U)).second) ++again;
    }
    if (!referenced_.empty() || again == 0) return false;
    return again * 4 >= grouping_.couplets.size() || letters_tell_depths();
  }

  // "A … B … B' … A' … B": each couplet bears the letter behind that of the lead it stands beneath.
  [[nodiscard]] bool letters_tell_depths() const {
    auto const homes = homes_of(grouping_, leads_.size());
    auto const letter = [&](std::size_t lead) {
      return leads_[grouping_.members[grouping_.couplets[homes[lead]].first_member]].label;
    };
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      if (homes[i] == kNone) return false;
      if (!opens_couplet(grouping_, homes, i)) continue;
      bool const lettered =
          letter(i).family == LabelFamily::upper || letter(i).family == LabelFamily::lower;
      bool const opens_part = i == 0 || part_of_[i] != part_of_[i - 1];
      auto const due = opens_part ? 1 : letter(i - 1).number + 1;
      if (!lettered || letter(i).number != due) return false;
    }
    return true;
  }

  void number_here() {
    grouping_.numbered_here = true;
    std::uint32_t number = 0;
    for (std::size_t c = 0; c < grouping_.couplets.size(); ++c) {
      auto& couplet = grouping_.couplets[c];
      bool const same_part = c > 0 && couplet.part == grouping_.couplets[c - 1].part;
      number = same_part ? number + 1 : 1;
      couplet.label = std::to_string(number);
      couplet.key = kCountedHere | number;
    }
  }

  void name(RawCouplet& couplet, CoupletGroup const& group) const {
    auto const& label = leads_[group.leads.front()].label;
    auto const full = key_of_label(label);
    couplet.key = number_key(full);
    bool letters_differ = false;
    bool marks_differ = false;
    std::size_t labelled = 0;
    for (auto const lead : group.leads) {
      auto const& other = leads_[lead].label;
      if (other.is_dash()) continue;
      ++labelled;
      letters_differ = letters_differ || other.letter != label.letter;
      marks_differ = marks_differ || other.marks != label.marks;
    }
    bool const digits = label.family == LabelFamily::digits;
    auto const plain = plain_.find(number_key(full));
    bool const plain_stands = plain != plain_.end() && plain->second > 0;
    bool const own_letter = digits && !label.letter.empty() && !letters_differ &&
                            (plain_stands || referenced_.count(letter_key(full)) > 0 ||
                             (labelled >= 2 && !letters_differ) || label.letter.size() > 1 ||
                             (is_fragment() && group.leads.size() >= 2));
    // 15' with a second lead of its own: a dash, or 15'' in a piece of a key.
    bool const own_marks =
        digits && label.marks > 0 && group.leads.size() >= 2 &&
        (is_fragment() ? all_marked(group) : !marks_differ && labelled == 1 && plain_stands);
    auto name = base_name(label);
    if (digits && !own_letter) name = std::to_string(label.number);
    if (own_letter) couplet.key = letter_key(full);
    if (own_marks) {
      couplet.key = full;
      name = squeeze(label.printed);
    }
    couplet.label = std::move(name);
  }

  [[nodiscard]] bool is_fragment() const { return key_.numbering.extent == Extent::fragment; }
  [[nodiscard]] bool all_marked(CoupletGroup const& group) const {
    return std::all_of(group.leads.begin(), group.leads.end(), [this](std::uint32_t lead) {
      return leads_[lead].label.is_dash() || leads_[lead].label.marks > 0;
    });
  }

  KeyText const& key_;
  std::vector<RawLead> const& leads_;
  std::vector<Remark> const& remarks_;
  std::vector<ReadLead> const& reads_;
  Grouping grouping_;
  std::vector<CoupletGroup> groups_;
  std::vector<std::uint32_t> part_of_;
  std::unordered_set<LabelKey> referenced_;
  std::unordered_map<LabelKey, std::size_t> plain_;  // leads labelled with the bare number
  std::size_t open_{};                               // leads without leaders and destination
};

}  // namespace

std::vector<std::uint32_t> homes_of(Grouping const& grouping, std::size_t leads) {
  std::vector<std::uint32_t> homes(leads, kNone);
  for (std::uint32_t c = 0; c < grouping.couplets.size(); ++c) {
    auto const& couplet = grouping.couplets[c];
    for (std::uint32_t m = 0; m < couplet.member_count; ++m) {
      homes[grouping.members[couplet.first_member + m]] = c;
    }
  }
  return homes;
}

Layout likely_layout(KeyText const& key, SortedLines const& sorted,
                     std::vector<ReadLead> const& reads) {
  return Grouper{key, sorted, reads}.likely_layout();
}

bool may_be_serial(KeyText const& key, SortedLines const& sorted,
                   std::vector<ReadLead> const& reads) {
  return Grouper{key, sorted, reads}.may_be_serial();
}

Grouping group_leads(KeyText const& key, SortedLines const& sorted,
                     std::vector<ReadLead> const& reads, Layout layout) {
  return Grouper{key, sorted, reads}.run(layout);
}

}  // namespace keydrift::printed

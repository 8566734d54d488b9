#include "keydrift/formats/printed_goes_on.hpp"

#include <algorithm>
#include <cstddef>
#include <unordered_map>

namespace keydrift::printed {
namespace {

constexpr std::ptrdiff_t kFewestGoingOn = 3;  // leads that make a habit

class CoupletAboveFinder {
 public:
  CoupletAboveFinder(Grouping const& grouping, std::vector<ReadLead> const& reads)
      : grouping_{grouping}, reads_{reads}, below_(reads.size(), kNone) {}

  std::vector<std::uint32_t> find() && {
    auto const open = std::count_if(reads_.begin(), reads_.end(), is_open);
    if (open < kFewestGoingOn || are_led_by_dots()) return std::move(below_);
    find_homes();
    find_reached();
    if (!answer_all()) below_.assign(reads_.size(), kNone);  // no habit
    return std::move(below_);
  }

 private:
  void find_homes() {
    home_ = homes_of(grouping_, reads_.size());
    for (std::uint32_t c = 0; c < grouping_.couplets.size(); ++c) {
      auto const& couplet = grouping_.couplets[c];
      by_key_.emplace(in_part(couplet.part, couplet.key), c);
    }
  }

  void find_reached() {
    reached_.assign(grouping_.couplets.size(), false);
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& to = reads_[i].to;
      if (to.form != DestinationForm::couplet) continue;
      auto const part = grouping_.couplets[home_[i]].part;
      for (auto const key : {to.couplet, letter_key(to.couplet), number_key(to.couplet)}) {
        auto const found = by_key_.find(in_part(part, key));
        if (found != by_key_.end()) reached_[found->second] = true;
      }
    }
  }

  // Where dots lead to destinations, they would lead to these as well.
  [[nodiscard]] bool are_led_by_dots() const {
    std::size_t dotted = 0;
    std::size_t plain = 0;
    for (auto const& read : reads_) {
      if (read.to.form == DestinationForm::none) continue;
      ++(read.leaders == LeaderKind::dots ? dotted : plain);
    }
    return dotted > plain;
  }

  // Couplets are printed one beneath the other, each branch to its end: the next one that no number
  // leads to belongs to the last open lead that has none yet, the first of its couplet before the
  // second.  False where leads or couplets are left.
  bool answer_all() {
    std::vector<std::uint32_t> waiting;  // open leads, the next one to be answered last
    for (std::uint32_t c = 0; c < grouping_.couplets.size(); ++c) {
      auto const& couplet = grouping_.couplets[c];
      bool const opens_part = c == 0 || grouping_.couplets[c - 1].part != couplet.part;
      if (opens_part) {
        if (!waiting.empty()) return false;
      } else if (!reached_[c]) {
        if (waiting.empty()) return false;
        below_[waiting.back()] = c;
        waiting.pop_back();
      }
      auto const first = grouping_.members[couplet.first_member];
      for (auto m = couplet.member_count; m-- > 0;) {
        auto const lead = grouping_.members[couplet.first_member + m];
        if (!is_open(reads_[lead])) continue;
        // The leads of a couplet stand together.
        if (lead != first + m || couplet.member_count < 2) return false;
        waiting.push_back(lead);
      }
    }
    return waiting.empty();
  }

  Grouping const& grouping_;
  std::vector<ReadLead> const& reads_;
  std::vector<std::uint32_t> below_;
  std::vector<std::uint32_t> home_;  // by lead: its couplet
  std::vector<bool> reached_;        // by couplet: some lead prints its number
  std::unordered_map<LabelKey, std::uint32_t> by_key_;
};

// Couplets [first, end) of one part.
bool is_nested(Grouping const& grouping, std::vector<ReadLead> const& reads, std::size_t first,
               std::size_t end) {
  constexpr std::size_t kFewestCouplets = 3;
  if (end - first < kFewestCouplets) return false;
  std::unordered_map<std::uint32_t, bool> opens;  // by lead of the part: is it its couplet's first?
  for (auto c = first; c < end; ++c) {
    auto const& couplet = grouping.couplets[c];
    if (couplet.member_count < 2) return false;
    for (std::uint32_t m = 0; m < couplet.member_count; ++m) {
      opens.emplace(grouping.members[couplet.first_member + m], m == 0);
    }
  }
  std::size_t beneath = 0;
  for (auto const& [lead, is_first] : opens) {
    if (reads[lead].to.form == DestinationForm::couplet) return false;
    if (!is_open(reads[lead])) continue;
    auto const next = opens.find(lead + 1);
    if (next == opens.end() || !next->second) return false;
    ++beneath;
  }
  return beneath + 1 == end - first;
}

}  // namespace

void mark_nested_parts(Grouping& grouping, std::vector<ReadLead> const& reads) {
  for (std::size_t c = 0; c < grouping.couplets.size();) {
    auto const part = grouping.couplets[c].part;
    auto end = c;
    while (end < grouping.couplets.size() && grouping.couplets[end].part == part) ++end;
    if (is_nested(grouping, reads, c, end)) grouping.parts[part].goes_on = true;
    c = end;
  }
}

std::vector<std::uint32_t> couplets_below(Grouping const& grouping,
                                          std::vector<ReadLead> const& reads) {
  return CoupletAboveFinder{grouping, reads}.find();
}

}  // namespace keydrift::printed

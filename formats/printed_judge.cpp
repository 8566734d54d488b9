#include "keydrift/formats/printed_judge.hpp"

#include <algorithm>
#include <optional>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_goes_on.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_shapes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLabelBytes = 40;  // looked at for a sign before the words

class Judge {
 public:
  Judge(KeyText const& key, Grouping const& grouping, SortedLines const& sorted,
        std::vector<ReadLead> const& reads)
      : key_{key}, grouping_{grouping}, sorted_{sorted}, reads_{reads} {}

  Judgement run() && {
    find_homes();
    if (!key_.numbering.exact) below_ = couplets_below(grouping_, reads_);
    numbered_.assign(grouping_.couplets.size(), false);
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (auto const to = numbered_couplet(i); to != kNone) numbered_[to] = true;
    }
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      bool const led = leads_somewhere(i);
      if (led && grouping_.couplets[home_[i]].member_count >= 2) ++judgement_.sound;
    }
    judgement_.leads = reads_.size();
    constexpr std::size_t kMostRivals = 3;
    judgement_.is_list = grouping_.couplets.size() == 1 && reads_.size() > kMostRivals;
    for (auto const& read : reads_) {
      if (begins_with_sign(read.lead.text)) judgement_.strays += kOfWrongKind;
    }
    for (auto const& lead : sorted_.leads) {
      for (std::uint32_t p = 1; p < lead.piece_count; ++p) {
        auto const& piece = sorted_.pieces[lead.first_piece + p];
        if (begins_with_letter(key_.text.substr(piece.begin, piece.end - piece.begin))) {
          ++judgement_.strays;
        }
      }
    }
    std::vector<bool> opens_part(reads_.size());
    for (auto const& part : grouping_.parts) {
      reached_[home_[part.first_lead]] = true;
      opens_part[part.first_lead] = true;
    }
    for (bool const reached : reached_) {
      if (!reached) ++judgement_.orphans;
    }
    for (auto const& remark : sorted_.remarks) {
      if (remark.kind == RemarkKind::lead_note) count_leads_in(remark);
      if (remark.kind != RemarkKind::prose) continue;
      bool const behind = remark.lead + 1 == reads_.size() ||
                          (remark.lead != kNone && opens_part[remark.lead + 1] &&
                           grouping_.couplets[home_[remark.lead]].member_count >= 2);
      if (remark.lead != kNone && !behind) {
        judgement_.strays += remark.pieces.size();
        continue;
      }
      // Before the first lead of a key and behind its last stands prose as well; a line that leads
      // somewhere is none.
      for (auto const& piece : remark.pieces) {
        auto const text = key_.text.substr(piece.begin, piece.end - piece.begin);
        auto const split = split_at_leader(text, key_.numbering);
        bool const dots =
            split.kind == LeaderKind::dots || (behind && split.kind != LeaderKind::none);
        if (dots && split.destination_begin < text.size()) ++judgement_.strays;
      }
    }
    auto const numbers = numbers_for_pages();
    constexpr std::size_t kFewestNumbers = 3;
    if (numbers >= kFewestNumbers) judgement_.strays += numbers;
    return judgement_;
  }

 private:
  // Numbers of couplets on lines of their own that were taken for those of pages.
  [[nodiscard]] std::size_t numbers_for_pages() const {
    std::unordered_set<std::uint32_t> couplets;
    for (auto const& lead : sorted_.leads) {
      if (lead.label.family == LabelFamily::digits) couplets.insert(lead.label.number);
    }
    return static_cast<std::size_t>(
        std::count_if(sorted_.accounts.begin(), sorted_.accounts.end(), [&](auto const& account) {
          if (account.kind != LineKind::page_number) return false;
          auto const line = std::lower_bound(
              key_.lines.begin(), key_.lines.end(), account.line,
              [](SourceLine const& one, std::uint32_t number) { return one.number < number; });
          if (line == key_.lines.end()) return false;
          auto const text = line->text;
          return is_number_only(text) &&
                 couplets.contains(number_of(text.substr(0, text.find('.'))));
        }));
  }

  // As many strays as a lead counts for whose sign was taken for its words: not a line is misread,
  // but what the labels are.
  static constexpr std::size_t kOfWrongKind = 2;

  // "Zo, Wings clear", "B«. Wings clear", "4t. Wings clear": what became of a number.
  [[nodiscard]] static bool begins_with_remains(std::string_view words) {
    constexpr std::size_t kMost = 5;  // bytes
    auto const front = words.substr(0, words.find(' '));
    if (front.size() < 2 || front.size() > kMost || front.size() == words.size()) return false;
    auto const letters = static_cast<std::size_t>(std::count_if(
        front.begin(), front.end(), [](unsigned char c) { return c < 0x80 && is_letter(c); }));
    bool const signs = front.find_first_of(",:;*'\"^0123456789") != std::string_view::npos ||
                       front.find("«") != std::string_view::npos;
    auto const rest = words.substr(skip_blanks(words, front.size()));
    return letters > 0 && letters <= 2 && signs && is_upper(code_point_at(rest, 0).value) &&
           is_lower(code_point_at(rest, 1).value);
  }

  // "a) Wings clear", "a  Wings clear", "• Wings clear": a lead's sign was taken for its words.
  [[nodiscard]] static bool begins_with_sign(std::string_view words) {
    constexpr std::uint32_t kMostLetters = 4;
    auto const first = code_point_at(words, 0).value;
    if (words.size() == 1 && first >= 'a' && first < 'a' + kMostLetters) return true;
    if (first == 0x2022 || first == 0x25CF || first == 0x25CB || first == 0x25AA) return true;
    // "■ Wings clear", "~ Wings clear": what became of a dash
    bool const remains = first == 0x25A0 || first == '~' || first == '_' || first == '?' ||
                         first == '&' || first == 0xAB;
    if (remains) return true;
    if (begins_with_remains(words)) return true;
    if (words.size() < 3 || !(is_letter(first) || is_digit(first) || first == '(')) return false;
    auto const label = read_label(start_of(words, kLabelBytes));
    // "D. XII, 14–16": the rays of a fin
    auto const rest = label ? words.substr(label->text_at) : std::string_view{};
    auto const count = without_end(rest.substr(0, rest.find(' ')));
    if (label && label->family == LabelFamily::upper && roman_number(count) > 0) return false;
    // "2 (5) Wings clear"
    bool const numbered = label && label->family == LabelFamily::digits && !label->back.empty() &&
                          starts_with_upper(rest);
    if (numbered) return true;
    // "b Wings clear", set as a column of its own
    bool const column = label && label->family == LabelFamily::lower && label->marks == 0;
    return label && !label->is_dash() && label->family != LabelFamily::digits &&
           (label->end != LabelEnd::none || column) && label->number <= kMostLetters &&
           starts_with_upper(words.substr(label->text_at));
  }

  void count_leads_in(Remark const& remark) {
    for (auto const& piece : remark.pieces) {
      if (begins_with_letter(key_.text.substr(piece.begin, piece.end - piece.begin))) {
        ++judgement_.strays;
      }
    }
  }

  // "dd. Wings clear" within a lead: another lead's letter was taken for its words.
  [[nodiscard]] static bool begins_with_letter(std::string_view line) {
    if (line.empty() || line.front() < 'a' || line.front() > 'z') return false;
    // "a². Hind tibiae"
    auto const index = code_point_at(line, 1);
    bool const indexed = is_digit(index.value) || index.value == 0xB9 || index.value == 0xB2 ||
                         index.value == 0xB3 || (index.value >= 0x2074 && index.value <= 0x2079);
    if (indexed) {
      auto const stop = 1 + index.length;
      return line.substr(stop).starts_with('.') &&
             starts_with_upper(line.substr(skip_blanks(line, stop + 1)));
    }
    auto const label = read_label(start_of(line, kLabelBytes));
    return label && label->family == LabelFamily::lower && label->end == LabelEnd::dot &&
           starts_with_upper(line.substr(label->text_at)) &&
           is_lower(code_point_at(line, label->text_at + 1).value);
  }

  void find_homes() {
    home_ = homes_of(grouping_, reads_.size());
    reached_.assign(grouping_.couplets.size(), false);
    for (std::uint32_t c = 0; c < grouping_.couplets.size(); ++c) {
      auto const& couplet = grouping_.couplets[c];
      add_key(couplet, couplet.key, c);
      if (grouping_.layout != Layout::serial) continue;
      for (std::uint32_t m = 0; m < couplet.member_count; ++m) {
        auto const& label = sorted_.leads[grouping_.members[couplet.first_member + m]].label;
        if (!label.is_dash()) add_key(couplet, key_of(label.family, label.number, {}, 0), c);
      }
    }
  }

  // "..... S": the name of nothing, where names are longer.
  [[nodiscard]] bool is_letter_end(std::size_t i) const {
    auto const printed = without_full_stop(reads_[i].lead.destination_printed);
    return reads_[i].to.form == DestinationForm::taxa && printed.size() <= 2;
  }
  [[nodiscard]] bool is_odd_letter(std::size_t i) {
    if (!is_letter_end(i)) return false;
    constexpr std::size_t kMost = 2;
    if (!letter_ends_) {
      letter_ends_ = 0;
      for (std::size_t k = 0; k < reads_.size(); ++k) *letter_ends_ += is_letter_end(k) ? 1 : 0;
    }
    return *letter_ends_ <= kMost && *letter_ends_ * 4 <= reads_.size();
  }

  void add_key(RawCouplet const& couplet, LabelKey key, std::uint32_t c) {
    by_part_and_key_.emplace(in_part(couplet.part, key), c);
    by_key_.emplace(key, c);
  }
  // Of the part, else of any; kNone where there is none.
  [[nodiscard]] std::uint32_t find_key(std::uint32_t part, LabelKey key) const {
    auto const own = by_part_and_key_.find(in_part(part, key));
    if (own != by_part_and_key_.end()) return own->second;
    auto const any = by_key_.find(key);
    return any == by_key_.end() ? kNone : any->second;
  }

  // The couplet whose number lead i gives; kNone where there is none or it is the lead's own.
  [[nodiscard]] std::uint32_t numbered_couplet(std::size_t i) const {
    auto const& to = reads_[i].to;
    if (to.form != DestinationForm::couplet) return kNone;
    for (auto const key : {to.couplet, letter_key(to.couplet), number_key(to.couplet)}) {
      auto const found = find_key(grouping_.couplets[home_[i]].part, key);
      if (found == kNone) continue;
      return found == home_[i] ? kNone : found;
    }
    return kNone;
  }

  bool leads_somewhere(std::size_t i) {
    auto const& to = reads_[i].to;
    switch (to.form) {
      case DestinationForm::taxa:
        return !is_odd_letter(i);
      case DestinationForm::key:
      case DestinationForm::nowhere:
        return true;
      case DestinationForm::couplet:
        if (auto const couplet = numbered_couplet(i); couplet != kNone) {
          reached_[couplet] = true;
          return true;
        }
        return false;
      case DestinationForm::none:
        break;
    }
    // Leaders to nothing: the destination was forgotten, no couplet stands beneath.
    if (are_leaders(reads_[i].leaders)) return false;
    if (!below_.empty() && below_[i] != kNone) {
      reached_[below_[i]] = true;
      return true;
    }
    bool const goes_on =
        grouping_.goes_on || grouping_.parts[grouping_.couplets[home_[i]].part].goes_on;
    if (!goes_on || i + 1 == reads_.size()) return false;
    if (!opens_couplet(grouping_, home_, i + 1)) return false;
    // "a. Wings short … go to 3" / "b. Wings long" / "3. a.": the number says where 3 belongs.
    if (numbered_[home_[i + 1]]) return false;
    if (grouping_.couplets[home_[i]].part != grouping_.couplets[home_[i + 1]].part) return false;
    reached_[home_[i + 1]] = true;
    return true;
  }

  KeyText const& key_;
  Grouping const& grouping_;
  SortedLines const& sorted_;
  std::vector<ReadLead> const& reads_;
  Judgement judgement_;
  std::optional<std::size_t> letter_ends_;  // counted when first asked for
  std::vector<std::uint32_t> home_;         // by lead: its couplet
  std::vector<std::uint32_t> below_;        // by lead: the couplet that it goes on with
  std::vector<bool> reached_;               // by couplet
  std::vector<bool> numbered_;  // by couplet: a lead of another couplet gives its number
  // The first couplet of the part, and of all parts, with that number.
  std::unordered_map<LabelKey, std::uint32_t> by_part_and_key_;
  std::unordered_map<LabelKey, std::uint32_t> by_key_;
};

}  // namespace

Judgement judge(KeyText const& key, Grouping const& grouping, SortedLines const& sorted,
                std::vector<ReadLead> const& reads) {
  return Judge{key, grouping, sorted, reads}.run();
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_repairs.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_stray_signs.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {
namespace {

// A couplet's number within a part.
using Slot = std::uint64_t;
Slot slot_of(std::uint32_t part, std::uint32_t number) {
  return (static_cast<Slot>(part) << 32U) | number;
}

std::uint32_t number_in(LabelKey key) {
  return static_cast<std::uint32_t>((key >> 16U) & 0xFFFFFFFFU);
}

class Repairer {
 public:
  Repairer(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
           std::vector<ReadLead>& reads, std::vector<Finding>& findings)
      : key_{key},
        reads_{reads},
        findings_{findings},
        cutter_{key, sorted, findings},
        goes_on_{grouping.goes_on},
        part_of_(reads.size()),
        own_(reads.size()) {
    for (auto const& couplet : grouping.couplets) {
      auto const number = number_in(couplet.key);
      standing_.insert(slot_of(couplet.part, number));
      for (std::uint32_t m = 0; m < couplet.member_count; ++m) {
        auto const lead = grouping.members[couplet.first_member + m];
        part_of_[lead] = couplet.part;
        own_[lead] = number;
      }
    }
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& to = reads_[i].to;
      if (to.form != DestinationForm::couplet) continue;
      // What may be misread itself tells nothing of what is reached.
      if (!misreading(i)) reached_.insert(slot_of(part_of_[i], number_in(to.couplet)));
    }
  }

  void repair() {
    constexpr std::ptrdiff_t kFewest = 3;
    bare_numbers_ =
        std::count_if(reads_.begin(), reads_.end(), [](ReadLead const& read) {
          return read.to.form == DestinationForm::couplet && read.leaders == LeaderKind::blank;
        }) >= kFewest;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& read = reads_[i];
      if (!key_.numbering.exact && join_parted_figures(i)) continue;
      if (read.to.form == DestinationForm::none) {
        if (!goes_on_ && !key_.numbering.exact) {
          mend_behind_dots(i);
          if (bare_numbers_ && is_open(read)) mend_last_letter(i);
        }
        continue;
      }
      auto const number = misreading(i);
      if (number && is_free(i, *number)) {
        mend(i, *number);
        continue;
      }
      auto const& printed = read.lead.destination_printed;
      // "2G" is no couplet 2 with a letter.
      bool const lettered = read.to.form == DestinationForm::couplet &&
                            standing_.count(slot_of(part_of_[i], number_in(read.to.couplet))) > 0 &&
                            !printed.empty() &&
                            is_upper(static_cast<unsigned char>(printed.back()));
      auto const other =
          number || lettered ? rarely_misread_number(strip_pointer(printed)) : std::nullopt;
      if (other && is_free(i, *other)) {
        mend(i, *other);
        continue;
      }
      bool const named = read.to.form == DestinationForm::taxa && read.leaders != LeaderKind::blank;
      auto const specked = named ? number_beside_specks(printed) : std::nullopt;
      if (specked && is_free(i, *specked)) mend(i, *specked);
    }
  }

 private:
  // "Legs red ..... 5 '", "Legs red ..... 'Aus bus": specks hide what the leaders lead to.
  void mend_behind_dots(std::size_t i) {
    auto const joined = cutter_.join(i);
    std::string_view const text = joined.raw;
    auto const behind = behind_dots(text);
    if (!behind) return;
    auto const printed = text.substr(behind->begin);
    auto const number = number_beside_specks(printed);
    if (number && is_free(i, *number)) {
      forget_leaders_within(i);
      reads_[i].leaders = LeaderKind::dots;
      cutter_.cut(reads_[i], joined, behind->words_end, behind->begin);
      mend(i, *number);
      return;
    }
    auto const name = without_stray_signs(printed);
    if (!is_latin_name(name)) return;
    forget_leaders_within(i);
    reads_[i].leaders = LeaderKind::dots;
    cutter_.cut(reads_[i], joined, behind->words_end,
                static_cast<std::size_t>(name.data() - text.data()));
  }

  // "… of the pars thoracica G", where other numbers stand behind nothing but a blank.
  void mend_last_letter(std::size_t i) {
    auto const joined = cutter_.join(i);
    auto const text = trim_right(joined.raw);
    auto const begin = last_word_begin(text);
    auto number = figure_at_end(text);
    // "… pale orange .30", and "… canopy species 6", which counts no species then.
    auto digits = text.substr(begin);
    if (digits.starts_with('.')) digits.remove_prefix(1);
    constexpr std::size_t kMostDigits = 4;
    bool const plain = !digits.empty() && digits.size() <= kMostDigits &&
                       digits.find_first_not_of("0123456789") == std::string_view::npos;
    if (plain && begin > 0) number = number_of(digits);
    if (number <= own_[i] || !is_free(i, number)) return;
    reads_[i].leaders = LeaderKind::blank;
    cutter_.cut(reads_[i], joined, trim_right(text.substr(0, begin)).size(), begin);
    mend(i, number);
  }

  // "… process acute, flat 1 5" leads on to 15, not back to 5.
  bool join_parted_figures(std::size_t i) {
    auto const& read = reads_[i];
    bool const back = read.to.form == DestinationForm::couplet &&
                      read.leaders == LeaderKind::blank && (read.to.couplet & 0xFFFFU) == 0 &&
                      number_in(read.to.couplet) < own_[i];
    if (!(back || (is_open(read) && bare_numbers_))) return false;
    auto const joined = cutter_.join(i);
    auto const text = trim_right(joined.raw);
    auto const words = trim_right(text.substr(0, last_word_begin(text)));
    auto const begin = last_word_begin(words);
    auto const tens = words.substr(begin);
    auto const ones = text.substr(last_word_begin(text));
    auto const is_figure = [](std::string_view word) {
      return word.size() == 1 && is_digit(static_cast<unsigned char>(word[0]));
    };
    if (!is_figure(tens) || !is_figure(ones) || begin == 0) return false;
    auto const number = number_of(tens) * 10 + number_of(ones);
    if (number <= own_[i] || !is_free(i, number)) return false;
    reads_[i].leaders = LeaderKind::blank;
    cutter_.cut(reads_[i], joined, trim_right(words.substr(0, begin)).size(), begin);
    mend(i, number);
    return true;
  }

  // The words hold no leaders any more.
  void forget_leaders_within(std::size_t i) {
    auto const& place = reads_[i].lead.place;
    std::erase_if(findings_, [&place](Finding const& one) {
      return one.code == "leaders-within-words" && one.place.begin >= place.begin &&
             one.place.begin < place.end;
    });
  }

  // There is a couplet of that number, and no other lead leads to it.
  [[nodiscard]] bool is_free(std::size_t i, std::uint32_t number) const {
    auto const slot = slot_of(part_of_[i], number);
    return standing_.count(slot) > 0 && reached_.count(slot) == 0 && own_[i] != number;
  }
  // The number that the lead's destination may be a misreading of: no number as it stands, or one
  // with a letter that no couplet bears.
  [[nodiscard]] std::optional<std::uint32_t> misreading(std::size_t i) const {
    auto const& read = reads_[i];
    auto const& to = read.to;
    if (to.form == DestinationForm::none || to.form == DestinationForm::key) return std::nullopt;
    auto const printed = strip_pointer(read.lead.destination_printed);
    auto const number = misread_number(printed);
    if (!number || to.form == DestinationForm::taxa) return number;
    bool const lettered = (to.couplet & 0xFFFFU) != 0;
    return lettered ? number : std::nullopt;
  }

  void mend(std::size_t i, std::uint32_t number) {
    auto& to = reads_[i].to;
    auto figures = std::move(to.taxa.figures);
    to = {};
    to.form = DestinationForm::couplet;
    to.couplet = key_of(LabelFamily::digits, number, {}, 0);
    to.number = std::to_string(number);
    to.taxa.figures = std::move(figures);
    reads_[i].lead.taxon_remark.clear();
    report(i, number);
  }

  void report(std::size_t i, std::uint32_t number) {
    auto const& lead = reads_[i].lead;
    auto const figures = std::to_string(number);
    Finding finding;
    finding.code = "misread-destination";
    finding.severity = Severity::warning;
    finding.file = std::string{key_.name};
    finding.place = lead.destination_place;
    finding.printed = lead.destination_printed;
    finding.message = "\"" + lead.destination_printed + "\" was read as " + figures +
                      ": there is a couplet " + figures + ", and no other lead leads to it";
    finding.remedy = "print the number in digits if this is right, else the right destination";
    findings_.push_back(std::move(finding));
  }

  KeyText const& key_;
  std::vector<ReadLead>& reads_;
  std::vector<Finding>& findings_;
  LeadCutter cutter_;
  bool bare_numbers_{false};            // nothing but a blank stands before them
  bool goes_on_;                        // leads without destination lead to the next couplet
  std::vector<std::uint32_t> part_of_;  // by lead
  std::vector<std::uint32_t> own_;      // number of the lead's couplet
  std::unordered_set<Slot> standing_;   // numbers that couplets bear
  std::unordered_set<Slot> reached_;    // numbers that leads lead to beyond doubt
};

}  // namespace

void repair_destinations(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
                         std::vector<ReadLead>& reads, std::vector<Finding>& findings) {
  if (key.numbering.family != LabelFamily::digits) return;
  Repairer{key, sorted, grouping, reads, findings}.repair();
}

}  // namespace keydrift::printed

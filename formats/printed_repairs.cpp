#include "keydrift/formats/printed_repairs.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_stray_signs.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_worn_label.hpp"

namespace keydrift::printed {
namespace {

// A couplet's number within a part.
using Slot = std::uint64_t;
Slot slot_of(std::uint32_t part, std::uint32_t number) {
  return (static_cast<Slot>(part) << 32U) | number;
}

std::uint32_t number_of_slot(Slot slot) { return static_cast<std::uint32_t>(slot & 0xFFFFFFFFU); }
std::uint32_t part_of_slot(Slot slot) { return static_cast<std::uint32_t>(slot >> 32U); }

std::uint32_t number_in(LabelKey key) {
  return static_cast<std::uint32_t>((key >> 16U) & 0xFFFFFFFFU);
}

// Of a number that one lead alone may lead to.
constexpr float kMostWear = 1.6F;
constexpr float kMostWearOfTwo = 2.1F;  // of a number with two figures
constexpr std::size_t kMostPairs = 10000;
constexpr float kMargin = 0.05F;  // by which others have to be less likely

class Repairer {
 public:
  Repairer(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
           std::vector<ReadLead>& reads, std::vector<Finding>& findings, std::size_t damaged_labels)
      : key_{key},
        damaged_labels_{damaged_labels},
        leads_{sorted.leads},
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
    for (auto const& part : grouping.parts) {
      firsts_.insert(slot_of(part_of_[part.first_lead], own_[part.first_lead]));
    }
    constexpr std::ptrdiff_t kFewest = 3;
    bare_numbers_ =
        std::count_if(reads_.begin(), reads_.end(), [](ReadLead const& read) {
          return read.to.form == DestinationForm::couplet && read.leaders == LeaderKind::blank;
        }) >= kFewest;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& to = reads_[i].to;
      if (to.form != DestinationForm::couplet) continue;
      // What may be misread itself tells nothing of what is reached.
      if (!misreading(i)) reached_.insert(slot_of(part_of_[i], number_in(to.couplet)));
    }
  }

  // Of a key whose couplets bear letters that leads end in.
  bool repair_letters() {
    constexpr std::uint32_t kLetters = 26;
    bool const beyond = std::any_of(standing_.begin(), standing_.end(), [](Slot slot) {
      return number_of_slot(slot) == 0 || number_of_slot(slot) > kLetters;
    });
    if (!goes_on_ && !beyond) mend_by_what_is_missing();
    return mended_;
  }

  bool repair() {
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
      if (specked && is_free(i, *specked)) {
        mend(i, *specked);
        continue;
      }
      auto const last = named ? number_behind_figure(printed) : std::nullopt;
      if (last && is_free(i, *last)) mend(i, *last);
    }
    if (!goes_on_ && !key_.numbering.exact) mend_by_what_is_missing();
    return mended_;
  }

 private:
  // --- couplets that no lead leads to -----------------------------------------------------------

  struct Pair {
    std::size_t doubtful{};
    Slot slot{};
    float doubt{};
  };

  // What a lead prints where a number may have stood.
  struct Doubtful {
    std::size_t lead{};
    std::string printed;
    bool number{};  // one of a couplet, which a slip of the author may be as well
  };

  // The likeliest pairs of what is printed and couplets to which nothing leads, one after the
  // other.
  void mend_by_what_is_missing() {
    auto const orphans = find_orphans();
    if (orphans.empty()) return;
    auto doubtful = find_doubtful();
    // So many are amiss that the numbers are none, or the layout is another one.
    if (doubtful.size() * orphans.size() > kMostPairs) return;
    // A number may be a slip of the author, where nothing else was misread.
    if (!is_scan()) std::erase_if(doubtful, [](Doubtful const& one) { return one.number; });
    std::vector<Pair> pairs;
    for (std::size_t d = 0; d < doubtful.size(); ++d) {
      for (auto const slot : orphans) {
        if (auto const doubt = doubt_of(doubtful[d], slot)) pairs.push_back({d, slot, *doubt});
      }
    }
    while (!pairs.empty()) {
      auto const best =
          std::min_element(pairs.begin(), pairs.end(), [](auto const& a, auto const& b) {
            return std::pair{a.doubt, a.doubtful} < std::pair{b.doubt, b.doubtful};
          });
      auto const chosen = *best;
      auto const touches = [&chosen](Pair const& one) {
        return one.doubtful == chosen.doubtful || one.slot == chosen.slot;
      };
      bool const close = std::any_of(pairs.begin(), pairs.end(), [&](Pair const& one) {
        bool const same = one.doubtful == chosen.doubtful && one.slot == chosen.slot;
        return !same && touches(one) && one.doubt < chosen.doubt + kMargin;
      });
      if (!close) {
        lead_to(doubtful[chosen.doubtful], number_of_slot(chosen.slot));
      }
      std::erase_if(pairs, touches);
    }
  }

  [[nodiscard]] std::set<Slot> find_orphans() const {
    std::set<Slot> orphans{standing_.begin(), standing_.end()};
    for (auto const slot : firsts_) orphans.erase(slot);
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& to = reads_[i].to;
      if (to.form == DestinationForm::couplet) {
        orphans.erase(slot_of(part_of_[i], number_in(to.couplet)));
      }
    }
    return orphans;
  }

  // By part.
  [[nodiscard]] std::map<std::uint32_t, Slot> last_couplets() const {
    std::map<std::uint32_t, Slot> last;
    for (auto const slot : standing_) {
      auto& one = last[part_of_slot(slot)];
      one = std::max(one, slot);
    }
    return last;
  }

  [[nodiscard]] std::vector<Doubtful> find_doubtful() const {
    std::map<Slot, std::size_t> led;  // how many leads lead there
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& to = reads_[i].to;
      if (to.form == DestinationForm::couplet) {
        ++led[slot_of(part_of_[i], number_in(to.couplet))];
      }
    }
    auto last_of = last_couplets();
    constexpr std::size_t kLongest = 4;  // bytes
    std::vector<Doubtful> doubtful;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& to = reads_[i].to;
      auto const printed = std::string{strip_pointer(reads_[i].lead.destination_printed)};
      if (to.form == DestinationForm::couplet) {
        auto const slot = slot_of(part_of_[i], number_in(to.couplet));
        // A number within the count at which no couplet stands may be that of a label that is lost.
        bool const odd =
            led[slot] > 1 || number_in(to.couplet) <= own_[i] || slot > last_of[part_of_[i]];
        if (odd) doubtful.push_back({i, printed, true});
      } else if (to.form == DestinationForm::taxa) {
        if (printed.size() <= kLongest) doubtful.push_back({i, printed, false});
      } else if (to.form == DestinationForm::none) {
        auto last = std::string{last_sign(i)};
        bool const number = only_figures(last);
        bool const within = number && slot_of(part_of_[i], number_of(last)) <= last_of[part_of_[i]];
        if (!last.empty() && last.size() <= kLongest && !within) {
          doubtful.push_back({i, std::move(last), number});
        }
      }
    }
    return doubtful;
  }

  // "h" of "… between their bases h" and "… of coxa II......h".
  [[nodiscard]] std::string last_sign(std::size_t i) const {
    auto const joined = cutter_.join(i);
    auto const text = without_full_stop(trim_right(joined.raw));
    auto const at = text.find_last_of(" \t.");
    if (at == std::string_view::npos || at == 0) return {};
    auto const last = text.substr(at + 1);
    // "coxa II": a numeral of the words
    bool const numeral = key_.numbering.family == LabelFamily::digits &&
                         last.find_first_not_of("IVX") == std::string_view::npos;
    return numeral && !behind_dots(text) ? std::string{} : std::string{last};
  }

  // How much speaks against that the lead leads to the couplet: damage, and couplets between.
  [[nodiscard]] std::optional<float> doubt_of(Doubtful const& one, Slot slot) const {
    constexpr float kPerCouplet = 0.1F;
    constexpr float kFarthest = 8;
    auto const number = number_of_slot(slot);
    bool const before = slot_of(part_of_[one.lead], number) == slot && own_[one.lead] < number;
    if (!before) return std::nullopt;
    auto const wear = worn_sign(without_full_stop(one.printed), printed_as(number));
    constexpr std::uint32_t kTwoFigures = 10;
    if (!wear || *wear > (number < kTwoFigures ? kMostWear : kMostWearOfTwo)) return std::nullopt;
    auto const between = static_cast<float>(number - own_[one.lead] - 1);
    return *wear + kPerCouplet * std::min(between, kFarthest);
  }

  // The couplet's number or letter.
  [[nodiscard]] std::string printed_as(std::uint32_t number) const {
    auto const family = key_.numbering.family;
    if (family == LabelFamily::digits) return std::to_string(number);
    auto const first = family == LabelFamily::upper ? 'A' : 'a';
    return {static_cast<char>(first + static_cast<char>(number - 1))};
  }

  // Other labels or ends were misread.
  [[nodiscard]] bool is_scan() const {
    constexpr std::ptrdiff_t kFewest = 2;
    auto const labels = static_cast<std::ptrdiff_t>(damaged_labels_) +
                        std::count_if(leads_.begin(), leads_.end(),
                                      [](RawLead const& lead) { return lead.misprinted; });
    return labels + std::count_if(findings_.begin(), findings_.end(),
                                  [](Finding const& one) {
                                    return one.code.starts_with("misread-") ||
                                           one.code == "misprinted-label";
                                  }) >=
           kFewest;
  }

  void lead_to(Doubtful const& doubtful, std::uint32_t number) {
    auto const i = doubtful.lead;
    if (reads_[i].to.form == DestinationForm::none) {
      auto const joined = cutter_.join(i);
      std::string_view const text = joined.raw;
      auto const begin = text.rfind(doubtful.printed);
      auto const dots = behind_dots(text);
      if (dots && dots->begin == begin) {
        cut_behind_dots(i, joined, *dots, begin);
      } else {
        cut_behind_blank(i, joined, begin);
      }
    }
    mend(i, number);
  }

  // "Legs red ..... 5 '", "Legs red ..... 'Aus bus": specks hide what the leaders lead to.
  void mend_behind_dots(std::size_t i) {
    auto const joined = cutter_.join(i);
    std::string_view const text = joined.raw;
    auto const behind = behind_dots(text);
    if (!behind) return;
    auto const printed = text.substr(behind->begin);
    auto const number = number_beside_specks(printed);
    if (number && is_free(i, *number)) {
      cut_behind_dots(i, joined, *behind, behind->begin);
      mend(i, *number);
      return;
    }
    auto const name = without_stray_signs(printed);
    if (!is_latin_name(name)) return;
    cut_behind_dots(i, joined, *behind, static_cast<std::size_t>(name.data() - text.data()));
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
    bool const plain = !digits.empty() && digits.size() <= kMostDigits && only_figures(digits);
    if (plain && begin > 0) number = number_of(digits);
    if (number <= own_[i] || !is_free(i, number)) return;
    cut_behind_blank(i, joined, begin);
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
    auto const text = trim_right(without_full_stop(trim_right(joined.raw)));
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
    cut_behind_blank(i, joined, begin);
    mend(i, number);
    return true;
  }

  void cut_behind_dots(std::size_t i, JoinedText const& joined, BehindDots const& dots,
                       std::size_t begin) {
    forget_leaders_within(i);
    reads_[i].leaders = LeaderKind::dots;
    cutter_.cut(reads_[i], joined, dots.words_end, begin);
    mended_ = true;
  }
  void cut_behind_blank(std::size_t i, JoinedText const& joined, std::size_t begin) {
    reads_[i].leaders = LeaderKind::blank;
    auto const words = trim_right(std::string_view{joined.raw}.substr(0, begin));
    cutter_.cut(reads_[i], joined, words.size(), begin);
    mended_ = true;
  }

  // The words hold no leaders any more.
  void forget_leaders_within(std::size_t i) {
    auto const& place = reads_[i].lead.place;
    std::erase_if(findings_, [&place](Finding const& one) {
      return one.code == "leaders-within-words" && one.place.begin >= place.begin &&
             one.place.begin < place.end;
    });
  }

  // 7 of "5 7" behind leaders: one of their dots came out as a figure.
  [[nodiscard]] static std::optional<std::uint32_t> number_behind_figure(std::string_view printed) {
    constexpr std::size_t kMostDigits = 3;
    constexpr std::string_view kFigures = "0123456789";
    printed = without_full_stop(printed);
    auto const digits = printed.substr(last_word_begin(printed));
    bool const figure = printed.size() > digits.size() + 1 && printed[1] == ' ' &&
                        is_digit(static_cast<unsigned char>(printed[0])) &&
                        skip_blanks(printed, 1) + digits.size() == printed.size();
    bool const number = figure && digits.size() <= kMostDigits &&
                        digits.find_first_not_of(kFigures) == std::string_view::npos;
    return number ? std::optional{number_of(digits)} : std::nullopt;
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
    if (to.form != DestinationForm::couplet && to.form != DestinationForm::taxa) {
      return std::nullopt;
    }
    auto const printed = strip_pointer(read.lead.destination_printed);
    // "… coxa II", where no other lead ends in a number behind a blank
    bool const numeral =
        read.leaders == LeaderKind::blank && !bare_numbers_ &&
        without_full_stop(printed).find_first_not_of("IVX") == std::string_view::npos;
    if (numeral) return std::nullopt;
    auto const number = misread_number(printed);
    if (!number || to.form == DestinationForm::taxa) return number;
    bool const lettered = (to.couplet & 0xFFFFU) != 0;
    return lettered ? number : std::nullopt;
  }

  void mend(std::size_t i, std::uint32_t number) {
    mended_ = true;
    auto& to = reads_[i].to;
    auto figures = std::move(to.taxa.figures);
    to = {};
    to.form = DestinationForm::couplet;
    to.couplet = key_of(key_.numbering.family, number, {}, 0);
    to.number = printed_as(number);
    to.taxa.figures = std::move(figures);
    reads_[i].lead.taxon_remark.clear();
    report(i, number);
  }

  void report(std::size_t i, std::uint32_t number) {
    auto const& lead = reads_[i].lead;
    auto const sign = printed_as(number);
    Finding finding;
    finding.code = "misread-destination";
    finding.severity = Severity::warning;
    finding.file = std::string{key_.name};
    finding.place = lead.destination_place;
    finding.printed = lead.destination_printed;
    finding.message = "\"" + lead.destination_printed + "\" was read as " + sign +
                      ": there is a couplet " + sign + ", and no other lead leads to it";
    finding.remedy = key_.numbering.family == LabelFamily::digits
                         ? "print the number in digits if this is right, else the right destination"
                         : "print the letter if this is right, else the right destination";
    findings_.push_back(std::move(finding));
  }

  KeyText const& key_;
  std::size_t damaged_labels_;
  std::vector<RawLead> const& leads_;
  std::vector<ReadLead>& reads_;
  std::vector<Finding>& findings_;
  LeadCutter cutter_;
  bool mended_{false};                  // something was put right
  bool bare_numbers_{false};            // nothing but a blank stands before them
  bool goes_on_;                        // leads without destination lead to the next couplet
  std::vector<std::uint32_t> part_of_;  // by lead
  std::vector<std::uint32_t> own_;      // number of the lead's couplet
  std::set<Slot> firsts_;               // of the couplets that parts begin with
  std::unordered_set<Slot> standing_;   // numbers that couplets bear
  std::unordered_set<Slot> reached_;    // numbers that leads lead to beyond doubt
};

}  // namespace

bool repair_destinations(KeyText const& key, SortedLines& sorted, Grouping const& grouping,
                         std::vector<ReadLead>& reads, std::vector<Finding>& findings,
                         std::size_t damaged_labels) {
  Repairer repairer{key, sorted, grouping, reads, findings, damaged_labels};
  if (key.numbering.family == LabelFamily::digits) return repairer.repair();
  return key.numbering.ends.letters && repairer.repair_letters();
}

}  // namespace keydrift::printed

#include "keydrift/formats/printed_label_habits.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_worn_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSoundOfKind = 3;  // sound labels of a kind

char32_t sign_of_end(LabelEnd end) {
  switch (end) {
    case LabelEnd::dot:
      return U'.';
    case LabelEnd::parenthesis:
      return U')';
    case LabelEnd::colon:
      return U':';
    case LabelEnd::dash:
      return kAnyDash;
    default:
      return 0;
  }
}

// What the labels of one kind show.
struct HabitTally {
  std::array<std::size_t, kLabelEnds> ends{};
  std::array<std::size_t, kLabelEnds> seconds{};  // ends of those that repeat the one above
  std::array<std::size_t, kLabelEnds> marks{};    // ends of those with a mark, 4'
  std::set<std::uint32_t> numbers;
  std::size_t labels{};
  std::size_t lettered{};
  std::size_t marked{};
  std::size_t two_marks{};  // of these
  std::size_t repeated{};
  std::size_t doubled{};
  std::size_t backs{};
  std::size_t marked_backs{};  // of those with a mark, 4'(2)

  [[nodiscard]] static char32_t most(std::array<std::size_t, kLabelEnds> const& ends) {
    return sign_of_end(
        static_cast<LabelEnd>(std::max_element(ends.begin(), ends.end()) - ends.begin()));
  }
  [[nodiscard]] char32_t end() const { return most(ends); }
  [[nodiscard]] bool enclosed() const {
    auto const most = std::max_element(ends.begin(), ends.end()) - ends.begin();
    return static_cast<LabelEnd>(most) == LabelEnd::enclosed;
  }
};

class HabitFinder {
 public:
  HabitFinder(std::vector<SourceLine> const& lines, bool upper) : capitals_{upper} {
    for (auto const& line : lines) {
      if (!line.text.empty() && !line.is_no_lead) count(line.text);
    }
  }

  std::vector<LabelHabit> find() {
    if (digits_.labels >= kFewestSoundOfKind) add_numbered();
    add_lettered(upper_, LabelSign::upper);
    add_lettered(lower_, LabelSign::lower);
    add_ranks();
    add_marked_ranks();
    return std::move(habits_);
  }

 private:
  void count(std::string_view text) {
    count_raised(text);
    count_remains(text);
    count_ranks(text);
    count_marked_ranks(text);
    auto const label = read_label(text);
    if (!label || label->decimal || label->text_at >= text.size()) return;
    auto const first = code_point_at(text, label->text_at).value;
    if (capitals_ && is_lower(first)) return;
    if (label->is_dash()) {
      ++dashes_[code_point_at(text, 0).value];
      return;
    }
    auto& tally = label->family == LabelFamily::digits  ? digits_
                  : label->family == LabelFamily::upper ? upper_
                                                        : lower_;
    bool const letters = label->family != LabelFamily::digits;
    // "A shell", "I. Wings": a word, a numeral
    if (letters && label->end == LabelEnd::none && label->marks == 0) return;
    if (!letters && label->number > kMostCouplets) return;
    ++tally.labels;
    bool const known = !tally.numbers.insert(label->number).second;
    bool const repeats = known && label->letter.empty() && label->marks == 0;
    bool const marked = !letters && label->letter.empty() && label->marks > 0;
    ++(repeats  ? tally.seconds
       : marked ? tally.marks
                : tally.ends)[static_cast<std::size_t>(label->end)];
    if (!label->letter.empty()) {
      ++tally.lettered;
    } else if (label->marks > 0) {
      ++(letters && label->printed.size() > 1 && label->printed[0] == label->printed[1]
             ? tally.doubled
             : tally.marked);
      if (!letters && label->marks == 2) ++tally.two_marks;
    } else if (repeats) {
      ++tally.repeated;
    }
    if (!label->back.empty()) ++tally.backs;
    if (!label->back.empty() && marked) ++tally.marked_backs;
  }

  // "a¹. Wings"
  void count_raised(std::string_view text) {
    auto const index = code_point_at(text, 1).value;
    if (text.empty() || !(index == U'¹' || index == U'²')) return;
    if (text[0] < 'a' || text[0] > 'z') return;
    ++raised_;
    if (text.substr(1 + code_point_at(text, 1).length).starts_with('.')) ++raised_stops_;
  }

  // Ranks stand in the order in which the first leads of their couplets do.
  void count_ranks(std::string_view text) {
    constexpr std::uint32_t kHighest = 3;  // a letter farther on may be a numeral, or an initial
    if (names_numbered_species(text)) return;
    for (auto const& label : read_rank_labels(text)) {
      bool const sign = label.alphabet == Alphabet::sign;
      bool const known = sign || (label.ordinal >= 1 && label.ordinal <= kHighest);
      auto const words = text.substr(std::min(label.label.text_at, text.size()));
      bool const plain = label.decimal.empty() && (sign || label.repeats == 0);
      if (label.alphabet == Alphabet::dash || !known || !plain || !starts_with_upper(words))
        continue;
      bool const enclosed = label.label.end == LabelEnd::enclosed;
      bool const closed =
          enclosed || label.label.end == LabelEnd::dot || label.label.end == LabelEnd::parenthesis;
      if (!sign && !closed) continue;
      auto const same = [&](RankTally const& one) {
        return one.rank.alphabet == label.alphabet && one.rank.sign == label.sign &&
               one.rank.enclosed == (enclosed && !sign);
      };
      auto found = std::find_if(ranks_.begin(), ranks_.end(), same);
      if (found == ranks_.end()) {
        ranks_.push_back({{label.alphabet, label.sign}, 0, 0});
        found = ranks_.end() - 1;
        found->rank.enclosed = enclosed && !sign;
      }
      ++found->labels;
      if (!sign && label.label.end == LabelEnd::dot) ++found->stops;
      return;
    }
  }

  void add_ranks() {
    constexpr std::size_t kFewestOfRank = 2;
    LabelHabit habit;
    habit.sign = LabelSign::ranks;
    habit.second = SecondSign::counted;
    habit.nested = true;
    habit.end = U'.';
    std::optional<RankAlphabet> capitals;  // one sound label alone
    for (auto const& one : ranks_) {
      auto rank = one.rank;
      bool const stop = one.stops * 2 >= one.labels && !one.rank.enclosed;
      if (rank.alphabet != Alphabet::sign) rank.end = stop ? U'.' : U')';
      if (one.labels >= kFewestOfRank) {
        habit.ranks.push_back(rank);
      } else if (!capitals &&
                 (rank.alphabet == Alphabet::upper || rank.alphabet == Alphabet::roman_upper)) {
        capitals = rank;
      }
    }
    offer_orders(habit);
    if (!capitals) return;
    habit.ranks.insert(habit.ranks.begin(), *capitals);
    offer_orders(habit);
  }

  // "A. Wings" / "l. Legs" / "a. Head" / "2. Legs": the first label of the second rank was damaged.
  void offer_orders(LabelHabit habit) {
    if (habit.ranks.size() < 2) return;
    habits_.push_back(habit);
    for (std::size_t r = 1; r < habit.ranks.size(); ++r) {
      std::swap(habit.ranks[r - 1], habit.ranks[r]);
      habits_.push_back(habit);
      std::swap(habit.ranks[r - 1], habit.ranks[r]);
    }
  }

  // "a. Wings", "a'. Wings", "b2. Wings", "a 4 . Wings", "A. Wings"
  void count_marked_ranks(std::string_view text) {
    if (text.empty()) return;
    bool const upper = text[0] >= 'A' && text[0] <= 'Z';
    if (!upper && !(text[0] >= 'a' && text[0] <= 'z')) return;
    std::uint32_t primes = 0;
    std::uint32_t figure = 0;
    auto at = skip_blanks(text, 1);
    for (; at < text.size(); at += code_point_at(text, at).length) {
      auto const c = code_point_at(text, at).value;
      if (auto const index = index_figure(c); index > 0 && figure == 0) {
        figure = index;
      } else if (is_mark(c) && c != U'*') {
        primes += primes_in(c) == 2 ? 2 : 1;
      } else {
        break;
      }
    }
    at = skip_blanks(text, at);
    bool const closed = at < text.size() && (text[at] == '.' || text[at] == ')');
    if (!closed || (primes > 0 && figure > 0)) return;
    if (!starts_with_upper(text.substr(skip_blanks(text, at + 1)))) return;
    bool const plain = primes == 0 && figure == 0;
    if (upper && !plain) return;
    if (upper) {
      if (marked_.plain == 0 && text[0] == 'A') marked_.above = true;
      return;
    }
    if (!plain && text[0] > 'b') marked_.beyond_b = true;
    marked_.stops += text[at] == '.' ? 1 : 0;
    ++marked_.labels;
    if (plain) ++marked_.plain;
    if (primes > 0) ++marked_.primes;
    if (figure > 0) ++marked_.figures;
    marked_.deepest = std::max({marked_.deepest, primes, figure});
  }

  void add_marked_ranks() {
    constexpr std::size_t kFewestMarked = 4;
    constexpr std::uint32_t kDeepest = 8;
    if (marked_.primes + marked_.figures < kFewestMarked || marked_.plain == 0) return;
    LabelHabit habit;
    habit.sign = LabelSign::ranks;
    habit.second = SecondSign::counted;
    habit.nested = true;
    auto const end = marked_.stops * 2 >= marked_.labels ? U'.' : U')';
    habit.end = end;
    if (marked_.above) habit.ranks.push_back({Alphabet::upper, 0, 0, false, false, end});
    bool const figures = marked_.figures > marked_.primes;
    for (std::uint32_t marks = 0; marks <= std::min(marked_.deepest + 1, kDeepest); ++marks) {
      habit.ranks.push_back({Alphabet::lower, 0, marks, figures, false, end});
    }
    habits_.push_back(habit);
    habit.runs_on = true;
    if (marked_.beyond_b) habits_.push_back(habit);
  }

  // "__ Wings", where all dashes became so
  void count_remains(std::string_view text) {
    auto const sign = code_point_at(text, 0).value;
    if (sign != '_' && sign != '~' && sign != U'■' && sign != U'•') return;
    auto const words = skip_blanks(text, std::min(text.find_first_of(" \t"), text.size()));
    if (is_upper(code_point_at(text, words).value)) ++dashes_[U'–'];
  }

  void add(LabelHabit habit) {
    habit.nested = false;
    habits_.push_back(habit);
    if (habit.second == SecondSign::unlabelled) return;
    habit.nested = true;
    habits_.push_back(habit);
  }

  void add_numbered() {
    LabelHabit habit;
    habit.end = digits_.end();
    habit.enclosed = digits_.enclosed();
    habit.second_end = habit.end;
    habit.back = digits_.backs * 2 >= digits_.numbers.size();
    std::size_t dashes = 0;
    for (auto const& [dash, times] : dashes_) {
      if (times > dashes) {
        dashes = times;
        habit.dash = dash;
      }
    }
    auto const couplets = digits_.numbers.size();
    auto const most = [couplets](std::size_t seconds) { return seconds * 5 >= couplets * 2; };
    auto const offer = [&](bool many, SecondSign second) {
      if (!many) return;
      habit.second = second;
      add(habit);
    };
    offer(most(digits_.lettered), SecondSign::lettered);
    // "4a. Wings" / "b. Wings"
    bool const letter = lower_.labels >= kFewestSoundOfKind && lower_.numbers.contains(2) &&
                        !lower_.numbers.contains(1);
    offer(most(digits_.lettered) && letter, SecondSign::letter);
    habit.second_end = HabitTally::most(digits_.marks);
    habit.second_back = digits_.marked_backs * 2 >= digits_.marked && habit.back;
    offer(most(digits_.marked), SecondSign::marked);
    habit.second_back = false;
    auto const one_mark = digits_.marked - digits_.two_marks;
    if (most(digits_.two_marks) && most(one_mark)) {
      auto const end = std::exchange(habit.end, habit.second_end);
      offer(true, SecondSign::two_and_one);
      habit.end = end;
    }
    offer(most(dashes), SecondSign::dash);
    habit.second_end = HabitTally::most(digits_.seconds);
    offer(most(digits_.repeated), SecondSign::repeated);
    offer(true, SecondSign::unlabelled);
    if (digits_.backs * 2 >= digits_.labels) {
      habit.sign = LabelSign::place;
      habit.second_end = habit.end;
      habit.second = SecondSign::repeated;
      habit.nested = true;
      habits_.push_back(habit);
    }
  }

  void add_lettered(HabitTally const& tally, LabelSign sign) {
    auto const offer = [&](std::size_t many, SecondSign second) {
      if (many < kFewestSoundOfKind) return;
      LabelHabit habit;
      habit.nested = true;
      habit.end = tally.end();
      habit.enclosed = tally.enclosed();
      if (second == SecondSign::raised) habit.end = raised_stops_ * 2 > raised_ ? U'.' : U'\0';
      habit.second = second;
      habit.sign = sign;
      bool const repeated = second == SecondSign::repeated;
      habits_.push_back(habit);
      bool const upper = sign == LabelSign::upper;
      habit.sign = upper ? LabelSign::upper_counted : LabelSign::lower_counted;
      if (!upper && !repeated) habits_.push_back(habit);
      habit.nested = false;
      if (second != SecondSign::raised) habits_.push_back(habit);
    };
    if (tally.repeated > tally.doubled + tally.marked) offer(tally.repeated, SecondSign::repeated);
    offer(tally.doubled, SecondSign::doubled);
    offer(tally.marked, SecondSign::marked);
    if (sign == LabelSign::lower) offer(raised_, SecondSign::raised);
  }

  struct RankTally {
    RankAlphabet rank;
    std::size_t labels{};
    std::size_t stops{};  // full stops behind them
  };

  // Ranks told by the marks behind their letters.
  struct MarkedRanks {
    std::size_t labels{};
    std::size_t stops{};  // full stops behind them
    std::size_t plain{};
    std::size_t primes{};
    std::size_t figures{};
    std::uint32_t deepest{};  // marks of one label
    bool beyond_b{};          // c', d'
    bool above{};             // "A." comes before "a."
  };

  std::vector<RankTally> ranks_;  // in order of first appearance
  MarkedRanks marked_;
  bool capitals_;  // words begin so
  HabitTally digits_;
  HabitTally upper_;
  HabitTally lower_;
  std::size_t raised_{};
  std::size_t raised_stops_{};  // with a full stop behind
  std::map<char32_t, std::size_t> dashes_;
  std::vector<LabelHabit> habits_;
};

}  // namespace

bool names_numbered_species(std::string_view text) {
  if (text.ends_with(')')) text = trim_right(text.substr(0, text.rfind('(')));
  return is_numbered_name(text) || is_numbered_name_in_full(text);
}

std::vector<LabelHabit> label_habits(std::vector<SourceLine> const& lines, bool upper) {
  return HabitFinder{lines, upper}.find();
}

}  // namespace keydrift::printed

#include "keydrift/characters/reading/numbers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "keydrift/characters/units.hpp"

namespace keydrift::reading {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

enum class Bound { none, at_least, at_most, more_than, less_than };

constexpr Bound opposite(Bound bound) {
  switch (bound) {
    case Bound::at_least:
      return Bound::less_than;
    case Bound::at_most:
      return Bound::more_than;
    case Bound::more_than:
      return Bound::at_most;
    case Bound::less_than:
      return Bound::at_least;
    case Bound::none:
      break;
  }
  return Bound::none;
}

// Words in front of a number.
struct Lead_in {
  Bound bound{Bound::none};
  bool about{false};
  bool negated{false};
  std::string dimension;  // "longer than 3 mm"
};

// The bare numbers of one range, in the printed units.
struct Core {
  double low{};
  double high{};
  double least{};  // extremes
  double greatest{};
  std::optional<CanonicalUnit> unit;
  bool backwards{false};
  bool or_rarely{false};
  bool or_more{false};
  bool or_less{false};
};

class NumberReader {
 public:
  NumberReader(LeadText const& text, std::uint32_t stop) : text_{text}, stop_{stop} {}

  std::vector<Measure> read(std::uint32_t at) {
    if (auto ratio = index_ratio(at)) return {std::move(*ratio)};
    if (auto ratio = comparison(at)) return {std::move(*ratio)};
    return amounts(at);
  }

 private:
  using Index = std::uint32_t;

  [[nodiscard]] bool usable(Index at) const {
    return at < stop_ && (text_.is_open(at) || text_.roles[at] == Role::hedge);
  }
  [[nodiscard]] bool sign(Index at, char32_t wanted) const {
    return usable(at) && text_.is_sign(at, wanted);
  }
  [[nodiscard]] bool word(Index at, std::string_view wanted) const {
    return usable(at) && text_.is_word(at, wanted);
  }
  [[nodiscard]] bool is(Index at, std::uint32_t classes) const {
    return usable(at) && text_.info[at].is(classes);
  }
  [[nodiscard]] bool times_sign(Index at) const { return sign(at, 0xD7) || word(at, "x"); }

  [[nodiscard]] bool number(Index at) const {
    if (!usable(at)) return false;
    if (text_.tokens[at].kind == TokenKind::number) return true;
    if (!text_.info[at].is(kNumeral)) return false;
    if (text_.tokens[at].word != "one") return true;
    // "one side", "one of them", "one another" count nothing.
    static constexpr std::array<std::string_view, 7> kNoCount{"side", "another", "of",   "end",
                                                              "half", "sided",   "third"};
    auto const next = at + 1 < stop_ && text_.is_sign(at + 1, U'-') ? at + 2 : at + 1;
    if (next < stop_ && text_.is_word(next) &&
        std::find(kNoCount.begin(), kNoCount.end(), text_.tokens[next].word) != kNoCount.end()) {
      return false;
    }
    return at == 0 || !(text_.is_word(at - 1, "each") || text_.is_word(at - 1, "this") ||
                        text_.is_word(at - 1, "that") || text_.is_word(at - 1, "the"));
  }
  [[nodiscard]] double value(Index at) const {
    return text_.tokens[at].kind == TokenKind::number ? text_.tokens[at].value
                                                      : text_.info[at].numeral;
  }

  // --- words in front -------------------------------------------------------------------------

  // Passes over bounds and approximators, and stands on the number or comparison behind them.
  // Where neither follows, nothing is passed over.
  Index lead_in(Index at, Lead_in& words) const {
    // More of them than this in front of one number is no language.
    static constexpr int kMost = 6;
    Lead_in so_far;
    auto i = at;
    Index before_comparative = stop_;  // "longer than", provided that a number follows
    Lead_in words_before_comparative;
    for (int passed = 0; passed < kMost && usable(i) && !number(i); ++passed) {
      if (text_.info[i].comparative != 0 && word(i + 1, "than") && before_comparative == stop_) {
        before_comparative = i;
        words_before_comparative = so_far;
        so_far.bound = text_.info[i].comparative > 0 ? Bound::more_than : Bound::less_than;
        if (so_far.negated) so_far.bound = opposite(so_far.bound);
        so_far.negated = false;
        so_far.dimension = std::string{text_.info[i].dimension};
        i += 2;
        continue;
      }
      Index end = i;
      Sensed meaning{};
      for (auto const& phrase : qualifiers_at(text_, i, stop_)) {
        if (!stands_before_numbers(phrase.meaning.sense)) continue;
        // A word that is a hedge and an approximator is the latter in front of a number.
        if (phrase.end > end || phrase.meaning.sense == Sense::about) {
          end = phrase.end;
          meaning = phrase.meaning;
        }
      }
      if (end == i) break;
      switch (meaning.sense) {
        case Sense::at_least:
          so_far.bound = Bound::at_least;
          break;
        case Sense::at_most:
          so_far.bound = Bound::at_most;
          break;
        case Sense::more_than:
          so_far.bound = Bound::more_than;
          break;
        case Sense::less_than:
          so_far.bound = Bound::less_than;
          break;
        case Sense::about:
        case Sense::nearly:
          so_far.about = true;
          break;
        case Sense::negation:
          so_far.negated = true;
          break;
        default:
          break;
      }
      i = end;
      if (sign(i, U'.') && !text_.tokens[i].blank_before && text_.info[i - 1].is(kAbbreviation)) {
        ++i;  // "approx."
      }
    }
    if (begins_number(i)) {
      words = so_far;
      return i;
    }
    if (before_comparative != stop_) {
      i = before_comparative;
      so_far = words_before_comparative;
    }
    if (i != at && begins_comparison(i)) {
      words = so_far;
      return i;
    }
    return at;
  }

  static bool stands_before_numbers(Sense sense) {
    switch (sense) {
      case Sense::at_least:
      case Sense::at_most:
      case Sense::more_than:
      case Sense::less_than:
      case Sense::between:
      case Sense::about:
      case Sense::nearly:
      case Sense::negation:
        return true;
      default:
        return false;
    }
  }
  [[nodiscard]] bool begins_number(Index at) const {
    while (sign(at, U'(')) ++at;
    return number(at);
  }
  [[nodiscard]] bool begins_comparison(Index at) const {
    while (is(at, kDegree)) ++at;
    return word(at, "as") || factor_word(at) > 0 ||
           (usable(at) && text_.info[at].comparative != 0 && word(at + 1, "than"));
  }
  [[nodiscard]] double factor_word(Index at) const {
    if (!usable(at) || !text_.is_word(at)) return 0;
    auto const& printed = text_.tokens[at].word;
    if (printed == "twice" || printed == "double") return 2;
    if (printed == "thrice") return 3;
    if (printed == "half") return 0.5;
    return 0;
  }

  // --- numbers --------------------------------------------------------------------------------

  [[nodiscard]] bool span_sign(Index at) const { return sign(at, U'-') || is(at, kTo); }

  // "(3–)", "((1–)2–)" in front of a number: the least number, and where it ends.
  bool low_extremes(Index& at, double& least) const {
    auto i = at;
    int depth = 0;
    bool any = false;
    bool bare = false;
    double found = kInfinity;
    do {
      if (sign(i, U'(')) {
        ++depth;
      } else if (sign(i, U')')) {
        // What is closed leads on: "(3–)"; a bare "(3)" must be less than what follows.
        if (i == at) return false;
        bare = bare || !(span_sign(i - 1) || is(i - 1, kOr) || sign(i - 1, U')'));
        --depth;
      } else if (number(i)) {
        any = true;
        found = std::min(found, value(i));
        Index unit_end = i + 1;
        if (unit_at(i + 1, unit_end)) i = unit_end - 1;
      } else if (!span_sign(i) && !is(i, kOr)) {
        return false;
      }
      ++i;
    } while (depth > 0 && i < stop_);
    if (depth != 0 || !any || !number(i)) return false;
    if (bare && value(i) <= found) return false;
    at = i;
    least = found;
    return true;
  }

  // "(–8)", "(to 8)", "(rarely 8)", "(or 10)", "(-5(-9))" behind a number.
  bool high_extremes(Index& at, Core& core) const {
    auto i = at;
    int depth = 0;
    bool led = false;  // a word or sign that says the number goes further
    double low = kInfinity;
    double high = -kInfinity;
    std::optional<CanonicalUnit> unit;
    do {
      if (sign(i, U'(')) {
        ++depth;
      } else if (sign(i, U')')) {
        --depth;
      } else if (span_sign(i) || is(i, kOr)) {
        led = true;
      } else if (number(i)) {
        low = std::min(low, value(i));
        high = std::max(high, value(i));
        Index unit_end = i + 1;
        if (auto const printed = unit_at(i + 1, unit_end)) {
          unit = printed;
          i = unit_end - 1;
        }
      } else {
        Index end = i;
        for (auto const& phrase : qualifiers_at(text_, i, stop_)) {
          if (phrase.meaning.sense == Sense::minority || phrase.meaning.sense == Sense::at_most ||
              phrase.meaning.sense == Sense::about) {
            end = phrase.end;
          }
        }
        if (end == i) return false;
        led = true;
        i = end - 1;
      }
      ++i;
    } while (depth > 0 && i < stop_);
    if (depth != 0 || high < low) return false;
    // "4–6(8)", "(3) 4–6 (8) mm": a bare number when it is greater and plainly belongs here.
    if (!led) {
      Index unit_end = i;
      bool const belongs = !text_.tokens[at].blank_before || core.least < core.low ||
                           unit_at(i, unit_end).has_value();
      if (high <= core.high || !belongs) return false;
    }
    at = i;
    core.greatest = std::max(core.greatest, high);
    core.least = std::min(core.least, low);
    if (unit && !core.unit) core.unit = unit;
    return true;
  }

  [[nodiscard]] std::optional<CanonicalUnit> unit_at(Index at, Index& end) const {
    if (!usable(at)) return std::nullopt;
    auto const& token = text_.tokens[at];
    if (token.kind == TokenKind::sign) {
      if (token.sign != U'%' && token.sign != 0xB0 &&
          !(token.sign == U'"' && !token.blank_before)) {
        return std::nullopt;
      }
      end = at + 1;
      return canonical_unit(text_.slice(at, at));
    }
    if (token.kind != TokenKind::word) return std::nullopt;
    if (token.word == "in") {
      // The inch, unless another word follows ("3 in a whorl").
      if (at + 1 < stop_ && text_.is_word(at + 1) && text_.info[at + 1].dimension.empty()) {
        return std::nullopt;
      }
      if (at + 1 < stop_ && text_.is_word(at + 1) &&
          text_.info[at + 1].dimension != std::string_view{} &&
          text_.tokens[at + 1].word.ends_with("th")) {
        return std::nullopt;  // "3 in length"
      }
    }
    if ((token.word == "per" && word(at + 1, "cent")) ||
        ((token.word == "sq" || token.word == "square") && usable(at + 1))) {
      end = at + 2;
      return canonical_unit(text_.slice(at, at + 1));
    }
    // "mm²"
    if (at + 1 < stop_ && text_.tokens[at + 1].kind == TokenKind::sign &&
        text_.tokens[at + 1].sign == 0xB2 && !text_.tokens[at + 1].blank_before) {
      end = at + 2;
      return canonical_unit(text_.slice(at, at + 1));
    }
    end = at + 1;
    return canonical_unit(token.word);
  }

  void take_unit(Index& at, Core& core) const {
    Index end = at;
    if (auto const unit = unit_at(at, end)) {
      if (!core.unit) core.unit = unit;
      at = end;
    }
  }

  // A number, a span, their extremes and unit; `at` stands behind them.
  std::optional<Core> core_at(Index& at) const {
    auto i = at;
    Core core;
    double least = kInfinity;
    if (sign(i, U'(') && !low_extremes(i, least)) return std::nullopt;
    if (!number(i)) return std::nullopt;
    core.low = core.high = value(i);
    ++i;
    std::optional<CanonicalUnit> low_unit;
    {
      Index end = i;
      if (auto const unit = unit_at(i, end)) {
        low_unit = unit;
        i = end;
      }
    }
    if (span_sign(i) && number(i + 1)) {
      core.high = value(i + 1);
      i += 2;
      take_unit(i, core);
    } else if (low_unit) {
      core.unit = low_unit;
    }
    core.least = std::min(least, core.low);
    core.greatest = core.high;
    while (sign(i, U'(') && high_extremes(i, core)) {
    }
    if (!core.unit) take_unit(i, core);
    // "5 mm – 2 cm": each end in its own unit.
    if (low_unit && core.unit && low_unit->factor != core.unit->factor &&
        low_unit->unit == core.unit->unit) {
      auto const scale = low_unit->factor / core.unit->factor;
      core.low *= scale;
      core.least *= scale;
      core.high = std::max(core.high, core.low);
    }
    if (core.low > core.high) {
      core.backwards = true;
      std::swap(core.low, core.high);
      core.least = std::min(core.least, core.low);
      core.greatest = std::max(core.greatest, core.high);
    }
    if (core.greatest < core.high) core.greatest = core.high;
    take_tail(i, core);
    at = i;
    return core;
  }

  // "or more", "+", "or rarely 8", ", rarely to 8 mm".
  void take_tail(Index& at, Core& core) const {
    if (sign(at, U'+') && !text_.tokens[at].blank_before) {
      core.or_more = true;
      ++at;
      take_unit(at, core);
      return;
    }
    for (auto const& phrase : qualifiers_at(text_, at, stop_)) {
      if (!usable(at) || text_.is_sign(at, U'+')) break;
      if (phrase.meaning.sense == Sense::or_more || phrase.meaning.sense == Sense::or_less) {
        core.or_more = phrase.meaning.sense == Sense::or_more;
        core.or_less = !core.or_more;
        at = phrase.end;
        take_unit(at, core);
        return;
      }
    }
    auto i = at;
    if (sign(i, U',')) ++i;
    if (is(i, kOr)) ++i;
    if (!usable(i)) return;
    Index behind = i;
    for (auto const& phrase : qualifiers_at(text_, i, stop_)) {
      if (phrase.meaning.sense == Sense::minority) behind = phrase.end;
    }
    if (behind == i) return;
    if (span_sign(behind)) {
      ++behind;
    } else if (word(behind, "up") && word(behind + 1, "to")) {
      behind += 2;
    }
    if (!number(behind)) return;
    core.or_rarely = true;
    core.least = std::min(core.least, value(behind));
    core.greatest = std::max(core.greatest, value(behind));
    ++behind;
    if (span_sign(behind) && number(behind + 1)) {
      core.greatest = std::max(core.greatest, value(behind + 1));
      behind += 2;
    }
    take_unit(behind, core);
    at = behind;
  }

  [[nodiscard]] bool amount_follows(Index at) const {
    Lead_in ignored;
    return begins_number(lead_in(at, ignored));
  }

  static NumericRange range_of(Core const& core, Bound bound, double factor, bool about) {
    NumericRange range;
    auto const low = clean(core.low * factor);
    auto const high = clean(core.high * factor);
    auto const least = clean(core.least * factor);
    auto const greatest = clean(core.greatest * factor);
    if (core.or_more) bound = Bound::at_least;
    if (core.or_less) bound = Bound::at_most;
    switch (bound) {
      case Bound::none:
        range.usual = {.low = low, .high = high};
        range.extreme = {.low = least, .high = greatest};
        break;
      case Bound::at_least:
      case Bound::more_than:
        range.usual = {.low = low == high ? low : high, .low_open = bound == Bound::more_than};
        range.extreme = {.low = std::min(least, low), .low_open = bound == Bound::more_than};
        if (bound == Bound::at_least) range.usual.low = low;
        break;
      case Bound::at_most:
      case Bound::less_than:
        range.usual = {.high = bound == Bound::at_most ? high : low,
                       .high_open = bound == Bound::less_than};
        range.extreme = {.high = std::max(greatest, high), .high_open = bound == Bound::less_than};
        break;
    }
    range.approximate = about;
    return range;
  }

  // --- measurements and counts ----------------------------------------------------------------

  std::vector<Measure> amounts(Index at) const {
    struct Piece {
      std::vector<Core> cores;
      Lead_in words;
      std::optional<Core> second_bound;  // "more than 3 but less than 5"
      Lead_in second_words;
      std::string dimension;
      Index end{};
    };
    std::vector<Piece> pieces;
    auto i = at;
    for (;;) {
      Piece piece;
      auto j = lead_in(i, piece.words);
      bool const between = i != j && (word(i, "between") || word(i, "from") ||
                                      word(i, "zwischen") || word(i, "entre"));
      auto core = core_at(j);
      if (!core) break;
      if (between && piece.words.bound == Bound::none && is(j, kAnd) && number(j + 1)) {
        ++j;
        auto const upper = core_at(j);
        if (!upper) break;
        core->high = std::max(core->high, upper->high);
        core->greatest = std::max(core->greatest, upper->greatest);
        if (!core->unit) core->unit = upper->unit;
      }
      piece.cores.push_back(*core);
      take_alternatives(j, piece.cores);
      piece.dimension = piece.words.dimension;
      take_dimension(j, piece.dimension);
      if (piece.words.bound != Bound::none) {
        take_second_bound(j, piece.words.bound, piece.second_bound, piece.second_words);
        take_dimension(j, piece.dimension);
      }
      piece.end = j;
      pieces.push_back(std::move(piece));
      if (times_sign(j) && amount_follows(j + 1)) {
        i = j + 1;
        continue;
      }
      break;
    }
    std::vector<Measure> measures;
    if (pieces.empty()) return measures;
    std::optional<CanonicalUnit> shared;
    for (auto const& piece : pieces) {
      for (auto const& core : piece.cores) {
        if (core.unit) shared = core.unit;
      }
    }
    static constexpr std::array<char const*, 3> kBySide{"length", "width", "thickness"};
    for (std::size_t side = 0; side < pieces.size(); ++side) {
      auto const& piece = pieces[side];
      Measure measure;
      measure.begin = at;
      measure.end = pieces.back().end;
      measure.dimension = piece.dimension;
      if (measure.dimension.empty() && pieces.size() > 1 && side < kBySide.size()) {
        measure.dimension = kBySide[side];
      }
      measure.negated = piece.words.negated;
      std::optional<CanonicalUnit> own;
      for (auto const& core : piece.cores) {
        if (core.unit) own = core.unit;
      }
      if (!own && piece.second_bound) own = piece.second_bound->unit;
      if (!own) own = shared;
      measure.unit = own ? own->unit : "1";
      measure.unit_printed = own.has_value();
      for (auto const& core : piece.cores) {
        auto const factor = core.unit ? core.unit->factor : own ? own->factor : 1.0;
        auto range = range_of(core, piece.words.bound, factor, piece.words.about);
        if (piece.second_bound) {
          auto const other =
              range_of(*piece.second_bound, piece.second_words.bound,
                       piece.second_bound->unit ? piece.second_bound->unit->factor : factor, false);
          narrow(range.usual, other.usual);
          narrow(range.extreme, other.extreme);
        }
        measure.ranges.push_back(range);
        measure.or_rarely = measure.or_rarely || core.or_rarely;
        measure.backwards = measure.backwards || core.backwards;
      }
      measures.push_back(std::move(measure));
    }
    return measures;
  }

  static void narrow(Interval& interval, Interval const& other) {
    if (other.low > interval.low) {
      interval.low = other.low;
      interval.low_open = other.low_open;
    }
    if (other.high < interval.high) {
      interval.high = other.high;
      interval.high_open = other.high_open;
    }
  }

  // "3 or 5", "3, 5 or 7": separate values.
  void take_alternatives(Index& at, std::vector<Core>& cores) const {
    auto i = at;
    auto more = cores;
    bool closed = false;
    while (!closed) {
      bool const comma = sign(i, U',');
      auto j = comma ? i + 1 : i;
      if (is(j, kOr)) {
        closed = true;
        ++j;
      } else if (!comma) {
        return;
      }
      Lead_in words;
      if (auto const behind = lead_in(j, words); words.bound != Bound::none || behind != j) return;
      auto const next = core_at(j);
      if (!next) return;
      more.push_back(*next);
      i = j;
    }
    cores = std::move(more);
    at = i;
  }

  void take_second_bound(Index& at, Bound first, std::optional<Core>& core, Lead_in& words) const {
    auto i = at;
    if (sign(i, U',')) ++i;
    if (!(word(i, "but") || is(i, kAnd))) return;
    auto const behind = lead_in(i + 1, words);
    bool const first_low = first == Bound::at_least || first == Bound::more_than;
    bool const second_low = words.bound == Bound::at_least || words.bound == Bound::more_than;
    if (behind == i + 1 || words.bound == Bound::none || first_low == second_low) return;
    auto j = behind;
    core = core_at(j);
    if (core) at = j;
  }

  // "long", "in length", "in diam."
  void take_dimension(Index& at, std::string& dimension) const {
    auto i = at;
    if ((word(i, "in") || is(i, kOf)) && usable(i + 1)) ++i;
    if (!usable(i) || text_.info[i].dimension.empty() || text_.info[i].comparative != 0) return;
    // "3 long hairs": an adjective of what is counted.
    if (i == at && text_.tokens[i].word != "diam" && at > 0 &&
        (text_.tokens[at - 1].kind == TokenKind::number || text_.info[at - 1].is(kNumeral)) &&
        i + 1 < stop_ && text_.is_content(i + 1) && !text_.info[i + 1].is(kPreposition)) {
      return;
    }
    if (dimension.empty()) dimension = std::string{text_.info[i].dimension};
    at = i + 1;
    if (sign(at, U'.') && text_.info[i].is(kSoftAbbreviation) && at + 1 < stop_) ++at;
  }

  // --- ratios ---------------------------------------------------------------------------------

  // "length/width 2.1–2.6", "length to width ratio 2"
  std::optional<Measure> index_ratio(Index at) const {
    if (!usable(at) || text_.info[at].dimension.empty() || text_.info[at].comparative != 0) {
      return std::nullopt;
    }
    auto i = at + 1;
    if (!(sign(i, U'/') || sign(i, U':') || sign(i, U'-') || is(i, kTo))) return std::nullopt;
    ++i;
    if (!usable(i) || text_.info[i].dimension.empty()) return std::nullopt;
    auto const second = i;
    ++i;
    while (word(i, "ratio") || word(i, "index") || is(i, kOf | kCopula) || sign(i, U':') ||
           sign(i, U'=')) {
      ++i;
    }
    Lead_in words;
    i = lead_in(i, words);
    auto const core = core_at(i);
    if (!core || core->unit) return std::nullopt;
    Measure measure;
    measure.begin = at;
    measure.end = i;
    measure.ratio = true;
    measure.over = std::string{text_.info[at].dimension};
    measure.to = std::string{text_.info[second].dimension};
    measure.negated = words.negated;
    measure.ranges.push_back(range_of(*core, words.bound, 1, words.about));
    measure.or_rarely = core->or_rarely;
    measure.backwards = core->backwards;
    return measure;
  }

  // "[about] [twice] as long as wide", "[2 times] longer than the beak", "half the length of …"
  std::optional<Measure> comparison(Index at) const {
    Lead_in words;
    auto i = lead_in(at, words);
    while (is(i, kDegree)) ++i;
    Core core{.low = 1, .high = 1, .least = 1, .greatest = 1, .unit = {}};
    bool factor = false;
    if (auto const times = factor_word(i); times > 0) {
      core.low = core.high = core.least = core.greatest = times;
      factor = true;
      ++i;
      // "twice to three times", "two to three times" is a plain range
      if (is(i, kTo) && number(i + 1)) {
        core.high = core.greatest = value(i + 1);
        i += 2;
        take_times(i);
      }
    } else if (number(i) || sign(i, U'(')) {
      auto const numbers = core_at(i);
      if (!numbers || numbers->unit) return std::nullopt;
      core = *numbers;
      factor = true;
      take_times(i);
    }
    Measure measure;
    measure.ratio = true;
    measure.begin = at;
    auto bound = words.bound;
    if (word(i, "as") && usable(i + 1) && !text_.info[i + 1].dimension.empty() &&
        text_.info[i + 1].comparative == 0 && word(i + 2, "as")) {
      measure.over = std::string{text_.info[i + 1].dimension};
      i += 3;
      // "as long as or longer than"
      if (is(i, kOr) && usable(i + 1) && text_.info[i + 1].comparative != 0 &&
          word(i + 2, "than")) {
        bound = text_.info[i + 1].comparative > 0 ? Bound::at_least : Bound::at_most;
        i += 3;
      }
    } else if (usable(i) && text_.info[i].comparative != 0 && word(i + 1, "than")) {
      measure.over = std::string{text_.info[i].dimension};
      if (!factor) {
        bound = text_.info[i].comparative > 0 ? Bound::more_than : Bound::less_than;
        if (words.negated) {
          bound = opposite(bound);
          words.negated = false;
        }
      } else if (text_.info[i].comparative < 0) {
        invert(core);
      }
      i += 2;
      if (is(i, kOr) &&
          ((word(i + 1, "equal") && word(i + 2, "to")) || (word(i + 1, "equalling")))) {
        bound = bound == Bound::more_than ? Bound::at_least : Bound::at_most;
        i += word(i + 1, "equal") ? 3 : 2;
      } else if (is(i, kOr) && word(i + 1, "as") && usable(i + 2) &&
                 !text_.info[i + 2].dimension.empty() && word(i + 3, "as")) {
        // "shorter than or as long as"
        bound = bound == Bound::more_than ? Bound::at_least : Bound::at_most;
        i += 4;
      }
    } else if (factor && factor_before_length(i)) {
      if (is(i, kArticle)) ++i;
      measure.over = std::string{text_.info[i].dimension};
      i += 2;
    } else {
      return std::nullopt;
    }
    while (is(i, kArticle)) ++i;
    if (!usable(i) || !text_.is_word(i)) return std::nullopt;
    if (!text_.info[i].dimension.empty() && text_.info[i].comparative == 0 &&
        !(usable(i + 1) && text_.is_content(i + 1) && !text_.info[i + 1].is(kPreposition))) {
      measure.to = std::string{text_.info[i].dimension};
      if (measure.to == measure.over) return std::nullopt;
      measure.end = i + 1;
    } else {
      if (text_.info[i].is(kPreposition)) return std::nullopt;  // "longer than in the female"
      measure.comparand_begin = i;
      while (usable(i) && (text_.is_word(i) || sign(i, U'-'))) ++i;
      measure.comparand_end = i;
      measure.end = i;
    }
    measure.negated = words.negated;
    measure.ranges.push_back(range_of(core, bound, 1, words.about));
    measure.backwards = core.backwards;
    measure.or_rarely = core.or_rarely;
    return measure;
  }

  void take_times(Index& at) const {
    for (auto const& phrase : qualifiers_at(text_, at, stop_)) {
      if (usable(at) && phrase.meaning.sense == Sense::times) {
        at = phrase.end;
        return;
      }
    }
  }
  // "the length of"
  [[nodiscard]] bool factor_before_length(Index at) const {
    if (is(at, kArticle)) ++at;
    return usable(at) && !text_.info[at].dimension.empty() && is(at + 1, kOf);
  }
  static void invert(Core& core) {
    auto const flip = [](double value) { return value == 0 ? kInfinity : 1 / value; };
    auto const old = core;
    core.low = flip(old.high);
    core.high = flip(old.low);
    core.least = flip(old.greatest);
    core.greatest = flip(old.least);
  }

  LeadText const& text_;
  Index stop_;
};

Interval inverted(Interval const& interval) {
  Interval result;
  // Ratios are positive: an open lower end is 0.
  result.low = std::isinf(interval.high) ? -kInfinity : clean(1 / interval.high);
  result.low_open = interval.high_open && !std::isinf(interval.high);
  result.high = interval.low <= 0 ? kInfinity : clean(1 / interval.low);
  result.high_open = interval.low_open && interval.low > 0;
  return result;
}

Interval widened(Interval interval, double tolerance) {
  if (std::isfinite(interval.low)) {
    interval.low = clean(interval.low - std::abs(interval.low) * tolerance);
  }
  if (std::isfinite(interval.high)) {
    interval.high = clean(interval.high + std::abs(interval.high) * tolerance);
  }
  return interval;
}

}  // namespace

std::vector<Measure> measures_at(LeadText const& text, std::uint32_t at, std::uint32_t stop) {
  return NumberReader{text, stop}.read(at);
}

NumericRange inverted(NumericRange const& range) {
  return {.usual = inverted(range.usual),
          .extreme = inverted(range.extreme),
          .approximate = range.approximate};
}

NumericRange widened(NumericRange const& range, double tolerance) {
  if (!range.approximate) return range;
  return {.usual = widened(range.usual, tolerance),
          .extreme = widened(range.extreme, tolerance),
          .approximate = true};
}

int dimension_rank(std::string_view dimension) {
  static constexpr std::array<std::string_view, 7> kOrder{
      "length", "width", "height", "depth", "thickness", "diameter", "size"};
  return static_cast<int>(std::find(kOrder.begin(), kOrder.end(), dimension) - kOrder.begin());
}

}  // namespace keydrift::reading

#include <limits>
#include <utility>

#include "keydrift/characters/reading/number_cores.hpp"
#include "keydrift/characters/reading/numbers.hpp"

namespace keydrift::reading {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

class RatioReader : CoreReader {
 public:
  using CoreReader::CoreReader;

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
    LeadIn words;
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
    LeadIn words;
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

 private:
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
};

}  // namespace

std::optional<Measure> ratio_at(LeadText const& text, std::uint32_t at, std::uint32_t stop) {
  RatioReader const reader{text, stop};
  if (auto ratio = reader.index_ratio(at)) return ratio;
  return reader.comparison(at);
}

}  // namespace keydrift::reading

#include <limits>
#include <utility>

#include "keydrift/characters/reading/number_cores.hpp"
#include "keydrift/characters/reading/numbers.hpp"

namespace keydrift::reading {
namespace {

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
    } else if (double part = 0; fraction_at(i, part)) {
      core.low = core.high = core.least = core.greatest = part;
      factor = true;
      // "a third to half as long"
      auto behind = i + 1;
      if (span_sign(i) && (fraction_at(behind, part) || factor_word(behind) > 0)) {
        core.high = core.greatest = behind > i + 1 ? part : factor_word(behind);
        i = behind > i + 1 ? behind : behind + 1;
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
    if (equal_at(i)) {
      measure.over = std::string{text_.info[i + 1].dimension};
      i += 3;
      // "as long as or longer than"
      if (is(i, kOr) && usable(i + 1) && text_.info[i + 1].comparative != 0 &&
          word(i + 2, "than")) {
        bound = text_.info[i + 1].comparative > 0 ? Bound::at_least : Bound::at_most;
        i += 3;
      }
    } else if (auto const compared = comparative_at(i)) {
      measure.over = std::string{compared->dimension};
      if (!factor) {
        bound = compared->direction > 0 ? Bound::more_than : Bound::less_than;
        if (words.negated) {
          bound = opposite(bound);
          words.negated = false;
        }
      } else if (core.high < 1) {
        // "a third longer than"
        for (auto* value : {&core.low, &core.high, &core.least, &core.greatest}) {
          *value = clean(1 + compared->direction * *value);
        }
        if (core.low > core.high) {
          std::swap(core.low, core.high);
          std::swap(core.least, core.greatest);
        }
      } else if (compared->direction < 0) {
        invert(core);
      }
      i = compared->end;
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
    // "as long as 3-SR": a vein.
    bool const numbered = number(i) && sign(i + 1, U'-') && usable(i + 2) && text_.is_word(i + 2);
    if (!usable(i) || !(text_.is_word(i) || numbered)) return std::nullopt;
    if (!text_.info[i].dimension.empty() && text_.info[i].comparative == 0 &&
        !(usable(i + 1) && text_.is_content(i + 1) && !text_.info[i + 1].is(kPreposition))) {
      measure.to = std::string{text_.info[i].dimension};
      if (measure.to == measure.over) return std::nullopt;
      measure.end = i + 1;
      take_bound_behind(measure.end, bound);
    } else {
      if (text_.info[i].is(kPreposition)) return std::nullopt;  // "longer than in the female"
      measure.comparand_begin = i;
      if (numbered) ++i;
      while (usable(i) && (text_.is_word(i) || sign(i, U'-')) && !bound_behind(i)) ++i;
      measure.comparand_end = i;
      measure.end = i;
      take_bound_behind(measure.end, bound);
    }
    measure.negated = words.negated;
    measure.ranges.push_back(range_of(core, bound, 1, words.about));
    measure.backwards = core.backwards;
    measure.or_rarely = core.or_rarely;
    return measure;
  }

  // "equalling the petals", "subequal to the limb", "exceeding the petals": of lengths.
  std::optional<Measure> verb_comparison(Index at) const {
    auto i = at;
    bool const negated = word(i, "not");
    if (negated) ++i;
    Measure measure;
    auto bound = Bound::none;
    bool about = false;
    if (word(i, "equalling") || word(i, "equaling") || word(i, "equals")) {
      ++i;
    } else if (word(i, "equal") && word(i + 1, "to")) {
      i += 2;
    } else if (word(i, "subequal") && word(i + 1, "to")) {
      about = true;
      i += 2;
    } else if (word(i, "exceeding") || word(i, "exceeds") || word(i, "surpassing")) {
      bound = negated ? Bound::at_most : Bound::more_than;
      ++i;
    } else {
      return std::nullopt;
    }
    if (negated && bound == Bound::none) return std::nullopt;
    measure.over = "length";
    // "equalling or longer than"
    if (auto const compared = is(i, kOr) ? comparative_at(i + 1) : std::nullopt) {
      bound = compared->direction > 0 ? Bound::at_least : Bound::at_most;
      measure.over = std::string{compared->dimension};
      i = compared->end;
    }
    while (is(i, kArticle)) ++i;
    if (!usable(i) || !text_.is_content(i) || number(i) || !text_.info[i].dimension.empty()) {
      return std::nullopt;
    }
    measure.ratio = true;
    measure.begin = at;
    measure.comparand_begin = i;
    while (usable(i) && (text_.is_word(i) || sign(i, U'-'))) ++i;
    measure.comparand_end = i;
    measure.end = i;
    Core const core{.low = 1, .high = 1, .least = 1, .greatest = 1, .unit = {}};
    measure.ranges.push_back(range_of(core, bound, 1, about));
    return measure;
  }

 private:
  // "as long as", "so lang wie", "aussi long que", "tan largo como", "tão longo quanto"
  [[nodiscard]] bool equal_at(Index at) const {
    bool const begins =
        word(at, "as") || word(at, "so") || word(at, "aussi") || word(at, "tan") || word(at, "tão");
    bool const joins = word(at + 2, "as") || word(at + 2, "wie") || word(at + 2, "que") ||
                       word(at + 2, "como") || word(at + 2, "quanto");
    return begins && joins && usable(at + 1) && !text_.info[at + 1].dimension.empty() &&
           text_.info[at + 1].comparative == 0;
  }
  // "or longer", "or less"
  [[nodiscard]] bool bound_behind(Index at) const {
    return is(at, kOr) && usable(at + 1) && text_.info[at + 1].comparative != 0;
  }
  void take_bound_behind(Index& at, Bound& bound) const {
    if (!bound_behind(at) || bound != Bound::none) return;
    bound = text_.info[at + 1].comparative > 0 ? Bound::at_least : Bound::at_most;
    at += 2;
  }
  void take_times(Index& at) const {
    if (sign(at, U'-') && word(at + 1, "mal")) ++at;
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
  if (auto ratio = reader.comparison(at)) return ratio;
  return reader.verb_comparison(at);
}

}  // namespace keydrift::reading

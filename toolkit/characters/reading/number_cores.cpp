#include "keydrift/characters/reading/number_cores.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

#include "keydrift/characters/reading/numbers.hpp"

namespace keydrift::reading {
namespace {}  // namespace

Bound opposite(Bound bound) {
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

bool CoreReader::number(Index at) const {
  if (!usable(at)) return false;
  if (text_.tokens[at].kind == TokenKind::number) return true;
  if (!text_.info[at].is(kNumeral)) return false;
  if (text_.tokens[at].word == "single") return counts_single(at);
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

// "a single spine"; not "in a single row", "single-celled".
bool CoreReader::counts_single(Index at) const {
  if (at + 1 >= stop_ || !text_.info[at + 1].is(kPart) || at == 0) return false;
  auto const before = at - 1;
  if (!text_.info[before].is(kArticle | kWith)) return false;
  return before == 0 || !text_.info[before].is(kArticle) || !text_.is_word(before - 1, "in");
}

CoreReader::Index CoreReader::lead_in(Index at, LeadIn& words) const {
  // More of them than this in front of one number is no language.
  static constexpr int kMost = 6;
  LeadIn so_far;
  auto i = at;
  Index before_comparative = stop_;  // "longer than", provided that a number follows
  LeadIn words_before_comparative;
  for (int passed = 0; passed < kMost && usable(i) && !number(i); ++passed) {
    if (auto const compared = comparative_at(i); compared && before_comparative == stop_) {
      before_comparative = i;
      words_before_comparative = so_far;
      so_far.bound = compared->direction > 0 ? Bound::more_than : Bound::less_than;
      if (so_far.negated) so_far.bound = opposite(so_far.bound);
      so_far.negated = false;
      so_far.dimension = std::string{compared->dimension};
      i = compared->end;
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

bool CoreReader::stands_before_numbers(Sense sense) {
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

bool CoreReader::begins_number(Index at) const {
  while (sign(at, U'(')) ++at;
  return number(at);
}

bool CoreReader::begins_comparison(Index at) const {
  while (is(at, kDegree)) ++at;
  double value = 0;
  auto behind = at;
  return word(at, "as") || word(at, "so") || word(at, "aussi") || word(at, "tan") ||
         word(at, "tão") || factor_word(at) > 0 || fraction_at(behind, value) ||
         comparative_at(at).has_value();
}

bool CoreReader::fraction_at(Index& at, double& value) const {
  if (!usable(at) || !text_.is_word(at)) {
    if (!number(at)) return false;
  }
  auto i = at;
  double parts = 1;
  if (text_.info[i].is(kNumeral) || text_.tokens[i].kind == TokenKind::number) {
    parts = this->value(i);
  } else if (!word(i, "a") && !word(i, "an")) {
    return false;
  }
  ++i;
  if (sign(i, U'-')) ++i;
  if (!usable(i) || !text_.is_word(i)) return false;
  auto const whole = denominator(text_.tokens[i].word);
  if (whole == 0 || parts >= whole) return false;
  value = parts / whole;
  at = i + 1;
  return true;
}

std::optional<CoreReader::Comparative> CoreReader::comparative_at(Index at) const {
  if (!usable(at) || !text_.is_word(at)) return std::nullopt;
  if (auto const direction = text_.info[at].comparative; direction != 0) {
    if (!word(at + 1, "than") && !word(at + 1, "als")) return std::nullopt;
    return Comparative{
        .dimension = text_.info[at].dimension, .direction = direction, .end = at + 2};
  }
  bool const more = word(at, "plus") || word(at, "más") || word(at, "mais");
  bool const less = word(at, "moins") || word(at, "menos");
  if (!(more || less) || !usable(at + 1) || text_.info[at + 1].dimension.empty() ||
      !(word(at + 2, "que") || word(at + 2, "quam"))) {
    return std::nullopt;
  }
  return Comparative{
      .dimension = text_.info[at + 1].dimension, .direction = more ? 1 : -1, .end = at + 3};
}

double CoreReader::factor_word(Index at) const {
  if (!usable(at) || !text_.is_word(at)) return 0;
  auto const& printed = text_.tokens[at].word;
  if (printed == "twice" || printed == "double" || printed == "doppelt" || printed == "zweimal") {
    return 2;
  }
  if (printed == "thrice" || printed == "dreimal") return 3;
  if (printed == "half" || printed == "halb") return 0.5;
  return 0;
}

bool CoreReader::low_extremes(Index& at, double& least) const {
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

bool CoreReader::high_extremes(Index& at, Core& core) const {
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
    bool const belongs =
        !text_.tokens[at].blank_before || core.least < core.low || unit_at(i, unit_end).has_value();
    if (high <= core.high || !belongs) return false;
  }
  at = i;
  core.greatest = std::max(core.greatest, high);
  core.least = std::min(core.least, low);
  if (unit && !core.unit) core.unit = unit;
  return true;
}

std::optional<CanonicalUnit> CoreReader::unit_at(Index at, Index& end) const {
  if (!usable(at)) return std::nullopt;
  auto const& token = text_.tokens[at];
  if (token.kind == TokenKind::sign) {
    if (token.sign != U'%' && token.sign != 0xB0 && !(token.sign == U'"' && !token.blank_before)) {
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
  if (token.word == "line" || token.word == "lines") {
    // Of length; elsewhere a mark that is counted ("back with 3 lines").
    auto next = at + 1;
    // "10 lines – 12 lines long"
    if (span_sign(next) && number(next + 1) &&
        (word(next + 2, "lines") || word(next + 2, "line"))) {
      next += 3;
    }
    if (next < stop_ && text_.is_sign(next, U'.')) ++next;
    if (next < stop_ && (text_.is_word(next, "in") || text_.info[next].is(kOf))) ++next;
    if (next >= stop_ || text_.info[next].dimension.empty()) return std::nullopt;
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
  auto unit = canonical_unit(token.word);
  // "3 in.–4 in. long": the full stop is the unit's.
  if (unit && sign(end, U'.') && !text_.tokens[end].blank_before && end + 1 < stop_ &&
      text_.info[at].is(kSoftAbbreviation)) {
    ++end;
  }
  return unit;
}

void CoreReader::take_unit(Index& at, Core& core) const {
  Index end = at;
  if (auto const unit = unit_at(at, end)) {
    if (!core.unit) core.unit = unit;
    at = end;
  }
}

std::optional<Core> CoreReader::core_at(Index& at) const {
  auto i = at;
  Core core;
  double least = kInfinity;
  if (sign(i, U'(') && !low_extremes(i, least)) return std::nullopt;
  if (!number(i)) return std::nullopt;
  core.low = core.high = value(i);
  ++i;
  // "one and a half"
  if (word(i, "and") && word(i + 1, "a") && usable(i + 2) && text_.is_word(i + 2) &&
      denominator(text_.tokens[i + 2].word) > 0) {
    core.low += 1 / denominator(text_.tokens[i + 2].word);
    core.high = core.low;
    i += 3;
  }
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
    // "4–4.6–5 mm": with the mean between.
    Index unit_end = i;
    if (sign(i, U'-') && number(i + 1) && core.low < core.high && core.high < value(i + 1) &&
        unit_at(i + 2, unit_end)) {
      core.high = value(i + 1);
      i += 2;
    }
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

void CoreReader::take_tail(Index& at, Core& core) const {
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

bool CoreReader::amount_follows(Index at) const {
  LeadIn ignored;
  return begins_number(lead_in(at, ignored));
}

NumericRange CoreReader::range_of(Core const& core, Bound bound, double factor, bool about) {
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

}  // namespace keydrift::reading

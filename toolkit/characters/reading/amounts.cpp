#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "keydrift/characters/reading/number_cores.hpp"
#include "keydrift/characters/reading/numbers.hpp"

namespace keydrift::reading {
namespace {

constexpr std::array kNumbers{&Core::low, &Core::high, &Core::least, &Core::greatest};

// Measurements and counts.
class AmountReader : CoreReader {
 public:
  using CoreReader::CoreReader;

  std::vector<Measure> amounts(Index at) const {
    struct Piece {
      std::vector<Core> cores;
      LeadIn words;
      std::optional<Core> second_bound;  // "more than 3 but less than 5"
      LeadIn second_words;
      std::string dimension;
      bool share{false};  // see Measure
      bool times{false};  // "0.5× article 1"
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
      if (times_behind(j) && !amount_follows(j + 1)) {
        piece.times = true;
        ++j;
      }
      piece.share = piece.times || begins_share(j, *core);
      take_dimension(j, piece.dimension);
      take_bound_behind(j, piece.cores.back());
      if (piece.words.bound != Bound::none) {
        take_second_bound(j, piece.words.bound, piece.second_bound, piece.second_words);
        take_dimension(j, piece.dimension);
      }
      piece.end = j;
      pieces.push_back(std::move(piece));
      if (((times_sign(j) || word(j, "by")) && amount_follows(j + 1)) || slash_before_side(j)) {
        i = j + 1;
        continue;
      }
      break;
    }
    std::vector<Measure> measures;
    if (pieces.empty()) return measures;
    std::optional<CanonicalUnit> shared;
    bool whole = true;
    for (auto const& piece : pieces) {
      for (auto const& core : piece.cores) {
        if (core.unit) shared = core.unit;
        whole = whole && is_whole(core);
      }
      whole = whole && (!piece.second_bound || is_whole(*piece.second_bound));
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
      measure.share = piece.share && !own;
      // "Hairs of two lengths" are counted.
      bool const has_dimension = !measure.dimension.empty() && !text_.info[at].is(kNumeral);
      bool const counts = whole && !has_dimension && !piece.times;
      measure.unit = own ? own->unit : counts ? "1" : "";
      measure.unit_printed = own.has_value();
      measure.factor = own ? own->factor : 1;
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

 private:
  // What has a decimal part counts nothing.
  static bool is_whole(Core const& core) {
    return std::all_of(kNumbers.begin(), kNumbers.end(),
                       [&](auto const number) { return std::trunc(core.*number) == core.*number; });
  }

  // "Spores 8-10/5-6 µm": a side follows if it has the unit of both.
  [[nodiscard]] bool slash_before_side(Index at) const {
    if (!sign(at, U'/') || !number(at + 1)) return false;
    auto side = at + 1;
    auto const core = core_at(side);
    return core && core->unit;
  }

  // "0.5×", "0.5 ×", "2x"
  [[nodiscard]] bool times_behind(Index at) const {
    return sign(at, 0xD7) || (word(at, "x") && !text_.tokens[at].blank_before);
  }

  // "1/6 of diameter" is a part of it; "depth 3.2 in length" goes into it so many times, as fish
  // are measured, unless it wants a unit.
  [[nodiscard]] bool begins_share(Index at, Core const& core) const {
    if (core.unit || !usable(at + 1)) return false;
    if (is(at, kOf)) {
      auto const next = is(at + 1, kArticle) ? at + 2 : at + 1;
      return core.greatest <= 1 && usable(next) && !text_.info[next].dimension.empty();
    }
    return word(at, "in") && text_.info[at + 1].dimension == "length";
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
      LeadIn words;
      if (auto const behind = lead_in(j, words); words.bound != Bound::none || behind != j) return;
      auto const next = core_at(j);
      if (!next) return;
      more.push_back(*next);
      i = j;
    }
    cores = std::move(more);
    at = i;
  }

  // "5 cm long or longer", "5 cm long at most"
  void take_bound_behind(Index& at, Core& core) const {
    for (auto const& phrase : qualifiers_at(text_, at, stop_)) {
      // "5 cm long at most"
      bool const most = phrase.meaning.sense == Sense::at_most && word(at, "at");
      bool const least = phrase.meaning.sense == Sense::at_least && word(at, "at");
      if ((most || least) && !amount_follows(phrase.end)) {
        core.or_more = least;
        core.or_less = most;
        at = phrase.end;
        return;
      }
      if (!is(at, kOr)) continue;
      if (phrase.meaning.sense == Sense::or_more || phrase.meaning.sense == Sense::or_less) {
        core.or_more = phrase.meaning.sense == Sense::or_more;
        core.or_less = !core.or_more;
        at = phrase.end;
        return;
      }
    }
  }

  void take_second_bound(Index& at, Bound first, std::optional<Core>& core, LeadIn& words) const {
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
    // "10–30 cm, rarely to 50 cm, high"
    if (sign(i, U',') && usable(i + 1) && !text_.info[i + 1].dimension.empty() &&
        (i + 2 >= stop_ || !text_.is_content(i + 2))) {
      ++i;
    }
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
};

}  // namespace

std::vector<Measure> amounts_at(LeadText const& text, std::uint32_t at, std::uint32_t stop) {
  return AmountReader{text, stop}.amounts(at);
}

}  // namespace keydrift::reading

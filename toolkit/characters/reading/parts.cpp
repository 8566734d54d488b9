#include "keydrift/characters/reading/parts.hpp"
#include "keydrift/key/sort_stably.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

bool is_numeric(LeadText const& text, Index at) {
  return text.tokens[at].kind == TokenKind::number || text.info[at].is(kNumeral);
}

bool is_parting_comma(LeadText const& text, Clause const& clause, Index at) {
  if (!text.is_sign(at, U',') || text.tokens[at].formula) return false;
  // "flat or, less often, grooved"
  if (at > clause.begin && text.info[at - 1].is(kOr)) return false;
  auto before = at;
  while (before > clause.begin && text.roles[before - 1] == Role::hedge) --before;
  if (before < at && before > clause.begin + 1 && text.is_sign(before - 1, U',') &&
      text.info[before - 2].is(kOr)) {
    return false;
  }
  bool const between_numbers = at > clause.begin && at + 1 < clause.end &&
                               is_numeric(text, at - 1) && is_numeric(text, at + 1);
  return !between_numbers;
}

}  // namespace

std::vector<std::uint32_t> tokens_of(Segment const& segment) {
  std::vector<Index> tokens;
  for (auto const& part : segment.parts) {
    tokens.insert(tokens.end(), part.tokens.begin(), part.tokens.end());
  }
  std::sort(tokens.begin(), tokens.end());
  return tokens;
}

std::vector<std::uint32_t> stretches(LeadText const& text, Clause const& clause) {
  std::vector<Index> numbers(clause.end - clause.begin);
  Index latest = 0;
  Index outer = 0;  // the stretch that goes on behind a parenthesis
  int depth = 0;
  for (auto i = clause.begin; i < clause.end; ++i) {
    auto& number = numbers[i - clause.begin];
    if (text.opens(i)) {
      // A parenthesis that touches a number is part of it.
      bool const numeric =
          (i > clause.begin && is_numeric(text, i - 1)) ||
          (text.partner[i] + 1 < clause.end && is_numeric(text, text.partner[i] + 1));
      if (!numeric && depth == 0) {
        number = ++latest;
        depth = 1;
        auto const close = text.partner[i];
        for (auto j = i; j < close; ++j) {
          if (is_parting_comma(text, clause, j)) ++latest;
          numbers[j - clause.begin] = latest;
        }
        numbers[close - clause.begin] = latest;
        i = close;
        depth = 0;
        continue;
      }
    }
    if (is_parting_comma(text, clause, i)) outer = ++latest;
    number = outer;
  }
  return numbers;
}

namespace {

class Cutter {
 public:
  Cutter(LeadText const& text, Clause const& clause, std::vector<Hedge> const& hedges)
      : text_{text}, clause_{clause}, hedges_{hedges} {}

  std::vector<Segment> run() {
    begin_segment(clause_.begin, false);
    for (auto i = clause_.begin; i < clause_.end; ++i) {
      auto const role = text_.roles[i];
      if (role == Role::figure || role == Role::note || role == Role::exception ||
          role == Role::limit) {
        continue;
      }
      if (role == Role::hedge && text_.opens(i)) {
        i = text_.partner[i];
        continue;
      }
      if (text_.is_word(i, "either") || text_.is_word(i, "entweder") || text_.is_word(i, "soit")) {
        either_ = true;
      }
      if (role == Role::open) {
        if (text_.opens(i)) {
          i = parenthesis(i);
          continue;
        }
        if (is_parting_comma(text_, clause_, i)) {
          comma(i);
          continue;
        }
        if (is_or(i)) {
          if (either_) either_ = false;
          begin_part(i);
          if (text_.is_word(i)) add(i);
          continue;
        }
        if (text_.tokens[i].kind == TokenKind::sign && !text_.tokens[i].formula) continue;
      }
      add(i);
    }
    drop_empty();
    return std::move(segments_);
  }

 private:
  void begin_segment(Index at, bool parenthesis) {
    segments_.push_back({.parts = {}, .parenthesis = parenthesis});
    begin_part(at);
  }
  void begin_part(Index at) {
    auto& part = segments_.back().parts.emplace_back();
    part.first = part.last = at;
    constexpr Index kUsual = 8;
    part.tokens.reserve(std::min(clause_.end - clause_.begin, kUsual));
  }
  void add(Index at) {
    auto& part = segments_.back().parts.back();
    part.tokens.push_back(at);
    part.last = at;
  }

  bool is_or(Index at) const {
    if (text_.tokens[at].formula) return false;
    if (text_.is_word(at) && text_.info[at].is(kOr)) return true;
    // "white/yellow"
    if (!text_.is_sign(at, U'/') || at == clause_.begin || at + 1 >= clause_.end) return false;
    if (text_.tokens[at].blank_before || text_.tokens[at + 1].blank_before) return false;
    return text_.is_word(at - 1) && text_.is_word(at + 1) && !text_.info[at - 1].is(kAnd) &&
           text_.info[at - 1].dimension.empty() && !is_quotient(at);
  }

  // "vertex/eye ratio 0.75", "HL/HW 1.2"
  bool is_quotient(Index slash) const {
    auto const next = slash + 2;
    if (next >= clause_.end) return false;
    if (text_.is_sign(next, U'=')) return true;
    if (text_.is_word(next)) return text_.is_ratio_word(next);
    auto const& number = text_.tokens[next];
    return number.kind == TokenKind::number && std::trunc(number.value) != number.value;
  }

  bool hedge_begins(Index at) const {
    return at < clause_.end && text_.roles[at] == Role::hedge &&
           std::any_of(hedges_.begin(), hedges_.end(), [&](Hedge const& hedge) {
             return hedge.begin == at && hedge.kind == HedgeKind::minority;
           });
  }
  // The stretch up to the next comma or end names no part of its own: an alternative, no statement.
  bool names_no_part(Index at) const {
    for (auto i = at; i < clause_.end && !is_parting_comma(text_, clause_, i); ++i) {
      if (text_.is_open(i) && text_.info[i].is(kPart)) return false;
    }
    return true;
  }

  void comma(Index at) {
    auto const next = at + 1;
    if (next >= clause_.end) return;
    if (text_.is_word(next) && text_.info[next].is(kOr)) return;  // the "or" joins
    if (either_) {
      begin_part(at);
      return;
    }
    if (hedge_begins(next) && names_no_part(next)) {
      begin_part(at);
      return;
    }
    begin_segment(at, false);
  }

  Index parenthesis(Index open) {
    auto const close = text_.partner[open];
    bool const alternative =
        close > open + 1 && ((text_.is_word(open + 1) && text_.info[open + 1].is(kOr)) ||
                             (hedge_begins(open + 1) && names_no_part(open + 1)));
    auto const outer = segments_.size() - 1;
    auto const outer_part = segments_[outer].parts.size() - 1;
    if (alternative) {
      begin_part(open);
    } else {
      inside_.push_back({.parts = {}, .parenthesis = true});
      inside_.back().parts.push_back({.tokens = {}, .first = open, .last = close});
    }
    for (auto i = open + 1; i < close; ++i) {
      auto const role = text_.roles[i];
      if (role == Role::figure || role == Role::note || role == Role::exception ||
          role == Role::limit) {
        continue;
      }
      bool const sign =
          role == Role::open && text_.tokens[i].kind == TokenKind::sign && !text_.tokens[i].formula;
      bool const or_word = role == Role::open && is_or(i);
      if (or_word && !(alternative && i == open + 1)) {
        auto& parts = alternative ? segments_.back().parts : inside_.back().parts;
        parts.push_back({.tokens = {}, .first = i, .last = i});
        if (text_.is_word(i)) parts.back().tokens.push_back(i);
        continue;
      }
      if (!alternative && role == Role::open && is_parting_comma(text_, clause_, i)) {
        inside_.push_back({.parts = {}, .parenthesis = true});
        inside_.back().parts.push_back({.tokens = {}, .first = i, .last = i});
        continue;
      }
      if (sign || (or_word && !text_.is_word(i))) continue;
      auto& part = alternative ? segments_.back().parts.back() : inside_.back().parts.back();
      part.tokens.push_back(i);
      part.last = std::max(part.last, i);
    }
    if (alternative) {
      // What follows goes on with the part in front of the parenthesis.
      auto& parts = segments_[outer].parts;
      parts.back().last = close;
      bool more = false;
      for (auto i = close + 1; i < clause_.end && !is_parting_comma(text_, clause_, i); ++i) {
        more = more || text_.is_content(i) || text_.roles[i] == Role::state;
      }
      if (more) {
        // Keep the outer part last so that it takes what follows.
        std::rotate(parts.begin() + static_cast<std::ptrdiff_t>(outer_part),
                    parts.begin() + static_cast<std::ptrdiff_t>(outer_part) + 1, parts.end());
      }
    }
    return close;
  }

  void drop_empty() {
    // Parenthesised stretches come behind the segment they stand in.
    std::vector<Segment> ordered;
    for (auto& segment : segments_) ordered.push_back(std::move(segment));
    for (auto& segment : inside_) ordered.push_back(std::move(segment));
    for (auto& segment : ordered) {
      std::erase_if(segment.parts, [&](Part const& part) {
        return std::all_of(part.tokens.begin(), part.tokens.end(), [&](Index token) {
          return text_.is_open(token) && text_.info[token].is(kOr);
        });
      });
    }
    std::erase_if(ordered, [](Segment const& segment) { return segment.parts.empty(); });
    sort_stably(ordered, [](Segment const& a, Segment const& b) {
      return a.parts.front().first < b.parts.front().first;
    });
    segments_ = std::move(ordered);
  }

  LeadText const& text_;
  Clause const& clause_;
  std::vector<Hedge> const& hedges_;
  std::vector<Segment> segments_;
  std::vector<Segment> inside_;
  bool either_{false};
};

}  // namespace

std::vector<Segment> cut(LeadText const& text, Clause const& clause,
                         std::vector<Hedge> const& hedges) {
  return Cutter{text, clause, hedges}.run();
}

}  // namespace keydrift::reading

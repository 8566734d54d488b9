#include "keydrift/characters/reading/drafting.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

#include "keydrift/characters/reading/pieces.hpp"
#include "keydrift/characters/reading/plain_words.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

class Drafting {
 public:
  Drafting(LeadText const& text, Clause const& clause, std::vector<Group>& groups,
           Qualifiers const& found, Carried& carried, ClauseMatches const* matches)
      : text_{text},
        clause_{clause},
        groups_{groups},
        found_{found},
        carried_{carried},
        matches_{matches} {}

  std::vector<Draft> run() {
    assign_tokens();
    std::vector<Draft> drafts;
    drafts.reserve(groups_.size());
    for (auto& group : groups_) append(group, drafts);
    return drafts;
  }

 private:
  // Every token of the clause belongs to the group in front of it; what stands before the first
  // group belongs to that.
  void assign_tokens() {
    groups_.front().first = clause_.begin;
    for (std::size_t g = 0; g + 1 < groups_.size(); ++g) {
      auto const next = groups_[g + 1].first;
      if (groups_[g].last + 1 < next || groups_[g].last < groups_[g].first) {
        groups_[g].last = next - 1;
      }
    }
    groups_.back().last = clause_.end - 1;
  }

  // Takes the words and atoms of the group.
  void append(Group& group, std::vector<Draft>& drafts) {
    Draft draft;
    auto first = group.first;
    auto last = group.last;
    trim(first, last);
    draft.begin = text_.tokens[first].begin;
    draft.end = text_.tokens[last].end;
    qualify(group, draft);
    draft.whole = std::move(group.whole);
    draft.rest = std::move(group.rest);
    draft.stems.reserve(last - first + 1);
    for (auto i = first; i <= last; ++i) {
      if (!text_.is_word(i) || text_.info[i].is(kFunction)) continue;
      if (text_.roles[i] == Role::open || text_.roles[i] == Role::state ||
          text_.roles[i] == Role::number) {
        draft.stems.push_back(singular(text_.tokens[i].word));
      }
    }
    auto const tokens = run(first, last);
    auto const subject = subject_tokens(text_, tokens);
    draft.subject = singular_words(words_of_subject(subject, tokens));
    draft.origin = origin_of(group);
    draft.pieces = pieces_of(text_, first, last, draft.origin, subject, found_, matches_);
    if (draft.origin == Origin::number) draft.plain = plain(tokens);
    auto products = conjunction(std::move(group));
    for (auto& product : products) {
      auto one = &product == &products.back() ? std::move(draft) : draft;
      one.any_of = std::move(product);
      if (one.only && one.any_of.size() == 1) {
        auto& atom = one.any_of.front().atom;
        atom.negated = !atom.negated;
      }
      drafts.push_back(std::move(one));
    }
  }

  static std::vector<Index> run(Index first, Index last) {
    std::vector<Index> tokens(last - first + 1);
    std::iota(tokens.begin(), tokens.end(), first);
    return tokens;
  }

  [[nodiscard]] std::string words_of_subject(std::vector<Index> const& subject,
                                             std::vector<Index> const& tokens) const {
    if (subject.empty() && !names_subject(text_, tokens, false)) return carried_.subject;
    return words_at(text_, subject);
  }

  [[nodiscard]] std::string plain(std::vector<Index> const& tokens) const {
    return plain_words(text_, tokens,
                       names_subject(text_, tokens, false) ? std::string{} : carried_.subject);
  }

  // Separators at both ends are no part of a statement.
  void trim(Index& first, Index& last) const {
    auto const separator = [&](Index i) {
      if (text_.tokens[i].kind != TokenKind::sign) return false;
      auto const sign = text_.tokens[i].sign;
      return sign == U',' || sign == U';' || sign == U'.' || sign == U':';
    };
    while (first < last && separator(first)) ++first;
    while (last > first && separator(last)) --last;
    while (first < last && text_.is_word(first) && text_.info[first].is(kAnd) &&
           first > clause_.begin) {
      ++first;
    }
    // "(when dry" gives its parenthesis back.
    if (text_.opens(first) && text_.partner[first] == last && last > first + 1) {
      ++first;
      --last;
    }
  }

  void qualify(Group const& group, Draft& draft) {
    auto const inside = [&](Index begin) { return begin >= group.first && begin <= group.last; };
    bool front = false;
    bool always = false;
    bool inner = std::any_of(
        group.alternatives.begin(), group.alternatives.end(), [](auto const& alternative) {
          return std::any_of(alternative.begin(), alternative.end(),
                             [](Cluster const& cluster) { return cluster.or_rarely; });
        });
    for (auto const& hedge : found_.hedges) {
      // "if a raceme, then pedicels long"
      bool const consequence = hedge.kind == HedgeKind::condition && hedge.begin < group.first &&
                               begins_with_then(group);
      if (!inside(hedge.begin) && !consequence) continue;
      bool const frequency = hedge.kind == HedgeKind::majority || hedge.kind == HedgeKind::minority;
      if (frequency && group.alternatives_begin && hedge.begin + 1 >= *group.alternatives_begin) {
        inner = true;
        continue;
      }
      (frequency ? front : always) = true;
      if (!draft.hedge.empty()) draft.hedge += ", ";
      draft.hedge += hedge.words;
    }
    // "usually flat, rarely rolled" admits both, and nothing else.
    if (always || (front && !inner)) {
      draft.strength = Strength::hedged;
    } else {
      draft.hedge.clear();
    }
    for (auto const& exception : found_.exceptions) {
      if (!inside(exception.begin + 1) || !belongs(exception, group)) continue;
      if (draft.strength == Strength::firm) draft.strength = Strength::excepted;
      draft.only = draft.only || exception.only;
      draft.except.insert(draft.except.end(), exception.groups.begin(), exception.groups.end());
      if (!draft.exception_words.empty()) draft.exception_words += ", ";
      draft.exception_words += exception.words;
    }
    draft.limits = carried_.limits;
    for (auto const& limit : found_.limits) {
      if (!inside(limit.begin)) continue;
      add_limit(draft.limits, limit.limit);
      if (limit.heading) add_limit(carried_.limits, limit.limit);
    }
    if (clause_.noted) draft.strength = Strength::noted;
    for (auto const& alternative : group.alternatives) {
      for (auto const& cluster : alternative) {
        draft.backwards = draft.backwards || cluster.backwards;
        draft.unitless = draft.unitless || cluster.unitless;
      }
    }
  }

  [[nodiscard]] bool begins_with_then(Group const& group) const {
    for (auto i = group.first; i <= std::min(group.first + 1, group.last); ++i) {
      if (text_.is_word(i, "then") || text_.is_word(i, "dann") || text_.is_word(i, "alors")) {
        return true;
      }
    }
    return false;
  }

  // ", except in Aus" behind a statement is an exception to that, even where another one follows
  // without a comma.
  [[nodiscard]] bool belongs(Exception const& exception, Group const& group) const {
    if (&group == &groups_.front()) return true;
    for (auto i = group.first; i < exception.begin; ++i) {
      if (text_.is_word(i) && text_.roles[i] != Role::exception) return true;
    }
    return false;
  }

  // A later limit of the same kind takes the place of an earlier one.
  static void add_limit(std::vector<Limit>& limits, Limit const& limit) {
    std::erase_if(limits, [&](Limit const& known) { return known.kind == limit.kind; });
    limits.push_back(limit);
  }

  LeadText const& text_;
  Clause const& clause_;
  std::vector<Group>& groups_;
  Qualifiers const& found_;
  Carried& carried_;
  ClauseMatches const* matches_;
};

}  // namespace

std::vector<Draft> make_drafts(LeadText const& text, Clause const& clause,
                               std::vector<Group>& groups, Qualifiers const& found,
                               Carried& carried, ClauseMatches const* matches) {
  return Drafting{text, clause, groups, found, carried, matches}.run();
}

}  // namespace keydrift::reading

#include "keydrift/characters/reading/clause_reader.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/characters/reading/drafting.hpp"
#include "keydrift/characters/reading/groups.hpp"
#include "keydrift/characters/reading/matches.hpp"
#include "keydrift/characters/reading/number_words.hpp"
#include "keydrift/characters/reading/parts.hpp"
#include "keydrift/characters/reading/plain_words.hpp"
#include "keydrift/characters/reading/segment_items.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

class ClauseReader {
 public:
  ClauseReader(LeadText& text, Clause const& clause, ReadingRules const& rules, Carried& carried)
      : text_{text}, clause_{clause}, rules_{rules}, carried_{carried} {}

  ClauseReading run() {
    // No statement of ordinary prose is as long; what is, is taken as it stands.
    static constexpr Index kLongest = 600;
    ClauseReading reading;
    if (clause_.end - clause_.begin > kLongest) {
      Group group;
      group.first = clause_.begin;
      group.last = clause_.end - 1;
      auto const words = plain_words(text_, all_tokens(), "");
      if (!words.empty()) {
        group.alternatives = {{opaque_cluster(words, false, group.first, group.last)}};
        groups_.push_back(std::move(group));
      }
    } else {
      read();
    }
    if (groups_.empty()) {
      keep_heading();
    }
    if (groups_.empty()) {
      reading.loose = std::move(found_);
      return reading;
    }
    reading.drafts = make_drafts(text_, clause_, groups_, found_, carried_, items_.matches);
    for (auto& draft : reading.drafts) draft.anaphora = anaphora_;
    return reading;
  }

 private:
  // --- reading --------------------------------------------------------------------------------

  void read() {
    stretches_ = stretches(text_, clause_);
    auto& matches = matches_.emplace(text_, clause_, *rules_.lexicon, stretches_);
    auto const covered = matches.covered();
    find_exceptions_and_limits(text_, clause_, *rules_.genera, covered, found_);
    if (read_anaphora()) return;
    find_hedges(text_, clause_, covered, found_);
    items_.matches = &matches;
    items_.states = matches.states(carried_.rows);
    find_measures();
    drop_numbers(text_, found_.hedges);
    auto const segments = cut(text_, clause_, found_.hedges);
    for (std::size_t s = 0; s < segments.size(); ++s) {
      if (s + 1 < segments.size() && is_heading(segments[s])) {
        // "Beak, if present, bifid": names what the rest speaks of.
        heading_ = true;
        carry(segments[s]);
        carried_.subject = plain_words(text_, tokens_of(segments[s]), "");
        continue;
      }
      read_segment(segments, s);
    }
  }

  std::vector<Index> all_tokens() const {
    std::vector<Index> tokens;
    for (auto i = clause_.begin; i < clause_.end; ++i) tokens.push_back(i);
    return tokens;
  }

  // "Not as above", "without this combination of characters".
  bool read_anaphora() {
    auto first = clause_.begin;
    while (first < clause_.end && !text_.is_word(first)) ++first;
    Index end = first;
    for (auto const& phrase : qualifiers_at(text_, first, clause_.end)) {
      if (phrase.meaning.sense == Sense::anaphora) end = phrase.end;
    }
    if (end == first) return false;
    for (auto i = end; i < clause_.end; ++i) {
      if (text_.is_content(i) || text_.tokens[i].kind == TokenKind::number) return false;
    }
    Group group;
    group.first = clause_.begin;
    group.last = clause_.end - 1;
    group.alternatives = {
        {opaque_cluster(plain_words(text_, all_tokens(), ""), false, group.first, group.last)}};
    groups_.push_back(std::move(group));
    anaphora_ = true;
    return true;
  }

  void find_measures() {
    for (auto i = clause_.begin; i < clause_.end;) {
      bool const free = text_.is_open(i) || text_.roles[i] == Role::hedge;
      if (!free || !may_begin_measure(text_, i)) {
        ++i;
        continue;
      }
      auto found = measures_at(text_, i, clause_.end);
      if (found.empty()) {
        ++i;
        continue;
      }
      if (!counts_or_measures(text_, clause_, found.front())) {
        i = found.front().end;
        continue;
      }
      text_.give(found.front().begin, found.front().end, Role::number);
      i = found.front().end;
      items_.measures.push_back(std::move(found));
    }
  }

  // --- segments -------------------------------------------------------------------------------

  void read_segment(std::vector<Segment> const& segments, std::size_t at) {
    auto const& segment = segments[at];
    if (has_items(text_, segment)) {
      read_known(segment);
    } else {
      read_opaque(segments, at);
    }
    carry(segment);
  }

  void carry(Segment const& segment) {
    auto const stretch = stretches_[segment.parts.front().first - clause_.begin];
    if (auto rows = items_.matches->rows_named(stretch); !rows.empty()) {
      carried_.rows = std::move(rows);
    }
  }

  // Nothing but the name of a part.
  [[nodiscard]] bool is_heading(Segment const& segment) const {
    if (segment.parenthesis || segment.parts.size() > 1 || has_items(text_, segment)) return false;
    std::size_t names = 0;
    for (auto const token : segment.parts.front().tokens) {
      if (!text_.is_content(token)) continue;
      if (!text_.info[token].is(kPart) && !items_.matches->in_subject(token)) return false;
      ++names;
    }
    return names > 0;
  }

  // Headings without anything behind them are all there is.
  void keep_heading() {
    auto words = plain_words(text_, all_tokens(), "");
    if (words.empty() || !heading_) return;
    Group group;
    group.first = clause_.begin;
    group.last = clause_.end - 1;
    group.alternatives = {
        {opaque_cluster(std::move(words), false, clause_.begin, clause_.end - 1)}};
    groups_.push_back(std::move(group));
  }

  // --- opaque ---------------------------------------------------------------------------------

  void read_opaque(std::vector<Segment> const& segments, std::size_t at) {
    auto const& segment = segments[at];
    auto const tokens = tokens_of(segment);
    auto const first = segment.parts.front().first;
    auto const last = segment.parts.back().last;
    bool const content = std::any_of(tokens.begin(), tokens.end(), [&](Index token) {
      return text_.is_content(token) || text_.tokens[token].kind == TokenKind::number;
    });
    if (!content) {
      if (!groups_.empty()) groups_.back().last = std::max(groups_.back().last, last);
      return;
    }
    bool const either = std::any_of(tokens.begin(), tokens.end(),
                                    [&](Index token) { return is_either(text_, token); });
    if (!groups_.empty() && !previous_opaque_ && is_mere_phrase(text_, segment)) {
      // ", at the tip of the stem": a circumstance of what was read.
      auto& group = groups_.back();
      for (auto const token : tokens) {
        if (text_.is_content(token)) group.rest.push_back(text_.tokens[token].word);
      }
      group.whole += ' ' + plain_words(text_, tokens, "");
      group.last = std::max(group.last, last);
      return;
    }
    if (!groups_.empty() && previous_opaque_ && !has_own_limit(segment) && !either &&
        joins_previous(text_, segments, at, previous_opaque_at_)) {
      join_opaque(segment);
      return;
    }
    bool const sentence = at == 0 && clause_.begins_sentence;
    auto const subject =
        sentence || names_subject(text_, tokens, at == 0) ? std::string{} : carried_.subject;
    Group group;
    group.first = first;
    group.last = last;
    if (either && segment.parts.size() > 1) {
      for (auto const& part : segment.parts) {
        bool negated = false;
        auto const own =
            names_subject(text_, part.tokens, false) ? std::string{} : carried_.subject;
        auto words = plain_words(text_, part.tokens, own, &negated);
        if (words.empty()) continue;
        group.alternatives.push_back(
            {opaque_cluster(std::move(words), negated, part.first, part.last)});
        remember_subject(part.tokens);
      }
      group.alternatives_begin = std::nullopt;
    } else {
      bool negated = false;
      auto words = plain_words(text_, tokens, subject, &negated);
      group.alternatives = {{opaque_cluster(std::move(words), negated, first, last)}};
      if (segment.parts.size() > 1) group.alternatives_begin = segment.parts[1].first;
    }
    groups_.push_back(std::move(group));
    previous_opaque_ = true;
    previous_opaque_at_ = at;
    opaque_tokens_ = tokens;
    opaque_subject_ = subject;
    remember_subject(tokens);
  }

  // "(rolled when dry)" speaks of dried material only.
  [[nodiscard]] bool has_own_limit(Segment const& segment) const {
    auto const stretch = stretches_[segment.parts.front().first - clause_.begin];
    return std::any_of(found_.limits.begin(), found_.limits.end(), [&](FoundLimit const& limit) {
      return stretches_[limit.begin - clause_.begin] == stretch;
    });
  }

  void join_opaque(Segment const& segment) {
    auto const tokens = tokens_of(segment);
    opaque_tokens_.insert(opaque_tokens_.end(), tokens.begin(), tokens.end());
    std::sort(opaque_tokens_.begin(), opaque_tokens_.end());
    auto& group = groups_.back();
    bool negated = false;
    auto words = plain_words(text_, opaque_tokens_, opaque_subject_, &negated);
    group.last = std::max(group.last, segment.parts.back().last);
    group.alternatives = {{opaque_cluster(std::move(words), negated, group.first, group.last)}};
    if (!group.alternatives_begin) group.alternatives_begin = segment.parts.front().first;
  }

  void remember_subject(std::vector<Index> const& tokens) {
    if (auto subject = subject_words(text_, tokens); !subject.empty()) {
      carried_.subject = std::move(subject);
    }
  }

  // --- items ----------------------------------------------------------------------------------

  void read_known(Segment const& segment) {
    auto made = read_items(text_, clause_, segment, items_, rules_, carried_);
    for (std::size_t i = 0; i < made.size(); ++i) {
      bool const may_continue = i == 0 && !groups_.empty() && !has_own_limit(segment);
      if (may_continue && continues_list(groups_.back(), made[i])) continue;
      groups_.push_back(std::move(made[i]));
    }
    previous_opaque_ = false;
    remember_subject(tokens_of(segment));
  }

  LeadText& text_;
  Clause const& clause_;
  ReadingRules const& rules_;
  Carried& carried_;
  Qualifiers found_;
  std::vector<Index> stretches_;
  std::optional<ClauseMatches> matches_;
  Found items_;
  std::vector<Group> groups_;
  bool anaphora_{false};
  bool heading_{false};
  bool previous_opaque_{false};
  std::size_t previous_opaque_at_{};
  std::vector<Index> opaque_tokens_;
  std::string opaque_subject_;
};

}  // namespace

ClauseReading read_clause(LeadText& text, Clause const& clause, ReadingRules const& rules,
                          Carried& carried) {
  return ClauseReader{text, clause, rules, carried}.run();
}

}  // namespace keydrift::reading

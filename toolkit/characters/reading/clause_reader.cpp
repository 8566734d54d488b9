#include "keydrift/characters/reading/clause_reader.hpp"

#include <algorithm>
#include <array>
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
    carried_.subject_is_near = false;
    // No statement of ordinary prose is as long; what is, is taken as it stands.
    static constexpr Index kLongest = 600;
    ClauseReading reading;
    if (clause_.end - clause_.begin > kLongest) {
      Group group;
      group.first = clause_.begin;
      group.last = clause_.end - 1;
      auto const words = plain_words(text_, all_tokens(), "");
      if (!words.empty()) {
        group.consists_of(opaque_cluster(words, false, group.first, group.last));
        groups_.push_back(std::move(group));
      }
    } else {
      read();
    }
    if (groups_.empty()) {
      keep_heading();
    }
    read_conditions();
    if (groups_.empty()) {
      reading.loose = std::move(found_);
      return reading;
    }
    reading.drafts = make_drafts(text_, clause_, groups_, found_, carried_, items_.matches);
    for (auto& draft : reading.drafts) {
      draft.anaphora = anaphora_;
      for (auto& atom : draft.any_of) settle_presence(atom.atom);
    }
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
        carried_.subject_is_near = true;
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
    group.consists_of(
        opaque_cluster(plain_words(text_, all_tokens(), ""), false, group.first, group.last));
    groups_.push_back(std::move(group));
    anaphora_ = true;
    return true;
  }

  void find_measures() {
    for (auto i = clause_.begin; i < clause_.end;) {
      bool const free = text_.is_open(i) || text_.roles[i] == Role::hedge;
      if (!free || text_.tokens[i].formula || !may_begin_measure(text_, i)) {
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
    for (auto i = items_.measures.size(); i-- > 1;) {
      share_unit(items_.measures[i].front(), items_.measures[i - 1].front());
    }
  }

  // "Male 3.5–4.2, female 4.0–5.1 mm": the unit is of both, if nothing but the sex stands between.
  void share_unit(Measure const& from, Measure& to) const {
    if (!from.unit_printed || from.ratio || to.unit_printed || to.ratio) return;
    bool named = false;
    for (auto i = to.end; i < from.begin; ++i) {
      bool const joins = text_.is_sign(i, U',') || (text_.is_word(i) && text_.info[i].is(kAnd));
      bool const sex = names_sex(i);
      if (!joins && !sex) return;
      named = named || sex;
    }
    if (!named) return;
    to.unit = from.unit;
    to.unit_printed = true;
    to.factor = from.factor;
    for (auto& range : to.ranges) range = scaled(range, from.factor);
  }

  [[nodiscard]] bool names_sex(Index at) const {
    if (text_.roles[at] == Role::limit) return true;
    auto const phrases = qualifiers_at(text_, at, at + 1);
    return std::any_of(phrases.begin(), phrases.end(), [](Phrased const& phrase) {
      return phrase.meaning.sense == Sense::sex || phrase.meaning.sense == Sense::life_stage;
    });
  }

  // "Never absent": present.
  void settle_presence(Atom& atom) const {
    if (!atom.negated || atom.states.size() != 1 || atom.character.empty()) return;
    auto const& lexicon = *rules_.lexicon;
    auto const row = lexicon.row_of(lexicon.lexicon().find(atom.character));
    if (!row) return;
    auto const& states = lexicon.character(*row).states;
    auto const state = lexicon.find_state(*row, atom.states.front());
    auto const other = state ? lexicon.opposite_presence(*row, *state) : std::nullopt;
    if (!other) return;
    atom.states = {states[*other].id};
    atom.negated = false;
  }

  // --- conditions -----------------------------------------------------------------------------

  // "If fruit beaked, then beak bifid": not beaked, or bifid.  "Beak, if present, bifid": bifid, or
  // there is none, where the lexicon says when the character applies.  What neither fits stays
  // hedged.
  void read_conditions() {
    for (auto hedge = found_.hedges.begin(); hedge != found_.hedges.end();) {
      if (hedge->kind == HedgeKind::condition && (implies(*hedge) || when_present(*hedge))) {
        hedge = found_.hedges.erase(hedge);
      } else {
        ++hedge;
      }
    }
  }

  static bool is_one_predicate(Group const& group) {
    return group.alternatives.size() == 1 && group.alternatives[0].size() == 1 &&
           group.alternatives[0][0].all.size() == 1 && !group.alternatives[0][0].all[0].opaque;
  }

  bool implies(Hedge const& hedge) {
    static constexpr std::array<std::string_view, 6> kIfs{"if",     "wenn", "falls",
                                                          "sofern", "si",   "se"};
    auto const& word = text_.tokens[hedge.begin].word;
    bool const bare =
        hedge.end == hedge.begin + 1 && std::find(kIfs.begin(), kIfs.end(), word) != kIfs.end();
    if (!bare || groups_.size() < 2 || !is_one_predicate(groups_.front())) return false;
    for (auto i = clause_.begin; i < hedge.begin; ++i) {
      if (text_.is_word(i)) return false;
    }
    auto condition = groups_.front().alternatives[0][0];
    auto& atom = condition.all[0].atom;
    atom.negated = !atom.negated;
    groups_.erase(groups_.begin());
    for (auto& group : groups_) group.alternatives.insert(group.alternatives.begin(), {condition});
    groups_.front().first = clause_.begin;
    return true;
  }

  // "Wings absent or, if present, clear" says it all.
  [[nodiscard]] bool admits_absence(Group const& group) const {
    if (group.alternatives.size() < 2) return false;
    return std::any_of(
        group.alternatives.begin(), group.alternatives.end(), [&](auto const& alternative) {
          if (alternative.size() != 1 || !alternative[0].row) return false;
          auto const& atom = alternative[0].all[0].atom;
          auto const absent = rules_.lexicon->absent_state(*alternative[0].row);
          return absent && !atom.negated && atom.states.size() == 1 &&
                 atom.states[0] ==
                     rules_.lexicon->character(*alternative[0].row).states[*absent].id;
        });
  }

  bool when_present(Hedge const& hedge) {
    static constexpr std::array<std::string_view, 7> kPresent{
        "present", "vorhanden", "présent", "présente", "presente", "adest", "developed"};
    auto const& last = text_.tokens[hedge.end - 1].word;
    if (std::find(kPresent.begin(), kPresent.end(), last) == kPresent.end()) return false;
    if (groups_.empty()) return false;
    auto const at = std::find_if(groups_.begin(), groups_.end(), [&](Group const& group) {
      return hedge.begin >= group.first && hedge.end <= group.last + 1;
    });
    // What stands in front of the first group belongs to it.
    auto& group = at != groups_.end() ? *at : groups_.front();
    if (admits_absence(group)) return true;
    if (!is_one_predicate(group)) return false;
    auto const row = group.alternatives[0][0].row;
    if (!row || !rules_.lexicon->character(*row).applicable_if) return false;
    auto const& applicable = *rules_.lexicon->character(*row).applicable_if;
    auto absence = group.alternatives[0][0];
    absence.row = rules_.lexicon->row_of(rules_.lexicon->lexicon().find(applicable.character));
    DraftAtom atom;
    atom.atom.character = applicable.character;
    atom.atom.states = applicable.states;
    std::sort(atom.atom.states.begin(), atom.atom.states.end());
    atom.atom.negated = true;
    absence.all = {std::move(atom)};
    group.alternatives.push_back({std::move(absence)});
    return true;
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
    group.consists_of(opaque_cluster(std::move(words), false, clause_.begin, clause_.end - 1));
    groups_.push_back(std::move(group));
  }

  // --- opaque ---------------------------------------------------------------------------------

  void read_opaque(std::vector<Segment> const& segments, std::size_t at) {
    auto const& segment = segments[at];
    auto tokens = tokens_of(segment);
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
    auto subject =
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
      group.consists_of(opaque_cluster(std::move(words), negated, first, last));
      if (segment.parts.size() > 1) group.alternatives_begin = segment.parts[1].first;
    }
    groups_.push_back(std::move(group));
    previous_opaque_ = true;
    previous_opaque_at_ = at;
    remember_subject(tokens);
    opaque_tokens_ = std::move(tokens);
    opaque_subject_ = std::move(subject);
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
    group.consists_of(opaque_cluster(std::move(words), negated, group.first, group.last));
    if (!group.alternatives_begin) group.alternatives_begin = segment.parts.front().first;
  }

  void remember_subject(std::vector<Index> const& tokens) {
    if (auto subject = subject_words(text_, tokens); !subject.empty()) {
      carried_.subject = std::move(subject);
      carried_.subject_is_near = true;
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

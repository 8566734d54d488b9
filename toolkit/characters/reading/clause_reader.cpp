#include "keydrift/characters/reading/clause_reader.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/characters/reading/matches.hpp"
#include "keydrift/characters/reading/number_words.hpp"
#include "keydrift/characters/reading/parts.hpp"
#include "keydrift/characters/reading/plain_words.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

// What one or several neighbouring words say of one character (of two for "4–6 × 2–3 mm").
struct Cluster {
  std::vector<DraftAtom> all;
  Origin origin{Origin::opaque};
  std::optional<Index> row;  // lexicon character
  Index first{};             // tokens
  Index last{};
  bool own_subject{false};
  bool backwards{false};
  bool or_rarely{false};
};

// Alternatives, each a conjunction.
struct Group {
  std::vector<std::vector<Cluster>> alternatives;
  Index first{};
  Index last{};
  // Tokens behind which a hedge speaks of an additional alternative only.
  std::optional<Index> alternatives_begin;
  std::vector<std::string> rest;
  std::string whole;
};

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
      reading.loose = std::move(found_);
      return reading;
    }
    reading.drafts = drafts();
    return reading;
  }

 private:
  // --- reading --------------------------------------------------------------------------------

  void read() {
    stretches_ = stretches(text_, clause_);
    ClauseMatches matches{text_, clause_, *rules_.lexicon, stretches_};
    auto const covered = matches.covered();
    find_exceptions_and_limits(text_, clause_, *rules_.genera, covered, found_);
    if (read_anaphora()) return;
    auto const states = matches.states(carried_.rows);
    find_measures();
    find_hedges(text_, clause_, covered, found_);
    auto const segments = cut(text_, clause_, found_.hedges);
    for (std::size_t s = 0; s < segments.size(); ++s) {
      read_segment(segments, s, matches, states);
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
    for (auto const& phrase : qualifiers_at(text_.tokens, first, clause_.end)) {
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
      if (!text_.is_open(i) || !may_begin_measure(text_, i)) {
        ++i;
        continue;
      }
      auto found = measures_at(text_, i, clause_.end);
      if (found.empty() || !counts_or_measures(text_, clause_, found.front())) {
        ++i;
        continue;
      }
      text_.give(found.front().begin, found.front().end, Role::number);
      i = found.front().end;
      measures_.push_back(std::move(found));
    }
  }

  // --- segments -------------------------------------------------------------------------------

  static bool has_item(LeadText const& text, Part const& part) {
    return std::any_of(part.tokens.begin(), part.tokens.end(), [&](Index token) {
      return text.roles[token] == Role::state || text.roles[token] == Role::number;
    });
  }
  bool has_item(Segment const& segment) const {
    return std::any_of(segment.parts.begin(), segment.parts.end(),
                       [&](Part const& part) { return has_item(text_, part); });
  }
  static std::vector<Index> tokens_of(Segment const& segment) {
    std::vector<Index> tokens;
    for (auto const& part : segment.parts) {
      tokens.insert(tokens.end(), part.tokens.begin(), part.tokens.end());
    }
    return tokens;
  }

  void read_segment(std::vector<Segment> const& segments, std::size_t at,
                    ClauseMatches const& matches, std::vector<StateMatch> const& states) {
    auto const& segment = segments[at];
    if (has_item(segment)) {
      read_items(segment, matches, states);
    } else {
      read_opaque(segments, at);
    }
    auto const stretch = stretches_[segment.parts.front().first - clause_.begin];
    if (auto rows = matches.rows_named(stretch); !rows.empty()) carried_.rows = std::move(rows);
  }

  // --- opaque ---------------------------------------------------------------------------------

  Cluster opaque_cluster(std::string words, bool negated, Index first, Index last) const {
    DraftAtom atom;
    atom.opaque = true;
    atom.atom.states = {std::move(words)};
    atom.atom.negated = negated;
    Cluster cluster;
    cluster.all = {std::move(atom)};
    cluster.first = first;
    cluster.last = last;
    return cluster;
  }

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
    auto const subject = names_subject(text_, tokens, at == 0 && clause_.begins_sentence)
                             ? std::string{}
                             : carried_.subject;
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

  void read_items(Segment const& segment, ClauseMatches const& matches,
                  std::vector<StateMatch> const& states) {
    auto const tokens = tokens_of(segment);
    std::vector<Index> rows;
    std::vector<std::vector<Cluster>> parts;  // by part of the segment; empty where opaque
    for (auto const& part : segment.parts) {
      parts.push_back(clusters_of(part, tokens, matches, states));
      for (auto const& cluster : parts.back()) {
        if (cluster.row) rows.push_back(*cluster.row);
      }
    }
    auto const extra = unread(tokens, matches, rows);
    std::vector<Group> made;
    fold(segment, parts, made);
    if (!made.empty()) {
      made.front().whole = plain_words(text_, tokens, "");
      made.front().rest = extra.rest;
    }
    for (auto const& run : extra.statements) {
      bool negated = false;
      auto words = plain_words(text_, run, "", &negated);
      if (words.empty()) continue;
      Group group;
      group.first = run.front();
      group.last = std::max(run.back(), made.empty() ? run.back() : made.front().last);
      group.alternatives = {{opaque_cluster(std::move(words), negated, group.first, group.last)}};
      made.push_back(std::move(group));
    }
    std::stable_sort(made.begin(), made.end(),
                     [](Group const& a, Group const& b) { return a.first < b.first; });
    bool first = true;
    for (auto& group : made) {
      if (!(first && continue_list(group))) groups_.push_back(std::move(group));
      first = false;
    }
    previous_opaque_ = false;
    remember_subject(tokens);
  }

  std::vector<Cluster> clusters_of(Part const& part, std::vector<Index> const& segment_tokens,
                                   ClauseMatches const& matches,
                                   std::vector<StateMatch> const& states) {
    std::vector<Cluster> clusters;
    for (auto const& match : states) {
      if (!std::binary_search(part.tokens.begin(), part.tokens.end(), match.begin)) continue;
      clusters.push_back(state_cluster(match));
    }
    for (auto const& measures : measures_) {
      if (!std::binary_search(part.tokens.begin(), part.tokens.end(), measures.front().begin)) {
        continue;
      }
      Cluster cluster;
      cluster.first = measures.front().begin;
      cluster.last = measures.front().end - 1;
      for (auto const& measure : measures) {
        auto read = number_atom(measure, text_, segment_tokens, matches, *rules_.lexicon,
                                carried_.rows, carried_.subject, rules_.tolerance);
        cluster.origin = read.row ? Origin::lexicon : Origin::number;
        cluster.row = read.row;
        cluster.backwards = cluster.backwards || measure.backwards;
        cluster.or_rarely = cluster.or_rarely || measure.or_rarely;
        cluster.all.push_back(
            {.atom = std::move(read.atom), .opaque = false, .rivals = {}, .printed = {}});
      }
      clusters.push_back(std::move(cluster));
    }
    std::stable_sort(clusters.begin(), clusters.end(),
                     [](Cluster const& a, Cluster const& b) { return a.first < b.first; });
    // States of one character side by side ("white and yellow", "ovate to lanceolate").
    std::vector<Cluster> merged;
    for (auto& cluster : clusters) {
      if (!merged.empty() && same_character(merged.back(), cluster)) {
        widen(merged.back(), std::move(cluster));
      } else {
        merged.push_back(std::move(cluster));
      }
    }
    return merged;
  }

  Cluster state_cluster(StateMatch const& match) const {
    auto const& lexicon = *rules_.lexicon;
    auto const& character = lexicon.character(match.row);
    DraftAtom atom;
    atom.atom.character = character.id;
    atom.atom.states = {character.states[match.state].id};
    atom.atom.negated = match.negated;
    for (auto const& [row, state] : match.rivals) {
      atom.rivals.emplace_back(lexicon.character(row).id, lexicon.character(row).states[state].id);
    }
    if (!match.rivals.empty()) atom.printed = std::string{text_.slice(match.begin, match.end - 1)};
    Cluster cluster;
    cluster.all = {std::move(atom)};
    cluster.origin = Origin::lexicon;
    cluster.row = match.row;
    cluster.first = match.begin;
    cluster.last = match.end - 1;
    cluster.own_subject = match.own_subject;
    return cluster;
  }

  static bool same_character(Cluster const& a, Cluster const& b) {
    return a.all.size() == 1 && b.all.size() == 1 && !a.all[0].opaque && !b.all[0].opaque &&
           a.all[0].atom.character == b.all[0].atom.character;
  }

  // Either the one or the other.
  static void widen(Cluster& into, Cluster from) {
    auto& atom = into.all[0].atom;
    auto& other = from.all[0].atom;
    if (atom.negated == other.negated) {
      atom.states.insert(atom.states.end(), other.states.begin(), other.states.end());
      std::sort(atom.states.begin(), atom.states.end());
      atom.states.erase(std::unique(atom.states.begin(), atom.states.end()), atom.states.end());
      atom.ranges.insert(atom.ranges.end(), other.ranges.begin(), other.ranges.end());
    } else {
      // "not bifid or entire": all but the bifid, less what is admitted again.
      auto& barred = atom.negated ? atom : other;
      auto const& admitted = atom.negated ? other : atom;
      std::erase_if(barred.states, [&](std::string const& state) {
        return std::binary_search(admitted.states.begin(), admitted.states.end(), state);
      });
      if (!atom.negated) std::swap(atom, other);
    }
    auto& rivals = into.all[0].rivals;
    rivals.insert(rivals.end(), from.all[0].rivals.begin(), from.all[0].rivals.end());
    into.first = std::min(into.first, from.first);
    into.last = std::max(into.last, from.last);
    into.own_subject = into.own_subject || from.own_subject;
    into.backwards = into.backwards || from.backwards;
    into.or_rarely = into.or_rarely || from.or_rarely;
  }

  // Joins the parts of a segment: "or" between states of one character widens, "or" between
  // characters makes alternatives.
  void fold(Segment const& segment, std::vector<std::vector<Cluster>>& parts,
            std::vector<Group>& made) {
    std::vector<std::vector<Cluster>> alternatives;
    std::optional<Index> alternatives_begin;
    for (std::size_t p = 0; p < parts.size(); ++p) {
      auto& clusters = parts[p];
      auto const& part = segment.parts[p];
      if (clusters.empty()) {
        if (parts.size() == 1) return;
        auto const own =
            names_subject(text_, part.tokens, false) ? std::string{} : subject_of(segment);
        bool negated = false;
        auto words = plain_words(text_, part.tokens, own, &negated);
        if (words.empty()) continue;
        clusters.push_back(opaque_cluster(std::move(words), negated, part.first, part.last));
      }
      if (p > 0 && !alternatives_begin) alternatives_begin = part.first;
      if (!alternatives.empty() && same_character(alternatives.back().back(), clusters.front())) {
        // "not glabrous or hairy": the negation goes on.
        auto& before = alternatives.back().back().all[0].atom;
        auto& after = clusters.front().all[0].atom;
        if (before.negated && !after.negated && joined_without_comma(part.first)) {
          after.negated = true;
        }
        widen(alternatives.back().back(), std::move(clusters.front()));
        for (std::size_t i = 1; i < clusters.size(); ++i) {
          alternatives.back().push_back(std::move(clusters[i]));
        }
      } else {
        alternatives.push_back(std::move(clusters));
      }
    }
    if (alternatives.empty()) return;
    Group group;
    group.first = segment.parts.front().first;
    group.last = segment.parts.back().last;
    group.alternatives_begin = alternatives_begin;
    if (alternatives.size() == 1) {
      // All hold: a statement each.
      auto const clusters = std::move(alternatives.front());
      for (std::size_t i = 0; i < clusters.size(); ++i) {
        Group one = group;
        // Clusters of the same words ("legs and elytra black") share them all.
        auto from = i;
        while (from > 0 && clusters[from - 1].first == clusters[i].first) --from;
        auto to = i + 1;
        while (to < clusters.size() && clusters[to].first == clusters[i].first) ++to;
        one.first = from == 0 ? group.first : clusters[from].first;
        one.last = to == clusters.size() ? group.last : clusters[to].first - 1;
        one.alternatives = {{clusters[i]}};
        made.push_back(std::move(one));
      }
      return;
    }
    group.alternatives = std::move(alternatives);
    made.push_back(std::move(group));
  }

  bool joined_without_comma(Index part_first) const {
    for (auto i = part_first; i-- > clause_.begin;) {
      if (text_.is_sign(i, U',') || text_.is_sign(i, U'(')) return false;
      if (text_.is_word(i) && !text_.info[i].is(kOr)) return true;
    }
    return true;
  }

  std::string subject_of(Segment const& segment) const {
    auto subject = subject_words(text_, segment.parts.front().tokens);
    return subject.empty() ? carried_.subject : subject;
  }

  // "ovate, lanceolate or elliptic": commas between states of one character widen, too.
  bool continue_list(Group& group) {
    if (groups_.empty()) return false;
    auto& before = groups_.back();
    for (auto const& alternative : before.alternatives) {
      if (alternative.size() != 1) return false;
    }
    for (auto const& alternative : group.alternatives) {
      if (alternative.size() != 1) return false;
    }
    auto* into = &before.alternatives.back().front();
    if (!into->row) return false;
    bool same = false;
    for (auto const& alternative : group.alternatives) {
      auto const& cluster = alternative.front();
      if (cluster.own_subject) return false;
      if (same_character(*into, cluster)) {
        if (cluster.all[0].atom.negated != into->all[0].atom.negated) return false;
        if (!cluster.all[0].atom.ranges.empty()) return false;
        same = true;
      }
    }
    if (!same) return false;
    before.last = std::max(before.last, group.last);
    if (!before.alternatives_begin) before.alternatives_begin = group.first;
    for (auto& alternative : group.alternatives) {
      into = &before.alternatives.back().front();
      Cluster* match = nullptr;
      for (auto& known : before.alternatives) {
        if (same_character(known.front(), alternative.front())) match = &known.front();
      }
      if (match != nullptr) {
        widen(*match, std::move(alternative.front()));
      } else {
        before.alternatives.push_back(std::move(alternative));
      }
    }
    before.rest.insert(before.rest.end(), group.rest.begin(), group.rest.end());
    if (!group.whole.empty()) before.whole += ' ' + group.whole;
    return true;
  }

  // --- what was not read ----------------------------------------------------------------------

  struct Unread {
    std::vector<std::vector<Index>> statements;  // runs of words that speak of another part
    std::vector<std::string> rest;
  };
  Unread unread(std::vector<Index> const& tokens, ClauseMatches const& matches,
                std::vector<Index> const& rows) const {
    Unread unread;
    bool const derived = rows.empty();  // a number's own words name its character
    std::vector<Index> run;
    bool part = false;
    std::size_t content = 0;
    auto const close = [&] {
      if (part && content > 1)
        unread.statements.push_back(run);
      else
        for (auto const token : run) {
          if (text_.is_content(token)) unread.rest.push_back(text_.tokens[token].word);
        }
      run.clear();
      part = false;
      content = 0;
    };
    if (derived) return unread;
    for (auto const token : tokens) {
      if (!text_.is_open(token) || matches.in_subject(token)) {
        if (part && text_.info[run.back()].is(kAnd) && matches.in_subject(token)) {
          // "stems and leaves glaucous": of the stems as well.
          run.pop_back();
          append_state_behind(token, tokens, run);
          unread.statements.push_back(run);
          run.clear();
        }
        close();
        continue;
      }
      if (text_.is_content(token) && matches.known_to(token, rows)) {
        close();
        continue;
      }
      if (!text_.is_word(token)) continue;
      if (run.empty() && !text_.is_content(token) && !text_.info[token].is(kWith)) continue;
      run.push_back(token);
      if (text_.is_content(token) && !text_.is_degree(token)) ++content;
      part = part || text_.info[token].is(kPart);
    }
    close();
    return unread;
  }

  void append_state_behind(Index token, std::vector<Index> const& tokens,
                           std::vector<Index>& run) const {
    auto at = std::find(tokens.begin(), tokens.end(), token);
    while (at != tokens.end() && text_.roles[*at] != Role::state) ++at;
    for (; at != tokens.end() && text_.roles[*at] == Role::state; ++at) run.push_back(*at);
  }

  // --- drafts ---------------------------------------------------------------------------------

  std::vector<Draft> drafts() {
    assign_tokens();
    std::vector<Draft> drafts;
    for (auto& group : groups_) append(group, drafts);
    return drafts;
  }

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

  void append(Group& group, std::vector<Draft>& drafts) {
    Draft draft;
    auto first = group.first;
    auto last = group.last;
    trim(first, last);
    draft.begin = text_.tokens[first].begin;
    draft.end = text_.tokens[last].end;
    qualify(group, draft);
    draft.anaphora = anaphora_;
    draft.whole = group.whole;
    draft.rest = group.rest;
    for (auto i = first; i <= last; ++i) {
      if (!text_.is_word(i) || text_.info[i].is(kFunction)) continue;
      if (text_.roles[i] == Role::open || text_.roles[i] == Role::state ||
          text_.roles[i] == Role::number) {
        draft.stems.push_back(singular(text_.tokens[i].word));
      }
    }
    if (!draft.stems.empty()) draft.subject = draft.stems.front();
    for (auto const& product : conjunction(group)) {
      Draft one = draft;
      one.any_of = product;
      one.origin = origin_of(group);
      drafts.push_back(std::move(one));
    }
  }

  static Origin origin_of(Group const& group) {
    // The least certain of its parts.
    Origin origin = Origin::mark;
    for (auto const& alternative : group.alternatives) {
      for (auto const& cluster : alternative) origin = std::max(origin, cluster.origin);
    }
    return origin;
  }

  // (a and b) or c = (a or c) and (b or c)
  static std::vector<std::vector<DraftAtom>> conjunction(Group& group) {
    static constexpr std::size_t kMost = 16;
    std::vector<std::vector<DraftAtom>> product{{}};
    for (auto& alternative : group.alternatives) {
      std::vector<DraftAtom> all;
      for (auto& cluster : alternative) {
        for (auto& atom : cluster.all) all.push_back(std::move(atom));
      }
      if (product.size() * all.size() > kMost) all.resize(1);
      std::vector<std::vector<DraftAtom>> next;
      for (auto const& so_far : product) {
        for (auto const& atom : all) {
          next.push_back(so_far);
          next.back().push_back(atom);
        }
      }
      product = std::move(next);
    }
    return product;
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
      if (!inside(hedge.begin)) continue;
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
      if (!inside(exception.begin)) continue;
      if (draft.strength == Strength::firm) draft.strength = Strength::excepted;
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
      }
    }
  }

  // A later limit of the same kind takes the place of an earlier one.
  static void add_limit(std::vector<Limit>& limits, Limit const& limit) {
    std::erase_if(limits, [&](Limit const& known) { return known.kind == limit.kind; });
    limits.push_back(limit);
  }

  LeadText& text_;
  Clause const& clause_;
  ReadingRules const& rules_;
  Carried& carried_;
  Qualifiers found_;
  std::vector<Index> stretches_;
  std::vector<std::vector<Measure>> measures_;
  std::vector<Group> groups_;
  bool anaphora_{false};
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

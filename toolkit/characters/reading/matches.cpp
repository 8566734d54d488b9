#include "keydrift/characters/reading/matches.hpp"

#include <algorithm>
#include <limits>

namespace keydrift::reading {

ClauseMatches::ClauseMatches(LeadText& text, Clause const& clause, LexiconIndex const& lexicon,
                             std::vector<std::uint32_t> const& segments)
    : text_{text}, clause_{clause}, lexicon_{lexicon}, segments_{segments} {
  if (lexicon.empty()) return;  // nothing to be found
  bool broken = true;
  bool by_comma = false;
  for (auto i = clause.begin; i < clause.end; ++i) {
    auto const& token = text.tokens[i];
    if (token.kind == TokenKind::sign) {
      bool const joins = token.sign == U'-' || token.sign == U'\'' || token.sign == U'.';
      if (joins) continue;
      by_comma = token.sign == U',' && !broken;
      broken = true;
      continue;
    }
    if (!text.is_open(i) || token.kind == TokenKind::mark) {
      broken = true;
      by_comma = false;
      continue;
    }
    if (text.info[i].is(kArticle)) continue;
    stream_.push_back(i);
    barrier_.push_back(broken);
    comma_.push_back(by_comma);
    ones_.push_back(token.kind == TokenKind::word ? singular(token.word) : token.word);
    broken = false;
    by_comma = false;
  }
  find_absence();
  hit_at_.assign(stream_.size(), kNoHit);
  find_subjects();
  find_possible();
}

void ClauseMatches::find_absence() {
  absence_end_.assign(stream_.size(), 0);
  for (Index i = 0; i < stream_.size(); ++i) {
    auto const end = absence_end(text_, stream_[i], clause_.end);
    if (end == stream_[i]) continue;
    auto behind = i + 1;
    while (behind < stream_.size() && stream_[behind] < end) ++behind;
    absence_end_[i] = behind;
  }
}

bool ClauseMatches::language_fits(std::string_view language) const {
  if (language.empty() || text_.language.empty()) return true;
  return text_.language.substr(0, text_.language.find('-')) == language;
}

void ClauseMatches::find_subjects() {
  auto const& trie = lexicon_.subjects();
  for (Index from = 0; from < stream_.size();) {
    auto node = trie.root();
    Index best = from;
    std::vector<SubjectRef> const* refs = nullptr;
    for (auto i = from; i < stream_.size() && (i == from || follows_directly(i)); ++i) {
      node = trie.step(node, ones_[i]);
      if (node == WordTrie<SubjectRef>::kNowhere) break;
      if (!trie.payloads(node).empty()) {
        best = i + 1;
        refs = &trie.payloads(node);
      }
    }
    SubjectHit hit{.from = from, .to = best, .segment = segment_of(from), .rows = {}};
    if (refs != nullptr) {
      for (auto const& ref : *refs) {
        if (language_fits(ref.language)) hit.rows.push_back(ref.character);
      }
    }
    if (hit.rows.empty()) {
      ++from;
      continue;
    }
    std::sort(hit.rows.begin(), hit.rows.end());
    hit.rows.erase(std::unique(hit.rows.begin(), hit.rows.end()), hit.rows.end());
    hit.dependent = from > 0 && follows_directly(from) && text_.info[stream_[from - 1]].is(kOf);
    for (auto i = from; i < best; ++i) hit_at_[i] = static_cast<Index>(hits_.size());
    hits_.push_back(std::move(hit));
    from = best;
  }
}

// Phrases that begin at `from`; `absence`: words of absence in front are all one.
void ClauseMatches::add_possible(Index from, bool absence) {
  auto const& trie = lexicon_.states();
  auto node = trie.root();
  // The words count, not the commas between them ("single, at the tip of the culm").
  for (auto i = from; i < stream_.size() && (i == from || !barrier_[i] || comma_[i]);) {
    if (absence && absence_end_[i] != 0) {
      node = trie.step(node, kWithout);
      i = absence_end_[i];
    } else {
      auto const next = trie.step(node, text_.tokens[stream_[i]].word);
      // "fruits capsules": the lexicon says "capsule".
      node = next != WordTrie<StateRef>::kNowhere ? next : trie.step(node, ones_[i]);
      ++i;
    }
    if (node == WordTrie<StateRef>::kNowhere) return;
    if (!trie.payloads(node).empty()) possible_.push_back({from, i, &trie.payloads(node)});
  }
}

void ClauseMatches::find_possible() {
  auto const& trie = lexicon_.states();
  for (Index from = 0; from < stream_.size(); ++from) {
    auto const before = possible_.size();
    add_possible(from, true);
    // "wings lacking, legs red": absent, and not "without legs".
    auto const behind = absence_end_[from];
    bool const alone = behind != 0 && (behind == stream_.size() || barrier_[behind]);
    if (possible_.size() == before && alone) add_possible(from, false);
    if (possible_.size() > before) continue;
    // "unbranched": not branched.
    auto const& word = text_.tokens[stream_[from]].word;
    if (word.size() < 5 || !word.starts_with("un")) continue;
    auto const node = trie.step(trie.root(), std::string_view{word}.substr(2));
    if (node == WordTrie<StateRef>::kNowhere || trie.payloads(node).empty()) continue;
    possible_.push_back({from, from + 1, &trie.payloads(node), true});
  }
}

std::vector<bool> ClauseMatches::covered() const {
  std::vector<bool> covered(text_.tokens.size());
  if (lexicon_.empty()) return covered;
  auto const cover = [&](Index from, Index to) {
    if (to - from < 2) return;
    for (auto i = stream_[from]; i <= stream_[to - 1]; ++i) covered[i] = true;
  };
  for (auto const& hit : hits_) cover(hit.from, hit.to);
  for (auto const& possible : possible_) cover(possible.from, possible.to);
  return covered;
}

// A part, a position or another character's structure that the character does not know of.
bool ClauseMatches::alien(Index position, Index row) const {
  auto const token = stream_[position];
  if (!text_.is_word(token) || !text_.is_open(token)) return false;
  if (lexicon_.knows(row, ones_[position])) return false;
  if (hit_at_[position] != kNoHit) {
    auto const& rows = hits_[hit_at_[position]].rows;
    return !std::binary_search(rows.begin(), rows.end(), row);
  }
  return text_.info[token].is(kPart | kPosition);
}

// "leaf sheath", "upper leaves", "margin of the sheath" are not what "leaf" and "margin" name.
bool ClauseMatches::subject_is_whole(SubjectHit const& hit, Index row, Index from, Index to) const {
  auto const in_phrase = [&](Index position) { return position >= from && position < to; };
  if (hit.from > 0 && follows_directly(hit.from) && !in_phrase(hit.from - 1) &&
      segment_of(hit.from - 1) == hit.segment && alien(hit.from - 1, row)) {
    return false;
  }
  auto after = hit.to;
  if (after >= stream_.size() || !follows_directly(after) || in_phrase(after)) return true;
  if (alien(after, row)) return false;
  if (!text_.info[stream_[after]].is(kOf)) return true;
  for (++after; after < stream_.size() && follows_directly(after) && !in_phrase(after); ++after) {
    if (!text_.is_content(stream_[after])) break;
    if (alien(after, row)) return false;
  }
  return true;
}

std::optional<int> ClauseMatches::distance(SubjectHit const& hit, Index row, Index from,
                                           Index to) const {
  if (!subject_is_whole(hit, row, from, to)) return std::nullopt;
  // Nearer is better; behind is a little worse than in front; hanging on an "of" is much worse.
  constexpr int kStep = 4;
  constexpr int kDependent = 200;
  int result = hit.dependent ? kDependent : 0;
  Index gap_from = 0;
  Index gap_to = 0;
  if (hit.to <= from) {
    gap_from = hit.to;
    gap_to = from;
  } else if (hit.from >= to) {
    gap_from = to;
    gap_to = hit.from;
    result += 1;
  } else {
    return result;  // the phrase names it
  }
  for (auto i = gap_from; i < gap_to; ++i) {
    bool const dependent = hit_at_[i] != kNoHit && hits_[hit_at_[i]].dependent;
    if (alien(i, row) && !dependent) return std::nullopt;
  }
  return result + kStep * static_cast<int>(gap_to - gap_from);
}

std::optional<int> ClauseMatches::own_distance(Index row, Index from, Index to) const {
  std::optional<int> best;
  for (auto const& hit : hits_) {
    if (hit.segment != segment_of(from) ||
        !std::binary_search(hit.rows.begin(), hit.rows.end(), row)) {
      continue;
    }
    // Longer names are more exact.
    if (auto const apart = distance(hit, row, from, to)) {
      auto const exact = *apart * 4 - static_cast<int>(std::min<Index>(hit.to - hit.from, 3));
      if (!best || exact < *best) best = exact;
    }
  }
  return best;
}

bool ClauseMatches::segment_names_any(Index from, Index to) const {
  return std::any_of(hits_.begin(), hits_.end(), [&](SubjectHit const& hit) {
    bool const inside = hit.from >= from && hit.to <= to;
    return hit.segment == segment_of(from) && !inside;
  });
}

// The segment has no subject of its own: no part that is unknown, no unknown word in front.
bool ClauseMatches::may_carry(Index from, Index to) const {
  if (segment_names_any(from, to)) return false;
  for (Index i = 0; i < stream_.size(); ++i) {
    if (segment_of(i) != segment_of(from) || (i >= from && i < to)) continue;
    auto const token = stream_[i];
    if (!text_.is_content(token) || text_.is_degree(token)) continue;
    if (text_.info[token].is(kPart)) return false;
    if (i < from && !has_sense(i, Sense::negation) && !has_sense(i, Sense::without)) return false;
  }
  return true;
}

bool ClauseMatches::has_sense(Index position, Sense sense) const {
  auto const token = stream_[position];
  auto const phrases = qualifiers_at(text_, token, token + 1);
  return std::any_of(phrases.begin(), phrases.end(),
                     [&](Phrased const& phrase) { return phrase.meaning.sense == sense; });
}

std::optional<StateMatch> ClauseMatches::resolve(Possible const& possible,
                                                 std::vector<Index> const& carried) const {
  auto const from = possible.from;
  auto const to = possible.to;
  std::vector<Choice> choices;
  for (auto const& ref : *possible.refs) {
    if (!language_fits(ref.language)) continue;
    if (auto const apart = own_distance(ref.character, from, to)) {
      choices.push_back({ref.character, ref.state, *apart, true, ref.denied});
    }
  }
  if (choices.empty() && may_carry(from, to)) {
    bool const nothing_named = carried.empty();
    for (auto const& ref : *possible.refs) {
      if (!language_fits(ref.language)) continue;
      bool const named = std::binary_search(carried.begin(), carried.end(), ref.character);
      // Where nothing has been named yet, a phrase of one character only speaks for itself.
      bool const alone = nothing_named && std::all_of(possible.refs->begin(), possible.refs->end(),
                                                      [&](StateRef const& other) {
                                                        return other.character == ref.character;
                                                      });
      if (named || alone || !lexicon_.has_subjects(ref.character)) {
        choices.push_back({ref.character, ref.state, 0, false, ref.denied});
      }
    }
  }
  if (choices.empty()) return std::nullopt;
  std::stable_sort(choices.begin(), choices.end(), [&](Choice const& a, Choice const& b) {
    if (a.distance != b.distance) return a.distance < b.distance;
    return lexicon_.character(a.row).id < lexicon_.character(b.row).id;
  });
  auto const& best = choices.front();
  StateMatch match{.begin = stream_[from],
                   .end = stream_[to - 1] + 1,
                   .row = best.row,
                   .state = best.state,
                   .rivals = {},
                   .negated = best.denied != possible.negated,
                   .own_subject = best.own};
  for (auto const& other : choices) {
    if (other.row != best.row && other.distance == best.distance) {
      match.rivals.emplace_back(other.row, other.state);
    }
  }
  return match;
}

// "weder flach noch rinnig"; "noch" alone is "still".
bool ClauseMatches::is_noch(Index position) const {
  if (!text_.is_word(stream_[position], "noch")) return false;
  return std::any_of(stream_.begin(), stream_.begin() + position,
                     [&](Index token) { return text_.is_word(token, "weder"); });
}

// "not bifid", "never strongly bifid", "without bifid beak"
void ClauseMatches::look_for_negation(StateMatch& match, Index from) {
  for (auto i = from; i > 0 && follows_directly(i); --i) {
    auto const before = stream_[i - 1];
    if (!text_.is_open(before) || segment_of(i - 1) != segment_of(from)) return;
    if (has_sense(i - 1, Sense::negation) || has_sense(i - 1, Sense::without) || is_noch(i - 1)) {
      match.negated = !match.negated;
      match.begin = before;
      return;
    }
    if (!text_.is_degree(before) && hit_at_[i - 1] == kNoHit && !text_.info[before].is(kCopula)) {
      return;
    }
  }
}

std::vector<StateMatch> ClauseMatches::states(std::vector<std::uint32_t> const& carried) {
  std::vector<StateMatch> matches;
  Index taken_to = 0;
  for (std::size_t i = 0; i < possible_.size();) {
    // All phrases that begin at one place, the longest last.
    auto last = i;
    while (last + 1 < possible_.size() && possible_[last + 1].from == possible_[i].from) ++last;
    auto const next = last + 1;
    for (auto at = next; at-- > i;) {
      auto const& possible = possible_[at];
      bool const open = possible.from >= taken_to && text_.is_open(stream_[possible.from]) &&
                        text_.is_open(stream_[possible.to - 1]);
      if (!open) continue;
      auto carried_here = carried;
      // Segments before this one in the same clause name structures, too.
      for (auto const& hit : hits_) {
        if (hit.segment >= segment_of(possible.from) || hit.to > possible.from) continue;
        if (hit.dependent) continue;
        if (auto const rows = rows_named(hit.segment); !rows.empty()) carried_here = rows;
      }
      auto match = resolve(possible, carried_here);
      if (!match) continue;
      look_for_negation(*match, possible.from);
      text_.give(match->begin, match->end, Role::state);
      matches.push_back(*match);
      add_coordinated(possible, *match, matches);
      taken_to = possible.to;
      break;
    }
    i = next;
  }
  find_presence(matches);
  std::sort(matches.begin(), matches.end(),
            [](StateMatch const& a, StateMatch const& b) { return a.begin < b.begin; });
  return matches;
}

// "legs and elytra black": what is said of the last is said of those in front, too.
void ClauseMatches::add_coordinated(Possible const& possible, StateMatch const& match,
                                    std::vector<StateMatch>& matches) const {
  if (!match.own_subject) return;
  auto const own = std::find_if(hits_.begin(), hits_.end(), [&](SubjectHit const& hit) {
    return hit.segment == segment_of(possible.from) && hit.to <= possible.from &&
           std::binary_search(hit.rows.begin(), hit.rows.end(), match.row);
  });
  if (own == hits_.end()) return;
  auto right = own;
  while (right != hits_.begin()) {
    auto const left = std::prev(right);
    bool joined = left->to < right->from;
    for (auto i = left->to; i < right->from; ++i) {
      joined = joined && follows_directly(i) &&
               (text_.info[stream_[i]].is(kAnd) || has_sense(i, Sense::negation));
    }
    if (!joined || !follows_directly(right->from)) return;
    for (auto const& ref : *possible.refs) {
      if (!std::binary_search(left->rows.begin(), left->rows.end(), ref.character) ||
          !language_fits(ref.language) || ref.character == match.row) {
        continue;
      }
      auto also = match;
      also.row = ref.character;
      also.state = ref.state;
      also.rivals.clear();
      matches.push_back(std::move(also));
      break;
    }
    right = left;
  }
}

std::vector<std::uint32_t> ClauseMatches::rows_named(std::uint32_t segment) const {
  std::vector<Index> rows;
  for (auto const& hit : hits_) {
    if (hit.segment == segment) rows.insert(rows.end(), hit.rows.begin(), hit.rows.end());
  }
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  return rows;
}

bool ClauseMatches::in_subject(std::uint32_t token) const {
  for (auto const& hit : hits_) {
    if (token >= stream_[hit.from] && token <= stream_[hit.to - 1]) return true;
  }
  return false;
}

bool ClauseMatches::in_subject_of(std::uint32_t token, std::uint32_t row) const {
  return std::any_of(hits_.begin(), hits_.end(), [&](SubjectHit const& hit) {
    return token >= stream_[hit.from] && token <= stream_[hit.to - 1] &&
           std::binary_search(hit.rows.begin(), hit.rows.end(), row);
  });
}

bool ClauseMatches::known_to(std::uint32_t token, std::vector<std::uint32_t> const& rows) const {
  auto const one = singular(text_.tokens[token].word);
  return std::any_of(rows.begin(), rows.end(), [&](Index row) { return lexicon_.knows(row, one); });
}

}  // namespace keydrift::reading

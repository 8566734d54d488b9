#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/characters/reading/matches.hpp"

// Structures that are there or are not, told by words around their names.

namespace keydrift::reading {

void ClauseMatches::add_presence(Index begin, Index end, std::vector<Index> const& rows,
                                 bool present, std::vector<StateMatch>& matches) {
  std::optional<StateMatch> match;
  for (auto const row : rows) {
    auto const state = present ? lexicon_.present_state(row) : lexicon_.absent_state(row);
    if (!state) continue;
    if (match) {
      match->rivals.emplace_back(row, *state);
    } else {
      match = StateMatch{.begin = begin,
                         .end = end,
                         .row = row,
                         .state = *state,
                         .rivals = {},
                         .own_subject = true};
    }
  }
  if (!match) return;
  text_.give(begin, end, Role::state);
  matches.push_back(std::move(*match));
}

// "without a beak", "beakless", "with a beak" of characters whose states are absent and present.
void ClauseMatches::find_presence(std::vector<StateMatch>& matches) {
  find_without(matches);
  for (auto const& hit : hits_) {
    if (hit.from == 0 || !follows_directly(hit.from)) continue;
    auto const before = hit.from - 1;
    if (!text_.is_open(stream_[before]) || !text_.is_open(stream_[hit.from])) continue;
    if (!text_.info[stream_[before]].is(kWith)) continue;
    bool const described = std::any_of(matches.begin(), matches.end(), [&](auto const& match) {
      return segments_[match.begin - clause_.begin] == hit.segment &&
             std::binary_search(hit.rows.begin(), hit.rows.end(), match.row);
    });
    if (!described) {
      add_presence(stream_[before], stream_[hit.to - 1] + 1, hit.rows, true, matches);
    }
  }
  for (Index i = 0; i < stream_.size(); ++i) {
    auto const token = stream_[i];
    auto const& word = text_.tokens[token].word;
    if (!text_.is_content(token) || !word.ends_with("less") || word.size() < 7) continue;
    auto const& trie = lexicon_.subjects();
    auto const node = trie.step(trie.root(), singular(word.substr(0, word.size() - 4)));
    if (node == WordTrie<SubjectRef>::kNowhere) continue;
    std::vector<Index> rows;
    for (auto const& ref : trie.payloads(node)) {
      if (language_fits(ref.language)) rows.push_back(ref.character);
    }
    std::sort(rows.begin(), rows.end());
    add_presence(token, token + 1, rows, false, matches);
  }
}

// "without spines", "lacking both spines and awns", "without spines or awns": all are absent.
void ClauseMatches::find_without(std::vector<StateMatch>& matches) {
  for (Index i = 0; i < stream_.size(); ++i) {
    if (absence_end_[i] == 0 || !text_.is_open(stream_[i])) continue;
    auto begin = i;
    for (auto at = absence_end_[i]; at < stream_.size() && !barrier_[at];) {
      while (at < stream_.size() &&
             (text_.is_word(stream_[at], "both") || text_.is_word(stream_[at], "any"))) {
        ++at;
      }
      if (at >= stream_.size() || hit_at_[at] == kNoHit || hits_[hit_at_[at]].from != at ||
          !text_.is_open(stream_[at])) {
        break;
      }
      auto const& hit = hits_[hit_at_[at]];
      add_presence(stream_[begin], stream_[hit.to - 1] + 1, hit.rows, false, matches);
      begin = hit.to;
      if (begin + 1 >= stream_.size() || barrier_[begin] ||
          !text_.info[stream_[begin]].is(kAnd | kOr)) {
        break;
      }
      at = begin + 1;
    }
  }
}

}  // namespace keydrift::reading

#include "keydrift/characters/reading/segment_items.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "keydrift/characters/reading/number_words.hpp"
#include "keydrift/characters/reading/plain_words.hpp"
#include "keydrift/key/sort_stably.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

class ItemReader {
 public:
  ItemReader(LeadText const& text, Clause const& clause, Segment const& segment, Found const& found,
             ReadingRules const& rules, Carried const& carried)
      : text_{text},
        clause_{clause},
        segment_{segment},
        found_{found},
        rules_{rules},
        carried_{carried},
        tokens_{tokens_of(segment)} {}

  std::vector<Group> run() {
    std::vector<Index> rows;
    std::vector<std::vector<Cluster>> parts;  // by part of the segment; empty where opaque
    for (auto const& part : segment_.parts) {
      parts.push_back(clusters_of(part));
      for (auto const& cluster : parts.back()) {
        if (cluster.row) rows.push_back(*cluster.row);
      }
    }
    auto const extra = unread(rows);
    std::vector<Group> made;
    fold(parts, made);
    if (!made.empty()) {
      made.front().whole = plain_words(text_, tokens_, "");
      made.front().rest = extra.rest;
    }
    for (auto const& run : extra.statements) {
      // What stands in front of the first item is a statement of its own there.
      if (!made.empty() && made.front().first <= run.front() &&
          run.back() < made.front().alternatives.front().front().first) {
        made.front().first = run.back() + 1;
      }
      bool negated = false;
      auto words = plain_words(text_, run, "", &negated);
      if (words.empty()) continue;
      Group group;
      group.first = run.front();
      group.last = run.back();
      group.consists_of(opaque_cluster(std::move(words), negated, group.first, group.last));
      made.push_back(std::move(group));
    }
    sort_stably(made, [](Group const& a, Group const& b) { return a.first < b.first; });
    return made;
  }

 private:
  std::vector<Cluster> clusters_of(Part const& part) {
    std::vector<Cluster> clusters;
    for (auto const& match : found_.states) {
      if (!std::binary_search(part.tokens.begin(), part.tokens.end(), match.begin)) continue;
      clusters.push_back(state_cluster(match));
    }
    for (auto const& measures : found_.measures) {
      if (!std::binary_search(part.tokens.begin(), part.tokens.end(), measures.front().begin)) {
        continue;
      }
      Cluster cluster;
      cluster.first = measures.front().begin;
      cluster.last = measures.front().end - 1;
      for (auto const& measure : measures) {
        auto read = number_atom(measure, text_, tokens_, *found_.matches, *rules_.lexicon, carried_,
                                rules_.tolerance);
        description_.insert(description_.end(), read.description.begin(), read.description.end());
        cluster.origin = read.row ? Origin::lexicon : Origin::number;
        cluster.row = read.row;
        cluster.backwards = cluster.backwards || measure.backwards;
        cluster.unitless = cluster.unitless || read.unitless;
        cluster.or_rarely = cluster.or_rarely || measure.or_rarely;
        cluster.all.push_back({.atom = std::move(read.atom),
                               .opaque = false,
                               .rivals = {},
                               .printed = {},
                               .bare_of = std::move(read.bare_of)});
      }
      clusters.push_back(std::move(cluster));
    }
    sort_stably(clusters, [](Cluster const& a, Cluster const& b) { return a.first < b.first; });
    // States of one character side by side ("white and yellow", "ovate to lanceolate").
    std::vector<Cluster> merged;
    for (auto& cluster : clusters) {
      // "not reflexed but spreading" says two things.
      if (!merged.empty() && same_character(merged.back(), cluster) &&
          merged.back().all[0].atom.negated == cluster.all[0].atom.negated) {
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

  // Joins the parts of a segment: "or" between states of one character widens, "or" between
  // characters makes alternatives.
  void fold(std::vector<std::vector<Cluster>>& parts, std::vector<Group>& made) {
    std::vector<std::vector<Cluster>> alternatives;
    std::optional<Index> alternatives_begin;
    for (std::size_t p = 0; p < parts.size(); ++p) {
      auto& clusters = parts[p];
      auto const& part = segment_.parts[p];
      if (clusters.empty()) {
        if (parts.size() == 1) return;
        auto const own = names_subject(text_, part.tokens, false) ? std::string{} : subject();
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
    group.first = segment_.parts.front().first;
    group.last = segment_.parts.back().last;
    group.alternatives_begin = alternatives_begin;
    if (alternatives.size() == 1) {
      // All hold: a statement each.
      auto clusters = std::move(alternatives.front());
      for (std::size_t i = 0; i < clusters.size(); ++i) {
        Group one = group;
        // Clusters of the same words ("legs and elytra black") share them all.
        auto from = i;
        while (from > 0 && clusters[from - 1].first == clusters[i].first) --from;
        auto to = i + 1;
        while (to < clusters.size() && clusters[to].first == clusters[i].first) ++to;
        one.first = from == 0 ? group.first : boundary(clusters[from - 1], clusters[from]);
        one.last = to == clusters.size() ? group.last : boundary(clusters[i], clusters[to]) - 1;
        if (!one.alternatives_begin) one.alternatives_begin = clusters[i].second_begin;
        one.consists_of(std::move(clusters[i]));
        made.push_back(std::move(one));
      }
      return;
    }
    group.alternatives = std::move(alternatives);
    made.push_back(std::move(group));
  }

  // Where the statement of the second begins: at the word that joins the two; without one, behind
  // the subject that follows the first ("bifid beak 2 mm long"), unless it had one in front.
  [[nodiscard]] Index boundary(Cluster const& first, Cluster const& second) const {
    auto const begin = first.last + 1;
    for (auto i = begin; i < second.first; ++i) {
      if (text_.is_sign(i, U',') || (text_.is_word(i) && text_.info[i].is(kAnd | kWith))) return i;
    }
    for (auto i = segment_.parts.front().first; i < first.first; ++i) {
      bool const names = first.row ? found_.matches->in_subject_of(i, *first.row)
                                   : text_.is_open(i) && text_.info[i].is(kPart);
      if (names) return begin;
    }
    return second.first;
  }

  bool joined_without_comma(Index part_first) const {
    for (auto i = part_first; i-- > clause_.begin;) {
      if (text_.is_sign(i, U',') || text_.is_sign(i, U'(')) return false;
      if (text_.is_word(i) && !text_.info[i].is(kOr)) return true;
    }
    return true;
  }

  [[nodiscard]] std::string subject() const {
    auto subject = subject_words(text_, segment_.parts.front().tokens);
    return subject.empty() ? carried_.subject : subject;
  }

  struct Unread {
    std::vector<std::vector<Index>> statements;  // runs of words that speak of another part
    std::vector<std::string> rest;
  };
  [[nodiscard]] Unread unread(std::vector<Index> const& rows) const {
    Unread unread;
    bool const derived = rows.empty();  // a number's own words name its character
    std::vector<Index> run;
    bool part = false;
    std::size_t content = 0;
    auto const start_anew = [&] {
      run.clear();
      part = false;
      content = 0;
    };
    auto const close = [&] {
      if (part && content > 1)
        unread.statements.push_back(run);
      else
        for (auto const token : run) {
          if (text_.is_content(token)) unread.rest.push_back(text_.tokens[token].word);
        }
      start_anew();
    };
    if (auto const described = description(); !described.empty()) {
      unread.statements.push_back(described);
    }
    if (derived) return unread;
    for (auto const token : tokens_) {
      if (!text_.is_open(token) || found_.matches->in_subject(token)) {
        if (part && text_.info[run.back()].is(kAnd) && found_.matches->in_subject(token)) {
          // "stems and leaves glaucous": of the stems as well.
          run.pop_back();
          append_state_behind(token, run);
          unread.statements.push_back(run);
          start_anew();
        }
        close();
        continue;
      }
      if (text_.is_content(token) && found_.matches->known_to(token, rows)) {
        close();
        continue;
      }
      if (!text_.is_word(token) || is_described(token)) continue;
      if (run.empty() && !text_.is_content(token) && !text_.info[token].is(kWith)) continue;
      run.push_back(token);
      if (text_.is_content(token) && !text_.is_degree(token)) ++content;
      part = part || text_.info[token].is(kPart);
    }
    close();
    return unread;
  }

  void append_state_behind(Index token, std::vector<Index>& run) const {
    auto at = std::find(tokens_.begin(), tokens_.end(), token);
    while (at != tokens_.end() && text_.roles[*at] != Role::state) ++at;
    for (; at != tokens_.end() && text_.roles[*at] == Role::state; ++at) run.push_back(*at);
  }

  // The words up to the description that stands in front of a number: "plants tufted".
  [[nodiscard]] std::vector<Index> description() const {
    std::vector<Index> run;
    bool unknown = false;
    for (auto const token : tokens_) {
      if (description_.empty() || token > description_.back()) break;
      if (is_described(token) && found_.matches->in_subject(token)) continue;
      unknown = unknown || is_described(token);
      if (text_.is_open(token)) run.push_back(token);
    }
    if (!unknown) run.clear();
    return run;
  }
  [[nodiscard]] bool is_described(Index token) const {
    return std::find(description_.begin(), description_.end(), token) != description_.end();
  }

  LeadText const& text_;
  Clause const& clause_;
  Segment const& segment_;
  Found const& found_;
  ReadingRules const& rules_;
  Carried const& carried_;
  std::vector<Index> tokens_;
  std::vector<Index> description_;
};

}  // namespace

bool has_items(LeadText const& text, Segment const& segment) {
  return std::any_of(segment.parts.begin(), segment.parts.end(), [&](Part const& part) {
    return std::any_of(part.tokens.begin(), part.tokens.end(), [&](Index token) {
      return text.roles[token] == Role::state || text.roles[token] == Role::number;
    });
  });
}

std::vector<Group> read_items(LeadText const& text, Clause const& clause, Segment const& segment,
                              Found const& found, ReadingRules const& rules,
                              Carried const& carried) {
  return ItemReader{text, clause, segment, found, rules, carried}.run();
}

}  // namespace keydrift::reading

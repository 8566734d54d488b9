#pragma once
// Where a clause speaks of the lexicon's characters: subjects and states.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/characters/reading/clauses.hpp"
#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/lexicon_index.hpp"

namespace keydrift::reading {

// Words that name the structure of some characters.
struct SubjectHit {
  std::uint32_t from{};  // positions in the stream of words, half open
  std::uint32_t to{};
  std::uint32_t segment{};
  std::vector<std::uint32_t> rows;  // characters, ascending
  bool dependent{false};            // "of the utricle": hangs on the noun in front
};

// Words that name a state of a character that the clause speaks of.
struct StateMatch {
  std::uint32_t begin{};  // tokens, half open
  std::uint32_t end{};
  std::uint32_t row{};
  std::uint32_t state{};
  std::vector<std::pair<std::uint32_t, std::uint32_t>> rivals;  // equally good (row, state)
  bool negated{false};
  bool own_subject{false};  // the segment names the structure
};

// The clause's words in a row, with what the lexicon says of them.
class ClauseMatches {
 public:
  // `segments[i]` is the number of the comma-separated stretch that token clause.begin + i is in.
  ClauseMatches(LeadText& text, Clause const& clause, LexiconIndex const& lexicon,
                std::vector<std::uint32_t> const& segments);

  // Tokens inside subjects and possible states of two words and more; by token of the whole text.
  [[nodiscard]] std::vector<bool> covered() const;

  // Finds the states; gives their tokens the role `state`.  `carried`: characters whose structure
  // the words before this clause (or segment) named.
  [[nodiscard]] std::vector<StateMatch> states(std::vector<std::uint32_t> const& carried);

  // The numeric character that a number at tokens [begin, end) measures.
  struct NumberWanted {
    std::uint32_t begin{};
    std::uint32_t end{};
    std::string_view unit;               // canonical; "1" for counts, "" for ratios
    std::string_view dimension;          // "length"; empty for counts
    std::string_view to;                 // second dimension of a ratio
    std::vector<std::string> comparand;  // singular words of what a ratio compares with
  };
  [[nodiscard]] std::optional<std::uint32_t> number_row(
      NumberWanted const& wanted, std::vector<std::uint32_t> const& carried) const;

  // Characters whose structure the segment names, ascending; empty when it names none.
  [[nodiscard]] std::vector<std::uint32_t> rows_named(std::uint32_t segment) const;
  // The token is part of a subject.
  [[nodiscard]] bool in_subject(std::uint32_t token) const;
  // … of this character.
  [[nodiscard]] bool in_subject_of(std::uint32_t token, std::uint32_t row) const;
  // The word is known to one of the characters.
  [[nodiscard]] bool known_to(std::uint32_t token, std::vector<std::uint32_t> const& rows) const;

 private:
  using Index = std::uint32_t;
  struct Possible {  // a phrase of states at a place
    Index from{};
    Index to{};
    std::vector<StateRef> const* refs{};
    bool negated{false};  // "unbranched"
  };
  struct Choice {
    Index row{};
    Index state{};
    int distance{};
    bool own{false};
    bool denied{false};  // see StateRef
  };

  void find_absence();
  void find_subjects();
  void find_possible();
  void add_possible(Index from, bool absence);
  [[nodiscard]] bool language_fits(std::string_view language) const;
  [[nodiscard]] bool alien(Index position, Index row) const;
  [[nodiscard]] bool subject_is_whole(SubjectHit const& hit, Index row, Index from, Index to) const;
  [[nodiscard]] std::optional<int> distance(SubjectHit const& hit, Index row, Index from,
                                            Index to) const;
  [[nodiscard]] std::optional<int> own_distance(Index row, Index from, Index to) const;
  [[nodiscard]] bool may_carry(Index from, Index to) const;
  [[nodiscard]] bool segment_names_any(Index from, Index to) const;
  [[nodiscard]] std::optional<StateMatch> resolve(Possible const& possible,
                                                  std::vector<Index> const& carried) const;
  void add_coordinated(Possible const& possible, StateMatch const& match,
                       std::vector<StateMatch>& matches) const;
  [[nodiscard]] bool is_noch(Index position) const;
  void look_for_negation(StateMatch& match, Index from);
  void find_presence(std::vector<StateMatch>& matches);
  void find_without(std::vector<StateMatch>& matches);
  void add_presence(Index begin, Index end, std::vector<Index> const& rows, bool present,
                    std::vector<StateMatch>& matches);
  [[nodiscard]] bool has_sense(Index position, Sense sense) const;
  [[nodiscard]] Index segment_of(Index position) const {
    return segments_[stream_[position] - clause_.begin];
  }
  // The last position before `position` in the same unbroken run of words, if any.
  [[nodiscard]] bool follows_directly(Index position) const { return !barrier_[position]; }

  LeadText& text_;
  Clause clause_;
  LexiconIndex const& lexicon_;
  std::vector<Index> const& segments_;
  std::vector<Index> stream_;       // tokens: words and numbers, without articles
  std::vector<bool> barrier_;       // a sign other than a hyphen stands in front
  std::vector<bool> comma_;         // … which is a comma and nothing else
  std::vector<std::string> ones_;   // the words in the singular
  std::vector<Index> absence_end_;  // position behind "devoid of", "no" that begin here, or 0
  std::vector<SubjectHit> hits_;
  std::vector<Index> hit_at_;  // by position: its hit, or kNoHit
  std::vector<Possible> possible_;
  static constexpr Index kNoHit = 0xFFFFFFFF;
};

}  // namespace keydrift::reading

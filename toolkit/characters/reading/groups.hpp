#pragma once
// What the words of a clause say before it becomes statements: clusters of neighbouring words, and
// groups of clusters that are alternatives.

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "keydrift/characters/reading/draft.hpp"

namespace keydrift::reading {

// What one or several neighbouring words say of one character (of two for "4–6 × 2–3 mm").
struct Cluster {
  std::vector<DraftAtom> all;
  Origin origin{Origin::opaque};
  std::optional<std::uint32_t> row;  // lexicon character
  std::uint32_t first{};             // tokens
  std::uint32_t last{};
  // Where its second state begins: "ovate to rarely elliptic".
  std::optional<std::uint32_t> second_begin;
  bool own_subject{false};  // its words name the structure
  bool backwards{false};
  bool unitless{false};
  bool or_rarely{false};
};

// Alternatives, each a conjunction.
struct Group {
  std::vector<std::vector<Cluster>> alternatives;
  std::uint32_t first{};  // tokens
  std::uint32_t last{};
  // Behind this token a hedge speaks of an additional alternative only.
  std::optional<std::uint32_t> alternatives_begin;
  std::vector<std::string> rest;  // see Draft
  std::string whole;

  void consists_of(Cluster cluster) {
    alternatives.clear();
    alternatives.emplace_back().push_back(std::move(cluster));
  }
};

[[nodiscard]] Cluster opaque_cluster(std::string words, bool negated, std::uint32_t first,
                                     std::uint32_t last);

// Both speak of one and the same character.
[[nodiscard]] bool same_character(Cluster const& a, Cluster const& b);

// Either the one or the other.  Precondition: same_character().
void widen(Cluster& into, Cluster from);

// "ovate, lanceolate or elliptic": commas between states of one character widen, too.  True when
// the group went into the one before it.
[[nodiscard]] bool continues_list(Group& before, Group& group);

// The statements that together say what the group says: (a and b) or c = (a or c) and (b or c).
[[nodiscard]] std::vector<std::vector<DraftAtom>> conjunction(Group group);

// The least certain of its parts.
[[nodiscard]] Origin origin_of(Group const& group);

}  // namespace keydrift::reading

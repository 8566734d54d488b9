#pragma once
// Why a couplet was paired with the one it was paired with, or with none: the parts of the
// agreement, one by one, and the couplets that came next.
//
// Agreements are shares in [0, 1]; those of a pair are the ones that the collation itself has.  A
// pair is made when it is credible (alignment.hpp) and belongs to the choice of pairs that is worth
// most over the whole key.

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "keydrift/collation/collation.hpp"

namespace keydrift {

// Statements that were compared with each other; one side only where nothing on the other side
// speaks of the like.
struct StatementReasons {
  std::optional<StatementId> old_statement;
  std::optional<StatementId> new_statement;
  double agreement{};
};

// Leads that answer to each other; one side only for a lead added or dropped.
struct LeadReasons {
  std::optional<LeadId> old_lead;
  std::optional<LeadId> new_lead;
  double taxa{};
  double statements{};
  // Taxa that both editions have, below the two leads (those of one edition only weigh nothing).
  std::vector<TaxonId> below_both;  // ids of the new edition
  std::vector<TaxonId> below_old_only;
  std::vector<TaxonId> below_new_only;
  std::vector<StatementReasons> compared;  // by new statement, those of the old one alone last
};

enum class NeighbourPlace {
  start,   // the couplet begins a key
  before,  // a lead that leads to one of the two couplets
  behind,  // what a pair of leads leads to
};
[[nodiscard]] char const* to_word(NeighbourPlace place);

struct NeighbourReasons {
  NeighbourPlace place{};
  std::optional<LeadId> old_lead;  // before: of one edition only
  std::optional<LeadId> new_lead;
  double agreement{};  // 1: the counterparts correspond; 0.5: across one couplet, or another lead
  unsigned weight{};   // in the mean that the neighbours' agreement is
};

enum class WhyNot {
  too_unlike,     // neither the taxa nor the statements agree enough to be one couplet
  better_taken,   // is the counterpart of a couplet that it agrees with more, or as much
  worth_more_so,  // is the counterpart of one that it agrees with less: all pairs together are
                  // worth more so
  agrees_less,    // is the counterpart of none; the couplet has a better one
  part,           // is a further part of the same couplet, which was split or merged
  no_candidate,   // shares no set of taxa and no rare word, statement or neighbour: not looked at
};
[[nodiscard]] char const* to_word(WhyNot why);

struct RunnerUp {
  CoupletId couplet;  // of the other edition
  Similarity similarity;
  WhyNot why{};
  std::optional<CoupletId> taken_by;  // its counterpart, of this edition
  Similarity taken_with;              // of that pair
};

struct CoupletReasons {
  bool of_new{false};  // the edition of `couplet`
  CoupletId couplet;
  std::optional<CoupletId> counterpart;  // of the other edition
  std::optional<CoupletId> part_of;      // no counterpart: the couplet that was split or merged
  bool part_apart{false};                // …and no lead leads from or to another part of it
  Similarity similarity;                 // with the counterpart
  // One of the two has more leads: the similarity in taxa and statements is that of the other one
  // taken together with this couplet behind it (of the edition of the one with fewer leads).
  std::optional<CoupletId> together_with;
  std::vector<LeadReasons> leads;
  std::vector<NeighbourReasons> neighbours;
  std::vector<RunnerUp> runners_up;  // the most similar first, at most most_runners_up
};
inline constexpr std::size_t most_runners_up = 5;
// What two couplets must agree in at least to be one: in all, and besides in the taxa, or in the
// statements (then more in all), or in either of these less and in the neighbours, or in taxa and
// statements still less and more in all.
struct LeastAgreement {
  double total{};
  double taxa{};
  double statements{};
  double total_with_statements{};
  double taxa_with_neighbours{};
  double neighbours{};
  double statements_with_neighbours{};
  double neighbours_with_statements{};
  double taxa_with_statements{};
  double statements_with_taxa{};
  double total_with_both{};
};
[[nodiscard]] LeastAgreement least_agreement();
// Weights of the parts in the total: taxa, statements, neighbours.
[[nodiscard]] std::array<unsigned, 3> similarity_weights();

// Of each couplet with this label, the old edition's first; those of the new edition that are
// counterparts of one told already are left out.  Empty when no couplet bears the label.
// Every couplet of the other edition is compared: O(couplets) for each one told of.
// Precondition: `collation` is what collate() made of the same editions and the same map.
[[nodiscard]] std::vector<CoupletReasons> reasons_for(
    std::string_view label, Edition const& old_edition, KeyGraph const& old_graph,
    Edition const& new_edition, KeyGraph const& new_graph, Collation const& collation);

}  // namespace keydrift

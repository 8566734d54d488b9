#pragma once
// Collating two editions: the result values, and the one function that makes them.
//
// Everything a report shows is in here; reports never compute.  Ids of old_… members belong to the
// old edition, those of new_… members to the new one.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/collation/taxon_set.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

// --- couplets --------------------------------------------------------------------------------

// Agreement of two couplets, each part in [0, 1]; 1 = the same.
struct Similarity {
  double taxa{};        // how they part the shared taxa
  double statements{};  // what their leads say
  double neighbours{};  // agreement of the aligned couplets before and behind
  double total{};
};

// Leads of a pair of couplets that answer to each other; an absent side is a lead added or dropped.
struct LeadPair {
  std::optional<std::uint32_t> old_lead;  // ordinals
  std::optional<std::uint32_t> new_lead;
  bool operator==(LeadPair const&) const = default;
};

struct CoupletPair {
  CoupletId old_couplet;
  CoupletId new_couplet;
  Similarity similarity;
  std::vector<LeadPair> leads;  // in order of the new couplet's leads, dropped ones last
};

// The one-to-one part.
struct Alignment {
  std::vector<CoupletPair> pairs;   // by old couplet
  std::vector<CoupletId> only_old;  // ascending
  std::vector<CoupletId> only_new;
  // By new couplet: index into pairs, UINT32_MAX for none.  collate() fills it; of_new() looks
  // through the pairs where it is empty.
  std::vector<std::uint32_t> pair_of_new;
  [[nodiscard]] CoupletPair const* of_old(CoupletId couplet) const;
  [[nodiscard]] CoupletPair const* of_new(CoupletId couplet) const;
};

// Where a lead leads and where a couplet hangs is seen through inserted and removed couplets: an
// insertion between two couplets is told of the inserted one and makes neither of the two
// redirected or moved.
enum class CoupletEvent {
  kept,           // nothing but, perhaps, layout
  renumbered,     // another number
  leads_swapped,  // the leads stand in another order
  reworded,       // the words changed but no predicate did
  restated,       // a statement's predicate or strength changed, came or went
  redirected,     // a lead goes elsewhere (other than by renumbering)
  moved,          // hangs below another couplet or lead
  lead_added,
  lead_dropped,
  split,   // one old couplet became several new ones
  merged,  // several old couplets became one
  inserted,
  removed,
};
[[nodiscard]] char const* to_word(CoupletEvent event);

struct CoupletChange {
  std::vector<CoupletId> old_couplets;  // empty: inserted; several: merged
  std::vector<CoupletId> new_couplets;  // empty: removed; several: split
  std::vector<CoupletEvent> events;     // ascending, at least one
  Similarity similarity;                // of the best pair; zeros for inserted and removed
  std::vector<LeadPair> leads;          // of the best pair
  bool changes_meaning{false};          // more than kept, renumbered, leads_swapped, reworded
};

// --- taxa ------------------------------------------------------------------------------------

enum class TaxonEvent {
  same_route,      // the same aligned couplets and leads, with the same statements
  other_route,     // a step was added, dropped, or takes another lead
  restated_route,  // the same steps, but a statement on them changed
  renamed,         // same concept, another name
  split,           // one old concept, several new ones (or a part of one)
  lumped,          // several old concepts, one new one (or a part)
  overlapping,     // concepts overlap
  entered,         // no counterpart in the old edition
  left,            // no counterpart in the new edition
  more_ends,       // keys out in more places
  fewer_ends,
  only_by_exception,  // every route to it now goes through an exception (and did not before)
  no_longer_by_exception,
};
[[nodiscard]] char const* to_word(TaxonEvent event);

// One step of the two routes laid side by side.
struct RouteStep {
  std::optional<LeadId> old_lead;
  std::optional<LeadId> new_lead;
  bool aligned{false};    // the couplets correspond
  bool same_lead{false};  // and so do the leads
  bool restated{false};   // but what the lead says changed
};

inline constexpr std::size_t most_characters_told = 128;

// One for each pair of the matching that shares something (so a taxon split in two has two, and so
// has one lumped from two), one for each newcomer and one for each taxon that left.
struct TaxonChange {
  std::vector<TaxonId> old_taxa;  // related by the matching; empty: entered
  std::vector<TaxonId> new_taxa;  // empty: left
  Relation relation{Relation::congruent};
  MatchBasis basis{MatchBasis::same_name};
  std::vector<TaxonEvent> events;  // ascending
  std::uint64_t old_ends{};        // leads that name it
  std::uint64_t new_ends{};
  std::vector<RouteStep> steps;  // best-agreeing pair of routes; one-sided when entered or left
  std::optional<std::size_t> parting;  // index of the first step that differs
  // Very long routes are cut: agreeing steps at the start (of a one-sided route any) / steps at the
  // end that `steps` leaves out (routes.hpp says how many it holds).
  std::size_t steps_before{};
  std::size_t steps_after{};
  // Characters stated firmly (or with an exception) on its routes in one edition only, by id: of
  // very many the first most_characters_told, and how many others there are.
  std::vector<std::string> characters_lost;
  std::vector<std::string> characters_gained;
  std::size_t others_lost{};
  std::size_t others_gained{};
};

// --- characters ------------------------------------------------------------------------------

enum class RoleTransition {
  became_exception,   // firm -> excepted
  exception_widened,  // excepted for more groups
  exception_narrowed,
  exception_replaced,  // other groups
  became_hedged,       // firm or excepted -> hedged
  became_note,         // -> noted
  dropped,             // stated -> absent from the corresponding lead
  became_firm,         // excepted, hedged or noted -> firm
  became_stronger,     // noted -> hedged, hedged -> excepted
  introduced,          // absent -> stated
  limits_changed,      // numbers
  states_changed,      // other allowed states
  scope_limit_added,   // now limited to a sex, stage, material
  scope_limit_removed,
};
[[nodiscard]] char const* to_word(RoleTransition transition);

// A statement, by its place in an edition.
struct StatementId {
  LeadId lead;
  std::uint32_t ordinal{};
  auto operator<=>(StatementId const&) const = default;
};

struct RoleChange {
  std::string character;  // id
  RoleTransition transition{};
  std::optional<StatementId> old_statement;
  std::optional<StatementId> new_statement;
  std::optional<LeadId> old_lead;  // the corresponding leads, also where nothing is stated
  std::optional<LeadId> new_lead;
  std::vector<std::string> exceptions_added;  // groups, or single members of one
  std::vector<std::string> exceptions_removed;
  TaxonSet old_taxa;  // below the lead
  TaxonSet new_taxa;
  std::string numbers;              // for limits_changed: "5 mm → 4 mm" style, ready to print
  std::vector<std::string> limits;  // for scope_limit_…: those that came or went ("male")
};

// Where a character stands in an edition.
struct CharacterUse {
  std::string character;
  std::string label;
  bool opaque{false};
  std::vector<StatementId> old_uses;
  std::vector<StatementId> new_uses;
};

// --- the whole -------------------------------------------------------------------------------

struct Collation {
  TaxonMatching taxa_matching;
  Alignment alignment;
  std::vector<CoupletChange>
      couplets;                   // in order of the new edition, removed ones where they stood
  std::vector<TaxonChange> taxa;  // changed ones and unchanged ones; new order, left last
  std::vector<RoleChange> roles;  // exception notes first, then by transition, then by place
  std::vector<CharacterUse> characters;    // by label
  std::vector<Finding> mended;             // findings of the old edition that vanished
  std::vector<Finding> introduced;         // findings of the new edition that were not there
  std::vector<Finding> lasting;            // findings of the new edition that the old one had too
  std::vector<std::string> scope_changes;  // "region: Halvern Basin → Halvern Basin and …"
  Coverage old_coverage, new_coverage;
  bool changes_meaning{false};  // anything but renumbering, re-layout, rewording
};

// Preconditions: read_statements() was run on both editions together.
// map may be nullptr.
[[nodiscard]] Collation collate(Edition const& old_edition, KeyGraph const& old_graph,
                                Edition const& new_edition, KeyGraph const& new_graph,
                                Lexicon const& lexicon, ConceptMap const* map,
                                ParentTable const& parents);
// The same for who has match_taxa() of the two.
[[nodiscard]] Collation collate(Edition const& old_edition, KeyGraph const& old_graph,
                                Edition const& new_edition, KeyGraph const& new_graph,
                                Lexicon const& lexicon, TaxonMatching matching,
                                ParentTable const& parents);

}  // namespace keydrift

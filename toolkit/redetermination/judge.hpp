#pragma once
// From evidence to verdict: both editions walked over every completion of the evidence.

#include <optional>
#include <vector>

#include "keydrift/collation/collation.hpp"
#include "keydrift/redetermination/compiled_key.hpp"
#include "keydrift/redetermination/outcome.hpp"
#include "keydrift/redetermination/walk.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {

// Borrowed; all of it must outlive whoever holds this.
struct Sides {
  CompiledKey const* old_key{};
  CompiledKey const* new_key{};
  Collation const* collation{};
};

// What the recorded name means in both editions.
struct Determination {
  bool named{false};
  std::string name{};  // as judged
  std::string key{};   // name_key() of it; "": to be asked
  Placement in_old;
  Placement in_new;
};

// One possibility: completions in `box` come out as these terminals.
struct Hypothesis {
  std::optional<TaxonId> old_taxon{};  // absent: the old edition gives no name
  TaxonId new_taxon{};
  Box box{};               // inside the evidence
  std::size_t old_leaf{};  // index into Possibilities::old_leaves
  Route route{};           // in the new edition
  bool through_exception{false};
};

// How a new terminal relates to the name on the specimen.
enum class Kinship {
  same,     // same concept (or one that takes it in whole), same name
  renamed,  // the same, under another name
  part,     // the old concept was split; this is a part (same name or not)
  part_same_name,
  other,
};

struct Possibilities {
  std::vector<Leaf> old_leaves{};  // ways to the recorded name (taxon unset when none is known)
  bool old_named{true};            // false: no old terminal is known, the one leaf is the record
  // Do the old leaves tell what is known (a recorded name implies its routes)?  Else they are only
  // what the old edition would make of the record, and what is known is the record.
  bool implied{false};
  std::vector<Hypothesis> hypotheses{};
  std::vector<Strand> strands{};  // of the new edition
  std::vector<Followed> old_followed, new_followed{};
  bool complete{true};
};

// From now on what is found is what the record alone allows in the new edition: `ways` were walked
// from it, with no name in mind.
void take_ways_of_record(Possibilities& found, Box const& recorded, std::vector<Leaf>&& ways);

// Precondition: the ways were walked in these keys.
[[nodiscard]] Footing footing_of(Sides const& sides, Possibilities const& found);

class Judge {
 public:
  explicit Judge(Sides sides) : sides_{sides} {}

  // recorded: what the record says (CharacterSpace::anything() where it says nothing).
  [[nodiscard]] Verdict judge(Determination const& determination, Box const& recorded,
                              bool any_recorded, Reading reading) const;

  // The same for a name that the new edition gave.  Precondition: it has the name.
  [[nodiscard]] Verdict judge_named_by_new(Determination const& determination, Box const& recorded,
                                           bool any_recorded, Reading reading) const;
  // The same for a name that neither edition gave; `edition` is the label of the one that did, ""
  // for one older than any.
  [[nodiscard]] Verdict judge_named_elsewhere(Determination const& determination,
                                              Box const& recorded, bool any_recorded,
                                              Reading reading, std::string const& edition) const;

  // Somebody who saw the specimen gave it this terminal's name: what remains possible is that name,
  // and the outcome how it relates to the recorded one.
  void take_name(Verdict& verdict, Determination const& determination, TaxonId named) const;

  [[nodiscard]] Kinship kinship(Determination const& determination,
                                std::optional<TaxonId> old_taxon, TaxonId new_taxon) const;
  // The outcome that a set of hypotheses amounts to; stranded when there are none.
  [[nodiscard]] Outcome outcome_of(Determination const& determination,
                                   std::vector<Hypothesis const*> const& hypotheses) const;

  // The questions that settle the verdict, best first (node 0), for their trouble.
  [[nodiscard]] std::vector<Question> questions(Determination const& determination,
                                                Possibilities const& possibilities) const;

 private:
  [[nodiscard]] Possibilities explore(Determination const& determination, Box const& recorded,
                                      bool any_recorded, Reading reading) const;
  [[nodiscard]] Outcome outcome_of(Determination const& determination, Possibilities const& found,
                                   bool any_recorded) const;
  // What another reading makes of the same completions of the evidence.
  [[nodiscard]] Outcome outcome_under(Reading other, Determination const& determination,
                                      Box const& recorded, bool any_recorded,
                                      Possibilities const& found, Outcome outcome) const;
  [[nodiscard]] std::vector<PossibleTerminal> terminals(Possibilities const& possibilities,
                                                        Box const& recorded) const;
  [[nodiscard]] std::optional<Parting> parting(Determination const& determination,
                                               Possibilities const& possibilities,
                                               std::optional<CoupletId> strands_at,
                                               Box const& recorded) const;
  [[nodiscard]] std::vector<PartialFit> partial_fits(Possibilities const& possibilities,
                                                     Box const& recorded) const;

  Sides sides_;
};

// Leads of the visited couplets that the box fits in part and fails in part.
void find_partial_fits(CompiledKey const& key, std::vector<Followed> const& followed,
                       Box const& box, bool in_new, std::vector<PartialFit>& out);

}  // namespace keydrift

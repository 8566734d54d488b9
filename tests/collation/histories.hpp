#pragma once
// Random keys and random histories of them.  Everything that persists through edits has an identity
// of its own, so that what a collation must report can be told without aligning anything
// (history_cases.hpp).

#include <array>
#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "edition_builder.hpp"
#include "keydrift/taxa/concepts.hpp"

namespace keydrift::test {

// The same numbers on every platform, which the distributions of <random> do not promise.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_{seed} {}
  std::size_t below(std::size_t bound) { return static_cast<std::size_t>(engine_() % bound); }
  bool one_in(std::size_t n) { return below(n) == 0; }
  bool percent(std::size_t share) { return below(100) < share; }

 private:
  std::mt19937_64 engine_;
};

// --- the key -----------------------------------------------------------------------------------

struct DraftStatement {
  std::size_t id{};         // through all edits
  std::string words{};      // as printed; of an opaque statement also its state
  std::string character{};  // "" for an opaque statement
  std::string value{};      // "s1 | s2", "< 5 mm": in the notation of sketch.hpp
  bool hedged{false};
  bool noted{false};
  std::string sex{};                  // "male", "female", or no limit
  std::vector<std::size_t> except{};  // taxa
  bool copied{false};  // by a split or a merger: stands in several leads, under one id

  [[nodiscard]] bool decides() const { return !noted; }
};

struct DraftLead {
  std::size_t id{};  // through all edits
  std::vector<DraftStatement> statements;
  std::size_t node{};   // behind it; `terminal` for a taxon
  std::size_t taxon{};  // index into Draft::taxa
  bool joint{false};    // from one part of a split couplet to the other, summing up what is behind
  bool goes_on{false};  // of an inserted couplet: to what stood there before
};
inline constexpr std::size_t terminal = ~std::size_t{0};

// A couplet; keeps its index through all edits.
struct DraftNode {
  std::vector<DraftLead> leads{};
  bool alive{true};
  bool split_or_merged{false};  // either part may be taken for the whole
};

struct Draft {
  std::vector<DraftNode> nodes;
  std::size_t root{0};
  std::vector<std::string> taxa;  // names; a taxon keeps its index
  std::size_t next_id{0};         // of leads and statements
  std::size_t words{300};         // that statements are made of
  std::size_t characters{120};
  bool breadth_first{false};  // printed level by level instead of branch by branch
};

// Of a key: how the next couplet finds its place.  The last two are bushy, with couplets reached
// from several leads, or with taxa that key out in several places.
enum class Shape { balanced, bushy, comb, polytomous, reticulate, repeated };
inline constexpr std::array all_shapes{Shape::balanced,   Shape::bushy,      Shape::comb,
                                       Shape::polytomous, Shape::reticulate, Shape::repeated};
[[nodiscard]] char const* to_word(Shape shape);
// In a poor vocabulary couplets by the dozen say much the same.
enum class Vocabulary { rich, poor };
[[nodiscard]] Draft make_draft(std::size_t couplets, Shape shape, Dice& dice,
                               Vocabulary vocabulary = Vocabulary::rich);

// Numbered from 1 in printed order; `order` gets the node of each couplet.
[[nodiscard]] std::vector<CoupletSketch> print(Draft const& draft, std::vector<std::size_t>& order);

// --- its history -------------------------------------------------------------------------------

enum class EditKind {
  insert,        // a couplet with a newcomer, before another couplet
  remove,        // a couplet with its taxon
  split,         // a couplet of three leads becomes two couplets
  merge,         // two couplets become one of three leads
  move,          // what stands behind two leads changes places
  renumber,      // the couplets are printed in another order
  synonyms,      // other words, the same predicates
  clause_order,  // the statements of the leads in another order
  hedge,         // "usually" comes or goes
  rewrite,       // another set of characters
  swap_leads,    //
  add_taxon,     // as a lead of its own
  drop_taxon,    // of a couplet of three leads
  rename_taxon,  //
  split_taxon,   // by a new couplet
  lump_taxa,     // of a couplet that goes
  limits,        // numbers, or other states
  exception,     // added, widened, narrowed, removed
  sex,           // a limit to one sex comes or goes
  note,          // a statement becomes a note, or the other way round
  statement,     // a character is added or dropped
  repeat_taxon,  // a taxon keys out a second time
};
inline constexpr std::size_t edit_kinds = static_cast<std::size_t>(EditKind::repeat_taxon) + 1;
[[nodiscard]] char const* to_word(EditKind kind);

struct Edit {
  EditKind kind{};
  std::size_t node{};  // couplet it is made on
  std::uint64_t seed{};
  bool on_part{false};  // made on the lower part, once the couplet was split
};

// Several edits of the same couplet, or of couplets that hang on each other.
//
// What a collation must report of them is what a person who had both editions before them would
// say; where two readings are equally good, either is right:
//  - Of a couplet that was split or merged either part may be taken for its counterpart.  Its leads
//    are the same leads in whichever part they stand, and what became of their statements is told
//    of them.  Statements that a split repeats in the lead from part to part, and those that a
//    merger repeats in every lead that they held for, neither came nor went.
//  - A couplet (or a part of one that was merged) of which neither a third of the statements nor
//    three quarters of how it parts the taxa have stayed (it was rewritten while taxa moved about
//    below it) may be taken for another couplet: neither its pair, nor the roles told of its leads,
//    nor whether the ways through it are the same is scored. The same holds of one that rests on a
//    single character, is put in other words throughout, hangs elsewhere and parts none of its
//    taxa: that the character is the same is all that a reader sees, and other couplets rest on it
//    too.
//  - A couplet that is inserted and at once united with the one before it was never printed: the
//    lead to where it stood says more than before, and leads were added.
enum class Recipe {
  split_and_reworded,   // split, the parts in other words, swapped leads, clauses in another order
  merged_and_reworded,  //
  roles_in_split,       // split; hedges, limits, exceptions, notes within the parts
  roles_in_merged,      //
  lumped_in_moved,      // taxa lumped in a part of the key that is moved
  rewritten_in_moved,   // a couplet has other characters in a part of the key that is moved
  moved_and_reworded,   //
  restated_all_over,    // hedge, limits, a statement more or less, other words: of one couplet
  inserted_in_a_row,    // two couplets before one, and that one's leads swapped
  taxa_changed,         // of one couplet: a taxon added, one renamed, one split; leads swapped
  reordered,            // a whole subtree with its leads the other way round
};
inline constexpr std::size_t recipes = static_cast<std::size_t>(Recipe::reordered) + 1;
[[nodiscard]] char const* to_word(Recipe recipe);

// What an edit history did besides changing the draft.
struct History {
  std::vector<ConceptRow> rows;  // the concept map that goes with it
  // Node that became (old node, further new node) by a split, or (further old node, new node) by a
  // merge: either may be taken for the counterpart.
  std::vector<std::pair<std::size_t, std::size_t>> parts;
  // Old and new taxon, where they are not simply the same.
  std::vector<std::pair<std::size_t, std::size_t>> split_taxa;
  std::vector<std::pair<std::size_t, std::size_t>> lumped_taxa;
  std::vector<EditKind> done;  // edits that found something to do
};

// Edits on `percent` in a hundred couplets, each on a couplet of its own; of all kinds, or of one.
[[nodiscard]] std::vector<Edit> plan_edits(Draft const& draft, std::size_t percent, Dice& dice);
[[nodiscard]] std::vector<Edit> plan_edits(Draft const& draft, std::size_t percent, Dice& dice,
                                           EditKind kind);
// Recipes until `percent` in a hundred couplets are edited, each several times or beside each
// other; all recipes, or one.
[[nodiscard]] std::vector<Edit> plan_gathered_edits(Draft const& draft, std::size_t percent,
                                                    Dice& dice, std::optional<Recipe> recipe);
// Each edit has dice of its own: leaving some out leaves the others what they are, as far as the
// key that they find allows.
[[nodiscard]] History apply_edits(Draft& draft, std::vector<Edit> const& edits);

// --- keys that nobody should print ---------------------------------------------------------------

// Couplets and taxa reached from several leads; with `broken` also cycles, couplets out of reach,
// leads to nowhere and couplets with a single lead.
enum class Tangle { sound, broken };
[[nodiscard]] std::vector<CoupletSketch> make_tangle(std::size_t couplets, std::size_t taxa,
                                                     Tangle kind, Dice& dice);

}  // namespace keydrift::test

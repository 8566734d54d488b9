#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

char const* to_word(NameLikeness likeness) {
  switch (likeness) {
    case NameLikeness::identical: return "identical";
    case NameLikeness::spelling: return "spelling";
    case NameLikeness::gender: return "gender";
    case NameLikeness::variant: return "variant";
    case NameLikeness::recombination: return "recombination";
    case NameLikeness::misprint: return "misprint";
    case NameLikeness::different: return "different";
  }
  return "different";
}

char const* to_word(Relation relation) {
  switch (relation) {
    case Relation::congruent: return "congruent";
    case Relation::includes: return "includes";
    case Relation::included_in: return "included in";
    case Relation::overlaps: return "overlaps";
    case Relation::disjoint: return "disjoint";
  }
  return "disjoint";
}

Relation converse(Relation relation) {
  switch (relation) {
    case Relation::includes: return Relation::included_in;
    case Relation::included_in: return Relation::includes;
    case Relation::congruent:
    case Relation::overlaps:
    case Relation::disjoint: return relation;
  }
  return relation;
}

char const* to_word(MatchBasis basis) {
  switch (basis) {
    case MatchBasis::same_name: return "same name";
    case MatchBasis::spelling: return "spelling";
    case MatchBasis::synonymy: return "synonymy";
    case MatchBasis::concept_map: return "concept map";
    case MatchBasis::containment: return "containment";
  }
  return "same name";
}

}  // namespace keydrift

#include "keydrift/collation/collation.hpp"

namespace keydrift {

char const* to_word(CoupletEvent event) {
  switch (event) {
    case CoupletEvent::kept:
      return "kept";
    case CoupletEvent::renumbered:
      return "renumbered";
    case CoupletEvent::leads_swapped:
      return "leads swapped";
    case CoupletEvent::reworded:
      return "reworded";
    case CoupletEvent::restated:
      return "restated";
    case CoupletEvent::redirected:
      return "redirected";
    case CoupletEvent::moved:
      return "moved";
    case CoupletEvent::lead_added:
      return "lead added";
    case CoupletEvent::lead_dropped:
      return "lead dropped";
    case CoupletEvent::split:
      return "split";
    case CoupletEvent::merged:
      return "merged";
    case CoupletEvent::inserted:
      return "inserted";
    case CoupletEvent::removed:
      return "removed";
  }
  return "kept";
}

char const* to_word(TaxonEvent event) {
  switch (event) {
    case TaxonEvent::same_route:
      return "same route";
    case TaxonEvent::other_route:
      return "other route";
    case TaxonEvent::restated_route:
      return "route restated";
    case TaxonEvent::renamed:
      return "renamed";
    case TaxonEvent::split:
      return "split";
    case TaxonEvent::lumped:
      return "lumped";
    case TaxonEvent::overlapping:
      return "overlapping";
    case TaxonEvent::entered:
      return "entered";
    case TaxonEvent::left:
      return "left";
    case TaxonEvent::more_ends:
      return "keys out in more places";
    case TaxonEvent::fewer_ends:
      return "keys out in fewer places";
    case TaxonEvent::only_by_exception:
      return "now reached only through an exception";
    case TaxonEvent::no_longer_by_exception:
      return "no longer reached only through an exception";
  }
  return "same route";
}

char const* to_word(RoleTransition transition) {
  switch (transition) {
    case RoleTransition::became_exception:
      return "became an exception note";
    case RoleTransition::exception_widened:
      return "exception widened";
    case RoleTransition::exception_narrowed:
      return "exception narrowed";
    case RoleTransition::exception_replaced:
      return "exception for other groups";
    case RoleTransition::became_hedged:
      return "became hedged";
    case RoleTransition::became_note:
      return "became a note";
    case RoleTransition::dropped:
      return "dropped";
    case RoleTransition::became_firm:
      return "became firm";
    case RoleTransition::became_stronger:
      return "became stronger";
    case RoleTransition::introduced:
      return "introduced";
    case RoleTransition::limits_changed:
      return "limits changed";
    case RoleTransition::states_changed:
      return "states changed";
    case RoleTransition::scope_limit_added:
      return "scope limit added";
    case RoleTransition::scope_limit_removed:
      return "scope limit removed";
  }
  return "dropped";
}

}  // namespace keydrift

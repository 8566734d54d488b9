// Does the scope of an edition cover a specimen?

#include <algorithm>

#include "keydrift/characters/limit_words.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {
namespace {

ScopeAnswer covers_word(LimitKind kind, std::string const& wanted, std::string const& shown) {
  if (wanted.empty() || shown.empty()) return ScopeAnswer::unknown;
  auto const word = canonical_limit(kind, shown);
  if (word.empty()) return ScopeAnswer::unknown;
  return word == canonical_limit(kind, wanted) ? ScopeAnswer::covered : ScopeAnswer::outside;
}

}  // namespace

ScopeAnswer covers(Scope const& scope, Specimen const& specimen) {
  auto const sex = covers_word(LimitKind::sex, scope.sex, specimen.sex);
  auto const stage = covers_word(LimitKind::life_stage, scope.life_stage, specimen.life_stage);
  auto place = ScopeAnswer::unknown;
  // Without a list of places the region is prose, and prose is not matched against localities.
  if (!scope.places.empty() && !specimen.places.empty()) {
    place = ScopeAnswer::outside;
    for (auto const& known : specimen.places) {
      auto const folded = normalised_words(known);
      for (auto const& covered : scope.places) {
        if (folded == normalised_words(covered)) place = ScopeAnswer::covered;
      }
    }
  }
  if (sex == ScopeAnswer::outside || stage == ScopeAnswer::outside ||
      place == ScopeAnswer::outside) {
    return ScopeAnswer::outside;
  }
  if (sex == ScopeAnswer::unknown && stage == ScopeAnswer::unknown) return place;
  return ScopeAnswer::covered;
}

}  // namespace keydrift

// Does the scope of an edition cover a specimen?

#include <algorithm>

#include "keydrift/characters/limit_words.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/redetermination/evidence_memo.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kScopeWordsKept = 200'000;

ScopeAnswer covers_word(LimitKind kind, std::string const& wanted, std::string const& shown) {
  if (wanted.empty() || shown.empty()) return ScopeAnswer::unknown;
  auto const word = canonical_limit(kind, shown);
  if (word.empty()) return ScopeAnswer::unknown;
  return word == canonical_limit(kind, wanted) ? ScopeAnswer::covered : ScopeAnswer::outside;
}

}  // namespace

ScopeAnswer covers(Scope const& scope, Specimen const& specimen) {
  return ScopeMemo{scope}.covers(specimen);
}

ScopeMemo::ScopeMemo(Scope const& scope) : scope_{scope} {
  for (auto const& place : scope.places) places_.push_back(normalised_words(place));
}

ScopeAnswer ScopeMemo::word(LimitKind kind, std::string const& wanted, std::string const& shown) {
  if (wanted.empty() || shown.empty()) return ScopeAnswer::unknown;
  key_.assign(1, static_cast<char>('0' + static_cast<int>(kind)));
  key_ += shown;
  if (auto const found = words_.find(key_); found != words_.end()) return found->second;
  if (words_.size() >= kScopeWordsKept) words_.clear();
  return words_.emplace(key_, covers_word(kind, wanted, shown)).first->second;
}

bool ScopeMemo::asks() const {
  return !places_.empty() || !scope_.sex.empty() || !scope_.life_stage.empty();
}

ScopeAnswer ScopeMemo::sex(std::string const& shown) {
  return word(LimitKind::sex, scope_.sex, shown);
}

ScopeAnswer ScopeMemo::life_stage(std::string const& shown) {
  return word(LimitKind::life_stage, scope_.life_stage, shown);
}

bool ScopeMemo::lists(std::string const& place) {
  if (places_.empty()) return false;
  if (auto const found = known_places_.find(place); found != known_places_.end()) {
    return found->second;
  }
  if (known_places_.size() >= kScopeWordsKept) known_places_.clear();
  auto const folded = normalised_words(place);
  bool const listed = std::find(places_.begin(), places_.end(), folded) != places_.end();
  return known_places_.emplace(place, listed).first->second;
}

ScopeAnswer ScopeMemo::together(ScopeAnswer sex, ScopeAnswer life_stage, bool any_place,
                                bool any_listed) const {
  // Without a list of places the region is prose, and prose is not matched against localities.
  auto const place = places_.empty() || !any_place ? ScopeAnswer::unknown
                     : any_listed                  ? ScopeAnswer::covered
                                                   : ScopeAnswer::outside;
  if (sex == ScopeAnswer::outside || life_stage == ScopeAnswer::outside ||
      place == ScopeAnswer::outside) {
    return ScopeAnswer::outside;
  }
  if (sex == ScopeAnswer::unknown && life_stage == ScopeAnswer::unknown) return place;
  return ScopeAnswer::covered;
}

ScopeAnswer ScopeMemo::covers(Specimen const& specimen) {
  if (!asks()) return ScopeAnswer::unknown;
  bool listed = false;
  for (auto const& place : specimen.places) listed = lists(place) || listed;
  return together(sex(specimen.sex), life_stage(specimen.life_stage), !specimen.places.empty(),
                  listed);
}

}  // namespace keydrift

// Does the scope of an edition cover a specimen?

#include <algorithm>

#include "keydrift/characters/limit_words.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/redetermination/evidence_memo.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kWordsKept = 200'000;

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
  if (words_.size() >= kWordsKept) words_.clear();
  return words_.emplace(key_, covers_word(kind, wanted, shown)).first->second;
}

ScopeAnswer ScopeMemo::covers(Specimen const& specimen) {
  auto const sex = word(LimitKind::sex, scope_.sex, specimen.sex);
  auto const stage = word(LimitKind::life_stage, scope_.life_stage, specimen.life_stage);
  auto place = ScopeAnswer::unknown;
  // Without a list of places the region is prose, and prose is not matched against localities.
  if (!places_.empty() && !specimen.places.empty()) {
    place = ScopeAnswer::outside;
    for (auto const& named : specimen.places) {
      auto found = known_places_.find(named);
      if (found == known_places_.end()) {
        if (known_places_.size() >= kWordsKept) known_places_.clear();
        auto const folded = normalised_words(named);
        found =
            known_places_
                .emplace(named, std::find(places_.begin(), places_.end(), folded) != places_.end())
                .first;
      }
      if (found->second) place = ScopeAnswer::covered;
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

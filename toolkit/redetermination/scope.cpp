// Does the scope of an edition cover a specimen?

#include <algorithm>

#include "keydrift/characters/reading.hpp"
#include "keydrift/redetermination/redeterminer.hpp"

namespace keydrift {
namespace {

// Singular and plural of the words for sexes and stages as collections write them.
std::string stage_word(std::string_view text) {
  auto word = normalised_words(text);
  static constexpr std::pair<std::string_view, std::string_view> kSame[] = {
      {"adults", "adult"}, {"imago", "adult"},    {"larvae", "larva"}, {"juveniles", "juvenile"},
      {"males", "male"},   {"females", "female"}, {"m", "male"},       {"f", "female"},
      {"♂", "male"},       {"♀", "female"}};
  for (auto const& [from, to] : kSame) {
    if (word == from || text == from) return std::string{to};
  }
  return word;
}

ScopeAnswer covers_word(std::string const& wanted, std::string const& shown) {
  if (wanted.empty() || shown.empty()) return ScopeAnswer::unknown;
  auto const stage = stage_word(shown);
  if (stage.empty() || stage == "undetermined" || stage == "unknown") return ScopeAnswer::unknown;
  return stage == stage_word(wanted) ? ScopeAnswer::covered : ScopeAnswer::outside;
}

}  // namespace

ScopeAnswer covers(Scope const& scope, Specimen const& specimen) {
  auto const sex = covers_word(scope.sex, specimen.sex);
  auto const stage = covers_word(scope.life_stage, specimen.life_stage);
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

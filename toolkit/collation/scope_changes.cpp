#include <algorithm>
#include <string>
#include <string_view>

#include "keydrift/characters/reading.hpp"
#include "keydrift/collation/ground.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift::collating {
namespace {

void compare_words(std::string_view label, std::string const& was, std::string const& is,
                   std::vector<std::string>& changes) {
  if (was == is || normalised_words(was) == normalised_words(is)) return;
  auto const said = [](std::string const& words) { return words.empty() ? "not said" : words; };
  changes.push_back(std::string{label} + ": " + said(was) + " → " + said(is));
}

std::string joined(std::vector<std::string> const& list) {
  std::string text;
  for (auto const& item : list) {
    if (!text.empty()) text += ", ";
    text += item;
  }
  return text;
}

// What `was` and `is` show of the whole lists `all_was` and `all_is`: an item is added or gone only
// when the other list does not have it at all.
template <class KeyOf>
void compare_parts(std::string_view label, std::vector<std::string> const& was,
                   std::vector<std::string> const& is, std::vector<std::string> const& all_was,
                   std::vector<std::string> const& all_is, KeyOf const& key_of,
                   std::vector<std::string>& changes) {
  auto const only_in = [&](std::vector<std::string> const& list,
                           std::vector<std::string> const& others) {
    std::vector<std::string> keys;
    for (auto const& item : others) keys.push_back(key_of(item));
    std::sort(keys.begin(), keys.end());
    std::vector<std::string> only;
    for (auto const& item : list) {
      if (!std::binary_search(keys.begin(), keys.end(), key_of(item))) only.push_back(item);
    }
    return only;
  };
  auto const added = only_in(is, all_was);
  auto const removed = only_in(was, all_is);
  if (added.empty() && removed.empty()) return;
  std::string text{label};
  text += ": ";
  if (!added.empty()) text += "now also " + joined(added);
  if (!added.empty() && !removed.empty()) text += "; ";
  if (!removed.empty()) text += "no longer " + joined(removed);
  changes.push_back(std::move(text));
}

template <class KeyOf>
void compare_lists(std::string_view label, std::vector<std::string> const& was,
                   std::vector<std::string> const& is, KeyOf const& key_of,
                   std::vector<std::string>& changes) {
  compare_parts(label, was, is, was, is, key_of, changes);
}

// Listed taxa that do not key out: the others are told as taxa of the key.
std::vector<std::string> not_keyed(Edition const& edition) {
  if (edition.front.scope.listed_taxa.empty()) return {};
  std::vector<std::string> keyed;
  for (auto const& taxon : edition.taxa) keyed.push_back(name_key(taxon.name));
  std::sort(keyed.begin(), keyed.end());
  std::vector<std::string> names;
  for (auto const& name : edition.front.scope.listed_taxa) {
    if (!std::binary_search(keyed.begin(), keyed.end(), name_key(name))) names.push_back(name);
  }
  return names;
}

}  // namespace

std::vector<std::string> scope_changes(Edition const& old_edition, Edition const& new_edition) {
  auto const& old_scope = old_edition.front.scope;
  auto const& new_scope = new_edition.front.scope;
  std::vector<std::string> changes;
  auto const words = [](std::string const& text) { return normalised_words(text); };
  auto const names = [](std::string const& name) { return name_key(name); };
  compare_words("taxa", old_scope.taxa, new_scope.taxa, changes);
  compare_words("region", old_scope.region, new_scope.region, changes);
  compare_lists("places", old_scope.places, new_scope.places, words, changes);
  compare_words("life stage", old_scope.life_stage, new_scope.life_stage, changes);
  compare_words("sex", old_scope.sex, new_scope.sex, changes);
  compare_words("material", old_scope.material, new_scope.material, changes);
  compare_lists("taxa left out", old_scope.excluded_taxa, new_scope.excluded_taxa, names, changes);
  compare_parts("taxa listed", not_keyed(old_edition), not_keyed(new_edition),
                old_scope.listed_taxa, new_scope.listed_taxa, names, changes);
  return changes;
}

}  // namespace keydrift::collating

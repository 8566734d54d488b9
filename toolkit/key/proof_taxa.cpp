// Do the terminals agree with what the front matter says the key covers, and with one another?

#include <algorithm>
#include <map>
#include <optional>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

// Names are compared as printed words here; the Codes' habits belong to keydrift/taxa.  A list may
// add the author ("Aus bus Smith") or give the group only ("Aus"): one name that begins with the
// other, word by word, is covered by it.
bool covers(std::string const& shorter, std::string const& longer) {
  return longer.starts_with(shorter) &&
         (longer.size() == shorter.size() || longer[shorter.size()] == ' ');
}

// Looks up which names of a set begin with a name or are its beginning.
class NameSet {
 public:
  // `row`: of the name in its list.
  void add(std::string_view name, std::size_t row = 0) {
    if (auto folded = fold_words(name); !folded.empty()) names_.emplace(std::move(folded), row);
  }
  [[nodiscard]] bool empty() const { return names_.empty(); }
  [[nodiscard]] bool agrees(std::string_view name) const {
    auto const folded = fold_words(name);
    // "aus bus" < "aus bus smith" < "aus busa": what begins with the name follows it, behind at
    // most names that go on with a byte below the blank, which folded words never hold.
    auto const next = names_.lower_bound(folded);
    if (next != names_.end() && covers(folded, next->first)) return true;
    return beginning(folded).has_value();
  }
  // The row of the name, or of the longest beginning of it, that is in the set.
  [[nodiscard]] std::optional<std::size_t> beginning(std::string const& folded) const {
    for (auto end = folded.size(); end != std::string::npos && end > 0;
         end = folded.rfind(' ', end - 1)) {
      if (auto const found = names_.find(folded.substr(0, end)); found != names_.end()) {
        return found->second;
      }
    }
    return std::nullopt;
  }

 private:
  std::map<std::string, std::size_t> names_;
};

void check_listed(ProofContext& context) {
  auto const& edition = context.edition;
  auto const& listed_taxa = edition.front.scope.listed_taxa;
  NameSet keyed;
  std::vector<std::string> names;
  bool const compares = !listed_taxa.empty() || !edition.front.synonyms.empty();
  for (TaxonId t; compares && t.index < edition.taxa.size(); ++t.index) {
    if (context.graph.leads_to(t).empty()) continue;
    keyed.add(edition[t].name);
    names.push_back(edition[t].name);
  }
  NameSet list;
  for (auto const& name : listed_taxa) list.add(name);
  for (auto const& synonymy : edition.front.synonyms) {
    if (keyed.agrees(synonymy.accepted)) keyed.add(synonymy.synonym);
    if (list.agrees(synonymy.synonym)) list.add(synonymy.accepted);
  }

  auto const& places = edition.front.scope.listed_places;
  for (std::size_t i = 0; i < listed_taxa.size(); ++i) {
    auto const& name = listed_taxa[i];
    if (keyed.agrees(name)) continue;
    auto remedy = context.near_names(name, names);
    if (remedy.empty()) remedy = "key it out, or take it off the list";
    context.report("listed-not-keyed", i < places.size() ? places[i] : Place{}, name,
                   "the front matter lists " + in_quotes(name) + ", which does not key out",
                   std::move(remedy));
  }
  for (TaxonId t; t.index < edition.taxa.size(); ++t.index) {
    auto const& taxon = edition[t];
    if (!context.graph.leads_to(t).empty()) {
      if (list.empty() || list.agrees(taxon.name)) continue;
      auto remedy = context.near_names(taxon.name, listed_taxa);
      if (remedy.empty()) remedy = "add it to the list, or leave it out of the key";
      context.report("keyed-not-listed", taxon.place, taxon.name,
                     in_quotes(taxon.name) + " keys out, but the front matter does not list it",
                     std::move(remedy));
    } else if (!list.agrees(taxon.name)) {  // else said above
      context.report("listed-not-keyed", taxon.place, taxon.name,
                     in_quotes(taxon.name) + " is among the taxa of the key, but does not key out",
                     "key it out, or leave it out of the taxa");
    }
  }
}

void check_excluded(ProofContext& context) {
  auto const& names = context.edition.front.scope.excluded_taxa;
  if (names.empty()) return;
  auto const& places = context.edition.front.scope.excluded_places;
  NameSet excluded;
  for (std::size_t i = 0; i < names.size(); ++i) excluded.add(names[i], i);
  for (auto const& taxon : context.edition.taxa) {
    auto const row = excluded.beginning(fold_words(taxon.name));
    if (!row) continue;
    auto& finding = context.report(
        "keyed-though-excluded", taxon.place, taxon.name,
        in_quotes(taxon.name) + " keys out, but the front matter says it is left out",
        "mend the front matter, or leave the taxon out of the key");
    if (*row < places.size()) {
      finding.related.push_back({places[*row], "the front matter leaves it out here"});
    }
  }
}

void check_repeated(ProofContext& context, TaxonId id) {
  auto const all = context.graph.leads_to(id);
  if (all.size() < 2) return;
  std::vector<LeadId> ends;
  for (auto const lead : all) {
    if (!context.is_repeated(lead.couplet)) ends.push_back(lead);
  }
  if (ends.size() < 2) return;
  auto const& taxon = context.edition[id];
  std::vector<std::string> names;
  bool remarked = true;
  // Keys of one file number their couplets alike.
  auto const key = context.key_of[ends.front().couplet.index];
  bool const several = std::any_of(ends.begin(), ends.end(), [&](LeadId lead) {
    return context.key_of[lead.couplet.index] != key;
  });
  for (auto const lead : ends) {
    auto const of_key =
        several ? " of " + context.key_name(context.key_of[lead.couplet.index]) : std::string{};
    names.push_back(context.lead(lead) + of_key);
    remarked = remarked && !context.edition[lead].taxon_remark.empty();
  }
  auto& finding = context.report(
      "taxon-repeated", context.edition[ends.front()].destination_place, taxon.name,
      in_quotes(taxon.name) + " keys out " + std::to_string(ends.size()) + " times: at leads " +
          in_prose(names),
      remarked ? std::string{} : "where this is meant, \"in part\" after the name says so");
  for (std::size_t i = 1; i < ends.size(); ++i) {
    finding.related.push_back(
        {context.edition[ends[i]].destination_place, "it keys out again at lead " + names[i]});
  }
}

}  // namespace

void check_taxa(ProofContext& context) {
  check_listed(context);
  check_excluded(context);
  for (TaxonId t; t.index < context.edition.taxa.size(); ++t.index) check_repeated(context, t);
}

}  // namespace keydrift::proofing

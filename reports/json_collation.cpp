// A collation as JSON.
#include "keydrift/reports/json.hpp"
#include "keydrift/reports/json_parts.hpp"

namespace keydrift {

using namespace reports;

namespace {

using json_parts::BothEditions;
using json_parts::Json;
using json_parts::list_of;
using json_parts::of;
using json_parts::put;
using json_parts::put_side;

Json strings(std::vector<std::string> const& texts) {
  return of(std::span<std::string const>{texts});
}

Json leads_of(std::vector<LeadPair> const& pairs) {
  auto json = Json::array();
  for (auto const& pair : pairs) {
    Json each = Json::object();
    if (pair.old_lead) each["old"] = *pair.old_lead;
    if (pair.new_lead) each["new"] = *pair.new_lead;
    json.push_back(std::move(each));
  }
  return json;
}

template <class Event>
Json events_of(std::vector<Event> const& events) {
  auto json = Json::array();
  for (auto const event : events) json.push_back(to_word(event));
  return json;
}

Json alignment_of(BothEditions const& sides, Alignment const& alignment) {
  Json json;
  auto pairs = Json::array();
  for (auto const& pair : alignment.pairs) {
    Json each;
    each["old"] = of(sides.old_edition, pair.old_couplet);
    each["new"] = of(sides.new_edition, pair.new_couplet);
    each["similarity"] = of(pair.similarity);
    each["leads"] = leads_of(pair.leads);
    pairs.push_back(std::move(each));
  }
  json["pairs"] = std::move(pairs);
  json["onlyOld"] = list_of(sides.old_edition, std::span<CoupletId const>{alignment.only_old});
  json["onlyNew"] = list_of(sides.new_edition, std::span<CoupletId const>{alignment.only_new});
  return json;
}

Json couplet_of(BothEditions const& sides, CoupletChange const& change) {
  Json json;
  json["old"] = list_of(sides.old_edition, std::span<CoupletId const>{change.old_couplets});
  json["new"] = list_of(sides.new_edition, std::span<CoupletId const>{change.new_couplets});
  json["events"] = events_of(change.events);
  json["changesMeaning"] = change.changes_meaning;
  json["similarity"] = of(change.similarity);
  json["leads"] = leads_of(change.leads);
  return json;
}

Json taxon_of(BothEditions const& sides, TaxonChange const& change) {
  Json json;
  json["old"] = list_of(sides.old_edition, std::span<TaxonId const>{change.old_taxa});
  json["new"] = list_of(sides.new_edition, std::span<TaxonId const>{change.new_taxa});
  if (!change.old_taxa.empty() && !change.new_taxa.empty()) {
    json["relation"] = to_word(change.relation);
    json["basis"] = to_word(change.basis);
  }
  json["events"] = events_of(change.events);
  json["oldEnds"] = change.old_ends;
  json["newEnds"] = change.new_ends;
  auto steps = Json::array();
  for (auto const& step : change.steps) {
    Json each = Json::object();
    put_side(each, "old", sides.old_edition, step.old_lead);
    put_side(each, "new", sides.new_edition, step.new_lead);
    each["aligned"] = step.aligned;
    each["sameLead"] = step.same_lead;
    each["restated"] = step.restated;
    steps.push_back(std::move(each));
  }
  json["steps"] = std::move(steps);
  if (change.steps_before > 0) json["stepsBefore"] = change.steps_before;
  if (change.steps_after > 0) json["stepsAfter"] = change.steps_after;
  if (change.parting) json["parting"] = *change.parting;
  put(json, "charactersLost", strings(change.characters_lost));
  put(json, "charactersGained", strings(change.characters_gained));
  if (change.others_lost > 0) json["otherCharactersLost"] = change.others_lost;
  if (change.others_gained > 0) json["otherCharactersGained"] = change.others_gained;
  return json;
}

Json role_of(BothEditions const& sides, RoleChange const& role) {
  Json json;
  json["character"] = role.character;
  json["transition"] = to_word(role.transition);
  put_side(json, "oldStatement", sides.old_edition, role.old_statement);
  put_side(json, "newStatement", sides.new_edition, role.new_statement);
  put_side(json, "oldLead", sides.old_edition, role.old_lead);
  put_side(json, "newLead", sides.new_edition, role.new_lead);
  put(json, "exceptionsAdded", strings(role.exceptions_added));
  put(json, "exceptionsRemoved", strings(role.exceptions_removed));
  put(json, "numbers", role.numbers);
  put(json, "limits", strings(role.limits));
  auto const old_taxa = role.old_taxa.list();
  auto const new_taxa = role.new_taxa.list();
  json["oldTaxa"] = list_of(sides.old_edition, std::span<TaxonId const>{old_taxa});
  json["newTaxa"] = list_of(sides.new_edition, std::span<TaxonId const>{new_taxa});
  return json;
}

Json use_of(BothEditions const& sides, CharacterUse const& use) {
  Json json;
  json["character"] = use.character;
  put(json, "label", use.label);
  json["opaque"] = use.opaque;
  json["oldUses"] = list_of(sides.old_edition, std::span<StatementId const>{use.old_uses});
  json["newUses"] = list_of(sides.new_edition, std::span<StatementId const>{use.new_uses});
  return json;
}

Json matching_of(BothEditions const& sides, TaxonMatching const& matching) {
  Json json;
  auto matches = Json::array();
  for (auto const& match : matching.matches) {
    Json each;
    each["old"] = of(sides.old_edition, match.old_taxon);
    each["new"] = of(sides.new_edition, match.new_taxon);
    each["relation"] = to_word(match.relation);
    each["basis"] = to_word(match.basis);
    each["sameName"] = match.same_name;
    put(each, "note", match.note);
    matches.push_back(std::move(each));
  }
  json["matches"] = std::move(matches);
  json["onlyOld"] = list_of(sides.old_edition, std::span<TaxonId const>{matching.only_old});
  json["onlyNew"] = list_of(sides.new_edition, std::span<TaxonId const>{matching.only_new});
  json["findings"] = of(std::span<Finding const>{matching.findings});
  return json;
}

template <class Value>
Json array_of(BothEditions const& sides, std::vector<Value> const& values,
              Json (*image)(BothEditions const&, Value const&)) {
  auto json = Json::array();
  for (auto const& value : values) json.push_back(image(sides, value));
  return json;
}

}  // namespace

std::string collation_json(Edition const& old_edition, Edition const& new_edition,
                           Collation const& collation, std::span<CoupletReasons const> why) {
  BothEditions const sides{old_edition, new_edition};
  auto json = json_parts::begin("collation");
  json["old"] = json_parts::whole(old_edition);
  json["new"] = json_parts::whole(new_edition);
  json["changesMeaning"] = collation.changes_meaning;
  json["scopeChanges"] = strings(collation.scope_changes);
  json["couplets"] = array_of(sides, collation.couplets, couplet_of);
  json["roles"] = array_of(sides, collation.roles, role_of);
  json["taxa"] = array_of(sides, collation.taxa, taxon_of);
  json["characters"] = array_of(sides, collation.characters, use_of);
  json["taxaMatching"] = matching_of(sides, collation.taxa_matching);
  json["alignment"] = alignment_of(sides, collation.alignment);
  json["mended"] = of(std::span<Finding const>{collation.mended});
  json["introduced"] = of(std::span<Finding const>{collation.introduced});
  json["lasting"] = of(std::span<Finding const>{collation.lasting});
  json["oldCoverage"] = of(collation.old_coverage);
  json["newCoverage"] = of(collation.new_coverage);
  auto reasons = Json::array();
  for (auto const& one : why) reasons.push_back(of(old_edition, new_edition, one));
  put(json, "why", std::move(reasons));
  return json_parts::finish(json);
}

}  // namespace keydrift

// Why couplets correspond, or have no counterpart, as JSON.
#include "keydrift/reports/json_parts.hpp"

namespace keydrift::reports::json_parts {
namespace {

Json lead_of(BothEditions const& sides, LeadReasons const& leads) {
  Json json = Json::object();
  put_side(json, "old", sides.old_edition, leads.old_lead);
  put_side(json, "new", sides.new_edition, leads.new_lead);
  if (!leads.old_lead || !leads.new_lead) return json;
  json["taxa"] = leads.taxa;
  json["statements"] = leads.statements;
  put(json, "belowBoth", list_of(sides.new_edition, std::span<TaxonId const>{leads.below_both}));
  put(json, "belowOldOnly",
      list_of(sides.old_edition, std::span<TaxonId const>{leads.below_old_only}));
  put(json, "belowNewOnly",
      list_of(sides.new_edition, std::span<TaxonId const>{leads.below_new_only}));
  auto compared = Json::array();
  for (auto const& pair : leads.compared) {
    Json each = Json::object();
    put_side(each, "old", sides.old_edition, pair.old_statement);
    put_side(each, "new", sides.new_edition, pair.new_statement);
    each["agreement"] = pair.agreement;
    compared.push_back(std::move(each));
  }
  put(json, "compared", std::move(compared));
  return json;
}

Json neighbour_of(BothEditions const& sides, NeighbourReasons const& neighbour) {
  Json json;
  json["place"] = to_word(neighbour.place);
  put_side(json, "old", sides.old_edition, neighbour.old_lead);
  put_side(json, "new", sides.new_edition, neighbour.new_lead);
  json["agreement"] = neighbour.agreement;
  json["weight"] = neighbour.weight;
  return json;
}

Json runner_up_of(BothEditions const& sides, bool of_new, RunnerUp const& runner_up) {
  Json json;
  json["couplet"] = of(sides.edition(!of_new), runner_up.couplet);
  json["similarity"] = of(runner_up.similarity);
  json["why"] = to_word(runner_up.why);
  if (runner_up.taken_by) {
    json["takenBy"] = of(sides.edition(of_new), *runner_up.taken_by);
    json["takenWith"] = of(runner_up.taken_with);
  }
  return json;
}

}  // namespace

Json of(Similarity const& similarity) {
  Json json;
  json["taxa"] = similarity.taxa;
  json["statements"] = similarity.statements;
  json["neighbours"] = similarity.neighbours;
  json["total"] = similarity.total;
  return json;
}

Json of(Edition const& old_edition, Edition const& new_edition, CoupletReasons const& reasons) {
  BothEditions const sides{old_edition, new_edition};
  Json json;
  json["edition"] = reasons.of_new ? "new" : "old";
  json["couplet"] = of(sides.edition(reasons.of_new), reasons.couplet);
  put_side(json, "counterpart", sides.edition(!reasons.of_new), reasons.counterpart);
  put_side(json, "partOf", sides.edition(!reasons.of_new), reasons.part_of);
  if (reasons.part_of) json["partApart"] = reasons.part_apart;
  if (reasons.counterpart) {
    auto const old_couplet = reasons.of_new ? *reasons.counterpart : reasons.couplet;
    auto const new_couplet = reasons.of_new ? reasons.couplet : *reasons.counterpart;
    put_side(json, "togetherWith",
             sides.edition(new_edition[new_couplet].leads.size() <
                           old_edition[old_couplet].leads.size()),
             reasons.together_with);
    json["similarity"] = of(reasons.similarity);
    auto leads = Json::array();
    for (auto const& pair : reasons.leads) leads.push_back(lead_of(sides, pair));
    json["leads"] = std::move(leads);
    auto neighbours = Json::array();
    for (auto const& one : reasons.neighbours) neighbours.push_back(neighbour_of(sides, one));
    json["neighbours"] = std::move(neighbours);
  }
  auto runners_up = Json::array();
  for (auto const& one : reasons.runners_up) {
    runners_up.push_back(runner_up_of(sides, reasons.of_new, one));
  }
  json["runnersUp"] = std::move(runners_up);
  return json;
}

}  // namespace keydrift::reports::json_parts

#include "keydrift/reports/json_parts.hpp"

#include <cmath>
#include <variant>

namespace keydrift::reports::json_parts {
namespace {

void put_open(Json& json, char const* name, bool set) {
  if (set) json[name] = true;
}

Json json_of_interval(Interval const& interval) {
  Json json = Json::object();
  // An end open by nature is left out.
  if (std::isfinite(interval.low)) json["low"] = interval.low;
  if (std::isfinite(interval.high)) json["high"] = interval.high;
  put_open(json, "lowOpen", interval.low_open);
  put_open(json, "highOpen", interval.high_open);
  return json;
}

Json json_of_atom(Atom const& atom) {
  Json json;
  json["character"] = atom.character;
  put(json, "states", json_parts::of(std::span<std::string const>{atom.states}));
  auto ranges = Json::array();
  for (auto const& range : atom.ranges) {
    Json each;
    each["usual"] = json_of_interval(range.usual);
    each["extreme"] = json_of_interval(range.extreme);
    put_open(each, "approximate", range.approximate);
    ranges.push_back(std::move(each));
  }
  if (!ranges.empty()) json["unit"] = atom.unit;
  put(json, "ranges", std::move(ranges));
  put_open(json, "negated", atom.negated);
  return json;
}

Json json_of_statement(Statement const& statement) {
  Json json;
  json["text"] = statement.text;
  json["strength"] = to_word(statement.strength);
  json["origin"] = to_word(statement.origin);
  auto any_of = Json::array();
  for (auto const& atom : statement.any_of) any_of.push_back(json_of_atom(atom));
  json["anyOf"] = std::move(any_of);
  put(json, "except", json_parts::of(std::span<std::string const>{statement.except}));
  put(json, "exceptionWords", statement.exception_words);
  put(json, "hedge", statement.hedge);
  auto limits = Json::array();
  for (auto const& limit : statement.limits) {
    limits.push_back({{"kind", to_word(limit.kind)}, {"value", limit.value}});
  }
  put(json, "limits", std::move(limits));
  return json;
}

Json destination_of(Edition const& edition, Lead const& lead) {
  Json json = Json::object();
  if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
    json["couplet"] = edition[couplet->couplet].label;
  } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    auto names = Json::array();
    for (auto const taxon : taxa->taxa) names.push_back(edition[taxon].name);
    json["taxa"] = std::move(names);
  } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
    json["key"] = key->key;
  } else {
    json["unresolved"] = std::get<Unresolved>(lead.destination).printed;
  }
  return json;
}

Json place_of(Place const& place) {
  Json json;
  json["line"] = place.line;
  json["column"] = place.column;
  return json;
}

}  // namespace

Json begin(std::string_view report) {
  Json json;
  json["keydrift"] = 1;
  json["report"] = report;
  return json;
}

std::string dump(Json const& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

std::string finish(Json const& json) { return dump(json) + '\n'; }

void put(Json& json, char const* name, std::string_view text) {
  if (!text.empty()) json[name] = text;
}

Json of(Edition const& edition, CoupletId couplet) {
  Json json;
  json["couplet"] = couplet.index;
  json["label"] = edition[couplet].label;
  return json;
}

Json of(Edition const& edition, LeadId lead) {
  Json json;
  json["couplet"] = lead.couplet.index;
  json["lead"] = lead.ordinal;
  json["name"] = lead_name(edition, lead);
  return json;
}

Json of(Edition const& edition, TaxonId taxon) {
  Json json;
  json["taxon"] = taxon.index;
  json["name"] = edition[taxon].name;
  return json;
}

Json of(Edition const& edition, StatementId statement) {
  auto json = of(edition, statement.lead);
  json["statement"] = statement.ordinal;
  auto const& statements = edition[statement.lead].statements;
  if (statement.ordinal < statements.size()) {
    json["text"] = statements[statement.ordinal].text;
    json["strength"] = to_word(statements[statement.ordinal].strength);
  }
  return json;
}

Json of(std::span<std::string const> texts) {
  auto json = Json::array();
  for (auto const& text : texts) json.push_back(text);
  return json;
}

Json of(Finding const& finding) {
  Json json;
  json["code"] = finding.code;
  json["severity"] = to_word(finding.severity);
  json["file"] = finding.file;
  json["line"] = finding.place.line;
  json["column"] = finding.place.column;
  put(json, "printed", finding.printed);
  json["message"] = finding.message;
  put(json, "remedy", finding.remedy);
  auto related = Json::array();
  for (auto const& each : finding.related) {
    auto place = place_of(each.place);
    place["message"] = each.message;
    related.push_back(std::move(place));
  }
  put(json, "related", std::move(related));
  return json;
}

Json of(std::span<Finding const> findings) {
  auto json = Json::array();
  for (auto const& finding : findings) json.push_back(of(finding));
  return json;
}

Json of(Coverage const& coverage) {
  Json json;
  json["statements"] = coverage.statements;
  json["byMark"] = coverage.by_mark;
  json["byLexicon"] = coverage.by_lexicon;
  json["byNumber"] = coverage.by_number;
  json["opaque"] = coverage.opaque;
  if (coverage.drafted) json["lexiconDrafted"] = true;
  return json;
}

Json of(Specimen const& specimen) {
  Json json;
  json["line"] = specimen.line;
  put(json, "catalogNumber", specimen.catalog_number);
  put(json, "occurrenceID", specimen.occurrence_id);
  put(json, "scientificName", specimen.scientific_name);
  put(json, "scientificNameAuthorship", specimen.authorship);
  put(json, "identificationQualifier", specimen.qualifier);
  put(json, "identifiedBy", specimen.identified_by);
  put(json, "dateIdentified", specimen.date_identified);
  put(json, "identificationReferences", specimen.identification_references);
  put(json, "typeStatus", specimen.type_status);
  put(json, "sex", specimen.sex);
  put(json, "lifeStage", specimen.life_stage);
  put(json, "reproductiveCondition", specimen.reproductive_condition);
  put(json, "places", of(std::span<std::string const>{specimen.places}));
  put(json, "storageLocation", specimen.storage);
  put(json, "remarks", specimen.remarks);
  if (specimen.voucher) json["voucher"] = true;
  auto observations = Json::array();
  for (auto const& observation : specimen.observations) {
    Json each;
    each["character"] = observation.character;
    each["value"] = observation.value;
    put(each, "unit", observation.unit);
    observations.push_back(std::move(each));
  }
  put(json, "observations", std::move(observations));
  return json;
}

Json of(Edition const& edition, PossibleTerminal const& terminal) {
  auto json = of(edition, terminal.taxon);
  json["arrival"] = to_word(terminal.arrival);
  json["route"] = list_of(edition, std::span<LeadId const>{terminal.route});
  put(json, "restsOn", of(std::span<std::string const>{terminal.rests_on}));
  return json;
}

Json heading_of(Edition const& edition) {
  auto const& front = edition.front;
  Json json;
  json["name"] = edition.name;
  json["label"] = short_label(edition);
  put(json, "title", front.title);
  put(json, "edition", front.edition);
  if (front.year) json["year"] = *front.year;
  put(json, "authors", of(std::span<std::string const>{front.authors}));
  put(json, "language", front.language);
  Json scope = Json::object();
  put(scope, "taxa", front.scope.taxa);
  put(scope, "region", front.scope.region);
  put(scope, "places", of(std::span<std::string const>{front.scope.places}));
  put(scope, "excludes", of(std::span<std::string const>{front.scope.excluded_taxa}));
  put(scope, "lists", of(std::span<std::string const>{front.scope.listed_taxa}));
  put(scope, "lifeStage", front.scope.life_stage);
  put(scope, "sex", front.scope.sex);
  put(scope, "material", front.scope.material);
  put(json, "scope", std::move(scope));
  json["coupletCount"] = edition.couplets.size();
  json["taxonCount"] = edition.taxa.size();
  return json;
}

Json whole(Edition const& edition) {
  auto json = heading_of(edition);
  auto couplets = Json::array();
  for (std::uint32_t c = 0; c < edition.couplets.size(); ++c) {
    Json couplet;
    couplet["label"] = edition.couplets[c].label;
    auto leads = Json::array();
    for (std::uint32_t l = 0; l < edition.couplets[c].leads.size(); ++l) {
      auto const& lead = edition.couplets[c].leads[l];
      Json each;
      each["name"] = lead_name(edition, LeadId{CoupletId{c}, l});
      each["label"] = lead.label;
      each["text"] = lead.text;
      each["source"] = place_of(lead.place);
      each["destination"] = destination_of(edition, lead);
      put(each, "destinationPrinted", lead.destination_printed);
      put(each, "taxonRemark", lead.taxon_remark);
      auto statements = Json::array();
      for (auto const& statement : lead.statements) {
        statements.push_back(json_of_statement(statement));
      }
      each["statements"] = std::move(statements);
      put(each, "notes", of(std::span<std::string const>{lead.notes}));
      leads.push_back(std::move(each));
    }
    couplet["leads"] = std::move(leads);
    put(couplet, "notes", of(std::span<std::string const>{edition.couplets[c].notes}));
    couplets.push_back(std::move(couplet));
  }
  json["couplets"] = std::move(couplets);
  auto taxa = Json::array();
  for (auto const& taxon : edition.taxa) {
    Json each;
    each["name"] = taxon.name;
    put(each, "authorship", taxon.authorship);
    taxa.push_back(std::move(each));
  }
  json["taxa"] = std::move(taxa);
  return json;
}

}  // namespace keydrift::reports::json_parts

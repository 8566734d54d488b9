// Proof and key-out as JSON.
#include "keydrift/reports/json.hpp"

#include "keydrift/reports/json_parts.hpp"
#include "keydrift/reports/wording.hpp"
#include "keydrift/reports/wording_proof.hpp"

namespace keydrift {

using namespace reports;

namespace {

using json_parts::Json;
using json_parts::list_of;
using json_parts::of;
using json_parts::put;

Json of(KeyNumbers const& numbers) {
  Json json;
  json["couplets"] = numbers.couplets;
  json["leads"] = numbers.leads;
  json["terminals"] = numbers.terminals;
  json["terminalEnds"] = numbers.terminal_ends;
  json["unpartedEnds"] = numbers.unparted_ends;
  json["taxaBeyondStart"] = numbers.beyond_start;
  json["taxaBehindCircles"] = numbers.behind_circles;
  json["polytomies"] = numbers.polytomies;
  json["reticulations"] = numbers.reticulations;
  json["shortestRoute"] = numbers.shortest_route;
  if (numbers.longest_route) json["longestRoute"] = *numbers.longest_route;
  if (numbers.mean_route) {
    json["meanRoute"] = *numbers.mean_route;
    json["entropyBound"] = numbers.entropy_bound;
    json["huffmanBound"] = numbers.huffman_bound;
  }
  if (numbers.evenness) json["evenness"] = *numbers.evenness;
  if (numbers.colless) json["colless"] = *numbers.colless;
  json["combCouplets"] = numbers.comb_couplets;
  json["rootShare"] = numbers.root_share;
  json["singleStatementCouplets"] = numbers.single_statement_couplets;
  return json;
}

Json of(FrequencyNumbers const& numbers) {
  Json json;
  json["taxa"] = numbers.taxa;
  json["total"] = numbers.total;
  json["meanRoute"] = numbers.mean_route;
  json["entropy"] = numbers.entropy;
  json["entropyBound"] = numbers.entropy_bound;
  json["huffmanBound"] = numbers.huffman_bound;
  return json;
}

Json of(DifficultyNumbers const& numbers) {
  Json json;
  Json couplets;
  for (std::size_t i = 0; i < kDifficulties; ++i) {
    couplets[to_word(static_cast<Difficulty>(i))] = numbers.couplets[i];
  }
  couplets["not rated"] = numbers.unrated;
  json["couplets"] = std::move(couplets);
  json["hardEarly"] = numbers.hard_early;
  if (numbers.mean_cost) json["meanCost"] = *numbers.mean_cost;
  if (numbers.taxa_behind_hard) json["taxaBehindHard"] = *numbers.taxa_behind_hard;
  json["taxa"] = numbers.taxa;
  return json;
}

Json of(Edition const& edition, ExpectedRight const& right) {
  Json json;
  json["errorRate"] = right.rates.rate;
  Json rates = Json::object();
  for (std::size_t i = 0; i < kDifficulties; ++i) {
    auto const& rate = right.rates.by_difficulty[i];
    if (rate) rates[to_word(static_cast<Difficulty>(i))] = *rate;
  }
  if (!rates.empty()) json["errorRateByDifficulty"] = std::move(rates);
  json["mean"] = right.mean;
  if (right.frequency_mean) json["frequencyMean"] = *right.frequency_mean;
  auto taxa = Json::array();
  for (auto const& [taxon, chance] : right.taxa) {
    auto each = json_parts::of(edition, taxon);
    each["chance"] = chance;
    taxa.push_back(std::move(each));
  }
  json["taxa"] = std::move(taxa);
  return json;
}

Json of(Edition const& edition, LeadAssessment const& assessment) {
  auto json = json_parts::of(edition, assessment.lead);
  json["text"] = edition[assessment.lead].text;
  json["fit"] = to_word(assessment.fit);
  json["followed"] = assessment.followed;
  auto statements = Json::array();
  for (auto const& fit : assessment.statements) {
    Json each;
    each["statement"] = fit.statement;
    put(each, "text", statement_words(edition, StatementId{assessment.lead, fit.statement}));
    each["truth"] = truth_word(fit.truth);
    put(each, "known", fit.known);
    statements.push_back(std::move(each));
  }
  json["statements"] = std::move(statements);
  return json;
}

}  // namespace

std::string proof_json(Edition const& edition, EditionProof const& proof) {
  auto json = json_parts::begin("proof");
  json["edition"] = json_parts::heading_of(edition);
  json["findings"] = json_parts::of(std::span<Finding const>{proof.findings});
  if (proof.numbers) json["numbers"] = of(*proof.numbers);
  if (proof.frequencies) json["frequencyNumbers"] = of(*proof.frequencies);
  if (proof.difficulties) json["difficultyNumbers"] = of(*proof.difficulties);
  if (proof.right) json["expectedRight"] = of(edition, *proof.right);
  auto sources = Json::array();
  for (auto const& [figure, reference] : figure_sources(proof)) {
    Json each;
    each["figure"] = figure;
    each["reference"] = reference;
    each["fromMemory"] = true;
    sources.push_back(std::move(each));
  }
  json["figureSources"] = std::move(sources);
  json["coverage"] = json_parts::of(proof.coverage);
  return json_parts::finish(json);
}

std::string keyout_json(Edition const& edition, Specimen const& specimen, KeyOut const& keyout) {
  auto json = json_parts::begin("keyout");
  json["edition"] = json_parts::heading_of(edition);
  json["specimen"] = json_parts::of(specimen);
  auto visits = Json::array();
  for (auto const& visit : keyout.visits) {
    auto each = json_parts::of(edition, visit.couplet);
    each["level"] = visit.level;
    auto leads = Json::array();
    for (auto const& lead : visit.leads) leads.push_back(of(edition, lead));
    each["leads"] = std::move(leads);
    visits.push_back(std::move(each));
  }
  json["visits"] = std::move(visits);
  auto terminals = Json::array();
  for (auto const& terminal : keyout.terminals) {
    terminals.push_back(json_parts::of(edition, terminal));
  }
  json["terminals"] = std::move(terminals);
  json["strandsAt"] = list_of(edition, std::span<CoupletId const>{keyout.strands_at});
  json["openCharacters"] = json_parts::of(std::span<std::string const>{keyout.open_characters});
  json["complete"] = keyout.complete;
  json["coverage"] = json_parts::of(coverage(edition));
  json["caution"] = caution();
  return json_parts::finish(json);
}

}  // namespace keydrift

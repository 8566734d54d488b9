#include "keydrift/formats/concept_map_file.hpp"

#include <array>
#include <map>
#include <utility>

#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {

using namespace tables;

namespace {

enum ConceptColumn : std::size_t { kOldConcept, kRelation, kNewConcept, kNote };
constexpr std::array kConceptColumns{WantedColumn{"old", true}, WantedColumn{"relation", true},
                                     WantedColumn{"new", true}, WantedColumn{"note", false}};

constexpr std::array<std::string_view, 5> kRelationWords{"congruent", "includes", "included in",
                                                         "overlaps", "disjoint"};

}  // namespace

Loaded<ConceptMap> read_concept_map(Source source) {
  Loaded<ConceptMap> loaded;
  auto table = read_side_table(source, "concept map", kConceptColumns);
  loaded.findings = std::move(table.findings);
  if (!table) return loaded;
  ConceptMap map;
  map.name = std::string{source.name};
  auto const add = [&](std::string code, Severity severity, Place place, std::string const& printed,
                       std::string message, std::string remedy) -> Finding& {
    loaded.findings.push_back({std::move(code),
                               severity,
                               map.name,
                               place,
                               printed,
                               std::move(message),
                               std::move(remedy),
                               {}});
    return loaded.findings.back();
  };
  std::map<std::pair<std::string, std::string>, std::size_t> seen;
  for (auto const& row : table.value->rows) {
    for (auto const column : {kOldConcept, kNewConcept}) {
      if (!row.cells[column].empty()) continue;
      add("missing-name", Severity::error, row.places[column], "",
          std::string{"the row has no name in the column \""} +
              std::string{kConceptColumns[column].name} + "\"",
          "name one taxon of each edition in every row");
    }
    auto const& printed = row.cells[kRelation];
    auto const relation = relation_from_word(printed);
    if (!relation) {
      add("unknown-relation", Severity::error, row.places[kRelation], printed,
          printed.empty() ? "the row has no relation"
                          : "\"" + printed + "\" is not a relation between two concepts",
          suggestion(printed, kRelationWords,
                     "write congruent (==), includes (>), included in (<), overlaps (><) or "
                     "disjoint (|)"));
      continue;
    }
    auto const [at, fresh] =
        seen.emplace(std::pair{row.cells[kOldConcept], row.cells[kNewConcept]}, map.rows.size());
    if (!fresh) {
      auto const& earlier = map.rows[at->second];
      bool const agree = earlier.relation == *relation;
      auto& finding =
          agree ? add("repeated-row", Severity::information, row.place, "",
                      "\"" + row.cells[kOldConcept] + "\" and \"" + row.cells[kNewConcept] +
                          "\" stand in an earlier row with the same relation",
                      "remove one of the two rows")
                : add("contradictory-rows", Severity::error, row.places[kRelation], printed,
                      "\"" + row.cells[kOldConcept] + "\" and \"" + row.cells[kNewConcept] +
                          "\" are called \"" + to_word(*relation) + "\" here and \"" +
                          to_word(earlier.relation) + "\" in line " +
                          std::to_string(earlier.place.line),
                      "keep the row that is right");
      finding.related.push_back({earlier.place, "the earlier row"});
      continue;
    }
    map.rows.push_back(
        {row.cells[kOldConcept], *relation, row.cells[kNewConcept], row.cells[kNote], row.place});
  }
  sort_findings(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = std::move(map);
  return loaded;
}

}  // namespace keydrift

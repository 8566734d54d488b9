// Which taxon is which, over two invented editions.

#include "keydrift/taxa/concepts.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace keydrift {
namespace {

// A key of a list of taxa: only the names matter here.  "Aus bus; Smith, 1900" has an author.
Edition edition_of(std::string name, std::vector<std::string> const& taxa,
                   std::vector<std::pair<std::string, std::string>> const& synonyms = {}) {
  Edition edition;
  edition.name = std::move(name);
  std::uint32_t line = 0;
  for (auto const& text : taxa) {
    auto const semicolon = text.find("; ");
    Taxon taxon;
    taxon.name = text.substr(0, semicolon);
    if (semicolon != std::string::npos) taxon.authorship = text.substr(semicolon + 2);
    taxon.place = {.line = ++line, .column = 1, .begin = 0, .end = 0};
    edition.taxa.push_back(std::move(taxon));
  }
  for (auto const& [accepted, synonym] : synonyms) {
    edition.front.synonyms.push_back({.accepted = accepted, .synonym = synonym, .place = {}});
  }
  return edition;
}

ConceptMap map_of(std::vector<std::vector<std::string>> const& rows) {
  ConceptMap map;
  map.name = "concepts.csv";
  std::uint32_t line = 1;
  for (auto const& row : rows) {
    ConceptRow entry;
    entry.old_name = row[0];
    entry.relation = relation_from_word(row[1]).value();
    entry.new_name = row[2];
    if (row.size() > 3) entry.note = row[3];
    entry.place = {.line = ++line, .column = 1, .begin = 0, .end = 0};
    map.rows.push_back(std::move(entry));
  }
  return map;
}

// "Aus bus congruent Aus bus (same name)", in order.
std::vector<std::string> told_matching(Edition const& a, Edition const& b,
                                       TaxonMatching const& matching) {
  std::vector<std::string> lines;
  for (auto const& match : matching.matches) {
    lines.push_back(a[match.old_taxon].name + " " + to_word(match.relation) + " " +
                    b[match.new_taxon].name + " (" + to_word(match.basis) + ")");
  }
  for (auto const taxon : matching.only_old) lines.push_back("only old " + a[taxon].name);
  for (auto const taxon : matching.only_new) lines.push_back("only new " + b[taxon].name);
  return lines;
}
std::vector<std::string> told_matching(Edition const& a, Edition const& b,
                                       ConceptMap const* map = nullptr) {
  return told_matching(a, b, match_taxa(a, b, map));
}
using Lines = std::vector<std::string>;

std::string findings_text(TaxonMatching const& matching) {
  std::string text;
  for (auto const& finding : matching.findings) {
    text += finding.file + ":" + std::to_string(finding.place.line) + ": " +
            to_word(finding.severity) + ": " + finding.message + " [" + finding.code + "]\n  " +
            finding.printed + "\n  " + finding.remedy + "\n";
    for (auto const& related : finding.related) {
      text += "  " + std::to_string(related.place.line) + ": " + related.message + "\n";
    }
  }
  return text;
}

TEST(Relation, ReadsWordsSignsAndStandardTerms) {
  for (auto const relation : {Relation::congruent, Relation::includes, Relation::included_in,
                              Relation::overlaps, Relation::disjoint}) {
    EXPECT_EQ(relation_from_word(to_word(relation)), relation);
  }
  EXPECT_EQ(relation_from_word("=="), Relation::congruent);
  EXPECT_EQ(relation_from_word(">"), Relation::includes);
  EXPECT_EQ(relation_from_word("<"), Relation::included_in);
  EXPECT_EQ(relation_from_word("><"), Relation::overlaps);
  EXPECT_EQ(relation_from_word("|"), Relation::disjoint);
  EXPECT_EQ(relation_from_word("isCongruentWith"), Relation::congruent);
  EXPECT_EQ(relation_from_word("http://rs.tdwg.org/tcs/terms/isIncludedIn"), Relation::included_in);
  EXPECT_EQ(relation_from_word("partiallyOverlaps"), Relation::overlaps);
  EXPECT_EQ(relation_from_word("isDisjointFrom"), Relation::disjoint);
  EXPECT_EQ(relation_from_word(" Included-In "), Relation::included_in);
}

TEST(Relation, RefusesSynonymySignsAndVagueTerms) {
  for (auto const* word : {"", "=", "≡", "intersects", "same", "> <>"}) {
    EXPECT_EQ(relation_from_word(word), std::nullopt) << word;
  }
}

TEST(Relation, HasAConverseThatUndoesItself) {
  EXPECT_EQ(converse(Relation::includes), Relation::included_in);
  EXPECT_EQ(converse(Relation::included_in), Relation::includes);
  EXPECT_EQ(converse(Relation::congruent), Relation::congruent);
  EXPECT_EQ(converse(Relation::overlaps), Relation::overlaps);
  EXPECT_EQ(converse(Relation::disjoint), Relation::disjoint);
}

TEST(MatchTaxa, MatchesNamesByTheCodesHabits) {
  auto const a = edition_of("old", {"Aus bus", "Aus mülleri", "Aus albus", "Cus dus"});
  auto const b = edition_of("new", {"Aus alba", "Aus bus", "Aus muelleri", "Cus eus"});
  EXPECT_EQ(told_matching(a, b), (Lines{"Aus bus congruent Aus bus (same name)",
                                        "Aus mülleri congruent Aus muelleri (spelling)",
                                        "Aus albus congruent Aus alba (spelling)",
                                        "only old Cus dus", "only new Cus eus"}));
  auto const matching = match_taxa(a, b, nullptr);
  EXPECT_TRUE(matching.matches[0].same_name);
  EXPECT_EQ(matching.matches[0].note, "");
  EXPECT_FALSE(matching.matches[2].same_name);
  EXPECT_EQ(matching.matches[2].note, "gender ending: \"Aus albus\" and \"Aus alba\"");
  EXPECT_EQ(matching.matches[1].note, "spelling: \"Aus mülleri\" and \"Aus muelleri\"");
}

TEST(MatchTaxa, NeverMatchesHomonymsOfDifferentAuthors) {
  auto const a = edition_of("old.txt", {"Aus bus; Smith, 1900"});
  auto const b = edition_of("new.txt", {"Aus bus; Jones, 1950"});
  auto const matching = match_taxa(a, b, nullptr);
  EXPECT_EQ(told_matching(a, b, matching), (Lines{"only old Aus bus", "only new Aus bus"}));
  EXPECT_EQ(findings_text(matching),
            "new.txt:1: warning: \"Aus bus Smith, 1900\" of the old edition and \"Aus bus Jones, "
            "1950\" of the new one share a name but not the author, so they are not matched "
            "[homonym]\n  Aus bus Jones, 1950\n  say in the concept map how the two relate\n"
            "  1: \"Aus bus Smith, 1900\" in old.txt\n");
}

TEST(MatchTaxa, NeverMatchesAMisappliedName) {
  auto const a = edition_of("old", {"Aus bus auct. non Smith"});
  auto const b = edition_of("new", {"Aus bus; Smith"});
  EXPECT_EQ(told_matching(a, b), (Lines{"only old Aus bus auct. non Smith", "only new Aus bus"}));
}

TEST(MatchTaxa, ProposesARecombinationWithoutApplyingIt) {
  auto const a = edition_of("old.txt", {"Aus albus; Smith, 1900", "Aus palustris"});
  auto const b = edition_of("new.txt", {"Bus alba; (Smith, 1900)", "Aus palusrtis"});
  auto const matching = match_taxa(a, b, nullptr);
  EXPECT_TRUE(matching.matches.empty());
  EXPECT_EQ(findings_text(matching),
            "new.txt:1: information: \"Aus albus\" of the old edition and \"Bus alba\" of the new "
            "one may be one taxon: the last epithet is the same [likely-same-taxon]\n"
            "  Bus alba (Smith, 1900)\n"
            "  if they are, add the row Aus albus,congruent,Bus alba to the concept map\n"
            "  1: \"Aus albus\" in old.txt\n"
            "new.txt:2: information: \"Aus palustris\" of the old edition and \"Aus palusrtis\" of "
            "the new one may be one taxon: they differ by a letter or two [likely-same-taxon]\n"
            "  Aus palusrtis\n"
            "  if they are, add the row Aus palustris,congruent,Aus palusrtis to the concept map\n"
            "  2: \"Aus palustris\" in old.txt\n");
}

TEST(MatchTaxa, AppliesSynonymyOfEitherFrontMatter) {
  auto const a = edition_of("old", {"Aus albus", "Cus dus"}, {{"Cus dus", "Dus dus"}});
  auto const b = edition_of("new", {"Bus alba", "Dus dus"}, {{"Bus alba", "Aus albus"}});
  EXPECT_EQ(told_matching(a, b), (Lines{"Aus albus congruent Bus alba (synonymy)",
                                        "Cus dus congruent Dus dus (synonymy)"}));
  EXPECT_TRUE(match_taxa(a, b, nullptr).findings.empty());
}

TEST(MatchTaxa, ResolvesAbbreviatedGeneraAgainstTheTerminals) {
  auto const a = edition_of("old", {"Velunaca palustris", "Xaveria maritima"});
  auto const b = edition_of("new", {"Velunella palustris", "V. lutea", "Xaveria maritima"},
                            {{"V. palustris", "V. palustris"}});
  EXPECT_EQ(
      told_matching(a, b),
      (Lines{"Velunaca palustris congruent Velunella palustris (synonymy)",
             "Xaveria maritima congruent Xaveria maritima (same name)", "only new V. lutea"}));
  auto const map = map_of({{"V. palustris", "congruent", "V. lutea"}});
  EXPECT_EQ(told_matching(a, b, &map),
            (Lines{"Velunaca palustris congruent V. lutea (concept map)",
                   "Xaveria maritima congruent Xaveria maritima (same name)",
                   "only new Velunella palustris"}));
}

TEST(MatchTaxa, TakesNamesSunkIntoOneForALump) {
  auto const a = edition_of("old", {"Aus bus", "Aus cus"});
  auto const b = edition_of("new", {"Aus bus"}, {{"Aus bus", "Aus cus"}});
  EXPECT_EQ(told_matching(a, b), (Lines{"Aus bus included in Aus bus (same name)",
                                        "Aus cus included in Aus bus (synonymy)"}));
}

TEST(MatchTaxa, TakesNamesThatWereSynonymsOfOneForASplit) {
  auto const a = edition_of("old", {"Aus bus"}, {{"Aus bus", "Aus cus"}});
  auto const b = edition_of("new", {"Aus bus", "Aus cus"});
  EXPECT_EQ(told_matching(a, b),
            (Lines{"Aus bus includes Aus bus (same name)", "Aus bus includes Aus cus (synonymy)"}));
}

TEST(MatchTaxa, FindsSpeciesWithinAGenusOfTheOtherEdition) {
  auto const a = edition_of("old", {"Aus", "Bus dus", "Bus eus"});
  auto const b = edition_of("new", {"Aus bus", "Aus cus", "Bus"});
  EXPECT_EQ(
      told_matching(a, b),
      (Lines{"Aus includes Aus bus (containment)", "Aus includes Aus cus (containment)",
             "Bus dus included in Bus (containment)", "Bus eus included in Bus (containment)"}));
  EXPECT_EQ(match_taxa(a, b, nullptr).matches[0].note,
            "\"Aus bus\" lies within \"Aus\" by its name");
}

TEST(MatchTaxa, FindsSubspeciesWithinTheNearestTaxon) {
  auto const a = edition_of("old", {"Aus", "Aus bus"});
  auto const b = edition_of("new", {"Aus", "Aus bus subsp. cus", "Aus bus subsp. dus"});
  EXPECT_EQ(told_matching(a, b), (Lines{"Aus congruent Aus (same name)",
                                        "Aus bus includes Aus bus subsp. cus (containment)",
                                        "Aus bus includes Aus bus subsp. dus (containment)"}));
}

TEST(MatchTaxa, TellsThatANamesakeLostWhatIsNowKeyedApart) {
  auto const a = edition_of("old", {"Aus"});
  auto const b = edition_of("new", {"Aus", "Aus bus"});
  EXPECT_EQ(told_matching(a, b),
            (Lines{"Aus includes Aus (same name)", "Aus includes Aus bus (containment)"}));
  EXPECT_EQ(match_taxa(a, b, nullptr).matches[0].note,
            "the new edition keys \"Aus bus\" apart from it");
  EXPECT_EQ(told_matching(b, a),
            (Lines{"Aus included in Aus (same name)", "Aus bus included in Aus (containment)"}));
}

TEST(MatchTaxa, TakesTheWideAndTheNarrowSenseForUnlike) {
  auto const a = edition_of("old", {"Aus bus s. l."});
  auto const b = edition_of("new", {"Aus bus s. str."});
  EXPECT_EQ(told_matching(a, b), (Lines{"Aus bus s. l. includes Aus bus s. str. (same name)"}));
}

TEST(MatchTaxa, MatchesTwoSpellingsInOneEditionToOneTaxon) {
  auto const a = edition_of("old", {"Aus alba", "Aus albus"});
  auto const b = edition_of("new", {"Aus albus"});
  EXPECT_EQ(told_matching(a, b), (Lines{"Aus alba congruent Aus albus (spelling)",
                                        "Aus albus congruent Aus albus (same name)"}));
}

TEST(MatchTaxa, LetsTheMapDecideOverNamesAndSynonyms) {
  auto const a = edition_of("old", {"Aus bus", "Aus cus", "Dus eus"});
  auto const b = edition_of("new", {"Aus bus", "Aus cus", "Dus eus"}, {{"Dus eus", "Aus cus"}});
  auto const map = map_of({{"Aus bus", "includes", "Aus cus", "split in the revision"},
                           {"Aus bus", "includes", "Aus bus"},
                           {"Dus eus", "|", "Dus eus"}});
  auto const matching = match_taxa(a, b, &map);
  EXPECT_EQ(told_matching(a, b, matching),
            (Lines{"Aus bus includes Aus bus (concept map)",
                   "Aus bus includes Aus cus (concept map)", "Aus cus congruent Dus eus (synonymy)",
                   "Dus eus disjoint Dus eus (concept map)", "only old Dus eus"}));
  EXPECT_EQ(matching.matches[1].note, "split in the revision");
  EXPECT_TRUE(matching.matches[0].same_name);
}

TEST(MatchTaxa, DoesNotMatchAMappedTaxonByNameOutsideItsRows) {
  auto const a = edition_of("old", {"Aus bus"});
  auto const b = edition_of("new", {"Aus bus", "Cus dus"});
  auto const map = map_of({{"Aus bus", "congruent", "Cus dus"}});
  EXPECT_EQ(told_matching(a, b, &map),
            (Lines{"Aus bus congruent Cus dus (concept map)", "only new Aus bus"}));
}

TEST(MatchTaxa, ReportsMapRowsThatNameUnknownTaxa) {
  auto const a = edition_of("old.txt", {"Aus bus", "Aus palustris"});
  auto const b = edition_of("new.txt", {"Aus bus", "Cus dus"});
  auto const map = map_of({{"Aus palusrtis", "congruent", "Cus dus"},
                           {"Aus bus", "congruent", "Zygozeugma extraneum"},
                           {"Cus dus", "congruent", "Aus bus"}});
  EXPECT_EQ(findings_text(match_taxa(a, b, &map)),
            "concepts.csv:2: error: the old edition, old.txt, has no taxon \"Aus palusrtis\" "
            "[concept-unknown-taxon]\n  Aus palusrtis\n  did you mean \"Aus palustris\"?\n"
            "concepts.csv:3: error: the new edition, new.txt, has no taxon \"Zygozeugma "
            "extraneum\" [concept-unknown-taxon]\n  Zygozeugma extraneum\n"
            "  write the name as the edition's key does, or drop the row\n"
            "concepts.csv:4: error: the old edition, old.txt, has no taxon \"Cus dus\"; the new "
            "one has [concept-wrong-edition]\n  Cus dus\n"
            "  exchange the columns of the row, or name the old edition's taxon\n");
}

TEST(MatchTaxa, ReportsDoubledAndContradictoryRows) {
  auto const a = edition_of("old", {"Aus bus", "Aus cus"});
  auto const b = edition_of("new", {"Aus bus", "Aus cus", "Aus dus"});
  auto const map = map_of({{"Aus bus", "congruent", "Aus bus"},
                           {"Aus bus", "congruent", "Aus bus"},
                           {"Aus bus", "overlaps", "Aus bus"},
                           {"Aus bus", "congruent", "Aus dus"},
                           {"Aus cus", "overlaps", "Aus dus"}});
  auto const matching = match_taxa(a, b, &map);
  EXPECT_EQ(
      findings_text(matching),
      "concepts.csv:3: information: \"Aus bus congruent Aus bus\" is said twice "
      "[concept-doubled]\n  Aus bus congruent Aus bus\n  drop one of the rows\n"
      "  2: first said here\n"
      "concepts.csv:4: error: \"Aus bus overlaps Aus bus\" and \"Aus bus congruent Aus bus\" "
      "cannot both hold; the first is kept [concept-contradiction]\n  Aus bus overlaps Aus bus\n"
      "  keep the row that is right\n  2: first said here\n"
      "concepts.csv:5: warning: \"Aus bus congruent Aus bus\" and \"Aus bus congruent Aus dus\" "
      "cannot both hold, as the key sets \"Aus bus\" and \"Aus dus\" apart "
      "[concept-contradiction]\n  Aus bus congruent Aus dus\n"
      "  a taxon that was split includes its parts, and one that shares more overlaps them\n"
      "  2: the other row\n"
      "concepts.csv:6: warning: \"Aus bus congruent Aus dus\" and \"Aus cus overlaps Aus dus\" "
      "cannot both hold, as the key sets \"Aus bus\" and \"Aus cus\" apart "
      "[concept-contradiction]\n  Aus cus overlaps Aus dus\n"
      "  taxa that were lumped are included in the new one, and those that share less overlap "
      "it\n  5: the other row\n");
  EXPECT_EQ(matching.relation(TaxonId{0}, TaxonId{0}), Relation::congruent);
}

TEST(MatchTaxa, AcceptsSplitsAndLumpsInTheMap) {
  auto const a = edition_of("old", {"Aus bus", "Cus dus", "Cus eus"});
  auto const b = edition_of("new", {"Aus bus", "Aus fus", "Cus dus"});
  auto const map = map_of({{"Aus bus", ">", "Aus bus"},
                           {"Aus bus", ">", "Aus fus"},
                           {"Cus dus", "<", "Cus dus"},
                           {"Cus eus", "<", "Cus dus"}});
  EXPECT_TRUE(match_taxa(a, b, &map).findings.empty());
}

TEST(TaxonMatching, FindsPairsAndSides) {
  auto const a = edition_of("old", {"Aus bus", "Aus cus"});
  auto const b = edition_of("new", {"Aus cus", "Aus bus"});
  auto const map = map_of({{"Aus bus", "overlaps", "Aus cus"},
                           {"Aus cus", "|", "Aus bus"},
                           {"Aus bus", "overlaps", "Aus bus"},
                           {"Aus cus", "overlaps", "Aus cus"}});
  auto const matching = match_taxa(a, b, &map);
  EXPECT_EQ(matching.relation(TaxonId{1}, TaxonId{1}), Relation::disjoint);
  EXPECT_NE(matching.find(TaxonId{1}, TaxonId{1}), nullptr);
  EXPECT_EQ(matching.of_old(TaxonId{0}).size(), 2U);
  EXPECT_EQ(matching.of_old(TaxonId{1}).size(), 1U);
  EXPECT_EQ(matching.of_new(TaxonId{0}).size(), 2U);
  EXPECT_EQ(matching.of_new(TaxonId{1}).size(), 1U);
  auto without_index = matching;
  without_index.by_new.clear();
  EXPECT_EQ(without_index.of_new(TaxonId{0}).size(), 2U);
  EXPECT_EQ(matching.find(TaxonId{7}, TaxonId{0}), nullptr);
}

TEST(MatchTaxa, TurnsRoundWhenTheEditionsDo) {
  auto const a = edition_of("old", {"Aus", "Bus dus", "Cus eus s. l.", "Dus fus", "Eus albus"},
                            {{"Dus fus", "Dus gus"}});
  auto const b =
      edition_of("new", {"Aus bus", "Bus", "Cus eus s. str.", "Dus gus", "Dus fus", "Eus alba"});
  auto const there = match_taxa(a, b, nullptr);
  auto const back = match_taxa(b, a, nullptr);
  ASSERT_EQ(there.matches.size(), back.matches.size());
  for (auto const& match : there.matches) {
    EXPECT_EQ(back.relation(match.new_taxon, match.old_taxon), converse(match.relation))
        << a[match.old_taxon].name << " / " << b[match.new_taxon].name;
  }
}

TEST(MatchTaxa, NeverMatchesNamesWithoutLetters) {
  auto const a = edition_of("old", {"", "…", "?"});
  auto const b = edition_of("new", {"", "—", "?"});
  EXPECT_TRUE(match_taxa(a, b, nullptr).matches.empty());
}

}  // namespace
}  // namespace keydrift

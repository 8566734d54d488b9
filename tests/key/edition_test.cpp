#include "keydrift/key/edition.hpp"

#include <gtest/gtest.h>

#include "edition_builder.hpp"

namespace keydrift {
namespace {

using test::make_edition;

Edition small() {
  return make_edition("keys/fens.txt", {{"1", {{"beak bifid", "Aus bus"}, {"beak entire", "2"}}},
                                        {"2", {{"stem round", "Aus cus"}, {"stem flat", "Bus"}}}});
}

void label_leads(Couplet& couplet, std::vector<std::string> const& labels) {
  couplet.leads.resize(labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i) couplet.leads[i].label = labels[i];
}

std::vector<std::string> names_of(std::string const& couplet_label,
                                  std::vector<std::string> const& lead_labels) {
  Edition edition;
  edition.couplets.resize(1);
  edition.couplets[0].label = couplet_label;
  label_leads(edition.couplets[0], lead_labels);
  std::vector<std::string> names;
  for (std::uint32_t i = 0; i < lead_labels.size(); ++i) {
    names.push_back(lead_name(edition, {CoupletId{0}, i}));
  }
  return names;
}

using Names = std::vector<std::string>;

TEST(ShortLabel, IsTheEditionsLabelElseItsYearElseItsFileName) {
  auto edition = small();
  EXPECT_EQ(short_label(edition), "fens.txt");
  edition.front.year = 1998;
  EXPECT_EQ(short_label(edition), "1998");
  edition.front.edition = "2nd";
  EXPECT_EQ(short_label(edition), "2nd");
}

TEST(ShortLabel, KeepsTheRevisionOfAnEditionReadFromHistory) {
  Edition edition;
  edition.name = "../archive@v1998:keys/fens.txt";
  EXPECT_EQ(short_label(edition), "v1998:fens.txt");
  edition.name = "who@where/fens.txt";
  EXPECT_EQ(short_label(edition), "fens.txt");
}

TEST(LeadName, IsThePrintedLabelWhereThatTellsCoupletAndSide) {
  EXPECT_EQ(names_of("7", {"7a", "7b"}), (Names{"7a", "7b"}));
  EXPECT_EQ(names_of("7a", {"7a'", "7a''"}), (Names{"7a'", "7a''"}));
}

TEST(LeadName, HasALetterThroughoutWhereTheFirstLabelIsTheCoupletsOwn) {
  EXPECT_EQ(names_of("15a", {"15a", "15a'"}), (Names{"15aa", "15ab"}));
  EXPECT_EQ(names_of("15a", {"15a", "–"}), (Names{"15aa", "15ab"}));
  EXPECT_EQ(names_of("15", {"15", "15'"}), (Names{"15a", "15'"}));
}

TEST(LeadName, IsTheCoupletsLabelWithALetterWhereThePrintedLabelDoesNotTell) {
  EXPECT_EQ(names_of("7", {"7", "–"}), (Names{"7a", "7b"}));
  EXPECT_EQ(names_of("7", {"", "", ""}), (Names{"7a", "7b", "7c"}));
}

TEST(LeadName, NeverGivesTwoLeadsOfACoupletOneName) {
  EXPECT_EQ(names_of("7", {"7", "7a"}), (Names{"7a", "7b"}));
  EXPECT_EQ(names_of("7", {"7b", "7"}), (Names{"7a", "7b"}));
}

TEST(LeadName, GoesOnAfterTheLetterZ) {
  Names const blank(28, "");
  auto const names = names_of("3", blank);
  EXPECT_EQ(names[25], "3z");
  EXPECT_EQ(names[26], "3aa");
  EXPECT_EQ(names[27], "3ab");
}

Lead wrapped() {
  // Line 4: "     7 Blätter kreuz-"   Line 5: "  ständig, groß"
  Lead lead;
  lead.text = "Blätter kreuzständig, groß";
  lead.place = {.line = 4, .column = 6, .begin = 105, .end = 139};
  lead.runs = {
      {.text_begin = 0, .place = {.line = 4, .column = 8, .begin = 107, .end = 121}},
      {.text_begin = 14, .place = {.line = 5, .column = 3, .begin = 124, .end = 139}},
  };
  return lead;
}

TEST(PlaceInText, CountsColumnsInCodePointsAndBytesInBytes) {
  auto const lead = wrapped();
  auto const place = place_in_text(lead, lead.text.find("kreuz"), 5);
  EXPECT_EQ(place, (Place{.line = 4, .column = 16, .begin = 116, .end = 121}));
}

TEST(PlaceInText, FindsWordsOnTheSecondLine) {
  auto const lead = wrapped();
  auto const place = place_in_text(lead, lead.text.find("groß"), 5);
  EXPECT_EQ(place, (Place{.line = 5, .column = 12, .begin = 134, .end = 139}));
}

TEST(PlaceInText, SpansLinesFromTheFirstByteToTheLast) {
  auto const lead = wrapped();
  auto const place = place_in_text(lead, 0, lead.text.size());
  EXPECT_EQ(place.line, 4U);
  EXPECT_EQ(place.begin, 107U);
  EXPECT_EQ(place.end, 139U);
}

TEST(PlaceInText, StaysWithinTheTextWhateverIsAsked) {
  auto const lead = wrapped();
  auto const place = place_in_text(lead, 1000, 1000);
  EXPECT_EQ(place.line, 5U);
  EXPECT_EQ(place.begin, 139U);
  EXPECT_EQ(place.end, 139U);
}

TEST(PlaceInText, IsTheLeadsPlaceWhenItHasNoRuns) {
  auto lead = wrapped();
  lead.runs.clear();
  EXPECT_EQ(place_in_text(lead, 3, 2), lead.place);
}

TEST(SameContent, IgnoresPlacesLabelsOfLeadsNamesAndStatements) {
  auto const a = small();
  auto b = a;
  b.name = "elsewhere";
  b.couplets[1].place.line = 99;
  b.couplets[1].leads[0].label = "–";
  b.couplets[1].leads[0].place.line = 99;
  b.couplets[1].leads[0].runs.clear();
  b.couplets[1].leads[0].statements.emplace_back();
  b.taxa[0].place.line = 99;
  EXPECT_TRUE(same_content(a, b));
}

TEST(SameContent, SeesEveryDifferenceOfContent) {
  auto const a = small();
  std::vector<std::pair<char const*, void (*)(Edition&)>> const changes{
      {"title", [](Edition& e) { e.front.title = "x"; }},
      {"year", [](Edition& e) { e.front.year = 1; }},
      {"scope", [](Edition& e) { e.front.scope.sex = "male"; }},
      {"synonyms",
       [](Edition& e) {
         e.front.synonyms.push_back({"Aus", "Bus", {}});
       }},
      {"parts", [](Edition& e) { e.parts[0].start = CoupletId{1}; }},
      {"a part more",
       [](Edition& e) {
         e.parts.push_back({"B", CoupletId{1}, {}});
       }},
      {"couplet label", [](Edition& e) { e.couplets[1].label = "3"; }},
      {"couplet note", [](Edition& e) { e.couplets[1].notes = {"n"}; }},
      {"back-reference",
       [](Edition& e) {
         e.couplets[1].back_references.push_back({"1", {}});
       }},
      {"lead text", [](Edition& e) { e.couplets[1].leads[1].text = "x"; }},
      {"lead gone", [](Edition& e) { e.couplets[1].leads.pop_back(); }},
      {"destination", [](Edition& e) { e.couplets[1].leads[1].destination = ToKey{"B"}; }},
      {"remark", [](Edition& e) { e.couplets[1].leads[1].taxon_remark = "in part"; }},
      {"lead note", [](Edition& e) { e.couplets[1].leads[1].notes = {"n"}; }},
      {"figure", [](Edition& e) { e.couplets[1].leads[1].figures = {"Fig. 1"}; }},
      {"taxon", [](Edition& e) { e.taxa[0].name = "Aus dus"; }},
      {"authorship", [](Edition& e) { e.taxa[0].authorship = "Smith"; }},
      {"note",
       [](Edition& e) {
         e.notes.push_back({"n", {}});
       }},
  };
  for (auto const& [what, change] : changes) {
    auto b = a;
    change(b);
    EXPECT_FALSE(same_content(a, b)) << what;
    EXPECT_FALSE(same_content(b, a)) << what;
  }
}

}  // namespace
}  // namespace keydrift

// Names placed among the terminals of an invented edition.

#include "keydrift/taxa/placement.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keydrift {
namespace {

Edition edition() {
  Edition edition;
  for (auto const* name :
       {"Velunaca palustris", "Velunaca lutea", "Xaveria", "Ausidae", "Vexilla marina"}) {
    edition.taxa.push_back({.name = name, .authorship = "", .place = {}});
  }
  edition.taxa.push_back({.name = "Cus dus", .authorship = "Smith, 1900", .place = {}});
  edition.front.synonyms.push_back({.accepted = "V. lutea", .synonym = "Oldia flava", .place = {}});
  edition.front.synonyms.push_back({.accepted = "V. lutea", .synonym = "V. crocea", .place = {}});
  return edition;
}

ParentTable parents() {
  ParentTable table;
  auto const add = [&](char const* taxon, char const* parent) {
    table.rows.push_back({.taxon = taxon, .parent = parent, .place = {}});
  };
  add("Velunaca", "Velunaceae");
  add("Xaveria", "Velunaceae");
  add("Aus", "Ausidae");
  add("Ring", "Rong");
  add("Rong", "Ring");
  return table;
}

// "exact 0: same name".
std::string told_placement(Placement const& placement) {
  std::string text;
  switch (placement.kind) {
    case PlacementKind::exact:
      text = "exact";
      break;
    case PlacementKind::finer:
      text = "finer";
      break;
    case PlacementKind::coarser:
      text = "coarser";
      break;
    case PlacementKind::none:
      text = "none";
      break;
  }
  for (auto const taxon : placement.taxa) text += " " + std::to_string(taxon.index);
  text += ": " + placement.how;
  for (auto const& name : placement.near) text += " [" + name + "]";
  return text;
}

struct PlaceCase {
  char const* name;
  char const* told;
};
class PlacedAt : public testing::TestWithParam<PlaceCase> {};
TEST_P(PlacedAt, OfANameAmongTheTerminals) {
  NameIndex const index{edition(), parents()};
  EXPECT_EQ(told_placement(index.place(GetParam().name)), GetParam().told) << GetParam().name;
}
INSTANTIATE_TEST_SUITE_P(
    Table, PlacedAt,
    testing::Values(
        PlaceCase{"Velunaca palustris", "exact 0: same name"},
        PlaceCase{"Velunaca palustris (L.) Smith", "exact 0: same name"},
        PlaceCase{"Velunaca luteus", "exact 1: another spelling of Velunaca lutea"},
        PlaceCase{"V. lutea", "exact 1: another spelling of Velunaca lutea"},
        PlaceCase{"Oldia flava", "exact 1: synonym of Velunaca lutea"},
        PlaceCase{"Velunaca crocea", "exact 1: synonym of Velunaca lutea"},
        PlaceCase{"Cus dus Smith", "exact 5: same name"},
        PlaceCase{"Cus dus Jones, 1950",
                  "none: the author is not that of Cus dus Smith, 1900 "
                  "[Cus dus]"},
        PlaceCase{"Cus dus auct. non Smith",
                  "none: it was misapplied, and Cus dus Smith, 1900 is not what is meant "
                  "[Cus dus]"},
        PlaceCase{"Velunaca palustris var. alta", "finer 0: within Velunaca palustris by its name"},
        PlaceCase{"Xaveria maritima", "finer 2: within Xaveria by its name"},
        PlaceCase{"Oldia flava subsp. minor",
                  "finer 1: within Velunaca lutea by its name, synonym of Velunaca lutea"},
        PlaceCase{"Aus bus", "finer 3: within Ausidae by the parent table"},
        PlaceCase{"Velunaca", "coarser 0 1: above Velunaca palustris by its name"},
        PlaceCase{"Velunaca sp.", "coarser 0 1: above Velunaca palustris by its name"},
        PlaceCase{"Velunaceae", "coarser 0 1 2: above Velunaca palustris by the parent table"},
        PlaceCase{"Oldia", "coarser 1: above Oldia flava, synonym of Velunaca lutea, by its name"},
        PlaceCase{"Velunaca lutea agg.", "coarser 1: above Velunaca lutea by its name"},
        PlaceCase{"Velunaca palusrtis", "none:  [Velunaca palustris]"}, PlaceCase{"Ring", "none: "},
        PlaceCase{"", "none: "}, PlaceCase{"???", "none: "}));

TEST(NameIndex, SaysWhenAnAbbreviationFitsSeveralTerminals) {
  Edition edition;
  for (auto const* name : {"Velunaca lutea", "Vexilla lutea"}) {
    edition.taxa.push_back({.name = name, .authorship = "", .place = {}});
  }
  NameIndex const index{edition, {}};
  EXPECT_EQ(told_placement(index.place("V. lutea")),
            "none: the abbreviated genus fits several terminals [Velunaca lutea] [Vexilla lutea]");
  EXPECT_EQ(told_placement(index.place("Vel. lutea")),
            "exact 0: another spelling of Velunaca lutea");
}

std::vector<std::uint32_t> members(char const* group) {
  std::vector<std::uint32_t> found;
  for (auto const taxon : NameIndex{edition(), parents()}.members(group)) {
    found.push_back(taxon.index);
  }
  return found;
}
using Rows = std::vector<std::uint32_t>;

TEST(NameIndex, FindsTheMembersOfAGroupAsAnExceptionNamesIt) {
  EXPECT_EQ(members("Velunaca"), (Rows{0, 1}));
  EXPECT_EQ(members("some Velunaca species"), (Rows{0, 1}));
  EXPECT_EQ(members("the genus Velunaca"), (Rows{0, 1}));
  EXPECT_EQ(members("V. lutea"), (Rows{1}));
  EXPECT_EQ(members("lutea"), (Rows{1}));
  EXPECT_EQ(members("Velunaceae"), (Rows{0, 1, 2}));
  EXPECT_EQ(members("Xaveria"), (Rows{2}));
  EXPECT_EQ(members("Oldia flava"), (Rows{1}));
  EXPECT_EQ(members("the V. lutea group"), (Rows{1}));
}

TEST(NameIndex, GivesTheHoldingTerminalForAGroupFinerThanAny) {
  EXPECT_EQ(members("Xaveria maritima"), (Rows{2}));
}

TEST(NameIndex, FindsNobodyInAnUnknownGroup) {
  EXPECT_EQ(members("Nemo"), Rows{});
  EXPECT_EQ(members(""), Rows{});
}

TEST(NameIndex, KeepsAGenusToThoseThatStayedInIt) {
  Edition edition;
  for (auto const* name : {"Aus bus", "Bus cus"}) {
    edition.taxa.push_back({.name = name, .authorship = "", .place = {}});
  }
  edition.front.synonyms.push_back({.accepted = "Aus bus", .synonym = "Bus bus", .place = {}});
  NameIndex const index{edition, {}};
  EXPECT_EQ(index.members("Bus"), std::vector<TaxonId>{TaxonId{1}});
}

}  // namespace
}  // namespace keydrift

// Names that no author ever printed: nothing may break, and what holds for names must still hold.

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/names.hpp"
#include "keydrift/taxa/placement.hpp"

namespace keydrift {
namespace {

std::string repeated(std::string_view piece, std::size_t bytes) {
  std::string text;
  while (text.size() < bytes) text += piece;
  return text;
}

std::vector<std::string> odd_names() {
  std::vector<std::string> names{
      "", " ", "\t\n", ".", "...", "?", "???", "()", "(", ")", "[", "]]", "((((", "'", "''", "\"",
      "×", "× ×", "x", "X", "x x", "&", "et", "ex", "in", "sp.", "cf.", "aff. cf. ?", "var.", "f.",
      "f. f. f.", "subsp. subsp.", "sensu", "auct. non", "s.", "s. l.", "-", "—", "–––", ",", ",,,",
      ";", ", ,", "†", "1", "1900", "12-", "-12", "10-punctata", "Aus (", "Aus (Bus", "Aus )",
      "Aus [bus", "Aus ()", "Aus ( ) bus", "Aus × ", "× Aus", "Aus ×× bus", "Aus bus ×",
      "Aus bus × × cus", "Aus '", "Aus ''", "Aus bus '' ", "Aus bus 'x", "Aus bus ' ' ' '",
      "Aus '!' bus", "aus.", "A.", "a. b. c.", "Aus bus (((Smith)))", "Aus,bus", "Aus;bus",
      "Aus:", "Aus/bus", "Aus_bus", "Aus bus subsp.", "Aus subsp. cus", "Aus bus var. var. cus",
      "nothosubsp. bus",
      // Scripts without case, from right to left, of astral planes; marks without letters.
      "中文", "中文 名字", "Ἄλφα βῆτα", "ΑΛΦΑ ΒΗΤΑ", "Белая рыба", "שלום עולם", "日本 カニ",
      "𝔄𝔲𝔰 𝔟𝔲𝔰", "🦀", "🦀 🦐", "\u0301", "\u0301\u0301a", "a\u0301us bus", "ﬁcus ﬂavus",
      "ẞus", "İus ıus", "Ǆus ǆus", "Aus\u00a0bus", "Aus\u200bbus", "Aus\u00adbus", "\ufeffAus bus",
      "Aus\u2028bus",
      // Bytes that are no UTF-8.
      "\xff", "\xff\xfe\xfd", "Aus \xffus", "\xc3", "Aus bus\xe2\x80", "\xed\xa0\x80 bus",
      "\xf4\x90\x80\x80", std::string("Aus\0bus", 7), std::string("\0", 1)};
  for (auto const* piece : {"a", "A. ", "( ", "A a × ", "var. a ", "e\u0301", "\xff", "&times;"}) {
    names.push_back(repeated(piece, 10'000));
    names.push_back("Aus " + repeated(piece, 1'000) + " bus");
  }
  return names;
}

// A name made of the words that names are made of, in any order.
std::string made_up(std::mt19937& random) {
  static std::vector<std::string> const kWords{
      "Aus",     "Bus",     "bus",   "cus",    "albus",
      "A.",      "AUS",     "BUS",   "(Bus)",  "(bus)",
      "(L.)",    "Smith",   "L.",    "1900",   ",",
      "&",       "et",      "ex",    "in",     "de",
      "var.",    "f.",      "ssp.",  "subsp.", "sp.",
      "spp.",    "agg.",    "cf.",   "aff.",   "?",
      "×",       "x",       "s.",    "l.",     "sensu",
      "auct.",   "non",     "'Red'", "(",      ")",
      "sect.",   "1",       "B",     "nov.",   "n.",
      "mülleri", "c-album", "group", "p.",     "(Smith, 1900)"};
  std::uniform_int_distribution<std::size_t> word{0, kWords.size() - 1};
  std::uniform_int_distribution<int> length{1, 8}, glue{0, 9};
  std::string name;
  for (int i = length(random); i > 0; --i) {
    name += kWords[word(random)];
    if (glue(random) != 0) name += ' ';
  }
  return name;
}

void expect_what_holds_for_names(std::string const& name) {
  auto const plain = plain_name(name);
  auto const shown = name.substr(0, 80);
  EXPECT_EQ(plain_name(plain), plain) << shown;
  EXPECT_EQ(name_key(plain), name_key(name)) << shown << " -> " << plain.substr(0, 80);
  EXPECT_EQ(spelling_key(plain), spelling_key(name)) << shown << " -> " << plain.substr(0, 80);
  auto const parsed = parse_name(name);
  EXPECT_EQ(plain_name(parsed), plain) << shown;
  EXPECT_EQ(compare_names(name, name), NameLikeness::identical) << shown;
}

TEST(OddNames, KeepWhatHoldsForNames) {
  for (auto const& name : odd_names()) expect_what_holds_for_names(name);
}

// A name as it might be printed, with the plain form that it must have.
struct Printed {
  std::string text;
  std::string plain;
};
Printed printed(std::mt19937& random) {
  auto const one = [&](std::vector<std::string> const& of) {
    return of[std::uniform_int_distribution<std::size_t>{0, of.size() - 1}(random)];
  };
  auto const rarely = [&] { return std::uniform_int_distribution<int>{0, 3}(random) == 0; };
  std::vector<std::string> const authors{"Smith",         "Smith, 1900",
                                         "(Smith, 1900)", "L.",
                                         "(L.) Smith",    "L. f.",
                                         "de Wit",        "DC.",
                                         "Smith & Brown", "Smith et al.",
                                         "van der Wit",   "Wit ex Brown",
                                         "Müller in Wit", "(Wit ex L.) Smith & Wit"};
  Printed name;
  auto const add = [&](std::string const& text) {
    name.text += (name.text.empty() ? "" : " ") + text;
  };
  auto const genus = one({"Aus", "Velunaca", "Øria", "B.", "Xus"});
  add(genus);
  name.plain = genus;
  if (rarely()) add(one({"(Bus)", "(sect. Bus)", "subg. Bus", "(bus)"}));
  if (rarely()) add(one({"cf.", "aff.", "?"}));
  if (rarely()) {
    add(one({"×", "x"}));
    name.plain += " ×";
  }
  auto const species = one({"bus", "albus", "mülleri", "novae-terrae", "10-punctatus", "vanus"});
  add(species);
  name.plain += " " + species;
  if (rarely()) add(one(authors));
  if (rarely()) {
    auto const below = one({"cus", "alba", "bus"});
    auto const rank = one({"ssp.", "subsp.", "var.", "forma", "f."});
    add(rank + " " + below);
    name.plain += " " + (rank == "ssp." ? "subsp." : rank == "forma" ? "f." : rank) + " " + below;
    if (rarely()) add(one(authors));
  }
  if (rarely()) {
    add(one({"s. l.", "s.str.", "sensu Brown", "auct. non Wit", "p. p.", "(in part)", "sp. n."}));
  }
  return name;
}

TEST(OddNames, OfAllPrintedFormsHaveOnePlainForm) {
  auto const seed = testing::UnitTest::GetInstance()->random_seed();
  std::mt19937 random{seed == 0 ? 20'260'101U : static_cast<unsigned>(seed)};
  for (int i = 0; i < 3'000; ++i) {
    auto const name = printed(random);
    ASSERT_EQ(plain_name(name.text), name.plain) << name.text;
    expect_what_holds_for_names(name.text);
    if (HasFailure()) return;
  }
}

TEST(OddNames, AreComparedAlikeFromBothSides) {
  std::mt19937 random{7};
  for (int i = 0; i < 2'000; ++i) {
    auto const a = made_up(random), b = made_up(random);
    ASSERT_EQ(compare_names(a, b), compare_names(b, a)) << a << " / " << b;
    ASSERT_EQ(same_authorship(a, b), same_authorship(b, a)) << a << " / " << b;
  }
}

TEST(OddNames, MatchThemselvesAndNothingElseInTwoEditions) {
  Edition edition;
  edition.name = "odd";
  for (auto const& name : odd_names()) {
    edition.taxa.push_back({.name = name, .authorship = "", .place = {}});
  }
  auto const matching = match_taxa(edition, edition, nullptr);
  for (auto const& match : matching.matches) {
    auto const& a = edition[match.old_taxon].name;
    auto const& b = edition[match.new_taxon].name;
    bool const alike = !name_keys(a).empty() && name_keys(a).front() == name_keys(b).front();
    EXPECT_TRUE(alike || match.basis != MatchBasis::same_name)
        << a.substr(0, 60) << " / " << b.substr(0, 60);
  }
  for (auto const taxon : matching.only_old) {
    EXPECT_TRUE(name_keys(edition[taxon].name).empty() ||
                parse_name(edition[taxon].name).sensu.find("auct") != std::string::npos)
        << edition[taxon].name.substr(0, 60);
  }
}

TEST(OddNames, CanBeAskedOfAnIndex) {
  Edition edition;
  for (auto const* name : {"Aus bus", "Cus", "Aus dus"}) {
    edition.taxa.push_back({.name = name, .authorship = "", .place = {}});
  }
  NameIndex const index{edition, {}};
  for (auto const& name : odd_names()) {
    auto const placement = index.place(name);
    EXPECT_EQ(placement.taxa.empty(), placement.kind == PlacementKind::none) << name.substr(0, 60);
    for (auto const taxon : index.members(name)) EXPECT_LT(taxon.index, 3U);
  }
}

}  // namespace
}  // namespace keydrift

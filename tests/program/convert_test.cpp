// Editions set anew: no layout changes what a key means.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "binary.hpp"

namespace keydrift::test {
namespace {

struct Set {
  char const* edition;
  char const* lexicon;
};
std::string name_of(testing::TestParamInfo<Set> const& info) {
  std::string name;
  for (char const c : std::string{info.param.edition}) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) name += c;
  }
  return name;
}

class SetAnew : public testing::TestWithParam<Set> {};

TEST_P(SetAnew, ChangesNothingInTheCollation) {
  Sandbox const sandbox;
  auto const edition = fixture(GetParam().edition);
  for (auto const* layout : {"parallel", "indented", "serial"}) {
    auto const written = sandbox.path() / (std::string{layout} + ".txt");
    auto const ran =
        run_keydrift({"convert", edition, "--to", layout, "--width", "66", "-o", written.string()});
    ASSERT_EQ(ran.exit, 0) << ran.err;
    auto const collated = run_keydrift(
        {"collate", edition, written.string(), "--lexicon", fixture(GetParam().lexicon)});
    EXPECT_EQ(collated.exit, 0) << layout << "\n" << collated.out << collated.err;
  }
}

INSTANTIATE_TEST_SUITE_P(
    Fixtures, SetAnew,
    testing::Values(Set{"velunaceae/edition-1974.txt", "velunaceae/lexicon.csv"},
                    Set{"velunaceae/edition-1998.txt", "velunaceae/lexicon.csv"},
                    Set{"velunaceae/edition-2024.txt", "velunaceae/lexicon.csv"},
                    Set{"halvern-crayfish/edition-2001.txt", "halvern-crayfish/lexicon.csv"},
                    Set{"halvern-crayfish/edition-2019.txt", "halvern-crayfish/lexicon.csv"},
                    Set{"two-editions/edition-a.txt", "two-editions/lexicon.csv"},
                    Set{"two-editions/edition-b.txt", "two-editions/lexicon.csv"}),
    name_of);

constexpr char kKeyToConvert[] =
    "1 Beak bifid ........ 2\n"
    "- Beak entire ....... Aus bus\n"
    "2 Spike long ........ Aus cus\n"
    "- Spike short ....... Aus dus\n";

TEST(Convert, TakesTheFormFromTheOutputsName) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kKeyToConvert));
  for (auto const* name : {"a.json", "a.html", "a.md", "b.txt"}) {
    EXPECT_EQ(run_keydrift({"convert", "key.txt", "-o", name}, sandbox.path()).exit, 0) << name;
  }
  auto const begins = [&](char const* name, std::string const& start) {
    auto const shown = run_program({"cat", name}, sandbox.path()).out;
    EXPECT_EQ(shown.substr(0, start.size()), start);
  };
  begins("a.json", "{\n  \"keydrift\": 1");
  begins("a.html", "<!DOCTYPE html>");
  begins("a.md", "# Key\n\n**1** Beak bifid … **2**\\\n");
  begins("b.txt", "1.  Beak bifid ....");
}

TEST(Convert, AsksForAFormThatNothingTells) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.txt", kKeyToConvert));
  auto const ran = run_keydrift({"convert", "key.txt", "-o", "key.out"}, sandbox.path());
  EXPECT_EQ(ran.exit, 2);
  EXPECT_EQ(ran.err,
            "keydrift convert: say the form with --to, or name an output that ends in .txt, .json, "
            ".xml, .html or .md\n");
}

TEST(Convert, GoesThroughEveryFormThatIsReadAndBackToTheSameText) {
  Sandbox const sandbox;
  auto const edition = fixture("velunaceae/edition-2024.txt");
  auto const first = run_keydrift({"convert", edition, "--to", "text"});
  ASSERT_EQ(first.exit, 0) << first.err;
  auto const text = sandbox.write("first.txt", first.out);
  for (std::vector<std::string> const& forms :
       {std::vector<std::string>{"json"}, std::vector<std::string>{"indented", "json"}}) {
    auto from = text;
    for (auto const& form : forms) {
      auto const to = (sandbox.path() / ("through-" + form)).string();
      ASSERT_EQ(run_keydrift({"convert", from, "--to", form, "-o", to}).exit, 0) << form;
      from = to;
    }
    auto const back = run_keydrift({"convert", from, "--to", "parallel"});
    // The demo's couplets stand in the order in which an indented key prints them.
    EXPECT_EQ(back.out, first.out) << forms.front();
  }
}

TEST(Convert, WritesNothingWhereTheFormCannotHoldTheKey) {
  Sandbox const sandbox;
  static_cast<void>(sandbox.write("key.json",
                                  R"({"keydrift": 1, "couplets": [{"label": "II.3", "leads": [
         {"text": "Beak bifid", "destination": {"taxa": ["Aus bus"]}},
         {"text": "Beak entire", "destination": {"taxa": ["Aus cus"]}}]}]})"));
  auto const ran =
      run_keydrift({"convert", "key.json", "--to", "parallel", "-o", "key.txt"}, sandbox.path());
  EXPECT_EQ(ran.exit, 4);
  EXPECT_NE(ran.err.find("[not-printable]"), std::string::npos) << ran.err;
  EXPECT_EQ(sandbox.files(), std::vector<std::string>{"key.json"});
  auto const anew =
      run_keydrift({"convert", "key.json", "--to", "parallel", "--renumber"}, sandbox.path());
  EXPECT_EQ(anew.exit, 0);
  EXPECT_EQ(anew.out.substr(0, 15), "1.  Beak bifid ");
}

}  // namespace
}  // namespace keydrift::test

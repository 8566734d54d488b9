// Ends of leads that markup sets apart: common names with the Latin ones in brackets, remarks with
// marks of their own, links to other keys.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::one_line;

// What the words and the end of a lead are read as.
std::string lead(std::string_view marked) {
  auto const text =
      "<h1>Key to Ausella</h1>\n<p>1a. Wings clear. <b>Go to 2</b></p>\n<p>1b. Wings dark. "
      "<b>Go to 3</b></p>\n<p>2a. Eyes small. " +
      std::string{marked} +
      "</p>\n<p>2b. Eyes large. <i>Ausella cusa</i></p>\n<p>3a. Legs long, brown. <i>Ausella "
      "dusa</i></p>\n<p>3b. Legs short. <i>Ausella eusa</i></p>\n";
  auto const loaded = read_edition({.name = "key.html", .bytes = text});
  if (!loaded) {
    for (auto const& finding : loaded.findings) ADD_FAILURE() << one_line(finding);
    return {};
  }
  auto const whole = test::sketch(loaded.value->edition);
  auto const begin = whole.find("2[2a] ") + 6;
  return whole.substr(begin, whole.find('\n', begin) - begin);
}

TEST(MarkedCommonNames, BeginTheDestination) {
  std::string const wanted = "Eyes small. -> Orconella rustica (Red crayfish)";
  EXPECT_EQ(lead("<a><b>Red crayfish</b> (<i>Orconella rustica</i>)</a>"), wanted);
  EXPECT_EQ(lead("<a>Red crayfish (<i>Orconella rustica</i>)</a>"), wanted);
  EXPECT_EQ(lead("<a>Red crayfish</a> (<i>Orconella rustica</i>)"), wanted);
  EXPECT_EQ(lead("<strong>Red crayfish</strong> (<em>Orconella rustica</em>)"), wanted);
}

TEST(MarkedCommonNames, AreWholeLinksWhateverStandsInFront) {
  EXPECT_EQ(lead("Tail short <a><b>Red crayfish</b> (<i>Orconella rustica</i>)</a>"),
            "Eyes small. Tail short -> Orconella rustica (Red crayfish)");
  EXPECT_EQ(lead("<a>red crayfish (<i>Orconella rustica</i>)</a>"),
            "Eyes small. -> Orconella rustica (red crayfish)");
}

TEST(MarkedCommonNames, StandBehindADashAndBeforeAComma) {
  EXPECT_EQ(lead("Tail short &mdash; Red crayfish, <i>Orconella rustica</i>"),
            "Eyes small. Tail short -> Orconella rustica (Red crayfish)");
  // Words of the lead, and a stop between.
  EXPECT_EQ(lead("Tail short &ndash; or none. Red crayfish, <i>Orconella rustica</i>"),
            "Eyes small. Tail short – or none. Red crayfish, -> Orconella rustica");
}

TEST(MarkedCommonNames, MayHaveWordsBehindThem) {
  EXPECT_EQ(lead("<a><b>Red crayfish</b> (<i>Orconella rustica</i>)</a> <span>Prohibited</span>"),
            "Eyes small. -> Orconella rustica (Red crayfish; Prohibited)");
  EXPECT_EQ(lead("<a><b>Red crayfish</b> (<i>Orconella rustica</i> complex)</a>"),
            "Eyes small. -> Orconella rustica complex (Red crayfish)");
}

TEST(MarkedCommonNames, AreNotWhatAHostIsCalled) {
  EXPECT_EQ(lead("Living on <b>Red crayfish</b> (<i>Orconella rustica</i>) and others; body long. "
                 "<i>Ausella busa</i>"),
            "Eyes small. Living on Red crayfish (Orconella rustica) and others; body long. -> "
            "Ausella busa");
  EXPECT_EQ(lead("Body long (as in <i>Ausella cusa</i>). <i>Ausella busa</i>"),
            "Eyes small. Body long (as in Ausella cusa). -> Ausella busa");
}

TEST(MarkedCommonNames, RemarksBehindANameMayBeMarked) {
  EXPECT_EQ(
      lead("<b>Red weevil</b>, <i>Trogomera horrei</i> (<b>regulated pest</b> &ndash; submit a "
           "specimen)"),
      "Eyes small. Red weevil, -> Trogomera horrei (regulated pest – submit a specimen)");
}

TEST(MarkedCommonNames, LinksLeadToOtherKeys) {
  EXPECT_EQ(lead("<a>Go to the Key to burrowing crayfishes</a>"),
            "Eyes small. -> key: Key to burrowing crayfishes");
  EXPECT_EQ(lead("<a>See our key to pond crayfishes</a>"),
            "Eyes small. -> key: key to pond crayfishes");
}

TEST(MarkedCommonNames, LinksWithinWordsLeadNowhere) {
  EXPECT_EQ(lead("As told in <a>the key to larvae</a>, body long. <i>Ausella busa</i>"),
            "Eyes small. As told in the key to larvae, body long. -> Ausella busa");
}

TEST(MarkedCommonNames, MayBeALastSentenceThatNothingSetsApart) {
  EXPECT_EQ(lead("Tail with a keel. Red crayfish (<i>Orconella rustica</i>)"),
            "Eyes small. Tail with a keel. -> Orconella rustica (Red crayfish)");
  EXPECT_EQ(lead("Tail with a keel. <span>Red crayfish (<i>Orconella rustica</i>) &ndash; report "
                 "this species</span>"),
            "Eyes small. Tail with a keel. -> Orconella rustica (Red crayfish; report this "
            "species)");
  EXPECT_EQ(lead("Tail with a keel. Red crayfish complex (<i>Orconella rustica</i> or <i>Orconella "
                 "tristis</i>; only males differ)"),
            "Eyes small. Tail with a keel. -> Orconella rustica + Orconella tristis (Red crayfish "
            "complex; only males differ)");
  // A clause is none.
  EXPECT_EQ(lead("Tail with a keel; body as in the red crayfish (<i>Orconella rustica</i>). "
                 "<i>Ausella busa</i>"),
            "Eyes small. Tail with a keel; body as in the red crayfish (Orconella rustica). -> "
            "Ausella busa");
}

}  // namespace
}  // namespace keydrift

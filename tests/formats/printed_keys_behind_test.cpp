// Keys to subspecies within the accounts behind a key.

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::line_kinds;
using test::read_key;
using test::sketch;

constexpr std::string_view kMain =
    "3. AUSUS Roe\n\n"
    "1   Stems erect                                              1. A. bus\n"
    "1   Stems creeping                                           2\n"
    "2   Leaves fleshy, obtuse                                    2. A. cus\n"
    "2   Leaves thin, acute                                       3. A. dus\n\n";

TEST(PrintedKeysBehind, HaveLabelsOfTheirOwnKind) {
  auto const text =
      std::string{kMain} +
      "2. A. cus (Roe) Dorn (A. eus auct.) - Marsh Cress. Perennial to 20cm. 3 sspp.\n\n"
      "a   Stems hairy all round                          a. ssp. cus\n"
      "a   Stems hairy on two sides or glabrous           b\n"
      "b   Leaves 2-4mm                                   b. ssp. fus\n"
      "b   Leaves 5-8mm                                   c. ssp. gus\n\n"
      "a. Ssp. cus. Native; dry turf; rare.\n";
  EXPECT_EQ(sketch(text),
            "1[1] Stems erect -> Ausus bus\n1[1] Stems creeping -> 2\n"
            "2[2] Leaves fleshy, obtuse -> Ausus cus\n2[2] Leaves thin, acute -> Ausus dus\n"
            "a[a] Stems hairy all round -> Ausus cus ssp. cus\n"
            "a[a] Stems hairy on two sides or glabrous -> b\n"
            "b[b] Leaves 2-4mm -> Ausus cus ssp. fus\nb[b] Leaves 5-8mm -> Ausus cus ssp. gus\n");
  EXPECT_EQ(
      line_kinds(text),
      "heading, blank, lead, lead, lead, lead, blank, heading, blank, lead, lead, lead, lead, "
      "blank, note");
  auto const parts = read_key(text).edition.parts;
  ASSERT_EQ(parts.size(), 2U);
  EXPECT_EQ(parts[1].title,
            "2. A. cus (Roe) Dorn (A. eus auct.) - Marsh Cress. Perennial to 20cm. 3 sspp.");
}

TEST(PrintedKeysBehind, MayBeASingleCouplet) {
  EXPECT_EQ(sketch(std::string{kMain} + "3. A. dus Roe. Annual.\n\n"
                                        "a. Hairs forked ......... a. subsp. dus\n"
                                        "b. Hairs simple ......... b. subsp. hus\n"),
            "1[1] Stems erect -> Ausus bus\n1[1] Stems creeping -> 2\n"
            "2[2] Leaves fleshy, obtuse -> Ausus cus\n2[2] Leaves thin, acute -> Ausus dus\n"
            "1[a] Hairs forked -> Ausus dus subsp. dus\n"
            "1[b] Hairs simple -> Ausus dus subsp. hus\n");
}

TEST(PrintedKeysBehind, AreNoListsOfSubspecies) {
  auto const text = std::string{kMain} +
                    "3. A. dus Roe. Annual.\n\n"
                    "a. Hairs forked; on sand, once together with Ausus bus\n"
                    "b. Hairs simple; on rock, often together with Ausus cus\n";
  EXPECT_EQ(line_kinds(text),
            "heading, blank, lead, lead, lead, lead, blank, note, blank, note, note");
}

// Each of many labelled paragraphs may begin a key: the work stays bounded.
TEST(PrintedKeysBehind, TextsThatAreAllLabelsAreReadInTime) {
  std::string text{kMain};
  for (int i = 0; i < 4000; ++i) text += "a. Subsp. dus. Hairs forked.\n\n";
  EXPECT_EQ(read_key(text).edition.couplets.size(), 2U);
}

// Nothing in the leads is cut short: the account's genus alone asks for what the text says.
TEST(PrintedKeysBehind, AccountsMayCutAGenusShortThatNoLeadDoes) {
  auto const read = sketch(
      "1. Stems erect ..... Ausus bus\n1. Stems creeping ..... 2\n"
      "2. Leaves fleshy ..... Ausella cus\n2. Leaves thin ..... Ausus dus\n\n"
      "3. A. dus Roe. Annual.\n\n"
      "a. Hairs forked ......... a. subsp. dus\nb. Hairs simple ......... b. subsp. hus\n");
  EXPECT_NE(read.find("Hairs simple -> Ausus dus subsp. hus\n"), std::string::npos) << read;
}

// A label that the count tells, on a line that goes with the key behind.
TEST(PrintedKeysBehind, ALabelIsTakenOutWithItsLine) {
  EXPECT_EQ(
      sketch("4. Petals 1-2 mm, pale ..... 3. A. busa\n4’. Petals 3-4 mm, bright ..... 4. A. cusa\n"
             "5. Stems spiny; petals white ..... 6\n"
             "a. Fruit with forked hairs ..... a. subsp. cusa\n"
             "b. Fruit with simple hairs ..... b. subsp. dusa\n"),
      "4[4] Petals 1-2 mm, pale -> A. busa\n"
      "4[4’] Petals 3-4 mm, bright -> A. cusa\n"
      "5[5] Stems spiny; petals white -> ?6\n"
      "1[a] Fruit with forked hairs -> subsp. cusa\n"
      "1[b] Fruit with simple hairs -> subsp. dusa\n");
}

}  // namespace
}  // namespace keydrift

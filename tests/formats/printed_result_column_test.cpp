// Tables copied line by line whose last column holds the destinations.

#include <gtest/gtest.h>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::sketch;

TEST(PrintedResultColumn, IsNoneWhereWordsEndBeforeTheirDestination) {
  // Wide gaps alone: the words of no lead go on beneath what stands in the column.
  EXPECT_EQ(sketch("Key to Aus\n\n"
                   "1   Wings clear, legs long, head black      2\n"
                   "–   Wings dark, legs short, head red        Aus bus\n"
                   "2   Tail with a white tip, feet pale        Aus cus\n"
                   "–   Tail without a white tip, long, hairy\n"
                   "    and ringed                              Aus dus\n"),
            "1[1] Wings clear, legs long, head black -> 2\n"
            "1[–] Wings dark, legs short, head red -> Aus bus\n"
            "2[2] Tail with a white tip, feet pale -> Aus cus\n"
            "2[–] Tail without a white tip, long, hairy and ringed -> Aus dus\n");
}

TEST(PrintedResultColumn, WordsGoOnBeneathDestinationsInAColumn) {
  EXPECT_EQ(
      sketch(
          "Key 2. Larvae with two dorsal fins\n"
          "\n"
          "Step     Characters                                              Result\n"
          "\n"
          "1a       Body rotated or eyes migrating to one side; body        2\n"
          "         compressed (flatfishes)\n"
          "1b       Body not rotated, eyes symmetrical                      3\n"
          "\n"
          "2a       One elongate ray on top of the head;                    Arnoglypha laterna\n"
          "         swimbladder large                                       (page 188)\n"
          "2b       No elongate ray; head with spines; body heavily         Scophthalmina rhombea\n"
          "         pigmented, fins clear                                   (page 192)\n"
          "\n"
          "3a       Pelvic fins united; swimbladder                         Liparidion bulbosus\n"
          "         conspicuous                                             (page 166)\n"
          "3b       Two dorsal fins; skin not loose                         Key 3 (gadoids)\n"),
      "1[1a] Body rotated or eyes migrating to one side; body compressed (flatfishes) -> 2\n"
      "1[1b] Body not rotated, eyes symmetrical -> 3\n"
      "2[2a] One elongate ray on top of the head; swimbladder large -> Arnoglypha laterna (page "
      "188)\n"
      "2[2b] No elongate ray; head with spines; body heavily pigmented, fins clear -> "
      "Scophthalmina rhombea (page 192)\n"
      "3[3a] Pelvic fins united; swimbladder conspicuous -> Liparidion bulbosus (page 166)\n"
      "3[3b] Two dorsal fins; skin not loose -> key: Key 3 (gadoids)\n");
}

}  // namespace
}  // namespace keydrift

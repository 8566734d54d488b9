// What the lines of a key show of labels and ends before any is read.

#include "keydrift/formats/printed_label_fronts.hpp"

#include <gtest/gtest.h>

#include <cstdint>
#include <set>
#include <string_view>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift {
namespace {

std::set<std::uint32_t> numbers_at_ends(std::string_view text) {
  return printed::numbers_at_ends(printed::split_lines(text));
}

TEST(PrintedLabelFronts, NumbersAtEndsAreWhereLeadsMayLead) {
  EXPECT_EQ(numbers_at_ends("1. Wings long ..... 2\nWings short, as in no. 7\n\n2. Legs red 12.\n"),
            (std::set<std::uint32_t>{2, 7, 12}));
}

TEST(PrintedLabelFronts, NumbersOfIssuesAreNoEnds) {
  EXPECT_EQ(numbers_at_ends("202\tMarsh Leaflets\tVol. III — N.º 14\n"
                            "Marsh Leaflets, Vol. 3, No. 15\n"
                            "Blätter vom Moor, Band 4, Heft 16\n"
                            "Bull. Soc. Marais, tome 5, n° 17\n"),
            std::set<std::uint32_t>{});
}

}  // namespace
}  // namespace keydrift

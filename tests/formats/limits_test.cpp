#include "keydrift/formats/limits.hpp"

#include <gtest/gtest.h>

#include "keydrift/key/prose.hpp"

namespace keydrift {
namespace {

std::string wrong(std::string_view assignment) {
  ReadLimits limits;
  auto const message = set_limit(limits, assignment);
  return message ? *message : "";
}

TEST(Limits, AreSetByNameWithUnits) {
  ReadLimits limits;
  for (auto const* assignment : {"size=300M", "line=2k", "unpacked=4G", "expansion=1000",
                                 "entries=20000", "depth=12", "nodes=9"}) {
    EXPECT_EQ(set_limit(limits, assignment), std::nullopt) << assignment;
  }
  EXPECT_EQ(limits.bytes, std::uint64_t{300} << 20);
  EXPECT_EQ(limits.line_bytes, 2048U);
  EXPECT_EQ(limits.unpacked_bytes, std::uint64_t{4} << 30);
  EXPECT_EQ(limits.expansion, 1000U);
  EXPECT_EQ(limits.entries, 20'000U);
  EXPECT_EQ(limits.depth, 12U);
  EXPECT_EQ(limits.xml_nodes, 9U);
  EXPECT_EQ(in_prose(names_of(limits)),
            "size (300M), line (2K), unpacked (4G), expansion (1000), entries (20000), depth (12) "
            "and nodes (9)");
}

TEST(Limits, SayWhatIsWrongWithAnAssignment) {
  EXPECT_EQ(wrong("lines=3"), "there is no limit \"lines\"; did you mean \"line\"?");
  EXPECT_EQ(wrong("=3"),
            "there is no limit \"\"; there are size, line, unpacked, expansion, entries, "
            "depth and nodes");
  EXPECT_EQ(wrong("line"), "the limit \"line\" has no value; write \"line=2M\"");
  for (auto const* value : {"", "M", "2MB", "-1", "1.5M", "2 M", "99999999999999999999"}) {
    EXPECT_EQ(wrong("line=" + std::string{value}),
              "\"" + std::string{value} +
                  "\" is no value of the limit \"line\": it takes a whole number, K, M or G may "
                  "follow it, as in \"line=2M\"");
  }
  EXPECT_EQ(wrong("depth=1K"),
            "\"1K\" is no value of the limit \"depth\": it takes a whole number, as in "
            "\"depth=512\"");
  EXPECT_EQ(wrong("size=5G"), "the limit \"size\" may be 1 to 4G, not \"5G\"");
  EXPECT_EQ(wrong("depth=0"), "the limit \"depth\" may be 1 to 1000000000, not \"0\"");
}

TEST(Limits, NameTheOptionThatLiftsThem) {
  ReadLimits const limits;
  EXPECT_EQ(to_lift(limits, ReadLimit::line, std::uint64_t{100} << 20), "--limit line=113M");
  EXPECT_EQ(to_lift(limits, ReadLimit::line), "--limit line=2M");
  EXPECT_EQ(to_lift(limits, ReadLimit::entries, 10'001), "--limit entries=11251");
  EXPECT_EQ(to_lift(limits, ReadLimit::depth), "--limit depth=512");
  // What a message proposes is taken, and is enough.
  for (std::uint64_t needed = 1; needed < (std::uint64_t{3} << 30); needed = needed * 3 + 1) {
    auto raised = limits;
    auto const option = to_lift(limits, ReadLimit::size, needed);
    EXPECT_EQ(set_limit(raised, option.substr(8)), std::nullopt) << option;
    EXPECT_GE(raised.bytes, needed);
  }
}

}  // namespace
}  // namespace keydrift

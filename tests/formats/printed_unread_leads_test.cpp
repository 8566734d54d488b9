// Lines that look like leads and were read as none are told.

#include <gtest/gtest.h>

#include <string>

#include "printed_support.hpp"

namespace keydrift {
namespace {

using test::findings_of;

std::string unread_in(std::string_view text) {
  for (auto const& finding : findings_of(text)) {
    if (finding.find("[unread-lead]") != std::string::npos) return finding;
  }
  return "none";
}

TEST(PrintedUnreadLeads, ALineWithLeadersAndADestinationAmongTheLeads) {
  auto const told = unread_in(
      "I. Body keeled ................ II\n"
      "—  Body not keeled ............. III\n"
      "II. Tail forked ................ Ausella busa\n"
      "—  Tail rounded ................ Ausella cusa\n"
      "III. Eyes large ................ Ausella dusa\n"
      "—  Eyes small .................. 4\n"
      "4. Barbels 2 ................... Ausella fusa\n"
      "—  Barbels 4 ................... Ausella gusa\n");
  EXPECT_TRUE(told.starts_with("key.txt:7:1: warning: this line leads somewhere")) << told;
}

TEST(PrintedUnreadLeads, ACoupletNoughtAboveTheFirstOne) {
  auto const told = unread_in(
      "Key to Ausella\n\n"
      "0 Wings absent ........ Ausella busa\n"
      "– Wings present ........ 1\n"
      "1(0) Legs red ........ Ausella cusa\n"
      "– Legs black ........ 2\n"
      "2(1) Eyes red ........ Ausella dusa\n"
      "– Eyes black ........ Ausella fusa\n");
  EXPECT_TRUE(told.starts_with("key.txt:3:1: warning: this line leads somewhere")) << told;
  EXPECT_NE(told.find("number couplets from 1 on"), std::string::npos) << told;
}

TEST(PrintedUnreadLeads, RemarksAndContentsAreNone) {
  EXPECT_EQ(unread_in("Introduction ........ 1\n"
                      "Key to the species ........ 3\n\n"
                      "1. Wings clear ........ 2\n"
                      "– Wings dark ........ Ausella busa\n"
                      "Note: in spring only ... rarely\n"
                      "2. Legs pale ........ Ausella cusa\n"
                      "– Legs dark ........ Ausella dusa\n"),
            "none");
}

TEST(PrintedUnreadLeads, ListsBehindTheKeyAreNone) {
  EXPECT_EQ(unread_in("1. Wings clear ........ 2\n"
                      "– Wings dark ........ Ausella busa\n"
                      "2. Legs pale ........ Ausella cusa\n"
                      "– Legs dark ........ Ausella dusa\n\n"
                      "Index\n\n"
                      "Ausella busa ........ 3\n"
                      "Ausella cusa ........ 4\n"),
            "none");
}

}  // namespace
}  // namespace keydrift

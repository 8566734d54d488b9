// Dates of ISO 8601-1 as Darwin Core takes them; the days each covers are counted by hand.
#include "keydrift/key/period.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keydrift {
namespace {

std::string told(std::string_view text) {
  auto const period = read_period(text);
  return period ? std::to_string(period->first) + "-" + std::to_string(period->last) : "none";
}

struct Case {
  char const* text;
  char const* days;
};

TEST(Period, ADateWithoutADayIsAllOfItsDays) {
  for (auto const& [text, days] : std::vector<Case>{
           {"1963", "19630101-19631231"},
           {"1906-06", "19060601-19060630"},
           {"2024-02", "20240201-20240229"},
           {"1900-02", "19000201-19000228"},
           {"1971", "19710101-19711231"},
           {"1963-03-08", "19630308-19630308"},
           {" 1963-03-08 ", "19630308-19630308"},
       }) {
    EXPECT_EQ(told(text), days) << text;
  }
}

TEST(Period, ATimeIsPartOfItsDay) {
  for (auto const& [text, days] : std::vector<Case>{
           {"1963-03-08T14:07-06:00", "19630308-19630308"},
           {"2009-02-20T08:40Z", "20090220-20090220"},
           {"2018-08-29T15:19", "20180829-20180829"},
           {"2018-08-29T15:19:05.25+02", "20180829-20180829"},
           {"2018-08-29T24:00", "20180829-20180829"},
           {"2016-12-31T23:59:60Z", "20161231-20161231"},
       }) {
    EXPECT_EQ(told(text), days) << text;
  }
}

TEST(Period, TheEndOfAnIntervalBelongsToItAndMayLeaveOutWhatItShares) {
  for (auto const& [text, days] : std::vector<Case>{
           {"1900/1909", "19000101-19091231"},
           {"2007-03-01T13:00:00Z/2008-05-11T15:30:00Z", "20070301-20080511"},
           {"2007-11-13/15", "20071113-20071115"},
           {"2007-11-13/12-01", "20071113-20071201"},
           {"2007-11/12", "20071101-20071231"},
           {"2007-11-13/2008", "20071113-20081231"},
           {"2007/2007-06", "20070101-20070630"},
           {"2007-03-01T13:00/15:30", "20070301-20070301"},
           {"2007-03-01T13:00/02T09:15", "20070301-20070302"},
           {"1998-07-14/1998-07-14", "19980714-19980714"},
       }) {
    EXPECT_EQ(told(text), days) << text;
  }
}

TEST(Period, WhatIsNoDateOfTheCalendarOrOfThatFormIsNone) {
  for (auto const* text : {"",
                           "98",
                           "1998-13",
                           "1998-00",
                           "1998-02-29",
                           "1998-04-31",
                           "1998-7",
                           "1998-7-4",
                           "14/7/1998",
                           "14.7.1998",
                           "19980714",
                           "1998-W29-2",
                           "1998-195",
                           "July 1998",
                           "s.d.",
                           "1998-07-14T25:00",
                           "1998-07-14T9:30",
                           "1998-07T09:30",
                           "1998-07-14 09:30",
                           "1998-",
                           "1998/",
                           "/1998",
                           "1998/07",
                           "1998-07-14/13",
                           "2001/1998",
                           "1998-07-14/1998-07-13",
                           "1998/2001/2004",
                           "1998-07-14T09:30+2",
                           "1998-07-14-15"}) {
    EXPECT_EQ(told(text), "none") << text;
  }
}

}  // namespace
}  // namespace keydrift

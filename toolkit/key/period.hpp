#pragma once
// Dates of records as what they are: periods of days.
//
// Source of the grammar: Darwin Core list of terms, issue 2026-05-26, eventDate and dateIdentified,
// which takes from ISO 8601-1:2019 calendar dates, moments and intervals in extended format:
//   1998   1998-07   1998-07-14   1998-07-14T09:30   1998-07-14T09:30:05.5Z   …+02:00
//   1998/2001   1998-07/09   1998-07-13/15   1998-07-13T09:30/11:00
// The end of an interval may leave out what it has in common with the beginning, and belongs to it:
// 1998/2001 ends with 2001.  (The examples of issues since 2025 end before it; what archives mean
// they do not say, and the wider period claims less.)

#include <cstdint>
#include <optional>
#include <string_view>

namespace keydrift {

// A day as the number 10000 year + 100 month + day: 19980714.
using Day = std::uint32_t;

struct Period {
  Day first{};
  Day last{};  // not before `first`
  bool operator==(Period const&) const = default;
};

// nullopt: not of these forms, a day that the Gregorian calendar does not have, or an end before
// the beginning.  Blanks around are nothing.  Days are those of the place: offsets shift none.
[[nodiscard]] std::optional<Period> read_period(std::string_view text);

}  // namespace keydrift

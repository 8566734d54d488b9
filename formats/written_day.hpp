#pragma once
// Dates as people write them and as spreadsheets change them.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace keydrift {

enum class DayOrder {
  unknown,  // "3/4/2024" cannot be told
  day_first,
  month_first,
};

// What a cell says of a day.
struct WrittenDay {
  std::string iso{};        // "2024-05-17", "2024-05" or "2024"; empty: see problem
  std::string problem{};    // one clause; a remedy behind "; "
  bool rewritten{false};    // it was not written as ISO 8601
  bool needs_order{false};  // only a DayOrder would tell
};

// Forms taken: ISO 8601 dates, also with a time behind a T or a blank; "17.5.2024" (dots mean day
// first); "17/5/2024", "5/17/2024", "17-5-2024" where one number is above 12 or `order` tells;
// "17 May 2024", "17-May-2024", "May 2024" with English, German, French, Spanish, Portuguese or
// Italian names of months or their first three letters or more; days counted by a spreadsheet since
// 1899-12-30 (five digits, 1927 to 2064; the count is that of ECMA-376 part 1, 18.17.4, from
// memory).  A year of two digits is not taken.  The day must exist in the Gregorian calendar.
[[nodiscard]] WrittenDay read_day(std::string_view text, DayOrder order = DayOrder::unknown);

// What this date alone shows of the order used: "17/5/2024" is day_first; nullopt: nothing.
[[nodiscard]] std::optional<DayOrder> order_shown_by(std::string_view text);

}  // namespace keydrift

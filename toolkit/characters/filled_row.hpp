#pragma once
// One row of a worklist that came back: what somebody wrote beside a sheet, verbatim, and what
// could be made of it.  formats/ fills it in, keydrift/redetermination weighs it.

#include <cstdint>
#include <string>

namespace keydrift {

struct FilledRow {
  std::string file{};
  std::uint64_t line{};  // of its first byte, 1-based
  // What the worklist said.
  std::string number{};         // catalogue number, else occurrence id; as a spreadsheet left it
  std::string occurrence_id{};  // empty where the column is missing
  std::string storage{};
  std::string scientific_name{};
  std::string character{};  // id of the character asked for; empty: none, or no such column
  std::string question{};
  // The letters of the row (RowCheck), where the file has all columns that they were made of; and
  // the column of their cell in its line.
  std::string check{};
  std::uint32_t check_column{};
  // What was filled in.
  std::string answer{};
  std::string new_name{};
  std::string by{};
  std::string date{};
  std::string remarks{};
  // The date as ISO 8601 ("2024-05-17", "2024-05", "2024"); empty: none is written, or
  // `date_problem` says why it cannot be told.
  std::string day{};
  std::string date_problem{};  // one clause; a remedy behind "; "

  // Did anybody write anything?
  [[nodiscard]] bool blank() const {
    return answer.empty() && new_name.empty() && by.empty() && date.empty() && remarks.empty();
  }
  bool operator==(FilledRow const&) const = default;
};

}  // namespace keydrift

#pragma once
// Parts the lines beside the braces of a key so that each brace has one number.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace keydrift::printed {

using BraceCost = std::int64_t;

// What is known of the lines before they are parted, by row.
struct BraceRows {
  std::vector<BraceCost> begin_costs;   // what speaks against a brace's beginning there
  std::vector<bool> words;              // more than a number or a piece of a brace stands there
  std::vector<std::size_t> rivals;      // rows up to it, itself included, that begin further leads
  std::vector<std::uint32_t> leads_to;  // couplet that the row's last words name; 0 where none
  std::vector<std::size_t> numbers;     // rows that bear a couplet's number; at least one
  std::vector<std::uint32_t> couplets;  // these numbers
  std::vector<std::size_t> key_begins;  // rows with which keys of the file begin; 0 first
};

// The rows with which braces begin, one for each number: those that cost least.  A brace of two
// leads, with its number in the middle or on its first row (whichever fits the file better), costs
// nothing.  Time is linear in the rows but for the length of a brace.
[[nodiscard]] std::vector<std::size_t> part_braces(BraceRows const& rows);

}  // namespace keydrift::printed

#pragma once
// What stands before the words on a line beside a brace: the couplet's number, a piece of the
// brace, or what a scan has made of it.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace keydrift::printed {

// Lines that a brace may have above the number of its couplet, and below it.
inline constexpr std::size_t kLongestBrace = 40;

// Borrows the line that it was read from.
struct BraceFront {
  std::uint32_t number{};    // 0 without
  bool misread{false};       // its digits were put right: "l" for 1
  std::string_view printed;  // the number as printed
  std::string_view back;     // "3" of "7 (3) {"
  char32_t sign{};           // the piece of the brace; 0 without
  std::size_t words_at{};    // the line's end where no words follow
  [[nodiscard]] bool is_number_alone(std::string_view line) const {
    return number > 0 && words_at >= line.size();
  }
};

// The front of the line (trimmed on the left).  A letter is a piece of a brace only where blanks
// set it apart from the words; "(" where nothing closes it.
[[nodiscard]] BraceFront read_brace_front(std::string_view line);

// The same, where couplet `number` is due: "l \ Wings" for 1, "I0 {" for 10.
[[nodiscard]] std::optional<BraceFront> read_misread_front(std::string_view line,
                                                           std::uint32_t number);

// The same, where a sign or two stand for the number that is due and a piece of the brace behind
// them: "^ { Wings", "n ( Wings", "_ f Wings".
[[nodiscard]] std::optional<BraceFront> read_lost_front(std::string_view line,
                                                        std::uint32_t number);

// A piece that begins a brace: "⎧", "⎰", "r", "f".
[[nodiscard]] bool opens_brace(char32_t sign);
// One that ends it: "⎩", "⎱", "\\".
[[nodiscard]] bool closes_brace(char32_t sign);

// No letter and no bracket: hardly anything but a piece of a brace.
[[nodiscard]] bool is_plain_brace(char32_t sign);

}  // namespace keydrift::printed

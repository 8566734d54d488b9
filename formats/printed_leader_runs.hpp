#pragma once
// Rows of dots and dashes between a lead's words and its destination, and what is left of them on
// full lines and after scanning.  Inner header of formats.

#include <cstddef>
#include <string_view>

namespace keydrift::printed {

// Bytes [begin, end) of the text.
struct Run {
  std::size_t begin{};
  std::size_t end{};
  bool leader{false};  // it leads somewhere, and is no full stop nor a dash of the words
};

[[nodiscard]] bool is_leader_dot(char32_t c);

// The run of leader characters and blanks between them that starts at `at`.
[[nodiscard]] Run dot_run(std::string_view text, std::size_t at);

// Dashes in a row, or one by one between blanks, from `at`.
[[nodiscard]] Run dash_run(std::string_view text, std::size_t at);

}  // namespace keydrift::printed

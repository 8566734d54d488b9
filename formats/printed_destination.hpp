#pragma once
// What stands where a destination may stand: numbers, pointers, names of keys.  Inner header of
// formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Columns; set this far further in, a line holds a destination and no words.
inline constexpr std::uint32_t kDestinationIndent = 8;

// "… go to 5", "… 5": a couplet number at the end without leaders.  Numbers of figures, pages and
// plates are none.
struct TrailingReference {
  std::size_t words_end{};
  std::size_t destination_begin{};
  Reference reference;
  bool pointed{false};         // "go to", "see", "siehe", … stands before it
  bool after_sentence{false};  // "… as long as wide. 5."
};
// Of `numbering`, if given: "… IV" where couplets are roman, "… go to B" where they have letters.
[[nodiscard]] std::optional<TrailingReference> trailing_reference(
    std::string_view text, Numbering const* numbering = nullptr);

// Could this be a destination at all: a number, a pointer to a key, a name?
[[nodiscard]] bool plausible_destination(std::string_view text, Numbering const& numbering);

// Takes brackets off the end of a destination: "[in part]" once, as a remark, "(Fig. 7)" as often
// as they come.
void take_brackets(std::string_view& rest, std::string& remark, std::vector<std::string>& figures);

// Without "go to", "see couplet", "siehe", arrows, brackets and the last full stop.
[[nodiscard]] std::string_view strip_pointer(std::string_view text);

// "go to 5", "siehe 12": words that point to a couplet.
[[nodiscard]] bool points_in_words(std::string_view text);

// A destination beyond doubt, so that a mere dash before it will do: a number, a pointer to a key,
// a name in Latin form.
[[nodiscard]] bool certain_destination(std::string_view text, Numbering const& numbering);

// "Key B", "Group 2", "Schlüssel der Larven": the name of another key.
[[nodiscard]] bool names_a_key(std::string_view text);

// "go to the key to burrowing ants": the key that words point to, without its article; empty for
// any other text.
[[nodiscard]] std::string_view pointed_key(std::string_view text);

// "Key: Larvae": the words behind the colon; empty for any other text.
[[nodiscard]] std::string_view explicit_key_title(std::string_view text);

// "3b, in AUSACEAE, p. 22": a couplet of another key.
[[nodiscard]] bool points_into_other_work(std::string_view text);

}  // namespace keydrift::printed

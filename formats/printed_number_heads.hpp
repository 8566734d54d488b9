#pragma once
// What a line begins with where couplets' numbers are set in ways of their own.  Inner header of
// formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {

enum class NumberScript : std::uint8_t { digits, roman, letters };

struct NumberScheme {
  NumberScript script{NumberScript::digits};
  bool worded{false};
};

// What a line begins with where it begins with a couplet's number.
struct NumberHead {
  Label label;              // family and number of the couplet; the letter of the lead, if any
  bool strong{false};       // a word, a sign or a letter goes with the number
  bool alone{false};        // nothing follows on the line
  std::uint32_t ordinal{};  // of the lead's letter; 0 without
};

// A lead's own sign under a number: "a)", "B.", "ii)", "–", "•".
struct LeadSign {
  Label label;
  std::uint32_t ordinal{};  // 0 for dashes and bullets
  bool like_name{false};    // "A. wings" or "A. bus"
};

// Behind "Couplet ", "No. ", "n°"; 0 where no such word stands.
[[nodiscard]] std::size_t behind_number_word(std::string_view line);
[[nodiscard]] bool is_bullet(char32_t c);

// Reads lines by one scheme; what it gives borrows from them.
class NumberReader {
 public:
  explicit NumberReader(NumberScheme scheme) : scheme_{scheme} {}

  // The couplet's number that the line begins with.
  [[nodiscard]] std::optional<NumberHead> head(std::string_view line) const;
  // The sign of a lead, where no number stands before it.
  [[nodiscard]] std::optional<LeadSign> sub(std::string_view line) const;

 private:
  [[nodiscard]] bool read_number(std::string_view line, std::size_t& at, Label& label) const;
  // "1a", "Ab", "IIb", "A1": the lead's own sign, close to the number.
  void take_close_letter(std::string_view line, std::size_t& at, NumberHead& head) const;
  // "1 a) Wings", "II. A. Wings": the lead's own sign behind the number.
  void take_spaced_letter(std::string_view line, NumberHead& head) const;

  NumberScheme scheme_;
};

}  // namespace keydrift::printed

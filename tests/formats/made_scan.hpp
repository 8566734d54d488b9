#pragma once
// What scanning does to labels, leaders and numbers of printed leads, by chance.

#include <cstdint>
#include <string>
#include <string_view>

namespace keydrift::test {

// The signs that scanning takes for others are those that scans of printed keys show (common
// practice); the same seed damages the same text alike everywhere.
class Scan {
 public:
  // Of a thousand labels, leaders and numbers each so many are damaged.
  Scan(std::uint32_t seed, std::uint32_t per_mille);

  // "3." as "8.", "3,", "S.", ".3.", "3" …, or nothing at all
  [[nodiscard]] std::string label(std::string_view printed);
  // "....." as "..,. .", ".•..", "--" …
  [[nodiscard]] std::string leader(std::string_view printed);
  // "5" as "S", "15" as "1 5" …
  [[nodiscard]] std::string number(std::string_view printed);
  // Columns by which a line is set in
  [[nodiscard]] std::size_t indent(std::size_t printed);
  // What was damaged, for messages: "label 3.>8."
  [[nodiscard]] std::string const& said() const { return said_; }

 private:
  std::string say(std::string_view what, std::string_view printed, std::string seen);
  [[nodiscard]] std::string label_seen(std::string_view printed);
  [[nodiscard]] std::size_t below(std::size_t bound);
  [[nodiscard]] bool is_damaged();
  // With one sign taken for another; as printed where none of them is known for that.
  [[nodiscard]] std::string with_sign_misread(std::string_view printed);

  std::uint64_t state_;
  std::uint32_t per_mille_;
  std::string said_;
};

// Where the text layer of a scanned page sets blank lines.
enum class TextLayer : std::uint8_t {
  between_lines,  // behind every line
  by_chance       // behind two lines of five
};

// The text as a text layer has it: lines without indentation, if `flush`, and with blank lines.
[[nodiscard]] std::string as_text_layer(std::string_view text, TextLayer layer, bool flush,
                                        std::uint32_t seed);

}  // namespace keydrift::test

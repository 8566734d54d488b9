#pragma once
// The hand-written truth about statements: see statements/README.md.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/statement.hpp"

namespace keydrift::test {

struct TrueAtom {
  std::string character;            // lexicon id, or words: "length of style"; empty: opaque
  std::vector<std::string> states;  // of an opaque one: its words as printed in the table
  std::vector<NumericRange> ranges;
  std::string unit;
  bool negated{false};
};

struct TrueStatement {
  std::vector<TrueAtom> any_of;
  std::string hedge;
  std::vector<std::string> except;
  std::vector<std::string> limits;
  bool note{false};
  std::string printed;  // the line of the table
};

struct TrueLead {
  std::size_t line{};
  std::string kind;
  std::string language;
  std::string lexicon;  // "plants", "animals", "none"
  std::string text;
  std::vector<TrueStatement> says;
};

// Throws std::runtime_error with the line where the table is not understood.
[[nodiscard]] std::vector<TrueLead> read_statement_table(std::string_view text);

// Character, states or numbers, alternatives, hedge, exceptions and limits are the same.
[[nodiscard]] bool agrees(TrueStatement const& truth, Statement const& read);

}  // namespace keydrift::test

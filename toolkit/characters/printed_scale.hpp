#pragma once
// The unit and the direction that a statement prints its numbers in, for findings that speak of
// them: "15 and 20 cm", not "150 and 200 mm"; "1.2 times as long", not "0.833333333".

#include <map>
#include <span>
#include <string>
#include <string_view>

#include "keydrift/characters/contrast_values.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::contrast {

struct PrintedScale {
  std::string unit{};    // as printed; empty: the canonical one
  double factor{1};      // canonical value = printed value * factor
  bool inverted{false};  // a ratio whose character is the other way round
};

// The unit words behind numbers, as printed, by canonical unit.
[[nodiscard]] std::map<std::string, std::string> units_printed(std::string_view text);

// `values`: of the one character of the statements, of which the first that tells decides.
[[nodiscard]] PrintedScale printed_scale(std::span<Statement const* const> statements,
                                         Values const& values, std::string_view language);

// The result borrows the unit of `scale`.
[[nodiscard]] Values as_printed(Values const& values, PrintedScale const& scale);

}  // namespace keydrift::contrast

#pragma once
// Measurements, counts and ratios as leads print them.

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::reading {

inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

// One number expression: "(3–)4–6(–8) mm long", "more than 3 cm", "twice as long as wide".
struct Measure {
  std::uint32_t begin{};  // tokens, half open
  std::uint32_t end{};
  std::vector<NumericRange> ranges;  // canonical unit; "approximate" ones are not yet widened
  // Canonical; "1" for what counts, "" for a ratio and for what measures but prints no unit
  // ("1.8").
  std::string unit;
  bool unit_printed{false};
  double factor{1};       // of the printed unit: printed numbers times this are the ranges
  bool share{false};      // "1/6 of diameter", "2x width": wants no unit, though it has a dimension
  std::string dimension;  // "length", "width" … as printed beside the number; may be empty
  bool or_rarely{false};  // "3, rarely 4": the extremes come from a hedged alternative
  bool backwards{false};  // printed upper limit below the lower one (read the right way round)
  bool negated{false};

  bool ratio{false};
  std::string over;  // ratio: the dimension of the subject ("length")
  std::string to;    // ratio: another dimension of the subject; empty: of the comparand
  std::uint32_t comparand_begin{};  // ratio to another part: its tokens
  std::uint32_t comparand_end{};
};

// The expression that begins at tokens[at] and ends before `stop`; several for "4–6 × 2–3 mm".
// Tokens that have been read as something else than hedges end it.  Empty when none begins there.
[[nodiscard]] std::vector<Measure> measures_at(LeadText const& text, std::uint32_t at,
                                               std::uint32_t stop);

// The two kinds of them.
[[nodiscard]] std::vector<Measure> amounts_at(LeadText const& text, std::uint32_t at,
                                              std::uint32_t stop);
[[nodiscard]] std::optional<Measure> ratio_at(LeadText const& text, std::uint32_t at,
                                              std::uint32_t stop);

// A ratio the other way round (length/width -> width/length).
[[nodiscard]] NumericRange inverted(NumericRange const& range);

// With every limit times `factor`.
[[nodiscard]] NumericRange scaled(NumericRange const& range, double factor);

// Moves the limits of an approximate range apart by the share `tolerance` of each.
[[nodiscard]] NumericRange widened(NumericRange const& range, double tolerance);

// Orders dimensions for ratios: length before width before height …
[[nodiscard]] int dimension_rank(std::string_view dimension);

}  // namespace keydrift::reading

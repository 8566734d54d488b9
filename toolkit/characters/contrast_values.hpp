#pragma once
// What a statement allows of one character, as a set that can be cut, joined and compared.
//
// Serves the findings of contrast.hpp, which need no lexicon and no common character space.

#include <boost/container/small_vector.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/statement.hpp"

namespace keydrift::contrast {

// Most statements name one or two states: those lie in the value itself.
using StateList = boost::container::small_vector<std::string_view, 2>;

// Either states or numbers of one character.  Units and states are views of the statements (or the
// lexicon) that they come from, which must live longer.
struct Values {
  bool numeric{false};
  std::string_view unit{};            // numeric only
  bool all_but{false};                // states: every state except those in `states`
  StateList states{};                 // sorted, unique
  std::vector<Interval> intervals{};  // sorted, apart; counts (unit "1") closed at whole numbers
};
[[nodiscard]] bool operator==(Values const& a, Values const& b);
[[nodiscard]] bool operator<(Values const& a, Values const& b);  // any total order

// By the extremes (what is not refuted) or by the usual ranges (what is supported).
enum class Breadth { extreme, usual };
[[nodiscard]] Values values_of(Atom const& atom, Breadth breadth);
// nullopt when the statement speaks of several characters, or of one in two units.
[[nodiscard]] std::optional<Values> values_of(Statement const& statement, Breadth breadth);

// Of the same kind and unit; the set operations below ask for it.
[[nodiscard]] bool comparable(Values const& a, Values const& b);
[[nodiscard]] Values intersection(Values const& a, Values const& b);
[[nodiscard]] Values joined(Values const& a, Values const& b);
[[nodiscard]] Values complement(Values const& values);
[[nodiscard]] bool is_empty(Values const& values);
[[nodiscard]] bool is_everything(Values const& values);
[[nodiscard]] inline bool disjoint(Values const& a, Values const& b) {
  return is_empty(intersection(a, b));
}
[[nodiscard]] inline bool is_within(Values const& a, Values const& b) {
  return is_empty(intersection(a, complement(b)));
}

// "4–5 mm", "5 mm", "more than 5 mm", "3 or 5"; states: "bifid or entire", "all but bifid".
[[nodiscard]] std::string in_words(Values const& values);
[[nodiscard]] std::string number_words(double number);  // without needless zeros

}  // namespace keydrift::contrast

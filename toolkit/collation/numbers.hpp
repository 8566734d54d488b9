#pragma once
// Measurements as a report prints them.

#include <string>
#include <vector>

#include "keydrift/key/statement.hpp"

namespace keydrift::collating {

// A number without needless decimals: "5", "4.25", "0.1"; at most six decimals.
[[nodiscard]] std::string trimmed(double number);

// The allowed values of an atom: "3–5 mm", "(3–)4–6(–8) mm", "< 5 mm", "≥ 4 mm", "2–3 or 5 mm",
// "ca. 5 mm"; "not " before a negated one.
[[nodiscard]] std::string in_words(Atom const& atom);

// "5 mm → 4 mm": both sides' values; where each side has one limit of the same kind ("< 5 mm" and
// "< 4 mm") the limits alone.
[[nodiscard]] std::string change_in_words(Atom const& old_atom, Atom const& new_atom);

}  // namespace keydrift::collating

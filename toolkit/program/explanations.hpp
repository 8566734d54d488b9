#pragma once
// What the findings mean: the tables of all folders together.

#include <string>
#include <vector>

#include "keydrift/key/finding_kinds.hpp"
#include "keydrift/program/context.hpp"

namespace keydrift::program {

// Every kind of finding that a reader or a check may report, by code.
[[nodiscard]] std::vector<FindingKind> all_finding_kinds();

// Prints what the code means, or for "" the list of all codes.
[[nodiscard]] ExitCode explain_finding(std::string const& code, StyleOptions const& style,
                                       Context& context);

}  // namespace keydrift::program

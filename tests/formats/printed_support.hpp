#pragma once
// Printed keys as short sketches, so that a test shows what was read in a few lines.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_key.hpp"

namespace keydrift::test {

// Reads and fails the running test when nothing is loaded.
[[nodiscard]] PrintedReading read_key(std::string_view text);

// One line a lead: "7[7a] words -> destination", where destination is a couplet's label, taxa
// joined by " + ", "key: TITLE" or "?PRINTED"; a remark follows in parentheses.
[[nodiscard]] std::string sketch(Edition const& edition);
[[nodiscard]] std::string sketch(std::string_view text);

// Of a web page; fails the running test when nothing is loaded.
[[nodiscard]] std::string sketch_page(std::string_view page);

// What a lead leads to whose destination is printed so, behind a row of dots: as a sketch shows it.
[[nodiscard]] std::string led_to(std::string_view destination);

// "lead continuation destination blank …": the kinds of all lines.
[[nodiscard]] std::string line_kinds(std::string_view text);

// The text with `put` wherever it has `right`.
[[nodiscard]] std::string all_with(std::string text, std::string_view right, std::string_view put);

// The findings as one_line() gives them.
[[nodiscard]] std::vector<std::string> findings_of(std::string_view text);

}  // namespace keydrift::test

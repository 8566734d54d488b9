#pragma once
// Amends printed keys and tells the result as text.

#include <string>
#include <string_view>

#include "keydrift/amendment/amend.hpp"

namespace keydrift::test {

// A key of four couplets with back-references: 1 leads to 2 and 3, 3 to 4; six taxa of two genera.
[[nodiscard]] std::string_view small_key();

[[nodiscard]] Edition read_key(std::string_view text);
[[nodiscard]] Amendment read_piece(std::string_view text, std::string_view name = "piece.txt");
[[nodiscard]] Amended amended(std::string_view key, std::string_view piece);

// "3 (1): Head red > 4 | Head blue > Bus dus", a couplet a line.
[[nodiscard]] std::string key_in_short(Edition const& edition);
// The line of that couplet.
[[nodiscard]] std::string couplet_in_short(Edition const& edition, std::string_view label);
// "inserted 7a: behind couplet 7", a deed a line.
[[nodiscard]] std::string deeds_in_short(Amended const& amended);
// to_text() of all of them.
[[nodiscard]] std::string told(std::vector<Finding> const& findings);

}  // namespace keydrift::test

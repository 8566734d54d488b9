#pragma once
// Statements for tests, written by hand: tests of keying do not depend on the reading of text.

#include <string>
#include <utility>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift::test {

inline Statement states(std::string character, std::vector<std::string> allowed,
                        Strength strength = Strength::firm, std::vector<std::string> except = {}) {
  Statement statement;
  statement.text = character + " " + allowed.front();
  statement.strength = strength;
  Atom atom;
  atom.character = std::move(character);
  atom.states = std::move(allowed);
  statement.any_of = {std::move(atom)};
  statement.except = std::move(except);
  return statement;
}

inline Statement range(std::string character, Interval extreme, std::string unit = "mm",
                       Strength strength = Strength::firm) {
  Statement statement;
  statement.text = character;
  statement.strength = strength;
  Atom atom;
  atom.character = std::move(character);
  atom.ranges = {{.usual = extreme, .extreme = extreme, .approximate = false}};
  atom.unit = std::move(unit);
  statement.any_of = {std::move(atom)};
  return statement;
}

inline Interval below(double limit) { return {.high = limit, .high_open = true}; }
inline Interval from(double limit) { return {.low = limit}; }

// Sets the statements of couplet `c`, lead `l` (both 0-based).
inline void say(Edition& edition, std::uint32_t c, std::uint32_t l,
                std::vector<Statement> statements) {
  edition.couplets[c].leads[l].statements = std::move(statements);
}

}  // namespace keydrift::test

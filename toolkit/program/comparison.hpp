#pragma once
// Two editions read together, with everything that comparing them needs.

#include <memory>
#include <optional>
#include <string>

#include "keydrift/collation/collation.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/program/inputs.hpp"

namespace keydrift::program {

// Owns both editions; the rest points into them, so it stays where it is.
struct Comparison {
  EditionInput old_input;
  EditionInput new_input;
  SideTables tables;
  std::unique_ptr<KeyGraph> old_graph;
  std::unique_ptr<KeyGraph> new_graph;
  Collation collation;

  [[nodiscard]] Edition const& old_edition() const { return old_input.edition; }
  [[nodiscard]] Edition const& new_edition() const { return new_input.edition; }
};

// What to read by where no lexicon is given: nothing, so that statements go by their own words, or
// a lexicon drafted from the two editions (then SideTables::lexicon is that).
enum class WithoutLexicon { by_words, by_draft };

// Loads, reads and collates.  On failure the findings are printed and nothing is returned.  The
// context keeps what is returned.
[[nodiscard]] std::shared_ptr<Comparison const> compare(
    std::string const& old_spec, std::string const& new_spec, SideTableOptions const& tables,
    Context& context, WithoutLexicon without = WithoutLexicon::by_words);

}  // namespace keydrift::program

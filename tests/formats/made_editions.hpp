#pragma once
// Invented editions of many shapes, made from a seed.

#include <cstdint>

#include "keydrift/key/edition.hpp"

namespace keydrift::test {

// Up to 15 couplets with all that print has: polytomies, lone leads, suffixed and lettered labels,
// leads on to any later couplet, several taxa at one end, remarks, figures, notes, back-references,
// headings, words that invite a reader to go astray.
[[nodiscard]] Edition odd_edition(std::uint32_t seed);

enum class Shape {
  balanced,    // every couplet parts the rest in halves
  comb,        // every couplet takes off one taxon
  polytomous,  // couplets of up to seven leads
  reticulate,  // leads run together again: couplets with several parents
  several_keys,
};

// `couplets` couplets with plain labels and words, in an order that no layout has: couplets are
// numbered as they come off a queue.  Taxa come back at several ends.
[[nodiscard]] Edition shaped_edition(Shape shape, std::uint32_t couplets, std::uint32_t seed);

}  // namespace keydrift::test

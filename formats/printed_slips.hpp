#pragma once
// Slips of scanning: signs and groups of signs that text layers confuse, and the words that they
// make of others.  Common practice, as printed_misread_figures.hpp says of figures.  Inner header
// of formats.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace keydrift::printed {

// May scanning have made the one word of the other: up to two slips ("rn" for m, "fi" for fl, "u"
// for n), or in one place as many strokes parted into other letters ("viaculosa" for maculosa)?
[[nodiscard]] bool may_be_misread(std::string_view word, std::string_view other);

// Words among which those that may be misread for another are found without a look at each: two
// words that are two slips apart have a word in common that is one slip from either.
class MisreadWords {
 public:
  void add(std::string word);
  // The added words for which may_be_misread(word, other) holds: their places, counted from 0 as
  // they were added, ascending.
  [[nodiscard]] std::vector<std::size_t> like(std::string_view other) const;

 private:
  std::vector<std::string> words_;
  // By the hash of a word that is a slip away, or the word itself.
  std::unordered_map<std::size_t, std::vector<std::uint32_t>> near_;
};

}  // namespace keydrift::printed

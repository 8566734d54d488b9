#pragma once
// "Did you mean": the known words most like a mistaken one.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

// Optimal string alignment distance in bytes: insertions, deletions, substitutions and swaps of
// neighbours count one each.  Stops counting beyond `most` and gives most + 1.
[[nodiscard]] std::size_t count_slips(std::string_view a, std::string_view b, std::size_t most);

// Up to `maximum` of `known`, the nearest first and equally near ones in byte order; without
// repeats.  Case is ignored.  Words count as near up to one slip in five bytes; failing such, when
// the one holds the other (three bytes at least).
[[nodiscard]] std::vector<std::string> near_words(std::string_view word,
                                                  std::vector<std::string> const& known,
                                                  std::size_t maximum = 3);

// `did you mean "a", "b" or "c"?`, or "" for none.
[[nodiscard]] std::string did_you_mean(std::vector<std::string> const& words);

}  // namespace keydrift

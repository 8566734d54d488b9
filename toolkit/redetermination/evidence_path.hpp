#pragma once
// As much of the evidence as a verdict can depend on.  Inner header of redetermination.
//
// A verdict depends on the characters of the couplets that some completion of the evidence comes to
// under some reading, and on no others.  The couplets that a record comes to hang on what was found
// at those before, so the characters are met in an order that the cells found tell, one by one:
// records that agree on the characters met, in the order met, share their verdict.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "keydrift/redetermination/compiled_key.hpp"

namespace keydrift {

class EvidencePath {
 public:
  // Borrows both keys, which are over one space.
  EvidencePath(CompiledKey const& old_key, CompiledKey const& new_key);

  // Appends the cells of the characters met, in the order met: equal bytes, equal verdicts.
  void append(Box const& box, std::string& out);

  // The same as a number, found without looking at more than these characters: equal numbers, equal
  // bytes.  Numbers are kept up to a bound; when `forgotten()` grows, all given until then have
  // lost their meaning.
  [[nodiscard]] std::uint32_t number_of(Box const& box);
  [[nodiscard]] std::uint64_t forgotten() const { return forgotten_; }

 private:
  void find(Box const& box);  // the characters met, into met_in_order_
  void follow(CompiledKey const& key, Box const& box);
  void meet(CharacterIndex character);
  [[nodiscard]] std::uint64_t cells_of(CharacterIndex character, Box const& box);
  [[nodiscard]] std::uint32_t insert(Box const& box);

  CompiledKey const& old_key_;
  CompiledKey const& new_key_;
  CharacterSpace const& space_;
  std::vector<std::uint32_t> met_;      // by character: the record in which it was met last
  std::vector<std::uint32_t> visited_;  // by couplet: the walk in which it was visited last
  std::uint32_t record_{};
  std::uint32_t walk_{};
  std::vector<CoupletId> stack_;
  std::vector<CharacterIndex> met_in_order_;
  Box found_of_;  // whose characters these are

  // A tree of the paths met so far: each node asks for one character, each edge is what was found.
  // The first two edges stand in the node itself, for most characters have two states.
  static constexpr std::uint32_t kNone = ~std::uint32_t{};
  // Instead of a word of the box: a path ends here; the character (added to it) has several words.
  static constexpr std::uint32_t kEnd = kNone;
  static constexpr std::uint32_t kWide = std::uint32_t{1} << 31;
  struct alignas(32) Node {  // two to a line of the cache: every specimen passes some twenty
    std::array<std::uint64_t, 2> cells{};  // the word itself, or a number in wide_
    std::array<std::uint32_t, 2> to{kNone, kNone};
    std::uint32_t word{kEnd};
    std::uint32_t more{kNone};  // further edges in edges_; of an end, the path's number
  };
  struct Edge {
    std::uint64_t cells{};
    std::uint32_t to{kNone};
    std::uint32_t next{kNone};  // into edges_
  };
  [[nodiscard]] std::uint32_t after(Node const& node, std::uint64_t cells) const;
  void link(std::uint32_t node, std::uint64_t cells, std::uint32_t to);
  std::vector<Node> nodes_;
  std::vector<Edge> edges_;
  std::vector<std::unordered_map<std::string, std::uint64_t>> wide_;  // by character
  std::uint32_t numbers_{};
  std::uint64_t forgotten_{};
};

}  // namespace keydrift

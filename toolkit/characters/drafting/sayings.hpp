#pragma once
// What the leads of some editions say, as far as a lexicon can be drafted from it: the structure
// that a statement speaks of, and what it says of it.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"

namespace keydrift::drafting {

// Where a statement stands; rows, in the order of the editions given.
struct Spot {
  std::uint32_t edition{};
  std::uint32_t couplet{};
  std::uint32_t lead{};
  std::uint32_t statement{};
  auto operator<=>(Spot const&) const = default;
};

// One way of putting something: "straw-coloured".
struct Item {
  std::string words{};  // normalised; what "the same words" means
  std::string printed;  // as it stands in the lead, case-folded
  bool operator==(Item const&) const = default;
};

struct Saying {
  Spot at;
  std::vector<std::string> words{};  // normalised, the structure's in front
  std::vector<std::string> ones{};   // the same in the singular
  std::vector<bool> hyphened{};      // by word: a hyphen joins it to the next
  std::size_t subject{};             // how many of them name the structure; 0: that is not known
  std::vector<Item> items{};      // alternatives ("brown or straw-coloured"); none without subject
  std::string printed_subject{};  // "basal sheaths"; empty where it was carried over
  [[nodiscard]] std::string structure() const;  // "basal sheath"
};

// Two statements of sibling leads about one structure (rows of Sayings::all).
struct Contrast {
  std::size_t first{};
  std::size_t second{};
};

struct Sayings {
  std::vector<Saying> all;  // opaque statements of one alternative, in the order of their places
  std::vector<Contrast> contrasts;
};

// Precondition: read_statements() was run on the editions together, with an empty lexicon.
//
// The structure is what contrasting statements have in common in front, up to the words that are
// known to name parts ("lowest bract" of "lowest bract leafy").  Where no part is known (most words
// of languages other than English) the common words in front are all there is to go by.  A
// statement that contrasts with none has the structure that its parts or other statements tell.
[[nodiscard]] Sayings collect_sayings(std::span<Edition const* const> editions);

}  // namespace keydrift::drafting

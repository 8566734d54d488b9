#pragma once
// The two editions as the collation sees them: rows of leads, a rank that layout cannot change, and
// grades, the whole numbers that similarities are reckoned in.

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string_view>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/graph.hpp"

namespace keydrift::collating {

// A share of one, in units of 2^-20.  Whole numbers, so that sums do not depend on their order and
// "the same" is exactly 1.
using Grade = std::uint32_t;
inline constexpr Grade whole = Grade{1} << 20;
[[nodiscard]] inline double to_share(Grade grade) {
  return static_cast<double>(grade) / static_cast<double>(whole);
}

// Row number that stands for "none".
inline constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();

enum class Of : std::uint8_t { old_edition, new_edition };
[[nodiscard]] constexpr Of other(Of of) {
  return of == Of::old_edition ? Of::new_edition : Of::old_edition;
}
// Where arrays of (old, new) have what is of the edition.
[[nodiscard]] constexpr std::size_t index_of(Of of) { return static_cast<std::size_t>(of); }

// One edition with its leads numbered through.  Borrows the edition and its graph.
struct Side {
  Edition const* edition{};
  KeyGraph const* graph{};
  std::vector<std::uint32_t> first_lead;  // by couplet, and one more: row of its first lead
  std::vector<LeadId> leads;              // by row
  // By row: the couplet that the lead leads to, also where it names a part of the same file by its
  // title; none for taxa and the rest.
  std::vector<std::uint32_t> behind;
  // Place of each couplet in a walk from the start, depth first, leads in printed order; couplets
  // that no lead reaches follow in printed order.  Does not change when couplets are renumbered or
  // printed in another order.
  std::vector<std::uint32_t> rank;

  [[nodiscard]] std::uint32_t couplet_count() const {
    return static_cast<std::uint32_t>(rank.size());
  }
  [[nodiscard]] std::uint32_t row(LeadId lead) const {
    return first_lead[lead.couplet.index] + lead.ordinal;
  }
  [[nodiscard]] std::uint32_t lead_count(std::uint32_t couplet) const {
    return first_lead[couplet + 1] - first_lead[couplet];
  }
  // Rows of the couplet's leads: first_lead[couplet] up to this.
  [[nodiscard]] std::uint32_t end_lead(std::uint32_t couplet) const {
    return first_lead[couplet + 1];
  }
  [[nodiscard]] Couplet const& couplet(std::uint32_t index) const {
    return edition->couplets[index];
  }
  [[nodiscard]] Lead const& lead(std::uint32_t row_number) const {
    return (*edition)[leads[row_number]];
  }
};

[[nodiscard]] Side make_side(Edition const& edition, KeyGraph const& graph);

// Spreads the bits of a number (the finaliser of splitmix64: Steele, Lea & Flood 2014, "Fast
// splittable pseudorandom number generators", OOPSLA).
[[nodiscard]] constexpr std::uint64_t mix(std::uint64_t x) {
  x += 0x9E3779B97F4A7C15U;
  x = (x ^ (x >> 30U)) * 0xBF58476D1CE4E5B9U;
  x = (x ^ (x >> 27U)) * 0x94D049BB133111EBU;
  return x ^ (x >> 31U);
}

// A number for a piece of text, the same in every run (FNV-1a, 64 bits, then mixed).
[[nodiscard]] constexpr std::uint64_t text_number(std::string_view text) {
  std::uint64_t number = 0xCBF29CE484222325U;
  for (char const byte : text) {
    number =
        (number ^ static_cast<std::uint64_t>(static_cast<unsigned char>(byte))) * 0x100000001B3U;
  }
  return mix(number);
}

}  // namespace keydrift::collating

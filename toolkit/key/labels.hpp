#pragma once
// Printed labels of couplets: what they are in the numbering, and which couplet they mean.

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/id.hpp"

namespace keydrift {

// The label without what print puts around it: "(7a)." gives "7a"; every kind of prime gives "'".
[[nodiscard]] std::string label_key(std::string_view label);

// "7" is {7, ""}, "7a" is {7, "a"}.  Suffixed couplets stand behind their number, squeezed in by a
// later author.
struct LabelNumber {
  std::uint64_t number{};
  std::string suffix;
  auto operator<=>(LabelNumber const&) const = default;
};
// nullopt for letters, decimal numbering ("1.1") and whatever else is no number with a short
// suffix.
[[nodiscard]] std::optional<LabelNumber> label_number(std::string_view label);

// Which couplet or lead a label means.  Each part of a file numbers its couplets for itself; a
// label is looked for in the part that speaks of it, then in the others if one alone has it.
// Borrows the edition.
class LabelIndex {
 public:
  explicit LabelIndex(Edition const& edition);

  // Parts in the order of the couplets; at least one.
  [[nodiscard]] std::size_t part_count() const { return starts_.size(); }
  [[nodiscard]] std::size_t part_of(CoupletId couplet) const;
  [[nodiscard]] CoupletId part_begin(std::size_t part) const { return CoupletId{starts_[part]}; }
  [[nodiscard]] CoupletId part_end(std::size_t part) const;

  // The first couplet so labelled.
  [[nodiscard]] std::optional<CoupletId> find(std::string_view label, std::size_t part) const;
  // The lead that bears this label, or that prose calls so (lead_name).
  [[nodiscard]] std::optional<LeadId> find_lead(std::string_view label, std::size_t part) const;
  // Couplet labels of the part that are like the one given, best first; at most three.  Couplets
  // that are not `reached` (by couplet; non-zero counts) are likelier meant and keep the others
  // out.
  [[nodiscard]] std::vector<std::string> near(std::string_view label, std::size_t part,
                                              std::vector<char> const& reached) const;

 private:
  struct Entry {
    std::string key;
    std::size_t part{};
    CoupletId couplet;
    auto operator<=>(Entry const&) const = default;
  };

  Edition const* edition_;
  std::vector<std::uint32_t> starts_;  // ascending; the first is 0
  std::vector<Entry> couplets_;        // sorted
};

}  // namespace keydrift

#pragma once
// Strong row numbers of the tables of one Edition.
//
// An id means nothing in another edition: couplets are matched across editions by collation, taxa
// by name and concept, never by comparing ids.

#include <compare>
#include <cstddef>
#include <cstdint>
#include <functional>

namespace keydrift {

template <class Tag>
struct Id {
  std::uint32_t index{};  // 0-based row in the table of the Edition that issued it
  auto operator<=>(Id const&) const = default;
};

using CoupletId = Id<struct CoupletTag>;
using TaxonId = Id<struct TaxonTag>;

// One lead of one couplet.
struct LeadId {
  CoupletId couplet;
  std::uint32_t ordinal{};  // 0-based position among the couplet's leads, in printed order
  auto operator<=>(LeadId const&) const = default;
};

}  // namespace keydrift

template <class Tag>
struct std::hash<keydrift::Id<Tag>> {
  std::size_t operator()(keydrift::Id<Tag> id) const noexcept {
    return std::hash<std::uint32_t>{}(id.index);
  }
};

#pragma once
// How much a finding tells of what it holds for in several places.  Inner header of formats.

#include <cstddef>

namespace keydrift {

inline constexpr std::size_t kMaximumRelatedPlaces = 20;  // more would bury the first

}  // namespace keydrift

#pragma once
// A stable sort of what is in order already as a rule.

#include <algorithm>

namespace keydrift {

// std::stable_sort takes memory and moves values even where there is one, or nothing to do.
template <class Values, class Less>
void sort_stably(Values& values, Less const& less) {
  if (std::is_sorted(values.begin(), values.end(), less)) return;
  std::stable_sort(values.begin(), values.end(), less);
}

}  // namespace keydrift

#pragma once
// How well a reading of a key hangs together.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_sorter.hpp"

namespace keydrift::printed {

struct Judgement {
  std::size_t leads{};
  std::size_t sound{};    // leads that have a rival and a destination
  std::size_t orphans{};  // couplets to which nothing leads, starts of keys apart
  std::size_t strays{};   // lines among the leads that belong to none, or before them and lead on
  bool is_list{false};    // one couplet of so many leads that they are hardly one
  bool mended{false};     // destinations were put right by what the couplets call for

  // Sound leads count for the reading; the others, orphans and strays against it.
  [[nodiscard]] std::int64_t points() const {
    return static_cast<std::int64_t>(sound * 2) -
           static_cast<std::int64_t>(leads + orphans + strays);
  }
  [[nodiscard]] bool is_faultless() const {
    return leads > 0 && points() == static_cast<std::int64_t>(leads);
  }
  [[nodiscard]] bool hangs_together() const { return sound * 3 >= leads * 2; }
  // Hardly anything is amiss: no other reading need be tried.
  [[nodiscard]] bool is_beyond_doubt() const {
    return !is_list && !mended && points() > 0 &&
           static_cast<std::size_t>(points()) * 20 >= leads * 19;
  }
};

[[nodiscard]] Judgement judge(KeyText const& key, Grouping const& grouping,
                              SortedLines const& sorted, std::vector<ReadLead> const& reads);

}  // namespace keydrift::printed

#pragma once
// How a key's graph is cut into SDD's forests: keys, parents, reticulations.  Inner header of
// formats.

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/key/id.hpp"

namespace keydrift::sdd {

// One IdentificationKey to be.
struct PlannedKey {
  std::optional<std::uint32_t> part;    // begins that part of the edition
  std::vector<std::uint32_t> couplets;  // in printed order; the first in the file is the root
  std::uint32_t root{};
};

struct Plan {
  std::vector<PlannedKey> keys;
  std::vector<std::uint32_t> key_of;          // by couplet
  std::vector<std::optional<LeadId>> parent;  // by couplet; nullopt: a root
  bool in_order{true};  // the couplets' order in the edition is their order in the keys
};

// Every couplet with leads is in one key.  Parts begin keys; so does every couplet that no lead
// within its part reaches from a start.
[[nodiscard]] Plan plan_keys(Edition const& edition);

}  // namespace keydrift::sdd

#pragma once
// Keying out: the function behind KeyOut.

#include "keydrift/redetermination/compiled_key.hpp"
#include "keydrift/redetermination/keyout.hpp"

namespace keydrift {

// Keys the evidence out and tells the way as a person would follow it.
[[nodiscard]] KeyOut key_out(CompiledKey const& key, Box const& evidence, Reading reading);

}  // namespace keydrift

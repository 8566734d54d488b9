#pragma once
// Specimens as bytes, for those that are kept until the end of a run: most of their words are empty,
// and a specimen as it is takes the better part of a kilobyte all the same.  Inner header of
// redetermination.

#include "keydrift/characters/specimen.hpp"
#include "keydrift/key/spill/bytes.hpp"

namespace keydrift {

// All but the observations, of which the record of a run tells nothing.
void write_bytes(ByteWriter& writer, Specimen const& specimen);
void read_bytes(ByteReader& reader, Specimen& specimen);

}  // namespace keydrift

#pragma once
// Lines that are too long to be those of a key.  Inner header of formats.

#include <optional>
#include <string_view>

#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// The first line of a decoded text that is longer than allowed: line-too-long.
[[nodiscard]] std::optional<Finding> too_long_line(std::string_view name, std::string_view text,
                                                   ReadLimits const& limits);

// The same of undecoded bytes, so that nothing is made of a file that will be refused.  Finds only
// lines that are too long however they are encoded; others are left to too_long_line().
[[nodiscard]] std::optional<Finding> too_long_at_sight(Source const& source,
                                                       ReadLimits const& limits);

}  // namespace keydrift

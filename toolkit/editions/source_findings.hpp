#pragma once
// The refusals that files and git objects share.  Internal to this folder.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "keydrift/editions/source.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// Nothing loaded, and one error that says why.
[[nodiscard]] Loaded<SourceText> refuse(std::string const& name, std::string_view code,
                                        std::string message, std::string remedy);
// `size` may be unknown: pipes and devices are read until they hold too much.
[[nodiscard]] Loaded<SourceText> refuse_too_large(std::string const& name,
                                                  std::optional<std::uint64_t> size,
                                                  std::uint64_t maximum);
[[nodiscard]] Loaded<SourceText> refuse_empty(std::string const& name);

}  // namespace keydrift

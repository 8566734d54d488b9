#pragma once
// Small pieces of the sentences that messages are made of.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift {

[[nodiscard]] std::string in_quotes(std::string_view text);

// "4", "4 and 5", "4, 5 and 6"; more than `most` items end in "… and 7 more".
[[nodiscard]] std::string in_prose(std::vector<std::string> const& items, std::size_t most = 8);

}  // namespace keydrift

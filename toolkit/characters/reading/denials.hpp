#pragma once
// What a denial says no to, where no lexicon explains its words.

#include <cstdint>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

namespace keydrift::reading {

// "Body not metallic" answers "body with metallic reflections": the words that a couplet contrasts
// with a denial are denied by it as well, unless other couplets contrast it with other things.
//
// `contrasted`: the denied state and the one that contrasts with its denial, for every contrast of
// the two.  Returns by denied state what its denials deny besides, in ascending order.
[[nodiscard]] std::map<std::uint32_t, std::vector<std::uint32_t>> denied_besides(
    std::vector<std::pair<std::uint32_t, std::uint32_t>> contrasted,
    std::vector<std::string_view> const& words);

}  // namespace keydrift::reading

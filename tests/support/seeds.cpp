#include "seeds.hpp"

#include <cstdlib>
#include <string>

namespace keydrift::test {

Seeds seeds(std::uint32_t usual) {
  char const* asked = std::getenv("KEYDRIFT_SEEDS");
  if (asked == nullptr || *asked == '\0') return {0, usual};
  std::string const text{asked};
  auto const dash = text.find('-');
  if (dash == std::string::npos) return {0, static_cast<std::uint32_t>(std::stoul(text))};
  return {static_cast<std::uint32_t>(std::stoul(text.substr(0, dash))),
          static_cast<std::uint32_t>(std::stoul(text.substr(dash + 1)))};
}

}  // namespace keydrift::test
